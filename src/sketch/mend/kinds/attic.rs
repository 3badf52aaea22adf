//! Rooms under a roof: lines that say how much of a floor has a ceiling of 5 feet and more, which is what counts.

use super::super::pieces::Sort;
use super::described::{by, in_one_unit};
use super::measure::{Measure, length_at, written};
use super::straight::{self, Walk};
use super::{Answer, Rule, Typed, eaves, first_of, kind_word};
use crate::geometry::compass::{Axis, Direction};
use crate::units::length::Length;

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let rules: &[Rule] = &[level_with_a_high_part, high_part, high_width, eaves::answer, knee_wall];
    first_of(rules, typed)
}

/// What counts under a roof, in one sentence.
pub(super) const COUNTS: &str =
    "only the part of a floor where the ceiling is 5 ft high or more counts";

/// Words around the height and the size of what is high enough.
const AROUND: [&str; 58] = [
    "over", "above", "at", "or", "more", "higher", "taller", "better", "up", "and", "plus", "min",
    "minimum", "least", "headroom", "ceiling", "ceilings", "height", "high", "tall", "is", "are",
    "the", "of", "part", "area", "where", "wide", "width", "across", "long", "deep", "by", "for",
    "in", "middle", "center", "centre", "foot", "line", "sloped", "slope", "sloping", "slanted",
    "attic", "upstairs", "loft", "with", "a", "only", "counts", "between", "to", "clear", "floor",
    "usable", "finished", "it",
];

/// Whether a ceiling is as high as what counts needs: 5 ft, or 1.5 m.
pub(super) fn is_five_feet(one: &Measure) -> bool {
    let five = Length::from_nm(5 * Length::FOOT.nm());
    (one.length - five).abs() <= Length::from_nm(Length::INCH.nm())
}

/// The height that what counts needs, in the system of a length.
pub(super) fn five_feet_like(one: &Measure) -> Option<Measure> {
    let text = if one.is_metric() { "1.5 m" } else { "5'" };
    Some(Measure { end: 0, length: text.parse().ok()?, text: text.to_owned(), has_unit: true })
}

/// Whether it is a height that a person stands under.
fn is_full_height(one: &Measure) -> bool {
    let (six, twelve) =
        (6 * Length::FOOT.nm() + Length::FOOT.nm().div_euclid(2), 12 * Length::FOOT.nm());
    (six..=twelve).contains(&one.length.nm())
}

/// A length with its unit; `5-foot` too.
fn height_at(typed: &Typed<'_>, at: usize) -> Option<Measure> {
    let one = length_at(&typed.pieces, at)?;
    if one.has_unit {
        return Some(one);
    }
    let is_dash = typed.piece(one.end).is_some_and(|mark| mark.is_mark("-") && mark.touches);
    let is_foot = typed.says(one.end + 1, &["foot", "ft"]);
    (is_dash && is_foot).then(|| Measure {
        end: one.end + 2,
        text: format!("{}'", one.text),
        length: format!("{}'", one.text).parse().unwrap_or(one.length),
        has_unit: true,
    })
}

fn has_text(typed: &Typed<'_>) -> bool {
    typed.pieces.iter().any(|piece| piece.sort == Sort::Text)
}

/// Whether the line is one of a space or a wall, and so for other rules.
fn is_of_another(typed: &Typed<'_>) -> bool {
    let first = typed.lower(0);
    has_text(typed)
        || kind_word(&first).is_some()
        || super::walls::is_way(typed, 0)
        || super::names_a_level(typed.line)
        || ["record", "listing", "plan", "level", "lot"].contains(&first.as_str())
}

/// Whether every piece outside these ranges is one of the words.
fn only(typed: &Typed<'_>, ranges: &[(usize, usize)], words: &[&str]) -> bool {
    (0..typed.pieces.len()).all(|at| {
        ranges.iter().any(|(first, end)| (*first..*end).contains(&at))
            || typed.says(at, words)
            || typed.pieces[at].is_mark(",;:()-–.=+>≥'’\"")
    })
}

