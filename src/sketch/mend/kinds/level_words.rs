//! Levels whose line has a remark, a number or only a word of the name.

use super::super::pieces::{Piece, Sort};
use super::levels::capitalized;
use super::measure::area_from;
use super::names::FLOORS;
use super::{Answer, Typed, digits, kind_word, quoted};

/// Above the line of a space: `bedroom level over the lower level`, `attic`, `upper level, bedrooms, set over the left half`,
/// `Upstairs: bedrooms over the left half`: what opens a level.
pub(super) fn above_a_space(typed: &Typed<'_>) -> Option<Answer> {
    const ALONE: [&str; 6] = ["attic", "loft", "upstairs", "downstairs", "basement", "cellar"];
    let after = typed.attempt.beside.after.split_whitespace().next().unwrap_or_default();
    let is_plain =
        typed.pieces.iter().all(|piece| piece.sort == Sort::Word || piece.is_mark(",:.-–()"));
    if kind_word(after).is_none() || !is_plain || typed.pieces.len() > 16 {
        return None;
    }
    let ends = |at: usize| {
        at == typed.pieces.len()
            || typed.piece(at).is_some_and(|mark| mark.is_mark(",:-–("))
            || typed.says(at, &["over", "above", "on", "upon", "set", "under", "below"])
    };
    let not = [
        "split", "bi", "tri", "eye", "same", "on", "at", "of", "the", "this", "water", "sea",
        "street",
    ];
    let end = match (1..=2).find(|&at| typed.says(at, &["level", "floor", "story", "storey"])) {
        Some(at)
            if !typed.pieces[..at]
                .iter()
                .any(|piece| piece.is_word(&not) || piece.sort != Sort::Word) =>
        {
            at + 1
        }
        None if typed.says(0, &ALONE) => 1,
        _ => return None,
    };
    if !ends(end) || typed.says(0, &["level"]) || kind_word(&typed.lower(0)).is_some() {
        return None;
    }
    // Lines about the grade, the face or the finish of a level, and plain floors, have rules of their own.
    let others = [
        "below",
        "grade",
        "ground",
        "inside",
        "outside",
        "frame",
        "attic",
        "finished",
        "measured",
        "partly",
        "partially",
        "unfinished",
        "ceiling",
        "ceilings",
    ];
    let is_floor = typed.says(
        0,
        &[
            "upper",
            "lower",
            "main",
            "ground",
            "first",
            "second",
            "third",
            "top",
            "upstairs",
            "downstairs",
            "basement",
            "cellar",
        ],
    );
    let lies_over = typed.find(end, &["over", "above"]).is_some();
    if typed.find(end, &others).is_some() || is_floor && !lies_over {
        return None;
    }
    let name = capitalized(&typed.text(0, end).to_lowercase());
    let rest = super::remark(typed.rest(end).trim_start_matches([':', ',', '-', '–', ' ']));
    let below = ["basement", "cellar"].iter().any(|word| name.to_lowercase().starts_with(word));
    let grade = if below { " below grade" } else { "" };
    let comment = if rest.is_empty() { String::new() } else { format!("  # {rest}") };
    Some(Answer::line(
        format!("level {}{grade}{comment}", quoted(&name)),
        "what stands above the line of a space opens a level: `level` and its name",
    ))
}

/// `UPPER LEVEL - 8 FT CEILINGS`, `half story`, `level 1 below ground`, `split level upper`: a level with a remark.
pub(super) fn level(typed: &Typed<'_>) -> Option<Answer> {
    const WHICH: &[&str] = &[
        "basement", "loft", "attic", "garage", "cellar", "upper", "lower", "main", "ground",
        "first", "second", "third", "top", "half", "split", "bottom", "mid", "middle", "one",
        "two", "three",
    ];
    let ordinal = |at: usize| {
        typed.piece(at).is_some_and(|number| digits::is_small(number) && number.text.len() == 1)
    };
    let mut end = 0;
    while typed.says(end, WHICH)
        || ordinal(end)
        || typed.says(end, &["st", "nd", "rd", "th"])
        || end > 0
            && typed.piece(end).is_some_and(|mark| mark.is_mark("-"))
            && typed.says(end + 1, &FLOORS)
    {
        end += 1;
    }
    let first_is_floor = end == 0 && typed.says(0, &FLOORS);
    if first_is_floor {
        end = 1;
        while typed.says(end, WHICH) || end == 1 && ordinal(end) {
            end += 1;
        }
    } else if end > 0 && typed.says(end, &FLOORS) {
        end += 1;
        while typed.says(end, &["upper", "lower"]) {
            end += 1;
        }
    } else {
        return None;
    }
    let rest = typed.pieces.get(end..)?;
    if rest.is_empty()
        || end < 2
        || typed.line.contains('"')
        || area_from(&typed.pieces, end).is_some()
    {
        return (rest.is_empty() && end > 1 && typed.says(0, &["half", "split"]))
            .then(|| level_line(typed, end, ""));
    }
    // Only the writer knows whether such a level is one in the ground.
    if rest.iter().any(|piece| piece.is_word(&["partly", "partially"])) {
        return None;
    }
    let copies = ["same", "identical", "like", "repeat", "copy"];
    if rest.iter().any(|piece| piece.is_word(&copies)) {
        return Some(super::loose::copied(
            typed,
            true,
            "write `level` and its name, below it its space, as `living \"Upper rooms\"`, and type its sides again, one on each line".to_owned(),
        ));
    }
    let below =
        ["below", "under", "underground", "grade", "ground", "partly", "partially", "walkout"];
    let is_below = rest.iter().any(|piece| piece.is_word(&["underground"]))
        || rest.iter().any(|piece| piece.is_word(&["below", "under"]))
            && rest.iter().any(|piece| piece.is_word(&["grade", "ground"]));
    let is_below = is_below
        || typed.says(0, &["basement", "cellar"])
        || rest.iter().any(|piece| piece.is_word(&["walkout", "walk-out", "daylight"]));
    let is_beside = rest.iter().any(|piece| piece.is_word(&["beside", "alongside"]));
    let left: Vec<&Piece> =
        rest.iter().filter(|piece| piece.sort == Sort::Word && !piece.is_word(&below)).collect();
    let heights = ["ceiling", "ceilings", "high", "clg", "tall"];
    let is_height = rest.iter().any(|piece| piece.is_word(&heights));
    let remarks = [
        "finished",
        "ceiling",
        "ceilings",
        "ft",
        "foot",
        "feet",
        "high",
        "clg",
        "with",
        "and",
        "all",
        "only",
        "vaulted",
        "rooms",
        "starts",
        "here",
        "begins",
        "bedrooms",
        "bedroom",
        "bath",
        "baths",
        "only",
        "wood",
        "carpet",
        "tall",
        "in",
        "sloped",
        "flat",
        "beside",
        "alongside",
        "lower",
        "upper",
        "main",
        "level",
        "floor",
        "story",
    ];
    let numbers = rest.iter().any(Piece::is_number);
    if left.iter().any(|piece| !piece.is_word(&remarks))
        || numbers && !is_height
        || typed.says(0, &["level"]) && !is_below
    {
        return None;
    }
    let said =
        if is_below && left.is_empty() { String::new() } else { super::remark(typed.rest(end)) };
    let said = super::plainly(&said);
    let depth = match (is_below, is_beside) {
        (true, _) => " below grade",
        (false, true) => " beside",
        (false, false) => "",
    };
    let comment = if said.is_empty() { String::new() } else { format!("  # {said}") };
    Some(level_line(typed, end, &format!("{depth}{comment}")))
}

