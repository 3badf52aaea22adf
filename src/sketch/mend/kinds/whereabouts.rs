//! What words about the place of a space mean: a side, a corner or an end of the house or of another space, a distance
//! from one of them, or that the space stands by itself. Every rule that meets such words asks here.

use super::super::compass::{by_compass, slant, way_and_back};
use super::super::pieces::{Piece, Sort as PieceSort};
use super::measure::{Measure, length_at};
use super::{Typed, digits, is_text, place_words};
use crate::geometry::compass::{Axis, Direction};
use crate::sketch::asked::{Part, Point, Sort, Whereabouts};
use crate::sketch::statement::Unit;
use crate::units::length::Length;

/// What words at one place of a line say.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Told {
    /// Where the space stands.
    Parts(Vec<Part>),
    /// At the end of something on this side, or at a corner there: which wall it stands against is for other words to
    /// say, and a corner alone does not.
    End { way: Direction, of: Option<String>, is_corner: bool },
    /// Away from the house.
    Apart,
    /// Something as seen from the street, and the file does not say where the street is.
    Street,
}

/// Words about a place, and what is after them.
pub(super) struct Found {
    pub(super) told: Told,
    /// The index of the piece after them.
    pub(super) end: usize,
}

impl Told {
    /// Whether it is a corner and nothing else, or what lies below.
    pub(super) fn is_corner_or_below(&self) -> bool {
        let Told::Parts(parts) = self else { return false };
        parts.iter().all(|part| match &part.sort {
            Sort::From(_, ways) => ways.is_empty(),
            Sort::Over => true,
            _ => false,
        })
    }
}

/// Everything that the words about a place say.
#[derive(Default)]
pub(super) struct Place {
    pub(super) whereabouts: Whereabouts,
    pub(super) is_apart: bool,
    /// Whether words say a side as seen from a street that the file does not name.
    pub(super) needs_street: bool,
    /// The words that say nothing of this kind.
    pub(super) loose: Vec<Piece>,
}

/// Words that may stand before a place.
const LEADS: [&str; 50] = [
    "on",
    "at",
    "in",
    "to",
    "off",
    "along",
    "across",
    "against",
    "touching",
    "abutting",
    "from",
    "by",
    "near",
    "next",
    "attached",
    "start",
    "starts",
    "starting",
    "begins",
    "beginning",
    "located",
    "stands",
    "sits",
    "is",
    "the",
    "toward",
    "towards",
    "it",
    "set",
    "placed",
    "goes",
    "about",
    "tacked",
    "onto",
    "approx",
    "approximately",
    "roughly",
    "ca",
    "some",
    "its",
    "built",
    "out",
    "over",
    "tucked",
    "nestled",
    "all",
    "whole",
    "entire",
    "full",
    "sitting",
];
/// Words that begin another part of the line of a space.
const PARTS: [&str; 24] = [
    "recorded", "record", "rec", "rec'd", "county", "card", "assessor", "not", "counted", "within",
    "inside", "measured", "taped", "veneer", "brick", "under", "start", "starts", "from",
    "detached", "size", "about", "has", "no",
];
const WALLS: [&str; 6] = ["side", "wall", "face", "hand", "elevation", "facade"];
const ENDS: [&str; 8] = ["end", "edge", "corner", "cor", "limit", "part", "half", "portion"];

/// The words about a place that begin at this piece; `None` if there are none.
pub(super) fn whereabouts(typed: &Typed<'_>, at: usize) -> Option<Found> {
    if typed.piece(at)?.is_mark("([") {
        let found = words(typed, at + 1)?;
        let closes = typed.piece(found.end).is_some_and(|mark| mark.is_mark(")]"));
        return closes.then(|| Found { end: found.end + 1, ..found });
    }
    words(typed, at)
}

