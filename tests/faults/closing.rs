//! A walk that does not close is told how far, which way, and which sides to measure again.

use crate::told;

/// What is told, its lines joined.
fn drawn(sides: &str) -> String {
    let text = format!("level \"Ground floor\"\nliving \"House\"\n{sides}");
    let (source, list) = told("walk.sides", text.into_bytes());
    let page = fairfoot::diagnostic::draw(&source, &list, false);
    page.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn the_way_and_both_sums_are_told() {
    let page = drawn("north 30'\neast 40'\nsouth 29' 6\"\nwest 40'\n");
    assert!(page.contains("the walk round ends 6\" north of where it began"), "{page}");
    assert!(page.contains("the sides north add up to 30', the sides south to 29' 6\""), "{page}");
    assert!(
        page.contains("measure again: side 1 (`north 30'`) or side 3 (`south 29' 6\"`)"),
        "{page}"
    );
}

#[test]
fn an_ordinary_slip_is_asked_about_first() {
    // 24 typed as 42: digits swapped; the other side of the axis could hold it too.
    let page = drawn("north 42'\neast 40'\nsouth 24'\nwest 40'\n");
    assert!(page.contains("digits swapped?"), "{page}");
    // 30' 7" typed as 30'.
    let page = drawn("north 30'\neast 40'\nsouth 30' 7\"\nwest 40'\n");
    assert!(page.contains("inches left off?"), "{page}");
    // East walked, west typed twice.
    let page = drawn("north 30'\nwest 40'\nsouth 30'\nwest 40'\n");
    assert!(page.contains("walked the other way?"), "{page}");
}

#[test]
fn no_length_to_write_is_ever_told() {
    let page = drawn("north 42'\neast 40'\nsouth 24' 3\"\nwest 40'\n");
    for line in page.lines().filter(|line| line.contains("help")) {
        assert!(!line.contains("24'\"") && !line.contains("42' 3\""), "{line}");
    }
    assert!(page.contains("by closing"), "{page}");
}

#[test]
fn a_wall_left_out_is_asked_about() {
    let page = drawn("north 42' 7\"\neast 30' 4\"\neast 8' 6\"\nsouth 30' 7\"\nwest 38' 10\"\n");
    assert!(page.contains("12' north"), "{page}");
    let asked = "between side 2 (`east 30' 4\"`) and side 3 (`east 8' 6\"`) the walk does not turn: is a wall";
    assert!(
        page.replace("\n", " ").split_whitespace().collect::<Vec<_>>().join(" ").contains(asked),
        "{page}"
    );
}

#[test]
fn a_miss_within_the_tolerances_is_spread_and_told() {
    let page = drawn("north 30'\neast 40'\nsouth 30' 1\"\nwest 40'\n");
    assert!(page.contains("warning[misclosure-spread]"), "{page}");
    let page = drawn("north 30'\neast 40'\nsouth 30' 1 1/16\"\nwest 40'\n");
    assert!(page.contains("error[does-not-close]"), "{page}");
}
