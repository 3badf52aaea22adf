//! Sides on which a word of the format stands after a remark, or whose length is said in halves, in another language or
//! with a misplaced mark: what they say is kept, and not put into a note.

use super::super::compass::way_word;
use super::super::lengths::spoken;
use super::super::pieces::{Piece, Sort};
use super::measure::{length_at, written};
use super::walls::is_way;
use super::{Answer, Rule, Typed, first_of, quoted};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    if let Some(answer) = other_language(typed) {
        return Some(answer);
    }
    if !is_way(typed, 0) {
        return None;
    }
    let rules: &[Rule] = &[
        is_not,
        from_where,
        exchanged,
        too_many_inches,
        words_after_a_remark,
        about,
        half_inches,
        spoken_halves,
        eighths,
        point_at_the_end,
        other_mark,
        part_taken_off,
        bare_tolerance,
    ];
    first_of(rules, typed)
}

/// `este 11.22 metros`, `norte 28 pies 4 pulgadas`, `ouest 12 pi 6 po`.
pub(super) fn other_language(typed: &Typed<'_>) -> Option<Answer> {
    let way = way_word(&typed.lower(0))?;
    let unit = |word: &str| {
        Some(match word {
            "pies" | "pie" | "pi" | "pieds" | "pied" | "fuß" | "fuss" => "ft",
            "pulgadas" | "pulgada" | "po" | "pouces" | "pouce" | "zoll" => "in",
            "metros" | "metro" | "mètres" | "mètre" | "metern" => "m",
            "centímetros" | "centimètres" | "zentimeter" => "cm",
            _ => return None,
        })
    };
    let mut line = way.to_owned();
    let mut foreign = false;
    for piece in typed.pieces.get(1..)? {
        if piece.is_number() {
            let is_metric = typed.pieces.iter().any(|piece| {
                unit(&piece.text.to_lowercase()).is_some_and(|unit| unit.contains('m'))
            });
            let text = if is_metric { piece.text.replace(',', ".") } else { piece.text.clone() };
            line = format!("{line} {text}");
        } else if let Some(unit) = unit(&piece.text.to_lowercase()) {
            foreign = true;
            line = format!("{line} {unit}");
        } else if !piece.is_word(&["y", "et", "und"]) && !piece.is_mark(",.:") {
            return None;
        }
    }
    (foreign && typed.piece(1)?.is_number())
        .then(|| Answer::line(line, "the ways and the units of a sides file are English words"))
}

/// Whether nothing but words of a side stands from here to the end of the line: `common`, `from plan`, `veneer none`.
fn is_words_of_a_side(typed: &Typed<'_>, mut at: usize) -> bool {
    while at < typed.pieces.len() {
        let length = |at: usize| length_at(&typed.pieces, at).map(|length| length.end);
        let end = if typed.says(at, &["common", "estimated"]) {
            Some(at + 1)
        } else if typed.says(at, &["from"]) && typed.says(at + 1, &["plan", "record"])
            || typed.says(at, &["veneer"]) && typed.says(at + 1, &["none"])
        {
            Some(at + 2)
        } else if typed.says(at, &["veneer", "tolerance", "recorded"]) {
            length(at + 1)
        } else {
            None
        };
        match end {
            Some(end) => at = end,
            None => return false,
        }
    }
    true
}

/// `east 42' brick wall common`, `east 42' siding veneer none`, `east 42' behind fence recorded 43'`.
fn words_after_a_remark(typed: &Typed<'_>) -> Option<Answer> {
    let measure = length_at(&typed.pieces, 1)?;
    let end = measure.end;
    let at = (end + 1..typed.pieces.len()).find(|&at| is_words_of_a_side(typed, at))?;
    let said = typed.pieces.get(end..at)?;
    let negates = [
        "not", "no", "in", "un", "never", "is", "was", "isn't", "a", "the", "and", "or", "as",
        "of", "with", "without", "partly", "half",
    ];
    let known = crate::sketch::parser::SIDE_WORDS;
    let plain = said.iter().all(|piece| {
        let lower = piece.text.to_lowercase();
        piece.sort == Sort::Word
            && (lower == "wall" || !known.contains(&lower.as_str()))
            && spoken(&lower).is_none()
            || piece.is_mark(",;:.()-–'’/&")
    });
    let last = said.iter().rev().find(|piece| piece.sort == Sort::Word)?;
    let rough = ["about", "ish", "approx", "approximately", "roughly", "maybe", "around"];
    let records = ["county", "cnty", "record", "card", "assessor", "deed", "cad", "tax"];
    let says_more = said.iter().any(|piece| {
        piece.is_word(&rough) || piece.is_word(&records) || piece.is_word(&["no", "not"])
    });
    (plain && !last.is_word(&negates) && !says_more).then(|| {
        Answer::line(
            format!(
                "{} {} {} note {}",
                typed.lower(0),
                measure.text,
                typed.rest(at),
                quoted(typed.text(end, at).trim_end_matches([',', ';', '-', '–', ' ']))
            ),
            "a remark goes last, in a note",
        )
    })
}

