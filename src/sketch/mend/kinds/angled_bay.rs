//! A bay that is told by its three sides, of which the first and the last are equal: `bay on the back, 10' from the left
//! corner: 2'10" angled, 6', 2'10" angled`. At 45° its width and its depth follow from them.

use super::super::compass::{by_compass, way_and_back};
use super::measure::{Measure, lengths, written};
use super::straight;
use super::whereabouts::direction;
use super::{Answer, Typed};
use crate::geometry::compass::Direction;
use crate::units::length::Length;

/// Its three sides, and what follows from them.
struct Sides {
    /// The index of the piece at which the first begins, and the one after the last.
    first: usize,
    end: usize,
    wide: Length,
    out: Length,
    flat: Measure,
}

pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let bay = (0..3).find(|&at| typed.says(at, &["bay"]))?;
    if let Some(answer) = three_ways(typed, bay) {
        return Some(answer);
    }
    let sides = three_sides(typed, bay)?;
    let (wide, out) = (written(sides.wide, &sides.flat), written(sides.out, &sides.flat));
    let flat = &sides.flat.text;
    let cause = format!(
        "three sides of which two are equal are an angled bay: at 45° it is {wide} wide and stands out {out}"
    );
    let line = |way: &str| format!("bay {way} {wide} out {out} flat {flat}");
    // Where it stands may come before its sides or after them.
    let before = typed.text(0, sides.first).trim_end_matches([':', ',', ';', '-', ' ']);
    let after = typed.rest(sides.end).trim_start_matches([':', ',', ';', '-', ' ']);
    if let Some(way) = way_after_bay(typed, bay) {
        return Some(on_a_walk(typed, way, &sides, &cause, &line));
    }
    let again = format!("{before}, {wide} wide, {out} out, {flat} flat, {after}");
    let again = without_its_shape(again.trim_end_matches([',', ' ']));
    let told = Typed { line: &again, pieces: super::cut(&again), attempt: typed.attempt };
    if let Some(Answer::Say { cause: more, help, .. }) = super::bays::answer(&told) {
        return Some(Answer::say(format!("{cause}; {more}"), help));
    }
    let beside = &typed.attempt.beside;
    let way_of = |line: &str| {
        let first = line.split(' ').next().unwrap_or_default();
        straight::compass(by_compass(way_and_back(first)?.0, beside.front))
    };
    let has_side = (0..sides.first)
        .chain(sides.end..typed.pieces.len())
        .any(|at| direction(typed, at).is_some());
    let progress = straight::progress(typed, &beside.last_walk);
    if let Some(way) = super::bays::way_of_its_wall(typed).filter(|_| !has_side) {
        return Some(Answer::line(line(&way), cause));
    }
    let is_wall = super::super::begins_as_wall;
    if is_wall(&beside.before)
        && (progress.is_open() || progress.has_closing && is_wall(&beside.after))
        && !has_side
    {
        let ways =
            [way_of(&beside.before), way_of(&beside.after).filter(|_| is_wall(&beside.after))];
        let mut ways: Vec<Direction> = ways.into_iter().flatten().collect();
        ways.dedup();
        let lines = ways.iter().map(|way| line(way.word())).collect::<Vec<_>>();
        return (!lines.is_empty()).then_some(Answer::Lines(lines, cause));
    }
    if has_side && beside.front.is_none() {
        return Some(Answer::say(
            format!(
                "{cause}; on which side it stands is not known until the file says which way the street is"
            ),
            "say it above the first level: `front south`, for instance",
        ));
    }
    // `back wall bay`: in which wall, and not how far from its end.
    let sided = (0..sides.first)
        .chain(sides.end..typed.pieces.len())
        .find(|&at| direction(typed, at).is_some())
        .map(|at| format!("bay on the {}, {wide} wide, {out} out, {flat} flat", typed.lower(at)));
    if let Some(sided) = sided {
        let told = Typed { line: &sided, pieces: super::cut(&sided), attempt: typed.attempt };
        if let Some(Answer::Say { cause: more, help, .. }) = super::bays::answer(&told) {
            return Some(Answer::say(format!("{cause}; {more}"), help));
        }
    }
    Some(Answer::say(
        format!("{cause}; in which wall it stands is not said"),
        format!(
            "say it on this line, with the wall and how far it begins from one end of it, as `bay on the back, 10' from the left corner, {wide} wide, {out} out, {flat} flat`; that wall is then divided for it"
        ),
    ))
}

/// The way right after `bay`, or after `bay window`.
fn way_after_bay(typed: &Typed<'_>, bay: usize) -> Option<Direction> {
    let at = bay + 1 + usize::from(typed.says(bay + 1, &["window"]));
    let is_way = typed.says(at, &["north", "east", "south", "west", "n", "e", "s", "w"]);
    let is_side = typed.says(at + 1, &["side", "wall", "end"]);
    direction(typed, at)?.filter(|_| is_way && !is_side)
}

