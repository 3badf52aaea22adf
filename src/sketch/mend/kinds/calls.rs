//! Calls of a deed in another order or another notation.

use super::super::pieces::Sort;
use super::measure::length_at;
use super::{Answer, Rule, Typed, digits, first_of};

/// Recognizes a call; `None` if no rule does.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        west_first,
        quadrant_last,
        miles,
        points_for_marks,
        word_before,
        half_a_bearing,
        call_after_its_length,
        sixty,
        bare_angle,
        call_alone,
        super::deed_curves::answer,
        back_with_a_length,
    ];
    first_of(rules, typed)
}

/// The angle that begins at this piece, in seconds, and the index after it.
fn angle(typed: &Typed<'_>, at: usize) -> Option<(i64, usize)> {
    let number = |at: usize| -> Option<i64> {
        typed.piece(at).filter(|piece| digits::is_small(piece))?.text.parse().ok()
    };
    let mark = |at: usize, marks: &str| typed.piece(at).is_some_and(|piece| piece.is_mark(marks));
    let mut all = number(at).filter(|_| mark(at + 1, "°º˚"))?.checked_mul(3_600)?;
    let mut end = at + 2;
    for (marks, seconds) in [("'’′", 60), ("\"”″", 1)] {
        if let Some(part) = number(end).filter(|_| mark(end + 1, marks)) {
            all = all.checked_add(part.checked_mul(seconds)?)?;
            end += 2;
        }
    }
    Some((all, end))
}

/// `bearing W 1° 7' 30" S 112.07'`: a bearing begins at north or south.
fn west_first(typed: &Typed<'_>) -> Option<Answer> {
    let first = typed.first_of_call();
    let toward = match typed.lower(first).as_str() {
        "w" | "west" => "W",
        "e" | "east" => "E",
        _ => return None,
    };
    let (seconds, end) = angle(typed, first + 1)?;
    let from = match typed.lower(end).as_str() {
        "n" | "north" => "N",
        "s" | "south" => "S",
        _ => return None,
    };
    let left = 324_000_i64.checked_sub(seconds).filter(|left| (0..=324_000).contains(left))?;
    let (degrees, minutes, seconds) = (left.div_euclid(3_600), left.div_euclid(60) % 60, left % 60);
    let mut written = format!("{degrees}°");
    if minutes > 0 || seconds > 0 {
        written.push_str(&format!(" {minutes}'"));
    }
    if seconds > 0 {
        written.push_str(&format!(" {seconds}\""));
    }
    let rest = typed.rest(end + 1);
    length_at(&typed.pieces, end + 1)?;
    // The two letters may have been exchanged.
    let as_typed = typed.text(first + 1, end);
    Some(Answer::Lines(
        vec![
            format!("bearing {from} {written} {toward} {rest}"),
            format!("bearing {from} {as_typed} {toward} {rest}"),
        ],
        "a bearing is measured from north or south: the same line, counted from there, or with its two letters exchanged; look at the deed".to_owned(),
    ))
}

/// `bearing 87° 44' 30" SE 85.25'`: the quadrant after the angle.
fn quadrant_last(typed: &Typed<'_>) -> Option<Answer> {
    let first = typed.first_of_call();
    let (_, end) = angle(typed, first)?;
    let (north, east) = super::super::compass::slant(&typed.lower(end))?;
    let letter = |word: &str| word.chars().next().map(|c| c.to_ascii_uppercase());
    let (from, toward) = (letter(north)?, letter(east)?);
    length_at(&typed.pieces, end + 1)?;
    let angle = typed.text(first, end);
    Some(Answer::line(
        format!("bearing {from} {angle} {toward} {}", typed.rest(end + 1)),
        "a bearing has its angle between `N` or `S` and `E` or `W`",
    ))
}

/// Where a bearing ends that begins at this piece: `N 45° 30' E`.
pub(super) fn bearing_end(typed: &Typed<'_>, first: usize) -> Option<usize> {
    if !typed.says(first, &["n", "s", "north", "south"]) {
        return None;
    }
    let (_, end) = angle(typed, first + 1)?;
    typed.says(end, &["e", "w", "east", "west"]).then_some(end + 1)
}

