//! Lines with a date and other words: the day it was measured, the day of the notice.

use super::super::pieces::{Piece, Sort, join};
use super::measure::{Measure, date_from, length_at, money_from};
use super::{Answer, Typed, quoted};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    measured_with_words(typed).or_else(|| notice_with_words(typed)).or_else(|| without_year(typed))
}

/// `measured 15.11.2026 by owner, steel tape, ±1 cm`, `measured Feb 20th 2026, cloudy`: who, with what, how exactly,
/// and anything else in a comment.
fn measured_with_words(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["measured", "taped", "date", "surveyed"])
        || typed.says(1, &["to", "inside", "outside", "from"])
    {
        return None;
    }
    let (first, end, date) = date_from(&typed.pieces, 1)?;
    let mut parts = Parts::default();
    let is_filler = |piece: &Piece| piece.is_mark(",;:.=") || piece.is_word(&["on", "day", "date"]);
    let before: Vec<Piece> =
        typed.pieces[1..first].iter().filter(|piece| !is_filler(piece)).cloned().collect();
    parts.take(before);
    for part in typed.pieces[end..].split(|piece| piece.is_mark(",;")) {
        parts.take(part.to_vec());
    }
    if parts.unclear {
        return None;
    }
    // `measured 9 May 2026 (owner, tape)`: who, and with what.
    let is_list = typed.line.contains('(') && parts.with.is_some() && parts.by.is_none();
    if let ([who], true) = (&parts.others[..], is_list) {
        parts.by = Some(quoted(who));
        parts.others.clear();
    }
    let mut line = format!("measured {date}");
    for (word, text) in [("by", &parts.by), ("with", &parts.with)] {
        if let Some(text) = text {
            line += &format!(" {word} {text}");
        }
    }
    if !parts.others.is_empty() {
        line += &format!("  # {}", parts.others.join(", "));
    }
    if let Some(tolerance) = &parts.tolerance {
        line += &format!("\ntolerance {}", tolerance.text);
    }
    let only_a_date = parts.by.is_none()
        && parts.with.is_none()
        && parts.others.is_empty()
        && parts.tolerance.is_none();
    if only_a_date {
        return (line != typed.line).then(|| {
            Answer::line(line, "a date is written year-month-day, right after `measured`")
        });
    }
    (line != typed.line).then(|| {
        Answer::line(line, "the date comes right after `measured` as year-month-day, then `by` and `with`, each with its text between two `\"`")
    })
}

/// What a line says beside its date.
#[derive(Default)]
struct Parts {
    by: Option<String>,
    with: Option<String>,
    tolerance: Option<Measure>,
    others: Vec<String>,
    unclear: bool,
}

impl Parts {
    fn take(&mut self, mut part: Vec<Piece>) {
        let with = ["with", "using", "via", "w"];
        // `by owner with tape`
        if let Some(second) =
            (1..part.len()).find(|&at| part[at].is_word(&with) || part[at].is_word(&["by"]))
        {
            let rest = part.split_off(second);
            self.take(rest);
        }
        let Some(first) = part.first().cloned() else { return };
        let said = |from: usize| {
            let mut said = part[from..].to_vec();
            if said.first().is_some_and(|slash| slash.is_mark("/")) {
                said.remove(0);
            }
            match &said[..] {
                [text] if text.sort == Sort::Text => text.text.clone(),
                said => quoted(join(said).trim_matches(|c: char| " ,;:.".contains(c))),
            }
        };
        let tool = |piece: &Piece| piece.is_word(&["tape", "laser", "ruler", "wheel", "stick"]);
        let marks = part
            .iter()
            .take_while(|piece| {
                piece.is_mark("±+-/~(")
                    || piece.is_word(&[
                        "to",
                        "within",
                        "tolerance",
                        "accuracy",
                        "about",
                        "accurate",
                    ])
            })
            .count();
        let length = length_at(&part, marks).filter(|measure| {
            measure.has_unit && part[measure.end..].iter().all(|piece| piece.is_mark(")."))
        });
        if let Some(length) = length {
            self.unclear |= self.tolerance.is_some();
            self.tolerance = Some(length);
        } else if let [by, who, with] = &part[..]
            && by.is_word(&["by"])
            && who.sort == Sort::Text
            && tool(with)
            && self.by.is_none()
            && self.with.is_none()
        {
            // `by "the owner" laser`
            self.by = Some(who.text.clone());
            self.with = Some(quoted(&with.text));
        } else if first.is_word(&["by"]) && self.by.is_none() && part.len() > 1 {
            self.by = Some(said(1));
        } else if let ([text], None) = (&part[..], &self.by)
            && text.sort == Sort::Text
        {
            // `measured 2026/03/07 "the owner"`
            self.by = Some(text.text.clone());
        } else if first.is_word(&with) && self.with.is_none() && part.len() > 1 {
            self.with = Some(said(1));
        } else if part.iter().any(tool) && self.with.is_none() {
            self.with = Some(said(0));
        } else {
            let counts = |piece: &Piece| piece.is_number() || piece.sort == Sort::Text;
            self.unclear |= part.iter().any(counts);
            let said = join(&part);
            let said = said.trim_matches(|c: char| " ,;.()-–".contains(c));
            if !said.is_empty() {
                self.others.push(said.to_owned());
            }
        }
        self.unclear |= self.by.iter().chain(&self.with).any(|text| super::measures(text));
    }
}

