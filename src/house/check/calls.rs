//! Calls of a deed: which one could contain a whole misclosure, and which common misreading would explain it there.
#![expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    reason = "a bearing is an angle; a misreading is judged against tolerances, and no printed figure comes from here"
)]

use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

use crate::geometry::compass::Axis;
use crate::geometry::outline::Vector;
use crate::geometry::traverse::{Misclosure, Shape, Traverse, TraverseSide};
use crate::house::Side;
use crate::house::check::suspect::{Rank, Slip, Suspect, swapped};
use crate::sketch::bearing_written;
use crate::sketch::statement::{Bearing, Run};
use crate::units::length::WrittenLength;

/// The most calls that are named.
const MOST: usize = 3;
/// The calls of a deed, if none is misread, close within one part in this many of their length (our judgment; a deed's
/// bearings to the minute and lengths to the tenth of a foot allow one in some thousands).
const CLOSES_TO: f64 = 1_500.0;

/// The calls that could contain the whole misclosure, those with a common misreading first; empty if no side is
/// given by bearing.
pub(super) fn suspects(traverse: &Traverse, sides: &[Side], misses: Misclosure) -> Vec<Suspect> {
    if !traverse.has_bearings() {
        return Vec::new();
    }
    let judge = Judge::new(traverse, misses);
    if let Some(read) = judge.all_as_a_calculator_prints(sides) {
        let one = |(side, bearing): &(usize, Bearing)| {
            let slip = Slip::Bearing(bearing_written(bearing));
            Suspect { rank: Rank::Unit, ..Suspect::common(*side, slip) }
        };
        return read.iter().take(MOST).map(one).collect();
    }
    let mut misread: Vec<Misread> = Vec::new();
    for (i, side) in sides.iter().enumerate() {
        let readings = readings(side).into_iter();
        let fitting = readings.filter(|(shape, _)| judge.closes(&[(i, *shape)]));
        misread.extend(fitting.take(1).map(|(shape, slip)| Misread {
            side: i,
            squares: judge.squares(i, shape),
            slip,
        }));
    }
    // Only the calls that would be square to the most neighbors are kept, since they are likelier.
    let most = misread.iter().map(|misread| misread.squares).max().unwrap_or(0);
    misread.retain(|misread| misread.squares == most);
    let mut all: Vec<Suspect> = misread
        .into_iter()
        .take(MOST)
        .map(|misread| Suspect::common(misread.side, misread.slip))
        .collect();
    if all.is_empty() {
        all.extend(judge.parallel().into_iter().map(Suspect::of_size));
    }
    all
}

/// What to type if the bearings were copied from a calculator that prints degrees, minutes and seconds after one
/// point.
pub(super) fn as_a_calculator_prints(
    traverse: &Traverse,
    sides: &[Side],
    misses: Misclosure,
) -> Option<String> {
    let (side, bearing) =
        Judge::new(traverse, misses).all_as_a_calculator_prints(sides)?.into_iter().next()?;
    let Run::Bearing(_, length) = &sides[side].run else { return None };
    Some(format!(
        "a calculator prints degrees, minutes and seconds after one point: read that way the calls close, {} then is `bearing {} {length}`",
        sides[side].quoted(),
        bearing_written(&bearing)
    ))
}

/// A misreading of one call which, once undone, makes the calls close.
struct Misread {
    side: usize,
    /// How many of its neighbors it is square to.
    squares: usize,
    slip: Slip,
}

struct Judge<'a> {
    traverse: &'a Traverse,
    misses: Misclosure,
    /// The greatest distance between end and start, in nanometers, for calls without a misreading.
    allowed: f64,
}

