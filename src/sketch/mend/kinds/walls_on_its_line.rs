//! A space with its walls on the same line: `living farmhouse 12.5 m north, 9.35 m east, …`.

use super::super::compass::way_and_back;
use super::super::pieces::Sort;
use super::levels::capitalized;
use super::measure::length_at;
use super::{Answer, Typed, is_text, kind_word, plainly, quoted};

/// The fewest walls that are no place of a space: `start north 4' east 12'` has two.
const FEWEST: usize = 3;

/// `house: north 30', east 40', south 30', west 40'`: the walls follow on lines of their own.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    const HOUSES: [&str; 8] =
        ["house", "home", "farmhouse", "cottage", "cabin", "dwelling", "residence", "bungalow"];
    let kind = kind_word(&typed.lower(0));
    let is_house = typed.says(0, &HOUSES);
    if kind.is_none() && !is_house || typed.is_in_lot() {
        return None;
    }
    let is_begin = |at: usize| wall(typed, at).is_some();
    let first = (1..typed.pieces.len()).find(|&at| is_begin(at))?;
    // What stands before the walls is its name.
    let mut end = first;
    while end > 1 && typed.piece(end - 1).is_some_and(|mark| mark.is_mark(",:;-–=.")) {
        end -= 1;
    }
    let is_name = |at: usize| {
        is_text(typed.piece(at)) && end == 2
            || typed.piece(at).is_some_and(|piece| piece.sort == Sort::Word)
                && !typed.says(at, &["start", "from", "within", "at", "starts", "lot"])
    };
    if end > 4 || !(1..end).all(is_name) {
        return None;
    }
    let mut walls = Vec::new();
    let mut at = first;
    while at < typed.pieces.len() {
        let (line, next) = wall(typed, at)?;
        walls.push(line);
        at = next;
        while typed.piece(at).is_some_and(|mark| mark.is_mark(",;./→>"))
            || typed.says(at, &["then", "and"])
        {
            at += 1;
        }
    }
    if walls.len() < FEWEST {
        return None;
    }
    let name = match (end, kind) {
        (1, _) => capitalized(&plainly(typed.text(0, 1))),
        (_, None) => capitalized(&plainly(typed.text(0, end))),
        (_, Some(_)) => capitalized(&typed.name(1, end)),
    };
    let kind = kind.unwrap_or("living");
    Some(Answer::line(
        format!("{kind} {}\n{}", quoted(&name), walls.join("\n")),
        "the walls of a space stand below its line, each on its own line",
    ))
}

/// `north 30'` or `30' north`, and the index after it.
fn wall(typed: &Typed<'_>, at: usize) -> Option<(String, usize)> {
    let way = |at: usize| {
        let word = typed.piece(at).filter(|piece| piece.sort == Sort::Word)?;
        way_and_back(&word.text).map(|(way, _)| way)
    };
    if let Some(way) = way(at) {
        let one = length_at(&typed.pieces, at + 1)?;
        return Some((format!("{way} {}", one.text), one.end));
    }
    let one = length_at(&typed.pieces, at)?;
    let way = way(one.end)?;
    Some((format!("{way} {}", one.text), one.end + 1))
}

/// `Main` between a level and its first wall: what the space is called.
pub(super) fn name_above(typed: &Typed<'_>) -> Option<Answer> {
    let beside = &typed.attempt.beside;
    let is_first = typed.attempt.house.is_none() && !beside.in_lot;
    let follows = super::super::begins_as_side(&beside.after);
    let names = |piece: &super::Piece| {
        piece.sort == Sort::Word && piece.text.chars().all(char::is_alphabetic)
    };
    let end = typed.pieces.iter().rposition(|piece| !piece.is_mark(":.-–"))? + 1;
    let is_short = end <= 3 && typed.pieces[..end].iter().all(names);
    let says_more = ["not", "no", "start", "measured", "inside", "outside", "clockwise", "north"];
    let is_above_walls = typed.attempt.space.is_none() || beside.before.starts_with("level ");
    (is_first && follows && is_short && is_above_walls && typed.find(0, &says_more).is_none()).then(
        || {
            Answer::line(
                format!("living {}", quoted(&capitalized(&plainly(typed.text(0, end))))),
                "a space begins with what it is, then its name; its walls stand on the lines below it",
            )
        },
    )
}
