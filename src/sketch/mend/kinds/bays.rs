//! A bay on a line by itself that says where in its wall it is: `bay 8' wide 2' deep, 10' from the left corner on the
//! front`. The wall is divided for it.

use super::measure::{Measure, written};
use super::straight;
use super::whereabouts::{compass_corner, direction};
use super::{Answer, Typed};
use crate::geometry::compass::{Axis, Direction};
use crate::units::length::Length;

/// What the line says.
#[derive(Default)]
struct Bay {
    wide: Option<Measure>,
    out: Option<Measure>,
    flat: Option<Measure>,
    is_round: bool,
    side: Option<Direction>,
    from: Option<(Measure, Direction)>,
    is_centered: bool,
}

/// The walls that stand for the wall with the bay.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let is_bay = typed.says(0, &["bay"])
        || typed.says(1, &["bay"])
            && (typed.says(0, &["angled", "round", "box"]) || direction(typed, 0).is_some());
    // `bay south 8' out 2' flat 4'` is nearly as the format has it.
    let says_where = (1..typed.pieces.len()).any(|at| {
        direction(typed, at).is_some()
            && (typed.says(at - 1, &["on", "in", "at", "the", "of"])
                || typed.says(at - 1, &["window"])
                    && typed.says(at, &["front", "back", "rear", "left", "right"])
                || typed.says(at + 1, &["side", "wall"]))
    }) || typed.says(1, &["bay"]) && direction(typed, 0).is_some();
    if !is_bay || !says_where || typed.attempt.house.is_none() {
        return None;
    }
    let bay = read(typed)?;
    let (wide, out, side) = (bay.wide.clone()?, bay.out.clone()?, bay.side?);
    let flat = match (&bay.flat, bay.is_round) {
        (Some(flat), _) => Some(format!("flat {}", flat.text)),
        (None, true) => Some("round".to_owned()),
        (None, false) => None,
    };
    let cause = "a bay is a side of the walk of the house: the wall in which it stands is divided, up to the bay, the bay, and after it";
    let line = |way: &str| {
        let end = flat.as_ref().map_or("flat".to_owned(), Clone::clone);
        format!("bay {way} {} out {} {end}", wide.text, out.text)
    };
    let ask = match &flat {
        Some(_) => String::new(),
        None => ", and after `flat` the width of its flat front; if it is curved, `round` instead"
            .to_owned(),
    };
    if let Some(answer) = between_its_walls(typed, &bay, side, &line) {
        return Some(answer);
    }
    let beside = &typed.attempt.beside;
    let walk = straight::walk(typed, &beside.house_walk);
    let follows = super::super::begins_as_side(&beside.after) && beside.house_walk.is_empty();
    let which = if follows { "below" } else { "above" };
    let found = walk.and_then(|walk| {
        let [at] = walk.walls_on(side)[..] else { return None };
        let wall = walk.walls.get(at)?.clone();
        let rest = wall.length - wide.length;
        let near = match (&bay.from, bay.is_centered) {
            (Some((by, _)), _) => by.length,
            (None, true) => Length::from_nm(rest.nm().div_euclid(2)),
            (None, false) => return None,
        };
        let far = rest - near;
        if near <= Length::ZERO || far <= Length::ZERO {
            return None;
        }
        // Walked away from the end that the distance counts from.
        let begins_there = bay.from.as_ref().is_none_or(|(_, end)| wall.way != *end);
        let (first, last) = if begins_there { (near, far) } else { (far, near) };
        let way = wall.way.word();
        Some((wall.typed, way, written(first, &wide), written(last, &wide)))
    });
    Some(match found {
        Some((typed_wall, way, first, last)) => Answer::say(
            cause,
            format!(
                "leave this line out; in the walk above, instead of `{typed_wall}`, write `{way} {first}`, on the next line `{}`, and on the line below that `{way} {last}`{ask}",
                line(way)
            ),
        ),
        None => {
            let ways = if side.axis() == Axis::East { "north or south" } else { "east or west" };
            let begins = bay.from.as_ref().map_or_else(String::new, |(far, end)| {
                format!(", which begins {} from its {} end", far.text, end.word())
            });
            Answer::say(
                cause,
                format!(
                    "leave this line out; in the walk {which}, instead of the wall on the {} side, write the length of that wall up to the bay{begins}, on the next line `{}` with the way that the wall was walked, {ways}, and on the line below that the length of the wall after it{ask}",
                    side.word(),
                    line(if side.axis() == Axis::East { "north" } else { "east" })
                ),
            )
        }
    })
}

