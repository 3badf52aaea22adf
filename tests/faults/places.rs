//! Places told in words: what is offered, when taken, gives the space at the place that was said. The places are worked
//! out here from the corners of the house, by hand.

use fairfoot::diagnostic::draw;
use fairfoot::{Diagnostic, Settings};
use proptest::prelude::*;

use super::diagnostics_of;

/// The ways, clockwise from north.
const WAYS: [&str; 4] = ["north", "east", "south", "west"];

type Corner = (i64, i64);

/// A house in whole feet: its corners in the order of the walk, which begins at the first, at 0, 0.
#[derive(Clone, Debug)]
struct House {
    corners: Vec<Corner>,
    /// The street side, as an index of [`WAYS`].
    front: usize,
}

impl House {
    /// A rectangle, or an L without its corner at `cut` (counted from the southwest, clockwise), whose walk begins at
    /// corner `first` and goes one way or the other.
    fn new(
        size: (i64, i64),
        cut: Option<(usize, i64, i64)>,
        first: usize,
        turns: bool,
        front: usize,
    ) -> House {
        let (w, h) = size;
        let mut corners = vec![(0, 0), (0, h), (w, h), (w, 0)];
        if let Some((corner, a, b)) = cut {
            let (x, y) = corners[corner];
            let (inward, up) = (if x == 0 { a } else { w - a }, if y == 0 { b } else { h - b });
            // The walk round comes to the cut corner along one axis, clockwise.
            let three = match corner {
                0 | 2 => [(inward, y), (inward, up), (x, up)],
                _ => [(x, up), (inward, up), (inward, y)],
            };
            corners.splice(corner..=corner, three);
        }
        if turns {
            corners.reverse();
        }
        let first = first % corners.len();
        corners.rotate_left(first);
        let (x, y) = corners[0];
        let corners = corners.into_iter().map(|at| (at.0 - x, at.1 - y)).collect();
        House { corners, front }
    }

    fn text(&self) -> String {
        let mut text = format!("front {}\nlevel \"G\"\nliving \"House\"\n", WAYS[self.front]);
        let next = self.corners.iter().cycle().skip(1);
        for (one, two) in self.corners.iter().zip(next) {
            let (east, north) = (two.0 - one.0, two.1 - one.1);
            let way = match (east, north) {
                (0, n) if n > 0 => "north",
                (0, _) => "south",
                (e, _) if e > 0 => "east",
                _ => "west",
            };
            text.push_str(&format!("{way} {}'\n", east.abs() + north.abs()));
        }
        text
    }

    /// The west, south, east and north end.
    fn ends(&self) -> [i64; 4] {
        let east = self.corners.iter().map(|at| at.0);
        let north = self.corners.iter().map(|at| at.1);
        [
            east.clone().min().unwrap(),
            north.clone().min().unwrap(),
            east.max().unwrap(),
            north.max().unwrap(),
        ]
    }

    /// From where to where each wall on this side runs.
    fn walls(&self, side: usize) -> Vec<(i64, i64)> {
        let next = || self.corners.iter().cycle().skip(1);
        // Twice the area, positive if the walk has the house on its left.
        let cross = |(one, two): (&Corner, &Corner)| one.0 * two.1 - two.0 * one.1;
        let is_left = self.corners.iter().zip(next()).map(cross).sum::<i64>() > 0;
        // With the house on the left, the north side is walked west, the east side north.
        let walked = [[(-1, 0), (0, 1), (1, 0), (0, -1)], [(1, 0), (0, -1), (-1, 0), (0, 1)]];
        let way = walked[usize::from(!is_left)][side];
        let all = self
            .corners
            .iter()
            .zip(next())
            .filter(|(one, two)| ((two.0 - one.0).signum(), (two.1 - one.1).signum()) == way);
        let along = |at: &Corner| if side.is_multiple_of(2) { at.0 } else { at.1 };
        all.map(|(one, two)| (along(one).min(along(two)), along(one).max(along(two)))).collect()
    }

    fn is_rectangle(&self) -> bool {
        self.corners.len() == 4
    }

