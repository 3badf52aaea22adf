//! Words of a deed that stand for a call, or for calls that are no part of the lot.

use super::super::pieces::{Piece, Sort};
use super::{Answer, Rule, Typed, first_of};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[call_without_figures, commencing];
    first_of(rules, typed).filter(|_| typed.is_in_lot())
}

/// `thence to the iron pin`, `thence along the creek`: a call that lacks its bearing and its length. As a comment it would
/// be missing from the walk.
fn call_without_figures(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["thence", "then", "continuing"]);
    let plain =
        typed.pieces.iter().all(|piece| piece.sort == Sort::Word || piece.is_mark(",;.:'’-"));
    if !begins || !plain || typed.pieces.len() < 3 || typed.pieces.iter().any(Piece::is_number) {
        return None;
    }
    // What leads back to the beginning is `close`, which another rule says.
    let lower = typed.line.to_lowercase();
    if ["beginning", "begun", "p.o.b", "p. o. b"].iter().any(|word| lower.contains(word))
        || typed.find(1, &["start", "pob", "back", "home", "origin"]).is_some()
    {
        return None;
    }
    Some(Answer::say(
        "this call has neither a bearing nor a length: as a comment it would be missing",
        "if it leads back to where the lot begins, write `close`; if not, find its bearing and its length in the deed or on the plat, and write it as the others, `bearing N 45° 30' E 120'`",
    ))
}

/// `commencing at the NE corner of lot 4`: where the description begins, which may be outside of the lot.
fn commencing(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["commencing", "commence", "commences"]);
    let has_call =
        typed.pieces.iter().any(|piece| piece.is_number() && typed.line.contains(['°', '\'']));
    (begins && !has_call).then(|| {
        Answer::line(
            format!("# {}", typed.line.trim()),
            "a description may commence outside of the lot: calls from there to the point of beginning are no part of it and are left out; this line is a comment",
        )
    })
}
