//! Walls that are typed as front, left, back and right in a walk that does not close: whether it closes if these words name
//! the sides on which the walls stand.

use crate::diagnostic::words;
use crate::geometry::compass::{Axis, Direction};
use crate::geometry::outline::Vector;
use crate::geometry::traverse::Shape;
use crate::house::Side;
use crate::sketch::statement::Run;
use crate::units::length::Length;

/// The words for the four sides as seen from the street, each to the right of the one before it.
pub(super) const SIDES: [&str; 4] = ["front", "left", "back", "right"];

/// The word of a side that is typed as seen from the street, as its index in [`SIDES`].
fn street_word(side: &Side) -> Option<usize> {
    let word = side.typed.split(' ').next().unwrap_or_default();
    SIDES.iter().position(|side| side.eq_ignore_ascii_case(word))
}

/// What to type where some walls of a walk that does not close are typed as front, left, back and right, beside others by
/// the compass: the words may name the sides on which the walls stand. The second is whether the walk then closes.
pub(super) fn named_by_their_sides(sides: &[Side]) -> Option<(String, bool)> {
    let named: Vec<usize> = sides.iter().filter_map(street_word).collect();
    if named.len() < 2 || named.len() == sides.len() {
        return None;
    }
    // Round the house from its left side to the back the inside is on the right.
    let steps = named.windows(2).map(|two| (two[1] + 4 - two[0]) % 4);
    let (on_right, on_left) = steps.fold((0, 0), |(right, left), step| {
        (right + i32::from(step == 1), left + i32::from(step == 3))
    });
    let closing: Vec<bool> =
        [true, false].into_iter().filter(|clockwise| closes_turned(sides, *clockwise)).collect();
    let (clockwise, closes) = match closing[..] {
        [only] => (only, true),
        [_, ..] => (on_right >= on_left, true),
        [] if on_right != on_left => (on_right > on_left, false),
        [] => return None,
    };
    // In compass words the walk is not asked about again.
    let meant = |at: usize| {
        let read = sides.iter().find(|side| street_word(side) == Some(at))?.direction?;
        Some(if clockwise { read.right() } else { read.left() }.word())
    };
    let mut used: Vec<usize> = Vec::new();
    for at in &named {
        if !used.contains(at) {
            used.push(*at);
        }
    }
    let turned: Vec<String> = used
        .iter()
        .filter_map(|&at| Some(format!("`{}` for `{}`", meant(at)?, SIDES[at])))
        .collect();
    let first = sides.iter().find_map(|side| Some((side, street_word(side)?)))?;
    let rest = first.0.typed.split_once(' ').map_or("", |(_, rest)| rest);
    let example = format!("`{} {rest}` for `{}`", meant(first.1)?, first.0.typed);
    let said: Vec<String> = used.iter().map(|&at| format!("`{}`", SIDES[at])).collect();
    let lead = match closes {
        true => {
            "taken as the sides on which the walls stand, they bring the walk back to its start"
        }
        false => "if they name the sides on which the walls stand",
    };
    let joint = if closes { ": if that is meant," } else { "," };
    // Where that alone does not bring it back, one or two of the walls may run as they were walked.
    let others = match closes {
        true => String::new(),
        false => match walked_among(sides, clockwise) {
            Some(others) => {
                let named = |&(at, way): &(usize, Option<Direction>)| match way {
                    Some(way) => format!("`{}` as `{}`", sides[at].typed, way.word()),
                    None => format!("`{}`", sides[at].typed),
                };
                let all = words::all_of(&others.iter().map(named).collect::<Vec<_>>());
                match others.iter().all(|(_, way)| way.is_some()) {
                    true => format!("; the walk comes back to its start with {all} instead"),
                    false => {
                        let run = if others.len() == 1 { "runs" } else { "run" };
                        format!(
                            "; the walk comes back to its start if {all} {run} another way than that"
                        )
                    }
                }
            }
            None => "; the walk does not come back to its start with that alone".to_owned(),
        },
    };
    Some((
        format!(
            "{} are read as the ways in which the walls were walked; {lead}{joint} type {}, as {example}{others}",
            words::all_of(&said),
            words::all_of(&turned),
        ),
        closes,
    ))
}

