//! Walls named by the side of the house on which they are, and faces named after a wall.

use super::super::compass::{along, by_compass, is_upright, way_and_back};
use super::measure::{Measure, length_at, lengths};
use super::walls::{STREET, is_way};
use super::{Answer, Typed, worded};

/// Words for where a wall is, not for the way that it was walked.
pub(in crate::sketch::mend) const STANDS: [&str; 5] =
    ["wall", "side", "face", "elevation", "facade"];

/// `west wall 28' 4"`, `N kitchen wall 7.32 m`, `rear wall 30' 6"`: where a wall is does not say which way it was
/// walked.
///
/// The walls before and after it decide if they can: beside walls that run north and south it runs east or west.
pub(super) fn named_by_its_side(typed: &Typed<'_>) -> Option<Answer> {
    let front = typed.attempt.beside.front;
    let (way, _) = way_and_back(&typed.lower(0)).filter(|_| typed.says(0, &ALL))?;
    let way = by_compass(way, front);
    let (first, measure) = worded::the_length(typed).or_else(|| bare_length(typed))?;
    // `rear 46' 2"` between walls that run back and front: the rear wall.
    if typed.says(0, &["rear"]) && first == 1 && runs_upright(typed) == Some(!is_upright(way)) {
        let [one, two] = along(way);
        return Some(Answer::Lines(
            [one, two].map(|way| format!("{way} {}", typed.rest(first))).into(),
            format!(
                "`rear` says where the wall stands, and a side begins with the way that you walked along it: by the walls beside it, {one} or {two}"
            ),
        ));
    }
    let stands = (1..first).find(|&at| typed.says(at, &STANDS))?;
    let goes =
        ["running", "runs", "heading", "going", "goes", "toward", "towards", "from", "walked"];
    if typed.find(1, &goes).is_some_and(|goes| goes < first) {
        return None;
    }
    let said = format!("`{} {}`", typed.text(0, 1), typed.text(stands, stands + 1));
    // `east party wall 37' 8"`
    let is_common = stands == 2 && typed.says(1, &["party", "common", "shared"]);
    let begins = if is_common { (0, 2) } else { (0, 1) };
    let rest = worded::rest(typed, &[begins, (stands, stands + 1), (first, measure.end)])?;
    let rest = if is_common { format!(" common{rest}") } else { rest };
    let line = |way: &str| format!("{way} {}{rest}", measure.text);
    let [one, two] = along(way);
    // Walls beside it that are called by a side of the house may be named by where they stand as well.
    let beside = &typed.attempt.beside;
    let by_street = |line: &str| {
        let first = line.split(' ').next().unwrap_or_default().to_lowercase();
        way_and_back(&first).is_some_and(|(way, _)| STREET.contains(&way))
    };
    let is_sure = !STREET.contains(&way_and_back(&typed.lower(0))?.0)
        || !by_street(&beside.before) && !by_street(&beside.after);
    // `north wall` beside it may be where that one stands, and then shows nothing.
    let stands_too = |line: &str| super::cut(line).get(1).is_some_and(|word| word.is_word(&STANDS));
    let is_sure = is_sure && !stands_too(&beside.before) && !stands_too(&beside.after);
    Some(match runs_upright(typed).filter(|_| is_sure) {
        Some(upright) if upright == is_upright(way) => Answer::line(
            line(way),
            format!(
                "{said} has one word too many: the walls beside it show that it was walked {way}"
            ),
        ),
        Some(_) => Answer::Lines(
            vec![line(one), line(two)],
            format!(
                "{said} says where the wall stands, and a side begins with the way that you walked along it: by the walls beside it, {one} or {two}"
            ),
        ),
        None => Answer::Lines(
            vec![line(one), line(two), line(way)],
            format!(
                "{said} may be where the wall stands, or the way that you walked along it, which is what a side begins with: {one}, {two} or {way}"
            ),
        ),
    })
}

/// `left side 28`: a number without a unit at the end of the line, right after the words for where the wall is.
fn bare_length(typed: &Typed<'_>) -> Option<(usize, Measure)> {
    let at = typed.pieces.len().checked_sub(1)?;
    // `left wall 38-7`: feet and inches.
    if let [.., feet, dash, inches] = &typed.pieces[..]
        && feet.is_number()
        && dash.is_mark("-–")
        && inches.text.parse::<u32>().is_ok_and(|inches| inches < 12)
        && at > 2
    {
        let text = format!("{}' {}\"", feet.text, inches.text);
        let length = text.parse().ok()?;
        let before = at.checked_sub(3)?;
        let one = Measure { end: at + 1, length, text, has_unit: true };
        return typed.says(before, &STANDS).then_some((at - 2, one));
    }
    let one = length_at(&typed.pieces, at)?;
    let mark = usize::from(typed.piece(at.checked_sub(1)?)?.is_mark(":,=-–"));
    let before = at.checked_sub(1 + mark)?;
    (before > 0 && typed.says(before, &STANDS)).then_some((at, one))
}

