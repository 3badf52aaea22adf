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

/// Outcomes of one axis: for each, the lengths of its walls in whole steps (one outcome after another), and its
/// probability. Ways to close the axis that come to the same lengths are one outcome.
#[derive(Clone, Debug)]
pub(super) struct OnSteps {
    pub(super) walls: usize,
    lengths: Vec<i64>,
    /// The same lengths, one wall after another.
    by_wall: Vec<f64>,
    pub(super) chances: Vec<f64>,
    /// The sum of the probabilities.
    pub(super) all: f64,
}

impl OnSteps {
    /// The lengths of the walls in each outcome.
    pub(super) fn iter(&self) -> impl Iterator<Item = &[i64]> {
        self.lengths.chunks_exact(self.walls.max(1))
    }

    /// The length of one wall in each outcome, in whole steps.
    pub(super) fn of_wall(&self, wall: usize) -> &[f64] {
        let count = self.chances.len();
        &self.by_wall[wall * count..][..count]
    }
}

/// The most that any one way to take a remaining step has of all.
const MOST_OF_A_WAY: f64 = FROM_ANY.max(FROM_NEAREST).max(FROM_LONGEST).max(FROM_LAST);

/// The likely outcomes of one axis.
pub(super) fn on_steps(legs: &[Leg], way: StepRounding, reading: Length) -> OnSteps {
    let unit = way.step().length().nm();
    let rounded_nm: Vec<i64> = legs.iter().map(|leg| way.rounded(leg.length)).collect();
    let rounded: Vec<i64> = rounded_nm.iter().map(|nm| nm.checked_div(unit).unwrap_or(0)).collect();
    let chances: Vec<f64> =
        legs.iter().map(|leg| chance_of_other_step(leg.length, way, reading)).collect();
    let mut either: Vec<usize> = (0..legs.len()).filter(|&i| chances[i] > 0.01).collect();
    either.sort_by(|&a, &b| chances[b].total_cmp(&chances[a]).then(a.cmp(&b)));
    either.truncate(MOST_EITHER_WAY);
    let all_same: f64 = chances.iter().map(|chance| 1.0 - chance).product();
    // What the probability is multiplied by if a wall goes the other way, and how its length changes then.
    let other_way = |&i: &usize| {
        let step = if rounded_nm[i] < legs[i].length { 1 } else { -1 };
        (i, chances[i] / (1.0 - chances[i]), step)
    };
    let either: Vec<(usize, f64, i64)> = either.iter().map(other_way).collect();
    let mut sets: Vec<(f64, u32)> = Vec::with_capacity(1 << MOST_EITHER_WAY);
    for mask in 0..1_u32 << either.len() {
        let taken = either.iter().enumerate().filter(|(bit, _)| mask >> bit & 1 == 1);
        let chance = taken.fold(all_same, |chance, (_, (_, odds, _))| chance * odds);
        if chance > LEAST {
            sets.push((chance, mask));
        }
    }
    // The likeliest first, so that what follows is soon too rare.
    sets.sort_by(|a, b| b.0.total_cmp(&a.0));
    let mut closings = Closings::new(legs, unit);
    let mut lengths = rounded.clone();
    for (chance, mask) in sets {
        lengths.copy_from_slice(&rounded);
        for (bit, &(i, _, step)) in either.iter().enumerate() {
            lengths[i] += if mask >> bit & 1 == 1 { step } else { 0 };
        }
        if lengths.iter().all(|length| *length >= 0) {
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
    /// The walls that can take a step, in a set.
    able: Vec<usize>,
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
            ways: Vec::with_capacity(MOST_OF_AN_AXIS + 1),
            able: Vec::with_capacity(legs.len()),
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
        if misses != 0 && self.is_too_rare(chance * MOST_OF_A_WAY) {
            return;
        }
        self.rounded.extend_from_slice(lengths);
        self.misses.push(misses);
        if misses == 0 {
            self.push(&[], chance);
            return;
        }
        let change = |i: usize| change(legs, misses, i);
        let mut able = std::mem::take(&mut self.able);
        able.clear();
        able.extend((0..legs.len()).filter(|&i| lengths[i] + change(i) > 0));
        self.take_steps(lengths, (misses, steps), &able, chance);
        self.able = able;
    }

    /// Adds the ways in which the walls that are `able` take the steps by which these lengths miss.
    fn take_steps(
        &mut self,
        lengths: &[i64],
        (misses, steps): (i64, usize),
        able: &[usize],
        chance: f64,
    ) {
        let (legs, unit) = (self.legs, self.unit);
        let change = |i: usize| change(legs, misses, i);
        let off = |lengths: &[i64], i: usize| change(i) * (lengths[i] * unit - legs[i].length);
        let nearest = |lengths: &[i64]| {
            let key = |i: &usize| (off(lengths, *i), std::cmp::Reverse(legs[*i].length), *i);
            able.iter().copied().min_by_key(key)
        };
        let longest = able.iter().copied().max_by_key(|&i| (lengths[i], std::cmp::Reverse(i)));
        let m = able.len() as f64;
        let (Some(near), Some(long), Some(&last)) = (nearest(lengths), longest, able.last()) else {
            return;
        };
        let after = |steps: &[usize], i: usize| {
            lengths[i] + change(i) * steps.iter().filter(|step| **step == i).count() as i64
        };
        // No wall may vanish.
        let none_is_zero = lengths.iter().all(|length| *length > 0);
        let mut push = |steps: &[usize], share: f64| {
            if self.is_too_rare(chance * share) {
                return;
            }
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
            able.iter().for_each(|&i| push(&[i], FROM_ANY / m));
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
            for (place, &i) in able.iter().enumerate() {
                push(&[i, i], FROM_ANY / (m * m));
                let later = able[place + 1..].iter();
                later.for_each(|&j| push(&[i, j], 2.0 * FROM_ANY / (m * m)));
            }
        }
    }

    /// Whether a way this likely is not among the likeliest so far.
    fn is_too_rare(&self, chance: f64) -> bool {
        self.ways.get(MOST_OF_AN_AXIS - 1).is_some_and(|least| chance <= least.chance)
    }

    /// Adds a way that starts from the last set, if it is among the likeliest so far.
    fn push(&mut self, walls: &[usize], chance: f64) {
        if self.is_too_rare(chance) {
            return;
        }
        let place = self.ways.iter().rposition(|way| way.chance >= chance).map_or(0, |i| i + 1);
        let mut steps = [0; MOST_MISSED];
        steps.iter_mut().zip(walls).for_each(|(step, wall)| *step = *wall as u8);
        self.ways.truncate(MOST_OF_AN_AXIS - 1);
        self.ways.insert(place, ClosingWay { chance, set: self.misses.len() - 1, steps });
    }

    /// The outcomes of the likeliest ways, in the order of the likeliest way to each.
    fn outcomes(&self) -> OnSteps {
        let walls = self.legs.len();
        let mut lengths: Vec<i64> = Vec::with_capacity((self.ways.len() + 1) * walls);
        let mut chances: Vec<f64> = Vec::with_capacity(self.ways.len());
        let mut sums = [0; MOST_OF_AN_AXIS];
        for way in &self.ways {
            let start = lengths.len();
            lengths.extend_from_slice(&self.rounded[way.set * walls..][..walls]);
            let misses = self.misses[way.set];
            for &step in way.steps.iter().take(misses.unsigned_abs() as usize) {
                let i = usize::from(step);
                lengths[start + i] += change(self.legs, misses, i);
            }
            let (known, new) = lengths.split_at(start);
            // Most of those that are not the same differ in this sum.
            let sum =
                new.iter().fold(0_i64, |sum, length| sum.wrapping_mul(31).wrapping_add(*length));
            let mut known = known.chunks_exact(walls.max(1)).zip(&sums);
            let known = known.position(|(known, its)| *its == sum && known == new);
            if let Some(known) = known {
                chances[known] += way.chance;
                lengths.truncate(start);
            } else {
                sums[chances.len()] = sum;
                chances.push(way.chance);
            }
        }
        let mut by_wall = vec![0.0; lengths.len()];
        for (outcome, its) in lengths.chunks_exact(walls.max(1)).enumerate() {
            for (wall, length) in its.iter().enumerate() {
                by_wall[wall * chances.len() + outcome] = *length as f64;
            }
        }
        let all = chances.iter().sum();
        OnSteps { walls, lengths, by_wall, chances, all }
    }
}

/// How the length of a wall changes, in steps, when it takes one of the steps by which an axis misses.
fn change(legs: &[Leg], misses: i64, wall: usize) -> i64 {
    -misses.signum() * legs[wall].sign
}
