//! What words about the place of a space mean: a side or a corner of the house, a distance from a corner or a wall,
//! something that has not been measured, or that it stands by itself. Every rule that meets such words asks here.

use super::super::compass::{by_compass, slant, way_and_back};
use super::super::pieces::Sort;
use super::measure::{Measure, length_at};
use super::{Typed, digits, is_text, kind_word};
use crate::geometry::compass::{Axis, Direction};
use crate::sketch::asked::Whereabouts;

/// What the words say.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Told {
    /// Somewhere that a space of this house may start.
    Place(Whereabouts),
    /// Away from the house.
    Apart,
}

/// Words about a place, and what is after them.
pub(super) struct Found {
    pub(super) told: Told,
    /// The space that they name.
    pub(super) of: Option<String>,
    /// The index of the piece after them.
    pub(super) end: usize,
}

/// Words that may stand before a place.
const LEADS: [&str; 35] = [
    "on",
    "at",
    "in",
    "to",
    "off",
    "along",
    "against",
    "from",
    "by",
    "near",
    "next",
    "attached",
    "start",
    "starts",
    "starting",
    "begins",
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
];
/// Words that begin another part of the line of a space.
const PARTS: [&str; 24] = [
    "recorded", "record", "rec", "rec'd", "county", "card", "assessor", "not", "counted", "within",
    "inside", "measured", "taped", "veneer", "brick", "under", "start", "starts", "from",
    "detached", "size", "about", "has", "no",
];
const ENDS: [&str; 7] = ["side", "end", "wall", "face", "hand", "edge", "elevation"];

/// The words about a place that begin at this piece; `None` if there are none.
pub(super) fn whereabouts(typed: &Typed<'_>, at: usize) -> Option<Found> {
    if typed.piece(at)?.is_mark("([") {
        let found = words(typed, at + 1)?;
        let closes = typed.piece(found.end).is_some_and(|mark| mark.is_mark(")]"));
        return closes.then(|| Found { end: found.end + 1, ..found });
    }
    words(typed, at)
}

fn words(typed: &Typed<'_>, at: usize) -> Option<Found> {
    let mut first = at;
    while typed.says(first, &LEADS) || first > at && typed.piece(first)?.is_mark("@") {
        first += 1;
    }
    let leads = first > at;
    apart(typed, at)
        .or_else(|| from_a_corner(typed, at, first))
        .or_else(|| by_a_distance(typed, first))
        .or_else(|| at_a_corner(typed, first, leads))
        .or_else(|| on_a_side(typed, at, first))
        .or_else(|| somewhere(typed, at))
}

