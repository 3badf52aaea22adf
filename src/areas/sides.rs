//! The side table: each side of a space from what was typed to what each rule makes of it.

use crate::areas::Areas;
use crate::geometry::outline::{Outline, Vector};
use crate::units::length::Length;

/// One side of a space on its way from the tape to both rules.
///
/// # Units
///
/// All lengths are exact; a curved side is given by its chord.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SideRow {
    /// `north`, `east`, `south`, `west`, `diagonal`, `bearing` or `arc`.
    pub direction: &'static str,
    /// As it stands in the file after its direction.
    pub typed: String,
    /// Closed, at the face that was measured.
    pub measured: Length,
    /// To the tenth of a foot (or the inch), outside; none where moving the walls left nothing of it.
    pub tenth_foot: Option<Length>,
    /// To the whole foot, outside.
    pub whole_foot: Option<Length>,
    /// On the record.
    pub recorded: Option<Length>,
    /// How it was obtained: `measured`, `closing`, `estimated`, `plan` or `record`.
    pub how: &'static str,
}

impl Areas {
    /// The side table of a space, by the space's place in [`House::spaces`](crate::House).
    pub(crate) fn side_rows(&self, space: usize) -> Vec<SideRow> {
        let (here, its) = (&self.house().spaces[space], &self.spaces[space]);
        let rounded = |outline: &Outline, side: usize| -> Option<Length> {
            let pieces = self.outside.spaces[space].walk.sides.iter().zip(outline.vectors());
            let own = pieces.filter(|(piece, _)| piece.source == Some(side));
            let lengths: Vec<Length> = own.map(|(_, vector)| chord(vector)).collect();
            (!lengths.is_empty()).then(|| lengths.into_iter().sum())
        };
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
}

fn chord(vector: &Vector) -> Length {
    Vector { rise: 0, ..*vector }.length()
}

/// What stands after the word that begins a side.
fn after_direction(typed: &str) -> String {
    match typed.trim_start_matches(char::is_alphabetic).trim_start() {
        "" => typed.to_owned(),
        rest => rest.to_owned(),
    }
}
