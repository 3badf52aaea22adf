//! The areas an office could compute for a space, with their probabilities: which walls it rounds the other way
//! after reading the tape, and from which walls it then takes the remaining steps to close.
//!
//! All walls of an axis close together, so an axis has few likely outcomes; the area of each pair of outcomes is
//! exact. The rest is left to a normal distribution.
#![expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::cast_possible_wrap,
    reason = "chances are floats; steps and bins are small"
)]

use std::ops::Range;

use crate::areas::uncertainty::goes_the_other_way;
use crate::geometry::compass::Axis;
use crate::geometry::outline::Outline;
use crate::geometry::traverse::{Leg, Shape, StepRounding};
use crate::house::wall_moves::AtFace;
use crate::units::length::Length;

/// The largest error of a total that is listed, in square feet either way.
const REACH: usize = 160;
const BINS: usize = 2 * REACH + 1;

/// The most outcomes of an axis that are considered, and the lowest probability of each.
const MOST_OF_AN_AXIS: usize = 24;
const LEAST: f64 = 0.004;
/// The largest misclosure in steps for which closings are considered.
const MOST_MISSED: usize = 4;
/// The most walls that may be rounded either way.
const MOST_EITHER_WAY: usize = 4;

/// From which wall an office takes a remaining step: any wall alike, the one that is then nearest to its length, the
/// longest, or the last one walked. Judgment: no data is known.
const FROM_ANY: f64 = 0.40;
const FROM_NEAREST: f64 = 0.30;
const FROM_LONGEST: f64 = 0.15;
const FROM_LAST: f64 = 0.15;

/// The possible errors of a total in whole square feet, with their probabilities. What is missing to 1 is the
/// probability of any other error.
#[derive(Clone, Debug)]
pub(super) struct Outcomes {
    list: Vec<(i32, f64)>,
    /// The probability of all errors up to [`REACH`].
    listed: f64,
}

/// Outcomes of one axis: the lengths of its walls in whole steps, one outcome after another, with the probability of each.
#[derive(Clone, Debug)]
struct OnSteps {
    walls: usize,
    lengths: Vec<i64>,
    chances: Vec<f64>,
    /// Which of the different sets of lengths each outcome has; these are numbered as they come.
    sets: Vec<usize>,
}

impl OnSteps {
    fn iter(&self) -> impl Iterator<Item = (&[i64], f64)> {
        self.lengths.chunks_exact(self.walls.max(1)).zip(self.chances.iter().copied())
    }

    /// The length of one wall in each outcome, of which there are few enough.
    fn of_wall(&self, wall: usize) -> PerOutcome {
        let mut lengths = [0.0; MOST_OF_AN_AXIS];
        for (length, (one, _)) in lengths.iter_mut().zip(self.iter()) {
            *length = one[wall] as f64;
        }
        lengths
    }
}

impl Outcomes {
    /// No error: exactly the computed area.
    pub(super) fn sure() -> Outcomes {
        Outcomes::new(vec![(0, 1.0)])
    }

    /// No listed outcomes.
    pub(super) fn open() -> Outcomes {
        Outcomes::new(Vec::new())
    }

    fn new(list: Vec<(i32, f64)>) -> Outcomes {
        let near = list.iter().filter(|(off, _)| is_listed(f64::from(*off)));
        let listed: f64 = near.map(|(_, chance)| chance).sum();
        Outcomes { list, listed }
    }

    fn of_bins(bins: &[f64; BINS]) -> Outcomes {
        let mut list = Vec::with_capacity(64);
        for (off, &chance) in (-(REACH as i32)..).zip(bins) {
            if chance > 0.0 {
                list.push((off, chance));
            }
        }
        Outcomes::new(list)
    }

    /// The probability of one error, and of what is not listed, if there is no other space.
    fn alone(&self, off: f64) -> (f64, f64) {
        let wanted = off as i32;
        let here = |(error, _): &&(i32, f64)| *error == wanted;
        let at: f64 = self.list.iter().filter(here).map(|(_, chance)| chance).sum();
        (if is_listed(off) { at } else { 0.0 }, (1.0 - self.listed).max(0.0))
    }

