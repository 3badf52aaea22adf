//! Walls that were taped clear, from the inner face of one shared wall to that of the other: `17' clear between party
//! walls`. In a note half of each shared wall would be lost.

use super::super::pieces::Sort;
use super::measure::{Measure, length_at, written};
use super::straight;
use super::walls::is_way;
use super::{Answer, Typed};
use crate::geometry::compass::Axis;
use crate::units::length::Length;

const CAUSE: &str = "a width taped clear, between the inner faces of two walls, leaves those walls out: of a shared wall half counts, of any other wall all of it";

/// `north 17' clear`, `east 17' 3" between party walls`, `east 17' inside`.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    of_a_wall(typed).or_else(|| of_all(typed))
}

/// The words that say so after a length, from this piece on; the thickness among them, if it is said.
fn words(typed: &Typed<'_>, from: usize) -> Option<Option<Measure>> {
    let small = [
        "clear", "clr", "net", "in", "the", "between", "party", "common", "shared", "walls",
        "wall", "to", "inside", "interior", "inner", "face", "faces", "width", "wide", "both",
        "sides", "each", "side", "of", "taped", "measured", "from", "at", "them", "thick",
        "drywall", "plaster", "brick", "block", "only", "is", "are", "ends", "end", "on", "a",
        "opening",
    ];
    let (mut thick, mut at) = (None, from);
    while at < typed.pieces.len() {
        if let Some(one) = length_at(&typed.pieces, at).filter(|one| one.has_unit) {
            at = one.end;
            if thick.replace(one).is_some() {
                return None;
            }
            continue;
        }
        if !typed.says(at, &small) && !typed.pieces[at].is_mark(",;:()-–.[]") {
            return None;
        }
        at += 1;
    }
    let finds = |words: &[&str]| typed.find(from, words).is_some();
    let between = typed.find(from, &["between"]);
    let is_between = between.is_some_and(|at| typed.find(at, &["walls", "wall", "them"]).is_some());
    let is_inside = typed.says(from, &["inside", "interior"]);
    let is_clear = finds(&["clear", "clr", "net"])
        || is_between
        || is_inside && finds(&["party", "common", "shared"])
        || is_inside && finds(&["to"]) && typed.pieces.len() >= from + 3;
    is_clear.then_some(thick)
}

/// A wall that was taped clear.
fn of_a_wall(typed: &Typed<'_>) -> Option<Answer> {
    if !is_way(typed, 0) || typed.is_in_lot() {
        return None;
    }
    let one = straight::length_in(typed, &typed.pieces, 1)?;
    let thick = words(typed, one.end)?;
    Some(Answer::say(CAUSE, advice(typed, &one, &typed.lower(0), thick.as_ref())))
}

/// What to type: all walls taped inside and the thickness, or the sum.
fn advice(typed: &Typed<'_>, one: &Measure, way: &str, thick: Option<&Measure>) -> String {
    let across = match straight::compass(super::super::compass::by_compass(
        super::super::compass::way_and_back(way).map_or("north", |(way, _)| way),
        typed.attempt.beside.front,
    ))
    .map(|way| way.axis())
    {
        Some(Axis::East) => "north",
        _ => "east",
    };
    let wall = &one.text;
    let (example, long) = if one.is_metric() { ("20 cm", "12.8 m") } else { ("8\"", "42'") };
    match thick {
        Some(thick) => {
            let sum = written(one.length + thick.length, one);
            format!(
                "if all walls of this space were taped inside, it is `{way} {wall}`, with `measured to inside` at the end of the line of the space, and each shared wall ends with its thickness, as `{across} {long} common wall {}`; if the other walls were taped outside, add half of each shared wall to this one, `{way} {sum}`, and each shared wall ends with `common`",
                thick.text
            )
        }
        None => format!(
            "measure how thick those walls are. If all walls of this space were taped inside, it is `{way} {wall}`, with `measured to inside` at the end of the line of the space, and each shared wall ends with its thickness, as `{across} {long} common wall {example}`; if the other walls were taped outside, add half of each shared wall to this one, or all of a wall that is not shared, and type the sum: `{way} {}` between two shared walls of {example}; each shared wall ends with `common`",
            written(one.length + example.parse().unwrap_or(Length::ZERO), one)
        ),
    }
}

/// `party wall each side, 1 ft thick, 17'0" between them clear`: the same on a line of its own.
fn of_all(typed: &Typed<'_>) -> Option<Answer> {
    let is_level = super::names_a_level(typed.line);
    let begins = is_level
        || typed.says(0, &["party", "common", "shared", "clear", "inside"])
        || length_at(&typed.pieces, 0).is_some_and(|one| one.has_unit);
    let is_shared = typed.find(0, &["party", "common", "shared"]).is_some();
    let is_clear = typed.find(0, &["clear", "clr", "between"]).is_some();
    let has_text = typed.pieces.iter().any(|one| one.sort == Sort::Text);
    if !begins || !is_shared || !is_clear || has_text {
        return None;
    }
    let mut found = Vec::new();
    let mut at = 0;
    while at < typed.pieces.len() {
        // `1st floor`
        let is_ordinal = typed.says(at + 1, &["st", "nd", "rd", "th"]);
        match straight::length_in(typed, &typed.pieces, at).filter(|_| !is_ordinal) {
            Some(one) => {
                at = one.end;
                found.push(one);
            }
            None => at += 1,
        }
    }
    // What is wider than three feet is no wall. Of two such lengths, the one that the words follow.
    let is_wall = |one: &&Measure| one.length.nm() <= 3 * Length::FOOT.nm();
    let (thin, wide): (Vec<&Measure>, Vec<&Measure>) = found.iter().partition(|one| is_wall(one));
    let words = ["clear", "clr", "between", "inside", "wide"];
    let wide = match wide[..] {
        [only] => only,
        _ => *wide.iter().find(|one| typed.says(one.end, &words))?,
    };
    let thick = match thin[..] {
        [] => None,
        [thick] => Some(thick),
        _ => return None,
    };
    let front = typed.attempt.beside.front;
    let way = if front.is_none_or(|front| front.axis() == Axis::North) { "east" } else { "north" };
    let opens = match is_level {
        true => {
            "write `level` and its name here, its space on the next line and the walls of that below it, each with its way and its length"
        }
        false => "leave this line out",
    };
    Some(Answer::say(
        CAUSE,
        format!(
            "{opens}; the wall along that width is the one to change, here taken as {way}: {}",
            advice(typed, wide, way, thick)
        ),
    ))
}