/// `east 30' not common`: what a wall is not needs no word.
fn is_not(typed: &Typed<'_>) -> Option<Answer> {
    let measure = length_at(&typed.pieces, 1)?;
    let at = measure.end;
    let ends = at + 2 == typed.pieces.len();
    (ends && typed.says(at, &["not", "non"]) && typed.says(at + 1, &["common", "estimated"])).then(
        || {
            Answer::line(
                format!("{} {}", typed.lower(0), measure.text),
                "what a wall is not needs no word",
            )
        },
    )
}

/// `east 44' 7" from corner to chimney`: between what it was measured.
fn from_where(typed: &Typed<'_>) -> Option<Answer> {
    let measure = length_at(&typed.pieces, 1).filter(|measure| measure.has_unit)?;
    let at = measure.end;
    let from = typed.says(at, &["from", "between"]) && !typed.says(at + 1, &["plan", "record"]);
    let to = typed.find(at + 2, &["to", "and"]).is_some();
    let rest = typed.pieces.get(at..)?;
    let known = crate::sketch::parser::SIDE_WORDS;
    let plain = rest.iter().skip(1).all(|piece| {
        piece.sort == Sort::Word
            && spoken(&piece.text.to_lowercase()).is_none()
            && !known.contains(&piece.text.to_lowercase().as_str())
    });
    (from && to && plain).then(|| {
        Answer::line(
            format!("{} {} note {}", typed.lower(0), measure.text, quoted(typed.rest(at))),
            "between what it was measured goes in a note",
        )
    })
}

/// `west 7' 21"`: feet and inches in exchanged places, or a digit too many.
fn exchanged(typed: &Typed<'_>) -> Option<Answer> {
    let (feet, inches) = (small(typed, 1)?, small(typed, 3)?);
    let is_feet = typed.piece(2).is_some_and(|mark| mark.is_mark("'’′"));
    let fits = is_feet && is_inch(typed, 4) && typed.pieces.len() == 5;
    (fits && feet < 12 && inches > 12).then(|| {
        Answer::say(
            "after the feet come fewer than 12 inches: were feet and inches exchanged, or is a digit too many?",
            format!(
                "look at your notes: exchanged, it is `{} {inches}' {feet}\"`",
                typed.lower(0)
            ),
        )
    })
}

/// `north 31'14"`: a foot and two inches more, or a digit too many.
fn too_many_inches(typed: &Typed<'_>) -> Option<Answer> {
    let (feet, inches) = (small(typed, 1)?, small(typed, 3)?);
    let is_feet = typed.piece(2).is_some_and(|mark| mark.is_mark("'’′"))
        || typed.says(2, &["ft", "feet", "foot"]);
    let fits = is_feet && is_inch(typed, 4) && typed.pieces.len() == 5 && is_way(typed, 0);
    if !fits || feet < 12 || !(13..100).contains(&inches) {
        return None;
    }
    let way = typed.text(0, 1);
    let line = |feet: u32, inches: u32| format!("{way} {feet}' {inches}\"");
    let (tens, ones) = (inches.div_euclid(10), inches.rem_euclid(10));
    let mut lines = vec![line(feet.saturating_add(inches.div_euclid(12)), inches.rem_euclid(12))];
    lines.extend([line(feet, ones), line(feet, tens)]);
    lines.dedup();
    Some(Answer::Lines(
        lines,
        "after the feet come fewer than 12 inches: were they counted past a foot, as in the first, or is a digit too many? look at your notes".to_owned(),
    ))
}

/// `north 28' 4"-ish`, `north 28' 4" NOT SURE`
fn about(typed: &Typed<'_>) -> Option<Answer> {
    let measure = length_at(&typed.pieces, 1)?;
    let rest = typed.rest(measure.end).replace([' ', '-', '–', '(', ')', '.', ','], "");
    let doubts = ["ish", "notsure", "unsure", "notcertain", "uncertain", "doubtful"];
    doubts.contains(&rest.to_lowercase().as_str()).then(|| {
        Answer::line(
            format!("{} {} estimated", typed.lower(0), measure.text),
            "a length that was not measured exactly is `estimated`",
        )
    })
}

