//! Porches that go round a corner of the house, or round three of its sides: `porch wraps front and left, 8' deep`.

use super::super::pieces::Sort;
use super::measure::{Measure, written};
use super::straight::{self, Walk};
use super::whereabouts::{compass_corner, direction};
use super::{Answer, Typed, quoted};
use crate::geometry::compass::{Axis, Direction};

const PORCHES: [&str; 9] =
    ["porch", "porches", "veranda", "verandah", "gallery", "deck", "decking", "patio", "balcony"];
const WRAPS: [&str; 10] = [
    "wraps",
    "wrap",
    "wraparound",
    "wrap-around",
    "wrapping",
    "wrapped",
    "l-shaped",
    "l-shape",
    "ell-shaped",
    "u-shaped",
];
/// Words that say nothing more.
const SMALL: &[&str] = &[
    "a", "an", "the", "of", "on", "at", "and", "along", "across", "to", "house", "side", "sides",
    "wall", "walls", "corner", "deep", "wide", "depth", "width", "is", "it", "with", "all", "way",
    "by", "whole", "full", "length", "covered", "open", "in", "from", "goes", "runs", "running",
    "both", "three", "four", "two", "long", "for", "then", "round", "around", "shape", "screened",
    "roofed", "wood", "wooden", "concrete", "corners", "outside",
];

const ROUND: &str =
    "a porch that goes round a corner of the house is no rectangle: it has six sides";

/// What such a line says.
#[derive(Default)]
struct Said {
    kind: &'static str,
    name: String,
    sides: Vec<Direction>,
    needs_street: bool,
    depth: Option<Measure>,
    /// How far it goes along a side; `None` for one that is called `the side` only.
    runs: Vec<(Option<Direction>, Measure)>,
    is_u: bool,
    /// Whether it goes round all four sides.
    is_ring: bool,
}

/// A porch round a corner: its six sides, or what is missing for them.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    if let Some((line, recorded)) = without_its_area(typed) {
        let plain = Typed { line: &line, pieces: super::cut(&line), attempt: typed.attempt };
        return round(&plain).map(|answer| match answer {
            Answer::Lines(lines, cause) => {
                let with = |line: &String| match line.split_once('\n') {
                    Some((first, rest)) => format!("{first} recorded {recorded}\n{rest}"),
                    None => format!("{line} recorded {recorded}"),
                };
                Answer::Lines(lines.iter().map(with).collect(), cause)
            }
            Answer::Say { cause, help, about } => Answer::Say {
                about,
                cause,
                help: format!(
                    "{help}; `recorded {recorded}` goes to the end of the line of the porch itself"
                ),
            },
            other => other,
        });
    }
    round(typed)
}

/// The line without the area that the record has, and that area: `…, 8' deep, recorded 560 sq ft`.
fn without_its_area(typed: &Typed<'_>) -> Option<(String, String)> {
    let says =
        ["recorded", "record", "county", "card", "has", "says", "on", "the", "at", "assessor"];
    let is_small = |at: usize| typed.says(at, &says) || typed.pieces[at].is_mark(",;:()-–.=");
    let (at, end, area) = super::measure::area_from(&typed.pieces, 1)?;
    let mut first = at;
    while first > 1 && is_small(first - 1) {
        first -= 1;
    }
    let rest = end..typed.pieces.len();
    let is_recorded = (first..at).chain(rest.clone()).any(|at| typed.says(at, &says[..5]));
    let line = typed.text(0, first).trim_end_matches([',', ' ', '(']).to_owned();
    (rest.clone().all(is_small) && is_recorded).then_some((line, area))
}