/// `N 45° E 1/2 mile`
fn miles(typed: &Typed<'_>) -> Option<Answer> {
    let first = typed.first_of_call();
    let end = bearing_end(typed, first)?;
    let number = typed.piece(end)?.text.parse::<rust_decimal::Decimal>().ok()?;
    let slash = typed.piece(end + 1).is_some_and(|slash| slash.is_mark("/"));
    let (miles, unit) = if slash {
        let under = typed.piece(end + 2)?.text.parse::<rust_decimal::Decimal>().ok()?;
        (number.checked_div(under)?, end + 3)
    } else {
        (number, end + 1)
    };
    let feet = miles.checked_mul(rust_decimal::Decimal::from(5_280))?.round_dp(2).normalize();
    (typed.says(unit, &["mile", "miles", "mi"]) && unit + 1 == typed.pieces.len()).then(|| {
        Answer::line(format!("bearing {} {feet}'", typed.text(first, end)), "a mile is 5,280 feet")
    })
}

/// Whether the last word of a line is east or west.
fn ends_in_a_way(typed: &Typed<'_>) -> bool {
    let last = typed.pieces.last();
    last.is_some_and(|last| last.is_word(&["e", "w", "east", "west"]))
}

/// `100 ft S 45° E`: the bearing comes before the length.
fn call_after_its_length(typed: &Typed<'_>) -> Option<Answer> {
    let measure = length_at(&typed.pieces, 0)
        .filter(|measure| measure.has_unit || typed.pieces.len() > 4 && ends_in_a_way(typed))?;
    let mut first = measure.end;
    while typed.piece(first).is_some_and(|mark| mark.is_mark(",;@"))
        || typed.says(first, &["at", "on"])
    {
        first += 1;
    }
    // `100 feet N 45 E`: without its degree mark.
    let bare = typed.says(first, &["n", "s", "north", "south"])
        && typed.piece(first + 1).is_some_and(digits::is_small)
        && typed.says(first + 2, &["e", "w", "east", "west"]);
    if bare && first + 3 == typed.pieces.len() {
        return Some(Answer::line(
            format!(
                "bearing {}° {} {}",
                typed.text(first, first + 2),
                typed.rest(first + 2),
                measure.text
            ),
            "a call is `bearing`, then its angle, then its length",
        ));
    }
    let bearing = match bearing_end(typed, first) {
        Some(end) if end == typed.pieces.len() => typed.text(first, end),
        // `84.50 N 2-15 E`: another rule knows its angle.
        _ if super::heading::begins_as_call(typed.rest(first)) && ends_in_a_way(typed) => {
            typed.rest(first)
        }
        _ => return None,
    };
    Some(Answer::line(
        format!("bearing {bearing} {}", measure.text),
        "a call is `bearing`, then its angle, then its length",
    ))
}

/// `N 89° 59' 60" E 80'`: minutes and seconds are fewer than 60.
fn sixty(typed: &Typed<'_>) -> Option<Answer> {
    let first = typed.first_of_call();
    bearing_end(typed, first)?;
    let too_many = |at: usize| {
        typed
            .piece(at)
            .filter(|piece| piece.is_number())?
            .text
            .parse::<u32>()
            .ok()
            .filter(|part| *part > 59)
    };
    let mark = |at: usize, marks: &str| typed.piece(at).is_some_and(|piece| piece.is_mark(marks));
    let part = too_many(first + 3)
        .filter(|_| mark(first + 4, "'’′"))
        .or_else(|| too_many(first + 5).filter(|_| mark(first + 6, "\"”″")))?;
    Some(Answer::say(
        format!(
            "an angle has fewer than 60 minutes and fewer than 60 seconds, and this one has {part}"
        ),
        "look at the deed: is a digit misread?",
    ))
}

/// `S 45° E`: a call without its length.
fn call_alone(typed: &Typed<'_>) -> Option<Answer> {
    let first = typed.first_of_call();
    let end = bearing_end(typed, first)?;
    (end == typed.pieces.len()).then(|| {
        Answer::say(
            "the length of this call is missing",
            format!("write `bearing {}` and after it the length, `142.67'`; the call that leads back to the start can be `close`", typed.text(first, end)),
        )
    })
}

