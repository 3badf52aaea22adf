//! Pads typed as loosely as they were jotted down: what they say is read, asked for, or said to belong elsewhere, and no
//! answer leads away from the house that is meant. The areas were worked out here by hand.

use fairfoot::{Diagnostic, Settings};

use super::diagnostics_of;

const WALLS: &str = "north 30'\neast 40'\nsouth 30'\nwest 40'\n";

fn diagnostics(text: &str) -> Vec<Diagnostic> {
    diagnostics_of("loosely.sides", text.as_bytes().to_vec()).1
}

/// Each diagnostic by its word, its message and its helps.
fn said(text: &str) -> String {
    let one = |diagnostic: &Diagnostic| {
        format!(
            "{}: {}\n{}\n",
            diagnostic.word(),
            diagnostic.message(),
            diagnostic.helps().join("\n")
        )
    };
    diagnostics(text).iter().map(one).collect()
}

/// The text with the first line that is offered for its only error.
fn obeyed(text: &str, which: usize) -> String {
    let errors: Vec<Diagnostic> =
        diagnostics(text).into_iter().filter(Diagnostic::is_error).collect();
    let [error] = &errors[..] else { panic!("{errors:?}") };
    let fix = error.fixes().get(which).unwrap_or_else(|| panic!("{error:?}"));
    let mut text = text.to_owned();
    text.replace_range(fix.span.start..fix.span.end, &fix.text);
    let left = diagnostics(&text);
    assert!(!left.iter().any(Diagnostic::is_error), "{text}\n{left:?}");
    text
}

fn living(text: &str) -> i64 {
    let house = fairfoot::read_source(fairfoot::Source::new("loosely.sides", text)).unwrap();
    house.areas(&Settings::default()).unwrap().gross().as_measured().whole_sq_ft()
}

#[test]
fn a_place_on_a_line_of_its_own_is_put_on_the_line_of_its_space() {
    let house = format!("veneer none\nlevel \"Ground floor\"\nliving \"House\"\n{WALLS}");
    let foyer = "north 10'\neast 10'\nsouth 10'\nwest 10'\n";
    let said = said(&format!("{house}open \"Foyer\" open to below\nstart east 13'\n{foyer}"));
    assert!(
        said.contains(
            "write this line as `open \"Foyer\" start east 13'` and leave the line below it out"
        ),
        "{said}"
    );
    // 40 by 30 feet less 10 by 10.
    assert_eq!(living(&format!("{house}open \"Foyer\" start east 13'\n{foyer}")), 1_100);
    let said = self::said(&format!("{house}garage \"Garage\"\nstarts at east 40'\n{foyer}"));
    assert!(
        said.contains("write the line above it as `garage \"Garage\" start east 40'`"),
        "{said}"
    );
}

#[test]
fn a_house_less_one_of_its_corners_is_six_walls() {
    // 42 by 30 feet less 14 by 9: 1,260 less 126.
    for corner in ["at front right", "at the SE corner", "back left", "in the north-west corner"] {
        for (size, notch, offers) in [
            ("42' x 30'", "14' x 9'", 2),
            ("42' wide x 30' deep", "14' x 9'", 1),
            ("42 x 30", "9 x 14", 2),
        ] {
            let text = format!(
                "veneer none\nfront south\nlevel \"Ground floor\"\nliving \"House\" {size} less {notch} {corner}\n"
            );
            for which in 0..offers {
                assert_eq!(living(&obeyed(&text, which)), 1_134, "{text}");
            }
        }
    }
    let said = said("level \"Ground floor\"\nhouse 42 x 30 minus a notch 14 x 9 at front right\n");
    assert!(said.contains("as `front south`, on a line at the top"), "{said}");
    // A notch as long as the house leaves no corner.
    let said =
        self::said("level \"Ground floor\"\nhouse 42' x 30' less 42' x 9' at the SE corner\n");
    assert!(!said.contains("six walls"), "{said}");
}

