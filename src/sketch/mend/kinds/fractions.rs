//! Parts of a foot in words, and numbers of something that has no length.

use super::super::lengths::spoken;
use super::super::pieces::{Piece, Sort};
use super::measure::{length_at, lengths};
use super::walls::{ROUGHLY, is_way};
use super::{Answer, Rule, Typed, first_of};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        dashes_between,
        part_of_a_foot,
        inches_and_a_part,
        part_of_an_inch,
        half_a_centimeter,
        counted_things,
    ];
    first_of(rules, typed)
}

/// `west 14' 0 0/0"`: no part of an inch over.
pub(super) fn nothing_over(typed: &Typed<'_>) -> Option<Answer> {
    let is_nothing = |at: usize| typed.piece(at).is_some_and(|zero| zero.text == "0");
    let at = (1..typed.pieces.len()).find(|&at| {
        let slash = typed.piece(at + 1).is_some_and(|slash| slash.is_mark("/"));
        is_nothing(at) && slash && typed.piece(at + 2).is_some_and(|bottom| bottom.text == "0")
    })?;
    let before = &typed.pieces[at - 1];
    let inches = typed.piece(at + 3).is_some_and(|mark| mark.is_mark("\"”″"));
    let end = at + 3 + usize::from(inches);
    let dash = usize::from(before.is_mark("-–"));
    let first = at.checked_sub(dash)?;
    let whole = match typed.piece(first.checked_sub(1)?)?.is_number() {
        true => "\"",
        false => " 0\"",
    };
    let line = format!("{}{whole} {}", typed.text(0, first), typed.rest(end));
    Some(Answer::line(line.trim_end(), "whole inches have no fraction"))
}

/// `tolerance half an inch`, `veneer three eighths of an inch`: a part of an inch alone, in words.
fn part_of_an_inch(typed: &Typed<'_>) -> Option<Answer> {
    (1..typed.pieces.len()).find_map(|first| {
        let before = &typed.pieces[first - 1];
        let (top, bottom, mut end) = fraction(typed, first)?;
        end += usize::from(typed.says(end, &["of"]));
        end += usize::from(typed.says(end, &["a", "an"]));
        let goes_on = before.is_number()
            || before.is_mark("'’′\"”″")
            || before.is_word(&["and", "a", "feet", "foot", "ft"]);
        let in_words = typed.pieces[first].sort == Sort::Word;
        (in_words && !goes_on && typed.says(end, &["inch", "inches", "in"])).then(|| {
            let line = format!("{} {top}/{bottom}\" {}", typed.text(0, first), typed.rest(end + 1));
            Answer::line(line.trim_end(), "numbers are written in digits")
        })
    })
}

/// `east 42'-7'-1/2"`, `east 42'-7"-1/2"`: dashes between feet, inches and their fraction.
fn dashes_between(typed: &Typed<'_>) -> Option<Answer> {
    let mark = |at: usize, marks: &str| {
        typed.piece(at).is_some_and(|mark| mark.touches && mark.is_mark(marks))
    };
    let whole = |at: usize| typed.piece(at)?.text.parse::<u32>().ok();
    (1..typed.pieces.len()).find_map(|first| {
        whole(first)?;
        let dashed = mark(first + 1, "'’′") && mark(first + 2, "-–");
        let inches = whole(first + 3).filter(|inches| dashed && *inches < 12)?;
        let marked = usize::from(mark(first + 4, "'’′\"”″"));
        let top = first + 4 + marked;
        let (over, under) = (whole(top + 1)?, whole(top + 3).filter(|_| mark(top + 2, "/"))?);
        let fits = mark(top, "-–") && over < under && under <= 64 && mark(top + 4, "'’′\"”″");
        fits.then(|| {
            let feet = &typed.pieces[first].text;
            let line = format!(
                "{} {feet}' {inches} {over}/{under}\" {}",
                typed.text(0, first),
                typed.rest(top + 5)
            );
            Answer::line(
                line.trim_end(),
                "a length has its feet, then its inches with their fraction",
            )
        })
    })
}

