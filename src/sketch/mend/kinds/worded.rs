//! Walls with other words on their line: rooms, photos, remarks, and what was not measured exactly.

use super::super::pieces::{Piece, Sort, join};
use super::measure::{Measure, length_at, lengths};
use super::walls::{ROUGHLY, WAYS, is_way};
use super::{Answer, Typed, quoted, remark};
use crate::units::length::Length;

/// The one length on the line of a wall, and its first piece. If bare numbers are meters, a bare number with decimals
/// is also a length.
pub(super) fn the_length(typed: &Typed<'_>) -> Option<(usize, Measure)> {
    let all = all_lengths(typed);
    match &all[..] {
        [one] => Some(one.clone()),
        _ => None,
    }
}

fn all_lengths(typed: &Typed<'_>) -> Vec<(usize, Measure)> {
    let with_unit: Vec<(usize, Measure)> =
        lengths(&typed.pieces, 1).into_iter().filter(|(_, measure)| measure.has_unit).collect();
    if !with_unit.is_empty() || !typed.attempt.is_metric {
        return with_unit;
    }
    (1..typed.pieces.len()).filter_map(|at| Some((at, bare_meters(typed, at)?))).collect()
}

/// `11.63` or `11,63` in a file in meters.
fn bare_meters(typed: &Typed<'_>, at: usize) -> Option<Measure> {
    let number = typed.piece(at).filter(|piece| piece.is_number())?;
    let text = number.text.replacen(',', ".", 1);
    let (_, decimals) = text.split_once('.')?;
    let has_other_unit = typed.piece(at + 1).is_some_and(|unit| {
        let unit = unit.text.to_lowercase();
        matches!(unit.as_str(), "cm" | "mm" | "ft" | "in" | "mts" | "mtr" | "mtrs" | "mt")
            || unit.starts_with("met")
                && !["meter", "meters", "metre", "metres"].contains(&unit.as_str())
    });
    let has_comma_of_thousands = number.text.contains(',') && decimals.len() == 3;
    if decimals.len() > 3
        || decimals.contains(['.', ','])
        || has_other_unit
        || has_comma_of_thousands
    {
        return None;
    }
    let text = format!("{text} m");
    let length: Length = text.parse().ok()?;
    let unit = usize::from(typed.says(at + 1, &["m", "meter", "meters", "metre", "metres"]));
    Some(Measure { end: at + 1 + unit, length, text, has_unit: true })
}

/// What the line says beside these parts of it, as words after a side with a space before them. `None` where it is not
/// clear what is meant.
pub(super) fn rest(typed: &Typed<'_>, taken: &[(usize, usize)]) -> Option<String> {
    let is_taken = |at: usize| taken.iter().any(|(first, end)| (*first..*end).contains(&at));
    let is_rough = |piece: &Piece| {
        piece.is_word(&ROUGHLY)
            || piece.is_word(&[
                "approximate",
                "guess",
                "guessed",
                "ish",
                "maybe",
                "roughly",
                "probably",
            ])
            || piece.is_mark("~≈?")
    };
    let mut left: Vec<Piece> = Vec::new();
    let (mut rough, mut skipped) = (false, false);
    for (at, piece) in typed.pieces.iter().enumerate() {
        // The point of `w.` or of `approx.`
        let is_point = piece.is_mark(".") && at > 0 && (at == 1 || is_rough(&typed.pieces[at - 1]));
        if is_taken(at) || is_rough(piece) || is_point {
            rough |= is_rough(piece) && !is_taken(at);
            skipped = true;
            continue;
        }
        left.push(Piece { touches: piece.touches && !skipped, ..piece.clone() });
        skipped = false;
    }
    left.retain(|piece| !piece.is_word(&["is", "was", "are", "measures", "length", "long"]));
    let measures = numbers_that_measure(&left) || super::super::lengths::speaks_length(&left);
    if measures || !left.iter().all(may_be_remark) || gives_another_way(&left) {
        return None;
    }
    let means_something = |piece: &Piece| piece.sort == Sort::Word || piece.is_number();
    let estimated = if rough { " estimated" } else { "" };
    if !left.iter().any(means_something) {
        return Some(estimated.to_owned());
    }
    let said = join(&left);
    let said = said.trim_matches(|c: char| " ,;:-–—.=*/+>→".contains(c));
    Some(format!("{estimated} note {}", quoted(&remark(said))))
}

