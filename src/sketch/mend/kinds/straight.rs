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

/// A walk from its lines; `None` if a wall of it is not straight or has no length, or it does not come back.
pub(super) fn walk(typed: &Typed<'_>, lines: &[Rc<str>]) -> Option<Walk> {
    let front = typed.attempt.beside.front;
    let (mut walls, mut corners, mut at) = (Vec::new(), Vec::new(), (0_i64, 0_i64));
    for line in lines {
        let pieces = cut(line);
        if pieces.first()?.is_word(&["corner", "overall", "tie"]) {
            continue;
        }
        let way = compass(by_compass(way_and_back(&pieces[0].text)?.0, front))?;
        let measure = length_in(typed, &pieces, 1)?;
        corners.push(at);
        match way.axis() {
            Axis::East => at.0 += way.sign() * measure.length.nm(),
            Axis::North => at.1 += way.sign() * measure.length.nm(),
        }
        let typed = join(&pieces[..measure.end.min(pieces.len())]);
        walls.push(Wall { way, length: measure.length, typed });
    }
    let is_back = at.0.abs() <= GAP.nm() && at.1.abs() <= GAP.nm();
    (is_back && walls.len() >= 4).then_some(Walk { walls, corners })
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
