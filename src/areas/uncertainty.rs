//! The uncertainty of an area: from tape readings, and from rounding.
#![expect(clippy::float_arithmetic, clippy::cast_precision_loss, reason = "statistics")]

use crate::areas::at_face::Walls;
use crate::geometry::compass::Axis;
use crate::geometry::outline::{Outline, Vector};
use crate::geometry::traverse::{Closed, Leg, Shape, StepRounding, Traverse};
use crate::house::House;
use crate::house::wall_moves::Thicknesses;
use crate::units::length::Length;

/// The uncertainty of an area, in square feet.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Spread {
    /// The sum over independent causes, in square feet squared.
    variance: f64,
    /// The error in square feet if every cause were off in the same direction.
    pub(crate) worst: f64,
}

impl Spread {
    /// Two standard deviations in square feet, about 95%.
    pub(crate) fn plus_minus(&self) -> f64 {
        2.0 * libm::sqrt(self.variance)
    }

    /// Adds a cause: a length that is uniformly distributed within ± `within` feet and changes the area by `slope`
    /// square feet for each foot.
    fn add(&mut self, slope: f64, within: f64) {
        self.variance += (slope * within).powi(2) / 3.0;
        self.worst += (slope * within).abs();
    }
}

/// The uncertainty of a total, once at the measured faces and once at the outside face.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Spreads {
    pub(crate) measured: Spread,
    pub(crate) outside: Spread,
}

/// The uncertainty of the total of the counted spaces, including their deductions.
///
/// About 95%, 2·√(Σ gᵢ²tᵢ²/3): each side is uniformly distributed within ± its tolerance (GUM, JCGM 100:2008 §4.3.7,
/// from memory; the law of propagation: NIST/SEMATECH e-Handbook 2.5.5). Worst case, Σ|gᵢ|tᵢ. At the outside face, a
/// stated thickness is within ± 1/4 in, an assumed one within ± 1 in, and a common wall's within ± 2 in; each is a
/// single error shared by all the walls it moved.
pub(crate) fn spreads(
    house: &House,
    counted: impl Iterator<Item = usize>,
    outside: &Walls,
) -> Spreads {
    let mut measured = Spread::default();
    let mut runs = [0.0; Thicknesses::COUNT];
    for space in counted {
        let deducted = house.deducted_from(space).map(|other| (other, -1.0));
        for (i, sign) in std::iter::once((space, 1.0)).chain(deducted) {
            of_tape(&house.spaces[i].closed, &mut measured);
            let moved = outside.spaces[i].needed.moved.runs();
            for (sum, (run, _)) in runs.iter_mut().zip(moved) {
                *sum += sign * Length::from_nm(run).feet();
            }
        }
    }
    let mut all = measured;
    for (run, (_, within)) in runs.into_iter().zip(Thicknesses::default().runs()) {
        all.add(run, within.feet());
    }
    Spreads { measured, outside: all }
}

/// Adds the uncertainty that comes from the tolerances of the sides.
fn of_tape(closed: &Closed, spread: &mut Spread) {
    let tolerance = |side: usize| Length::from_nm(closed.traverse.sides[side].tolerance).feet();
    if closed.traverse.has_bearings() {
        of_bearings(closed, tolerance, spread);
        return;
    }
    let gradients = closed.outline.doubled_gradients();
    let turn = closed.outline.turn();
    for axis in Axis::BOTH {
        let legs = closed.traverse.legs(axis);
        let slopes = slopes(&legs, &closed.outline, &gradients, turn, axis);
        let following = legs.iter().position(|leg| leg.follows);
        let weight = |i: usize| tolerance(legs[i].side).powi(2);
        let shared = match following {
            Some(i) => slopes[i].linear,
            None => {
                let whole: f64 = (0..legs.len()).map(weight).sum();
                let weighed: f64 = (0..legs.len()).map(|i| weight(i) * slopes[i].linear).sum();
                if whole > 0.0 { weighed / whole } else { 0.0 }
            }
        };
        for (i, slope) in slopes.iter().enumerate().filter(|&(i, _)| Some(i) != following) {
            spread.add(slope.linear - shared + slope.curve, tolerance(legs[i].side));
        }
    }
    rises(closed, tolerance, spread);
}