/// The bay as a line of a walk. Where the walk has its whole wall already, the wall is divided.
fn on_a_walk(
    typed: &Typed<'_>,
    way: Direction,
    sides: &Sides,
    cause: &str,
    line: &dyn Fn(&str) -> String,
) -> Answer {
    let walk = straight::walk(typed, &typed.attempt.beside.last_walk);
    let bay = line(way.word());
    let Some(walk) = walk else { return Answer::line(bay, cause) };
    let mut walls = walk.walls.iter().filter(|wall| wall.way == way && wall.length > sides.wide);
    let rest = |wall: &straight::Wall| written(wall.length - sides.wide, &sides.flat);
    let way = way.word();
    match (walls.next(), walls.next()) {
        (Some(wall), None) => Answer::say(
            format!(
                "{cause}; the walk above has the whole wall already, and a bay divides its wall"
            ),
            format!(
                "leave this line out; in the walk above, instead of `{}`, write `{way}` and the length up to the bay, on the next line `{bay}`, and on the line below that `{way}` and the length after it: the two together are {}",
                wall.typed,
                rest(wall)
            ),
        ),
        _ => Answer::say(
            format!("{cause}; the walk above is back at its start, and a bay divides its wall"),
            format!(
                "leave this line out; in the walk above, instead of the wall with the bay, write `{way}` and the length up to the bay, on the next line `{bay}`, and on the line below that `{way}` and the length after it"
            ),
        ),
    }
}

/// A line without the words that say that the bay is angled.
fn without_its_shape(line: &str) -> String {
    const SHAPE: [&str; 10] = [
        "angled", "angles", "angle", "slanted", "sides", "sided", "degrees", "degree", "deg",
        "window",
    ];
    let words = line.split(' ').filter(|word| {
        let plain = word.trim_matches(|c: char| ",;:()°-".contains(c)).to_lowercase();
        !SHAPE.contains(&plain.as_str()) && plain != "45" && plain != "3-sided"
    });
    words.collect::<Vec<_>>().join(" ")
}

/// `bay D 2' L 10' U 2'`: each side with its way, out, along and back.
fn three_ways(typed: &Typed<'_>, bay: usize) -> Option<Answer> {
    let front = typed.attempt.beside.front;
    let mut at = bay + 1 + usize::from(typed.says(bay + 1, &["window"]));
    let mut walls: Vec<(Direction, String)> = Vec::new();
    while at < typed.pieces.len() {
        if typed.pieces[at].is_mark(",;:") {
            at += 1;
            continue;
        }
        let word = match typed.lower(at).as_str() {
            "u" | "up" => "north".to_owned(),
            "d" | "down" | "dn" => "south".to_owned(),
            "l" | "lt" => "west".to_owned(),
            "r" | "rt" => "east".to_owned(),
            word => word.to_owned(),
        };
        let way = straight::compass(by_compass(way_and_back(&word)?.0, front))?;
        let length = straight::length_in(typed, &typed.pieces, at + 1)?;
        at = length.end;
        walls.push((way, length.text));
    }
    let [(out, one), (along, wide), (back, two)] = &walls[..] else { return None };
    let is_box = *back == out.opposite() && out.axis() != along.axis() && one == two;
    is_box.then(|| {
        let lines = walls.iter().map(|(way, length)| format!("{} {length}", way.word()));
        Answer::line(
            lines.collect::<Vec<_>>().join("\n"),
            format!(
                "a bay with square corners is three sides of the walk: out, {wide} along and back"
            ),
        )
    })
}

fn three_sides(typed: &Typed<'_>, bay: usize) -> Option<Sides> {
    // Other words say which length is which, or that its corners are square.
    let other = [
        "wide",
        "width",
        "out",
        "deep",
        "depth",
        "projects",
        "projection",
        "sticks",
        "round",
        "curved",
        "bow",
        "box",
        "boxed",
        "square",
        "radius",
        "door",
        "garage",
        "rise",
        "x",
        "by",
    ];
    if typed.find(0, &other).is_some() {
        return None;
    }
    let is_angle = |one: &Measure| {
        typed.says(one.end, &["degree", "degrees", "deg"])
            || typed.piece(one.end).is_some_and(|mark| mark.is_mark("°º˚"))
    };
    let all = lengths(&typed.pieces, bay + 1);
    if all.iter().any(|(_, one)| is_angle(one) && one.text != "45") {
        return None;
    }
    let of = |one: &Measure| {
        let is_far =
            (one.end..one.end + 3).any(|at| typed.says(at, &["from", "off", "to", "over"]));
        let counts =
            typed.says(one.end, &["sides", "sided", "side", "angles", "walls"]) && !one.has_unit;
        !is_far && !is_angle(one) && !counts
    };
    let found: Vec<(usize, Measure)> = all
        .into_iter()
        .filter(|(_, one)| of(one))
        .filter_map(|(at, _)| Some((at, straight::length_in(typed, &typed.pieces, at)?)))
        .collect();
    let [(first, one), (_, flat), (_, three)] = &found[..] else { return None };
    let is_one =
        one.length == three.length && one.length > Length::ZERO && flat.length > Length::ZERO;
    if !is_one || one.is_metric() != flat.is_metric() {
        return None;
    }
    let out = depth(one);
    let mut end = three.end;
    while typed.says(end, &["angled", "angle", "slanted", "diagonal", "side", "sides"]) {
        end += 1;
    }
    let wide = flat.length + out + out;
    Some(Sides { first: *first, end, wide, out, flat: flat.clone() })
}

/// How far a side at 45° leads away from the wall, to the quarter inch or the centimeter.
fn depth(side: &Measure) -> Length {
    let half = i128::from(side.length.nm()) * i128::from(side.length.nm());
    let out = half.div_euclid(2).isqrt();
    let grain: i128 = if side.is_metric() { 10_000_000 } else { 6_350_000 };
    let steps = (out + grain.div_euclid(2)).div_euclid(grain);
    Length::from_nm(i64::try_from(steps * grain).unwrap_or_default())
}
