//! What a text says that has a place of its own in a sides file: in a comment it would count for nothing.

use super::super::compass::way_and_back;
use super::super::pieces::Piece;
use super::measure::{area_at, length_at};
use super::{Typed, kind_word};
use crate::units::length::Length;

/// A sentence for each thing that a text says and that belongs elsewhere.
pub(super) fn told(typed: &Typed<'_>) -> Vec<String> {
    let all = [walls, calls, thickness, face, meters, area_of_a_part];
    let land = calls(typed).and_then(|_| land(typed));
    all.iter().filter_map(|one| one(typed)).chain(land).collect()
}

/// Whether it says more than one wall, or a call of a deed.
pub(super) fn is_of_a_walk(typed: &Typed<'_>) -> bool {
    walls(typed).or_else(|| calls(typed)).is_some()
}

/// `N 9.15  E 12.40`: two walls or more.
fn walls(typed: &Typed<'_>) -> Option<String> {
    const NO_WALL: [&str; 9] =
        ["of", "side", "end", "corner", "wall", "from", "st", "street", "ave"];
    let way = |at: usize| {
        let (way, _) = way_and_back(&typed.piece(at)?.text)?;
        let is_compass = ["north", "east", "south", "west"].contains(&way);
        (is_compass && !typed.says(at + 1, &NO_WALL)).then_some(way)
    };
    let found: Vec<(&str, String)> = (0..typed.pieces.len())
        .filter_map(|at| Some((way(at)?, length_at(&typed.pieces, at + 1)?.text)))
        .collect();
    let [(first, one), ..] = &found[..] else { return None };
    // `west 18', chimney, west 17'` is one wall.
    let (second, two) = found.iter().find(|(way, _)| way != first)?;
    (calls(typed).is_none() && !typed.is_in_lot()).then(|| {
        format!(
            "each wall stands on a line of its own, in the order of the walk, as `{first} {one}` and on the next line `{second} {two}`"
        )
    })
}

/// `N 12°30' E 220.4 ft`: a call of a deed.
fn calls(typed: &Typed<'_>) -> Option<String> {
    let quadrant = |at: usize, words: &[&str]| typed.says(at, words);
    let is_call = |at: &usize| {
        let ends = (at + 2..(at + 9).min(typed.pieces.len()))
            .any(|end| quadrant(end, &["e", "w", "east", "west"]));
        quadrant(*at, &["n", "s", "north", "south"])
            && typed.piece(at + 1).is_some_and(Piece::is_number)
            && typed
                .piece(at + 2)
                .is_some_and(|mark| mark.is_mark("°º") || mark.is_word(&["deg", "degrees"]))
            && ends
    };
    let at = (0..typed.pieces.len()).find(is_call)?;
    let end =
        (at + 2..typed.pieces.len()).find(|&end| quadrant(end, &["e", "w", "east", "west"]))?;
    let call = typed.text(at, end + 1);
    let example = match length_at(&typed.pieces, end + 1) {
        Some(length) => format!("`bearing {call} {}`", length.text),
        None => format!("`bearing {call}` and its length"),
    };
    Some(format!(
        "each call of a deed stands on a line of its own below `lot \"Lot\"`, as {example}"
    ))
}

/// `1.67 ac`: the area of the land.
fn land(typed: &Typed<'_>) -> Option<String> {
    let at = (1..typed.pieces.len())
        .find(|&at| typed.says(at, &["acre", "acres", "ac"]) && typed.pieces[at - 1].is_number())?;
    (!typed.is_in_lot()).then(|| {
        format!(
            "the area of the land is that of its lot, `lot \"Lot\" recorded {} acres`",
            typed.text(at - 1, at)
        )
    })
}

/// `walls 8 in`, `ext walls 6"`, `6" walls`: how thick the walls are.
fn thickness(typed: &Typed<'_>) -> Option<String> {
    const WALLS: [&str; 2] = ["walls", "wall"];
    // Of these walls it is something else.
    const OTHERS: [&str; 11] = [
        "party",
        "common",
        "shared",
        "knee",
        "retaining",
        "inner",
        "interior",
        "partition",
        "between",
        "garden",
        "low",
    ];
    const LONGEST: Length = Length::from_nm(18 * Length::INCH.nm());
    let is_thick = |one: &super::measure::Measure| {
        one.is_inches_alone()
            && one.length <= LONGEST
            && one.length >= Length::from_nm(2 * Length::INCH.nm())
    };
    let after = |at: usize| {
        let small = |at: usize| {
            typed.says(at, &["are", "is", "about", "approx", "thick", "thickness", "all"])
                || typed.piece(at).is_some_and(|mark| mark.is_mark(":=,~-"))
        };
        let first = (at + 1..at + 4).find(|&at| !small(at))?;
        length_at(&typed.pieces, first).filter(is_thick)
    };
    let before = |at: usize| {
        let first = (at.saturating_sub(3)..at).find(|&first| {
            length_at(&typed.pieces, first).is_some_and(|one| {
                is_thick(&one)
                    && (one.end == at
                        || one.end + 1 == at
                            && typed
                                .says(one.end, &["thick", "ext", "exterior", "outside", "outer"]))
            })
        })?;
        length_at(&typed.pieces, first)
    };
    let thick = (0..typed.pieces.len())
        .filter(|&at| typed.says(at, &WALLS))
        .filter(|&at| at == 0 || !typed.says(at - 1, &OTHERS))
        .find_map(|at| after(at).or_else(|| before(at)))?;
    let bare = match typed.attempt.beside.has_veneer {
        true => "",
        false => ", and with it `veneer none` unless brick or stone comes on top of that",
    };
    Some(format!(
        "how thick the walls are stands on a line above the first level: `wall {}`{bare}",
        thick.text.trim_end_matches('.')
    ))
}

