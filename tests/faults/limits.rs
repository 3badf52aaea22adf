//! What lies exactly on a limit is within it, and several statements of one kind are distinguished.

use fairfoot::diagnostic::Word;

use super::diagnostics_of;

const HOUSE: &str =
    "level \"Ground floor\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\n";

/// The code words of a text.
fn words(text: &str) -> Vec<Word> {
    let (_, list) = diagnostics_of("limits.sides", text.as_bytes().to_vec());
    list.iter().map(fairfoot::Diagnostic::word).collect()
}

/// The printed diagnostics of a text, with lines joined.
fn drawn(text: &str) -> String {
    let (source, list) = diagnostics_of("limits.sides", text.as_bytes().to_vec());
    let page = fairfoot::diagnostic::draw(&source, &list, false);
    page.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn a_tolerance_of_three_inches_is_not_wide_and_a_sixteenth_more_is() {
    assert!(!words(&format!("tolerance 3\"\n{HOUSE}")).contains(&Word::WideTolerance));
    assert!(words(&format!("tolerance 3 1/16\"\n{HOUSE}")).contains(&Word::WideTolerance));
}

#[test]
fn a_walk_that_misses_by_its_whole_tolerance_is_closed_by_one_side() {
    // Two sides north and south, each within half an inch: one inch is spread, a sixteenth more is a second side.
    let walk = |south: &str| {
        format!(
            "level \"Ground floor\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth {south}\nclose\n"
        )
    };
    let within = words(&walk("29' 11\""));
    assert!(within.contains(&Word::MisclosureSpread), "{within:?}");
    assert!(!words(&walk("29' 10 15/16\"")).contains(&Word::MisclosureSpread));
}

#[test]
fn a_wall_typed_twice_is_named_if_the_rest_closes_by_its_whole_tolerance() {
    // Three sides north and south, each within half an inch; without the second one the rest misses by 1 1/2 inches.
    let walk = |south: &str| {
        drawn(&format!(
            "level \"Ground floor\"\nliving \"House\"\nnorth 30'\nnorth 30'\neast 40'\nsouth {south}\nwest 40'\n"
        ))
    };
    let named = "side 2 (`north 30'`) is the same as the side before it";
    let back = ", and without it the walk comes back";
    assert!(walk("29' 10 1/2\"").contains(&format!("{named}{back}")));
    // Beside another error it is named too.
    assert!(walk("29' 10 7/16\"").contains(&format!("{named}:")));
}

#[test]
fn a_call_that_would_have_to_vanish_is_not_named_for_its_length() {
    let page = drawn(
        "lot \"Lot\"\nbearing N 0° E 120'\nbearing N 0° E 120'\nbearing N 90° E 45'\nbearing S 0° W 120'\nbearing S 90° W 45'\n",
    );
    assert!(page.contains("compare with the deed: side 4 (`bearing S 0° W 120'`)"), "{page}");
    assert!(!page.contains(" or side "), "{page}");
}

#[test]
fn an_upper_level_may_stand_on_two_levels_beside_each_other() {
    let room = |name: &str, start: &str, wide: &str| {
        format!("living \"{name}\" {start}\nnorth 30'\neast {wide}\nsouth 30'\nwest {wide}\n")
    };
    let house = |upper: &str| {
        format!(
            "level \"Low\"\n{}level \"Half\" beside\n{}level \"Upper\"\n{}",
            room("A", "", "20'"),
            room("B", "start east 20'", "20'"),
            room("C", "", upper)
        )
    };
    assert!(!words(&house("40'")).contains(&Word::UpperOverhangs));
    assert!(words(&house("42'")).contains(&Word::UpperOverhangs));
}

#[test]
fn a_corner_is_found_by_its_own_name() {
    // At the corner `door` the porch would overlap the house.
    let text = |corner: &str| {
        format!(
            "level \"Ground floor\"\nliving \"House\"\nnorth 30'\ncorner \"door\"\neast 40'\ncorner \"step\"\nsouth 30'\nwest 40'\nporch \"Porch\" from corner \"{corner}\"\neast 8'\nsouth 10'\nwest 8'\nnorth 10'\n"
        )
    };
    assert!(words(&text("step")).is_empty());
    assert!(words(&text("door")).contains(&Word::SpacesOverlap));
}

#[test]
fn a_notice_or_a_sale_of_another_year_is_asked_about() {
    let text = |notice: &str, sale: &str| {
        drawn(&format!(
            "value market $362,000 year 2026\nnotice {notice}\ntax rate 2.14 per $100\ncomparable \"Next door\" 1,200 sq ft sold $362,000 on {sale}\n{HOUSE}"
        ))
    };
    let fine = text("2026-04-17", "2026-01-03");
    assert!(!fine.contains("the tax year"), "{fine}");
    let notice = text("2025-04-17", "2026-01-03");
    assert!(notice.contains("the notice came in 2025, and the tax year is 2026"), "{notice}");
    let sale = text("2026-04-17", "2027-01-03");
    assert!(sale.contains("`Next door` was sold in 2027, after the tax year 2026"), "{sale}");
}

#[test]
fn a_distance_taped_across_may_be_off_by_its_whole_tolerance() {
    // A triangle of 30, 40 and 50 ft; two sides and the tape across, each within half an inch.
    let tie = |across: &str| words(&format!("{HOUSE}tie corner 1 to corner 3 {across}\n"));
    assert!(!tie("50' 1 1/2\"").contains(&Word::TieDiffers));
    assert!(tie("50' 1 9/16\"").contains(&Word::TieDiffers));
}

#[test]
fn a_space_in_a_notch_of_another_covers_none_of_its_ground() {
    let text = "level \"Ground floor\"\nliving \"House\"\nnorth 40'\neast 20'\nsouth 20'\neast 20'\nsouth 20'\nwest 40'\nporch \"Porch\" start east 20' north 20'\nnorth 10'\neast 10'\nsouth 10'\nwest 10'\n";
    assert!(!words(text).contains(&Word::SpacesOverlap));
}

#[test]
fn a_space_counted_against_the_rule_is_reported_with_who_stated_it() {
    let page = |words: &str| {
        let text = format!(
            "{HOUSE}porch \"Porch\" start east 40' {words}\nnorth 10'\neast 10'\nsouth 10'\nwest 10'\n"
        );
        let house = fairfoot::read("limits.sides", text).unwrap();
        let areas = house.areas(&fairfoot::Settings::default()).unwrap();
        let reconciliation = areas.reconcile(&fairfoot::Weights::default()).unwrap();
        let text = reconciliation.report().text(Default::default());
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    assert!(page("counted").contains("as stated by"));
    assert!(!page("").contains("as stated by"));
}