/// `notice mailed April 17, 2026`, `notice of value received 4/17/2026`: what was done on that day goes into a comment.
fn notice_with_words(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["notice", "notices"]) || money_from(&typed.pieces, 1).is_some() {
        return None;
    }
    let (first, end, date) = date_from(&typed.pieces, 1)?;
    let others: Vec<Piece> = [&typed.pieces[1..first], &typed.pieces[end..]].concat();
    if let Some((_, _, other)) = date_from(&others, 0) {
        return Some(Answer::say(
            "a notice has one date, and this line has two",
            format!(
                "keep `notice {date}` if the notice is of that day, and put the other one, {other}, at the end of the line, after a `#`"
            ),
        ));
    }
    let is_filler = |piece: &Piece| {
        piece.is_mark(",;:.=-–()")
            || piece.is_word(&["date", "dated", "on", "of", "the", "is", "was"])
    };
    let said: Vec<Piece> = others.iter().filter(|piece| !is_filler(piece)).cloned().collect();
    if said.iter().any(|piece| piece.is_number() || piece.sort == Sort::Text) {
        return None;
    }
    let comment = if said.is_empty() { String::new() } else { format!("  # {}", join(&said)) };
    let line = format!("notice {date}{comment}");
    let cause = if said.is_empty() {
        "a date is written year-month-day"
    } else {
        "a notice has its date, as year-month-day; anything else goes into a comment"
    };
    (line != typed.line).then(|| Answer::line(line, cause))
}

/// `measured 20 February`: the year is missing.
fn without_year(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["measured", "notice", "taped", "date"])
        || date_from(&typed.pieces, 1).is_some()
    {
        return None;
    }
    let numbers: Vec<usize> =
        (1..typed.pieces.len()).filter(|&at| typed.pieces[at].is_number()).collect();
    let number = |at: usize| typed.pieces[at].text.parse::<i8>().ok();
    let named =
        typed.pieces.iter().find_map(|piece| super::month_named(&piece.text.to_lowercase()));
    let (month, day, year) = match (named, &numbers[..]) {
        (Some(month), [day]) => (month, number(*day)?, None),
        // `10 Oct 26`, `Oct 12, 26`
        (Some(month), [day, year]) => (month, number(*day)?, Some(number(*year)?)),
        // `notice postmarked 4/17`
        (None, [month, day]) if typed.pieces[month + 1].is_mark("/") && *day == month + 2 => {
            (number(*month)?, number(*day)?, None)
        }
        _ => return None,
    };
    if !(1..=12).contains(&month) || !(1..=31).contains(&day) {
        return None;
    }
    let first = if typed.says(0, &["notice"]) { "notice" } else { "measured" };
    let who = match first {
        "notice" => String::new(),
        _ => format!(
            "{}{}",
            said_after(typed, "by", &["by"]),
            said_after(typed, "with", &["with", "using", "w"])
        ),
    };
    Some(match year {
        Some(year) => Answer::line(
            format!("{first} 20{year:02}-{month:02}-{day:02}{who}"),
            "a date is written year-month-day",
        ),
        None => Answer::say(
            "the year of the date is missing",
            format!("write `{first}`, the year, and then `-{month:02}-{day:02}{who}`"),
        ),
    })
}

/// ` by "me"` of `measured by me, March 7`: what stands after one of these words, up to the next mark, number or word
/// of the line's own.
fn said_after(typed: &Typed<'_>, word: &str, words: &[&str]) -> String {
    let Some(at) = typed.find(1, words) else { return String::new() };
    let ends = |at: usize| {
        typed.says(at, &["by", "with", "using", "on", "w"])
            || typed.piece(at).is_some_and(|piece| piece.is_number() || piece.is_mark(",;.()"))
    };
    let end = (at + 1..typed.pieces.len()).find(|&at| ends(at)).unwrap_or(typed.pieces.len());
    let said = super::plainly(typed.text(at + 1, end).trim_start_matches('/'));
    if said.is_empty() { String::new() } else { format!(" {word} \"{said}\"") }
}