/// Reads all words from this piece on; `inside` if they are about something in the house.
pub(super) fn place(typed: &Typed<'_>, first: usize, inside: bool) -> Place {
    const FILLERS: [&str; 11] = [
        "and",
        "but",
        "then",
        "attached",
        "att",
        "starting",
        "beginning",
        "located",
        "running",
        "only",
        "just",
    ];
    let mut place = Place::default();
    let mut ends: Vec<(Direction, Option<String>, bool)> = Vec::new();
    let mut rooms: Vec<Piece> = Vec::new();
    let mut at = first;
    while let Some(piece) = typed.piece(at) {
        // `off the kitchen`: a room is not on the sketch, and other words may say the side.
        if let Some(end) = off_a_room(typed, at) {
            rooms.extend(typed.pieces[at..end].iter().cloned());
            at = end;
            continue;
        }
        // `rear left side`, `left side rear`: the other side tells at which end.
        if let Some(way) = end_of_a_side(typed, at, &place.whereabouts.parts) {
            ends.push((way, None, false));
            at += 1;
            continue;
        }
        if let Some(found) = whereabouts(typed, at) {
            match found.told {
                Told::Parts(parts) => place.whereabouts.parts.extend(parts),
                Told::End { way, of, is_corner } => ends.push((way, of, is_corner)),
                Told::Apart => place.is_apart = true,
                Told::Street => place.needs_street = true,
            }
            at = found.end;
            continue;
        }
        // `bumps out 8' in front of the house`: its near end lies beyond the wall there.
        if let Some((way, by, end)) = place_words::stands_out(typed, at) {
            match way {
                Some(way) => place
                    .whereabouts
                    .parts
                    .push(Part { sort: Sort::Inset(way, Length::ZERO - by), of: None }),
                None => place.needs_street = true,
            }
            at = end;
            continue;
        }
        // `on the back, full width`: its size says so too.
        if typed.says(at, &["full", "whole", "entire", "all"])
            && typed.says(at + 1, &["width", "length", "way", "along", "across"])
        {
            at += 2 + usize::from(typed.says(at + 2, &["of"]));
            continue;
        }
        // `part of the house, front right`: what lies inside lies in a corner.
        if let Some((ways, end)) = compass_corner(typed, at).filter(|_| inside) {
            match ways {
                (Some(north), Some(east)) => {
                    let sort = Sort::At(Point::Toward(north, east));
                    place.whereabouts.parts.push(Part { sort, of: None });
                }
                _ => place.needs_street = true,
            }
            at = end;
            continue;
        }
        if !piece.is_mark(",;().:–-") && !typed.says(at, &FILLERS) {
            place.loose.push(piece.clone());
        }
        at += 1;
    }
    let says_nothing = place.whereabouts.parts.is_empty() && ends.is_empty();
    if says_nothing && !place.is_apart && !place.needs_street {
        place.loose.extend(rooms);
    }
    let parts = &mut place.whereabouts.parts;
    // Of two sides, the second tells at which end of the first.
    let mut side: Option<Axis> = None;
    let mut beside: Option<String> = None;
    for part in parts.iter_mut() {
        if part.sort == Sort::Against {
            beside.clone_from(&part.of);
        }
        let Sort::Side(way) = part.sort else { continue };
        // `beside the stairs, on the front side`
        part.of = part.of.take().or(beside.take());
        // `in front of the house, right of the garage`: against both.
        let is_second = side.is_some_and(|axis| axis != way.axis()) && part.of.is_none();
        if inside && part.of.is_none() || is_second {
            part.sort = Sort::Inset(way, Length::ZERO);
        }
        side.get_or_insert(way.axis());
    }
    for (way, of, is_corner) in ends {
        let is_across = |part: &Part| match part.sort {
            Sort::Side(side) | Sort::Inset(side, _) => side.axis() != way.axis(),
            _ => false,
        };
        let is_end = inside || parts.iter().any(is_across);
        if is_corner && !is_end {
            place.loose.push(Piece::word("corner"));
        }
        let sort = if is_end { Sort::Inset(way, Length::ZERO) } else { Sort::Side(way) };
        parts.push(Part { sort, of });
    }
    let has_side = parts.iter().any(|part| matches!(part.sort, Sort::Side(_) | Sort::Inset(..)));
    let has_middle = parts.iter().any(|part| part.sort == Sort::Middle);
    if has_middle && !has_side && !inside && !place.needs_street {
        place.loose.push(Piece::word("middle"));
    }
    let mut kept: Vec<Part> = Vec::new();
    for part in std::mem::take(parts) {
        if !kept.contains(&part) {
            kept.push(part);
        }
    }
    *parts = kept;
    place
}

/// `over the right half`, `above the back part`: what lies over a part of the house belongs to the next level.
pub(super) fn is_over_a_part(typed: &Typed<'_>, first: usize) -> bool {
    const PARTS: [&str; 5] = ["half", "part", "end", "portion", "side"];
    (first..typed.pieces.len()).any(|at| {
        let way = at + 1 + usize::from(typed.says(at + 1, &["the"]));
        typed.says(at, &["over", "above"])
            && direction(typed, way).is_some()
            && typed.says(way + 1, &PARTS)
    })
}

/// `off the kitchen`, `by the den`: the index after words for a room that a sketch does not show.
fn off_a_room(typed: &Typed<'_>, at: usize) -> Option<usize> {
    let is_before = typed.says(at, &["off", "by", "near", "outside"]);
    let first = at + 1 + usize::from(typed.says(at + 1, &["of"]));
    let first = first + usize::from(typed.says(first, &["the", "my", "our"]));
    let room = [2, 1].into_iter().map(|count| first + count).find(|&end| {
        end <= typed.pieces.len()
            && ROOMS.iter().any(|room| typed.text(first, end).eq_ignore_ascii_case(room))
    })?;
    let is_named = typed
        .attempt
        .beside
        .spaces
        .iter()
        .any(|space| space.eq_ignore_ascii_case(typed.text(first, room)));
    (is_before && !is_named).then_some(room)
}

/// `rear` before `left side`, or after it at the end of a part of the line.
fn end_of_a_side(typed: &Typed<'_>, at: usize, parts: &[Part]) -> Option<Direction> {
    let way = direction(typed, at)??;
    let before = typed.piece(at.checked_sub(1)?)?;
    let is_across = |other: Direction| other.axis() != way.axis();
    let next = direction(typed, at + 1).flatten();
    if before.is_mark(",;(") && typed.says(at + 2, &["side", "wall"]) && next.is_some_and(is_across)
    {
        return Some(way);
    }
    let is_after =
        parts.iter().any(|part| matches!(part.sort, Sort::Side(side) if is_across(side)));
    (is_after && before.is_word(&WALLS) && ends(typed, at + 1)).then_some(way)
}

/// `50 feet back`, `set back 50 feet`: as far as that from the house it is not built against it.
fn set_back(typed: &Typed<'_>, at: usize) -> Option<Found> {
    const FAR: i64 = 10 * Length::FOOT.nm();
    let is_far = |one: &Measure| one.has_unit && one.length.nm() >= FAR;
    let found = |end: usize| Some(Found { told: Told::Apart, end });
    if typed.says(at, &["set"]) && typed.says(at + 1, &["back"]) {
        let one = length_at(&typed.pieces, at + 2).filter(is_far)?;
        return found(one.end);
    }
    let one = length_at(&typed.pieces, at).filter(is_far)?;
    let is_last =
        ends(typed, one.end + 1) && !typed.says(one.end + 1, &["from", "of", "off", "on"]);
    (typed.says(one.end, &["back"]) && is_last).then(|| found(one.end + 1)).flatten()
}