/// Whether a text says how thick the walls are and nothing else.
pub(super) fn is_only_a_thickness(typed: &Typed<'_>) -> bool {
    const SAID: [&str; 15] = [
        "ext", "exterior", "outside", "outer", "walls", "wall", "are", "is", "about", "approx",
        "thick", "all", "in", "inch", "inches",
    ];
    let only = |piece: &Piece| {
        piece.is_number() || piece.is_word(&SAID) || piece.is_mark("\"”″.:=~/½¼¾⅛⅜⅝⅞")
    };
    thickness(typed).is_some() && typed.pieces.iter().all(only)
}

/// `taped inside`: the face to which it was measured.
fn face(typed: &Typed<'_>) -> Option<String> {
    const TAPED: [&str; 8] =
        ["taped", "tape", "measured", "measurements", "dims", "dimensions", "all", "lengths"];
    let face = match typed.find(0, &["inside", "interior", "inner"])? {
        at if at > 0 && typed.says(at - 1, &TAPED) || typed.says(at + 1, &TAPED[..6]) => "inside",
        _ => return None,
    };
    Some(format!(
        "the face to which walls were measured stands on the line of their space, after its name: `measured to {face}`"
    ))
}

/// `metres!`, `all in m`, `(metric)`: the unit of the lengths.
fn meters(typed: &Typed<'_>) -> Option<String> {
    let says = typed
        .find(0, &["metric", "meters", "metres"])
        .is_some_and(|at| at.checked_sub(1).is_none_or(|before| !typed.pieces[before].is_number()));
    let in_m = (1..typed.pieces.len()).any(|at| {
        typed.says(at - 1, &["in"]) && typed.says(at, &["m"]) && at + 1 == typed.pieces.len()
    });
    ((says || in_m) && !typed.attempt.is_metric).then(|| {
        "the unit of the lengths stands on a line above the first level: `units meters`".to_owned()
    })
}

/// `+ 520 gar`, `garage 520 sf`: the area that a record has of a part.
fn area_of_a_part(typed: &Typed<'_>) -> Option<String> {
    let kind = |at: usize| {
        let word = typed.lower(at);
        let word = if word == "gar" { "garage" } else { word.as_str() };
        ["garage", "carport", "porch", "deck", "patio"]
            .into_iter()
            .find(|kind| *kind == word && kind_word(kind).is_some())
    };
    let number = |at: usize| {
        let piece =
            typed.piece(at).filter(|piece| piece.is_number() && !piece.text.contains('.'))?;
        let value: u32 = piece.text.replace(',', "").parse().ok()?;
        let is_length = length_at(&typed.pieces, at).is_some_and(|one| one.has_unit);
        let by = typed.says(at + 1, &["x", "by", "car"])
            || typed.piece(at + 1).is_some_and(|mark| mark.is_mark("×*/-"))
            || at
                .checked_sub(1)
                .is_some_and(|at| typed.says(at, &["x", "by"]) || typed.pieces[at].is_mark("×*/-"));
        ((100..2_000).contains(&value) && !is_length && !by && !piece.is_year()).then_some(value)
    };
    let (kind, area) = (0..typed.pieces.len()).find_map(|at| {
        let value = number(at)?;
        let end = area_at(&typed.pieces, at).map_or(at + 1, |(end, _)| end);
        let next = end + usize::from(typed.says(end, &["for", "the"]));
        // `attic over garage 400 sf` is not the garage.
        let is_apart =
            at >= 2 && typed.says(at - 2, &["over", "above", "under", "below", "behind"]);
        let before = at.checked_sub(1).and_then(kind).filter(|_| !is_apart);
        Some((kind(next).or(before)?, value))
    })?;
    Some(format!(
        "the area that the record has of the {kind} stands at the end of the line of that space: `recorded {area} sq ft`"
    ))
}
