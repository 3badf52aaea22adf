//! What a figure states about itself: its rule, its face, or neither.

use fairfoot::Settings;

use fairfoot::reconcile::BridgeStep;

use fairfoot::units::Halves;

use super::{reconciled, text_report};

/// 30' 4" by 40': in tenths 30.3 × 40 = 1,212, in inches 1,213 1/3, in half feet 30.5 × 40 = 1,220, in whole feet
/// 1,200.
fn figure(figure: &str) -> String {
    format!(
        "{figure}\nlevel \"G\"\nliving \"House\"\nnorth 30' 4\"\neast 40'\nsouth 30' 4\"\nwest 40'\n"
    )
}

#[test]
fn a_figure_is_rounded_by_its_stated_rule_and_a_record_by_default_to_the_foot() {
    for (line, rounding) in [
        ("record 1,300 sq ft", "-12"),
        ("record 1,300 sq ft sides whole-foot", "-12"),
        ("record 1,300 sq ft sides half-foot", "8"),
        ("record 1,300 sq ft sides inch", "1.333333"),
        ("record 1,300 sq ft sides tenth-foot", "0"),
        ("record 1,300 sq ft sides unknown", "0"),
        ("listing 1,300 sq ft", "0"),
        ("listing 1,300 sq ft sides whole-foot", "-12"),
        ("plan 1,300 sq ft sides half-foot", "8"),
        ("figure \"insurer's sheet\" 1,300 sq ft", "0"),
        ("figure \"insurer's sheet\" 1,300 sq ft sides whole-foot", "-12"),
    ] {
        let reconciled = reconciled(&figure(line));
        let found = reconciled.figures()[0].line(BridgeStep::Rounding).expect("a line").area();
        assert_eq!(found.sq_ft_text(), rounding, "{line}");
    }
}

#[test]
fn a_rounding_rule_not_stated_by_the_record_is_asked_about() {
    let is_asked =
        |line: &str| text_report(&figure(line)).contains("if the office rounds each wall to the");
    assert!(is_asked("record 1,300 sq ft"));
    assert!(!is_asked("record 1,300 sq ft sides whole-foot"));
    assert!(!is_asked("record 1,300 sq ft sides half-foot"));
    assert!(!is_asked("listing 1,300 sq ft"));
    let said = text_report(&figure("record 1,300 sq ft sides half-foot"));
    assert!(
        said.contains(
            "rounding: each wall to the half foot, as whoever measured understands the record"
        ),
        "{said}"
    );
}

#[test]
fn results_keep_the_settings_that_produced_them() {
    let settings = Settings { halves: Halves::Down, ..Settings::default() };
    let checked = fairfoot::read("kept.sides", figure("record 1,300 sq ft")).expect("sound");
    let areas = checked.areas(&settings).expect("areas");
    let reconciliation = areas.reconcile(&fairfoot::Weights::default()).expect("a reconciliation");
    assert_eq!(reconciliation.settings().halves, Halves::Down);
}

#[test]
fn a_figure_between_two_that_whole_feet_give_is_given_by_neither() {
    // 40' 6" is 40 or 41 ft: 28 × 40 = 1,120 or 28 × 41 = 1,148. Against the rounding 28' 2" is 29 too: 1,160, 1,189.
    let house = |record: &str| {
        format!(
            "record {record} sq ft\nlevel \"G\"\nliving \"House\"\nnorth 28' 2\"\neast 40' 6\"\nsouth 28' 2\"\nwest 40' 6\"\n"
        )
    };
    let between = |record: &str| {
        let reconciled = reconciled(&house(record));
        let between = reconciled.figures()[0].rounding_test().between();
        between.map(|between| (between.below.whole_sq_ft(), between.above.whole_sq_ft()))
    };
    assert_eq!(between("1,120"), None);
    assert_eq!(between("1,121"), Some((1_120, 1_148)));
    assert_eq!(between("1,140"), Some((1_120, 1_148)));
    assert_eq!(between("1,148"), None);
    assert_eq!(between("1,149"), Some((1_148, 1_160)));
    assert_eq!(between("1,170"), Some((1_160, 1_189)));
    assert_eq!(between("1,190"), None);
    let report = text_report(&house("1,135"));
    assert!(
        report.contains("Rounding walls to the foot cannot explain it: however each wall is rounded to the foot, up or down, the nearest possible totals are 1,120 and 1,148; the record is 1,135."),
        "{report}"
    );
    let report = text_report(&house("1,170"));
    assert!(
        report.contains("Rounding alone cannot explain it: however each wall is rounded to the foot, up or down, the nearest possible totals are 1,160 and 1,189; the record is 1,170."),
        "{report}"
    );
    let report = text_report(&house("1,135").replace("record", "listing"));
    assert!(
        report.contains("If its walls were rounded to the foot, this house could be 1,120 or 1,148 as a rule, and 1,120, or 1,148 to 1,189 with walls rounded either way; the listing, 1,135, is neither."),
        "{report}"
    );
    // With an opening of 10' by 10' 6" deducted, 100 or 110: 1,010, 1,020, 1,038 or 1,048.
    let opening = |record: &str| {
        format!(
            "{}open \"Void\" start north 5' east 5'\nnorth 10'\neast 10' 6\"\nsouth 10'\nwest 10' 6\"\n",
            house(record)
        )
    };
    let reconciled = reconciled(&opening("1,030"));
    let between = reconciled.figures()[0].rounding_test().between().expect("nothing there");
    assert_eq!((between.below.whole_sq_ft(), between.above.whole_sq_ft()), (1_020, 1_038));
}