/// How the area grows with the component of a side along one axis, in feet.
#[derive(Clone, Copy, Debug)]
struct Slope {
    /// Along the axis, up to a constant that all sides share.
    linear: f64,
    /// What the segment of a curved side adds.
    curve: f64,
}

fn slopes(
    legs: &[Leg],
    outline: &Outline,
    gradients: &[(i64, i64)],
    turn: i64,
    axis: Axis,
) -> Vec<Slope> {
    legs.iter().map(|leg| Slope::of(leg, outline, gradients, turn, axis)).collect()
}

impl Slope {
    fn of(leg: &Leg, outline: &Outline, gradients: &[(i64, i64)], turn: i64, axis: Axis) -> Slope {
        let linear = Slope::linear(gradients[leg.side], axis);
        let curve =
            turn as f64 * leg.sign as f64 * segment_slope(&outline.vectors()[leg.side], false);
        Slope { linear, curve }
    }

    fn linear((east, north): (i64, i64), axis: Axis) -> f64 {
        let doubled = if axis == Axis::East { east } else { north };
        doubled as f64 / 2.0 / Length::FOOT.nm() as f64
    }
}

/// How the area of a segment grows with its chord, or if `by_rise` with its rise, in feet; 0 for a straight side.
fn segment_slope(vector: &Vector, by_rise: bool) -> f64 {
    if vector.rise == 0 {
        return 0.0;
    }
    let step = Length::INCH.nm() >> 4;
    let chord = nearest(vector.chord());
    let at = |change: i64| {
        let (chord, rise) =
            if by_rise { (chord, vector.rise + change) } else { (chord + change, vector.rise) };
        Vector { east: chord, north: 0, rise }.segment().sq_ft()
    };
    (at(step) - at(-step)) / (2.0 * Length::from_nm(step).feet())
}

fn nearest(nm: f64) -> i64 {
    crate::geometry::outline::nearest_nm(nm).nm()
}

fn rises(closed: &Closed, tolerance: impl Fn(usize) -> f64, spread: &mut Spread) {
    for (i, vector) in closed.outline.vectors().iter().enumerate() {
        spread.add(segment_slope(vector, true), tolerance(i));
    }
}

/// Adds the uncertainty that comes from sides by bearing and length, closed by the compass rule.
fn of_bearings(closed: &Closed, tolerance: impl Fn(usize) -> f64, spread: &mut Spread) {
    let foot = Length::FOOT.nm() as f64;
    let gradients: Vec<(f64, f64)> = closed
        .outline
        .doubled_gradients()
        .iter()
        .map(|&(east, north)| (east as f64 / 2.0 / foot, north as f64 / 2.0 / foot))
        .collect();
    let lengths: Vec<f64> =
        closed.traverse.sides.iter().map(|side| side.shape.vector().length().feet()).collect();
    // What closing subtracts from each side: a share in proportion to its length, or everything from the side by
    // closing.
    let shared = |axis: Axis, part: fn(&(f64, f64)) -> f64| -> f64 {
        let follows = closed.traverse.legs_along(axis).find(|leg| leg.follows);
        if let Some(leg) = follows {
            return part(&gradients[leg.side]);
        }
        let measured = |i: &usize| !closed.traverse.sides[*i].follows;
        let sides = (0..lengths.len()).filter(measured);
        let whole: f64 = sides.clone().map(|i| lengths[i]).sum();
        sides.map(|i| part(&gradients[i]) * lengths[i]).sum::<f64>() / whole.max(1e-9)
    };
    let (east_shared, north_shared) = (shared(Axis::East, |g| g.0), shared(Axis::North, |g| g.1));
    for i in (0..closed.traverse.sides.len()).filter(|&i| !closed.traverse.sides[i].follows) {
        let vector = closed.traverse.sides[i].shape.vector();
        let chord = vector.chord().max(1.0);
        let (east, north) = (vector.east as f64 / chord, vector.north as f64 / chord);
        let g = east * (gradients[i].0 - east_shared) + north * (gradients[i].1 - north_shared);
        spread.add(g, tolerance(i));
    }
    rises(closed, &tolerance, spread);
}

