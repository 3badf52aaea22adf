//! Suggestions for whole lines that are calls of a deed.

use super::measure::length_at;
use super::{Answer, Typed, quoted};

const CALL: &str = "a call is `bearing`, N or S, the angle with its marks, E or W, and the length";

/// Suggestions for a call with a deed's words around it, or with other marks in its angle.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(
        0,
        &[
            "bearing", "thence", "th", "then", "north", "south", "n", "s", "running", "along",
            "call", "course",
        ],
    );
    if typed.says(0, &["azimuth", "az", "azm"]) {
        return Some(Answer::line(
            format!("bearing {}", typed.rest(1).replacen('-', "° ", 1)),
            "an angle clockwise from north is a `bearing` too, from N or S toward E or W",
        ));
    }
    if !begins {
        return None;
    }
    if let Some(due) = due(typed) {
        return Some(due);
    }
    let from =
        (0..typed.pieces.len().min(4)).find(|&at| typed.says(at, &["n", "s", "north", "south"]));
    match from {
        Some(from) => quadrant(typed, from).or_else(|| straight(typed, from)),
        None if typed.says(0, &["bearing"]) => azimuth(typed),
        None => None,
    }
}

/// `bearing due east 80'`, `thence West 80.00 feet`: square to north and south.
fn due(typed: &Typed<'_>) -> Option<Answer> {
    let begins = typed.says(0, &["bearing", "thence", "th"]);
    let at = 1 + usize::from(typed.says(1, &["due"]));
    let toward = match typed.lower(at).as_str() {
        "east" | "e" => "E",
        "west" | "w" => "W",
        _ => return None,
    };
    let mut first = at + 1;
    while typed.says(first, &["a", "distance", "of", "for"])
        || typed.piece(first).is_some_and(|mark| mark.is_mark(","))
    {
        first += 1;
    }
    if !begins || !length_at(&typed.pieces, first)?.has_unit {
        return None;
    }
    finish(typed, &format!("bearing N 90° {toward}"), first)
}

/// The parts of an angle that begins at this piece, in degrees, minutes and seconds, and the index after it.
fn angle(typed: &Typed<'_>, from: usize) -> (Vec<String>, usize) {
    let mut parts: Vec<String> = Vec::new();
    let mut at = from;
    while let Some(piece) = typed.piece(at) {
        let mark = piece.is_mark("°º˚*'’′\"”″-–.:,")
            || piece.is_word(&[
                "deg", "degs", "degree", "degrees", "d", "min", "mins", "minute", "minutes", "m",
                "sec", "secs", "second", "seconds", "s", "and", "o",
            ]);
        if piece.is_number() && parts.len() < 3 {
            parts.push(piece.text.clone());
        } else if !mark || parts.is_empty() {
            break;
        }
        at += 1;
    }
    (parts, at)
}

fn written(parts: &[String]) -> String {
    let marks = ["°", "'", "\""];
    parts
        .iter()
        .zip(marks)
        .map(|(part, mark)| format!("{part}{mark}"))
        .collect::<Vec<_>>()
        .join(" ")
}

/// `thence N 84° 45' 10" E, 94.9 feet to an iron pin`, `N84d45m10sE 94.9'`.
fn quadrant(typed: &Typed<'_>, from: usize) -> Option<Answer> {
    let (parts, mut at) = angle(typed, from + 1);
    // `north 30' 2", east 44' 5"` is two walls.
    let is_angle = typed.piece(from + 2).is_some_and(|mark| mark.is_mark("°º˚-–:*"))
        || typed.says(from + 2, &["deg", "degs", "degree", "degrees", "d"])
        || typed.says(0, &["bearing", "thence", "th"]);
    if parts.is_empty() || !is_angle {
        return None;
    }
    let toward = typed.lower(at);
    // `10sE`: the letter of the seconds touches the E.
    let toward = match toward.as_str() {
        "e" | "east" | "easterly" | "se" if toward != "se" || typed.piece(at)?.touches => "E",
        "w" | "west" | "westerly" | "sw" if toward != "sw" || typed.piece(at)?.touches => "W",
        _ => return None,
    };
    at += 1;
    while typed.piece(at).is_some_and(|piece| {
        piece.is_mark(",;:=-–")
            || piece.is_word(&[
                "a", "an", "distance", "of", "for", "the", "length", "about", "run", "runs",
                "thence",
            ])
    }) {
        at += 1;
    }
    let letter = typed.lower(from)[..1].to_uppercase();
    let head = format!("bearing {letter} {} {toward}", written(&parts));
    finish(typed, &head, at)
}