/// `level` with the name that the first pieces give it.
fn level_line(typed: &Typed<'_>, end: usize, rest: &str) -> Answer {
    let first = usize::from(typed.says(0, &["level"]) && end > 2);
    let name = quoted(&capitalized(typed.text(first, end)));
    let cause = "a level is `level` and its name, with a `\"` on each side";
    if typed.says(0, &["split"]) {
        return Answer::Lines(
            vec![format!("level {name} beside{rest}"), format!("level {name}{rest}")],
            format!("{cause}; one that stands next to the level before it is `beside`"),
        );
    }
    Answer::line(format!("level {name}{rest}"), cause)
}

/// `attic (finished)`, `finished attic`: a level of its own, with its rooms.
pub(super) fn attic(typed: &Typed<'_>) -> Option<Answer> {
    let words = ["attic", "finished", "rooms", "room", "over", "the", "house", "all", "space"];
    let only =
        typed.pieces.iter().all(|piece| piece.is_word(&words[..5]) || piece.is_mark("(),-–:"));
    let says = typed.find(0, &words[..1]).is_some() && typed.find(0, &["finished"]).is_some();
    (only && says && typed.pieces.len() <= 6).then(|| {
        let next = super::cut(&typed.attempt.beside.after);
        let has_rooms =
            next.first().is_some_and(|word| kind_word(&word.text.to_lowercase()).is_some());
        let rooms = if has_rooms { "" } else { "\nliving \"Attic rooms\"" };
        Answer::line(
            format!("level \"Attic\"{rooms}"),
            "a finished attic is a level with its own rooms",
        )
    })
}

/// `2F`, `L2`, `2nd`: a level by its number.
pub(super) fn short_level(typed: &Typed<'_>) -> Option<Answer> {
    let [first, second] = &typed.pieces[..] else { return None };
    let one = |piece: &Piece| digits::is_small(piece) && piece.text.len() == 1;
    let letter = |piece: &Piece| piece.is_word(&["f", "l", "fl", "lvl", "flr"]);
    let is_level = second.touches && (one(first) && letter(second) || letter(first) && one(second));
    let is_story = typed.says(0, &["story", "level", "floor", "storey"])
        && second.is_number()
        && second.text.contains('.');
    (is_level || is_story).then(|| {
        Answer::line(
            format!("level {}", quoted(typed.line)),
            "a level is `level` and its name, with a `\"` on each side",
        )
    })
}

/// `level 2 (bedrooms)`, `level Basement (unfinished)`: a level with a remark.
pub(super) fn level_with_a_remark(typed: &Typed<'_>) -> Option<Answer> {
    let open = (2..typed.pieces.len()).find(|&at| typed.pieces[at].is_mark("("))?;
    let last = typed.pieces.len() - 1;
    let close = typed.pieces[last].is_mark(")") && open + 1 < last;
    let plain = typed.pieces[1..open]
        .iter()
        .all(|piece| piece.sort == Sort::Word || digits::is_small(piece));
    let matters =
        ["below", "grade", "beside", "underground", "measured", "inside", "outside", "partly"];
    let speaks = typed.pieces[open..].iter().any(|piece| piece.is_word(&matters));
    let depth = if typed.find(1, &["basement", "cellar"]).is_some() { " below grade" } else { "" };
    (typed.says(0, &["level"]) && close && plain && !speaks).then(|| {
        Answer::line(
            format!("level {}{depth}  # {}", quoted(typed.text(1, open)), super::plainly(typed.text(open + 1, last))),
            "a level is `level` and its name, with a `\"` on each side; anything else goes into a comment",
        )
    })
}
