//! The words about a place in another order, or with more of them than the place needs.

use super::measure::length_at;
use super::{Typed, cut, whereabouts};
use crate::geometry::compass::Direction;
use crate::units::length::Length;

/// `is and is in the SE corner`, `sits on the front`: without the words that only join a place to its space.
pub(super) fn without_joints(said: &str) -> &str {
    // `stands alone`, `sits by itself`
    const APART: [&str; 5] = ["alone", "by", "apart", "free", "on its"];
    const JOINTS: [&str; 13] = [
        "is", "and", "it", "it's", "that", "which", "stands", "sits", "sitting", "located", "lies",
        "situated", "placed",
    ];
    let mut rest = said.trim_start_matches([',', ';', ' ']);
    while let Some((word, after)) = rest.split_once(' ') {
        let bare = word.trim_end_matches([',', ';']);
        let is_apart = APART.iter().any(|apart| after.starts_with(apart));
        if is_apart || !JOINTS.iter().any(|joint| bare.eq_ignore_ascii_case(joint)) {
            break;
        }
        rest = after.trim_start();
    }
    rest
}

/// `from left 12' 6" from front 9'`: the same with each distance before the side from which it is counted. None if no
/// distance stands after its side.
pub(super) fn distances_first(line: &str) -> Option<String> {
    const SIDES: [&str; 9] =
        ["north", "east", "south", "west", "front", "back", "rear", "left", "right"];
    const ENDS: [&str; 5] = ["wall", "side", "end", "edge", "corner"];
    let pieces = cut(line);
    let is = |at: usize, words: &[&str]| pieces.get(at).is_some_and(|piece| piece.is_word(words));
    let is_mark = |at: usize, marks: &str| pieces.get(at).is_some_and(|mark| mark.is_mark(marks));
    let text = |from: usize, to: usize| {
        let begin = pieces.get(from)?.at;
        let stop = pieces.get(to).map_or(line.len(), |piece| piece.at);
        line.get(begin..stop).map(str::trim)
    };
    let first = (0..pieces.len()).find(|&at| is(at, &["from"]))?;
    // `12' 6" from left`: it has its distance already.
    let is_counted = (0..first)
        .any(|at| length_at(&pieces, at).is_some_and(|one| one.has_unit && one.end == first));
    if is_counted {
        return None;
    }
    let (mut at, mut said) = (first, Vec::new());
    while is(at, &["from"]) {
        let side = at + 1 + usize::from(is(at + 1, &["the"]));
        if !is(side, &SIDES) {
            return None;
        }
        let after = side + 1 + usize::from(is(side + 1, &ENDS));
        let after = after + usize::from(is_mark(after, ":=,-–") || is(after, &["is"]));
        let by = length_at(&pieces, after).filter(|one| one.has_unit)?;
        said.push(format!("{} from the {}", by.text, text(side, side + 1)?.to_lowercase()));
        at = by.end;
        let joint = at + usize::from(is_mark(at, ",;&+") || is(at, &["and"]));
        let joint = joint + usize::from(joint > at && is(joint, &["and"]));
        at = if is(joint, &["from"]) { joint } else { at };
    }
    let is_end = at == pieces.len() || is_mark(at, ",;#)");
    let rest = text(at, pieces.len()).unwrap_or_default();
    let before = line.get(..pieces[first].at)?.trim_end();
    is_end.then(|| format!("{before} {}{rest}", said.join(", ")).trim_start().to_owned())
}

/// `bumps out 8' in front of the house`, `sticks out 3' past the front`: the side of the house beyond which a space stands,
/// how far, and the index after the words; the side is open where the street is not known.
pub(super) fn stands_out(
    typed: &Typed<'_>,
    at: usize,
) -> Option<(Option<Direction>, Length, usize)> {
    const OUT: [&str; 5] = ["out", "forward", "past", "beyond", "it"];
    const AFTER: [&str; 16] = [
        "out", "forward", "in", "of", "past", "beyond", "toward", "towards", "the", "house",
        "from", "wall", "to", "street", "line", "main",
    ];
    const SIDES: [&str; 4] = ["front", "back", "rear", "street"];
    if !typed.says(at, &OUTWARD) {
        return None;
    }
    let mut first = at + 1;
    while typed.says(first, &OUT) {
        first += 1;
    }
    let by = length_at(&typed.pieces, first).filter(|one| one.has_unit)?;
    let mut end = by.end;
    while typed.says(end, &AFTER) || typed.says(end, &SIDES) {
        end += 1;
    }
    let is_out = (at..end).any(|at| typed.says(at, &["out", "forward", "past", "beyond"]))
        || typed.says(by.end, &["in"]) && typed.says(by.end + 1, &["front"]);
    let side = (by.end..end).find(|&at| typed.says(at, &SIDES));
    let way = match side {
        Some(side) if typed.says(side, &["back", "rear"]) => whereabouts::direction(typed, side)?,
        _ => typed.attempt.beside.front,
    };
    is_out.then_some((way, by.length, end))
}

/// Words for what stands out beyond a wall.
pub(in crate::sketch::mend) const OUTWARD: [&str; 14] = [
    "bumps",
    "bumped",
    "bump",
    "sticks",
    "sticking",
    "juts",
    "jutting",
    "projects",
    "projecting",
    "extends",
    "extending",
    "stands",
    "comes",
    "protrudes",
];

/// `off the garage`: against it. A room of the house is not on the sketch, and these are.
pub(super) fn off_a_space(text: &str) -> Option<String> {
    const SPACES: [&str; 4] = ["garage", "carport", "breezeway", "addition"];
    let lower = text.to_ascii_lowercase();
    let at = lower.find("off ").filter(|at| *at == 0 || lower[..*at].ends_with(' '))?;
    let rest = text.get(at + "off ".len()..)?;
    let rest = ["of the ", "the ", "of ", "my ", "our "]
        .iter()
        .find_map(|small| rest.strip_prefix(small))
        .unwrap_or(rest);
    let noun: String = rest.chars().take_while(|c| c.is_alphabetic()).collect();
    let is_space = SPACES.iter().any(|space| noun.eq_ignore_ascii_case(space));
    is_space.then(|| format!("{}against the {rest}", &text[..at]))
}

/// `bumps out front`, `sticks out on the left`: the side alone.
pub(super) fn without_outward(text: &str) -> Option<String> {
    let mut words = text.splitn(3, ' ');
    let (verb, out, rest) = (words.next()?, words.next()?, words.next()?);
    let is_verb = OUTWARD.iter().any(|one| verb.eq_ignore_ascii_case(one));
    let is_side = rest.starts_with(|c: char| c.is_alphabetic());
    (is_verb && out.eq_ignore_ascii_case("out") && is_side).then(|| rest.to_owned())
}
