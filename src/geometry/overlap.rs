//! Where spaces lie on their level: which is inside which, which overlap, and what overhangs.
//!
//! These results are only compared with tolerances, to show a person where to look. No printed figure comes from here,
//! so floats are good enough.
#![expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    reason = "overlaps are judged against tolerances; no printed figure comes from here"
)]

use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::float::single::SingleFloatOverlay;

use crate::geometry::compass::{Axis, Direction};
use crate::geometry::outline::Outline;
use crate::units::length::Length;

/// A ring of corners in feet, east then north; the first is not repeated at the end.
pub(crate) type Ring = Vec<[f64; 2]>;

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
        // All rings are given the same direction; otherwise one would be taken for a hole in another.
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

    /// A region from a ring of corners in feet, the first one not repeated.
    pub(crate) fn of_ring(mut ring: Ring) -> Patch {
        if signed_area(&ring) < 0.0 {
            ring.reverse();
        }
        Patch(vec![vec![ring]])
    }

    /// The part with the largest area, its holes filled; `None` if there is no area.
    pub(crate) fn largest_part(&self) -> Option<Ring> {
        self.outer_rings().max_by(|a, b| signed_area(a).total_cmp(&signed_area(b))).cloned()
    }

    /// The area of the intersection, in square feet.
    pub(crate) fn common(&self, other: &Patch) -> f64 {
        if self.is_apart(other) {
            return 0.0;
        }
        area_of(&self.combined(other, OverlayRule::Intersect))
    }

    /// The intersection.
    pub(crate) fn meet(&self, other: &Patch) -> Patch {
        Patch(self.combined(other, OverlayRule::Intersect))
    }

    /// The difference: what this covers and `other` does not.
    pub(crate) fn less(&self, other: &Patch) -> Patch {
        Patch(self.combined(other, OverlayRule::Difference))
    }

    /// Its parts by their outer rings.
    pub(crate) fn outer_rings(&self) -> impl Iterator<Item = &Ring> {
        self.0.iter().filter_map(|part| part.first())
    }

    /// Its area, in square feet.
    pub(crate) fn area(&self) -> f64 {
        area_of(&self.0)
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

    /// The side of an outline that lies farthest outside this region, or deepest inside it, depending on `lies`; `None`
    /// if no side does.
    ///
    /// Nine points of each side are tried, which is enough to name the side and to say how far.
    pub(crate) fn farthest(
        &self,
        (outline, at): (&Outline, (i64, i64)),
        lies: Lies,
    ) -> Option<Farthest> {
        const POINTS: [f64; 9] = [0.5, 0.25, 0.75, 0.125, 0.375, 0.625, 0.875, 0.02, 0.98];
        let foot = Length::FOOT.nm() as f64;
        let ring = outline.flattened();
        let place = |&(east, north, _): &(i64, i64, usize)| {
            [(at.0 + east) as f64 / foot, (at.1 + north) as f64 / foot]
        };
        let mut farthest: Option<(f64, usize, [f64; 2])> = None;
        for (from, to) in ring.iter().zip(ring.iter().cycle().skip(1)) {
            let (a, b) = (place(from), place(to));
            for share in POINTS {
                let point = [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
                if self.holds(point) != (lies == Lies::Inside) {
                    continue;
                }
                let along = [b[0] - a[0], b[1] - a[1]];
                let Some((far, way)) = self.to_its_edge(point, along) else { continue };
                if farthest.as_ref().is_none_or(|(most, ..)| far > most + 1e-9) {
                    farthest = Some((far, from.2, way));
                }
            }
        }
        farthest.map(|(_, side, way)| Farthest {
            side,
            feet: way[0].abs().max(way[1].abs()),
            direction: toward(way),
        })
    }

    fn edges(&self) -> impl Iterator<Item = ([f64; 2], [f64; 2])> {
        let rings = self.0.iter().flatten();
        rings.flat_map(|ring| ring.iter().copied().zip(ring.iter().copied().cycle().skip(1)))
    }

    fn holds(&self, point: [f64; 2]) -> bool {
        let crosses = |(a, b): &([f64; 2], [f64; 2])| {
            (a[1] > point[1]) != (b[1] > point[1])
                && point[0] < a[0] + (point[1] - a[1]) / (b[1] - a[1]) * (b[0] - a[0])
        };
        self.edges().filter(crosses).count() % 2 == 1
    }

    /// The distance of a point from the nearest edge, and the vector from there to the point. Of edges equally near,
    /// it is the one straight across from a side that runs `along`.
    fn to_its_edge(&self, point: [f64; 2], along: [f64; 2]) -> Option<(f64, [f64; 2])> {
        let askew = |way: &[f64; 2]| (way[0] * along[0] + way[1] * along[1]).abs();
        let nearest = |(a, b): ([f64; 2], [f64; 2])| {
            let along = [b[0] - a[0], b[1] - a[1]];
            let square = along[0] * along[0] + along[1] * along[1];
            let at = (point[0] - a[0]) * along[0] + (point[1] - a[1]) * along[1];
            let share = if square > 0.0 { (at / square).clamp(0.0, 1.0) } else { 0.0 };
            let way = [point[0] - a[0] - along[0] * share, point[1] - a[1] - along[1] * share];
            (libm::hypot(way[0], way[1]), way)
        };
        self.edges().map(nearest).min_by(|one, other| match (one.0 - other.0).abs() < 1e-9 {
            true => askew(&one.1).total_cmp(&askew(&other.1)),
            false => one.0.total_cmp(&other.0),
        })
    }

    /// This region moved by the given nanometers east and north.
    pub(crate) fn moved(&self, (east, north): (i64, i64)) -> Patch {
        let foot = Length::FOOT.nm() as f64;
        let by = [east as f64 / foot, north as f64 / foot];
        self.each(|corner| [corner[0] + by[0], corner[1] + by[1]])
    }

    /// This region rotated a quarter turn counterclockwise about the origin.
    pub(crate) fn turned_left(&self) -> Patch {
        self.each(|corner| [-corner[1], corner[0]])
    }

    /// This region mirrored along an axis about the line at `middle` nanometers.
    pub(crate) fn mirrored(&self, axis: Axis, middle: i64) -> Patch {
        let twice = 2.0 * middle as f64 / Length::FOOT.nm() as f64;
        self.each(|corner| match axis {
            Axis::East => [twice - corner[0], corner[1]],
            Axis::North => [corner[0], twice - corner[1]],
        })
    }

    fn each(&self, change: impl Fn([f64; 2]) -> [f64; 2]) -> Patch {
        let ring = |ring: &Ring| ring.iter().map(|&corner| change(corner)).collect();
        Patch(self.0.iter().map(|part| part.iter().map(ring).collect()).collect())
    }

    /// At most `most` moves, shortest first, that bring one of its corners onto one of `other`'s and fit its bounding
    /// box into `other`'s: east and north in nanometers.
    pub(crate) fn moves_onto(&self, other: &Patch, sliver: Length, most: usize) -> Vec<(i64, i64)> {
        let (ours, theirs) = (self.bounds(), other.bounds());
        let spare = sliver.feet();
        let fits = |by: &[f64; 2]| {
            (0..2).all(|axis| {
                ours[axis].0 + by[axis] >= theirs[axis].0 - spare
                    && ours[axis].1 + by[axis] <= theirs[axis].1 + spare
            })
        };
        // Corners may agree along one axis only, so each axis is also tried by itself.
        let along = |axis: usize| {
            let mut all = vec![0.0];
            for a in self.0.iter().flatten().flatten() {
                all.extend(other.0.iter().flatten().flatten().map(|b| b[axis] - a[axis]));
            }
            all.retain(|by| {
                ours[axis].0 + by >= theirs[axis].0 - spare
                    && ours[axis].1 + by <= theirs[axis].1 + spare
            });
            all.sort_by(|a, b| a.abs().total_cmp(&b.abs()).then(a.total_cmp(b)));
            all.dedup_by(|a, b| (*a - *b).abs() < 1e-6);
            all.truncate(most);
            all
        };
        let (east, north) = (along(0), along(1));
        let mut moves: Vec<[f64; 2]> =
            east.iter().flat_map(|&e| north.iter().map(move |&n| [e, n])).filter(fits).collect();
        let length = |by: &[f64; 2]| by[0].abs() + by[1].abs();
        moves.sort_by(|a, b| length(a).total_cmp(&length(b)).then(a[0].total_cmp(&b[0])));
        moves.truncate(most);
        let nm = |feet: f64| crate::geometry::outline::nearest_nm(feet * Length::FOOT.nm() as f64);
        moves.into_iter().map(|by| (nm(by[0]).nm(), nm(by[1]).nm())).collect()
    }

    /// The number of its corners.
    pub(crate) fn corner_count(&self) -> usize {
        self.0.iter().flatten().map(Vec::len).sum()
    }

    fn combined(&self, other: &Patch, rule: OverlayRule) -> Vec<Vec<Ring>> {
        self.0.overlay(&other.0, rule, FillRule::EvenOdd)
    }

    fn is_apart(&self, other: &Patch) -> bool {
        let (a, b) = (self.bounds(), other.bounds());
        (0..2).any(|axis| a[axis].1 <= b[axis].0 || b[axis].1 <= a[axis].0)
    }

    /// The least and the greatest coordinate, east then north; inverted if there is no corner.
    pub(crate) fn bounds(&self) -> [(f64, f64); 2] {
        let mut bounds = [(f64::INFINITY, f64::NEG_INFINITY); 2];
        for corner in self.0.iter().flatten().flatten() {
            for (bound, place) in bounds.iter_mut().zip(corner) {
                *bound = (bound.0.min(*place), bound.1.max(*place));
            }
        }
        bounds
    }
}

/// Whether to search for a side outside a region or inside it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Lies {
    Outside,
    Inside,
}

