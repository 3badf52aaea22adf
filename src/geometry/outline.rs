//! A closed outline: its area, its corners, how its area changes with its sides, and whether it crosses itself.
//!
//! East and north are positive. An outline walked with its inside on the left has a positive signed area;
//! [`Outline::area`] is never negative.
#![expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    reason = "curved sides, perimeters of slanted ones and places for drawing are floats"
)]

use rstar::primitives::{GeomWithData, Rectangle};
use rstar::{RTree, RTreeObject};

use crate::geometry::compass::{Axis, Direction};
use crate::units::area::Area;
use crate::units::length::Length;

/// One side as a vector east and north. A curved side bulges to the right of the walking direction by `rise`, the
/// greatest distance between the curve and its chord.
///
/// # Units
///
/// Nanometers.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Vector {
    pub(crate) east: i64,
    pub(crate) north: i64,
    pub(crate) rise: i64,
}

/// A position on the plan, relative to the start of the outline.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Place {
    /// Distance east.
    pub east: Length,
    /// Distance north.
    pub north: Length,
}

/// A sequence of sides that returns to its start. Only closed sequences can be constructed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Outline {
    vectors: Vec<Vector>,
    /// Its area, positive if the inside is on the left.
    signed: Area,
}

impl Outline {
    /// The outline of these vectors; `None` if they do not return to their start.
    pub(crate) fn new(vectors: Vec<Vector>) -> Option<Outline> {
        let signed = signed_area(&vectors)?;
        Some(Outline { vectors, signed })
    }

    /// The sides as vectors, in walking order.
    pub(crate) fn vectors(&self) -> &[Vector] {
        &self.vectors
    }

    /// The corners in order; corner *k* is where side *k* begins.
    #[must_use]
    pub fn corners(&self) -> Vec<Place> {
        self.points()
            .into_iter()
            .map(|(east, north)| Place {
                east: Length::from_nm(east),
                north: Length::from_nm(north),
            })
            .collect()
    }

    /// The corners in nanometers, east then north.
    pub(crate) fn points(&self) -> Vec<(i64, i64)> {
        let mut at = (0, 0);
        let step = |vector: &Vector| {
            let here = at;
            at = (at.0 + vector.east, at.1 + vector.north);
            here
        };
        self.vectors.iter().map(step).collect()
    }

    /// The area enclosed, exact where no side is curved.
    ///
    /// Cross products of coordinates (any surveying text, for example Mahun, *Open Access Surveying Library*, COGO
    /// ch. H); a curved side adds or subtracts its circular segment.
    #[must_use]
    pub fn area(&self) -> Area {
        self.signed_area().abs()
    }

    /// The area, positive if the inside is on the left.
    pub(crate) fn signed_area(&self) -> Area {
        self.signed
    }

    /// 1 if the inside is on the left, -1 if it is on the right.
    pub(crate) fn turn(&self) -> i64 {
        if self.signed_area() < Area::ZERO { -1 } else { 1 }
    }

    /// The direction in which a side faces, outward; `None` if it is slanted.
    pub(crate) fn faces(&self, side: usize) -> Option<Direction> {
        let wall = self.vectors[side];
        // To the left of a walk that has the inside on its right.
        let (east, north) = match self.turn() < 0 {
            true => (-wall.north, wall.east),
            false => (wall.north, -wall.east),
        };
        match (east, north) {
            (0, along) => Some(Direction::along(Axis::North, along.signum())),
            (along, 0) => Some(Direction::along(Axis::East, along.signum())),
            _ => None,
        }
    }

    /// Whether a side is curved.
    pub(crate) fn is_curved(&self) -> bool {
        self.vectors.iter().any(|vector| vector.rise != 0)
    }

    /// The total length of all sides, curved ones measured along the curve.
    #[must_use]
    pub fn perimeter(&self) -> Length {
        self.vectors.iter().map(|vector| vector.length()).sum()
    }