/// A porch round a corner on a line without an area.
fn round(typed: &Typed<'_>) -> Option<Answer> {
    let said = read(typed)?;
    if super::super::begins_as_side(&typed.attempt.beside.after) {
        return None;
    }
    let porch = quoted(&said.name);
    if said.needs_street {
        return Some(Answer::say(
            "which sides are front, back, left and right is not known before the file says where the street is",
            "write on which side the street is above the first level, as `front south`; leave this line as it is",
        ));
    }
    let Some(depth) = said.depth.clone() else { return Some(asks(typed, &said)) };
    let house = typed.attempt.house.clone()?;
    let walk = straight::walk(typed, &typed.attempt.beside.house_walk);
    let corner = |number: usize| format!("from {} corner {}", quoted(&house), number + 1);
    let Some(walk) = walk else {
        // Its lines may still be offered.
        return Some(match typed.attempt.beside.house_walk.len() {
            0..4 => Answer::say(
                ROUND,
                "settle the walls of the house above first and leave this line as it is: its sides follow from them",
            ),
            _ => asks(typed, &said),
        });
    };
    let (first, second) = match said.sides[..] {
        [one, two] if one.axis() != two.axis() => (one, two),
        [..] if said.is_u || said.is_ring => {
            let found = round_three_sides(&said, &depth, &walk, &corner);
            return Some(found.unwrap_or_else(|| asks(typed, &said)));
        }
        _ => return Some(asks(typed, &said)),
    };
    let Some(at) = walk.corner(first, second) else { return Some(asks(typed, &said)) };
    let run_of = |side: Direction| {
        let named = said.runs.iter().find(|(of, _)| *of == Some(side));
        let others: Vec<_> = said.runs.iter().filter(|(of, _)| of.is_none()).collect();
        let other = match (&named, &others[..]) {
            (None, [only]) => Some(*only),
            _ => None,
        };
        named.or(other).map(|(_, run)| run.clone())
    };
    let line = |one: &Measure, two: &Measure| {
        // Along the walls of the house: on the first side from the corner away from the second, and the other way round.
        let (d, out) = (&depth.text, |run: &Measure| written(run.length + depth.length, &depth));
        format!(
            "{} {porch} {}\n{} {}\n{} {d}\n{} {}\n{} {}\n{} {d}\n{} {}",
            said.kind,
            corner(at),
            second.opposite().word(),
            one.text,
            first.word(),
            second.word(),
            out(one),
            first.opposite().word(),
            out(two),
            second.opposite().word(),
            first.word(),
            two.text,
        )
    };
    let name = format!("{} and {}", first.word(), second.word());
    match (run_of(first), run_of(second)) {
        (Some(one), Some(two)) => {
            let less = |run: &Measure| {
                let length = run.length - depth.length;
                (length > crate::units::length::Length::ZERO).then(|| Measure {
                    text: written(length, &depth),
                    length,
                    ..run.clone()
                })
            };
            let mut lines = vec![line(&one, &two)];
            lines.extend(less(&one).zip(less(&two)).map(|(one, two)| line(&one, &two)));
            Some(Answer::Lines(
                lines,
                format!(
                    "a porch round a corner has six sides: are {} and {} along the walls of the house, from its corner on, as in the first, or along the outer edges of the porch, as in the second",
                    one.text, two.text
                ),
            ))
        }
        (None, None) if said.runs.is_empty() => {
            let whole = |side: Direction| {
                let wall = walk.walls.get(walk.whole_wall_on(side)?)?;
                Some(Measure {
                    text: written(wall.length, &depth),
                    length: wall.length,
                    end: 0,
                    has_unit: true,
                })
            };
            match (whole(first), whole(second)) {
                (Some(one), Some(two)) => Some(Answer::line(
                    line(&one, &two),
                    format!(
                        "a porch round a corner has six sides: here it runs along the whole {name} side; if it ends sooner, write how far it goes along each, as `{}`",
                        example(&said, &depth)
                    ),
                )),
                _ => Some(asks(typed, &said)),
            }
        }
        _ => Some(asks(typed, &said)),
    }
}

/// A porch along the whole of three sides.
fn round_three_sides(
    said: &Said,
    depth: &Measure,
    walk: &Walk,
    corner: &dyn Fn(usize) -> String,
) -> Option<Answer> {
    let middle = match said.sides[..] {
        _ if said.is_ring => Direction::South,
        [only] => only,
        [one, two, three] => {
            let alone = [one, two, three].into_iter().find(|side| {
                let alike = said.sides.iter().filter(|other| other.axis() == side.axis());
                alike.count() == 1
            });
            alone?
        }
        _ => return None,
    };
    if !walk.is_rectangle() || !said.runs.is_empty() {
        return None;
    }
    // With the house on the right: down its left flank, along the middle, up the other flank.
    let (left, right) = (middle.right(), middle.left());
    let at = walk.corner(left, middle.opposite())?;
    let axis = |side: Direction| match side.axis() {
        Axis::East => Axis::North,
        Axis::North => Axis::East,
    };
    let (along, flank) = (walk.extent(axis(middle)), walk.extent(axis(left)));
    let text = |length| written(length, depth);
    let d = depth.length;
    let line = format!(
        "{} {} {}\n{} {}\n{} {}\n{} {}\n{} {}\n{} {}\n{} {}\n{} {}\n{} {}",
        said.kind,
        quoted(&said.name),
        corner(at),
        middle.word(),
        text(flank),
        right.word(),
        text(along),
        middle.opposite().word(),
        text(flank),
        right.word(),
        depth.text,
        middle.word(),
        text(flank + d),
        left.word(),
        text(along + d + d),
        middle.opposite().word(),
        text(flank + d),
        right.word(),
        depth.text,
    );
    if said.is_ring {
        // Along the side that is left: from the last corner of the first part.
        let rest = format!(
            "{} {} from {} corner 8\n{} {}\n{} {}\n{} {}\n{} {}",
            said.kind,
            quoted(&format!("{}, {}", said.name, middle.opposite().word())),
            quoted(&said.name),
            right.word(),
            text(along + d + d),
            middle.opposite().word(),
            depth.text,
            left.word(),
            text(along + d + d),
            middle.word(),
            depth.text,
        );
        return Some(Answer::line(
            format!("{line}\n{rest}"),
            "a porch round all four sides is no single walk: it is one round three of them, with eight sides, and one along the fourth",
        ));
    }
    Some(Answer::line(
        line,
        "a porch round three sides has eight sides: here it runs along the whole of each",
    ))
}

