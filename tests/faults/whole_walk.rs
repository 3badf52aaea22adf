//! Walks whose walls are called by the sides on which they stand: one answer for the whole walk, and each way of obeying
//! it gives a walk that closes. Areas are computed by hand.

use fairfoot::Settings;

use super::diagnostics_of;

/// A text with one of the answers of its only error made, and how many answers there are.
fn obeyed(text: &str, offer: usize) -> (String, usize) {
    let (_, list) = diagnostics_of("walk.sides", text.as_bytes().to_vec());
    let [error] = &list[..] else { panic!("{list:?}") };
    let fix = &error.fixes()[offer];
    let mut text = text.to_owned();
    text.replace_range(fix.span.start..fix.span.end, &fix.text);
    (text, error.fixes().len())
}

/// The counted area in square feet, how wide the house is from west to east, and how deep, in inches.
fn size(text: &str) -> (i64, i64, i64) {
    let house =
        fairfoot::read("walk.sides", text).unwrap_or_else(|errors| panic!("{errors}\n{text}"));
    let areas = house.areas(&Settings::default()).unwrap();
    let space = &house.spaces()[0];
    let corners = space.outline().corners();
    let inches = |lengths: Vec<i64>| {
        let (least, most) = (lengths.iter().min().unwrap(), lengths.iter().max().unwrap());
        (most - least).div_euclid(25_400_000)
    };
    let east = inches(corners.iter().map(|corner| corner.east.nm()).collect());
    let north = inches(corners.iter().map(|corner| corner.north.nm()).collect());
    (areas.gross().as_measured().whole_sq_ft(), east, north)
}

const HOUSE: &str = "front south\nlevel \"Ground floor\"\nliving \"House\"\n";

#[test]
fn walls_that_all_stand_on_the_sides_they_name_are_asked_about_once() {
    // 41' by 30' with 11' by 12' missing at its northeast corner: 1,230 - 132.
    for (sides, ways) in [
        (["north wall", "east wall", "north", "east", "south", "west wall"], "compass"),
        (["back wall", "right side", "back side", "right", "front", "left wall"], "street"),
        (["north side", "east", "north wall", "east side", "south", "west"], "compass"),
    ] {
        let lengths = ["30'", "12'", "11'", "18'", "41'", "30'"];
        let lines: Vec<String> =
            sides.iter().zip(lengths).map(|(side, length)| format!("{side} {length}\n")).collect();
        let text = format!("{HOUSE}{}", lines.concat());
        let (stands, offers) = obeyed(&text, 0);
        assert_eq!(offers, 2, "{ways}");
        assert_eq!(size(&stands), (1_098, 41 * 12, 30 * 12), "{stands}");
        // Walked these ways it is the same house, turned by a quarter.
        let (walked, _) = obeyed(&text, 1);
        assert_eq!(size(&walked), (1_098, 30 * 12, 41 * 12), "{walked}");
    }
}

#[test]
fn walls_out_of_reach_follow_where_the_others_show_which_way_they_run() {
    // 24' 4" by 32' 7" = 792.9, 31' 8" by 37' 11" = 1,200.7, and 21' 5" by 4' = 85.7.
    let text = format!(
        "{HOUSE}left side 32' 7\"\nback 24' 4\"\nnorth 5' 4\"\nback wall behind the fence, can't reach\nright side, same fence, can't reach\nfront of garage 21' 5\"\nleft side of garage 4'\nfront 34' 7\"\n"
    );
    let (mended, offers) = obeyed(&text, 0);
    assert_eq!(offers, 1);
    assert_eq!(size(&mended), (2_079, 56 * 12, 41 * 12 + 11));
    assert!(mended.contains("south by closing note \"same fence, can't reach\""));
}

#[test]
fn a_side_named_among_walls_that_were_walked_is_answered_alone() {
    let text = format!("{HOUSE}north 30'\neast 40'\nsouth 30'\nwest wall 40'\n");
    let (mended, _) = obeyed(&text, 0);
    assert_eq!(size(&mended), (1_200, 40 * 12, 30 * 12));
}