    /// The bounding box of the corners, with the first corner at `at`; the largest rise of any curved side is added all
    /// around.
    pub(crate) fn extent(&self, at: (i64, i64)) -> Extent {
        let (mut here, mut low, mut high, mut bulge) = (at, at, at, 0);
        for vector in &self.vectors {
            here = (here.0 + vector.east, here.1 + vector.north);
            low = (low.0.min(here.0), low.1.min(here.1));
            high = (high.0.max(here.0), high.1.max(here.1));
            bulge = bulge.max(vector.rise.abs());
        }
        Extent { east: (low.0 - bulge, high.0 + bulge), north: (low.1 - bulge, high.1 + bulge) }
    }

    /// A quick test whether a box lies inside the outline, whose first corner is at `at`: `true` means inside; `false`
    /// means not inside, or undecided because a side is off the axes.
    pub(crate) fn surely_holds(&self, at: (i64, i64), extent: &Extent) -> bool {
        let ((west, east), (south, north)) = (extent.east, extent.north);
        let middle = (west + east, south + north);
        let mut is_inside = false;
        let mut from = at;
        for vector in &self.vectors {
            if vector.rise != 0 || vector.east != 0 && vector.north != 0 {
                return false;
            }
            let to = (from.0 + vector.east, from.1 + vector.north);
            let (low, high) =
                ((from.0.min(to.0), from.1.min(to.1)), (from.0.max(to.0), from.1.max(to.1)));
            // A side through the inside of the box.
            if low.0 < east && west < high.0 && low.1 < north && south < high.1 {
                return false;
            }
            // Seen from the middle of the box, an odd number of sides lies to the east.
            let is_beside = 2 * low.1 <= middle.1 && middle.1 < 2 * high.1;
            is_inside ^= is_beside && 2 * low.0 > middle.0;
            from = to;
        }
        is_inside
    }

    /// Twice the rate at which the area grows with the east component and with the north component of each side.
    ///
    /// If components change by `d` and the outline stays closed, twice the area changes by the sum of `2·d·g`. A
    /// gradient depends on the middle of the side, relative to the start. Adding the same number to all gradients
    /// of an axis makes no difference to changes that keep it closed.
    pub(crate) fn doubled_gradients(&self) -> Vec<(i64, i64)> {
        let turn = self.turn();
        let mut at = (0_i64, 0_i64);
        let one = |vector: &Vector| {
            let middle = (2 * at.0 + vector.east, 2 * at.1 + vector.north);
            at = (at.0 + vector.east, at.1 + vector.north);
            (-turn * middle.1, turn * middle.0)
        };
        self.vectors.iter().map(one).collect()
    }

    /// The corners, with curved sides broken into short straight ones, each with the index of the side it begins or
    /// lies on.
    pub(crate) fn flattened(&self) -> Vec<(i64, i64, usize)> {
        let mut points = Vec::with_capacity(self.vectors.len());
        for (i, (vector, at)) in self.vectors.iter().zip(self.points()).enumerate() {
            points.push((at.0, at.1, i));
            for (east, north) in vector.points_along() {
                points.push((at.0 + east, at.1 + north, i));
            }
        }
        points
    }

    /// Whether it encloses any area and no two sides cross or touch except at a shared corner.
    pub(crate) fn is_clear(&self) -> bool {
        self.crossing().is_none() && self.signed_area() != Area::ZERO
    }

    /// The first two sides that cross or touch except at a shared corner, and where.
    pub(crate) fn crossing(&self) -> Option<Crossing> {
        if are_apart(&self.vectors) {
            return None;
        }
        self.crossing_of_few().unwrap_or_else(|| self.crossing_of_any())
    }

    /// Like [`Outline::crossing`], for any number of sides and curved ones too.
    fn crossing_of_any(&self) -> Option<Crossing> {
        let points = self.flattened();
        let points: Vec<(i64, i64, usize)> = points
            .iter()
            .enumerate()
            .filter(|&(i, p)| {
                let next = points[(i + 1) % points.len()];
                (next.0, next.1) != (p.0, p.1)
            })
            .map(|(_, p)| *p)
            .collect();
        crossing_of(&points)
    }
}

