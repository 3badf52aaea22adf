use super::*;

/// The notices of a text.
fn told(text: &str) -> Vec<Notice> {
    let source = Source::new("a.sides", text);
    match read::read_source(source.clone()) {
        Ok(house) => notices(&source, house.warnings(), &rows(text)),
        Err(errors) => notices(&source, errors.list(), &rows(text)),
    }
}

const OPEN: &str = "front south\nlevel \"G\"\n  living \"House\"\n    north 30'\n    east 40'\n    south 32'\n    west 40'\n";

#[test]
fn a_walk_that_misses_is_told_as_seen_from_the_street() {
    let list = told(OPEN);
    assert_eq!(list.len(), 1);
    let one = &list[0];
    assert_eq!(one.place, "House");
    assert_eq!(one.message, "the walk is not back at its start: still 2' toward the back");
    assert_eq!(one.helps, ["measure again: wall 1 (`back 30'`) or wall 3 (`front 32'`)"]);
    assert!(!one.is_early);
}

#[test]
fn half_a_walk_is_too_early_to_look_for_an_error_in() {
    let half = OPEN.replace("    west 40'\n", "");
    let one = &told(&half)[0];
    assert_eq!(
        one.message,
        "the walk is not back at its start: still 40' to the left and 2' toward the back"
    );
    assert!(one.is_early);
}

#[test]
fn a_wall_that_cannot_be_read_is_named_by_its_row_and_keeps_its_inches() {
    let text = OPEN.replace("south 32'", "south 30'").replace("west 40'", "west 40x' 10\"");
    let list = told(&text);
    assert_eq!(list.len(), 1);
    let one = &list[0];
    assert_eq!((one.place.as_str(), one.at), ("Wall 4", Some((0, 3))));
    assert_eq!(one.mends.len(), 1);
    let mend = &one.mends[0];
    assert_eq!(mend.label, "Use left 40' 10\"");
    let mut mended = text.clone();
    mended.replace_range(mend.from..mend.to, &mend.text);
    assert_eq!(
        rows(&mended).walks[0].rows[3].parts,
        Some(["40".into(), "10".into(), String::new()])
    );
}

const GARAGE: &str = "  garage \"Garage\" from \"House\" corner 1\n    east 20'\n    north 20'\n    west 20'\n    south 20'\n";

#[test]
fn a_space_that_lies_in_another_can_be_taken_out_of_it() {
    let text = OPEN.replace("32'", "30'") + GARAGE;
    // North, then east: the garage at corner 1 lies inside.
    let list = told(&text);
    let mends: Vec<&Mend> = list.iter().flat_map(|one| &one.mends).collect();
    let mend = mends[mends.len() - 1];
    assert_eq!(mend.label, "Garage is inside the walk of House");
    let mut mended = text.clone();
    mended.replace_range(mend.from..mend.to, &mend.text);
    assert!(
        mended.contains("  garage \"Garage\" within \"House\" from \"House\" corner 1\n"),
        "{mended}"
    );
    assert!(fairfoot_accepts(&mended));
}

fn fairfoot_accepts(text: &str) -> bool {
    read::read("a.sides", text).is_ok()
}

#[test]
fn a_space_that_lies_across_a_wall_of_another_is_not_said_to_be_inside() {
    // 10' of it lie beyond the east wall.
    let across = GARAGE.replace("from \"House\" corner 1", "start east 30' north 5'");
    let text = OPEN.replace("32'", "30'") + &across;
    let list = told(&text);
    assert!(list.iter().any(|one| one.message.contains("cover the same ground")), "{list:?}");
    let labels: Vec<&str> =
        list.iter().flat_map(|one| &one.mends).map(|mend| mend.label.as_str()).collect();
    assert_eq!(labels[0], "Against wall 3, 5' from its front end");
    assert!(labels.iter().all(|label| !label.contains("inside")), "{labels:?}");
}

#[test]
fn the_state_of_the_walks_is_said() {
    assert_eq!(said(&rows(OPEN)).state, "Still 2' toward the back");
    let closed = OPEN.replace("32'", "30'");
    assert_eq!(said(&rows(&closed)).state, "Back at the start.");
    let with_a_porch = closed.clone() + "  porch \"Porch\" from \"House\" corner 1\n";
    assert_eq!(said(&rows(&with_a_porch)).state, "Porch has no walls yet.");
    let more =
        said(&rows(&(closed + "  garage \"Garage\" from \"House\" corner 2\n    north 20'\n")));
    assert_eq!(more.state, "Garage: still 20' toward the street");
    assert_eq!(
        more.compass,
        "On the pages north is back, east is right, south is front, west is left."
    );
    assert_eq!(
        said(&rows("front south\nlevel \"G\"\n  living \"House\"\n")),
        Said {
            state: String::new(),
            unchecked: String::new(),
            compass: String::new(),
            back: vec![String::new()]
        }
    );
}

