//! The calls of a lot in another unit than the file's, and what stands among them: `lot in feet`, `N 1 30 W 380 to POB`,
//! `2.87 ac`.

use super::super::pieces::{Piece, Sort, cut};
use super::heading::begins_as_call;
use super::measure::{area_at, length_at};
use super::{Answer, Rule, Typed, first_of, is_text};
use crate::sketch::statement::Unit;

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[unit_of_the_calls, to_the_beginning, back_and_area, area_alone];
    first_of(rules, typed)
}

/// The unit that a word names, with its mark.
fn unit_of(word: &Piece) -> Option<(Unit, &'static str)> {
    let units: [(Unit, &str, &[&str]); 3] = [
        (Unit::Feet, "'", &["feet", "foot", "ft"]),
        (Unit::Meters, " m", &["meters", "metres", "meter", "metre", "m", "metric"]),
        (Unit::Inches, "\"", &["inches", "inch"]),
    ];
    units.into_iter().find(|(_, _, words)| word.is_word(words)).map(|(unit, mark, _)| (unit, mark))
}

/// The unit that a line says of the calls of a lot, if it says nothing else, and its mark: `calls in feet`.
pub(in crate::sketch::mend) fn unit_said(pieces: &[Piece]) -> Option<(Unit, &'static str)> {
    let words = [
        "lot",
        "land",
        "calls",
        "call",
        "deed",
        "plat",
        "survey",
        "bearings",
        "bearing",
        "distances",
        "distance",
        "lengths",
        "all",
        "in",
        "are",
        "is",
        "the",
        "units",
        "unit",
        "from",
        "of",
        "numbers",
        "below",
        "these",
        "parcel",
        "boundary",
        "for",
        "dimensions",
        "measurements",
        "given",
        "here",
        "and",
        "measured",
        "us",
    ];
    let begins_lot = pieces.first()?.is_word(&["lot"]);
    let mut unit = None;
    for piece in pieces {
        match unit_of(piece) {
            Some(found) if unit.is_none() => unit = Some(found),
            _ if piece.is_word(&words) || piece.is_mark(":;,.()-–=") => {}
            _ if piece.sort == Sort::Text && begins_lot => {}
            _ => return None,
        }
    }
    unit
}

/// `lot in feet`, `units feet`, `calls in feet` in a file in meters: each length has its mark.
fn unit_of_the_calls(typed: &Typed<'_>) -> Option<Answer> {
    let (unit, mark) = unit_said(&typed.pieces)?;
    let begins_lot = typed.says(0, &["lot", "parcel", "land", "deed", "calls", "survey", "plat"]);
    let beside = &typed.attempt.beside;
    let is_of_lot = typed.is_in_lot()
        || begins_lot
            && (begins_as_call(&beside.after) || typed.says(0, &["lot", "calls", "deed"]));
    if !is_of_lot || unit == typed.attempt.units {
        return None;
    }
    let calls = beside.following.iter().filter_map(|line| {
        let (call, rest) = marked(line, mark)?;
        Some(format!("`{}`", call.get(..call.len() - rest).unwrap_or(&call)))
    });
    let shown: Vec<String> = calls.take(12).collect();
    let calls = match &shown[..] {
        [] => format!("as `bearing N 12° 30' E 120{mark}`"),
        shown => format!("here {}", shown.join(", ")),
    };
    let opens = match typed.is_in_lot() {
        true => "leave this line out".to_owned(),
        false => {
            let name = typed.pieces.iter().position(|piece| is_text(Some(piece)));
            let name = name.map_or("Lot".to_owned(), |at| typed.name(at, at + 1));
            format!("write `lot \"{name}\"` instead of this line")
        }
    };
    let of_file = typed.attempt.units.word();
    Some(Answer::say(
        format!(
            "a number without a unit is taken in {of_file} in the whole file: lengths in another unit have its mark"
        ),
        format!("{opens}, and type the mark after the length of each call, {calls}"),
    ))
}

/// A call with the mark after its length, and how many bytes follow the mark; `None` if the line is no call without one.
pub(in crate::sketch::mend) fn marked(line: &str, mark: &str) -> Option<(String, usize)> {
    if !begins_as_call(line) {
        return None;
    }
    let pieces = cut(line);
    let toward = pieces.iter().position(|piece| piece.is_word(&["e", "w", "east", "west"]))?;
    let number = pieces.get(toward + 1).filter(|number| number.is_number())?;
    if length_at(&pieces, toward + 1)?.has_unit {
        return None;
    }
    let end = number.at + number.text.len();
    let first = pieces.first()?;
    let says_call = first.is_word(&["bearing"]);
    let head = if says_call { "" } else { "bearing " };
    let from = match first.is_word(&["thence", "course"]) {
        true => pieces.get(1)?.at,
        false => first.at,
    };
    let length = number.text.replace(',', "");
    let rest = line.get(end..)?;
    Some((format!("{head}{}{length}{mark}{rest}", line.get(from..number.at)?), rest.len()))
}

