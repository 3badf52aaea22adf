//! A traverse: sides with their lengths, not yet closed, and the ways to close it.
#![expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    reason = "sides given by bearing are computed in floats, then brought to whole nanometers"
)]

use crate::diagnostic::words;
use crate::geometry::compass::{Axis, Direction};
use crate::geometry::outline::{Outline, Vector, nearest_nm};
use crate::units::decimal::largest_remainder;
use crate::units::length::{Form, Halves, Length, Step, WrittenLength};

/// How one side runs; lengths in nanometers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Shape {
    Straight {
        direction: Direction,
        length: i64,
    },
    /// A slanted wall by its run and rise: signed north and east components. `bulge` is nonzero only where
    /// offsetting a curved wall has slanted its chord.
    Diagonal {
        north: i64,
        east: i64,
        bulge: i64,
    },
    Bearing {
        unit: (f64, f64),
        length: i64,
    },
    /// A curved wall: its chord, and its rise, positive to the right of the walking direction.
    Arc {
        direction: Direction,
        chord: i64,
        rise: i64,
    },
}

/// One side of a traverse.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct TraverseSide {
    pub(crate) shape: Shape,
    /// Its tolerance: plus or minus this many nanometers.
    pub(crate) tolerance: i64,
    /// Whether its length was not typed and follows from the other sides.
    pub(crate) follows: bool,
    /// Whether its length is an estimate, not a measurement.
    pub(crate) estimated: bool,
    /// The side of the space that it is, or is a part of; `None` for a jog that only joins two pieces.
    pub(crate) source: Option<usize>,
}

/// A thousandth of an inch.
const THOUSANDTH: i64 = 25_400;

/// The component of a side along one axis.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Leg {
    pub(crate) side: usize,
    pub(crate) sign: i64,
    pub(crate) length: i64,
    pub(crate) follows: bool,
}

/// The sides in walking order.
#[derive(Clone, Debug, PartialEq, Default)]
pub(crate) struct Traverse {
    pub(crate) sides: Vec<TraverseSide>,
}

/// How lengths are rounded to a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum StepRounding {
    /// To the nearest step.
    Nearest(Step, Halves),
    /// Up to the next step.
    Up(Step),
    /// Down to the last step.
    Down(Step),
}

impl StepRounding {
    pub(crate) fn step(self) -> Step {
        match self {
            StepRounding::Nearest(step, _) | StepRounding::Up(step) | StepRounding::Down(step) => {
                step
            }
        }
    }

    /// Rounds a positive length.
    #[inline]
    pub(crate) fn rounded(self, nm: i64) -> i64 {
        self.steps(nm) * self.step().length().nm()
    }

    /// A positive length rounded, in whole steps.
    #[inline(always)]
    pub(crate) fn steps(self, nm: i64) -> i64 {
        // A unit that the compiler knows needs no division.
        match self.step() {
            Step::WholeFoot => self.quotient(nm, const { Step::WholeFoot.length().nm() }),
            Step::HalfFoot => self.quotient(nm, const { Step::HalfFoot.length().nm() }),
            Step::Inch => self.quotient(nm, const { Step::Inch.length().nm() }),
            Step::TenthFoot => self.quotient(nm, const { Step::TenthFoot.length().nm() }),
        }
    }

    #[inline(always)]
    fn quotient(self, nm: i64, unit: i64) -> i64 {
        match self {
            StepRounding::Nearest(_, halves) => halves.quotient(nm, unit),
            StepRounding::Down(_) => nm.div_euclid(unit),
            StepRounding::Up(_) => -(-nm).div_euclid(unit),
        }
    }
}

/// The misclosure along each axis in nanometers: positive if the traverse ends north, or east, of its start.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Misclosure {
    pub(crate) north: i64,
    pub(crate) east: i64,
}

