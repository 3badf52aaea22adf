//! Lines that a known answer missed by one word: what is offered, once typed, gives the house that was meant. The areas
//! were worked out here by hand.

use fairfoot::{Diagnostic, Settings};

use super::diagnostics_of;

const HEADS: &str = "property \"9 Alder Lane, Juniper County\"\nfront south\n";
/// A house of 30 by 40 feet.
const WALLS: &str = "living \"House\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\n";
/// Another floor of that size above it.
const UPPER: &str = "living \"Rooms\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\n";

fn errors(text: &str) -> Vec<Diagnostic> {
    let (_, list) = diagnostics_of("reworded.sides", text.as_bytes().to_vec());
    list.into_iter().filter(Diagnostic::is_error).collect()
}

fn helps(text: &str) -> String {
    let list = errors(text);
    list.iter().flat_map(Diagnostic::helps).cloned().collect::<Vec<_>>().join("\n")
}

/// The text with every error's first suggestion in its place.
fn obeyed(text: &str) -> String {
    let mut fixed = text.to_owned();
    for error in errors(text).iter().rev() {
        let fix = error.fixes().first().unwrap_or_else(|| panic!("{text}: {error:?}"));
        fixed.replace_range(fix.span.start..fix.span.end, &fix.text);
    }
    assert!(errors(&fixed).is_empty(), "{fixed}\n{:?}", errors(&fixed));
    fixed
}

/// The gross area above grade in whole square feet.
fn gross(text: &str) -> i64 {
    let source = fairfoot::Source::new("reworded.sides", text);
    let house = fairfoot::read_source(source).unwrap();
    house.areas(&Settings::default()).unwrap().gross().as_measured().whole_sq_ft()
}

#[test]
fn a_basement_that_is_not_this_level_puts_it_nowhere_in_the_ground() {
    for line in [
        "level Upstairs (no basement)",
        "level \"Upstairs\" no basement",
        "second floor, no basement",
        "level \"Upstairs\" without a basement",
        "level \"Upstairs\" over the basement",
        "level Upstairs (above basement)",
    ] {
        let text = format!("{HEADS}veneer none\nlevel \"Ground floor\"\n{WALLS}{line}\n{UPPER}");
        assert_eq!(gross(&obeyed(&text)), 2400, "{line}");
    }
    // What lies in the ground still does.
    let text = format!(
        "{HEADS}veneer none\nlevel \"Ground floor\"\n{WALLS}level \"Lower\" basement, finished\n{UPPER}"
    );
    assert_eq!(gross(&obeyed(&text)), 1200);
}

#[test]
fn the_walls_on_the_line_of_a_house_stand_below_it() {
    for line in [
        "living house 30' north, 40' east, 30' south, 40' west",
        "house: north 30', east 40', south 30', west 40'",
        "living \"House\" 30' north, 40' east, 30' south, 40' west",
    ] {
        let text = format!("{HEADS}veneer none\nlevel \"Ground floor\"\n{line}\n");
        assert_eq!(gross(&obeyed(&text)), 1200, "{line}");
    }
    let text = format!(
        "{HEADS}veneer none\nunits meters\nlevel \"Ground floor\"\nfarmhouse 12.50 m north, 9.35 m east, 12.50 m south, 9.35 m west\n"
    );
    assert!(obeyed(&text).contains("living \"Farmhouse\"\nnorth 12.50 m\neast 9.35 m\n"));
}

#[test]
fn a_name_between_a_level_and_its_walls_is_that_of_its_space() {
    let text = format!(
        "{HEADS}veneer none\nlevel \"Ground floor\"\nMain\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\n"
    );
    assert_eq!(gross(&obeyed(&text)), 1200);
}

#[test]
fn strips_on_both_sides_are_two_spaces() {
    // Two strips of 4 by 30 feet leave 32 of 40 feet of the upper floor.
    for line in [
        "low \"Eaves\" under 5 ft, 4' x 30' each side",
        "low \"Kneewalls\" 4' x 30' both sides",
        "eaves 4' by 30' on both sides",
    ] {
        let text = format!(
            "{HEADS}veneer none\nlevel \"Ground floor\"\n{WALLS}level \"Upper floor\"\n{UPPER}{line}\n"
        );
        assert_eq!(gross(&obeyed(&text)), 1200 + 32 * 30, "{line}");
    }
}

#[test]
fn a_slant_with_two_lengths_runs_that_far_each_way() {
    // A corner of 3 by 2 feet is cut off: 3 square feet less.
    for line in ["SW 2' over and 3' down", "SW 3' down, 2' over", "SW bay 2' left, 3' down"] {
        let text = format!(
            "{HEADS}veneer none\nlevel \"Ground floor\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 27'\n{line}\nwest 38'\n"
        );
        assert_eq!(gross(&obeyed(&text)), 1197, "{line}");
    }
}

#[test]
fn a_curve_of_a_deed_has_its_chord_and_the_strip_that_this_leaves_out() {
    // A quarter of a circle of 25 feet: its length is 39.27 feet, its chord 25 √2 = 35.36 feet, and the strip between
    // them π 25² / 4 − 25² / 2 = 178.4 square feet.
    let lot = format!(
        "{HEADS}veneer none\nlevel \"Ground floor\"\n{WALLS}lot \"Lot 4\"\nbearing N 0° E 100'\n"
    );
    for line in [
        "curve right R=25' L=39.27'",
        "curve to the left, radius 25', arc length 39.27'",
        "arc N 45° E 35.36' rise 7.32' west",
    ] {
        let told = helps(&format!("{lot}{line}\nbearing S 0° E 100'\nclose\n"));
        assert!(told.contains("35.36'"), "{line}: {told}");
        assert!(told.contains("about 178 sq ft"), "{line}: {told}");
    }
}