#[test]
fn a_field_that_cannot_be_read_is_named() {
    let text = format!("record about so sq ft\n{}", OPEN.replace("32'", "30'"));
    let list = told(&text);
    assert_eq!(list[0].field, Some("record"));
}

#[test]
fn no_two_buttons_say_the_same() {
    let text = OPEN.replace("north 30'", "north 28.5' 14\"");
    let one = &told(&text)[0];
    let labels: Vec<&str> = one.mends.iter().map(|mend| mend.label.as_str()).collect();
    assert_eq!(labels, ["Use back 28' 6\"", "Use back 29' 8\""]);
}

#[test]
fn a_figure_with_words_beside_it_is_offered_as_the_field_shows_it() {
    let text = format!("record about 2300\n{}", OPEN.replace("32'", "30'"));
    let one = &told(&text)[0];
    assert_eq!((one.message.as_str(), one.helps.len()), ("only an area goes here", 0));
    assert_eq!(one.mends.len(), 1);
    assert_eq!(one.mends[0].label, "Use 2300 sq ft");
    let mut mended = text.clone();
    mended.replace_range(one.mends[0].from..one.mends[0].to, &one.mends[0].text);
    assert_eq!(told(&mended), []);
}

#[test]
fn a_walk_is_not_said_to_be_back_without_a_wall_that_cannot_be_read() {
    let text = OPEN.replace("32'", "30'").replace("west 40'\n", "west 40'\n    north\n");
    let shown = rows(&text);
    assert_eq!(said(&shown).state, "Back at the start, but without wall 5.");
    assert_eq!(questions(&shown), []);
    let text = text.replace("west 40'", "west by closing")
        + &GARAGE.replace("south 20'\n", "south 20'\n    east x\n");
    let told = said(&rows(&text));
    assert_eq!(told.state, "Back at the start, but without wall 5 of House and wall 5 of Garage.");
    assert_eq!(told.unchecked, "");
}

#[test]
fn a_closed_walk_with_nothing_inside_is_asked_about_once() {
    let closed = OPEN.replace("32'", "30'");
    assert_eq!(questions(&rows(OPEN)), []);
    let asked = |text: &str| -> Vec<(About, String)> {
        questions(&rows(text)).into_iter().map(|one| (one.about, one.text)).collect()
    };
    let level = (About::Level, "Is there an upper floor?".to_owned());
    let inside = (About::Inside, "Is a garage or a porch inside this walk?".to_owned());
    assert_eq!(asked(&closed), [inside, level.clone()]);
    let within = GARAGE.replace(" from", " within \"House\" from");
    let closed = closed + &within;
    assert_eq!(asked(&closed), [level]);
    let upper = "level \"Upper\"\n  living \"Upper\"\n    north 30'\n    east 40'\n    south 30'\n    west 40'\n";
    assert_eq!(asked(&(closed + upper)), []);
}

#[test]
fn more_than_eleven_inches_are_offered_in_both_readings() {
    let text = OPEN.replace("south 32'", "south 30'").replace("north 30'", "north 6' 24 1/4\"");
    let shown = rows(&text);
    // Each stands in its own field.
    assert_eq!(shown.walks[0].rows[0].parts, Some(["6".into(), "24".into(), "1/4".into()]));
    let one = &told(&text)[0];
    let labels: Vec<&str> = one.mends.iter().map(|mend| mend.label.as_str()).collect();
    assert_eq!(labels, ["Use back 24' 6 1/4\"", "Use back 8' 1/4\""]);
    assert!(one.message.contains("exchanged"), "{}", one.message);
    let mend = &one.mends[0];
    let mut mended = text.clone();
    mended.replace_range(mend.from..mend.to, &mend.text);
    assert!(mended.contains("    north 24' 6 1/4\"\n"), "{mended}");
    // Exchanged, 14' 13" would have more than eleven inches again.
    let text = OPEN.replace("north 30'", "north 14' 13\"");
    assert!(!told(&text)[0].message.contains("exchanged"), "{}", told(&text)[0].message);
    assert!(told(&text)[0].mends.iter().all(|mend| !mend.label.contains("13'")));
}

/// A house of twelve walls. Wall 6 has 5' 10 1/4" instead of 10' 5 1/4"; wall 10, 9' 4", would fit as 4' 9".
const EXCHANGED: &str = "front south\nlevel \"G\"\n  living \"House\"\n    north 18' 3 1/4\"\n    west 8' 6 1/2\"\n    north 22' 1 3/4\"\n    east 15'\n    south 4' 2 1/4\"\n    east 5' 10 1/4\"\n    north 4' 2 1/4\"\n    east 16' 7 3/4\"\n    south by closing\n    west 9' 4\"\n    south 18' 3 1/4\"\n    west 24' 2 1/2\"\n";

