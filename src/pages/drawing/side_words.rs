//! The text for the length of a wall on a drawing.

use crate::geometry::compass::{Axis, Direction};
use crate::geometry::outline::Vector;
use crate::geometry::traverse::Misclosure;
use crate::house::{LengthSource, Run, Space};
use crate::units::length::{Form, Length};
use crate::wording::sentences::Sentences;

/// The text for the length of a wall: as typed if it is drawn as typed (in meters with the
/// decimals of the others), else in the file's most frequent unit.
pub(crate) fn side_words(
    say: &Sentences<'_>,
    space: usize,
    source: usize,
    vector: Vector,
) -> String {
    let here = &say.house.spaces[space];
    let side = &here.sides[source];
    let is_typed =
        here.closed.outline.vectors()[source] == vector || is_spread(here, source, vector);
    let chord = || say.length(vector.chord_length());
    let length = match &side.run {
        Run::Straight(_, written) | Run::Bearing(_, written)
            if is_typed && (!side.words.estimated || written.length() == vector.chord_length()) =>
        {
            let is_alike = !side.words.estimated && written.form() == Form::Meters;
            if is_alike { written.grouped_to(decimals_of_meters(say)) } else { written.grouped() }
        }
        Run::ByClosing(_) | Run::Close => format!("{} by closing", chord()),
        Run::Arc(..) => {
            format!("{} chord, rise {}", chord(), say.length(Length::from_nm(vector.rise.abs())))
        }
        // What was taped are its two legs.
        Run::Diagonal((first, _), _) => {
            let leg = |direction: &Direction| {
                say.length(Length::from_nm(match direction.axis() {
                    Axis::North => vector.north.abs(),
                    Axis::East => vector.east.abs(),
                }))
            };
            let across = match first.axis() {
                Axis::North => Length::from_nm(vector.east.abs()),
                Axis::East => Length::from_nm(vector.north.abs()),
            };
            format!("{} by {}", leg(first), say.length(across))
        }
        _ => chord(),
    };
    let origin = match side.how() {
        LengthSource::Estimated => {
            return match &side.run {
                // Its length follows from the others; what was estimated stands beside it.
                Run::Straight(_, written) | Run::Bearing(_, written)
                    if written.length() != vector.chord_length() =>
                {
                    format!("{length} ({} estimated)", written.grouped())
                }
                _ => format!("{length} estimated"),
            };
        }
        LengthSource::Plan => "plan",
        LengthSource::Record => "record",
        _ => return length,
    };
    match &side.run {
        // At another face the length is no longer the plan's; the plan's follows in parentheses.
        Run::Straight(_, written) | Run::Bearing(_, written)
            if !is_typed && written.length() != vector.chord_length() =>
        {
            let pieces = say.areas.outside.spaces[space].traverse.sides.iter();
            let is_cut = pieces.filter(|piece| piece.source == Some(source)).count() > 1;
            let there = written.grouped();
            // The unit once, where it is the same.
            let there = match (length.rsplit_once(' '), there.rsplit_once(' ')) {
                (Some((_, ours)), Some((number, unit))) if ours == unit => number,
                _ => there.as_str(),
            };
            // A wall that is split there has no length of its own.
            if is_cut { length } else { format!("{length} ({origin} {there})") }
        }
        _ => format!("{length} from {origin}"),
    }
}

/// The most decimals of a side that was typed in meters: all lengths in meters are printed alike.
fn decimals_of_meters(say: &Sentences<'_>) -> usize {
    let sides = say.house.spaces.iter().flat_map(|space| space.sides.iter());
    let decimals = sides.map(|side| match &side.run {
        Run::Straight(_, written) | Run::Bearing(_, written) => written.decimals_of_meters(),
        _ => 0,
    });
    decimals.max().unwrap_or(0)
}

/// Whether a wall is as typed except for its share of the misclosure.
fn is_spread(space: &Space, source: usize, vector: Vector) -> bool {
    let typed = space.closed.traverse.sides[source].shape.vector();
    let apart = (typed.east - vector.east).abs() + (typed.north - vector.north).abs();
    space.closed.misclosure != Misclosure::default() && apart <= Length::INCH.nm()
}
