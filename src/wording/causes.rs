//! Words for causes: what each one is, and how to find out whether it applies.
#![expect(clippy::float_arithmetic, reason = "what a cause gives and adds are floats")]

use crate::areas::is_in_total;
use crate::diagnostic::words;
use crate::geometry::compass::Direction;
use crate::geometry::outline::Outline;
use crate::house::Face;
use crate::house::wall_moves::CommonTaken;
use crate::house::{House, Kind, Run, SideNumber, Space};
use crate::reconcile::cause::{Cause, MisreadWall, Slip};
use crate::reconcile::departures::{DepartureKind, Group, LevelTaken, Listed, under_roof};
use crate::reconcile::ours::Question;
use crate::reconcile::parts::{Part, Shape, parts};
use crate::reconcile::settings::RoundingTaken;
use crate::reconcile::totals::{TotalWritten, nearest_meant};
use crate::reconcile::{Evidence, Figure};
use crate::units::area::WrittenArea;
use crate::units::decimal::thousands;
use crate::units::length::{Length, WrittenLength};
use crate::wording::size::{size_of_sq_ft, typed_number_alone};

/// A cause of a figure, as a phrase that follows "possible:".
pub(crate) fn said(cause: Cause, listed: Listed<'_>, figure: &Figure) -> String {
    let departures = departures(cause, listed);
    let own = match cause {
        Cause::None => "rounding alone".to_owned(),
        Cause::Departures(..) => String::new(),
        Cause::Face(face) => format!("measured {}", at(face)),
        Cause::Common(CommonTaken::LeftOut) => "common walls left out".to_owned(),
        Cause::Common(_) => "common walls counted whole, not to their centerline".to_owned(),
        Cause::Rounding(rounding) => rounded(rounding).to_owned(),
        Cause::Misread(wall) => misread(wall, listed.house, figure.face()),
        Cause::Total { how, with } => match meant(cause, figure).filter(|_| with.is_none()) {
            Some(meant) => {
                let is_metric = figure.is_metric();
                let number = |area| typed_number_alone(area, is_metric);
                format!("{}, {} as {}", written(how), number(meant), number(figure.typed()))
            }
            None if how == TotalWritten::TenTimes && figure.is_metric() => {
                "the decimal point of the total misplaced".to_owned()
            }
            None => written(how).to_owned(),
        },
    };
    match (departures.is_empty(), own.is_empty()) {
        (true, _) => own,
        (false, true) => departures,
        (false, false) => format!("{own}, and {departures}"),
    }
}

