//! The traverses of a level as typed, closed or not: the content of a draft.

use std::collections::BTreeMap;

use crate::diagnostic::{Diagnostic, Source};
use crate::geometry::compass::{Axis, Direction};
use crate::geometry::outline::Vector;
use crate::geometry::traverse::{Misclosure, Traverse, TraverseSide};
use crate::house::check::suspect::Suspect;
use crate::house::check::suspects::{missing_between, suspects};
use crate::house::check::{closing_sides, numbered, particulars, shape, straight_back};
use crate::house::model::Particulars;
use crate::house::{Run, Side, SideNumber};
use crate::sketch::rows::{Rows, rows};
use crate::sketch::statement::{Place, usual_form};
use crate::sketch::{Sketch, SpaceSketch, WalkSketch};
use crate::units::length::{Form, Length, WrittenLength};

/// The traverses that one page shows.
#[derive(Clone, Debug)]
pub(crate) struct Draft {
    pub(crate) particulars: Particulars,
    /// Their level; `None` for a lot.
    pub(crate) level: Option<String>,
    pub(crate) walks: Vec<DraftWalk>,
    /// The notation of most sides.
    pub(crate) form: Form,
    /// What could not be read and is not drawn.
    pub(crate) unread: Vec<Unread>,
    /// Whether it is the only draft of its file.
    pub(crate) is_only: bool,
    /// How many other levels and lots have a traverse that does not close.
    pub(crate) open_elsewhere: usize,
}

/// A line that could not be read, and is not drawn.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Unread {
    /// A side: its space, its number, and whether it only lacks its length.
    Side { walk: String, number: usize, is_blank: bool },
    /// Any other line, by its number from 1.
    Line(usize),
}

/// The most levels and lots that are drawn.
const MOST_PAGES: usize = 80;

/// A traverse as typed.
#[derive(Clone, Debug)]
pub(crate) struct DraftWalk {
    pub(crate) name: String,
    /// Its start, east then north of the level's origin, in nanometers.
    pub(crate) at: (i64, i64),
    pub(crate) vectors: Vec<Vector>,
    pub(crate) sides: Vec<Side>,
    /// The misclosure; zero within the tolerances.
    pub(crate) misses: Misclosure,
    /// The sides to measure again, common errors first.
    pub(crate) suspects: Vec<Suspect>,
    /// Two sides between which a wall seems to be missing.
    pub(crate) missing_between: Option<(usize, usize)>,
    /// Two sides by closing along one axis: the first is drawn with the combined length of both, the second with none.
    pub(crate) closing_twice: Option<(usize, usize)>,
    /// Its named corners, each with the number of sides before it.
    corners: Vec<(String, usize)>,
}

impl DraftWalk {
    /// Whether it closes within the tolerances.
    pub(crate) fn is_closed(&self) -> bool {
        self.misses == Misclosure::default()
    }

    /// Its corners on the level, from its start to its end.
    pub(crate) fn corners(&self) -> Vec<(i64, i64)> {
        let mut at = self.at;
        let mut corners = vec![at];
        corners.extend(self.vectors.iter().map(|vector| {
            at = (at.0 + vector.east, at.1 + vector.north);
            at
        }));
        corners
    }

    /// Twice its signed area if closed by a straight line back to the start; positive if it runs counterclockwise.
    pub(crate) fn turn(&self) -> i128 {
        let corners = self.corners();
        let ends = corners.iter().skip(1).chain(corners.first());
        let cross = |(a, b): (&(i64, i64), &(i64, i64))| {
            let part = |corner: &(i64, i64)| {
                (i128::from(corner.0 - self.at.0), i128::from(corner.1 - self.at.1))
            };
            let (a, b) = (part(a), part(b));
            a.0 * b.1 - a.1 * b.0
        };
        corners.iter().zip(ends).map(cross).sum()
    }

    fn corner(&self, after: usize) -> (i64, i64) {
        self.corners().get(after).copied().unwrap_or(self.at)
    }
}

