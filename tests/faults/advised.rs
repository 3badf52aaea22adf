//! Lines that say more of a space or a level than its place: the first line that is offered, once typed, gives a house
//! whose areas were worked out here by hand.

use fairfoot::{Diagnostic, Settings};

use super::diagnostics_of;

/// A house of 40 by 30 feet, which faces south, with a garage of 20 by 22 feet on its east side that stands out 10 feet
/// toward the street.
const HOUSE: &str = "property \"9 Alder Lane, Juniper County\"\nveneer none\nfront south\nlevel \"Ground floor\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\n";
const GARAGE: &str =
    "garage \"Garage\" start east 40' south 10'\nnorth 22'\neast 20'\nsouth 22'\nwest 20'\n";

fn errors(text: &str) -> Vec<Diagnostic> {
    let (_, list) = diagnostics_of("advised.sides", text.as_bytes().to_vec());
    list.into_iter().filter(Diagnostic::is_error).collect()
}

/// The text with the first, the second … line that is offered for `line` in its place.
fn obeyed(before: &str, line: &str, which: usize) -> String {
    let text = format!("{before}{line}\n");
    let list = errors(&text);
    let [error] = &list[..] else { panic!("{line}: {list:?}") };
    let fix = error.fixes().get(which).unwrap_or_else(|| panic!("{line}: {error:?}"));
    let mut text = text;
    text.replace_range(fix.span.start..fix.span.end, &fix.text);
    assert!(errors(&text).is_empty(), "{text}\n{:?}", errors(&text));
    text
}

fn help(before: &str, line: &str) -> String {
    let list = errors(&format!("{before}{line}\n"));
    list.iter().flat_map(Diagnostic::helps).cloned().collect::<Vec<_>>().join("\n")
}

/// The living area above grade in whole square feet.
fn living(text: &str) -> i64 {
    let source = fairfoot::Source::new("advised.sides", text);
    let house = fairfoot::read_source(source).unwrap();
    house.areas(&Settings::default()).unwrap().gross().as_measured().whole_sq_ft()
}

#[test]
fn a_remark_beside_a_place_is_a_comment() {
    for (line, place, comment) in [
        (
            "deck 12' x 16' w/ steps 4x4, on the north side, 6' from the west end",
            "deck \"Deck\" start east 6' north 30'",
            "w/ steps 4x4",
        ),
        (
            "deck 12' x 16' (needs repair) on the north side, 6' from the west end",
            "deck \"Deck\" start east 6' north 30'",
            "needs repair",
        ),
        (
            "porch 8' x 12' concrete, 3 steps, on the south side, 6' from the west end",
            "porch \"Porch\" start east 6' south 8'",
            "concrete, 3 steps",
        ),
        (
            "patio 10' x 20' built 2004 on the north side, 6' from the west end",
            "patio \"Patio\" start east 6' north 30'",
            "built 2004",
        ),
    ] {
        let text = obeyed(HOUSE, line, 0);
        assert!(text.contains(&format!("{place}  # {comment}\n")), "{text}");
        assert_eq!(living(&text), 1200, "{text}");
    }
    // On the north side of the house, at its east end.
    let text = obeyed(HOUSE, "addition (1998) 16' x 20' off the back right corner", 0);
    assert!(text.contains("living \"Addition\" start east 20' north 30'  # 1998\n"), "{text}");
    assert_eq!(living(&text), 1520);
}

#[test]
fn what_stands_in_the_yard_or_is_another_building_is_detached() {
    let text = obeyed(HOUSE, "guest house 16' x 24', 2nd bldg, behind garage", 0);
    assert!(
        text.contains("living \"Guest house\" detached  # 2nd bldg, behind garage\n"),
        "{text}"
    );
    let text = obeyed(HOUSE, "shed 8' x 10' back yard", 0);
    assert!(text.contains("outbuilding \"Shed\" detached  # back yard\n"), "{text}");
}