fn words(typed: &Typed<'_>, at: usize) -> Option<Found> {
    let mut first = at;
    loop {
        // `along the full width of the front`
        let is_length_of =
            typed.says(first, &["width", "length"]) && typed.says(first + 1, &["of"]) && first > at;
        if is_length_of {
            first += 2;
        } else if typed.says(first, &LEADS) || first > at && typed.piece(first)?.is_mark("@") {
            first += 1;
        } else {
            break;
        }
    }
    apart(typed, at)
        .or_else(|| between(typed, at))
        .or_else(|| set_back(typed, at))
        .or_else(|| middle_of_a_side(typed, at))
        .or_else(|| level_with(typed, first))
        .or_else(|| from_a_point(typed, at, first))
        .or_else(|| from_an_end(typed, first))
        .or_else(|| at_a_corner(typed, first, first > at))
        .or_else(|| beside(typed, at))
        .or_else(|| on_a_side(typed, at, first))
        .or_else(|| middle(typed, at))
}

fn one(sort: Sort, of: Option<String>) -> Told {
    Told::Parts(vec![Part { sort, of }])
}

/// What is told of a side; `Street` if it is not known where the street is.
fn of_side(way: Option<Direction>, told: impl FnOnce(Direction) -> Told) -> Told {
    way.map_or(Told::Street, told)
}
/// What a space away from the house stands in, or beside.
const LAND: [&str; 19] = [
    "yard", "backyard", "field", "garden", "lot", "alley", "driveway", "drive", "pasture", "fence",
    "property", "woods", "pool", "orchard", "road", "pond", "creek", "paddock", "ditch",
];

/// `in the yard`, `out back`, `by itself`, `across the driveway`: away from the house.
fn apart(typed: &Typed<'_>, at: usize) -> Option<Found> {
    let found = |end: usize| Some(Found { told: Told::Apart, end });
    let says =
        |words: &[&str]| words.iter().enumerate().all(|(i, word)| typed.says(at + i, &[word]));
    for words in [
        &["by", "itself"][..],
        &["on", "its", "own"],
        &["standing", "by", "itself"],
        &["stands", "by", "itself"],
        &["stands", "apart"],
        &["standing", "apart"],
        &["set", "apart"],
        &["apart"],
    ] {
        if says(words) {
            return found(at + words.len());
        }
    }
    // `2nd bldg`, `separate building`
    let other = ["2nd", "second", "separate", "another", "sep", "own", "3rd", "third"];
    let first = at + usize::from(typed.says(at, &["a", "its", "in"]));
    let is_number = typed.piece(first).is_some_and(|number| ["2", "3"].contains(&&*number.text));
    let is_ordinal = is_number && typed.says(first + 1, &["nd", "rd"]);
    if is_ordinal || typed.says(first, &other) {
        let building = first + 1 + usize::from(is_ordinal);
        if typed.says(building, &["bldg", "building", "structure", "bldng"]) {
            return found(building + 1);
        }
    }
    // `back corner of lot`, `rear end of the property`
    let of = at
        + 2
        + usize::from(
            typed.says(at + 1, &["corner", "left", "right"]) && typed.says(at + 2, &["corner"]),
        );
    let land_of = of + 1 + usize::from(typed.says(of + 1, &["the", "my", "our"]));
    if typed.says(at, &["back", "rear", "far", "front", "side", "left", "right"])
        && typed.says(of - 1, &["corner", "end", "part", "line", "edge"])
        && typed.says(of, &["of"])
        && typed.says(land_of, &LAND)
    {
        return found(land_of + 1);
    }
    // `back of the lot`
    let land_of = at + 2 + usize::from(typed.says(at + 2, &["the", "my", "our"]));
    if typed.says(at, &["back", "rear"])
        && typed.says(at + 1, &["of"])
        && typed.says(land_of, &LAND)
    {
        return found(land_of + 1);
    }
    // `back yard`, as a part of the line of its own
    let is_apart = at == 0 || typed.pieces[at - 1].is_mark(",;-–(") || at == 1;
    let sides = ["back", "rear", "side", "front", "left", "right"];
    let yard = at + usize::from(typed.says(at, &sides));
    if is_apart && yard > at && typed.says(yard, &["yard"]) || typed.says(at, &["backyard"]) {
        return found(yard + 1);
    }
    let land = LAND;
    let joints = ["in", "on", "at", "across", "by", "near", "behind", "out", "to", "along", "down"];
    if !typed.says(at, &joints) {
        return None;
    }
    let more = [
        "the", "of", "a", "back", "rear", "side", "front", "far", "end", "line", "in", "by",
        "corner", "left", "right",
    ];
    let last = (at + 1..typed.pieces.len().min(at + 7))
        .find(|&at| !typed.says(at, &more))
        .filter(|&last| typed.says(last, &land))?;
    found(last + 1 + usize::from(typed.says(last + 1, &["line", "fence"])))
}

/// `between the garage and the house`: against each of the two that the file has.
fn between(typed: &Typed<'_>, at: usize) -> Option<Found> {
    if !typed.says(at, &["between", "betw", "btwn"]) {
        return None;
    }
    let (one, end) = space_named(typed, at + 1)?;
    let is_and =
        typed.says(end, &["and", "&"]) || typed.piece(end).is_some_and(|mark| mark.is_mark("&"));
    let (two, end) = space_named(typed, end + 1).filter(|_| is_and)?;
    let is_house = |of: &Option<String>| of.is_none();
    if !is_house(&one) && !is_house(&two) || !ends(typed, end) {
        return None;
    }
    let spaces = &typed.attempt.beside.spaces;
    let is_known = |of: &String| spaces.iter().any(|space| space.eq_ignore_ascii_case(of));
    let parts = [one, two].into_iter().flatten().filter(is_known);
    let parts = parts.map(|of| Part { sort: Sort::Against, of: Some(of) }).collect();
    Some(Found { told: Told::Parts(parts), end })
}