/// The side of an outline that lies farthest outside a region, or deepest inside.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Farthest {
    pub(crate) side: usize,
    /// The distance in feet along the axis on which it is larger.
    pub(crate) feet: f64,
    /// The vector from the edge of the region to the side.
    pub(crate) direction: Direction,
}

/// The compass direction nearest to a vector, given as east then north.
fn toward(way: [f64; 2]) -> Direction {
    let (axis, part) =
        if way[0].abs() > way[1].abs() { (Axis::East, way[0]) } else { (Axis::North, way[1]) };
    Direction::along(axis, if part < 0.0 { -1 } else { 1 })
}

/// The area of a ring, positive if its inside is on the left.
pub(crate) fn signed_area(ring: &[[f64; 2]]) -> f64 {
    let next = ring.iter().cycle().skip(1);
    ring.iter().zip(next).map(|(a, b)| a[0] * b[1] - b[0] * a[1]).sum::<f64>() / 2.0
}

pub(crate) fn perimeter(ring: &[[f64; 2]]) -> f64 {
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

/// The area of the parts, each its outer ring less its holes.
fn area_of(parts: &[Vec<Ring>]) -> f64 {
    // Holes have the opposite direction.
    parts.iter().flatten().map(|ring| signed_area(ring)).sum()
}

/// The total area of the parts that are wider than `sliver`.
///
/// The width of a part is the shorter side of the rectangle with its area and its outer perimeter: of a rectangle its
/// own, also where it is nearly a square, and of a long strip its mean width.
fn wider_than(parts: &[Vec<Ring>], sliver: Length) -> f64 {
    let area = |part: &Vec<Ring>| {
        let holes: f64 = part.iter().skip(1).map(|ring| signed_area(ring).abs()).sum();
        let (outer, around) =
            part.first().map_or((0.0, 0.0), |ring| (signed_area(ring).abs(), perimeter(ring)));
        let area = outer - holes;
        if width(area, around) > sliver.feet().max(1e-6) + 1e-9 { area } else { 0.0 }
    };
    // The sides a and b of that rectangle have a + b = perimeter / 2 and a b = area.
    fn width(area: f64, around: f64) -> f64 {
        let half = around / 2.0;
        let square = half * half - 4.0 * area;
        if square > 0.0 { (half - square.sqrt()) / 2.0 } else { half / 2.0 }
    }
    parts.iter().map(area).sum()
}
