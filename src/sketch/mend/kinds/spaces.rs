//! Suggestions for lines of spaces, about what may follow their names.

use super::super::pieces::Piece;
use super::measure::{Measure, area_from, length_at, lengths, rectangle};
use super::{Answer, Rule, Typed, first_of, is_text, levels, quoted, remark};
use crate::sketch::statement::Kind;

/// The format's word for a kind of space; `None` if the word is not one.
pub(super) fn kind_word(word: &str) -> Option<&'static str> {
    Kind::ALL.iter().map(|kind| kind.word()).find(|own| *own == word)
}

/// Whether the line begins with a kind of space.
pub(super) fn is_space(typed: &Typed<'_>) -> bool {
    kind_word(&typed.lower(0)).is_some()
}

/// The words that may follow the name of a space.
const KEYWORDS: [&str; 10] = [
    "measured", "within", "start", "from", "detached", "under", "veneer", "counted", "not",
    "recorded",
];

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[
        levels::level,
        levels::lot,
        levels::missing,
        two_stories,
        ceiling,
        size,
        area_alone,
        words_between,
        corner,
    ];
    first_of(rules, typed)
}

fn begins_side_below(typed: &Typed<'_>) -> bool {
    super::super::begins_as_side(&typed.attempt.beside.after)
}

/// `2-story foyer start east 12'`: suggests a space that is open to the floor below.
fn two_stories(typed: &Typed<'_>) -> Option<Answer> {
    let story = ["story", "storey", "stories", "high", "double-height", "double", "height"];
    let at = typed
        .find(0, &["foyer", "entry", "atrium", "void", "great", "living"])
        .filter(|at| *at <= 4)?;
    if at == 0 && typed.says(0, &["foyer", "entry", "atrium", "void"]) && typed.says(1, &["open"]) {
        let mut end = 2;
        while typed.says(end, &["to", "below", "the", "floor", "above"]) {
            end += 1;
        }
        let name = quoted(&levels::capitalized(typed.text(0, 1)));
        let line = format!("open {name} {}", typed.rest(end));
        return Some(Answer::line(line.trim_end(), "what has no floor is `open` and has a name"));
    }
    if at == 0 {
        return None;
    }
    let says_two = typed.pieces[..at]
        .iter()
        .any(|piece| piece.is_word(&story) || piece.text.to_lowercase().contains("story"));
    if !says_two || at + 1 > typed.pieces.len() {
        return None;
    }
    let end = if typed.says(at + 1, &["room"]) { at + 2 } else { at + 1 };
    let (name, rest) = if is_text(typed.piece(end)) {
        (typed.text(end, end + 1).to_owned(), typed.rest(end + 1))
    } else {
        (quoted(&levels::capitalized(typed.text(at, end))), typed.rest(end))
    };
    Some(Answer::line(
        format!("open {name} {rest}").trim_end(),
        "what reaches through two stories is `open` on the upper level, where it has no floor",
    ))
}

/// `low "Eaves" start north 20' ceiling 5'`: puts the ceiling height after `under`.
fn ceiling(typed: &Typed<'_>) -> Option<Answer> {
    const SAYS: [&str; 17] = [
        "ceiling", "ceilings", "height", "headroom", "high", "less", "than", "below", "lower",
        "under", "is", "at", "of", "clg", "max", "knee", "wall",
    ];
    if !typed.says(0, &["low"]) {
        return None;
    }
    let all = lengths(&typed.pieces, 1);
    let beside = |(first, measure): &(usize, Measure)| {
        is_height(typed.piece(first - 1)) || is_height(typed.piece(measure.end))
    };
    let (first, measure) = all.iter().rev().find(|one| beside(one)).or(all.last()).cloned()?;
    let is_said = |piece: &Piece| piece.is_word(&SAYS) || piece.is_mark(",:<=()");
    let before = typed.pieces[..first].iter().rev().take_while(|piece| is_said(piece)).count();
    let after = typed.pieces[measure.end..].iter().take_while(|piece| is_said(piece)).count();
    let end = measure.end + after;
    if before + after == 0 || before == 1 && after == 0 && typed.says(first - 1, &["under"]) {
        return None;
    }
    let line =
        format!("{} under {} {}", typed.text(0, first - before), measure.text, typed.rest(end));
    Some(Answer::line(line.trim_end(), "the height of a low ceiling comes after `under`"))
}