/// `west 40' 7" and 2 sixteenths`, `7" plus three eighths of an inch`: what is over the inch, in words.
fn inches_and_a_part(typed: &Typed<'_>) -> Option<Answer> {
    (2..typed.pieces.len()).find_map(|joint| {
        let inches = &typed.pieces[joint - 2];
        let is_inches = typed.pieces[joint - 1].is_mark("\"”″")
            || typed.says(joint - 1, &["inches", "inch", "in"]);
        let is_joined = typed.says(joint, &["and", "plus"]) || typed.pieces[joint].is_mark("&+");
        let first = joint + usize::from(is_joined);
        let (top, bottom, mut end) = fraction(typed, first)?;
        let in_words = !typed.piece(first + 1).is_some_and(|slash| slash.is_mark("/"));
        if !inches.is_number() || inches.text.contains('.') || !is_inches || !in_words {
            return None;
        }
        if typed.says(end, &["of"]) && typed.says(end + 1, &["a", "an"]) {
            end += 2;
        }
        end += usize::from(
            typed.says(end, &["inch"]) || typed.piece(end).is_some_and(|mark| mark.is_mark("\"”″")),
        );
        let line = format!("{} {top}/{bottom}\" {}", typed.text(0, joint - 1), typed.rest(end));
        Some(Answer::line(
            line.trim_end(),
            "a part of an inch is written in digits before its mark",
        ))
    })
}

/// `tolerance half a cm`: half of a metric unit alone, in words.
fn half_a_centimeter(typed: &Typed<'_>) -> Option<Answer> {
    let half = typed.find(1, &["half"])?;
    let unit = half + 1 + usize::from(typed.says(half + 1, &["a", "of"]));
    let unit = unit + usize::from(typed.says(unit, &["a"]));
    let is_metric = typed.says(unit, &["cm", "centimeter", "centimetre", "m", "meter", "metre"]);
    let before = &typed.pieces[half - 1];
    let goes_on = before.is_number() || before.is_word(&["and", "a", "m", "cm", "mm"]);
    (is_metric && !goes_on).then(|| {
        let short = if typed.lower(unit).starts_with('c') { "cm" } else { "m" };
        let line = format!("{} 0.5 {short} {}", typed.text(0, half), typed.rest(unit + 1));
        Answer::line(line.trim_end(), "numbers are written in digits")
    })
}

/// A whole number in digits or words that begins at this piece, and the index of the piece after it.
fn whole(typed: &Typed<'_>, at: usize) -> Option<(i64, usize)> {
    let piece = typed.piece(at)?;
    if piece.is_number() {
        return piece.text.parse().ok().map(|number| (number, at + 1));
    }
    let first = spoken(&piece.text.to_lowercase())?;
    let unit = spoken(&typed.lower(at + 1)).filter(|unit| (1..10).contains(unit));
    match unit.filter(|_| first >= 20 && first % 10 == 0) {
        Some(unit) => Some((first + unit, at + 2)),
        None => Some((first, at + 1)),
    }
}

/// A fraction in words or digits that begins at this piece: its two numbers, and the index of the piece after it.
fn fraction(typed: &Typed<'_>, at: usize) -> Option<(i64, i64, usize)> {
    let slash = typed.piece(at + 1).is_some_and(|slash| slash.is_mark("/"));
    if slash {
        let number = |at: usize| typed.piece(at).filter(|p| p.is_number())?.text.parse().ok();
        let (top, bottom): (i64, i64) = (number(at)?, number(at + 2)?);
        return (top > 0 && top < bottom).then_some((top, bottom, at + 3));
    }
    let parts = |word: &str| {
        Some(match word.trim_end_matches('s') {
            "half" | "halve" => 2,
            "third" => 3,
            "quarter" | "fourth" => 4,
            "fifth" => 5,
            "sixth" => 6,
            "eighth" => 8,
            "tenth" => 10,
            "twelfth" => 12,
            "sixteenth" => 16,
            _ => return None,
        })
    };
    if let Some((top, bottom)) = typed.lower(at).split_once('-')
        && let (Some(top), Some(bottom)) = (spoken(top), parts(bottom))
    {
        return (top > 0 && top < bottom).then_some((top, bottom, at + 1));
    }
    let (top, of) = match typed.lower(at).as_str() {
        "a" | "an" => (1, at + 1),
        "half" => (1, at),
        word => match typed.piece(at).filter(|p| p.is_number()) {
            Some(number) => (number.text.parse().ok()?, at + 1),
            None => (spoken(word)?, at + 1),
        },
    };
    let bottom = parts(&typed.lower(of))?;
    (top > 0 && top < bottom).then_some((top, bottom, of + 1))
}

