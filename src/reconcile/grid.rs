//! The areas an office could compute for a space, with their probabilities.
//!
//! The walls of an axis have to close together, so an axis has few likely outcomes; the area of each pair of outcomes
//! is exact. All other outcomes are described by a normal distribution.
#![expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::cast_possible_wrap,
    reason = "chances are floats; bins are small"
)]

use std::cell::RefCell;
use std::rc::Rc;

use crate::geometry::compass::Axis;
use crate::geometry::outline::Outline;
use crate::geometry::traverse::{Leg, Shape, StepRounding, Traverse, TraverseSide};
use crate::reconcile::closing_ways::{MOST_OF_AN_AXIS, OnSteps, on_steps};
use crate::reconcile::outcomes::{Outcomes, REACH, Together, is_listed, nearest_whole, whole};
use crate::units::length::{Halves, Length, Step};

/// The likely outlines of a space on whole steps: each closing of one axis with each closing of the other.
#[derive(Clone, Debug)]
pub(super) struct OnGrid {
    norths: Rc<OnSteps>,
    easts: Rc<OnSteps>,
    /// The area of each pair in square steps, a whole number; the pairs with the first north closing come first.
    areas: Vec<f64>,
    /// The smallest and the largest of them.
    ends: (f64, f64),
    /// The length of a step in feet, and the computed area in square feet.
    step: f64,
    middle: f64,
}

/// A part of an outline that is filled in or left off, for the likely outlines: its rectangle has the product of the
/// lengths of two walls, one of each axis. Or no part, for the outline as it is.
#[derive(Clone, Copy, Debug)]
pub(super) struct OfPart {
    /// The places of the walls among those of their axis.
    north: usize,
    east: usize,
    /// 1 if it is filled in, -1 if it is left off, 0 if it is no part.
    sign: f64,
    /// The computed area of the outline with it, in square feet.
    middle: f64,
    /// No deviation of the area lies below the first or above the second, in square feet.
    ends: (f64, f64),
}

/// The outcomes of axes, each with its walls, by way of rounding. Outlines without one of their parts have axes in
/// common, and so have the figures of a house.
#[derive(Debug, Default)]
pub(super) struct Axes(RefCell<Vec<(StepRounding, Vec<KnownAxis>)>>);

type KnownAxis = (Vec<Leg>, Rc<OnSteps>);

impl Axes {
    fn on_steps(&self, legs: Vec<Leg>, way: StepRounding, reading: Length) -> Rc<OnSteps> {
        let is_same =
            |(one, other): (&Leg, &Leg)| one.sign == other.sign && one.length == other.length;
        let are_same = |its: &[Leg]| its.len() == legs.len() && its.iter().zip(&legs).all(is_same);
        let way = plainest(way, &legs);
        let mut ways = self.0.borrow_mut();
        let place = ways.iter().position(|(its, _)| *its == way).unwrap_or_else(|| {
            ways.push((way, Vec::new()));
            ways.len() - 1
        });
        let axes = &mut ways[place].1;
        if let Some((_, known)) = axes.iter().find(|(its, _)| are_same(its)) {
            return Rc::clone(known);
        }
        let new = Rc::new(on_steps(&legs, way, reading));
        axes.push((legs, Rc::clone(&new)));
        new
    }
}

/// The same rounding, with halves up where none of these walls is halfway between two steps.
fn plainest(way: StepRounding, legs: &[Leg]) -> StepRounding {
    let is_plain = |step: Step| {
        let unit = step.length().nm();
        legs.iter().all(|leg| 2 * leg.length.rem_euclid(unit) != unit)
    };
    match way {
        StepRounding::Nearest(step, Halves::Down | Halves::Even) if is_plain(step) => {
            StepRounding::Nearest(step, Halves::Up)
        }
        way => way,
    }
}

impl OnGrid {
    /// Whether there are such outlines: whether all walls are straight and along an axis, and the step is larger than the
    /// reading.
    pub(super) fn is_for(traverse: &Traverse, way: StepRounding, reading: Length) -> bool {
        let is_straight = |side: &TraverseSide| matches!(side.shape, Shape::Straight { .. });
        let is_coarse = way.step().length().nm() > 2 * reading.nm();
        is_coarse && traverse.sides.iter().all(is_straight) && traverse.sides.len() <= 64
    }