/// `in the yard`, `out back`, `by itself`, `across the driveway`: away from the house.
fn apart(typed: &Typed<'_>, at: usize) -> Option<Found> {
    let found = |end: usize| Some(Found { told: Told::Apart, of: None, end });
    let says =
        |words: &[&str]| words.iter().enumerate().all(|(i, word)| typed.says(at + i, &[word]));
    for words in [
        &["out", "back"][..],
        &["out", "in", "back"],
        &["out", "front"],
        &["by", "itself"],
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
    let land = [
        "yard", "backyard", "field", "garden", "lot", "alley", "driveway", "drive", "pasture",
        "fence", "property", "woods", "pool", "orchard", "road",
    ];
    let joints = ["in", "on", "at", "across", "by", "near", "behind", "out", "to", "along", "down"];
    if !typed.says(at, &joints) {
        return None;
    }
    let more =
        ["the", "of", "a", "back", "rear", "side", "front", "far", "end", "line", "in", "by"];
    let last = (at + 1..typed.pieces.len().min(at + 7))
        .find(|&at| !typed.says(at, &more))
        .filter(|&last| typed.says(last, &land))?;
    found(last + 1 + usize::from(typed.says(last + 1, &["line", "fence"])))
}

/// `3' east of corner 3`, `5' from corner 2`, `start east 5' from corner 2`, `from "House" corner 1 + 3' east`.
fn from_a_corner(typed: &Typed<'_>, at: usize, first: usize) -> Option<Found> {
    let mut offsets: Vec<(Direction, Measure)> = Vec::new();
    let mut alone: Option<Measure> = None;
    let mut next = first;
    while let Some((offset, end)) = offset(typed, next) {
        offsets.push(offset);
        next = end + usize::from(joins(typed, end));
    }
    if offsets.is_empty() {
        alone = length_at(&typed.pieces, first).filter(|one| one.has_unit);
        next = alone.as_ref().map_or(first, |one| one.end);
    }
    let told = |number: usize, offsets: &[(Direction, Measure)]| {
        let offsets = offsets.iter().map(|(way, by)| (*way, by.length)).collect();
        Told::Place(Whereabouts::FromCorner(number, offsets))
    };
    if next > first {
        next += usize::from(typed.says(next, &["away", "over", "out"]));
        if !typed.says(next, &["from", "of", "off", "past", "beyond"]) {
            return None;
        }
        let (number, of, end) = numbered(typed, next + 1)?;
        let told = match alone {
            Some(by) => Told::Place(Whereabouts::NearCorner(number, by.length)),
            None => told(number, &offsets),
        };
        return Some(Found { told, of, end });
    }
    // The corner first, then how far from it.
    let (number, of, end) = numbered(typed, first).filter(|_| first > at)?;
    let mut next = end + usize::from(joins(typed, end));
    while let Some((offset, end)) = offset(typed, next) {
        offsets.push(offset);
        next = end + usize::from(joins(typed, end));
    }
    let end = next;
    (!offsets.is_empty()).then(|| Found { told: told(number, &offsets), of, end })
}

pub(super) fn joins(typed: &Typed<'_>, at: usize) -> bool {
    typed.says(at, &["and", "then", "plus"])
        || typed.piece(at).is_some_and(|mark| mark.is_mark("+,&"))
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

/// `corner 3`, `corner 3 of the house`, `"House" corner 3`, `the house's corner 3`.
fn numbered(typed: &Typed<'_>, at: usize) -> Option<(usize, Option<String>, usize)> {
    let mut first = at + usize::from(typed.says(at, &["the"]));
    let mut of = None;
    if is_text(typed.piece(first)) {
        of = Some(typed.name(first, first + 1));
        first += 1;
    } else if house(typed, first).is_some_and(|end| typed.says(end, &["corner"])) {
        first = house(typed, first)?;
    }
    let number = typed
        .piece(first + 1)
        .filter(|number| typed.says(first, &["corner"]) && digits::is_small(number))?;
    let number: usize = number.text.parse().ok()?;
    let mut end = first + 2;
    if of.is_none() && typed.says(end, &["of", "on"]) {
        let name = end + 1 + usize::from(typed.says(end + 1, &["the"]));
        if is_text(typed.piece(name)) {
            of = Some(typed.name(name, name + 1));
            end = name + 1;
        } else {
            end = house(typed, name).unwrap_or(name + 1);
        }
    }
    Some((number, of, end))
}

/// `3' from the west wall`, `3' from the southeast corner`, `30 m behind the house`, `20' away from the house`.
fn by_a_distance(typed: &Typed<'_>, first: usize) -> Option<Found> {
    let by = length_at(&typed.pieces, first).filter(|one| one.has_unit)?;
    let mut at = by.end;
    at += usize::from(typed.says(at, &["away", "over", "in", "out"]));
    let is_from = typed.says(at, &["from", "off", "of"]);
    let next = at + usize::from(is_from);
    let next = next + usize::from(typed.says(next, &["the"]));
    if is_from && let Some(((north, east), end)) = compass_corner(typed, next) {
        let told = match (north, east) {
            (Some(north), Some(east)) => Whereabouts::NearCompassCorner(north, east, by.length),
            _ => Whereabouts::Unknown,
        };
        let end = typed.says(end, &["corner"]).then_some(end + 1)?;
        let (of, end) = of_the_house(typed, end);
        return Some(Found { told: Told::Place(told), of, end });
    }
    if is_from && direction(typed, next).is_some() && typed.says(next + 1, &ENDS) {
        let (of, end) = of_the_house(typed, next + 2);
        let told = match direction(typed, next).flatten() {
            Some(side) => Whereabouts::FromWall(side, by.length),
            None => Whereabouts::Unknown,
        };
        return Some(Found { told: Told::Place(told), of, end });
    }
    // At a distance from the house it touches nothing.
    let away = on_a_side(typed, at, at)
        .map(|found| found.end)
        .or_else(|| house(typed, next).filter(|_| is_from))?;
    Some(Found { told: Told::Apart, of: None, end: away })
}

/// `at the southeast corner of the house`, `SE corner`, `rear left corner`.
fn at_a_corner(typed: &Typed<'_>, first: usize, leads: bool) -> Option<Found> {
    let (ways, end) = compass_corner(typed, first)?;
    let says_corner = typed.says(end, &["corner"]);
    let is_short = typed.lower(first).len() == 2;
    let end = end + usize::from(says_corner);
    let (of, after) = of_the_house(typed, end);
    if !says_corner && !(is_short && (leads || after > end)) {
        return None;
    }
    let end = after;
    let told = match ways {
        (Some(north), Some(east)) => Whereabouts::Corner(north, east),
        _ => Whereabouts::Unknown,
    };
    Some(Found { told: Told::Place(told), of, end })
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
    let (one, two) = (direction(typed, at)?, direction(typed, at + 1 + joint)?);
    let end = at + 2 + joint;
    let (Some(one), Some(two)) = (one, two) else { return Some(((None, None), end)) };
    if one.axis() == two.axis() {
        return None;
    }
    let (north, east) = if one.axis() == Axis::North { (one, two) } else { (two, one) };
    Some(((Some(north), Some(east)), end))
}

/// `on the east side`, `right of house`, `behind the house`, `at rear`, `north end`.
fn on_a_side(typed: &Typed<'_>, at: usize, first: usize) -> Option<Found> {
    let front = typed.attempt.beside.front;
    let back = front.map(Direction::opposite);
    let side = |way: Option<Direction>, end: usize| {
        let (of, end) = of_the_house(typed, end);
        let told = way.map_or(Whereabouts::Unknown, Whereabouts::Side);
        Some(Found { told: Told::Place(told), of, end })
    };
    let behind = (at..=first).find(|&at| typed.says(at, &["behind"]));
    if let Some(behind) = behind {
        let (_, end) = of_the_house(typed, behind + 1);
        let end = match house_or_the(typed, behind + 1) {
            Some(after) => after,
            None if end > behind + 1 => end,
            None if ends(typed, behind + 1) => behind + 1,
            // Behind something else.
            None => return None,
        };
        return Some(Found {
            told: Told::Place(back.map_or(Whereabouts::Unknown, Whereabouts::Side)),
            of: None,
            end,
        });
    }
    let way = direction(typed, first)?;
    let mut end = first + 1;
    let has_end = typed.says(end, &ENDS);
    while typed.says(end, &ENDS) {
        end += 1;
    }
    let (_, after) = of_the_house(typed, end);
    let says_of = after > end;
    // `on the right`, `to the east`, `off back`: nothing else follows.
    let is_apart = at == 1 && !is_before_a_length(typed, end)
        || at > 0 && typed.pieces[at - 1].is_mark(",;-–(");
    let leads = is_apart && first == at
        || first > at && !typed.says(first - 1, &["start", "starts", "from"]);
    if !(has_end || says_of || leads && ends(typed, end)) {
        return None;
    }
    side(way, end)
}

/// Whether a length follows that is not the first of a size: `back 30'`.
fn is_before_a_length(typed: &Typed<'_>, at: usize) -> bool {
    length_at(&typed.pieces, at).is_some_and(|one| {
        one.has_unit
            && !typed.says(one.end, &["x", "by", "wide", "deep"])
            && !typed.piece(one.end).is_some_and(|mark| mark.is_mark("×*"))
    })
}

/// The index after `house` or `the house`.
fn house_or_the(typed: &Typed<'_>, at: usize) -> Option<usize> {
    let first = at + usize::from(typed.says(at, &["the", "my", "our"]));
    house(typed, first)
}

/// `near the front door`, `in the corner beside the garage`, `next to the kitchen`: nothing that was measured.
fn somewhere(typed: &Typed<'_>, at: usize) -> Option<Found> {
    let begins = [
        "near",
        "beside",
        "between",
        "around",
        "opposite",
        "facing",
        "adjacent",
        "adjoining",
        "alongside",
        "behind",
        "off",
        "against",
    ];
    let two = typed.says(at, &["next", "close"]) && typed.says(at + 1, &["to"])
        || typed.says(at, &["in", "at"])
            && typed.says(at + 1, &["the", "a", "inside", "inner"])
            && (at + 1..at + 4).any(|at| typed.says(at, &["corner", "entry", "door", "entrance"]));
    if !two && !typed.says(at, &begins) {
        return None;
    }
    let stops = |at: usize| {
        let piece = &typed.pieces[at];
        piece.is_number()
            || piece.sort == Sort::Mark && !piece.is_mark("'’&/")
            || typed.says(at, &PARTS)
    };
    let end = (at + 1..typed.pieces.len()).find(|&at| stops(at)).unwrap_or(typed.pieces.len());
    (end > at + 1).then_some(Found { told: Told::Place(Whereabouts::Unknown), of: None, end })
}

/// Whether nothing more of the same part of the line follows.
fn ends(typed: &Typed<'_>, at: usize) -> bool {
    typed.piece(at).is_none_or(|next| {
        next.is_number() || next.is_mark(",;.()[]:–-#") || typed.says(at, &PARTS)
    })
}

/// `of the house`, `of house`, `of "House"`: the space that is named, and the index after it.
pub(super) fn of_the_house(typed: &Typed<'_>, at: usize) -> (Option<String>, usize) {
    if !typed.says(at, &["of", "from", "on"]) {
        return (None, at);
    }
    let name = at + 1 + usize::from(typed.says(at + 1, &["the", "my", "our"]));
    if is_text(typed.piece(name)) {
        return (Some(typed.name(name, name + 1)), name + 1);
    }
    if let Some(end) = house(typed, name) {
        return (None, end);
    }
    match kind_word(&typed.lower(name)) {
        Some(kind) => (Some(kind.to_owned()), name + 1),
        None => (None, at),
    }
}

/// The index after words for the house: its name, `house`, `home`, `main house`.
pub(super) fn house(typed: &Typed<'_>, at: usize) -> Option<usize> {
    let name = typed.attempt.house.as_deref().unwrap_or_default();
    let count = super::cut(name).len();
    if count > 0
        && at + count <= typed.pieces.len()
        && typed.text(at, at + count).eq_ignore_ascii_case(name)
    {
        return Some(at + count);
    }
    let first = at + usize::from(typed.says(at, &["main"]));
    typed.says(first, &["house", "home", "building", "residence"]).then_some(first + 1)
}

/// A side of the house; `Some(None)` if the words say it from the street and it is not known where the street is.
pub(super) fn direction(typed: &Typed<'_>, at: usize) -> Option<Option<Direction>> {
    let word = typed.lower(at);
    let word = word.strip_suffix("ern").unwrap_or(&word);
    let way = by_compass(way_and_back(word)?.0, typed.attempt.beside.front);
    Some(match way {
        "north" => Some(Direction::North),
        "south" => Some(Direction::South),
        "east" => Some(Direction::East),
        "west" => Some(Direction::West),
        _ => None,
    })
}
