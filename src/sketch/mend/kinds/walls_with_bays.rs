//! A wall that is said to be a bay, and a bay in another order: `west 9' (bay, 5' flat, sticks out 2' 4")`, `angled bay
//! west 9', out 2' 4", front 5'`. As a remark the area of the bay would be lost.

use super::measure::{Measure, length_at, lengths};
use super::walls::{WAYS, is_way};
use super::{Answer, Typed};
use crate::units::length::Length;

const SHAPES: [&str; 11] = [
    "angled", "slanted", "box", "boxed", "round", "rounded", "curved", "bow", "bowed", "3-sided",
    "canted",
];
const ROUND: [&str; 5] = ["round", "rounded", "curved", "bow", "bowed"];
const OUT: [&str; 11] = [
    "out",
    "deep",
    "depth",
    "projects",
    "projecting",
    "projection",
    "sticks",
    "sticking",
    "stands",
    "juts",
    "bumps",
];
const FLAT: [&str; 6] = ["flat", "front", "face", "center", "middle", "across"];
const SMALL: [&str; 18] = [
    "with", "a", "an", "the", "has", "is", "for", "of", "at", "in", "and", "its", "it", "window",
    "wide", "by", "to", "this",
];

/// The widest wall that may be a bay as a whole.
const WIDEST: Length = Length::from_nm(Length::FOOT.nm() * 14);

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let bay = typed.find(0, &["bay"])?;
    let (way, wide, rest) = wall_that_is_a_bay(typed, bay).or_else(|| bay_first(typed, bay))?;
    let is_small = |at: usize| {
        typed.says(at, &SMALL)
            || typed.says(at, &SHAPES)
            || typed.says(at, &OUT)
            || typed.says(at, &FLAT)
            || typed.pieces[at].is_mark(",;:().-–—")
    };
    let found: Vec<(usize, Measure)> =
        lengths(&typed.pieces, rest).into_iter().filter(|(_, one)| one.has_unit).collect();
    let in_a_length = |at: usize| found.iter().any(|(first, one)| (*first..one.end).contains(&at));
    // A bay with square corners is three sides of the walk.
    if typed.find(0, &["box", "boxed"]).is_some() && typed.find(rest, &["flat"]).is_none() {
        return None;
    }
    if !(rest..typed.pieces.len()).all(|at| in_a_length(at) || is_small(at)) || found.len() > 2 {
        return None;
    }
    let direction = typed.lower(way);
    let bay = format!("bay {direction} {}", wide.text);
    if wide.length > WIDEST {
        return Some(Answer::say(
            "a bay divides the wall in which it stands",
            format!(
                "write `{direction}` and the length up to the bay; on the next line `bay {direction}`, the width of the bay, `out` and how far it stands out, `flat` and the width of its front, or `round`; and on the line below that `{direction}` and the length after it: the three together are {}",
                wide.text
            ),
        ));
    }
    let is_round = typed.find(0, &ROUND).is_some();
    let [out, flat] = out_and_flat(typed, &found)?;
    const CAUSE: &str = "a bay has its direction and width, then `out`, then `flat` or `round`";
    Some(match (out, flat) {
        (Some(out), Some(flat)) => Answer::line(format!("{bay} out {out} flat {flat}"), CAUSE),
        (Some(out), None) if is_round => Answer::line(format!("{bay} out {out} round"), CAUSE),
        (Some(out), None) => Answer::say(
            "a bay needs its flat front, or `round`",
            format!(
                "write `{bay} out {out} flat` and the width of its front, or `round` instead of it"
            ),
        ),
        (None, Some(flat)) => Answer::say(
            "how far the bay stands out is missing",
            format!(
                "write `{bay} out`, then how far it stands out from the wall, then `flat {flat}`"
            ),
        ),
        // Between two slanted walls it is the front of the bay; beside walls across it that say so too, one of its sides.
        (None, None) if is_between_slants(typed) || is_one_of_three(typed) => Answer::line(
            format!("{direction} {} note \"bay\"", wide.text),
            "a remark about a wall is a `note`",
        ),
        (None, None) => Answer::say(
            "how far the bay stands out is missing",
            format!(
                "write `{bay} out`, then how far it stands out from the wall, then `flat` and the width of its front, or `round`; a window that does not reach the floor is no bay: `{direction} {} note \"bay window\"`",
                wide.text
            ),
        ),
    })
}