    /// The same as errors of a total, if there is no other space.
    fn as_total(&self) -> Together {
        let near = || self.list.iter().filter(|(off, _)| is_listed(f64::from(*off)));
        let offs = || near().map(|(off, _)| *off as isize);
        let (Some(least), Some(most)) = (offs().min(), offs().max()) else {
            return Together { chances: Vec::new(), least: 0, rest: 1.0 };
        };
        let mut chances = vec![0.0; (most - least + 1) as usize];
        near().for_each(|(off, chance)| chances[(*off as isize - least) as usize] += chance);
        Together { chances, least, rest: (1.0 - self.listed).max(0.0) }
    }
}

/// Whether errors of so many square feet are listed.
fn is_listed(off: f64) -> bool {
    off.abs() <= REACH as f64
}

/// The likely outlines of a space on whole steps: each closing of one axis with each closing of the other.
#[derive(Clone, Debug)]
pub(super) struct OnGrid {
    north: Vec<Leg>,
    east: Vec<Leg>,
    norths: OnSteps,
    easts: OnSteps,
    /// The area of each pair, a whole number of square steps: all pairs of the first different north closing first.
    areas: Vec<f64>,
    /// The length of a step, in feet, and the computed area, in square feet.
    step: f64,
    middle: f64,
}

impl OnGrid {
    /// The outcomes of a space whose walls are rounded this way, relative to `ruled`, the computed area; only for
    /// straight walls along an axis, and steps larger than the reading.
    pub(super) fn of(
        at: &AtFace,
        ruled: &Outline,
        way: StepRounding,
        reading: Length,
    ) -> Option<OnGrid> {
        let straight = |shape: &Shape| matches!(shape, Shape::Straight { .. });
        let sides = &at.traverse.sides;
        let is_coarse = way.step().length().nm() > 2 * reading.nm();
        if !is_coarse || !sides.iter().all(|side| straight(&side.shape)) || sides.len() > 64 {
            return None;
        }
        let [north, east] = Axis::BOTH.map(|axis| at.traverse.legs(axis));
        let [norths, easts] = [&north, &east].map(|legs| on_steps(legs, way, reading));
        let count = easts.chances.len();
        let columns: Vec<f64> = (0..easts.walls).flat_map(|wall| easts.of_wall(wall)).collect();
        let mut areas = Vec::with_capacity(norths.chances.len() * count);
        let mut heights = Vec::with_capacity(easts.walls);
        let mut known = 0;
        for ((one, _), set) in norths.iter().zip(&norths.sets) {
            if *set < known {
                continue;
            }
            known += 1;
            signed_heights(at, [&north, &east], one, &mut heights);
            let mut row = [0.0_f64; MOST_OF_AN_AXIS];
            // Whole numbers far below 2⁵³, so floats are exact.
            for (height, column) in heights.iter().zip(columns.chunks_exact(MOST_OF_AN_AXIS)) {
                row.iter_mut().zip(column).for_each(|(area, length)| *area += height * length);
            }
            areas.extend(row.iter().take(count).map(|area| area.abs()));
        }
        let (step, middle) = (way.step().length().feet(), ruled.area().sq_ft());
        Some(OnGrid { north, east, norths, easts, areas, step, middle })
    }

    /// The possible deviations of the whole outline.
    pub(super) fn whole(&self) -> Outcomes {
        let none = [0.0; MOST_OF_AN_AXIS];
        self.outcomes(self.middle, &none, &none)
    }

    /// The possible deviations with the rectangle between two of its walls filled in or left off, which adds
    /// `effect`: both use the same lengths.
    pub(super) fn without(&self, walls: [usize; 2], sign: f64, effect: f64) -> Option<Outcomes> {
        let at = |legs: &[Leg]| legs.iter().position(|leg| walls.contains(&leg.side));
        let (north, east) = (at(&self.north)?, at(&self.east)?);
        let one = self.norths.of_wall(north).map(|length| sign * length);
        Some(self.outcomes(self.middle + effect, &one, &self.easts.of_wall(east)))
    }

