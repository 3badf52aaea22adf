//! A walk that was typed above and has straight walls only: where its corners are, for lines that say something about
//! its sides.

use std::rc::Rc;

use super::super::compass::{by_compass, way_and_back};
use super::super::pieces::{Piece, cut, join};
use super::Typed;
use super::measure::{Measure, length_at};
use crate::geometry::compass::{Axis, Direction};
use crate::sketch::statement::Unit;
use crate::units::length::Length;

/// A wall of such a walk.
#[derive(Clone, Debug)]
pub(super) struct Wall {
    pub(super) way: Direction,
    pub(super) length: Length,
    /// Its way and its length as typed.
    pub(super) typed: String,
}

/// The walls of a walk, and where each begins.
#[derive(Clone, Debug)]
pub(super) struct Walk {
    pub(super) walls: Vec<Wall>,
    corners: Vec<(i64, i64)>,
}

/// What the walk may miss its start by.
const GAP: Length = Length::from_nm(6 * Length::INCH.nm());

/// A walk from its lines; `None` if a wall of it is not straight or has no length, or it does not come back. On each axis
/// one wall may follow from the others.
pub(super) fn walk(typed: &Typed<'_>, lines: &[Rc<str>]) -> Option<Walk> {
    let front = typed.attempt.beside.front;
    let (mut walls, mut open): (Vec<Wall>, Vec<usize>) = (Vec::new(), Vec::new());
    for line in lines {
        let pieces = cut(line);
        if pieces.first()?.is_word(&["corner", "overall", "tie"]) {
            continue;
        }
        let way = compass(by_compass(way_and_back(&pieces[0].text)?.0, front))?;
        let closes = pieces.get(1).is_some_and(|by| by.is_word(&["by"]))
            && pieces.get(2).is_some_and(|closing| closing.is_word(&["closing"]));
        let (length, end) = match length_in(typed, &pieces, 1) {
            Some(measure) => (measure.length, measure.end),
            None if closes => {
                open.push(walls.len());
                (Length::ZERO, 3)
            }
            None => return None,
        };
        let typed = join(&pieces[..end.min(pieces.len())]);
        walls.push(Wall { way, length, typed });
    }
    let on = |walls: &[Wall], axis: Axis| -> i64 {
        let of_it = walls.iter().filter(|wall| wall.way.axis() == axis);
        of_it.map(|wall| wall.way.sign() * wall.length.nm()).sum()
    };
    for &at in &open {
        let way = walls.get(at)?.way;
        let is_only = open.iter().filter(|&&one| walls[one].way.axis() == way.axis()).count() == 1;
        let left = Length::from_nm(-way.sign() * on(&walls, way.axis()));
        if !is_only || left <= Length::ZERO {
            return None;
        }
        walls.get_mut(at)?.length = left;
    }
    let (mut corners, mut here) = (Vec::new(), (0_i64, 0_i64));
    for wall in &walls {
        corners.push(here);
        match wall.way.axis() {
            Axis::East => here.0 += wall.way.sign() * wall.length.nm(),
            Axis::North => here.1 += wall.way.sign() * wall.length.nm(),
        }
    }
    let is_back = here.0.abs() <= GAP.nm() && here.1.abs() <= GAP.nm();
    (is_back && walls.len() >= 4).then_some(Walk { walls, corners })
}

/// How far the lines of a walk have led.
pub(super) struct Progress {
    /// How far it is back to the start, east and north; `None` if a line of it says no straight wall.
    pub(super) back: Option<(i64, i64)>,
    pub(super) walls: usize,
    /// Whether a wall of it is given by closing, so that on its axis it is always back.
    pub(super) has_closing: bool,
}

impl Progress {
    /// Whether the walk is not back at its start for all that is known.
    pub(super) fn is_open(&self) -> bool {
        self.walls > 0 && self.back.is_none_or(|back| !is_near(back.0) || !is_near(back.1))
    }

    /// The only way that leads back to the start, if one wall does.
    pub(super) fn way_back(&self) -> Option<Direction> {
        let (east, north) = self.back?;
        match (is_near(east), is_near(north)) {
            (false, true) => Some(Direction::along(Axis::East, east.signum())),
            (true, false) => Some(Direction::along(Axis::North, north.signum())),
            _ => None,
        }
    }
}

fn is_near(nm: i64) -> bool {
    nm.abs() <= GAP.nm()
}

