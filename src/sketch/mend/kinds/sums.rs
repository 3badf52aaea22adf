//! Sums that somebody worked out on the line: parts of a figure, and parts of a tax rate.

use rust_decimal::Decimal;

use super::super::pieces::{Piece, Sort};
use super::levels::capitalized;
use super::measure::area_at;
use super::published::FIGURES;
use super::{Answer, Typed, is_text, kind_word, quoted};
use crate::units::decimal::thousands;

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    figure_of_parts(typed).or_else(|| rate_of_parts(typed))
}

/// One number of a sum, with its words.
struct Term {
    value: Decimal,
    digits: String,
    /// What is typed after its number, and the word before it that is part of it.
    words: Vec<Piece>,
}

/// The parts of `1,052 + 460 garage = 1,512 sq ft`, and what stands after the `=`, as indices into the pieces.
fn parts(typed: &Typed<'_>, from: usize, end: usize) -> Option<(Vec<Term>, Option<usize>)> {
    let mut terms: Vec<Term> = Vec::new();
    let mut open = true;
    for at in from..end {
        let piece = &typed.pieces[at];
        let is_ordinal = typed
            .piece(at + 1)
            .is_some_and(|next| next.touches && next.is_word(&["st", "nd", "rd", "th"]));
        if is_ordinal {
            terms.last_mut()?.words.push(piece.clone());
            continue;
        }
        if piece.is_mark("=") || piece.is_word(&["equals", "makes", "totals", "total"]) {
            return (terms.len() > 1).then_some((terms, Some(at + 1)));
        }
        if piece.is_mark("+&") || piece.is_word(&["plus"]) {
            open = true;
        } else if piece.is_number() && open {
            let value = piece.text.replace(',', "").parse().ok()?;
            terms.push(Term { value, digits: piece.text.clone(), words: Vec::new() });
            open = false;
        } else if piece.is_number() {
            return None;
        } else {
            let words = &mut terms.last_mut()?.words;
            words.push(piece.clone());
        }
    }
    (terms.len() > 1 && !open).then_some((terms, None))
}

fn total(terms: &[Term]) -> Option<Decimal> {
    terms.iter().try_fold(Decimal::ZERO, |all, term| all.checked_add(term.value))
}

/// `record 1,052 + 460 garage = 1,512 sq ft`, `record 1,633 above grade + 177 below sq ft`.
fn figure_of_parts(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &FIGURES) || typed.pieces.iter().any(|piece| is_text(Some(piece))) {
        return None;
    }
    let (terms, result) = parts(typed, 1, typed.pieces.len())?;
    let is_area = |term: &Term| term.value >= Decimal::from(20) && term.value.scale() == 0;
    let square =
        ["sq", "ft", "sf", "sqft", "square", "feet", "of", "the", "for", "in", "on", "and"];
    if !terms.iter().all(is_area) {
        return None;
    }
    let sum = total(&terms)?;
    let whole: i64 = sum.normalize().to_string().parse().ok()?;
    let counted: Vec<String> = terms
        .iter()
        .filter_map(|term| {
            let kind = term.words.iter().find_map(|word| kind_word(&word.text.to_lowercase()))?;
            (kind != "living").then(|| quoted(&capitalized(kind)))
        })
        .collect();
    let said = |end: usize| {
        let said = typed.text(1, end);
        said.trim_end_matches(['=', ' ', ',', ':']).to_owned()
    };
    let Some(result) = result else {
        let named = terms.iter().any(|term| {
            term.words.iter().any(|word| word.sort == Sort::Word && !word.is_word(&square))
        });
        let each: Vec<String> = terms
            .iter()
            .map(|term| {
                let words: Vec<&str> = term
                    .words
                    .iter()
                    .filter(|word| word.sort == Sort::Word && !word.is_word(&square))
                    .map(|word| word.text.as_str())
                    .collect();
                let name = if words.is_empty() { "…".to_owned() } else { words.join(" ") };
                format!("`figure \"{name}\" {} sq ft`", term.digits)
            })
            .collect();
        let word = typed.lower(0);
        if let Some(help) = parts_by_kind(&word, &terms) {
            return Some(Answer::say(
                "the figure is that of the living area, and each other part has its own area on its own line",
                help,
            ));
        }
        return named.then(|| {
            Answer::say(
                "a figure is one number, and these are parts of one",
                format!(
                    "if it was published as one, write `{word} {} sq ft  # {}`; if not, each on a line of its own: {}",
                    thousands(whole),
                    typed.rest(1),
                    each.join(", ")
                ),
            )
        });
    };
    let at = (result..typed.pieces.len()).find(|&at| typed.pieces[at].is_number())?;
    let stated: Decimal = typed.pieces[at].text.replace(',', "").parse().ok()?;
    let (end, area) = area_at(&typed.pieces, at)
        .unwrap_or_else(|| (at + 1, format!("{} sq ft", typed.pieces[at].text)));
    if stated != sum {
        return Some(Answer::say(
            format!("these parts add up to {}, not {}", thousands(whole), typed.pieces[at].text),
            format!(
                "write the figure as it was published, `{} {area}`, and the parts after a `#`",
                typed.lower(0)
            ),
        ));
    }
    let counting = match &counted[..] {
        [] => String::new(),
        names => format!(" counting {}", names.join(", ")),
    };
    let rest = typed.rest(end).trim_matches([',', ' ', ';']).to_owned();
    let rest = if rest.is_empty() { rest } else { format!(", {rest}") };
    Some(Answer::line(
        format!("{} {area}{counting}  # {}{rest}", typed.lower(0), said(result)),
        "a figure is one number: the parts added up",
    ))
}

