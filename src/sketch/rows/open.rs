//! A walk under construction: its moves, and what follows from them.
#![expect(clippy::float_arithmetic, reason = "positions on a screen, which no figure is made from")]

use super::Walk;
use crate::geometry::compass::{Axis, Direction};
use crate::sketch::bay;
use crate::sketch::statement::{Bay, Run};
use crate::units::length::{Length, WrittenLength};

/// A position or move on the plan in nanometers: east, then north.
pub(super) type Spot = (i64, i64);

/// The move of a side, the direction of a side by closing, and the chord and rise of a curve.
pub(super) type Course = (Option<Spot>, Option<Direction>, Option<(i64, i64)>);

/// A walk under construction.
pub(super) struct Open {
    pub(super) walk: Walk,
    pub(super) start: Spot,
    /// The move of each row; `None` if it follows from the others.
    pub(super) moves: Vec<Option<Spot>>,
    /// The direction of each row given by closing.
    pub(super) follows: Vec<Option<Direction>>,
    /// Named corners, each with the number of sides before it.
    pub(super) corners: Vec<(String, usize)>,
    pub(super) curves: Vec<Option<(i64, i64)>>,
    pub(super) bays: Vec<Option<Bay>>,
    /// Where each side begins, once the walk is finished.
    pub(super) places: Vec<Spot>,
}

impl Walk {
    /// The first row, by index, after which the walk is back at its start, if it may be a whole outline by then.
    #[must_use]
    pub fn first_back(&self) -> Option<usize> {
        const SIXTY_FOURTH: f64 = 1.0 / 768.0;
        let is_there = |axis: usize, to: f64| (to - self.start[axis]).abs() < SIXTY_FOURTH;
        let found = self
            .rows
            .iter()
            .skip(3)
            .position(|row| is_there(0, row.to[0]) && is_there(1, row.to[1]));
        found.map(|at| at + 3)
    }
}

impl Open {
    /// The position after `after` sides.
    pub(super) fn corner(&self, after: usize) -> Spot {
        let moves = self.moves.iter().take(after);
        moves.fold(self.start, |at, moved| plus(at, moved.unwrap_or((0, 0))))
    }

    /// Gives each side by closing, at most one per axis, the length that the others leave; `close` takes what is left
    /// after that.
    pub(super) fn fill(&mut self) {
        for i in 0..self.moves.len() {
            let Some(direction) = self.follows[i] else { continue };
            let rest = self.rest();
            let along = match direction.axis() {
                Axis::East => (rest.0, 0),
                Axis::North => (0, rest.1),
            };
            let runs_that_way = (along.0 + along.1) * direction.sign() > 0;
            let is_only = self.follows.iter().flatten().filter(|d| d.axis() == direction.axis());
            if runs_that_way && is_only.count() == 1 {
                self.moves[i] = Some(along);
            }
        }
        for i in 0..self.moves.len() {
            if self.moves[i].is_none() && self.follows[i].is_none() {
                self.moves[i] = Some(self.rest());
            }
        }
    }

    /// Whether the walk misses its start by no more than an error of the tape, or by a small part of its length.
    pub(super) fn is_near(&self, (east, north): Spot) -> bool {
        let moves = self.moves.iter().flatten();
        let walked: i64 = moves.map(|(east, north)| east.abs() + north.abs()).sum();
        let little = (2 * Length::FOOT.nm()).max(walked.div_euclid(50));
        self.walk.rows.len() > 2 && east.abs().max(north.abs()) <= little
    }

    /// Whether the walk has its inside on the left, as if it returned to its start in a straight line. A walk that has
    /// only gone right so far is taken to go along the front, with its outside toward the street.
    pub(super) fn is_counterclockwise(&self, front: Direction) -> bool {
        let (mut at, mut doubled) = ((0, 0), 0_i128);
        for &moved in self.moves.iter().flatten() {
            let next = plus(at, moved);
            doubled +=
                i128::from(at.0) * i128::from(next.1) - i128::from(at.1) * i128::from(next.0);
            at = next;
        }
        let goes_right = || {
            let to_the_right = front.left();
            at != (0, 0) && leg(to_the_right, at.0.abs().max(at.1.abs())) == at
        };
        doubled > 0 || doubled == 0 && goes_right()
    }

    /// The move from the end back to the start.
    fn rest(&self) -> Spot {
        let sum = self.moves.iter().flatten().fold((0, 0), |at, &moved| plus(at, moved));
        (-sum.0, -sum.1)
    }
}

pub(super) fn plus(a: Spot, b: Spot) -> Spot {
    (a.0 + b.0, a.1 + b.1)
}

pub(super) fn leg(direction: Direction, nm: i64) -> Spot {
    match direction.axis() {
        Axis::East => (direction.sign() * nm, 0),
        Axis::North => (0, direction.sign() * nm),
    }
}

/// The end of each side of a bay, with the chord and rise of a curve.
pub(super) fn bay_sides(
    bay: &Bay,
    from: Spot,
    outside_is_left: bool,
) -> Vec<(Spot, Option<(i64, i64)>)> {
    let left = bay.direction.left();
    let right = Direction::along(left.axis(), -left.sign());
    let mut at = from;
    let sides = bay::sides(bay, if outside_is_left { left } else { right });
    let end = |run: &Run| {
        let (moved, _, curve) = course(run);
        at = plus(at, moved.unwrap_or((0, 0)));
        (at, curve)
    };
    sides.iter().map(end).collect()
}

/// What a side does to the walk.
pub(super) fn course(run: &Run) -> Course {
    match run {
        Run::Straight(direction, length) => {
            (Some(leg(*direction, length.length().nm())), None, None)
        }
        Run::ByClosing(direction) => (None, Some(*direction), None),
        Run::Diagonal(first, second) => {
            let part = |leg_of: &(Direction, WrittenLength)| leg(leg_of.0, leg_of.1.length().nm());
            (Some(plus(part(first), part(second))), None, None)
        }
        Run::Bearing(bearing, length) => {
            let (east, north) = bearing.unit_vector();
            let far = length.length().feet();
            (Some((nm_of(east * far), nm_of(north * far))), None, None)
        }
        Run::Arc(direction, chord, rise, toward) => {
            let chord = chord.length().nm();
            let right = direction.right();
            let sign = if *toward == right { 1 } else { -1 };
            (Some(leg(*direction, chord)), None, Some((chord, sign * rise.length().nm())))
        }
        Run::Close => (None, None, None),
    }
}

#[expect(clippy::cast_possible_truncation, reason = "a side has at most 10,000 ft")]
#[expect(clippy::cast_precision_loss, reason = "a foot is a small whole number of nanometers")]
fn nm_of(feet: f64) -> i64 {
    (feet * Length::FOOT.nm() as f64).round() as i64
}
