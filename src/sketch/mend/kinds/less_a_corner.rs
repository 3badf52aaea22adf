//! A house as one rectangle less another in one of its corners: `house 42 x 30 less 14 x 9 at the front right`.

use rust_decimal::Decimal;

use super::super::compass::slant;
use super::levels::capitalized;
use super::measure::{Measure, length_at, written};
use super::whereabouts::direction;
use super::{Answer, Typed, is_text, quoted};
use crate::geometry::compass::{Axis, Direction};

const WIDE: [&str; 4] = ["wide", "width", "w", "across"];
const DEEP: [&str; 3] = ["deep", "depth", "d"];

/// Two lengths across each other, the first and the second as typed.
struct Size {
    one: Measure,
    two: Measure,
    /// Whether the first one is the width; `None` if the words do not say.
    first_is_wide: Option<bool>,
    end: usize,
}

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    const HOUSES: [&str; 7] =
        ["living", "house", "home", "residence", "dwelling", "cabin", "cottage"];
    const LESS: [&str; 5] = ["less", "minus", "except", "without", "missing"];
    const NOTCH: [&str; 14] = [
        "a",
        "an",
        "the",
        "of",
        "notch",
        "cutout",
        "corner",
        "cut",
        "out",
        "recess",
        "piece",
        "bite",
        "rectangle",
        "porch",
    ];
    const AT: [&str; 10] =
        ["at", "in", "on", "the", "from", "corner", "of", "house", "out", "side"];
    let first = usize::from(typed.says(0, &["main", "the", "my", "our"]));
    if !typed.says(first, &HOUSES) || super::super::begins_as_side(&typed.attempt.beside.after) {
        return None;
    }
    let has_name = is_text(typed.piece(first + 1));
    let is_mark = |at: usize| typed.piece(at).is_some_and(|mark| mark.is_mark(":=,-–()"));
    let mut at = first + 1 + usize::from(has_name);
    while typed.says(at, &["is", "measures", "size", "overall"]) || is_mark(at) {
        at += 1;
    }
    let whole = size(typed, at)?;
    let mut at = whole.end;
    while is_mark(at) || typed.says(at, &["overall"]) {
        at += 1;
    }
    if !(typed.says(at, &LESS) || typed.says(at, &["with"]) && typed.says(at + 1, &NOTCH)) {
        return None;
    }
    let begins = at + 1;
    at = begins;
    while typed.says(at, &NOTCH) {
        at += 1;
    }
    // `minus the front right corner 14 x 9`, `less 14 x 9 at the front right`
    let (mut sides, mut notch) = (Vec::new(), None);
    while at < typed.pieces.len() {
        if let Some(found) = size(typed, at).filter(|_| notch.is_none()) {
            at = found.end;
            notch = Some(found);
        } else if let Some((north, east)) = slant(&typed.lower(at)) {
            sides.extend([north, east].map(of_word));
            at += 1;
        } else if let Some(side) = direction(typed, at) {
            let Some(side) = side else { return Some(needs_front(typed, at)) };
            sides.push(Some(side));
            at += 1;
        } else if typed.says(at, &AT) || typed.says(at, &NOTCH) || is_mark(at) {
            at += 1;
        } else {
            return None;
        }
    }
    let notch = notch?;
    let on = |axis: Axis| {
        let mut found = sides.iter().flatten().filter(|side| side.axis() == axis);
        found.next().copied().filter(|_| found.next().is_none())
    };
    let (north_south, east_west) = (on(Axis::North)?, on(Axis::East)?);
    let name = match has_name {
        true => quoted(&typed.name(first + 1, first + 2)),
        false => quoted(&capitalized(&typed.lower(first)).replace("Living", "House")),
    };
    let front = typed.attempt.beside.front;
    let wide_is_east = front.is_none_or(|front| front.axis() == Axis::North);
    // North and south first, then east and west.
    let turned = |size: &Size, first_is_north: bool| {
        let [one, two] = [size.one.clone(), size.two.clone()];
        // A notch without words for its lengths has them in the order of the house's.
        match size.first_is_wide.or(whole.first_is_wide) {
            Some(first_is_wide) if first_is_wide == wide_is_east => [two, one],
            Some(_) => [one, two],
            None if first_is_north => [one, two],
            None => [two, one],
        }
    };
    let walk = |first_is_north: bool| {
        let [north, east] = turned(&whole, first_is_north);
        let [in_north, in_east] = turned(&notch, first_is_north);
        let (left_north, left_east) = (less(&north, &in_north)?, less(&east, &in_east)?);
        let (n, e, i, o) = (&north.text, &east.text, &in_north.text, &in_east.text);
        let (l, r) = (left_north, left_east);
        Some(match (north_south, east_west) {
            (Direction::South, Direction::East) => {
                format!("north {n}\neast {e}\nsouth {l}\nwest {o}\nsouth {i}\nwest {r}")
            }
            (Direction::South, _) => {
                format!("north {l}\neast {e}\nsouth {n}\nwest {r}\nnorth {i}\nwest {o}")
            }
            (_, Direction::East) => {
                format!("north {n}\neast {r}\nsouth {i}\neast {o}\nsouth {l}\nwest {e}")
            }
            _ => format!("north {l}\neast {o}\nnorth {i}\neast {r}\nsouth {n}\nwest {e}"),
        })
    };
    let mut lines: Vec<String> = [false, true]
        .into_iter()
        .filter_map(walk)
        .map(|walk| format!("living {name}\n{walk}"))
        .collect();
    lines.dedup();
    if lines.is_empty() {
        return None;
    }
    let cause = "a house that is a rectangle less one of its corners is typed as its six walls";
    Some(Answer::Lines(
        lines,
        match whole.first_is_wide {
            Some(_) => cause.to_owned(),
            None => format!("{cause}: which of its two lengths runs north and south?"),
        },
    ))
}

