//! Lines of spaces whose place is told in words that a rule for single words would only half understand: a distance
//! together with a wall or a corner, a place inside the house, something that is against another space.
//!
//! A place is offered only if every word and number about it was used. Otherwise it is asked for, and everything else
//! of the line is repeated.

use super::assembled::{self, Space};
use super::measure::{Measure, length_at};
use super::placed::{ask, can_stand_apart};
use super::whereabouts::{self, Told, whereabouts};
use super::{Answer, Typed, is_text, plainly, quoted, size_in, standing};
use crate::geometry::compass::{Axis, Direction};
use crate::sketch::asked::{Placeless, Whereabouts};

/// `porch "Porch" in front, 6' from the left corner`, `garage in the house at the southeast corner, recorded 506`,
/// `shed "Shed" against the garage`, `stair "Stairs" start east 3', up 8'`.
pub(super) fn answer(typed: &Typed<'_>) -> Option<Answer> {
    let house = typed.attempt.house.clone()?;
    let (mut space, first) = begins(typed)?;
    let phrase = facts(typed, &mut space, first);
    let text = super::super::pieces::join(
        &phrase.iter().map(|at| typed.pieces[*at].clone()).collect::<Vec<_>>(),
    );
    let text = text.replace(",,", ",").trim_matches([',', ';', ' ']).to_owned();
    if text.is_empty() {
        return None;
    }
    let said = text.clone();
    let (inside, text) = inside(typed, &text);
    // After a name and a comma, every word of a place is at the beginning of a part of the line.
    let line = format!("porch \"P\", {text}");
    let words = Typed { line: &line, pieces: super::cut(&line), attempt: typed.attempt };
    if let Some(line) = two_ways(&words, &space) {
        return Some(line);
    }
    if let Some(name) = within_the_last(&words) {
        space.within = Some(format!("within {}", quoted(&name)));
        return Some(Answer::line(
            space.line(),
            "what lies under the same roof, in the walk of another space, is `within` that space",
        ));
    }
    if let Some(answer) = within_the_unnamed(&words, &space) {
        return Some(answer);
    }
    let is_format = standing::place(&words, FIRST)
        .is_some_and(|(_, end)| end == words.pieces.len())
        || standing::corner_by_name(&words, FIRST).is_some();
    let parts = Parts::of(&words);
    let says_detached =
        (FIRST..words.pieces.len()).any(|at| standing::detached(&words, at).is_some());
    let tells_of_a_walk = !inside && words.find(FIRST, &["walk"]).is_some();
    if is_format && !inside || says_detached || tells_of_a_walk || says_only_ways(&words) {
        return None;
    }
    if parts.is_apart && can_stand_apart(space.kind) {
        return (has_length(&words) && !has_size(&words)).then(|| detached(space, &said));
    }
    if !is_doubtful(&words, &parts, inside) {
        return None;
    }
    if inside && space.within.is_none() && !matches!(space.kind, "open" | "stair" | "low") {
        space.within = Some(format!("within {}", quoted(&house)));
    }
    let (place, of) = parts.place(inside || matches!(space.kind, "open" | "stair" | "low"));
    // A corner of the space that the words name is asked for, if it is the last one above.
    let mut attempt = typed.attempt.clone();
    let last = attempt.space.clone().unwrap_or_default();
    if !inside && !last.is_empty() && said.to_lowercase().contains(&last.to_lowercase()) {
        attempt.house = attempt.space.clone();
    }
    let counted = Typed { line: typed.line, pieces: super::cut(typed.line), attempt: &attempt };
    let comments = space.comments.join(", ");
    let comments = if comments.is_empty() { comments } else { format!("  # {comments}") };
    Some(Answer::Ask {
        cause: format!("`{said}` is no place that can be drawn"),
        help: ask(&counted, &space),
        asks: Box::new(Placeless {
            before: space.before_place(),
            after: format!("{}{comments}", space.after_place()),
            place,
            of,
        }),
    })
}

/// `shed in the back yard, 20' from the fence`: how far off it is says nothing about the area.
fn detached(mut space: Space, said: &str) -> Answer {
    space.place = Some("detached".to_owned());
    space.comments.push(plainly(said));
    Answer::line(space.line(), "a space that stands by itself is `detached`")
}

/// The index of the first piece of a place after `porch "P",`.
const FIRST: usize = 3;