/// The area of these vectors, positive if the inside is on the left; `None` if they do not return to their start.
pub(super) fn signed_area(vectors: &[Vector]) -> Option<Area> {
    // The product of two numbers of 64 bits needs no check.
    let product = |a: i64, b: i64| i128::from(a).wrapping_mul(i128::from(b));
    let mut at = (0_i64, 0_i64);
    let mut doubled = 0_i128;
    let mut is_curved = false;
    for vector in vectors {
        // What lies between a side and the axis of the start. Of a closed outline these strips add up to the same as the
        // cross products, and a side that runs east or west has none.
        if vector.north != 0 {
            doubled += product(2 * at.0 + vector.east, vector.north);
        }
        at = (at.0 + vector.east, at.1 + vector.north);
        is_curved |= vector.rise != 0;
    }
    if at != (0, 0) {
        return None;
    }
    let straight = Area::from_half_nm2(doubled);
    Some(match is_curved {
        true => straight + vectors.iter().map(Vector::segment).sum(),
        false => straight,
    })
}

/// A quick test whether the walls are clear of each other: `true` means that they are; `false` means that they are not,
/// or that it could not tell. Handles only walls along the axes.
pub(crate) fn are_apart(vectors: &[Vector]) -> bool {
    goes_and_returns(vectors, |vector| (vector.east, vector.north))
        || goes_and_returns(vectors, |vector| (vector.north, vector.east))
        || few_are_apart(vectors)
}

/// Whether the walk goes one way along an axis, then all the way back, and all walls of the way there lie on one side of
/// all walls of the way back; most houses do. Such walls are clear of each other, since on the way there and on the way
/// back each wall begins where the one before it ends, and what joins the two ways lies beyond both.
///
/// `parts` are the components of a wall along that axis and across it.
fn goes_and_returns(vectors: &[Vector], parts: impl Fn(&Vector) -> (i64, i64)) -> bool {
    let last_along = vectors.iter().rev().map(|vector| parts(vector).0).find(|along| *along != 0);
    let Some(mut is_forth) = last_along.map(|along| along > 0) else { return false };
    let mut before = vectors.last().map_or(0, |vector| parts(vector).1);
    let (mut at, mut turns) = (0, 0);
    let (mut forth, mut back) = ((i64::MAX, i64::MIN), (i64::MAX, i64::MIN));
    for vector in vectors {
        let (along, across) = parts(vector);
        // A curved or a slanted wall, or none at all.
        if vector.rise != 0 || (along == 0) == (across == 0) {
            return false;
        }
        if along != 0 {
            if is_forth != (along > 0) {
                (is_forth, turns) = (along > 0, turns + 1);
            }
            let (low, high) = if is_forth { &mut forth } else { &mut back };
            (*low, *high) = ((*low).min(at), (*high).max(at));
        } else if before != 0 && (before > 0) != (across > 0) || turns > 2 {
            // It turns straight back, or goes the same way a second time.
            return false;
        }
        at += across;
        before = across;
    }
    turns == 2 && (back.1 < forth.0 || forth.1 < back.0)
}

/// [`are_apart`] for a few walls that go back and forth.
///
/// A wall that touches another wall of its own axis also touches one of the other axis, namely the neighbor at that
/// end. So the walls are clear of each other if each of them meets only its two neighbors among the walls of the other
/// axis.
fn few_are_apart(vectors: &[Vector]) -> bool {
    const FEW: usize = 16;
    /// Where it begins along its axis, its length, and its position on the other axis.
    #[derive(Clone, Copy, Default)]
    struct Wall {
        low: i64,
        length: u64,
        across: i64,
    }
    let mut walls = [[Wall::default(); FEW]; 2];
    let mut counts = [0_usize; 2];
    let mut at = [0_i64; 2];
    // The axis of the wall before, and whether it runs in the positive direction.
    let mut before = (2, false);
    for vector in vectors {
        if vector.rise != 0 || (vector.east == 0) == (vector.north == 0) {
            return false;
        }
        let axis = usize::from(vector.east == 0);
        let (run, from) = (vector.east + vector.north, at[axis]);
        at[axis] = from + run;
        let low = from.min(from + run);
        if before == (axis, run > 0) {
            let last = &mut walls[axis][counts[axis] - 1];
            last.low = last.low.min(low);
            last.length += run.unsigned_abs();
            continue;
        }
        // It turns straight back, or there are too many walls.
        if before.0 == axis || counts[axis] == FEW {
            return false;
        }
        walls[axis][counts[axis]] = Wall { low, length: run.unsigned_abs(), across: at[1 - axis] };
        counts[axis] += 1;
        before = (axis, run > 0);
    }
    if counts[0] != counts[1] {
        return false;
    }
    // For a point before the wall's beginning the difference wraps to a number larger than any length.
    let reaches = |a: &Wall, b: &Wall| b.across.wrapping_sub(a.low).cast_unsigned() <= a.length;
    let mut meetings = 0_usize;
    for a in &walls[0][..counts[0]] {
        for b in &walls[1][..counts[0]] {
            meetings += usize::from(reaches(a, b) & reaches(b, a));
        }
    }
    meetings == 2 * counts[0]
}

