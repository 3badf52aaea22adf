//! The text alternative of a drawn page, for screen readers: the walls in walking order, where each space lies, the
//! steps, what is possible and what is asked for.

use crate::diagnostic::words;
use crate::geometry::compass::{Axis, Direction};
use crate::geometry::outline::Vector;
use crate::house::{Face, LengthSource, Run};
use crate::pages::drawing::marks::{Marks, place};
use crate::pages::drawing::side_words::side_words;
use crate::reconcile::Reconciliation;
use crate::units::length::Length;
use crate::wording::Block;
use crate::wording::compass;
use crate::wording::map;
use crate::wording::sentences::{DISCLAIMER, Sentences, capital};
use crate::wording::size::number_or_size;

/// Everything on the Exhibit as text for screen readers: the statement, the likeliest cause, what is asked for, the figures, the reasons, and
/// last the drawing, which takes the longest.
pub(crate) fn exhibit(
    say: &Sentences<'_>,
    reconciliation: &Reconciliation,
    marks: &Marks,
    levels: &[usize],
) -> String {
    let figures = reconciliation.figures();
    let figure = figures.first();
    let mut sentences = Vec::new();
    if !say.numbers().is_empty() {
        sentences.push(format!("{}.", capital(&say.numbers())));
    }
    sentences.extend(say.statements(figures).into_iter().take(1));
    if let Some(figure) = figure {
        sentences.extend(say.cause_line(figure));
        sentences.extend(say.own_sketch(figure));
        sentences.push(say.request(reconciliation, figure));
        sentences.extend(say.asked_besides(reconciliation, figure));
    }
    let (smaller, unlikely) = say.warned_on_a_page(figures);
    sentences.extend(unlikely.into_iter().chain(smaller.map(str::to_owned)));
    sentences.extend(say.remarks(reconciliation));
    sentences.push(say.measured_line(figures));
    if !say.house.spaces.is_empty() {
        sentences.push(say.both_ways(figures));
    }
    if let Some(figure) = figure {
        sentences.push(say.heard(figure));
        sentences.extend(say.possible_below(figure).into_iter().filter_map(|block| match block {
            Block::Paragraph(text) => Some(text),
            // Read aloud without its dash, an item needs its period.
            Block::Item(text) => Some(format!("{text}.")),
            _ => None,
        }));
        sentences.extend(map::not_measured(say.house, reconciliation));
        sentences.extend(say.missing(reconciliation).into_iter().take(2));
    }
    sentences.extend(levels.iter().map(|&level| drawn(say, marks, level, &[])));
    sentences.extend(other_levels(say, levels));
    sentences.push(DISCLAIMER.to_owned());
    sentences.join(" ")
}

/// The spaces of a level, each with its walls in walking order, and the outlines that are laid over them. The spaces in
/// `apart` are drawn in a frame of their own.
pub(crate) fn drawn(say: &Sentences<'_>, marks: &Marks, level: usize, apart: &[usize]) -> String {
    let house = say.house;
    let here: Vec<usize> =
        (0..house.spaces.len()).filter(|&i| house.spaces[i].level == level).collect();
    let counted = here.iter().copied().filter(|&i| house.spaces[i].counted);
    let main = counted.max_by_key(|&i| say.areas.spaces[i].outside().area().half_nm2());
    let spaces = here.iter().map(|&space| one(say, marks, space, main, apart));
    let below = below_grade(house.levels[level].below_grade);
    let dashes = marks.theirs.iter().filter(|(on, _)| *on == level);
    let dashes = dashes.map(|(_, theirs)| format!("{}.", capital(&theirs.note())));
    let roofs = marks.roofs.iter().filter(|(on, ..)| *on == level);
    let roofs = roofs.map(|(.., note)| format!("{}.", capital(note)));
    let parts = marks.roofs_heard.iter().filter(|(on, _)| *on == level);
    let parts = parts.map(|(_, parts)| parts.clone()).filter(|parts| !parts.is_empty());
    let sentences: Vec<String> = spaces.chain(dashes).chain(roofs).chain(parts).collect();
    // The arrow of true north says nothing to who does not see it.
    let north = house.particulars.true_north.map(|bearing| {
        let typed = match house.particulars.front {
            None | Some(Direction::South) => "; north as typed is at the top, and ",
            _ => ", and ",
        };
        format!("{typed}{}", compass::true_north(bearing.unit_vector()))
    });
    format!(
        "The drawing shows {}{below}{}{}. Its sides are listed in the order and the direction in which they are walked. {}",
        words::the_quoted(&house.levels[level].name),
        turned(house.particulars.front),
        north.unwrap_or_default(),
        sentences.join(" ")
    )
}

fn below_grade(is_below: bool) -> &'static str {
    if is_below { ", below grade, not in the total" } else { "" }
}

/// Which side of the drawing is the street, and where north lies unless that is the top.
fn turned(front: Option<Direction>) -> &'static str {
    match front {
        None => ", with north at the top",
        Some(Direction::South) => ", with the street side at the bottom",
        Some(Direction::North) => ", with the street side at the bottom; north is at the bottom",
        Some(Direction::East) => ", with the street side at the bottom; north is to the right",
        Some(Direction::West) => ", with the street side at the bottom; north is to the left",
    }
}