/// The kind and the name of the space, and the index of the piece after them.
fn begins(typed: &Typed<'_>) -> Option<(Space, usize)> {
    let (kind, mut at, name) = assembled::kind(typed)?;
    let mut name = quoted(&name);
    if kind == "open" && typed.says(at, &["to"]) && typed.says(at + 1, &["below", "above"]) {
        at += 2;
    }
    if is_text(typed.piece(at)) {
        typed.text(at, at + 1).clone_into(&mut name);
        at += 1;
    }
    let is_apart = typed.find(0, &["detached", "det", "freestanding"]).is_some_and(|one| one < at);
    (!is_apart && !typed.says(1, &["walk"])).then(|| (Space::new(kind, name), at))
}

/// Reads everything but the place; the indexes of the pieces that are left.
fn facts(typed: &Typed<'_>, space: &mut Space, first: usize) -> Vec<usize> {
    let mut left = Vec::new();
    let mut at = first;
    while let Some(piece) = typed.piece(at) {
        let is_low_height = space.kind == "low" && piece.is_number();
        let next = if typed.says(at, &["note"]) && is_text(typed.piece(at + 1)) {
            space.comments.push(plainly(typed.text(at + 1, at + 2)));
            Some(at + 2)
        } else if typed.says(at, &["within"]) && is_text(typed.piece(at + 1)) {
            space.within = Some(format!("within {}", typed.text(at + 1, at + 2)));
            Some(at + 2)
        } else if is_low_height && !says_high(typed, at) {
            space.size(typed, at)
        } else {
            space.fact(typed, at)
        };
        match next {
            Some(next) => at = next.max(at + 1),
            None => {
                left.push(at);
                at += 1;
            }
        }
    }
    left
}

fn says_high(typed: &Typed<'_>, at: usize) -> bool {
    length_at(&typed.pieces, at)
        .is_some_and(|one| typed.says(one.end, &["high", "tall", "ceiling", "headroom"]))
}

/// Whether the words say that the space lies in the house, and the words without those that say so.
fn inside(typed: &Typed<'_>, text: &str) -> (bool, String) {
    let words = Typed { line: text, pieces: super::cut(text), attempt: typed.attempt };
    let is_in = |at: usize| words.says(at, &["in", "inside", "within", "into"]);
    for at in (0..words.pieces.len()).filter(|&at| is_in(at)) {
        let mut first = at + 1;
        while words.says(first, &["of", "the", "my", "our"]) {
            first += 1;
        }
        let name = typed.attempt.house.as_deref().unwrap_or_default();
        let is_name =
            is_text(words.piece(first)) && words.name(first, first + 1).eq_ignore_ascii_case(name);
        let is_walk = words.says(first, &["walk", "outline", "footprint"]);
        let end = whereabouts::house(&words, first)
            .or((is_name || is_walk).then_some(first + usize::from(is_name)));
        if let Some(mut end) = end {
            while words.says(end, &["walk", "outline", "footprint", "itself"]) {
                end += 1;
            }
            let from = at - usize::from(at > 0 && words.says(at - 1, &["built", "set"]));
            return (true, words.without(from, end));
        }
    }
    let built = (1..words.pieces.len())
        .find(|&at| words.says(at - 1, &["built"]) && words.says(at, &["in"]));
    if let Some(at) = built {
        return (true, words.without(at - 1, at + 1));
    }
    let corner = words.find(1, &["corner"]).filter(|_| words.says(0, &["in"]));
    let of_it = corner.is_some_and(|at| {
        words.says(at + 1, &["of"])
            && whereabouts::house(&words, at + 2 + usize::from(words.says(at + 2, &["the"])))
                .is_some()
    });
    (of_it, text.to_owned())
}

/// `3' east 8' north`: a place that lacks nothing but its `start`.
fn says_only_ways(words: &Typed<'_>) -> bool {
    let mut at = FIRST;
    while let Some((_, end)) = whereabouts::offset(words, at) {
        let is_mark = words.piece(end).is_some_and(|mark| mark.is_mark(","));
        at = end + usize::from(is_mark || whereabouts::joins(words, end));
    }
    at == words.pieces.len()
}

