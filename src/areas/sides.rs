//! The side table: each side of a space as typed, as measured, and under each rule.

use crate::areas::Areas;
use crate::geometry::outline::{Outline, Vector};
use crate::house::LengthSource;
use crate::units::length::Length;

/// One row of the side table.
///
/// # Units
///
/// All lengths are exact; a curved side has the length of its chord.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SideRow {
    /// The word that begins the side: `north`, `east`, `south`, `west`, `diagonal`, `bearing` or `arc`.
    pub direction: &'static str,
    /// What was typed after that word.
    pub typed: String,
    /// The length at the measured face, after closing.
    pub measured: Length,
    /// The length at the outside face, rounded by the finer rule (to a tenth of a foot, or to the inch); `None` if
    /// nothing of the side is left there.
    pub tenth_foot: Option<Length>,
    /// The length at the outside face, rounded to the whole foot; `None` if nothing of the side is left there.
    pub whole_foot: Option<Length>,
    /// The length on the record, if given.
    pub recorded: Option<Length>,
    /// How the length was obtained.
    pub how: LengthSource,
}

impl Areas {
    /// The side table of a space, by its index in [`House::spaces`](crate::House).
    pub(crate) fn side_rows(&self, space: usize) -> Vec<SideRow> {
        let (here, its) = (&self.house().spaces[space], &self.spaces[space]);
        let rounded = |outline: &Outline, side: usize| self.side_under(space, side, outline);
        let row = |(i, side): (usize, &crate::house::Side)| SideRow {
            direction: side.way(),
            typed: after_direction(side.typed()),
            measured: chord(&here.closed.outline.vectors()[i]),
            tenth_foot: rounded(its.tenth_foot(), i),
            whole_foot: rounded(its.whole_foot(), i),
            recorded: side.recorded(),
            how: side.how(),
        };
        here.sides.iter().enumerate().map(row).collect()
    }

    /// The length of a side in an outline of its space that was rounded at the outside face; `None` if nothing of it
    /// is left there.
    pub(crate) fn side_under(
        &self,
        space: usize,
        side: usize,
        outline: &Outline,
    ) -> Option<Length> {
        let pieces = self.outside.spaces[space].traverse.sides.iter().zip(outline.vectors());
        let own = pieces.filter(|(piece, _)| piece.source == Some(side));
        let lengths: Vec<Length> = own.map(|(_, vector)| chord(vector)).collect();
        (!lengths.is_empty()).then(|| lengths.into_iter().sum())
    }
}

fn chord(vector: &Vector) -> Length {
    Vector { rise: 0, ..*vector }.length()
}

/// What follows the word that begins a side.
fn after_direction(typed: &str) -> String {
    match typed.trim_start_matches(char::is_alphabetic).trim_start() {
        "" => typed.to_owned(),
        rest => rest.to_owned(),
    }
}
