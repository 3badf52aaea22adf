//! Lines of levels with a size, a place, a face or a remark, none of which a level has.

use super::super::pieces::{Piece, Sort};
use super::measure::length_at;
use super::names::{FLOORS, ORDINALS};
use super::{Answer, Rule, Typed, first_of, is_text, quoted};

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        set_back,
        face_alone,
        beside_another,
        with_a_face,
        with_a_size,
        with_a_remark,
        counted_level,
    ];
    first_of(rules, typed)
}

/// Where words that name a level end, and whether it lies in the ground: `2nd floor`, `upstairs`, `lower level`.
fn level(typed: &Typed<'_>) -> Option<(usize, bool)> {
    let first = usize::from(typed.says(0, &["level", "the"]));
    if typed.says(first, &["basement", "cellar"]) {
        let end = first + 1 + usize::from(typed.says(first + 1, &["level", "floor"]));
        return Some((end, true));
    }
    if typed.says(first, &["upstairs", "downstairs", "attic"]) {
        return Some((first + 1, false));
    }
    if typed.says(first, &ORDINALS) && typed.says(first + 1, &FLOORS) {
        return Some((first + 2, false));
    }
    let number = typed.piece(first).filter(|number| number.is_number() && number.text.len() == 1);
    let ordinal = typed
        .piece(first + 1)
        .filter(|word| word.touches && word.is_word(&["st", "nd", "rd", "th"]));
    (number.is_some() && ordinal.is_some() && typed.says(first + 2, &FLOORS))
        .then_some((first + 3, false))
}

fn name_of(typed: &Typed<'_>, end: usize) -> String {
    quoted(typed.text(usize::from(typed.says(0, &["level"])), end))
}

/// `inside`, `taped inside` below a level: the face of its walls.
fn face_alone(typed: &Typed<'_>) -> Option<Answer> {
    const WORDS: [&str; 14] = [
        "measured",
        "taped",
        "to",
        "the",
        "from",
        "all",
        "walls",
        "wall",
        "dimensions",
        "dims",
        "measurements",
        "here",
        "was",
        "is",
    ];
    let mut face = None;
    for piece in &typed.pieces {
        match super::described::face_word(&piece.text.to_lowercase()) {
            Some(word) if face.is_none() => face = Some(word),
            _ if piece.is_word(&WORDS) || piece.is_mark(",.:()") => {}
            _ => return None,
        }
    }
    let face = face?;
    let before = super::cut(&typed.attempt.beside.before);
    let first = before.first()?.text.to_lowercase();
    let second = before.get(1).map(|word| word.text.to_lowercase()).unwrap_or_default();
    let is_level = first == "level" || crate::sketch::phrases::opens_level(&first, &second);
    (is_level || typed.attempt.space.is_some()).then(|| {
        Answer::say(
            "the face to which the walls were measured stands on the line of each space",
            format!(
                "write `measured to {face}` after the name of each space that was measured so, as in `living \"Rooms\" measured to {face}`, and leave this line out"
            ),
        )
    })
}

/// `level "Living level" right of the bedroom level`, `level "Bedrooms" next to "Ground floor"`: a split level.
fn beside_another(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["level"]) || !is_text(typed.piece(1)) {
        return None;
    }
    let mut at = 2;
    while typed.says(at, &["to", "on", "the", "just"]) {
        at += 1;
    }
    let stands = typed.says(at, &["right", "left", "north", "east", "south", "west"])
        && typed.says(at + 1, &["of", "side"])
        || typed.says(at, &["next", "alongside", "beside", "adjacent"]);
    let of_a_level = is_text(typed.pieces.last())
        || typed.find(at + 1, &["level", "floor", "rooms", "bedrooms"]).is_some();
    (stands && of_a_level).then(|| {
        Answer::say(
            "a level that stands next to the one before it, and not above it, is `beside`",
            format!(
                "write `level {} beside`, and after the name of each of its spaces where it starts: `start` with a way and a length from where the first walk of the level before it begins",
                typed.text(1, 2)
            ),
        )
    })
}

/// `level 2 taped inside`, `level Upstairs measured to the studs`: each space says to which face it was measured.
fn with_a_face(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["level"]) {
        return None;
    }
    let at = typed.find(2, &["taped", "measured", "inside", "interior", "studs", "frame"])?;
    // `level "2nd floor" inside 34' 6" x 26' 7"`: its size is said by another rule.
    if super::size_in(typed.line).is_some() {
        return None;
    }
    let says = |words: &[&str]| typed.find(at, words).is_some();
    let face = if says(&["inside", "interior", "drywall"]) {
        "inside"
    } else if says(&["frame", "studs", "framing"]) {
        "frame"
    } else if says(&["outside", "exterior"]) {
        "outside"
    } else {
        return None;
    };
    let mut end = at;
    while end > 1 && typed.pieces[end - 1].is_mark(",;-–(:") {
        end -= 1;
    }
    let name = if end > 1 { quoted(&typed.name(1, end)) } else { return None };
    Some(Answer::say(
        "a level does not say to which face it was measured",
        format!(
            "write `level {name}` here, and `measured to {face}` after the name of each of its spaces{}",
            super::super::faced::parts(face)
        ),
    ))
}

