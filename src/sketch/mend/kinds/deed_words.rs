//! Words of a deed that stand for a call, or for calls that are no part of the lot.

use super::super::pieces::{Piece, Sort};
use super::{Answer, Rule, Typed, first_of};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[call_without_figures, back_by_a_length, commencing];
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

/// `then 75 ft along the road to the point of beginning`: the way back, by a length alone.
fn back_by_a_length(typed: &Typed<'_>) -> Option<Answer> {
    const ENDS: [&str; 9] = [
        "point of beginning",
        "place of beginning",
        "the beginning",
        "p.o.b.",
        "p.o.b",
        "pob",
        "where we started",
        "where it began",
        "place of start",
    ];
    let found = super::measure::lengths(&typed.pieces, 0);
    let [(first, one)] = &found[..] else { return None };
    let lower = typed.line.trim().to_lowercase();
    let lower = lower.trim_end_matches(['.', ';', ',']);
    let leads_back = ENDS.iter().any(|end| lower.ends_with(end.trim_end_matches('.')));
    let begins = typed.says(0, &["thence", "then", "continuing", "and", "along", "back"]);
    let words = (0..typed.pieces.len()).all(|at| {
        (*first..one.end).contains(&at)
            || typed.pieces[at].sort == Sort::Word
            || typed.pieces[at].is_mark(",;.’'-")
    });
    // `thence 75 ft to the POB` is known.
    let says_more = typed
        .find(
            0,
            &["along", "by", "following", "with", "northerly", "southerly", "easterly", "westerly"],
        )
        .is_some();
    if !begins || !leads_back || !words || !says_more || !one.has_unit {
        return None;
    }
    if super::super::begins_as_wall(&typed.attempt.beside.after)
        || typed.attempt.beside.before.starts_with("lot ")
    {
        return Some(Answer::say(
            "the call that leads back to where the lot begins is its last one, and calls stand before it",
            format!(
                "type the calls in the order of the deed, each as `bearing N 45° 30' E 120'`, and below the last of them `close` instead of this line: `{}` is to compare with the length that follows",
                one.text
            ),
        ));
    }
    Some(Answer::line(
        format!("close  # {}", super::plainly(typed.line)),
        format!(
            "this call has a length and no bearing; `close` is the straight call back to where the lot begins, and its length follows from the others: compare it with {}",
            one.text
        ),
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
