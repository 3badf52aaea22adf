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

use crate::areas::uncertainty::goes_the_other_way;
use crate::geometry::compass::Axis;
use crate::geometry::outline::Outline;
use crate::geometry::traverse::{Leg, Shape, StepRounding};
use crate::house::wall_moves::AtFace;
use crate::units::length::Length;

/// The largest error of a total that is listed, in square feet either way.
pub(super) const REACH: usize = 160;
pub(super) const BINS: usize = 2 * REACH + 1;

/// The most outcomes of an axis that are considered, and the lowest probability of each.
const MOST_OF_AN_AXIS: usize = 24;
const LEAST: f64 = 0.004;
/// The largest misclosure in steps for which closings are considered.
const MOST_MISSED: i64 = 4;
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
    pub(super) list: Vec<(i32, f64)>,
}

/// Outcomes of one axis: the lengths of its walls in whole steps, one outcome after another, with the probability of each.
#[derive(Clone, Debug)]
struct OnSteps {
    walls: usize,
    lengths: Vec<i64>,
    chances: Vec<f64>,
}

impl OnSteps {
    fn iter(&self) -> impl Iterator<Item = (&[i64], f64)> {
        self.lengths.chunks_exact(self.walls.max(1)).zip(self.chances.iter().copied())
    }

    /// Adds an outcome with each of these walls a step longer or shorter, unless a wall vanishes.
    fn push(
        &mut self,
        lengths: &[i64],
        steps: &[usize],
        change: impl Fn(usize) -> i64,
        chance: f64,
    ) {
        let start = self.lengths.len();
        self.lengths.extend_from_slice(lengths);
        steps.iter().for_each(|&i| self.lengths[start + i] += change(i));
        if self.lengths[start..].iter().all(|length| *length > 0) {
            self.chances.push(chance);
        } else {
            self.lengths.truncate(start);
        }
    }

    /// The likeliest of them, most likely first; of equals the earlier.
    fn likeliest(&self, most: usize) -> OnSteps {
        let mut order: Vec<usize> = (0..self.chances.len()).collect();
        order.sort_by(|&a, &b| self.chances[b].total_cmp(&self.chances[a]));
        order.truncate(most);
        let lengths = order.iter().flat_map(|&i| &self.lengths[i * self.walls..][..self.walls]);
        OnSteps {
            walls: self.walls,
            lengths: lengths.copied().collect(),
            chances: order.iter().map(|&i| self.chances[i]).collect(),
        }
    }
}

impl Outcomes {
    /// No error: exactly the computed area.
    pub(super) fn sure() -> Outcomes {
        Outcomes { list: vec![(0, 1.0)] }
    }

    /// No listed outcomes.
    pub(super) fn open() -> Outcomes {
        Outcomes { list: Vec::new() }
    }

    fn of_bins(bins: &[f64; BINS]) -> Outcomes {
        let bins = bins.iter().enumerate().filter(|(_, chance)| **chance > 0.0);
        let list = bins.map(|(bin, chance)| (bin as i32 - REACH as i32, *chance)).collect();
        Outcomes { list }
    }
}

/// The likely outlines of a space on whole steps: each closing of one axis with each closing of the other.
#[derive(Clone, Debug)]
pub(super) struct OnGrid {
    north: Vec<Leg>,
    east: Vec<Leg>,
    norths: OnSteps,
    easts: OnSteps,
    /// The area of each pair, in square steps: all pairs of the first north closing first.
    areas: Vec<i64>,
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
        let mut areas = Vec::with_capacity(norths.chances.len() * easts.chances.len());
        let mut heights = Vec::with_capacity(easts.walls);
        for (one, _) in norths.iter() {
            signed_heights(at, [&north, &east], one, &mut heights);
            for (other, _) in easts.iter() {
                let walls = other.iter().zip(&heights);
                areas.push(walls.map(|(length, height)| length * height).sum::<i64>().abs());
            }
        }
        let (step, middle) = (way.step().length().feet(), ruled.area().sq_ft());
        Some(OnGrid { north, east, norths, easts, areas, step, middle })
    }

    /// The possible deviations of the whole outline.
    pub(super) fn whole(&self) -> Outcomes {
        self.outcomes(self.middle, |_, _| 0)
    }

    /// The possible deviations with the rectangle between two of its walls filled in or left off, which adds
    /// `effect`: both use the same lengths.
    pub(super) fn without(&self, walls: [usize; 2], sign: i64, effect: f64) -> Option<Outcomes> {
        let at = |legs: &[Leg]| legs.iter().position(|leg| walls.contains(&leg.side));
        let (north, east) = (at(&self.north)?, at(&self.east)?);
        let part = |one: &[i64], other: &[i64]| sign * one[north] * other[east];
        Some(self.outcomes(self.middle + effect, part))
    }

    fn outcomes(&self, middle: f64, more: impl Fn(&[i64], &[i64]) -> i64) -> Outcomes {
        let mut bins = [0.0_f64; BINS];
        let square = self.step * self.step;
        let mut areas = self.areas.iter();
        for (one, chance) in self.norths.iter() {
            for ((other, its), area) in self.easts.iter().zip(&mut areas) {
                let off = (area + more(one, other)) as f64 * square - middle;
                let bin = off.round() + REACH as f64;
                if (0.0..BINS as f64).contains(&bin) {
                    bins[bin as usize] += chance * its;
                }
            }
        }
        Outcomes::of_bins(&bins)
    }
}