impl Misclosure {
    /// The misclosure along those axes where it exceeds the allowance; all of it where neither axis does.
    pub(crate) fn beyond(self, traverse: &Traverse) -> Misclosure {
        let keep = |axis: Axis| {
            if self.on(axis).abs() > traverse.allowance(axis) { self.on(axis) } else { 0 }
        };
        let beyond = Misclosure { north: keep(Axis::North), east: keep(Axis::East) };
        if beyond == Misclosure::default() { self } else { beyond }
    }

    pub(super) fn of(vectors: &[Vector]) -> Misclosure {
        let mut misclosure = Misclosure::default();
        vectors.iter().for_each(|&vector| misclosure.go(vector));
        misclosure
    }

    /// Moves on by one side.
    fn go(&mut self, vector: Vector) {
        self.north += vector.north;
        self.east += vector.east;
    }

    pub(crate) fn on(self, axis: Axis) -> i64 {
        match axis {
            Axis::North => self.north,
            Axis::East => self.east,
        }
    }
}

impl Misclosure {
    /// `2" north and 1" east`; empty if there is no misclosure.
    pub(crate) fn spoken(self) -> String {
        self.spoken_in(Form::FeetAndInches)
    }

    /// The misclosure in words, with lengths in another notation.
    pub(crate) fn spoken_in(self, form: Form) -> String {
        let way = |axis: Axis| {
            let miss = self.on(axis);
            let direction = Direction::along(axis, miss).word();
            let far = WrittenLength::new(Length::from_nm(miss).abs(), form);
            (miss != 0).then(|| format!("{} {direction}", far.spoken()))
        };
        let ways: Vec<String> = Axis::BOTH.into_iter().filter_map(way).collect();
        words::all_of(&ways)
    }
}

/// Why a traverse cannot be adjusted to close.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum NotClosed {
    /// The misclosure is more than the tolerances allow.
    Misses(Misclosure),
    /// The misclosure is within the tolerances, but spreading it would leave nothing of this side.
    Turns { side: usize, misses: Misclosure },
    /// This side by closing would have no length, or run backward by `by` nanometers.
    Backwards { side: usize, by: i64 },
}

/// A traverse adjusted to close.
#[derive(Clone, Debug)]
pub(crate) struct Closed {
    /// The traverse with the lengths that follow filled in; the others as typed.
    pub(crate) traverse: Traverse,
    pub(crate) outline: Outline,
    /// The misclosure that was spread over the sides.
    pub(crate) misclosure: Misclosure,
}

impl Closed {
    /// Whether part of its area is computed in floats, because of a bearing or a curve.
    pub(crate) fn is_computed(&self) -> bool {
        self.traverse.has_bearings() || self.outline.is_curved()
    }

    /// Whether any side is slanted, along neither axis.
    pub(crate) fn is_slanted(&self) -> bool {
        self.outline.vectors().iter().any(|vector| vector.east != 0 && vector.north != 0)
    }
}

impl Shape {
    /// The side as a vector, as typed.
    #[inline]
    pub(crate) fn vector(&self) -> Vector {
        match *self {
            Shape::Straight { direction, length } => straight(direction, length, 0),
            other => other.vector_of_any(),
        }
    }

    /// The same for any side. Most are straight and need no call.
    fn vector_of_any(&self) -> Vector {
        match *self {
            Shape::Straight { direction, length } => straight(direction, length, 0),
            Shape::Diagonal { north, east, bulge } => Vector { east, north, rise: bulge },
            Shape::Bearing { unit, length } => Vector {
                east: nearest_nm(unit.0 * length as f64).nm(),
                north: nearest_nm(unit.1 * length as f64).nm(),
                rise: 0,
            },
            Shape::Arc { direction, chord, rise } => straight(direction, chord, rise),
        }
    }

