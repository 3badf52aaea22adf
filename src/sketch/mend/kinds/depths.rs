//! Lines of levels that say in words that they lie in the ground, or next to another level.

use super::super::pieces::{Piece, Sort};
use super::levels::capitalized;
use super::names::FLOORS;
use super::{Answer, Typed, is_text, kind_word, plainly, remark};

/// `lower level, half in the ground`, `main level, left of the bedrooms`, `daylight basement, partly underground`.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    if let Some(answer) = space_in_the_ground(typed) {
        return Some(answer);
    }
    let (first, end) = name_of_a_level(typed)?;
    if let Some(answer) = named_twice(typed, first, end) {
        return Some(answer);
    }
    let said: Vec<&Piece> =
        typed.pieces[end..].iter().filter(|piece| piece.sort == Sort::Word).collect();
    if said.is_empty() || typed.pieces[end..].iter().any(|piece| piece.sort == Sort::Text) {
        return None;
    }
    let is_reserved = |piece: &&&Piece| piece.is_word(&["measured", "taped", "recorded", "same"]);
    let has_number = typed.pieces[end..].iter().any(Piece::is_number);
    // `under upper, 4 ft in the ground`
    let is_deep = is_in_the_ground(&said) == Some(true);
    if has_number && !is_deep || said.iter().any(|piece| is_reserved(&piece)) {
        return None;
    }
    // `level "Family room" below the bedrooms`: as a comment alone it would count as above grade.
    let is_under = said[0].is_word(&["below", "under", "beneath", "underneath"]);
    // `below gr.`
    let is_short = said.get(1).is_some_and(|word| word.text.len() < 4 && !word.is_word(&["the"]));
    if is_under && is_in_the_ground(&said).is_none() && said.len() > 1 && !is_short {
        let name = match is_text(typed.piece(first)) {
            true => typed.name(first, end),
            false => capitalized(&typed.name(first, end)),
        };
        let comment = plainly(&remark(typed.rest(end)));
        let lines =
            [" below grade", ""].map(|depth| format!("level \"{name}\"{depth}  # {comment}"));
        return Some(Answer::Lines(
            lines.to_vec(),
            "a level under another one is `below grade` if any of it lies in the ground: does it"
                .to_owned(),
        ));
    }
    // `half a flight down`: as a comment alone it would count as above grade.
    let is_down = said.iter().any(|piece| piece.is_word(&["half"]))
        && said.iter().any(|piece| piece.is_word(&["down", "below"]));
    if is_down && is_in_the_ground(&said).is_none() && is_next_to_another(&said) {
        let name = match is_text(typed.piece(first)) {
            true => typed.name(first, end),
            false => capitalized(&typed.name(first, end)),
        };
        let comment = plainly(remark(typed.rest(end)).trim_start_matches(['(', ' ']));
        let lines = [" below grade", ""]
            .map(|depth| format!("level \"{name}\"{depth} beside  # {comment}"));
        return Some(Answer::Lines(
            lines.to_vec(),
            "a level next to another one, and not above it, is `beside`, and `below grade` if any of it lies in the ground: does it"
                .to_owned(),
        ));
    }
    let (depth, cause) = match (is_in_the_ground(&said), is_next_to_another(&said)) {
        (Some(true), false) => (
            "below grade",
            "a level is `below grade` as a whole, even where only part of it lies below grade",
        ),
        (Some(false), false) => {
            ("", "a level is above grade unless it says `below grade`; a comment begins with `#`")
        }
        (None, true) => (
            "beside",
            "a level next to another one, and not above it, is `beside`; after the name of each of its spaces comes where it starts",
        ),
        _ => return None,
    };
    let name = match is_text(typed.piece(first)) {
        true => typed.name(first, end),
        false => capitalized(&typed.name(first, end)),
    };
    let rest = remark(typed.rest(end));
    let rest = plainly(rest.trim_start_matches(['(', ' ']));
    // The words of the format, and others for them, need no comment.
    let plain = ["below grade", "below ground", "under ground", "underground", "beside"];
    let is_plain = plain.contains(&rest.to_lowercase().as_str());
    let comment = if is_plain { String::new() } else { format!("  # {rest}") };
    let depth = if depth.is_empty() { String::new() } else { format!(" {depth}") };
    Some(Answer::line(format!("level \"{name}\"{depth}{comment}"), cause))
}

/// `living "Family room" below grade`, `living "Den" basement recorded 624 sq ft`: the depth belongs to the level, and as
/// a comment it would be lost.
fn space_in_the_ground(typed: &Typed<'_>) -> Option<Answer> {
    let is_space = kind_word(&typed.lower(0)).is_some() && is_text(typed.piece(1));
    let two = typed.says(2, &["below", "under", "in"])
        && (typed.says(3, &["grade", "ground"])
            || typed.says(3, &["the"]) && typed.says(4, &["ground", "basement"]));
    let one = typed.says(2, &["underground", "basement", "subgrade", "below-grade"]);
    if !is_space || !(one || two) {
        return None;
    }
    let after = if one { 3 } else { 4 + usize::from(typed.says(3, &["the"])) };
    let line = format!("{} {}", typed.text(0, 2), typed.rest(after));
    Some(Answer::say(
        "`below grade` is said of a level, and holds for all its spaces",
        format!(
            "unless it is there already, write `below grade` at the end of the line of its level, above; then this line is `{}`",
            line.trim_end()
        ),
    ))
}

