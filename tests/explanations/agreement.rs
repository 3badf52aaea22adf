//! Sentences, request, JSON and batch row of one figure never contradict each other, whatever face it is measured to,
//! whatever it counts and in whatever unit it is.

use std::fmt::Write as _;

use fairfoot::batch::{BatchOptions, Input, compute};
use fairfoot::{Settings, Weights};
use serde_json::Value;

use super::random::Random;

/// A rectangle with a garage, and a figure near what it comes to.
fn drawn(seed: u64) -> String {
    let mut random = Random::new(seed + 77_000_000);
    let mut inches = |low: u64, more: u64| low + random.pick(&(0..more).collect::<Vec<u64>>());
    let (w, h, off) = (inches(300, 400), inches(240, 260), inches(0, 260));
    let kind = ["record", "record", "listing", "plan"][inches(0, 4) as usize];
    let face = ["", " measured to inside", " measured to frame"][inches(0, 3) as usize];
    let counting = ["", " counting \"Garage\""][inches(0, 2) as usize];
    let sides = ["", " sides inch", " sides half-foot", " sides unknown"][inches(0, 4) as usize];
    let is_metric = inches(0, 5) == 0;
    let near = if inches(0, 2) == 0 { 4 } else { off };
    let garage = if counting.is_empty() { 0 } else { 400 };
    let sq_ft = w * h / 144 + garage + near - 2;
    let area = match is_metric {
        true => format!("{:.0} sq m", sq_ft as f64 * 0.092_903_04),
        false => format!("{sq_ft} sq ft"),
    };
    let mut text = format!("{kind} {area}{sides}{face}{counting}\nlevel \"G\"\nliving \"House\"\n");
    let square = |text: &mut String, east: u64, north: u64| {
        for (way, inches) in [("north", north), ("east", east), ("south", north), ("west", east)] {
            writeln!(text, "{way} {inches}\"").unwrap();
        }
    };
    square(&mut text, w, h);
    text.push_str("garage \"Garage\" start west 20'\n");
    square(&mut text, 240, 240);
    text
}

#[test]
fn nothing_said_of_a_figure_contradicts_anything_else_said_of_it() {
    let (mut agreeing, mut apart, mut explained) = (0, 0, 0);
    for seed in 0..300 {
        let text = drawn(seed);
        let house = fairfoot::read("drawn.sides", text.clone()).unwrap();
        let areas = house.areas(&Settings::default()).unwrap();
        // A wall of which only inches are outside the garage may vanish at another face.
        let Ok(result) = areas.reconcile(&Weights::default()) else { continue };
        let report = result.report().text(Default::default());
        let report = report.split_whitespace().collect::<Vec<_>>().join(" ");
        let json: Value = serde_json::to_value(result.report().json()).unwrap();
        let figure = &json["figures"][0];
        let request = figure["request"].as_str().unwrap();
        let cannot = report.contains("annot explain it");
        let is_agreed = request.contains("the two agree");
        let says_so = ["They agree ", "No difference."].iter().any(|said| report.contains(said));
        assert_eq!(is_agreed, says_so, "{report}");
        if is_agreed {
            agreeing += 1;
            let argued =
                ["Possible:", "To settle it", "o common cause fits", "Please", "Caution: the"];
            assert!(!cannot && argued.iter().all(|words| !report.contains(words)), "{report}");
        } else {
            apart += 1;
        }
        let could = figure["rounding"]["could_explain"].as_str();
        let is_no = could == Some("no");
        assert!(!cannot || is_no, "{report}");
        assert!(!report.contains("is neither.") || is_no, "{report}");
        assert!(
            !report.contains("what is left, which rounding could make")
                && !report.contains(
                    "what is left, possible if walls near the half foot were rounded the other way"
                )
                || !cannot
                || report.contains("Possible:"),
            "{report}"
        );
        let number = |value: &Value| value.as_str().unwrap().parse::<f64>().unwrap();
        let same_way = number(&figure["same_way"]).round() as i64;
        let row = compute("one", &Input::Sides(text), &BatchOptions::default());
        let row = &row.figures[0];
        assert_eq!(row.same_way, Some(same_way), "{report}");
        assert_eq!(row.gap_sq_ft, Some(row.sq_ft - same_way), "{report}");
        assert_eq!(row.rounding.map(fairfoot::reconcile::CouldExplain::words), could, "{report}");
        // A row looks for causes only where some may be reported, and shows the first of them.
        let first = result.figures()[0].explanations().reported().next();
        let (names, fits) =
            (first.map(|first| first.departures().join("; ")), first.map(|first| first.fits()));
        assert_eq!((&row.explanation, row.fits), (&names, fits), "{report}");
        explained += usize::from(first.is_some());
        for told in figure["bridge"].as_array().unwrap() {
            let is_possible =
                told["line"] == "counting" && told["counted"].as_array().is_none_or(Vec::is_empty);
            assert!(!is_possible || number(&told["sq_ft"]).abs() >= 1.0, "{report}");
        }
    }
    assert!(agreeing > 40 && apart > 60, "{agreeing} agree, {apart} do not");
    assert!(explained > 8, "{explained} have a cause");
}
