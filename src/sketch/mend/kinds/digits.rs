//! Numbers garbled by typing, misreading, or a spreadsheet.

use rust_decimal::Decimal;

use super::super::pieces::{Piece, Sort, join};
use super::measure::length_at;
use super::walls::is_way;
use super::{Answer, Rule, Typed, first_of};
use crate::units::length::{Form, Length, WrittenLength};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[letters, split_words, failed_cell, formula, marks_alike, too_fine];
    first_of(rules, typed)
}

/// The digit for which a letter is mistaken, on a keyboard or by text recognition.
pub(in crate::sketch::mend) fn digit(c: char) -> Option<char> {
    Some(match c {
        'o' | 'O' | 'Q' => '0',
        'l' | 'I' | '|' => '1',
        'Z' => '2',
        'S' => '5',
        'B' => '8',
        digit if digit.is_ascii_digit() => digit,
        _ => return None,
    })
}

/// `28' O4"`, `4l' 7"`, `2B' 4"`: letters in a number that has its mark.
fn letters(typed: &Typed<'_>) -> Option<Answer> {
    if !is_way(typed, 0) && !typed.attempt.knows_first {
        return None;
    }
    let mut words: Vec<String> = typed.line.split(' ').map(str::to_owned).collect();
    let mut changed = false;
    let mut without = None;
    for at in 1..words.len() {
        let after_number = words[at - 1].ends_with(['\'', '’'])
            && words[at - 1].starts_with(|c: char| c.is_ascii_digit());
        // `6' l 1/2"`: a one alone before a fraction of an inch.
        let before_fraction = words.get(at + 1).is_some_and(|next| {
            next.starts_with(|c: char| c.is_ascii_digit())
                && next.contains('/')
                && next.ends_with(['"', '”'])
        });
        let after_inches = at > 1
            && words[at - 1].bytes().all(|b| b.is_ascii_digit())
            && words[at - 2].ends_with(['\'', '’']);
        let is_alone =
            matches!(words[at].as_str(), "l" | "I" | "|") && after_number && before_fraction;
        if is_alone {
            "1".clone_into(&mut words[at]);
            changed = true;
            continue;
        }
        // `6' l/2"`
        let begins = ["l/", "I/", "i/"].iter().find_map(|one| words[at].strip_prefix(one));
        let follows = after_number || after_inches;
        if let Some(rest) = begins.filter(|rest| follows && rest.ends_with(['"', '”'])) {
            words[at] = format!("1/{rest}");
            changed = true;
            continue;
        }
        if let Some(number) = without_letters(&words[at], after_number) {
            // `l52'`: the letter may as well not belong there.
            let bare = words[at].strip_prefix(['l', 'I', 'o', 'O']).unwrap_or_default();
            if bare.chars().take_while(char::is_ascii_digit).count() > 1 {
                without = Some((at, bare.to_owned()));
            }
            words[at] = number;
            changed = true;
        }
    }
    let line = words.join(" ");
    const CAUSE: &str = "a letter is typed in a number: O for 0, l for 1, S for 5 or B for 8";
    if !changed || !typed.attempt.is_side {
        return None;
    }
    let Some((at, bare)) = without else { return Some(Answer::line(line, CAUSE)) };
    words[at] = bare;
    Some(Answer::Lines(
        vec![line, words.join(" ")],
        format!("{CAUSE}, or it does not belong there"),
    ))
}

/// A number with its mark, where some of its digits are letters; `None` if it is not one.
fn without_letters(word: &str, after_feet: bool) -> Option<String> {
    let end = word.find(|c: char| digit(c).is_none())?;
    let (number, mark) = word.split_at(end);
    let has_mark = mark.starts_with(['\'', '’', '"', '”']);
    let has_letter = number.contains(|c: char| !c.is_ascii_digit());
    // `O'` alone may begin a name.
    let is_number = number.contains(|c: char| c.is_ascii_digit()) || after_feet;
    if number.is_empty() || !has_mark || !is_number {
        return None;
    }
    let own: String = number.chars().filter_map(digit).collect();
    let rest = &mark[mark.chars().next()?.len_utf8()..];
    let (first, has_more) = (&mark[..mark.len() - rest.len()], !rest.is_empty());
    let rest = if has_more {
        without_letters(rest, true).unwrap_or_else(|| rest.to_owned())
    } else {
        String::new()
    };
    let all = format!("{own}{first}{rest}");
    (has_letter || all != word).then_some(all)
}

/// `44' 7 inch es`, `nor th 28'`: a word split by a space.
fn split_words(typed: &Typed<'_>) -> Option<Answer> {
    const WHOLE: [&str; 16] = [
        "inches",
        "inch",
        "feet",
        "foot",
        "meters",
        "metres",
        "north",
        "south",
        "east",
        "west",
        "recorded",
        "estimated",
        "closing",
        "garage",
        "porch",
        "living",
    ];
    let at = (0..typed.pieces.len().saturating_sub(1)).find(|&at| {
        let (one, two) = (&typed.pieces[at], &typed.pieces[at + 1]);
        let whole = format!("{}{}", one.text, two.text).to_lowercase();
        one.sort == Sort::Word && two.sort == Sort::Word && !two.touches && WHOLE.contains(&whole.as_str())
            // `e ast` and `in ches`, but not `no rth` of two words that both say something else.
            && !WHOLE.contains(&two.text.to_lowercase().as_str())
    })?;
    let mut pieces = typed.pieces.clone();
    let tail = pieces.remove(at + 1);
    pieces[at].text += &tail.text;
    let whole = pieces[at].text.clone();
    Some(Answer::line(join(&pieces), format!("the word `{whole}` has a space in it")))
}