#[test]
fn levels_typed_from_the_top_down_are_told_once() {
    let upper =
        "level \"Upper floor\"\nliving \"Bedrooms\"\nnorth 24'\neast 30'\nsouth 24'\nwest 30'\n";
    let ground = format!(
        "level \"Ground floor\"\nliving \"House\"\n{WALLS}garage \"Garage\" from \"House\" corner 4\nnorth 20'\neast 20'\nsouth 20'\nwest 20'\n"
    );
    let words = |text: &str| -> Vec<String> {
        diagnostics(text).iter().map(|one| one.word().to_string()).collect()
    };
    let head = "property \"9 Alder Lane, Juniper County\"\nveneer none\nfront south\n";
    assert_eq!(words(&format!("{head}{upper}{ground}")), ["levels-out-of-order"]);
    let in_order = words(&format!("{head}{ground}{upper}"));
    assert!(!in_order.contains(&"levels-out-of-order".to_owned()), "{in_order:?}");
    // Names that do not say which lies over which.
    let named = |one: &str, two: &str| {
        format!("{head}{upper}{ground}").replace("Upper floor", one).replace("Ground floor", two)
    };
    assert!(!words(&named("North wing", "South wing")).contains(&"levels-out-of-order".to_owned()));
    assert!(words(&named("2nd", "1st floor")).contains(&"levels-out-of-order".to_owned()));
}

#[test]
fn a_garage_above_the_house_waits_for_it() {
    let text = format!(
        "front south\nlevel \"Ground floor\"\ngarage 20 x 22 attached, right side of house\nliving \"House\"\n{WALLS}"
    );
    let said = said(&text);
    assert!(
        said.contains("below the walls of `House`; where it stands is answered there"),
        "{said}"
    );
}

#[test]
fn a_wall_at_which_the_walk_doubles_back_is_the_one_to_look_at() {
    // The front of the garage, 22 feet, was walked west.
    let walk = "N 30' 4\"\neast by closing\nN 4'\nE 14' 2\"\nsouth by closing\nE 22'\nS 24'\nE 22'\nW 36' 2\"\n";
    let text = format!("veneer none\nlevel \"Ground floor\"\nliving \"House\"\n{walk}");
    let said = said(&text);
    assert!(said.contains("look which way side 8 (`E 22'`) runs: walked west"), "{said}");
    assert!(!said.contains("measure again first"), "{said}");
    // 36' 2" by 30' 4" with 14' 2" by 4' on it, and the garage of 22' by 24' beside it.
    let mended = text.replacen("S 24'\nE 22'", "S 24'\nW 22'", 1);
    assert_eq!(living(&mended), 1_682);
}

#[test]
fn two_equal_walls_in_a_row_may_be_one_typed_twice() {
    let text = "veneer none\nlevel \"Ground floor\"\nliving \"House\"\nnorth 30'\neast 20'\neast 20'\nsouth 30'\nwest by closing\n";
    let said = said(text);
    assert!(
        said.contains("is it one wall, typed twice? Then take the line of side 3 (`east 20'`) out"),
        "{said}"
    );
    let other = said_of_lengths("20'", "22'");
    assert!(
        other.contains("is a wall left out between the two?") && !other.contains("typed twice"),
        "{other}"
    );
}

fn said_of_lengths(one: &str, two: &str) -> String {
    said(&format!(
        "veneer none\nlevel \"Ground floor\"\nliving \"House\"\nnorth 30'\neast {one}\neast {two}\nsouth by closing\nwest 42'\n"
    ))
}

#[test]
fn three_walls_of_a_square_bay_are_three_walls() {
    let walk = "north 30'\neast 40'\nsouth 30'\nwest 16'\nsouth 2' bay\nwest 8' bay\nnorth 2' bay\nwest 16'\n";
    let text = format!("veneer none\nlevel \"Ground floor\"\nliving \"House\"\n{walk}");
    let mut mended = text.clone();
    for error in diagnostics(&text).iter().rev() {
        let fix = error.fixes().first().unwrap_or_else(|| panic!("{error:?}"));
        mended.replace_range(fix.span.start..fix.span.end, &fix.text);
    }
    assert_eq!(living(&mended), 1_216);
    // The middle one as a bay, between its two other sides.
    let text = text.replace(" bay", "").replace("west 8'", "bay west 8' out 2' flat 8'");
    assert_eq!(living(&obeyed(&text, 0)), 1_216);
}

#[test]
fn walls_of_a_garage_without_a_garage_are_asked_about() {
    let walk = "north 30'\neast 20'\neast 20'  # gar\nsouth 30' note \"garage\"\nwest 40'\n";
    let text = format!("veneer none\nlevel \"Ground floor\"\nliving \"House\"\n{walk}");
    let said = said(&text);
    assert!(
        said.contains("named-otherwise") && said.contains("noted as those of a garage"),
        "{said}"
    );
    let garage = "garage \"Garage\" within \"House\" start east 20'\nnorth 30'\neast 20'\nsouth 30'\nwest 20'\n";
    assert!(!self::said(&format!("{text}{garage}")).contains("named-otherwise"));
    assert!(!self::said(&text.replacen("  # gar", "", 1)).contains("named-otherwise"));
}