/// `N 90 E 100` among the calls of a lot: an angle without its degree mark.
fn bare_angle(typed: &Typed<'_>) -> Option<Answer> {
    let first = typed.first_of_call();
    let angle = typed.piece(first + 1).filter(|angle| digits::is_small(angle))?;
    let is_angle = angle.text.parse::<u32>().is_ok_and(|degrees| degrees <= 90);
    let is_call = typed.says(first, &["n", "s", "north", "south"])
        && typed.says(first + 2, &["e", "w", "east", "west"])
        && length_at(&typed.pieces, first + 3).is_some();
    (typed.is_in_lot() && is_angle && is_call).then(|| {
        Answer::line(
            format!("bearing {}° {}", typed.text(first, first + 2), typed.rest(first + 2)),
            "a call is `bearing`, then its angle with its mark, then its length",
        )
    })
}

/// `bearing N 45.30.15 E 100'`: points between degrees, minutes and seconds.
fn points_for_marks(typed: &Typed<'_>) -> Option<Answer> {
    let first = typed.first_of_call();
    let angle = typed.piece(first + 1).filter(|angle| angle.is_number())?;
    let parts: Vec<&str> = angle.text.split('.').collect();
    let [degrees, minutes, seconds] = parts[..] else { return None };
    let is_part =
        |part: &str| part.len() == 2 && part < "60" && part.bytes().all(|b| b.is_ascii_digit());
    let fits = typed.says(first, &["n", "s", "north", "south"])
        && typed.says(first + 2, &["e", "w", "east", "west"])
        && degrees.len() <= 2
        && is_part(minutes)
        && is_part(seconds);
    fits.then(|| {
        Answer::line(
            format!(
                "bearing {} {degrees}° {minutes}' {seconds}\" {}",
                typed.text(first, first + 1),
                typed.rest(first + 2)
            ),
            "an angle has its marks: degrees `°`, minutes `'` and seconds `\"`",
        )
    })
}

/// `chord N 45° E 28.3'`, `along the road N 45° E 100'`: words before a call.
fn word_before(typed: &Typed<'_>) -> Option<Answer> {
    let first =
        (1..typed.pieces.len().min(7)).find(|&first| bearing_end(typed, first).is_some())?;
    let end = bearing_end(typed, first)?;
    let measure = length_at(&typed.pieces, end).filter(|measure| measure.has_unit)?;
    let known = ["bearing", "thence", "tie", "arc", "diagonal", "true", "overall", "curve"];
    let plain = typed.pieces[..first]
        .iter()
        .all(|piece| piece.sort == Sort::Word && !piece.is_word(&known) || piece.is_mark(",:;-–"));
    (plain && measure.end == typed.pieces.len()).then(|| {
        Answer::line(
            format!("bearing {}  # {}", typed.rest(first), super::remark(typed.text(0, first)).trim_end_matches([',', ':', ' '])),
            "a call is `bearing`, its angle and its length; anything else goes into a comment at the end of the line",
        )
    })
}

/// `S 45° 100'`: a bearing without E or W.
fn half_a_bearing(typed: &Typed<'_>) -> Option<Answer> {
    let first = typed.first_of_call();
    if !typed.says(first, &["n", "s", "north", "south"]) {
        return None;
    }
    let (_, end) = angle(typed, first + 1)?;
    let measure =
        length_at(&typed.pieces, end).filter(|measure| measure.end == typed.pieces.len())?;
    let text = typed.text(first, end);
    Some(Answer::Lines(
        ["E", "W"].map(|toward| format!("bearing {text} {toward} {}", measure.text)).into(),
        "a bearing ends in `E` or `W`: look at the deed".to_owned(),
    ))
}

/// The words that lead back to where a lot begins.
pub(super) const BACK: [&str; 13] = [
    "to",
    "the",
    "point",
    "place",
    "of",
    "beginning",
    "pob",
    "thence",
    "back",
    "and",
    "start",
    "closing",
    "for",
];

/// `to the point of beginning, 128 ft`: the call that leads back has a length of its own.
fn back_with_a_length(typed: &Typed<'_>) -> Option<Answer> {
    let measure = super::measure::lengths(&typed.pieces, 0).into_iter().next()?;
    let (first, measure) = measure;
    let says = typed.find(0, &["beginning", "pob"]).is_some();
    let only = (0..typed.pieces.len()).all(|at| {
        (first..measure.end).contains(&at)
            || typed.says(at, &BACK)
            || typed.pieces[at].is_mark(",.:;")
    });
    (says && only && measure.has_unit).then(|| {
        Answer::line(
            format!("close  # {}", typed.line),
            "`close` is the straight call back to the start, whose length follows; anything else goes into a comment",
        )
    })
}