/// `cellar 4 x 5`, `2nd floor 28x38 inside`: the size of the one space of the level.
fn with_a_size(typed: &Typed<'_>) -> Option<Answer> {
    let (end, below) = level(typed)?;
    let (first, one) = super::measure::lengths(&typed.pieces, end).into_iter().next()?;
    let is_by = typed.says(one.end, &["x", "by"])
        || typed.piece(one.end).is_some_and(|by| by.is_mark("×*"));
    let two = length_at(&typed.pieces, one.end + 1).filter(|_| is_by)?;
    if super::measure::is_lumber(&one, &two) {
        return None;
    }
    let more =
        |at: usize| (end..first).contains(&at) || (two.end..typed.pieces.len()).contains(&at);
    let says =
        |words: &[&str]| (end..typed.pieces.len()).any(|at| more(at) && typed.says(at, words));
    let known = [
        "inside",
        "outside",
        "interior",
        "exterior",
        "unfinished",
        "finished",
        "measured",
        "taped",
        "is",
        "about",
        "all",
    ];
    let only = (end..typed.pieces.len())
        .all(|at| !more(at) || typed.says(at, &known) || typed.pieces[at].is_mark(",:;()=-–."));
    if !only {
        return None;
    }
    let is_unfinished = says(&["unfinished"]) || below && !says(&["finished"]);
    let kind = if is_unfinished { "unfinished" } else { "living" };
    let face = if says(&["inside", "interior"]) { " measured to inside" } else { "" };
    let space = if below { "Basement" } else { "Rooms" };
    let grade = if below { " below grade" } else { "" };
    let level = format!("level {}{grade}\n{kind} \"{space}\"{face}", name_of(typed, end));
    let unit = |own: &super::measure::Measure, other: &super::measure::Measure| match !own.has_unit
        && other.has_unit
        && !other.is_metric()
    {
        true => format!("{}'", own.text),
        false => own.text.clone(),
    };
    let (a, b) = (unit(&one, &two), unit(&two, &one));
    if super::super::begins_as_side(&typed.attempt.beside.after) {
        return Some(Answer::line(
            format!("{level}  # {a} x {b}"),
            "a level has no size: its space has, and its sides are typed below",
        ));
    }
    let sides = |a: &str, b: &str| format!("{level}\nnorth {a}\neast {b}\nsouth {a}\nwest {b}");
    Some(Answer::Lines(
        vec![sides(&a, &b), sides(&b, &a)],
        "a level has no size: its space has, as its sides; which of the two lengths runs north and south?".to_owned(),
    ))
}

/// `level "Upper floor" set back 2' from the front`: where its first space starts.
fn set_back(typed: &Typed<'_>) -> Option<Answer> {
    let is_named = typed.says(0, &["level"]) && super::is_text(typed.piece(1));
    let words = ["set", "setback", "recessed", "starts", "start", "begins", "offset", "shifted"];
    let at = typed.find(2, &words).filter(|_| is_named)?;
    let (first, by) = super::measure::lengths(&typed.pieces, at).into_iter().next()?;
    if !by.has_unit || first > at + 3 {
        return None;
    }
    let way = typed.attempt.beside.front.map(crate::geometry::compass::Direction::opposite);
    let is_back =
        typed.says(at, &["set", "setback", "recessed"]) && typed.find(by.end, &["front"]).is_some();
    let example = match way.filter(|_| is_back) {
        Some(way) => format!("`start {} {}`", way.word(), by.text),
        None => format!("`start`, the way from corner 1 below, and `{}`", by.text),
    };
    Some(Answer::say(
        "a level has no place of its own: its first space says where it starts",
        format!(
            "write `level {}`, and at the end of the line of its first space {example}",
            typed.text(1, 2)
        ),
    ))
}

/// `living "Bedrooms" set back 2' from the front` as the first space of an upper floor: where its walk starts.
pub(super) fn first_space_set_back(typed: &Typed<'_>) -> Option<Answer> {
    let beside = &typed.attempt.beside;
    let is_first = beside.before.starts_with("level ") && beside.has_level_above;
    let is_living = typed.says(0, &["living"]) && is_text(typed.piece(1)) && is_first;
    let mut at = 2;
    while typed.says(at, &["set", "setback", "recessed", "back", "is", "in"])
        || typed.piece(at).is_some_and(|mark| mark.is_mark(",-(–"))
    {
        at += 1;
    }
    let by = super::measure::length_at(&typed.pieces, at).filter(|by| is_living && by.has_unit)?;
    let mut end = by.end;
    while typed.says(end, &["back", "from", "the", "in"]) {
        end += 1;
    }
    let is_front = typed.says(end, &["front", "street"]);
    let end = end + 1 + usize::from(typed.says(end + 1, &["wall", "side"]));
    let only = typed.pieces[end.min(typed.pieces.len())..].iter().all(|mark| mark.is_mark(").,"));
    let way = beside.front.filter(|_| is_front && only)?.opposite();
    Some(Answer::line(
        format!("{} start {} {}", typed.text(0, 2), way.word(), by.text),
        "where the first walk of an upper floor starts is counted from where the first walk of the house begins",
    ))
}