#[test]
fn what_is_to_be_torn_down_is_missing_or_still_there() {
    let line = "shed 8' x 10' back yard (tear down 2020)";
    let text = obeyed(HOUSE, line, 0);
    assert!(text.contains("missing outbuilding \"Shed\" recorded 80 sq ft  # "), "{text}");
    let text = obeyed(HOUSE, line, 1);
    assert!(
        text.contains("outbuilding \"Shed\" detached  # ") && text.ends_with("west 10'\n"),
        "{text}"
    );
}

#[test]
fn an_upper_floor_over_a_part_of_the_house_starts_there() {
    for (line, place, area) in [
        (
            "2nd floor 30' x 20' over right half only",
            "living \"Upper rooms\" start east 20'\n",
            1800,
        ),
        ("upstairs 15' x 40' over back half", "living \"Upper rooms\" start north 15'\n", 1800),
        (
            "2nd floor 20' x 22' over the garage only",
            "living \"Upper rooms\" start east 40' south 10'\n",
            1640,
        ),
    ] {
        let text = obeyed(&format!("{HOUSE}{GARAGE}"), line, 0);
        assert!(text.contains(place), "{text}");
        assert_eq!(living(&text), area, "{text}");
    }
    // Without the street side, right is asked about.
    let house = HOUSE.replace("front south\n", "");
    let said = help(&house, "2nd floor 30' x 20' over right half only");
    assert!(said.contains("on which side the street is"), "{said}");
    let said = help(HOUSE, "bonus room 12' x 20' over the right half");
    assert!(said.contains("on a level of its own"), "{said}");
}

#[test]
fn a_half_finished_basement_is_unfinished_below_grade() {
    let text = obeyed(HOUSE, "basement 30' x 40', half finished", 0);
    assert!(
        text.contains("level \"Basement\" below grade\nunfinished \"Basement\"  # half finished\n"),
        "{text}"
    );
    assert_eq!(living(&text), 1200);
}

#[test]
fn what_hangs_from_a_ceiling_takes_nothing_off() {
    for line in
        ["soffit 6' 8\" over kitchen 2 x 10", "ductwork 7' high in hall", "crawl space under all"]
    {
        let text = obeyed(HOUSE, line, 0);
        assert!(text.ends_with(&format!("\n# {line}\n")), "{text}");
        assert_eq!(living(&text), 1200);
    }
}

#[test]
fn where_a_door_is_is_asked() {
    for line in
        ["front porch 6' deep 12' wide centered on front door", "porch at front door 8' x 5'"]
    {
        let list = errors(&format!("{HOUSE}{line}\n"));
        assert!(list.iter().all(|error| error.fixes().is_empty()), "{list:?}");
        assert!(help(HOUSE, line).contains("how far it is from one end"), "{line}");
    }
    // With the distance the porch starts there, 6 feet out of the front.
    let text = obeyed(
        HOUSE,
        "front porch 6' deep 12' wide centered on front door, 9' from the west end",
        0,
    );
    assert!(text.contains("porch \"Front porch\" start east 9' south 6'\n"), "{text}");
}

#[test]
fn a_porch_that_fills_a_recess_stands_there() {
    let house =
        HOUSE.replace("west 40'", "west 4'\nnorth 5'\nwest 13' 1\"\nsouth 5'\nwest 22' 11\"");
    for line in [
        "porch 13' 1\" x 5' on the front",
        "front porch 13' 1\" x 5'",
        "porch 13' 1\" x 5' at front, between garage and house",
    ] {
        let text = obeyed(&house, line, 0);
        assert!(text.contains("from \"House\" corner 8\nnorth 5'\neast 13' 1\"\n"), "{text}");
    }
}

#[test]
fn a_foyer_beside_the_stairs_at_the_front_lies_at_the_front() {
    let stairs =
        "stair \"Stairs\" start east 15' north 5'\nnorth 10'\neast 4'\nsouth 10'\nwest 4'\n";
    // West of the stairs, which begin 15 feet from the west end, or east of them.
    for (which, east) in [(0, 15 - 7), (3, 15 + 4)] {
        let before = format!("{HOUSE}{stairs}");
        let text = obeyed(&before, "foyer open 8' x 7' next to stairs, front", which);
        assert!(text.contains(&format!("open \"Foyer\" start east {east}'\n")), "{text}");
        assert_eq!(living(&text), 1_200 - 56, "{text}");
    }
}

