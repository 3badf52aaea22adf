//! Lines of spaces as people describe them: a size is always four sides, and nothing said of a space becomes its name.

use fairfoot::Diagnostic;

use super::typing::{around, errors};

/// What is offered for a line below a house, where no sides follow.
fn offered(line: &str) -> Vec<String> {
    let text = format!("{}{line}\n", around("space").0);
    let list = errors(&text);
    list.iter().flat_map(Diagnostic::fixes).map(|fix| fix.text.clone()).collect()
}

fn message(line: &str) -> String {
    let text = format!("{}{line}\n", around("space").0);
    let list = errors(&text);
    let said = list.iter().map(|error| format!("{} {:?}", error.message(), error.helps()));
    said.collect::<Vec<_>>().join("\n")
}

fn name(line: &str) -> &str {
    line.split('"').nth(1).unwrap_or_default()
}

const NOUNS: [&str; 30] = [
    "loft",
    "pergola",
    "ramada",
    "chicken house",
    "lean-to",
    "pantry",
    "woodshed",
    "gazebo",
    "arbor",
    "sauna",
    "vestibule",
    "greenhouse",
    "pool house",
    "hot tub pad",
    "patio cover",
    "tool shed",
    "wine room",
    "garage",
    "deck",
    "porch",
    "carport",
    "balcony",
    "workshop",
    "cupola",
    "dog run",
    "storage shed",
    "screened porch",
    "bunkhouse",
    "breezeway",
    "garden room",
];

#[test]
fn a_size_on_the_line_of_any_space_is_offered_as_its_four_sides() {
    for noun in NOUNS {
        for line in [
            format!("{noun} 12x14"),
            format!("{noun} (12x14)"),
            format!("{noun} 12 by 14"),
            format!("{noun} [12 x 14]"),
            format!("{noun}: 12 x 14"),
        ] {
            let all = offered(&line);
            assert!(!all.is_empty(), "{line}: {}", message(&line));
            for offered in all {
                let sides: Vec<&str> = offered.lines().skip(1).collect();
                assert_eq!(sides.len(), 4, "{line}: {offered}");
                let of_the_size = |side: &&&str| side.ends_with(" 12") || side.ends_with(" 14");
                assert_eq!(sides.iter().filter(of_the_size).count(), 4, "{line}: {offered}");
                assert!(!offered.contains("recorded"), "{line}: {offered}");
                let name = name(&offered).to_lowercase();
                assert!(name.contains(noun.split(' ').next().unwrap()), "{line}: {offered}");
                assert!(name.chars().all(|c| c.is_alphabetic() || " -".contains(c)), "{offered}");
            }
        }
    }
}

#[test]
fn a_room_that_every_house_has_is_a_remark_first_and_an_addition_second() {
    for noun in ["kitchen", "hall", "family room", "bedroom 2", "living room", "master bedroom"] {
        let line = format!("{noun} 12 x 14");
        let all = offered(&line);
        assert_eq!(all.len(), 3, "{line}: {all:?}");
        assert_eq!(all[0], format!("# {line}"));
        for offered in &all[1..] {
            assert_eq!(offered.lines().count(), 5, "{line}: {offered}");
            assert_eq!(name(offered).to_lowercase(), noun, "{line}: {offered}");
        }
        // Inside the house it is nothing else.
        let line = format!("{noun} 12 x 14 in the back left corner");
        assert_eq!(offered(&line), [format!("# {line}")]);
    }
}

#[test]
fn no_size_beside_a_place_is_lost_or_taken_for_an_area_or_a_name() {
    for noun in NOUNS {
        for place in
            ["on the right", "right side", "off the back", "behind the house", "at the rear"]
        {
            for line in [
                format!("{noun} {place} 12x14"),
                format!("{noun} ({place}) 12x14"),
                format!("{noun} 12x14 {place}"),
            ] {
                let all = offered(&line);
                let said = message(&line);
                assert!(!said.contains("recorded 1"), "{line}: {said}");
                for offered in all {
                    assert_eq!(offered.lines().count(), 5, "{line}: {offered}");
                    let name = name(&offered).to_lowercase();
                    let place = ["right", "back", "behind", "rear", "12", "14", "(", ")"];
                    assert!(!place.iter().any(|word| name.contains(word)), "{line}: {offered}");
                }
            }
        }
    }
}