/// How such a line is typed with everything that its sides need.
fn example(said: &Said, depth: &Measure) -> String {
    let (one, two) = match said.sides[..] {
        [one, two] if one.axis() != two.axis() => (one, two),
        _ => (Direction::South, Direction::West),
    };
    let (north, east) = if one.axis() == Axis::North { (one, two) } else { (two, one) };
    let (long, short) = if depth.is_metric() { ("6 m", "5 m") } else { ("20'", "16'") };
    format!(
        "{} around the {}{} corner, {} deep, {long} on the {}, {short} on the {}",
        said.kind,
        north.word(),
        east.word(),
        depth.text,
        one.word(),
        two.word()
    )
}

/// Asks for what is missing, with a line that has it all.
fn asks(typed: &Typed<'_>, said: &Said) -> Answer {
    let depth = said.depth.clone().unwrap_or_else(|| {
        let text = if typed.attempt.is_metric { "2.5 m" } else { "8'" };
        let length = text.parse().unwrap_or(crate::units::length::Length::FOOT);
        Measure { end: 0, length, text: text.to_owned(), has_unit: true }
    });
    let (a, b, c, d) = if depth.is_metric() {
        ("6 m", "8.5 m", "7.5 m", "5 m")
    } else {
        ("20'", "28'", "24'", "16'")
    };
    let by = &depth.text;
    let (a, b, c, d, by) = match depth.text.as_str() {
        "8'" | "2.5 m" => (a, b, c, d, by.as_str()),
        _ if depth.is_metric() => ("6 m", "8.5 m", "7.5 m", "5 m", "2.5 m"),
        _ => ("20'", "28'", "24'", "16'", "8'"),
    };
    if typed.find(0, &["three"]).is_some() {
        return Answer::say(
            "a porch round three sides has eight sides: which side is in the middle is not said",
            format!("say it, as `{} wraps front and both sides, {} deep`", said.kind, depth.text),
        );
    }
    Answer::say(
        ROUND,
        format!(
            "say round which corner it goes, how deep it is and how far it goes along each wall, as `{}`; or write `{} {} from` the name of the house and `corner` with the number of that corner, and its six sides below, walked round: at the southwest corner, {by} deep, they are `east {a}` `south {by}` `west {b}` `north {c}` `east {by}` `south {d}`, with your own lengths",
            example(said, &depth),
            said.kind,
            quoted(&said.name),
        ),
    )
}