#[test]
fn a_porch_along_a_whole_side_is_as_long_as_it() {
    for line in ["porch across front 6' deep", "full width front porch, 6' deep"] {
        let text = obeyed(HOUSE, line, 0);
        assert!(
            text.contains(" start south 6'\nnorth 6'\neast 40'\nsouth 6'\nwest 40'\n"),
            "{text}"
        );
        assert_eq!(living(&text), 1_200, "{text}");
    }
}

#[test]
fn what_describes_a_porch_before_its_side_is_a_comment() {
    let text = obeyed(HOUSE, "screened-in back porch 10' x 14' w/ ceiling fan", 0);
    assert!(text.contains("porch \"Back porch\" from \"House\" corner 2  # "), "{text}");
    assert_eq!(living(&text), 1_200, "{text}");
}

#[test]
fn an_upper_floor_that_is_set_back_starts_there() {
    let text = obeyed(HOUSE, "upper floor 24' x 30' set back 2' from front", 0);
    assert!(
        text.contains("living \"Upper rooms\" start north 2'\nnorth 24'\neast 30'\n"),
        "{text}"
    );
    assert_eq!(living(&text), 1_200 + 720, "{text}");
}

#[test]
fn half_of_a_space_is_no_half_foot() {
    let text = obeyed(HOUSE, "basement 30' x 40' half finished", 0);
    assert!(text.ends_with("north 30'\neast 40'\nsouth 30'\nwest 40'\n"), "{text}");
}

#[test]
fn in_before_a_corner_is_no_unit() {
    let said = help(HOUSE, "finished basement room 12 x 20 in NE corner");
    assert!(said.contains("`north 12` `east 20`"), "{said}");
}

#[test]
fn a_deed_that_misses_by_little_is_closed_with_the_tolerance_that_is_named() {
    // South: 212.40 cos 2° 15' + 169.05 cos 89° 15' less 164.75 cos 88° 40' and 210.86 cos 1° 5' leave 0.21 feet.
    let calls = [
        "bearing N 2° 15' E 212.40 ft",
        "bearing S 88° 40' E 164.75 ft",
        "bearing S 1° 05' W 210.86 ft",
        "bearing N 89° 15' W 169.05 ft",
    ];
    let lot = |end: &str| format!("{HOUSE}lot \"Lot\"\n{}{end}\n", calls.join(&format!("{end}\n")));
    assert!(help(&lot(""), "").contains("write `tolerance 1\"` at the end of each of them"));
    assert!(errors(&lot(" tolerance 1\"")).is_empty());
    // A call that is off by ten feet is no miss of measuring.
    let off = lot("").replace("212.40", "222.40");
    assert!(!help(&off, "").contains("tolerance"));
}

#[test]
fn calls_of_which_one_alone_has_a_unit_are_told_apart_by_it() {
    let text = format!(
        "{}units meters\n{}lot \"Lot\"\nbearing N 0° E 100 ft\nbearing N 90° E 80\nbearing S 0° E 100\nbearing N 90° W 80\n",
        "property \"9 Alder Lane, Juniper County\"\nveneer none\n",
        "level \"Ground floor\"\nliving \"House\"\nnorth 9\neast 12\nsouth 9\nwest 12\n"
    );
    let help = help(&text, "");
    assert!(help.contains("has a unit and side 2 (`bearing N 90° E 80`) has none"), "{help}");
    let marked = text.replace("E 80\n", "E 80 ft\n").replace("E 100\n", "E 100 ft\n");
    assert!(errors(&marked.replace("W 80\n", "W 80 ft\n")).is_empty());
}