    /// The possible deviations from `middle`; each pair of outcomes has the product of what stands for it in `one` and
    /// in `other` added to its area, in square steps.
    fn outcomes(&self, middle: f64, one: &PerOutcome, other: &PerOutcome) -> Outcomes {
        let mut bins = [0.0_f64; BINS];
        let square = self.step * self.step;
        let easts = self.easts.chances.as_slice();
        let mut rows = self.areas.chunks_exact(easts.len().max(1));
        let mut offs: Vec<[i32; MOST_OF_AN_AXIS]> = Vec::with_capacity(MOST_OF_AN_AXIS);
        for ((chance, one), set) in self.norths.chances.iter().zip(one).zip(&self.norths.sets) {
            if *set == offs.len() {
                let Some(areas) = rows.next() else { break };
                // No branch here, so that it is done for several pairs at once.
                let mut row = [0_i32; MOST_OF_AN_AXIS];
                for ((off, other), area) in row.iter_mut().zip(other).zip(areas) {
                    *off = nearest_whole((area + one * other) * square - middle);
                }
                offs.push(row);
            }
            for (off, its) in offs[*set].iter().zip(easts) {
                // Numbers below the first bin become larger than any.
                let bin = off.wrapping_add(REACH as i32) as u32 as usize;
                if let Some(bin) = bins.get_mut(bin) {
                    *bin += chance * its;
                }
            }
        }
        Outcomes::of_bins(&bins)
    }
}

/// A whole number for each outcome of an axis.
type PerOutcome = [f64; MOST_OF_AN_AXIS];

/// The nearest whole number, halves away from zero; the same as `round`, which is a call on most machines.
fn nearest_whole(number: f64) -> i32 {
    /// The largest number below a half.
    const HALF: f64 = 0.5 - 0.25 * f64::EPSILON;
    (number + HALF.copysign(number)) as i32
}

/// How far north the traverse is, in steps, at each wall that runs east, and how far south at each that runs west.
fn signed_heights(at: &AtFace, legs: [&[Leg]; 2], lengths: &[i64], heights: &mut Vec<f64>) {
    let [north, east] = legs;
    let mut walls = north.iter().zip(lengths).peekable();
    let mut across = east.iter();
    let mut height = 0;
    heights.clear();
    for side in 0..at.traverse.sides.len() {
        match walls.next_if(|(leg, _)| leg.side == side) {
            Some((leg, length)) => height += leg.sign * length,
            None => heights.extend(across.next().map(|leg| (leg.sign * height) as f64)),
        }
    }
}

/// The likely outcomes of one axis, most likely first.
fn on_steps(legs: &[Leg], way: StepRounding, reading: Length) -> OnSteps {
    let unit = way.step().length().nm();
    let rounded: Vec<i64> =
        legs.iter().map(|leg| way.rounded(leg.length).checked_div(unit).unwrap_or(0)).collect();
    let chances: Vec<f64> =
        legs.iter().map(|leg| goes_the_other_way(leg.length, way, reading)).collect();
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
    /// The rounded lengths, one set after another, and by how many steps each set misses.
    rounded: Vec<i64>,
    misses: Vec<i64>,
    /// The likeliest ways, most likely first; of equals the earlier.
    ways: Vec<ClosingWay>,
}

/// A way to close an axis.
struct ClosingWay {
    chance: f64,
    /// Which set of rounded lengths it starts from.
    set: usize,
    /// The walls that take a step, as many as the set misses.
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

    /// Adds the ways to close these lengths, if they miss by a few steps.
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

    /// Adds a way that starts from the last set, if it is one of the likeliest so far.
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

/// How the length of a wall changes when it takes one of the steps by which an axis misses.
fn change(legs: &[Leg], misses: i64, wall: usize) -> i64 {
    -misses.signum() * legs[wall].sign
}

/// The possible errors of several spaces together, each multiplied by a factor.
#[derive(Clone, Debug)]
pub(super) struct Together {
    /// The probability of each error from `least` on, in whole square feet.
    chances: Vec<f64>,
    least: isize,
    /// The probability of any other error.
    pub(super) rest: f64,
}

impl Together {
    /// With no space added.
    pub(super) fn new() -> Together {
        Together { chances: vec![1.0], least: 0, rest: 0.0 }
    }

