//! Whether a cause with a given support is right that often, if causes are as common as the weights say.

use fairfoot::Weights;

use super::causes::{self, Record};
use super::house::House;
use super::measures::{explained, first_seed, houses};
use super::random::Random;

/// The departures that a house allows, a misread wall and errors in the total, each with its odds.
fn odds(house: &House, weights: &Weights) -> Vec<(&'static str, f64)> {
    let count = |kind: &str| {
        house.spaces.iter().filter(|space| space.kind == kind && !space.counted).count() as f64
    };
    let above = house.spaces.iter().filter(|space| space.counted && space.name.contains("oom"));
    let upper = above.filter(|space| space.name != "House").count() as f64;
    let levels = 1.0 + upper;
    let odds = |chance: f64| chance / (1.0 - chance);
    let below = house.spaces.iter().filter(|space| house.levels[space.level].1).count() as f64;
    let unfinished = count("unfinished");
    let has = |is: bool| if is { 1.0 } else { 0.0 };
    let (recesses, jogs) = causes::parts(house);
    let of_parts = odds(weights.shape) / ((recesses + jogs).max(1) as f64);
    let addition = house.spaces.iter().any(|space| space.name == "Addition");
    vec![
        ("garage counted", count("garage") * odds(weights.counted)),
        ("porch counted", count("porch") * odds(weights.counted)),
        ("unfinished room counted", (unfinished - below).max(0.0) * odds(weights.counted)),
        ("basement counted", below * odds(weights.counted)),
        ("gone but counted", has(house.missing.is_some()) * odds(weights.missing_counted)),
        ("addition left out", has(addition) * odds(weights.left_out)),
        ("level left out", upper * odds(weights.left_out)),
        ("opening not deducted", count("open") * odds(weights.not_deducted)),
        ("low part not deducted", count("low") * odds(weights.not_deducted)),
        ("stair deducted", count("stair") * odds(weights.deducted)),
        ("level at the whole outline below", upper * odds(weights.whole_below)),
        ("level at three quarters below", upper * odds(weights.three_quarters_below)),
        ("level at half below", upper * odds(weights.half_below)),
        ("level twice", levels * odds(weights.level_twice)),
        ("under roof", odds(weights.under_roof)),
        ("recess filled in", recesses as f64 * of_parts),
        ("jog or wing left off", jogs as f64 * of_parts),
        ("wall misread", odds(weights.misread)),
        ("digits of the total swapped", odds(weights.total_swapped)),
        ("one digit of the total", odds(weights.total_one_digit)),
        ("ten times", odds(weights.total_ten_times)),
        ("a tenth", odds(weights.total_tenth)),
        ("total rounded to 10", odds(weights.total_rounded_10)),
        ("total rounded to 100", odds(weights.total_rounded_100)),
        ("total twice", odds(weights.total_twice)),
        ("square meters", odds(weights.total_square_meters)),
    ]
}

/// The face and the rounding, if they are not the figure's own.
fn ways(weights: &Weights) -> [(&'static str, f64); 6] {
    [
        ("face: frame", weights.face),
        ("face: inside", weights.face_inside),
        ("every wall rounded up", weights.always_up),
        ("every wall rounded down", weights.always_down),
        ("half foot", weights.half_foot),
        ("not rounded", weights.not_rounded),
    ]
}

/// A record drawn with the odds of the weights: a face and a rounding, and each departure or not. If departures
/// occur with another face or rounding, the label is that of the departures.
fn by_chance(house: &House, weights: &Weights, random: &mut Random) -> Option<Record> {
    let nobody_can_say = |record| Record { labels: vec!["something else".to_owned()], ..record };
    if random.chance(weights.something_else) {
        return Some(nobody_can_say(causes::none(house, random)));
    }
    let mut left = random.unit();
    let way = ways(weights).into_iter().find(|(_, chance)| {
        left -= chance;
        left < 0.0
    });
    let mut done: Vec<&str> = Vec::new();
    for (cause, odds) in odds(house, weights) {
        if random.chance(odds / (1.0 + odds)) {
            done.push(cause);
        }
    }
    let all: Vec<&str> = way.iter().map(|(way, _)| *way).chain(done.iter().copied()).collect();
    if all.is_empty() {
        return Some(causes::plain(house, random));
    }
    let record = (0..20).find_map(|_| causes::with_all(&all, house, random))?;
    let of_way = |label: &String| label.starts_with("face: ") || label.starts_with("rounding: ");
    match (way, done.len()) {
        (None, 1 | 2) | (Some(_), 0) => Some(record),
        // The departure counts as the cause, whatever the rounding.
        (Some((way, _)), 1) if !way.starts_with("face") => {
            let parts = record.labels.iter().flat_map(|labels| labels.split('+'));
            let mut labels: Vec<String> = parts.map(str::to_owned).collect();
            labels.retain(|label| !of_way(label));
            Some(Record { labels, ..record })
        }
        _ => Some(nobody_can_say(record)),
    }
}

#[test]
fn each_tenth_of_support_is_right_as_often_as_it_states() {
    let weights = Weights::default();
    let mut tenths = [(0_u32, 0_u32, 0.0_f64); 10];
    for seed in 0..30 * houses() {
        let mut random = Random::new(seed + 500_000 + first_seed());
        let house = House::random(&mut random);
        let Some(record) = by_chance(&house, &weights, &mut random) else { continue };
        for one in explained(&house, &record).list() {
            let is_right = match one.departures() {
                [] => record.labels.is_empty(),
                labels => record.labels.contains(&labels.join("+")),
            };
            let tenth = &mut tenths[((10.0 * one.support()) as usize).min(9)];
            tenth.0 += 1;
            tenth.1 += u32::from(is_right);
            tenth.2 += one.support();
        }
    }
    let mut faults = Vec::new();
    println!("| stated support | lines | mean stated | came true |\n|---|---|---|---|");
    for (i, (lines, right, sum)) in tenths.into_iter().enumerate() {
        let (stated, share) =
            (sum / f64::from(lines.max(1)), f64::from(right) / f64::from(lines.max(1)));
        println!(
            "| {:.1} to {:.1} | {lines} | {stated:.2} | {share:.2} |",
            i as f64 / 10.0,
            (i + 1) as f64 / 10.0
        );
        // With this few causes, deviations that chance explains are accepted.
        let by_chance = 2.5 * (stated * (1.0 - stated) / f64::from(lines.max(1))).sqrt();
        if (share - stated).abs() > 0.05 + by_chance {
            faults.push(format!("{i}: {stated:.3} stated, {share:.3} came true"));
        }
    }
    assert!(faults.is_empty(), "{faults:?}");
}
