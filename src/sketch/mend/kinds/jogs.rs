//! Walls with a jog in the middle of the line, and jogs that do not say which way they run.

use super::super::compass::{by_compass, is_upright, way_and_back};
use super::measure::{Measure, length_at};
use super::offhand::runs_upright;
use super::shapes::whole_way;
use super::{Answer, Typed, straight};

/// Words between the walls of a jog that say nothing more.
const BETWEEN: [&str; 20] = [
    "jog", "jogs", "jogged", "step", "steps", "then", "and", "out", "in", "back", "turn", "turns",
    "plus", "over", "again", "another", "to", "the", "goes", "go",
];

/// `E: 20' + jog 4' N + 22'6"`, `west 20', jog out 4', west 20'`: three walls on one line.
pub(super) fn in_a_wall(typed: &Typed<'_>) -> Option<Answer> {
    let way = compass_way(typed, 0)?;
    let first = length_at(&typed.pieces, after_marks(typed, 1))?;
    let at = between(typed, first.end);
    let says_jog =
        (first.end..at).any(|at| typed.says(at, &["jog", "jogs", "jogged", "step", "steps"]));
    let (across, second, end) = jog_at(typed, at)?;
    let at = between(typed, end);
    let (on, at) = match compass_way(typed, at) {
        Some(way) => (way, after_marks(typed, at + 1)),
        None => (way, at),
    };
    let third = length_at(&typed.pieces, at)?;
    let fits = says_jog
        && third.end == typed.pieces.len()
        && at > end
        && is_upright(way) == is_upright(on)
        && across.is_none_or(|across| is_upright(across) != is_upright(way));
    if !fits {
        return None;
    }
    let walls = |across: &str| {
        format!("{way} {}\n{across} {}\n{on} {}", first.text, second.text, third.text)
    };
    Some(match across {
        Some(across) => Answer::line(
            walls(across),
            "each wall of a jog is a side: its direction, then its length",
        ),
        None => {
            let [one, two] = across_of(is_upright(way));
            Answer::Lines(
                vec![walls(one), walls(two)],
                format!(
                    "each wall of a jog is a side: its direction, then its length; which way did you turn, {one} or {two}?"
                ),
            )
        }
    })
}

/// The two ways of a wall between walls that run as those beside it.
pub(super) fn ways_across(typed: &Typed<'_>) -> Option<[&'static str; 2]> {
    Some(across_of(!runs_upright(typed)?))
}

/// `jog back 2' 2"`, `step toward the street 3'` beside a wall at the front or the back of the house: the way that it runs.
/// Behind the house `back` may be said from there as well.
pub(super) fn from_the_street(typed: &Typed<'_>) -> Option<Vec<&'static str>> {
    let front = typed.attempt.beside.front?;
    let forward = typed.find(1, &["forward", "forwards", "street", "road"]).is_some();
    let back = typed.find(1, &["back", "backward", "backwards", "rear"]).is_some();
    // `back out`, `back in`: on from there.
    let is_other = typed.find(1, &["in", "out", "again", "inward", "outward"]).is_some();
    if forward == back || is_other {
        return None;
    }
    let beside = &typed.attempt.beside;
    let side_of = |line: &str| {
        let mut words = line.split([' ', ',', ':']).take(3).map(str::to_lowercase);
        words.find_map(|word| {
            let way = way_and_back(&word)?.0;
            Some((way, is_upright(by_compass(way, Some(front)))))
        })
    };
    let across = is_upright(front.word());
    let (mut on_front, mut on_back) = (false, false);
    for line in [&beside.before, &beside.after] {
        match side_of(line) {
            Some(("front", _)) => on_front = true,
            Some(("back", _)) => on_back = true,
            // A wall that runs along the street.
            Some((way, upright)) if straight::compass(way).is_some() && upright != across => {}
            Some(_) => return None,
            None => {}
        }
    }
    let way = if forward { front } else { front.opposite() };
    match (on_front, on_back) {
        (true, false) => Some(vec![way.word()]),
        (_, true) => Some(vec![way.word(), way.opposite().word()]),
        (false, false) => None,
    }
}

fn across_of(is_upright: bool) -> [&'static str; 2] {
    if is_upright { ["east", "west"] } else { ["north", "south"] }
}

/// A jog: its way, if it says one, its length, and the index of the piece after both.
fn jog_at(typed: &Typed<'_>, at: usize) -> Option<(Option<&'static str>, Measure, usize)> {
    if let Some(way) = compass_way(typed, at) {
        let length = length_at(&typed.pieces, at + 1)?;
        let end = length.end;
        return Some((Some(way), length, end));
    }
    let length = length_at(&typed.pieces, at)?;
    let end = length.end;
    Some(match compass_way(typed, end) {
        // `jog 4' then W 20'`: the way of what follows.
        Some(_) if length_at(&typed.pieces, end + 1).is_some() => (None, length, end),
        Some(way) => (Some(way), length, end + 1),
        None => (None, length, end),
    })
}

fn compass_way(typed: &Typed<'_>, at: usize) -> Option<&'static str> {
    whole_way(typed, at).filter(|way| ["north", "east", "south", "west"].contains(way))
}

fn after_marks(typed: &Typed<'_>, at: usize) -> usize {
    at + typed.pieces[at.min(typed.pieces.len())..]
        .iter()
        .take_while(|mark| mark.is_mark(":=-–"))
        .count()
}

fn between(typed: &Typed<'_>, at: usize) -> usize {
    (at..typed.pieces.len())
        .find(|&at| !typed.says(at, &BETWEEN) && !typed.pieces[at].is_mark("+,;&-–>→"))
        .unwrap_or(typed.pieces.len())
}
