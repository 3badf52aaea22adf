//! The likely ways in which an office rounds and closes the walls of one axis: which walls a reading error makes it
//! round to the other step, and which walls then absorb the leftover steps.
#![expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_possible_wrap,
    reason = "chances are floats; steps are few"
)]

use crate::areas::uncertainty::chance_of_other_step;
use crate::geometry::traverse::{Leg, StepRounding};
use crate::units::length::Length;

/// The most outcomes of an axis that are considered, and the lowest probability of each.
pub(super) const MOST_OF_AN_AXIS: usize = 24;
const LEAST: f64 = 0.004;
/// The largest misclosure in steps for which closings are considered.
const MOST_MISSED: usize = 4;
/// The most walls of an axis for which both ways of rounding are considered.
const MOST_EITHER_WAY: usize = 4;

/// How often each wall gives up a leftover step: any wall alike; the wall that ends nearest to its measured length; the
/// longest; the last one walked. Our judgment; no data found.
const FROM_ANY: f64 = 0.40;
const FROM_NEAREST: f64 = 0.30;
const FROM_LONGEST: f64 = 0.15;
const FROM_LAST: f64 = 0.15;

/// A whole number for each outcome of an axis.
pub(super) type PerOutcome = [f64; MOST_OF_AN_AXIS];

/// Outcomes of one axis: for each, the lengths of its walls in whole steps (one outcome after another), and its
/// probability.
#[derive(Clone, Debug)]
pub(super) struct OnSteps {
    pub(super) walls: usize,
    lengths: Vec<i64>,
    pub(super) chances: Vec<f64>,
    /// For each outcome, the number of its set of lengths. Equal sets have the same number, counted in order of
    /// appearance.
    pub(super) sets: Vec<usize>,
}

impl OnSteps {
    pub(super) fn iter(&self) -> impl Iterator<Item = (&[i64], f64)> {
        self.lengths.chunks_exact(self.walls.max(1)).zip(self.chances.iter().copied())
    }

    /// The length of one wall in each outcome, in whole steps.
    pub(super) fn of_wall(&self, wall: usize) -> PerOutcome {
        let mut lengths = [0.0; MOST_OF_AN_AXIS];
        for (length, (one, _)) in lengths.iter_mut().zip(self.iter()) {
            *length = one[wall] as f64;
        }
        lengths
    }
}

/// The likely outcomes of one axis, most likely first.
pub(super) fn on_steps(legs: &[Leg], way: StepRounding, reading: Length) -> OnSteps {
    let unit = way.step().length().nm();
    let rounded: Vec<i64> =
        legs.iter().map(|leg| way.rounded(leg.length).checked_div(unit).unwrap_or(0)).collect();
    let chances: Vec<f64> =
        legs.iter().map(|leg| chance_of_other_step(leg.length, way, reading)).collect();
    let mut either: Vec<usize> = (0..legs.len()).filter(|&i| chances[i] > 0.01).collect();
    either.sort_by(|&a, &b| chances[b].total_cmp(&chances[a]).then(a.cmp(&b)));
    either.truncate(MOST_EITHER_WAY);
    let all_same: f64 = chances.iter().map(|chance| 1.0 - chance).product();
    // What the probability is multiplied by if a wall goes the other way, and how its length changes then.
    let other_way = |&i: &usize| {
        let step = if way.rounded(legs[i].length) < legs[i].length { 1 } else { -1 };
        (i, chances[i] / (1.0 - chances[i]), step)
    };
    let either: Vec<(usize, f64, i64)> = either.iter().map(other_way).collect();
    let mut closings = Closings::new(legs, unit);
    let mut lengths = rounded.clone();
    for mask in 0..1_u32 << either.len() {
        lengths.copy_from_slice(&rounded);
        let mut chance = all_same;
        for (bit, &(i, odds, step)) in either.iter().enumerate() {
            if mask >> bit & 1 == 1 {
                chance *= odds;
                lengths[i] += step;
            }
        }
        if chance > LEAST && lengths.iter().all(|length| *length >= 0) {
            closings.add(&lengths, chance);
        }
    }
    closings.outcomes()
}

/// The ways to close an axis whose walls were rounded.
struct Closings<'a> {
    legs: &'a [Leg],
    unit: i64,
    /// The sets of rounded lengths, one after another, and the number of steps by which each set misses.
    rounded: Vec<i64>,
    misses: Vec<i64>,
    /// The likeliest ways, most likely first; of equally likely ones, the earlier first.
    ways: Vec<ClosingWay>,
}

/// A way to close an axis.
struct ClosingWay {
    chance: f64,
    /// The number of the set of rounded lengths that it starts from.
    set: usize,
    /// The walls that take a step, as many as the steps by which the set misses.
    steps: [u8; MOST_MISSED],
}