fn small(typed: &Typed<'_>, at: usize) -> Option<u32> {
    typed.piece(at).filter(|piece| super::digits::is_small(piece))?.text.parse().ok()
}

fn is_inch(typed: &Typed<'_>, at: usize) -> bool {
    typed.piece(at).is_some_and(|mark| mark.is_mark("\"”″"))
        || typed.says(at, &["in", "inch", "inches"])
}

/// `42' 7 .5"`, `42' 7. 5"`, `42' 7" .5`, `42' 7 and a half`, `42 feet seven and a half`: part of an inch.
fn half_inches(typed: &Typed<'_>) -> Option<Answer> {
    let feet = small(typed, 1)?;
    let is_feet = typed.piece(2).is_some_and(|mark| mark.is_mark("'’′"))
        || typed.says(2, &["ft", "feet", "foot"]);
    let in_words = spoken(&typed.lower(3)).and_then(|inches| u32::try_from(inches).ok());
    let inches = small(typed, 3).or(in_words).filter(|inches| is_feet && *inches < 12)?;
    let at = 4 + usize::from(is_inch(typed, 4));
    let (part, end) = part_of_an_inch(typed, at)?;
    let end = end + usize::from(is_inch(typed, end));
    (end == typed.pieces.len()).then(|| {
        Answer::line(
            format!("{} {feet}' {inches}{part}\"", typed.lower(0)),
            "the inches and their part are one number",
        )
    })
}

/// `.5`, `and a half`, `one half`: the part of an inch as it is typed, and the index after it.
fn part_of_an_inch(typed: &Typed<'_>, at: usize) -> Option<(String, usize)> {
    let piece = typed.piece(at)?;
    if piece.is_number() && piece.text.starts_with('.') {
        return Some((piece.text.clone(), at + 1));
    }
    if piece.is_mark(".") && piece.touches {
        return small(typed, at + 1).map(|tenths| (format!(".{tenths}"), at + 2));
    }
    let and = at + usize::from(typed.says(at, &["and"]));
    let (part, end) = match (typed.lower(and).as_str(), typed.lower(and + 1).as_str()) {
        ("a" | "one", "half") => ("1/2", and + 2),
        ("half", _) => ("1/2", and + 1),
        ("a" | "one", "quarter") => ("1/4", and + 2),
        ("three", "quarters" | "quarter") => ("3/4", and + 2),
        ("an" | "one", "eighth") => ("1/8", and + 2),
        _ => return None,
    };
    Some((format!(" {part}"), end))
}

/// `west twelve and a half feet`, `east forty two point six feet`
fn spoken_halves(typed: &Typed<'_>) -> Option<Answer> {
    let value = |at: usize| spoken(&typed.lower(at));
    let first = value(1)?;
    let unit = value(2).filter(|unit| first >= 20 && first % 10 == 0 && (1..10).contains(unit));
    let (feet, at) = unit.map_or((first, 2), |unit| (first + unit, 3));
    let (length, end) = if typed.says(at, &["point"]) {
        let tenths = value(at + 1).filter(|tenths| *tenths < 10)?;
        (format!("{feet}.{tenths}'"), at + 2)
    } else {
        let (part, end) = part_of_an_inch(typed, at)?;
        let inches = match part.trim() {
            "1/2" => 6,
            "1/4" => 3,
            "3/4" => 9,
            _ => return None,
        };
        (format!("{feet}' {inches}\""), end)
    };
    let says_feet = typed.says(end, &["feet", "foot", "ft"]);
    (says_feet && end + 1 == typed.pieces.len()).then(|| {
        Answer::line(format!("{} {length}", typed.lower(0)), "numbers are written in digits")
    })
}

/// `east 42-7-4`: feet, inches and eighths of a drawing, or sixteenths.
fn eighths(typed: &Typed<'_>) -> Option<Answer> {
    let dash = |at: usize| typed.piece(at).is_some_and(|mark| mark.is_mark("-–"));
    let (feet, inches, parts) = (small(typed, 1)?, small(typed, 3)?, small(typed, 5)?);
    let fits =
        dash(2) && dash(4) && typed.pieces.len() == 6 && inches < 12 && (1..8).contains(&parts);
    fits.then(|| {
        Answer::say(
            "feet, inches, and a third number: which part of an inch is it?",
            format!(
                "if it is eighths, write `{} {feet}' {inches} {parts}/8\"`; if sixteenths, `{} {feet}' {inches} {parts}/16\"`",
                typed.lower(0),
                typed.lower(0)
            ),
        )
    })
}