#[test]
fn a_bay_in_the_walk_leaves_the_question_open() {
    let text = format!(
        "{HOUSE}left side 28'\nback side 36'\nright side 28'\nfront 10'\nbay west 9' out 2' flat 5'\nfront 17'\n"
    );
    let (stands, offers) = obeyed(&text, 0);
    assert_eq!(offers, 2);
    // 28' by 36', and the bay: 2' by the mean of 9' and 5'.
    assert_eq!(size(&stands), (1_008 + 14, 36 * 12, 30 * 12), "{stands}");
}

#[test]
fn walls_that_say_the_way_as_well_are_read_by_the_way() {
    let text = format!(
        "{HOUSE}west wall north 30'\nnorth wall east 40'\neast wall south not measured (fence)\nfront west 40'\n"
    );
    let (_, list) = diagnostics_of("walk.sides", text.as_bytes().to_vec());
    let mut mended = text.clone();
    for error in list.iter().rev() {
        let fix = &error.fixes()[0];
        mended.replace_range(fix.span.start..fix.span.end, &fix.text);
    }
    assert_eq!(size(&mended), (1_200, 40 * 12, 30 * 12), "{mended}");
}

#[test]
fn one_side_out_of_reach_in_a_walk_as_seen_from_the_street_stays_in_its_words() {
    // A compass word would turn this one wall alone, and the question which way the walk runs would not be asked.
    for (typed, said) in [
        ("right side unknown (fence)", "unknown (fence)"),
        ("right wall not measured, hedge", "not measured, hedge"),
    ] {
        let walls =
            "front 33'\nleft 5'\nfront 21'\n@\nback by closing\nleft 4'\nback 30'\nleft 36'\n";
        let text = format!("{HOUSE}{}", walls.replace('@', typed));
        let (_, list) = diagnostics_of("walk.sides", text.as_bytes().to_vec());
        let fixes: Vec<&str> =
            list.iter().flat_map(|fault| fault.fixes()).map(|fix| fix.text.as_str()).collect();
        assert_eq!(fixes[..1], [format!("right by closing note \"{said}\"")], "{typed}");
    }
}

#[test]
fn a_side_without_a_length_among_compass_words_may_run_either_way() {
    // Between walls that run east and west, the wall on the right runs north or south: 36' by 30'.
    for typed in ["right side ?", "east side: ?", "east wall n/a"] {
        let text = format!("{HOUSE}north 36'\neast 30'\n{typed}\nwest 30'\n");
        let (_, list) = diagnostics_of("walk.sides", text.as_bytes().to_vec());
        let [error] = &list[..] else { panic!("{typed}: {list:?}") };
        let offered: Vec<&str> = error.fixes().iter().map(|fix| fix.text.as_str()).collect();
        assert_eq!(offered, ["north by closing", "south by closing"], "{typed}");
        let (_, south) = (offered[0], offered[1]);
        assert_eq!(size(&text.replace(typed, south)).0, 1_080, "{typed}");
    }
}

#[test]
fn a_bay_among_walls_that_are_asked_about_waits_for_them() {
    // Which way it runs follows from the walls beside it: with the walls settled it is asked about again.
    let text = format!(
        "{HOUSE}left side 28'\nback side 12'\nbay window: 2' 10\" angled, 6', 2' 10\" angled\nback side 14'\nright side 28'\nfront side 36'\n"
    );
    let (_, list) = diagnostics_of("walk.sides", text.as_bytes().to_vec());
    assert_eq!(list.len(), 1, "{list:?}");
    let (settled, _) = obeyed(&text, 0);
    let (_, list) = diagnostics_of("walk.sides", settled.into_bytes());
    let [bay] = &list[..] else { panic!("{list:?}") };
    assert_eq!(bay.fixes()[0].text, "bay east 10' out 2' flat 6'");
}

#[test]
fn jogs_turn_as_they_say_in_a_walk_whose_walls_are_named_by_their_sides() {
    // 37' 5" by 34' 4" = 1,284.6, 2' 11" by 36' 6" = 106.5 and 18' 5" by 32' 5" = 597.0; from west to east 58' 9".
    let text = format!(
        "{HOUSE}left 34' 4\"\nback 40' 4\"\njog in 4' 1\"\nback 18' 5\"\nright 32' 5\"\ngarage front 21' 4\"\njog back 2' 2\"\nfront 37' 5\"\n"
    );
    let (mended, offers) = obeyed(&text, 0);
    assert_eq!(offers, 1);
    assert_eq!(size(&mended), (1_988, 58 * 12 + 9, 36 * 12 + 6), "{mended}");
    // A jog that says no way turns as the walk closes.
    let text = text.replace("jog in", "jog");
    assert_eq!(size(&obeyed(&text, 0).0), (1_988, 58 * 12 + 9, 36 * 12 + 6));
}

