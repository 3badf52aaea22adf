//! The areas that an office could get for a space, each with its chance: which walls round the other way in its reading, and
//! which walls it then takes the odd steps from.
//!
//! All walls of an axis close together, so an axis has few likely outcomes; the area of each pair is exact. What is not
//! listed is left to a normal distribution.
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

/// How far off a total may be to be listed, either way, in square feet.
pub(super) const REACH: usize = 160;
pub(super) const BINS: usize = 2 * REACH + 1;

/// No more outcomes of an axis are gone through, nor those less likely than this.
const MOST_OF_AN_AXIS: usize = 24;
const LEAST: f64 = 0.004;
/// Nor are the ways to close an axis that misses by more steps.
const MOST_MISSED: i64 = 4;
/// No more walls are taken to go either way.
const MOST_EITHER_WAY: usize = 4;

/// How offices take an odd step: from any wall alike, from the one that is then nearest to its length, from the longest, from the
/// last one that was walked. Judgment: nobody has counted.
const FROM_ANY: f64 = 0.40;
const FROM_NEAREST: f64 = 0.30;
const FROM_LONGEST: f64 = 0.15;
const FROM_LAST: f64 = 0.15;

/// What a total could be off, in whole square feet, with the chance of each; what is left to 1 is the chance of none of these.
#[derive(Clone, Debug)]
pub(super) struct Outcomes {
    pub(super) list: Vec<(i32, f64)>,
}

/// An axis on whole steps: the lengths of its walls, and how likely.
struct OnSteps {
    lengths: Vec<i64>,
    chance: f64,
}

impl Outcomes {
    /// Just what was worked out.
    pub(super) fn sure() -> Outcomes {
        Outcomes { list: vec![(0, 1.0)] }
    }

    /// Nothing is listed.
    pub(super) fn open() -> Outcomes {
        Outcomes { list: Vec::new() }
    }

    /// Of a space whose walls are brought onto steps this way, against `ruled`, what was worked out; only for straight walls
    /// along an axis, and steps that are wider than the reading.
    pub(super) fn of(at: &AtFace, ruled: &Outline, way: StepRounding, reading: Length) -> Outcomes {
        let straight = |shape: &Shape| matches!(shape, Shape::Straight { .. });
        let sides = &at.traverse.sides;
        let is_coarse = way.step().length().nm() > 2 * reading.nm();
        if !is_coarse || !sides.iter().all(|side| straight(&side.shape)) || sides.len() > 64 {
            return Outcomes::open();
        }
        let [north, east] = Axis::BOTH.map(|axis| at.traverse.legs(axis));
        let [norths, easts] = [&north, &east].map(|legs| on_steps(legs, way, reading));
        let square = way.step().length().feet() * way.step().length().feet();
        let middle = ruled.area().sq_ft();
        let mut bins = [0.0_f64; BINS];
        for one in &norths {
            let heights = heights(at, &north, &one.lengths);
            for other in &easts {
                let walls = east.iter().zip(&other.lengths).zip(&heights);
                let doubled: i64 =
                    walls.map(|((leg, length), height)| leg.sign * length * height).sum();
                let off = doubled.abs() as f64 * square - middle;
                let bin = off.round() + REACH as f64;
                if (0.0..BINS as f64).contains(&bin) {
                    bins[bin as usize] += one.chance * other.chance;
                }
            }
        }
        let bins = bins.iter().enumerate().filter(|(_, chance)| **chance > 0.0);
        let list = bins.map(|(bin, chance)| (bin as i32 - REACH as i32, *chance)).collect();
        Outcomes { list }
    }
}

/// How far north the walk is, in steps, where each wall that runs east or west is walked.
fn heights(at: &AtFace, north: &[Leg], lengths: &[i64]) -> Vec<i64> {
    let mut walls = north.iter().zip(lengths).peekable();
    let mut height = 0;
    let mut heights = Vec::with_capacity(lengths.len());
    for side in 0..at.traverse.sides.len() {
        match walls.next_if(|(leg, _)| leg.side == side) {
            Some((leg, length)) => height += leg.sign * length,
            None => heights.push(height),
        }
    }
    heights
}

/// The likely outcomes of one axis, the likeliest first.
fn on_steps(legs: &[Leg], way: StepRounding, reading: Length) -> Vec<OnSteps> {
    let unit = way.step().length().nm();
    let rounded: Vec<i64> =
        legs.iter().map(|leg| way.rounded(leg.length).checked_div(unit).unwrap_or(0)).collect();
    let chances: Vec<f64> =
        legs.iter().map(|leg| goes_the_other_way(leg.length, way, reading)).collect();
    let mut either: Vec<usize> = (0..legs.len()).filter(|&i| chances[i] > 0.01).collect();
    either.sort_by(|&a, &b| chances[b].total_cmp(&chances[a]).then(a.cmp(&b)));
    either.truncate(MOST_EITHER_WAY);
    let all_same: f64 = chances.iter().map(|chance| 1.0 - chance).product();
    let mut list = Vec::new();
    for mask in 0..1_u32 << either.len() {
        let mut lengths = rounded.clone();
        let mut chance = all_same;
        for (bit, &i) in either.iter().enumerate() {
            if mask >> bit & 1 == 1 {
                chance *= chances[i] / (1.0 - chances[i]);
                lengths[i] += if way.rounded(legs[i].length) < legs[i].length { 1 } else { -1 };
            }
        }
        if chance > LEAST && lengths.iter().all(|length| *length >= 0) {
            closed(legs, lengths, unit, chance, &mut list);
        }
    }
    list.sort_by(|a, b| b.chance.total_cmp(&a.chance));
    list.truncate(MOST_OF_AN_AXIS);
    list
}