/// How far north the traverse is, in steps, at each wall that runs east, and how far south at each that runs west.
fn signed_heights(at: &AtFace, legs: [&[Leg]; 2], lengths: &[i64], heights: &mut Vec<i64>) {
    let [north, east] = legs;
    let mut walls = north.iter().zip(lengths).peekable();
    let mut across = east.iter();
    let mut height = 0;
    heights.clear();
    for side in 0..at.traverse.sides.len() {
        match walls.next_if(|(leg, _)| leg.side == side) {
            Some((leg, length)) => height += leg.sign * length,
            None => heights.extend(across.next().map(|leg| leg.sign * height)),
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
    let walls = legs.len();
    let mut list =
        OnSteps { walls, lengths: Vec::with_capacity(64 * walls), chances: Vec::with_capacity(64) };
    let mut lengths = rounded.clone();
    for mask in 0..1_u32 << either.len() {
        lengths.copy_from_slice(&rounded);
        let mut chance = all_same;
        for (bit, &i) in either.iter().enumerate() {
            if mask >> bit & 1 == 1 {
                chance *= chances[i] / (1.0 - chances[i]);
                lengths[i] += if way.rounded(legs[i].length) < legs[i].length { 1 } else { -1 };
            }
        }
        if chance > LEAST && lengths.iter().all(|length| *length >= 0) {
            closed(legs, &lengths, unit, chance, &mut list);
        }
    }
    list.likeliest(MOST_OF_AN_AXIS)
}

/// Adds the ways to close an axis that misses by a few steps.
fn closed(legs: &[Leg], lengths: &[i64], unit: i64, chance: f64, list: &mut OnSteps) {
    let misses: i64 = legs.iter().zip(lengths).map(|(leg, length)| leg.sign * length).sum();
    if misses == 0 {
        list.lengths.extend_from_slice(lengths);
        list.chances.push(chance);
        return;
    }
    if misses.abs() > MOST_MISSED {
        return;
    }
    let change = |i: usize| -misses.signum() * legs[i].sign;
    let able = || (0..legs.len()).filter(|&i| lengths[i] + change(i) > 0);
    let Some(last) = able().next_back() else { return };
    let off = |lengths: &[i64], i: usize| change(i) * (lengths[i] * unit - legs[i].length);
    let nearest = |lengths: &[i64]| {
        able().min_by_key(|&i| (off(lengths, i), std::cmp::Reverse(legs[i].length), i))
    };
    let longest = able().max_by_key(|&i| (lengths[i], std::cmp::Reverse(i)));
    let mut push = |steps: &[usize], share: f64| list.push(lengths, steps, change, chance * share);
    let m = able().count() as f64;
    let (Some(near), Some(long)) = (nearest(lengths), longest) else { return };
    if misses.abs() == 1 {
        able().for_each(|i| push(&[i], FROM_ANY / m));
        push(&[near], FROM_NEAREST);
        push(&[long], FROM_LONGEST);
        push(&[last], FROM_LAST);
        return;
    }
    let steps = usize::try_from(misses.abs()).unwrap_or(0);
    let (mut then, mut nearer) = (lengths.to_vec(), Vec::with_capacity(steps));
    while let Some(next) = nearest(&then).filter(|_| nearer.len() < steps) {
        then[next] += change(next);
        nearer.push(next);
    }
    push(&nearer, FROM_NEAREST);
    push(&vec![long; steps], FROM_LONGEST);
    push(&vec![last; steps], FROM_LAST);
    if steps > 2 {
        return;
    }
    if chance * FROM_ANY / (m * m) > LEAST / 10.0 {
        for i in able() {
            push(&[i, i], FROM_ANY / (m * m));
            able().filter(|&j| j > i).for_each(|j| push(&[i, j], 2.0 * FROM_ANY / (m * m)));
        }
    }
}

/// The possible errors of several spaces together, each multiplied by a factor.
#[derive(Clone, Debug)]
pub(super) struct Together {
    bins: Box<[f64; BINS]>,
    /// All bins outside these are 0.
    from: usize,
    to: usize,
    pub(super) rest: f64,
}

impl Together {
    /// With no space added.
    pub(super) fn new() -> Together {
        let mut bins = Box::new([0.0; BINS]);
        bins[REACH] = 1.0;
        Together { bins, from: REACH, to: REACH, rest: 0.0 }
    }

    /// Adds one more space, multiplied by `factor`. If that is not a whole number, the total is `over` above one.
    pub(super) fn and(&self, other: &Outcomes, factor: f64, over: f64) -> Together {
        let mut bins = Box::new([0.0; BINS]);
        let (mut from, mut to) = (BINS - 1, 0);
        let mut listed = 0.0;
        for &(off, chance) in &other.list {
            let by = shifted(off, factor, over);
            let Some((first, last)) = self.kept(by) else { continue };
            for (bin, here) in (first..).zip(&self.bins[first..=last]) {
                let there = bin.wrapping_add_signed(by);
                bins[there] += here * chance;
                listed += here * chance;
            }
            from = from.min(first.wrapping_add_signed(by));
            to = to.max(last.wrapping_add_signed(by));
        }
        let (from, to) = if from > to { (REACH, REACH) } else { (from, to) };
        Together { bins, from, to, rest: (1.0 - listed).max(0.0) }
    }

    /// The same as [`Together::and`], but only the probability of one error, and what is not listed.
    pub(super) fn and_at(&self, other: &Outcomes, factor: f64, over: f64, off: f64) -> (f64, f64) {
        let wanted = off.round() + REACH as f64;
        let wanted = (0.0..BINS as f64).contains(&wanted).then_some(wanted as usize);
        let whole: f64 = self.bins[self.from..=self.to].iter().sum();
        let (mut at, mut listed) = (0.0, 0.0);
        for &(error, chance) in &other.list {
            let by = shifted(error, factor, over);
            let source = wanted.and_then(|wanted| wanted.checked_add_signed(-by));
            at += source.and_then(|bin| self.bins.get(bin)).map_or(0.0, |here| here * chance);
            listed += chance
                * match self.kept(by) {
                    Some((first, last)) if (first, last) == (self.from, self.to) => whole,
                    Some((first, last)) => self.bins[first..=last].iter().sum(),
                    None => 0.0,
                };
        }
        (at, (1.0 - listed).max(0.0))
    }

    /// The bins that stay among those listed when all move by so many.
    fn kept(&self, by: isize) -> Option<(usize, usize)> {
        let (least, most) = if by < 0 {
            (by.unsigned_abs(), BINS - 1)
        } else {
            (0, (BINS - 1).checked_sub(by.unsigned_abs())?)
        };
        let (first, last) = (self.from.max(least), self.to.min(most));
        (first <= last).then_some((first, last))
    }

    /// The probability of this error, among those listed.
    pub(super) fn at(&self, off: f64) -> f64 {
        let bin = off.round() + REACH as f64;
        if (0.0..BINS as f64).contains(&bin) { self.bins[bin as usize] } else { 0.0 }
    }

    /// The probability of an error from `low` to `high`, among those listed.
    pub(super) fn within(&self, low: f64, high: f64) -> f64 {
        let bins = self.bins.iter().enumerate();
        let lies = |bin: usize| {
            let off = bin as f64 - REACH as f64;
            low <= off && off <= high
        };
        bins.filter(|(bin, _)| lies(*bin)).map(|(_, chance)| chance).sum()
    }

    /// The mean of the listed deviations and the variance about it; `None` if little is listed.
    pub(super) fn middle(&self) -> Option<(f64, f64)> {
        let listed = 1.0 - self.rest;
        if listed < 0.4 {
            return None;
        }
        let offs = || (0..BINS).map(|bin| bin as f64 - REACH as f64).zip(self.bins.iter());
        let mean = offs().map(|(off, chance)| off * chance).sum::<f64>() / listed;
        let squares = offs().map(|(off, chance)| (off - mean).powi(2) * chance);
        Some((mean, squares.sum::<f64>() / listed))
    }

    /// The highest probability among those listed.
    pub(super) fn most(&self) -> f64 {
        self.bins.iter().copied().fold(0.0, f64::max)
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
    Outcomes { list }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::collection::vec;
    use proptest::prelude::*;

    fn outcomes() -> impl Strategy<Value = Outcomes> {
        vec((-200..200_i32, 0.0..1.0_f64), 1..30).prop_map(|list| {
            let all: f64 = list.iter().map(|(_, chance)| chance).sum();
            let list = list.into_iter().map(|(off, chance)| (off, chance / (all + 0.1)));
            Outcomes { list: list.collect() }
        })
    }

    proptest! {
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