/// `flush with the front`, `even with the back wall of the garage`, `in line with the left side`.
fn level_with(typed: &Typed<'_>, first: usize) -> Option<Found> {
    if let Some(found) = lines_up(typed, first) {
        return Some(found);
    }
    let is_line = typed.says(first, &["line"]) && typed.says(first.checked_sub(1)?, &["in"]);
    if !is_line && !typed.says(first, &["flush", "even", "aligned", "lined", "lines", "level"]) {
        return None;
    }
    let mut at = first + 1;
    while typed.says(at, &["up", "with", "to", "at", "against", "the", "its"]) {
        at += 1;
    }
    let (owner, at) = owner(typed, at);
    let way = direction(typed, at)?;
    let end = after_words(typed, at + 1, &[&WALLS, &ENDS]);
    let (of, end) = of_a_space(typed, end);
    let told = of_side(way, |way| one(Sort::Inset(way, Length::ZERO), owner.or(of)));
    Some(Found { told, end })
}

/// `front walls line up`, `fronts flush`, `back wall even`: level with the house there.
fn lines_up(typed: &Typed<'_>, first: usize) -> Option<Found> {
    let word = typed.lower(first);
    let word = word.strip_suffix('s').unwrap_or(&word);
    let way = by_compass(way_and_back(word)?.0, typed.attempt.beside.front);
    let at = after_words(typed, first + 1, &[&["walls"], &WALLS, &ENDS]);
    let at = at + usize::from(typed.says(at, &["are", "is"]));
    let is_up = typed.says(at, &["line", "lined", "lines"]) && typed.says(at + 1, &["up"]);
    let in_line = typed.says(at, &["in"]) && typed.says(at + 1, &["line"]);
    let end = match is_up || in_line {
        true => at + 2,
        false if typed.says(at, &["flush", "even", "aligned"]) => at + 1,
        false => return None,
    };
    if !ends(typed, end) || typed.says(end, &["with", "to"]) {
        return None;
    }
    let way = match way {
        "north" => Some(Direction::North),
        "south" => Some(Direction::South),
        "east" => Some(Direction::East),
        "west" => Some(Direction::West),
        _ => None,
    };
    Some(Found { told: of_side(way, |way| one(Sort::Inset(way, Length::ZERO), None)), end })
}

/// The index of the first piece from here on that is none of these words.
fn after_words(typed: &Typed<'_>, at: usize, words: &[&[&str]]) -> usize {
    let is_one = |at: &usize| words.iter().any(|words| typed.says(*at, words));
    (at..typed.pieces.len()).find(|at| !is_one(at)).unwrap_or(typed.pieces.len().max(at))
}

/// `3' east of corner 3`, `5' from corner 2`, `start east 5' from corner 2`, `from "House" corner 1 + 3' east`, `4'
/// east and 3' north of the house's NE corner`.
fn from_a_point(typed: &Typed<'_>, at: usize, first: usize) -> Option<Found> {
    let mut offsets: Vec<(Direction, Length)> = Vec::new();
    let mut next = first;
    while let Some(((way, by), end)) = offset(typed, next) {
        offsets.push((way, by.length));
        next = end + usize::from(joins(typed, end));
    }
    let alone = length_at(&typed.pieces, first).filter(|one| one.has_unit && offsets.is_empty());
    next = alone.as_ref().map_or(next, |one| one.end);
    let from = |point: Option<Point>, of: Option<String>, offsets| {
        point.map_or(Told::Street, |point| one(Sort::From(point, offsets), of))
    };
    if next > first {
        next += usize::from(typed.says(next, &["away", "over", "out", "in", "back"]));
        if !typed.says(next, &["from", "of", "off", "past", "beyond"]) {
            return None;
        }
        let (point, of, end) = point(typed, next + 1)?;
        let told = match alone {
            Some(by) => point.map_or(Told::Street, |point| one(Sort::Near(point, by.length), of)),
            None => from(point, of, offsets),
        };
        return Some(Found { told, end });
    }
    // The corner first, then how far from it.
    let (point, of, corner) = point(typed, first).filter(|_| first > at)?;
    let mut next = corner + usize::from(joins(typed, corner));
    while let Some(((way, by), end)) = offset(typed, next) {
        offsets.push((way, by.length));
        next = end + usize::from(joins(typed, end));
    }
    match point {
        // `from the NE corner of the foyer`: its walk begins there.
        Some(Point::Toward(..)) if offsets.is_empty() && !typed.says(at, &["from"]) => None,
        _ if offsets.is_empty() => Some(Found { told: from(point, of, offsets), end: corner }),
        _ => Some(Found { told: from(point, of, offsets), end: next }),
    }
}

/// `corner 3`, `corner 3 of the house`, `"House" corner 3`, `the house's NE corner`, `corner "step"`. No point if it is
/// not known where the street is.
fn point(typed: &Typed<'_>, at: usize) -> Option<(Option<Point>, Option<String>, usize)> {
    let at = at + usize::from(typed.says(at, &["the"]));
    if typed.says(at, &["origin"]) {
        return Some((Some(Point::Origin), None, at + 1));
    }
    let (owner, first) = owner(typed, at);
    if typed.says(first, &["corner"]) {
        let number = typed.piece(first + 1).filter(|number| digits::is_small(number));
        let point = match number {
            Some(number) => Point::Numbered(number.text.parse().ok()?),
            None => Point::Named(corner_named(typed, first + 1, first + 2)?),
        };
        let (of, end) = match point {
            Point::Named(_) => (None, first + 2),
            _ => of_a_space(typed, first + 2),
        };
        return Some((Some(point), owner.or(of), end));
    }
    if let Some(name) = corner_named(typed, first, first + 1)
        && typed.says(first + 1, &["corner"])
    {
        return Some((Some(Point::Named(name)), None, first + 2));
    }
    let ((north, east), end) = compass_corner(typed, first)?;
    if !typed.says(end, &["corner"]) && typed.lower(first).len() != 2 {
        return None;
    }
    let (of, end) = of_a_space(typed, end + usize::from(typed.says(end, &["corner"])));
    let point = north.zip(east).map(|(north, east)| Point::Toward(north, east));
    Some((point, owner.or(of), end))
}

