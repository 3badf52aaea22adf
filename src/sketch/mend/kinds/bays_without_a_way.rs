//! Bays that do not say which way their wall runs: between two walls that run the same way it is theirs.

use super::super::compass::way_and_back;
use super::super::pieces::Piece;
use super::measure::{Measure, length_at, lengths, written};
use super::{Answer, Typed};
use crate::units::length::Length;

const OUT: [&str; 6] = ["out", "deep", "depth", "projects", "proud", "projection"];
const WIDE: [&str; 4] = ["wide", "width", "long", "across"];

/// `box window 6' wide sticks out 18"`, `round turret 8' dia`, `bay window 2' deep, no foundation`.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    if let Some(answer) = window_alone(typed) {
        return Some(answer);
    }
    typed.attempt.space.as_ref()?;
    let has_way = typed.pieces.iter().any(|piece| {
        piece.text.len() > 1 && way_and_back(&piece.text).is_some()
            || piece.is_word(&["n", "e", "s", "w"])
    });
    if has_way || typed.line.contains('"') && !typed.pieces.iter().any(Piece::is_number) {
        return None;
    }
    let all: Vec<(usize, Measure)> =
        lengths(&typed.pieces, 1).into_iter().filter(|(_, one)| one.has_unit).collect();
    turret(typed, &all).or_else(|| boxed(typed, &all)).or_else(|| only_its_depth(typed, &all))
}

/// The way of the wall before and of the wall after the line, if they are the same, or of the only one of them.
fn way_along(typed: &Typed<'_>) -> Option<&'static str> {
    let way = |line: &str| {
        let word = line.split_whitespace().next()?;
        way_and_back(word).map(|(way, _)| way)
    };
    let beside = &typed.attempt.beside;
    match (way(&beside.before), way(&beside.after)) {
        (Some(one), Some(two)) => (one == two).then_some(one),
        (one, two) => one.or(two),
    }
}

/// `bay window on upstairs, doesn't reach floor`, `no bay up`: words without a length. A window that does not reach the floor
/// is no bay.
fn window_alone(typed: &Typed<'_>) -> Option<Answer> {
    let is_plain = typed.pieces.iter().all(|piece| {
        piece.sort == super::super::pieces::Sort::Word || piece.is_mark(",.;:()-–'’!")
    });
    let begins = typed.says(0, &["bay", "bow", "oriel", "box"])
        && (typed.says(0, &["oriel"]) || typed.says(1, &["window", "windows"]));
    let none = typed.says(0, &["no", "without"]) && typed.find(1, &["bay", "oriel"]) == Some(1);
    if !is_plain || !(begins || none) {
        return None;
    }
    let denies =
        ["doesn't", "doesnt", "does", "not", "no", "off", "above", "isn't", "without", "never"];
    let floor = ["floor", "ground", "foundation", "footing"];
    let is_denied = typed.find(1, &denies).is_some() && typed.find(1, &floor).is_some();
    if none || is_denied {
        return Some(Answer::line(
            format!("# {}", typed.line.trim()),
            "a window that does not reach the floor is no bay, and what is not there needs no line; a comment begins with `#`",
        ));
    }
    Some(Answer::say(
        "of a bay window only one that reaches the floor counts, and this line says neither that nor how large it is",
        "if its floor stands out too, write `bay`, the way that its wall runs and the width that it takes of it, `out` and how far it stands out, then `flat` and the width of its front, as `bay south 8' out 2' flat 4'`; if not, put a `#` before this line",
    ))
}

/// `round turret 8' dia`: half of it stands out of the wall.
fn turret(typed: &Typed<'_>, all: &[(usize, Measure)]) -> Option<Answer> {
    let at = typed.find(0, &["turret", "tower"]).filter(|at| *at <= 1)?;
    let [(_, across)] = all else { return None };
    let is_across = typed.find(at, &["dia", "diameter", "diam", "across", "wide"]).is_some();
    if !is_across || typed.find(0, &["square", "octagonal", "hexagonal"]).is_some() {
        return None;
    }
    let half = written(Length::from_nm(across.length.nm().div_euclid(2)), across);
    let cause = "a round turret of which half stands out of the wall is a round `bay`; if more or less of it does, type how far it stands out";
    let across = &across.text;
    Some(match way_along(typed) {
        Some(way) => Answer::line(format!("bay {way} {across} out {half} round"), cause),
        None => Answer::say(
            cause,
            format!(
                "write `bay`, the way that the wall runs there, and `{across} out {half} round`, as `bay south {across} out {half} round`"
            ),
        ),
    })
}

/// `box window 6' wide sticks out 18"`, `bump-out 6' x 18"`: three sides.
fn boxed(typed: &Typed<'_>, all: &[(usize, Measure)]) -> Option<Answer> {
    let is_box = typed.says(0, &["box", "boxed", "square", "bump-out", "bumpout", "boxbay"])
        || typed.says(0, &["bump"]) && typed.find(1, &["out"]).is_some_and(|out| out <= 2);
    let [(first, one), (second, two)] = all else { return None };
    let plain = typed.pieces.iter().enumerate().all(|(at, piece)| {
        (*first..one.end).contains(&at)
            || (*second..two.end).contains(&at)
            || piece.is_word(&[
                "box", "boxed", "square", "bay", "window", "bump", "bump-out", "bumpout", "out",
                "sticks", "stands", "projects", "wide", "deep", "x", "by", "a", "is", "and",
                "boxbay",
            ])
            || piece.is_mark("-,×*")
    });
    if !is_box || !plain {
        return None;
    }
    let says = |one: &Measure, first: usize, words: &[&str]| {
        typed.says(one.end, words) || first > 0 && typed.says(first - 1, words)
    };
    let (wide, out) = if says(one, *first, &OUT) && !says(two, *second, &OUT) {
        (two, one)
    } else if says(two, *second, &OUT) || says(one, *first, &WIDE) || one.length >= two.length {
        (one, two)
    } else {
        (two, one)
    };
    let way = way_along(typed)?;
    let sides = match way {
        "north" | "south" => ["east", "west"],
        "east" | "west" => ["north", "south"],
        _ => return None,
    };
    let line = |first: &str, last: &str| {
        format!("{first} {0}\n{way} {1}\n{last} {0}", out.text, wide.text)
    };
    Some(Answer::Lines(
        vec![line(sides[0], sides[1]), line(sides[1], sides[0])],
        "a bay with square corners is three sides of the walk: out, along and back; which way is out of the house?".to_owned(),
    ))
}

/// `bay window 2' deep, no foundation`: how wide it is, is missing.
fn only_its_depth(typed: &Typed<'_>, all: &[(usize, Measure)]) -> Option<Answer> {
    let begins = typed.says(0, &["bay"]) || typed.says(0, &["angled"]) && typed.says(1, &["bay"]);
    let [(_, out)] = all else { return None };
    let is_out = typed.says(out.end, &OUT);
    let way = way_along(typed).unwrap_or("south");
    (begins && is_out && length_at(&typed.pieces, out.end + 1).is_none()).then(|| {
        Answer::say(
            "how wide the bay is, is missing: a bay has the way that its wall runs and its width, then `out`, then `flat` or `round`",
            format!(
                "write `bay {way}`, how wide it is, `out {}`, then `flat` and the width of its front, or `round`; of a window that does not reach the floor leave the line out",
                out.text
            ),
        )
    })
}