/// `start east 3', up 8'`, `start 12' right, 3' back`: both ways of a place.
fn two_ways(words: &Typed<'_>, space: &Space) -> Option<Answer> {
    if !words.says(FIRST, &["start", "starts"])
        || standing::place(words, FIRST).is_some_and(|(_, end)| end == words.pieces.len())
    {
        return None;
    }
    let mut at = FIRST + 1;
    let mut ways: Vec<(Direction, Measure)> = Vec::new();
    while at < words.pieces.len() {
        if words.says(at, &["and", "then"]) || words.pieces[at].is_mark(",&+") {
            at += 1;
            continue;
        }
        let up = |at: usize| match words.lower(at).as_str() {
            "up" => Some(Direction::North),
            "down" => Some(Direction::South),
            _ => None,
        };
        let (way, by, end) = match whereabouts::offset(words, at) {
            Some(((way, by), end)) => (way, by, end),
            None => {
                let by = length_at(&words.pieces, at + 1).filter(|by| by.has_unit)?;
                let end = by.end;
                (up(at)?, by, end)
            }
        };
        ways.push((way, by));
        at = end;
    }
    let [(one, _), (two, _)] = &ways[..] else { return None };
    if one.axis() == two.axis() {
        return None;
    }
    let place: Vec<String> =
        ways.iter().map(|(way, by)| format!("{} {}", way.word(), by.text)).collect();
    let placeless = Placeless {
        before: space.before_place(),
        after: space.after_place(),
        place: Whereabouts::Unknown,
        of: None,
    };
    let mut line = placeless.at(&format!("start {}", place.join(" ")));
    if !space.comments.is_empty() {
        line.push_str(&format!("  # {}", space.comments.join(", ")));
    }
    Some(Answer::line(
        line,
        "a place is `start` with each direction before its length, counted from where the level's first walk starts",
    ))
}

/// `within the garage`: the name of the last space above, if these words name it.
fn within_the_last(words: &Typed<'_>) -> Option<String> {
    let last = words.attempt.space.clone()?;
    let is_in = words.says(FIRST, &["within", "inside", "in"]);
    let first = FIRST + 1 + usize::from(words.says(FIRST + 1, &["the"]));
    (is_in && words.rest(first).eq_ignore_ascii_case(&last)).then_some(last)
}

/// `within the kitchen`: a space that has no name here.
fn within_the_unnamed(words: &Typed<'_>, space: &Space) -> Option<Answer> {
    let is_in = words.says(FIRST, &["within"]) && words.says(FIRST + 1, &["the"]);
    let is_house =
        whereabouts::house(words, FIRST + 2).is_some() || is_text(words.piece(FIRST + 2));
    (is_in && !is_house && space.within.is_none()).then(|| {
        let after = space.after_place();
        let mut then = if after.is_empty() { after } else { format!(", then `{after}`") };
        if !space.comments.is_empty() {
            then.push_str(&format!(", then `# {}`", space.comments.join(", ")));
        }
        Answer::say(
            "`within` is followed by the name of a space above on the same level, with a `\"` on each side",
            format!(
                "write `{}`, then `within` and that name, then where it starts: `start` with a way and a length from where the level's first walk begins{then}",
                space.before_place()
            ),
        )
    })
}

/// The parts of the words about a place.
#[derive(Default)]
struct Parts {
    /// Places that are told, each with the space that it counts from.
    told: Vec<(Whereabouts, Option<String>)>,
    /// How far from which side of the house.
    insets: Vec<(Option<Direction>, Measure)>,
    is_apart: bool,
    /// Whether words are left over.
    is_loose: bool,
}

impl Parts {
    fn of(words: &Typed<'_>) -> Parts {
        let mut parts = Parts::default();
        let mut at = FIRST;
        while at < words.pieces.len() {
            if words.pieces[at].is_mark(",;()") || words.says(at, &["and"]) {
                at += 1;
            } else if let Some((side, by, end)) = from_a_side(words, at) {
                parts.insets.push((side, by));
                at = end;
            } else if let Some((place, end)) = from_a_compass_corner(words, at) {
                parts.told.push((place, None));
                at = end;
            } else if let Some((number, end)) = corner(words, at) {
                parts.told.push((Whereabouts::FromCorner(number, Vec::new()), None));
                at = end;
            } else if let Some(found) = whereabouts(words, at) {
                match found.told {
                    Told::Place(place) => parts.told.push((place, found.of)),
                    Told::Apart => parts.is_apart = true,
                }
                at = found.end;
            } else {
                parts.is_loose = true;
                at += 1;
            }
        }
        parts
    }