/// A name of a corner above on the level.
fn corner_named(typed: &Typed<'_>, first: usize, end: usize) -> Option<String> {
    let name = typed.name(first, end);
    let known = typed.attempt.beside.corners.iter().find(|one| one.eq_ignore_ascii_case(&name))?;
    Some(known.to_string())
}

/// `3' from the west wall`, `6' in from the left corner`, `4' back from the front`, `set back 4'`, `30 m behind the
/// house`, `20' away from the house`.
fn from_an_end(typed: &Typed<'_>, first: usize) -> Option<Found> {
    // `off the back 6' from the west end`: the back of the house.
    let is_side = first > 0 && typed.says(first - 1, &["the", "off", "on", "at", "along", "in"]);
    let is_back = typed.says(first, &["back", "recessed"]) && !is_side;
    let front = typed.attempt.beside.front;
    let inset = |way: Option<Direction>, by: Length, of: Option<String>| {
        of_side(way, |way| one(Sort::Inset(way, by), of))
    };
    let (by, after) = distance(typed, first + usize::from(is_back))?;
    let at = after_words(typed, after, &[&["away", "over", "in", "out", "back", "up"]]);
    let goes_back = is_back && first > 0 && typed.says(first - 1, &["set", "is"])
        || typed.says(first, &["recessed"])
        || at == after + 1 && typed.says(after, &["back"]);
    if !typed.says(at, &["from", "off", "of"]) {
        if goes_back && ends(typed, at) {
            return Some(Found { told: inset(front, by, None), end: at });
        }
        // `4' 4" behind the front of the house`
        if typed.says(at, &["behind"]) {
            let next = at + 1 + usize::from(typed.says(at + 1, &["the"]));
            let next = house(typed, next).unwrap_or(next);
            if typed.says(next, &["front"]) {
                let end = after_words(typed, next + 1, &[&WALLS, &ENDS]);
                let (of, end) = of_a_space(typed, end);
                return Some(Found { told: inset(front, by, of), end });
            }
        }
        // `its front 4' in front of the house, on the right`: it sticks out.
        let in_front = typed.says(after, &["in"])
            && typed.says(after + 1, &["front"])
            && typed.says(after + 2, &["of"]);
        let attached = ["attached", "its", "sticks", "projects", "projecting"];
        let next = after + 3 + usize::from(typed.says(after + 3, &["the"]));
        if in_front
            && typed.find(0, &attached).is_some()
            && let Some(end) = house(typed, next)
        {
            let out = Length::from_nm(-by.nm());
            return Some(Found { told: inset(front, out, None), end });
        }
        // At a distance from the house it touches nothing.
        let found = on_a_side(typed, at, at).or_else(|| beside(typed, at))?;
        return (by != Length::ZERO).then_some(Found { told: Told::Apart, ..found });
    }
    let next = at + 1 + usize::from(typed.says(at + 1, &["the", "its"]));
    let (owner, next) = owner(typed, next);
    if let Some(way) = direction(typed, next)
        && direction(typed, next + 1).is_none()
    {
        let end = after_words(typed, next + 1, &[&WALLS, &ENDS]);
        // `4' from the west end of the south wall`
        let of_a_wall = end + 1 + usize::from(typed.says(end + 1, &["the", "its"]));
        if let Some(side) = direction(typed, of_a_wall).filter(|_| typed.says(end, &["of"])) {
            let last = after_words(typed, of_a_wall + 1, &[&WALLS]);
            let (of, last) = of_a_space(typed, last);
            let part = |sort: Sort| Part { sort, of: of.clone() };
            let told = match (way, side) {
                (Some(way), Some(side)) => {
                    Told::Parts(vec![part(Sort::Side(side)), part(Sort::Inset(way, by))])
                }
                _ => Told::Street,
            };
            return Some(Found { told, end: last });
        }
        let (of, after) = of_a_space(typed, end);
        // `from the front door` is none of these.
        if end == next + 1 && after == end && !ends(typed, end) {
            return None;
        }
        return Some(Found { told: inset(way, by, owner.or(of)), end: after });
    }
    let end = house(typed, next)?;
    Some(Found { told: Told::Apart, end })
}

/// `at the southeast corner of the house`, `SE corner`, `rear left corner`, `NE of house`.
fn at_a_corner(typed: &Typed<'_>, first: usize, leads: bool) -> Option<Found> {
    let (owner, at) = owner(typed, first);
    let (ways, end) = compass_corner(typed, at)?;
    let says_corner = typed.says(end, &["corner", "end"]);
    let end = end + usize::from(says_corner);
    let (of, after) = of_a_space(typed, end);
    // `left rear`, alone between commas
    let is_alone = end == at + 2
        && at > 0
        && typed.pieces[at - 1].is_mark(",;(")
        && typed.piece(end).is_none_or(|next| next.is_mark(",;)"));
    let says_enough = says_corner || is_alone || leads && ends(typed, after);
    if !says_enough && after == end {
        return None;
    }
    let told = match ways {
        (Some(north), Some(east)) => one(Sort::At(Point::Toward(north, east)), owner.or(of)),
        _ => Told::Street,
    };
    Some(Found { told, end: after })
}