    /// The outcomes of a space whose walls are rounded this way, relative to `ruled`, the computed outline. `None`
    /// unless there are any.
    pub(super) fn of(
        traverse: &Traverse,
        ruled: &Outline,
        way: StepRounding,
        reading: Length,
        known: &Axes,
    ) -> Option<OnGrid> {
        if !OnGrid::is_for(traverse, way, reading) {
            return None;
        }
        let on_steps = |axis: Axis| known.on_steps(traverse.legs(axis), way, reading);
        let [norths, easts] = Axis::BOTH.map(on_steps);
        let (areas, ends) = areas(traverse, [&norths, &easts]);
        let (step, middle) = (way.step().length().feet(), ruled.area().sq_ft());
        Some(OnGrid { norths, easts, areas, ends, step, middle })
    }

    /// The outline as it is, with no part filled in or left off.
    pub(super) fn no_part(&self) -> OfPart {
        let (middle, square) = (self.middle, self.step * self.step);
        let ends = (self.ends.0 * square - middle, self.ends.1 * square - middle);
        OfPart { north: 0, east: 0, sign: 0.0, middle, ends }
    }

    /// The possible deviations of the whole outline's area from the computed one.
    pub(super) fn whole(&self) -> Outcomes {
        self.with_part(&self.no_part())
    }

    /// The possible deviations with a part of it filled in or left off. The outline and the part share the lengths of
    /// two walls.
    pub(super) fn with_part(&self, part: &OfPart) -> Outcomes {
        let (least, chances) = self.chances_with(part);
        Outcomes::from_least(least, &chances)
    }

    /// The same as the errors of a total that has no other space.
    pub(super) fn total_with_part(&self, part: &OfPart) -> Together {
        let (least, chances) = self.chances_with(part);
        Together::from_least(least, chances)
    }

    /// The probability of each whole deviation with this part, from the first on.
    fn chances_with(&self, part: &OfPart) -> (i32, Vec<f64>) {
        let reach = REACH as i32;
        // Beyond these, none is listed.
        let least = nearest_whole(part.ends.0).clamp(-reach, reach + 1);
        let most = nearest_whole(part.ends.1).clamp(-reach - 1, reach);
        let mut chances = vec![0.0_f64; usize::try_from(most - least + 1).unwrap_or(0)];
        let square = self.step * self.step;
        // On whole feet nothing is left to round.
        let most_off = part.ends.0.abs().max(part.ends.1.abs());
        let are_whole = most_off < f64::from(i32::MAX)
            && [square, part.middle].iter().all(|number| number.fract() == 0.0);
        let easts = self.easts.chances.as_slice();
        let rows = self.areas.chunks_exact(easts.len().max(1));
        let (ones, others) = (self.norths.of_wall(part.north), self.easts.of_wall(part.east));
        for ((areas, chance), one) in rows.zip(&self.norths.chances).zip(ones) {
            // Branch-free, so that the loop vectorizes.
            let one = part.sign * one;
            let mut row = [0_i32; MOST_OF_AN_AXIS];
            let off = |other: &f64, area: &f64| (area + one * other) * square - part.middle;
            let all = row.iter_mut().zip(others).zip(areas);
            if are_whole {
                all.for_each(|((here, other), area)| *here = whole(off(other, area)));
            } else {
                all.for_each(|((here, other), area)| *here = nearest_whole(off(other, area)));
            }
            for (off, its) in row.iter().zip(easts) {
                // Offsets below the least wrap to a huge index, which `get_mut` refuses.
                let place = off.wrapping_sub(least) as u32 as usize;
                if let Some(sum) = chances.get_mut(place) {
                    *sum += chance * its;
                }
            }
        }
        (least, chances)
    }

    /// The rectangle between two walls of its traverse, filled in or left off, which adds `effect` square feet.
    pub(super) fn part(
        &self,
        traverse: &Traverse,
        walls: [usize; 2],
        sign: f64,
        effect: f64,
    ) -> Option<OfPart> {
        let (north, east) = places(traverse, walls)?;
        let (ones, others) = (ends(self.norths.of_wall(north)), ends(self.easts.of_wall(east)));
        let (least, most) = (sign * ones.0 * others.0, sign * ones.1 * others.1);
        let (middle, square) = (self.middle + effect, self.step * self.step);
        let ends = (
            (self.ends.0 + least.min(most)) * square - middle - 1.0,
            (self.ends.1 + least.max(most)) * square - middle + 1.0,
        );
        Some(OfPart { north, east, sign, middle, ends })
    }