#[test]
fn what_a_comment_would_hide_is_said_to_belong_elsewhere() {
    let house = format!("front south\nlevel \"Ground floor\"\nliving \"House\"\n{WALLS}");
    for (line, told) in [
        (
            "Upstairs taped inside 28-10 x 24-8, walls 8 in.  No bay up.",
            "`wall 8 in`, and with it `veneer none`",
        ),
        (
            "living \"Rooms\" measured to inside ext walls 6\"",
            "`wall 6 in`, and with it `veneer none`",
        ),
    ] {
        let said = said(&format!("{house}{line}\n"));
        assert!(said.contains(told), "{said}");
    }
    let said = said(&format!("Old farmhouse, Tarn End, county of Wexby - all in m\n{house}"));
    assert!(
        said.contains("`units meters`") && !said.contains("says nothing about the house"),
        "{said}"
    );
    let deed = "Lot per deed: N 12°30' E 220.4 ft; S 77°30' E 330 ft; S 12°30' W 220.4 ft; N 77°30' W 330 ft to POB. 1.67 ac";
    let said = self::said(&format!("{deed}\n{house}"));
    assert!(!said.contains("`# Lot") && said.contains("bearing"), "{said}");
}

#[test]
fn rooms_and_the_wall_between_them_add_up_to_one_wall() {
    let text = "veneer none\nlevel \"Ground floor\"\nliving \"House\" measured to outside\nnorth 18'2\" + 5\" wall + 15'0\"; ext walls 6\"\neast 20'\nsouth 33' 7\"\nwest 20'\n";
    // 33' 7" by 20'.
    assert_eq!(living(&obeyed(text, 0)), 672);
    assert!(said(text).contains("`wall 6\"`"), "{}", said(text));
}

#[test]
fn a_wall_called_by_its_side_between_ways_runs_across_them() {
    let text = "veneer none\nfront south\nlevel \"Ground floor\"\nliving \"House\"\nnorth 28'\nback not measured\nsouth 28'\nwest 42'\n";
    assert_eq!(living(&obeyed(text, 0)), 1_176);
}

#[test]
fn feet_with_a_point_are_asked_about_beside_another_space_in_feet_and_inches() {
    let house = "veneer none\nlevel \"Ground floor\"\nliving \"House\"\nnorth 30' 2\"\neast 40'\nsouth 30' 2\"\nwest 40'\n";
    let garage = |wall: &str| {
        format!(
            "{house}garage \"Garage\" from \"House\" corner 4\nnorth 20\neast {wall}\nsouth 20\nwest {wall}\n"
        )
    };
    let said = said(&garage("22.6"));
    assert!(said.contains("tenths-beside-inches") && said.contains("type `22' 6\"`"), "{said}");
    for wall in ["22.6'", "22.75", "22"] {
        assert!(!self::said(&garage(wall)).contains("tenths-beside-inches"), "{wall}");
    }
}

/// Below the walls of a house of 40 by 30 feet that faces south.
fn below(line: &str) -> String {
    format!("veneer none\nfront south\nlevel \"Ground floor\"\nliving \"House\"\n{WALLS}{line}\n")
}

#[test]
fn a_garage_that_is_deducted_or_included_lies_in_the_walk() {
    for line in [
        "garage 20 x 24 left front corner, deduct",
        "garage 20 x 24 at NW corner, deducted",
        "garage 20-0 x 24-0 at SE end, included",
    ] {
        for which in 0..2 {
            let text = obeyed(&below(line), which);
            assert!(text.contains("garage \"Garage\" within \"House\""), "{text}");
            // 1,200 less 480.
            assert_eq!(living(&text), 720, "{text}");
        }
    }
}

#[test]
fn a_barn_that_touches_the_house_does_not_stand_by_itself() {
    for line in ["barn attached north side 20 x 30", "barn touching north wall 20 x 30"] {
        let text = obeyed(&below(line), 0);
        assert!(text.contains("outbuilding \"Barn\" from \"House\" corner 2"), "{text}");
    }
    assert!(obeyed(&below("barn north of the house 20 x 30"), 0).contains("\"Barn\" detached"));
}

