//! Answers to lines that say nothing about the outline of the house.

use super::super::pieces::Piece;
use super::measure::{area_from, date_from, length_at, money_from};
use super::{Answer, Typed};

/// `3 bed 2 bath`, `not reached`: a comment, or a wall whose direction is missing.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    not_reached(typed).or_else(|| rooms(typed))
}

/// `note the gas meter is on this wall` below a wall: a line of its own.
pub(super) fn note_alone(typed: &Typed<'_>) -> Option<Answer> {
    let is_below_a_wall = super::super::begins_as_side(&typed.attempt.beside.before);
    let is_plain = typed.piece(1).is_some_and(|piece| piece.sort == super::Sort::Word);
    (typed.says(0, &["note"]) && is_plain && is_below_a_wall).then(|| {
        Answer::line(
            format!("# {}", typed.line),
            "a `note` stands at the end of its wall's line, between two `\"`; on a line of its own a remark begins with `#`",
        )
    })
}

/// `not reached`, `could not measure`: asks which wall is meant.
fn not_reached(typed: &Typed<'_>) -> Option<Answer> {
    let says = [
        "not",
        "cannot",
        "can't",
        "couldn't",
        "could",
        "unreachable",
        "inaccessible",
        "blocked",
        "unmeasured",
    ];
    let reached = [
        "reached",
        "reach",
        "measured",
        "measure",
        "taped",
        "accessible",
        "reachable",
        "tape",
        "access",
    ];
    let is_alone = typed.says(0, &["unreachable", "inaccessible", "blocked", "unmeasured"]);
    let fits = typed.says(0, &says) && (is_alone || typed.find(1, &reached).is_some());
    let counts =
        typed.pieces.iter().any(|piece| piece.is_number() || piece.sort == super::Sort::Text);
    (fits && !counts && typed.pieces.len() <= 6).then(|| {
        Answer::say(
            "a wall that was not measured still has its direction",
            "write the way that it runs and `by closing`: `west by closing`; its length follows from the other walls",
        )
    })
}

/// `3 bed 2 bath`, `4 bedrooms 2.5 baths`: makes numbers that measure nothing a comment.
fn rooms(typed: &Typed<'_>) -> Option<Answer> {
    if typed.attempt.knows_first {
        return None;
    }
    let rooms = [
        "bed",
        "beds",
        "bd",
        "br",
        "bdrm",
        "bedroom",
        "bedrooms",
        "bath",
        "baths",
        "ba",
        "bathroom",
        "bathrooms",
        "story",
        "stories",
        "storey",
        "storeys",
        "car",
        "cars",
        "room",
        "rooms",
        "fireplace",
        "fireplaces",
        "units",
        "unit",
        "windows",
        "window",
        "doors",
        "people",
        "pages",
    ];
    let first = typed.piece(0)?;
    let named = (0..typed.pieces.len().min(3)).any(|at| {
        typed.says(at, &rooms)
            && at > 0
            && typed.pieces[at - 1].is_number()
            && !typed.piece(at).is_some_and(|piece| piece.is_word(&["car", "story"]))
    });
    let measures = (0..typed.pieces.len())
        .any(|at| length_at(&typed.pieces, at).is_some_and(|measure| measure.has_unit));
    let says = measures
        || area_from(&typed.pieces, 0).is_some()
        || money_from(&typed.pieces, 0).is_some()
        || date_from(&typed.pieces, 0).is_some();
    let is_plain = |piece: &Piece| piece.sort != super::Sort::Text;
    (first.is_number() && named && !says && typed.pieces.iter().all(is_plain)).then(|| {
        Answer::line(
            format!("# {}", typed.line),
            "this line says nothing about the outline of the house; a comment begins with `#`",
        )
    })
}
