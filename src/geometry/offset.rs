//! Moving walls from the measured face to another face.
//!
//! Each piece of a side moves outward by its own thickness; the new corners are where the moved walls meet. For a
//! right-angled outline and one thickness t, the area grows by exactly P·t + 4t², where P is the perimeter (a
//! mitered offset: A + P·t + t²·Σ tan(θ/2); the turns of a right-angled outline add up to four right angles).
//! Axis-parallel sides move exactly, slanted and curved ones in floats.
#![expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    reason = "corners of slanted and curved walls are computed in floats, then brought to whole nanometers"
)]

use crate::geometry::outline::{Outline, Vector, nearest_nm};
use crate::geometry::traverse::{Shape, Traverse, TraverseSide};

/// A stretch of a side that moves as a whole.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Piece {
    /// The side of the traverse it belongs to.
    pub(crate) side: usize,
    pub(crate) vector: Vector,
    /// How far it moves outward, in nanometers; negative means inward.
    pub(crate) outward: i64,
}

impl Piece {
    /// The center of a curved piece with this radius, relative to where the piece starts. It lies on the side of the
    /// chord away from the bulge, radius minus rise from the chord's middle.
    fn center(&self, radius: f64) -> (f64, f64) {
        let (east, north) = (self.vector.east as f64, self.vector.north as f64);
        let chord = self.vector.chord().max(1.0);
        let bulge = if self.vector.rise < 0 { -1.0 } else { 1.0 };
        let depth = bulge * (radius - (self.vector.rise as f64).abs()) / chord;
        (east / 2.0 - north * depth, north / 2.0 + east * depth)
    }
}

/// Why walls cannot be moved to another face.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum OffsetError {
    /// Nothing is left of this side after the move.
    Vanishes { side: usize },
    /// These two sides cross or touch after the move.
    Cross { first: usize, second: usize },
}

/// A traverse moved to another face, closed.
#[derive(Clone, Debug)]
pub(crate) struct Moved {
    pub(crate) traverse: Traverse,
    pub(crate) outline: Outline,
    /// The first corner after the move, relative to the first corner before it: east, then north.
    pub(crate) start: (i64, i64),
}

/// Moves the pieces of `outline` outward. Each side of the result still says which side of the traverse it came
/// from.
pub(crate) fn moved(
    traverse: &Traverse,
    outline: &Outline,
    pieces: &[Piece],
) -> Result<Moved, OffsetError> {
    let turn = outline.turn();
    let n = pieces.len();
    // Where each piece begins and ends after the move, and the jogs between pieces in one line.
    let mut corners = Vec::with_capacity(n);
    let mut at = (0_i64, 0_i64);
    let mut starts = Vec::with_capacity(n);
    for piece in pieces {
        starts.push(at);
        at = (at.0 + piece.vector.east, at.1 + piece.vector.north);
    }
    for i in 0..n {
        let before = &pieces[(i + n - 1) % n];
        corners.push(corner(before, &pieces[i], turn, starts[i]));
    }
    let mut sides = Vec::with_capacity(n);
    let mut vectors = Vec::with_capacity(n);
    for (i, piece) in pieces.iter().enumerate() {
        let (_, start) = corners[i];
        let (end, next) = corners[(i + 1) % n];
        let vector = between(piece, turn, starts[i], (start, end))?;
        sides.push(TraverseSide {
            shape: moved_shape(traverse, piece, vector),
            ..traverse.sides[piece.side]
        });
        if let Some(side) = sides.last_mut() {
            side.follows = false;
        }
        vectors.push(vector);
        if end != next {
            let jog = Vector { east: next.0 - end.0, north: next.1 - end.1, rise: 0 };
            let shape = Shape::Diagonal { north: jog.north, east: jog.east, bulge: 0 };
            let joining = TraverseSide {
                shape,
                tolerance: 0,
                follows: false,
                estimated: false,
                source: None,
            };
            sides.push(joining);
            vectors.push(jog);
        }
    }
    let outline = Outline::new(vectors).ok_or(OffsetError::Vanishes { side: 0 })?;
    if outline.turn() != turn {
        return Err(OffsetError::Vanishes { side: 0 });
    }
    if let Some(crossing) = outline.crossing() {
        // A jog belongs to the side before it.
        let source = |i: usize| sides[..=i].iter().rev().find_map(|side| side.source).unwrap_or(0);
        return Err(OffsetError::Cross {
            first: source(crossing.first),
            second: source(crossing.second),
        });
    }
    Ok(Moved { traverse: Traverse { sides }, outline, start: corners[0].1 })
}