/// `level Ground floor, 8' ceilings`, `attic, 7 ft ceilings`, `upstairs (starts 2' in from the left)`.
fn with_a_remark(typed: &Typed<'_>) -> Option<Answer> {
    let end = match typed.says(0, &["level"]) && !is_text(typed.piece(1)) {
        true => (2..typed.pieces.len()).find(|&at| typed.pieces[at].is_mark(",;(-–:"))?,
        false => level(typed)?.0,
    };
    let below = level(typed).is_some_and(|(_, below)| below);
    typed.piece(end).filter(|mark| mark.is_mark(",;(-–:"))?;
    let rest = super::remark(typed.rest(end));
    let rest = rest.trim_matches(['(', ')', ' ']);
    let pieces = super::cut(rest);
    let has_number = pieces.iter().any(Piece::is_number);
    let says = |words: &[&str]| pieces.iter().any(|piece| piece.is_word(words));
    let is_figure = says(&[
        "record", "recorded", "county", "sq", "sqft", "sf", "below", "grade", "beside", "same",
    ]);
    let is_name = typed.pieces[..end]
        .iter()
        .all(|piece| piece.sort == Sort::Word || piece.is_number() && piece.text.len() == 1);
    let grade = if below { " below grade" } else { "" };
    let cause = if says(&["start", "starts", "starting", "begins"]) {
        "a level has no place of its own: where its rooms start stands on the line of its first space"
    } else {
        "a level has its name; anything else goes into a comment"
    };
    // `17' wide inside, 42' front to back`: as a comment the size of the level would be lost.
    let is_sized = says(&["wide", "deep", "long", "width", "depth", "across"])
        || says(&["front"]) && says(&["to"]) && says(&["back"]);
    let has_two =
        super::measure::lengths(&pieces, 0).iter().filter(|(_, one)| one.has_unit).count() > 1;
    let follows = super::super::begins_as_side(&typed.attempt.beside.after);
    if is_sized && has_two && is_name && !follows {
        let face = if says(&["inside", "interior"]) {
            "; a wall measured inside goes with `measured to inside` after the name of the space"
        } else {
            ""
        };
        return Some(Answer::say(
            "a level has no size: its space has, as its sides",
            format!(
                "write `level {}{grade}`, on the next line `living \"Rooms\"`, and on the lines below that its sides, each with its way and its length{face}",
                name_of(typed, end)
            ),
        ));
    }
    // A size is that of its space.
    let has_size = super::size_in(rest).is_some()
        && !super::super::begins_as_side(&typed.attempt.beside.after);
    // `first floor - no crawlspace or basement`
    let is_of_another = super::levels::depths_of_another(&rest.to_lowercase());
    // `2nd floor, set back over garage`, `Upstairs, bedrooms`
    let is_remark = pieces.first().is_some_and(|first| {
        first.is_word(&["set", "bedrooms", "bedroom", "over", "smaller", "cantilevered", "offset"])
    }) && !says(&["no", "not", "unfinished", "measured", "inside"]);
    ((has_number || is_of_another || is_remark) && !is_figure && is_name && !has_size)
        .then(|| Answer::line(format!("level {}{grade}  # {rest}", name_of(typed, end)), cause))
}

/// `2nd story over the back half only`, `half story over garage`.
fn counted_level(typed: &Typed<'_>) -> Option<Answer> {
    let (end, _) = level(typed)?;
    let counted = typed.piece(0)?.is_number() || typed.says(0, &["half"]);
    let rest = &typed.pieces[end..];
    let plain = rest.iter().all(|piece| piece.sort == Sort::Word);
    let says = rest.iter().any(|piece| {
        piece.is_word(&[
            "inside",
            "outside",
            "interior",
            "exterior",
            "identical",
            "copy",
            "alike",
            "measured",
            "taped",
            "record",
            "same",
            "as",
            "below",
            "grade",
            "not",
            "unfinished",
            "finished",
        ])
    });
    (counted && plain && !says && !rest.is_empty()).then(|| {
        Answer::line(
            format!("level {}", quoted(typed.line)),
            "a level is `level` and its name, with a `\"` on each side",
        )
    })
}
