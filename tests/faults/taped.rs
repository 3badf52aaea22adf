//! Lines of a tape pad on which a mark, a way or a place is missing: the advice, obeyed to the letter, gives what was
//! measured. Areas are computed by hand.

use super::pads::{HOUSE, areas, obeyed, said};

/// A walk of a house whose garage stands in its southeast corner, 8' 7" ahead of a porch of 14' 5" by 5' 2".
const RANCH: &str = "front south\nlevel \"Ground floor\"\nliving \"House\"\nnorth 34' 2\"\neast by closing\nsouth by closing\nwest 22' 2\"\nnorth 8' 7\"\nwest 14' 5\"\nsouth 5' 2\"\nwest 25' 8\"\n";

/// The ranch with one wall as it stands on a pad.
fn with(wall: &str, typed: &str) -> String {
    let text = RANCH.replacen(&format!("{wall}\n"), &format!("{typed}\n"), 1);
    assert_ne!(text, RANCH);
    text
}

/// In inches: 747 by 410, and the garage 266 by 41 ahead of it, less the porch of 173 by 62.
const WALKED: i64 = sq_ft(747 * 410 + 266 * 41 - 173 * 62);

/// Whole square feet of an area in square inches.
const fn sq_ft(inches: i64) -> i64 {
    (inches + 72).div_euclid(144)
}

#[test]
fn a_wall_by_its_name_whose_inches_have_no_mark_gets_the_question_it_gets_with_them() {
    assert_eq!(areas(RANCH, "House").0, WALKED);
    for (wall, typed) in [
        ("north 34' 2\"", "left wall 34 ft 2"),
        ("north 34' 2\"", "left wall 34' 2"),
        ("north 34' 2\"", "left side, 34 feet 2"),
        ("west 25' 8\"", "front wall 25 ft 8"),
        ("west 25' 8\"", "front wall: 25 feet 8"),
    ] {
        let text = with(wall, typed);
        let page = said(&text);
        assert!(page.contains("the inches have no mark"), "{page}");
        let right = (0..3).filter(|&offer| obeyed(&text, offer).contains(&format!("\n{wall}\n")));
        assert_eq!(right.count(), 1, "{typed}: {page}");
        assert!(!page.contains("does-not-close"), "{page}");
    }
    for (typed, told) in [
        ("garage front 22 ft 2", "`west 22' 2\" note \"garage front\"`"),
        ("garage front wall 22' 2", "`west 22' 2\" note \"garage front\"`"),
        ("22 ft 2 garage wall", "`west 22' 2\" note \"garage wall\"`"),
    ] {
        let page = said(&with("west 22' 2\"", typed));
        assert!(page.contains(told), "{page}");
        assert!(!page.contains("does-not-close") && !page.contains("garage \"Garage\""), "{page}");
    }
    // What is no wall stays what it is.
    let page = said(&format!("ceiling 8 ft 2\n{RANCH}"));
    assert!(page.contains("`# ceiling 8 ft 2`"), "{page}");
    let page = said(&with("west 14' 5\"", "porch wall 14 ft 5"));
    assert!(page.contains("`west 14' 5\" note \"porch wall\"`"), "{page}");
}

#[test]
fn a_wall_that_says_what_it_is_at_and_which_way_it_went_is_that_wall() {
    for (wall, typed) in [
        ("north 8' 7\"", "garage side going back 8 ft 7"),
        ("north 8' 7\"", "garage side going back 8' 7\""),
        ("north 8' 7\"", "garage return, going back toward the yard 8'7\""),
        ("south 5' 2\"", "porch side coming forward 5' 2\""),
        ("south 5' 2\"", "side of porch coming toward the street 5 feet 2"),
        ("south 5' 2\"", "porch wall running south 5' 2\", by the steps"),
        ("west 14' 5\"", "back of porch going left 14' 5\""),
    ] {
        let text = obeyed(&with(wall, typed), 0);
        assert_eq!(areas(&text, "House").0, WALKED, "{typed}\n{text}");
    }
    let page = said(&with("south 5' 2\"", "porch side coming forward"));
    assert!(page.contains("write `south`, its length and `note \"porch side\"`"), "{page}");
    assert!(!page.contains("does-not-close"), "{page}");
}

