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
    assert_eq!(house.rows[3].found, "42' 7 1/2\"");
    let porch = &rows.walks[1];
    assert_eq!(porch.start, [42.625, -28.0]);
    assert_eq!(porch.corner, Some(("House".into(), 3)));
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
fn a_space_is_renamed_wherever_its_level_refers_to_it() {
    let text = "level \"G\"\n  living \"House\"\n    north 8'\n  garage \"Garage\" within \"House\" from \"House\" corner 2 # of the \"House\"\nlevel \"U\"\n  living \"House\"\n  porch \"P\" from \"House\" corner 1\n";
    let name = Edit::Name { line: 2, kind: "living".into(), name: "Main".into() };
    let renamed = "level \"G\"\n  living \"Main\"\n    north 8'\n  garage \"Garage\" within \"Main\" from \"Main\" corner 2 # of the \"House\"\nlevel \"U\"\n  living \"House\"\n  porch \"P\" from \"House\" corner 1\n";
    assert_eq!(edited(text, &name), renamed);
}

#[test]
fn a_walk_is_near_its_start_within_two_feet_or_a_fiftieth_of_it() {
    let near = |last: &str| {
        rows(&format!("level \"G\"\nliving \"H\"\nnorth 30'\neast 40'\nsouth 30'\nwest {last}\n"))
            .walks[0]
            .is_near
    };
    // 140' are walked at 40'; a fiftieth of 138' is 2.76'.
    assert!(near("40'") && near("38'") && near("37' 6\""));
    assert!(!near("37'") && !near("4'"));
    let both = "level \"G\"\nliving \"H\"\nnorth 30'\neast 40'\nsouth 28'\nwest 38'\n";
    assert!(rows(both).walks[0].is_near);
    let long = |last: &str| {
        rows(&format!("level \"G\"\nliving \"H\"\nnorth 90'\neast 90'\nsouth 90'\nwest {last}\n"))
            .walks[0]
            .is_near
    };
    assert!(long("84'") && !long("80'"));
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
    let edit = Edit::Side {
        line: 5,
        way: Way::Left,
        length: "30' 6\"".into(),
        how: How::About,
        shape: Shape::Straight,
    };
    let after = edited(HOUSE, &edit);
    assert!(
        after.contains("    west 30' 6\" estimated  photo \"1: # west\" # behind the oak\n"),
        "{after}"
    );
    let back = Edit::Side {
        line: 9,
        way: Way::Front,
        length: "28'".into(),
        how: How::Measured,
        shape: Shape::Straight,
    };
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
        start: Vec::new(),
        level: None,
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

/// Positions by hand: a bay 8' wide in the front wall projects 2' toward the street, whichever way the walk goes.
#[test]
fn a_bay_is_drawn_outside() {
    let clockwise = "front south\nlevel \"G\"\nliving \"H\"\nnorth 20'\neast 30'\nsouth 20'\nwest 11'\nbay west 8' out 2' flat 4'\nwest 11'\n";
    let walk = &rows(clockwise).walks[0];
    let ends = |row: &Row| row.pieces.iter().map(|piece| piece.to).collect::<Vec<_>>();
    assert!(walk.is_closed);
    assert_eq!(ends(&walk.rows[4]), [[17.0, 2.0], [13.0, 2.0], [11.0, 0.0]]);
    let other = "front south\nlevel \"G\"\nliving \"H\"\nbay east 8' out 2' round\neast 22'\nnorth 20'\nwest 30'\nsouth 20'\n";
    let bay = &rows(other).walks[0].rows[0];
    assert_eq!(bay.shape, Shape::Round { out: "2'".into() });
    // Chord 8 and rise 2: a radius of (64 + 16) / 16 = 5 feet; the street is on the right of a walk to the east.
    assert_eq!(bay.pieces, [Piece { to: [8.0, 0.0], curve: Some((5.0, true)) }]);
}

#[test]
fn the_sides_of_a_bay_are_counted_as_on_the_pages() {
    let text = "front south\nlevel \"G\"\nliving \"H\"\nnorth 20'\neast 11'\nbay east 8' out 2' flat 4'\neast 11'\ncorner \"c\"\nsouth 20'\nwest 30'\nporch \"P\" from \"H\" corner 4\neast 4'\nporch \"Q\" from corner \"c\"\n";
    let walks = rows(text).walks;
    let numbers: Vec<usize> = walks[0].rows.iter().map(|row| row.number).collect();
    assert_eq!(numbers, [1, 2, 3, 6, 7, 8]);
    assert_eq!(walks[0].rows[2].sides, 3);
    // Side 4 is the front of the bay: 11' and 2' to the right, 20' and 2' to the back.
    assert_eq!(walks[1].start, [13.0, -22.0]);
    assert_eq!(walks[2].corner, Some(("H".into(), 7)));
    assert_eq!(walks[2].start, [30.0, -20.0]);
}

#[test]
fn a_row_becomes_a_bay_or_a_slanted_wall_and_is_shown_before_it_can_be_read() {
    let shape = Shape::Bay { out: "2'".into(), flat: "4'".into() };
    let edit = |shape: &Shape, length: &str| Edit::Side {
        line: 5,
        way: Way::Right,
        length: length.into(),
        how: How::Measured,
        shape: shape.clone(),
    };
    let after = edited(HOUSE, &edit(&shape, "8'"));
    assert!(after.contains("    bay east 8' out 2' flat 4'  photo"), "{after}");
    let row = &rows(&after).walks[0].rows[0];
    assert_eq!((row.way, row.length.as_str(), &row.shape), (Some(Way::Right), "8'", &shape));
    let begun = edited(HOUSE, &edit(&Shape::Bay { out: String::new(), flat: String::new() }, "8'"));
    let row = &rows(&begun).walks[0].rows[0];
    assert!(!row.is_read);
    assert_eq!(row.shape, Shape::Bay { out: String::new(), flat: String::new() });
    let slant = Shape::Slant { to: Way::Front, leg: "3' 6\"".into() };
    let after = edited(HOUSE, &edit(&slant, "3'"));
    assert!(after.contains("    diagonal east 3' south 3' 6\"  photo"), "{after}");
    let row = &rows(&after).walks[0].rows[0];
    assert_eq!((&row.shape, row.to, row.is_read), (&slant, [3.0, 3.5], true));
}

#[test]
fn a_space_comes_onto_its_level_or_onto_a_new_one() {
    let space = |level: &str, name: &str| Edit::Space {
        kind: "living".into(),
        name: name.into(),
        within: None,
        corner: None,
        start: vec![(Way::Right, "4 m".into()), (Way::Back, "1 m".into())],
        level: Some(level.into()),
    };
    let two = edited(HOUSE, &space("Upper", "Bedrooms"));
    assert!(
        two.ends_with("level \"Upper\"\n  living \"Bedrooms\" start east 4 m north 1 m\n"),
        "{two}"
    );
    let three = edited(&two, &space("Ground", "Den"));
    assert!(three.contains("    south 6'\n  living \"Den\" start"), "{three}");
    assert_eq!(rows(&three).levels, ["Ground", "Upper"]);
    let den = rows(&three).walks.iter().find(|walk| walk.name == "Den").map(|walk| walk.line);
    assert_eq!(edited(&three, &Edit::Drop { line: den.unwrap_or(0) }), two);
}

#[test]
fn a_bare_thickness_and_area_are_in_the_unit_of_their_field() {
    let head = |text: &str, field: &str, value: &str| {
        edited(text, &Edit::Head { field: field.into(), value: value.into() })
    };
    assert!(head(HOUSE, "veneer", "4 5/8").contains("\nveneer 4 5/8\"\n"));
    let metric = head(HOUSE, "units", "meters");
    assert!(metric.starts_with("units meters\nfront south"), "{metric}");
    assert!(head(&metric, "veneer", "11.5").contains("\nveneer 11.5 cm\n"));
    assert!(head(&metric, "plan", "174").contains("\nplan 174 sq m\n"));
    // Of a comma in meters one or two decimals follow, in feet the thousands.
    assert!(head(&metric, "record", "95,4").contains("\nrecord 95.4 sq m"));
    assert!(head(&metric, "record", "1,180").contains("\nrecord 1,180 sq m"));
    assert!(head(HOUSE, "listing", "95,4").contains("\nlisting 95,4 sq ft"));
    assert_eq!(rows(&head(HOUSE, "veneer", "none")).heads.veneer, "none");
    // What cannot be read stays in its field.
    assert_eq!(rows("veneer 4 5 6\n").heads.veneer, "4 5 6");
}

#[test]
fn a_picture_is_named_changed_and_taken_away() {
    let picture = |caption: &str, file: &str| Edit::Picture {
        line: 7,
        caption: caption.into(),
        file: file.into(),
    };
    let named = edited(HOUSE, &picture("Wall 2", "wall-2.jpg"));
    assert!(
        named.contains("    east 42' 7 1/2\" photo \"Wall 2\" file \"wall-2.jpg\"\n"),
        "{named}"
    );
    assert_eq!(rows(&named).walks[0].rows[1].picture.as_deref(), Some("wall-2.jpg"));
    let other = edited(&named, &picture("Wall 2", "other.png"));
    assert!(other.contains("file \"other.png\"\n") && !other.contains("wall-2.jpg"));
    assert_eq!(edited(&named, &picture("", "")), HOUSE);
}

fn way() -> impl Strategy<Value = Way> {
    prop::sample::select(Way::ALL.to_vec())
}

fn how() -> impl Strategy<Value = How> {
    prop::sample::select(vec![How::Measured, How::Closing, How::About])
}

/// A wall by closing takes up a wall that cannot be read, so that its length would be another one.
#[test]
fn no_length_follows_while_a_wall_cannot_be_read() {
    let found = |text: &str| rows(text).walks[0].rows[3].found.clone();
    assert_eq!(found(HOUSE), "42' 7 1/2\"");
    assert_eq!(found(&HOUSE.replace("n 28'  photo", "n 2x'  photo")), "");
}

#[test]
fn a_bare_list_of_walls_becomes_a_house() {
    let list = "# my notes\nback 30'\nright 40' 6\"\nfront 30'\nleft 40 6\n";
    let house = edited(list, &Edit::House);
    let head = "front south\nlevel \"Ground floor\"\n  living \"House\"\n";
    assert_eq!(house, list.replace("back 30'", &format!("{head}back 30'")));
    let rows = rows(&house).walks.remove(0).rows;
    let ways: Vec<Option<Way>> = rows.iter().map(|row| row.way).collect();
    assert_eq!(ways, Way::ALL.map(Some));
    let read: Vec<bool> = rows.iter().map(|row| row.is_read).collect();
    assert_eq!(read, [true, true, true, false]);
    for other in [house.as_str(), HOUSE, "", "front\n", "left over from lunch\n"] {
        assert_eq!(edited(other, &Edit::House), other);
    }
}

/// Corners are counted along the walk: a space stays at its corner while walls come and go before it.
#[test]
fn a_space_stays_at_its_corner() {
    let text = "level \"G\"\n  living \"House\"\n    north 30'\n    east 40'\n    south 30'\n    west 40'\n  garage \"Garage\" within \"House\" from \"House\" corner 4 # the corner 4\n    west 20'\n    north 20'\n  porch \"P\" from \"House\" corner 2\nlevel \"U\"\n  porch \"Q\" start east 4'\n";
    let at = |number: &str| text.replace("corner 4 #", &format!("corner {number} #"));
    let (how, length) = (How::Measured, "10'".to_owned());
    let add =
        Edit::Add { after: 4, way: Way::Back, length: length.clone(), how, shape: Shape::Straight };
    let longer = edited(text, &add);
    assert_eq!(longer, at("5").replace("east 40'\n", "east 40'\n    north 10'\n"));
    assert_eq!(edited(&longer, &Edit::Remove { line: 5 }), text);
    // The bay is three sides.
    let shape = Shape::Bay { out: "2'".into(), flat: "4'".into() };
    let bay = Edit::Side { line: 4, way: Way::Right, length: "40'".into(), how, shape };
    let with_bay = edited(text, &bay);
    assert_eq!(with_bay, at("6").replace("east 40'", "bay east 40' out 2' flat 4'"));
    let straight =
        Edit::Side { line: 4, way: Way::Right, length: "40'".into(), how, shape: Shape::Straight };
    assert_eq!(edited(&with_bay, &straight), text);
    // A wall that begins at the corner comes after it, and one at the end of the walk moves none.
    let place = |text: &str| rows(text).walks[1].start;
    let at_it = Edit::Add {
        after: 5,
        way: Way::Front,
        length: length.clone(),
        how,
        shape: Shape::Straight,
    };
    assert_eq!(place(&edited(text, &at_it)), place(text));
    let last = Edit::Add { after: 6, way: Way::Front, length, how, shape: Shape::Straight };
    assert!(edited(text, &last).contains("corner 4 #"));
}

/// The part of the line after the place where a space begins, and all other lines, stay as they are.
#[test]
fn where_a_space_begins_is_changed_alone() {
    let house = "front south # the street\nlevel \"G\"\n  living \"House\"\n    north 28'\n    east 42'\n    south 28'\n    west 42'\n";
    let garage = |place: &str| {
        format!(
            "{house}  garage \"From corner\" within \"House\"{place} veneer none  recorded 440 sq ft # start here\n    east 20'\n"
        )
    };
    let begin = |corner: Option<usize>, start: &[(Way, &str)]| Edit::Begin {
        line: 8,
        corner: corner.map(|n| ("House".to_owned(), n)),
        start: start.iter().map(|(way, far)| (*way, (*far).to_owned())).collect(),
    };
    let all = [
        (begin(Some(3), &[]), " from \"House\" corner 3", (Some(("House".to_owned(), 3)), vec![])),
        (
            begin(None, &[(Way::Right, "10' 6\""), (Way::Back, "4 ft")]),
            " start east 10' 6\" north 4 ft",
            (None, vec![(Way::Right, "10' 6\"".to_owned()), (Way::Back, "4'".to_owned())]),
        ),
        (begin(None, &[]), "", (None, vec![])),
    ];
    for (_, before, _) in &all {
        for (edit, place, (corner, off)) in &all {
            let after = edited(&garage(before), edit);
            assert_eq!(after, garage(place));
            let walk = &rows(&after).walks[1];
            assert_eq!((&walk.corner, &walk.off), (corner, off));
        }
    }
}

#[test]
fn a_space_is_laid_elsewhere_with_its_words() {
    let text = "front south\nlevel \"G\"\n  living \"East\"\n    north 28'\n  garage \"West\" start east 2'\n    east 20' note \"east\" # east\n    bay n 10' out 2' flat 6'\n";
    let pair = |one: &str, other: &str| [one.to_owned(), other.to_owned()];
    let start = "from \"East\" corner 1".to_owned();
    let lay = |exchanged| Edit::Lay { line: 5, exchanged, start: start.clone() };
    assert_eq!(
        edited(text, &lay(vec![pair("east", "west"), pair("north", "south")])),
        "front south\nlevel \"G\"\n  living \"East\"\n    north 28'\n  garage \"West\" from \"East\" corner 1\n    west 20' note \"east\" # east\n    bay south 10' out 2' flat 6'\n"
    );
}

/// Facing the house, a bay on a wall that goes right along the front stands out toward the street; on one that goes right
/// along the back, behind it.
#[test]
fn a_bay_stands_out_before_its_walk_is_closed() {
    let out = |walls: &str| {
        let text = format!("front south\nlevel \"G\"\n  living \"House\"\n{walls}");
        let rows = rows(&text).walks[0].rows.clone();
        let bay = rows.iter().find(|row| row.sides == 3);
        bay.map(|bay| bay.pieces[0].to[1] - bay.from[1])
    };
    let bay = "    bay east 10' out 2' flat 6'\n";
    assert_eq!(out(bay), Some(2.0));
    assert_eq!(out(&format!("    east 12'\n{bay}")), Some(2.0));
    assert_eq!(out(&format!("    east 12'\n{bay}    east 12'\n    north 30'\n")), Some(2.0));
    assert_eq!(out(&format!("    north 30'\n{bay}    south 30'\n")), Some(-2.0));
    assert_eq!(out("    bay west 10' out 2' flat 6'\n"), Some(2.0));
}

#[test]
fn a_wall_that_is_inserted_goes_across() {
    let then =
        |text: &str| -> Vec<Way> { rows(text).walks[0].rows.iter().map(|row| row.then).collect() };
    let closed = "front south\nlevel \"G\"\n  living \"House\"\n    north 30'\n    east 40'\n    south 30'\n    west 40'\n";
    assert_eq!(then(closed), [Way::Right, Way::Front, Way::Left, Way::Back]);
    // Toward the start, which is missed by 2' to the right and by 5' toward the street.
    let open = closed.replace("south 30'", "south 25'").replace("west 40'", "west 42'");
    assert_eq!(then(&open), [Way::Right, Way::Front, Way::Right, Way::Front]);
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
        let after = edited(&text, &Edit::Side { line, way, length: length.clone(), how, shape: Shape::Straight });
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

    /// With its directions as seen from the street, a text has the same walks.
    #[test]
    fn other_words_for_the_directions_say_the_same(
        front in prop::sample::select(vec!["north", "east", "south", "west"]),
        bay in prop::sample::select(vec!["bay south 8' out 2' flat 4'", "bay west 9' out 2' round", "diagonal north 3' west 4' 6\" # so", "n 12 7"]),
    ) {
        let text = HOUSE.replace("front south", &format!("front {front}")) + "  garage \"G\" from \"House\" corner 2\n    " + bay + "\n    west 4'\n";
        let Some(seen) = in_ways(&text) else { return Err(TestCaseError::fail("the street is stated")) };
        prop_assert_ne!(&seen, &text);
        let places = |text: &str| -> Vec<_> {
            let walks = rows(text).walks;
            walks.into_iter().flat_map(|walk| walk.rows).map(|row| (row.line, row.way, row.shape, row.length, row.from, row.to)).collect()
        };
        prop_assert_eq!(places(&seen), places(&text));
    }

    /// Adding a side and removing it gives the same text back; so does exchanging two lines twice.
    #[test]
    fn edits_can_be_undone(after in 4usize..=13, way in way(), how in how(), with in 5usize..=13) {
        let added = edited(HOUSE, &Edit::Add { after, way, length: "9'".into(), how, shape: Shape::Straight });
        prop_assert_eq!(added.lines().count(), HOUSE.lines().count() + 1);
        prop_assert_eq!(edited(&added, &Edit::Remove { line: after + 1 }), HOUSE);
        let swap = Edit::Swap { line: 5, with };
        prop_assert_eq!(edited(&edited(HOUSE, &swap), &swap), HOUSE);
    }

    /// No text and no edit causes a panic.
    #[test]
    fn any_text_can_be_edited(text in "(?s).{0,80}", line in 0usize..9, value in ".{0,9}") {
        let _ = rows(&text);
        for text in [text.clone(), format!("front east\nlevel \"G\"\n{text}")] {
            let seen = in_ways(&text);
            prop_assert!(seen.is_none_or(|seen| seen.split('\n').count() == text.split('\n').count()));
        }
        for edit in [
            Edit::Within { line, within: value.clone() },
            Edit::Name { line, kind: "garage".into(), name: value.clone() },
            Edit::Side { line, way: Way::Back, length: value.clone(), how: How::About, shape: Shape::Straight },
            Edit::Add { after: line, way: Way::Left, length: value.clone(), how: How::Measured, shape: Shape::Straight },
            Edit::Head { field: "record".into(), value: value.clone() },
            Edit::Name { line, kind: "porch".into(), name: value.clone() },
            Edit::Swap { line, with: 2 },
        ] {
            let _ = rows(&edited(&text, &edit));
        }
    }
}