/// Whether this piece may become part of a note: not a quoted text, and not a keyword of a side.
fn may_be_remark(piece: &Piece) -> bool {
    let said_otherwise = [
        "recorded",
        "record",
        "rec",
        "county",
        "cnty",
        "card",
        "assessor",
        "tolerance",
        "tol",
        "veneer",
        "closing",
        "estimated",
        "give",
        "within",
        "rise",
        "flat",
        "bulge",
        "out",
        "radius",
        "minus",
        "less",
        "plus",
        "times",
        "twice",
        "half",
        "quarter",
        "inside",
        "interior",
        "studs",
        "frame",
        "drywall",
        "plan",
        "common",
        "shared",
        "party",
        "to",
        "or",
        "per",
        "bearing",
        "start",
        "corner",
        "not",
        "thick",
        "blueprint",
        "inner",
        "outer",
        "same",
        "calc",
        "calculated",
        "computed",
        "inch",
        "inches",
        "foot",
        "feet",
    ];
    let is_decimal = piece.is_number() && piece.text.contains(['.', ',']);
    let means_more = piece.is_word(&said_otherwise) || piece.is_mark("±°$%×");
    piece.sort != Sort::Text && !means_more && !is_decimal
}

/// Whether a number among these pieces may be a part of a length: any but those after a word, as in `photo 3, 4` or
/// `br 2`.
fn numbers_that_measure(left: &[Piece]) -> bool {
    let counts = |at: usize| {
        at.checked_sub(1).and_then(|before| left.get(before)).is_some_and(|before| {
            before.sort == Sort::Word && !before.is_word(&["and", "to", "or", "x", "by", "plus"])
                || before.is_mark("#.:")
        })
    };
    let listed = |at: usize| at >= 2 && left[at - 1].is_mark(",&-") && left[at - 2].is_number();
    (0..left.len()).any(|at| left[at].is_number() && !counts(at) && !listed(at))
}

/// `… east 4`: another direction with its number, or one that ends the line.
fn gives_another_way(left: &[Piece]) -> bool {
    (0..left.len())
        .any(|at| left[at].is_word(&WAYS[..4]) && left.get(at + 1).is_none_or(Piece::is_number))
}

/// `S lvg rm 34' 3" ph 4, 5`, `N kitchen 7,32`, `E 22' 2" front of garage door`: a wall, its length and a remark.
pub(super) fn wall(typed: &Typed<'_>) -> Option<Answer> {
    if !is_way(typed, 0) {
        return None;
    }
    let (first, measure) = the_length(typed)?;
    let has_number = (1..typed.pieces.len())
        .any(|at| typed.pieces[at].is_number() && !(first..measure.end).contains(&at));
    let is_spoken = (1..typed.pieces.len())
        .any(|at| typed.pieces[at].sort == Sort::Word && !(first..measure.end).contains(&at));
    let is_rough = typed.pieces.iter().any(|piece| piece.is_word(&ROUGHLY));
    let is_bare = measure.text != typed.text(first, measure.end);
    let may_say = ["front", "back"].iter().any(|word| typed.find(2, &[word]).is_some());
    if !is_spoken || first == 1 && !has_number && !is_rough && !is_bare && !may_say {
        return None;
    }
    if first > 1 && typed.says(first - 1, &["by", "x"]) || typed.says(measure.end, &["x", "by"]) {
        return None;
    }
    // Cells of a table, or a photo with its number, have rules of their own.
    let photo = typed.find(measure.end, &["photo", "pic", "picture", "image"]);
    let is_photo = photo.is_some_and(|photo| {
        first == 1 && photo <= measure.end + 1 && photo + 2 == typed.pieces.len()
    });
    if is_photo || typed.line.contains([';', '|', '\t']) {
        return None;
    }
    let rest = rest(typed, &[(0, 1), (first, measure.end)])?;
    let cause = match rest.as_str() {
        "" => "a wall has its direction, then its length",
        " estimated" => "a length that was not measured exactly is `estimated`",
        _ => "a wall has its direction, then its length; anything else goes in a note",
    };
    Some(Answer::line(format!("{} {}{rest}", typed.lower(0), measure.text), cause))
}

/// `W BR1 13' 1" + wall 4" + BR2 11' 10" = 25' 3"`: parts with names, and their sum.
pub(super) fn sum_of_named_parts(typed: &Typed<'_>) -> Option<Answer> {
    if !is_way(typed, 0) {
        return None;
    }
    let all = all_lengths(typed);
    let ((_, last), parts) = all.split_last()?;
    let adds =
        typed.pieces.iter().any(|piece| piece.is_mark("+&") || piece.is_word(&["plus", "and"]));
    // `west 12', out 2', west 6'`: several walls.
    let ways = (0..typed.pieces.len()).filter(|&at| is_way(typed, at)).count();
    if ways > 1 || typed.find(1, &["out", "then"]).is_some() {
        return None;
    }
    let sum: Length = parts.iter().map(|(_, part)| part.length).sum();
    // The last of several parts is no sum because it happens to be as long as the others.
    let says_sum = typed.pieces.iter().any(|piece| piece.is_mark("=→>")) || !adds;
    let is_sum =
        parts.len() >= 2 && says_sum && (sum - last.length).nm().abs() <= Length::INCH.nm();
    (is_sum && (adds || typed.pieces.iter().any(|piece| piece.is_mark("=")) || parts.len() >= 3))
        .then(|| {
            Answer::line(
                format!("{} {}", typed.lower(0), last.text),
                "a wall has one length: the last number is what the parts add up to",
            )
        })
}

