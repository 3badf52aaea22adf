//! Angles of a deed's calls in another notation: in fractions of a degree, in minutes alone, or past a quarter turn.

use super::measure::length_at;
use super::{Answer, Rule, Typed, digits, first_of};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[fraction_of_a_degree, minutes_alone, past_ninety, from_east_or_west];
    first_of(rules, typed)
}

/// What is wrong with an angle without its marks.
const CAUSE: &str = "an angle has its marks: degrees `°`, minutes `'` and seconds `\"`";

/// What is wrong with an angle that begins at east or west.
const FROM_EAST: &str =
    "a bearing is measured from north or south: the same line, counted from there";

/// The letter of the direction that stands here, as a bearing has it.
fn letter(typed: &Typed<'_>, at: usize) -> Option<char> {
    match typed.lower(at).as_str() {
        "n" | "north" => Some('N'),
        "s" | "south" => Some('S'),
        "e" | "east" => Some('E'),
        "w" | "west" => Some('W'),
        _ => None,
    }
}

/// `bearing S 89 1/2 E 76.3`: half of a degree is 30 minutes.
fn fraction_of_a_degree(typed: &Typed<'_>) -> Option<Answer> {
    let first = typed.first_of_call();
    let number = |at: usize| typed.piece(at).filter(|piece| digits::is_small(piece));
    let whole = |at: usize| number(at)?.text.parse::<u32>().ok();
    let slash = typed.piece(first + 3).is_some_and(|slash| slash.is_mark("/"));
    let (degrees, top, bottom) = (
        whole(first + 1).filter(|degrees| *degrees < 90)?,
        whole(first + 2)?,
        whole(first + 4).filter(|bottom| slash && *bottom > 0)?,
    );
    let degree = usize::from(typed.piece(first + 5).is_some_and(|mark| mark.is_mark("°º˚")));
    let toward = first + 5 + degree;
    let fits = typed.says(first, &["n", "s", "north", "south"])
        && typed.says(toward, &["e", "w", "east", "west"])
        && length_at(&typed.pieces, toward + 1).is_some()
        && top < bottom
        && (60 * top).is_multiple_of(bottom);
    fits.then(|| {
        let minutes = (60 * top).div_euclid(bottom);
        let from = typed.text(first, first + 1);
        Answer::line(
            format!("bearing {from} {degrees}° {minutes}' {}", typed.rest(toward)),
            "a part of a degree is written in minutes: a degree has 60",
        )
    })
}

/// `bearing E 30' S 76.3`, `bearing N 30' E 76.3`: an angle of less than a degree.
fn minutes_alone(typed: &Typed<'_>) -> Option<Answer> {
    let first = typed.first_of_call();
    let minutes = typed.piece(first + 1).filter(|piece| digits::is_small(piece))?;
    let count: u32 = minutes.text.parse().ok().filter(|count| (1..60).contains(count))?;
    let mark = typed.piece(first + 2).is_some_and(|mark| mark.is_mark("'’′"));
    // `N 42' E 30'` among the walls of a house are two of them.
    let mark = mark && (first == 1 || typed.is_in_lot());
    let after = length_at(&typed.pieces, first + 4).filter(|one| one.end == typed.pieces.len())?;
    if !mark {
        return None;
    }
    match (letter(typed, first)?, letter(typed, first + 3)?) {
        (from @ ('N' | 'S'), toward @ ('E' | 'W')) => {
            Some(Answer::line(format!("bearing {from} 0° {count}' {toward} {}", after.text), CAUSE))
        }
        (toward @ ('E' | 'W'), from @ ('N' | 'S')) => Some(Answer::line(
            format!("bearing {from} 89° {}' {toward} {}", 60 - count, after.text),
            FROM_EAST,
        )),
        _ => None,
    }
}

/// `bearing N 90-30-00 E 76.3`: more than a quarter turn, in degrees, minutes and seconds with dashes between them.
fn past_ninety(typed: &Typed<'_>) -> Option<Answer> {
    let first = typed.first_of_call();
    let part = |at: usize| -> Option<i64> {
        let piece = typed.piece(at).filter(|piece| digits::is_small(piece))?;
        piece.text.parse().ok()
    };
    let dash = |at: usize| typed.piece(at).is_some_and(|dash| dash.touches && dash.is_mark("-–"));
    let degrees = part(first + 1)?;
    let minutes = part(first + 3).filter(|minutes| dash(first + 2) && *minutes < 60)?;
    let seconds = part(first + 5).filter(|seconds| dash(first + 4) && *seconds < 60)?;
    let turned = 3_600 * degrees + 60 * minutes + seconds;
    let other = match typed.lower(first).as_str() {
        "n" | "north" => "S",
        "s" | "south" => "N",
        _ => return None,
    };
    length_at(&typed.pieces, first + 7)?;
    let toward = typed.says(first + 6, &["e", "w", "east", "west"]);
    let left = 648_000 - turned;
    (toward && (1..324_000).contains(&left)).then(|| {
        let (d, m, s) = (left.div_euclid(3_600), left.div_euclid(60) % 60, left % 60);
        let seconds = if s == 0 { String::new() } else { format!(" {s}\"") };
        Answer::line(
            format!("bearing {other} {d}° {m}'{seconds} {}", typed.rest(first + 6)),
            "a bearing goes from 0 to 90 degrees, counted from north or from south",
        )
    })
}

/// `bearing E 30° S 76.3`, `E 30 S 76.3` in a lot: the angle that is left to a quarter turn.
fn from_east_or_west(typed: &Typed<'_>) -> Option<Answer> {
    let first = typed.first_of_call();
    let degrees = typed.piece(first + 1).filter(|piece| digits::is_small(piece))?;
    let degrees: u32 = degrees.text.parse().ok().filter(|degrees| (1..90).contains(degrees))?;
    let is_mark = typed.piece(first + 2).is_some_and(|mark| mark.is_mark("°º˚"))
        || typed.says(first + 2, &["deg", "degrees"]);
    // `E 30 S 40` among the walls of a house are two of them.
    let is_call = is_mark || first == 1 || typed.is_in_lot();
    let next = first + 2 + usize::from(is_mark);
    length_at(&typed.pieces, next + 1).filter(|_| is_call)?;
    match (letter(typed, first)?, letter(typed, next)?) {
        (toward @ ('E' | 'W'), from @ ('N' | 'S')) => Some(Answer::line(
            format!("bearing {from} {}° {toward} {}", 90 - degrees, typed.rest(next + 1)),
            FROM_EAST,
        )),
        _ => None,
    }
}
