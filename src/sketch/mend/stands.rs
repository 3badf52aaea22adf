//! Walls that are called by the side of the house on which they stand, without the way that was walked.

use super::pieces::{Piece, Sort, cut, join};
use super::{compass, kinds};

/// Words before the way that was walked.
const GOES: [&str; 11] = [
    "going", "goes", "go", "running", "runs", "heading", "coming", "toward", "towards", "walked",
    "forward",
];

/// Whether a line calls a wall by the side on which it stands: `north wall 40'`, `left kitchen side 30'`, `front of garage
/// 21'`.
pub(in crate::sketch) fn is_said(line: &str) -> bool {
    let pieces = cut(line);
    let is_way = pieces.first().is_some_and(|way| compass::way_and_back(&way.text).is_some());
    // `back of porch going left 14' 5"` says which way it went.
    let goes = pieces.iter().any(|piece| piece.is_word(&GOES));
    let mut words = pieces.iter().skip(1).take_while(|piece| piece.sort == Sort::Word).take(3);
    let is_of = pieces.get(1).is_some_and(|of| of.is_word(&["of"]));
    is_way && !goes && (is_of || words.any(|word| word.is_word(&kinds::STANDS)))
}

/// What follows the way in the line of such a wall, its own words as a note: `21' 5" note "front of garage"`.
pub(in crate::sketch) fn rest(line: &str) -> Option<String> {
    // `right side 10-0 to bay`
    let with_marks = super::noted::dashes_for_marks(line).map(|(line, _)| line);
    let line = with_marks.as_deref().unwrap_or(line);
    let pieces = cut(line);
    let is_plain = |piece: &Piece| piece.sort != Sort::Text && !piece.is_mark("#");
    let is_wall = is_said(line) || walked(line).is_some();
    if !is_wall || !pieces.iter().all(is_plain) {
        return None;
    }
    let (length, taken) = match &kinds::lengths_in(&pieces)[..] {
        [(from, end, length)] => (length.clone(), *from..*end),
        [] if pieces.iter().all(|piece| !piece.is_number()) => ("by closing".to_owned(), 0..0),
        _ => return None,
    };
    let others: Vec<Piece> =
        (0..pieces.len()).filter(|at| !taken.contains(at)).map(|at| pieces[at].clone()).collect();
    if others.iter().any(Piece::is_number) {
        return None;
    }
    let note = join(&others);
    let note = note.trim_end_matches([',', ';', ':', '-', '=', ' ', '.']);
    let is_name = cut(note).len() == 2;
    Some(if is_name { length } else { format!("{length} note \"{note}\"") })
}

/// A wall that is told from one of its ends to the other.
pub(super) struct Ends {
    /// The way from the first end to the second.
    pub(super) way: &'static str,
    /// The pieces that say it.
    pub(super) first: usize,
    pub(super) end: usize,
}

/// From which end to which a wall was walked: `front, left to right 37' 5"`, `NE corner to SE corner 30'`.
pub(super) fn from_end_to_end(pieces: &[Piece]) -> Option<Ends> {
    let says = |at: usize, words: &[&str]| pieces.get(at).is_some_and(|piece| piece.is_word(words));
    let is_joint = |at: usize| {
        let marks = pieces.get(at).is_some_and(|mark| mark.is_mark("→>-–/"));
        says(at, &["to", "toward", "towards", "through", "thru"]) || marks
    };
    let after = |mut at: usize, words: &[&str]| {
        while says(at, words) {
            at += 1;
        }
        at
    };
    let part = ["corner", "end", "side", "edge", "hand"];
    (0..pieces.len()).find_map(|at| {
        let joint = after(at + 1, &part);
        let mut next = joint;
        while is_joint(next) && next < joint + 3 {
            next += 1;
        }
        let next = after(next, &["the"]);
        if next == joint {
            return None;
        }
        let is_word = says(joint, &["to", "toward", "towards", "through", "thru"]);
        let way = way_between(&pieces.get(at)?.text, &pieces.get(next)?.text)?;
        // `N-S` may be no more than how the wall lies.
        let is_plain = is_word || pieces[joint].is_mark("→>") || !pieces[next].touches;
        let letters = ["l", "r"];
        let is_seen = says(at, &letters) && says(next, &letters);
        let first = if at > 0 && says(at - 1, &["from"]) { at - 1 } else { at };
        let first = match first.checked_sub(2) {
            Some(from) if says(from, &["from"]) && says(from + 1, &["the"]) => from,
            _ => first,
        };
        (is_plain || is_seen).then(|| Ends { way, first, end: after(next + 1, &part) })
    })
}

/// The way from one end of a wall to the other.
fn way_between(from: &str, to: &str) -> Option<&'static str> {
    let whole = |word: &str| match word.to_lowercase().as_str() {
        "l" => Some("left"),
        "r" => Some("right"),
        "street" => Some("front"),
        _ => compass::way_and_back(word).map(|(way, _)| way),
    };
    if let Some((one, other)) = whole(from).zip(whole(to)) {
        let (_, back) = compass::way_and_back(one)?;
        return (back == other).then_some(other);
    }
    // `NE` to `SE` runs south.
    let (one, other) = compass::slant(from).zip(compass::slant(to))?;
    match (one.0 == other.0, one.1 == other.1) {
        (false, true) => Some(other.0),
        (true, false) => Some(other.1),
        _ => None,
    }
}

/// The way that was walked, in a line that names the side as well: `west wall north 32' 7"`, `rear east 24'`.
pub(in crate::sketch) fn walked(line: &str) -> Option<&'static str> {
    const COMPASS: [&str; 4] = ["north", "east", "south", "west"];
    let pieces = cut(line);
    if let Some(ends) = from_end_to_end(&pieces) {
        return Some(ends.way);
    }
    let (first, _) = compass::way_and_back(&pieces.first()?.text)?;
    let by_street = !COMPASS.contains(&first);
    let mut ways = pieces.iter().skip(1).filter_map(|piece| {
        let way = compass::way_and_back(&piece.text).map(|(way, _)| way);
        way.filter(|way| COMPASS.contains(way) && piece.sort == Sort::Word)
    });
    let only = ways.next().filter(|_| ways.next().is_none())?;
    (by_street || is_said(line)).then_some(only)
}