type Point = (i64, i64);

/// Where `before` ends and `next` begins after the move; one point unless a jog joins them.
fn corner(before: &Piece, next: &Piece, turn: i64, at: Point) -> (Point, Point) {
    let (a, b) = (Line::ending(before, turn), Line::starting(next, turn));
    let shifted = |line: &Line, exact: Option<Point>| {
        let by = exact.unwrap_or_else(|| line.shift());
        (at.0 + by.0, at.1 + by.1)
    };
    if in_one_line(before, next) {
        let (end, start) = (shifted(&a, a.exact()), shifted(&b, b.exact()));
        return (end, start);
    }
    let by = match (a.exact(), b.exact()) {
        // Two axis-parallel sides at a right angle: each gives one coordinate exactly.
        (Some(one), Some(other)) => (one.0 + other.0, one.1 + other.1),
        (one, other) => {
            let (east, north) = meet(&a, &b);
            let fixed =
                |part: fn(Point) -> i64, exact: Option<Point>, line: &Line, vertical: bool| {
                    exact.filter(|_| line.is_vertical() == vertical).map(part)
                };
            let east_exact =
                fixed(|p| p.0, one, &a, true).or_else(|| fixed(|p| p.0, other, &b, true));
            let north_exact =
                fixed(|p| p.1, one, &a, false).or_else(|| fixed(|p| p.1, other, &b, false));
            (
                east_exact.unwrap_or_else(|| nearest_nm(east).nm()),
                north_exact.unwrap_or_else(|| nearest_nm(north).nm()),
            )
        }
    };
    let corner = (at.0 + by.0, at.1 + by.1);
    (corner, corner)
}

fn in_one_line(before: &Piece, next: &Piece) -> bool {
    let (a, b) = (before.vector, next.vector);
    let straight = a.rise == 0 && b.rise == 0;
    let cross = i128::from(a.east) * i128::from(b.north) - i128::from(a.north) * i128::from(b.east);
    // Walls nearly in line count too, since they would meet far away.
    let size = (a.chord() * b.chord()).max(1.0);
    straight && (cross as f64 / size).abs() < 1e-9
}

/// The line or circle on which one end of a moved piece lies, relative to the corner before the move.
#[derive(Clone, Copy)]
struct Line {
    /// Unit vector that points out of the house at this end.
    out: (f64, f64),
    outward: i64,
    /// For a curved piece: its center relative to the corner, and its radius after the move.
    circle: Option<((f64, f64), f64)>,
    exact: Option<Point>,
}

impl Line {
    fn starting(piece: &Piece, turn: i64) -> Line {
        Line::at(piece, turn, false)
    }

    fn ending(piece: &Piece, turn: i64) -> Line {
        Line::at(piece, turn, true)
    }

    fn at(piece: &Piece, turn: i64, at_end: bool) -> Line {
        let vector = piece.vector;
        let (chord, turn_f) = (vector.chord().max(1.0), turn as f64);
        let right = (vector.north as f64 / chord, -(vector.east as f64) / chord);
        let out = (right.0 * turn_f, right.1 * turn_f);
        let exact = (vector.rise == 0).then(|| {
            let (east, north) = (vector.north.signum() * turn, -vector.east.signum() * turn);
            (east, north)
        });
        let exact = exact.filter(|_| vector.east == 0 || vector.north == 0);
        let exact = exact.map(|(east, north)| (east * piece.outward, north * piece.outward));
        let circle = vector.curve().map(|curve| {
            let bulge = if vector.rise < 0 { -1.0 } else { 1.0 };
            let (mut east, mut north) = piece.center(curve.radius);
            if at_end {
                (east, north) = (east - vector.east as f64, north - vector.north as f64);
            }
            ((east, north), curve.radius + bulge * turn_f * piece.outward as f64)
        });
        let out = circle.map_or(out, |(center, _)| {
            let bulge = if vector.rise < 0 { -1.0 } else { 1.0 } * turn_f;
            let size = libm::hypot(center.0, center.1).max(1.0);
            (-center.0 / size * bulge, -center.1 / size * bulge)
        });
        Line { out, outward: piece.outward, circle, exact }
    }