/// `level "Upper floor" above "Ground floor"`, `upstairs: level "Upper floor"`, `second story: "Upper floor"`.
fn named_twice(typed: &Typed<'_>, first: usize, end: usize) -> Option<Answer> {
    let last = typed.pieces.len() - 1;
    if last <= end || !is_text(typed.piece(last)) {
        return None;
    }
    let says = |words: &[&str]| {
        typed.pieces[end..last].iter().all(|piece| piece.is_word(words) || piece.is_mark(":=–-"))
    };
    let (name, said) = if is_text(typed.piece(first)) {
        // The next level is above the one before it anyway.
        says(&["above", "over", "on", "upon", "top", "of", "the"])
            .then(|| (typed.text(first, end), plainly(typed.rest(end))))?
    } else {
        let is_marked = typed.piece(end).is_some_and(|mark| mark.is_mark(":=–-"));
        (is_marked && says(&["level", "the", "named", "called", "is"]))
            .then(|| (typed.text(last, last + 1), plainly(typed.text(0, end))))?
    };
    Some(Answer::line(
        format!("level {name}  # {said}"),
        "a level is `level` and its name; anything else goes into a comment",
    ))
}

/// From where to where a line names a level: `level "Lower"`, `level lower`, `lower level`, `basement`.
fn name_of_a_level(typed: &Typed<'_>) -> Option<(usize, usize)> {
    const CELLARS: [&str; 2] = ["basement", "cellar"];
    const MOST_WORDS: usize = 4;
    let first = usize::from(typed.says(0, &["level"]));
    if first == 1 && is_text(typed.piece(1)) {
        return Some((1, 2));
    }
    if typed.says(first, &["upstairs", "downstairs"]) {
        return Some((first, first + 1));
    }
    let is_name = |at: usize| {
        typed.piece(at).is_some_and(|piece| {
            piece.sort == Sort::Word && !piece.is_word(&["on", "is", "of", "to", "the", "below"])
        })
    };
    let last = (first..first + MOST_WORDS)
        .take_while(|&at| is_name(at))
        .find(|&at| typed.says(at, &FLOORS) && at > first || typed.says(at, &CELLARS));
    if let Some(last) = last {
        return Some((first, last + 1));
    }
    // `level Living right of the bedrooms`: the name ends where the words about its place begin.
    let end = (first + 1..typed.pieces.len()).find(|&at| {
        let rest: Vec<&Piece> = typed.pieces[at..].iter().collect();
        is_next_to_another_at(&rest, 0) || typed.says(at, &["half", "partly", "below", "under"])
    })?;
    (first == 1 && (first..end).all(is_name)).then_some((first, end))
}

/// Whether words say that a level lies in the ground, or that it does not; `None` if they do not speak of it.
fn is_in_the_ground(said: &[&Piece]) -> Option<bool> {
    let finds = |words: &[&str]| said.iter().position(|piece| piece.is_word(words));
    let into = ["in", "into", "below", "under", "beneath", "below-grade"];
    let earth = finds(&["grade", "ground", "earth", "hill", "hillside", "slope"]).filter(|&at| {
        // `over the ground floor` speaks of a level.
        !said.get(at + 1).is_some_and(|next| next.is_word(&FLOORS))
    });
    if finds(&["above"]).is_some() && earth.is_some() || finds(&["not"]).is_some() {
        return earth.map(|_| false);
    }
    let is_in = earth.is_some_and(|earth| said[..earth].iter().any(|piece| piece.is_word(&into)));
    let is_said =
        finds(&["underground", "buried", "sunken", "walkout", "walk-out", "daylight"]).is_some();
    (is_in || is_said).then_some(true)
}

/// Whether words say that a level stands next to another one.
fn is_next_to_another(said: &[&Piece]) -> bool {
    (0..said.len()).any(|at| is_next_to_another_at(said, at))
}

fn is_next_to_another_at(said: &[&Piece], at: usize) -> bool {
    const WAYS: [&str; 11] = [
        "right",
        "left",
        "north",
        "east",
        "south",
        "west",
        "northeast",
        "northwest",
        "southeast",
        "southwest",
        "front",
    ];
    let says = |at: usize, words: &[&str]| said.get(at).is_some_and(|piece| piece.is_word(words));
    says(at, &WAYS) && (says(at + 1, &["of"]) || says(at + 1, &["side"]) && says(at + 2, &["of"]))
        || says(at, &["beside", "alongside", "adjacent", "behind"])
        || says(at, &["next"]) && says(at + 1, &["to"])
        || says(at, &["half"]) && is_half_way_up(&said[at + 1..])
}

/// `half a flight up`, `half level down`: as the floors of a split level.
fn is_half_way_up(after: &[&Piece]) -> bool {
    let small = ["a", "of"];
    let mut rest = after.iter().filter(|piece| !piece.is_word(&small));
    let flight = rest.next().is_some_and(|piece| piece.is_word(&["flight", "level", "story"]));
    flight && rest.next().is_some_and(|piece| piece.is_word(&["up", "down", "above", "below"]))
}