#[test]
fn every_wall_whose_feet_and_inches_may_be_exchanged_says_so() {
    let list = told(EXCHANGED);
    let exchanged: Vec<(usize, &str)> = list
        .iter()
        .flat_map(|one| &one.again)
        .filter(|one| one.label.contains("feet and inches exchanged"))
        .map(|one| (one.number, one.label.as_str()))
        .collect();
    assert_eq!(
        exchanged,
        [
            (6, "feet and inches exchanged, or wall 10 misread?"),
            (10, "feet and inches exchanged, or wall 6 misread?")
        ]
    );
}

#[test]
fn a_wall_that_may_be_missing_is_asked_about_in_the_words_of_the_rows() {
    let text = "front south\nlevel \"G\"\n  living \"House\"\n    north 30'\n    east 20'\n    east 20'\n    south by closing\n    west 40'\n";
    let told = read::read("a.sides", text).map(|house| {
        let list = house.warnings();
        missing_walls(list, &notices(house.source(), list, &rows(text)))
    });
    assert_eq!(
        told.ok(),
        Some(vec![
            "\"House\": between wall 2 (\"right 20'\") and wall 3 (\"right 20'\") the walk does not turn. Is a wall missing between the two? The wall that was not reached would hide that, and the areas below would be wrong."
                .to_owned()
        ])
    );
}

#[test]
fn a_wall_that_would_run_backward_is_told_without_the_compass() {
    let text = OPEN.replace("    west 40'\n", "    east by closing\n");
    let list = told(&text);
    let one = list.iter().find(|one| one.message.contains("would have to run"));
    assert!(one.is_some_and(|one| one.message.ends_with("40' to the left")), "{list:?}");
}

/// Five walls around a corner cut out at the back right, the fifth not reached; the sixth is still to come.
const HALF: &str = "front south\nlevel \"G\"\n  living \"House\"\n    north 30'\n    east 28' 4\"\n    south 10'\n    east by closing\n    south 20'\n";

#[test]
fn a_wall_that_was_not_reached_is_no_error_until_the_walk_is_finished() {
    let one = &told(HALF)[0];
    assert!(one.message.contains("would have to run 28' 4\" to the left"), "{}", one.message);
    assert!(one.is_early);
    // 28' 4" and 11' 8" are 40'.
    let whole = format!("{HALF}    west 40'\n");
    assert!(read::read("a.sides", &whole).is_ok());
    // Back at the start along the street as well as away from it, with nothing left for the wall.
    let nothing = format!("{HALF}    west 28' 4\"\n");
    let one = &told(&nothing)[0];
    assert!(one.message.contains("nothing is left"), "{}", one.message);
    assert!(!one.is_early);
}

#[test]
fn a_wall_that_was_not_reached_is_said_to_hide_a_mistyped_one() {
    assert_eq!(said(&rows(HALF)).unchecked, "");
    let whole = format!("{HALF}    west 40'\n");
    assert_eq!(
        said(&rows(&whole)).unchecked,
        "Wall 4 takes up whatever is missing, so a mistyped wall that goes right or left would not be seen. Could it be about 11' 8\" long?"
    );
    assert_eq!(said(&rows(&OPEN.replace("32'", "30'"))).unchecked, "");
}

#[test]
fn a_wall_without_a_length_says_so_at_its_row() {
    let list = told(&OPEN.replace("east 40'", "east"));
    let one = &list[0];
    assert_eq!((one.place.as_str(), one.at), ("Wall 2", Some((0, 1))));
    assert_eq!(one.message, "this wall has no length yet");
    assert!(one.mends.is_empty());
}

/// The text after a button.
fn pressed(text: &str, mend: &Mend) -> String {
    let mut mended = text.to_owned();
    mended.replace_range(mend.from..mend.to, &mend.text);
    mended
}

/// The buttons at the walls to measure again, each with the number of its wall.
fn repairs(text: &str) -> Vec<(usize, String)> {
    let list = told(text);
    let again = list.iter().flat_map(|one| &one.again);
    again.filter_map(|one| Some((one.number, one.mend.as_ref()?.label.clone()))).collect()
}