    /// The probability that the area with this part, together with the errors of the other spaces, is `wanted` whole
    /// square feet off, and the probability that it is off by anything else that is not listed. `None` where only
    /// some of its deviations are listed.
    pub(super) fn with_part_at(
        &self,
        part: &OfPart,
        others: Option<&Together>,
        wanted: f64,
    ) -> Option<(f64, f64)> {
        let (least, most) = others.map_or(Some((0.0, 0.0)), Together::ends)?;
        let (low, high) = (part.ends.0 + least, part.ends.1 + most);
        if !is_listed(low) || !is_listed(high) {
            return None;
        }
        let listed = self.norths.all * self.easts.all * others.map_or(1.0, |one| 1.0 - one.rest);
        let rest = (1.0 - listed).max(0.0);
        if wanted < low || wanted > high {
            return Some((0.0, rest));
        }
        // The areas, in square steps, that are near enough.
        let square = self.step * self.step;
        let near = (wanted - (least + most) / 2.0 + part.middle) / square;
        let within = ((most - least) / 2.0 + 0.5) / square + 1e-6;
        let easts = self.easts.chances.as_slice();
        let rows = self.areas.chunks_exact(easts.len().max(1));
        let mut at = 0.0;
        let (ones, others_of) = (self.norths.of_wall(part.north), self.easts.of_wall(part.east));
        for ((row, chance), one) in rows.zip(&self.norths.chances).zip(ones) {
            let one = part.sign * one;
            // Few rows have an area that is near; to see that none is, several are compared at once.
            let is_near = |(area, other): (&f64, &f64)| (area + one * other - near).abs() <= within;
            if !row.iter().zip(others_of).fold(false, |any, pair| any | is_near(pair)) {
                continue;
            }
            let mut here = 0.0;
            for ((area, other), its) in row.iter().zip(others_of).zip(easts) {
                let area = area + one * other;
                if (area - near).abs() <= within {
                    let off = wanted - f64::from(nearest_whole(area * square - part.middle));
                    let is_it = if off == 0.0 { 1.0 } else { 0.0 };
                    here += its * others.map_or(is_it, |others| others.at(off));
                }
            }
            at += chance * here;
        }
        Some((at, rest))
    }
}

/// The places of two straight walls, one along each axis, among the walls of their axes.
fn places(traverse: &Traverse, walls: [usize; 2]) -> Option<(usize, usize)> {
    let axis_of = |side: &TraverseSide| match side.shape {
        Shape::Straight { direction, .. } => Some(direction.axis()),
        _ => None,
    };
    let place = |wall: usize| {
        let axis = axis_of(traverse.sides.get(wall)?)?;
        let before = traverse.sides[..wall].iter();
        Some((axis, before.filter(|side| axis_of(side) == Some(axis)).count()))
    };
    match (place(walls[0])?, place(walls[1])?) {
        ((Axis::North, north), (Axis::East, east)) | ((Axis::East, east), (Axis::North, north)) => {
            Some((north, east))
        }
        _ => None,
    }
}

/// The lowest and the highest of some numbers.
fn ends(numbers: &[f64]) -> (f64, f64) {
    let lower = |one: f64, other: f64| if one < other { one } else { other };
    let higher = |one: f64, other: f64| if one > other { one } else { other };
    // Four at once, and then those that are left.
    let (four, left) = numbers.as_chunks::<4>();
    let (mut low, mut high) = ([f64::INFINITY; 4], [f64::NEG_INFINITY; 4]);
    for these in four {
        for (here, one) in low.iter_mut().zip(these) {
            *here = lower(*one, *here);
        }
        for (here, one) in high.iter_mut().zip(these) {
            *here = higher(*one, *here);
        }
    }
    let low = low.into_iter().chain(left.iter().copied()).fold(f64::INFINITY, lower);
    let high = high.into_iter().chain(left.iter().copied()).fold(f64::NEG_INFINITY, higher);
    (low, high)
}

/// The area of each pair of outcomes in square steps; the pairs with the first north outcome come first. With the
/// smallest and the largest. All are whole numbers far below 2⁵³, so floats are exact.
fn areas(traverse: &Traverse, by_axis: [&OnSteps; 2]) -> (Vec<f64>, (f64, f64)) {
    // Rows of a length that the compiler knows are added several numbers at once; most axes need only short ones.
    match by_axis[1].chances.len() {
        0..=8 => areas_in_rows::<8>(traverse, by_axis),
        9..=12 => areas_in_rows::<12>(traverse, by_axis),
        13..=16 => areas_in_rows::<16>(traverse, by_axis),
        _ => areas_in_rows::<MOST_OF_AN_AXIS>(traverse, by_axis),
    }
}