/// `attic finished: 32 x 20 between knee walls; 5 ft or more over 32 x 18`: of two sizes, the one of what is high enough
/// counts.
fn level_with_a_high_part(typed: &Typed<'_>) -> Option<Answer> {
    let follows = super::super::begins_as_side(&typed.attempt.beside.after);
    let name_end = (1..typed.pieces.len().min(4)).find(|&end| {
        typed.piece(end).is_some_and(|piece| piece.is_mark(",:;(-–") || piece.is_number())
            || typed.says(end, &["finished", "is", "has"])
    })?;
    if !super::names_a_level(typed.line) || follows || has_text(typed) {
        return None;
    }
    let mut sizes: Vec<(usize, Measure, Measure)> = Vec::new();
    let mut at = name_end;
    while at < typed.pieces.len() {
        let size = length_at(&typed.pieces, at).and_then(|one| {
            let two = length_at(&typed.pieces, one.end + 1).filter(|_| by(typed, one.end))?;
            Some((at, one, two))
        });
        at = size.as_ref().map_or(at + 1, |(_, _, two)| two.end);
        sizes.extend(size);
    }
    // Right after a size, or right before it, with small words between.
    let is_high = |(at, _, two): &(usize, Measure, Measure)| {
        let mut next = two.end;
        while typed.says(next, &["at", "with", "over", "above", "is", "of", "the", "it"]) {
            next += 1;
        }
        let after = height_at(typed, next).filter(|_| next > two.end);
        let says_more = |at: usize| {
            typed.says(at, &["or", "and"]) && typed.says(at + 1, &["more", "up", "higher", "over"])
                || typed.says(at, &["high", "headroom", "plus"])
        };
        let before = (0..*at).rev().take(8).find_map(|first| {
            let height = height_at(typed, first)?;
            let words = [
                "or", "more", "over", "higher", "and", "up", "high", "headroom", "for", "is", "at",
                "part", "plus",
            ];
            let only = (height.end..*at)
                .all(|at| typed.says(at, &words) || typed.pieces[at].is_mark(":=-–"));
            only.then_some(height)
        });
        after.filter(|one| is_five_feet(one) && (says_more(one.end) || sizes.len() > 1)).is_some()
            || before.is_some_and(|one| is_five_feet(&one))
    };
    let high: Vec<_> = sizes.iter().filter(|size| is_high(size)).collect();
    let [(at, one, two)] = high[..] else { return None };
    // The first size is taken by the rule for levels.
    if sizes.first().is_some_and(|(first, ..)| first == at) {
        return None;
    }
    let (a, b) = in_one_unit(one, two);
    let level = super::levels::capitalized(typed.text(0, name_end));
    let depth = match typed.find(0, &["basement", "cellar"]) {
        Some(_) => " below grade",
        None => "",
    };
    let kind = match typed.find(0, &["unfinished"]) {
        Some(_) => "unfinished",
        None => "living",
    };
    let said = super::plainly(typed.rest(name_end));
    let said = said.trim_matches([' ', ',', ':', ';', '-']);
    let sides = |north: &str, east: &str| {
        format!(
            "level \"{level}\"{depth}\n{kind} \"Rooms\"  # {said}\nnorth {north}\neast {east}\nsouth {north}\nwest {east}"
        )
    };
    let mut lines = vec![sides(&a, &b), sides(&b, &a)];
    lines.dedup();
    Some(Answer::Lines(
        lines,
        format!(
            "{COUNTS}: of the sizes on this line it is the space with its four sides; which of the two lengths runs north and south?"
        ),
    ))
}

