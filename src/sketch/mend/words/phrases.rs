//! Replaces phrases with words of the format, adds missing words, and removes marks without a meaning.

use super::super::change::{Attempt, Edit};
use super::super::pieces::{Piece, Sort, cut, join, replaced};
use super::DIRECTIONS;
use super::names::is_space;
use crate::sketch::phrases::{PHRASES, Where};

/// Replaces phrases that people write for words of the format.
pub(super) fn phrases(line: &str, pieces: &[Piece], here: usize, attempt: &Attempt) -> Vec<Edit> {
    let mut edits = Vec::new();
    for start in [Some(here), here.checked_sub(1)].into_iter().flatten() {
        let wants_kind = attempt.wanted.words.iter().any(|word| word == "living");
        let place = if start == 0 || wants_kind { Where::First } else { Where::Later };
        let mut found: Vec<(usize, &str)> = PHRASES
            .iter()
            .filter(|(when, ..)| *when == place)
            .filter_map(|(_, phrase, by)| Some((said_at(pieces, start, phrase)?, *by)))
            .collect();
        found.sort_by_key(|(taken, _)| std::cmp::Reverse(*taken));
        let longest = found.first().map_or(0, |(taken, _)| *taken);
        for (taken, by) in found {
            let end = start + taken;
            // The point of `rec.` belongs to it.
            if taken + 1 == longest && pieces[end].is_mark(".") {
                continue;
            }
            let phrase = join(&pieces[start..end]);
            // What has a size is a space.
            let is_space = || {
                crate::sketch::nouns::is_known(&phrase.to_lowercase())
                    && super::super::kinds::size_in(line).is_some()
            };
            if by == "#" && is_space() {
                continue;
            }
            if by == "#" {
                edits.push(Edit::line(
                    format!("# {line}"),
                    format!("a sides file has no place for `{phrase}`; a comment begins with `#`"),
                ));
                continue;
            }
            // `2 in` are inches.
            if phrase == "in" && start > 0 && pieces[start - 1].is_number() {
                continue;
            }
            // `8' x 6'` is a size, and not a length with an extra word.
            let is_size = matches!(phrase.as_str(), "x" | "by")
                && start > 0
                && pieces.get(end).is_some_and(Piece::is_number);
            // `within 1/4"` is a tolerance; `within House` names a space.
            let names_a_space = by == "tolerance" && !pieces.get(end).is_some_and(Piece::is_number);
            if by.is_empty() && is_size || names_a_space {
                continue;
            }
            // `deck "Deck" on House` says that it stands against it.
            let is_against = by.is_empty()
                && matches!(phrase.as_str(), "on" | "at" | "to")
                && pieces.get(end).is_some_and(|next| self::is_space(&next.text, attempt));
            if is_against {
                continue;
            }
            let cause = if by.is_empty() {
                format!("`{phrase}` has no meaning here")
            } else {
                format!("a sides file has another word for `{phrase}`")
            };
            let words = by.replace('-', "");
            let is_compound = by.contains("-foot");
            let words = if is_compound { by.to_owned() } else { words };
            let names = !is_compound && by.contains('-');
            let said = end;
            let mut end = end;
            while !by.is_empty()
                && place == Where::First
                && pieces.get(end).is_some_and(|next| next.is_mark(":="))
            {
                end += 1;
            }
            let next_is_text = pieces[end..].iter().any(|piece| piece.sort == Sort::Text);
            if names && !next_is_text {
                // The phrase is also the name; words after it, up to a number, may be part of the name.
                let (head, tail) = by.split_once('-').unwrap_or((by, ""));
                let more =
                    pieces[end..].iter().take_while(|piece| piece.sort == Sort::Word).count();
                for more in [0, more] {
                    let last = if more == 0 { said } else { end + more };
                    let name = format!("\"{}\"", join(&pieces[start..last]));
                    let named = [Piece::word(head), Piece::new(Sort::Text, name)];
                    let mut by = named.to_vec();
                    by.extend(cut(tail));
                    edits.push(Edit::new(replaced(pieces, start, end + more, &by), cause.clone()));
                }
                continue;
            }
            let mut by = cut(&words);
            by.iter_mut().take(1).for_each(|piece| piece.touches = false);
            let mut left = replaced(pieces, start, end, &by);
            let last = start + by.len();
            let parts = |piece: &Piece| piece.is_number() || piece.sort != Sort::Mark;
            if let Some(next) = left.get_mut(last).filter(|next| by.is_empty() || parts(next)) {
                next.touches = false;
            }
            edits.push(Edit::new(left, cause));
        }
    }
    edits
}