#[test]
fn two_walls_by_closing_that_are_named_by_where_they_stand_exchange_their_ways() {
    // 38 feet 5 inches by 58 feet 4 inches, without two corners: on the north side the last 26 feet 5 inches are set
    // 4 feet 4 inches back, and on the south side the first 36 feet stand back by 5 feet 7 inches.
    let walk = "veneer none\nlevel \"Ground floor\"\nliving \"House\"\nnorth 38' 5\"\neast 31' 11\"\nsouth 4' 4\"\nnorth by closing\neast by closing\nwest 22' 4\"\nnorth 5' 7\"\nwest 36'\n";
    let told = helps(&format!("{HEADS}{walk}"));
    let wanted = "type `east by closing` for side 4 (`north by closing`) and `south by closing` for side 5 (`east by closing`), which leaves them 26' 5\" and 39' 8\"";
    assert!(told.contains(wanted), "{told}");
    let walk = walk
        .replace("north by closing", "EAST by closing")
        .replace("east by closing", "south by closing")
        .replace("EAST", "east");
    let text = format!("{HEADS}{walk}");
    assert!(errors(&text).is_empty(), "{:?}", errors(&text));
    // In inches: 461 × 700 − 52 × 317 + 67 × 268, over 144.
    assert_eq!(gross(&text), 2251);
}

#[test]
fn an_upper_floor_without_brick_says_so_itself() {
    let text = format!(
        "{HEADS}level \"Ground floor\"\n{WALLS}level \"Upper floor\"\nliving \"Rooms\" measured to inside\nnorth 28'\neast 38'\nsouth 28'\nwest 38'\n"
    );
    let (_, list) = diagnostics_of("reworded.sides", text.into_bytes());
    let warning = list.iter().find(|one| one.word().as_str() == "assumed-veneer").unwrap();
    assert_eq!(
        warning.helps()[0],
        "if `Upper floor` has no brick or stone before its walls, write `veneer none` at the end of this line"
    );
}

#[test]
fn dashes_between_feet_and_inches_are_read_in_every_place_of_a_line() {
    // An opening of 9 by 7 feet in an upper floor of 1,200 square feet.
    let text = format!(
        "{HEADS}veneer none\nlevel \"Ground floor\"\n{WALLS}level \"Upper floor\"\n{UPPER}Foyer open to below 9-0 x 7-0 on front, 15-0 from left\n"
    );
    assert_eq!(gross(&obeyed(&text)), 2400 - 63);
    let walk = "living \"House\"\nnorth 30'\neast 40'\nsouth 30'\nwest 16'\n";
    let bay = format!(
        "{HEADS}veneer none\nlevel \"Ground floor\"\n{walk}bay window (angled) 8-0 wide 2-0 deep 4-0 flat\nwest 16'\n"
    );
    // Its front of 4 feet and two slants of 2 feet each way: 12 square feet more.
    assert_eq!(gross(&obeyed(&bay)), 1212);
}

#[test]
fn what_was_measured_with_is_no_year() {
    let text = format!(
        "property \"9 Alder Lane, Juniper County\"\nmeasured sat. march 7 with a 25 ft tape\nveneer none\nlevel \"Ground floor\"\n{WALLS}"
    );
    let told = helps(&text);
    assert!(told.contains("the year, and then `-03-07 with \"a 25 ft tape\"`"), "{told}");
}

#[test]
fn a_wall_with_dashes_and_a_remark_is_one_of_its_walk() {
    // 28 by 40 feet with a bay 8 feet wide in the east wall, between 10 and 10 feet of it.
    let text = format!(
        "{HEADS}veneer none\nlevel \"Ground floor\"\nliving \"House\"\nleft side 28-0\nback side 40-0\nright side 10-0 to bay\nbay south 8' out 2' flat 4'\nright side 10-0\nfront side 40-0\n"
    );
    let told = helps(&text);
    assert!(
        told.contains(
            "`east 40' 0\"`, `south 10' 0\" note \"right side to bay\"`, `south 10' 0\"`"
        ),
        "{told}"
    );
}

#[test]
fn an_area_without_its_unit_is_asked_about_in_a_metric_file() {
    let text = "property \"9 Alder Lane, Juniper County\"\nunits meters\nrecord 114.5\nveneer none\nlevel \"Ground floor\"\nliving \"House\"\nnorth 10\neast 11.45\nsouth 10\nwest 11.45\n";
    assert!(helps(text).contains("`record 114.5 sq m` or `record 114.5 sq ft`"), "{}", helps(text));
}

#[test]
fn a_wall_with_a_jog_behind_it_is_two_walls() {
    // A house of 30 by 40 feet whose last 10 feet to the east end 6 feet sooner.
    let text = format!(
        "{HEADS}veneer none\nlevel \"Ground floor\"\nliving \"House\"\nnorth 30'\neast 30' then jog in 6'\neast 10'\nsouth 24'\nwest 40'\n"
    );
    let told = helps(&text);
    assert!(told.contains("`east 30'` and on the next line `south 6'`"), "{told}");
    let text = text.replace("east 30' then jog in 6'", "east 30'\nsouth 6'");
    assert!(errors(&text).is_empty());
    assert_eq!(gross(&text), 1140);
}