#[test]
fn a_garage_in_the_walk_keeps_its_size_and_never_counts() {
    // 266 by 265 inches of the walk.
    let garage = sq_ft(266 * 265);
    for line in [
        "Garage 22 ft 2 wide, 22 ft 1 deep, right front corner, inside",
        "Garage 22' 2\" wide, 22' 1\" deep, right front corner, inside",
        "garage 22 ft 2 wide by 22 ft 1 deep inside the walk, in the southeast corner",
    ] {
        let text = obeyed(&format!("{RANCH}{line}\n"), 0);
        assert_eq!(areas(&text, "Garage").1, garage, "{line}\n{text}");
        let house = sq_ft(747 * 410 + 266 * 41 - 173 * 62 - 266 * 265);
        assert_eq!(areas(&text, "Garage").0, house, "{line}\n{text}");
    }
    for line in [
        "Garage 22 ft 2 wide, 22 ft 1 deep (included above)",
        "Garage 22' 2\" wide, 22' 1\" deep (included above)",
        "garage 22' 2\" wide x 22' 1\" deep, in the above",
        "garage 22'2\" wide and 22'1\" deep, included in this",
    ] {
        let page = said(&format!("{RANCH}{line}\n"));
        let asks = "`garage 22' 2\" wide x 22' 1\" deep inside the walk, in the southeast corner`";
        assert!(
            page.replace("22'2\"", "22' 2\"").replace("22'1\"", "22' 1\"").contains(asks),
            "{page}"
        );
        assert!(!page.contains("counted"), "{page}");
    }
}

#[test]
fn a_porch_of_feet_and_bare_inches_keeps_both_lengths() {
    for line in [
        "Porch, covered 14 ft 5 by 5 ft 2",
        "covered porch 14 ft 5 x 5 ft 2",
        "covered porch 14 feet 5 x 5 feet 2",
    ] {
        let text = format!("{HOUSE}{line}\n");
        let page = said(&text);
        assert!(page.contains("`north 5' 2\"`, `east 14' 5\"`"), "{page}");
        assert!(!page.contains("north 5'`"), "{page}");
    }
}

#[test]
fn a_year_after_the_record_is_of_its_title() {
    for (line, figure) in [
        ("record 1712 county record 2026", "record 1712 sq ft \"county record 2026\""),
        ("record 1712 sq ft county record 2026", "record 1712 sq ft \"county record 2026\""),
        ("record 1,712 (county record 2026)", "record 1,712 sq ft \"county record 2026\""),
        ("record: 1,712, county record 2026", "record 1,712 sq ft \"county record 2026\""),
        ("record 1712 sf, 2026 tax record", "record 1712 sq ft \"2026 tax record\""),
    ] {
        let text = obeyed(&format!("{line}\n{HOUSE}"), 0);
        assert_eq!(text.lines().next(), Some(figure), "{line}");
        assert_eq!(areas(&text, "House").0, 1_200, "{text}");
    }
    // Another figure is one, whatever its number looks like.
    for line in ["record 1712 listing 2026", "record 1712 sq ft record 1980 sq ft"] {
        assert!(said(&format!("{line}\n{HOUSE}")).contains("two published areas"), "{line}");
    }
}

#[test]
fn how_thick_the_walls_of_a_level_are_is_the_thickness_of_the_walls() {
    // Inside 26' 6" by 34' 7", and 5 inches all around: 328 by 425 inches, to the tenth of a foot 27.3 by 35.4.
    let upper = "level \"Second floor\"\nliving \"Rooms\" measured to inside\nnorth 26' 6\"\neast 34' 7\"\nsouth 26' 6\"\nwest 34' 7\"\n";
    for line in [
        "walls upstairs are 5\" thick",
        "upstairs walls 5\"",
        "second floor walls are 5\" thick",
        "ext walls upstairs 5 in",
        "walls on the second floor: 5\"",
    ] {
        let text = obeyed(&format!("veneer none\n{line}\n{HOUSE}{upper}"), 0);
        let house = fairfoot::read("pad.sides", text.as_str()).unwrap();
        let all = house.areas(&fairfoot::Settings::default()).unwrap();
        assert_eq!(all.gross().tenth_foot().whole_sq_ft(), 1_200 + 966, "{line}\n{text}");
    }
}