#[test]
fn only_slanted_and_curved_walls_are_reported_as_computed() {
    let head =
        "record 1,300 sq ft\nfaces inside\nveneer none\nwall 6\"\nlevel \"G\"\nliving \"House\"\n";
    let computed = "The house has slanted or curved walls";
    let square = format!("{head}north 30'\neast 40'\nsouth 30'\nwest 40'\n");
    assert!(!text_report(&square).contains(computed));
    let slanted =
        format!("{head}north 30'\neast 35'\ndiagonal south 5' east 5'\nsouth 25'\nwest 40'\n");
    assert!(text_report(&slanted).contains(computed));
    // Where its slant does not move it is exact.
    assert!(!text_report(&slanted.replace("faces inside\n", "")).contains(computed));
}

#[test]
fn possible_totals_use_the_step_and_face_of_the_figure() {
    // 30' 4" is within 0.15 ft of 30' 3", where rounding to half feet changes: 30 or 30.5 by 40. In whole feet it
    // is 30 alone.
    let range = |text: &str| {
        let reconciled = reconciled(text);
        let range = reconciled.figures()[0].rounding_test().range().expect("a range");
        (range.low.sq_ft_text(), range.high.sq_ft_text())
    };
    let is = |low: &str, high: &str| (low.to_owned(), high.to_owned());
    assert_eq!(range(&figure("record 1,300 sq ft sides half-foot")), is("1200", "1220"));
    assert_eq!(range(&figure("record 1,300 sq ft")), is("1200", "1200"));
    // At the frame, 4 5/8" in on every side: 29' 6 3/4" and 39' 2 3/4", so 29 or 30 by 39. Half feet: 29.5 by 39 or
    // 39.5.
    let brick = |line: &str| format!("veneer 4 5/8\"\n{}", figure(line));
    let frame = "record 1,300 sq ft measured to frame";
    assert_eq!(range(&brick(frame)), is("1131", "1170"));
    assert_eq!(range(&brick(&format!("{frame} sides half-foot"))), is("1150.5", "1165.25"));
}

#[test]
fn weights_of_ones_own_are_chances() {
    use fairfoot::Weights;
    // The starting weights, with one of them changed.
    let with = |key: &str, chance: f64| {
        let text = include_str!("../../src/reconcile/weights.json");
        let mut all: serde_json::Value = serde_json::from_str(text).expect("the starting weights");
        all[key] = serde_json::json!({ "chance": chance, "reason": "tried" });
        Weights::from_json(&all.to_string())
    };
    assert!(with("face", 0.0).is_ok() && with("face", 0.99).is_ok());
    for chance in [1.0, -0.01, 1.5] {
        assert!(with("face", chance).is_err(), "{chance}");
    }
    // Those of rounding together: 0.03 + 0.01 + 0.05 + 0.03 in addition.
    assert!(with("not_rounded", 0.87).is_ok());
    assert!(with("not_rounded", 0.89).is_err());
    assert!(with("a name of no meaning", 0.1).is_err());
}

#[test]
fn spaces_that_a_figure_counts_are_part_of_its_rounding_test() {
    // To the whole foot 28 × 43 = 1,204, and a porch of 10 by 10 ft: 1,304 is just what rounding gives, and 1,404 is not.
    for (record, whether) in [
        (1_304, fairfoot::reconcile::CouldExplain::Yes),
        (1_404, fairfoot::reconcile::CouldExplain::No),
    ] {
        let text = format!(
            "record {record} sq ft counting \"Porch\"\nlevel \"G\"\nliving \"House\"\nnorth 28' 4\"\neast 42' 7\"\nsouth 28' 4\"\nwest 42' 7\"\nporch \"Porch\" start west 10'\nnorth 10'\neast 10'\nsouth 10'\nwest 10'\n"
        );
        let checked = fairfoot::read("house.sides", text).expect("sound");
        let settings = fairfoot::Settings::default();
        let areas = checked.areas(&settings).expect("areas");
        let all = areas.reconcile(&fairfoot::Weights::default()).expect("figures");
        let figure = &all.figures()[0];
        assert_eq!(figure.rounding_test().could_explain(), Some(whether), "{record}");
        let counting = figure
            .line(fairfoot::reconcile::BridgeStep::Counting)
            .expect("a line of what it counts");
        assert_eq!(counting.area().sq_ft_text(), "100");
    }
}
