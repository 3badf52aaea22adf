//! Misread walls: which lengths a length may be taken for, and the area after the other walls have closed the
//! outline.
//!
//! A sketch has to close. If one wall is misread, another wall of the same axis absorbs the difference, usually one
//! that runs in the opposite direction; or the difference is spread over all of them. The area is linear in the walls
//! of one axis, so each result is exact.
#![expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    reason = "explanations are weighed in floats"
)]

use std::sync::OnceLock;

use crate::geometry::compass::Axis;
use crate::geometry::outline::Outline;
use crate::geometry::outline::Vector;
use crate::geometry::traverse::Traverse;
use crate::reconcile::cause::MisreadWall;
use crate::reconcile::normal::reach;
use crate::units::length::Length;

/// The most sides of an outline whose walls are weighed.
pub(crate) const MOST_SIDES: usize = 200;

/// A misread wall, and how the difference is absorbed.
#[derive(Clone, Copy)]
pub(super) struct Misread<'a> {
    /// Its index among the sides of its space.
    pub(super) side: usize,
    here: &'a Wall,
    /// How much longer the record would have it, in feet.
    change: f64,
    /// What absorbs the difference; `None` if it is spread over several walls.
    other: Option<&'a Other<'a>>,
    /// How much the outline grows, in square feet.
    pub(super) effect: f64,
    /// The variance of that in square feet squared, if the difference is spread over several walls.
    pub(super) variance: f64,
    /// How common this misreading is, as a share of all misreadings of one wall of this outline. For each wall these
    /// add up to at most 1.
    pub(super) share: f64,
}

impl Misread<'_> {
    /// The misread wall, in a space given by index.
    pub(super) fn wall(&self, space: usize) -> MisreadWall {
        let absorbs = |other: &Other<'_>| {
            let length = other.wall.read + other.with * self.change;
            Some((other.wall.source?, in_feet(length)))
        };
        MisreadWall {
            space,
            side: self.side,
            from: in_feet(self.here.read),
            length: in_feet(self.here.read + self.change),
            other: self.other.and_then(absorbs),
            also: None,
        }
    }
}

/// The share of cases in which a single wall absorbs the difference; otherwise it is spread in steps of a foot.
const BY_ONE: f64 = 0.6;
/// The share of these in which that wall runs in the opposite direction. Longer walls are more likely, by their
/// length.
const BY_ONE_ACROSS: f64 = 0.8;

/// The change of area that would close a gap, in square feet; how far from it a change without variance can still be
/// likely; and the variance of the total, in square feet squared.
#[derive(Clone, Copy, Debug)]
pub(super) struct Wanted {
    pub(super) effect: f64,
    pub(super) reach: f64,
    pub(super) variance: f64,
    /// Whether lengths are read in meters.
    pub(super) is_metric: bool,
}

impl Wanted {
    /// Whether all changes from `low` to `high` are too far off to be likely.
    fn is_beyond(self, low: f64, high: f64) -> bool {
        low - self.effect > self.reach || self.effect - high > self.reach
    }

    /// Whether a change with `more` variance is too far off to be likely.
    fn is_far(self, effect: f64, more: f64) -> bool {
        let off = (effect - self.effect).abs();
        off > self.reach && (more == 0.0 || off > reach(self.variance + more))
    }
}