    /// Where a side as seen from the street is.
    fn seen(&self, side: usize) -> usize {
        // Seen from the street, the right of a house whose back is north is east.
        (self.front + 2 + side) % 4
    }
}

/// The word for a side, by the compass or as seen from the street.
fn said(house: &House, side: usize, by_street: bool) -> &'static str {
    const SEEN: [&str; 4] = ["back", "right", "front", "left"];
    match by_street {
        true => SEEN[(0..4).find(|&seen| house.seen(seen) == side).unwrap()],
        false => WAYS[side],
    }
}

/// The box of a space on a line that is offered: its walk goes north, east, south and west from its southwest corner.
fn offered_box(house: &House, offered: &str, size: (i64, i64)) -> [i64; 4] {
    let pieces: Vec<&str> = offered.lines().next().unwrap().split(' ').collect();
    let feet = |text: &str| text.trim_end_matches('\'').parse::<i64>().unwrap();
    let (mut x, mut y) = (0, 0);
    if let Some(start) = pieces.iter().position(|piece| *piece == "start") {
        for two in pieces[start + 1..].chunks(2) {
            match two {
                ["north", by] => y += feet(by),
                ["south", by] => y -= feet(by),
                ["east", by] => x += feet(by),
                ["west", by] => x -= feet(by),
                _ => break,
            }
        }
    } else if let Some(corner) = pieces.iter().position(|piece| *piece == "corner") {
        (x, y) = house.corners[pieces[corner + 1].parse::<usize>().unwrap() - 1];
    }
    // With its sides below the line, the walk is that of the line.
    let sides: Vec<i64> =
        offered.lines().skip(1).take(2).map(|side| feet(side.split(' ').nth(1).unwrap())).collect();
    let (w, h) = match sides[..] {
        [north, east] => (east, north),
        _ => size,
    };
    [x, y, x + w, y + h]
}

/// The end of a box on a side.
fn end([west, south, east, north]: [i64; 4], side: usize) -> i64 {
    [north, east, south, west][side]
}

/// How far in from the end of the house on `side` the box ends; negative if it ends beyond.
fn inset(house: &House, space: [i64; 4], side: usize) -> i64 {
    let far = end(house.ends(), side) - end(space, side);
    if side == 0 || side == 1 { far } else { -far }
}

/// Whether a box stands against a wall of the house on this side, for a foot or more.
fn stands_on(house: &House, space: [i64; 4], side: usize) -> bool {
    let opposite = end(space, (side + 2) % 4);
    let (low, high) =
        if side.is_multiple_of(2) { (space[0], space[2]) } else { (space[1], space[3]) };
    let next = house.corners.iter().cycle().skip(1);
    house.corners.iter().zip(next).any(|(one, two)| {
        let (across, from, to) = match side % 2 {
            0 => ([one.1, two.1], one.0.min(two.0), one.0.max(two.0)),
            _ => ([one.0, two.0], one.1.min(two.1), one.1.max(two.1)),
        };
        across == [opposite; 2] && high.min(to) - low.max(from) >= 1
    })
}

/// What is offered for a line below the house, with the box of each, after each was taken and the house read.
fn offers(house: &House, line: &str, size: (i64, i64), sides: bool) -> Vec<[i64; 4]> {
    let (w, h) = size;
    let walk = match sides {
        true => format!("north {h}'\neast {w}'\nsouth {h}'\nwest {w}'\n"),
        false => String::new(),
    };
    let text = format!("{}{line}\n{walk}", house.text());
    let (source, list) = diagnostics_of("told.sides", text.clone().into_bytes());
    let fixes = list.iter().flat_map(Diagnostic::fixes);
    let own = fairfoot::read("house.sides", house.text()).unwrap();
    let area = |house: &fairfoot::House| {
        house.areas(&Settings::default()).unwrap().gross().as_measured().whole_sq_ft()
    };
    let boxes = fixes.map(|fix| {
        let mut taken = text.clone();
        taken.replace_range(fix.span.start..fix.span.end, &fix.text);
        let read = fairfoot::read("taken.sides", taken.as_str());
        let read = read.unwrap_or_else(|errors| {
            panic!("{line}: {}\n{errors}\n{}", fix.text, draw(&source, &list, false))
        });
        assert!(fix.text.starts_with("porch \"Porch\""), "{line}: {}", fix.text);
        assert_eq!(area(&read), area(&own), "{line}: {}", fix.text);
        let there = offered_box(house, &fix.text, size);
        let (own_w, own_h) = (there[2] - there[0], there[3] - there[1]);
        assert!((own_w, own_h) == (w, h) || (own_w, own_h) == (h, w), "{line}: {}", fix.text);
        there
    });
    boxes.collect()
}