/// The number of pieces that a phrase takes up if it is at `start`.
fn said_at(pieces: &[Piece], start: usize, phrase: &str) -> Option<usize> {
    let wanted = cut(phrase);
    let there = pieces.get(start..start + wanted.len())?;
    let same = there
        .iter()
        .zip(&wanted)
        .all(|(one, other)| one.text.to_lowercase().replace('’', "'") == other.text);
    same.then_some(wanted.len())
}

/// Removes a meaningless mark where reading stopped: a comma, a colon, an arrow, a parenthesis.
pub(super) fn without_mark(pieces: &[Piece], here: usize) -> Vec<Edit> {
    let mut edits = Vec::new();
    for at in [Some(here), here.checked_sub(1)].into_iter().flatten() {
        let Some(piece) = pieces.get(at) else { continue };
        let signs_a_number = piece.is_mark("-–")
            && at.checked_sub(1).is_some_and(|before| pieces[before].is_word(&DIRECTIONS))
            && pieces.get(at + 1).is_some_and(Piece::is_number);
        let adds = piece.is_mark("+") && pieces.get(at + 1).is_some_and(Piece::is_number);
        if signs_a_number || adds {
            continue;
        }
        if piece.is_mark(",;:=.→>•*·()[]@&+–—_!|-\\{}¶✓✔☑√")
            || piece.is_mark("?~") && !pieces.iter().any(Piece::is_number)
        {
            let cause = format!("`{}` has no meaning here", piece.text);
            let mut left = replaced(pieces, at, at + 1, &[]);
            if let Some(next) = left.get_mut(at) {
                next.touches = false;
            }
            edits.push(Edit::new(left, cause));
        }
    }
    edits
}

/// Inserts one of the words that were expected where reading stopped.
pub(super) fn wanted_words(pieces: &[Piece], here: usize, attempt: &Attempt) -> Vec<Edit> {
    let mut edits = Vec::new();
    let after = pieces.get(here);
    let is_length = after.is_some_and(|piece| piece.is_number() || piece.is_mark("½¼¾$€£"));
    let is_area = |at: usize| {
        pieces.get(at + 1).is_none_or(|next| {
            next.is_word(&[
                "sq", "sqft", "sf", "sqm", "square", "acre", "acres", "ac", "ha", "hectare",
                "hectares",
            ])
        })
    };
    let is_text = after.is_some_and(|piece| piece.sort == Sort::Text);
    for word in &attempt.wanted.words {
        let fits = match word.as_str() {
            // After a side a second length could be anything.
            "recorded" => is_length && !attempt.is_side && is_area(here),
            "rise" | "out" | "flat" | "per" | "sold" | "on" | "since" | "market" | "assessed"
            | "year" | "under" => is_length,
            "note" | "counting" | "by" | "with" | "of" | "file" => is_text,
            // Only a text that names an existing space; any other is a remark.
            "within" => after.is_some_and(|piece| is_space(&piece.text, attempt)),
            "from" => after.is_some_and(|piece| piece.is_word(&["corner"])),
            "corner" | "to" | "grade" | "outline" | "closing" | "seen" | "north" => true,
            _ => false,
        };
        if fits {
            let cause = format!("the word `{word}` is missing");
            let mut by = pieces.to_vec();
            if let Some(next) = by.get_mut(here) {
                next.touches = false;
            }
            by.insert(here.min(by.len()), Piece::word(word));
            edits.push(Edit::new(by, cause).weak());
        }
    }
    let has =
        |words: &[&str]| attempt.wanted.words.iter().any(|word| words.contains(&word.as_str()));
    // An arc without the side to which it rises, or `interior` without `seen`.
    if here >= pieces.len() && pieces.first().is_some_and(|piece| piece.is_word(&["arc"])) {
        for direction in ["north", "south", "east", "west"] {
            let with = [pieces, &[Piece::word(direction)]].concat();
            edits.push(Edit::new(with, "the side to which the curve rises is missing"));
        }
    }
    if here >= pieces.len() && has(&["seen"]) {
        edits.push(Edit::new(
            [pieces, &cut("not seen")].concat(),
            "`seen` or `not seen` is missing",
        ));
    }
    edits
}
