//! Changes to pieces of areas, tax rates and the lines at the head of a file.

use super::super::change::{Attempt, Edit};
use super::super::pieces::{Piece, Sort, cut, join, replaced};
use crate::diagnostic::Word;

/// `2,031 sq ft` alone, `record $412,000`, `tax year 26`, `true north 4° east`, `from "step"`.
pub(super) fn figures_and_heads(pieces: &[Piece], here: usize) -> Vec<Edit> {
    let mut edits = Vec::new();
    let Some(first) = pieces.first() else { return edits };
    if first.is_number()
        && pieces.get(1).is_some_and(|unit| unit.is_word(&["sq", "sqft", "sf", "square"]))
    {
        for word in ["record", "listing"] {
            let with = [&[Piece::word(word)], pieces].concat();
            edits.push(Edit::new(with, "an area needs a word that says whose it is"));
        }
    }
    edits.extend(year_first(pieces));
    if first.is_word(&["record", "listing"]) && pieces.get(1).is_some_and(|sum| sum.is_mark("$€£"))
    {
        let by = [Piece::word("value"), Piece::word("market")];
        edits.push(Edit::new(replaced(pieces, 0, 1, &by), "a sum of money is not an area"));
    }
    if first.is_word(&["tax"]) && !pieces.iter().any(|piece| piece.is_word(&["rate"])) {
        let year = pieces.last().filter(|piece| piece.is_number() && piece.text.len() == 2);
        if let Some(year) = year {
            let by = [Piece::word("year"), Piece::new(Sort::Number, format!("20{}", year.text))];
            edits.push(Edit::conversion(
                replaced(pieces, 1, pieces.len(), &by),
                "a year has four digits",
            ));
        }
    }
    if first.is_word(&["place"]) && pieces.len() > 1 {
        let none = [first.clone(), Piece::word("none")];
        let cause = format!("there are no rules for {}", join(&pieces[1..]));
        edits.push(Edit::new(none.to_vec(), cause).weak());
    }
    if first.is_word(&["true"]) && pieces.get(2).is_some_and(Piece::is_number) {
        edits.push(Edit::new(
            replaced(pieces, 2, 2, &[Piece::word("N")]),
            "a bearing begins at N or S",
        ));
    }
    let text = here.checked_sub(1).filter(|at| pieces[*at].sort == Sort::Text && *at > 1);
    if let Some(text) = text.filter(|text| pieces[text - 1].is_word(&["from"])) {
        edits.push(Edit::new(
            replaced(pieces, text, text, &[Piece::word("corner")]),
            "the word `corner` is missing",
        ));
    }
    edits
}

/// `record 2024 1,990 sq ft`: moves the year after the area, as a title.
fn year_first(pieces: &[Piece]) -> Option<Edit> {
    let [word, year, area, ..] = pieces else { return None };
    if !word.is_word(&["record", "listing", "plan"]) || !year.is_year() || !area.is_number() {
        return None;
    }
    let mut left = replaced(pieces, 1, 2, &[]);
    left.push(Piece::new(Sort::Text, format!("\"{}\"", year.text)));
    Some(Edit::new(left, "what a figure is called goes after it, between `\"`"))
}