fn houses() -> impl Strategy<Value = House> {
    let cut = proptest::option::of((0_usize..4, 6_i64..14, 6_i64..14));
    ((30_i64..60, 30_i64..60), cut, 0_usize..6, any::<bool>(), 0_usize..4)
        .prop_map(|(size, cut, first, turns, front)| House::new(size, cut, first, turns, front))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn a_space_on_a_side_at_a_distance_from_an_end_is_offered_there(
        house in houses(), side in 0_usize..4, turn in any::<bool>(), by in 0_i64..9, street in any::<bool>(),
        size in (4_i64..10, 4_i64..10), has_sides in any::<bool>(), how in 0_usize..4,
    ) {
        let from = (side + if turn { 1 } else { 3 }) % 4;
        let (on, of) = (said(&house, side, street), said(&house, from, street));
        let (wide, deep) = if side % 2 == 0 { size } else { (size.1, size.0) };
        let sized = if has_sides { String::new() } else { format!("{wide}' wide and {deep}' deep, ") };
        let place = match how {
            0 => format!("on the {on} side, {by}' from the {of} end"),
            1 => format!("against the {on} wall, starting {by}' in from the {of} corner"),
            2 => format!("{by}' from the {of} wall, on the {on} side of the house"),
            _ => format!("on the {on}, flush with the {of}"),
        };
        let by = if how == 3 { 0 } else { by };
        let found = offers(&house, &format!("porch {sized}{place}"), size, has_sides);
        for there in &found {
            prop_assert!(stands_on(&house, *there, side), "{place}: {there:?} {house:?}");
        }
        prop_assert!(found.is_empty() || found.iter().any(|there| there[2] - there[0] == size.0));
        if house.is_rectangle() {
            // On the left and the right, what is wide may be so along the wall or along the street.
            let ways = if has_sides || side % 2 == house.front % 2 || size.0 == size.1 { 1 } else { 2 };
            prop_assert_eq!(found.len(), ways, "{}", place);
            for there in found {
                prop_assert_eq!(inset(&house, there, from), by, "{} {:?}", place, house);
            }
        }
    }

    #[test]
    fn a_space_on_a_side_is_offered_there_alone(
        house in houses(), side in 0_usize..4, street in any::<bool>(), size in (4_i64..10, 4_i64..10),
        how in 0_usize..3,
    ) {
        let on = said(&house, side, street);
        let place = match how {
            0 => format!("on the {on} side"),
            1 => format!("to the {on}"),
            _ => format!("off the {on} of the house"),
        };
        let found = offers(&house, &format!("porch {place}"), size, true);
        prop_assert!(!found.is_empty(), "{}", place);
        for there in found {
            prop_assert!(stands_on(&house, there, side), "{place}: {there:?} {house:?}");
        }
    }

    #[test]
    fn a_space_in_the_middle_of_a_side_is_offered_there(
        house in houses(), side in 0_usize..4, street in any::<bool>(), size in (2_i64..5, 2_i64..5),
    ) {
        let (w, h) = (2 * size.0, 2 * size.1);
        let place = format!("centered on the {} side", said(&house, side, street));
        let walls = house.walls(side);
        if walls.iter().all(|(low, high)| (high - low) % 2 == 0) {
            let found = offers(&house, &format!("porch {place}"), (w, h), true);
            // A side with a jog has more than one middle, one for each of its walls.
            prop_assert!(found.len() <= walls.len(), "{} {:?}", place, house);
            if walls.len() == 1 {
                prop_assert_eq!(found.len(), 1, "{} {:?}", place, house);
            }
            for there in found {
                let own = if side % 2 == 0 { (there[0], there[2]) } else { (there[1], there[3]) };
                prop_assert!(stands_on(&house, there, side));
                prop_assert!(walls.iter().any(|(low, high)| own.0 - low == high - own.1));
            }
        }
    }

    #[test]
    fn a_walk_that_begins_at_a_distance_from_a_corner_is_offered_there(
        house in houses(), corner in 0_usize..6, east in 1_i64..9, north in 1_i64..9, signs in any::<(bool, bool)>(),
    ) {
        let corner = corner % house.corners.len();
        let (e, n) = (if signs.0 { east } else { -east }, if signs.1 { north } else { -north });
        let place = format!(
            "{east}' {} and {north}' {} of corner {}",
            if signs.0 { "east" } else { "west" },
            if signs.1 { "north" } else { "south" },
            corner + 1
        );
        let at = house.corners[corner];
        for there in offers(&house, &format!("porch {place}"), (6, 5), true) {
            prop_assert_eq!([there[0], there[1]], [at.0 + e, at.1 + n], "{} {:?}", place, house);
        }
    }
}