/// Calls `each` for every way in which one wall of an outline could be misread, unless it is clearly too far from what
/// is wanted. Returns how many ways there are, with those that were skipped.
pub(super) fn misread(
    traverse: &Traverse,
    outline: &Outline,
    wanted: Wanted,
    mut each: impl FnMut(Misread<'_>),
) -> u64 {
    let mut count = 0;
    if traverse.has_bearings() || traverse.sides.len() > MOST_SIDES {
        return count;
    }
    let half = outline.area().sq_ft() / 2.0;
    let gradients = outline.doubled_gradients();
    for axis in Axis::BOTH {
        let walls = walls(traverse, outline, &gradients, axis, wanted.is_metric);
        let walls: Vec<Wall> = walls.collect();
        let mut others = Vec::with_capacity(walls.len());
        for i in 0..walls.len() {
            count += one(&walls, i, wanted, &mut others, |found| {
                if found.effect > -half {
                    each(found);
                }
            });
        }
    }
    count
}

/// Calls `each` for every side that may have been typed wrong, by swapped digits or by ten feet, without being
/// noticed because a side by closing hides it; with the change of area.
pub(super) fn typing_slips(
    traverse: &Traverse,
    outline: &Outline,
    is_metric: bool,
    mut each: impl FnMut(usize, f64),
) {
    if traverse.has_bearings() {
        return;
    }
    let gradients = outline.doubled_gradients();
    for axis in Axis::BOTH {
        let mut legs = traverse.legs_along(axis);
        let Some(hidden) = legs.find(|leg| leg.follows) else { continue };
        let walls: Vec<Wall> = walls(traverse, outline, &gradients, axis, is_metric).collect();
        let Some(at) = traverse.legs_along(axis).position(|leg| leg.side == hidden.side) else {
            continue;
        };
        let slope = walls[at].slope;
        for (i, wall) in walls.iter().enumerate().filter(|(i, _)| *i != at) {
            let sign = if wall.ahead { 1.0 } else { -1.0 };
            for (by, share) in wall.taken_for(is_metric) {
                if share >= LIKELY {
                    let side = wall.source.unwrap_or(i);
                    each(side, sign * by * (wall.slope - slope));
                }
            }
        }
    }
}

/// The share of the least common misreading that we ask about: ten feet more or less.
const LIKELY: f64 = 0.15;

/// The walls along one axis.
fn walls<'a>(
    traverse: &'a Traverse,
    outline: &'a Outline,
    gradients: &'a [(i64, i64)],
    axis: Axis,
    is_metric: bool,
) -> impl Iterator<Item = Wall> + 'a {
    let north = axis == Axis::North;
    traverse.legs_along(axis).map(move |leg| {
        let vector: &Vector = &outline.vectors()[leg.side];
        let part = if north { vector.north } else { vector.east };
        let gradient = gradients[leg.side];
        // Of a slanted wall two lengths are typed, or none where it belongs to a bay: nobody could check one.
        let is_slanted = vector.north != 0 && vector.east != 0;
        let feet = Length::from_nm(part.abs()).feet();
        Wall {
            source: traverse.sides[leg.side].source.filter(|_| !is_slanted),
            ahead: leg.sign > 0,
            feet,
            read: if is_metric { Length::from_nm(leg.length).feet() } else { feet },
            slope: Length::from_nm(if north { gradient.1 } else { gradient.0 }).feet() / 2.0,
        }
    })
}

/// A wall along one axis.
struct Wall {
    source: Option<usize>,
    ahead: bool,
    /// Its length as the figure's walls are rounded, and as it is read: the same, or in meters as it was typed.
    feet: f64,
    read: f64,
    /// What the area gains for each foot that this wall extends along the axis, up to a constant common to all
    /// walls.
    slope: f64,
}

impl Wall {
    /// By how many feet it may be misread, each with its share.
    fn taken_for(&self, is_metric: bool) -> impl ExactSizeIterator<Item = (f64, f64)> + use<> {
        let (list, count) =
            if is_metric { taken_for_in_meters(self.read) } else { taken_for_in_feet(self.read) };
        let from = self.read;
        list.into_iter().take(count).map(move |(feet, share)| (feet - from, share))
    }
}

/// Another wall of the same axis, which may absorb the difference.
struct Other<'a> {
    wall: &'a Wall,
    /// 1 if it gets longer where the misread wall does, -1 if it gets shorter.
    with: f64,
    /// How often it is this one, compared with the others, if it is long enough.
    weight: f64,
}

impl<'a> Other<'a> {
    fn of(wall: &'a Wall, here: &Wall) -> Other<'a> {
        let runs_opposite = wall.ahead != here.ahead;
        let across = if runs_opposite { BY_ONE_ACROSS } else { 1.0 - BY_ONE_ACROSS };
        let with = if runs_opposite { 1.0 } else { -1.0 };
        Other { wall, with, weight: across * wall.feet }
    }

    /// Whether it can absorb the difference: a wall that gets shorter must be long enough.
    fn is_long(&self, change: f64) -> bool {
        self.wall.feet + self.with * change > 0.5
    }
}

fn one<'a>(
    walls: &'a [Wall],
    i: usize,
    wanted: Wanted,
    others: &mut Vec<Other<'a>>,
    mut each: impl FnMut(Misread<'_>),
) -> u64 {
    let here = &walls[i];
    let Some(side) = here.source else { return 0 };
    let lengths = here.taken_for(wanted.is_metric);
    let ways = (walls.len() * lengths.len()) as u64;
    others.clear();
    others.extend(walls[..i].iter().chain(&walls[i + 1..]).map(|wall| Other::of(wall, here)));
    if others.is_empty() {
        return ways;
    }
    let sign = if here.ahead { 1.0 } else { -1.0 };
    let count = others.len() as f64;
    let slopes = || others.iter().map(|other| other.wall.slope);
    let mean = slopes().sum::<f64>() / count;
    let spread = slopes().map(|slope| (slope - mean).powi(2)).sum::<f64>() / count;
    let (least, most) = slopes()
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| (low.min(at), high.max(at)));
    let by_one = if others.len() > 1 { BY_ONE } else { 1.0 };
    for (change, share) in lengths {
        let effect = |slope: f64| sign * change * (here.slope - slope);
        let ends = [least, most].map(effect);
        let (low, high) = (ends[0].min(ends[1]), ends[0].max(ends[1]));
        let (evenly, variance) = (effect(mean), change.abs() * spread);
        let is_far_evenly = wanted.is_far(evenly, variance);
        if is_far_evenly && wanted.is_beyond(low, high) {
            continue;
        }
        let long = |other: &Other<'_>| if other.is_long(change) { other.weight } else { 0.0 };
        let whole: f64 = others.iter().map(long).sum();
        if whole <= 0.0 {
            continue;
        }
        for other in others.iter() {
            let effect = effect(other.wall.slope);
            if !wanted.is_far(effect, 0.0) && long(other) > 0.0 {
                let share = share * (by_one * other.weight / whole);
                let other = Some(other);
                each(Misread { side, here, change, other, effect, variance: 0.0, share });
            }
        }
        if by_one < 1.0 && !is_far_evenly {
            let (effect, share) = (evenly, share * (1.0 - by_one));
            each(Misread { side, here, change, other: None, effect, variance, share });
        }
    }
    ways
}

