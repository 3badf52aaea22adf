//! Where spaces lie on their level: what is inside what, what overlaps, what overhangs.
//!
//! These are questions for a person to look into, judged with the tolerances; no printed figure
//! comes from here, so `geo` and its floats serve.
#![expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    reason = "overlaps are judged against tolerances; no printed figure comes from here"
)]

use geo::{
    Area as _, BooleanOps, Coord, Euclidean, Length as _, LineString, MultiPolygon, Orient as _,
    Polygon, orient::Direction, unary_union,
};

use crate::geometry::outline::Outline;
use crate::units::length::Length;

/// An outline in its place, in feet.
#[derive(Clone, Debug)]
pub(crate) struct Patch(MultiPolygon<f64>);

impl Patch {
    /// The outline with its first corner at `at`.
    pub(crate) fn new(outline: &Outline, at: (i64, i64)) -> Patch {
        let foot = Length::FOOT.nm() as f64;
        let coord = |(east, north, _): (i64, i64, usize)| Coord {
            x: (at.0 + east) as f64 / foot,
            y: (at.1 + north) as f64 / foot,
        };
        let ring: LineString<f64> = outline.flattened().into_iter().map(coord).collect();
        Patch(MultiPolygon::new(vec![Polygon::new(ring, Vec::new())]))
    }

    /// All of these together.
    pub(crate) fn all_of(patches: &[Patch]) -> Patch {
        // Walked one way round, all of them: else one would be taken for a hole in another.
        let oriented: Vec<Polygon<f64>> = patches
            .iter()
            .flat_map(|patch| &patch.0)
            .map(|part| part.orient(Direction::Default))
            .collect();
        Patch(unary_union(&oriented))
    }

    /// The ground that both cover, in square feet, where it is wider than `sliver`.
    pub(crate) fn overlap(&self, other: &Patch, sliver: Length) -> f64 {
        if self.is_apart(other) {
            return 0.0;
        }
        wider_than(&self.0.intersection(&other.0), sliver)
    }

    /// The ground that this covers and `other` does not, in square feet, where it is wider than `sliver`.
    pub(crate) fn beyond(&self, other: &Patch, sliver: Length) -> f64 {
        wider_than(&self.0.difference(&other.0), sliver)
    }

    fn is_apart(&self, other: &Patch) -> bool {
        use geo::BoundingRect;
        match (self.0.bounding_rect(), other.0.bounding_rect()) {
            (Some(a), Some(b)) => {
                a.max().x <= b.min().x
                    || b.max().x <= a.min().x
                    || a.max().y <= b.min().y
                    || b.max().y <= a.min().y
            }
            _ => true,
        }
    }
}

/// How often the box round a side of one outline meets that round a side of the other, counted up to `most`.
///
/// What is worked out of two outlines takes time for each of their sides and for each place where two of them cross.
pub(crate) fn meetings(
    one: (&Outline, (i64, i64)),
    other: (&Outline, (i64, i64)),
    most: usize,
) -> usize {
    let (ours, theirs) = (boxes(one), boxes(other));
    let meet =
        |a: &[i64; 4], b: &[i64; 4]| a[0] <= b[1] && b[0] <= a[1] && a[2] <= b[3] && b[2] <= a[3];
    let mut count = 0;
    for a in &ours {
        count += theirs.iter().filter(|b| meet(a, b)).count();
        if count >= most {
            return most;
        }
    }
    count
}

/// The box round each side, west, east, south, north; round a curved one it is as much wider as it rises.
fn boxes((outline, from): (&Outline, (i64, i64))) -> Vec<[i64; 4]> {
    let points = outline.points();
    let sides = points.iter().zip(outline.vectors());
    let round = sides.map(|(&(east, north), vector)| {
        let (a, b) = ((from.0 + east, from.1 + north), vector.rise.abs());
        let (e, n) = (a.0 + vector.east, a.1 + vector.north);
        [a.0.min(e) - b, a.0.max(e) + b, a.1.min(n) - b, a.1.max(n) + b]
    });
    round.collect()
}

/// The area of the parts whose mean width, twice the area over the perimeter, is over `sliver`.
fn wider_than(parts: &MultiPolygon<f64>, sliver: Length) -> f64 {
    let wide = |part: &&Polygon<f64>| {
        let around = Euclidean.length(part.exterior());
        around > 0.0 && 2.0 * part.unsigned_area() / around > sliver.feet().max(1e-6)
    };
    parts.iter().filter(wide).map(geo::Area::unsigned_area).sum()
}