    /// Its sign and its length along an axis, if it runs along it at all.
    #[inline]
    pub(super) fn part(&self, axis: Axis) -> Option<(i64, i64)> {
        match *self {
            Shape::Straight { direction, length } => {
                (direction.axis() == axis).then(|| (direction.sign(), length))
            }
            other => other.part_of_any(axis),
        }
    }

    /// The same for any side. Most are straight and need no call.
    fn part_of_any(&self, axis: Axis) -> Option<(i64, i64)> {
        let signed = match *self {
            Shape::Straight { direction, length } | Shape::Arc { direction, chord: length, .. } => {
                return (direction.axis() == axis).then(|| (direction.sign(), length));
            }
            Shape::Diagonal { north, east, .. } => match axis {
                Axis::North => north,
                Axis::East => east,
            },
            Shape::Bearing { .. } => return None,
        };
        (signed != 0).then(|| (signed.signum(), signed.abs()))
    }
}

#[inline]
fn straight(direction: Direction, length: i64, rise: i64) -> Vector {
    let length = if direction.sign() > 0 { length } else { -length };
    match direction.axis() {
        Axis::North => Vector { east: 0, north: length, rise },
        Axis::East => Vector { east: length, north: 0, rise },
    }
}

impl Vector {
    pub(crate) fn along(&self, axis: Axis) -> i64 {
        match axis {
            Axis::North => self.north,
            Axis::East => self.east,
        }
    }

    pub(crate) fn part(&mut self, axis: Axis) -> &mut i64 {
        match axis {
            Axis::North => &mut self.north,
            Axis::East => &mut self.east,
        }
    }
}

impl Traverse {
    /// Whether any side was given by bearing and length.
    pub(crate) fn has_bearings(&self) -> bool {
        self.sides.iter().any(|side| matches!(side.shape, Shape::Bearing { .. }))
    }

    /// Whether any curved side has a slanted chord.
    pub(crate) fn has_slanted_curves(&self) -> bool {
        let slanted =
            |side: &TraverseSide| matches!(side.shape, Shape::Diagonal { bulge, .. } if bulge != 0);
        self.sides.iter().any(slanted)
    }

    /// The components of the sides along one axis, in walking order; sides by bearing have none.
    pub(crate) fn legs(&self, axis: Axis) -> Vec<Leg> {
        let mut legs = Vec::with_capacity(self.sides.len());
        self.legs_along(axis).for_each(|leg| legs.push(leg));
        legs
    }

    /// Like [`Traverse::legs`], as an iterator.
    pub(crate) fn legs_along(&self, axis: Axis) -> impl Iterator<Item = Leg> {
        let leg = move |(i, side): (usize, &TraverseSide)| {
            let (sign, length) = side.shape.part(axis)?;
            Some(Leg { side: i, sign, length, follows: side.follows })
        };
        self.sides.iter().enumerate().filter_map(leg)
    }

    /// The sides, each rounded on its own.
    pub(super) fn rounded(&self, way: StepRounding) -> Vec<Vector> {
        // The common steps are told apart once, not for each side.
        match way {
            StepRounding::Nearest(Step::WholeFoot, halves) => {
                self.rounded_by(|nm| Length::from_nm(nm).rounded(Step::WholeFoot, halves).nm())
            }
            StepRounding::Nearest(Step::TenthFoot, halves) => {
                self.rounded_by(|nm| Length::from_nm(nm).rounded(Step::TenthFoot, halves).nm())
            }
            way => self.rounded_by(|nm| way.rounded(nm)),
        }
    }

    #[inline(always)]
    fn rounded_by(&self, rounded: impl Fn(i64) -> i64) -> Vec<Vector> {
        let one = |side: &TraverseSide| match side.shape {
            Shape::Straight { direction, length } => straight(direction, rounded(length), 0),
            other => other.rounded_by(&rounded),
        };
        self.sides.iter().map(one).collect()
    }

    /// Where the traverse ends, relative to its start.
    pub(crate) fn misclosure(&self) -> Misclosure {
        let mut misclosure = Misclosure::default();
        self.sides.iter().for_each(|side| misclosure.go(side.shape.vector()));
        misclosure
    }

