//! The ways in which an axis closes on whole steps: lengths to start from, and items of which a fixed number is taken.

use crate::geometry::traverse::{Leg, Shape, Traverse};
use crate::units::length::{Length, Step};

/// Beyond so many ways on the smaller axis the range is not stated.
pub(super) const MOST_WAYS: u64 = 100_000;

/// Which walls may go against the rounding.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum RoundingFreedom {
    /// As few as must: those further than half a step and this reach from the step taken.
    Reach(Length),
    /// Any.
    Any,
}

/// A leg seen on steps: so many whole steps, and what is left above them in nanometers.
#[derive(Clone, Copy)]
pub(super) struct RoundedOutline {
    pub(super) side: usize,
    pub(super) sign: i64,
    pub(super) steps: i64,
    above: i64,
}

impl RoundedOutline {
    pub(super) fn of(leg: Leg, unit: i64) -> RoundedOutline {
        let steps = leg.length.checked_div(unit).unwrap_or(0);
        RoundedOutline { side: leg.side, sign: leg.sign, steps, above: leg.length - steps * unit }
    }

    /// How far `steps` are from its own length, in nanometers.
    pub(super) fn off(&self, steps: i64, unit: i64) -> i64 {
        (steps - self.steps) * unit - self.above
    }
}

/// How one axis can close: lengths to start from, and items of which a fixed number is taken.
pub(super) struct Ways {
    /// Side, sign, length in steps.
    pub(super) base: Vec<(usize, i64, i64)>,
    /// Each changes the length of one of `base` by one step, up or down.
    pub(super) items: Vec<(usize, i64)>,
    pub(super) choose: usize,
}

impl Ways {
    /// How many ways there are, at most one more than is gone through.
    pub(super) fn count(&self) -> u64 {
        let few = self.choose.min(self.items.len() - self.choose) as u64;
        let mut count = 1_u64;
        for i in 0..few {
            let numerator = count.saturating_mul(self.items.len() as u64 - i);
            count = numerator.checked_div(i + 1).unwrap_or(numerator);
            if count > 1_000 * MOST_WAYS {
                return u64::MAX;
            }
        }
        count
    }

    /// The same ways, told by what is left out where that is less than what is taken.
    pub(super) fn by_fewest(mut self) -> Ways {
        if 2 * self.choose > self.items.len() {
            for (base, change) in &mut self.items {
                self.base[*base].2 += *change;
                *change = -*change;
            }
            self.choose = self.items.len() - self.choose;
        }
        self
    }

    /// The length in steps of each leg with these items taken.
    pub(super) fn lengths(&self, taken: &[usize]) -> Vec<i64> {
        let mut lengths: Vec<i64> = self.base.iter().map(|&(.., length)| length).collect();
        for &item in taken {
            let (base, change) = self.items[item];
            lengths[base] += change;
        }
        lengths
    }
}

/// A length on whole steps: which of the two it may have.
struct Candidate {
    /// 1 if it goes to the step above unless moved: to the one that is not against the rounding, to the lower where
    /// neither is.
    up: i64,
    /// Where the other one is: a step up, a step down; 0 where there is only one.
    change: i64,
    /// Moving is not against the rounding.
    free: bool,
}

/// What may become of a length that is so far `above` a step.
fn candidate(above: i64, unit: i64, latitude: RoundingFreedom) -> Candidate {
    if above == 0 {
        return Candidate { up: 0, change: 0, free: false };
    }
    let within = |distance: i64| match latitude {
        RoundingFreedom::Any => true,
        RoundingFreedom::Reach(reading) => 2 * distance <= unit + 2 * reading.nm(),
    };
    match (within(above), within(unit - above)) {
        (false, true) => Candidate { up: 1, change: -1, free: false },
        (true, high) => Candidate { up: 0, change: 1, free: high },
        (false, false) => Candidate { up: 0, change: 1, free: false },
    }
}

/// The ways in which an axis closes with as few legs as possible against the rounding; none where it cannot.
pub(super) fn ways(legs: &[RoundedOutline], unit: i64, latitude: RoundingFreedom) -> Option<Ways> {
    let mut base = Vec::with_capacity(legs.len());
    let mut items = Vec::with_capacity(legs.len());
    // What the walk misses by, and how many free items, once taken, move its end forward and back.
    let (mut miss, mut up, mut down) = (0_i64, 0_i64, 0_i64);
    for (i, leg) in legs.iter().enumerate() {
        let candidate = candidate(leg.above, unit, latitude);
        let length = leg.steps + candidate.up;
        base.push((leg.side, leg.sign, length));
        miss += leg.sign * length;
        if candidate.free {
            items.push((i, candidate.change));
            *(if leg.sign == candidate.change { &mut up } else { &mut down }) += 1;
        }
    }
    let steps = -miss;
    if (-down..=up).contains(&steps) {
        // All that move back are taken first; each item then is a move forward or the undoing of one back.
        for (i, change) in &mut items {
            if legs[*i].sign != *change {
                base[*i].2 += *change;
                *change = -*change;
            }
        }
        return Some(Ways { base, items, choose: usize::try_from(steps + down).ok()? });
    }
    // All that move the right way are taken, and then as few as must be against the rounding.
    let sense = steps.signum();
    for (i, change) in items.drain(..) {
        if legs[i].sign * change == sense {
            base[i].2 += change;
        }
    }
    for (i, leg) in legs.iter().enumerate() {
        let candidate = candidate(leg.above, unit, latitude);
        if !candidate.free && leg.sign * candidate.change == sense {
            items.push((i, candidate.change));
        }
    }
    let choose = usize::try_from(if sense > 0 { steps - up } else { -steps - down }).ok()?;
    (choose <= items.len()).then_some(Ways { base, items, choose })
}

/// The rises a curved wall may be given.
fn rises(shape: Shape, unit: i64, latitude: RoundingFreedom) -> Vec<i64> {
    let Shape::Arc { rise, .. } = shape else {
        return vec![0];
    };
    let above = rise.abs().rem_euclid(unit);
    let candidate = candidate(above, unit, latitude);
    let first = rise.abs() - above + candidate.up * unit;
    let mut rises = vec![rise.signum() * first];
    if candidate.free {
        rises.push(rise.signum() * (first + candidate.change * unit));
    }
    rises
}

/// Every choice of rises of the curved walls, for each side one, empty where no wall is curved; none where there are
/// too many.
pub(super) fn rises_of(
    walk: &Traverse,
    step: Step,
    latitude: RoundingFreedom,
) -> Option<Vec<Vec<i64>>> {
    const MOST: usize = 32;
    let mut all: Vec<Vec<i64>> = vec![Vec::new()];
    if !walk.sides.iter().any(|side| matches!(side.shape, Shape::Arc { .. })) {
        return Some(all);
    }
    for side in &walk.sides {
        let rises = rises(side.shape, step.length().nm(), latitude);
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
