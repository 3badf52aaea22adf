//! The house as a whole with its size: `house 40 wide 30 deep`, `House is 44' wide x 28' deep`.

use super::described::{face_word, in_one_unit};
use super::levels::capitalized;
use super::measure::length_at;
use super::{Answer, Typed, quoted};
use crate::geometry::compass::Axis;

const WIDE: [&str; 4] = ["wide", "width", "w", "across"];
const DEEP: [&str; 4] = ["deep", "depth", "d", "back"];
const LONG: [&str; 2] = ["long", "length"];

/// A house with its four sides; where sides follow, they say its size.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let houses = ["house", "home", "residence", "dwelling", "cabin", "cottage"];
    let first = usize::from(typed.says(0, &["main", "the", "my", "our", "row", "town"]));
    let is_living = typed.says(0, &["living"]);
    if !(is_living || typed.says(first, &houses))
        || super::super::begins_as_side(&typed.attempt.beside.after)
    {
        return None;
    }
    let fillers = ["is", "was", "measures", "measured", "size", "about", "itself", "the"];
    let has_name = is_living && super::is_text(typed.piece(1));
    let mut at = first + 1 + usize::from(has_name);
    while typed.says(at, &fillers) || typed.piece(at).is_some_and(|mark| mark.is_mark(":=,-–")) {
        at += 1;
    }
    let label = |at: usize| -> Option<bool> {
        let is_wide = typed.says(at, &WIDE).then_some(true);
        is_wide.or_else(|| typed.says(at, &DEEP).then_some(false))
    };
    if let Some(answer) = to_two_faces(typed, at) {
        return Some(answer);
    }
    let one = length_at(&typed.pieces, at)?;
    let one_label = label(one.end);
    let mut next = one.end + usize::from(one_label.is_some() || typed.says(one.end, &LONG));
    let labeled = next > one.end;
    let joint = typed.says(next, &["x", "by", "and"])
        || typed.piece(next).is_some_and(|mark| mark.is_mark("×*,/"));
    if !joint && !labeled {
        return None;
    }
    next += usize::from(joint);
    let two = length_at(&typed.pieces, next)?;
    let two_label = label(two.end);
    let end = two.end + usize::from(two_label.is_some() || typed.says(two.end, &LONG));
    // Without a label other rules know the line.
    if !labeled && end == two.end {
        return None;
    }
    let (face, comment) = rest(typed, end)?;
    let first_is_wide = match (one_label, two_label) {
        (Some(one), Some(two)) if one == two => None,
        (Some(one), _) => Some(one),
        (None, two) => two.map(|two| !two),
    };
    let (a, b) = in_one_unit(&one, &two);
    let name = match has_name {
        true => quoted(&typed.name(1, 2)),
        false => quoted(&capitalized(&typed.lower(first))),
    };
    let sides = |north: &str, east: &str| {
        format!(
            "living {name}{face}{comment}\nnorth {north}\neast {east}\nsouth {north}\nwest {east}"
        )
    };
    let front = typed.attempt.beside.front;
    let Some(first_is_wide) = first_is_wide else {
        let mut lines = vec![sides(&a, &b), sides(&b, &a)];
        lines.dedup();
        return Some(Answer::Lines(
            lines,
            "a size is typed as its sides, one on each line: which of the two lengths runs north and south?".to_owned(),
        ));
    };
    let (wide, deep) = if first_is_wide { (a, b) } else { (b, a) };
    let along_east = front.is_none_or(|front| front.axis() == Axis::North);
    let line = if along_east { sides(&deep, &wide) } else { sides(&wide, &deep) };
    let cause = match front {
        Some(_) => "a size is typed as its sides, one on each line: wide is along the street",
        None => {
            "a size is typed as its sides, one on each line: wide is east and west, unless the street is to the east or west"
        }
    };
    Some(Answer::line(line, cause))
}

/// `house 17'8" inside x 42' outside`, `row house 17'8" clear x 42' deep`: lengths to two faces.
fn to_two_faces(typed: &Typed<'_>, at: usize) -> Option<Answer> {
    let face = |at: usize| {
        let at = at + usize::from(typed.piece(at).is_some_and(|mark| mark.is_mark("(")));
        let found = match typed.says(at, &["clear", "clr", "net"]) {
            true => Some("inside"),
            false => face_word(&typed.lower(at)),
        };
        found.map(|face| (face, at + 1))
    };
    let one = length_at(&typed.pieces, at)?;
    let (first, mut next) = face(one.end)?;
    while typed.piece(next).is_some_and(|mark| mark.is_mark("),×*"))
        || typed.says(next, &["x", "by"])
    {
        next += 1;
    }
    let two = length_at(&typed.pieces, next)?;
    let second = face(two.end).map_or("outside", |(face, _)| face);
    (first != second).then(|| {
        Answer::say(
            format!("all walls of a space are measured to one face, and here one length is {first} and the other {second}"),
            format!(
                "bring both to one face: to `{}` taped {first} add how thick the walls at both its ends are, of a wall shared with a neighbor half; then write `house` with the sum and `{}`",
                one.text, two.text
            ),
        )
    })
}

/// What follows the size: a face, and plain words as a comment. `None` if a number is among them.
fn rest(typed: &Typed<'_>, from: usize) -> Option<(String, String)> {
    let mut face = None;
    let mut words: Vec<&str> = Vec::new();
    for at in from..typed.pieces.len() {
        let piece = &typed.pieces[at];
        if let Some(found) = face_word(&piece.text.to_lowercase()) {
            if face.is_some_and(|face| face != found) {
                return None;
            }
            face = Some(found);
        } else if piece.is_number() || piece.text.contains('"') {
            return None;
        } else if !piece.is_mark(",;:()-–.")
            && !typed.says(at, &["measured", "taped", "to", "at", "the", "of", "walls", "overall"])
        {
            words.push(&piece.text);
        }
    }
    let matters = [
        "not",
        "no",
        "garage",
        "including",
        "incl",
        "includes",
        "with",
        "plus",
        "minus",
        "start",
        "porch",
        "brick",
        "stone",
        "veneer",
        "stories",
        "story",
        "floors",
        "levels",
        "two",
        "each",
    ];
    if words.iter().any(|word| matters.contains(&word.to_lowercase().as_str())) {
        return None;
    }
    let face = face.map_or(String::new(), |face| format!(" measured to {face}"));
    let comment = match words.is_empty() {
        true => String::new(),
        false => format!("  # {}", words.join(" ")),
    };
    Some((face, comment))
}