/// The departures of a cause as a phrase. What becomes of two spaces alike is said once: `front eaves and rear eaves not
/// deducted`.
fn departures(cause: Cause, listed: Listed<'_>) -> String {
    let mut told: Vec<(Vec<String>, &'static str)> = Vec::new();
    for kind in cause.each(listed.house) {
        let (what, how) = departure(kind, listed);
        let under = if kind == DepartureKind::UnderRoof { few_under_roof(listed) } else { None };
        let what = under.unwrap_or_else(|| vec![what]);
        match told.iter_mut().find(|(_, other)| *other == how) {
            Some((all, _)) => all.extend(what),
            None => told.push((what, how)),
        }
    }
    let phrases = told.iter().map(|(all, how)| format!("{} {how}", words::all_of(all)));
    phrases.collect::<Vec<String>>().join(", and ")
}

/// The total that was meant where digits were typed differently: the one nearest to the house as it is rounded here.
pub(crate) fn meant(cause: Cause, figure: &Figure) -> Option<WrittenArea> {
    let Cause::Total { how, with: None } = cause else { return None };
    let one = figure.explanations().list().iter().find(|one| one.cause == cause)?;
    nearest_meant(how, figure.typed(), one.sq_ft() - one.effect.sq_ft())
}

/// A misread wall in words: `side 4 of the house taken as 49', ten feet more, here 39' 5"`; with the wall that then
/// has another length too, `sides 2 and 4 of the house taken as 61' and 37', here 55' 8" and 31' 5"`. Of walls
/// that were taped at another face than the record's, the length there comes first: `here 20', 19' 4" inside`.
fn misread(wall: MisreadWall, house: &House, face: Face) -> String {
    let space = &house.spaces[wall.space];
    let of = match wall.also {
        Some(_) => String::new(),
        None => format!(" of {}", words::the_quoted(&space.name)),
    };
    let on = wall.also.map_or_else(String::new, |also| on_two_levels(wall.space, also, house));
    let form = house.usual_form();
    let typed = |side: usize| {
        let side = &space.sides[side];
        side.length_typed().unwrap_or_else(|| side.typed().to_owned())
    };
    let taken = |length: Length| match form.is_metric() {
        true => WrittenLength::new(length, form).spoken(),
        false if is_whole_feet(length) => length.to_string(),
        false => format!("about {length}"),
    };
    let is_elsewhere = space.face != face && !form.is_metric();
    let change = wall.length - wall.from;
    // The wall that takes up the difference gets longer or shorter by it; before that it was about as long as typed.
    let before = |side: usize, length: Length| {
        let here = space.closed.outline.vectors()[side].chord_length();
        let (more, less) = (length - change, length + change);
        if (more - here).abs() < (less - here).abs() { more } else { less }
    };
    let from = |side: usize| match wall.other {
        Some((other, length)) if other == side => before(side, length),
        _ => wall.from,
    };
    let taped = |sides: &[usize]| {
        let lengths: Vec<String> = sides.iter().map(|&side| typed(side)).collect();
        let lengths = words::all_of(&lengths);
        match is_elsewhere {
            false => lengths,
            true => {
                let there: Vec<String> = sides.iter().map(|&side| taken(from(side))).collect();
                let there = words::all_of(&there);
                format!("{there}, taped {} as {lengths}", words_of(space.face))
            }
        }
    };
    let how = slip(wall, form.is_metric());
    if let Some((one, other)) = across(space, wall.side) {
        let (length, here) = (taken(wall.length), taped(&[wall.side]));
        return format!("sides {one} and {other}{of} taken as {length}{on}{how}, here {here}");
    }
    let walls = wall.walls();
    let numbers: Vec<usize> =
        walls.iter().map(|&(side, _)| space.sides[side].number.get()).collect();
    let lengths: Vec<String> = walls.iter().map(|&(_, length)| taken(length)).collect();
    let ten_each = match wall.other {
        Some((side, length)) if !form.is_metric() => {
            let its = length - before(side, length);
            (its == change && change.abs() == Length::from_nm(10 * Length::FOOT.nm())).then(|| {
                if change > Length::ZERO { ", both ten feet more" } else { ", both ten feet less" }
            })
        }
        _ => None,
    };
    let lengths = match (lengths.as_slice(), wall.slip()) {
        ([one], _) => format!("{one}{how}"),
        ([one, other], _) if one == other => format!("{one} each"),
        // The digits are those of one of them.
        (all, Some(Slip::Swapped(_))) if !how.is_empty() => {
            let of_each = walls.iter().zip(all);
            let of_each = of_each.map(|((side, _), length)| match *side == wall.side {
                true => format!("{length} ({})", how.trim_start_matches(", ")),
                false => length.clone(),
            });
            words::all_of(&of_each.collect::<Vec<String>>())
        }
        (all, _) => format!("{}{}", words::all_of(all), ten_each.unwrap_or_default()),
    };
    let here: Vec<usize> = walls.iter().map(|&(side, _)| side).collect();
    let (sides, here) = (words::sides(&numbers), taped(&here));
    format!("{sides}{of} taken as {lengths}{on}, here {here}")
}

/// The levels of two spaces: ` on both levels`, or by their names where there are more.
fn on_two_levels(one: usize, other: usize, house: &House) -> String {
    let level = |space: usize| house.spaces[space].level;
    let is_counted = |at: usize| {
        let mut spaces = (0..house.spaces.len()).filter(|&i| level(i) == at);
        spaces.any(|i| is_in_total(house, i, false))
    };
    match (0..house.levels.len()).filter(|&at| is_counted(at)).count() {
        2 => " on both levels".to_owned(),
        _ => {
            let [one, other] =
                [one, other].map(|space| words::the_quoted(&house.levels[level(space)].name));
            format!(" on {one} and {other}")
        }
    }
}

/// Where a wall was taped, in a word: `inside`.
fn words_of(face: Face) -> &'static str {
    match face {
        Face::Outside => "outside",
        Face::Frame => "at the frame",
        Face::Inside => "inside",
    }
}

fn is_whole_feet(length: Length) -> bool {
    length.nm() % Length::FOOT.nm() == 0
}

/// What could make somebody read the one length as the other: `, the digits of 53 swapped`; empty if that is not plain.
fn slip(wall: MisreadWall, is_metric: bool) -> String {
    match wall.slip().filter(|_| !is_metric) {
        Some(Slip::Swapped(feet)) => format!(", the digits of {feet} swapped"),
        Some(Slip::TenMore) => ", ten feet more".to_owned(),
        Some(Slip::TenLess) => ", ten feet less".to_owned(),
        None => String::new(),
    }
}