#[test]
fn the_list_of_walls_goes_on_below_the_front_of_the_garage() {
    let text = format!(
        "{HOUSE}left side 34' 4\"\nback 40' 4\"\nsouth 4' 1\"\nback by closing\nright side by closing\ngarage front 21' 4\"\nnorth 2' 2\"\nfront 37' 5\"\n"
    );
    let (_, list) = diagnostics_of("walk.sides", text.as_bytes().to_vec());
    let told: String = list.iter().flat_map(fairfoot::Diagnostic::helps).cloned().collect();
    assert!(told.contains("`west 21' 4\" note \"garage front\"`, `north 2' 2\"`, `west 37' 5\"`"));
}

#[test]
fn a_wall_told_from_one_end_to_the_other_runs_to_the_last() {
    for walk in [
        ["front, left to right 40'", "right side 30'", "rear wall 40'", "left side 30'"],
        ["front L to R 40'", "north 30'", "west 40'", "south 30'"],
        ["SW corner to SE corner 40'", "north 30'", "west 40'", "south 30'"],
        ["east 40'", "right wall (front to back) 30'", "west 40'", "south 30'"],
        ["east 40'", "north 30'", "rear, 40' from right to left", "south 30'"],
        ["east 40'", "north 30'", "west 40'", "left side, back to front: 30'"],
    ] {
        let text = format!("{HOUSE}{}\n", walk.join("\n"));
        let (mended, _) = obeyed(&text, 0);
        assert_eq!(size(&mended), (1_200, 40 * 12, 30 * 12), "{mended}");
    }
}

#[test]
fn a_bay_among_walls_as_seen_from_the_street_leaves_open_how_the_house_lies() {
    // 28' 4" by 36' 2" = 1,024.7, and a bay of (9' + 5') / 2 by 2'.
    for bay in ["bay 2' 10\", 5', 2' 10\"", "bay 9' wide, 2' out, 5' flat"] {
        let text = format!(
            "{HOUSE}front 21' 1\"\n{bay}\nfront 6' 1\"\nright 28' 4\"\nback 36' 2\"\nleft 28' 4\"\n"
        );
        let (mended, _) = obeyed(&text, 0);
        assert_eq!(size(&mended).0, 1_039, "{mended}");
        let (_, list) = diagnostics_of("walk.sides", mended.into_bytes());
        let told: String = list.iter().flat_map(fairfoot::Diagnostic::helps).cloned().collect();
        assert!(told.contains("`bay east` for its bay"), "{told}");
    }
}

#[test]
fn a_line_with_a_length_and_a_way_is_never_made_a_comment() {
    for line in ["hedge rear 3'", "fence on west, 22.5'", "note W 14", "patio door side 3' SW"] {
        let text = format!("{HOUSE}north 30'\neast 40'\nsouth 30'\n{line}\nwest 40'\n");
        let (_, list) = diagnostics_of("walk.sides", text.into_bytes());
        let [error] = &list[..] else { panic!("{list:?}") };
        assert!(error.fixes().iter().all(|fix| !fix.text.starts_with('#')), "{error:?}");
        assert!(error.helps()[0].starts_with("if it is a wall of the house"), "{error:?}");
    }
}

#[test]
fn a_first_wall_that_says_how_far_a_garage_starts_is_moved_to_its_place() {
    let text = format!(
        "{HOUSE}north 30'\neast 40'\nsouth 30'\nwest 40'\ngarage \"Garage\" start east 40'\nsouth 2' 2\"\nnorth 22'\neast 20'\nsouth 22'\nwest 20'\n"
    );
    let (_, list) = diagnostics_of("walk.sides", text.clone().into_bytes());
    let told: String = list.iter().flat_map(fairfoot::Diagnostic::helps).cloned().collect();
    assert!(told.contains("write `start east 40' south 2' 2\"` for `start east 40'`"), "{told}");
    let mended = text.replace("start east 40'\nsouth 2' 2\"", "start east 40' south 2' 2\"");
    assert_eq!(size(&mended), (1_200, 40 * 12, 30 * 12));
}
