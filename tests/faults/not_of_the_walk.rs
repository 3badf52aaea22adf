//! What a tape pad says of land, buildings that stand apart, bays, the street and the address: the advice, typed as it
//! is offered, leaves the house as it was measured. Areas are computed by hand.

use super::pads::{HOUSE, areas, obeyed, said};

#[test]
fn a_building_that_stands_apart_keeps_its_own_walls() {
    // 36' by 30'
    const WALLS: &str = "north 36'\neast 30'\nsouth 36'\nwest 30'\n";
    for (line, name) in [
        ("barn 25 m behind house", "Barn"),
        ("barn, 25 m away", "Barn"),
        ("barn (25 m behind)", "Barn"),
        ("shed, 20 ft from the house", "Shed"),
        ("workshop about 60' from the garage", "Workshop"),
        ("garage 13' from the house", "Garage"),
        ("80 ft behind house: barn", "Barn"),
    ] {
        let text = obeyed(&format!("{HOUSE}{line}\n{WALLS}"), 0);
        assert_eq!(areas(&text, name), (30 * 40, 36 * 30), "{text}");
    }
}

#[test]
fn where_along_a_wall_a_garage_begins_is_not_how_far_it_stands_from_the_house() {
    let text = format!(
        "{HOUSE}garage 6' from the left corner of the house\nnorth 22'\neast 20'\nsouth 22'\nwest 20'\n"
    );
    let page = said(&text);
    assert!(!page.contains("detached  #") && !page.contains("`# garage"), "{page}");
}

#[test]
fn the_calls_of_a_deed_are_no_walls_of_the_house() {
    // The bearings are at right angles.
    let calls = [
        "N 2°15'00\" E 84.50",
        "S 87°45'00\" E 120.00",
        "S 2°15'00\" W 84.50",
        "N 87°45'00\" W 120.00",
    ];
    for head in ["deed calls:", "deed calls", "the deed says", "the deed reads:", "deed:"] {
        for mark in ["", "1. ", "1) ", "(1) ", "call 1: "] {
            let calls: String = (1..)
                .zip(calls)
                .map(|(number, call)| format!("{}{call}\n", mark.replace('1', &number.to_string())))
                .collect();
            let text = obeyed(&format!("{HOUSE}{head}\n{calls}"), 0);
            assert!(text.contains("\nlot \""), "{text}");
            assert_eq!(areas(&text, "House").0, 30 * 40, "{text}");
        }
    }
}

#[test]
fn a_bay_in_the_words_of_a_pad_is_counted() {
    // (9' + 5') / 2 by 2' 4" is 16.3 sq ft.
    for line in [
        "west 9' (bay, 5' flat, sticks out 2' 4\")",
        "west 9' bay 2' 4\" out, 5' flat",
        "west 9' with an angled bay, out 2' 4\", front 5'",
        "angled bay west 9', out 2' 4\", front 5'",
        "the angled bay west 9', 2' 4\" deep, 5' across",
    ] {
        let walk = HOUSE.replace("west 40'", &format!("west 20'\n{line}\nwest 11'"));
        let text = obeyed(&walk, 0);
        assert!(text.contains("\nbay west 9' out 2' 4\" flat 5'"), "{text}");
        assert_eq!(areas(&text, "House"), (1_216, 1_216), "{text}");
    }
}

#[test]
fn the_side_of_the_street_follows_from_any_side_that_is_told() {
    let house = HOUSE.strip_prefix("front south\n").unwrap();
    for (line, front) in [
        ("north is the back", "south"),
        ("the back faces north", "south"),
        ("north = back of house", "south"),
        ("north side is the rear", "south"),
        ("south is the street", "south"),
        ("the road is on the south", "south"),
        ("left is west", "south"),
        ("right is east", "south"),
        ("left is north", "west"),
        ("west is the back", "east"),
        ("east is the right side", "south"),
        ("left is south", "east"),
    ] {
        let text = obeyed(&format!("{line}\n{house}"), 0);
        assert!(text.starts_with(&format!("front {front}")), "{line}: {text}");
        assert_eq!(areas(&text, "House").0, 30 * 40, "{text}");
    }
}

#[test]
fn the_address_after_a_word_for_the_house_is_the_address() {
    for line in ["house: 19 Tanager Way", "home: 19 Tanager Way", "House 19 Tanager Way"] {
        let text = obeyed(&format!("{line}\n{HOUSE}"), 0);
        assert!(text.starts_with("address \"19 Tanager Way\"\n"), "{text}");
        assert_eq!(areas(&text, "House").0, 30 * 40, "{text}");
    }
}

#[test]
fn a_level_of_frame_that_was_measured_inside_keeps_its_face() {
    const WALLS: &str = "north 20'\neast 30'\nsouth 20'\nwest 30'\n";
    let typed =
        format!("{HOUSE}level \"Upper\"\nliving \"Rooms\" measured to inside veneer none\n{WALLS}");
    let meant = areas(&typed, "Rooms");
    for line in [
        "Upstairs: frame, inside measurements",
        "upstairs (wood frame, measured inside)",
        "second floor, no brick, measured inside",
        "second floor, measured inside, no brick",
        "2nd floor inside w/ siding",
    ] {
        let text = obeyed(&format!("{HOUSE}{line}\n{WALLS}"), 0);
        assert_eq!(areas(&text, "Rooms"), meant, "{text}");
    }
}

#[test]
fn a_side_that_is_missing_is_by_closing() {
    for line in ["missing right side", "can't reach the right side", "right side missing"] {
        let text = obeyed(
            &format!(
                "front south\nlevel \"G\"\nliving \"House\"\nfront 40'\nleft 30'\nback 40'\n{line}\n"
            ),
            0,
        );
        assert_eq!(areas(&text, "House"), (30 * 40, 30 * 40), "{text}");
    }
}

#[test]
fn the_area_of_the_land_is_not_the_record_of_the_house() {
    for line in [
        "county lot size 0.52 ha",
        "site 0.52 ha per county",
        "land 0.52 hectares by the deed",
        "0.52 ha lot",
    ] {
        let page = said(&format!("{line}\n{HOUSE}"));
        assert!(page.contains("`lot \"Lot\" recorded 0.52 hectares"), "{page}");
        assert!(!page.contains("`record "), "{page}");
    }
}