/// The numbers of a wall of a rectangle and of the one across from it; `None` if they are not equally long.
pub(crate) fn across(space: &Space, side: usize) -> Option<(SideNumber, SideNumber)> {
    let vectors = space.closed.outline.vectors();
    let is_square = vectors.len() == 4
        && vectors.iter().all(|one| one.rise == 0 && (one.east == 0 || one.north == 0));
    let other = (side + 2) % 4;
    (is_square && space.sides.len() == 4).then(|| {
        let (first, last) = (side.min(other), side.max(other));
        (space.sides[first].number, space.sides[last].number)
    })
}

/// The way of rounding under which a cause is best supported, as a phrase.
pub(crate) fn rounded(rounding: RoundingTaken) -> &'static str {
    match rounding {
        RoundingTaken::AlwaysUp => "every wall rounded up to the foot",
        RoundingTaken::AlwaysDown => "every wall rounded down to the foot",
        RoundingTaken::OtherHalves => "walls at the half foot rounded the other way",
        RoundingTaken::HalfFoot => "each wall rounded to the half foot",
        RoundingTaken::NotRounded => "walls not rounded to the foot",
        RoundingTaken::WholeFoot => "each wall rounded to the foot",
    }
}

fn at(face: Face) -> &'static str {
    match face {
        Face::Outside => "to the outside face",
        Face::Frame => "to the frame",
        Face::Inside => "inside",
    }
}

fn written(how: TotalWritten) -> &'static str {
    match how {
        TotalWritten::Swapped => "two digits of the total swapped",
        TotalWritten::OneDigit => "one digit of the total typed differently",
        TotalWritten::TenTimes => "a zero too many in the total",
        TotalWritten::Tenth => "a digit missing at the end of the total",
        TotalWritten::RoundedTo10 => "the total rounded to the nearest 10",
        TotalWritten::RoundedTo50 => "the total rounded to the nearest 50",
        TotalWritten::RoundedTo100 => "the total rounded to the nearest 100",
        TotalWritten::Twice => "two dwellings of this size in one total",
        TotalWritten::SquareMeters => "the total given in square meters",
    }
}

/// What a departure is about, and what becomes of it.
fn departure(kind: DepartureKind, listed: Listed<'_>) -> (String, &'static str) {
    let house: &House = listed.house;
    let name = |space: usize| words::quoted_in_text(&house.spaces[space].name);
    let level_name = |level: usize| words::quoted_in_text(&house.levels[level].name);
    match kind {
        DepartureKind::Counted { space } => (name(space), "counted"),
        DepartureKind::CountedAsListed { space } => {
            (name(space), "counted, as the record lists it")
        }
        DepartureKind::MissingCounted { missing } => {
            let name = words::quoted_in_text(&listed.house.missing[missing].name);
            (format!("{name}, not found on site,"), "still counted")
        }
        DepartureKind::LeftOut { space } if is_said_to_count(space, listed) => {
            (name(space), NOT_AS_SAID)
        }
        DepartureKind::LeftOut { space } => {
            let level = whole_level(space, house);
            (level.map_or_else(|| name(space), level_name), "not counted")
        }
        DepartureKind::LevelLeftOut { level } => (level_name(level), "not counted"),
        DepartureKind::CountedTwice { space } => (name(space), "counted twice"),
        DepartureKind::NotDeducted { space } => {
            let here = &house.spaces[space];
            (format!("{}{}", deducted_name(here), low_ceiling(here)), "not deducted")
        }
        DepartureKind::Deducted { space } if house.spaces[space].parent.is_none() => {
            (name(space), "deducted, though it stands outside these walls")
        }
        DepartureKind::Deducted { space } => (deducted_name(&house.spaces[space]), "deducted"),
        DepartureKind::DeductedTwice { space } => {
            (deducted_name(&house.spaces[space]), "deducted twice")
        }
        DepartureKind::Level { level, how } => (
            level_name(level),
            match how {
                LevelTaken::WholeBelow => "counted as large as the whole level below",
                LevelTaken::ThreeQuartersBelow => {
                    "counted as three quarters of the whole level below"
                }
                LevelTaken::HalfBelow => "counted as half of the whole level below",
                LevelTaken::Twice => "counted twice",
            },
        ),
        DepartureKind::UnderRoof => {
            let names = few_under_roof(listed).map(|names| words::all_of(&names));
            (names.unwrap_or_else(|| "everything under the roof".to_owned()), "counted")
        }
        // Each of them is told.
        DepartureKind::Together(_) => (String::new(), ""),
        DepartureKind::Part { space, part } => {
            let what = part_of(&house.spaces[space], part);
            let size = size_of_part(&house.spaces[space], part, house);
            match part.shape {
                Shape::Recess if part.is_corner(&house.spaces[space].closed.outline) => {
                    (format!("{what}{size}"), "squared off")
                }
                Shape::Recess => (format!("{what}{size}"), "filled in"),
                Shape::Jog | Shape::Wing => (format!("{what}{size}"), "left off"),
                Shape::Bay => (what, "left off"),
                Shape::BoxedBay => (what, "drawn as a box"),
                Shape::CutCorner => (what, "squared off"),
                Shape::Overlap => (format!("{what}{size}"), "counted twice"),
            }
        }
    }
}