impl Outline {
    /// Like [`Outline::crossing`], for a few straight sides compared pair by pair, without allocating. `None` if
    /// there are more sides or curved ones; `Some(None)` if none cross.
    fn crossing_of_few(&self) -> Option<Option<Crossing>> {
        const FEW: usize = 24;
        /// A side that has a length, with its ends and its bounding box.
        #[derive(Clone, Copy, Default)]
        struct Side {
            index: usize,
            vector: Vector,
            ends: (Point, Point),
            low: Point,
            high: Point,
        }
        let mut sides = [Side::default(); FEW];
        let (mut n, mut at) = (0, (0, 0));
        for (index, &vector) in self.vectors.iter().enumerate() {
            if vector.rise != 0 {
                return None;
            }
            let to = (at.0 + vector.east, at.1 + vector.north);
            if to != at {
                let low = (at.0.min(to.0), at.1.min(to.1));
                let high = (at.0.max(to.0), at.1.max(to.1));
                *sides.get_mut(n)? = Side { index, vector, ends: (at, to), low, high };
                n += 1;
            }
            at = to;
        }
        let sides = sides.get(..n).filter(|_| n >= 2)?;
        let square =
            |a: &Vector, b: &Vector| a.east == 0 && b.north == 0 || a.north == 0 && b.east == 0;
        for (i, here) in sides.iter().enumerate() {
            for (j, there) in sides.iter().enumerate().skip(i + 1) {
                let is_next = j == i + 1 || i == 0 && j == n - 1;
                // Two sides can meet only if their boxes do.
                let apart = here.low.0 > there.high.0
                    || there.low.0 > here.high.0
                    || here.low.1 > there.high.1
                    || there.low.1 > here.high.1;
                // Neighbors at a right angle meet only at their corner.
                if apart || is_next && square(&here.vector, &there.vector) && n > 2 {
                    continue;
                }
                let at = if j == i + 1 {
                    fold(here.ends, there.ends)
                } else if is_next {
                    fold(there.ends, here.ends)
                } else {
                    meeting(here.ends, there.ends)
                };
                if let Some(at) = at {
                    return Some(Some(Crossing { first: here.index, second: there.index, at }));
                }
            }
        }
        Some(None)
    }
}

impl Vector {
    /// The length along the side, following the curve if it is curved.
    pub(crate) fn length(&self) -> Length {
        match (self.rise, self.east, self.north) {
            (0, east, 0) => Length::from_nm(east.abs()),
            (0, 0, north) => Length::from_nm(north.abs()),
            (0, ..) => nearest_nm(self.chord()),
            _ => nearest_nm(self.curve().map_or(self.chord(), |curve| curve.radius * curve.angle)),
        }
    }

    /// The straight length from end to end, rounded to a nanometer.
    pub(crate) fn chord_length(&self) -> Length {
        Vector { rise: 0, ..*self }.length()
    }

    /// The straight distance from end to end, in nanometers.
    pub(crate) fn chord(&self) -> f64 {
        libm::hypot(self.east as f64, self.north as f64)
    }