#[test]
fn a_level_that_comes_after_its_first_space_is_not_told_as_a_second_one() {
    let walls = "north 30'\neast 40'\nsouth 30'\nwest 40'\n";
    let porch = "porch \"Porch\" start south 6'\nnorth 6'\neast 12'\nsouth 6'\nwest 12'\n";
    let text = format!("veneer none\nliving \"House\"\n{walls}level \"Ground floor\"\n{porch}");
    let list = errors(&text);
    let [error] = &list[..] else { panic!("{list:?}") };
    assert_eq!(error.message(), "`House` is on no level");
}

#[test]
fn the_size_of_an_opening_that_starts_south_runs_on_southward() {
    let walls = "south 30'\neast 40'\nnorth 30'\nwest 40'\n";
    let before = format!(
        "front south\nveneer none\nlevel \"Upper floor\"\nliving \"Rooms\"\n{walls}open \"Foyer\" start south 12'\n"
    );
    let text = obeyed(&before, "8' x 10'", 0);
    assert!(text.ends_with("south 8'\neast 10'\nnorth 8'\nwest 10'\n"), "{text}");
    // 30 by 40 less 8 by 10.
    assert_eq!(living(&text), 1_120);
}

#[test]
fn the_comment_of_a_line_stands_once_behind_its_place() {
    let line = "porch 6' x 12' on the south side, 6' from the west end  # concrete";
    let text = obeyed(HOUSE, line, 0);
    assert!(text.contains("porch \"Porch\" start east 6' south 6'  # concrete\n"), "{text}");
}

#[test]
fn outbuildings_above_one_another_are_told_as_such_and_not_laid_over_the_house() {
    let text = format!(
        "{HOUSE}level \"Barn\"\noutbuilding \"Barn\"\nnorth 20'\neast 28'\nsouth 20'\nwest 28'\n"
    );
    let (_, list) = diagnostics_of("advised.sides", text.into_bytes());
    let words: Vec<String> = list.iter().map(|one| one.word().to_string()).collect();
    assert!(words.iter().any(|word| word == "outbuilding-above"), "{words:?}");
    assert!(words.iter().all(|word| word != "placed-above"), "{words:?}");
}

#[test]
fn what_stands_beside_a_whole_place_is_a_comment_of_it() {
    for (line, place) in [
        (
            "stairs 4' x 10' next to foyer, 6' from the south end, 10' from the west end",
            "stair \"Stairs\" start east 10' north 6'  # next to foyer\n",
        ),
        (
            "porch 6' x 12' by the door, on the south side, 6' from the west end",
            "porch \"Porch\" start east 6' south 6'  # by the door\n",
        ),
        (
            "Garage is 20' x 22' and is on the south side, 6' from the west end",
            "garage \"Garage\" start east 6' south 20'\n",
        ),
    ] {
        let text = obeyed(HOUSE, line, 0);
        assert!(text.contains(place), "{text}");
    }
}

#[test]
fn what_reaches_out_of_its_floor_by_more_than_a_wall_is_told() {
    // A stair of 3 feet 5 inches by 10 feet 4 inches that begins 1 foot 3 inches south of the floor's inner face; the
    // two faces may be 10 inches apart, and four tolerances are 2 inches.
    let floor = "living \"Rooms\" measured to inside\nnorth 26' 7\"\neast 34' 4\"\nsouth 26' 7\"\nwest 34' 4\"\n";
    let stair = |south: &str| {
        format!(
            "{HOUSE}level \"Upper floor\"\n{floor}stair \"Stair\" start east 8' 11\" south {south}\nnorth 10' 4\"\neast 3' 5\"\nsouth 10' 4\"\nwest 3' 5\"\n"
        )
    };
    let words = |text: &str| errors(text).iter().map(|one| one.word().as_str()).collect::<Vec<_>>();
    assert_eq!(words(&stair("1' 3\"")), ["not-inside"]);
    assert_eq!(words(&stair("1'")), Vec::<&str>::new());
}