/// What a figure does not count, although the file says that it does.
const NOT_AS_SAID: &str = "not counted, although it is said here to be";

/// Whether the file says that the figure counts a space.
fn is_said_to_count(space: usize, listed: Listed<'_>) -> bool {
    listed.counting.contains(&listed.house.spaces[space].name)
}

/// The names of the uncounted spaces under the roof, where they are few enough to be listed.
fn few_under_roof(listed: Listed<'_>) -> Option<Vec<String>> {
    const FEW: usize = 3;
    let names: Vec<String> =
        under_roof(listed).map(|i| words::quoted_in_text(&listed.house.spaces[i].name)).collect();
    (names.len() <= FEW).then_some(names)
}

/// The level of which a counted space is all that counts, if that is an upper level.
fn whole_level(space: usize, house: &House) -> Option<usize> {
    let level = house.spaces[space].level;
    let is_all = |i: usize| i == space || !is_in_total(house, i, false);
    let mut here = (0..house.spaces.len()).filter(|&i| house.spaces[i].level == level);
    let is_upper = (0..house.spaces.len())
        .any(|i| house.spaces[i].level < level && is_in_total(house, i, false));
    (is_upper && here.all(is_all)).then_some(level)
}

/// The name of a space that is deducted. A name in quotes says what kind of space it is, since `"Two-story living
/// room" not deducted` reads as a room: `the opening "Two-story living room"`.
fn deducted_name(space: &Space) -> String {
    let name = words::quoted_in_text(&space.name);
    let kind = match space.kind {
        _ if !name.starts_with('"') => return name,
        Kind::Open => "opening",
        Kind::Low => "low part",
        Kind::Stair => "stair",
        Kind::Court => "court",
        _ => return name,
    };
    format!("the {kind} {name}")
}

/// Why a space with a low ceiling is deducted, to follow its name where that does not say it.
fn low_ceiling(space: &Space) -> &'static str {
    let is_named_so = deducted_name(space).starts_with("the low part");
    if space.kind == Kind::Low && !is_named_so { " (low ceiling)" } else { "" }
}

/// The name of a space in the question whether a total deducts it: `the front eaves (low ceiling)`.
pub(crate) fn asked_as_deducted(space: &Space) -> String {
    format!("{}{}", deducted_named(space), low_ceiling(space))
}

/// The same name with its article: `the front eaves`.
fn deducted_named(space: &Space) -> String {
    match deducted_name(space) {
        name if name.starts_with("the ") => name,
        _ => words::the_quoted(&space.name),
    }
}

/// What a part of an outline is called: `the recess after side 3 of the house`, `the bay in the south wall of the
/// house`.
fn part_of(space: &Space, part: Part) -> String {
    let outline = &space.closed.outline;
    let (side, of) = (part.side + 1, words::the_quoted(&space.name));
    match part.shape {
        Shape::Recess if part.is_corner(outline) => format!("the corner after side {side} of {of}"),
        Shape::Recess => format!("the recess after side {side} of {of}"),
        Shape::CutCorner => format!("the slanted corner at side {side} of {of}"),
        Shape::Overlap => format!("the corner that both arms of {of} share"),
        Shape::Jog if !is_deep(outline, part) => format!("the jog at side {side} of {of}"),
        Shape::Wing if !is_deep(outline, part) => format!("the jog at side {side} of {of}"),
        Shape::Jog | Shape::Wing => format!("the wing at side {side} of {of}"),
        Shape::Bay | Shape::BoxedBay => {
            let Some(faces) = part.faces(outline) else {
                return format!("the bay at side {side} of {of}");
            };
            let alike =
                |other: &Part| other.shape == Shape::Bay && other.faces(outline) == Some(faces);
            // Two bays in one direction go by their sides.
            let several = parts(outline).iter().filter(|other| alike(other)).count() > 1;
            let at = if several { format!(" at side {side}") } else { String::new() };
            format!("the bay{at} in the {} wall of {of}", faces.word())
        }
    }
}

/// Whether a part stands out too far to be called a jog: its shorter wall has 5 ft or more.
fn is_deep(outline: &Outline, part: Part) -> bool {
    const DEEP: Length = Length::from_nm(5 * Length::FOOT.nm());
    part.walls(outline).into_iter().all(|side| outline.vectors()[side].chord_length() >= DEEP)
}