    /// The place that all parts together say, and the space that it counts from.
    fn place(&self, lies_inside: bool) -> (Whereabouts, Option<String>) {
        let unknown = (Whereabouts::Unknown, None);
        if self.is_loose || self.is_apart {
            return unknown;
        }
        let same = self.told.windows(2).all(|two| two[0] == two[1]);
        match (&self.told[..], &self.insets[..]) {
            ([one], []) => one.clone(),
            ([(Whereabouts::Side(side), None), ..], [(Some(from), by)])
                if same && side.axis() != from.axis() =>
            {
                (Whereabouts::Along(*side, *from, by.length), None)
            }
            ([], [(Some(side), by)]) => (Whereabouts::FromWall(*side, by.length), None),
            ([], [(Some(one), by), (Some(two), far)])
                if lies_inside && one.axis() != two.axis() =>
            {
                (Whereabouts::FromWalls([(*one, by.length), (*two, far.length)]), None)
            }
            _ => unknown,
        }
    }
}

/// `at corner 3`, with nothing after it that counts from there.
fn corner(words: &Typed<'_>, at: usize) -> Option<(usize, usize)> {
    let first = at + usize::from(words.says(at, &["at", "from", "on"]));
    let number = words.piece(first + 1).filter(|number| {
        words.says(first, &["corner"]) && number.is_number() && number.text.len() <= 2
    })?;
    let end = first + 2;
    let is_last = end == words.pieces.len();
    Some((number.text.parse().ok().filter(|_| is_last && first > at)?, end))
}

/// `6' from the left corner`, `starting 3' from the left`, `8' from south wall`, `14' to the right of the left wall`.
fn from_a_side(words: &Typed<'_>, at: usize) -> Option<(Option<Direction>, Measure, usize)> {
    let first = at
        + (at..words.pieces.len())
            .take_while(|&at| words.says(at, &["starting", "starts", "start", "begins"]))
            .count();
    let by = length_at(&words.pieces, first).filter(|by| by.has_unit)?;
    let mut end = by.end + usize::from(words.says(by.end, &["in", "over", "away"]));
    if !words.says(end, &["from", "off"]) {
        return None;
    }
    end += 1 + usize::from(words.says(end + 1, &["the"]));
    let side = whereabouts::direction(words, end)?;
    end += 1;
    // `from the left rear corner`, `from the NW corner` are corners.
    if whereabouts::direction(words, end).is_some() {
        return None;
    }
    end += usize::from(words.says(end, &["hand", "wall", "side", "end", "corner", "edge"]));
    end += usize::from(words.says(end, &["wall", "side", "end", "corner"]));
    let of = whereabouts::of_the_house(words, end);
    // Of another space: not the house.
    if of.0.is_some() {
        return None;
    }
    Some((side, by, of.1))
}

/// `4' east and 3' north of the house's NW corner`.
fn from_a_compass_corner(words: &Typed<'_>, at: usize) -> Option<(Whereabouts, usize)> {
    let mut offsets = Vec::new();
    let mut end = at;
    while let Some(((way, by), next)) = whereabouts::offset(words, end) {
        offsets.push((way, by.length));
        end = next + usize::from(whereabouts::joins(words, next));
    }
    let across = match &offsets[..] {
        [_] => true,
        [one, two] => one.0.axis() != two.0.axis(),
        _ => false,
    };
    if !across || !words.says(end, &["of", "from"]) {
        return None;
    }
    end += 1 + usize::from(words.says(end + 1, &["the"]));
    if let Some(after) = whereabouts::house(words, end) {
        end = after;
        while words.piece(end).is_some_and(|mark| mark.is_mark("'’")) || words.says(end, &["s"]) {
            end += 1;
        }
    } else if words.says(end, &["house's", "house’s"]) {
        end += 1;
    }
    let ((north, east), end) = whereabouts::compass_corner(words, end)?;
    let end = end + usize::from(words.says(end, &["corner"]));
    let (of, end) = whereabouts::of_the_house(words, end);
    let place = match (north, east) {
        (Some(north), Some(east)) if of.is_none() => {
            debug_assert!(north.axis() == Axis::North);
            Whereabouts::FromCompassCorner(north, east, offsets)
        }
        _ => Whereabouts::Unknown,
    };
    Some((place, end))
}