#[test]
fn a_house_that_does_not_read_is_above_its_garage_all_the_same() {
    let text = below("garage 20 x 22 at SE end")
        .replace("living \"House\"", "living \"House\" sw corner clockwise 1");
    assert!(!said(&text).contains("none stands above this line"), "{}", said(&text));
}

#[test]
fn inches_of_twelve_and_more_get_no_mark() {
    let said = said(&below("porch \"P\" detached\nnorth 30 ft 20\neast 4'\nsouth 30'\nwest 4'"));
    assert!(
        said.contains("fewer than 12 inches, and here stands 20") && !said.contains("20\""),
        "{said}"
    );
}

#[test]
fn a_walk_begun_at_a_compass_corner_needs_no_words() {
    let text = format!("level \"Ground floor\"\nliving \"House\" from SE\n{WALLS}");
    assert!(said(&text).contains("write `living \"House\"  # from SE`"), "{}", said(&text));
}

#[test]
fn an_upper_floor_that_only_an_assumed_veneer_makes_too_large_is_not_turned() {
    let lower = "N 28' 3\"\nE 20' 2\"\nS 4'\nE 16'\nS 24' 3\"\nW 36' 2\"\n";
    let upper = "north 27' 3\"\neast 19' 2\"\nsouth 27' 3\"\nwest 19' 2\"\n";
    let text = format!(
        "wall 6\"\nlevel \"1st floor\"\nliving \"House\"\n{lower}level \"2nd floor\"\nliving \"Upstairs\" measured to inside\n{upper}"
    );
    let said = said(&text);
    assert!(
        said.contains("without it `2nd floor` fits over `1st floor`")
            && !said.contains("turned a quarter"),
        "{said}"
    );
    assert!(!self::said(&format!("veneer none\n{text}")).contains("upper-overhangs"));
}

#[test]
fn a_wall_that_leaves_an_axis_empty_was_walked_along_it() {
    let text = "veneer none\nlevel \"Ground floor\"\nliving \"House\"\nN 30' 4\"\neast by closing\nsouth by closing\nS 50' 2\"\n";
    let said = said(text);
    assert!(said.contains("look which way side 4 (`S 50' 2\"`) runs: walked west"), "{said}");
    assert!(!said.contains("measure again first"), "{said}");
}

#[test]
fn the_calls_of_a_deed_below_a_walk_ask_for_a_lot() {
    let text = below(
        "outbuilding \"Barn\" detached\nnorth 9'\neast 15'\nsouth 9'\nwest 15'\nbearing N 0° E 100'\nbearing N 90° E 80'\nbearing S 0° E 100'\nbearing N 90° W 80'",
    );
    assert!(said(&text).contains("Put `lot \"Lot\"` on a line before side 5"), "{}", said(&text));
    let text = below("0.6 ac");
    assert!(said(&text).contains("write `lot \"Lot\" recorded 0.6 acres`"), "{}", said(&text));
}

#[test]
fn a_name_that_says_how_it_was_measured_is_asked_about() {
    let text = below(
        "level \"Upstairs, inside tape, 6in walls\"\nliving \"Rooms\"\nnorth 29'\neast 39'\nsouth 29'\nwest 39'",
    );
    assert!(said(&text).contains("a name counts for nothing"), "{}", said(&text));
    assert!(
        !said(&text.replace(", inside tape, 6in walls", " inside")).contains("counts for nothing")
    );
}