/// The ways to close an axis that misses by a few steps; by more, none is likely.
fn closed(legs: &[Leg], lengths: Vec<i64>, unit: i64, chance: f64, list: &mut Vec<OnSteps>) {
    let misses: i64 = legs.iter().zip(&lengths).map(|(leg, length)| leg.sign * length).sum();
    if misses == 0 {
        list.push(OnSteps { lengths, chance });
        return;
    }
    if misses.abs() > MOST_MISSED {
        return;
    }
    let change = |i: usize| -misses.signum() * legs[i].sign;
    let able: Vec<usize> = (0..legs.len()).filter(|&i| lengths[i] + change(i) > 0).collect();
    let Some(&last) = able.last() else { return };
    let off = |lengths: &[i64], i: usize| change(i) * (lengths[i] * unit - legs[i].length);
    let nearest = |lengths: &[i64]| {
        able.iter()
            .copied()
            .min_by_key(|&i| (off(lengths, i), std::cmp::Reverse(legs[i].length), i))
    };
    let longest = able.iter().copied().max_by_key(|&i| (lengths[i], std::cmp::Reverse(i)));
    let mut push = |steps: &[usize], share: f64| {
        let mut lengths = lengths.clone();
        steps.iter().for_each(|&i| lengths[i] += change(i));
        if lengths.iter().all(|length| *length > 0) {
            list.push(OnSteps { lengths, chance: chance * share });
        }
    };
    let m = able.len() as f64;
    let (Some(near), Some(long)) = (nearest(&lengths), longest) else { return };
    if misses.abs() == 1 {
        able.iter().for_each(|&i| push(&[i], FROM_ANY / m));
        push(&[near], FROM_NEAREST);
        push(&[long], FROM_LONGEST);
        push(&[last], FROM_LAST);
        return;
    }
    let steps = usize::try_from(misses.abs()).unwrap_or(0);
    let (mut then, mut nearer) = (lengths.clone(), Vec::with_capacity(steps));
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
        for (place, &i) in able.iter().enumerate() {
            push(&[i, i], FROM_ANY / (m * m));
            able[place + 1..].iter().for_each(|&j| push(&[i, j], 2.0 * FROM_ANY / (m * m)));
        }
    }
}

/// What several spaces could be off together, each times a factor.
#[derive(Clone, Debug)]
pub(super) struct Together {
    bins: Box<[f64; BINS]>,
    pub(super) rest: f64,
}

impl Together {
    /// Nothing yet.
    pub(super) fn new() -> Together {
        let mut bins = Box::new([0.0; BINS]);
        bins[REACH] = 1.0;
        Together { bins, rest: 0.0 }
    }

    /// With one more space, so many times; where that is no whole number, of a total that is `over` one.
    pub(super) fn and(&self, other: &Outcomes, factor: f64, over: f64) -> Together {
        let mut bins = Box::new([0.0; BINS]);
        let mut listed = 0.0;
        for &(off, chance) in &other.list {
            let by = f64::from(off) * factor;
            let by = if factor.fract() == 0.0 { by } else { (by + over + 0.5).floor() } as isize;
            for (bin, here) in self.bins.iter().enumerate().filter(|(_, here)| **here > 0.0) {
                let Some(at) = bin.checked_add_signed(by) else { continue };
                if let Some(there) = bins.get_mut(at) {
                    *there += here * chance;
                    listed += here * chance;
                }
            }
        }
        Together { bins, rest: (1.0 - listed).max(0.0) }
    }

    /// The chance of being just so far off, of what is listed.
    pub(super) fn at(&self, off: f64) -> f64 {
        let bin = off.round() + REACH as f64;
        if (0.0..BINS as f64).contains(&bin) { self.bins[bin as usize] } else { 0.0 }
    }

    /// The chance of being from `low` to `high` off, of what is listed.
    pub(super) fn within(&self, low: f64, high: f64) -> f64 {
        let bins = self.bins.iter().enumerate();
        let lies = |bin: usize| {
            let off = bin as f64 - REACH as f64;
            low <= off && off <= high
        };
        bins.filter(|(bin, _)| lies(*bin)).map(|(_, chance)| chance).sum()
    }

    /// The likeliest of what is listed.
    pub(super) fn most(&self) -> f64 {
        self.bins.iter().copied().fold(0.0, f64::max)
    }
}

/// What a rectangle of two walls could be off, where each goes the other way with its chance, or a step more or less where
/// the outline is closed on it; `sign` is of what it adds.
pub(super) fn of_rectangle(walls: [(f64, f64, f64); 2], step: f64, sign: f64) -> Outcomes {
    /// A wall of a part takes up an odd step so often, either way.
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