/// A length of `feet` feet.
#[expect(clippy::cast_possible_truncation, reason = "a wall of at most 10,000 ft")]
fn in_feet(feet: f64) -> Length {
    // The same as `f64::round`, which is a slow library call on most machines.
    let nm = feet * Length::FOOT.nm() as f64;
    Length::from_nm((nm + 0.5_f64.copysign(nm)) as i64)
}

#[expect(clippy::cast_possible_truncation, reason = "a wall of at most 10,000 ft")]
fn whole_feet(feet: f64) -> i64 {
    // No length is below zero, so this is the floor, which is a slow library call on most machines.
    (feet + 1e-6) as i64
}

/// Digits that look alike.
const ALIKE: [(i64, i64); 6] = [(1, 7), (3, 8), (5, 6), (4, 9), (0, 6), (0, 8)];

/// Lengths in feet, each with its share, and how many of them there are.
type Lengths = ([(f64, f64); 12], usize);

/// The lengths a length may be misread as, each with its share: ten, five, two or one foot more or less, swapped
/// digits, or a digit that looks like another. Never less than half the length or more than twice. Judgment.
fn taken_for_in_feet(feet: f64) -> Lengths {
    /// The lengths in whole feet of most walls. What each is taken for is worked out once.
    const MOST_KNOWN: usize = 100;
    static KNOWN: [OnceLock<Lengths>; MOST_KNOWN] = [const { OnceLock::new() }; MOST_KNOWN];
    let whole = whole_feet(feet);
    let place = usize::try_from(whole).unwrap_or(MOST_KNOWN);
    let computed = || taken_for_in_whole_feet(whole);
    let (list, count) =
        KNOWN.get(place).map_or_else(computed, |known| *known.get_or_init(computed));
    let off = feet - whole as f64;
    (list.map(|(other, share)| (other + off, share)), count)
}

/// The same for a length in whole feet.
fn taken_for_in_whole_feet(whole: i64) -> Lengths {
    let mut list = [(0_i64, 0.0_f64); 12];
    let mut count = 0;
    let mut push = |other: i64, share: f64| {
        let is_likely = other > 0 && other != whole && 2 * other >= whole && other <= 2 * whole;
        if !is_likely {
            return;
        }
        let known = list.iter().take(count).position(|(known, _)| *known == other);
        if let Some(known) = known {
            list[known].1 += share;
        } else if count < list.len() {
            list[count] = (other, share);
            count += 1;
        }
    };
    let shares = [(10, 0.16), (1, 0.09), (2, 0.03), (5, 0.03)];
    for (more, share) in shares {
        push(whole + more, share);
        push(whole - more, share);
    }
    let (tens, ones) = (whole.div_euclid(10), whole.rem_euclid(10));
    if tens < 10 {
        push(10 * ones + tens, 0.3);
    }
    for (a, b) in ALIKE {
        for (from, to) in [(a, b), (b, a)] {
            if ones == from {
                push(whole + to - from, 0.08);
            }
        }
    }
    // The shares of all misreadings of one length add up to at most 1.
    let together: f64 = list.iter().take(count).map(|(_, share)| share).sum();
    let scale = 1.0 / together.max(1.0);
    (list.map(|(other, share)| (other as f64, share * scale)), count)
}