pub(super) fn joins(typed: &Typed<'_>, at: usize) -> bool {
    typed.says(at, &["and", "then", "plus"])
        || typed.piece(at).is_some_and(|mark| mark.is_mark("+,&"))
}

/// A length with its unit, or none at all: `0`, `0'`. A bare number before `from` has the unit of the file.
pub(super) fn distance(typed: &Typed<'_>, at: usize) -> Option<(Length, usize)> {
    if let Some(one) = length_at(&typed.pieces, at).filter(|one| one.has_unit) {
        return Some((one.length, one.end));
    }
    let is_zero = typed.piece(at)?.text == "0";
    if typed.says(at + 1, &["from"]) && !is_zero {
        return number_alone(typed, at);
    }
    let is_unit = typed.piece(at + 1).is_some_and(|unit| {
        unit.is_mark("'’′\"") || unit.is_word(&["ft", "feet", "foot", "m", "cm", "mm"])
    });
    is_zero.then_some((Length::ZERO, at + 1 + usize::from(is_unit)))
}

/// `28.33`: a length in the unit of the file, and the index after it.
pub(super) fn number_alone(typed: &Typed<'_>, at: usize) -> Option<(Length, usize)> {
    let number = typed.piece(at).filter(|piece| piece.is_number())?;
    let unit = match typed.attempt.units {
        Unit::Feet => "'",
        Unit::Inches => "\"",
        Unit::Meters => " m",
        Unit::Centimeters => " cm",
        Unit::Millimeters => " mm",
    };
    let length = format!("{}{unit}", number.text).parse();
    length.ok().map(|length| (length, at + 1))
}

/// `east 5'`, `5' east`: a direction and a length.
pub(super) fn offset(typed: &Typed<'_>, at: usize) -> Option<((Direction, Measure), usize)> {
    let has_unit = |one: &Measure| one.has_unit;
    if let Some(way) = direction(typed, at).flatten() {
        let by = length_at(&typed.pieces, at + 1).filter(has_unit)?;
        let end = by.end;
        return Some(((way, by), end));
    }
    let by = length_at(&typed.pieces, at).filter(has_unit)?;
    let next = by.end + usize::from(typed.says(by.end, &["to"]));
    let next = next + usize::from(typed.says(next, &["the"]));
    let way = direction(typed, next).flatten()?;
    Some(((way, by), next + 1))
}

/// The two sides of a corner, north or south first, each `None` if it is not known where the street is; and the index
/// after them.
pub(super) type Sides = (Option<Direction>, Option<Direction>);
pub(super) fn compass_corner(typed: &Typed<'_>, at: usize) -> Option<(Sides, usize)> {
    let of_word = |word: &str| match word {
        "north" => Some(Direction::North),
        "south" => Some(Direction::South),
        "east" => Some(Direction::East),
        "west" => Some(Direction::West),
        _ => None,
    };
    if let Some((north, east)) = slant(&typed.lower(at)) {
        return Some(((of_word(north), of_word(east)), at + 1));
    }
    let joint = usize::from(typed.piece(at + 1).is_some_and(|mark| mark.is_mark("-/")));
    // `lower right`: on paper the street is below.
    let front = typed.attempt.beside.front;
    let first = match typed.lower(at).as_str() {
        "lower" | "bottom" => front,
        "upper" | "top" => front.map(Direction::opposite),
        _ => direction(typed, at)?,
    };
    let (one, two) = (first, direction(typed, at + 1 + joint)?);
    let end = at + 2 + joint;
    let (Some(one), Some(two)) = (one, two) else { return Some(((None, None), end)) };
    if one.axis() == two.axis() {
        return None;
    }
    let (north, east) = if one.axis() == Axis::North { (one, two) } else { (two, one) };
    Some(((Some(north), Some(east)), end))
}

/// Rooms that a sketch does not show.
const ROOMS: [&str; 17] = [
    "kitchen",
    "living room",
    "dining room",
    "dining area",
    "family room",
    "great room",
    "den",
    "bedroom",
    "master",
    "master bedroom",
    "primary bedroom",
    "bathroom",
    "laundry",
    "laundry room",
    "office",
    "breakfast room",
    "breakfast nook",
];