fn one(
    say: &Sentences<'_>,
    marks: &Marks,
    space: usize,
    main: Option<usize>,
    apart: &[usize],
) -> String {
    let here = &say.house.spaces[space];
    let lies = match (here.parent, main) {
        (Some(parent), _) => format!(", inside {}", say.house.spaces[parent].name),
        _ if here.by_itself || apart.contains(&space) => {
            ", drawn separately, not where it stands".to_owned()
        }
        (None, Some(main)) if say.house.spaces[main].parent == Some(space) => {
            format!(", around {}", say.house.spaces[main].name)
        }
        (None, Some(main)) if main != space => {
            let next = next_to(say, space, main);
            format!(", to the {} of {}", bearing(say, space, next), say.house.spaces[next].name)
        }
        _ => String::new(),
    };
    let walls: Vec<String> =
        (0..here.sides.len()).map(|side| wall(say, marks, space, side)).collect();
    let whose = &marks.whose;
    let counts = match (marks.counted.contains(&space), marks.would_count.contains(&space)) {
        (true, _) => format!(", counted in the {whose}"),
        (_, true) => format!(", which could explain the {whose}"),
        _ if marks.near.contains(&space) => ", named as a possible part of what is left".to_owned(),
        _ => String::new(),
    };
    format!("{}, {}{lies}{counts}: {}.", say.space_name(space), area(say, space), walls.join("; "))
}

/// The area that the drawing shows for a space: `564 sq ft`; `1,757 sq ft net (2,337 less the garage)`.
fn area(say: &Sentences<'_>, space: usize) -> String {
    let areas = &say.areas.spaces[space];
    let net = say.size(areas.net_tenth_foot);
    let off = say.house.deducted_from(space).map(|other| say.house.spaces[other].name.as_str());
    let off: Vec<&str> = off.collect();
    match off.is_empty() {
        true => net,
        false => {
            let all = number_or_size(areas.tenth_foot().area(), say.is_metric());
            // Who adds up the areas that are drawn may get another one.
            let drawn = |space: usize| say.areas.spaces[space].net_tenth_foot.whole_sq_ft();
            let parts: i64 = say.house.deducted_from(space).map(drawn).sum();
            let left = areas.tenth_foot().area().whole_sq_ft() - parts;
            let apart = match left == areas.net_tenth_foot.whole_sq_ft() || say.is_metric() {
                true => "",
                false => ", each rounded by itself",
            };
            format!("{net} net ({all} less {}{apart})", words::all_named(&off))
        }
    }
}

/// A wall in words: `side 5 south 41' 10 1/2" by closing`; with its length on the record if that is marked.
fn wall(say: &Sentences<'_>, marks: &Marks, space: usize, number: usize) -> String {
    let side = &say.house.spaces[space].sides[number];
    let recorded = marks.recorded(space, number).map(|recorded| {
        let by = if recorded.differs { ", which differs by more than rounding" } else { "" };
        format!(", {} on the record{by}", say.length(recorded.length))
    });
    let ask = match marks.misread.contains(&(space, number)) {
        true => format!(", another length of which could explain the {}", marks.whose),
        false => String::new(),
    };
    let length = length(say, space, number);
    format!("side {} {length}{}{ask}", side.number(), recorded.unwrap_or_default())
}

/// The direction of a wall and its length as drawn, which is outside; if another length was typed, that follows:
/// `north 35' 5/8" (plan 34' 8")`, `east 27' 3" (26' inside)`.
fn length(say: &Sentences<'_>, space: usize, number: usize) -> String {
    let here = &say.house.spaces[space];
    let side = &here.sides[number];
    let traverse = &say.areas.outside.spaces[space].traverse;
    let mut pieces = traverse.sides.iter().zip(say.areas.spaces[space].outside().vectors());
    let vector = pieces.find(|(piece, _)| piece.source == Some(number)).map(|(_, vector)| *vector);
    let is_split = pieces.any(|(piece, _)| piece.source == Some(number));
    let (at, typed) = (face_words(here.face), side.typed());
    if is_split {
        return in_parts(say, space, number);
    }
    let Some(vector) = vector else {
        return format!("{typed}{}", if here.face == Face::Outside { "" } else { at });
    };
    let drawn = side_words(say, space, number, vector);
    let is_straight = matches!(side.run, Run::Straight(..) | Run::ByClosing(_));
    let Some(direction) = side.direction.filter(|_| is_straight) else {
        return match (&side.run, here.face) {
            (Run::Close, _) => match along(vector) {
                Some(direction) => format!("{} {drawn}", direction.word()),
                None => drawn,
            },
            (_, Face::Outside) => typed.to_owned(),
            _ => format!("{typed}{at}, drawn as {drawn}"),
        };
    };
    let says_typed = matches!(side.how(), LengthSource::Measured);
    let there = match &side.run {
        Run::Straight(_, written) if says_typed && written.grouped() != drawn => {
            format!(" ({}{at})", written.grouped())
        }
        _ => String::new(),
    };
    format!("{} {drawn}{there}", direction.word())
}