/// The call made of the bearing `head` and the length that begins at piece `at`; `None` if there is none.
fn finish(typed: &Typed<'_>, head: &str, at: usize) -> Option<Answer> {
    let measure = length_at(&typed.pieces, at)?;
    let rest = typed.rest(measure.end);
    let first = typed.lower(measure.end);
    // A second call follows.
    let again = typed.find(measure.end, &["thence", "then"]);
    if again.is_some_and(|again| typed.pieces[again..].iter().any(super::Piece::is_number)) {
        return Some(Answer::say(
            "each call goes on its own line",
            format!("write `{head} {}` and each call after it on a line of its own", measure.text),
        ));
    }
    let is_unit = [
        "rod", "rods", "pole", "poles", "perch", "perches", "chain", "chains", "ch", "link",
        "links", "vara", "varas", "survey", "us", "m", "yd", "yards",
    ];
    let known =
        ["recorded", "tolerance", "estimated", "from", "common", "photo", "note", "veneer", "wall"];
    let line = if rest.is_empty() {
        format!("{head} {}", measure.text)
    } else if is_unit.contains(&first.as_str()) || known.contains(&first.as_str()) {
        format!("{head} {} {rest}", measure.text)
    } else {
        format!("{head} {} note {}", measure.text, quoted(rest.trim_start_matches([',', ';', ' '])))
    };
    (line != typed.line).then(|| Answer::line(line, CALL))
}

/// `bearing north 142.67' along Harrow Lane` becomes a bearing that runs due north.
fn straight(typed: &Typed<'_>, from: usize) -> Option<Answer> {
    if !typed.says(0, &["bearing", "thence", "th"]) {
        return None;
    }
    let measure = length_at(&typed.pieces, from + 1)?;
    if !measure.has_unit {
        return None;
    }
    let letter = typed.lower(from)[..1].to_uppercase();
    finish(typed, &format!("bearing {letter} 0° E"), from + 1)
}

/// `bearing 1° 34' 142.67'`: suggests an angle clockwise from north, or asks for missing letters.
fn azimuth(typed: &Typed<'_>) -> Option<Answer> {
    let degrees = typed.piece(1).filter(|piece| piece.is_number())?;
    if !typed.piece(2).is_some_and(|piece| piece.is_mark("°º˚")) {
        return None;
    }
    let full = |parts: &[String]| -> Option<String> {
        // In seconds, clockwise from north.
        let mut all: i64 = 0;
        for (part, seconds) in parts.iter().zip([3_600, 60, 1]) {
            all = all.checked_add(part.parse::<i64>().ok()?.checked_mul(seconds)?)?;
        }
        let (from, angle, toward) = match all {
            a if a <= 324_000 => ("N", a, "E"),
            a if a <= 648_000 => ("S", 648_000 - a, "E"),
            a if a <= 972_000 => ("S", a - 648_000, "W"),
            a if a <= 1_296_000 => ("N", 1_296_000 - a, "W"),
            _ => return None,
        };
        let split = [angle.div_euclid(3_600), angle.div_euclid(60) % 60, angle % 60];
        let split: Vec<String> = split[..parts.len()].iter().map(i64::to_string).collect();
        Some(format!("bearing {from} {} {toward}", written(&split)))
    };
    let minutes = typed.piece(3).filter(|piece| {
        piece.is_number() && typed.piece(4).is_some_and(|mark| mark.is_mark("'’′"))
    })?;
    let mut parts = vec![degrees.text.clone(), minutes.text.clone()];
    let mut at = 5;
    if typed.piece(5).is_some_and(super::Piece::is_number)
        && typed.piece(6).is_some_and(|mark| mark.is_mark("\"”″"))
    {
        parts.push(typed.lower(5));
        at = 7;
    }
    let Some(Answer::Lines(lines, _)) = finish(typed, &full(&parts)?, at) else { return None };
    Some(Answer::Lines(
        lines,
        "a bearing begins at N or S and ends in E or W; this is the angle clockwise from north, if that is what was meant".to_owned(),
    ))
}
