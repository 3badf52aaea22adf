//! Rules that rewrite words, names and word order into what can be read.

mod bearings;
mod comments;
mod figures;
mod names;
mod order;
mod phrases;
mod sides;
mod sizes;

use super::change::{Attempt, Edit};
use super::pieces::Piece;
use super::slips;

pub(super) use comments::last_resorts;

pub(super) use order::cells;

const DIRECTIONS: [&str; 12] =
    ["north", "east", "south", "west", "n", "e", "s", "w", "back", "right", "front", "left"];

/// The changes of words and word order that might help where reading stopped.
pub(super) fn edits(line: &str, pieces: &[Piece], attempt: &Attempt) -> Vec<Edit> {
    // The first piece that begins there or after it.
    let here = pieces.iter().position(|piece| piece.at + piece.text.len() > attempt.at.start);
    let here = here.unwrap_or(pieces.len());
    let mut edits = Vec::new();
    edits.extend(slips::edits(line, pieces, attempt));
    edits.extend(order::cells(line));
    edits.extend(sides::roughly(pieces));
    edits.extend(sides::not_measured(pieces));
    edits.extend(names::one_mark_texts(line, pieces));
    edits.extend(order::list_marker(pieces, attempt));
    edits.extend(phrases::phrases(line, pieces, here, attempt));
    edits.extend(phrases::without_mark(pieces, here));
    edits.extend(order::order(pieces, here, attempt));
    edits.extend(bearings::bearings(pieces));
    edits.extend(bearings::beyond_quarter(pieces));
    edits.extend(sides::bare_lengths(pieces));
    edits.extend(bearings::across(pieces, attempt));
    edits.extend(figures::figures_and_heads(pieces, here));
    edits.extend(bearings::slanted(pieces));
    edits.extend(order::several(pieces, here));
    edits.extend(phrases::wanted_words(pieces, here, attempt));
    edits.extend(names::names(line, pieces, here, attempt));
    edits.extend(figures::units_of_areas(pieces, here, attempt));
    edits.extend(figures::rates(pieces));
    edits.extend(sizes::sizes(pieces));
    edits.extend(sizes::walls(pieces));
    edits
}