/// The direction of a wall that closes its outline, if it runs along an axis.
fn along(vector: Vector) -> Option<Direction> {
    match (vector.north, vector.east) {
        (north, 0) if north != 0 => Some(Direction::along(Axis::North, north)),
        (0, east) if east != 0 => Some(Direction::along(Axis::East, east)),
        _ => None,
    }
}

/// A wall that is drawn in several parts, since they move out by different amounts: `south in parts of 860 mm and 12,250
/// mm (13,050 mm at the frame)`.
fn in_parts(say: &Sentences<'_>, space: usize, number: usize) -> String {
    let here = &say.house.spaces[space];
    let side = &here.sides[number];
    let traverse = &say.areas.outside.spaces[space].traverse;
    let pieces = traverse.sides.iter().zip(say.areas.spaces[space].outside().vectors());
    let pieces = pieces.filter(|(piece, _)| piece.source == Some(number));
    // Between two parts the wall steps in or out, without which the walk would not come back.
    let part = |(_, vector): (_, &Vector)| {
        let length = say.length(vector.chord_length());
        let here = along(*vector)
            .filter(|here| side.direction.is_some_and(|direction| direction.axis() != here.axis()));
        match here {
            Some(direction) => format!("{length} {}", direction.word()),
            None => length,
        }
    };
    let parts: Vec<String> = pieces.map(part).collect();
    let direction = side.direction.map(|direction| format!("{} ", direction.word()));
    let typed = match &side.run {
        Run::Straight(_, written) | Run::Bearing(_, written) => {
            format!(" ({}{})", written.grouped(), face_words(here.face))
        }
        _ => String::new(),
    };
    format!("{}in parts of {}{typed}", direction.unwrap_or_default(), words::all_of(&parts))
}

/// The face of lengths that were typed, as it follows them.
fn face_words(face: Face) -> &'static str {
    match face {
        Face::Outside => " as measured",
        Face::Frame => " at the frame",
        Face::Inside => " inside",
    }
}

/// The spaces on the levels that are not drawn on this page.
fn other_levels(say: &Sentences<'_>, here: &[usize]) -> Vec<String> {
    let house = say.house;
    let named = |(number, level): (usize, &crate::house::Level)| {
        let on_it = (0..house.spaces.len()).filter(|&i| house.spaces[i].level == number);
        let spaces: Vec<String> =
            on_it.map(|i| format!("{}, {}", say.space_name(i), area(say, i))).collect();
        let below = below_grade(level.below_grade);
        (!spaces.is_empty()).then(|| format!("{}{below}: {}.", level.name, spaces.join("; ")))
    };
    let others = house.levels.iter().enumerate().filter(|(number, _)| !here.contains(number));
    others.filter_map(named).collect()
}

/// The space that another one's place is told from: the main one if the two touch, else one that it touches.
fn next_to(say: &Sentences<'_>, space: usize, main: usize) -> usize {
    let touch = |other: &usize| {
        let (a, half_a) = middle_and_half(say, space);
        let (b, half_b) = middle_and_half(say, *other);
        let gap = |one: i64, other: i64, halves: i64| (one - other).abs() - halves;
        gap(a.0, b.0, half_a.0 + half_b.0) <= Length::FOOT.nm()
            && gap(a.1, b.1, half_a.1 + half_b.1) <= Length::FOOT.nm()
    };
    let spaces = &say.house.spaces;
    let is_beside = |other: &usize| {
        *other != space
            && spaces[*other].level == spaces[space].level
            && spaces[*other].parent.is_none()
            && !spaces[*other].by_itself
    };
    let others = std::iter::once(main).chain((0..space).filter(is_beside));
    others.into_iter().find(touch).unwrap_or(main)
}

/// The direction from one space to another, by their middles: `north`, `southeast`.
fn bearing(say: &Sentences<'_>, space: usize, of: usize) -> String {
    let ((east, north), _) = middle_and_half(say, space);
    let (middle, half) = middle_and_half(say, of);
    let along = |at: i64, middle: i64, half: i64, less: &'static str, more: &'static str| match 2
        * (at - middle)
    {
        far if far > half => more,
        far if far < -half => less,
        _ => "",
    };
    let north = along(north, middle.1, half.1, "south", "north");
    let east = along(east, middle.0, half.0, "west", "east");
    match (north, east) {
        ("", "") => "middle".to_owned(),
        (north, east) => format!("{north}{east}"),
    }
}

fn middle_and_half(say: &Sentences<'_>, space: usize) -> ((i64, i64), (i64, i64)) {
    let at = place(say, space);
    let points = say.areas.spaces[space].outside().flattened();
    let span = |along: fn(&(i64, i64, usize)) -> i64| {
        let low = points.iter().map(along).min().unwrap_or(0);
        let high = points.iter().map(along).max().unwrap_or(0);
        #[expect(clippy::integer_division, reason = "a middle to the nanometer is close enough")]
        (low + (high - low) / 2, (high - low) / 2)
    };
    let (east, north) = (span(|point| point.0), span(|point| point.1));
    ((at.0 + east.0, at.1 + north.0), (east.1, north.1))
}