/// The two walls of the rectangle of a part, where one needs them to find it on another sketch: `, 11' 3" by 4' 3",`.
fn size_of_part(space: &Space, part: Part, house: &House) -> String {
    let outline = &space.closed.outline;
    let form = house.usual_form();
    let length = |side: usize| {
        let typed = space.sides.get(side).and_then(|side| side.length_typed());
        typed.unwrap_or_else(|| {
            WrittenLength::new(outline.vectors()[side].chord_length(), form).spoken()
        })
    };
    let [one, other] = part.walls(outline);
    format!(", {} by {},", length(one), length(other))
}

/// A question that would settle whether a cause applies.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum OpenQuestion {
    /// Something to state: `how walls are rounded`.
    State(String),
    /// What the total does with a space: `counts`, `the covered porch`.
    Total { does: &'static str, what: Vec<String> },
    /// Something to provide: `the total before it was rounded`.
    Provide(String),
    /// A wall to compare with the record's sketch and to measure again, with the space that it belongs to and where it
    /// stands in it: `north wall, 19' 5"`. That is told to an office, which may hear the page without its drawing.
    Wall { number: usize, of: String, place: String },
    /// A wall to look at on the record's sketch, in the same way.
    Sketch { number: usize, of: String, place: String },
    /// A bay at which to look at the record's sketch: `the bay in the south wall of the house`.
    Bay(String),
}

impl OpenQuestion {
    fn state(what: impl Into<String>) -> OpenQuestion {
        OpenQuestion::State(what.into())
    }
}

/// What the walls of a record are compared with.
pub(crate) const RECORDS_SKETCH: &str = "the record's sketch";

/// What the owner does about questions, each once: `ask whether the total counts the covered porch`. Walls are compared
/// with `sketch`.
pub(crate) fn for_the_owner(open: &[OpenQuestion], sketch: &str) -> Vec<String> {
    let stated = stated(open).into_iter().map(|what| format!("ask {what}"));
    let provided = provided(open).into_iter().map(|what| format!("ask for {what}"));
    stated.chain(provided).chain(walls_to_check(open, false, sketch)).collect()
}

/// What one cause does with several spaces as one question: `whether the total counts the garage and the porch`.
pub(crate) fn together(open: Vec<OpenQuestion>) -> Vec<OpenQuestion> {
    let mut joined: Vec<OpenQuestion> = Vec::new();
    for question in &open {
        let OpenQuestion::Total { does, .. } = question else {
            joined.push(question.clone());
            continue;
        };
        let is_same = |other: &&OpenQuestion| matches!(other, OpenQuestion::Total { does: its, .. } if its == does);
        if joined.iter().any(|other| is_same(&other)) {
            continue;
        }
        let all = open.iter().filter(is_same).filter_map(|other| match other {
            OpenQuestion::Total { what, .. } => Some(what.iter().cloned()),
            _ => None,
        });
        let what = all.flatten().collect();
        joined.push(OpenQuestion::Total { does, what });
    }
    joined
}

/// What is to be stated. What the total does with several spaces is one question: `whether the total counts the garage or
/// the porch`.
fn stated(open: &[OpenQuestion]) -> Vec<String> {
    let mut asked: Vec<(Option<&str>, Vec<String>)> = Vec::new();
    for question in open {
        match question {
            OpenQuestion::State(what) => asked.push((None, vec![what.clone()])),
            OpenQuestion::Total { does, what } => {
                match asked.iter_mut().find(|(other, _)| *other == Some(does)) {
                    Some((_, all)) => all.push(words::all_of(what)),
                    None => asked.push((Some(does), vec![words::all_of(what)])),
                }
            }
            _ => {}
        }
    }
    let said = |(does, what): (Option<&str>, Vec<String>)| match does {
        Some(does) => {
            let what: Vec<&str> = what.iter().map(String::as_str).collect();
            format!("whether the total {does} {}", words::one_of(&what))
        }
        None => words::all_of(&what),
    };
    asked.into_iter().map(said).collect()
}

/// What is to be provided.
fn provided(open: &[OpenQuestion]) -> Vec<String> {
    let what = open.iter().filter_map(|question| match question {
        OpenQuestion::Provide(what) => Some(what.clone()),
        _ => None,
    });
    what.collect()
}

