//! The text alternative of a drawn page, for screen readers: the walls in walking order, where each space lies, the
//! steps, what is possible and what is asked for.

use crate::house::{LengthSource, Space};
use crate::pages::drawing::marks::{Marks, place};
use crate::reconcile::Reconciliation;
use crate::wording::Block;
use crate::wording::map;
use crate::wording::sentences::{Sentences, capital, whole};

/// Everything on the Exhibit as text for screen readers.
pub(crate) fn exhibit(
    say: &Sentences<'_>,
    reconciliation: &Reconciliation,
    marks: &Marks,
    main: Option<usize>,
) -> String {
    let figures = reconciliation.figures();
    let figure = figures.first();
    let mut sentences = Vec::new();
    if !say.numbers().is_empty() {
        sentences.push(format!("{}.", capital(&say.numbers())));
    }
    sentences.extend(say.statements(figures).into_iter().take(1));
    let (smaller, unlikely) = say.warned_on_a_page(figures);
    sentences.extend(smaller.map(str::to_owned).into_iter().chain(unlikely));
    sentences.extend(figure.and_then(|figure| say.own_sketch(figure)));
    sentences.extend(say.remarks(reconciliation));
    sentences.push(say.measured_line());
    if !say.house.spaces.is_empty() {
        sentences.push(say.both_ways(figures));
    }
    sentences.extend(main.map(|level| drawn(say, marks, level)));
    sentences.extend(other_levels(say, main));
    for map in reconciliation.maps() {
        sentences.extend(
            map.comparison().map(|roof| format!("{}.", capital(&map::map_note(map, roof)))),
        );
    }
    if let Some(figure) = figure {
        sentences.push(say.heard(figure));
        sentences.extend(say.possible(figure).into_iter().filter_map(|block| match block {
            Block::Paragraph(text) => Some(text),
            // Read aloud without its dash, an item needs its period.
            Block::Item(text) => Some(format!("{text}.")),
            _ => None,
        }));
        sentences.extend(map::not_measured(say.house, reconciliation));
        sentences.push(say.request(reconciliation, figure));
        sentences.extend(say.missing(figures).into_iter().take(2));
    }
    sentences.join(" ")
}

/// The spaces of a level, each with its walls in walking order.
pub(crate) fn drawn(say: &Sentences<'_>, marks: &Marks, level: usize) -> String {
    let house = say.house;
    let here: Vec<usize> =
        (0..house.spaces.len()).filter(|&i| house.spaces[i].level == level).collect();
    let counted = here.iter().copied().filter(|&i| house.spaces[i].counted);
    let main = counted.max_by_key(|&i| say.areas.spaces[i].outside().area().half_nm2());
    let spaces = here.iter().map(|&space| one(say, marks, space, main));
    let below = if house.levels[level].below_grade { ", below grade" } else { "" };
    let spaces: Vec<String> = spaces.collect();
    format!(
        "The drawing shows {}{below}, with the street side at the bottom. {}",
        house.levels[level].name,
        spaces.join(" ")
    )
}

fn one(say: &Sentences<'_>, marks: &Marks, space: usize, main: Option<usize>) -> String {
    let here = &say.house.spaces[space];
    let lies = match (here.parent, main) {
        (Some(parent), _) => format!(", inside {}", say.house.spaces[parent].name),
        (None, Some(main)) if main != space => {
            format!(", to the {} of {}", bearing(say, space, main), say.house.spaces[main].name)
        }
        _ => String::new(),
    };
    let walls: Vec<String> =
        (0..here.sides.len()).map(|side| wall(say, marks, space, side)).collect();
    format!(
        "{}, {} sq ft{lies}: {}.",
        say.space_name(space),
        whole(say.areas.spaces[space].tenth_foot().area()),
        walls.join("; ")
    )
}

/// A wall in words: `side 5 south by closing, 41' 10 1/2"`; with its length on the record if that is marked.
fn wall(say: &Sentences<'_>, marks: &Marks, space: usize, number: usize) -> String {
    let side = &say.house.spaces[space].sides[number];
    let closing = (side.how() == LengthSource::Closing).then(|| length_of(say, space, number));
    let closing = closing.flatten().map(|length| format!(", {length}")).unwrap_or_default();
    let recorded = marks.recorded(space, number).map(|recorded| {
        let by = if recorded.differs { ", which differs by more than rounding" } else { "" };
        format!(", {} on the record{by}", say.length(recorded.length))
    });
    format!("side {} {}{closing}{}", side.number(), side.typed(), recorded.unwrap_or_default())
}

fn length_of(say: &Sentences<'_>, space: usize, side: usize) -> Option<String> {
    let here: &Space = &say.house.spaces[space];
    let vector = here.closed.outline.vectors().get(side).copied()?;
    Some(say.length(vector.chord_length()))
}

/// The spaces on the levels that are not drawn on this page.
fn other_levels(say: &Sentences<'_>, main: Option<usize>) -> Vec<String> {
    let house = say.house;
    let named = |(number, level): (usize, &crate::house::Level)| {
        let on_it = (0..house.spaces.len()).filter(|&i| house.spaces[i].level == number);
        let spaces: Vec<String> = on_it
            .map(|i| {
                let area = whole(say.areas.spaces[i].tenth_foot().area());
                format!("{}, {area} sq ft", say.space_name(i))
            })
            .collect();
        let below = if level.below_grade { ", below grade" } else { "" };
        (!spaces.is_empty()).then(|| format!("{}{below}: {}.", level.name, spaces.join("; ")))
    };
    let others = house.levels.iter().enumerate().filter(|(number, _)| Some(*number) != main);
    others.filter_map(named).collect()
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