/// `south 22.08.`: a full stop at the end of a sentence.
fn point_at_the_end(typed: &Typed<'_>) -> Option<Answer> {
    let number = typed.piece(1).filter(|number| number.is_number())?;
    let ends = typed.pieces.len() == 3 && typed.pieces[2].is_mark(".");
    (ends && number.text.contains('.')).then(|| {
        Answer::line(
            format!("{} {}", typed.lower(0), number.text),
            "a line has no full stop at its end",
        )
    })
}

/// `west 12*6`: a mark of feet, or a size.
fn other_mark(typed: &Typed<'_>) -> Option<Answer> {
    let (feet, inches) = (small(typed, 1)?, small(typed, 3)?);
    let mark = typed.piece(2).filter(|mark| mark.touches && typed.pieces[3].touches)?;
    let is_mark = mark.is_mark("*×") || mark.is_word(&["x"]);
    (is_mark && feet > inches && inches < 12 && typed.pieces.len() == 4).then(|| {
        Answer::say(
            "one wall in feet and inches, or the size of a space?",
            format!(
                "if this wall is {feet} feet {inches} inches long, write `{} {feet}' {inches}\"`; a size is typed as its four sides, one on each line",
                typed.lower(0)
            ),
        )
    })
}

/// `east 44' 7" minus porch 6'`: with the part, or without it.
fn part_taken_off(typed: &Typed<'_>) -> Option<Answer> {
    let measure = length_at(&typed.pieces, 1).filter(|measure| measure.has_unit)?;
    let at = measure.end;
    let takes = typed.says(at, &["minus", "less"]);
    let word = typed.piece(at + 1).filter(|word| takes && word.sort == Sort::Word)?;
    let first =
        at + 2 + usize::from(typed.piece(at + 2).is_some_and(|next| next.sort == Sort::Word));
    let part = length_at(&typed.pieces, first).filter(|part| part.has_unit)?;
    let ends = part.end == typed.pieces.len() && part.length < measure.length;
    (ends && !word.is_word(&["than"])).then(|| {
        let way = typed.lower(0);
        let said = typed.rest(at);
        Answer::Lines(
            vec![
                format!("{way} {}  # {said}", written(measure.length - part.length, &measure)),
                format!("{way} {}  # {said}", measure.text),
            ],
            "a wall has one length: is that part still in it, or taken off already?".to_owned(),
        )
    })
}

/// `east 42' 7 1/2" ±1`: which unit, in feet and inches.
fn bare_tolerance(typed: &Typed<'_>) -> Option<Answer> {
    let measure = length_at(&typed.pieces, 1)?;
    let mut at = measure.end;
    while typed.piece(at).is_some_and(|mark: &Piece| mark.is_mark("+-–/±(")) {
        at += 1;
    }
    let signs = typed.text(measure.end, at).replace([' ', '('], "");
    let says = ["+-", "+/-", "±", "-/+", "+–", "+/–"].contains(&signs.as_str());
    let number = typed.piece(at).filter(|number| number.is_number() && says)?;
    let ends = typed.pieces[at + 1..].iter().all(|piece| piece.is_mark(")."));
    // `40.0' ±0.1`: tenths of feet, as the wall.
    let is_decimal = measure.text.contains('.') && !measure.text.contains('"');
    let unit = if is_decimal { "'" } else { "\"" };
    // `w 40 +/- 2`: of feet without their mark it may be feet as well.
    if !measure.has_unit {
        let in_feet = typed.attempt.units == crate::sketch::statement::Unit::Feet;
        let lines = ["\"", "'"].map(|unit| {
            format!("{} {}' tolerance {}{unit}", typed.lower(0), measure.text, number.text)
        });
        return (ends && in_feet && super::walls::is_way(typed, 0)).then(|| {
            Answer::Lines(
                lines.to_vec(),
                "how exactly a wall was measured goes after `tolerance`, with its unit".to_owned(),
            )
        });
    }
    (ends && !measure.is_metric()).then(|| {
        Answer::line(
            format!("{} {} tolerance {}{unit}", typed.lower(0), measure.text, number.text),
            "how exactly a wall was measured goes after `tolerance`, with its unit",
        )
    })
}