/// Whether rules for single words would make too much of these words.
fn is_doubtful(words: &Typed<'_>, parts: &Parts, inside: bool) -> bool {
    let is_place = |at: usize| {
        words.says(
            at,
            &[
                "left", "right", "front", "rear", "back", "behind", "north", "south", "east",
                "west", "corner", "wall", "from", "of", "to", "house", "beside",
            ],
        )
    };
    let says_place = (FIRST..words.pieces.len()).any(is_place);
    let one_place = parts.told.len() == 1 && parts.insets.is_empty() && !parts.is_apart;
    if is_at_a_distance(words, parts) && !has_size(words) && says_place {
        let is_corner = matches!(parts.told[..], [(Whereabouts::FromCompassCorner(..), _)]);
        return parts.is_loose || !one_place || is_corner;
    }
    inside && words.pieces.len() > FIRST && (parts.is_loose || !parts.told.is_empty())
        || is_against(words, parts)
        || is_at_a_side_of_a_corner(words, parts)
}

/// Whether a length says how far something is from something else; `east 40'` does not.
fn is_at_a_distance(words: &Typed<'_>, parts: &Parts) -> bool {
    let counts = |end: usize| {
        (end..end + 3).any(|at| {
            words.says(at, &["from", "off", "of"])
                || words.says(at, &["to"]) && words.says(at + 1, &["the"])
                || words.says(at, &["in"]) && words.says(at + 1, &["front"])
        })
    };
    let lengths = super::measure::lengths(&words.pieces, FIRST);
    !parts.insets.is_empty() || lengths.iter().any(|(_, one)| one.has_unit && counts(one.end))
}

/// Whether the words have a length that is none of the space itself, as `12' wide` is.
fn has_length(words: &Typed<'_>) -> bool {
    let shape = ["wide", "deep", "high", "long", "tall", "x", "by", "w", "d", "across"];
    let lengths = super::measure::lengths(&words.pieces, FIRST);
    lengths.iter().any(|(_, one)| one.has_unit && !words.says(one.end, &shape))
}

fn has_size(words: &Typed<'_>) -> bool {
    size_in(words.rest(FIRST)).is_some()
}

/// `from the left corner`, `flush with the NW corner`: no corner that can be found from these words alone.
fn is_at_a_side_of_a_corner(words: &Typed<'_>, parts: &Parts) -> bool {
    parts.is_loose
        && words.find(FIRST, &["corner"]).is_some_and(|at| {
            at > FIRST
                && !words.piece(at + 1).is_some_and(super::super::pieces::Piece::is_number)
                && (whereabouts::direction(words, at - 1).is_some()
                    || whereabouts::compass_corner(words, at - 1).is_some())
        })
}

/// `against the garage`, `attached to Garage`, `at the garage`, `from the house to the garage`: another space, and
/// none of its corners.
fn is_against(words: &Typed<'_>, parts: &Parts) -> bool {
    let after_the = |at: usize| at + usize::from(words.says(at, &["the"]));
    let names = |at: usize| {
        let last = words.attempt.space.as_deref().unwrap_or_default();
        super::kind_word(&words.lower(at)).is_some()
            || !last.is_empty() && words.lower(at).eq_ignore_ascii_case(last)
    };
    let has_corner = words.find(FIRST, &["corner"]).is_some();
    let other = words.says(FIRST, &["against", "at"]) && names(after_the(FIRST + 1))
        || parts.told.iter().all(|(place, _)| *place == Whereabouts::Unknown)
            && words.says(FIRST, &["attached"])
            && words.says(FIRST + 1, &["to"])
            && words.piece(after_the(FIRST + 2)).is_some();
    let wall =
        words.says(FIRST, &["against"]) && words.find(FIRST, &["wall", "house", "side"]).is_some();
    let between = words.says(FIRST, &["from"])
        && whereabouts::house(words, after_the(FIRST + 1))
            .is_some_and(|end| words.says(end, &["to"]));
    let wall_of_another = words.says(FIRST, &["against"])
        && words
            .find(FIRST, &["of"])
            .is_some_and(|of| whereabouts::house(words, after_the(of + 1)).is_none());
    !has_corner && (other || between || wall || wall_of_another)
}