fn read(typed: &Typed<'_>) -> Option<Said> {
    let porch = typed.find(0, &PORCHES)?;
    if porch > 3 || typed.line.contains('"') && typed.find(0, &["from", "start"]).is_some() {
        return None;
    }
    let wraps = |at: usize| {
        typed.says(at, &WRAPS)
            || typed.says(at, &["l"]) && typed.says(at + 1, &["shaped", "shape"])
            || at > 0 && typed.says(at, &["l"]) && typed.says(at - 1, &["an"])
    };
    let all_sides = (0..typed.pieces.len()).any(|at| {
        typed.says(at, &["four", "all"])
            && typed.says(at + 1, &["sides", "four", "around", "round"])
    });
    let three_sides = typed.find(0, &["three"]).is_some_and(|at| typed.says(at + 1, &["sides"]));
    let says_wrap = (0..typed.pieces.len()).any(wraps) || all_sides || three_sides;
    let goes_round =
        typed.find(porch, &["around", "round"]).filter(|at| !typed.says(at + 1, &["to", "back"]));
    let joined = typed.find(porch, &["and"]).is_some() || typed.line.contains('&');
    if !says_wrap && goes_round.is_none() && !joined {
        return None;
    }
    let kind = match typed.lower(porch).as_str() {
        "deck" | "decking" => "deck",
        "patio" => "patio",
        "balcony" => "balcony",
        _ => "porch",
    };
    let mut said = Said { kind, ..Said::default() };
    said.name = match typed.piece(porch + 1) {
        Some(name) if name.sort == Sort::Text => typed.name(porch + 1, porch + 2),
        _ => super::levels::capitalized(&typed.lower(porch)),
    };
    let mut corners = 0;
    // Lengths of which the words do not say what they are.
    let mut bare: Vec<Measure> = Vec::new();
    let mut at = 0;
    while let Some(piece) = typed.piece(at) {
        if at == porch || piece.sort == Sort::Text || wraps(at) {
            let two = typed.says(at, &["l"])
                || typed.says(at, &["wrap"]) && typed.says(at + 1, &["around"]);
            at += 1 + usize::from(two);
            continue;
        }
        if let Some(one) = straight::length_in(typed, &typed.pieces, at) {
            let end = one.end;
            match length(typed, &mut said, one.clone(), porch) {
                Some(end) => at = end,
                None if says_wrap => {
                    bare.push(one);
                    at = end;
                }
                None => return None,
            }
            continue;
        }
        if let Some((ways, end)) = compass_corner(typed, at) {
            match ways {
                (Some(north), Some(east)) => {
                    corners += 1;
                    for way in [north, east] {
                        if !said.sides.contains(&way) {
                            said.sides.push(way);
                        }
                    }
                }
                _ => said.needs_street = true,
            }
            at = end;
            continue;
        }
        match direction(typed, at) {
            Some(Some(way)) => {
                if !said.sides.contains(&way) {
                    said.sides.push(way);
                }
            }
            Some(None) => said.needs_street = true,
            None if typed.says(at, &["both"]) && typed.says(at + 1, &["sides"]) => {
                let front = typed.attempt.beside.front;
                let middle = said.sides.first().copied().or(front)?;
                for way in [middle.left(), middle.right()] {
                    if !said.sides.contains(&way) {
                        said.sides.push(way);
                    }
                }
            }
            None if typed.says(at, SMALL) || piece.is_mark(",;:()-–.&+/") => {}
            None => return None,
        }
        at += 1;
    }
    // `wraparound porch front and right, 8'`: the only length is how deep it is.
    match &bare[..] {
        [] => {}
        [only] if said.depth.is_none() && said.runs.is_empty() => said.depth = Some(only.clone()),
        _ => return None,
    }
    said.is_u = said.sides.len() == 3;
    said.is_ring = all_sides && said.sides.is_empty();
    // `porch front and left, 8' deep`: two sides that meet, and no size.
    let meets = matches!(said.sides[..], [one, two] if one.axis() != two.axis());
    let says_two = joined && meets && corners == 0 && said.depth.is_some();
    // `deck around the pool`, `porch round the back` go round no corner.
    let is_corner = typed.find(porch, &["corner"]).is_some();
    let goes_round =
        goes_round.is_some() && (said.sides.len() >= 2 || said.needs_street || is_corner);
    (says_wrap || goes_round || says_two).then_some(said)
}

/// A length among the words: how deep it is, or how far it goes along a side. The index after it.
fn length(typed: &Typed<'_>, said: &mut Said, one: Measure, porch: usize) -> Option<usize> {
    let end = one.end;
    // `8' porch`
    if end == porch {
        return said.depth.replace(one).is_none().then_some(end);
    }
    if typed.says(end, &["deep", "wide", "d", "out"]) {
        return said.depth.replace(one).is_none().then_some(end + 1);
    }
    let mut next = end;
    while typed.says(next, &["long", "on", "along", "across", "the", "of", "at", "to", "down"]) {
        next += 1;
    }
    if next > end {
        if let Some(way) = direction(typed, next) {
            said.runs.push((Some(way?), one));
            return Some(next + 1 + usize::from(typed.says(next + 1, &["side", "wall"])));
        }
        if typed.says(next, &["side", "other", "flank"]) {
            said.runs.push((None, one));
            return Some(next + 1 + usize::from(typed.says(next + 1, &["side", "wall"])));
        }
    }
    None
}