#[test]
fn every_error_that_is_asked_about_has_a_button_that_undoes_it() {
    let house = "front south\nlevel \"G\"\n  living \"House\"\n    north 30' photo \"a\"\n    east 24' 6\"\n    south 7' 3\"\n    east 14' 9\" # the jog\n    south 22' 9\"\n    west 39' 3\"\n";
    assert!(read::read("a.sides", house).is_ok());
    for (from, to, wall, label) in [
        ("east 14' 9\"", "west 14' 9\"", 4, "Use right 14' 9\""),
        ("east 14' 9\"", "east 9' 14\"", 4, ""),
        ("east 24' 6\"", "east 42' 6\"", 2, "Use right 24' 6\""),
        ("east 24' 6\"", "east 26' 4\"", 2, "Use right 24' 6\""),
        ("south 7' 3\"", "south 3' 7\"", 3, "Use front 7' 3\""),
        ("south 7' 3\"", "south 17' 3\"", 3, "Use front 7' 3\""),
        ("    south 7' 3\"\n", "    south 7' 3\"\n    south 7' 3\"\n", 4, "Remove wall 4"),
    ] {
        let text = house.replace(from, to);
        let list = told(&text);
        let again: Vec<&Again> = list.iter().flat_map(|one| &one.again).collect();
        let Some(mend) =
            again.iter().find(|one| one.number == wall).and_then(|one| one.mend.as_ref())
        else {
            assert!(label.is_empty(), "{to}: {list:#?}");
            continue;
        };
        assert_eq!(mend.label, label, "{to}");
        assert_eq!(pressed(&text, mend), house, "{to}");
    }
}

#[test]
fn the_error_that_leaves_nothing_is_asked_about_alone() {
    // Wall 9 has 1' 9 1/2" instead of 9' 1 1/2", which is the whole gap of 7' 4". Turned round, wall 5 would leave
    // 1 3/4" of it, which the tolerance of twelve walls would allow.
    let house = "front south\nlevel \"G\"\n  living \"House\"\n    north 20'\n    east 12'\n    north 10'\n    east 10'\n    north 3' 7 1/8\"\n    east 18'\n    south 12'\n    west 8'\n    south 9' 1 1/2\"\n    west 16'\n    south 12' 5 5/8\"\n    west 16'\n";
    assert!(read::read("a.sides", house).is_ok());
    let text = house.replace("9' 1 1/2\"", "1' 9 1/2\"");
    assert_eq!(repairs(&text), [(9, "Use front 9' 1 1/2\"".to_owned())]);
    let list = told(&text);
    let one = &list[0];
    assert!(one.message.ends_with("still 7' 4\" toward the street"), "{}", one.message);
    assert!(one.helps[0].starts_with("measure again: wall 9 ("), "{:?}", one.helps);
    let named: Vec<&str> = one.again.iter().map(|wall| wall.label.as_str()).collect();
    assert_eq!(named, ["feet and inches exchanged?"]);
}

#[test]
fn feet_and_a_fraction_are_asked_about() {
    let closed = OPEN.replace("32'", "30'");
    let labels = |length: &str| -> Vec<String> {
        let list = told(&closed.replace("east 40'", &format!("east {length}")));
        list.iter().flat_map(|one| &one.mends).map(|mend| mend.label.clone()).collect()
    };
    assert_eq!(labels("22 1/2"), ["Use right 22' 6\"", "Use right 22' 1/2\""]);
    assert_eq!(labels("9 3/4"), ["Use right 9' 9\"", "Use right 9' 3/4\""]);
    let one = &told(&closed.replace("east 40'", "east 22 1/2"))[0];
    assert_eq!(one.message, "is that part of a foot, or of an inch?");
}

#[test]
fn an_upper_floor_that_does_not_say_where_it_stands_is_put_there_by_a_button() {
    let closed = OPEN.replace("32'", "30'");
    let upper = "level \"Upper floor\"\n  living \"Upper\"\n    west 22'\n    north 30'\n    east 22'\n    south 30'\n";
    let text = closed + upper;
    let list = told(&text);
    let one = list.iter().find(|one| one.message.contains("stands")).map(|one| {
        let labels: Vec<&str> = one.mends.iter().map(|mend| mend.label.as_str()).collect();
        (one.message.as_str(), one.place.as_str(), labels, pressed(&text, &one.mends[0]))
    });
    let put = text.replace("living \"Upper\"", "living \"Upper\" start east 22'");
    assert_eq!(
        one,
        Some((
            "nothing says where `Upper floor` stands: it fits over `G` 22' to the right of where it starts",
            "Upper",
            vec!["Put it there"],
            put.clone()
        ))
    );
    assert!(!told(&put).iter().any(|one| one.message.contains("stands")));
}

#[test]
fn walls_typed_after_the_walk_was_back_are_moved_to_the_space_without_walls() {
    let further = "    south 6'\n    west 14'\n    north 6'\n    east 14'\n";
    let porch = "  porch \"Porch\" from \"House\" corner 4\n";
    let closed = OPEN.replace("32'", "30'");
    let text = format!("{closed}{further}{porch}");
    let list = told(&text);
    let one = &list[0];
    assert_eq!(
        one.helps,
        [
            "after wall 4 the walk is back at its start: do the walls from wall 5 on belong to another space?"
        ]
    );
    assert_eq!(one.mends[0].label, "Move them to Porch");
    assert_eq!(pressed(&text, &one.mends[0]), format!("{closed}{porch}{further}"));
    // Without such a space there is nothing to press.
    let list = told(&format!("{closed}{further}"));
    assert!(list[0].mends.is_empty() && list[0].helps.len() == 1, "{list:?}");
}