/// The one or two walls that run another way than the side that they name says, and which, if the walk then closes and turns
/// at each corner; no ways where it does with several, and `None` if other walls do it as well.
fn walked_among(sides: &[Side], clockwise: bool) -> Option<Vec<(usize, Option<Direction>)>> {
    const MOST_SIDES: usize = 40;
    if sides.len() > MOST_SIDES {
        return None;
    }
    let ways: Vec<Direction> = sides
        .iter()
        .map(|side| match side.run {
            Run::Straight(way, _) | Run::ByClosing(way) => Some(match street_word(side) {
                Some(_) if clockwise => way.right(),
                Some(_) => way.left(),
                None => way,
            }),
            _ => None,
        })
        .collect::<Option<_>>()?;
    let closes = |changed: &[(usize, Direction)]| {
        let way =
            |at: usize| changed.iter().find(|one| one.0 == at).map_or(ways[at], |&(_, way)| way);
        let turns = (0..ways.len()).all(|at| way(at).axis() != way((at + 1) % ways.len()).axis());
        turns && {
            let mut at = 0..;
            closes_with(sides, |_, _| way(at.next().unwrap_or_default()))
        }
    };
    let named: Vec<usize> =
        (0..sides.len()).filter(|&at| street_word(&sides[at]).is_some()).collect();
    let others = |at: usize| [ways[at].right(), ways[at].left(), ways[at].opposite()];
    let mut found: Vec<Vec<(usize, Direction)>> = Vec::new();
    for &one in &named {
        let changed = others(one).map(|way| vec![(one, way)]);
        found.extend(changed.into_iter().filter(|changed| closes(changed)));
    }
    if found.is_empty() {
        for (first, &one) in named.iter().enumerate() {
            for &two in named.iter().skip(first + 1) {
                for way in others(one) {
                    let changed = others(two).map(|other| vec![(one, way), (two, other)]);
                    found.extend(changed.into_iter().filter(|changed| closes(changed)));
                }
            }
        }
    }
    let first = found.first()?;
    let are_same = |other: &Vec<(usize, Direction)>| {
        other.iter().map(|one| one.0).eq(first.iter().map(|one| one.0))
    };
    let is_only = found.len() == 1;
    let walls = first.iter().map(|&(at, way)| (at, is_only.then_some(way)));
    found.iter().all(are_same).then(|| walls.collect())
}

/// What to type where the only wall that is typed by a side of the house brings the walk back to its start if it was walked
/// the other way.
pub(super) fn walked_the_other_way(sides: &[Side]) -> Option<String> {
    let named: Vec<&Side> = sides.iter().filter(|side| street_word(side).is_some()).collect();
    let [side] = named[..] else { return None };
    let way = side.direction?;
    let opposite = |one: &Side, way: Direction| {
        if street_word(one).is_some() { way.opposite() } else { way }
    };
    if named.len() == sides.len() || !closes_with(sides, opposite) {
        return None;
    }
    let (word, rest) = side.typed.split_once(' ')?;
    Some(format!(
        "`{word}` is read as the way in which the wall was walked, here {}; walked the other way it brings the walk back to its start: if that is meant, type `{} {rest}` for `{}`",
        way.word(),
        way.opposite().word(),
        side.typed
    ))
}

/// Whether a walk closes if each wall that is typed by a side of the house runs along that side, the inside on the right or
/// on the left.
fn closes_turned(sides: &[Side], clockwise: bool) -> bool {
    let turned = |way: Direction| if clockwise { way.right() } else { way.left() };
    closes_with(sides, |side, way| if street_word(side).is_some() { turned(way) } else { way })
}

/// Whether a walk closes if each wall runs the way that it is given.
fn closes_with(sides: &[Side], mut runs: impl FnMut(&Side, Direction) -> Direction) -> bool {
    const NEAR: i64 = 6 * Length::INCH.nm();
    let (mut east, mut north) = (0_i64, 0_i64);
    let mut open: Vec<Direction> = Vec::new();
    for side in sides {
        let mut way = |way: Direction| runs(side, way);
        let mut go = |way: Direction, length: Length| match way.axis() {
            Axis::East => east += way.sign() * length.nm(),
            Axis::North => north += way.sign() * length.nm(),
        };
        match &side.run {
            Run::Straight(direction, length) => go(way(*direction), length.length()),
            Run::ByClosing(direction) => open.push(way(*direction)),
            Run::Diagonal((one, by_one), (two, by_two)) => {
                go(*one, by_one.length());
                go(*two, by_two.length());
            }
            Run::Arc(direction, chord, ..) => go(*direction, chord.length()),
            Run::Bearing(bearing, length) => {
                let (unit, length) = (bearing.unit_vector(), length.length().nm());
                let Vector { east: by_east, north: by_north, .. } =
                    Shape::Bearing { unit, length }.vector();
                east += by_east;
                north += by_north;
            }
            Run::Close => return false,
        }
    }
    [(Axis::East, east), (Axis::North, north)].into_iter().all(|(axis, sum)| {
        let mut ways = open.iter().filter(|way| way.axis() == axis);
        match (ways.next(), ways.next()) {
            (None, _) => sum.abs() <= NEAR,
            (Some(way), None) => -sum * way.sign() > NEAR,
            (Some(_), Some(_)) => false,
        }
    })
}