/// How far a walk has led that may not be at its end. A wall by closing leads back on its axis.
pub(super) fn progress(typed: &Typed<'_>, lines: &[Rc<str>]) -> Progress {
    let front = typed.attempt.beside.front;
    let (mut at, mut walls, mut is_known) = ((0_i64, 0_i64), 0, true);
    let mut by_closing: Vec<Axis> = Vec::new();
    for line in lines {
        let pieces = cut(line);
        let Some(first) = pieces.first() else { continue };
        if first.is_word(&["corner", "overall", "tie"]) {
            continue;
        }
        walls += 1;
        let way_of = |piece: &Piece| compass(by_compass(way_and_back(&piece.text)?.0, front));
        let mut go = |way: Direction, by: Length| match way.axis() {
            Axis::East => at.0 += way.sign() * by.nm(),
            Axis::North => at.1 += way.sign() * by.nm(),
        };
        let plain = usize::from(first.is_word(&["arc", "bay"]));
        let one = pieces.get(plain).and_then(way_of).zip(length_in(typed, &pieces, plain + 1));
        let closes =
            pieces.windows(2).any(|two| two[0].is_word(&["by"]) && two[1].is_word(&["closing"]));
        match (first.is_word(&["diagonal"]), one) {
            (true, _) => {
                let one = pieces.get(1).and_then(way_of).zip(length_in(typed, &pieces, 2));
                let two = one.as_ref().and_then(|(_, one)| {
                    pieces.get(one.end).and_then(way_of).zip(length_in(typed, &pieces, one.end + 1))
                });
                match (one, two) {
                    (Some((way, by)), Some((other, by_other))) => {
                        go(way, by.length);
                        go(other, by_other.length);
                    }
                    _ => is_known = false,
                }
            }
            (false, Some((way, by))) => go(way, by.length),
            (false, None) if closes => match way_of(first) {
                // `right side by closing` stands on the right, and runs along it.
                Some(way) if pieces.get(1).is_some_and(|next| next.is_word(&["side", "wall"])) => {
                    by_closing.push(if way.axis() == Axis::East {
                        Axis::North
                    } else {
                        Axis::East
                    });
                }
                Some(way) => by_closing.push(way.axis()),
                None => is_known = false,
            },
            (false, None) => is_known = false,
        }
    }
    let back = |axis: Axis, nm: i64| if by_closing.contains(&axis) { 0 } else { -nm };
    let back = is_known.then(|| (back(Axis::East, at.0), back(Axis::North, at.1)));
    Progress { back, walls, has_closing: !by_closing.is_empty() }
}

/// The direction that a compass word names.
pub(super) fn compass(word: &str) -> Option<Direction> {
    let all = [Direction::North, Direction::East, Direction::South, Direction::West];
    all.into_iter().find(|way| way.word() == word)
}

/// A length; one without a unit is in the unit of the file.
pub(super) fn length_in(typed: &Typed<'_>, pieces: &[Piece], at: usize) -> Option<Measure> {
    let one = length_at(pieces, at)?;
    if one.has_unit {
        return Some(one);
    }
    let text = match typed.attempt.units {
        Unit::Feet => format!("{}'", one.text),
        Unit::Inches => format!("{}\"", one.text),
        Unit::Meters => format!("{} m", one.text),
        Unit::Centimeters => format!("{} cm", one.text),
        Unit::Millimeters => format!("{} mm", one.text),
    };
    let length = text.parse().ok()?;
    Some(Measure { end: one.end, length, text, has_unit: true })
}

impl Walk {
    fn ends(&self, axis: Axis) -> (i64, i64) {
        let on = self.corners.iter().map(|at| if axis == Axis::East { at.0 } else { at.1 });
        (on.clone().min().unwrap_or_default(), on.max().unwrap_or_default())
    }

    /// How far it extends along an axis.
    pub(super) fn extent(&self, axis: Axis) -> Length {
        let (low, high) = self.ends(axis);
        Length::from_nm(high - low)
    }

    /// Whether it is a rectangle.
    pub(super) fn is_rectangle(&self) -> bool {
        self.walls.len() == 4
            && self.walls.windows(2).all(|two| two[0].way.axis() != two[1].way.axis())
    }

    /// The recesses of this width and depth: the corner at which the wall at the back of each begins, the way of that
    /// wall, and the way out of the recess.
    pub(super) fn recesses(
        &self,
        along: Length,
        deep: Length,
    ) -> Vec<(usize, Direction, Direction)> {
        let count = self.walls.len();
        let doubled: i128 = (0..count)
            .map(|at| {
                let (one, two) = (self.corners[at], self.corners[(at + 1) % count]);
                i128::from(one.0) * i128::from(two.1) - i128::from(two.0) * i128::from(one.1)
            })
            .sum();
        let is_near = |one: Length, two: Length| (one - two).abs() <= Length::INCH;
        let is_one = |&at: &usize| {
            let wall = &self.walls[at];
            let (before, after) =
                (&self.walls[(at + count - 1) % count], &self.walls[(at + 1) % count]);
            let inward = if doubled < 0 { wall.way.right() } else { wall.way.left() };
            before.way == inward
                && after.way == inward.opposite()
                && is_near(wall.length, along)
                && is_near(before.length.min(after.length), deep)
        };
        let found = (0..count).filter(is_one);
        found.map(|at| (at, self.walls[at].way, self.walls[(at + 1) % count].way)).collect()
    }

    fn edge(&self, way: Direction) -> i64 {
        let (low, high) = self.ends(way.axis());
        if way.sign() > 0 { high } else { low }
    }

    fn is_at(&self, corner: usize, way: Direction) -> bool {
        let Some((east, north)) = self.corners.get(corner) else { return false };
        let along = if way.axis() == Axis::East { east } else { north };
        (along - self.edge(way)).abs() <= GAP.nm()
    }

    /// The index of the corner that is farthest on both sides; `None` if there is a recess.
    pub(super) fn corner(&self, one: Direction, two: Direction) -> Option<usize> {
        (0..self.corners.len()).find(|&at| self.is_at(at, one) && self.is_at(at, two))
    }

    /// The walls that lie farthest on one side, by their indices.
    pub(super) fn walls_on(&self, side: Direction) -> Vec<usize> {
        let count = self.walls.len();
        let lies = |&at: &usize| {
            self.walls[at].way.axis() != side.axis()
                && self.is_at(at, side)
                && self.is_at((at + 1) % count, side)
        };
        (0..count).filter(lies).collect()
    }

    /// The only wall on one side, if it is as long as that side.
    pub(super) fn whole_wall_on(&self, side: Direction) -> Option<usize> {
        let [only] = self.walls_on(side)[..] else { return None };
        let across = if side.axis() == Axis::East { Axis::North } else { Axis::East };
        let gap = self.walls[only].length - self.extent(across);
        (gap.abs() <= GAP).then_some(only)
    }
}