/// The lengths a length written in meters may be misread as, each with its share: a meter, ten, or a tenth more or less,
/// or two neighboring digits swapped. Never less than half the length or more than twice. Judgment.
#[expect(clippy::cast_possible_truncation, reason = "a wall of at most 10,000 ft")]
fn taken_for_in_meters(feet: f64) -> Lengths {
    let centimeter = Length::CENTIMETER.feet();
    let here = (feet / centimeter).round() as i64;
    let mut list = [(0.0_f64, 0.0_f64); 12];
    let mut count = 0;
    let mut push = |other: i64, share: f64| {
        let length = feet + (other - here) as f64 * centimeter;
        let is_likely = other != here && 2 * other >= here && other <= 2 * here;
        let known = list.iter().take(count).position(|(known, _)| *known == length);
        if let Some(known) = known {
            list[known].1 += share;
        } else if is_likely && count < list.len() {
            list[count] = (length, share);
            count += 1;
        }
    };
    for (more, share) in [(100, 0.16), (1_000, 0.16), (10, 0.05)] {
        push(here + more, share);
        push(here - more, share);
    }
    for place in [1, 10, 100, 1_000] {
        let (low, high) = (here.div_euclid(place) % 10, here.div_euclid(10 * place) % 10);
        if here >= 10 * place {
            push(here + 9 * place * (low - high), 0.06);
        }
    }
    (list, count)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_in_meters_are_misread_by_meters_or_swapped_digits() {
        let (list, count) = taken_for_in_meters(4.2 / 0.3048);
        let list = list.into_iter().take(count);
        let mut list: Vec<f64> = list.map(|(feet, _)| (30.48 * feet).round()).collect();
        list.sort_by(f64::total_cmp);
        // A meter or a tenth more or less, 2.40 and 4.02; 14.20 is more than twice 4.20.
        assert_eq!(list, [240.0, 320.0, 402.0, 410.0, 430.0, 520.0]);
    }

    fn taken_for(feet: f64) -> impl Iterator<Item = (f64, f64)> {
        let (list, count) = taken_for_in_feet(feet);
        list.into_iter().take(count)
    }

    fn lengths(feet: f64) -> Vec<f64> {
        let mut list: Vec<f64> = taken_for(feet).map(|(other, _)| other).collect();
        list.sort_by(f64::total_cmp);
        list
    }

    #[test]
    fn lengths_are_misread_in_the_common_ways() {
        // One, two, five and ten feet either way; 42 is 24 with its digits swapped, 29 has a 9 for the 4.
        assert_eq!(lengths(24.0), [14.0, 19.0, 22.0, 23.0, 25.0, 26.0, 29.0, 34.0, 42.0]);
        // 91 would be more than twice 19; 14 has a 4 for the 9.
        assert_eq!(lengths(19.0), [14.0, 17.0, 18.0, 20.0, 21.0, 24.0, 29.0]);
        // Never a tenth of it, never three times.
        assert_eq!(lengths(5.0), [3.0, 4.0, 6.0, 7.0, 10.0]);
        for feet in 1..300 {
            let whole = f64::from(feet);
            for (other, share) in taken_for(whole) {
                assert!(other >= whole / 2.0 && other <= 2.0 * whole && other != whole);
                assert!(share > 0.0);
            }
            assert!(taken_for(whole).map(|(_, share)| share).sum::<f64>() <= 1.0 + 1e-9);
        }
    }

    proptest::proptest! {
        /// Only misreadings that are too far off are skipped; all others are the same as when none is skipped.
        #[test]
        fn nothing_near_is_passed_over(
            feet in proptest::collection::vec(4.0..60.0_f64, 4),
            effect in -600.0..600.0_f64,
            variance in 1.0..900.0_f64,
        ) {
            let walls: Vec<Wall> = (0..4_usize)
                .map(|i| Wall {
                    source: Some(i),
                    ahead: i % 2 == 0,
                    feet: feet[i],
                    read: feet[i],
                    slope: feet[(i + 1) % 4] - feet[(i + 2) % 4],
                })
                .collect();
            let listed = |all: f64| {
                let (reach, variance) = (all * reach(variance), all * variance);
                let wanted = Wanted { effect, reach, variance, is_metric: false };
                let mut list: Vec<(usize, f64, f64, f64)> = Vec::new();
                for i in 0..walls.len() {
                    one(&walls, i, wanted, &mut Vec::new(), |found| {
                        list.push((found.side, found.effect, found.variance, found.share));
                    });
                }
                list
            };
            let near = |list: Vec<(usize, f64, f64, f64)>| {
                let is_near = |one: &(usize, f64, f64, f64)| {
                    (effect - one.1).abs() <= reach(variance + one.2)
                };
                list.into_iter().filter(is_near).collect::<Vec<_>>()
            };
            proptest::prop_assert_eq!(near(listed(1.0)), near(listed(1e12)));
        }
    }
}
