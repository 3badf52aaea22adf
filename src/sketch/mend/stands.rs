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

/// The way that was walked, in a line that names the side as well: `west wall north 32' 7"`, `rear east 24'`.
pub(in crate::sketch) fn walked(line: &str) -> Option<&'static str> {
    const COMPASS: [&str; 4] = ["north", "east", "south", "west"];
    let pieces = cut(line);
    let (first, _) = compass::way_and_back(&pieces.first()?.text)?;
    let by_street = !COMPASS.contains(&first);
    let mut ways = pieces.iter().skip(1).filter_map(|piece| {
        let way = compass::way_and_back(&piece.text).map(|(way, _)| way);
        way.filter(|way| COMPASS.contains(way) && piece.sort == Sort::Word)
    });
    let only = ways.next().filter(|_| ways.next().is_none())?;
    (by_street || is_said(line)).then_some(only)
}
