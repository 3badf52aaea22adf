//! Where a space stands, as it is written at any place of its line.

use super::measure::length_at;
use super::{Typed, digits, is_text, quoted};

/// `from step`, `@ step`, `starts at the step corner`: a corner that has a name.
pub(super) fn corner_by_name(typed: &Typed<'_>, at: usize) -> Option<(String, usize)> {
    let joints = [
        "from",
        "at",
        "on",
        "start",
        "starts",
        "starting",
        "begins",
        "beginning",
        "attached",
        "to",
        "the",
        "corner",
        "in",
        "off",
    ];
    let mut first = at;
    while typed.says(first, &joints) || typed.piece(first).is_some_and(|mark| mark.is_mark("@:,")) {
        first += 1;
    }
    let is_placed = (at..first).any(|at| {
        typed.says(
            at,
            &["from", "at", "start", "starts", "starting", "begins", "corner", "attached"],
        ) || typed.pieces[at].is_mark("@")
    });
    let corners = typed.attempt.beside.corners.iter().filter(|_| is_placed);
    let mut found = corners.filter_map(|corner| {
        let end = first + super::cut(corner).len();
        let end = if is_text(typed.piece(first)) { first + 1 } else { end };
        let said = typed.name(first, end.min(typed.pieces.len()));
        said.eq_ignore_ascii_case(corner).then(|| (corner.to_string(), end))
    });
    let (name, end) = found.next()?;
    Some((name, end + usize::from(typed.says(end, &["corner"]))))
}

/// `start east 10' north 4'`, `from "House" corner 4`, `at corner 4 of the house`: a place as the format has it, or
/// nearly so.
pub(super) fn place(typed: &Typed<'_>, at: usize) -> Option<(String, usize)> {
    const WAYS: [&str; 8] = ["north", "east", "south", "west", "n", "e", "s", "w"];
    if let Some(found) = lengths_before_ways(typed, at) {
        return Some(found);
    }
    if typed.says(at, &["start", "starts"]) {
        let mut end = at + 1;
        for _ in 0..2 {
            let joins =
                typed.says(end, &["and"]) || typed.piece(end).is_some_and(|mark| mark.is_mark(","));
            let next = end + usize::from(end > at + 1 && joins);
            match length_at(&typed.pieces, next + 1).filter(|_| typed.says(next, &WAYS)) {
                Some(measure) => end = measure.end,
                None => break,
            }
        }
        let place = typed.text(at + 1, end).replace(',', "").replace(" and ", " ");
        return (end > at + 1).then(|| (format!("start {place}"), end));
    }
    let mut first = at;
    while typed.says(first, &["from", "at", "start", "starts", "the", "on", "to"]) {
        first += 1;
    }
    if first == at {
        return None;
    }
    let named = typed.piece(first).filter(|name| is_text(Some(name)));
    let corner = first + usize::from(named.is_some());
    let number = typed
        .piece(corner + 1)
        .filter(|number| typed.says(corner, &["corner"]) && digits::is_small(number))?;
    let known = typed.attempt.space.clone()?;
    let mut end = corner + 2;
    if named.is_none() && typed.says(end, &["of", "on"]) {
        end += 1;
        end += usize::from(typed.says(end, &["the"]));
        let name = typed.name(end, end + 1);
        if !name.eq_ignore_ascii_case(&known) && !typed.says(end, &["house"]) {
            return None;
        }
        end += 1;
    }
    let name = named.map_or_else(|| quoted(&known), |name| name.text.clone());
    Some((format!("from {name} corner {}", number.text), end))
}

/// `start 20 ft east 0 north`: each length before its way; a length of 0 says nothing.
fn lengths_before_ways(typed: &Typed<'_>, at: usize) -> Option<(String, usize)> {
    let ways = ["north", "east", "south", "west"];
    let mut end = at + usize::from(typed.says(at, &["start", "starts"]));
    let mut place = Vec::new();
    let begin = end;
    while place.len() < 2 {
        let skipped = end
            + usize::from(
                end > begin
                    && (typed.says(end, &["and"])
                        || typed.piece(end).is_some_and(|mark| mark.is_mark(",&"))),
            );
        let Some(measure) = length_at(&typed.pieces, skipped) else { break };
        if !typed.says(measure.end, &ways) {
            break;
        }
        if measure.length.nm() != 0 {
            place.push(format!("{} {}", typed.lower(measure.end), measure.text));
        }
        end = measure.end + 1;
    }
    (begin > at && end > begin && !place.is_empty())
        .then(|| (format!("start {}", place.join(" ")), end))
}

pub(super) fn detached(typed: &Typed<'_>, at: usize) -> Option<usize> {
    let all = [
        &["not", "attached"][..],
        &["stands", "alone"],
        &["standing", "alone"],
        &["free", "standing"],
        &["detached"],
        &["freestanding"],
        &["free-standing"],
        &["stand-alone"],
        &["det"],
    ];
    let says =
        |words: &&&[&str]| words.iter().enumerate().all(|(i, word)| typed.says(at + i, &[word]));
    all.iter().find(says).map(|words| at + words.len())
}