/// Six walls around a corner cut out at the front right; 24' 6" and 14' 9" are 39' 3".
const SIX: &str = "front south\nlevel \"G\"\n  living \"House\"\n    north 30'\n    east 24' 6\"\n    south 7' 3\"\n    east 14' 9\"\n    south 22' 9\"\n    west 39' 3\"\n";

#[test]
fn a_misplaced_point_is_asked_about_before_a_digit_that_fits_less_well() {
    // Left out of 28', a digit would leave 27' 9 5/8", which eight walls might still miss their start by.
    let house = "front south\nlevel \"G\"\n  living \"House\"\n    north 20' 6\"\n    east 28'\n    north 9' 3\"\n    east 11' 5\"\n    south 12' 9\"\n    east 6' 2\"\n    south 17'\n    west 45' 7\"\n";
    assert!(read::read("a.sides", house).is_ok());
    for typed in ["2.8'", "2.8", ".28'", "280.0'"] {
        let text = house.replace("east 28'", &format!("east {typed}"));
        assert_eq!(repairs(&text), [(2, "Use right 28'".to_owned())], "{typed}");
        assert_eq!(told(&text)[0].again[0].label, "a point misplaced?", "{typed}");
    }
}

#[test]
fn two_errors_on_one_axis_are_asked_about_together() {
    let turned = SIX.replace("east 14' 9\"", "west 14' 9\"");
    let text = turned.replace("24' 6\"", "42' 6\"");
    let list = told(&text);
    let labels: Vec<(usize, &str)> =
        list[0].again.iter().map(|one| (one.number, one.label.as_str())).collect();
    assert_eq!(
        labels,
        [
            (2, "digits swapped, and wall 4 wrong too?"),
            (4, "walked the other way, and wall 2 wrong too?")
        ]
    );
    assert_eq!(
        list[0].helps,
        [
            "measure again: both wall 2 (`right 42' 6\"`) and wall 4 (`left 14' 9\"`) or wall 6 (`left 39' 3\"`)"
        ]
    );
    // Each leaves one error for the other button.
    let first = list[0].again[0].mend.as_ref();
    assert_eq!(first.map(|mend| pressed(&text, mend)), Some(turned.clone()));
    assert_eq!(repairs(&turned), [(4, "Use right 14' 9\"".to_owned())]);
    // One error alone is asked about alone.
    let one = SIX.replace("24' 6\"", "42' 6\"");
    assert_eq!(told(&one)[0].again[0].label, "digits swapped?");
}

#[test]
fn pairs_that_close_equally_well_are_not_asked_about() {
    // Both 21' and 32' have swapped digits; so would 12' and 23' on the other side of the house.
    let text = "front south\nlevel \"G\"\n  living \"House\"\n    north 20'\n    east 21'\n    south 5'\n    east 32'\n    south 15'\n    west 12'\n    south 4'\n    west 23'\n    north 4'\n";
    let list = told(text);
    // 21' and 32' less 12' and 23'
    assert!(list[0].message.ends_with("still 18' to the left"), "{}", list[0].message);
    assert!(list[0].again.iter().all(|one| !one.label.contains("wrong too")), "{list:?}");
}

#[test]
fn a_missing_wall_is_inserted_by_a_button_without_a_length() {
    let text = SIX.replace("    south 7' 3\"\n", "");
    let list = told(&text);
    let labels: Vec<&str> = list[0].mends.iter().map(|mend| mend.label.as_str()).collect();
    assert_eq!(labels, ["Insert a wall toward the street after wall 2"]);
    let mend = &list[0].mends[0];
    assert_eq!(pressed(&text, mend), SIX.replace("south 7' 3\"", "south"));
    assert_eq!(mend.at, Some((0, 2)));
}

#[test]
fn a_point_between_feet_and_inches_has_a_button_for_each_reading() {
    let text = SIX.replace("east 24' 6\"", "east 24.6");
    let list = told(&text);
    let one = list.iter().find(|one| one.message.contains("24.6"));
    let labels =
        one.map(|one| one.mends.iter().map(|mend| mend.label.as_str()).collect::<Vec<_>>());
    assert_eq!(labels, Some(vec!["Use right 24' 6\"", "Use right 24.6'"]));
    let mended = one.map(|one| pressed(&text, &one.mends[0]));
    assert_eq!(mended.as_deref(), Some(SIX));
}