/// `5 ft or more over 32 x 18`, `18 x 32 over 5 ft`: the size of what is high enough.
fn high_part(typed: &Typed<'_>) -> Option<Answer> {
    if is_of_another(typed) {
        return None;
    }
    let size = (0..typed.pieces.len()).find_map(|at| {
        let one = length_at(&typed.pieces, at)?;
        let two = length_at(&typed.pieces, one.end + 1).filter(|_| by(typed, one.end))?;
        Some((at, one, two))
    });
    let (at, one, two) = size?;
    let mut heights: Vec<(usize, Measure)> = Vec::new();
    let mut next = 0;
    while next < typed.pieces.len() {
        let height = height_at(typed, next).filter(|_| next != at);
        let end = height.as_ref().map_or(next + 1, |height| height.end);
        heights.extend(height.map(|height| (next, height)));
        next = if next == at { two.end } else { end };
    }
    let [(first, height)] = &heights[..] else { return None };
    let is_said = [
        "over", "above", "at", "more", "higher", "plus", "up", "least", "min", "headroom", "taller",
    ];
    let says = typed.find(0, &is_said).is_some() || typed.line.contains(['+', '>', '≥']);
    if !says || !only(typed, &[(at, two.end), (*first, height.end)], &AROUND) {
        return None;
    }
    if is_full_height(height) {
        return Some(full_height(typed));
    }
    if !is_five_feet(height) {
        return None;
    }
    let (a, b) = in_one_unit(&one, &two);
    let rectangle =
        |north: &str, east: &str| format!("north {north}\neast {east}\nsouth {north}\nwest {east}");
    let before = &typed.attempt.beside.before;
    let opens_space = kind_word(&super::cut(before).first()?.text.to_lowercase()).is_some();
    let follows = super::super::begins_as_side(&typed.attempt.beside.after);
    if opens_space && !follows {
        let mut lines = vec![rectangle(&a, &b), rectangle(&b, &a)];
        lines.dedup();
        return Some(Answer::Lines(
            lines,
            format!(
                "{COUNTS}: these are its four sides; which of the two lengths runs north and south?"
            ),
        ));
    }
    if before.starts_with("level ") && !follows {
        let mut lines = vec![rectangle(&a, &b), rectangle(&b, &a)];
        lines.dedup();
        let lines = lines.into_iter().map(|sides| format!("living \"Rooms\"\n{sides}")).collect();
        return Some(Answer::Lines(
            lines,
            format!(
                "{COUNTS}: it is a space with its four sides; which of the two lengths runs north and south?"
            ),
        ));
    }
    let one = straight::length_in(typed, &typed.pieces, at)?;
    let two = straight::length_in(typed, &typed.pieces, one.end + 1)?;
    let walk = straight::walk(typed, &typed.attempt.beside.last_walk).filter(Walk::is_rectangle);
    if let Some(walk) = walk {
        let (e, n) = (walk.extent(Axis::East), walk.extent(Axis::North));
        let fits = |east: &Measure, north: &Measure| {
            let near = |one: Length, other: Length| (one - other).abs() <= Length::INCH;
            match (near(east.length, e), near(north.length, n)) {
                (true, false) if north.length < n => Some((Axis::North, n - north.length)),
                (false, true) if east.length < e => Some((Axis::East, e - east.length)),
                _ => None,
            }
        };
        let found: Vec<String> = [fits(&one, &two), fits(&two, &one)]
            .into_iter()
            .flatten()
            .filter_map(|(axis, rest)| strips(typed, &walk, axis, halved(rest), height))
            .collect();
        if !found.is_empty() {
            return Some(Answer::Lines(
                found,
                format!(
                    "{COUNTS}: what is left of the floor on both sides of it is `low`, here half of it on each side"
                ),
            ));
        }
    }
    if typed.attempt.beside.last_walk.len() < 4 {
        return Some(Answer::say(
            COUNTS,
            "settle the walls of the floor above first and leave this line as it is: the strips that are lower follow from both",
        ));
    }
    Some(Answer::say(
        COUNTS,
        format!(
            "type that part as the walls of its space, instead of the walls above: `north {a}` `east {b}` `south {a}` `west {b}`, or with the two lengths exchanged; or keep the walls of the whole floor and type each strip that is lower as a space of its own, `low \"Eaves\" under {}`, with its four sides",
            height.text
        ),
    ))
}

/// What is high enough to stand under changes no area as long as it is half of what counts.
fn full_height(typed: &Typed<'_>) -> Answer {
    Answer::line(
        format!("# {}", typed.line.trim()),
        "a ceiling of 7 ft and more over at least half of what counts is asked for, and less makes it count less; where it is, a sides file has no place for, and a comment begins with `#`",
    )
}

fn halved(length: Length) -> Length {
    Length::from_nm(length.nm().div_euclid(2))
}

/// Two strips of this width along the two ends of a rectangle on an axis.
fn strips(
    typed: &Typed<'_>,
    walk: &Walk,
    axis: Axis,
    by: Length,
    height: &Measure,
) -> Option<String> {
    let space = typed.attempt.space.clone()?;
    let by = Measure { end: 0, length: by, text: written(by, height), has_unit: true };
    let sides = [-1, 1].map(|sign| Direction::along(axis, sign));
    eaves::strips(&space, walk, &sides, &by, height)
}

/// The strips on both sides of a rectangle, along each axis, the narrower first, where the rest is `width` wide.
fn strips_beside(typed: &Typed<'_>, width: &Measure, height: &Measure) -> Vec<String> {
    let walk = straight::walk(typed, &typed.attempt.beside.last_walk).filter(Walk::is_rectangle);
    let Some(walk) = walk else { return Vec::new() };
    let mut all: Vec<(Length, Axis)> = [Axis::North, Axis::East]
        .into_iter()
        .map(|axis| (walk.extent(axis) - width.length, axis))
        .filter(|(rest, _)| *rest > Length::ZERO)
        .collect();
    all.sort_by_key(|(rest, _)| *rest);
    all.into_iter()
        .filter_map(|(rest, axis)| strips(typed, &walk, axis, halved(rest), height))
        .collect()
}