/// Suggests a unit for an area without one, or with another word for it.
pub(super) fn units_of_areas(pieces: &[Piece], here: usize, attempt: &Attempt) -> Vec<Edit> {
    let mut edits = Vec::new();
    if attempt.word != Some(Word::BadArea)
        && attempt.word != Some(Word::Unexpected)
        && attempt.word != Some(Word::StrayCharacter)
    {
        return edits;
    }
    let may_lack = attempt.word == Some(Word::BadArea);
    let cause = "an area needs its unit";
    let number = pieces.iter().enumerate().filter(|(at, piece)| {
        piece.is_number() && (piece.at >= attempt.at.start || at + 1 == here || *at == here)
    });
    // After the name of a space, a length is not an area.
    let is_space = pieces.first().is_some_and(|first| is_space(&first.text.to_lowercase()));
    for (at, _) in number {
        if is_space && at > 0 && !pieces[at - 1].is_word(&["recorded"]) {
            continue;
        }
        // `12.20 m` below a space is a wall that lacks its way.
        if at == 0 && pieces.len() <= 2 && attempt.space.is_some() {
            continue;
        }
        for unit in [
            &["ft"][..],
            &["feet"],
            &["foot"],
            &["square"],
            &["sq"],
            &["s"],
            &["sqf"],
            &["'"],
            &["sq", "."],
            &["s", ".", "f", "."],
            &["s", "f"],
            &["ft", "sq"],
            &["feet", "square"],
            &["sft"],
            &["sqft", "."],
            &["sq", "'"],
            &["square", "ft", "."],
            &["sq-ft"],
            &["sq", "-", "ft"],
            &["ft", "^"],
            &["m"],
            &["meters"],
        ] {
            let there = pieces.get(at + 1..at + 1 + unit.len());
            if there.is_some_and(|there| {
                there.iter().zip(unit).all(|(one, other)| one.text.eq_ignore_ascii_case(other))
            }) {
                let (unit_word, cause) = match unit[0].starts_with('m') {
                    true => ("m", "the unit of an area is `sq m`"),
                    false => ("ft", "the unit of an area is `sq ft`"),
                };
                let by = [Piece::word("sq"), Piece::word(unit_word)];
                edits.push(Edit::new(replaced(pieces, at + 1, at + 1 + unit.len(), &by), cause));
            }
        }
        let next_is_unit = pieces.get(at + 1).is_some_and(|piece| {
            piece.is_word(&[
                "sq", "sqft", "sf", "sqm", "acre", "acres", "hectare", "hectares", "square", "m",
                "cm", "mm", "ft", "in",
            ]) || piece.is_mark("'\"’”′″/")
        });
        if !next_is_unit && may_lack {
            // In a metric file it may be in either.
            let units = match attempt.is_metric {
                true => [&["sq", "m"][..], &["sq", "ft"]],
                false => [&["sq", "ft"][..], &["acres"]],
            };
            for unit in units {
                let mut with = pieces.to_vec();
                for word in unit.iter().rev() {
                    with.insert(at + 1, Piece::word(word));
                }
                if unit != ["acres"] || pieces.first().is_some_and(|piece| piece.is_word(&["lot"]))
                {
                    edits.push(Edit::new(with, cause));
                }
            }
        }
    }
    edits
}

/// `tax rate 2.14%`, `tax rate 2.14`, `21.4 mills`
pub(super) fn rates(pieces: &[Piece]) -> Vec<Edit> {
    let Some(at) = pieces.iter().position(Piece::is_number) else { return Vec::new() };
    // `tax 2.1%`: a small number is no tax that was paid.
    let is_small =
        || pieces[at].text.parse::<rust_decimal::Decimal>().is_ok_and(|rate| rate < 20.into());
    if !pieces.first().is_some_and(|piece| piece.is_word(&["tax"]))
        || at == 0
        || at == 1 && !is_small()
    {
        return Vec::new();
    }
    let cause = "a tax rate says per how many dollars";
    let (taken, per) = match pieces.get(at + 1) {
        None => (0, "per $100"),
        Some(piece) if piece.is_mark("%") || piece.is_word(&["percent"]) => (1, "per $100"),
        Some(piece) if piece.is_word(&["mill", "mills"]) => (1, "per $1,000"),
        Some(piece)
            if piece.is_word(&["per"])
                && pieces.get(at + 2).is_some_and(|next| next.is_word(&["hundred"])) =>
        {
            (2, "per $100")
        }
        Some(piece)
            if piece.is_word(&["per"])
                && pieces.get(at + 2).is_some_and(|next| next.is_word(&["thousand"])) =>
        {
            (2, "per $1,000")
        }
        Some(piece)
            if piece.is_mark("/") && pieces.get(at + 2).is_some_and(|next| next.text == "100") =>
        {
            (2, "per $100")
        }
        Some(piece) if piece.sort == Sort::Text => (0, "per $100"),
        Some(_) => return Vec::new(),
    };
    let dollar = usize::from(pieces[at - 1].is_mark("$€£"));
    let mut by = if at == 1 { cut("rate") } else { Vec::new() };
    by.push(Piece { touches: false, ..pieces[at].clone() });
    by.extend(cut(per));
    let by = replaced(pieces, at - dollar, at + 1 + taken, &by);
    vec![Edit::conversion(by, cause)]
}

/// Whether a word is a kind of space.
fn is_space(word: &str) -> bool {
    crate::sketch::statement::Kind::ALL.iter().any(|kind| kind.word() == word)
}