/// `bay window 8' wide 2' deep, rest south 24' 3"`: the bay, and the wall after it on a line of its own.
pub(super) fn and_the_rest(typed: &Typed<'_>) -> Option<Answer> {
    let begins = (0..3).any(|at| typed.says(at, &["bay"]));
    let rest = typed
        .find(2, &["rest", "then", "remaining", "remainder", "balance"])
        .filter(|_| begins && typed.attempt.space.is_some())?;
    let mut way = rest + 1;
    while typed.says(way, &["of", "the", "wall", "side", "then", "is", "runs", "goes", "length"])
        || typed.piece(way).is_some_and(|mark| mark.is_mark(",:-–"))
    {
        way += 1;
    }
    let (word, _) = super::super::compass::way_and_back(&typed.lower(way))?;
    let length = straight::length_in(typed, &typed.pieces, way + 1)
        .filter(|length| length.end == typed.pieces.len())?;
    let bay = typed.text(0, rest).trim_end_matches([',', ';', '.', ' ', '-', '–']);
    let bay = bay.strip_suffix(" and").unwrap_or(bay).trim_end_matches([',', ' ']);
    let after = format!("{word} {}", length.text);
    let told = Typed { line: bay, pieces: super::cut(bay), attempt: typed.attempt };
    let is_told = typed.says(1, &["north", "south", "east", "west"]);
    const CAUSE: &str = "a bay and the wall after it stand on lines of their own";
    if is_told {
        return Some(Answer::line(format!("{bay}\n{after}"), CAUSE));
    }
    let found = super::shapes::bay_without_way(&told)?;
    Some(match found {
        Answer::Say { cause, help, .. } => Answer::say(
            format!("{CAUSE}; {cause}"),
            format!(
                "{}; `{after}` goes on the line below it",
                help.replace(
                    "`bay`, then `north`, `east`, `south` or `west`, as the wall with the bay is walked, then `",
                    &format!("`bay {word} "),
                )
            ),
        ),
        Answer::Lines(lines, cause) => Answer::Lines(
            lines.iter().map(|line| format!("{line}\n{after}")).collect(),
            format!("{CAUSE}; {cause}"),
        ),
        other => other,
    })
}

/// The word of the way in which both walls beside a bay run, as it is typed there; `None` if they are not the two parts of
/// one wall.
pub(super) fn way_of_its_wall(typed: &Typed<'_>) -> Option<String> {
    let beside = &typed.attempt.beside;
    let way_of = |line: &str| {
        let pieces = super::cut(line);
        let first = pieces.first()?;
        let is_plain = pieces.get(1).is_some_and(super::super::pieces::Piece::is_number);
        let way = super::super::compass::way_and_back(&first.text)?.0;
        is_plain.then(|| way.to_owned())
    };
    let (before, after) = (way_of(&beside.before)?, way_of(&beside.after)?);
    let is_known = straight::compass(&before).is_some() || beside.front.is_some();
    (before == after && is_known).then_some(before)
}

/// A bay typed where it comes in the walk, between the two parts of its wall: which way these run says how the bay runs.
fn between_its_walls(
    typed: &Typed<'_>,
    bay: &Bay,
    side: Direction,
    line: &dyn Fn(&str) -> String,
) -> Option<Answer> {
    let beside = &typed.attempt.beside;
    let way_of = |text: &str| {
        let first = text.split(' ').next().unwrap_or_default();
        let way = straight::compass(super::super::compass::by_compass(
            super::super::compass::way_and_back(first)?.0,
            beside.front,
        ))?;
        Some((first.to_lowercase(), way))
    };
    let (first, before) = way_of(&beside.before)?;
    let (second, after) = way_of(&beside.after)?;
    if first != second || before != after || bay.from.is_some() || bay.is_centered {
        return None;
    }
    let cause = "a bay is a side of the walk of the house, between the two parts of its wall";
    let seen = way_of_its_wall(typed).filter(|way| straight::compass(way).is_none());
    let lines: Vec<String> = match (seen, before.axis() == side.axis()) {
        // In a walk as seen from the street a compass word would turn the bay alone.
        (Some(way), _) => vec![line(&way)],
        // Its wall is called by the side on which it stands.
        (None, true) => [side.left(), side.right()].map(|way| line(way.word())).to_vec(),
        (None, false) => vec![line(before.word())],
    };
    if bay.flat.is_none() && !bay.is_round {
        return Some(Answer::say(
            cause,
            format!(
                "write `{}` with the way that the wall is walked, and after `flat` the width of its flat front; if it is curved, `round` instead",
                lines.first()?
            ),
        ));
    }
    Some(Answer::Lines(lines, cause.to_owned()))
}