/// The traverses of every level and lot, one draft each: first those with a traverse that does not close, then the
/// others, each in file order. Empty if the file has no side to draw.
///
/// `found` are the diagnostics of reading and checking the file.
pub(crate) fn drafts(source: &Source, sketch: &Sketch, found: &[Diagnostic]) -> Vec<Draft> {
    let tolerance = sketch.heads.tolerance();
    let rows = rows(source.text());
    let numbers = Numbers::of(source, &rows);
    let walks = |spaces: &[SpaceSketch], is_lot: bool| walks(spaces, is_lot, tolerance, &numbers);
    let levels = sketch.levels.iter().map(|level| {
        let name = Some(level.level.name.text.clone());
        (name, walks(&level.spaces, false))
    });
    let lots = sketch.lots.iter().map(|lot| (None, walks(std::slice::from_ref(lot), true)));
    let mut groups: Vec<(Option<String>, Vec<DraftWalk>)> =
        levels.chain(lots).filter(|(_, walks)| !walks.is_empty()).collect();
    groups.sort_by_key(|(_, walks)| walks.iter().all(DraftWalk::is_closed));
    groups.truncate(MOST_PAGES);
    let is_open =
        |(_, walks): &(Option<String>, Vec<DraftWalk>)| !walks.iter().all(DraftWalk::is_closed);
    let open = groups.iter().filter(|group| is_open(group)).count();
    let unread = unread(source, sketch, found, &rows);
    let last = groups.len().saturating_sub(1);
    groups
        .into_iter()
        .enumerate()
        .map(|(i, (level, walks))| Draft {
            particulars: particulars(&sketch.heads),
            form: usual_form(walks.iter().flat_map(|walk| walk.sides.iter()).map(|side| &side.run)),
            level,
            is_only: last == 0,
            open_elsewhere: open - usize::from(i < open),
            walks,
            unread: if i == 0 { unread.clone() } else { Vec::new() },
        })
        .collect()
}

/// The lines that have an error and could not be read as a statement.
fn unread(source: &Source, sketch: &Sketch, found: &[Diagnostic], rows: &Rows) -> Vec<Unread> {
    let errors = found.iter().filter(|one| one.is_error());
    let mut lines: Vec<usize> = errors.map(|one| source.line(one.span().start)).collect();
    let is_unread = |line: &usize| {
        let line = line.checked_sub(1).and_then(|i| sketch.lines.get(i));
        line.is_none_or(|line| line.statement.is_none())
    };
    lines.retain(is_unread);
    lines.dedup();
    let as_row = |line: usize| {
        rows.walks.iter().find_map(|walk| {
            let row = walk.rows.iter().find(|row| row.line == line)?;
            let (walk, is_blank) = (walk.name.clone(), row.lacks_length());
            Some(Unread::Side { walk, number: row.number, is_blank })
        })
    };
    lines.into_iter().map(|line| as_row(line).unwrap_or(Unread::Line(line))).collect()
}

/// The numbers of sides as a form with rows shows them: a side that cannot be read has one too.
struct Numbers<'a> {
    source: &'a Source,
    /// The number of the first side of each line.
    by_line: BTreeMap<usize, usize>,
}

impl Numbers<'_> {
    fn of<'a>(source: &'a Source, rows: &Rows) -> Numbers<'a> {
        let rows = rows.walks.iter().flat_map(|walk| &walk.rows);
        Numbers { source, by_line: rows.map(|row| (row.line, row.number)).collect() }
    }

    /// Numbers the sides of a walk. A bay or `close` is several sides of one line.
    fn give(&self, sides: &mut [Side]) {
        let (mut last_line, mut next) = (0, 1);
        for side in sides {
            let line = self.source.line(side.span.start);
            if line != last_line {
                next = self.by_line.get(&line).copied().unwrap_or(next);
            }
            side.number = SideNumber::at(next - 1);
            (last_line, next) = (line, next + 1);
        }
    }
}

fn walks(
    spaces: &[SpaceSketch],
    is_lot: bool,
    tolerance: Length,
    numbers: &Numbers<'_>,
) -> Vec<DraftWalk> {
    let mut walks: Vec<DraftWalk> = Vec::new();
    for space in spaces.iter().filter(|space| !space.walk.sides.is_empty()) {
        let (traverse, mut sides) = traverse(&space.walk, is_lot, tolerance);
        numbers.give(&mut sides);
        let walk = walk(space, place(space, &walks), traverse, sides);
        walks.push(walk);
    }
    walks
}

