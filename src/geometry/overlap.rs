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
    Area as _, BooleanOps, Coord, Euclidean, Length as _, LineString, MultiPolygon, Polygon,
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

    /// No ground at all.
    pub(crate) fn empty() -> Patch {
        Patch(MultiPolygon::new(Vec::new()))
    }

    /// Both together.
    pub(crate) fn with(&self, other: &Patch) -> Patch {
        Patch(self.0.union(&other.0))
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

/// The area of the parts whose mean width, twice the area over the perimeter, is over `sliver`.
fn wider_than(parts: &MultiPolygon<f64>, sliver: Length) -> f64 {
    let wide = |part: &&Polygon<f64>| {
        let around = Euclidean.length(part.exterior());
        around > 0.0 && 2.0 * part.unsigned_area() / around > sliver.feet().max(1e-6)
    };
    parts.iter().filter(wide).map(geo::Area::unsigned_area).sum()
}