/// `28' 4" up the west side`, `along the south wall 28' 4"`: the same with the length first, or after other words.
pub(super) fn along_a_side(typed: &Typed<'_>) -> Option<Answer> {
    let at =
        (0..typed.pieces.len()).find(|&at| typed.says(at, &ALL) && typed.says(at + 1, &STANDS))?;
    let [(first, measure)] = &lengths(&typed.pieces, 0)[..] else { return None };
    let small = [
        "up", "down", "along", "on", "at", "the", "of", "house", "for", "is", "back", "goes",
        "runs", "it", "by",
    ];
    let only = (0..typed.pieces.len()).all(|i| {
        (at..at + 2).contains(&i)
            || (*first..measure.end).contains(&i)
            || typed.says(i, &small)
            || typed.pieces[i].is_mark(",:=")
    });
    if at == 0 || !only || !measure.has_unit {
        return None;
    }
    let (way, _) = way_and_back(&typed.lower(at))?;
    let as_walked = by_compass(way, typed.attempt.beside.front);
    // Between two walls that run north or south, an `east wall` was walked east.
    let is_plain = typed.says(at + 1, &["wall"])
        && (0..typed.pieces.len())
            .all(|i| (at..at + 2).contains(&i) || (*first..measure.end).contains(&i));
    if is_plain && runs_upright_at(typed, at) == Some(is_upright(as_walked)) {
        return Some(Answer::line(
            format!("{way} {}", measure.text),
            format!(
                "a wall has its direction first; the walls beside it show that this one was walked {way}"
            ),
        ));
    }
    let [one, two] = along(as_walked);
    Some(Answer::Lines(
        [one, two].map(|way| format!("{way} {}", measure.text)).into(),
        format!(
            "`{}` says where the wall stands, and a side begins with the way that you walked along it: {one} or {two}",
            typed.text(at, at + 2)
        ),
    ))
}

const ALL: [&str; 13] = [
    "north", "east", "south", "west", "n", "e", "s", "w", "back", "right", "front", "left", "rear",
];

/// Whether this wall runs north or south, judged by the walls before and after it, since a walk turns at each corner.
pub(super) fn runs_upright(typed: &Typed<'_>) -> Option<bool> {
    runs_upright_at(typed, 0)
}

/// The same with the word for its way at a place of the line.
fn runs_upright_at(typed: &Typed<'_>, at: usize) -> Option<bool> {
    let front = typed.attempt.beside.front;
    let (typed_way, _) = way_and_back(&typed.lower(at))?;
    let typed_way = by_compass(typed_way, front);
    let runs = |line: &str| {
        let mut words = line.split(|c: char| !c.is_alphabetic()).filter(|word| !word.is_empty());
        // `jog 4' 4" south`
        let is_jog = line.get(..4).is_some_and(|first| first.eq_ignore_ascii_case("jog "));
        let last = words.clone().next_back().filter(|_| is_jog);
        if let Some(last) = last {
            let (way, _) = way_and_back(last)?;
            return Some(!is_upright(by_compass(way, front)));
        }
        let way = by_compass(way_and_back(words.next()?)?.0, front);
        // Which way the street lies is not known here.
        if STREET.contains(&way) != STREET.contains(&typed_way) {
            return None;
        }
        // A neighboring line that is also labeled by its wall gives no direction.
        let stands = |word: &str| {
            STANDS.contains(&word.trim_end_matches([':', ',', ';', '.']).to_lowercase().as_str())
        };
        let is_plain = !line.split_whitespace().any(stands);
        is_plain.then(|| !is_upright(way))
    };
    let beside = &typed.attempt.beside;
    match (runs(&beside.before), runs(&beside.after)) {
        (Some(one), Some(two)) => (one == two).then_some(one),
        // Where walls are called by the side of the house, `front 15'` may be one of them.
        (one, two) if STREET.contains(&typed_way) => one.and(two),
        (one, two) => one.or(two),
    }
}

/// `north 28' 4" (inside)`, `north 28' 4" to the studs`: the face that was measured to belongs to the whole space.
pub(super) fn face_after_a_wall(typed: &Typed<'_>) -> Option<Answer> {
    if !is_way(typed, 0) {
        return None;
    }
    let [(1, measure)] = &lengths(&typed.pieces, 1)[..] else { return None };
    let faces = [
        ("inside", &["inside", "interior", "inner", "drywall", "plaster", "indoors"][..]),
        ("frame", &["frame", "studs", "stud", "framing", "sheathing"]),
    ];
    let filler = |at: usize| {
        typed.piece(at).is_some_and(|piece| {
            piece.is_mark("()[],;:-–")
                || piece.is_word(&[
                    "to",
                    "the",
                    "measured",
                    "taped",
                    "from",
                    "at",
                    "face",
                    "of",
                    "wall",
                    "walls",
                    "measure",
                    "measurement",
                    "only",
                ])
        })
    };
    let said: Vec<usize> = (measure.end..typed.pieces.len()).filter(|&at| !filler(at)).collect();
    let (face, _) = faces
        .iter()
        .find(|(_, words)| !said.is_empty() && said.iter().all(|&at| typed.says(at, words)))?;
    let wall = format!("{} {}", typed.lower(0), measure.text);
    Some(Answer::say(
        "a wall does not say to which face it was measured: the line of its space does, for all of its walls",
        format!(
            "leave `{wall}` here and write `measured to {face}` at the end of the line of its space; if only this wall was measured so, add to its length how thick the walls at both its ends are, of a shared wall half, and type the sum"
        ),
    ))
}