const PLAIN: &str =
    "front south\nlevel \"G\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\n";

/// What is offered for the last line of a file below a house of 40' by 30', or what is said if nothing is.
fn answered(lines: &str) -> Vec<String> {
    let text = format!("{PLAIN}{lines}\n");
    let (_, list) = diagnostics_of("told.sides", text.into_bytes());
    let fault = list.iter().rfind(|fault| fault.is_error()).expect("an error");
    match fault.fixes() {
        [] => fault.helps().to_vec(),
        fixes => fixes.iter().map(|fix| fix.text.lines().next().unwrap_or("").to_owned()).collect(),
    }
}

#[test]
fn a_size_that_fits_one_way_only_is_offered_that_way() {
    // A garage that stands 4' out in front of the house, from 10' east on: beside it, 0' from its front, a porch of
    // 12' by 4' fits with its 12' along the street; with its 12' north and south it would lie in the house.
    let garage = "garage \"Garage\" within \"House\" start east 10'\nnorth 16'\neast 12'\nsouth 16'\nwest 12'\n";
    let house = "front south\nlevel \"G\"\nliving \"House\"\nnorth 34'\neast 40'\nsouth 30'\nwest 18'\nsouth 4'\nwest 22'\n";
    let porch = "porch 12' x 4' right of the garage, 0' from the south end\n";
    let text = format!("{house}{garage}{porch}");
    let (_, list) = diagnostics_of("told.sides", text.into_bytes());
    let fixes: Vec<&str> =
        list.iter().flat_map(Diagnostic::fixes).map(|fix| fix.text.as_str()).collect();
    // The front of the garage is at north 0, and its right side 22' east of the first corner.
    assert_eq!(
        fixes,
        ["porch \"Porch\" from \"House\" corner 6\nnorth 4'\neast 12'\nsouth 4'\nwest 12'"]
    );
}

#[test]
fn what_lies_over_a_garage_at_its_back_is_offered_there() {
    let lines = "garage \"Garage\" start east 40'\nnorth 20'\neast 22'\nsouth 20'\nwest 22'\nlevel \"Up\"\nliving \"Rooms\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\nliving \"Bonus room\" 22' x 12' over the garage, at the back";
    // The back of the garage is 20' north; a room 12' deep there begins 8' north.
    assert_eq!(answered(lines), ["living \"Bonus room\" start east 40' north 8'"]);
}

#[test]
fn what_a_place_in_words_lacks_is_asked_for() {
    let size = &answered("deck \"Deck\" centered on the back wall")[0];
    assert!(size.starts_with("where it stands follows from its size"), "{size}");
    let middle = &answered("stairs 10' x 3' 4\" in the middle")[0];
    assert!(
        middle
            .contains("from two walls that meet, as `6' from the south end, 6' from the west end`"),
        "{middle}"
    );
    // What was asked for is understood: 10' north and south, then 10' east and west.
    let both = answered("stairs 10' x 3' 4\" 6' from the south end, 10' from the west end");
    assert_eq!(both, ["stair \"Stairs\" start east 10' north 6'"; 2]);
}

