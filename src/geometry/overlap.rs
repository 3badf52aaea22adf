//! Where spaces lie on their level: which is inside which, which overlap, and what overhangs.
//!
//! These results are only compared with tolerances, for a person to look into. No printed figure comes from here,
//! so floats are good enough.
#![expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    reason = "overlaps are judged against tolerances; no printed figure comes from here"
)]

use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::float::single::SingleFloatOverlay;

use crate::geometry::outline::Outline;
use crate::units::length::Length;

/// A ring of corners in feet, east then north; the first is not repeated at the end.
type Ring = Vec<[f64; 2]>;

/// Regions in feet: each part is an outer ring followed by its holes.
#[derive(Clone, Debug)]
pub(crate) struct Patch(Vec<Vec<Ring>>);

impl Patch {
    /// The region of `outline` with its first corner at `at`.
    pub(crate) fn new(outline: &Outline, at: (i64, i64)) -> Patch {
        let foot = Length::FOOT.nm() as f64;
        let corner = |(east, north, _): (i64, i64, usize)| {
            [(at.0 + east) as f64 / foot, (at.1 + north) as f64 / foot]
        };
        Patch(vec![vec![outline.flattened().into_iter().map(corner).collect()]])
    }

    /// The union of these regions.
    pub(crate) fn all_of(patches: &[Patch]) -> Patch {
        // All rings are turned the same way round, or one would be taken for a hole in another.
        let rings: Vec<Ring> = patches
            .iter()
            .flat_map(|patch| &patch.0)
            .filter_map(|part| part.first())
            .map(|ring| {
                let mut ring = ring.clone();
                if signed_area(&ring) < 0.0 {
                    ring.reverse();
                }
                ring
            })
            .collect();
        let nothing: Vec<Ring> = Vec::new();
        Patch(rings.overlay(&nothing, OverlayRule::Subject, FillRule::NonZero))
    }

    /// The area that both cover, in square feet, not counting parts narrower than `sliver`.
    pub(crate) fn overlap(&self, other: &Patch, sliver: Length) -> f64 {
        if self.is_apart(other) {
            return 0.0;
        }
        wider_than(&self.combined(other, OverlayRule::Intersect), sliver)
    }

    /// The area that this covers and `other` does not, in square feet, not counting parts narrower than `sliver`.
    pub(crate) fn beyond(&self, other: &Patch, sliver: Length) -> f64 {
        wider_than(&self.combined(other, OverlayRule::Difference), sliver)
    }

    fn combined(&self, other: &Patch, rule: OverlayRule) -> Vec<Vec<Ring>> {
        self.0.overlay(&other.0, rule, FillRule::EvenOdd)
    }

    fn is_apart(&self, other: &Patch) -> bool {
        let (a, b) = (self.bounds(), other.bounds());
        (0..2).any(|axis| a[axis].1 <= b[axis].0 || b[axis].1 <= a[axis].0)
    }

    /// The least and the greatest coordinate, east then north; inverted if there is no corner.
    fn bounds(&self) -> [(f64, f64); 2] {
        let mut bounds = [(f64::INFINITY, f64::NEG_INFINITY); 2];
        for corner in self.0.iter().flatten().flatten() {
            for (bound, place) in bounds.iter_mut().zip(corner) {
                *bound = (bound.0.min(*place), bound.1.max(*place));
            }
        }
        bounds
    }
}

/// The area of a ring, positive if its inside is on the left.
fn signed_area(ring: &[[f64; 2]]) -> f64 {
    let next = ring.iter().cycle().skip(1);
    ring.iter().zip(next).map(|(a, b)| a[0] * b[1] - b[0] * a[1]).sum::<f64>() / 2.0
}

fn perimeter(ring: &[[f64; 2]]) -> f64 {
    let next = ring.iter().cycle().skip(1);
    ring.iter().zip(next).map(|(a, b)| libm::hypot(b[0] - a[0], b[1] - a[1])).sum()
}

/// How many pairs of sides, one of each outline, have overlapping bounding boxes; counting stops at `most`.
///
/// Comparing two outlines takes time for each of their sides and for each crossing, so this estimates the cost.
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

/// The bounding box of each side: west, east, south, north. A curved side's box is wider by its rise.
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

/// The total area of the parts whose mean width, twice the area over the outer perimeter, is more than `sliver`.
fn wider_than(parts: &[Vec<Ring>], sliver: Length) -> f64 {
    let area = |part: &Vec<Ring>| {
        let holes: f64 = part.iter().skip(1).map(|ring| signed_area(ring).abs()).sum();
        let (outer, around) =
            part.first().map_or((0.0, 0.0), |ring| (signed_area(ring).abs(), perimeter(ring)));
        let area = outer - holes;
        let is_wide = around > 0.0 && 2.0 * area / around > sliver.feet().max(1e-6);
        if is_wide { area } else { 0.0 }
    };
    parts.iter().map(area).sum()
}