    /// The quadrant bearing to the nearest second of arc: `S 45° 12' 30" W`.
    pub(crate) fn bearing(&self) -> String {
        let (east, north) = (self.east as f64, self.north as f64);
        let degrees = libm::atan2(east.abs(), north.abs()).to_degrees();
        let seconds = nearest_nm(degrees * 3_600.0).nm();
        let (minutes, seconds) = (seconds.div_euclid(60), seconds.rem_euclid(60));
        let (degrees, minutes) = (minutes.div_euclid(60), minutes.rem_euclid(60));
        let (from, toward) =
            (if self.north < 0 { 'S' } else { 'N' }, if self.east < 0 { 'W' } else { 'E' });
        format!("{from} {degrees}° {minutes:02}' {seconds:02}\" {toward}")
    }

    /// The circle a curved side lies on; `None` for a straight side.
    pub(crate) fn curve(&self) -> Option<Curve> {
        if self.rise == 0 {
            return None;
        }
        let (chord, rise) = (self.chord(), (self.rise as f64).abs());
        (rise > 0.0 && chord > 0.0).then(|| {
            let radius = (chord * chord + 4.0 * rise * rise) / (8.0 * rise);
            let half = libm::asin((chord / (2.0 * radius)).min(1.0));
            let angle =
                if rise <= radius { 2.0 * half } else { 2.0 * (std::f64::consts::PI - half) };
            Curve { radius, angle }
        })
    }

    /// The signed area between a curved side and its chord, positive where it bulges to the right.
    ///
    /// r = (c² + 4h²) / 8h, area = r²(θ − sin θ)/2 (International Correspondence Schools, *The Building Trades
    /// Pocketbook*, Mensuration).
    pub(crate) fn segment(&self) -> Area {
        let Some(curve) = self.curve() else {
            return Area::ZERO;
        };
        let per_foot = Length::FOOT.nm() as f64;
        let radius = curve.radius / per_foot;
        let sq_ft = radius * radius * (curve.angle - libm::sin(curve.angle)) / 2.0;
        Area::from_float_sq_ft(if self.rise < 0 { -sq_ft } else { sq_ft })
    }

    /// Points along a curved side, without its ends, relative to its start.
    fn points_along(&self) -> Vec<(i64, i64)> {
        const PIECES: u32 = 16;
        let Some(curve) = self.curve() else {
            return Vec::new();
        };
        let (chord, sign) = (self.chord(), if self.rise < 0 { -1.0 } else { 1.0 });
        let along = (self.east as f64 / chord, self.north as f64 / chord);
        let right = (along.1 * sign, -along.0 * sign);
        let below = curve.radius - (self.rise as f64).abs();
        let point = |k: u32| {
            let angle = curve.angle * (f64::from(k) / f64::from(PIECES) - 0.5);
            let forward = chord / 2.0 + curve.radius * libm::sin(angle);
            let out = curve.radius * libm::cos(angle) - below;
            let east = along.0 * forward + right.0 * out;
            let north = along.1 * forward + right.1 * out;
            (nearest_nm(east).nm(), nearest_nm(north).nm())
        };
        (1..PIECES).map(point).collect()
    }
}

/// A straight line of a placed outline, with its bounding box.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Placed {
    ends: (Point, Point),
    extent: Extent,
}

/// The lines of an outline whose first corner is at `at`; a curve is several.
pub(crate) fn placed(outline: &Outline, at: Point) -> Vec<Placed> {
    let points = outline.flattened();
    let place = |i: usize| {
        let (east, north, _) = points[i % points.len()];
        (east + at.0, north + at.1)
    };
    let line = |i: usize| {
        let (from, to) = (place(i), place(i + 1));
        let extent = Extent {
            east: (from.0.min(to.0), from.0.max(to.0)),
            north: (from.1.min(to.1), from.1.max(to.1)),
        };
        Placed { ends: (from, to), extent }
    };
    (0..points.len()).map(line).collect()
}

/// Whether the lines of two outlines come within `gap` nanometers of each other, touch or cross.
///
/// Computed in floats, which is good enough to find out what touches what.
pub(crate) fn are_near(a: &[Placed], b: &[Placed], gap: i64) -> bool {
    // Lines cannot be nearer to each other than their boxes.
    let near = |one: &Placed, other: &Placed| {
        one.extent.is_near(&other.extent, gap) && gap_between(one, other) <= gap as f64
    };
    a.iter().any(|one| b.iter().any(|other| near(one, other)))
}