#[test]
fn a_space_beside_one_that_stands_by_itself_does_so_too() {
    let lines = "outbuilding \"Barn\" detached\nnorth 20'\neast 30'\nsouth 20'\nwest 30'\nshed \"Wood store\" 10' x 12' right of the barn";
    assert_eq!(answered(lines), ["outbuilding \"Wood store\" detached  # right of the barn"; 2]);
}

#[test]
fn a_second_garage_may_have_a_number() {
    let lines = "garage \"Garage\" start east 40'\nnorth 20'\neast 20'\nsouth 20'\nwest 20'\ngarage 2 20' x 20' on the left side, flush with the back";
    assert_eq!(answered(lines), ["garage \"Garage 2\" start west 20' north 10'"]);
}

/// What is offered for the last line of a file.
fn offered_in(house: &str, line: &str) -> Vec<String> {
    let (_, list) = diagnostics_of("told.sides", format!("{house}{line}\n").into_bytes());
    let fixes = list.iter().flat_map(Diagnostic::fixes);
    fixes.map(|fix| fix.text.lines().next().unwrap_or("").to_owned()).collect()
}

/// A house of 40' by 30' with a part of 20' by 2' 3" before the left half of its front.
const JOGGED: &str = "front south\nlevel \"G\"\nliving \"House\"\nnorth 32' 3\"\neast 40'\nsouth 30'\nwest 20'\nsouth 2' 3\"\nwest 20'\n";

#[test]
fn a_distance_along_a_side_with_a_jog_is_offered_from_each_end() {
    // The right side of the house begins 2' 3" farther back than the house does: 3' from either.
    let garage = "garage 22' wide 20' deep on the right side, 3' back from the front";
    let text = format!("{JOGGED}{garage}\n");
    let (_, list) = diagnostics_of("told.sides", text.into_bytes());
    let helps: Vec<&str> = list.iter().flat_map(Diagnostic::helps).map(String::as_str).collect();
    let helps = helps.join("\n");
    for said in [
        "start east 40' north 3'",
        "against side 3 (`south 30'`), 9\" from its south end",
        "start east 40' north 5' 3\"",
        "against side 3 (`south 30'`), 3' from its south end",
    ] {
        assert!(helps.contains(said), "{said}: {helps}");
    }
    // The front wall of the right half is 20' long: 24' from the left end of the house, 4' from its own.
    let porch =
        offered_in(JOGGED, "porch 10' wide 6' deep on the south side, 24' from the west end");
    assert_eq!(porch, ["porch \"Porch\" start east 24' south 3' 9\""]);
    // In line with an end, the outermost is meant.
    let patio = offered_in(JOGGED, "patio 10' wide 6' deep on the south side, at the west end");
    assert_eq!(patio, ["patio \"Patio\" start south 6'"]);
    let deck = offered_in(JOGGED, "deck 10' wide 6' deep on the south side, at the east end");
    assert_eq!(deck, ["deck \"Deck\" start east 30' south 3' 9\""]);
}

#[test]
fn what_lies_inside_is_counted_from_the_wall_that_it_faces() {
    // The stairs face the wall of the right half, which is 2' 3" farther back than the house.
    let stairs =
        offered_in(JOGGED, "stairs 3' wide 10' deep, 4' from the south end, 30' from the west end");
    assert!(
        stairs.contains(&"stair \"Stairs\" start east 30' north 6' 3\"".to_owned()),
        "{stairs:?}"
    );
    assert!(stairs.iter().all(|line| line.ends_with("north 6' 3\"")), "{stairs:?}");
    let foyer = offered_in(JOGGED, "foyer 7' wide 9' deep at the front, 4' from the west end");
    assert!(foyer.iter().all(|line| line == "open \"Foyer\" start east 4'"), "{foyer:?}");
    assert!(!foyer.is_empty());
}