/// A part of a foot in inches, without a mark: a third is `4`, an eighth `1 1/2`, a fifth `2.4`.
fn inches(top: i64, bottom: i64) -> Option<String> {
    let twelfths = top.checked_mul(12)?;
    let (whole, rest) = (twelfths.div_euclid(bottom), twelfths.rem_euclid(bottom));
    if rest == 0 {
        return Some(whole.to_string());
    }
    let shared = (1..=rest).rev().find(|by| rest % by == 0 && bottom % by == 0)?;
    let (rest, parts) = (rest.div_euclid(shared), bottom.div_euclid(shared));
    if [2, 4, 8, 16, 32, 64].contains(&parts) {
        return Some(if whole == 0 {
            format!("{rest}/{parts}")
        } else {
            format!("{whole} {rest}/{parts}")
        });
    }
    let tenths = rest.checked_mul(10)?;
    (tenths % parts == 0).then(|| format!("{whole}.{}", tenths.div_euclid(parts)))
}

/// `east 22 and a third feet`, `east twenty-two and two thirds feet`, `east 22 feet and a quarter`: feet and a part of a
/// foot in words.
fn part_of_a_foot(typed: &Typed<'_>) -> Option<Answer> {
    let is_feet = |at: usize| {
        typed.says(at, &["feet", "foot", "ft"])
            || typed.piece(at).is_some_and(|mark| mark.is_mark("'’′"))
    };
    (1..typed.pieces.len()).find_map(|first| {
        let before = typed.piece(first.checked_sub(1)?)?;
        if before.is_number() || is_feet(first - 1) || spoken(&before.text.to_lowercase()).is_some()
        {
            return None;
        }
        let (feet, mut at) = whole(typed, first)?;
        let unit_first = is_feet(at);
        at += usize::from(unit_first);
        at += usize::from(unit_first && typed.piece(at).is_some_and(|mark| mark.is_mark(".,")));
        let says_and = typed.says(at, &["and", "plus", "n"])
            || typed.piece(at).is_some_and(|mark| mark.is_mark("&+"));
        at += usize::from(says_and);
        let in_digits = typed.piece(at + 1).is_some_and(|slash| slash.is_mark("/"));
        let (top, bottom, mut end) = fraction(typed, at)?;
        end += usize::from(typed.says(end, &["of"]));
        end += usize::from(typed.says(end, &["a", "one"]));
        let is_inches = typed.says(end, &["inch", "inches", "in"])
            || typed.piece(end).is_some_and(|mark| mark.is_mark("\"”″"));
        let metric = typed.says(end, &["m", "meter", "meters", "metre", "metres", "cm", "mm"]);
        let unit_last = is_feet(end);
        end += usize::from(unit_last || is_inches);
        end += usize::from(unit_last && typed.piece(end).is_some_and(|dot| dot.is_mark(".")));
        // `22 1/3 ft` and `22' 1/2"` are read elsewhere, unless there is an `and` in them.
        if metric || in_digits && (!says_and || is_inches || !unit_first && !unit_last) {
            return None;
        }
        // `40' half finished`, `40', half storage`: half of the space.
        let is_before_a_word = typed.piece(end).is_some_and(|next| next.sort == Sort::Word);
        if !says_and && !unit_last && !is_inches && is_before_a_word {
            return None;
        }
        if !unit_first
            && (is_inches || !unit_last && (typed.attempt.is_metric || !is_way(typed, 0)))
        {
            return None;
        }
        let part = if is_inches { format!("{top}/{bottom}") } else { inches(top, bottom)? };
        let line = format!("{} {feet}' {part}\" {}", typed.text(0, first), typed.rest(end));
        Some(Answer::line(line.trim_end(), "a part of a foot is written in inches"))
    })
}