#[test]
fn what_is_missing_names_the_walls_that_it_does_not_count() {
    let state = |text: &str| said(&rows(text)).state;
    let unread = SIX.replace("south 7' 3\"", "south x");
    assert_eq!(state(&unread), "Still 7' 3\" toward the street, not counting wall 3");
    // The last wall may still be typed.
    let half = "front south\nlevel \"G\"\n  living \"House\"\n    north 30'\n    east\n";
    assert_eq!(state(half), "Still 30' toward the street");
    let none = "front south\nlevel \"G\"\n  living \"House\"\n    north\n";
    assert_eq!(state(none), "Not back at the start yet");
}

#[test]
fn words_for_the_length_of_a_front_wall_are_not_taken_for_the_street() {
    let list = told(&SIX.replace("south 22' 9\"", "south somewhat"));
    assert!(!list[0].message.contains("says on which"), "{}", list[0].message);
}

/// The text with the change of a button made.
fn mended(text: &str, mend: &Mend) -> String {
    let mut mended = text.to_owned();
    mended.replace_range(mend.from..mend.to, &mend.text);
    mended
}

/// The house is 40' by 30', and its corners are 1 at the left of the front, 2 behind it, 3 to the right of that and 4
/// before it. The garage is 22' by 20', walked back and then right from corner 1, so that all of it lies on the house.
#[test]
fn a_garage_on_the_house_is_offered_both_ends_of_every_wall_before_it_is_inside() {
    let garage = "  garage \"Garage\" from \"House\" corner 1 # attached\n    north 20'\n    east 22' note \"east door\"\n    south 20'\n    west 22'\n";
    let text = OPEN.replace("32'", "30'") + garage;
    let list = told(&text);
    let mends: Vec<&Mend> = list.iter().flat_map(|one| &one.mends).collect();
    let labels: Vec<&str> = mends.iter().map(|mend| mend.label.as_str()).collect();
    assert_eq!(
        labels,
        [
            "Against wall 4, at its left end",
            "Against wall 4, at its right end",
            "Against wall 2, at its left end",
            "Against wall 2, at its right end",
            "Against wall 1, at its front end",
            "Against wall 1, at its back end",
            "Against wall 3, at its front end",
            "Against wall 3, at its back end",
            "Garage is inside the walk of House",
        ]
    );
    let groups: Vec<&str> = mends.iter().flat_map(|mend| &mend.group).map(String::as_str).collect();
    let sides = ["On the front side", "On the back side", "On the left side", "On the right side"];
    assert_eq!(groups, sides.map(|side| [side, side]).concat());
    // Its corners farthest to the left and to the right, in feet, and the farthest to the back and the front.
    let extents = [
        [0.0, 22.0, 0.0, 20.0],
        [18.0, 40.0, 0.0, 20.0],
        [0.0, 22.0, -50.0, -30.0],
        [18.0, 40.0, -50.0, -30.0],
        [-22.0, 0.0, -20.0, 0.0],
        [-22.0, 0.0, -30.0, -10.0],
        [40.0, 62.0, -20.0, 0.0],
        [40.0, 62.0, -30.0, -10.0],
    ];
    for (mend, there) in mends.iter().zip(extents) {
        let text = mended(&text, mend);
        assert!(fairfoot_accepts(&text), "{text}");
        assert_eq!(extent(&text, 1), there, "{}", mend.label);
        assert!(text.contains(" # attached\n") && text.contains(" note \"east door\"\n"), "{text}");
    }
}

#[test]
fn what_touches_nowhere_else_is_not_laid_there() {
    // 4' deep along the whole back wall, inside the house; behind that wall is a porch.
    let text = OPEN.replace("32'", "30'")
        + "  porch \"Porch\" from \"House\" corner 2\n    north 8'\n    east 40'\n    south 8'\n    west 40'\n  garage \"Garage\" from \"House\" corner 2\n    south 4'\n    east 40'\n    north 4'\n    west 40'\n";
    let list = told(&text);
    let labels: Vec<&str> =
        list.iter().flat_map(|one| &one.mends).map(|mend| mend.label.as_str()).collect();
    assert!(labels.iter().all(|label| !label.contains("back side")), "{labels:?}");
    for mend in list.iter().flat_map(|one| &one.mends) {
        assert!(fairfoot_accepts(&mended(&text, mend)), "{}", mend.label);
    }
}

/// Where a space ends on the drawing, in feet: to the left and the right, to the back and the front.
fn extent(text: &str, walk: usize) -> [f64; 4] {
    let rows = rows(text).walks[walk].rows.clone();
    let least = |axis: usize| rows.iter().map(|row| row.to[axis]).fold(f64::MAX, f64::min);
    let most = |axis: usize| rows.iter().map(|row| row.to[axis]).fold(f64::MIN, f64::max);
    [least(0), most(0), least(1), most(1)]
}