/// What to type for `record 2,652 living + 440 garage + 72 porch`: the first part is the living area, and the others are
/// kinds of spaces that do not count.
fn parts_by_kind(word: &str, terms: &[Term]) -> Option<String> {
    let says = |term: &Term, words: &[&str]| term.words.iter().any(|word| word.is_word(words));
    let (living, others) = terms.split_first()?;
    let is_living = says(living, &["living", "heated", "house", "gla", "main", "finished", "hla"]);
    let kind = |term: &Term| {
        let kind = term.words.iter().find_map(|word| kind_word(&word.text.to_lowercase()))?;
        ["garage", "carport", "porch", "deck", "patio", "outbuilding"]
            .contains(&kind)
            .then_some(kind)
    };
    let others: Option<Vec<String>> = others
        .iter()
        .map(|term| {
            Some(format!("`recorded {} sq ft` on the line of the {}", term.digits, kind(term)?))
        })
        .collect();
    let others = others.filter(|_| is_living)?;
    Some(format!(
        "write `{word} {} sq ft` here, and {}",
        living.digits,
        crate::diagnostic::words::all_of(&others)
    ))
}

/// `tax rate 0.98 + 1.16 = 2.14 per $100`
fn rate_of_parts(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["tax"]) || !typed.says(1, &["rate", "rates"]) {
        return None;
    }
    let per = typed.find(2, &["per"]).or_else(|| {
        (2..typed.pieces.len()).find(|&at| {
            typed.pieces[at].is_mark("/%")
                && typed.piece(at + 1).is_some_and(|next| next.is_number() || next.is_mark("$"))
        })
    });
    let end = per.unwrap_or(typed.pieces.len());
    let (terms, result) = parts(typed, 2, end)?;
    let sum = total(&terms)?;
    if let Some(result) = result {
        let number = (result..end).find(|&at| typed.pieces[at].is_number())?;
        let stated: Decimal = typed.pieces[number].text.parse().ok()?;
        if stated != sum {
            return Some(Answer::say(
                format!("these rates add up to {}, not {}", sum.normalize(), stated),
                "write each rate on a line of its own: `tax rate`, the rate, `per $100` and its name",
            ));
        }
    }
    let after =
        per.map_or_else(|| "per $100".to_owned(), |per| typed.rest(per).replace('/', "per "));
    let said = typed.text(2, result.map_or(end, |result| result - 1));
    Some(Answer::line(
        format!("tax rate {} {after}  # {said}", sum.normalize()),
        "a tax rate is one number: the rates added up, or each on a line of its own",
    ))
}