/// `garage "Garage" from "House" corner 4 22' 1" x 21' 8" recorded 484 sq ft`: turns the size into four sides.
fn size(typed: &Typed<'_>) -> Option<Answer> {
    if !is_space(typed) || !is_text(typed.piece(1)) {
        return None;
    }
    let by = (2..typed.pieces.len())
        .find(|&at| typed.says(at, &["x", "by"]) || typed.pieces[at].is_mark("×*"))?;
    let two = length_at(&typed.pieces, by + 1)?;
    let first = (2..by).find(|&first| {
        let is_number_of_a_corner = typed.says(first - 1, &["corner"]);
        !is_number_of_a_corner && length_at(&typed.pieces, first).is_some_and(|one| one.end == by)
    })?;
    let one = length_at(&typed.pieces, first)?;
    if typed.says(first - 1, &["recorded"]) {
        let area = rectangle(one.length, two.length)?;
        let line = format!("{} {area} {}", typed.text(0, first), typed.rest(two.end));
        return Some(Answer::line(
            line.trim_end(),
            "an area is one number: one length times the other",
        ));
    }
    let head = typed.without(first, two.end);
    // A bare length takes the unit of the other one.
    let in_feet = |length: &str, own: bool, other: bool| {
        if !own && other { format!("{length}'") } else { length.to_owned() }
    };
    let metric = one.is_metric() || two.is_metric();
    let (a, b) = if metric {
        (one.text.clone(), two.text.clone())
    } else {
        (
            in_feet(&one.text, one.has_unit, two.has_unit),
            in_feet(&two.text, two.has_unit, one.has_unit),
        )
    };
    let sides = |a: &str, b: &str| format!("{head}\nnorth {a}\neast {b}\nsouth {a}\nwest {b}");
    let mut lines = vec![sides(&a, &b)];
    if one.length != two.length {
        lines.push(sides(&b, &a));
    }
    Some(Answer::Lines(
        lines,
        "a size is typed as its sides, one on each line: which of the two lengths runs north and south?".to_owned(),
    ))
}

/// `porch "Front porch" covered from "House" corner 1`, `deck "Deck" (uncovered) start …`: moves words that do not
/// affect the area to the end, as a comment.
fn words_between(typed: &Typed<'_>) -> Option<Answer> {
    if !is_space(typed) || !is_text(typed.piece(1)) {
        return None;
    }
    let is_keyword = |at: usize| typed.says(at, &KEYWORDS);
    let first = (2..typed.pieces.len()).find(|&at| {
        let piece = &typed.pieces[at];
        let counts = piece.is_number()
            && piece.text.len() == 1
            && typed.piece(at + 1).is_some_and(|next| {
                next.is_mark("-")
                    || next.is_word(&["car", "story", "storey", "stall", "bay", "door"])
            })
            && !typed.says(at - 1, &["corner"]);
        // A piece that the word before it asks for is not a remark.
        let is_asked_for =
            typed.says(at - 1, &["from", "corner", "within", "to", "of", "start", "measured"]);
        !is_asked_for
            && (piece.is_mark("([")
                || counts
                || piece.sort == super::Sort::Word
                    && (at == 2 || !is_keyword(at))
                    && !is_known_later(typed, at))
    })?;
    if is_keyword(first) {
        return None;
    }
    let end = if typed.pieces[first].is_mark("([") {
        (first..typed.pieces.len()).find(|&at| typed.pieces[at].is_mark(")]")).map(|at| at + 1)?
    } else {
        (first..typed.pieces.len()).find(|&at| is_keyword(at)).unwrap_or(typed.pieces.len())
    };
    let said = &typed.pieces[first..end];
    let matters = |piece: &Piece| {
        piece.is_word(&[
            "corner",
            "at",
            "by",
            "behind",
            "beside",
            "near",
            "next",
            "north",
            "south",
            "east",
            "west",
            "n",
            "s",
            "e",
            "w",
            "inside",
            "outside",
            "in",
            "within",
            "on",
            "off",
            "included",
            "excluded",
            "counted",
            "count",
            "counts",
            "grade",
            "below",
            "measured",
            "recorded",
            "record",
            "county",
            "ceiling",
            "height",
            "high",
            "frame",
            "drywall",
            "studs",
            "brick",
            "siding",
            "separate",
            "freestanding",
            "standalone",
            "unattached",
            "attached",
            "adjoining",
            "touching",
            "adjacent",
            "to",
            "from",
            "no",
            "don't",
            "do",
            "without",
            "exclude",
            "include",
            "interior",
            "exterior",
            "starts",
            "starting",
            "begins",
            "x",
            "located",
            "front",
            "rear",
            "back",
            "left",
            "right",
            "side",
            "and",
            "offset",
            "lower",
            "less",
            "or",
            "uncounted",
            "taped",
            "inner",
            "outer",
            "veneer",
            "wall",
            "part",
            "of",
            "rec",
            "card",
            "stand-alone",
            "itself",
        ]) && !(piece.is_word(&["attached"]) && end - first <= 3)
            || piece.sort == super::Sort::Text
    };
    let small = |piece: &Piece| piece.is_number() && piece.text.len() <= 2;
    let has_figure = said.iter().any(|piece| piece.is_number() && !small(piece))
        || lengths(said, 0).iter().any(|(_, measure)| measure.has_unit)
        || area_from(said, 0).is_some();
    let is_last = end == typed.pieces.len() && typed.pieces[first].sort == super::Sort::Word;
    let is_placed =
        typed.find(2, &["start", "from", "within", "detached"]).is_some_and(|at| at < first);
    let is_height = has_figure
        && is_last
        && is_placed
        && area_from(said, 0).is_none()
        && !typed.says(0, &["low"]);
    if said.iter().any(matters) || has_figure && !is_height {
        return None;
    }
    let has_place = end < typed.pieces.len();
    let is_open_word = said.iter().any(|piece| piece.sort == super::Sort::Word);
    let has_place = has_place || is_placed;
    (is_open_word && (has_place || typed.pieces[first].is_mark("(["))).then(|| {
        let line = format!("{}  # {}", typed.without(first, end), remark(typed.text(first, end)));
        Answer::line(line, "these words say nothing about the area; anything else goes into a comment at the end of the line")
    })
}