#[test]
fn what_stands_against_walls_taped_inside_leaves_them_between() {
    // 20' by 30' inside walls of 8": the outer face is 8" farther out, on the west as well, and a garage taped inside has one wall between.
    let box_ = "front south\nfaces inside\nveneer none\nwall 8\"\nlevel \"G\"\nliving \"House\"\nnorth 30'\neast 20'\nsouth 30'\nwest 20'\n";
    let deck = offered_in(box_, "deck 8' wide 10' deep on the north side, at the west end");
    assert_eq!(deck, ["deck \"Deck\" start west 8\" north 30' 8\""]);
    let porch = offered_in(box_, "porch 10' wide 6' deep on the south side, at the west end");
    assert_eq!(porch, ["porch \"Porch\" start west 8\" south 6' 8\""]);
    let garage = offered_in(box_, "garage 12' x 12' on the east side, at the south end");
    assert_eq!(garage, ["garage \"Garage\" start east 20' 8\""]);
    // Taped outside it stands against the walls as they were taped.
    let outside = box_.replace("faces inside\n", "");
    let garage = offered_in(&outside, "garage 12' x 12' on the east side, at the south end");
    assert_eq!(garage, ["garage \"Garage\" from \"House\" corner 4"]);
}

#[test]
fn the_first_space_of_a_level_lies_at_the_part_that_its_words_name() {
    // A basement of 24' by 30' under the east part of a house of 40' by 30' begins 16' east.
    let level = format!("{PLAIN}level \"Basement\" below grade\n");
    let room = offered_in(&level, "living \"Rec room\" east part, 24' wide 30' deep");
    assert_eq!(room, ["living \"Rec room\" start east 16'"]);
    let under = offered_in(
        &level,
        "living \"Rec room\" under the right end of the house, 24' wide 30' deep",
    );
    assert_eq!(under, ["living \"Rec room\" start east 16'"]);
}

#[test]
fn what_is_within_and_touches_from_outside_is_asked_about() {
    // A porch of 6' by 6' that begins at the east wall of the house lies beside it.
    let text = format!(
        "{PLAIN}porch \"Porch\" within \"House\" start east 40' north 10'\nnorth 6'\neast 6'\nsouth 6'\nwest 6'\n"
    );
    let (_, list) = diagnostics_of("told.sides", text.into_bytes());
    let helps: Vec<String> = list.iter().flat_map(Diagnostic::helps).cloned().collect();
    assert!(helps[0].starts_with("as typed it stands beside `House`, and touches it"), "{helps:?}");
    // One that lies away from it does not.
    let away = format!(
        "{PLAIN}porch \"Porch\" within \"House\" start east 60' north 10'\nnorth 6'\neast 6'\nsouth 6'\nwest 6'\n"
    );
    let (_, list) = diagnostics_of("told.sides", away.into_bytes());
    let helps: Vec<String> = list.iter().flat_map(Diagnostic::helps).cloned().collect();
    assert!(!helps.iter().any(|help| help.starts_with("as typed")), "{helps:?}");
}

#[test]
fn what_stands_beside_a_part_that_stands_out_is_level_with_the_house() {
    // The garage stands 4' out before the house: left of it a porch lies against both.
    let house = "front south\nlevel \"G\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 34'\nwest 18'\nnorth 4'\nwest 22'\ngarage \"Garage\" within \"House\" start east 22' south 4'\nnorth 16'\neast 18'\nsouth 16'\nwest 18'\n";
    let porch = offered_in(house, "porch 14' wide 6' deep left of the garage");
    // Either length may be the one along the wall of the garage.
    assert!(porch.contains(&"porch \"Porch\" start east 8' south 6'".to_owned()), "{porch:?}");
}

