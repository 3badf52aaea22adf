//! A wall that is said to be set back, or to stand out, or to turn into a jog: what stands back or out has walls of its
//! own.

use super::super::compass::{along, by_compass, is_upright, way_and_back};
use super::faces::STANDS;
use super::measure::length_at;
use super::{Answer, Typed};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    set_back(typed).or_else(|| stands_out(typed)).or_else(|| then_a_jog(typed))
}

/// `west 8' bumps out 2'`: three walls.
fn stands_out(typed: &Typed<'_>) -> Option<Answer> {
    const VERBS: [&str; 9] =
        ["bump", "bumps", "bumped", "sticks", "juts", "stands", "projects", "pops", "popped"];
    let (wall, out) = wall_and_more(typed, |at| {
        let two = typed.says(at, &VERBS) && typed.says(at + 1, &["out"]);
        let one = typed.says(at, &["bumpout", "bump-out", "bumped-out", "popout", "pop-out"]);
        if two { Some(2) } else { one.then_some(1) }
    })?;
    let [way, across] = ways(typed)?;
    let way = way.first()?;
    Some(Answer::say(
        "what stands out of a wall is three walls: out, along and back",
        format!(
            "if all of `{way} {0}` stands out, write three lines, each with the way that you walked: `{1} {2}`, `{way} {0}`, `{3} {2}`, or with `{3}` first and `{1}` last; if only a part of it does, write the length before that part, the three walls, and the length after it; what has no floor is left out of the walk",
            wall, across[0], out, across[1]
        ),
    ))
}

/// `east 24' 3" then jog in 6'`: two walls.
fn then_a_jog(typed: &Typed<'_>) -> Option<Answer> {
    let (wall, jog) = wall_and_more(typed, |at| {
        let then = usize::from(typed.says(at, &["then", "and"]));
        let jog = usize::from(typed.says(at + then, &["jog", "jogs", "step", "steps"]));
        let side = usize::from(typed.says(at + then + jog, &["in", "out"]));
        (then + jog > 0 && jog + side > 0).then_some(then + jog + side)
    })?;
    let [way, across] = ways(typed)?;
    let [way] = way[..] else { return None };
    Some(Answer::Lines(
        across.iter().map(|across| format!("{way} {wall}\n{across} {jog}")).collect(),
        format!(
            "each wall of a jog is a side: its direction, then its length; which way did you turn, {} or {}?",
            across[0], across[1]
        ),
    ))
}

/// The length of a wall, and the length after what is said of it: `said` is how many pieces the words for it are.
fn wall_and_more(
    typed: &Typed<'_>,
    said: impl Fn(usize) -> Option<usize>,
) -> Option<(String, String)> {
    way_and_back(&typed.lower(0))?;
    let wall = length_at(&typed.pieces, 1).filter(|wall| wall.has_unit)?;
    let mut at = wall.end;
    while typed.piece(at).is_some_and(|mark| mark.is_mark("(,;-–")) {
        at += 1;
    }
    let at = at + said(at)?;
    let more = length_at(&typed.pieces, at).filter(|more| more.has_unit)?;
    let ends = (more.end..typed.pieces.len()).all(|at| typed.pieces[at].is_mark(").,"));
    ends.then_some((wall.text, more.text))
}

/// The way of the wall, as typed, and the two ways across it.
fn ways(typed: &Typed<'_>) -> Option<[Vec<&'static str>; 2]> {
    let (way, _) = way_and_back(&typed.lower(0))?;
    let across = match is_upright(by_compass(way, typed.attempt.beside.front)) {
        true => ["east", "west"],
        false => ["north", "south"],
    };
    Some([vec![way], across.to_vec()])
}

/// `North wall 5.45 (set back 3.70)`: two walls.
fn set_back(typed: &Typed<'_>) -> Option<Answer> {
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
