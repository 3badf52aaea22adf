//! Walls whose way or form is said in words around them: `went west 40'`, `jog west 3' then north 2'`, `west 8' north 3'
//! diagonal`.

use super::measure::{length_at, lengths};
use super::walls::{STREET, WAYS};
use super::{Answer, Rule, Typed, first_of, quoted};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    typed.attempt.space.as_ref()?;
    let rules: &[Rule] = &[went, several_of_a_jog, slanted_last, curve_after_its_way, shared_with];
    first_of(rules, typed)
}

/// Words before a way that only say that somebody walks.
const WALKING: [&str; 17] = [
    "went", "go", "goes", "going", "walk", "walked", "head", "headed", "heading", "run", "runs",
    "ran", "then", "next", "continue", "proceed", "came",
];

/// `went west 40' 7" to the corner`, `then left 40 ft`: a wall after a word for walking.
fn went(typed: &Typed<'_>) -> Option<Answer> {
    let at = (0..3).take_while(|&at| typed.says(at, &WALKING)).count();
    let at = at + usize::from(at > 0 && typed.says(at, &["due", "straight", "to"]));
    let knows_street = typed.attempt.beside.front.is_some();
    let is_street = typed.says(at, &["left", "right"]) || knows_street && typed.says(at, &STREET);
    let is_way = typed.says(at, &WAYS) || is_street;
    let wall = length_at(&typed.pieces, at + 1).filter(|wall| at > 0 && is_way && wall.has_unit)?;
    let is_only = lengths(&typed.pieces, wall.end).is_empty();
    let cause = match is_street {
        true => {
            "a side begins with the way that it runs: `back`, `right`, `front` or `left`, as seen from the street"
        }
        false => "a side begins with the way that it runs",
    };
    is_only.then(|| Answer::line(typed.rest(at), cause))
}

/// `jog west 3' then north 2'`: two walls or more after a word for what they are together.
fn several_of_a_jog(typed: &Typed<'_>) -> Option<Answer> {
    let words =
        ["jog", "jogs", "step", "steps", "bump", "bumps", "jut", "notch", "offset", "return"];
    let at = 1 + usize::from(typed.says(1, &["out", "in", "back"]));
    let ways = (at..typed.pieces.len())
        .filter(|&at| typed.says(at, &WAYS) && length_at(&typed.pieces, at + 1).is_some())
        .count();
    let begins = typed.says(0, &words) && typed.says(at, &WAYS);
    (begins && ways >= 2).then(|| {
        Answer::line(typed.rest(at), "each wall of a jog is a side: its direction, then its length")
    })
}

/// `west 8' north 3' diagonal`: what the wall is comes first.
fn slanted_last(typed: &Typed<'_>) -> Option<Answer> {
    let across = |at: usize| typed.says(at, &["east", "west", "e", "w"]);
    let first = length_at(&typed.pieces, 1).filter(|_| typed.says(0, &WAYS))?;
    let second =
        length_at(&typed.pieces, first.end + 1).filter(|_| typed.says(first.end, &WAYS))?;
    let slanted = ["diagonal", "diagonally", "diag", "slanted", "angled", "slant", "angle"];
    let mut end = second.end;
    end += usize::from(typed.piece(end).is_some_and(|mark| mark.is_mark(",;:-–(")));
    if across(0) == across(first.end) || !typed.says(end, &slanted) {
        return None;
    }
    end += 1 + usize::from(typed.says(end + 1, &["wall", "side"]));
    end += usize::from(typed.piece(end).is_some_and(|mark| mark.is_mark(")")));
    (end == typed.pieces.len()).then(|| {
        Answer::line(
            format!("diagonal {}", typed.text(0, second.end)),
            "a slanted wall begins with `diagonal`, then how far it runs each way",
        )
    })
}

/// `west curved 40' rise 3' outward`: what the wall is comes before its way.
fn curve_after_its_way(typed: &Typed<'_>) -> Option<Answer> {
    let is_curve =
        typed.says(0, &WAYS) && typed.says(1, &["curved", "curve", "arc", "bowed", "curving"]);
    let chord = length_at(&typed.pieces, 2).filter(|_| is_curve)?;
    let says_how = ["rise", "rises", "radius", "bulge", "bulges", "out", "outward", "deep"];
    typed.find(chord.end, &says_how)?;
    Some(Answer::line(
        format!("arc {} {}", typed.text(0, 1), typed.rest(2)),
        "a curved wall begins with `arc`, then the way and the length of its chord",
    ))
}

/// `west 40' common wall with unit 12B`: whose the other side of a common wall is goes in a note.
fn shared_with(typed: &Typed<'_>) -> Option<Answer> {
    let length = length_at(&typed.pieces, 1).filter(|_| typed.says(0, &WAYS))?;
    let mut at = length.end;
    at += usize::from(typed.piece(at).is_some_and(|mark| mark.is_mark(",;:-–(")));
    if !typed.says(at, &["common", "shared", "party"]) {
        return None;
    }
    at += 1 + usize::from(typed.says(at + 1, &["wall"]));
    if !typed.says(at, &["with", "to"])
        || typed.find(at, &["common"]).is_some()
        || !lengths(&typed.pieces, at).iter().all(|(_, one)| !one.has_unit)
    {
        return None;
    }
    let with = typed.rest(at).trim_end_matches([')', '.', ',']);
    Some(Answer::line(
        format!("{} common note {}", typed.text(0, length.end), quoted(with)),
        "anything else about a wall goes in a note",
    ))
}
