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
    Some((
        format!(
            "{} are read as the ways in which the walls were walked; {lead}{joint} type {}, as {example}",
            words::all_of(&said),
            words::all_of(&turned),
        ),
        closes,
    ))
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
fn closes_with(sides: &[Side], runs: impl Fn(&Side, Direction) -> Direction) -> bool {
    const NEAR: i64 = 6 * Length::INCH.nm();
    let (mut east, mut north) = (0_i64, 0_i64);
    let mut open: Vec<Direction> = Vec::new();
    for side in sides {
        let way = |way: Direction| runs(side, way);
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
