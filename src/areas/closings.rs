//! The ways one axis can close on whole steps: starting lengths and a list of one-step moves, of which every closing
//! makes exactly `choose`.

use crate::geometry::traverse::{Leg, Shape, Traverse};
use crate::units::length::{Length, Step};

/// The most closings of the smaller axis for which a range is computed.
pub(super) const MOST_CLOSINGS: u64 = 100_000;

/// Which walls may be rounded against the rule.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum RoundingFreedom {
    /// As few as possible. A wall is rounded against the rule if rounding moves it by more than half a step plus this
    /// error of reading the tape.
    WithinReading(Length),
    /// Any wall.
    Any,
}

/// A leg split into whole steps and a remainder in nanometers.
#[derive(Clone, Copy)]
pub(super) struct RoundedLeg {
    pub(super) side: usize,
    pub(super) sign: i64,
    pub(super) steps: i64,
    above: i64,
}

impl RoundedLeg {
    pub(super) fn of(leg: Leg, unit: i64) -> RoundedLeg {
        let steps = leg.length.checked_div(unit).unwrap_or(0);
        RoundedLeg { side: leg.side, sign: leg.sign, steps, above: leg.length - steps * unit }
    }

    /// How far `steps` is from the leg's own length, in nanometers.
    pub(super) fn off(&self, steps: i64, unit: i64) -> i64 {
        (steps - self.steps) * unit - self.above
    }
}

/// A wall of one axis at its starting length.
#[derive(Clone, Copy)]
pub(super) struct Wall {
    /// The index of its side.
    pub(super) side: usize,
    /// 1 if it runs north or east, -1 if it runs south or west.
    pub(super) sign: i64,
    /// Its length in steps.
    pub(super) steps: i64,
}

/// A change of one wall's length by one step.
#[derive(Clone, Copy)]
pub(super) struct Move {
    /// The index of the wall in [`AxisClosings::walls`].
    pub(super) wall: usize,
    /// 1 if the wall gets longer, -1 if it gets shorter.
    pub(super) change: i64,
}

/// The closings of one axis: the walls at their starting lengths, and moves of which a fixed number has to be made.
pub(super) struct AxisClosings {
    pub(super) walls: Vec<Wall>,
    pub(super) moves: Vec<Move>,
    /// How many of the moves every closing makes.
    pub(super) choose: usize,
}

impl AxisClosings {
    /// The number of closings, or `u64::MAX` if there are far too many to try.
    pub(super) fn count(&self) -> u64 {
        let few = self.choose.min(self.moves.len() - self.choose) as u64;
        let mut count = 1_u64;
        for i in 0..few {
            let numerator = count.saturating_mul(self.moves.len() as u64 - i);
            count = numerator.checked_div(i + 1).unwrap_or(numerator);
            if count > 1_000 * MOST_CLOSINGS {
                return u64::MAX;
            }
        }
        count
    }

    /// The same closings described by the smaller set: if a closing makes more than half of the moves, by those it
    /// leaves out.
    pub(super) fn by_fewest(mut self) -> AxisClosings {
        if 2 * self.choose > self.moves.len() {
            // All moves are made first; each is then the move that undoes it.
            for Move { wall, change } in &mut self.moves {
                self.walls[*wall].steps += *change;
                *change = -*change;
            }
            self.choose = self.moves.len() - self.choose;
        }
        self
    }

    /// The length of each leg in steps, with these moves made.
    pub(super) fn lengths(&self, taken: &[usize]) -> Vec<i64> {
        let mut lengths: Vec<i64> = self.walls.iter().map(|wall| wall.steps).collect();
        for &one_move in taken {
            let Move { wall, change } = self.moves[one_move];
            lengths[wall] += change;
        }
        lengths
    }
}

/// The two lengths in whole steps that a wall may have.
struct Candidate {
    /// 1 if the starting length is the rounded-up one, else 0. The starting length follows the rule; if both lengths or
    /// neither do, it is the shorter.
    up: i64,
    /// The change in steps to its other length: 1 or -1; 0 if it has only one.
    change: i64,
    /// Whether both lengths are allowed by the rule.
    free: bool,
}