/// The shortest distance between the lines of two outlines, in nanometers; `None` if one of them has no line.
pub(crate) fn gap(a: &[Placed], b: &[Placed]) -> Option<f64> {
    let all = a.iter().flat_map(|one| b.iter().map(|other| gap_between(one, other)));
    all.min_by(f64::total_cmp)
}

/// The shortest distance between two line segments, in nanometers.
fn gap_between(one: &Placed, other: &Placed) -> f64 {
    let (here, there) = (one.ends, other.ends);
    if meeting(here, there).is_some() {
        return 0.0;
    }
    let ends = [
        distance(here.0, there),
        distance(here.1, there),
        distance(there.0, here),
        distance(there.1, here),
    ];
    ends.into_iter().fold(f64::INFINITY, f64::min)
}

/// The distance from a point to the nearest point of a line segment, in nanometers.
fn distance(point: Point, line: (Point, Point)) -> f64 {
    let along = ((line.1.0 - line.0.0) as f64, (line.1.1 - line.0.1) as f64);
    let to = ((point.0 - line.0.0) as f64, (point.1 - line.0.1) as f64);
    let square = along.0 * along.0 + along.1 * along.1;
    let share = if square > 0.0 {
        ((to.0 * along.0 + to.1 * along.1) / square).clamp(0.0, 1.0)
    } else {
        0.0
    };
    libm::hypot(to.0 - share * along.0, to.1 - share * along.1)
}

/// A bounding box: the lowest and the highest coordinates, in nanometers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Extent {
    east: (i64, i64),
    north: (i64, i64),
}

impl Extent {
    /// The west and east limits.
    pub(crate) fn east(&self) -> (i64, i64) {
        self.east
    }

    /// The south and north limits.
    pub(crate) fn north(&self) -> (i64, i64) {
        self.north
    }

    /// The box moved by distances in nanometers.
    pub(crate) fn moved(&self, (east, north): (i64, i64)) -> Extent {
        let by = |(low, high): (i64, i64), by: i64| (low + by, high + by);
        Extent { east: by(self.east, east), north: by(self.north, north) }
    }

    /// The box mirrored along an axis, about a coordinate in nanometers.
    pub(crate) fn mirrored(&self, axis: Axis, middle: i64) -> Extent {
        let about = |(low, high): (i64, i64)| (2 * middle - high, 2 * middle - low);
        match axis {
            Axis::East => Extent { east: about(self.east), ..*self },
            Axis::North => Extent { north: about(self.north), ..*self },
        }
    }

    /// Whether two boxes come within `gap` of each other.
    pub(crate) fn is_near(&self, other: &Extent, gap: i64) -> bool {
        let near = |a: (i64, i64), b: (i64, i64)| a.0 <= b.1 + gap && b.0 <= a.1 + gap;
        near(self.east, other.east) && near(self.north, other.north)
    }

    /// Whether the common part of two boxes is more than `width` in both directions.
    pub(crate) fn shares_more_than(&self, other: &Extent, width: i64) -> bool {
        let (east, north) = self.shared(other);
        east.min(north) > width
    }

    /// How much of each axis two boxes share; below zero, how far they are apart.
    fn shared(&self, other: &Extent) -> (i64, i64) {
        let shared = |a: (i64, i64), b: (i64, i64)| a.1.min(b.1) - a.0.max(b.0);
        (shared(self.east, other.east), shared(self.north, other.north))
    }

    /// Whether two boxes, which may be up to `gap` apart, lie along each other for more than `width`.
    pub(crate) fn lies_along(&self, other: &Extent, gap: i64, width: i64) -> bool {
        let (east, north) = self.shared(other);
        east.min(north) >= -gap && east.max(north) > width
    }
}

/// The circle of a curved side: its radius in nanometers and the angle it spans in radians.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Curve {
    pub(crate) radius: f64,
    pub(crate) angle: f64,
}