    /// The largest misclosure along an axis that may be spread: the sum of the tolerances of its sides.
    pub(crate) fn allowance(&self, axis: Axis) -> i64 {
        let counts = |side: &&TraverseSide| {
            matches!(side.shape, Shape::Bearing { .. }) || side.shape.part(axis).is_some()
        };
        self.sides
            .iter()
            .filter(counts)
            .filter(|side| !side.follows)
            .map(|side| side.tolerance)
            .sum()
    }

    /// Adjusts the traverse to close: fills in the lengths that follow, and spreads a misclosure within the
    /// tolerances.
    ///
    /// # Errors
    ///
    /// Why it cannot be closed, with the traverse as it was typed.
    pub(crate) fn adjust(mut self) -> Result<Closed, (NotClosed, Traverse)> {
        match self.closing() {
            Ok((outline, misclosure)) => {
                if misclosure != Misclosure::default() {
                    self.take_over_estimates(&outline);
                }
                Ok(Closed { traverse: self, outline, misclosure })
            }
            Err(why) => {
                for side in self.sides.iter_mut().filter(|side| side.follows) {
                    if let Shape::Straight { length, .. } = &mut side.shape {
                        *length = 0;
                    }
                }
                Err((why, self))
            }
        }
    }

    /// The traverse with lengths by closing filled in where the other sides determine them, for drawing one that does
    /// not close.
    pub(crate) fn filled_as_far_as_it_goes(mut self) -> Traverse {
        for axis in Axis::BOTH {
            // A side that would run backward stays without a length.
            let _ = self.fill(axis);
        }
        self
    }

    /// Replaces estimated lengths with their adjusted ones, so that rounding starts from what the measured walls imply.
    ///
    /// They are rounded to a thousandth of an inch, because the last nanometers depend on file order and must not
    /// decide which of two walls is nearer.
    fn take_over_estimates(&mut self, outline: &Outline) {
        let even = |nm: i64| (nm + (THOUSANDTH >> 1)).div_euclid(THOUSANDTH) * THOUSANDTH;
        let closed = self.sides.iter_mut().zip(outline.vectors());
        for (side, vector) in closed.filter(|(side, _)| side.estimated) {
            match &mut side.shape {
                Shape::Straight { length, .. } | Shape::Arc { chord: length, .. } => {
                    *length = even(vector.east + vector.north).abs();
                }
                Shape::Diagonal { north, east, .. } => {
                    (*north, *east) = (even(vector.north), even(vector.east));
                }
                Shape::Bearing { .. } => {}
            }
        }
    }

    /// Fills in the lengths that follow; returns the closed outline and the misclosure that was spread.
    fn closing(&mut self) -> Result<(Outline, Misclosure), NotClosed> {
        if self.sides.iter().any(|side| side.follows) {
            for axis in Axis::BOTH {
                self.fill(axis)?;
            }
        }
        let mut vectors: Vec<Vector> = self.sides.iter().map(|side| side.shape.vector()).collect();
        let misclosure = Misclosure::of(&vectors);
        if misclosure != Misclosure::default() {
            self.close(misclosure, &mut vectors)?;
        }
        let outline = Outline::new(vectors).ok_or(NotClosed::Misses(misclosure))?;
        Ok((outline, misclosure))
    }

    /// Spreads the misclosure over the sides.
    fn close(&self, misclosure: Misclosure, vectors: &mut [Vector]) -> Result<(), NotClosed> {
        let beyond = |axis: Axis| misclosure.on(axis).abs() > self.allowance(axis);
        if Axis::BOTH.into_iter().any(beyond) {
            return Err(NotClosed::Misses(misclosure));
        }
        for axis in Axis::BOTH {
            self.spread(axis, misclosure.on(axis), vectors);
        }
        let turned = |i: &usize| {
            let (typed, spread) = (self.sides[*i].shape.vector(), vectors[*i]);
            spread.east.signum() != typed.east.signum()
                || spread.north.signum() != typed.north.signum()
        };
        if !self.has_bearings()
            && let Some(side) = (0..vectors.len()).find(turned)
        {
            return Err(NotClosed::Turns { side, misses: misclosure });
        }
        Ok(())
    }

