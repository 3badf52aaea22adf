//! Changes to walls that were not measured, or not exactly, and to second lengths.

use super::super::change::Edit;
use super::super::pieces::{Piece, Sort, join};
use super::DIRECTIONS;

/// `about 13 ft`, `13 ft approx`, `~42'`, `42' ?`: the side becomes `estimated`. A figure keeps the word in its
/// title.
pub(super) fn roughly(pieces: &[Piece]) -> Vec<Edit> {
    let says_so = |piece: &Piece| piece.is_word(&ROUGHLY) || piece.is_mark("~≈?∼");
    let Some(said) = pieces.iter().position(says_so) else { return Vec::new() };
    if !pieces.iter().any(Piece::is_number) {
        return Vec::new();
    }
    let mut left: Vec<Piece> = Vec::new();
    for (at, piece) in pieces.iter().enumerate() {
        let is_point = piece.is_mark(".") && at > 0 && says_so(&pieces[at - 1]);
        if says_so(piece) || is_point || piece.is_mark("()") {
            continue;
        }
        let touches = piece.touches && !(at > 0 && says_so(&pieces[at - 1]));
        left.push(Piece { touches, ..piece.clone() });
    }
    if left.first().is_some_and(|first| first.is_word(&["record", "listing", "plan", "figure"])) {
        left.push(Piece::new(Sort::Text, format!("\"{}\"", pieces[said].text)));
        return vec![Edit::new(left, "a figure keeps other words in its title")];
    }
    if !left.iter().any(|piece| piece.is_word(&["estimated"])) {
        left.push(Piece::word("estimated"));
    }
    vec![Edit::new(left, "a length that was not measured exactly is `estimated`")]
}

const ROUGHLY: [&str; 14] = [
    "about",
    "approx",
    "approximately",
    "approximate",
    "circa",
    "ca",
    "roughly",
    "around",
    "est",
    "estimate",
    "guess",
    "maybe",
    "almost",
    "nearly",
];

/// `west ?`, `west unknown`, `west --`: the side becomes `by closing`.
pub(super) fn not_measured(pieces: &[Piece]) -> Vec<Edit> {
    let [direction, rest @ ..] = pieces else { return Vec::new() };
    let no_length = |piece: &Piece| {
        piece.is_mark("?-–—_.*/")
            || piece.is_word(&NOT_KNOWN)
            || piece.is_word(&[
                "not", "measured", "out", "of", "reach", "cannot", "couldn't", "can't", "could",
                "be", "reached", "a",
            ])
    };
    let known = rest.iter().take_while(|piece| no_length(piece)).count();
    let remark = &rest[known..];
    let is_remark = known > 0
        && rest[0].is_mark("?-–—_.")
        && remark.iter().all(|piece| piece.sort != Sort::Text && !piece.is_number());
    if !direction.is_word(&DIRECTIONS) || !remark.is_empty() && !is_remark {
        return Vec::new();
    }
    let by = [direction.clone(), Piece::word("by"), Piece::word("closing")];
    if !remark.is_empty() {
        let line = format!("{} note \"{}\"", join(&by), join(remark).trim());
        return vec![Edit::line(
            line,
            "a wall without a length follows from the others `by closing`",
        )];
    }
    vec![Edit::new(by.to_vec(), "a wall without a length follows from the others `by closing`")]
}

const NOT_KNOWN: [&str; 14] = [
    "unknown",
    "na",
    "n",
    "tbd",
    "blank",
    "missing",
    "none",
    "inaccessible",
    "blocked",
    "unreachable",
    "unmeasured",
    "same",
    "x",
    "back",
];

/// `arc east 8' 2' south`, `bay south 8' 2' 4'`: adds the missing words between lengths.
pub(super) fn bare_lengths(pieces: &[Piece]) -> Vec<Edit> {
    let words: &[&str] = match pieces.first() {
        Some(first) if first.is_word(&["arc"]) => &["rise"],
        Some(first) if first.is_word(&["bay"]) => &["out", "flat"],
        _ => return Vec::new(),
    };
    let is_feet = |at: usize| {
        pieces.get(at).is_some_and(|piece| {
            piece.is_mark("'’′") || piece.is_word(&["ft", "feet", "foot", "m"])
        })
    };
    let next = (1..pieces.len()).find(|&at| {
        pieces[at].is_number()
            && is_feet(at + 1)
            && at >= 2
            && (is_feet(at - 1) || pieces[at - 1].is_mark("\"”″"))
    });
    let Some(next) = next else { return Vec::new() };
    let used = |word: &&&str| !pieces.iter().any(|piece| piece.is_word(&[word]));
    words
        .iter()
        .find(used)
        .map(|word| {
            let mut by = pieces.to_vec();
            by[next].touches = false;
            by.insert(next, Piece::word(word));
            Edit::new(by, format!("the word `{word}` is missing between two lengths"))
        })
        .into_iter()
        .collect()
}