/// The uncertainty of an area when an office reads its sides within a given error, rounds them and closes them: the
/// part that does not depend on the rounding.
pub(crate) struct OfRounding {
    /// The legs of each axis, with the square of the area's slope for each leg.
    axes: [Vec<(Leg, f64)>; 2],
}

impl OfRounding {
    /// Prepares the uncertainty of a traverse and its closed outline.
    pub(crate) fn new(traverse: &Traverse, outline: &Outline) -> OfRounding {
        let gradients = outline.doubled_gradients();
        let turn = outline.turn();
        let axes = Axis::BOTH.map(|axis| {
            let slope = |leg: &Leg| Slope::of(leg, outline, &gradients, turn, axis);
            let mut legs = Vec::with_capacity(traverse.sides.len());
            let linear = |leg: &Leg| Slope::linear(gradients[leg.side], axis);
            traverse.legs_along(axis).for_each(|leg| legs.push((leg, linear(&leg))));
            let mean =
                legs.iter().map(|(_, linear)| linear).sum::<f64>() / legs.len().max(1) as f64;
            for (leg, square) in &mut legs {
                // A straight side has no segment.
                let is_straight = outline.vectors()[leg.side].rise == 0;
                let curve = if is_straight { 0.0 } else { slope(leg).curve };
                *square = (*square - mean + curve).powi(2);
            }
            legs
        });
        OfRounding { axes }
    }

    /// The variance in square feet squared.
    ///
    /// step²·[Σ gᵢ²pᵢ(1−pᵢ) + 1.3·Σ_axis E|k|·mean gᵢ²], and ‖g‖²·reading²/3 where steps are finer than the reading.
    /// pᵢ is the chance that a reading error makes wall i round to the other step, and E|k| the expected misclosure
    /// of an axis in steps (our own model, checked by simulation).
    pub(crate) fn variance(&self, way: StepRounding, reading: Length) -> f64 {
        let (step, reading) = (way.step().length().feet(), reading.feet());
        let mut variance = 0.0;
        let most = self.axes.iter().map(Vec::len).max().unwrap_or(0);
        let mut odd = OddSteps { fewest: 0, spread: Vec::with_capacity(most + 1) };
        for legs in &self.axes {
            odd.restart();
            let (mut norm, mut flips) = (0.0, 0.0);
            for (leg, square) in legs {
                let chance =
                    chance_of_other_step_ft(Length::from_nm(leg.length).feet(), way, reading);
                norm += square;
                flips += square * chance * (1.0 - chance);
                odd.add(leg, chance, way);
            }
            let m = legs.len().max(1) as f64;
            variance += step * step * (flips + MORE_THAN_ANY * odd.expected() * norm / m);
            variance += if step < 2.0 * reading { norm * reading * reading / 3.0 } else { 0.0 };
        }
        variance
    }
}

/// An office tends to correct a misclosure on a single wall, usually a long one, which changes the area more than
/// the average wall would. The factor comes from simulations of offices of four kinds.
const MORE_THAN_ANY: f64 = 1.3;

/// The probability that a tape reading off by up to ± `reading` makes this length (in nanometers) round to a different
/// step from the one that `way` gives.
pub(crate) fn chance_of_other_step(nm: i64, way: StepRounding, reading: Length) -> f64 {
    chance_of_other_step_ft(Length::from_nm(nm).feet(), way, reading.feet())
}