    fn is_of_nothing(&self) -> bool {
        self.chances == [1.0] && self.least == 0
    }

    /// Adds one more space, multiplied by `factor`. If that is not a whole number, the total is `over` above one.
    pub(super) fn and(&self, other: &Outcomes, factor: f64, over: f64) -> Together {
        if self.is_of_nothing() && factor == 1.0 {
            return other.as_total();
        }
        let moved = || other.list.iter().map(|&(off, chance)| (shifted(off, factor, over), chance));
        let kept = || moved().filter_map(|(by, chance)| Some((by, chance, self.kept(by)?)));
        let (mut least, mut most) = (isize::MAX, isize::MIN);
        for (by, _, kept) in kept() {
            least = least.min(self.least + kept.start as isize + by);
            most = most.max(self.least + kept.end as isize + by);
        }
        if least > most {
            return Together { chances: Vec::new(), least: 0, rest: 1.0 };
        }
        let mut chances = vec![0.0; (most - least) as usize];
        let mut listed = 0.0;
        for (by, chance, kept) in kept() {
            let start = (self.least + kept.start as isize + by - least) as usize;
            for (there, here) in chances[start..].iter_mut().zip(&self.chances[kept]) {
                *there += here * chance;
                listed += here * chance;
            }
        }
        Together { chances, least, rest: (1.0 - listed).max(0.0) }
    }

    /// The same as [`Together::and`], but only the probability of one error, and what is not listed.
    pub(super) fn and_at(&self, other: &Outcomes, factor: f64, over: f64, off: f64) -> (f64, f64) {
        let wanted = off.round();
        if self.is_of_nothing() && factor == 1.0 {
            return other.alone(wanted);
        }
        let whole: f64 = self.chances.iter().sum();
        let (mut at, mut listed) = (0.0, 0.0);
        let is_listed = is_listed(wanted);
        for &(error, chance) in &other.list {
            let by = shifted(error, factor, over);
            if is_listed {
                at += self.chance(wanted as isize - by) * chance;
            }
            listed += chance
                * match self.kept(by) {
                    Some(kept) if kept.len() == self.chances.len() => whole,
                    Some(kept) => self.chances[kept].iter().sum(),
                    None => 0.0,
                };
        }
        (at, (1.0 - listed).max(0.0))
    }

    /// Which of the errors stay among those that are listed when all move by so much.
    fn kept(&self, by: isize) -> Option<Range<usize>> {
        let reach = REACH as isize;
        let (first, last) = (-reach - by - self.least, reach - by - self.least);
        let end = usize::try_from(last + 1).ok()?.min(self.chances.len());
        let start = usize::try_from(first).unwrap_or(0);
        (start < end).then_some(start..end)
    }

    fn chance(&self, off: isize) -> f64 {
        let place = usize::try_from(off - self.least).ok();
        place.and_then(|place| self.chances.get(place)).copied().unwrap_or(0.0)
    }

    /// The probability of this error, among those listed.
    pub(super) fn at(&self, off: f64) -> f64 {
        let off = off.round();
        if is_listed(off) { self.chance(off as isize) } else { 0.0 }
    }

    /// Each listed error with its probability.
    fn listed(&self) -> impl Iterator<Item = (f64, f64)> {
        (self.least..).map(|off| off as f64).zip(self.chances.iter().copied())
    }

    /// The probability of an error from `low` to `high`, among those listed.
    pub(super) fn within(&self, low: f64, high: f64) -> f64 {
        let lies = |off: f64| low <= off && off <= high;
        self.listed().filter(|(off, _)| lies(*off)).map(|(_, chance)| chance).sum()
    }

    /// The mean of the listed deviations and the variance about it; `None` if little is listed.
    pub(super) fn middle(&self) -> Option<(f64, f64)> {
        let listed = 1.0 - self.rest;
        if listed < 0.4 {
            return None;
        }
        let mean = self.listed().map(|(off, chance)| off * chance).sum::<f64>() / listed;
        let squares = self.listed().map(|(off, chance)| (off - mean).powi(2) * chance);
        Some((mean, squares.sum::<f64>() / listed))
    }