fn read(typed: &Typed<'_>) -> Option<Bay> {
    let mut bay = Bay::default();
    let small = [
        "bay",
        "window",
        "on",
        "the",
        "in",
        "at",
        "of",
        "and",
        "with",
        "its",
        "it",
        "is",
        "a",
        "angled",
        "box",
        "wall",
        "side",
        "corner",
        "end",
        "house",
        "starts",
        "starting",
        "start",
        "begins",
        "beginning",
        "stands",
        "sticks",
        "from",
        "projects",
        "projecting",
        "sticking",
        "by",
        "x",
        "which",
    ];
    let mut ways: Vec<Direction> = Vec::new();
    let mut bare: Vec<Measure> = Vec::new();
    let mut at = 0;
    while let Some(piece) = typed.piece(at) {
        if let Some(one) = straight::length_in(typed, &typed.pieces, at) {
            at = length(typed, &mut bay, &mut bare, one)?;
            continue;
        }
        if typed.says(at, &["round", "curved", "bow", "bowed", "circular"]) {
            bay.is_round = true;
        } else if typed.says(at, &["centered", "centred", "middle", "center", "centre"]) {
            bay.is_centered = true;
        } else if let Some(way) = direction(typed, at) {
            ways.push(way?);
        } else if !typed.says(at, &small) && !piece.is_mark(",;:()-–.×*") {
            return None;
        }
        at += 1;
    }
    for one in bare {
        let slot = match (&bay.wide, &bay.out, &bay.flat) {
            (None, _, _) => &mut bay.wide,
            (_, None, _) => &mut bay.out,
            (_, _, None) => &mut bay.flat,
            _ => return None,
        };
        *slot = Some(one);
    }
    // `on the front`, or the end that the distance counts from first: the other word is the side.
    let end = bay.from.as_ref().map(|(_, end)| end.axis());
    ways.retain(|way| end.is_none_or(|axis| way.axis() != axis));
    ways.dedup();
    let [side] = ways[..] else { return None };
    bay.side = Some(side);
    Some(bay)
}

/// What a length says by the words after it; the index after them.
fn length(
    typed: &Typed<'_>,
    bay: &mut Bay,
    bare: &mut Vec<Measure>,
    one: Measure,
) -> Option<usize> {
    let end = one.end;
    let put = |slot: &mut Option<Measure>| slot.replace(one.clone()).is_none().then_some(());
    if typed.says(end, &["wide", "w", "width", "long"]) {
        put(&mut bay.wide)?;
        return Some(end + 1);
    }
    let after_at = end + usize::from(typed.says(end + 1, &["the"])) + 1;
    if typed.says(end, &["at"]) && typed.says(after_at, &["wall", "house", "base"]) {
        put(&mut bay.wide)?;
        return Some(after_at + 1);
    }
    if typed.says(end, &["at"]) && typed.says(after_at, &["face", "front", "tip", "window"]) {
        put(&mut bay.flat)?;
        return Some(after_at + 1);
    }
    if typed.says(end, &["out", "deep", "d", "depth", "projection", "proj", "protrusion"]) {
        put(&mut bay.out)?;
        return Some(end + 1);
    }
    if typed.says(end, &["flat", "face", "front"]) && !typed.says(end + 1, &["wall", "side"]) {
        put(&mut bay.flat)?;
        return Some(end + 1);
    }
    if typed.says(end, &["across", "flat"]) {
        put(&mut bay.flat)?;
        let mut next = end + 1;
        while typed.says(next, &["the", "its", "face", "front", "flat"]) {
            next += 1;
        }
        return Some(next);
    }
    let mut next = end;
    while typed.says(next, &["in", "over", "to", "the", "away"]) {
        next += 1;
    }
    if typed.says(next, &["from", "off"]) {
        next += 1;
        while typed.says(next, &["the", "front", "back", "rear"])
            && (typed.says(next, &["the"]) || compass_corner(typed, next).is_some())
        {
            next += 1;
        }
        let way = direction(typed, next)??;
        bay.from.replace((one, way)).is_none().then_some(())?;
        next += 1;
        while typed.says(next, &["corner", "end", "side", "edge", "wall"]) {
            next += 1;
        }
        return Some(next);
    }
    bare.push(one);
    Some(end)
}