/// Whether this wall is one of three, out, along and back, of which another one says too that it is of the bay:
/// `south 2' bay`, `west 8' bay`, `north 2' bay`.
fn is_one_of_three(typed: &Typed<'_>) -> bool {
    let way = |line: &str| {
        let pieces = super::cut(line);
        let says = pieces.iter().skip(1).any(|piece| {
            piece.is_word(&["bay"]) || piece.text.trim_matches('"').eq_ignore_ascii_case("bay")
        });
        let (way, _) = super::super::compass::way_and_back(&pieces.first()?.text)?;
        says.then_some(way)
    };
    let upright = super::super::compass::is_upright;
    let Some(own) = way(typed.line) else { return false };
    let beside = &typed.attempt.beside;
    let others = [&beside.before, &beside.after].into_iter().filter_map(|line| way(line));
    others.filter(|other| upright(other) != upright(own)).count() > 0
}

/// Whether the walls before and after the line are slanted.
fn is_between_slants(typed: &Typed<'_>) -> bool {
    let is_slanted = |line: &str| {
        let first = line.split_whitespace().next().unwrap_or_default().to_lowercase();
        super::super::compass::slant(&first).is_some()
            || ["diagonal", "diag", "bearing", "angle", "slant"].contains(&first.as_str())
    };
    let beside = &typed.attempt.beside;
    is_slanted(&beside.before) && is_slanted(&beside.after)
}

/// `west 9' (bay …`, `west 9' with an angled bay`: the way, the width, and where the rest begins.
fn wall_that_is_a_bay(typed: &Typed<'_>, bay: usize) -> Option<(usize, Measure, usize)> {
    let wide = length_at(&typed.pieces, 1).filter(|wide| is_way(typed, 0) && wide.has_unit)?;
    let joins = |at: usize| {
        typed.says(at, &["with", "a", "an", "the", "has", "is", "for", "of", "this"])
            || typed.says(at, &SHAPES)
            || typed.pieces[at].is_mark(",;:(-–—=")
    };
    (wide.end <= bay && (wide.end..bay).all(joins)).then_some((0, wide, bay + 1))
}

/// `angled bay west 9', …`: the way, the width, and where the rest begins.
fn bay_first(typed: &Typed<'_>, bay: usize) -> Option<(usize, Measure, usize)> {
    let is_told = bay > 0 && (0..bay).all(|at| typed.says(at, &SHAPES) || typed.says(at, &SMALL));
    let way = bay + 1 + usize::from(typed.says(bay + 1, &["window"]));
    let wide = length_at(&typed.pieces, way + 1).filter(|wide| wide.has_unit)?;
    let end = wide.end;
    (is_told && typed.says(way, &WAYS)).then_some((way, wide, end))
}

/// How far the bay stands out and how wide its front is, by the words before or after the lengths.
fn out_and_flat(typed: &Typed<'_>, found: &[(usize, Measure)]) -> Option<[Option<String>; 2]> {
    let label = |at: Option<usize>| {
        let at = at?;
        match (typed.says(at, &OUT), typed.says(at, &FLAT)) {
            (true, _) => Some(0),
            (_, true) => Some(1),
            _ => None,
        }
    };
    // Where a word follows the last length, the words stand after their lengths.
    let after = found.last().is_some_and(|(_, last)| label(Some(last.end)).is_some());
    let mut said: [Option<String>; 2] = [None, None];
    for (first, one) in found {
        let around = [label(first.checked_sub(1)), label(Some(one.end))];
        let which = if after { around[1].or(around[0]) } else { around[0].or(around[1]) };
        let place = said.get_mut(which?)?;
        if place.is_some() {
            return None;
        }
        *place = Some(one.text.clone());
    }
    Some(said)
}