/// A house of 36' 2" by 28' 1" in which the wall at the back is to have a bay.
const BACK: &str = "front south\nlevel \"Ground floor\"\nliving \"House\"\nnorth 28' 1\"\neast 36' 2\"\nsouth 28' 1\"\nwest 36' 2\"\n";

#[test]
fn three_sides_of_which_two_are_equal_are_an_angled_bay() {
    // 34 inches at 45 degrees lead 24 inches out and 24 inches along: 6 and 10 ft on the two long sides, 2 ft deep.
    let told = "instead of `east 36' 2\"`, write `east 10'`, on the next line `bay east 10' out 2' flat 6'`, and on the line below that `east 16' 2\"`";
    for line in [
        "bay on the back, 10' from left corner: 2'10\" angled, 6', 2'10\" angled",
        "bay on the back 2 ft 10, 6 ft, 2 ft 10, 10 ft from the left corner",
        "angled bay on back wall 10' from west corner: 2'10\" / 6' / 2'10\"",
        "bay on the back, 45 degrees, 2' 10\", 6', 2' 10\", starts 10' from the left corner",
    ] {
        let page = said(&format!("{BACK}{line}\n")).replace("6 ft`", "6'`");
        assert!(page.contains(told), "{line}: {page}");
    }
    let divided =
        BACK.replace("east 36' 2\"\n", "east 10'\nbay east 10' out 2' flat 6'\neast 16' 2\"\n");
    // 434 by 337 inches, and 2 by 8 ft.
    assert_eq!(areas(&divided, "House").0, sq_ft(434 * 337 + 16 * 144));
    for line in [
        "angled bay: 2'10\", 6', 2'10\"",
        "bay window 2'10\" 6' 2'10\"",
        "bay east 2' 10\", 6', 2' 10\"",
    ] {
        let walk = BACK.replace("east 36' 2\"\n", &format!("east 10'\n{line}\neast 16' 2\"\n"));
        let text = obeyed(&walk, 0);
        assert_eq!(areas(&text, "House").0, sq_ft(434 * 337 + 16 * 144), "{line}\n{text}");
        let page = said(&format!("{BACK}{line}\n"));
        assert!(page.contains("10' wide") && !page.contains("2' 10\" out"), "{page}");
    }
    // Seven feet and a half at 45 degrees lead 5' 3 5/8" away: to the quarter inch 5' 3 3/4", and a metric bay to the
    // centimeter: 0.85 m lead 0.60 m away.
    let page = said(&format!("{BACK}bay window 7' 6\", 4', 7' 6\"\n"));
    assert!(page.contains("14' 7 1/2\" wide and stands out 5' 3 3/4\""), "{page}");
    let page = said(&format!("{BACK}bay window 0.85 m, 1.80 m, 0.85 m\n"));
    assert!(page.contains("3 m wide and stands out 0.6 m"), "{page}");
    // Three lengths that say which they are, or of which no two are equal, are what the format has.
    for line in ["bay east 10' out 2' flat 10'", "bay on the back 8' wide, 2' out, 4' flat"] {
        assert!(!said(&format!("{BACK}{line}\n")).contains("at 45°"), "{line}");
    }
}

#[test]
fn a_bay_after_the_whole_of_its_wall_takes_its_width_of_it() {
    for wall in [
        "east 36' 2\"\nbay east 10' out 2' flat 6'\n",
        "bay east 10' out 2' flat 6'\neast 36' 2\"\n",
    ] {
        let page = said(&BACK.replace("east 36' 2\"\n", wall));
        assert!(page.contains("the bay takes 10' of it"), "{page}");
        assert!(page.contains("the two together are 26' 2\""), "{page}");
        assert!(!page.contains("measure again"), "{page}");
    }
    // A foot miscounted besides is no bay's width.
    let off =
        BACK.replace("east 36' 2\"\n", "east 36' 2\"\nbay east 10' out 2' flat 6'\nsouth 1'\n");
    assert!(!said(&off).contains("the bay takes"), "{off}");
}