fn size(typed: &Typed<'_>, at: usize) -> Option<Size> {
    let label = |at: usize| {
        let is_wide = typed.says(at, &WIDE).then_some(true);
        is_wide.or_else(|| typed.says(at, &DEEP).then_some(false))
    };
    let one = length_at(&typed.pieces, at)?;
    let first = label(one.end);
    let next = one.end + usize::from(first.is_some());
    let by =
        typed.says(next, &["x", "by"]) || typed.piece(next).is_some_and(|mark| mark.is_mark("×*"));
    let two = length_at(&typed.pieces, next + 1).filter(|_| by)?;
    let second = label(two.end);
    let end = two.end + usize::from(second.is_some());
    let first_is_wide = match (first, second) {
        (Some(one), Some(two)) if one == two => None,
        (Some(one), _) => Some(one),
        (None, two) => two.map(|two| !two),
    };
    Some(Size { one, two, first_is_wide, end })
}

/// What is left of a length, in its unit. `None` if nothing is.
fn less(whole: &Measure, part: &Measure) -> Option<String> {
    let (all, cut): (Option<Decimal>, Option<Decimal>) =
        (whole.text.parse().ok(), part.text.parse().ok());
    if let (Some(all), Some(cut)) = (all, cut) {
        return all
            .checked_sub(cut)
            .filter(|left| *left > Decimal::ZERO)
            .map(|left| left.to_string());
    }
    let left = whole.length.nm().checked_sub(part.length.nm()).filter(|left| *left > 0)?;
    Some(written(crate::units::length::Length::from_nm(left), whole))
}

fn of_word(way: &str) -> Option<Direction> {
    match way {
        "north" => Some(Direction::North),
        "south" => Some(Direction::South),
        "east" => Some(Direction::East),
        "west" => Some(Direction::West),
        _ => None,
    }
}

fn needs_front(typed: &Typed<'_>, at: usize) -> Answer {
    Answer::say(
        format!(
            "a house that is a rectangle less one of its corners is typed as its six walls, and `{}` says where that corner is as seen from the street",
            typed.text(at, at + 1)
        ),
        "write `front` and the side of the house that faces the street, as `front south`, on a line at the top of the file; then this line is answered with its walls",
    )
}