#[test]
fn a_floor_that_is_moved_over_the_one_below_takes_its_openings_with_it() {
    let down = "south 30'\neast 40'\nnorth 30'\nwest 40'\n";
    let eight = "north 8'\neast 8'\nsouth 8'\nwest 8'\n";
    let text = format!(
        "{HOUSE}level \"Upper floor\"\nliving \"Rooms\"\n{down}open \"Foyer\" start east 16' south 20'\n{eight}stair \"Stairs\" start south 30'\n{eight}low \"Eaves\" under 5' from \"Rooms\" corner 3\nnorth 8'\nwest 8'\nsouth 8'\neast 8'\n"
    );
    let (_, list) = diagnostics_of("advised.sides", text.clone().into_bytes());
    let note = list.iter().find(|one| one.word().to_string() == "placed-above").unwrap();
    let [help] = note.helps() else { panic!("{note:?}") };
    for told in [
        "type `start north 30'` after the name of `Rooms`",
        "in the line of `Foyer`, `start east 16' north 10'` in place of the `start` that it has",
        "in the line of `Stairs`, no `start`",
    ] {
        assert!(help.contains(told), "{help}");
    }
    // What starts at a corner of the rooms goes with them.
    assert!(!help.contains("Eaves"), "{help}");
    let moved = text
        .replace("living \"Rooms\"", "living \"Rooms\" start north 30'")
        .replace("start east 16' south 20'", "start east 16' north 10'")
        .replace("stair \"Stairs\" start south 30'", "stair \"Stairs\"");
    let (_, list) = diagnostics_of("advised.sides", moved.clone().into_bytes());
    let words: Vec<String> = list.iter().map(|one| one.word().to_string()).collect();
    let is_about_places = |word: &&String| ["not-inside", "placed-above"].contains(&word.as_str());
    assert!(!words.iter().any(|word| is_about_places(&word)), "{list:?}");
    assert_eq!(living(&moved), living(&text));
}

#[test]
fn distances_behind_the_sides_they_are_counted_from_are_a_place() {
    for line in [
        "stair \"Stairs\" from left 12' 6\" from front 9' 4' x 10'",
        "stair \"Stairs\" 4' x 10' from left 12' 6\" from front 9'",
        "stair \"Stairs\" 4' x 10' from the left wall 12' 6\", from front 9'",
        "stair \"Stairs\" 4' x 10' from west: 12' 6\" and from south: 9'",
    ] {
        let text = obeyed(HOUSE, line, 0);
        assert!(text.contains("stair \"Stairs\" start east 12' 6\" north 9'\n"), "{text}");
    }
}

#[test]
fn a_floor_centered_over_the_one_below_is_so_both_ways() {
    let text = obeyed(HOUSE, "second floor smaller than first 20' x 30' centered", 0);
    // 40 by 30 less 30 by 20, halved.
    assert!(text.contains("start east 5' north 5'") || text.contains("start east 10'"), "{text}");
    assert_eq!(living(&text), 1_800);
}

#[test]
fn the_unit_beside_who_measured_is_a_line_of_its_own() {
    for line in [
        "measured 2026-05-09 by the owner in meters",
        "measured in metres 2026-05-09 by the owner",
        "measured 2026-05-09 by the owner (meters)",
    ] {
        let list = errors(&format!("{line}\n{HOUSE}"));
        let [error] = &list[..] else { panic!("{line}: {list:?}") };
        let [fix] = error.fixes() else { panic!("{line}: {error:?}") };
        assert_eq!(fix.text, "measured 2026-05-09 by \"the owner\"\nunits meters");
    }
}

