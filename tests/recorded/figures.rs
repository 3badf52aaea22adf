//! What a figure says of itself: its rule, its face, and whether it says so.

use fairfoot::{Areas, BridgeStep, Reconciliation, Settings, Ties};

use crate::{reconciled, told};

/// 30' 4" by 40': in tenths 30.3 × 40 = 1,212, in inches 1,213 1/3, in half feet 30.5 × 40 = 1,220, in whole feet 1,200.
fn figure(figure: &str) -> String {
    format!(
        "{figure}\nlevel \"G\"\nliving \"House\"\nnorth 30' 4\"\neast 40'\nsouth 30' 4\"\nwest 40'\n"
    )
}

#[test]
fn a_figure_is_rounded_as_it_says_and_a_record_to_the_foot_unless_it_says_otherwise() {
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
        let (_, reconciled) = reconciled(&figure(line));
        let found = reconciled.figures()[0].line(BridgeStep::Rounding).expect("a line").area();
        assert_eq!(found.sq_ft_text(), rounding, "{line}");
    }
}

#[test]
fn what_a_record_does_not_say_is_asked() {
    let is_asked =
        |line: &str| told(&figure(line)).contains("if the office rounds each wall to the");
    assert!(is_asked("record 1,300 sq ft"));
    assert!(!is_asked("record 1,300 sq ft sides whole-foot"));
    assert!(!is_asked("record 1,300 sq ft sides half-foot"));
    assert!(!is_asked("listing 1,300 sq ft"));
    let said = told(&figure("record 1,300 sq ft sides half-foot"));
    assert!(said.contains("rounding: each wall to the half foot, as the file says"), "{said}");
}

#[test]
fn the_settings_are_kept_with_what_was_worked_out_by_them() {
    let settings = Settings { ties: Ties::Down, ..Settings::default() };
    let sound = fairfoot::read("kept.sides", figure("record 1,300 sq ft")).expect("sound");
    let areas = Areas::of(&sound, &settings).expect("areas");
    let reconciliation = Reconciliation::of(&sound, areas, &settings).expect("a reconciliation");
    assert_eq!(reconciliation.settings().ties, Ties::Down);
}