/// `headroom 5 ft over 18 ft`, `sloped ceiling, 18 wide at 5 ft`: how wide the part is that is high enough.
fn high_width(typed: &Typed<'_>) -> Option<Answer> {
    let follows = super::super::begins_as_side(&typed.attempt.beside.after);
    if is_of_another(typed) || follows || super::size_in(typed.line).is_some() {
        return None;
    }
    let mut found: Vec<(usize, Measure)> = Vec::new();
    let mut at = 0;
    while at < typed.pieces.len() {
        match height_at(typed, at).or_else(|| straight::length_in(typed, &typed.pieces, at)) {
            Some(one) => {
                let end = one.end;
                found.push((at, one));
                at = end;
            }
            None => at += 1,
        }
    }
    let [one, two] = &found[..] else { return None };
    let (height, width) = match (is_five_feet(&one.1), is_five_feet(&two.1)) {
        (true, false) => (one, two),
        (false, true) => (two, one),
        _ => return None,
    };
    let says = [
        "headroom", "ceiling", "ceilings", "sloped", "sloping", "slanted", "wide", "over",
        "across", "more", "above",
    ];
    let is_wide = width.1.length > height.1.length;
    if !is_wide
        || typed.find(0, &says).is_none()
        || !only(typed, &[(one.0, one.1.end), (two.0, two.1.end)], &AROUND)
    {
        return None;
    }
    let lines = strips_beside(typed, &width.1, &height.1);
    if !lines.is_empty() {
        let which = match lines.len() {
            1 => "",
            _ => "; which way does the roof slope",
        };
        return Some(Answer::Lines(
            lines,
            format!(
                "{COUNTS}: beside a part that is {} wide, what is left of the floor is `low`, half of it on each side{which}",
                width.1.text
            ),
        ));
    }
    Some(Answer::say(
        COUNTS,
        format!(
            "write both lengths of that part, as `5' or more {} x 30'`, below its level or after its walls; or type the whole floor as a space, and each strip that is lower as `low \"Eaves\" under {}` with its four sides",
            width.1.text, height.1.text
        ),
    ))
}

/// `knee walls 4'`: a wall that is lower than what counts needs says nothing of how far it is to where the ceiling is
/// high enough.
fn knee_wall(typed: &Typed<'_>) -> Option<Answer> {
    let knee = typed.says(0, &["knee"]) && typed.says(1, &["wall", "walls"])
        || typed.says(0, &["kneewall", "kneewalls", "knee-wall", "knee-walls"])
        || typed.says(0, &["slopes", "slope", "sloping", "sloped", "ceiling", "roof"])
            && typed.find(1, &["to", "down"]).is_some()
            && typed
                .find(1, &["eaves", "eave", "walls", "sides", "side", "edge", "edges"])
                .is_some();
    let follows = super::super::begins_as_side(&typed.attempt.beside.after);
    if !knee || follows || has_text(typed) {
        return None;
    }
    let words = [
        "knee",
        "wall",
        "walls",
        "kneewall",
        "kneewalls",
        "knee-wall",
        "knee-walls",
        "high",
        "tall",
        "height",
        "is",
        "are",
        "at",
        "of",
        "about",
        "both",
        "sides",
        "each",
        "side",
        "all",
        "around",
        "on",
        "the",
        "slopes",
        "slope",
        "sloping",
        "sloped",
        "ceiling",
        "roof",
        "to",
        "down",
        "eaves",
        "eave",
        "edge",
        "edges",
        "low",
    ];
    let first = (1..typed.pieces.len()).find(|&at| length_at(&typed.pieces, at).is_some())?;
    let one = straight::length_in(typed, &typed.pieces, first)?;
    if !only(typed, &[(first, one.end)], &words)
        || one.length > Length::from_nm(12 * Length::FOOT.nm())
    {
        return None;
    }
    let five = Length::from_nm(5 * Length::FOOT.nm() - Length::INCH.nm());
    if one.length >= five {
        return Some(Answer::line(
            format!("# {}", typed.line.trim()),
            "a ceiling that is 5 ft high or more at its lowest leaves nothing out: the whole floor between such walls counts, and a comment begins with `#`",
        ));
    }
    let (example, strip, size) = match one.is_metric() {
        true => ("1.5 m", "0.3 m", "10 m x 5.5 m"),
        false => ("5'", "1'", "32 x 18"),
    };
    Some(Answer::say(
        format!(
            "{COUNTS}, and where it is {} high it is lower: how wide that strip is, the height does not say",
            one.text
        ),
        format!(
            "measure from the lowest wall to where the ceiling is {example} high, and write it instead of this line, as `eaves {strip} each side`; or write the size of what is higher, as `{example} or more {size}`; a strip on one side alone is `low \"Eaves\" under {example}` with its four sides; if another line says it, leave this one out"
        ),
    ))
}