    fn exact(&self) -> Option<Point> {
        self.exact
    }

    fn is_vertical(&self) -> bool {
        self.out.1.abs() < 0.5
    }

    fn shift(&self) -> Point {
        let by = self.outward as f64;
        (nearest_nm(self.out.0 * by).nm(), nearest_nm(self.out.1 * by).nm())
    }

    /// How far `point` is off the line, and the direction in which that distance grows.
    fn miss(&self, point: (f64, f64)) -> (f64, (f64, f64)) {
        match self.circle {
            None => {
                let off = self.out.0 * point.0 + self.out.1 * point.1 - self.outward as f64;
                (off, self.out)
            }
            Some((center, radius)) => {
                let from = (point.0 - center.0, point.1 - center.1);
                let size = libm::hypot(from.0, from.1).max(1e-9);
                (size - radius, (from.0 / size, from.1 / size))
            }
        }
    }
}

/// The point on both lines that is nearest the corner, by Newton's method; straight lines take one step.
fn meet(a: &Line, b: &Line) -> (f64, f64) {
    let mut point = (0.0, 0.0);
    for _ in 0..40 {
        let ((off_a, way_a), (off_b, way_b)) = (a.miss(point), b.miss(point));
        let determinant = way_a.0 * way_b.1 - way_a.1 * way_b.0;
        if determinant.abs() < 1e-7 {
            // They join smoothly.
            return (a.out.0 * a.outward as f64, a.out.1 * a.outward as f64);
        }
        let east = (off_a * way_b.1 - off_b * way_a.1) / determinant;
        let north = (off_b * way_a.0 - off_a * way_b.0) / determinant;
        point = (point.0 - east, point.1 - north);
        if east.abs() + north.abs() < 0.01 {
            break;
        }
    }
    point
}

/// The side that began at `at`, after its ends moved to `start` and `end`.
///
/// # Errors
///
/// Nothing would be left of it, or it would run backward.
fn between(
    piece: &Piece,
    turn: i64,
    at: Point,
    (start, end): (Point, Point),
) -> Result<Vector, OffsetError> {
    let mut vector = Vector { east: end.0 - start.0, north: end.1 - start.1, rise: 0 };
    let along = i128::from(vector.east) * i128::from(piece.vector.east)
        + i128::from(vector.north) * i128::from(piece.vector.north);
    let vanishes = Err(OffsetError::Vanishes { side: piece.side });
    if along <= 0 {
        return vanishes;
    }
    if let Some(curve) = piece.vector.curve() {
        let bulge = piece.vector.rise.signum();
        let radius = curve.radius + (bulge * turn * piece.outward) as f64;
        let half = vector.chord() / 2.0;
        if radius <= 0.0 || half > radius * (1.0 + 1e-9) {
            return vanishes;
        }
        let depth = libm::sqrt((radius * radius - half * half).max(0.0));
        // Half a circle may become more or less than half, depending on which side of the new chord its center
        // lies.
        let center = piece.center(curve.radius);
        let to = |from: i64, center: f64, end: i64| (from as f64 + center) - (end as f64);
        let (east, north) = (to(at.0, center.0, start.0), to(at.1, center.1, start.1));
        let right = vector.north as f64 * east - vector.east as f64 * north;
        let beyond_half = right * bulge as f64 > 0.0;
        let rise = if beyond_half { radius + depth } else { radius - depth };
        vector.rise = bulge * nearest_nm(rise).nm();
    }
    Ok(vector)
}

/// The shape of a moved side, of the same kind as before where possible.
fn moved_shape(traverse: &Traverse, piece: &Piece, vector: Vector) -> Shape {
    let length = vector.east.abs() + vector.north.abs();
    let aligned = vector.east == 0 || vector.north == 0;
    match traverse.sides[piece.side].shape {
        Shape::Straight { direction, .. } if aligned => Shape::Straight { direction, length },
        Shape::Arc { direction, .. } if aligned => {
            Shape::Arc { direction, chord: length, rise: vector.rise }
        }
        Shape::Bearing { unit, .. } => {
            Shape::Bearing { unit, length: nearest_nm(vector.chord()).nm() }
        }
        _ => Shape::Diagonal { north: vector.north, east: vector.east, bulge: vector.rise },
    }
}
