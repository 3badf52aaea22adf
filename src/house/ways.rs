//! The ways in which an axis closes on whole steps: lengths to start from, and items of which a fixed number is taken.

use crate::house::walk::{Leg, Shape, Walk};
use crate::length::{Length, Step};

/// Beyond so many ways on the smaller axis the range is not stated.
pub(super) const MOST_WAYS: u64 = 100_000;

/// Which walls may go against the rounding.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Latitude {
    /// As few as must: those further than half a step and this reach from the step taken.
    Reach(Length),
    /// Any.
    Any,
}

/// How one axis can close: lengths to start from, and items of which a fixed number is taken.
pub(super) struct Ways {
    /// Side, sign, length in nanometres.
    pub(super) base: Vec<(usize, i64, i64)>,
    /// Each changes the length of one of `base` by one step.
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

    /// Side and signed length of each leg with these items taken.
    pub(super) fn lengths(&self, taken: &[usize]) -> Vec<(usize, i64)> {
        let mut lengths = Vec::with_capacity(self.base.len());
        self.lengths_into(taken, &mut lengths);
        lengths
    }

    pub(super) fn lengths_into(&self, taken: &[usize], lengths: &mut Vec<(usize, i64)>) {
        lengths.clear();
        lengths.extend(self.base.iter().map(|&(side, sign, length)| (side, sign * length)));
        for &item in taken {
            let (base, change) = self.items[item];
            lengths[base].1 += self.base[base].1 * change;
        }
    }
}

/// A leg on whole steps: the step below it, and what stands above.
struct Candidate {
    /// The length it has unless moved: the one that is not against the rounding, the lower where neither is.
    length: i64,
    /// Where the other one is: a step up, a step down; 0 where there is only one.
    change: i64,
    /// Moving is not against the rounding.
    free: bool,
}

fn candidate(length: i64, unit: i64, latitude: Latitude) -> Candidate {
    let above = length.rem_euclid(unit);
    let (low, to_high) = (length - above, unit - above);
    if above == 0 {
        return Candidate { length: low, change: 0, free: false };
    }
    let within = |distance: i64| match latitude {
        Latitude::Any => true,
        Latitude::Reach(reach) => 2 * distance <= unit + 2 * reach.nm(),
    };
    match (within(above), within(to_high)) {
        (false, true) => Candidate { length: low + unit, change: -unit, free: false },
        (true, high) => Candidate { length: low, change: unit, free: high },
        (false, false) => Candidate { length: low, change: unit, free: false },
    }
}

/// The ways in which an axis closes with as few legs as possible against the rounding; none where it cannot.
pub(super) fn ways(legs: &[Leg], unit: i64, latitude: Latitude) -> Option<Ways> {
    let candidates: Vec<Candidate> =
        legs.iter().map(|leg| candidate(leg.length, unit, latitude)).collect();
    let mut base: Vec<(usize, i64, i64)> =
        legs.iter().zip(&candidates).map(|(leg, c)| (leg.side, leg.sign, c.length)).collect();
    let miss: i64 = base.iter().map(|(_, sign, length)| sign * length).sum();
    // Every item, once taken, moves the end of the walk one step `toward` the start.
    let toward = |i: usize, change: i64| legs[i].sign * change;
    let free: Vec<usize> = (0..legs.len()).filter(|&i| candidates[i].free).collect();
    let up = free.iter().filter(|&&i| toward(i, candidates[i].change) > 0).count();
    let down = free.len() - up;
    let steps = -miss.checked_div(unit)?;
    let (up, down, steps) = (i64::try_from(up).ok()?, i64::try_from(down).ok()?, steps);
    if (-down..=up).contains(&steps) {
        // All that move back are taken first; each item then is a move forward or the undoing of one back.
        let mut items = Vec::with_capacity(free.len());
        for &i in &free {
            let change = candidates[i].change;
            if toward(i, change) > 0 {
                items.push((i, change));
            } else {
                base[i].2 += change;
                items.push((i, -change));
            }
        }
        return Some(Ways { base, items, choose: usize::try_from(steps + down).ok()? });
    }
    let sense = steps.signum();
    for &i in &free {
        if toward(i, candidates[i].change).signum() == sense {
            base[i].2 += candidates[i].change;
        }
    }
    let against = |&i: &usize| {
        let c = &candidates[i];
        !c.free && c.change != 0 && toward(i, c.change).signum() == sense
    };
    let items: Vec<(usize, i64)> =
        (0..legs.len()).filter(against).map(|i| (i, candidates[i].change)).collect();
    let choose = usize::try_from(if sense > 0 { steps - up } else { -steps - down }).ok()?;
    (choose <= items.len()).then_some(Ways { base, items, choose })
}

/// The rises a curved wall may be given.
fn rises(shape: Shape, unit: i64, latitude: Latitude) -> Vec<i64> {
    let Shape::Arc { rise, .. } = shape else {
        return vec![0];
    };
    let c = candidate(rise.abs(), unit, latitude);
    let mut rises = vec![rise.signum() * c.length];
    if c.free {
        rises.push(rise.signum() * (c.length + c.change));
    }
    rises
}

/// Every choice of rises of the curved walls, for each side one, empty where no wall is curved; none where there are
/// too many.
pub(super) fn rises_of(walk: &Walk, step: Step, latitude: Latitude) -> Option<Vec<Vec<i64>>> {
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

/// Every choice of so many of so many, in order.
pub(super) struct Combinations {
    of: usize,
    now: Vec<usize>,
    is_done: bool,
}

impl Combinations {
    pub(super) fn new(of: usize, choose: usize) -> Combinations {
        Combinations { of, now: (0..choose).collect(), is_done: false }
    }

    /// The choice at hand; none after the last.
    pub(super) fn current(&self) -> Option<&[usize]> {
        (!self.is_done).then_some(&self.now)
    }

    pub(super) fn advance(&mut self) {
        let k = self.now.len();
        match (0..k).rev().find(|&i| self.now[i] + k - i < self.of) {
            Some(i) => {
                self.now[i] += 1;
                for j in i + 1..k {
                    self.now[j] = self.now[j - 1] + 1;
                }
            }
            None => self.is_done = true,
        }
    }
}

impl Iterator for Combinations {
    type Item = Vec<usize>;

    fn next(&mut self) -> Option<Vec<usize>> {
        let current = self.current()?.to_vec();
        self.advance();
        Some(current)
    }
}