/// `N 1 30 W 380 ft to POB`, `W 42 to beginning`: a call or a wall that leads back to where the walk began was measured
/// all the same.
fn to_the_beginning(typed: &Typed<'_>) -> Option<Answer> {
    let at = (2..typed.pieces.len())
        .rev()
        .find(|&at| typed.says(at, &["to", "back"]) && !typed.says(at - 1, &["back", "to"]))?;
    let words = [
        "to",
        "back",
        "the",
        "point",
        "place",
        "of",
        "beginning",
        "pob",
        "p.o.b",
        "start",
        "starting",
        "begin",
        "commencement",
        "where",
        "it",
        "began",
        "started",
        "we",
        "i",
        "p",
        "o",
        "b",
        "corner",
        "iron",
        "pin",
    ];
    let ends = ["beginning", "pob", "start", "starting", "began", "started", "commencement", "b"];
    // `to the point of beginning. 2.87 acres more or less`
    let area = (at..typed.pieces.len())
        .find_map(|first| area_at(&typed.pieces, first).map(|(_, area)| (first, area)));
    let stop = area.as_ref().map_or(typed.pieces.len(), |(first, _)| *first);
    let contains = ["containing", "contains", "being", "about", "or"];
    let only = (at..stop).all(|at| {
        typed.says(at, &words) || typed.says(at, &contains) || typed.pieces[at].is_mark(".,;")
    });
    if !only || typed.find(at, &ends).is_none() {
        return None;
    }
    let before = typed.text(0, at).trim_end_matches([',', ' ', ';']);
    let pieces = cut(before);
    let is_call = begins_as_call(before);
    let begins = pieces.first()?;
    if !begins.is_word(&["bearing"]) && super::super::compass::way_and_back(&begins.text).is_none()
    {
        return None;
    }
    let is_wall = length_at(&pieces, 1).is_some_and(|one| one.end == pieces.len());
    let said = typed.rest(at).trim_end_matches(['.', ',', ';', ' ']);
    let call = if is_call && !begins.is_word(&["bearing"]) { "bearing " } else { "" };
    let has_length = match is_call {
        true => pieces.last().is_some_and(|last| !last.is_word(&["e", "w", "east", "west"])),
        false => is_wall,
    };
    let has_bare_angle = is_call && pieces.iter().filter(|piece| piece.is_number()).count() >= 2;
    if let Some((_, area)) = area {
        let again = super::Typed { line: before, pieces: cut(before), attempt: typed.attempt };
        let written = match super::deeds::answer(&again) {
            Some(Answer::Lines(lines, _)) if lines.len() == 1 => lines.into_iter().next(),
            _ => None,
        };
        let whole = written.unwrap_or_else(|| format!("{call}{before}"));
        return (has_bare_angle && has_length).then(|| {
            Answer::say(
                "a call is one line, and the area of the land stands on the line of the lot",
                format!(
                    "write `{whole}` here, and `recorded {area}` at the end of the line that begins with `lot`, above, as `lot \"Lot\" recorded {area}`"
                ),
            )
        });
    }
    ((is_wall || has_bare_angle) && has_length).then(|| {
        Answer::line(
            format!("{call}{before}  # {said}"),
            "a side that leads back to the start has its length like any other, and so checks the walk",
        )
    })
}

/// The words that stand around the area of a lot.
const AROUND: [&str; 30] = [
    "containing",
    "contains",
    "more",
    "or",
    "less",
    "about",
    "total",
    "area",
    "acreage",
    "is",
    "of",
    "land",
    "lot",
    "calculated",
    "computed",
    "deed",
    "says",
    "in",
    "all",
    "per",
    "the",
    "said",
    "by",
    "plat",
    "survey",
    "m",
    "l",
    "approx",
    "approximately",
    "called",
];

/// `back to POB, 15,090 sq ft`, `thence to the point of beginning, containing 0.35 acres`: the last call, and the area of
/// the land.
fn back_and_area(typed: &Typed<'_>) -> Option<Answer> {
    let first = (1..typed.pieces.len()).find(|&at| area_at(&typed.pieces, at).is_some())?;
    let (end, area) = area_at(&typed.pieces, first)?;
    let words = [
        "then",
        "starting",
        "return",
        "returning",
        "close",
        "closes",
        "comprising",
        "being",
        "corner",
        "an",
        "on",
    ];
    let is_said = |at: usize| {
        typed.says(at, &words) || typed.says(at, &super::calls::BACK) || typed.says(at, &AROUND)
    };
    let only = (0..first)
        .chain(end..typed.pieces.len())
        .all(|at| is_said(at) || typed.pieces[at].is_mark(".,;:()+-–/=±~"));
    let is_back = typed.find(0, &["beginning", "pob", "start", "close", "closes"]).is_some();
    (only && is_back && typed.is_in_lot()).then(|| {
        Answer::say(
            "the call that leads back to where the lot begins is `close`, and the area of the land stands on the line of the lot",
            format!(
                "write `close` here, and `recorded {area}` at the end of the line that begins with `lot`, above, as `lot \"Lot\" recorded {area}`"
            ),
        )
    })
}

/// `2.87 ac.`, `2.87 acres more or less` below the calls: the area of the land.
fn area_alone(typed: &Typed<'_>) -> Option<Answer> {
    let first = (0..typed.pieces.len()).find(|&at| area_at(&typed.pieces, at).is_some())?;
    let (end, area) = area_at(&typed.pieces, first)?;
    let only = (0..first)
        .chain(end..typed.pieces.len())
        .all(|at| typed.says(at, &AROUND) || typed.pieces[at].is_mark(".,;:()+-–/=±~"));
    let is_of_land = area.ends_with("acres") || area.ends_with("hectares");
    (only && is_of_land && typed.is_in_lot()).then(|| {
        Answer::say(
            "the area of the land stands on the line of the lot, and is compared with its calls",
            format!(
                "leave this line out, and write `recorded {area}` at the end of the line that begins with `lot`, above, as `lot \"Lot\" recorded {area}`"
            ),
        )
    })
}