/// Whether the word at this piece belongs to the keyword before it: a direction, a face, `grade`, a unit.
fn is_known_later(typed: &Typed<'_>, at: usize) -> bool {
    typed.says(at, &KEYWORDS)
        || typed.says(
            at,
            &[
                "north", "south", "east", "west", "n", "s", "e", "w", "back", "front", "left",
                "right", "corner", "to", "outside", "frame", "inside", "none", "ft", "feet",
                "foot", "in", "inch", "inches", "m", "cm", "mm", "sq", "sqft", "sf", "sqm",
                "square", "acres", "acre", "ha", "hectares",
            ],
        )
}

/// `corner porch starts here`, `corner porch (wood post)`: takes the first word as the corner's name.
fn corner(typed: &Typed<'_>) -> Option<Answer> {
    if !typed.says(0, &["corner"])
        || typed.line.contains('"')
        || typed.piece(1)?.sort != super::Sort::Word
    {
        return None;
    }
    let verbs = [
        "starts", "start", "begins", "begin", "is", "here", "meets", "where", "joins", "ends", "(",
        "-", "–", ",",
    ];
    let first = 1 + usize::from(typed.says(1, &["where", "the"]));
    let at =
        (first + 1..typed.pieces.len()).find(|&at| verbs.contains(&typed.lower(at).as_str()))?;
    let line = format!("corner {}  # {}", quoted(typed.text(first, at)), remark(typed.rest(at)));
    Some(Answer::line(
        line,
        "a corner has a name with a `\"` on each side; anything else goes into a comment",
    ))
}

/// Whether a piece is a word about the height of a ceiling.
fn is_height(piece: Option<&Piece>) -> bool {
    piece.is_some_and(|piece| {
        piece.is_word(&[
            "ceiling", "ceilings", "height", "headroom", "high", "clg", "under", "below", "than",
        ])
    })
}

/// `from "House" corner 4, 484 sq ft per county`, `recorded 22 x 22`: suggests `recorded` with the area.
fn area_alone(typed: &Typed<'_>) -> Option<Answer> {
    if !is_space(typed) || !is_text(typed.piece(1)) {
        return None;
    }
    let (first, end, area) = area_from(&typed.pieces, 2)?;
    if typed.find(2, &["recorded"]).is_some() || area_from(&typed.pieces, end).is_some() {
        return None;
    }
    let speaks = |piece: &Piece| {
        piece.is_mark("()[],;:=-–.")
            || piece.is_word(&[
                "per", "county", "card", "record", "says", "on", "the", "by", "assessor", "rec",
                "tax", "roll", "of", "is", "area", "about", "size",
            ])
    };
    let mut begin = first;
    while begin > 2 && speaks(&typed.pieces[begin - 1]) {
        begin -= 1;
    }
    let mut stop = end;
    while typed.piece(stop).is_some_and(speaks) {
        stop += 1;
    }
    // Of an opening the record has no area, mostly: it is what was measured.
    let is_deducted = matches!(typed.lower(0).as_str(), "open" | "stair" | "low" | "court");
    if is_deducted && begin == first && stop == typed.pieces.len() && !begins_side_below(typed) {
        return Some(Answer::say(
            "an area alone cannot be drawn, and only what is drawn is deducted",
            format!(
                "write `{}`, then where it starts, and on the lines below it its sides; at the end of the line `recorded {area}` only if the record has that area for it",
                typed.text(0, 2)
            ),
        ));
    }
    let line = format!("{} {} recorded {area}", typed.text(0, begin), typed.rest(stop));
    Some(Answer::line(
        line.replace("  ", " "),
        "the record's area of a space goes after `recorded`, at the end of the line",
    ))
}