/// `east #REF!`, `east #N/A`: a spreadsheet could not compute it.
fn failed_cell(typed: &Typed<'_>) -> Option<Answer> {
    let comment = typed.attempt.beside.comment.as_deref()?.trim();
    let comment = comment.strip_prefix('#').unwrap_or(comment);
    let failed =
        ["REF!", "N/A", "VALUE!", "DIV/0!", "NAME?", "NUM!", "NULL!", "SPILL!", "CALC!", "##"];
    let upper = comment.to_uppercase();
    let is_failed = failed.iter().any(|error| upper.starts_with(error));
    (is_failed && typed.pieces.len() <= 2).then(|| {
        Answer::say(
            format!("`#{comment}` is what a spreadsheet shows where it has no number"),
            format!(
                "write the length that was measured right after `{}`, in feet and inches or in meters",
                way_or_north(typed)
            ),
        )
    })
}

fn way_or_north(typed: &Typed<'_>) -> String {
    if is_way(typed, 0) { typed.lower(0) } else { "north".to_owned() }
}

/// `=44+7/12`, `east =44+7/12`: a formula of a spreadsheet for feet and inches.
fn formula(typed: &Typed<'_>) -> Option<Answer> {
    let equals = usize::from(is_way(typed, 0));
    typed.piece(equals).filter(|mark| mark.is_mark("=+"))?;
    let number = |at: usize| -> Option<Decimal> {
        typed.piece(at).filter(|piece| piece.is_number())?.text.parse().ok()
    };
    let (feet, inches, twelve) = (number(equals + 1)?, number(equals + 3)?, number(equals + 5)?);
    let is_sum = typed.piece(equals + 2)?.is_mark("+") && typed.piece(equals + 4)?.is_mark("/");
    if !is_sum || twelve != Decimal::from(12) || inches >= twelve || typed.pieces.len() > equals + 6
    {
        return None;
    }
    let length = format!("{}' {}\"", feet.normalize(), inches.normalize());
    let cause = "a formula of a spreadsheet: a line has the length itself";
    if equals == 1 {
        return Some(Answer::line(format!("{} {length}", typed.lower(0)), cause));
    }
    Some(Answer::say(
        cause,
        format!(
            "the formula gives `{length}`: write before it the way that the wall runs, `north`, `east`, `south` or `west`"
        ),
    ))
}

/// `44" 7"`: both numbers have the same mark, so one of the marks is wrong.
fn marks_alike(typed: &Typed<'_>) -> Option<Answer> {
    let at = (1..typed.pieces.len().saturating_sub(2)).find(|&at| {
        let is_inch = |at: usize| typed.piece(at).is_some_and(|mark| mark.is_mark("\"”″"));
        typed.pieces[at].is_number()
            && is_inch(at + 1)
            && length_at(&typed.pieces, at + 2)
                .is_some_and(|inches| inches.is_inches_alone() && inches.is_inches())
    })?;
    let inches = length_at(&typed.pieces, at + 2)?;
    let feet = typed.pieces[at].text.parse::<u32>().ok().filter(|feet| *feet > 0)?;
    let line = format!("{} {feet}' {} {}", typed.text(0, at), inches.text, typed.rest(inches.end));
    is_way(typed, 0)
        .then(|| Answer::line(line.trim_end(), "two numbers have an inch mark: the feet take `'`"))
}

/// `east 44.58333333`: more decimals than a tape has, as a spreadsheet shows them.
fn too_fine(typed: &Typed<'_>) -> Option<Answer> {
    let at = (1..typed.pieces.len()).find(|&at| {
        typed.pieces[at].is_number()
            && typed.pieces[at].text.split_once('.').is_some_and(|(_, decimals)| decimals.len() > 4)
    })?;
    let number: Decimal = typed.pieces[at].text.parse().ok()?;
    if !is_way(typed, 0) {
        return None;
    }
    let is_metric = typed.says(at + 1, &["m", "meter", "meters", "metre", "metres"]);
    let has_mark = typed.piece(at + 1).is_some_and(|mark| mark.is_mark("'’′"))
        || typed.says(at + 1, &["ft", "feet", "foot"]);
    let other_unit = typed.piece(at + 1).is_some_and(|next| {
        next.is_mark("\"”″") || next.is_word(&["in", "cm", "mm", "inch", "inches"])
    });
    let end = at + 1 + usize::from(is_metric || has_mark);
    let line = |length: &str| {
        format!("{} {length} {}", typed.text(0, at), typed.rest(end)).trim_end().to_owned()
    };
    if other_unit {
        return None;
    }
    if is_metric || typed.attempt.is_metric && !has_mark {
        return Some(Answer::line(
            line(&format!("{} m", number.round_dp(3).normalize())),
            "a tape shows no more than millimeters",
        ));
    }
    Some(Answer::line(
        line(&feet_and_inches(number)?),
        "a tape shows no more than fractions of an inch: this is the same length to 1/16 of an inch",
    ))
}

/// Feet as decimals in feet and inches, to 1/16 of an inch.
fn feet_and_inches(feet: Decimal) -> Option<String> {
    use rust_decimal::prelude::ToPrimitive;
    let sixteenths = feet.checked_mul(Decimal::from(192))?.round().to_i64()?;
    let nm = sixteenths.checked_mul(Length::INCH.nm())?.div_euclid(16);
    Some(WrittenLength::new(Length::from_nm(nm), Form::FeetAndInches).to_string())
}

/// Whether a piece is a number of few digits.
pub(super) fn is_small(piece: &Piece) -> bool {
    piece.is_number() && piece.text.len() <= 3 && !piece.text.contains(['.', ','])
}