#[test]
fn a_space_against_two_others_stands_in_the_corner_between_them() {
    // The garage stands 4' out in front, from the first corner to 22' east: beside it, in front of the house, a porch
    // of 12' by 4' begins at its right front corner, or as 4' by 12' at the same wall 8' farther out.
    let house = "front south\nlevel \"G\"\nliving \"House\"\nnorth 34'\neast 40'\nsouth 30'\nwest 18'\nsouth 4'\nwest 22'\ngarage \"Garage\" within \"House\" start east 10'\nnorth 16'\neast 12'\nsouth 16'\nwest 12'\n";
    let text = format!("{house}porch 12' x 4' in front of the house, right of the garage\n");
    let (_, list) = diagnostics_of("told.sides", text.into_bytes());
    let first: Vec<&str> =
        list.iter().flat_map(Diagnostic::fixes).filter_map(|fix| fix.text.lines().next()).collect();
    let turned = "porch \"Porch\" start east 22' south 8'";
    assert_eq!(first, [turned, "porch \"Porch\" from \"House\" corner 6"]);
}

#[test]
fn rooms_that_cover_most_of_others_are_asked_whether_they_are_a_level() {
    let said = |lines: &str| {
        let (_, list) = diagnostics_of("told.sides", format!("{PLAIN}{lines}").into_bytes());
        let helps: Vec<String> = list.iter().flat_map(Diagnostic::helps).cloned().collect();
        helps.iter().any(|help| help.starts_with("if `Up` is on another level"))
    };
    // 38' by 28' from the corner that is given, and 32' by 30' that reach 2' beyond the house.
    assert!(said(
        "living \"Up\" from \"House\" corner 1\nnorth 28'\neast 38'\nsouth 28'\nwest 38'\n"
    ));
    assert!(said("living \"Up\" start east 10'\nnorth 30'\neast 32'\nsouth 30'\nwest 32'\n"));
    // A room of a quarter of the house is more likely misplaced.
    assert!(!said("living \"Up\" start east 10'\nnorth 15'\neast 20'\nsouth 15'\nwest 20'\n"));
}

#[test]
fn the_first_space_of_a_level_may_lie_over_another_than_the_first() {
    let below = "garage \"Garage\" start east 40'\nnorth 20'\neast 22'\nsouth 20'\nwest 22'\n";
    // The garage begins 40' east of the first corner; the room is as large as it is.
    let same = format!("{below}level \"Up\"\nliving \"Bonus room\" 20' x 22' over the garage");
    assert!(answered(&same).contains(&"living \"Bonus room\" start east 40'".to_owned()));
    let sides = "\nnorth 20'\neast 22'\nsouth 20'\nwest 22'";
    let typed = format!("{below}level \"Up\"\nliving \"Bonus room\" over the garage{sides}");
    assert_eq!(answered(&typed), ["living \"Bonus room\" start east 40'"]);
}

#[test]
fn a_name_that_ends_with_the_kind_stands_before_its_place() {
    let line = "porch Front porch 8' wide 5' deep on the south side, 4' from the west end";
    assert_eq!(answered(line), ["porch \"Front porch\" start east 4' south 5'"]);
}

#[test]
fn a_level_stands_on_one_half_in_the_ground_before_it() {
    // A split level: 30' by 26' of living rooms, beside it a lower level of 24' by 26', and bedrooms over that.
    let wing = |start: &str| format!("{start}\nnorth 26'\neast 24'\nsouth 26'\nwest 24'\n");
    let house = |beside: &str| {
        let lower = wing("living \"Family room\" start east 30'");
        let upper = wing("living \"Bedrooms\" start east 30'");
        let main = "living \"Rooms\"\nnorth 26'\neast 30'\nsouth 26'\nwest 30'\n";
        format!(
            "level \"Main\"\n{main}level \"Lower\" below grade\n{lower}level \"Upper\"{beside}\n{upper}"
        )
    };
    let read = |text: String| fairfoot::read("split.sides", text).expect("a house");
    assert!(read(house("")).warnings().is_empty(), "{:?}", read(house("")).warnings());
    let beside = read(house(" beside"));
    let helps: Vec<&String> = beside.warnings().iter().flat_map(Diagnostic::helps).collect();
    assert_eq!(helps[0], "if it stands on `Lower`, take `beside` away");
}
