//! Words that say that something is not so: a suggestion that drops one of them says the opposite.

use super::comment_of;
use super::pieces::{Piece, Sort, cut};

pub(super) const NO: [&str; 10] =
    ["not", "no", "without", "excluding", "excl", "except", "never", "non", "isn't", "wasn't"];

/// Whether a text or comment of the suggested line has what follows a `not` or `no` of the typed line, without it.
pub(super) fn is_lost(typed: &str, offered: &str) -> bool {
    // `no carport here`
    if offered.starts_with("missing ") {
        return false;
    }
    let pieces = cut(typed);
    // `interior seen? no`
    let says_no =
        |text: &str| cut(&text.replace(['"', '#'], " ")).iter().any(|piece| piece.is_word(&NO));
    if offered.starts_with("interior seen") && says_no(typed) && !says_no(offered) {
        return true;
    }
    let lines: Vec<Vec<Piece>> = offered.lines().flat_map(texts).collect();
    // `no. R-2201` is a number.
    let is_number = |at: usize| {
        let has_digit = |piece: &Piece| piece.text.contains(|c: char| c.is_ascii_digit());
        pieces[at].is_word(&["no"])
            && pieces.get(at + 1).is_some_and(|point| point.is_mark(".") && point.touches)
            && pieces.iter().skip(at + 2).take(3).any(has_digit)
    };
    (0..pieces.len()).filter(|&at| pieces[at].is_word(&NO) && !is_number(at)).any(|at| {
        let small = ["the", "a", "an", "any", "to", "in", "is", "be", "been", "my", "our"];
        let next = pieces[at + 1..]
            .iter()
            .take(3)
            .find(|piece| piece.sort == Sort::Word && !piece.is_word(&small));
        let Some(next) = next else { return false };
        let word = next.text.to_lowercase();
        let no = pieces[at].text.to_lowercase();
        lines.iter().any(|text| {
            let found = text.iter().position(|piece| piece.is_word(&[&word]));
            found.is_some_and(|found| !text[..found].iter().any(|piece| piece.is_word(&[&no])))
        })
    })
}

/// The pieces of each text of a line and of its comment.
fn texts(line: &str) -> Vec<Vec<Piece>> {
    let (said, comment) = comment_of(line);
    let texts = cut(said).into_iter().filter(|piece| piece.sort == Sort::Text);
    let mut all: Vec<Vec<Piece>> =
        texts.map(|piece| cut(piece.text.trim_matches(['"', '“', '”']))).collect();
    all.extend(comment.map(cut));
    all
}