/// The same, with at most `N` east outcomes.
fn areas_in_rows<const N: usize>(
    traverse: &Traverse,
    [norths, easts]: [&OnSteps; 2],
) -> (Vec<f64>, (f64, f64)) {
    let aside = how_far_east::<N>(traverse, easts);
    let walls = || norths.by_wall().iter().zip(&aside);
    let mut first = [0.0; N];
    for (lengths, (sign, aside)) in walls() {
        add(&mut first, sign * lengths.0[0], aside);
    }
    let count = easts.chances.len();
    let mut areas = Vec::with_capacity(norths.chances.len() * count);
    // For each east outcome by itself, so that several are compared at once.
    let mut low = [f64::INFINITY; N];
    let mut high = [f64::NEG_INFINITY; N];
    for outcome in 0..norths.chances.len() {
        // Most walls are as long as in the first outcome.
        let mut row = first;
        for (lengths, (sign, aside)) in walls() {
            let longer = lengths.0[outcome] - lengths.0[0];
            if longer != 0.0 {
                add(&mut row, sign * longer, aside);
            }
        }
        row.iter_mut().for_each(|area| *area = area.abs());
        for ((low, high), area) in low.iter_mut().zip(&mut high).zip(row) {
            *low = if area < *low { area } else { *low };
            *high = if area > *high { area } else { *high };
        }
        areas.extend_from_slice(&row[..count]);
    }
    (areas, (ends(&low[..count]).0, ends(&high[..count]).1))
}

/// Adds a multiple of another row to a row, as far as it goes.
#[inline(always)]
fn add<const N: usize>(row: &mut [f64; N], times: f64, other: &[f64]) {
    row.iter_mut().zip(other).for_each(|(here, other)| *here += times * other);
}

/// Each wall that runs north or south: 1 or -1, and how far east the traverse is there, in steps.
fn how_far_east<const N: usize>(traverse: &Traverse, easts: &OnSteps) -> Vec<(f64, [f64; N])> {
    let mut lengths = easts.by_wall().iter();
    let mut at = [0.0; N];
    let mut aside = Vec::with_capacity(traverse.sides.len() - lengths.len());
    for side in &traverse.sides {
        let Shape::Straight { direction, .. } = side.shape else { continue };
        let sign = direction.sign() as f64;
        if direction.axis() == Axis::North {
            aside.push((sign, at));
        } else if let Some(lengths) = lengths.next() {
            add(&mut at, sign, &lengths.0);
        }
    }
    aside
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::outline::Vector;
    use crate::house::wall_moves::AtFace;
    use proptest::collection::vec;
    use proptest::prelude::*;

    /// An outline of three towers side by side, with every length in whole inches.
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

    /// The area of an outline with these lengths along each axis, in steps, computed from its corners.
    fn area(at: &AtFace, lengths: [&[i64]; 2]) -> f64 {
        let mut vectors = vec![Vector::default(); at.traverse.sides.len()];
        for (axis, lengths) in Axis::BOTH.into_iter().zip(lengths) {
            for (leg, length) in at.traverse.legs_along(axis).zip(lengths) {
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
            let Some(grid) = OnGrid::of(&at.traverse, &at.outline, way, reading, &Axes::default()) else {
                return Err(TestCaseError::fail("straight walls have a grid"));
            };
            let area_of = |i: usize, j: usize| {
                grid.areas[i * grid.easts.chances.len() + j]
            };
            let all = |axis: &OnSteps| -> Vec<Vec<i64>> {
                (0..axis.chances.len()).map(|i| axis.lengths(i)).collect()
            };
            for (i, north) in all(&grid.norths).iter().enumerate() {
                for (j, east) in all(&grid.easts).iter().enumerate() {
                    let corners = area(&at, [north, east]);
                    prop_assert_eq!(area_of(i, j), corners);
                }
            }
            for axis in [&*grid.norths, &*grid.easts] {
                prop_assert!(axis.chances.len() <= MOST_OF_AN_AXIS);
                let known: std::collections::BTreeSet<Vec<i64>> = all(axis).into_iter().collect();
                prop_assert_eq!(known.len(), axis.chances.len());
                prop_assert!(axis.chances.iter().all(|chance| *chance > 0.0));
                prop_assert!(axis.all < 1.0 + 1e-9);
                prop_assert_eq!(axis.all, axis.chances.iter().sum::<f64>());
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
    }
}