#[test]
fn what_a_porch_is_like_hides_no_place() {
    // 40 and 30 ft, 10 by 4 ft at the front, 5 ft from the left corner.
    for line in [
        "stoop 10 ft x 4 ft covered, at the front, 5 ft from the left corner",
        "stoop 10 ft x 4 ft, at the front, 5 ft from the left corner, covered",
        "stoop 10 ft x 4 ft (covered) at the front, 5 ft from the left corner",
        "stoop covered 10 ft x 4 ft, at the front, 5 ft from the left corner",
        "front stoop 10 x 4 covered, at the front, 5 ft from the left corner",
    ] {
        let text = format!("{HOUSE}{line}\n");
        let page = said(&text);
        assert!(page.contains("start east 5' south 4'`"), "{line}: {page}");
        assert!(page.contains("5' from its west end"), "{line}: {page}");
    }
    let metric = "units meters\nfront south\nlevel \"G\"\nliving \"House\"\nnorth 8,30\neast 12,40\nsouth 8,30\nwest 12,40\nstoop 3,10 x 1,30 covered, at the front, 5 m from the left corner\n";
    assert!(said(metric).contains("start east 5 m south 1.3 m`"), "{}", said(metric));
}

#[test]
fn the_first_call_on_the_line_of_a_lot_is_a_call() {
    let calls =
        "bearing S 1° 30' E 60.50 m\nbearing S 88° 30' W 45.20 m\nbearing N 1° 30' W 60.50 m\n";
    for line in [
        "lot per deed: beginning at an iron pin, thence North 88 deg 30 min East 45.20 m;",
        "lot per deed - beginning at a pin; thence N 88°30' E 45.20 m",
        "lot: N 88°30' E 45.20 m",
        "deed: thence N 88-30-00 E, 45.20 m;",
        "parcel per survey, N 88° 30' E 45.20 m",
    ] {
        let text = obeyed(&format!("units meters\n{HOUSE}{line}\n{calls}"), 0);
        let house = fairfoot::read("pad.sides", text.as_str())
            .unwrap_or_else(|errors| panic!("{errors}\n{text}"));
        // 45.20 by 60.50 m are 2,734.6 sq m, 29,435 sq ft.
        assert!(said(&text).is_empty() || !said(&text).contains("does-not-close"), "{text}");
        assert_eq!(house.lots().len(), 1, "{text}");
        assert_eq!(house.lots()[0].outline().area().whole_sq_ft(), 29_435, "{text}");
    }
}

#[test]
fn how_far_a_building_stands_from_the_house_is_no_wall() {
    let barn = "outbuilding \"Barn\" detached\nnorth 20'\neast 30'\nsouth 20'\nwest 30'\n";
    for line in [
        "about 36' north of house",
        "36' north of the house",
        "barn is 36' north",
        "36' behind the house",
        "about 11 m north of house",
        "stands 36 feet away from the house",
        "approx. 36' from the house",
    ] {
        let text = obeyed(&format!("{HOUSE}{barn}{line}\n"), 0);
        assert_eq!(areas(&text, "Barn"), (1_200, 600), "{line}\n{text}");
        assert!(text.ends_with(&format!("# {line}\n")), "{text}");
    }
    // Between walls it is one.
    let walk = HOUSE.replace("east 40'", "40' east");
    assert_eq!(areas(&obeyed(&walk, 0), "House").0, 1_200);
}

/// The ranch as a person types it from the pad, with no line as the format has it.
const PAD: &str = "front faces south\nGround floor\nHouse\nleft wall 34 ft 2\nback wall - not reachable (fence)\nright wall - not reachable (fence)\ngarage front 22 ft 2\ngarage side going back 8 ft 7\nporch wall 14 ft 5\nporch side coming forward 5 ft 2\nfront wall 25 ft 8\nGarage 22 ft 2 wide, 22 ft 1 deep (included above)\nPorch, covered 14 ft 5 by 5 ft 2\n";

#[test]
fn walls_of_a_walk_stay_in_it_below_a_house_that_is_not_typed_as_the_format_has_it() {
    let page = said(PAD);
    for told in [
        "`north 34' 2\"`",
        "`west 22' 2\" note \"garage front\"`",
        "`north 8' 7\" note \"garage side\"`",
        "`14' 5\" note \"porch wall\"`",
        "`south 5' 2\" note \"porch side\"`",
        "`west 25' 8\"`",
        "`garage 22' 2\" wide x 22' 1\" deep inside the walk, in the southeast corner`",
        "`north 5' 2\"`, `east 14' 5\"`",
    ] {
        assert!(page.contains(told), "{told}: {page}");
    }
    for wrong in ["counted", "garage \"Garage\" start", "porch \"Porch\"`, then", "# wall"] {
        assert!(!page.contains(wrong), "{wrong}: {page}");
    }
    // Typed as it is told, of several readings the one that was walked, it is the ranch with its garage in it.
    let text = RANCH.to_owned()
        + "garage 22' 2\" wide x 22' 1\" deep inside the walk, in the southeast corner\n";
    let text = obeyed(&text, 0);
    assert_eq!(areas(&text, "House").0, sq_ft(747 * 410 + 266 * 41 - 173 * 62 - 266 * 265));
}

