//! Whatever a report says about a comparison is true of the numbers printed with it: in text, on pages and in JSON.

use fairfoot::reconcile::{Explanation, Explanations};
use fairfoot::{Paper, Settings, Weights};
use serde_json::Value;

use super::causes::{self, ALL, Record};
use super::house::{FOOT, House, Space};
use super::measures::{first_seed, is_full};
use super::random::Random;

/// A house with a record: of one cause, of none, of rounding alone.
fn drawn(seed: u64) -> (House, Record) {
    let mut random = Random::new(seed + 42_000_000 + first_seed());
    let house = House::random(&mut random);
    let cause = random.pick(&ALL);
    let record = match seed % 4 {
        0 => causes::none(&house, &mut random),
        1 => causes::plain(&house, &mut random),
        _ => causes::with(cause, &house, &mut random)
            .unwrap_or_else(|| causes::plain(&house, &mut random)),
    };
    (house, record)
}

/// The words of a text, with line ends as spaces.
fn unwrapped(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The last whole number of a text, and the text before it.
fn last_number(text: &str) -> Option<(&str, i64)> {
    let end = text.rfind(|c: char| c.is_ascii_digit())? + 1;
    let start = text[..end].rfind(|c: char| !c.is_ascii_digit() && c != ',').map_or(0, |at| at + 1);
    let start = start + text[start..end].len() - text[start..end].trim_start_matches(',').len();
    let number = text[start..end].replace(',', "").parse().ok()?;
    Some((&text[..start], number))
}

/// The first whole number of a text.
fn first_number(text: &str) -> i64 {
    let digits: String = text
        .chars()
        .take_while(|c| c.is_ascii_digit() || *c == ',')
        .filter(|c| *c != ',')
        .collect();
    digits.parse().unwrap_or_else(|_| panic!("a number begins {text:?}"))
}

/// The bounds before a place in a text: `1,864 to 1,880`, or one number. Of `1,864 or 1,880`, or of three numbers, it is
/// the one that a figure is, since nothing lies between them.
fn bounds(before: &str, figure: i64) -> (i64, i64) {
    let (rest, high) = last_number(before).unwrap();
    if let Some(rest) = rest.strip_suffix(" to ") {
        return (last_number(rest).unwrap().1, high);
    }
    let mut others = rest.strip_suffix(" or ");
    while let Some((rest, number)) = others.and_then(last_number) {
        if number == figure {
            return (figure, figure);
        }
        others = rest.strip_suffix(", ");
    }
    (high, high)
}

/// Checks every sentence of a text against its own numbers; returns how many there were.
fn true_sentences(text: &str, record: i64) -> usize {
    let mut count = 0;
    let who = "; the record, ";
    for (at, _) in text.match_indices(who) {
        let rest = &text[at + who.len()..];
        let figure = first_number(rest);
        let said = &rest[rest.find(", ").unwrap() + 2..];
        let is_fit = said.starts_with("fits");
        let is_off = said.starts_with("is ");
        if !is_fit && !is_off && !said.starts_with("does not fit") {
            continue;
        }
        count += 1;
        assert_eq!(figure, record, "{text}");
        let before = text[..at].trim_end_matches(" with walls rounded either way");
        let (low, high) = bounds(before, figure);
        let is_within = (low..=high).contains(&figure);
        assert_eq!(is_fit, is_within, "{low} to {high}, {figure}: {text}");
        if is_off {
            let by = first_number(&said[3..]);
            let off =
                if said.contains("above") && figure > high { figure - high } else { low - figure };
            assert_eq!(by, off, "{low} to {high}, {figure}: {text}");
        }
    }
    for (at, _) in text.match_indices(", and the record, ") {
        count += 1;
        let figure = first_number(&text[at + ", and the record, ".len()..]);
        let before = text[..at].trim_end_matches(" with walls rounded either way");
        let (low, high) = bounds(before, figure);
        assert!((low..=high).contains(&figure) && figure == record, "{low} to {high}: {text}");
    }
    // `gives 1,872, 5 less than the record; rounding could make it 1,864 to 1,880`.
    for (at, words) in text.match_indices(": gives ") {
        count += 1;
        let rest = &text[at + words.len()..];
        let gives = first_number(rest);
        let rest = &rest[rest.find(", ").unwrap() + 2..];
        if rest.starts_with("as the record says") {
            assert_eq!(gives, record, "{text}");
            continue;
        }
        let by = first_number(rest);
        let is_less = rest[..rest.find(" than the record").unwrap()].ends_with("less");
        assert_eq!(record, if is_less { gives + by } else { gives - by }, "{text}");
        let end = rest.find("than the record").unwrap() + "than the record".len();
        let ranges = ["rounding", "closing the outline", "how the office's tape was read"];
        let of_range = ranges
            .iter()
            .find_map(|by| rest[end..].strip_prefix(&format!("; {by} could make it ")));
        if let Some(rest) = of_range {
            let low = first_number(rest);
            let high = first_number(&rest[rest.find(" to ").unwrap() + 4..]);
            assert!((low..=high).contains(&record), "{low} to {high}, {record}: {text}");
        }
    }
    // `the house gives 1,361, 13 more than the 1,348 meant; rounding could make it 1,346 to 1,376`.
    for (at, words) in text.match_indices(": the house gives ") {
        count += 1;
        let rest = &text[at + words.len()..];
        let gives = first_number(rest);
        let rest = &rest[rest.find(", ").unwrap() + 2..];
        let by = first_number(rest);
        let is_less = rest[..rest.find(" than the ").unwrap()].ends_with("less");
        let rest = &rest[rest.find(" than the ").unwrap() + " than the ".len()..];
        let meant = first_number(rest);
        assert_eq!(meant, if is_less { gives + by } else { gives - by }, "{text}");
        let range = rest.split_once(" could make it ").filter(|(by, _)| by.len() < 40);
        if let Some((_, rest)) = range {
            let low = first_number(rest);
            let high = first_number(&rest[rest.find(" to ").unwrap() + 4..]);
            assert!((low..=high).contains(&meant), "{low} to {high}, {meant}: {text}");
        }
    }
    for (at, words) in text.match_indices("nothing between ") {
        count += 1;
        let rest = &text[at + words.len()..];
        let low = first_number(rest);
        let high = first_number(&rest[rest.find(" and ").unwrap() + 5..]);
        assert!(low < record && record < high, "{low}, {record}, {high}: {text}");
    }
    for (at, _) in text.match_indices(", is neither.") {
        count += 1;
        let (rest, figure) = last_number(&text[..at]).unwrap();
        let rest = &rest[..rest.rfind(';').unwrap()];
        let rest = rest.trim_end_matches(" with walls rounded either way");
        let (low, _) = bounds(rest, record);
        let (rest, _) = rest.rsplit_once(", or ").unwrap();
        let (_, below) = last_number(rest).unwrap();
        assert!(below < figure && figure < low, "{below}, {figure}, {low}: {text}");
    }
    for (words, is_most) in [(" at most ", true), (" at least ", false)] {
        for (at, _) in text.match_indices(words) {
            let rest = &text[at + words.len()..];
            let end = rest.find(|letter: char| letter != ',' && !letter.is_ascii_digit());
            if !rest[end.unwrap()..].starts_with("; the record is ") {
                continue;
            }
            count += 1;
            let limit = first_number(rest);
            assert!(if is_most { record > limit } else { record < limit }, "{limit}: {text}");
        }
    }
    count
}

/// What a line of a cause says first: `- Garage counted (likeliest of 2 that fit): …`.
fn told_first(text: &str) -> Option<&str> {
    let list = &text[text.find("Possible: - ")? + "Possible: - ".len()..];
    list.split([':', '('])
        .next()
        .map(|words| words.split(", with ").next().unwrap_or(words))
        .map(|words| words.split(", if there is ").next().unwrap_or(words).trim())
}

#[test]
fn every_comparison_of_a_report_is_true_of_its_own_numbers() {
    let (mut sentences, mut supported) = (0, 0);
    for seed in 0..if is_full() { 2_000 } else { 240 } {
        let (house, record) = drawn(seed);
        let text = house.file(&format!("{} sq ft", record.sq_ft));
        let sound = fairfoot::read("simulated.sides", text).unwrap();
        let areas = sound.areas(&Settings::default()).unwrap();
        let result = areas.reconcile(&Weights::default()).unwrap();
        let report = unwrapped(&result.report().text(Default::default()));
        sentences += true_sentences(&report, record.sq_ft);
        let only = report.contains("only common cause that fits");
        assert!(!only || !report.contains("(also fits)"), "{report}");
        nothing_likelier_is_hidden(result.figures()[0].explanations(), &report);
        // A cause in the steps is the first of the list, and vice versa.
        let in_steps = report.contains(" possible: ");
        let first = told_first(&report);
        assert_eq!(in_steps, first.is_some(), "{report}");
        if let Some(first) = first {
            supported += 1;
            let in_steps = format!("possible: {}", first.to_lowercase());
            assert!(report.to_lowercase().contains(&in_steps), "{first}: {report}");
        }
        of_json(
            &serde_json::to_value(result.report().json()).unwrap(),
            record.sq_ft,
            moved(&house),
        );
        if seed % 12 == 0 {
            let page = result.pages(Paper::Letter).unwrap().svg().remove(0);
            let letters = unwrapped(&letters_of(&page));
            sentences += true_sentences(&letters, record.sq_ft);
            if let Some(first) = first {
                let first = first.to_lowercase();
                assert!(letters.to_lowercase().contains(&first), "{first}, on the page: {letters}");
            }
        }
    }
    assert!(sentences > 200 && supported > 50, "{sentences} sentences, {supported} with a cause");
}

/// Nothing is told before a likelier cause that gives the very figure and is not told; and while such a cause is known, no
/// sentence says that there is none, or that the one told is the only one.
fn nothing_likelier_is_hidden(found: &Explanations, report: &str) {
    let is_done = |one: &&Explanation| {
        let labels = one.departures();
        let is_typed_too = labels.len() > 1 && labels[0].starts_with("total:");
        !labels.is_empty() && !labels[0].starts_with("rounding:") && !is_typed_too
    };
    let all = found.list().iter().filter(is_done);
    let exact: Vec<&Explanation> =
        all.filter(|one| one.fits() && one.leaves().abs() < 0.5).collect();
    let hidden = exact.iter().filter(|one| !one.is_reported());
    let likeliest = hidden.map(|one| one.support()).fold(0.0, f64::max);
    let told = found.reported().map(|one| one.support()).fold(0.0, f64::max);
    assert!(told == 0.0 || told >= likeliest, "{likeliest}: {report}");
    let is_denied = report.contains("No common cause explains");
    assert!(!is_denied || exact.iter().all(|one| one.support() < 0.005), "{report}");
    let is_only = report.contains("only common cause that fits");
    assert!(!is_only || likeliest < 0.3, "{report}");
}

/// All text that is drawn on a page.
fn letters_of(page: &str) -> String {
    let mut letters = String::new();
    for line in page.split("<text").skip(1) {
        let inner = &line[line.find('>').unwrap() + 1..line.find("</text>").unwrap()];
        letters.extend(
            inner.split('<').map(|part| part.split_once('>').map_or(part, |(_, text)| text)),
        );
        letters.push(' ');
    }
    letters
}

/// How far moving walls to close may take a house whose walls are all rounded one way, in square feet: by as many feet as
/// the walls one way and back then differ, times the depth of the house, on each axis of each counted space.
fn moved(house: &House) -> f64 {
    let one = |space: &Space| {
        let sides = space.sides();
        let of = |way: usize, round: fn(f64) -> f64| {
            let lengths = sides.iter().filter(|side| side.0 == way);
            lengths.map(|side| round(side.1 as f64 / FOOT as f64)).sum::<f64>()
        };
        let misses = |way: usize| {
            let by = |round: fn(f64) -> f64| (of(way, round) - of(way + 2, round)).abs();
            // A tape that reads a little more or less may take a wall to the next foot.
            by(f64::ceil).max(by(f64::floor)) + 1.0
        };
        let (north, east) = (of(0, f64::ceil), of(1, f64::ceil));
        misses(0) * east + misses(1) * north + misses(0) * misses(1)
    };
    house.spaces.iter().filter(|space| space.counted).map(one).sum()
}

/// What walls rounded up or down cannot give, nor moving them to close, is never attributed to that; errors of one digit
/// and totals rounded to tens are never combined with something else; pairs are never called the only one.
fn allowed(one: &Value, rounding: &Value, record: i64, moved: f64) {
    let labels: Vec<&str> =
        one["departures"].as_array().unwrap().iter().map(|label| label.as_str().unwrap()).collect();
    if labels[0].starts_with("rounding: always") && rounding["widest_low"].is_string() {
        let bound = |name: &str| rounding[name].as_str().unwrap().parse::<f64>().unwrap();
        let (low, high) = (bound("widest_low") - 1.0 - moved, bound("widest_high") + 1.0 + moved);
        assert!((low..=high).contains(&(record as f64)), "{low} to {high}: {one}");
    }
    if labels.len() > 1 {
        let never =
            ["rounding:", "face:", "misread:", "total: one", "total: digits", "total: round"];
        let is_never = |label: &&str| never.iter().any(|start| label.starts_with(start));
        assert!(!labels.iter().any(is_never), "{one}");
        assert_ne!(one["strength"], "only", "{one}");
    }
}

/// What a step of a figure adds; 0 if it has no such step.
fn steps_of(figure: &Value, name: &str) -> f64 {
    let steps = figure["bridge"].as_array().unwrap().iter();
    let sq_ft = |step: &Value| step["sq_ft"].as_str().unwrap().parse::<f64>().unwrap();
    steps.filter(|step| step["line"] == name).map(sq_ft).sum()
}

/// In JSON a cause fits if it leaves little, is reported only if it fits, and is in the steps if it is reported.
fn of_json(all: &Value, record: i64, moved: f64) {
    let figure = &all["figures"][0];
    let number = |value: &Value| value.as_str().unwrap().parse::<f64>().unwrap();
    let measured = number(&figure["start"]);
    let list = figure["explanations"].as_array().unwrap();
    let told: Vec<&Value> = list.iter().filter(|one| one["told"] == true).collect();
    assert!(told.len() <= 3);
    for one in list {
        let (sq_ft, leaves) = (number(&one["sq_ft"]), number(&one["leaves"]));
        assert!((sq_ft + leaves - record as f64).abs() < 0.11, "{one}");
        assert!(one["told"] == false || one["fits"] == true, "{one}");
        assert_eq!(one["told"] == true, one["strength"].is_string(), "{one}");
        if one["told"] == true {
            // What a cause adds brings the house nearer as it is rounded or as it is measured.
            let adds: f64 = steps_of(figure, "counting");
            let gap = record as f64 - measured;
            let is_first = one == told[0];
            assert!(
                leaves.abs() < gap.abs()
                    || !is_first && one["class"] != "typed"
                    || (gap - adds).abs() < gap.abs(),
                "{one}"
            );
            allowed(one, &figure["rounding"], record, moved);
        }
        if one["strength"] == "only" {
            assert!(number(&one["support"]) > 0.0 && figure["settle"][0].is_string(), "{figure}");
        }
    }
    let steps = figure["bridge"].as_array().unwrap();
    let in_steps = steps.iter().any(|step| step["line"] == "counting");
    assert_eq!(in_steps, !told.is_empty(), "{figure}");
    let rounding = &figure["rounding"];
    if rounding["low"].is_string() {
        let within = |low: &str, high: &str| {
            let figure = record as f64;
            number(&rounding[low]) <= figure && figure <= number(&rounding[high])
        };
        // Where no outline gives what lies in a range, the next wider range decides, and the neighbors are given.
        let is_hole = rounding["between"].is_array();
        assert!(!is_hole || rounding["could_explain"] != "yes", "{rounding}");
        if is_hole {
            let between = &rounding["between"];
            let (below, above) = (number(&between[0]), number(&between[1]));
            assert!(below < record as f64 && (record as f64) < above, "{rounding}");
            assert!(within("widest_low", "widest_high"), "{rounding}");
            assert!(rounding["could_explain"] == "no" || within("low", "high"), "{rounding}");
            return;
        }
        let answer = match (within("low", "high"), within("widest_low", "widest_high")) {
            (true, _) => "yes",
            (false, true) => "only against the rounding",
            (false, false) => "no",
        };
        assert_eq!(rounding["could_explain"], answer, "{rounding}");
    }
}

/// An L of whole inches with a porch, and a record near what both come to.
fn with_porch(seed: u64) -> (String, i64) {
    let mut random = Random::new(seed + 61_000_000);
    let (east, north) = (random.between(400, 640), random.between(320, 460));
    let (in_east, in_north) = (random.between(80, 260), random.between(60, 200));
    let (porch_east, porch_north) = (random.between(110, 190), random.between(70, 120));
    let inches = east * north - in_east * in_north + porch_east * porch_north;
    let record = inches / 144 + random.between(-30, 30);
    let walls = [north, east, north - in_north, in_east, in_north, east - in_east];
    let ways = ["north", "east", "south", "west", "south", "west"];
    let house: Vec<String> =
        ways.iter().zip(walls).map(|(way, wall)| format!("{way} {wall}\"")).collect();
    let porch = format!(
        "north {porch_north}\"\neast {porch_east}\"\nsouth {porch_north}\"\nwest {porch_east}\""
    );
    let text = format!(
        "record {record} sq ft\nlevel \"Ground floor\"\nliving \"House\"\n{}\nporch \"Porch\" start west 30'\n{porch}\n",
        house.join("\n")
    );
    (text, record)
}

/// The ends of the possible ranges, as in the column beside the areas: those of the house, and of the porch where it is
/// what is counted.
#[test]
fn the_rest_is_put_down_to_rounding_only_within_the_ranges_beside_the_areas() {
    let (mut within, mut beyond) = (0, 0);
    for seed in 0..800 {
        let (text, record) = with_porch(seed);
        let house = fairfoot::read("porch.sides", text).unwrap();
        let areas = house.areas(&Settings::default()).unwrap();
        let result = areas.reconcile(&Weights::default()).unwrap();
        let report = unwrapped(&result.report().text(Default::default()));
        let all: Value = serde_json::to_value(result.report().json()).unwrap();
        let figure = &all["figures"][0];
        let mut causes = figure["explanations"].as_array().unwrap().iter();
        let Some(told) = causes.find(|one| one["told"] == true) else { continue };
        let is_porch =
            ["counted: Porch", "under roof"].iter().any(|by| told["departures"][0] == *by);
        if !is_porch || told["departures"].as_array().unwrap().len() > 1 {
            continue;
        }
        let end = |name: &str| {
            let ends =
                all["spaces"].as_array().unwrap().iter().map(|space| {
                    space["whole_foot"][name].as_str().unwrap().parse::<f64>().unwrap()
                });
            ends.sum::<f64>()
        };
        let is_within = end("low") - 0.5 <= record as f64 && record as f64 <= end("high") + 0.5;
        let rest = steps_of(figure, "not explained");
        let is_rounded_one_way = report.contains("as fits the next row best");
        if rest.abs() < 1.0 || is_rounded_one_way {
            continue;
        }
        let is_said = report.contains("what is left, which rounding could make")
            || report.contains(
                "what is left, possible with walls near the half foot rounded the other way",
            );
        assert_eq!(is_said, is_within, "{} to {}: {report}", end("low"), end("high"));
        assert_ne!(is_said, report.contains(" not explained "), "{report}");
        assert!(is_said || !told_range(&report), "{report}");
        if is_said { within += 1 } else { beyond += 1 }
    }
    assert!(within > 10 && beyond > 10, "{within} within, {beyond} beyond");
}

/// Whether the first cause is said with a range that rounding could make.
fn told_range(report: &str) -> bool {
    let list = report.split("Possible: - ").nth(1).unwrap_or_default();
    let first = list.split(" - ").next().unwrap_or_default();
    first.split("Other reasons").next().unwrap_or_default().contains("rounding could make it")
}