    /// Gives the side by closing of an axis the length that the other sides leave for it.
    fn fill(&mut self, axis: Axis) -> Result<(), NotClosed> {
        let follows = |side: &TraverseSide| side.follows && side.shape.part(axis).is_some();
        let Some(i) = self.sides.iter().position(follows) else {
            return Ok(());
        };
        let sum = self.misclosure().on(axis);
        if let Shape::Straight { direction, length } = &mut self.sides[i].shape {
            let left = *length - direction.sign() * sum;
            if left <= 0 {
                return Err(NotClosed::Backwards { side: i, by: -left });
            }
            *length = left;
        }
        Ok(())
    }

    /// Subtracts `miss` from the sides of an axis: in proportion to the squares of their tolerances, or by the
    /// compass rule if any side is given by bearing.
    ///
    /// Compass rule: the correction of a side is in proportion to its length (any surveying text, for example
    /// Mahun, *Open Access Surveying Library*, Traverse Computations ch. I).
    fn spread(&self, axis: Axis, miss: i64, vectors: &mut [Vector]) {
        if miss == 0 {
            return;
        }
        let by_length = self.has_bearings();
        let sides: Vec<usize> = if by_length {
            (0..self.sides.len()).filter(|&i| !self.sides[i].follows).collect()
        } else {
            self.legs_along(axis).map(|leg| leg.side).collect()
        };
        let weight = |&i: &usize| match self.sides[i].shape {
            _ if !by_length => i128::from(self.sides[i].tolerance).pow(2),
            Shape::Bearing { length, .. } => i128::from(length),
            _ => i128::from(self.sides[i].shape.vector().length().nm()),
        };
        let weights: Vec<i128> = sides.iter().map(weight).collect();
        for (side, part) in sides.iter().zip(shares(i128::from(miss), &weights)) {
            *vectors[*side].part(axis) -= part;
        }
    }
}

impl Shape {
    /// The side rounded on its own, as `rounded` does it for a positive length: its length, its run and rise, or its
    /// chord and rise.
    fn rounded_by(&self, rounded: impl Fn(i64) -> i64) -> Vector {
        let round = |nm: i64| nm.signum() * rounded(nm.abs());
        match *self {
            Shape::Straight { direction, length } => straight(direction, rounded(length), 0),
            Shape::Diagonal { north, east, bulge } => {
                Vector { east: round(east), north: round(north), rise: round(bulge) }
            }
            Shape::Bearing { unit, length } => {
                Shape::Bearing { unit, length: round(length) }.vector()
            }
            Shape::Arc { direction, chord, rise } => straight(direction, round(chord), round(rise)),
        }
    }
}

/// Splits `total` into whole nanometers in proportion to `weights`, by largest remainder.
pub(super) fn shares(total: i128, weights: &[i128]) -> Vec<i64> {
    // Weights above 2^60 are scaled down together, so that the products cannot overflow.
    let largest = weights.iter().copied().max().unwrap_or(1).max(1);
    let shift = (128 - largest.leading_zeros()).saturating_sub(60);
    let weights: Vec<i128> = weights.iter().map(|weight| weight >> shift).collect();
    let whole: i128 = weights.iter().sum::<i128>().max(1);
    let parts: Vec<i128> = weights.iter().map(|weight| total * weight).collect();
    let shares = largest_remainder(&parts, whole, total);
    shares.into_iter().map(|part| i64::try_from(part).unwrap_or(0)).collect()
}