/// The possible lengths of a wall that is `above` nanometers longer than a whole step.
fn candidate(above: i64, unit: i64, freedom: RoundingFreedom) -> Candidate {
    if above == 0 {
        return Candidate { up: 0, change: 0, free: false };
    }
    let within = |distance: i64| match freedom {
        RoundingFreedom::Any => true,
        RoundingFreedom::WithinReading(reading) => 2 * distance <= unit + 2 * reading.nm(),
    };
    match (within(above), within(unit - above)) {
        (false, true) => Candidate { up: 1, change: -1, free: false },
        (true, high) => Candidate { up: 0, change: 1, free: high },
        (false, false) => Candidate { up: 0, change: 1, free: false },
    }
}

/// The closings of an axis that round as few legs as possible against the rule; `None` where it cannot close.
pub(super) fn axis_closings(
    legs: &[RoundedLeg],
    unit: i64,
    freedom: RoundingFreedom,
) -> Option<AxisClosings> {
    let mut walls = Vec::with_capacity(legs.len());
    let mut moves = Vec::with_capacity(legs.len());
    // The misclosure, and how many free moves would move the end forward and backward.
    let (mut miss, mut up, mut down) = (0_i64, 0_i64, 0_i64);
    for (i, leg) in legs.iter().enumerate() {
        let candidate = candidate(leg.above, unit, freedom);
        let steps = leg.steps + candidate.up;
        walls.push(Wall { side: leg.side, sign: leg.sign, steps });
        miss += leg.sign * steps;
        if candidate.free {
            moves.push(Move { wall: i, change: candidate.change });
            *(if leg.sign == candidate.change { &mut up } else { &mut down }) += 1;
        }
    }
    let steps = -miss;
    if (-down..=up).contains(&steps) {
        // All free moves backward are made first; then each item is either a move forward or undoes one backward.
        for Move { wall, change } in &mut moves {
            if legs[*wall].sign != *change {
                walls[*wall].steps += *change;
                *change = -*change;
            }
        }
        return Some(AxisClosings { walls, moves, choose: usize::try_from(steps + down).ok()? });
    }
    // All free moves in the right direction are made, then as few as possible against the rule.
    let sense = steps.signum();
    for Move { wall, change } in moves.drain(..) {
        if legs[wall].sign * change == sense {
            walls[wall].steps += change;
        }
    }
    for (i, leg) in legs.iter().enumerate() {
        let candidate = candidate(leg.above, unit, freedom);
        if !candidate.free && leg.sign * candidate.change == sense {
            moves.push(Move { wall: i, change: candidate.change });
        }
    }
    let choose = usize::try_from(if sense > 0 { steps - up } else { -steps - down }).ok()?;
    (choose <= moves.len()).then_some(AxisClosings { walls, moves, choose })
}

/// The rises, in nanometers, that rounding may give a curved wall.
fn rises(shape: Shape, unit: i64, freedom: RoundingFreedom) -> Vec<i64> {
    let Shape::Arc { rise, .. } = shape else {
        return vec![0];
    };
    let above = rise.abs().rem_euclid(unit);
    let candidate = candidate(above, unit, freedom);
    let first = rise.abs() - above + candidate.up * unit;
    let mut rises = vec![rise.signum() * first];
    if candidate.free {
        rises.push(rise.signum() * (first + candidate.change * unit));
    }
    rises
}

/// Every combination of rises, in nanometers, one per side; one empty combination if no wall is curved. `None` where
/// there are too many.
pub(super) fn rises_of(
    traverse: &Traverse,
    step: Step,
    freedom: RoundingFreedom,
) -> Option<Vec<Vec<i64>>> {
    const MOST: usize = 32;
    let mut all: Vec<Vec<i64>> = vec![Vec::new()];
    if !traverse.sides.iter().any(|side| matches!(side.shape, Shape::Arc { .. })) {
        return Some(all);
    }
    for side in &traverse.sides {
        let rises = rises(side.shape, step.length().nm(), freedom);
        let more: Vec<Vec<i64>> = rises[1..]
            .iter()
            .flat_map(|rise| all.iter().map(|before| [before.as_slice(), &[*rise]].concat()))
            .collect();
        all.iter_mut().for_each(|before| before.push(rises[0]));
        all.extend(more);
        if all.len() > MOST {
            return None;
        }
    }
    Some(all)
}