/// What to do about walls: all to compare in one phrase, and all to look at that are not among those.
fn walls_to_check(open: &[OpenQuestion], are_placed: bool, its: &str) -> Vec<String> {
    let compared = of_spaces(open.iter().filter_map(|question| match question {
        OpenQuestion::Wall { number, of, place } => Some((of.as_str(), (*number, place.as_str()))),
        _ => None,
    }));
    let looked_at = of_spaces(open.iter().filter_map(|question| match question {
        OpenQuestion::Sketch { number, of, place } => {
            Some((of.as_str(), (*number, place.as_str())))
        }
        _ => None,
    }));
    let is_compared = |of: &str, number: usize| {
        let mut compared = compared.iter();
        compared.any(|(space, walls)| *space == of && walls.iter().any(|(one, _)| *one == number))
    };
    let looked_at: Vec<(&str, Vec<(usize, &str)>)> = looked_at
        .into_iter()
        .map(|(of, mut walls)| {
            walls.retain(|(number, _)| !is_compared(of, *number));
            (of, walls)
        })
        .filter(|(_, walls)| !walls.is_empty())
        .collect();
    let them = match compared.iter().map(|(_, walls)| walls.len()).sum::<usize>() {
        1 => "it",
        _ => "them",
    };
    let mut places: Vec<String> = Vec::new();
    for question in open {
        match question {
            OpenQuestion::Bay(bay) if !places.contains(bay) => places.push(bay.clone()),
            _ => {}
        }
    }
    places.extend((!looked_at.is_empty()).then(|| named(&looked_at, are_placed)));
    let sketch =
        (!places.is_empty()).then(|| format!("compare {} with {its}", words::all_of(&places)));
    let compare = (!compared.is_empty()).then(|| {
        let walls = named(&compared, are_placed);
        format!("compare {walls} with {its}, and measure {them} again")
    });
    sketch.into_iter().chain(compare).collect()
}

/// The walls under the name of their space, in the order of their first mention: each with its number and its place.
fn of_spaces<'a>(
    walls: impl Iterator<Item = (&'a str, (usize, &'a str))>,
) -> Vec<(&'a str, Vec<(usize, &'a str)>)> {
    let mut spaces: Vec<(&str, Vec<(usize, &str)>)> = Vec::new();
    for (of, wall) in walls {
        match spaces.iter_mut().find(|(space, _)| *space == of) {
            Some((_, walls)) => walls.push(wall),
            None => spaces.push((of, vec![wall])),
        }
    }
    for (_, walls) in &mut spaces {
        walls.sort_unstable();
        walls.dedup();
    }
    spaces
}

/// `sides 5 and 6 of the house and side 2 of the garage`; with their places `side 5 (north wall, 19' 5") of the house`.
fn named(walls: &[(&str, Vec<(usize, &str)>)], are_placed: bool) -> String {
    let names = walls.iter().map(|(of, walls)| {
        let is_known = walls.iter().all(|(_, place)| !place.is_empty());
        let sides = match are_placed && is_known {
            true => {
                let sides = walls.iter().map(|(number, place)| format!("side {number} ({place})"));
                words::all_of(&sides.collect::<Vec<String>>())
            }
            false => words::sides(&walls.iter().map(|(number, _)| *number).collect::<Vec<usize>>()),
        };
        format!("{sides} of {of}")
    });
    words::all_of(&names.collect::<Vec<String>>())
}

/// Where a wall stands and its length: `north wall, 19' 5"`; empty for a wall that faces no side of the compass or has no
/// length of its own.
fn wall_place(space: &Space, side: usize) -> String {
    let faces = space.closed.outline.faces(side);
    let length = space.sides.get(side).and_then(|side| side.length_typed());
    let placed = faces.zip(length);
    placed.map_or_else(String::new, |(faces, length)| format!("{} wall, {length}", faces.word()))
}

/// The open questions as a page puts them: as requests to the office if it is asked anything, which it is about a record
/// that is not smaller than the house; for any other figure, as what is not known.
pub(crate) fn asked_of_the_office(open: &[OpenQuestion], is_asked: bool) -> String {
    let (stated, provided) = (stated(open), provided(open));
    if !is_asked {
        let unknown: Vec<String> = stated.into_iter().chain(provided).collect();
        return match unknown.is_empty() {
            true => String::new(),
            false => format!("Not known: {}.", words::all_of(&unknown)),
        };
    }
    let sentence = |(verb, asked): (&str, Vec<String>)| {
        (!asked.is_empty()).then(|| format!("Please {verb}{}.", words::all_of(&asked)))
    };
    let walls = walls_to_check(open, true, RECORDS_SKETCH);
    let requests = [("state ", stated), ("provide ", provided), ("", walls)];
    requests.into_iter().filter_map(sentence).collect::<Vec<String>>().join(" ")
}

/// Asks for the height below which a total deducts ceilings.
pub(crate) fn below_which_height() -> OpenQuestion {
    OpenQuestion::state("below which ceiling height it deducts floor area (none is stated here)")
}

