//! A corner that is cut off, in other words than `diagonal`.

use super::super::compass::{is_upright, slant, way_and_back};
use super::measure::length_at;
use super::{Answer, Typed, described};

/// `SW 2' in 2' down`, `NE 3' over and 3' up`: a slanted wall by how far it runs each way.
pub(super) fn over_and_up(typed: &Typed<'_>) -> Option<Answer> {
    const BETWEEN: [&str; 15] = [
        "in", "out", "over", "up", "down", "across", "back", "forward", "and", "by", "x", "then",
        "left", "right", "along",
    ];
    const UPRIGHT: [&str; 4] = ["up", "down", "north", "south"];
    const LEVEL: [&str; 6] = ["over", "across", "left", "right", "east", "west"];
    let (north, east) = slant(&typed.lower(0))?;
    let first = 1 + usize::from(typed.says(1, &["bay", "slant", "wall", "side", "angle"]));
    let first = first + usize::from(typed.piece(first).is_some_and(|mark| mark.is_mark(",:-")));
    let one = length_at(&typed.pieces, first).filter(|one| one.has_unit)?;
    let is_between =
        |at: usize| typed.says(at, &BETWEEN) || typed.piece(at).is_some_and(|p| p.is_mark(",&+/"));
    let next = (one.end..typed.pieces.len()).find(|&at| !is_between(at))?;
    let two = length_at(&typed.pieces, next).filter(|two| two.has_unit && next > one.end)?;
    if !(two.end..typed.pieces.len()).all(is_between) {
        return None;
    }
    let says = |from: usize, to: usize, words: &[&str]| (from..to).any(|at| typed.says(at, words));
    let ends = typed.pieces.len();
    let first_is_upright = says(one.end, next, &UPRIGHT)
        || says(two.end, ends, &LEVEL) && !says(two.end, ends, &UPRIGHT);
    let first_is_level = says(one.end, next, &LEVEL)
        || says(two.end, ends, &UPRIGHT) && !says(two.end, ends, &LEVEL);
    let (a, b) = described::in_one_unit(&one, &two);
    let line = |upright: &str, level: &str| format!("diagonal {north} {upright} {east} {level}");
    let lines = match (first_is_upright, first_is_level) {
        _ if a == b => vec![line(&a, &b)],
        (true, false) => vec![line(&a, &b)],
        (false, true) => vec![line(&b, &a)],
        _ => vec![line(&a, &b), line(&b, &a)],
    };
    Some(Answer::Lines(
        lines,
        "a slanted wall of which is known how far it runs each way is a `diagonal`".to_owned(),
    ))
}

/// `SW: 2' x 2'`, `southwest angle 2' by 2'`, `SE corner cut 1.5 x 1.5`, `corner clipped 3' by 3'`: how far a slanted wall
/// runs each way. Which ways these are, the walls before and after it say.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    const SAYS: [&str; 15] = [
        "corner", "cut", "clipped", "angle", "angled", "diagonal", "slant", "slanted", "off",
        "wall", "across", "the", "chamfer", "at", "diag",
    ];
    let corner = (0..typed.pieces.len()).find_map(|at| slant(&typed.lower(at)));
    let is_one = |at: usize| {
        typed.says(at, &SAYS)
            || slant(&typed.lower(at)).is_some()
            || typed.piece(at).is_some_and(|mark| mark.is_mark(":,-("))
    };
    let first = (0..typed.pieces.len()).find(|&at| !is_one(at)).filter(|first| *first > 0)?;
    let says_cut =
        (0..first).any(|at| typed.says(at, &["cut", "clipped", "chamfer", "angle", "angled"]));
    let one = length_at(&typed.pieces, first)?;
    let by = typed.says(one.end, &["x", "by"])
        || typed.piece(one.end).is_some_and(|mark| mark.is_mark("×*"));
    // `corner clipped 3' each way`
    let is_each = (typed.says(one.end, &["each", "both", "either"])
        && typed.says(one.end + 1, &["way", "ways", "side", "sides", "direction", "directions"]))
    .then(|| super::measure::Measure { end: one.end + 2, ..one.clone() });
    let two = match is_each {
        Some(two) => two,
        None => length_at(&typed.pieces, one.end + 1).filter(|_| by)?,
    };
    let is_all = (two.end..typed.pieces.len()).all(is_one);
    if !is_all || corner.is_none() && !says_cut {
        return None;
    }
    let way = |line: &str| {
        let word = super::cut(line).first()?.text.clone();
        Some(way_and_back(&word)?.0)
    };
    let beside = &typed.attempt.beside;
    let (before, after) = (way(&beside.before), way(&beside.after));
    let is_across = |one: &str, other: &str| is_upright(one) != is_upright(other);
    let heading = corner.map(|(north, east)| [north, east]);
    let ways = match (before, after) {
        (Some(before), Some(after)) if is_across(before, after) => [before, after],
        _ if !typed.says(1, &["corner"]) && heading.is_some() => heading?,
        (Some(before), None) if heading.is_some_and(|ways| ways.contains(&before)) => heading?,
        _ => {
            return Some(Answer::say(
                "a corner that is cut off is a wall of its own, `diagonal`, and how far it runs each way",
                "write `diagonal`, then the two ways in which your walk goes along it, each with its length, as `diagonal south 2' west 2'`",
            ));
        }
    };
    let (one, two) = described::in_one_unit(&one, &two);
    let line = |[first, second]: [&str; 2], one: &str, two: &str| {
        format!("diagonal {first} {one} {second} {two}")
    };
    let mut lines = vec![line(ways, &one, &two)];
    if one != two {
        lines.push(line(ways, &two, &one));
    }
    Some(Answer::Lines(
        lines,
        "a corner that is cut off is a slanted wall, `diagonal`, and how far it runs each way"
            .to_owned(),
    ))
}
