//! Walls that are told from one of their ends to the other: `front, left to right 37' 5"`, `right side, front to back
//! 30'`. The second end is the way that was walked.

use super::super::compass::{by_compass, is_upright, way_and_back};
use super::super::stands::from_end_to_end;
use super::faces::STANDS;
use super::{Answer, Typed, straight};

const CAUSE: &str = "a side begins with the way that it runs, which is toward the end of the wall that is named last";

/// Words around it that say nothing more.
const SMALL: [&str; 14] = [
    "from", "the", "wall", "side", "going", "walked", "along", "is", "measured", "of", "house",
    "taped", "it", "measures",
];

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    typed.attempt.space.as_ref()?;
    let ends = from_end_to_end(&typed.pieces)?;
    let (first, length) = (0..typed.pieces.len())
        .filter(|at| !(ends.first..ends.end).contains(at) && typed.pieces[*at].is_number())
        .find_map(|at| Some((at, straight::length_in(typed, &typed.pieces, at)?)))?;
    let is_length = |at: usize| (first..length.end).contains(&at);
    let is_end = |at: usize| (ends.first..ends.end).contains(&at);
    let is_side = |at: usize| at == 0 && way_and_back(&typed.lower(0)).is_some();
    let is_small = |at: usize| {
        typed.says(at, &SMALL) || typed.says(at, &STANDS) || typed.pieces[at].is_mark(",;:()=.-–")
    };
    let is_note = |at: usize| at >= length.end && typed.pieces[at].is_mark("#");
    if !(0..typed.pieces.len())
        .all(|at| is_length(at) || is_end(at) || is_side(at) || is_small(at) || is_note(at))
    {
        return None;
    }
    // `front 40' left to right` is none of `front`, and a wall on the north side does not run north.
    let side = way_and_back(&typed.lower(0)).filter(|_| !is_end(0)).map(|(way, _)| way);
    let front = typed.attempt.beside.front;
    let way = by_compass(ends.way, front);
    if straight::compass(way).is_none() {
        return Some(Answer::say(
            format!("`{}` says nothing until the file says which way the street is", ends.way),
            "add `front south`, for instance, at the top of the file, before the first `level`",
        ));
    }
    let on = side.map(|side| by_compass(side, front));
    if on.is_some_and(|on| is_upright(on) == is_upright(way)) {
        return None;
    }
    // In a walk as seen from the street a compass word would turn this one wall alone, unless the line names its side.
    let is_seen = side.is_none()
        && [&typed.attempt.beside.before, &typed.attempt.beside.after].into_iter().any(|line| {
            line.split(' ')
                .next()
                .and_then(way_and_back)
                .is_some_and(|(way, _)| straight::compass(way).is_none())
        });
    if is_seen {
        return Some(Answer::line(format!("{} {}", ends.way, length.text), CAUSE));
    }
    let line = |way: &str| format!("{way} {}", length.text);
    // Who stands behind the house has its left on the other hand. The wall before it shows at which end it begins.
    let is_behind = side == Some("back") && matches!(ends.way, "left" | "right");
    let (_, other) = way_and_back(way)?;
    let before = typed.attempt.beside.before.split([' ', ',', ':']).next().and_then(way_and_back);
    let begins = before.map(|(before, _)| by_compass(before, front));
    Some(match begins {
        _ if !is_behind => Answer::line(line(way), CAUSE),
        Some(begins) if begins == other => Answer::line(line(way), CAUSE),
        Some(begins) if begins == way => Answer::line(line(other), CAUSE),
        _ => Answer::Lines(
            vec![line(way), line(other)],
            format!(
                "a side begins with the way that it runs: `{}` as seen from the street is {way}, and as seen from behind the house {other}",
                ends.way
            ),
        ),
    })
}
