//! The last answers: the parts of a line that nothing else could read, put into the line that its first word begins; or,
//! if its first word begins none, the lines that its parts could stand on.

use super::super::pieces::{Piece, Sort, join};
use super::levels::capitalized;
use super::measure::{area_from, date_at, lengths, money_from};
use super::walls::is_way;
use super::{Answer, Typed, is_text, kind_word, quoted};

/// The pieces of a line, and which of them have been used.
struct Parts<'a> {
    typed: &'a Typed<'a>,
    used: Vec<bool>,
}

impl<'a> Parts<'a> {
    fn new(typed: &'a Typed<'a>, head: usize) -> Parts<'a> {
        let used = (0..typed.pieces.len()).map(|at| at < head).collect();
        Parts { typed, used }
    }

    fn take(&mut self, first: usize, end: usize) {
        self.used[first..end].fill(true);
    }

    /// What has not been used, as a comment.
    fn comment(&self) -> String {
        let left: Vec<Piece> = (0..self.used.len())
            .filter(|&at| !self.used[at])
            .map(|at| self.typed.pieces[at].clone())
            .collect();
        let said = super::plainly(&join(&left));
        let said = said.trim_matches(|c: char| " ,;:.-–—()[]=/".contains(c));
        if said.contains(char::is_alphanumeric) { format!("  # {said}") } else { String::new() }
    }

    fn sum(&mut self, from: usize) -> Option<String> {
        let typed = self.typed;
        if let Some((first, end, text)) = money_from(&typed.pieces, from) {
            self.take(first, end);
            return Some(text);
        }
        let long = |piece: &Piece| {
            let digits = piece.text.chars().filter(char::is_ascii_digit).count();
            piece.is_number()
                && !piece.text.contains('.')
                && (digits > 4 || piece.text.contains(','))
        };
        let at = (from..typed.pieces.len()).find(|&at| long(&typed.pieces[at]))?;
        self.take(at, at + 1);
        Some(format!("${}", typed.pieces[at].text))
    }

    fn day(&mut self, from: usize) -> Option<String> {
        let typed = self.typed;
        let (first, end, day) = (from..typed.pieces.len())
            .find_map(|at| date_at(&typed.pieces, at).map(|(end, day)| (at, end, day)))?;
        self.take(first, end);
        Some(day)
    }
}

/// The line with its parts in the order of the format.
pub(super) fn line(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.attempt.knows_first || typed.line.contains('?') {
        return None;
    }
    let (line, cause) = match typed.lower(0).as_str() {
        "last" if typed.says(1, &["year"]) => {
            let mut parts = Parts::new(typed, 2 + usize::from(typed.says(2, &["assessed"])));
            let sum = parts.sum(2)?;
            (
                format!("last year assessed {sum}{}", parts.comment()),
                "last year's value is `last year assessed` and the sum",
            )
        }
        "exemption" => {
            if typed.pieces.iter().any(|piece| piece.is_mark("%")) {
                return None;
            }
            let mut parts = Parts::new(typed, 1);
            let sum = parts.sum(1)?;
            let name = (1..typed.pieces.len()).find(|&at| is_text(typed.piece(at)));
            let name = match name {
                Some(at) => {
                    parts.take(at, at + 1);
                    typed.pieces[at].text.clone()
                }
                None => {
                    let said = parts.comment();
                    parts.used.fill(true);
                    quoted(said.trim_start_matches([' ', '#']))
                }
            };
            (
                format!("exemption {sum} {name}{}", parts.comment()),
                "an exemption has its sum, then its name with a `\"` on each side",
            )
        }
        "notice" => {
            let mut parts = Parts::new(typed, 1);
            let day = parts.day(1)?;
            (
                format!("notice {day}{}", parts.comment()),
                "a notice has the day on which it was delivered",
            )
        }
        "homestead" => {
            let at = (1..typed.pieces.len()).find(|&at| typed.pieces[at].is_year())?;
            let mut parts = Parts::new(typed, 1 + usize::from(typed.says(1, &["since"])));
            if parts.sum(1).is_some() {
                return None;
            }
            parts.take(at, at + 1);
            (
                format!("homestead since {}{}", typed.pieces[at].text, parts.comment()),
                "a homestead has the first year of its exemption",
            )
        }
        "veneer" | "wall" | "tolerance" => {
            let found = lengths(&typed.pieces, 1);
            let [(first, measure)] = &found[..] else { return None };
            let mut parts = Parts::new(typed, 1);
            parts.take(*first, measure.end);
            let word = typed.lower(0);
            let inches = measure.has_unit && measure.length < crate::units::length::Length::FOOT;
            if !inches {
                return None;
            }
            (format!("{word} {}{}", measure.text, parts.comment()), "it is a word and one length")
        }
        "front" | "faces" | "units" => {
            let words = match typed.lower(0).as_str() {
                "front" => &["north", "east", "south", "west"][..],
                "faces" => &["outside", "frame", "inside"],
                _ => &["feet", "inches", "meters", "centimeters", "millimeters"],
            };
            let mut found = (1..typed.pieces.len()).filter(|&at| typed.says(at, words));
            let at = found.next().filter(|_| found.next().is_none())?;
            if typed.pieces.iter().any(|piece| piece.is_number() || super::tails::is_no(piece)) {
                return None;
            }
            let mut parts = Parts::new(typed, 1);
            parts.take(at, at + 1);
            (
                format!("{} {}{}", typed.lower(0), typed.lower(at), parts.comment()),
                "it is two words; anything else goes to the end of the line, after a `#`",
            )
        }
        _ => return None,
    };
    Some(Answer::line(line, cause))
}