/// The porch is in the middle of the front; the garage, which stands to the right of the house, was begun at the left of
/// its front, so that it covers the porch.
#[test]
fn of_two_spaces_on_one_ground_it_is_asked_which_stands_elsewhere() {
    let text = OPEN.replace("32'", "30'")
        + "  porch \"Porch\" start east 6'\n    south 5'\n    east 12'\n    north 5'\n    west 12'\n  garage \"Garage\" from \"House\" corner 1\n    east 22'\n    south 20'\n    west 22'\n    north 20'\n";
    let list = told(&text);
    assert_eq!(list[0].helps, ["which of the two stands elsewhere?"]);
    let of = |name: &'static str| {
        list[0]
            .mends
            .iter()
            .filter(move |mend| mend.group.first().is_some_and(|first| first == name))
    };
    for mend in of("Garage").chain(of("Porch")) {
        assert!(fairfoot_accepts(&mended(&text, mend)), "{}", mend.label);
    }
    let right = of("Garage").find(|mend| {
        mend.group[1] == "On the right side of House"
            && mend.label == "Against wall 3, at its front end"
    });
    let laid = right.map(|mend| extent(&mended(&text, mend), 2));
    assert_eq!(laid, Some([40.0, 62.0, -20.0, 0.0]));
    // The porch stays where it was when the garage moves, and moves where it is pressed.
    assert_eq!(right.map(|mend| extent(&mended(&text, mend), 1)), Some([6.0, 18.0, 0.0, 5.0]));
    assert!(of("Porch").any(|mend| extent(&mended(&text, mend), 1)[0] >= 22.0));
}

#[test]
fn a_space_that_touches_the_house_at_a_corner_only_is_asked_where_it_stands() {
    let garage = "  garage \"Garage\" from \"House\" corner 4\n    east 22'\n    south 20'\n    west 22'\n    north 20'\n";
    let text = OPEN.replace("32'", "30'") + garage;
    let list = told(&text);
    assert_eq!(list.len(), 1);
    assert_eq!(list[0].helps, ["where does `Garage` stand, seen from `House`?"]);
    let places: Vec<[f64; 4]> =
        list[0].mends.iter().map(|mend| extent(&mended(&text, mend), 1)).collect();
    assert!(places.contains(&[40.0, 62.0, -20.0, 0.0]), "{places:?}");
    for mend in &list[0].mends {
        assert!(told(&mended(&text, mend)).is_empty(), "{}", mend.label);
    }
    // In the notch of an L it touches a corner of the house, and the boxes of the two share much.
    let notch = "front south\nlevel \"G\"\n  living \"House\"\n    north 30'\n    east 20'\n    south 10'\n    east 20'\n    south 20'\n    west 40'\n  porch \"Porch\" from \"House\" corner 3\n    north 8'\n    east 12'\n    south 8'\n    west 12'\n";
    let list = told(notch);
    assert!(list[0].message.contains("at a corner only"), "{}", list[0].message);
    // Along the right wall it stands well.
    let beside = text.replace("south 20'", "north 20' ").replace("north 20'\n", "south 20'\n");
    assert_eq!(extent(&beside, 1), [40.0, 62.0, -20.0, 0.0]);
    assert!(told(&beside).is_empty());
}

/// What is asked about the walls of a house: number, label and button of each.
fn asked(walls: &[&str]) -> Vec<(usize, String, String)> {
    let text =
        format!("front south\nlevel \"G\"\n  living \"House\"\n    {}\n", walls.join("\n    "));
    let list = told(&text);
    let again = list.iter().flat_map(|one| &one.again).filter(|one| !one.label.is_empty());
    let button = |one: &Again| one.mend.as_ref().map_or(String::new(), |mend| mend.label.clone());
    again.map(|one| (one.number, one.label.clone(), button(one))).collect()
}

fn one(number: usize, label: &str, button: &str) -> (usize, String, String) {
    (number, label.to_owned(), button.to_owned())
}

#[test]
fn of_two_opposite_walls_the_tenth_of_the_other_is_asked_about() {
    let walls = ["north 36'", "east 2.4'", "south 36'", "west 24' 2\""];
    assert_eq!(asked(&walls), [one(2, "a point misplaced?", "Use right 24' 2\"")]);
    // 25' are no tenth of it: 10 × 2.4' are 24'.
    assert!(
        asked(&["north 36'", "east 2.4'", "south 36'", "west 25' 2\""])
            .iter()
            .all(|one| one.0 != 2)
    );
}