/// The probability that a tape reading off by up to ± `reading` feet makes this length (in feet) round to a different
/// step from the one that `way` gives.
pub(crate) fn chance_of_other_step_ft(feet: f64, way: StepRounding, reading: f64) -> f64 {
    let step = way.step().length().feet();
    if step < 2.0 * reading {
        return 0.5;
    }
    let above = feet - step * whole(feet / step);
    let distance = match way {
        StepRounding::Nearest(..) => (above - step / 2.0).abs(),
        StepRounding::Up(_) | StepRounding::Down(_) => above.min(step - above),
    };
    ((reading - distance) / (2.0 * reading).max(1e-9)).max(0.0)
}

/// The whole part of a number of steps. A length is not below zero, so this is `f64::floor`, which is a slow library
/// call on most machines.
#[expect(clippy::cast_possible_truncation, reason = "a side has far fewer than 2⁵³ steps")]
fn whole(steps: f64) -> f64 {
    steps as i64 as f64
}

/// The misclosure of an axis in steps when tape readings may make walls round to the other step.
struct OddSteps {
    /// The lowest misclosure, and the chance of each from it on.
    fewest: i64,
    spread: Vec<f64>,
}

impl OddSteps {
    /// Begins with an axis that has no walls yet.
    fn restart(&mut self) {
        self.fewest = 0;
        self.spread.clear();
        self.spread.push(1.0);
    }

    /// Adds a wall, with the chance that it is rounded to the other step.
    fn add(&mut self, leg: &Leg, chance: f64, way: StepRounding) {
        let steps = way.steps(leg.length);
        self.fewest += leg.sign * steps;
        if chance <= 0.0 {
            return;
        }
        let up = steps * way.step().length().nm() < leg.length;
        let more = (leg.sign > 0) == up;
        self.fewest -= i64::from(!more);
        // One more step if the wall is rounded one way, none if the other way.
        let (same, next) = if more { (1.0 - chance, chance) } else { (chance, 1.0 - chance) };
        let mut below = 0.0;
        for here in &mut self.spread {
            (*here, below) = (*here * same + below * next, *here);
        }
        self.spread.push(below * next);
    }

    /// The expected misclosure, in either direction.
    fn expected(&self) -> f64 {
        self.spread.iter().zip(self.fewest..).map(|(p, k)| k.abs() as f64 * p).sum()
    }
}

/// The mean square of the error from rounding an outline's sides to a step, in square feet squared.
///
/// Σ over axes ‖g‖²·(1/12 + 1/(6m))·step², where g is the gradient over changes that keep it closed and m is the
/// number of sides of the axis: second moment of the lattice A₍m−1₎ (Conway & Sloane, from memory; simulation
/// agrees). `None` if any side is given by bearing.
pub(crate) fn typical_squared(traverse: &Traverse, outline: &Outline, step: Length) -> Option<f64> {
    if traverse.sides.iter().any(|side| matches!(side.shape, Shape::Bearing { .. })) {
        return None;
    }
    let mut sum = 0.0;
    let gradients = outline.doubled_gradients();
    let turn = outline.turn();
    for axis in Axis::BOTH {
        let slopes = slopes(&traverse.legs(axis), outline, &gradients, turn, axis);
        let m = slopes.len() as f64;
        let mean = slopes.iter().map(|slope| slope.linear).sum::<f64>() / m.max(1.0);
        let norm: f64 =
            slopes.iter().map(|slope| (slope.linear - mean + slope.curve).powi(2)).sum();
        sum += norm * (1.0 / 12.0 + 1.0 / (6.0 * m.max(1.0)));
    }
    let rises: f64 =
        outline.vectors().iter().map(|vector| segment_slope(vector, true).powi(2) / 12.0).sum();
    Some((sum + rises) * step.feet().powi(2))
}