/// Lines on which the parts of a line could stand whose first word begins none.
pub(super) fn by_its_parts(typed: &Typed<'_>) -> Option<Answer> {
    let first = typed.piece(0).filter(|first| first.sort == Sort::Word)?;
    let known = ["barn", "stairs", "shed", "sunroom", "angled", "corner", "bow", "wing", "curve"];
    if typed.attempt.knows_first
        || typed.line.contains('"') && is_text(typed.piece(1))
        || typed.attempt.word == Some(crate::diagnostic::Word::OutOfPlace)
        || first.is_word(&known)
        || typed.pieces.len() > 24
    {
        return None;
    }
    let words: Vec<&str> = typed
        .pieces
        .iter()
        .filter(|piece| piece.sort == Sort::Word)
        .filter(|piece| !piece.is_word(&["m", "sq", "ft", "sqft", "sf", "sqm"]))
        .map(|piece| piece.text.as_str())
        .take(3)
        .collect();
    let name = words.join(" ");
    let begins = format!("`{}` begins no line of a sides file", first.text);
    let found = lengths(&typed.pieces, 0);
    let wall = found.iter().find(|(_, measure)| measure.has_unit);
    if let Some((_, _, area)) = area_from(&typed.pieces, 0) {
        let help = format!(
            "if `{area}` was published, write `record {area}` if the county says so, `listing {area}` if a listing does, or `figure {} {area}`; if it is the area that the record gives a space, write `recorded {area}` on the line of the space",
            quoted(&capitalized(&name))
        );
        return Some(Answer::say(begins, help));
    }
    let has_sum = money_from(&typed.pieces, 0).is_some();
    if typed.pieces.iter().any(|piece| piece.is_mark("%")) && !is_way(typed, 0) && !has_sum {
        return Some(Answer::say(
            begins,
            "a share has no line: write the sum or the area that it makes, on the line that it belongs to; or put a `#` before this line",
        ));
    }
    if let Some((_, _, sum)) = money_from(&typed.pieces, 0) {
        let help = format!(
            "if `{sum}` is a value of the record, write `value market {sum}`, `value assessed {sum}` or `last year assessed {sum}`; an exemption is `exemption {sum}` and its name, a sale begins with `comparable`; any other sum goes after a `#`"
        );
        return Some(Answer::say(begins, help));
    }
    if let Some(day) = (0..typed.pieces.len()).find_map(|at| date_at(&typed.pieces, at)) {
        let day = day.1;
        let help = format!(
            "if the house was measured on this day, write `measured {day}`; if the notice of value came on it, `notice {day}`; if this is a remark, put a `#` before it"
        );
        return Some(Answer::say(begins, help));
    }
    if typed.says(0, &["not", "non", "no"]) && typed.says(1, &["living"]) {
        return Some(Answer::say(
            "what is not living area says what it is",
            "write `unfinished`, `storage`, `outbuilding`, `garage` or `porch` and its name instead, above its walls; if this is a remark, put a `#` before it",
        ));
    }
    let kind = (1..typed.pieces.len()).find_map(|at| kind_word(&typed.lower(at)));
    let has_number = typed.pieces.iter().any(Piece::is_number);
    kind.filter(|_| !has_number && wall.is_none() && typed.pieces.len() < 8).map(|kind| {
        Answer::say(
            begins,
            format!(
                "if this is a space, write `{kind} {}`, then its place, and its walls on the lines below; if it is a remark, put a `#` before it",
                quoted(&capitalized(&super::plainly(typed.line)))
            ),
        )
    })
}