/// The questions that would settle whether a cause applies.
pub(crate) fn settled_by(cause: Cause, listed: Listed<'_>, is_record: bool) -> Vec<OpenQuestion> {
    let mut questions: Vec<OpenQuestion> = cause
        .each(listed.house)
        .into_iter()
        .map(|kind| departure_settled_by(kind, listed))
        .collect();
    let is_low = |kind: DepartureKind| match kind {
        DepartureKind::NotDeducted { space }
        | DepartureKind::Deducted { space }
        | DepartureKind::DeductedTwice { space } => {
            let here = &listed.house.spaces[space];
            here.kind == Kind::Low && here.under.is_none()
        }
        _ => false,
    };
    // Nobody can answer whether a low ceiling is deducted without the height that makes it one.
    let is_any_low = cause.each(listed.house).into_iter().any(is_low);
    questions.extend(is_any_low.then(below_which_height));
    let own = match cause {
        Cause::None | Cause::Departures(..) => None,
        Cause::Face(_) => Some(how_walls_are_measured()),
        Cause::Common(_) => Some(OpenQuestion::state(
            "whether the common walls count whole, to their centerline or not at all",
        )),
        Cause::Rounding(_) => Some(how_walls_are_rounded()),
        Cause::Misread(wall) => {
            let space = &listed.house.spaces[wall.space];
            let walls = match across(space, wall.side) {
                Some(_) => vec![wall.side, (wall.side + 2) % 4],
                None => wall.walls().into_iter().map(|(side, _)| side).collect(),
            };
            let asked = |(space, side): (&Space, usize)| OpenQuestion::Wall {
                number: space.sides[side].number.get(),
                of: words::the_quoted(&space.name),
                place: wall_place(space, side),
            };
            let also = wall.also.map(|also| &listed.house.spaces[also]);
            let spaces = std::iter::once(space).chain(also);
            let all = spaces.flat_map(|space| walls.iter().map(move |&side| (space, side)));
            questions.extend(all.map(asked));
            None
        }
        Cause::Total { how, .. } => Some(match how {
            TotalWritten::Twice => OpenQuestion::state("how many dwellings the total covers"),
            TotalWritten::SquareMeters => OpenQuestion::state("which unit the total is in"),
            TotalWritten::RoundedTo10 | TotalWritten::RoundedTo50 | TotalWritten::RoundedTo100 => {
                OpenQuestion::Provide("the total before it was rounded".to_owned())
            }
            _ if is_record => {
                OpenQuestion::state("whether the total is the sum of the areas on its card")
            }
            _ => OpenQuestion::state("whether the total is the sum of its parts"),
        }),
    };
    questions.extend(own);
    questions
}

/// The question of the face.
pub(crate) fn how_walls_are_measured() -> OpenQuestion {
    OpenQuestion::state("whether the walls were measured inside, at the frame or outside")
}

/// The question of rounding.
pub(crate) fn how_walls_are_rounded() -> OpenQuestion {
    OpenQuestion::state("how walls are rounded")
}

fn departure_settled_by(kind: DepartureKind, listed: Listed<'_>) -> OpenQuestion {
    let house: &House = listed.house;
    let name = |space: usize| words::the_quoted(&house.spaces[space].name);
    let level_name = |level: usize| words::the_quoted(&house.levels[level].name);
    let total = |does: &'static str, what: String| OpenQuestion::Total { does, what: vec![what] };
    match kind {
        DepartureKind::Counted { space } | DepartureKind::CountedAsListed { space } => {
            total("counts", name(space))
        }
        DepartureKind::MissingCounted { missing } => {
            total("still counts", words::the_quoted(&listed.house.missing[missing].name))
        }
        DepartureKind::LeftOut { space } if is_said_to_count(space, listed) => {
            total("counts", name(space))
        }
        DepartureKind::LeftOut { space } => {
            total("includes", whole_level(space, house).map_or_else(|| name(space), level_name))
        }
        DepartureKind::LevelLeftOut { level } => total("includes", level_name(level)),
        DepartureKind::Level { level, .. } => {
            OpenQuestion::state(format!("how the total counts {}", level_name(level)))
        }
        DepartureKind::NotDeducted { space } | DepartureKind::Deducted { space } => {
            let here = &house.spaces[space];
            total("deducts", asked_as_deducted(here))
        }
        DepartureKind::CountedTwice { space } => {
            OpenQuestion::state(format!("how often the total counts {}", name(space)))
        }
        DepartureKind::DeductedTwice { space } => OpenQuestion::state(format!(
            "how often the total deducts {}",
            deducted_named(&house.spaces[space])
        )),
        DepartureKind::UnderRoof => match few_under_roof(listed) {
            Some(_) => {
                OpenQuestion::Total { does: "counts", what: under_roof(listed).map(name).collect() }
            }
            None => OpenQuestion::state("which spaces the total counts"),
        },
        DepartureKind::Together(Group::Parts { space, .. }) => {
            OpenQuestion::Provide(format!("the record's sketch of {}", name(space)))
        }
        DepartureKind::Together(_) => OpenQuestion::state("which spaces the total counts"),
        DepartureKind::Part { space, part } => match part.shape {
            Shape::Bay | Shape::BoxedBay => OpenQuestion::Bay(part_of(&house.spaces[space], part)),
            Shape::Overlap => OpenQuestion::state(format!(
                "which rectangles of {} the total adds up",
                name(space)
            )),
            _ => OpenQuestion::Sketch {
                number: part.side + 1,
                of: name(space),
                place: wall_place(&house.spaces[space], part.side),
            },
        },
    }
}