/// 28' 10" and 17' 8" are 46' 6".
#[test]
fn a_wall_without_its_inches_has_a_button_with_them() {
    let house = |wall: &'static str| {
        asked(&[
            "north 36' 4\"",
            wall,
            "south 14' 6\"",
            "east 17' 8\"",
            "south 21' 10\"",
            "west 46' 6\"",
        ])
    };
    // 18' 7" for 17' 8" leaves an inch.
    assert_eq!(
        house("east 28'"),
        [
            one(2, "inches left off, or wall 4 misread?", "Use right 28' 10\""),
            one(4, "feet and inches exchanged, or wall 2 misread?", "Use right 18' 7\""),
        ]
    );
    assert_eq!(house("east 2.8'"), [one(2, "a point misplaced?", "Use right 28' 10\"")]);
    // Of two walls of whole feet, neither is known.
    let whole =
        asked(&["north 30'", "east 28'", "south 14'", "east 17'", "south 16'", "west 45' 6\""]);
    assert!(whole.iter().all(|one| one.2.is_empty()), "{whole:?}");
}

#[test]
fn a_wall_of_a_few_inches_is_asked_whether_its_feet_were_left_off() {
    for (typed, button) in [("16\"", "Use back 16' 6\""), ("6\"", "Use back 16' 6\""), ("11\"", "")]
    {
        let walls = [&format!("north {typed}"), "east 30'", "south 16' 6\"", "west 30'"];
        assert_eq!(asked(&walls), [one(1, "feet left off?", button)], "{typed}");
    }
    // A whole number of feet has its own question.
    let walls = ["north 16\"", "east 30'", "south 16'", "west 30'"];
    assert_eq!(asked(&walls)[0], one(1, "feet, not inches, or wall 3 misread?", "Use back 16'"));
}

/// 20' and 20' and 22' go right, and 43' left; 30' go back, and 12' and 8' to the front: no single wall accounts for 19' and
/// for 10'.
#[test]
fn a_wall_that_is_there_twice_is_named_beside_other_errors() {
    let walls =
        ["north 30'", "east 20'", "east 20'", "south 12'", "east 22'", "south 8'", "west 43'"];
    let all = asked(&walls);
    assert_eq!(all[0], one(3, "typed twice?", "Remove wall 3"));
    let text =
        format!("front south\nlevel \"G\"\n  living \"House\"\n    {}\n", walls.join("\n    "));
    let list = told(&text);
    let helps = list[0].helps.join("\n");
    assert!(
        helps.contains("between wall 2 (`right 20'`) and wall 3 (`right 20'`) the walk does not turn: was it typed twice, or is a wall missing there?"),
        "{helps}"
    );
    assert!(list[0].mends.iter().any(|mend| mend.label.starts_with("Insert a wall")));
    // Of unlike length, only a wall may be missing.
    let unlike = walls.map(|wall| if wall == "east 22'" { "east 23'" } else { wall });
    let unlike: Vec<&str> = unlike
        .iter()
        .enumerate()
        .map(|(i, wall)| if i == 2 { "east 19'" } else { *wall })
        .collect();
    assert!(asked(&unlike).iter().all(|one| one.1 != "typed twice?"));
}

/// The word of what is resolved first.
fn first(walls: &[&str]) -> Word {
    let text =
        format!("front south\nlevel \"G\"\n  living \"House\"\n    {}\n", walls.join("\n    "));
    let source = Source::new("a.sides", text.as_str());
    let Err(errors) = read::read_source(source.clone()) else { return Word::NoClosureCheck };
    let list = notices(&source, errors.list(), &rows(&text));
    let all = errors.list().iter().zip(&list);
    all.min_by_key(|(_, notice)| notice.rank).map_or(Word::NoSides, |(one, _)| one.word())
}

#[test]
fn what_brings_the_walk_back_is_resolved_before_what_only_may() {
    // 2.4 for 24' 2", which neither 2' 4" nor 2.4' is.
    assert_eq!(
        first(&["north 36' 1\"", "east 2.4", "south 36' 1\"", "west 24' 2\""]),
        Word::DoesNotClose
    );
    // 28.10 for 28' 10", and 18' for 30' on the other axis, which has no button.
    let two = ["north 30' 2\"", "east 28.10", "south 18' 2\"", "west 28' 9\""];
    assert_eq!(first(&two), Word::TenthsBesideInches);
}

/// 31' 6" go back, with two digits swapped, and then 6' twice, of which one should go to the front: either, so that only
/// the first wall is wrong for sure.
#[test]
fn what_is_wrong_in_all_pairs_of_errors_is_asked_about_alone() {
    let walls = [
        "north 13' 6\"",
        "east 14'",
        "north 6'",
        "east 13'",
        "north 6'",
        "east 28'",
        "south 19'",
        "west 12'",
        "south 12' 6\"",
        "west 43'",
    ];
    assert_eq!(asked(&walls), [one(1, "digits swapped?", "Use back 31' 6\"")]);
    let mut mended = walls;
    mended[0] = "north 31' 6\"";
    let labels: Vec<(usize, String, String)> = asked(&mended);
    assert_eq!(labels.len(), 2);
    assert_eq!(labels[0], one(3, "walked the other way, or wall 5 misread?", "Use front 6'"));
}
