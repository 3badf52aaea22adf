use proptest::prelude::*;

use super::*;

const HOUSE: &str = "front south # the street\nrecord 1,904 sq ft measured to frame \"card\"\nlevel \"Ground\"\n  living \"House\" # all of it\n    n 28'  photo \"1: # west\" # behind the oak\n\n    east 42' 7 1/2\"\n    corner \"porch\"\n    south 28' estimated note \"about\"\n    west by closing\n  porch \"Porch\" from corner \"porch\"\n    east 8'\n    south 6'\n";

#[test]
fn ways_are_seen_from_the_street() {
    for (front, north) in [
        (Direction::South, Way::Back),
        (Direction::North, Way::Front),
        (Direction::East, Way::Right),
        (Direction::West, Way::Left),
    ] {
        assert_eq!(Way::of(Direction::North, front), north, "{front:?}");
        for way in Way::ALL {
            assert_eq!(Way::of(way.direction(front), front), way);
        }
    }
}

#[test]
fn a_walk_is_rows_with_its_places() {
    let rows = rows(HOUSE);
    assert_eq!(rows.heads.record, "1,904 sq ft");
    let house = &rows.walks[0];
    let lengths: Vec<&str> = house.rows.iter().map(|row| row.length.as_str()).collect();
    assert_eq!(lengths, ["28'", "42' 7 1/2\"", "28'", ""]);
    assert_eq!(house.rows[1].parts, Some(["42".into(), "7".into(), "1/2".into()]));
    assert_eq!(house.rows[2].how, How::About);
    assert!(house.is_closed);
    assert_eq!(house.rows[3].from, [42.625, 0.0]);
    let porch = &rows.walks[1];
    assert_eq!(porch.start, [42.625, -28.0]);
    assert_eq!(porch.gap, "8' to the left and 6' toward the back");
}

#[test]
fn the_left_half_is_on_the_left_when_the_street_is_north() {
    let text = "front north\nlevel \"G\"\nliving \"H\"\nsouth 10'\nwest 20'\n";
    let walk = &rows(text).walks[0];
    assert_eq!(walk.rows[0].way, Some(Way::Back));
    assert_eq!(walk.rows[1].way, Some(Way::Right));
    assert_eq!(walk.rows[1].to, [20.0, -10.0]);
}

#[test]
fn an_unreadable_side_still_becomes_a_row() {
    let walk = &rows("level \"G\"\nliving \"H\"\nnorth 42 7\neast\n").walks[0];
    assert_eq!(walk.rows.len(), 2);
    assert!(!walk.rows[0].is_read);
    assert_eq!((walk.rows[0].length.as_str(), walk.rows[1].length.as_str()), ("42 7", ""));
}

#[test]
fn an_edit_of_a_side_keeps_its_words_and_its_comment() {
    let edit = Edit::Side { line: 5, way: Way::Left, length: "30' 6\"".into(), how: How::About };
    let after = edited(HOUSE, &edit);
    assert!(
        after.contains("    west 30' 6\" estimated  photo \"1: # west\" # behind the oak\n"),
        "{after}"
    );
    let back = Edit::Side { line: 9, way: Way::Front, length: "28'".into(), how: How::Measured };
    assert!(edited(HOUSE, &back).contains("    south 28' note \"about\"\n"));
}

#[test]
fn an_edited_figure_keeps_its_face_and_note() {
    let edit = Edit::Head { field: "record".into(), value: "2,031".into() };
    assert!(edited(HOUSE, &edit).contains("\nrecord 2,031 sq ft measured to frame \"card\"\n"));
    let none = Edit::Head { field: "record".into(), value: String::new() };
    assert!(!edited(HOUSE, &none).contains("record"));
    let new = Edit::Head { field: "plan".into(), value: "1,700".into() };
    assert!(edited(HOUSE, &new).contains("\"card\"\nplan 1,700 sq ft\nlevel"));
}

#[test]
fn a_further_space_begins_at_a_corner() {
    let edit = Edit::Space {
        kind: "garage".into(),
        name: "Garage".into(),
        within: Some("House".into()),
        corner: Some(("House".into(), 3)),
    };
    let after = edited(HOUSE, &edit);
    assert!(
        after.ends_with(
            "    south 6'\n  garage \"Garage\" within \"House\" from \"House\" corner 3\n"
        ),
        "{after}"
    );
    assert!(edited("", &edit).starts_with("level \"Ground floor\"\n  garage"));
}

fn way() -> impl Strategy<Value = Way> {
    prop::sample::select(Way::ALL.to_vec())
}

fn how() -> impl Strategy<Value = How> {
    prop::sample::select(vec![How::Measured, How::Closing, How::About])
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    /// An edited row shows what was put in, and no other line has changed.
    #[test]
    fn rows_to_text_to_rows(
        front in prop::sample::select(vec!["north", "east", "south", "west"]),
        line in prop::sample::select(vec![5usize, 7, 9, 10, 12, 13]),
        (way, how) in (way(), how()),
        (feet, inches) in (1u32..200, 0u32..12),
    ) {
        let text = HOUSE.replace("front south", &format!("front {front}"));
        let length = format!("{feet}' {inches}\"");
        let after = edited(&text, &Edit::Side { line, way, length: length.clone(), how });
        let shown = rows(&after);
        let row = shown.walks.iter().flat_map(|walk| &walk.rows).find(|row| row.line == line);
        let Some(row) = row else { return Err(TestCaseError::fail("the row is gone")) };
        prop_assert_eq!((row.way, row.how, row.is_read), (Some(way), how, true));
        if how != How::Closing {
            prop_assert_eq!(&row.length, &length);
            prop_assert_eq!(&row.parts, &Some([feet.to_string(), inches.to_string(), String::new()]));
        }
        for (i, (old, new)) in text.lines().zip(after.lines()).enumerate() {
            prop_assert!(old == new || i + 1 == line);
        }
        prop_assert_eq!(text.lines().count(), after.lines().count());
    }

    /// Adding a side and removing it gives the same text back; so does exchanging two lines twice.
    #[test]
    fn edits_can_be_undone(after in 4usize..=13, way in way(), how in how(), with in 5usize..=13) {
        let added = edited(HOUSE, &Edit::Add { after, way, length: "9'".into(), how });
        prop_assert_eq!(added.lines().count(), HOUSE.lines().count() + 1);
        prop_assert_eq!(edited(&added, &Edit::Remove { line: after + 1 }), HOUSE);
        let swap = Edit::Swap { line: 5, with };
        prop_assert_eq!(edited(&edited(HOUSE, &swap), &swap), HOUSE);
    }

    /// No text and no edit causes a panic.
    #[test]
    fn any_text_can_be_edited(text in "(?s).{0,80}", line in 0usize..9, value in ".{0,9}") {
        let _ = rows(&text);
        for edit in [
            Edit::Side { line, way: Way::Back, length: value.clone(), how: How::About },
            Edit::Add { after: line, way: Way::Left, length: value.clone(), how: How::Measured },
            Edit::Head { field: "record".into(), value: value.clone() },
            Edit::Name { line, kind: "porch".into(), name: value.clone() },
            Edit::Swap { line, with: 2 },
        ] {
            let _ = rows(&edited(&text, &edit));
        }
    }
}