/// What another line of the record shows about its rounding, in a sentence.
pub(crate) fn evidence(evidence: &Evidence, listed: Listed<'_>) -> String {
    let name = words::quoted_in_text(&listed.house.spaces[evidence.space].name);
    let sq_ft = thousands(evidence.sq_ft);
    match evidence.product {
        Some((one, other)) => {
            let (one, other) = (one.max(other), one.min(other));
            let here = measured_across(&listed.house.spaces[evidence.space]);
            let here = here.map(|here| format!(" (here {here})")).unwrap_or_default();
            let by_half = evidence
                .by_half
                .map(|by_half| format!("; to the half foot it would be {}", thousands(by_half)));
            format!(
                "The record's {name}, {sq_ft} = {one} × {other}, fits walls in whole feet{here}{}.",
                by_half.unwrap_or_default()
            )
        }
        None => {
            format!(
                "The record's {name}, {sq_ft}, is not a product of whole feet near these walls."
            )
        }
    }
}

/// The lengths of a rectangle in feet, the longer one first: `22' 7" × 21' 5"`, and before them in meters if they were
/// typed so: `12.2 m × 9.15 m, that is 40' 0 5/16" × 30' 0 1/4"`; `None` for any other outline.
fn measured_across(space: &Space) -> Option<String> {
    let (one, other) = across(space, 0).and(across(space, 1)).map(|_| (0, 1))?;
    let vectors = space.closed.outline.vectors();
    let length = |side: usize| vectors[side].chord_length();
    let (long, short) = if length(one) < length(other) { (other, one) } else { (one, other) };
    let feet = format!("{} × {}", length(long).spoken(), length(short).spoken());
    let typed = |side: usize| match &space.sides[side].run {
        Run::Straight(_, written) if written.form().is_metric() => Some(written.grouped()),
        _ => None,
    };
    Some(match (typed(long), typed(short)) {
        (Some(long), Some(short)) => format!("{long} × {short}, that is {feet}"),
        _ => feet,
    })
}

/// A sentence on what to check again in our own measurements.
pub(crate) fn asked(question: Question, listed: Listed<'_>) -> String {
    let space = |i: usize| &listed.house.spaces[i];
    match question {
        Question::Inside { space: i, side, kind, sq_ft } => {
            let what = if kind == Kind::Porch { "an open porch" } else { "a garage" };
            let size = size_of_sq_ft(sq_ft, listed.house.usual_form().is_metric());
            format!(
                "Is {what} inside your walk? The part at side {} of {} has {size}, about as much as the difference.",
                side + 1,
                words::the_quoted(&space(i).name)
            )
        }
        Question::Wall { space: i, side } => {
            let sides = &space(i).sides;
            let axis = sides[side].direction.map(Direction::axis);
            let follows = sides
                .iter()
                .find(|other| other.follows && other.direction.map(Direction::axis) == axis)
                .map_or("a side".to_owned(), |other| format!("side {}", other.number));
            format!(
                "Measure side {} of {} again: {follows}, which was not measured and follows from the others, would hide an error in it.",
                sides[side].number,
                words::the_quoted(&space(i).name)
            )
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn walls_to_check_are_asked_about_together() {
        let place = || "north wall, 19' 5\"".to_owned();
        let wall = |number, of: &str| {
            let of = of.to_owned();
            OpenQuestion::Wall { number, of, place: place() }
        };
        let sketch = |number, of: &str| {
            let of = of.to_owned();
            OpenQuestion::Sketch { number, of, place: place() }
        };
        let state = OpenQuestion::state("how walls are rounded");
        let open = [sketch(5, "the house"), wall(6, "the house"), state, wall(5, "the house")];
        assert_eq!(
            asked_of_the_office(&open, true),
            "Please state how walls are rounded. Please compare side 5 (north wall, 19' 5\") and side 6 (north wall, 19' 5\") of the house with the record's sketch, and measure them again."
        );
        assert_eq!(
            for_the_owner(&[sketch(1, "the house"), wall(2, "the wing")], RECORDS_SKETCH),
            [
                "compare side 1 of the house with the record's sketch",
                "compare side 2 of the wing with the record's sketch, and measure it again"
            ]
        );
    }
}
