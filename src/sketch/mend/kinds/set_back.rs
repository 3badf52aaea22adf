//! A wall that is said to be set back: the set-back is a wall of its own.

use super::super::compass::{along, by_compass, is_upright, way_and_back};
use super::faces::STANDS;
use super::measure::length_at;
use super::{Answer, Typed};

/// `North wall 5.45 (set back 3.70)`: two walls.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let (way, _) = way_and_back(&typed.lower(0))?;
    let stands = typed.says(1, &STANDS);
    let wall = length_at(&typed.pieces, 1 + usize::from(stands))?;
    let mut at = wall.end;
    while typed.piece(at).is_some_and(|mark| mark.is_mark("(,;-–")) || typed.says(at, &["is"]) {
        at += 1;
    }
    let says = typed.says(at, &["set", "stepped"]) && typed.says(at + 1, &["back", "in"])
        || typed.says(at, &["recessed", "setback", "set-back"]);
    let at = at + if typed.says(at, &["set", "stepped"]) { 2 } else { 1 };
    let at = at + usize::from(typed.says(at, &["by"]));
    let back = length_at(&typed.pieces, at).filter(|_| says)?;
    if !(back.end..typed.pieces.len()).all(|at| typed.pieces[at].is_mark(").,")) {
        return None;
    }
    let way = by_compass(way, typed.attempt.beside.front);
    let runs = if stands { along(way).to_vec() } else { vec![way] };
    let across = match is_upright(runs.first()?) {
        true => ["east", "west"],
        false => ["north", "south"],
    };
    let walls: Vec<String> = runs.iter().map(|way| format!("`{way} {}`", wall.text)).collect();
    Some(Answer::say(
        "a wall that is set back has another wall before it, which says how far",
        format!(
            "write two lines, each with the way that you walked: the set-back, `{} {}` or `{} {}`, and then {}",
            across[0],
            back.text,
            across[1],
            back.text,
            walls.join(" or ")
        ),
    ))
}
