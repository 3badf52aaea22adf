//! What is outside a house and has no line, and lines across it.

use super::measure::{area_from, length_at, lengths};
use super::{Answer, Rule, Typed, first_of, is_text, whereabouts};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[steps, across];
    first_of(rules, typed)
}

/// `front steps 4 x 5`, `steps 4 x 6 on the front`: steps outside a house have no line.
fn steps(typed: &Typed<'_>) -> Option<Answer> {
    let outside = [
        "front", "rear", "back", "side", "entry", "outside", "exterior", "outdoor", "concrete",
        "porch", "deck",
    ];
    let says = typed.says(0, &outside) && typed.says(1, &["steps", "stairs", "stair", "staircase"]);
    let stand = typed.says(0, &["steps", "step"])
        && typed.find(1, &outside).is_some()
        && typed.find(1, &["inside", "hall", "up", "basement"]).is_none()
        && super::size_in(typed.line).is_some();
    // `wheelchair ramp 4x20 front`
    let ramp =
        typed.find(0, &["ramp", "walkway", "sidewalk", "stepping"]).is_some_and(|at| at <= 1)
            && !crate::sketch::nouns::is_known(&typed.lower(0))
            && !super::super::begins_as_side(&typed.attempt.beside.after)
            && super::size_in(typed.line).is_some();
    let is_named = typed.pieces.iter().any(|piece| is_text(Some(piece)));
    ((says || stand || ramp) && !is_named && area_from(&typed.pieces, 0).is_none()).then(|| {
        Answer::line(
            format!("# {}", typed.line),
            match ramp {
                true => "a ramp or a walk outside a house is no part of its area, and has no line; a comment begins with `#`",
                false => "steps outside a house are no part of its area, and have no line; a comment begins with `#`",
            },
        )
    })
}

/// `diagonal from SW corner to NE corner 54' 3"`: a line measured across the house checks the walk.
fn across(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["diagonal", "diag", "diagonals", "tie", "cross", "check"]);
    let corners = (1..typed.pieces.len())
        .filter(|&at| whereabouts::compass_corner(typed, at).is_some())
        .count();
    let joined = typed.find(1, &["to"]).is_some();
    let found = lengths(&typed.pieces, 1);
    let [(_, one)] = &found[..] else { return None };
    let numbered =
        typed.find(1, &["corner"]).is_some_and(|at| length_at(&typed.pieces, at + 1).is_some());
    (begins && corners >= 2 && joined && one.has_unit && !numbered).then(|| {
        Answer::say(
            "a line measured from corner to corner is a `tie`, and corners have numbers",
            format!(
                "write `tie corner 1 to corner 3 {}` with the numbers of its two corners: where wall 1 begins is corner 1, where wall 2 begins corner 2",
                one.text
            ),
        )
    })
}