#[test]
fn a_face_and_standing_apart_are_said_of_a_space_and_not_its_name() {
    for (words, meant) in [
        ("inside", "measured to inside"),
        ("to the studs", "measured to frame"),
        ("measured outside", "measured to outside"),
        ("(interior)", "measured to inside"),
        ("framing", "measured to frame"),
    ] {
        for noun in ["addition", "sunroom", "loft", "wine room", "library", "game room"] {
            let line = format!("{noun} {words} 12x14");
            let all = offered(&line);
            assert!(!all.is_empty(), "{line}: {}", message(&line));
            for offered in all {
                assert!(offered.contains(meant), "{line}: {offered}");
                assert_eq!(name(&offered).to_lowercase(), noun, "{line}: {offered}");
            }
        }
    }
    for words in ["stands apart", "by itself", "on its own", "standing alone", "freestanding"] {
        for noun in ["barn", "tool shed", "bunkhouse", "workshop", "pump house", "garage"] {
            let text = format!("{}{noun} {words}\n{}", around("space").0, around("space").1);
            let list = errors(&text);
            let fix = list.iter().flat_map(Diagnostic::fixes).next();
            let fix = &fix.unwrap_or_else(|| panic!("{noun} {words}: {list:?}")).text;
            assert!(fix.ends_with("\" detached"), "{noun} {words}: {fix}");
            assert_eq!(name(fix).to_lowercase(), noun);
        }
    }
}

#[test]
fn what_is_said_to_be_gone_is_missing_with_its_area() {
    for gone in [
        "not there anymore",
        "is gone",
        "torn down",
        "demolished",
        "no longer there",
        "burned down",
        "never built",
        "does not exist",
        "there is none",
        "taken down",
        "was removed",
        "isn't there",
    ] {
        for (noun, kind) in [
            ("shed", "outbuilding"),
            ("deck", "deck"),
            ("carport", "carport"),
            ("pool house", "outbuilding"),
            ("greenhouse", "outbuilding"),
            ("balcony", "balcony"),
        ] {
            for line in [
                format!("{noun} {gone}, county has 96 sf"),
                format!("record shows {noun} 96 sf, {gone}"),
                format!("county has a {noun} 96 sf, {gone}"),
            ] {
                let meant = format!("missing {kind} \"{}\" recorded 96 sq ft", {
                    let mut letters = noun.chars();
                    letters
                        .next()
                        .map(|c| c.to_uppercase().chain(letters).collect::<String>())
                        .unwrap()
                });
                assert_eq!(offered(&line), [meant], "{line}: {}", message(&line));
            }
        }
    }
}

#[test]
fn no_sides_stand_straight_below_a_level_that_is_offered() {
    for level in [
        "upstairs",
        "second floor",
        "lower level",
        "basement",
        "cellar",
        "2nd floor",
        "attic level",
        "third story",
        "upper floor",
        "half story",
    ] {
        for line in [format!("{level} 28x38"), format!("{level} 28 by 38 inside"), level.to_owned()]
        {
            let text = format!("{}{line}\n{}", around("level").0, around("space").1);
            for after in ["", around("space").1] {
                let text = if after.is_empty() {
                    text.replace(around("space").1, "")
                } else {
                    text.clone()
                };
                let list = errors(&text);
                for fix in list.iter().flat_map(Diagnostic::fixes) {
                    let next =
                        fix.text.lines().nth(1).unwrap_or(after.lines().next().unwrap_or(""));
                    let is_side = ["north ", "east "].iter().any(|way| next.starts_with(way));
                    let begins = fix.text.starts_with("level ");
                    assert!(!(begins && is_side), "{line}: {}", fix.text);
                    if line.contains("inside") && begins {
                        assert!(fix.text.contains("measured to inside"), "{line}: {}", fix.text);
                    }
                }
            }
        }
    }
}

#[test]
fn walls_without_brick_have_no_veneer() {
    for line in [
        "siding, no brick",
        "frame house, vinyl siding",
        "all siding",
        "hardie board",
        "wood frame house",
        "stucco all around",
        "no masonry anywhere",
        "cedar shingles",
        "aluminum siding throughout",
        "vinyl",
        "no brick",
        "house is sided, no stone",
    ] {
        let text = format!("{line}\n{}", around("head").1);
        let list = errors(&text);
        let fix = list.iter().flat_map(Diagnostic::fixes).next();
        let fix = &fix.unwrap_or_else(|| panic!("{line}: {list:?}")).text;
        assert!(fix.starts_with("veneer none"), "{line}: {fix}");
    }
    for line in ["brick on front only", "front brick, siding elsewhere", "stone on the street side"]
    {
        let text = format!("{line}\n{}", around("head").1);
        let list = errors(&text);
        let said =
            list.iter().flat_map(Diagnostic::helps).any(|help| help.contains("`veneer none`"));
        assert!(said && list.iter().flat_map(Diagnostic::fixes).count() == 0, "{line}: {list:?}");
    }
}

#[test]
fn a_short_word_near_a_word_of_the_format_is_not_taken_for_it() {
    for line in
        ["hot tub pad 8x8", "hot tub", "slot 3x4", "pot rack 2x3", "dot 5x5", "tee house 8x8"]
    {
        for offered in offered(line) {
            assert!(
                !offered.starts_with("lot ") && !offered.starts_with("tie "),
                "{line}: {offered}"
            );
        }
    }
}