#[test]
fn wide_and_deep_say_which_sides_a_living_space_has() {
    for line in ["living 36'2\" wide x 28'1\" deep", "living \"Down\" 28' 1\" deep, 36' 2\" wide"] {
        let text = obeyed(&format!("front south\nlevel \"1\"\n{line}\n"), 0);
        let wide = text.lines().find(|line| line.starts_with("east 36"));
        assert!(wide.is_some(), "{text}");
        assert_eq!(areas(&text, "").0, sq_ft(434 * 337), "{text}");
    }
    let bay = "bay on the back, 10' from left corner: 2'10\" angled, 6', 2'10\" angled";
    let page =
        said(&format!("front south\nlevel \"1\"\nliving 36'2\" wide x 28'1\" deep\n{bay}\n"));
    assert!(page.contains("`bay east 10' out 2' flat 6'`"), "{page}");
    assert!(page.contains("begins 10' from its west end"), "{page}");
}

#[test]
fn a_place_that_is_found_is_not_called_one_that_cannot_be_drawn() {
    let page = said(&format!("{HOUSE}porch 10' x 4', on the south side, 5' from the west end\n"));
    assert!(page.contains("start east 5' south 4'`"), "{page}");
    assert!(!page.contains("no place that can be drawn"), "{page}");
    let page = said(&format!("{HOUSE}porch 10' x 4' by the lake\n"));
    assert!(!page.contains("is a place in words"), "{page}");
}

#[test]
fn brick_on_one_level_is_said_of_each_space() {
    for line in [
        "brick downstairs 4 5/8\", siding upstairs",
        "brick first floor only",
        "stone on the lower level, vinyl above",
    ] {
        let page = said(&format!("{line}\n{HOUSE}"));
        assert!(page.contains("`veneer none` at the end of the line of each space"), "{page}");
    }
    let page = said(&format!("brick on the front only\n{HOUSE}"));
    assert!(page.contains("`veneer none` at the end of each side"), "{page}");
}

#[test]
fn a_porch_that_fills_a_recess_starts_at_its_corner() {
    // 173 by 62 inches, and the walk itself is as it was, either way round.
    let walls: Vec<&str> = RANCH.lines().skip(3).collect();
    let turned: Vec<String> = walls
        .iter()
        .rev()
        .map(|wall| {
            let (way, rest) = wall.split_once(' ').unwrap();
            let way = match way {
                "north" => "south",
                "south" => "north",
                "east" => "west",
                _ => "east",
            };
            format!("{way} {rest}\n")
        })
        .collect();
    let heads = RANCH.lines().take(3).map(|line| format!("{line}\n")).collect::<String>();
    for walk in [RANCH.to_owned(), heads + &turned.concat()] {
        for line in [
            "covered porch 14' 5\" x 5' 2\" in the recess",
            "porch 5' 2\" x 14' 5\", recessed",
            "Porch, 14 ft 5 by 5 ft 2, fills the recess",
            "front porch 14' 5\" wide, 5' 2\" deep in the notch",
        ] {
            let text = obeyed(&format!("{walk}{line}\n"), 0);
            let house = fairfoot::read("pad.sides", text.as_str())
                .unwrap_or_else(|errors| panic!("{errors}\n{text}"));
            let porch = &house.spaces()[1];
            assert_eq!(porch.outline().area().whole_sq_ft(), sq_ft(173 * 62), "{text}");
            let page = said(&text);
            assert!(!page.contains("overlap") && !page.contains("touches-nothing"), "{page}");
            assert_eq!(areas(&text, "House").0, WALKED, "{text}");
        }
    }
    // No recess has this size.
    assert!(
        !said(&format!("{RANCH}porch 12' x 5' in the recess\n")).contains("that has this size")
    );
}
