//! Walls and calls that name the corners between which they run.

use super::super::pieces::Sort;
use super::measure::length_at;
use super::{Answer, Typed};

/// `corner 2 to corner 3 east 40' 2"`, `2-3 east 40'`, `A to B N 12°30' E 120'`: the corners go into a comment.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    const POINT: [&str; 8] = ["corner", "cor", "pt", "point", "from", "side", "line", "leg"];
    const WAYS: [&str; 8] = ["north", "east", "south", "west", "n", "e", "s", "w"];
    let is_point = |at: usize| {
        typed.piece(at).is_some_and(|piece| {
            piece.is_number() && piece.text.len() <= 2 && !piece.text.contains('.')
                || piece.sort == Sort::Word
                    && piece.text.len() == 1
                    && piece.text.starts_with(|c: char| c.is_ascii_uppercase())
        })
    };
    let mut at = 0;
    while typed.says(at, &POINT) {
        at += 1;
    }
    if !is_point(at) {
        return None;
    }
    at += 1;
    let is_to = typed.says(at, &["to", "thru", "through"])
        || typed.piece(at).is_some_and(|mark| mark.is_mark("-–—>→"));
    if !is_to {
        return None;
    }
    while typed.says(at, &["to", "thru", "through", "corner", "cor", "pt", "point"])
        || typed.piece(at).is_some_and(|mark| mark.is_mark("-–—>→"))
    {
        at += 1;
    }
    if !is_point(at) {
        return None;
    }
    let end = at + 1;
    let mut first = end;
    while typed.piece(first).is_some_and(|mark| mark.is_mark(":,;=.-–"))
        || typed.says(first, &["is", "runs", "run"])
    {
        first += 1;
    }
    let is_way = typed.says(first, &WAYS);
    let rest = typed.rest(first);
    let comment = super::remark(typed.text(0, end));
    let is_angle = rest.contains(['°', '\'']) && typed.says(first, &["n", "s", "north", "south"]);
    if is_way
        && length_at(&typed.pieces, first + 1).is_some_and(|one| one.end == typed.pieces.len())
    {
        return Some(Answer::line(
            format!("{} {}  # {comment}", typed.lower(first), typed.rest(first + 1)),
            "a side begins with its way; the corners between which it runs go into a comment",
        ));
    }
    let toward = typed.find(first + 1, &["e", "w", "east", "west"]).filter(|_| is_angle)?;
    let length = length_at(&typed.pieces, toward + 1)?;
    (length.end == typed.pieces.len()).then(|| {
        Answer::line(
            format!("bearing {rest}  # {comment}"),
            "a call begins with `bearing`; the corners between which it runs go into a comment",
        )
    })
}