/// `behind the garage`, `in front of the wing`, `next to the kitchen`, `over the garage`.
fn beside(typed: &Typed<'_>, at: usize) -> Option<Found> {
    let mut first = at;
    while typed.says(first, &["attached", "built", "is", "set", "right", "directly"])
        && typed.piece(first + 1).is_some_and(|next| next.sort == PieceSort::Word)
        && !typed.says(first + 1, &["of", "side", "wall", "to"])
    {
        first += 1;
    }
    let front = typed.attempt.beside.front;
    let behind = typed.says(first, &["behind"]);
    let phrases: [(&[&str], Option<Sort>); 17] = [
        (&["behind"], front.map(|front| Sort::Side(front.opposite()))),
        (&["in", "back", "of"], front.map(|front| Sort::Side(front.opposite()))),
        (&["in", "front", "of"], front.map(Sort::Side)),
        (&["next", "to"], Some(Sort::Against)),
        (&["attached", "to"], Some(Sort::Against)),
        (&["beside"], Some(Sort::Against)),
        (&["alongside"], Some(Sort::Against)),
        (&["against"], Some(Sort::Against)),
        (&["touching"], Some(Sort::Against)),
        (&["abutting"], Some(Sort::Against)),
        (&["adjoining"], Some(Sort::Against)),
        (&["adjacent", "to"], Some(Sort::Against)),
        (&["over", "top", "of"], Some(Sort::Over)),
        (&["on", "top", "of"], Some(Sort::Over)),
        (&["over"], Some(Sort::Over)),
        (&["above"], Some(Sort::Over)),
        (&["right", "above"], Some(Sort::Over)),
    ];
    let says = |words: &[&str]| words.iter().enumerate().all(|(i, w)| typed.says(first + i, &[w]));
    // `on House`, `at "House"`
    if typed.says(at, &["on", "at", "to"]) && at + 1 < typed.pieces.len() {
        let name = typed.rest(at + 1).to_lowercase();
        let name = name.trim_matches('"');
        let spaces = typed.attempt.beside.spaces.iter().map(|space| space.to_lowercase());
        let house = typed.attempt.house.iter().map(|house| house.to_lowercase());
        if let Some(of) = spaces.chain(house).find(|space| space == name) {
            return Some(Found { told: one(Sort::Against, Some(of)), end: typed.pieces.len() });
        }
    }
    let (words, sort) = phrases.into_iter().find(|(words, _)| says(words))?;
    let next = first + words.len();
    // `in front of the door`
    let door = after_words(typed, next, &[&["the", "our", "my", "front", "main"]]);
    if typed.says(first, &["in"]) && typed.says(door, &["door", "doors", "entry", "entrance"]) {
        let told = sort.map_or(Told::Street, |sort| one(sort, None));
        return Some(Found { told, end: door + 1 });
    }
    let told = |of| sort.map_or(Told::Street, |sort| one(sort, of));
    if let Some((of, end)) = space_named(typed, next) {
        // `behind the house 50'`
        const FAR: i64 = 10 * Length::FOOT.nm();
        let far =
            length_at(&typed.pieces, end).filter(|one| one.has_unit && one.length.nm() >= FAR);
        if let Some(far) = far.filter(|far| {
            behind && ends(typed, far.end) && !typed.says(far.end, &["from", "x", "by"])
        }) {
            return Some(Found { told: Told::Apart, end: far.end });
        }
        // A room has no place on the sketch; what is behind it is behind the house.
        let is_room = of.as_deref().is_some_and(|of| ROOMS.contains(&of));
        let of = of.filter(|_| !(is_room && (behind || typed.says(first, &["in"]))));
        return Some(Found { told: told(of), end });
    }
    (behind && ends(typed, next)).then(|| Found { told: told(None), end: next })
}

/// `on the east side`, `right of house`, `at rear`, `north end`, `the garage's left side`.
fn on_a_side(typed: &Typed<'_>, at: usize, first: usize) -> Option<Found> {
    let (owner, word) = owner(typed, first);
    let way = direction(typed, word)?;
    let end = after_words(typed, word + 1, &[&WALLS, &ENDS, &["door", "doors"]]);
    let is_end = (word + 1..end).any(|at| typed.says(at, &ENDS));
    let is_corner = (word + 1..end).any(|at| typed.says(at, &["corner", "cor"]));
    let (of, after) = of_a_space(typed, end);
    // `on the right`, `to the east`, `off back`: nothing else follows.
    let is_apart = at == 1 && !is_before_a_length(typed, end)
        || at > 0 && typed.pieces[at - 1].is_mark(",;-–(");
    let leads = is_apart && first == at
        || first > at && !typed.says(first - 1, &["start", "starts", "from"]);
    if !(end > word + 1 || after > end || leads && ends(typed, end)) {
        return None;
    }
    let of = owner.or(of);
    let told = of_side(way, |way| match is_end {
        true => Told::End { way, of, is_corner },
        false => one(Sort::Side(way), of),
    });
    Some(Found { told, end: after })
}

/// Whether a length follows that is not the first of a size: `back 30'`.
fn is_before_a_length(typed: &Typed<'_>, at: usize) -> bool {
    length_at(&typed.pieces, at).is_some_and(|one| {
        one.has_unit
            && !typed.says(one.end, &["x", "by", "wide", "deep", "from", "off", "in"])
            && !typed.piece(one.end).is_some_and(|mark| mark.is_mark("×*"))
    })
}

/// `centered`, `in the middle of`.
fn middle(typed: &Typed<'_>, at: usize) -> Option<Found> {
    let first = after_words(typed, at, &[&["in", "at", "the", "on"]]);
    let is_middle =
        typed.says(first, &["centered", "centred", "middle", "center", "centre", "ctr", "mid"]);
    if let Some(found) = at_a_door(typed, first + 1).filter(|_| is_middle) {
        return Some(found);
    }
    let end = first + 1 + usize::from(typed.says(first + 1, &["of"]));
    is_middle.then(|| Found { told: one(Sort::Middle, None), end })
}

/// `centered on the front door`: a door is on one side of the house, and where along it a sketch does not show.
fn at_a_door(typed: &Typed<'_>, at: usize) -> Option<Found> {
    let is_before = typed.says(at, &["on", "over", "at", "around", "about", "with", "under"]);
    let first = at + 1 + usize::from(typed.says(at + 1, &["the", "our", "my"]));
    let way = direction(typed, first);
    let door = first + usize::from(way.is_some() || typed.says(first, &["main"]));
    let is_door = typed.says(
        door,
        &["door", "doors", "doorway", "entry", "entrance", "window", "windows", "slider"],
    );
    let told = match way {
        None => Told::Parts(Vec::new()),
        Some(way) => of_side(way, |way| one(Sort::Side(way), None)),
    };
    (is_before && is_door).then_some(Found { told, end: door + 1 })
}