impl<'a> Closings<'a> {
    fn new(legs: &'a [Leg], unit: i64) -> Closings<'a> {
        Closings {
            legs,
            unit,
            rounded: Vec::with_capacity(8 * legs.len()),
            misses: Vec::with_capacity(8),
            ways: Vec::with_capacity(MOST_OF_AN_AXIS),
        }
    }

    /// Adds the ways to close these lengths, if they miss by only a few steps.
    fn add(&mut self, lengths: &[i64], chance: f64) {
        let legs = self.legs;
        let misses: i64 = legs.iter().zip(lengths).map(|(leg, length)| leg.sign * length).sum();
        let steps = usize::try_from(misses.abs()).unwrap_or(usize::MAX);
        if steps > MOST_MISSED {
            return;
        }
        self.rounded.extend_from_slice(lengths);
        self.misses.push(misses);
        if misses == 0 {
            self.push(&[], chance);
            return;
        }
        let change = |i: usize| change(legs, misses, i);
        let able = || (0..legs.len()).filter(|&i| lengths[i] + change(i) > 0);
        let Some(last) = able().next_back() else { return };
        let unit = self.unit;
        let off = |lengths: &[i64], i: usize| change(i) * (lengths[i] * unit - legs[i].length);
        let nearest = |lengths: &[i64]| {
            able().min_by_key(|&i| (off(lengths, i), std::cmp::Reverse(legs[i].length), i))
        };
        let longest = able().max_by_key(|&i| (lengths[i], std::cmp::Reverse(i)));
        let m = able().count() as f64;
        let (Some(near), Some(long)) = (nearest(lengths), longest) else { return };
        let after = |steps: &[usize], i: usize| {
            lengths[i] + change(i) * steps.iter().filter(|step| **step == i).count() as i64
        };
        // No wall may vanish.
        let none_is_zero = lengths.iter().all(|length| *length > 0);
        let mut push = |steps: &[usize], share: f64| {
            let stays = |i: usize| after(steps, i) > 0;
            let all_stay = if none_is_zero {
                steps.iter().all(|&i| stays(i))
            } else {
                (0..legs.len()).all(stays)
            };
            if all_stay {
                self.push(steps, chance * share);
            }
        };
        if steps == 1 {
            able().for_each(|i| push(&[i], FROM_ANY / m));
            push(&[near], FROM_NEAREST);
            push(&[long], FROM_LONGEST);
            push(&[last], FROM_LAST);
            return;
        }
        let (mut then, mut nearer) = (lengths.to_vec(), Vec::with_capacity(steps));
        while let Some(next) = nearest(&then).filter(|_| nearer.len() < steps) {
            then[next] += change(next);
            nearer.push(next);
        }
        push(&nearer, FROM_NEAREST);
        push(&[long; MOST_MISSED][..steps], FROM_LONGEST);
        push(&[last; MOST_MISSED][..steps], FROM_LAST);
        if steps == 2 && chance * FROM_ANY / (m * m) > LEAST / 10.0 {
            for i in able() {
                push(&[i, i], FROM_ANY / (m * m));
                able().filter(|&j| j > i).for_each(|j| push(&[i, j], 2.0 * FROM_ANY / (m * m)));
            }
        }
    }

    /// Adds a way that starts from the last set, if it is among the likeliest so far.
    fn push(&mut self, walls: &[usize], chance: f64) {
        let least = self.ways.get(MOST_OF_AN_AXIS - 1);
        if least.is_some_and(|least| chance <= least.chance) {
            return;
        }
        let place = self.ways.partition_point(|way| way.chance >= chance);
        let mut steps = [0; MOST_MISSED];
        steps.iter_mut().zip(walls).for_each(|(step, wall)| *step = *wall as u8);
        self.ways.truncate(MOST_OF_AN_AXIS - 1);
        self.ways.insert(place, ClosingWay { chance, set: self.misses.len() - 1, steps });
    }

    /// The outcomes of the likeliest ways.
    fn outcomes(&self) -> OnSteps {
        let walls = self.legs.len();
        let mut lengths = Vec::with_capacity(self.ways.len() * walls);
        let mut sets = Vec::with_capacity(self.ways.len());
        let mut firsts: Vec<usize> = Vec::with_capacity(self.ways.len());
        for way in &self.ways {
            let start = lengths.len();
            lengths.extend_from_slice(&self.rounded[way.set * walls..][..walls]);
            let misses = self.misses[way.set];
            for &step in way.steps.iter().take(misses.unsigned_abs() as usize) {
                let i = usize::from(step);
                lengths[start + i] += change(self.legs, misses, i);
            }
            let is_same = |first: &usize| lengths[*first..][..walls] == lengths[start..];
            let set = firsts.iter().position(is_same).unwrap_or(firsts.len());
            if set == firsts.len() {
                firsts.push(start);
            }
            sets.push(set);
        }
        let chances = self.ways.iter().map(|way| way.chance).collect();
        OnSteps { walls, lengths, chances, sets }
    }
}

/// How the length of a wall changes, in steps, when it takes one of the steps by which an axis misses.
fn change(legs: &[Leg], misses: i64, wall: usize) -> i64 {
    -misses.signum() * legs[wall].sign
}