/// `west 44' 7" (calculated)`: computed, not measured.
pub(super) fn worked_out(typed: &Typed<'_>) -> Option<Answer> {
    let says = [
        "calculated",
        "calc",
        "calcd",
        "computed",
        "derived",
        "figured",
        "deduced",
        "math",
        "inferred",
        "subtraction",
        "assumed",
    ];
    if !is_way(typed, 0) || typed.find(1, &says).is_none() {
        return None;
    }
    let way = typed.lower(0);
    let filler = |piece: &Piece| {
        piece.is_mark("()[],;:.-–=*")
            || piece.is_word(&says)
            || piece.is_word(&[
                "by", "not", "measured", "only", "from", "others", "the", "other", "walls", "out",
                "was", "is",
            ])
    };
    let measure = length_at(&typed.pieces, 1);
    let after = measure.as_ref().map_or(1, |measure| measure.end);
    if !typed.pieces[after..].iter().all(filler) {
        return None;
    }
    let mut lines = vec![format!("{way} by closing")];
    lines.extend(measure.map(|measure| format!("{way} {} estimated", measure.text)));
    Some(Answer::Lines(
        lines,
        "a wall that was worked out was not measured: it follows from the others `by closing`, or is `estimated`".to_owned(),
    ))
}

/// `west ~40 paced, dog in yard`: with the remark stays that the length is not exact.
pub(super) fn roughly_with_a_remark(typed: &Typed<'_>) -> Option<Answer> {
    let is_rough = typed.piece(1).is_some_and(|mark| mark.is_mark("~≈")) && is_way(typed, 0);
    let one = length_at(&typed.pieces, 2).filter(|_| is_rough)?;
    let said = super::remark(typed.rest(one.end));
    let said = said.trim_matches([',', ';', '.', '(', ')', ' ']);
    let is_all = ["paced", "paced off", "approx", "est", "estimate", "guess"];
    if is_all.contains(&said.to_lowercase().as_str()) {
        return Some(Answer::line(
            format!("{} {} estimated", typed.lower(0), one.text),
            "a length that was not measured exactly is `estimated`",
        ));
    }
    let is_plain = said.contains(char::is_alphabetic)
        && !said.contains(|c: char| c.is_ascii_digit() || "\"#".contains(c));
    is_plain.then(|| {
        Answer::line(
            format!("{} {} estimated  # {said}", typed.lower(0), one.text),
            "a length that was not measured exactly is `estimated`",
        )
    })
}

/// `north 28' 4" +/-`: an approximate length.
pub(super) fn more_or_less(typed: &Typed<'_>) -> Option<Answer> {
    let [(1, measure)] = &lengths(&typed.pieces, 1)[..] else { return None };
    let rest = typed.rest(measure.end).replace(' ', "");
    let says = matches!(
        rest.trim_matches(['(', ')', '.']),
        "+/-"
            | "+-"
            | "±"
            | "-/+"
            | "+or-"
            | "ish"
            | "m/l"
            | "orthereabouts"
            | "orthereabout"
            | "moreorless"
    );
    (is_way(typed, 0) && says).then(|| {
        Answer::line(
            format!("{} {} estimated", typed.lower(0), measure.text),
            "a length that was not measured exactly is `estimated`",
        )
    })
}

/// `north 28' 4" measured inside of fence`… is a remark; `east 3.4 m2` is a length with the mark of an area.
pub(super) fn squared(typed: &Typed<'_>) -> Option<Answer> {
    let unit = typed.piece(2).filter(|unit| unit.sort == Sort::Word)?;
    typed.piece(1).filter(|number| number.is_number() && is_way(typed, 0))?;
    let lower = unit.text.to_lowercase().replace('²', "2");
    let squared = |plain: &str| lower.strip_prefix(plain) == Some("2");
    let plain = ["m", "ft", "cm"].into_iter().find(|plain| squared(plain)).or_else(|| {
        let is_apart = ["m", "ft", "cm"].iter().find(|plain| lower == **plain)?;
        let two = typed.piece(3)?;
        (two.touches && (two.text == "2" || two.is_mark("²"))).then_some(*is_apart)
    })?;
    let end = if lower == plain { 4 } else { 3 };
    let line = format!("{} {} {plain} {}", typed.lower(0), typed.text(1, 2), typed.rest(end));
    Some(Answer::line(line.trim_end(), "a length has no square: that is the unit of an area"))
}