/// `front center`, `center rear`: in the middle of that side.
fn middle_of_a_side(typed: &Typed<'_>, at: usize) -> Option<Found> {
    let first = after_words(typed, at, &[&["in", "at", "the", "on"]]);
    let is_middle = |at: usize| {
        typed.says(at, &["centered", "centred", "middle", "center", "centre", "ctr", "mid"])
    };
    let way = match (is_middle(first), is_middle(first + 1)) {
        (false, true) => direction(typed, first)?,
        (true, false) => direction(typed, first + 1)?,
        _ => return None,
    };
    let end = first + 2;
    if typed.piece(end).is_some_and(|next| !next.is_mark(",;)")) {
        return None;
    }
    let part = |sort: Sort| Part { sort, of: None };
    let told = of_side(way, |way| Told::Parts(vec![part(Sort::Side(way)), part(Sort::Middle)]));
    Some(Found { told, end })
}

/// Whether nothing more of the same part of the line follows.
fn ends(typed: &Typed<'_>, at: usize) -> bool {
    typed.piece(at).is_none_or(|next| {
        const MORE: [&str; 8] =
            ["and", "but", "flush", "even", "centered", "centred", "behind", "beside"];
        next.is_number()
            || next.is_mark(",;.()[]:–-#")
            || [&PARTS[..], &LEADS, &MORE].iter().any(|words| typed.says(at, words))
    })
}

/// `the garage's`, `"Garage"`, `house's` before a side or a corner of it: whose it is, and the index after it.
fn owner(typed: &Typed<'_>, at: usize) -> (Option<String>, usize) {
    if is_text(typed.piece(at)) {
        return (Some(typed.name(at, at + 1)), at + 1);
    }
    if let Some(end) = house(typed, at) {
        let is_owned = typed.piece(end).is_some_and(|mark| mark.is_mark("'’"));
        let end = end + 2 * usize::from(is_owned && typed.says(end + 1, &["s"]));
        let is_before = direction(typed, end).is_some()
            || compass_corner(typed, end).is_some()
            || typed.says(end, &["corner"]);
        return (None, if is_before { end } else { at });
    }
    let word = typed.lower(at);
    match word.strip_suffix("'s").or_else(|| word.strip_suffix("’s")) {
        Some("house" | "home") => (None, at + 1),
        Some(name) => (Some(name.to_owned()), at + 1),
        None => (None, at),
    }
}

/// A space that is named after the words before: the house, a name, or up to three words of one.
fn space_named(typed: &Typed<'_>, at: usize) -> Option<(Option<String>, usize)> {
    let first = after_words(typed, at, &[&["the", "my", "our", "a", "an"]]);
    if let Some(end) = house(typed, first) {
        return Some((None, end));
    }
    if is_text(typed.piece(first)) {
        return Some((Some(typed.name(first, first + 1)), first + 1));
    }
    let stops = |at: usize| {
        typed.piece(at).is_none_or(|piece| piece.sort != PieceSort::Word)
            || typed.says(at, &PARTS)
            || typed.says(at, &LEADS)
            || typed.says(
                at,
                &[
                    "and", "but", "flush", "even", "centered", "centred", "behind", "beside",
                    "only", "just",
                ],
            )
            || typed.says(at, &LEADS)
            || typed.says(at, &WALLS)
            || typed.says(at, &ENDS)
            || typed.says(at, &["of", "and", "flush", "even", "centered", "with"])
            || direction(typed, at).is_some()
            || slant(&typed.lower(at)).is_some()
    };
    let end = (first..first + 4).find(|&at| stops(at))?;
    (end > first).then(|| (Some(typed.text(first, end).to_lowercase()), end))
}

/// `of the house`, `of "House"`, `from the garage`: the space that is named, and the index after it.
fn of_a_space(typed: &Typed<'_>, at: usize) -> (Option<String>, usize) {
    let named = typed.says(at, &["of", "from", "on"]).then(|| space_named(typed, at + 1));
    named.flatten().unwrap_or((None, at))
}

/// A name in lower case, with the number of a floor in digits: `First floor` and `1st floor` are one.
fn in_digits(name: &str) -> String {
    let word = |word: &str| {
        match word {
            "first" => "1st",
            "second" => "2nd",
            "third" => "3rd",
            other => other,
        }
        .to_owned()
    };
    name.to_lowercase().split_whitespace().map(word).collect::<Vec<String>>().join(" ")
}

/// The index after words for the house: its name, `house`, `home`, `main house`.
pub(super) fn house(typed: &Typed<'_>, at: usize) -> Option<usize> {
    let name = in_digits(typed.attempt.house.as_deref().unwrap_or_default());
    let count = super::cut(&name).len();
    if count > 0 {
        // `1st` may be two pieces or one.
        let ends = (at + count.saturating_sub(1)..=at + count + 1)
            .filter(|&end| end > at && end <= typed.pieces.len());
        let said = ends.into_iter().find(|&end| in_digits(typed.text(at, end)) == name);
        if let Some(end) = said {
            // `behind the living room`, where the file calls it "Living".
            let goes_on = name == "living" && typed.says(end, &["room", "area", "space"]);
            return Some(end + usize::from(goes_on));
        }
    }
    let first = at + usize::from(typed.says(at, &["main"]));
    typed.says(first, &["house", "home", "building", "residence"]).then_some(first + 1)
}

/// A side of the house; `Some(None)` if the words say it from the street and it is not known where the street is.
pub(super) fn direction(typed: &Typed<'_>, at: usize) -> Option<Option<Direction>> {
    let word = typed.lower(at);
    let word = match word.as_str() {
        "rt" => "right",
        "lt" => "left",
        word => word.strip_suffix("ern").unwrap_or(word),
    };
    let way = by_compass(way_and_back(word)?.0, typed.attempt.beside.front);
    Some(match way {
        "north" => Some(Direction::North),
        "south" => Some(Direction::South),
        "east" => Some(Direction::East),
        "west" => Some(Direction::West),
        _ => None,
    })
}