/// The whole number of nanometers nearest to `nm`.
#[expect(
    clippy::cast_possible_truncation,
    reason = "sides are bounded far below what 64 bits hold"
)]
pub(crate) fn nearest_nm(nm: f64) -> Length {
    Length::from_nm(nm.round() as i64)
}

/// Two sides that meet where they should not.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Crossing {
    pub(crate) first: usize,
    pub(crate) second: usize,
    /// Where they meet, in nanometers from the start of the outline, east then north.
    pub(crate) at: (i64, i64),
}

type Point = (i64, i64);

/// The first pair of sides, in walking order, that meets where it should not.
///
/// Each side is compared only with those whose bounding boxes meet its own, found in an R-tree.
fn crossing_of(points: &[(i64, i64, usize)]) -> Option<Crossing> {
    let n = points.len();
    let end = |i: usize| {
        let next = points[(i + 1) % n];
        ((points[i].0, points[i].1), (next.0, next.1))
    };
    // Whole nanometers below 2^53 are exact as floats.
    let corner = |point: Point| [point.0 as f64, point.1 as f64];
    let side = |i: usize| {
        let (from, to) = end(i);
        GeomWithData::new(Rectangle::from_corners(corner(from), corner(to)), i)
    };
    let tree = RTree::bulk_load((0..n).map(side).collect());
    let meets = |i: usize, j: usize| {
        if j == i + 1 {
            fold(end(i), end(j))
        } else if i == 0 && j == n - 1 {
            fold(end(j), end(i))
        } else {
            meeting(end(i), end(j))
        }
    };
    (0..n).find_map(|i| {
        let near = tree.locate_in_envelope_intersecting(&side(i).envelope());
        let later = near.map(|side| side.data).filter(|&j| j > i);
        let first = later.filter_map(|j| meets(i, j).map(|at| (j, at))).min_by_key(|found| found.0);
        first.map(|(j, at)| Crossing { first: points[i].2, second: points[j].2, at })
    })
}

/// The corner where a side turns straight back on the one before it; `None` if it does not.
fn fold(before: (Point, Point), after: (Point, Point)) -> Option<Point> {
    let back = cross(before.0, before.1, after.1) == 0 && dot(before.1, before.0, after.1) > 0;
    back.then_some(before.1)
}

/// A point that two sides share, exact to a nanometer.
fn meeting(a: (Point, Point), b: (Point, Point)) -> Option<Point> {
    if apart(a.0.0, a.1.0, b.0.0, b.1.0) || apart(a.0.1, a.1.1, b.0.1, b.1.1) {
        return None;
    }
    let (b0, b1) = (cross(a.0, a.1, b.0), cross(a.0, a.1, b.1));
    let (a0, a1) = (cross(b.0, b.1, a.0), cross(b.0, b.1, a.1));
    if b0.signum() * b1.signum() < 0 && a0.signum() * a1.signum() < 0 {
        return Some(between(a, a0, a1));
    }
    let touches = [(b0, b.0, a), (b1, b.1, a), (a0, a.0, b), (a1, a.1, b)];
    touches
        .iter()
        .find(|(side, point, line)| *side == 0 && in_box(*point, *line))
        .map(|touch| touch.1)
}

/// The point that divides `line` in the ratio `a0` to `a1`; the two have opposite signs.
#[expect(
    clippy::integer_division,
    clippy::cast_possible_truncation,
    reason = "only the place shown; it lies between two i64"
)]
fn between(line: (Point, Point), a0: i128, a1: i128) -> Point {
    let (a0, a1) = (a0.abs() >> 32, a1.abs() >> 32);
    let share = |from: i64, to: i64| {
        let whole = (a0 + a1).max(1);
        (i128::from(from) + i128::from(to - from) * a0 / whole) as i64
    };
    (share(line.0.0, line.1.0), share(line.0.1, line.1.1))
}

fn apart(a0: i64, a1: i64, b0: i64, b1: i64) -> bool {
    a0.max(a1) < b0.min(b1) || b0.max(b1) < a0.min(a1)
}

fn in_box(point: Point, line: (Point, Point)) -> bool {
    !apart(point.0, point.0, line.0.0, line.1.0) && !apart(point.1, point.1, line.0.1, line.1.1)
}

