//! Walls and corners that are told and not walked: `same as wall 2`, `135 degree corner`, `corner post missing 2 x 2`,
//! `front wall 40' incl. 4' bay`.

use super::super::compass::{along, by_compass, is_upright, slant, way_and_back};
use super::faces::STANDS;
use super::measure::{Measure, length_at, lengths, written};
use super::walls::is_way;
use super::{Answer, Rule, Typed, first_of, straight, turns};
use crate::geometry::compass::Direction;
use crate::units::length::Length;

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    typed.attempt.space.as_ref()?;
    if typed.attempt.beside.in_lot {
        return None;
    }
    let rules: &[Rule] = &[as_long_as_another, angle_of_a_corner, corner_left_out, side_with_a_bay];
    first_of(rules, typed)
}

/// The way of the wall on the line before, if that is a wall.
fn way_before(typed: &Typed<'_>) -> Option<Direction> {
    let beside = &typed.attempt.beside;
    let is_wall = super::super::begins_as_wall(&beside.before);
    let (way, _) = way_and_back(beside.before.split(' ').next()?).filter(|_| is_wall)?;
    straight::compass(by_compass(way, beside.front))
}

/// `same as wall 2`, `wall 4 same as wall 2`, `ditto side 1`, `same as opposite wall`: a wall that does not say its way.
fn as_long_as_another(typed: &Typed<'_>) -> Option<Answer> {
    const WALL: [&str; 3] = ["wall", "side", "no"];
    const SMALL: [&str; 8] = ["length", "the", "as", "to", "is", "in", "wall", "side"];
    let own = typed.says(0, &WALL[..2]) && typed.piece(1).is_some_and(|own| own.is_number());
    let mut at = if own { 2 } else { 0 };
    let is_filling = |at: usize| typed.piece(at).is_some_and(|mark| mark.is_mark(":,-–=."));
    while is_filling(at) || typed.says(at, &["is"]) {
        at += 1;
    }
    let says_so = typed.says(at, &["same", "ditto", "equals", "equal", "matches", "as"])
        || own && typed.piece(at.checked_sub(1)?).is_some_and(|mark| mark.is_mark("="));
    if !says_so || super::size_in(typed.line).is_some() {
        return None;
    }
    at += usize::from(!typed.says(at, &WALL));
    while typed.says(at, &SMALL) && !(typed.says(at, &WALL) && is_number(typed, at + 1)) {
        at += 1;
    }
    let beside = &typed.attempt.beside;
    let walls: Vec<&str> = beside
        .last_walk
        .iter()
        .filter(|line| !["corner ", "overall ", "tie "].iter().any(|word| line.starts_with(word)))
        .map(|line| &**line)
        .collect();
    // A bay is several walls, so that those after it have other numbers.
    let is_plain = walls.iter().all(|line| !line.starts_with("bay "));
    let (wall, end) = if typed.says(at, &WALL) && is_number(typed, at + 1) {
        let number: usize = typed.piece(at + 1)?.text.parse().ok()?;
        (walls.get(number.checked_sub(1)?).filter(|_| is_plain).copied(), at + 2)
    } else if typed.says(at, &["opposite", "across", "other"]) {
        (opposite(typed, &walls), at + 1 + usize::from(typed.says(at + 1, &WALL)))
    } else if is_way(typed, at) {
        (None, at + 1 + usize::from(typed.says(at + 1, &STANDS)))
    } else {
        return None;
    };
    let progress = straight::progress(typed, &beside.last_walk);
    if end != typed.pieces.len() || !progress.is_open() {
        return None;
    }
    let named = match is_way(typed, at) {
        true => format!("the {} wall", typed.lower(at)),
        false => "that wall".to_owned(),
    };
    let length_of = wall.and_then(|line| {
        let pieces = super::cut(line);
        let way =
            straight::compass(by_compass(way_and_back(&pieces.first()?.text)?.0, beside.front))?;
        let one = length_at(&pieces, 1)?;
        Some((way, one))
    });
    const CAUSE: &str = "a wall has its own way and its own length";
    let Some((way, one)) = length_of else {
        return Some(Answer::say(
            CAUSE,
            format!(
                "write the way that this wall runs, `north`, `east`, `south` or `west`, and after it the length of {named} again; if it was not measured, the way and `by closing`"
            ),
        ));
    };
    let across = match way_before(typed) {
        Some(before) => [before.right(), before.left()],
        None => [way.opposite(), way],
    };
    let ways: Vec<Direction> = match progress.way_back() {
        Some(back) if across.contains(&back) => vec![back],
        _ if across.contains(&way) => vec![way.opposite(), way],
        _ => across.to_vec(),
    };
    let line = |way: &Direction| format!("{} {}  # {}", way.word(), one.text, typed.line.trim());
    let cause = match ways[..] {
        [_] => format!("{CAUSE}: here the length of the wall that is named"),
        _ => format!("{CAUSE}: which way does this one run?"),
    };
    Some(Answer::Lines(ways.iter().map(line).collect(), cause))
}