#[test]
fn places_in_the_words_of_a_tape_pad_are_worked_out() {
    // The house is 40 feet along the street, which is south, and 30 feet deep.
    for (line, place) in [
        (
            "2 car gar 22' x 22' on right, flush w/ front",
            "garage \"2 car garage\" from \"House\" corner 4\n",
        ),
        (
            "garage bumps out 8' in front of house, 22' x 24' on the left",
            "garage \"Garage\" start west 24' south 8'\n",
        ),
        (
            "garage 22' x 22', sits back 6', right side",
            "garage \"Garage\" start east 40' north 6'\n",
        ),
        (
            "Garage is 20' x 20' and is in the SE corner of the house",
            "garage \"Garage\" within \"House\" start east 20'\n",
        ),
        (
            "one car garage inside main rectangle, 12' x 12' NE corner",
            "garage \"One car garage\" within \"House\" start east 28' north 18'\n",
        ),
        (
            "back deck 14' x 14', 3' off ground, starts 4' from right corner",
            "deck \"Back deck\" start east 22' north 30'  # 3' off ground\n",
        ),
        (
            "vestibule 5' x 5' bumps out front, centered",
            "living \"Vestibule\" start east 17' 6\" south 5'\n",
        ),
        (
            "porch 5' x 5' on the south side, 0 from the west end",
            "porch \"Porch\" start south 5'\n",
        ),
        ("gazebo 10' x 10' by the pond", "patio \"Gazebo\" detached"),
        ("pool house 12' x 16', back corner", "outbuilding \"Pool house\" detached"),
        ("greenhouse 8' x 12', SW of house", "outbuilding \"Greenhouse\" detached"),
    ] {
        let text = obeyed(HOUSE, line, 0);
        assert!(text.contains(place), "{line}: {text}");
    }
}

#[test]
fn a_size_on_two_lines_below_its_space_is_that_of_the_space() {
    let list = errors(&format!(
        "{HOUSE}garage \"Garage\" within \"House\" front right corner\n21' 4\" wide\n22' 8\" deep\n"
    ));
    let [space, wide, deep] = &list[..] else { panic!("{list:?}") };
    let [fix] = space.fixes() else { panic!("{space:?}") };
    // 40 feet less 21 feet 4 inches.
    assert_eq!(
        fix.text,
        "garage \"Garage\" within \"House\" start east 18' 8\"\nnorth 22' 8\"\neast 21' 4\"\nsouth 22' 8\"\nwest 21' 4\""
    );
    for line in [wide, deep] {
        assert!(line.helps()[0].starts_with("take this line out"), "{line:?}");
    }
}

#[test]
fn what_stands_upstairs_goes_to_the_level_there() {
    for line in ["balcony upstairs front 4' x 10'", "deck upper off master 10' x 12'"] {
        assert!(help(HOUSE, line).contains("type that level after all that stands on this one"));
        let text = format!(
            "{HOUSE}{line}\nlevel \"Second floor\"\nliving \"Rooms\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\n"
        );
        let list = errors(&text);
        assert!(
            list[0].helps()[0].contains("below the last walls of \"Second floor\""),
            "{list:?}"
        );
    }
}

#[test]
fn land_that_is_smaller_than_the_house_on_it_is_told() {
    // 12 by 10 feet of land, and 1,200 square feet of house.
    let lot = |north: &str, east: &str| {
        format!("{HOUSE}lot \"Lot 4\"\nnorth {north}\neast {east}\nsouth {north}\nwest {east}\n")
    };
    let told = |text: String| {
        let (_, list) = diagnostics_of("advised.sides", text.into_bytes());
        list.iter().map(|one| one.message().to_owned()).find(|one| one.contains("land comes to"))
    };
    let warning = told(lot("12'", "10'")).expect("a warning");
    assert!(warning.contains("120 sq ft, less than `House` alone, 1,200 sq ft"), "{warning}");
    assert_eq!(told(lot("120'", "100'")), None);
}

#[test]
fn what_a_place_waits_for_is_told_with_what_is_wrong_there() {
    // The foyer lies outside its floor, which is not looked at while the line of the stair cannot be read.
    let text = format!(
        "{HOUSE}level \"Upper floor\"\nliving \"Rooms\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\nopen \"Foyer\" start west 20'\nnorth 8'\neast 8'\nsouth 8'\nwest 8'\nstair \"Stairs\" 3' wide x 10' deep behind the foyer\n"
    );
    let list = errors(&text);
    let [error] = &list[..] else { panic!("{list:?}") };
    let told = error.helps().join("\n");
    assert!(told.starts_with("this follows from `Foyer`: `Foyer` does not lie inside"), "{told}");
    assert!(told.contains("of `Foyer`: it fits inside `Rooms`"), "{told}");
}