/// Units that are recognized, rightly spelled or not.
const UNITS: [&str; 21] = [
    "feet",
    "foot",
    "inches",
    "inch",
    "meters",
    "metres",
    "meter",
    "centimeters",
    "millimeters",
    "yards",
    "rods",
    "chains",
    "links",
    "poles",
    "perches",
    "varas",
    "fathoms",
    "pies",
    "pieds",
    "metros",
    "mètres",
];

/// `walked north 31 paces`, `east 12 bricks`: a count of something that has no length.
fn counted_things(typed: &Typed<'_>) -> Option<Answer> {
    typed.attempt.space.as_ref()?;
    // `front stoop 4x6 with 3 steps`: a space that is called by its side.
    let is_known = |at: usize| crate::sketch::nouns::is_known(&typed.lower(at));
    if is_known(1) || is_known(0) && !is_way(typed, 0) {
        return None;
    }
    if lengths(&typed.pieces, 0).iter().any(|(_, measure)| measure.has_unit)
        || typed.pieces.iter().any(|piece| piece.sort == Sort::Text)
    {
        return None;
    }
    let way = (0..typed.pieces.len()).find(|&at| {
        is_way(typed, at)
            && (at == 0 || typed.pieces[at].text.len() > 2 || !typed.pieces[at].touches)
    })?;
    let small = [
        "is", "was", "plus", "minus", "less", "as", "across", "this", "yes", "has", "does",
        "times", "ins", "fts", "seconds", "perhaps", "always", "thus", "us", "inchs", "runs",
        "goes", "houses",
    ];
    let known = crate::sketch::parser::SIDE_WORDS;
    let at = (way + 1..typed.pieces.len()).find(|&at| {
        let is_number =
            |at: usize| typed.pieces[at].is_number() || spoken(&typed.lower(at)).is_some();
        let is_plain = |at: usize| typed.pieces[at].sort == Sort::Word && !is_number(at);
        // `22-7 garage doors`: feet and inches.
        let is_dashed = |at: usize| {
            let before = at.checked_sub(2).and_then(|feet| typed.piece(feet));
            before.is_some_and(Piece::is_number) && typed.pieces[at - 1].is_mark("-")
        };
        // `8 fence panels`
        let is_count = is_number(at - 1) && !is_dashed(at - 1)
            || at > way + 2
                && is_number(at - 2)
                && !is_dashed(at - 2)
                && is_plain(at - 1)
                && at + 1 == typed.pieces.len();
        let word = typed.lower(at);
        let is_plural = word.len() > 3 && word.ends_with('s') || typed.says(at, &["pace", "step"]);
        is_count
            && typed.pieces[at].sort == Sort::Word
            && !typed.pieces[at].touches
            && is_plural
            && !small.contains(&word.as_str())
            && !known.contains(&word.as_str())
            && !ROUGHLY.contains(&word.as_str())
            && !matches!(word.as_str(), "mtrs" | "mtres" | "metros")
            && !UNITS.iter().any(|unit| strsim::osa_distance(&word, unit) <= 1)
    })?;
    let no_length = !typed.pieces[at + 1..].iter().any(Piece::is_number)
        && length_at(&typed.pieces, at).is_none();
    let way = typed.lower(way);
    no_length.then(|| {
        Answer::say(
            format!("`{}` is not a unit of length", typed.text(at, at + 1)),
            format!(
                "measure this wall and write `{way}` with feet and inches, as `42' 7\"`, or meters, as `12.98 m`; if it cannot be measured, write `{way} by closing`, for one wall each way"
            ),
        )
    })
}