    /// The highest probability among those listed.
    pub(super) fn most(&self) -> f64 {
        self.chances.iter().copied().fold(0.0, f64::max)
    }
}

/// An error multiplied by a factor, in whole square feet.
fn shifted(off: i32, factor: f64, over: f64) -> isize {
    let by = f64::from(off) * factor;
    if factor.fract() == 0.0 { by as isize } else { (by + over + 0.5).floor() as isize }
}

/// The possible errors of a rectangle of two walls. Each may be rounded the other way with its probability, or be a
/// step longer or shorter if the outline is closed on it. `sign` tells whether the rectangle is added.
pub(super) fn of_rectangle(walls: [(f64, f64, f64); 2], step: f64, sign: f64) -> Outcomes {
    /// How often a wall of a part takes up a remaining step, in each direction.
    const CLOSED_ON: f64 = 0.06;
    let lengths = |(length, other_way, toward): (f64, f64, f64)| {
        let same = (1.0 - other_way) * (1.0 - 2.0 * CLOSED_ON);
        let toward = toward * step;
        [
            (length, same),
            (length + toward, other_way + (1.0 - other_way) * CLOSED_ON),
            (length - toward, (1.0 - other_way) * CLOSED_ON),
        ]
    };
    let whole = walls[0].0 * walls[1].0;
    let mut list: Vec<(i32, f64)> = Vec::with_capacity(9);
    for (one, chance) in lengths(walls[0]) {
        for (other, its) in lengths(walls[1]) {
            let off = sign * (one.max(0.0) * other.max(0.0) - whole);
            list.push((off.round() as i32, chance * its));
        }
    }
    Outcomes::new(list)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::outline::Vector;
    use crate::units::length::{Halves, Step};
    use proptest::collection::vec;
    use proptest::prelude::*;

    fn outcomes() -> impl Strategy<Value = Outcomes> {
        vec((-200..200_i32, 0.0..1.0_f64), 1..30).prop_map(|list| {
            let all: f64 = list.iter().map(|(_, chance)| chance).sum();
            let list = list.into_iter().map(|(off, chance)| (off, chance / (all + 0.1)));
            Outcomes::new(list.collect())
        })
    }

    /// An outline of three towers side by side, every length in inches.
    fn towers() -> impl Strategy<Value = String> {
        (vec(190..460_i64, 3), vec(60..200_i64, 3)).prop_map(|(deep, wide)| {
            let feet =
                |inches: i64| format!("{}' {}\"", inches.div_euclid(12), inches.rem_euclid(12));
            let mut text = "level \"G\"\nliving \"H\"\n".to_owned();
            let mut before = 0;
            for (&deep, &wide) in deep.iter().zip(&wide).chain([(&0, &0)]) {
                let way = if deep > before { "north" } else { "south" };
                let walls = [(way, (deep - before).abs()), ("east", wide)];
                let walls = walls.into_iter().filter(|(_, length)| *length > 0);
                walls.for_each(|(way, length)| text.push_str(&format!("{way} {}\n", feet(length))));
                before = deep;
            }
            text + &format!("west {}\n", feet(wide.iter().sum()))
        })
    }

    /// The area of an outline with these lengths along each axis, in steps, as its corners give it.
    fn area(at: &AtFace, legs: [&[Leg]; 2], lengths: [&[i64]; 2]) -> f64 {
        let mut vectors = vec![Vector::default(); at.traverse.sides.len()];
        for (axis, (legs, lengths)) in Axis::BOTH.into_iter().zip(legs.into_iter().zip(lengths)) {
            for (leg, length) in legs.iter().zip(lengths) {
                *vectors[leg.side].part(axis) = leg.sign * length * Length::FOOT.nm();
            }
        }
        Outline::new(vectors).map_or(f64::NAN, |outline| outline.area().sq_ft())
    }

    proptest! {
        #[test]
        fn every_pair_of_closings_closes_and_has_the_area_of_its_corners(
            text in towers(),
            way in prop::sample::select(vec![
                StepRounding::Nearest(Step::WholeFoot, Halves::Up),
                StepRounding::Up(Step::WholeFoot),
                StepRounding::Down(Step::WholeFoot),
            ]),
        ) {
            let house = crate::read::read("t.sides", text);
            prop_assume!(house.is_ok());
            let Ok(house) = house else { return Ok(()) };
            let Ok(at) = house.at_face(0, crate::house::Face::Outside) else { return Ok(()) };
            let reading = Length::from_nm(Length::FOOT.nm().div_euclid(7));
            let Some(grid) = OnGrid::of(&at, &at.outline, way, reading) else {
                return Err(TestCaseError::fail("straight walls have a grid"));
            };
            let area_of = |i: usize, j: usize| {
                grid.areas[grid.norths.sets[i] * grid.easts.chances.len() + j]
            };
            for (i, (north, _)) in grid.norths.iter().enumerate() {
                for (j, (east, _)) in grid.easts.iter().enumerate() {
                    let corners = area(&at, [&grid.north, &grid.east], [north, east]);
                    prop_assert_eq!(area_of(i, j), corners);
                }
            }
            for axis in [&grid.norths, &grid.easts] {
                prop_assert!(axis.chances.len() <= MOST_OF_AN_AXIS);
                prop_assert!(axis.chances.is_sorted_by(|a, b| a >= b));
                prop_assert!(axis.chances.iter().sum::<f64>() < 1.0 + 1e-9);
            }
            // Each outcome of the whole stands for the pairs of that area.
            let middle = at.outline.area().sq_ft();
            let chances = |axis: &OnSteps| axis.chances.clone();
            let mut listed = std::collections::BTreeMap::<i32, f64>::new();
            for (i, one) in chances(&grid.norths).iter().enumerate() {
                for (j, other) in chances(&grid.easts).iter().enumerate() {
                    let off = (area_of(i, j) - middle).round();
                    if is_listed(off) {
                        *listed.entry(off as i32).or_default() += one * other;
                    }
                }
            }
            prop_assert_eq!(grid.whole().list, listed.into_iter().collect::<Vec<_>>());
        }

        #[test]
        fn errors_of_two_spaces_add_up_as_when_each_pair_is_listed(
            one in outcomes(),
            other in outcomes(),
            factor in prop::sample::select(vec![1.0, -1.0, 2.0, 0.5, -0.75]),
            over in -0.5..0.5_f64,
            off in -170..170_i32,
        ) {
            let near = |off: isize| is_listed(off as f64);
            let (mut at, mut listed) = (0.0, 0.0);
            for &(error, chance) in one.list.iter().filter(|(error, _)| near(*error as isize)) {
                for &(more, its) in &other.list {
                    let sum = error as isize + shifted(more, factor, over);
                    listed += if near(sum) { chance * its } else { 0.0 };
                    at += if near(sum) && sum == off as isize { chance * its } else { 0.0 };
                }
            }
            let all = Together::new().and(&one, 1.0, 0.0).and(&other, factor, over);
            prop_assert!((all.at(f64::from(off)) - at).abs() < 1e-12);
            prop_assert!((all.rest - (1.0 - listed)).abs() < 1e-12);
            // A space alone, listed as a whole and at one error only.
            let (alone, rest) = Together::new().and_at(&one, 1.0, 0.0, f64::from(off));
            let all = Together::new().and(&one, 1.0, 0.0);
            prop_assert!((all.at(f64::from(off)) - alone).abs() < 1e-12);
            prop_assert!((all.rest - rest).abs() < 1e-12);
        }

        /// The last space of a total is not spread over all errors; that changes nothing.
        #[test]
        fn one_error_alone_is_as_likely_as_in_the_whole_list(
            one in outcomes(),
            other in outcomes(),
            factor in prop::sample::select(vec![1.0, -1.0, 2.0, 0.5, -0.75]),
            over in -0.5..0.5_f64,
            off in -170.0..170.0_f64,
        ) {
            let before = Together::new().and(&one, 1.0, 0.0);
            let all = before.and(&other, factor, over);
            let (at, rest) = before.and_at(&other, factor, over, off);
            prop_assert!((at - all.at(off)).abs() < 1e-12, "{at} {}", all.at(off));
            prop_assert!((rest - all.rest).abs() < 1e-12, "{rest} {}", all.rest);
        }
    }
}