impl<'a> Judge<'a> {
    fn new(traverse: &'a Traverse, misses: Misclosure) -> Judge<'a> {
        let lengths = traverse.sides.iter().map(|side| side.shape.vector().length().nm());
        let around: i64 = lengths.sum();
        let tolerances: i64 = Axis::BOTH.into_iter().map(|axis| traverse.allowance(axis)).sum();
        let allowed = (around as f64 / CLOSES_TO).max(tolerances as f64);
        Judge { traverse, misses, allowed }
    }

    /// Whether the calls would close as a deed does, and far better than as typed, if these sides had these shapes.
    fn closes(&self, instead: &[(usize, Shape)]) -> bool {
        let mut left = (self.misses.east as f64, self.misses.north as f64);
        for (side, shape) in instead {
            let (typed, read) = (self.traverse.sides[*side].shape.vector(), shape.vector());
            left.0 += (read.east - typed.east) as f64;
            left.1 += (read.north - typed.north) as f64;
        }
        let (after, before) = (
            libm::hypot(left.0, left.1),
            libm::hypot(self.misses.east as f64, self.misses.north as f64),
        );
        after <= self.allowed && 5.0 * after <= before
    }

    /// How many of its two neighbors a call would be square to if it had this shape.
    fn squares(&self, side: usize, shape: Shape) -> usize {
        let n = self.traverse.sides.len();
        let unit = |vector: Vector| {
            let (east, north) = (vector.east as f64, vector.north as f64);
            let length = libm::hypot(east, north).max(1.0);
            (east / length, north / length)
        };
        let here = unit(shape.vector());
        let is_square = |other: &usize| {
            let there = unit(self.traverse.sides[*other].shape.vector());
            (here.0 * there.0 + here.1 * there.1).abs() < 0.002
        };
        [(side + n - 1) % n, (side + 1) % n].iter().filter(|other| is_square(other)).count()
    }

    /// Every decimal bearing read as degrees, minutes and seconds, if the calls then close.
    fn all_as_a_calculator_prints(&self, sides: &[Side]) -> Option<Vec<(usize, Bearing)>> {
        let read = |(i, side): (usize, &Side)| match &side.run {
            Run::Bearing(bearing, length) => {
                Some((i, minutes_and_seconds(bearing)?, length.length().nm()))
            }
            _ => None,
        };
        let all: Vec<(usize, Bearing, i64)> = sides.iter().enumerate().filter_map(read).collect();
        let shapes: Vec<(usize, Shape)> =
            all.iter().map(|(i, bearing, length)| (*i, along(bearing, *length))).collect();
        (!all.is_empty() && self.closes(&shapes))
            .then(|| all.into_iter().map(|(i, bearing, _)| (i, bearing)).collect())
    }

    /// Calls within about three degrees of the direction of the misclosure, so that a wrong length of one call
    /// alone could be the error (see any surveying text on finding a mistake in a traverse).
    fn parallel(&self) -> Vec<usize> {
        let wide = |nm: i64| i128::from(nm);
        let misses = self.misses;
        let is_along = |(i, side): (usize, &TraverseSide)| {
            let Shape::Bearing { .. } = side.shape else { return None };
            let Vector { east, north, .. } = side.shape.vector();
            let cross = wide(east) * wide(misses.north) - wide(north) * wide(misses.east);
            let dot = wide(east) * wide(misses.east) + wide(north) * wide(misses.north);
            let square = wide(east) * wide(east) + wide(north) * wide(north);
            // The tangent of three degrees is 0.0524; the corrected call must keep a positive length.
            (1_000 * cross.abs() <= 52 * dot.abs() && square > dot).then_some(i)
        };
        self.traverse.sides.iter().enumerate().filter_map(is_along).take(MOST).collect()
    }
}

/// The common misreadings of a call, each with its label.
fn readings(side: &Side) -> Vec<(Shape, Slip)> {
    let Run::Bearing(bearing, written) = &side.run else { return Vec::new() };
    let (bearing, length) = (**bearing, written.length().nm());
    let (north_for_south, east_for_west) = (
        Bearing { from: bearing.from.opposite(), ..bearing },
        Bearing { toward: bearing.toward.opposite(), ..bearing },
    );
    let back =
        Bearing { from: bearing.from.opposite(), toward: bearing.toward.opposite(), ..bearing };
    let mut all = vec![
        (along(&east_for_west, length), Slip::Bearing("E for W, or W for E".to_owned())),
        (along(&north_for_south, length), Slip::Bearing("N for S, or S for N".to_owned())),
        (along(&back, length), Slip::OtherWay),
    ];
    let angles = other_angles(&bearing).into_iter();
    all.extend(angles.map(|read| {
        let read_either_way =
            format!("{} or {}", bearing_written(&bearing), bearing_written(&read));
        let slip = Slip::Bearing(read_either_way);
        (along(&read, length), slip)
    }));
    let lengths = other_lengths(*written).into_iter();
    all.extend(lengths.map(|length| (along(&bearing, length), Slip::DigitsSwapped)));
    all
}

fn along(bearing: &Bearing, length: i64) -> Shape {
    Shape::Bearing { unit: bearing.unit_vector(), length }
}

/// The bearing with two digits of its degrees, minutes or seconds swapped, or read as a calculator prints it.
fn other_angles(bearing: &Bearing) -> Vec<Bearing> {
    let part = |number: Decimal, below: i64| {
        let whole = number.trunc();
        let rest = number - whole;
        let others = whole.to_i64().map(two_digits_swapped).unwrap_or_default();
        let fits = others.into_iter().filter(move |&other| other < below);
        fits.map(move |other| Decimal::from(other) + rest).collect::<Vec<Decimal>>()
    };
    let mut all: Vec<Bearing> = part(bearing.degrees, 90)
        .into_iter()
        .map(|degrees| Bearing { degrees, ..*bearing })
        .collect();
    for minutes in bearing.minutes.map(|minutes| part(minutes, 60)).unwrap_or_default() {
        all.push(Bearing { minutes: Some(minutes), ..*bearing });
    }
    for seconds in bearing.seconds.map(|seconds| part(seconds, 60)).unwrap_or_default() {
        all.push(Bearing { seconds: Some(seconds), ..*bearing });
    }
    all.extend(minutes_and_seconds(bearing));
    all
}

/// The number with its two digits swapped. A number below ten is read as having a zero before it: `04` for `40`.
fn two_digits_swapped(number: i64) -> Vec<i64> {
    match number {
        1..10 => vec![number * 10],
        _ => swapped(number),
    }
}

/// The lengths with two neighboring digits of the whole units swapped.
fn other_lengths(written: WrittenLength) -> Vec<i64> {
    let unit = match written.form().unit() {
        inch if inch == crate::units::length::Length::INCH => crate::units::length::Length::FOOT,
        unit => unit,
    }
    .nm();
    let length = written.length().nm();
    let (whole, rest) = (length.div_euclid(unit), length.rem_euclid(unit));
    swapped(whole).into_iter().map(|whole| whole * unit + rest).collect()
}

/// The bearing meant by a decimal such as `5.1350`, as a calculator prints 5° 13' 50"; `None` if it cannot be that.
fn minutes_and_seconds(bearing: &Bearing) -> Option<Bearing> {
    if bearing.minutes.is_some() || bearing.degrees.scale() < 1 || bearing.degrees.scale() > 4 {
        return None;
    }
    let whole = bearing.degrees.trunc();
    let digits = ((bearing.degrees - whole) * Decimal::from(10_000)).trunc().to_i64()?;
    let (minutes, seconds) = (digits.div_euclid(100), digits.rem_euclid(100));
    let is_angle = minutes < 60 && seconds < 60;
    is_angle.then(|| Bearing {
        degrees: whole,
        minutes: Some(Decimal::from(minutes)),
        seconds: (seconds != 0).then(|| Decimal::from(seconds)),
        ..*bearing
    })
}
