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