/// Where a space starts, given the traverses before it: east then north, in nanometers.
fn place(space: &SpaceSketch, before: &[DraftWalk]) -> (i64, i64) {
    match &space.space.place {
        Place::Origin => (0, 0),
        Place::Start(offsets) => {
            let along = |axis: Axis| -> i64 {
                let parts = offsets.iter().filter(|(direction, _)| direction.axis() == axis);
                parts.map(|(direction, length)| direction.sign() * length.length().nm()).sum()
            };
            (along(Axis::East), along(Axis::North))
        }
        Place::Corner(name) => {
            let named = |walk: &DraftWalk| {
                let corner = walk.corners.iter().find(|(other, _)| *other == name.text);
                corner.map(|&(_, after)| walk.corner(after))
            };
            before.iter().find_map(named).unwrap_or((0, 0))
        }
        Place::CornerOf(name, number) => {
            let walk = before.iter().find(|walk| walk.name == name.text);
            walk.map_or((0, 0), |walk| walk.corner(number.number.saturating_sub(1)))
        }
    }
}

fn walk(sketch: &SpaceSketch, at: (i64, i64), traverse: Traverse, sides: Vec<Side>) -> DraftWalk {
    let (traverse, misses) = match traverse.adjust() {
        Ok(closed) => (closed.traverse, Misclosure::default()),
        Err((_, walk)) => {
            let walk = walk.filled_as_far_as_it_goes();
            let misses = walk.misclosure().beyond(&walk);
            (walk, misses)
        }
    };
    let corners = sketch.walk.corners.iter();
    DraftWalk {
        name: sketch.space.name.text.clone(),
        at,
        vectors: traverse.sides.iter().map(|side| side.shape.vector()).collect(),
        suspects: suspects(&traverse, &sides, misses),
        missing_between: missing_between(&traverse, misses),
        closing_twice: closing_twice(&sides),
        sides,
        misses,
        corners: corners.map(|corner| (corner.name.text.clone(), corner.after)).collect(),
    }
}

fn closing_twice(sides: &[Side]) -> Option<(usize, usize)> {
    let along = |axis: Axis| {
        let on_axis =
            move |side: &Side| side.follows && side.direction.is_some_and(|d| d.axis() == axis);
        let mut both = (0..sides.len()).filter(move |&i| on_axis(&sides[i]));
        Some((both.next()?, both.next()?))
    };
    Axis::BOTH.into_iter().find_map(along)
}

/// The sides as typed, with `close` replaced by the sides that it stands for.
fn traverse(sketch: &WalkSketch, is_lot: bool, tolerance: Length) -> (Traverse, Vec<Side>) {
    let (mut traverse, mut sides) = (Traverse::default(), Vec::new());
    let typed = &sketch.sides;
    for side in typed.iter().filter(|side| side.run != Run::Close) {
        let number = sides.len();
        let estimated = side.words.estimated;
        let usual = if estimated { super::ESTIMATED } else { tolerance };
        traverse.sides.push(TraverseSide {
            shape: shape(&side.run),
            tolerance: side.words.tolerance.map_or(usual, WrittenLength::length).nm(),
            follows: matches!(side.run, Run::ByClosing(_)),
            estimated,
            source: Some(number),
        });
        sides.push(numbered(side, number));
    }
    let Some(close) = typed.last().filter(|side| side.run == Run::Close) else {
        return (traverse, sides);
    };
    let follows = |axis: Axis| {
        typed.iter().find(|side| matches!(side.run, Run::ByClosing(way) if way.axis() == axis))
    };
    let following = Axis::BOTH.map(|axis| follows(axis).map(|side| side.span));
    let added: Vec<Direction> = closing_sides(&traverse, &following);
    if is_lot && !added.is_empty() {
        straight_back(close, &mut traverse, &mut sides);
        return (traverse, sides);
    }
    for direction in added {
        super::push_closing(close, direction, &mut traverse, &mut sides);
    }
    (traverse, sides)
}
