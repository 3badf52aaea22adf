//! For a walk that does not close: how far it misses, in which direction, and which sides to measure again.

use fairfoot::diagnostic::Word;

use super::diagnostics_of;

/// The printed diagnostics, with lines joined.
fn drawn(sides: &str) -> String {
    let text = format!("level \"Ground floor\"\nliving \"House\"\n{sides}");
    let (source, list) = diagnostics_of("walk.sides", text.into_bytes());
    let page = fairfoot::diagnostic::draw(&source, &list, false);
    page.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn the_direction_and_both_sums_are_reported() {
    let page = drawn("north 30'\neast 40'\nsouth 29' 6\"\nwest 40'\n");
    assert!(page.contains("the walk around the walls ends 6\" north of where it began"), "{page}");
    assert!(page.contains("the sides north add up to 30', the sides south to 29' 6\""), "{page}");
    assert!(
        page.contains("measure again: side 1 (`north 30'`) or side 3 (`south 29' 6\"`)"),
        "{page}"
    );
}

#[test]
fn an_ordinary_slip_is_asked_about_first() {
    // 24 typed as 42: digits swapped; the other side of the axis could contain it too.
    let page = drawn("north 42'\neast 40'\nsouth 24'\nwest 40'\n");
    assert!(page.contains("digits swapped, or side 3 misread?"), "{page}");
    // 30' 7" typed as 30'.
    let page = drawn("north 30'\neast 40'\nsouth 30' 7\"\nwest 40'\n");
    assert!(page.contains("inches left off?"), "{page}");
    // East walked, west typed twice.
    let page = drawn("north 30'\nwest 40'\nsouth 30'\nwest 40'\n");
    assert!(page.contains("walked the other way, or side"), "{page}");
}

/// A length that closes the walk would be typed without measuring again. (A number read in another unit is no new
/// length: see `each_common_error_is_recognized_by_its_size`.)
#[test]
fn no_help_contains_a_length_that_was_not_typed() {
    for sides in [
        // Digits swapped, inches left off, a foot miscounted, walked the other way, typed twice, a wall missing, no wall.
        ["north 42'", "east 40'", "south 24' 3\"", "west 40'"].as_slice(),
        &["north 30'", "east 40'", "south 30' 7\"", "west 40'"],
        &["north 30' 6\"", "east 40'", "south 31' 6\"", "west 40'"],
        &["north 30'", "west 40'", "south 30'", "west 40'"],
        &["north 30'", "east 40'", "east 40'", "south 30'", "west 40'"],
        &["north 42' 7\"", "east 30' 4\"", "east 8' 6\"", "south 30' 7\"", "west 38' 10\""],
        &["north 30'", "east 40'", "south 17' 5\"", "west 21' 1\""],
    ] {
        let text = format!("level \"G\"\nliving \"House\"\n{}\n", sides.join("\n"));
        let (_, list) = diagnostics_of("walk.sides", text.into_bytes());
        let fault = list.iter().find(|fault| fault.word() == Word::DoesNotClose).expect("a gap");
        assert!(!fault.helps().is_empty(), "{sides:?}");
        for help in fault.helps() {
            // What stands between backticks can be typed.
            for quoted in help.split('`').skip(1).step_by(2) {
                assert!(sides.contains(&quoted), "{quoted}: {help}");
            }
            let bare: String = help.split('`').step_by(2).collect();
            assert!(!bare.contains("by closing") && !bare.contains('"'), "{help}");
        }
    }
}

#[test]
fn a_missing_wall_is_asked_about() {
    let page = drawn("north 42' 7\"\neast 30' 4\"\neast 8' 6\"\nsouth 30' 7\"\nwest 38' 10\"\n");
    assert!(page.contains("12' north"), "{page}");
    let asked = "between side 2 (`east 30' 4\"`) and side 3 (`east 8' 6\"`) the walk does not turn: is a wall";
    assert!(
        page.replace("\n", " ").split_whitespace().collect::<Vec<_>>().join(" ").contains(asked),
        "{page}"
    );
}

#[test]
fn a_misclosure_within_tolerance_is_distributed_and_reported() {
    let page = drawn("north 30'\neast 40'\nsouth 30' 1\"\nwest 40'\n");
    assert!(page.contains("warning[misclosure-spread]"), "{page}");
    let page = drawn("north 30'\neast 40'\nsouth 30' 1 1/16\"\nwest 40'\n");
    assert!(page.contains("error[does-not-close]"), "{page}");
}

/// The questions about sides 1 and 3 of the walk `north one, east 40', south three, west 40'`.
fn asked(one: &str, three: &str) -> [String; 2] {
    let text =
        format!("level \"G\"\nliving \"House\"\nnorth {one}\neast 40'\nsouth {three}\nwest 40'\n");
    let (source, list) = diagnostics_of("walk.sides", text.into_bytes());
    let page = fairfoot::diagnostic::draw(&source, &list, false);
    [3, 5].map(|line| {
        let mut below = page.lines().skip_while(|shown| !shown.starts_with(&format!("{line} | ")));
        let label = below.nth(1).unwrap_or_default();
        let label = label.trim_start_matches([' ', '|', '-']);
        // Beside another suspect: `digits swapped, or side 3 misread?`
        match label.split_once(", or side ") {
            Some((slip, _)) => format!("{slip}?"),
            None => label.to_owned(),
        }
    })
}

#[test]
fn each_common_error_is_recognized_by_its_size() {
    const SWAPPED: &str = "digits swapped?";
    const INCHES: &str = "inches left off?";
    const FEET: &str = "a foot, five or ten miscounted?";
    const DIGIT: &str = "a digit dropped or doubled?";
    const TENTHS: &str = "inches and tenths mixed up?";
    const EXCHANGED: &str = "feet and inches exchanged?";
    const METERS: &str = "meters, without their unit?";
    const NOT_METERS: &str = "feet, not meters?";
    const FEET_LEFT_OFF: &str = "feet left off?";
    const NONE: &str = "";
    // Two walls within 1/2" each: what fits within 1" fits.
    for (one, three, slips) in [
        ("42'", "24'", [SWAPPED, SWAPPED]),
        ("42' 6\"", "24' 5\"", [SWAPPED, SWAPPED]),
        ("42' 6\"", "24' 4 15/16\"", [NONE, NONE]),
        ("103'", "130'", [SWAPPED, SWAPPED]),
        // The first two of 103 swapped are 013; of 13 they are 31.
        ("103'", "13'", [SWAPPED, NONE]),
        ("30'", "30' 7\"", [INCHES, NONE]),
        // 30' 11" less a foot is within an inch of 30'.
        ("30'", "30' 11\"", [INCHES, FEET]),
        ("30' 6\"", "31' 6\"", [FEET, FEET]),
        ("30' 6\"", "31' 7\"", [FEET, FEET]),
        ("30' 6\"", "31' 7 1/16\"", [NONE, NONE]),
        ("30' 6\"", "32' 6\"", [NONE, NONE]),
        ("30' 6\"", "34' 6\"", [NONE, NONE]),
        ("30' 6\"", "35' 6\"", [FEET, FEET]),
        ("30' 6\"", "36' 6\"", [NONE, NONE]),
        ("30' 6\"", "39' 6\"", [NONE, NONE]),
        ("30' 6\"", "40' 6\"", [FEET, FEET]),
        ("30' 6\"", "41' 6\"", [NONE, NONE]),
        ("4'", "44'", [DIGIT, DIGIT]),
        // 40 swapped is 04.
        ("4' 6\"", "40' 6\"", [DIGIT, SWAPPED]),
        ("4' 6\"", "49' 6\"", [DIGIT, DIGIT]),
        ("4' 6\"", "50' 6\"", [NONE, NONE]),
        ("4' 6\"", "38' 6\"", [NONE, NONE]),
        // The inches of 3' 6" alone.
        ("6\"", "3' 6\"", [FEET_LEFT_OFF, DIGIT]),
        ("12' 6\"", "12.6'", [TENTHS, TENTHS]),
        ("30' 9\"", "30.9'", [TENTHS, TENTHS]),
        ("30' 10\"", "31'", [NONE, NONE]),
        ("28' 9\"", "29' 8\"", [EXCHANGED, EXCHANGED]),
        ("28' 9 1/2\"", "29' 8 1/2\"", [EXCHANGED, EXCHANGED]),
        ("21' 7\"", "27' 1\"", [EXCHANGED, EXCHANGED]),
        // 22' 2" with its numbers exchanged is the same.
        ("22' 2\"", "32' 2\"", [FEET, FEET]),
        // 8.9 m is 29' 2.4"; a length typed with a foot mark is not missing a unit.
        ("8.9", "8.9 m", [METERS, NONE]),
        // One length in meters among feet may be meant as feet.
        ("8.9'", "8.9 m", [NONE, NOT_METERS]),
    ] {
        assert_eq!(asked(one, three), slips, "{one}, {three}");
    }
}

#[test]
fn a_wall_walked_the_other_way_is_known_within_the_tolerances() {
    let page = |last: &str| drawn(&format!("north 30'\nwest 40'\nsouth 30'\nwest {last}\n"));
    assert_eq!(page("40' 1\"").matches("walked the other way, or side").count(), 2);
    assert_eq!(page("40' 1 1/16\"").matches("walked the other way").count(), 0);
}

#[test]
fn the_first_of_many_walls_to_measure_again_are_listed_as_typed() {
    // Eight walls of 10 ft against 79: each of them, or the 79, may be a foot off.
    let page = drawn(&format!("{}west 79'\nsouth 8'\n", "east 10'\nnorth 1'\n".repeat(8)));
    assert!(
        page.contains("measure again: side 1 (`east 10'`), side 3 (`east 10'`), side 5 (`east 10'`), side 7 (`east 10'`), side 9 (`east 10'`), side 11 (`east 10'`), side 13, side 15 or side 17"),
        "{page}"
    );
    assert_eq!(page.matches("a foot, five or ten miscounted, or side").count(), 3, "{page}");
}

#[test]
fn a_crossing_is_reported_with_its_position() {
    // North at 10 ft east, from 10 ft south of the start to 20 north of it; west at 5 ft north.
    let page = drawn(
        "south 10'\neast 10'\nnorth 30'\neast 40'\nsouth 15'\nwest 60'\nsouth 5'\neast 10'\n",
    );
    let output = "side 3 (`north 30'`) and side 6 (`west 60'`) cross or touch 5' north and 10' east of the start";
    assert!(page.contains(output), "{page}");
    // The two diagonals of a square of 20 ft.
    let page =
        drawn("diagonal north 20' east 20'\nsouth 20'\ndiagonal north 20' west 20'\nsouth 20'\n");
    assert!(page.contains("cross or touch 10' north and 10' east of the start"), "{page}");
}

#[test]
fn two_walks_in_one_list_are_told_apart_where_the_first_is_back_at_its_start() {
    let page = drawn(
        "north 20'\neast 30'\nsouth 20'\nwest 30'\nnorth 10'\nwest 12'\nsouth 10'\neast 12'\n",
    );
    assert!(page.contains("after side 4 (`west 30'`) the walk is back at its start"), "{page}");
    assert!(page.contains("before side 5 (`north 10'`)"), "{page}");
}

#[test]
fn a_wall_walked_a_quarter_turn_wrong_is_named_alone() {
    // The last wall but one runs south, not west: the walk ends 6' north and 6' west of its start.
    let page = drawn("north 31'\neast 40'\nsouth 25'\nwest 16'\nwest 6'\nwest 24'\n");
    assert!(page.contains("look which way side 5 (`west 6'`) runs: walked south"), "{page}");
    assert!(!page.contains("too many") && !page.contains("measure again"), "{page}");
    // A square: only the wall that would stand between its neighbors can be meant.
    let page = drawn("north 22'\neast 22'\nsouth 22'\nnorth 22'\n");
    assert!(page.contains("look which way side 4 (`north 22'`) runs: walked west"), "{page}");
    assert!(!page.contains("look which way side 2"), "{page}");
}

#[test]
fn a_wall_many_times_longer_than_the_others_is_named_first() {
    let page = drawn("north 7.3 m\neast 6.1 m\nsouth 73 m\nwest 6.1 m\n");
    assert!(page.contains("a point left out?"), "{page}");
    let page = drawn("north 22' 3\"\neast 11' 2\"\nsouth 22' 3\"\nwest 300'\n");
    assert!(page.contains("many times longer than the others"), "{page}");
}

#[test]
fn a_bare_number_between_walls_of_the_other_system_is_asked_about() {
    let text = "units meters\nlevel \"Ground floor\"\nliving \"House\"\nnorth 9.45\neast 12.15\nsouth 9.45\nwest 12.15\n\
        deck \"Deck\" from \"House\" corner 2\nnorth 13' 9\"\nwest 10\nsouth 13' 9\"\neast 10\n";
    let (_, list) = diagnostics_of("walk.sides", text.as_bytes().to_vec());
    let missing: Vec<_> = list.iter().filter(|one| one.word() == Word::UnitMissing).collect();
    let [missing] = missing[..] else { panic!("{list:?}") };
    assert!(
        missing.message().contains("`west 10` has no unit, and so has one more"),
        "{missing:?}"
    );
    assert!(missing.helps()[0].contains("`west 10 m` or `west 10'`"), "{missing:?}");
    // Walls in feet and inches alone, beside others in meters, are no question.
    let text = text.replace("west 10\n", "west 10'\n").replace("east 10\n", "east 10'\n");
    let (_, list) = diagnostics_of("walk.sides", text.into_bytes());
    assert!(!list.iter().any(|one| one.word() == Word::UnitMissing), "{list:?}");
}

#[test]
fn the_missing_street_side_is_told_once() {
    let text =
        "level \"Ground floor\"\nliving \"House\"\nback 30'\nright 40'\nfront 30'\nleft 40'\n";
    let (_, list) = diagnostics_of("walk.sides", text.as_bytes().to_vec());
    let told = list.iter().filter(|one| one.message().contains("which way the street is"));
    assert_eq!(told.count(), 1, "{list:?}");
}

#[test]
fn a_call_of_a_deed_that_runs_the_wrong_way_is_asked_about() {
    let lot = |calls: &str| {
        let (source, list) =
            diagnostics_of("lot.sides", format!("lot \"Lot\"\n{calls}").into_bytes());
        let page = fairfoot::diagnostic::draw(&source, &list, false);
        page.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    // A parallelogram whose second call should be N 87° E, then S 87° E, and one walked back.
    let calls = |second: &str| {
        format!(
            "bearing N 2° E 120'\nbearing {second} 45'\nbearing S 2° W 120'\nbearing S 87° W 45'\n"
        )
    };
    for (second, slip) in [
        ("N 87° W", "E for W, or W for E?"),
        ("S 87° E", "N for S, or S for N?"),
        ("S 87° W", "walked the other way?"),
    ] {
        let page = lot(&calls(second));
        // The call opposite could be the misread one too.
        assert!(page.contains(slip.trim_end_matches('?')), "{second}: {page}");
        assert!(page.contains(&format!("side 2 (`bearing {second} 45'`)")), "{page}");
    }
    assert!(!lot(&calls("N 87° E")).contains("does not close"));
}

#[test]
fn a_wall_typed_twice_is_named() {
    let page = drawn("north 30'\neast 40'\neast 40'\nsouth 30'\nwest 40'\n");
    assert!(page.contains("east 40' | -------- typed twice?"), "{page}");
    assert!(page.contains("side 3 (`east 40'`) is the same as the side before it"), "{page}");
}

#[test]
fn every_wall_of_the_sketches_typed_twice_is_named_wherever_the_walk_tells() {
    let (mut reported_twice, mut silent) = (0, Vec::new());
    for (name, text) in crate::pages::sketches() {
        let lines: Vec<&str> = text.lines().collect();
        for i in 0..lines.len() {
            let line = lines[i].trim_start();
            let is_side =
                ["north ", "east ", "south ", "west "].iter().any(|w| line.starts_with(w));
            if !is_side || line.contains("closing") {
                continue;
            }
            let twice = [&lines[..=i], &lines[i..]].concat().join("\n");
            let (source, list) = diagnostics_of(&name, twice.into_bytes());
            let page = fairfoot::diagnostic::draw(&source, &list, false);
            // A side by closing absorbs the error; that is another warning.
            if !page.contains("error[does-not-close]") {
                continue;
            }
            match page.contains("typed twice?") {
                true => reported_twice += 1,
                false => silent.push(format!("{name}:{}", i + 2)),
            }
        }
    }
    assert_eq!(silent, Vec::<String>::new());
    assert!(reported_twice >= 80, "{reported_twice}");
}

#[test]
fn a_call_along_the_gap_is_named() {
    // 150' for 180': the gap runs along that call.
    let lot = "lot \"Lot 4\"\nbearing N 3° E 210'\nbearing S 88° 10' E 180'\nbearing S 2° W 214.5'\nbearing N 87° W 150'\n";
    let (source, list) = diagnostics_of("lot.sides", lot.as_bytes().to_vec());
    let page = fairfoot::diagnostic::draw(&source, &list, false);
    let page = page.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(page.contains("compare with the deed: side 2 (`bearing S 88° 10' E 180'`) or side 4 (`bearing N 87° W 150'`)"), "{page}");
}

#[test]
fn misclosures_are_stated_in_the_unit_of_the_file() {
    let page = drawn("north 8.64 m\neast 12.2 m\nsouth 8.64 m\nwest 11.2 m\n");
    assert!(page.contains("the walk around the walls ends 1 m east of where it began"), "{page}");
    assert!(page.contains("the sides east add up to 12.2 m"), "{page}");
}

#[test]
fn the_side_that_overlaps_is_reported_with_its_distance() {
    const HOUSE: &str = "north 30'\neast 40'\nsouth 30'\nwest 40'\n";
    let page = drawn(&format!(
        "{HOUSE}garage \"Garage\" within \"House\" start east 25'\nnorth 20'\neast 20'\nsouth 20'\nwest 20'\n"
    ));
    assert!(page.contains("side 3 (`south 20'`) lies 5' east of `House`"), "{page}");
    assert!(page.contains("it fits inside `House`: `start east 20'`"), "{page}");
    let page = drawn(&format!(
        "{HOUSE}porch \"Porch\" start east 10' south 5'\nnorth 8'\neast 12'\nsouth 8'\nwest 12'\n"
    ));
    assert!(page.contains("side 2 (`east 12'`) reaches 3' into `House`"), "{page}");
}

#[test]
fn an_upper_level_that_fits_when_moved_or_turned_is_no_warning() {
    const HOUSE: &str = "north 30'\neast 40'\nsouth 30'\nwest 40'\n";
    let upper = |sides: &str| drawn(&format!("{HOUSE}level \"Upper\"\nliving \"Beds\"{sides}"));
    let page = upper("\nwest 22'\nnorth 30'\neast 22'\nsouth 30'\n");
    assert!(page.contains("note[placed-above]") && page.contains("`start east 22'`"), "{page}");
    assert!(!page.contains("warning"), "{page}");
    let page = upper("\nnorth 40'\neast 22'\nsouth 40'\nwest 22'\n");
    assert!(page.contains("note[placed-above]") && page.contains("turned a quarter"), "{page}");
    // A level that does not fit, and one whose start the file gives, are reported as before.
    let page = upper("\nnorth 44'\neast 22'\nsouth 44'\nwest 22'\n");
    assert!(page.contains("warning[upper-overhangs]"), "{page}");
    let page = upper(" start east 20'\nnorth 30'\neast 22'\nsouth 30'\nwest 22'\n");
    assert!(page.contains("warning[upper-overhangs]"), "{page}");
}

/// A house of 30' by 20' with a part of 12' by 8' behind it, 696 sq ft; one of its walls is by closing.
fn walk(walls: [&str; 6]) -> String {
    walls.map(|wall| format!("{wall}\n")).concat()
}

fn counted(walls: &str) -> i64 {
    let text = format!("level \"Ground floor\"\nliving \"House\"\n{walls}");
    let house = fairfoot::read("walk.sides", text).unwrap_or_else(|errors| panic!("{errors}"));
    house.areas(&fairfoot::Settings::default()).unwrap().gross().as_measured().whole_sq_ft()
}

#[test]
fn a_wall_that_turned_closes_the_walk_with_its_side_by_closing_is_named() {
    const WALLS: [&str; 6] =
        ["north 20'", "east 18'", "north 8'", "east 12'", "south 28'", "west by closing"];
    for (at, typed, right) in [
        (1, "west 18'", "side 2 (`west 18'`) runs: walked east,"),
        (3, "north 12'", "side 4 (`north 12'`) runs: walked east,"),
        (2, "east 8'", "side 3 (`east 8'`) runs: walked north,"),
    ] {
        let mut walls = WALLS;
        walls[at] = typed;
        let page = drawn(&walk(walls));
        assert!(page.contains(&format!("look which way {right}")), "{page}");
    }
    assert_eq!(counted(&walk(WALLS)), 696);
    // A wall of the other axis that is by closing.
    let page = drawn(&walk([
        "north 20'",
        "east 18'",
        "north 8'",
        "south 12'",
        "south by closing",
        "west 30'",
    ]));
    assert!(page.contains("look which way side 4 (`south 12'`) runs: walked east"), "{page}");
}

#[test]
fn slanted_walls_that_turned_close_the_walk_are_named_before_the_others() {
    // An angled bay in the south wall, 8' wide and 2' out: 840 sq ft, and 12 for the bay.
    let bay = |one: &str, two: &str| {
        format!(
            "north 28'\neast 30'\nsouth 28'\nwest 11'\ndiagonal {one}\nwest 4'\ndiagonal {two}\nwest 11'\n"
        )
    };
    let right = ["west 2' south 2'", "west 2' north 2'"];
    assert_eq!(counted(&bay(right[0], right[1])), 852);
    for (one, two, said) in [
        (
            right[0],
            right[0],
            "or side 7 (`diagonal west 2' south 2'`) runs: with `north` and `south` exchanged",
        ),
        (
            "east 2' south 2'",
            right[1],
            "side 5 (`diagonal east 2' south 2'`) runs: with `east` and `west` exchanged",
        ),
        ("east 2' south 2'", "east 2' north 2'", "run: with `east` and `west` exchanged in both"),
    ] {
        let page = drawn(&bay(one, two));
        let at = page.find(said).unwrap_or_else(|| panic!("{page}"));
        assert!(page.find("measure again").is_none_or(|again| at < again), "{page}");
    }
}