#[test]
fn lines_in_another_wording_are_answered_as_in_the_usual_one() {
    let wall =
        "front south\nlevel \"Ground floor\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 30'\n";
    for (before, line, told) in [
        (wall, "west = whatever is left", "west by closing"),
        (wall, "west 40' from the old survey", "west 40' estimated note \"from the old survey\""),
        (
            wall,
            "west 40' (couldn't measure, fence)",
            "west 40' estimated note \"couldn't measure, fence\"",
        ),
        (wall, "jog back 8 ft west then 10 ft south", "west 8 ft\nsouth 10 ft"),
        (wall, "bay D 2' L 10' U 2'", "south 2'\nwest 10'\nnorth 2'"),
        ("", "re-measured 2026-05-02", "measured 2026-05-02"),
        ("", "tape measured by the owner on June 3rd 2026", "measured 2026-06-03 by \"the owner\""),
        ("", "measured 2026-03-07 by laser", "measured 2026-03-07 with \"laser\""),
        ("", "measured in tenths", "units feet"),
        ("", "stucco over block, 8\" walls", "veneer none  # block\nwall 8\""),
        ("", "brick veneer 5\" all round, taped at the brick", "veneer 5\""),
        ("", "taxroll 1,470 sq ft", "record 1,470 sq ft"),
    ] {
        let after = if before.is_empty() { wall.to_owned() + "west 40'\n" } else { String::new() };
        let text = format!("{before}{line}\n{after}");
        let list = diagnostics(&text);
        let offered: Vec<&str> =
            list.iter().flat_map(Diagnostic::fixes).map(|fix| fix.text.as_str()).collect();
        assert!(offered.contains(&told), "{line}: {offered:?}");
    }
    for (line, told) in [
        ("basement 900 sq ft unfinished", "`level \"Basement\" below grade`"),
        ("0.5 acre lot, irregular", "`lot \"Lot\" recorded 0.5 acres`"),
        ("attic over garage 400 sf, 5' ceilings", "`level \"Attic\"`"),
    ] {
        let said = said(&below(line));
        assert!(said.contains(told), "{line}: {said}");
    }
    for line in [
        "garage SE corner 20 x 22",
        "attached garage SE corner 20 x 22",
        "garage 20 x 22 inside SE corner",
    ] {
        let text = obeyed(&below(line), 0);
        assert!(text.contains("garage \"Garage\" within \"House\""), "{text}");
        assert_eq!(living(&text), 760, "{text}");
    }
    let head = said(&format!("Bldg SF = 1,460.00\n{}", below("")));
    assert!(head.contains("`record 1,460 sq ft`"), "{head}");
    // A wall down the page is not torn down.
    assert!(!said(&below("garage right 22' down 24' left 22'")).contains("missing"));
    let deed =
        below("deed of the lot:\ndue north 100'\ndue east 80'\ndue south 100'\ndue west 80'");
    assert!(diagnostics(&deed)[0].fixes()[0].text.starts_with("lot \"Lot\""), "{}", said(&deed));
}

#[test]
fn a_face_and_a_thickness_are_kept_whatever_stands_beside_them() {
    let after = below("");
    for (line, told) in [
        ("brick veneer 5in, taped at the brick", "veneer 5in"),
        ("exterior walls 6 in, no brick", "veneer none\nwall 6 in"),
        ("walls 6 in, no brick", "veneer none\nwall 6 in"),
    ] {
        let list = diagnostics(&format!("{line}\n{}", after.replacen("veneer none\n", "", 1)));
        assert_eq!(list[0].fixes()[0].text, told, "{line}: {list:?}");
    }
    let level =
        below("level \"Upper floor\"\nliving \"upper\" inside 27' x 17'4\", on the north side");
    assert!(obeyed(&level, 0).contains("living \"upper\" measured to inside start"), "{level}");
    let said = said("level \"Ground floor\"\nliving \"House\"\ntaped inside, 29-2 by 34-8\n");
    assert!(
        said.contains("write the line above as `living \"House\" measured to inside`"),
        "{said}"
    );
    let said = self::said(&format!("record 1,340 sq ft, gar 532\n{after}"));
    assert!(said.contains("`recorded 532 sq ft` goes on its line"), "{said}");
}

#[test]
fn a_corner_of_another_level_is_no_place_on_this_one() {
    let upper = "level \"Upper floor\"\nliving \"Rooms\" from \"House\" corner 1\nnorth 30'\neast 40'\nsouth 30'\nwest 40'";
    let said = said(&below(upper));
    assert!(said.contains("`House` is on another level"), "{said}");
    assert!(said.contains("take the place out if the walk begins right above"), "{said}");
    assert!(!said.contains("on the same level"), "{said}");
    // Obeyed, the floor lies on the house.
    assert_eq!(living(&below(&upper.replace(" from \"House\" corner 1", ""))), 2_400);
}

#[test]
fn the_garage_is_not_asked_for_while_its_line_does_not_read() {
    let walk = "north 30'\neast 20'\neast 20'  # gar\nsouth 30' note \"garage\"\nwest 40'\n";
    let text = format!(
        "veneer none\nlevel \"Ground floor\"\nliving \"House\"\n{walk}garage 20 x 20 in the nook\n"
    );
    assert!(!said(&text).contains("and the file has none"), "{}", said(&text));
    let wall =
        "level \"Ground floor\"\nliving \"House\"\nnorth 30'\neast 32'\nsouth 30'\nwest abt 32'\n";
    assert!(obeyed(wall, 0).contains("west 32' estimated"), "{}", said(wall));
}
