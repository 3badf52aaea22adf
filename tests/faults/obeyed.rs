//! The advice of a message, typed as is, gives the house that was meant. Areas are computed by hand.

use fairfoot::diagnostic::{Word, draw};
use fairfoot::{Diagnostic, Settings};

use super::{diagnostics_of, folder};

/// The printed diagnostics, with lines joined.
fn drawn(text: &str) -> String {
    let (source, list) = diagnostics_of("pad.sides", text.as_bytes().to_vec());
    draw(&source, &list, false).split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The counted area as measured, in whole square feet.
fn counted(text: &str) -> i64 {
    let house = fairfoot::read("pad.sides", text).unwrap_or_else(|errors| panic!("{errors}"));
    let areas = house.areas(&Settings::default()).unwrap();
    areas.gross().as_measured().whole_sq_ft()
}

/// A ranch of 26' by 32' with a garage of 22' by 24' 6" next to it, walked as a whole: 832 sq ft of house and 539 of
/// garage, 1,371 together. Two of its jogs could not be reached.
fn ranch(back: &str, jog: &str, front_jog: &str, front: &str, garage: &str) -> String {
    format!(
        "level \"Ground floor\"\nliving \"House\"\nnorth 32'\neast {back}\nsouth {jog}\neast 22'\nsouth 24' 6\"\nwest 22'\nsouth {front_jog}\nwest {front}\ngarage \"Garage\" within \"House\"{garage}\nnorth 24' 6\"\neast 22'\nsouth 24' 6\"\nwest 22'\n"
    )
}

#[test]
fn a_garage_that_sticks_out_is_offered_the_one_place_where_it_fits() {
    for jogs in [("4'", "3' 6\""), ("4' estimated", "by closing")] {
        // Across the living room, and 6" beyond the back wall.
        let across = ranch("26'", jogs.0, jogs.1, "26'", " start east 10' north 4'");
        let page = drawn(&across);
        assert!(page.contains("side 2 (`east 22'`) lies 6\" north of `House`"), "{page}");
        assert!(page.contains("it fits inside `House`: `from \"House\" corner 7`"), "{page}");
        let obeyed = across.replace("start east 10' north 4'", "from \"House\" corner 7");
        assert_eq!(counted(&obeyed), 26 * 32);
        // Begun where the front wall is, and not at its jog.
        let low = ranch("26'", jogs.0, jogs.1, "26'", " start east 26'");
        let page = drawn(&low);
        assert!(page.contains("it fits inside `House`: `from \"House\" corner 7`"), "{page}");
    }
}

#[test]
fn of_two_walls_either_of_which_may_be_misread_neither_is_said_to_be() {
    let page = drawn(&ranch("26'", "4'", "3' 6\"", "62'", " start east 26' north 3' 6\""));
    assert!(page.contains("digits swapped, or side 8 misread?"), "{page}");
    assert!(page.contains("digits swapped, or side 2 misread?"), "{page}");
    assert!(!page.contains("by closing"), "{page}");
}

#[test]
fn of_two_walls_the_one_is_asked_about_that_then_agrees_with_the_record() {
    let page = drawn(&ranch(
        "26' recorded 26'",
        "4'",
        "3' 6\"",
        "62' recorded 26'",
        " start east 26' north 3' 6\"",
    ));
    assert!(page.contains("digits swapped?") && !page.contains("misread"), "{page}");
    assert!(
        page.contains("so read, side 8 (`west 62'`) would agree with its recorded length"),
        "{page}"
    );
}

#[test]
fn a_gap_is_not_closed_by_a_wall_that_was_measured() {
    let page = drawn("level \"G\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 26'\nwest 40'\n");
    assert!(!page.contains("by closing"), "{page}");
}

#[test]
fn two_jogs_by_closing_are_half_of_what_they_make_together() {
    // 32' less 24' 6" leaves 7' 6" for the two. Wherever the jogs are, the walk holds 1,371 sq ft.
    let twice = ranch("26'", "by closing", "by closing", "26'", " from \"House\" corner 7");
    let page = drawn(&twice);
    assert!(page.contains("by the other walls the two are 7' 6\" together"), "{page}");
    assert!(page.contains("`south 3' 9\" estimated` would be half"), "{page}");
    let obeyed = twice.replacen("south by closing", "south 3' 9\" estimated", 1);
    assert_eq!(counted(&obeyed), 1_371 - 539);
}

#[test]
fn a_wall_by_closing_that_runs_backward_is_blamed_on_the_misread_one() {
    let walk = |closing: &str, front: &str| {
        format!(
            "level \"G\"\nliving \"House\"\nnorth 32'\neast 26'\nsouth 4'\neast 22'\nsouth 24' 6\"\n{closing} by closing\nsouth 3' 6\"\nwest {front}\n"
        )
    };
    let page = drawn(&walk("west", "62'"));
    assert!(page.contains("error[closing-backwards]"), "{page}");
    assert!(page.contains("west 62' | -------- digits swapped, or side 2 misread?"), "{page}");
    assert!(page.contains("leave `west by closing` as it is"), "{page}");
    assert_eq!(counted(&walk("west", "26'")), 1_371);
}

#[test]
fn a_misread_bearing_is_named_with_both_readings() {
    let lot = |last: &str| {
        format!(
            "units meters\nlot \"Deed\"\nbearing N 4 30 00 E 82 m\nbearing S 85 30 00 E 64.50 m\nbearing S 4 30 00 W 82 m\nbearing {last} W 64.50 m\n"
        )
    };
    let page = drawn(&lot("N 58 30 00"));
    assert!(page.contains("N 58° 30' 0\" W or N 85° 30' 0\" W?"), "{page}");
    assert!(!page.contains("`close`"), "{page}");
    assert!(!drawn(&lot("N 85 30 00")).contains("does-not-close"));
    // With two calls misread, no single one accounts for the gap, and none is named.
    let page = drawn(&lot("N 58 30 00").replace("S 85 30", "S 80 12"));
    assert!(page.contains("no single call accounts for it"), "{page}");
}

#[test]
fn bearings_as_a_calculator_prints_them_are_read_in_degrees_minutes_and_seconds() {
    // A rectangle of 200' by 100', turned by 5° 13' 50": as decimals its calls are 0.1° apart.
    let calls = |angle: &str, square: &str| {
        format!(
            "lot \"Lot\"\nbearing N {angle} W 200'\nbearing N {square} E 100'\nbearing S 5° 13' 50\" E 200'\nbearing S {square} W 100'\n"
        )
    };
    let page = drawn(&calls("5.1350", "84.4610"));
    assert!(page.contains("does not close"), "{page}");
    assert!(
        page.contains("side 1 (`bearing N 5.1350 W 200'`) then is `bearing N 5° 13' 50\" W 200'`"),
        "{page}"
    );
    let obeyed = calls("5° 13' 50\"", "84° 46' 10\"");
    assert!(!drawn(&obeyed).contains("does-not-close"), "{}", drawn(&obeyed));
}

#[test]
fn a_length_in_a_wrong_unit_is_the_first_suspect() {
    for (typed, other, slip) in [
        ("30.2\"", "30' 2\"", "feet, not inches?"),
        ("30\"", "30' 0\"", "feet, not inches?"),
        ("302\"", "30' 2\"", "feet and inches run together?"),
        ("302'", "30' 2\"", "feet and inches run together?"),
    ] {
        let page = drawn(&format!(
            "level \"G\"\nliving \"House\"\nnorth {typed}\neast 40'\nsouth {other}\nwest 40'\n"
        ));
        assert!(
            page.contains(&format!("north {typed} | {} {slip}", "-".repeat(6 + typed.len()))),
            "{page}"
        );
        assert_eq!(page.matches("misread?").count(), 0, "{page}");
    }
    let page =
        drawn("level \"G\"\nliving \"House\"\nnorth 9.2'\neast 14.6 m\nsouth 9.2 m\nwest 14.6 m\n");
    assert!(page.contains("meters, not feet?"), "{page}");
}

#[test]
fn a_deck_laid_over_the_house_is_offered_places_outside_it_and_never_within() {
    const HOUSE: &str = "level \"G\"\nliving \"House\"\nnorth 28'\neast 40'\nsouth 28'\nwest 40'\n";
    let deck = |place: &str| {
        format!("{HOUSE}deck \"Deck\"{place}\nnorth 12'\neast 16'\nsouth 12'\nwest 16'\n")
    };
    // Without a place: at the northwest corner it lies along the back, at the southeast corner along the east wall.
    let page = drawn(&deck(""));
    for place in [
        "if it stands on the north side of `House`, against side 2, at its west end: type `from \"House\" corner 2`",
        "if it stands on the east side of `House`, against side 3, at its south end: type `from \"House\" corner 4`",
    ] {
        assert!(page.contains(place), "{page}");
    }
    assert!(!page.contains("within"), "{page}");
    // Three feet too far in.
    let page = drawn(&deck(" start east 10' north 25'"));
    assert!(
        page.contains("if it stands on the north side of `House`, against side 2, 10' from its west end: type `start east 10' north 28'`"),
        "{page}"
    );
    for place in
        [" from \"House\" corner 2", " from \"House\" corner 4", " start east 10' north 28'"]
    {
        assert_eq!(counted(&deck(place)), 28 * 40);
    }
}

#[test]
fn a_stable_is_offered_detached_and_the_places_where_it_fits() {
    let stable = |place: &str| {
        format!(
            "units meters\nlevel \"G\"\nliving \"House\"\nnorth 9.20\neast 14.6\nsouth 9.2\nwest 14.60\noutbuilding \"Stable\"{place}\nnorth 6.40\neast 8.5\nsouth 6.40\nwest 8.5\n"
        )
    };
    let page = drawn(&stable(""));
    assert!(page.contains("`detached`"), "{page}");
    for corner in [2, 4] {
        assert!(page.contains(&format!(": type `from \"House\" corner {corner}`")), "{page}");
    }
    // Over the east wall by half a meter.
    let page = drawn(&stable(" start east 14.1 m north 2.8 m"));
    assert!(
        page.contains("if it stands on the east side of `House`, against side 3, at its north end: type `start east 14.6 m north 2.8 m`"),
        "{page}"
    );
    // 9.2 m by 14.6 m are 134.32 m², 1,445.8 sq ft.
    for place in [" detached", " from \"House\" corner 4", " start east 14.6 m north 2.8 m"] {
        assert_eq!(counted(&stable(place)), 1_446);
    }
}

#[test]
fn an_outside_stair_is_to_be_left_out() {
    let page = drawn(
        "level \"G\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\nstair \"Back stair\"\nnorth 12'\nwest 4'\nsouth 12'\neast 4'\n",
    );
    assert!(page.contains("a stair outside the house is no part of its area"), "{page}");
    assert!(!page.contains("start east"), "{page}");
}

#[test]
fn an_opening_beside_an_upper_walk_that_went_the_other_way_says_where_both_lie() {
    let upper = |one: &str, other: &str| {
        format!(
            "veneer none\nwall 6\"\nlevel \"G\"\nliving \"House\"\nnorth 28'\neast 40'\nsouth 28'\nwest 40'\nlevel \"Upstairs\"\nliving \"Bedrooms\" measured to inside\nnorth 27'\n{one} 39'\nsouth 27'\n{other} 39'\nopen \"Foyer\" start east 15'\nnorth 10'\neast 8'\nsouth 10'\nwest 8'\n"
        )
    };
    let page = drawn(&upper("west", "east"));
    assert!(
        page.contains("`Bedrooms` lies from 0 to 39' west and `Foyer` from 15' to 23' east"),
        "{page}"
    );
    assert!(page.contains("walked with its `east` and `west` exchanged"), "{page}");
    // 28 × 40 below, and above the same less the opening of 80.
    assert_eq!(counted(&upper("east", "west")), 1_120 + 1_053 - 80);
}

#[test]
fn a_level_that_overhangs_by_an_assumed_veneer_is_told_so_first() {
    let house = |head: &str| {
        format!(
            "{head}wall 6\"\nlevel \"G\"\nliving \"House\"\nnorth 28'\neast 40'\nsouth 28'\nwest 40'\nlevel \"Upstairs\"\nliving \"Bedrooms\" measured to inside\nnorth 27'\neast 39'\nsouth 27'\nwest 39'\n"
        )
    };
    let page = drawn(&house(""));
    assert!(
        page.contains("if the house has none, put `veneer none` above the first level"),
        "{page}"
    );
    assert!(!drawn(&house("veneer none\n")).contains("upper-overhangs"));
}

#[test]
fn numbers_without_their_meters_are_asked_about_before_places() {
    let page = drawn(
        "level \"G\"\nliving \"House\"\nnorth 9.20\neast 14.6\nsouth 9.2\nwest 14.60\noutbuilding \"Stable\"\neast 8.5\nsouth 6.40\nwest 8.5\nnorth 6.40\n",
    );
    assert!(page.contains("error[unit-needed]") && page.contains("`units meters`"), "{page}");
    assert_eq!(page.matches("error[").count(), 1, "{page}");
}

#[test]
fn names_that_say_something_else_are_asked_about() {
    let house = |level: &str, name: &str| {
        drawn(&format!(
            "level {level}\nliving \"{name}\"\nnorth 28'\neast 40'\nsouth 28'\nwest 40'\n"
        ))
    };
    for (level, name, asked) in [
        ("\"Basement\"", "House", "`level \"Basement\" below grade`"),
        ("\"Root cellar\"", "House", "below grade"),
        ("\"G\"", "Garage", "is it `garage \"Garage\"`?"),
        ("\"G\"", "Front porch", "is it `porch \"Front porch\"`?"),
        ("\"G\"", "Deck 2", "is it `deck \"Deck 2\"`?"),
    ] {
        assert!(house(level, name).contains(asked), "{level} {name}: {}", house(level, name));
    }
    for (level, name) in [
        ("\"Basement\" below grade", "House"),
        ("\"Floor over the basement\"", "House"),
        ("\"G\"", "Former garage, now den"),
        ("\"G\"", "Room over garage"),
        ("\"G\"", "Enclosed porch"),
        ("\"G\"", "Porch room"),
    ] {
        assert_eq!(house(level, name).matches("named-").count(), 0, "{level} {name}");
    }
}

#[test]
fn an_outbuilding_after_the_last_level_belongs_on_the_ground() {
    const HOUSE: &str = "level \"G\"\nliving \"House\"\nnorth 28'\neast 40'\nsouth 28'\nwest 40'\n";
    const UPPER: &str =
        "level \"Upstairs\"\nliving \"Beds\"\nnorth 28'\neast 40'\nsouth 28'\nwest 40'\n";
    const SHED: &str = "outbuilding \"Shed\" detached\nnorth 10'\neast 8'\nsouth 10'\nwest 8'\n";
    let page = drawn(&format!("{HOUSE}{UPPER}{SHED}"));
    assert!(page.contains("move its lines up, under the last space of `G`"), "{page}");
    assert!(!drawn(&format!("{HOUSE}{SHED}{UPPER}")).contains("warning"));
}

#[test]
fn a_level_typed_as_a_space_or_by_another_word_has_no_second_error() {
    const WALLS: &str = "north 28'\neast 40'\nsouth 28'\nwest 40'\n";
    let typed = |line: &str| {
        format!("level \"G\"\nliving \"House\"\n{WALLS}{line}\nliving \"Bedrooms\"\n{WALLS}")
    };
    let page = drawn(&typed("living \"Upper floor\""));
    assert!(page.contains("is it a level? Then it is `level \"Upper floor\"`"), "{page}");
    assert_eq!(page.matches("error[").count(), 1, "{page}");
    assert_eq!(counted(&typed("level \"Upper floor\"")), 2 * 1_120);
    let page = drawn(&format!(
        "basement \"Basement\"\nliving \"Cellar\"\n{WALLS}level \"G\"\nliving \"House\"\n{WALLS}"
    ));
    assert_eq!(page.matches("error[").count(), 1, "{page}");
}

#[test]
fn a_rate_with_its_point_in_the_wrong_place_is_asked_about() {
    let rate = |rate: &str| {
        drawn(&format!(
            "tax rate {rate} per $100\nlevel \"G\"\nliving \"House\"\nnorth 28'\neast 40'\nsouth 28'\nwest 40'\n"
        ))
    };
    for (typed, is_asked) in [("0.214", true), ("2.14", false), ("21.4", true), ("0.35", false)] {
        assert_eq!(rate(typed).contains("unlikely-value"), is_asked, "{typed}: {}", rate(typed));
    }
}

/// The contexts in which an offered line is tried: before it and after it.
const CONTEXTS: [(&str, &str); 11] = [
    ("lot \"L\"\nbearing ", " 10'\nbearing N 90° E 10'\nclose\n"),
    ("tax rate 21.4 ", "\nlot \"L\"\nbearing N 0° E 10'\nbearing N 90° E 10'\nclose\n"),
    ("level \"H\"\nliving \"House\"\nnorth 28'\neast 40'\nsouth 28'\nwest 40' photo \"1\" ", "\n"),
    ("level \"H\"\nliving \"House\"\nnorth 28'\neast 40'\nsouth 28'\nwest ", "\n"),
    ("", "\nlevel \"G\"\nliving \"House\"\nnorth 28'\neast 40'\nsouth 28'\nwest 40'\n"),
    (
        "level \"H\"\nliving \"House\"\nnorth 28'\neast 40'\nsouth 28'\nwest 40'\n",
        "\nliving \"X\"\nnorth 28'\neast 40'\nsouth 28'\nwest 40'\n",
    ),
    (
        "level \"H\"\nliving \"House\"\nnorth 28'\neast 40'\nsouth 28'\nwest 40'\n",
        "\nnorth 28'\neast 40'\nsouth 28'\nwest 40'\n",
    ),
    ("front south\nlevel \"H\"\nliving \"House\"\nnorth 28'\neast 40'\nsouth 28'\n", "\n"),
    (
        "level \"H\"\nliving \"House\"\nnorth 28'\neast 40'\nsouth 28'\nwest 40'\nporch \"Y\" ",
        "\nnorth 28'\neast 40'\nsouth 28'\nwest 40'\n",
    ),
    ("level \"H\"\nliving \"House\"\nnorth 28'\neast 40'\nsouth 28'\nwest 40' ", "\n"),
    ("lot \"L\"\nbearing N 0° E 10'\n", "\n"),
];

#[test]
fn every_line_that_a_message_offers_can_be_read() {
    // Words of a line that are named, not offered whole.
    const PARTS: [&str; 2] = ["corner", "fairfoot"];
    let mut tried = 0;
    let mut unread: Vec<String> = Vec::new();
    for word in Word::ALL {
        let name = format!("{word}.sides");
        let (source, list) = diagnostics_of(&name, std::fs::read(folder().join(&name)).unwrap());
        for help in list.iter().flat_map(|one| one.helps()) {
            for offered in help.split('`').skip(1).step_by(2) {
                let is_part = offered.starts_with(PARTS[1])
                    || offered.ends_with(PARTS[0])
                    || !offered.contains(' ')
                    || source.text().contains(&format!("\"{offered}\""));
                if is_part {
                    continue;
                }
                tried += 1;
                let reads = |(before, after): &(&str, &str)| {
                    let text = format!("{before}{offered}{after}");
                    fairfoot::sketch::parse(fairfoot::Source::new("offered.sides", text)).is_ok()
                };
                if !CONTEXTS.iter().any(reads) {
                    unread.push(format!("{word}: {offered}"));
                }
            }
        }
    }
    assert_eq!(unread, Vec::<String>::new());
    assert!(tried >= 45, "{tried}");
}

/// The line of a space without its place, and the place.
fn without_place(line: &str) -> Option<(String, String)> {
    let at = line.find(" from \"").or_else(|| line.find(" start "))?;
    let ends = [" recorded", " counted", " not counted", " measured", " veneer", " #"];
    let end = ends.iter().filter_map(|end| line[at + 1..].find(end)).min();
    let end = end.map_or(line.len(), |end| at + 1 + end);
    Some((format!("{}{}", &line[..at], &line[end..]), line[at..end].to_owned()))
}

/// The places that the messages about the space on a line offer.
fn places_offered(text: &str, number: usize) -> Vec<String> {
    let (source, list) = diagnostics_of("moved.sides", text.as_bytes().to_vec());
    let is_about = |word: Word| matches!(word, Word::NotInside | Word::SpacesOverlap);
    let here = list
        .iter()
        .filter(|one| is_about(one.word()) && source.line(one.span().start) == number + 1);
    let line = text.lines().nth(number).unwrap_or_default();
    let own = line.split('"').nth(1).unwrap_or_default();
    // A place that goes with directions to exchange is none by itself, and one of the other space is not this one's.
    let is_own = |help: &str| {
        !help.contains("exchange its")
            && (!help.starts_with("if `") || help.starts_with(&format!("if `{own}`")))
    };
    let helps = here.flat_map(|one| one.helps()).filter(|help| is_own(help));
    let helps: Vec<&String> = helps.collect();
    let all = helps.iter().flat_map(|help| help.split('`').skip(1).step_by(2));
    let is_place = |offered: &&str| {
        offered.starts_with("start ") && offered.len() > 6
            || offered.starts_with("from \"") && !offered.ends_with("corner")
    };
    all.filter(is_place).map(str::to_owned).collect()
}

#[test]
fn every_place_offered_for_a_space_of_the_sketches_is_accepted() {
    let mut accepted = 0;
    for (name, text) in crate::pages::sketches() {
        let lines: Vec<&str> = text.lines().collect();
        for number in 0..lines.len() {
            let Some((bare, _)) = without_place(lines[number]) else { continue };
            let with = |place: &str| {
                let quote = bare.rfind('"').map_or(bare.len(), |at| at + 1);
                let mut all: Vec<String> = lines.iter().map(|line| (*line).to_owned()).collect();
                all[number] = format!("{} {place}{}", &bare[..quote], &bare[quote..]);
                all.join("\n")
            };
            for moved in ["", "start east 3' north 2'", "start west 5'", "start north 1 m"] {
                for offered in places_offered(&with(moved), number) {
                    let page = drawn(&with(&offered));
                    let left = places_offered(&with(&offered), number);
                    assert_eq!(left, Vec::<String>::new(), "{name} {number} {offered}: {page}");
                    accepted += 1;
                }
            }
        }
    }
    assert!(accepted >= 20, "{accepted}");
}

/// A box of 30' by 40', with these lines above it and this first wall.
fn a_box(head: &str, wall: &str) -> String {
    format!(
        "{head}level \"Ground floor\"\nliving \"House\"\n{wall}\neast 40'\nsouth 30'\nwest 40'\n"
    )
}

#[test]
fn values_of_two_kinds_on_two_lines_are_offered_as_one() {
    let two = "value market 412,000\nvalue assessed 371000 year 2026\n";
    let page = drawn(&a_box(two, "north 30'"));
    let one = "value market 412,000 assessed 371,000 year 2026";
    assert!(page.contains(&format!("write `{one}` instead of the two lines")), "{page}");
    assert_eq!(counted(&a_box(&format!("{one}\n"), "north 30'")), 1_200);
    let same = drawn(&a_box("value market 412,000\nvalue market 371,000\n", "north 30'"));
    assert!(same.contains("`value` is said twice"), "{same}");
}

#[test]
fn a_date_with_slashes_has_one_reading_where_an_american_state_is_named() {
    let date = "measured 03/07/2026 by \"the owner\"\n";
    let both = drawn(&a_box(date, "north 30'"));
    assert!(both.contains("2026-03-07") && both.contains("2026-07-03"), "{both}");
    let american = drawn(&a_box(&format!("place texas\n{date}"), "north 30'"));
    assert!(american.contains("2026-03-07") && !american.contains("2026-07-03"), "{american}");
}

#[test]
fn a_line_that_ends_in_a_hidden_character_is_shown_to_be_typed_again() {
    let page = drawn(&a_box("", "north 30' \u{200b}"));
    assert!(page.contains("type the line again: `north 30'`"), "{page}");
}

#[test]
fn a_length_typed_with_a_point_for_its_inches_is_offered_as_feet_and_inches() {
    // 28' 10" typed as 28.10: with it, 28' 10" north are 12' and 16' 10" south.
    let text = "level \"G\"\nliving \"House\"\nnorth 28.10\neast 40' 6\"\nsouth 12'\nwest 8' 3\"\nsouth 16' 10\"\nwest 32' 3\"\n";
    let (_, list) = super::diagnostics_of("house.sides", text.as_bytes().to_vec());
    let first = &list[0];
    assert!(
        first.helps().iter().any(|help| help.contains("type `north 28' 10\"`")),
        "{:?}",
        first.helps()
    );
}

#[test]
fn a_place_in_words_is_answered_with_places_that_are_accepted() {
    // A house of 28' by 40', and a garage of 22' by 24' that is walked from its southwest corner.
    let typed = |line: &str| {
        format!(
            "front south\nlevel \"G\"\nliving \"Main house\"\nnorth 28'\neast 40'\nsouth 28'\nwest 40'\n{line}\nnorth 22'\neast 24'\nsouth 22'\nwest 24'\n"
        )
    };
    let at_southeast = "from \"Main house\" corner 4";
    for (line, expected) in [
        ("garage on the east side, county has 460", &[at_southeast, "start east 40' north 6'"][..]),
        ("garage \"Garage\" on the right, record 460", &[at_southeast, "start east 40' north 6'"]),
        (
            "garage behind the house, county 460",
            &["from \"Main house\" corner 2", "start east 16' north 28'"],
        ),
        (
            "garage at the NE corner recorded 460 sq ft",
            &[
                "start east 40' north 6'",
                "start east 16' north 28'",
                "within \"Main house\" start east 16' north 6'",
            ],
        ),
        (
            "garage 4' from the west wall, record 460",
            &["start east 4' north 28'", "start east 4' south 22'"],
        ),
        ("garage 5' east of corner 2, record 460", &["start east 5' north 28'"]),
        (
            "garage start 3' from corner 4, record 460",
            &["start east 40' north 3'", "start east 40' south 3'"],
        ),
    ] {
        let (source, list) = diagnostics_of("pad.sides", typed(line).into_bytes());
        let offered: Vec<String> =
            list.iter().flat_map(Diagnostic::fixes).map(|fix| fix.text.clone()).collect();
        for place in expected {
            let whole = format!("garage \"Garage\" {place} recorded 460 sq ft");
            assert!(
                offered.contains(&whole),
                "{line}: {offered:?} {}",
                draw(&source, &list, false)
            );
        }
        for one in &offered {
            // Within the walk its 22' by 24' are deducted.
            let area = if one.contains(" within ") { 1_120 - 528 } else { 1_120 };
            assert_eq!(counted(&typed(one)), area, "{line}: {one}");
            assert!(one.ends_with("recorded 460 sq ft"), "{line}: {one}");
        }
    }
}

#[test]
fn a_distance_along_a_wall_or_from_a_corner_is_counted_from_there() {
    // A house of 28' by 40', and a garage of 22' by 24' that is walked from its southwest corner.
    let typed = |line: &str| {
        format!(
            "front south\nlevel \"G\"\nliving \"Main house\"\nnorth 28'\neast 40'\nsouth 28'\nwest 40'\n{line}\nnorth 22'\neast 24'\nsouth 22'\nwest 24'\n"
        )
    };
    for (line, expected) in [
        ("garage behind the house, 6' from the left", "start east 6' north 28'"),
        ("garage \"Garage\" 6' from the left corner, on the rear wall", "start east 6' north 28'"),
        // 40' less 4' less 24'.
        ("garage in front, 4' from the right corner", "start east 12' south 22'"),
        // 28' less 2' less 22'.
        ("garage on the east side, 2' from the rear", "start east 40' north 4'"),
        ("garage 2' east and 3' north of the NE corner", "start east 42' north 31'"),
        (
            "garage in the house at the northeast corner",
            "within \"Main house\" start east 16' north 6'",
        ),
        ("garage in the house at corner 3", "within \"Main house\" start east 16' north 6'"),
        (
            "garage inside the house, 3' from the west wall, 5' from the south wall",
            "within \"Main house\" start east 3' north 5'",
        ),
    ] {
        let (source, list) =
            diagnostics_of("pad.sides", typed(&format!("{line}, record 460")).into_bytes());
        let offered: Vec<String> =
            list.iter().flat_map(Diagnostic::fixes).map(|fix| fix.text.clone()).collect();
        let whole = format!("garage \"Garage\" {expected} recorded 460 sq ft");
        assert_eq!(offered, [whole], "{line}: {}", draw(&source, &list, false));
    }
}

#[test]
fn a_place_of_which_words_are_left_over_is_asked_for() {
    for (line, kept) in [
        (
            "porch \"Porch\" in front, under the balcony, 6' from the left, record 80",
            "recorded 80 sq ft",
        ),
        ("porch \"Porch\" in front, 6' from the oak", ""),
        ("deck \"Deck\" from the NE corner, runs 16' west", ""),
        ("porch \"Porch\" from the left corner", ""),
        ("porch \"Porch\" within the kitchen", ""),
        ("porch \"Porch\" attached to the kitchen", ""),
        ("breezeway \"Link\" from the house to the garage, not counted", "not counted"),
        ("open to below \"Foyer\" 6' east, 4' north of the stairs", "open \"Foyer\""),
        ("shed \"Woodshed\" against the rear wall of the low wing", "outbuilding \"Woodshed\""),
    ] {
        let text = format!(
            "front south\nlevel \"G\"\nliving \"House\"\nnorth 28'\neast 40'\nsouth 28'\nwest 40'\n{line}\nnorth 8'\neast 10'\nsouth 8'\nwest 10'\n"
        );
        let (source, list) = diagnostics_of("pad.sides", text.into_bytes());
        assert!(
            list.iter().all(|one| one.fixes().is_empty()),
            "{line}: {}",
            draw(&source, &list, false)
        );
        let helps: Vec<&str> =
            list.iter().flat_map(|one| one.helps()).map(String::as_str).collect();
        let helps = helps.join(" ");
        assert!(helps.contains("starts") && helps.contains(kept), "{line}: {helps}");
        assert!(!helps.contains("# "), "{line}: {helps}");
    }
}

#[test]
fn a_place_that_is_asked_for_names_the_space_that_the_file_has() {
    let text = "level Upstairs\nbedrooms inside\nnorth 28'\neast 40'\nsouth 28'\nwest 40'\nopen \"Foyer\" near the front door\nnorth 8'\neast 7'\nsouth 8'\nwest 7'\nporch near the oak, county 60\nnorth 8'\neast 7'\nsouth 8'\nwest 7'\n";
    let page = drawn(text);
    assert!(
        page.contains("`start` and how far east and north of corner 1 of `Bedrooms`"),
        "{page}"
    );
    assert!(
        page.contains("`from \"Bedrooms\" corner`") && page.contains("then `recorded 60 sq ft`"),
        "{page}"
    );
    assert!(!page.contains("\"House\"") && !page.contains("detached"), "{page}");
}

#[test]
fn a_length_far_too_long_is_named_where_the_walk_does_not_close() {
    let page = drawn(
        "units meters\nlevel \"G\"\nliving \"H\"\nnorth 9.2\neast 6.45\nnorth 2.1\neast 515\nsouth 11.3\neast 11.6\n",
    );
    // 6.45 m and 5.15 m are 11.6 m: with side 4 in centimeters and side 6 toward the west, nothing is left.
    assert!(page.contains("centimeters, not meters, and side 6 wrong too?"), "{page}");
    assert!(page.contains("walked the other way, and side 4 wrong too?"), "{page}");
    assert!(page.contains("and no side runs west") && !page.contains("0\""), "{page}");
    // No such pair: 5.15 m would leave 3.05 m.
    let page = drawn(
        "units meters\nlevel \"G\"\nliving \"H\"\nnorth 9.2\neast 6.45\nnorth 2.1\neast 515\nsouth 11.3\neast 14.65\n",
    );
    assert!(
        page.contains("side 4 (`east 515`) again: it is far longer than any other wall"),
        "{page}"
    );
}

/// Applies the first line that each message offers.
fn all_obeyed(text: &str) -> String {
    let (_, list) = diagnostics_of("pad.sides", text.as_bytes().to_vec());
    let mut fixes: Vec<_> = list.iter().filter_map(|one| one.fixes().first()).collect();
    fixes.sort_by_key(|fix| std::cmp::Reverse(fix.span.start));
    let mut mended = text.to_owned();
    for fix in fixes {
        mended.replace_range(fix.span.start..fix.span.end, &fix.text);
    }
    mended
}

fn errors_in(text: &str) -> Vec<String> {
    let (_, list) = diagnostics_of("pad.sides", text.as_bytes().to_vec());
    list.iter()
        .filter(|one| one.is_error())
        .map(|one| format!("{}: {}", one.word(), one.message()))
        .collect()
}

#[test]
fn a_line_that_is_offered_makes_no_new_errors() {
    // Where sides, areas or figures around the line are not those of the line, they may disagree with it.
    const OF_THE_CONTEXT: [&str; 14] = [
        "does-not-close",
        "closing-backwards",
        "sides-cross",
        "too-few-sides",
        "spaces-overlap",
        "not-inside",
        "no-turn",
        "closing-twice",
        "no-sides",
        "figure-twice",
        "name-twice",
        "nothing-to-close",
        "close-not-last",
        "side-vanishes",
    ];
    let gallery = std::fs::read_to_string(folder().join("typing.txt")).unwrap();
    let mut tried = 0;
    let mut worse: Vec<String> = Vec::new();
    for block in
        gallery.split("\n\n").filter(|block| !block.trim().is_empty() && !block.starts_with('#'))
    {
        let Some((place, line)) = block.lines().next().unwrap().split_once("> ") else { continue };
        let (before, after) = super::typing::around(place);
        let text = format!("{before}{}\n{after}", line.replace('\u{21e5}', "\t"));
        let obeyed = all_obeyed(&text);
        if obeyed == text {
            continue;
        }
        tried += 1;
        // A corner or a space that only the line names.
        let names = |error: &String| {
            (error.starts_with("no-such-space") || error.starts_with("no-such-corner"))
                && line
                    .to_lowercase()
                    .contains(&error.split('`').nth(1).unwrap_or("?").to_lowercase())
                || error.contains("no corner 7")
        };
        let is_known = |error: &String| {
            OF_THE_CONTEXT.iter().any(|word| error.starts_with(word)) || names(error)
        };
        let left: Vec<String> =
            errors_in(&obeyed).into_iter().filter(|error| !is_known(error)).collect();
        if !left.is_empty() {
            worse.push(format!("{place}> {line}: {left:?}"));
        }
    }
    assert!(worse.is_empty(), "{} of {tried}:\n{}", worse.len(), worse.join("\n"));
    assert!(tried >= 1_000, "{tried}");
}

#[test]
fn a_whole_pad_is_readable_once_every_offered_line_is_taken() {
    let pad = "Windrow Farm, Juniper County\nmeasured 20260321 by me\nfront south\nsiding, no brick\ncounty says 1,120 sf\nlevel 1 ground\nhouse outside\nnorth 28\neast wall 40'\nsought 28'\nwest couldnt reach\ngarage on the right side, county has 460\nnorth 22'\neast 24'\nsouth 22'\nwest 24'\nshed in the yard 10x12\nnorth 10'\neast 12'\nsouth 10'\nwest 12'\nupstairs\nbedrooms, siding\nnorth 27'\neast 39'\nsouth 27'\nwest 39'\n";
    let (mut text, mut runs) = (pad.to_owned(), 0);
    while !errors_in(&text).is_empty() && runs < 3 {
        let next = all_obeyed(&text);
        assert_ne!(next, text, "{}", drawn(&text));
        assert!(errors_in(&next).len() < errors_in(&text).len(), "{next}\n{}", drawn(&next));
        (text, runs) = (next, runs + 1);
    }
    assert_eq!(errors_in(&text), Vec::<String>::new(), "{text}");
    assert!(text.contains("veneer none") && text.contains("recorded 460 sq ft"), "{text}");
}

#[test]
fn a_house_whose_own_size_has_two_readings_is_settled_before_what_stands_in_it() {
    let pad = |size: &str| {
        format!("front south\nliving house\n{size}garage 20 x 22 inside at the southeast corner\n")
    };
    let page = drawn(&pad("62' 4\" x 30' 8\"\n"));
    // Which of its lengths runs north and south is open: the garage would stand elsewhere.
    assert!(page.contains("this follows from `house`: settle that first"), "{page}");
    assert!(!page.contains("within \"house\" start"), "{page}");
    // The missing level is told at once, and the rest of the file is checked as if it stood there.
    assert!(page.contains("put `level \"Ground floor\"` on a line before it"), "{page}");
    let typed = drawn(&pad("north 30' 8\"\neast 62' 4\"\nsouth 30' 8\"\nwest 62' 4\"\n"));
    // 62' 4" less 22' from the east.
    assert!(typed.contains("within \"house\" start east 40' 4\""), "{typed}");
    assert_eq!(typed.matches("is on no level").count(), 1, "{typed}");
}

#[test]
fn walls_that_are_common_below_and_not_above_are_asked_about() {
    let house = |upper: &str| {
        format!(
            "veneer none\nlevel \"First\"\nliving \"Unit\" measured to inside\nnorth 38' 2\" common wall 10\"\neast 19' 4\"\nsouth 38' 2\" common wall 10\"\nwest 19' 4\"\nlevel \"Second\"\nliving \"Rooms\" measured to inside\n{upper}"
        )
    };
    let plain = house("north 38' 2\"\neast 19' 4\"\nsouth 38' 2\"\nwest 19' 4\"\n");
    let page = drawn(&plain);
    assert!(page.contains("warning[common-on-one-level]"), "{page}");
    assert!(page.contains("`north 38' 2\" common wall 10\"`"), "{page}");
    let said = plain.replace(
        "2\"\neast 19' 4\"\nsouth 38' 2\"\nwest 19' 4\"\n",
        "2\" common wall 10\"\neast 19' 4\"\nsouth 38' 2\" common wall 10\"\nwest 19' 4\"\n",
    );
    assert!(!drawn(&said).contains("common-on-one-level"), "{}", drawn(&said));
    // Nothing on the upper level is as long as the common walls.
    let short = house("north 30'\neast 19' 4\"\nsouth 30'\nwest 19' 4\"\n");
    assert!(!drawn(&short).contains("common-on-one-level"), "{}", drawn(&short));
}

/// The text with the first line that is offered for each error.
fn obeyed_once(text: &str) -> String {
    let (_, list) = diagnostics_of("pad.sides", text.as_bytes().to_vec());
    let mut fixes: Vec<_> = list.iter().filter_map(|error| error.fixes().first()).collect();
    fixes.sort_by_key(|fix| std::cmp::Reverse(fix.span.start));
    let mut obeyed = text.to_owned();
    for fix in fixes {
        obeyed.replace_range(fix.span.start..fix.span.end, &fix.text);
    }
    obeyed
}

#[test]
fn what_counts_is_never_offered_as_a_comment() {
    const BOX: &str = "north 30'\neast 40'\nsouth 30'\nwest 40'\n";
    let first = format!("level \"First\"\nliving \"House\"\n{BOX}");
    // A finished basement of 30' by 40' is not unfinished.
    for line in ["basement, finished", "finished basement"] {
        let obeyed = obeyed_once(&format!("{first}{line}\n{BOX}"));
        assert!(obeyed.contains("below grade\nliving \""), "{obeyed}");
        assert!(fairfoot::read("pad.sides", obeyed.as_str()).is_ok(), "{obeyed}");
    }
    // The face stays where it is: 30' by 40' inside walls of 6" are 31' by 41'.
    let file =
        format!("veneer none\nwall 6\"\nlevel \"First\"\nliving \"Up\", taped inside\n{BOX}");
    let obeyed = obeyed_once(&file);
    assert!(obeyed.contains("living \"Up\" measured to inside\n"), "{obeyed}");
    let areas = fairfoot::read("pad.sides", obeyed.as_str()).unwrap();
    let areas = areas.areas(&Settings::default()).unwrap();
    assert_eq!(areas.gross().tenth_foot().whole_sq_ft(), 31 * 41);
    // An open porch is no opening to below, which would take 6' by 20' off the house.
    let porch = format!("front south\n{first}open porch \"Open porch\" 6' x 20' front left\n");
    let obeyed = obeyed_once(&porch);
    assert!(obeyed.contains("porch \"Open porch\""), "{obeyed}");
    assert_eq!(counted(&obeyed), 1_200);
    // A house of its own, 12' away, stands apart.
    let page = drawn(&format!("{first}casita 20' x 18', 12' behind the house, own kitchen\n"));
    assert!(
        page.contains("`living \"Casita\" detached # 12' behind the house, own kitchen`"),
        "{page}"
    );
    // Three walls of `N 40'` and one that could not be reached.
    let walk = "level \"First\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 30'\nhedge, west not taped\n";
    assert_eq!(counted(&obeyed_once(walk)), 1_200);
    // A size whose feet and inches have a dash: 12' 6" by 4' are 50 sq ft.
    let dashed =
        format!("{first}living \"Room\" 12-6 x 4 on the north side, 4' from the west end\n");
    assert_eq!(counted(&obeyed_once(&dashed)), 1_250);
}

#[test]
fn a_level_without_a_space_is_warned_of() {
    let first = "level \"First\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\n";
    let page = drawn(&format!("{first}level \"Second\"\n# the same\n"));
    assert!(page.contains("warning[empty-level]: `Second` has no space"), "{page}");
    assert!(!drawn(first).contains("empty-level"));
}

#[test]
fn the_lengths_of_a_bay_are_told_by_their_words() {
    // 10' along the wall, 6' in front and 2' out: (10 + 6) / 2 × 2 = 16 sq ft.
    for line in ["bay 10' wide, 6' front, 2' out", "bay 6' front, 10' wide, 2' deep"] {
        let text = format!(
            "level \"First\"\nliving \"House\"\nnorth 30'\neast 15'\n{line}\neast 15'\nsouth 30'\nwest 40'\n"
        );
        let page = drawn(&text);
        assert!(page.contains("did you mean `bay east 10' out 2' flat 6'`?"), "{page}");
        let obeyed = text.replace(line, "bay east 10' out 2' flat 6'");
        assert_eq!(counted(&obeyed), 1_216);
    }
}