fn is_number(typed: &Typed<'_>, at: usize) -> bool {
    typed.piece(at).is_some_and(super::Piece::is_number)
}

/// The only wall that runs against the way that leads back to the start.
fn opposite<'a>(typed: &Typed<'_>, walls: &[&'a str]) -> Option<&'a str> {
    let beside = &typed.attempt.beside;
    let back = straight::progress(typed, &beside.last_walk).way_back()?;
    let runs = |line: &&&str| {
        let way = line.split(' ').next().and_then(way_and_back);
        way.and_then(|(way, _)| straight::compass(by_compass(way, beside.front)))
            == Some(back.opposite())
    };
    let mut found = walls.iter().filter(runs);
    found.next().copied().filter(|_| found.next().is_none())
}

/// `135 degree corner`, `turn 45°`, `corner at 135 degrees`: how the walls meet is told by the way of the next one.
fn angle_of_a_corner(typed: &Typed<'_>) -> Option<Answer> {
    const SAYS: [&str; 6] = ["corner", "turn", "turns", "bend", "bends", "angle"];
    const SMALL: [&str; 19] = [
        "inside", "outside", "interior", "exterior", "here", "at", "a", "an", "of", "the", "is",
        "wall", "to", "degree", "degrees", "deg", "right", "left", "obtuse",
    ];
    let at = (0..typed.pieces.len()).find(|&at| typed.pieces[at].is_number())?;
    let number = &typed.piece(at)?.text;
    let has_mark = typed.says(at + 1, &["degree", "degrees", "deg"])
        || typed.piece(at + 1).is_some_and(|mark| mark.is_mark("°º˚"));
    let says_turn = typed.find(0, &["turn", "turns", "bend", "bends"]).is_some();
    let only = (0..typed.pieces.len()).all(|one| {
        one == at
            || typed.says(one, &SAYS)
            || typed.says(one, &SMALL)
            || typed.pieces[one].is_mark("°º˚,.:-–()")
    });
    let says_so = typed.find(0, &SAYS).is_some() && (has_mark || says_turn && at > 0);
    let before = way_before(typed)?;
    if !only || !says_so {
        return None;
    }
    let half = ["45", "135", "225", "315"].contains(&number.as_str());
    if number == "90" {
        return Some(Answer::line(
            format!("# {}", super::plainly(typed.line)),
            "a square corner needs no line: the next wall says which way the walk turns",
        ));
    }
    let hand = ["left", "right"].into_iter().find(|hand| typed.find(0, &[hand]).is_some());
    let turned = |right: bool| if right { before.right() } else { before.left() };
    let slanted = |right: bool| {
        let (one, two) = (before.word(), turned(right).word());
        match half {
            true => {
                let letter = |way: &str| way.chars().next().map(|c| c.to_ascii_uppercase());
                let (upright, level) = if is_upright(one) { (one, two) } else { (two, one) };
                let bearing = letter(upright).zip(letter(level));
                let bearing = bearing
                    .map_or_else(String::new, |(from, to)| format!("bearing {from} 45° {to}"));
                format!("`{bearing}` and its length")
            }
            false => format!("`diagonal {one} 3' {two} 2'`, with your two lengths,"),
        }
    };
    let ways = match (hand, typed.find(0, &["inside"]).is_some(), turns::is_clockwise(typed)) {
        (Some(hand), ..) => slanted(hand == "right"),
        (None, is_inside, Some(clockwise)) if is_inside => slanted(!clockwise),
        _ => format!(
            "{} if it turns to the right, and {} if to the left",
            slanted(true),
            slanted(false)
        ),
    };
    let legs = match half {
        true => "; or `diagonal` with how far it runs each way",
        false => "",
    };
    Some(Answer::say(
        "the angle of a corner is not typed: the next wall says which way the walk turns, and a slanted one how far it runs each way",
        format!("take this line out, and write for the slanted wall after it {ways}{legs}"),
    ))
}

/// `corner post missing 2 x 2`, `NE corner cut out 2' x 2'`, `corner notched 2 x 2`: two walls instead of a corner.
fn corner_left_out(typed: &Typed<'_>) -> Option<Answer> {
    const OUT: [&str; 10] = [
        "missing", "notched", "notch", "cutout", "out", "removed", "recessed", "inset", "open",
        "gone",
    ];
    const SMALL: [&str; 15] = [
        "corner", "post", "cut", "left", "taken", "stepped", "is", "the", "at", "of", "square",
        "a", "not", "there", "set",
    ];
    let corner = typed.find(0, &["corner"])?;
    let found = lengths(&typed.pieces, 0);
    let [(first, one), (second, two)] = &found[..] else { return None };
    let in_size = |at: usize| (*first..two.end).contains(&at);
    super::size_in(typed.line).filter(|_| *second == one.end + 1)?;
    let only = (0..typed.pieces.len()).all(|at| {
        in_size(at)
            || typed.says(at, &OUT)
            || typed.says(at, &SMALL)
            || way_and_back(&typed.lower(at)).is_some()
            || slant(&typed.lower(at)).is_some()
            || typed.pieces[at].is_mark(",;:()-–.")
    });
    let says_out = typed.find(0, &OUT).is_some_and(|at| !typed.says(at, &["out"]) || at > 0);
    let before = way_before(typed)?;
    if !only || !says_out || corner > 3 {
        return None;
    }
    let ways = turns::is_clockwise(typed)
        .map(|clockwise| if clockwise { before.right() } else { before.left() });
    let (one, two) = super::described::in_one_unit(one, two);
    let bare = |text: &str| text.chars().all(|c| c.is_ascii_digit());
    let unit = if typed.attempt.is_metric { " m" } else { "'" };
    let with_unit = |text: String| if bare(&text) { format!("{text}{unit}") } else { text };
    let (one, two) = (with_unit(one), with_unit(two));
    let wall = typed.attempt.beside.before.split('#').next().unwrap_or_default().trim();
    let help = match ways {
        Some(turn) => format!(
            "write two walls instead of this line, `{} {one}` and `{} {two}`{}, where `{wall}` ends {two} short of where the corner would be; if it was typed up to that corner, its length is {two} less, and that of the wall after it {one} less",
            turn.word(),
            before.word(),
            if one == two { "" } else { ", or with the two lengths exchanged" },
        ),
        None => format!(
            "write two walls instead of this line, {one} and {two}, each with the way that it runs, and end the wall before them where the first begins"
        ),
    };
    Some(Answer::say("a corner that is left out of the house is two walls of its walk", help))
}

/// `front wall 40' incl. 4' bay`, `south wall 40' with a 4' bay`: a bay is a line of its own, and divides its wall.
fn side_with_a_bay(typed: &Typed<'_>) -> Option<Answer> {
    let (side, _) = way_and_back(&typed.lower(0))?;
    let stands = typed.says(1, &STANDS);
    let wall = length_at(&typed.pieces, 1 + usize::from(stands)).filter(|one| one.has_unit)?;
    let with = ["with", "w", "incl", "including", "includes", "has", "counting"];
    let from = typed.find(wall.end, &with).filter(|at| *at <= wall.end + 1)?;
    let bay = typed.find(from, &["bay"])?;
    const SMALL: [&str; 10] =
        ["a", "the", "wide", "window", "angled", "bay", "out", "deep", "in", "it"];
    let found = lengths(&typed.pieces, from + 1);
    let in_a_length = |at: usize| found.iter().any(|(first, one)| (*first..one.end).contains(&at));
    let only = (from + 1..typed.pieces.len())
        .all(|at| in_a_length(at) || typed.says(at, &SMALL) || typed.pieces[at].is_mark(".,/x()"));
    // A wall by the compass with both lengths of its bay is known, and one that is a bay as a whole.
    let wider = found.iter().all(|(first, one)| {
        let says_out =
            first.checked_sub(1).is_some_and(|at| typed.says(at, &["out", "deep", "sticks"]))
                || typed.says(one.end, &["out", "deep"]);
        !says_out && one.length < wall.length
    });
    if !stands && (found.is_empty() || !wider) || typed.says(wall.end, &["not", "excl"]) {
        return None;
    }
    if !only || bay < from || found.len() > 2 || found.len() == 2 && !stands {
        return None;
    }
    let is_deep = |one: &Measure| typed.says(one.end, &["out", "deep"]);
    let wide =
        found.iter().map(|(_, one)| one).filter(|one| !is_deep(one)).max_by_key(|one| one.length);
    let out =
        found.iter().map(|(_, one)| one).find(|one| wide.is_none_or(|wide| one.end != wide.end));
    let front = typed.attempt.beside.front;
    let way = match (stands, by_compass(side, front)) {
        (true, side) if straight::compass(side).is_some() => {
            let [one, two] = along(side);
            format!("the way that you walked along it, `{one}` or `{two}`")
        }
        (true, _) => {
            "the way that you walked along it, `north`, `east`, `south` or `west`".to_owned()
        }
        (false, _) => format!("`{}`", typed.lower(0)),
    };
    let wide_text =
        wide.map_or_else(|| "how wide it is".to_owned(), |one| format!("`{}`", one.text));
    let out_text = match out {
        Some(one) => format!("`out {}`", one.text),
        None => "`out` and how far it stands out".to_owned(),
    };
    let rest = wide.map(|wide| wall.length - wide.length).filter(|rest| *rest > Length::ZERO);
    let rest = rest.map_or_else(String::new, |rest| {
        format!("; the first and the last together are {}", written(rest, &wall))
    });
    Some(Answer::say(
        "a bay is a line of its own, and divides the wall in which it stands",
        format!(
            "write three lines instead of this one, each with {way}: the wall up to the bay; `bay`, the way, {wide_text}, {out_text}, and `flat` and the width of its flat front, or `round`; and the rest of the wall{rest}"
        ),
    ))
}
