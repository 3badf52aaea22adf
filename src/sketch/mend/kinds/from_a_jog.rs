//! Places that are counted from a jog or a corner of the house: `garage "Garage" on east wall, starts 2' 3" north of jog`.

use super::super::compass::{by_compass, is_upright, way_and_back};
use super::measure::length_at;
use super::whereabouts::direction;
use super::{Answer, Typed, is_text, kind_word};

const STARTS: [&str; 6] = ["starts", "start", "begins", "starting", "beginning", "is"];
const JOGS: [&str; 9] =
    ["jog", "corner", "notch", "offset", "step", "setback", "recess", "break", "inset"];

/// How far from a jog along a wall a space starts. The end of that wall is the jog.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    kind_word(&typed.lower(0)).filter(|_| is_text(typed.piece(1)))?;
    let (mut side, mut told) = (None, None);
    let mut at = 2;
    while at < typed.pieces.len() {
        if let Some(one) = length_at(&typed.pieces, at).filter(|one| one.has_unit) {
            if told.is_some() {
                return None;
            }
            let (way, end) = counted(typed, one.end)?;
            told = Some((one, way));
            at = end;
            continue;
        }
        // `starts at jog 2' 3" north`: the jog before the length.
        let is_jog = typed.says(at, &JOGS);
        let is_small = typed.says(at, &STARTS)
            || typed.says(at, &["on", "the", "at", "along", "wall", "side", "of", "from", "house"])
            || typed.pieces[at].is_mark(",;-–");
        match direction(typed, at) {
            Some(way) if side.is_none() => side = Some(way?),
            None if is_small || is_jog => {}
            _ => return None,
        }
        at += 1;
    }
    let (far, way) = told?;
    // `offset 40' east` is how far, from no jog.
    let leads = ["of", "from", "the", "at", "that", "this"];
    (3..typed.pieces.len()).find(|&at| typed.says(at, &JOGS) && typed.says(at - 1, &leads))?;
    let way = by_compass(way, typed.attempt.beside.front);
    let name = typed.text(0, 2);
    let (_, end) = way_and_back(way)?;
    let Some(side) = side.map(|side| side.word()) else {
        let [one, _] = super::super::compass::along(way);
        return Some(Answer::say(
            "the corner at the jog is not told apart from the others, and a place counts from an end of a wall",
            format!(
                "write on which side of the house it stands and how far from which end of that wall, as `{name} on the {one} side, {} from the {end} end`; the jog is the end of the wall",
                far.text
            ),
        ));
    };
    if is_upright(side) == is_upright(way) {
        return None;
    }
    super::answer(
        &format!("{name} on the {side} side, {} from the {end} end", far.text),
        typed.attempt,
    )
}

/// The way after a length, up to the jog that it counts from: `north of jog`; and the index after it.
fn counted(typed: &Typed<'_>, at: usize) -> Option<(&'static str, usize)> {
    let (way, _) = way_and_back(&typed.lower(at))?;
    let mut end = at + 1;
    while typed.says(end, &["of", "from", "the", "that", "this", "at"]) || typed.says(end, &JOGS) {
        end += 1;
    }
    Some((way, end))
}