fn cross(origin: Point, a: Point, b: Point) -> i128 {
    i128::from(a.0 - origin.0) * i128::from(b.1 - origin.1)
        - i128::from(a.1 - origin.1) * i128::from(b.0 - origin.0)
}

fn dot(origin: Point, a: Point, b: Point) -> i128 {
    i128::from(a.0 - origin.0) * i128::from(b.0 - origin.0)
        + i128::from(a.1 - origin.1) * i128::from(b.1 - origin.1)
}

#[cfg(test)]
mod tests {
    use proptest::collection::vec;
    use proptest::prelude::*;

    use super::*;

    /// Walls along the axes, in random order and directions, that come back to their start.
    fn walks() -> impl Strategy<Value = Vec<Vector>> {
        let wall = (any::<bool>(), prop_oneof![-4_i64..=-1, 1_i64..=4]);
        vec(wall, 3..14).prop_map(|walls| {
            let vector = |(is_east, nm): (bool, i64)| match is_east {
                true => Vector { east: nm, ..Vector::default() },
                false => Vector { north: nm, ..Vector::default() },
            };
            let mut vectors: Vec<Vector> = walls.into_iter().map(vector).collect();
            let (east, north) = vectors
                .iter()
                .fold((0, 0), |(east, north), wall| (east + wall.east, north + wall.north));
            let back = [
                Vector { east: -east, ..Vector::default() },
                Vector { north: -north, ..Vector::default() },
            ];
            vectors.extend(back.into_iter().filter(|wall| *wall != Vector::default()));
            vectors
        })
    }

    /// Whether two walls that are not neighbors share a point, or two neighbors more than their corner: every whole
    /// point of every wall is listed, since all walls are a few nanometers long.
    fn touches_itself(vectors: &[Vector]) -> bool {
        let mut at = (0, 0);
        let mut points = Vec::new();
        for wall in vectors {
            let step = (wall.east.signum(), wall.north.signum());
            for _ in 0..wall.east.abs() + wall.north.abs() {
                points.push(at);
                at = (at.0 + step.0, at.1 + step.1);
            }
        }
        let count = points.len();
        points.sort_unstable();
        points.dedup();
        points.len() < count
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(20_000))]

        #[test]
        fn walls_said_to_be_apart_do_not_touch(vectors in walks()) {
            let there_and_back = goes_and_returns(&vectors, |wall| (wall.east, wall.north))
                || goes_and_returns(&vectors, |wall| (wall.north, wall.east));
            if there_and_back || few_are_apart(&vectors) {
                prop_assert!(!touches_itself(&vectors));
            }
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(20_000))]

        /// Few walls are found to cross where many would be, also with walls of no length among them.
        #[test]
        fn few_walls_cross_as_any_do(vectors in walks(), gaps in vec(0_usize..14, 0..3)) {
            let mut vectors = vectors;
            for gap in gaps {
                vectors.insert(gap.min(vectors.len()), Vector::default());
            }
            let outline = Outline::new(vectors);
            prop_assert!(outline.is_some());
            if let Some(outline) = outline
                && let Some(few) = outline.crossing_of_few()
            {
                prop_assert_eq!(few, outline.crossing_of_any());
            }
        }
    }

    #[test]
    fn a_house_with_towers_is_apart_whichever_way_it_is_turned() {
        let walls = [(0, 3), (2, 0), (0, 1), (2, 0), (0, -2), (1, 0), (0, -2), (-5, 0)];
        for turn in 0..4 {
            let turned = |&(east, north): &(i64, i64)| match turn {
                0 => (east, north),
                1 => (north, -east),
                2 => (-east, -north),
                _ => (-north, east),
            };
            let wall = |(east, north)| Vector { east, north, rise: 0 };
            let mut vectors: Vec<Vector> = walls.iter().map(turned).map(wall).collect();
            for _ in 0..vectors.len() {
                vectors.rotate_left(1);
                let there_and_back = goes_and_returns(&vectors, |wall| (wall.east, wall.north))
                    || goes_and_returns(&vectors, |wall| (wall.north, wall.east));
                assert!(there_and_back, "{vectors:?}");
            }
        }
    }
}
