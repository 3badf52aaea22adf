//! Fits one outline over another by rotating and shifting one and offsetting the other outward.
//!
//! Lengths are in feet and coordinates are east then north, as in [`overlap`](crate::geometry::overlap). No printed
//! area of the house is computed here.
#![expect(
    clippy::float_arithmetic,
    reason = "where an outline of a map lies over the walls is a matter of feet, judged by eye"
)]

use crate::geometry::overlap::{Patch, Ring, perimeter, signed_area};

/// The area of an outline offset outward by `t` is `area + perimeter·t + corners·t²`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Growth {
    /// Square feet.
    pub(crate) area: f64,
    /// In feet.
    pub(crate) perimeter: f64,
    /// The sum of tan(θ/2) over the turns θ of the outline: 4 if every corner is square.
    pub(crate) corners: f64,
}

impl Growth {
    pub(crate) fn of(ring: &Ring) -> Growth {
        let along = directions(ring);
        let before = along.iter().cycle().skip(along.len().saturating_sub(1));
        // tan(θ/2) = sin θ / (1 + cos θ).
        let turn =
            |(a, b): (&[f64; 2], &[f64; 2])| cross(*a, *b) / (1.0 + dot(*a, *b)).max(SHARPEST);
        Growth {
            area: signed_area(ring).abs(),
            perimeter: perimeter(ring),
            corners: before.zip(&along).map(turn).sum(),
        }
    }

    /// The outward offset, in feet, at which the outline covers `area` square feet; negative if it has to shrink.
    pub(crate) fn to_cover(self, area: f64) -> f64 {
        let (c, b, a) = (self.area - area, self.perimeter, self.corners);
        let discriminant = b * b - 4.0 * a * c;
        if b <= 0.0 || discriminant < 0.0 {
            // It cannot shrink to this area: use the largest inward offset.
            return if a > 0.0 { -b / (2.0 * a) } else { 0.0 };
        }
        // The root near 0, in the form without cancellation.
        -2.0 * c / (b + discriminant.sqrt())
    }
}

/// The least 1 + cos θ; sharper corners are cut off when offset.
const SHARPEST: f64 = 0.2;

/// A ring offset outward by `feet`, with sharp corners; the ring has its inside on the left.
pub(crate) fn grown(ring: &Ring, feet: f64) -> Patch {
    let along = directions(ring);
    let n = ring.len();
    let corner = |i: usize| {
        let (before, after) = (along[(i + n - 1) % n], along[i]);
        let reach = feet / (1.0 + dot(before, after)).max(SHARPEST);
        [ring[i][0] + reach * (before[1] + after[1]), ring[i][1] - reach * (before[0] + after[0])]
    };
    // Offset walls that cross each other would count their overlap twice; merging counts it once.
    let moved: Ring = (0..n).map(corner).collect();
    Patch::all_of(&[Patch::of_ring(moved)])
}

/// The direction of each side as a unit vector; a side of no length has the direction of the one before it.
fn directions(ring: &Ring) -> Vec<[f64; 2]> {
    let next = ring.iter().cycle().skip(1);
    let mut last = [1.0, 0.0];
    let way = |(a, b): (&[f64; 2], &[f64; 2])| {
        let (east, north) = (b[0] - a[0], b[1] - a[1]);
        let length = libm::hypot(east, north);
        if length > 1e-9 {
            last = [east / length, north / length];
        }
        last
    };
    ring.iter().zip(next).map(way).collect()
}

fn dot(a: [f64; 2], b: [f64; 2]) -> f64 {
    a[0] * b[0] + a[1] * b[1]
}

fn cross(a: [f64; 2], b: [f64; 2]) -> f64 {
    a[0] * b[1] - a[1] * b[0]
}

/// The pose of an outline: its rotation about its centroid and the position of the centroid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Pose {
    /// Counterclockwise.
    pub(crate) degrees: f64,
    pub(crate) middle: [f64; 2],
}

/// An outline with its corners relative to its centroid, ready to be fitted over another.
#[derive(Clone, Debug)]
pub(crate) struct Loose {
    ring: Ring,
    area: f64,
}

impl Loose {
    pub(crate) fn new(ring: &Ring) -> Loose {
        let middle = centroid(ring);
        let ring: Ring = ring.iter().map(|p| [p[0] - middle[0], p[1] - middle[1]]).collect();
        Loose { area: signed_area(&ring).abs(), ring }
    }

    /// Square feet.
    pub(crate) fn area(&self) -> f64 {
        self.area
    }

    /// Its corners in this pose.
    pub(crate) fn corners(&self, pose: Pose) -> Ring {
        let angle = pose.degrees.to_radians();
        let (sin, cos) = (libm::sin(angle), libm::cos(angle));
        let [east, north] = pose.middle;
        self.ring
            .iter()
            .map(|p| [east + cos * p[0] - sin * p[1], north + sin * p[0] + cos * p[1]])
            .collect()
    }

    /// Intersection over union of the two areas: 1 if they are the same.
    pub(crate) fn fit(&self, pose: Pose, over: &Patch, over_area: f64) -> f64 {
        let common = Patch::of_ring(self.corners(pose)).common(over);
        let either = self.area + over_area - common;
        if either > 0.0 { common / either } else { 0.0 }
    }

    /// The rotations that align most of its sides with most of another outline's, in degrees, the smallest first.
    pub(crate) fn turns(&self, over: &Ring) -> [f64; 4] {
        let apart = (prevailing_direction_deg(over) - prevailing_direction_deg(&self.ring))
            .rem_euclid(90.0);
        let mut turns = [apart, apart - 90.0, apart + 90.0, apart - 180.0];
        turns.sort_by(|a, b| a.abs().total_cmp(&b.abs()));
        turns
    }

    /// The pose that fits best, searched from each of the rotations `turns` (in degrees), with its fit.
    ///
    /// `looks` is how many more poses may be tried; it goes down by one for each.
    pub(crate) fn best(&self, over: &Patch, turns: &[f64], looks: &mut usize) -> (Pose, f64) {
        let over_area = over.area();
        let mut best = (Pose { degrees: 0.0, middle: [0.0, 0.0] }, -1.0);
        for &degrees in turns {
            let start =
                self.beginnings(over, degrees)
                    .into_iter()
                    .map(|pose| (pose, self.look(pose, over, over_area, looks)))
                    .fold((Pose { degrees, middle: [0.0, 0.0] }, -1.0), |a, b| {
                        if b.1 > a.1 { b } else { a }
                    });
            let found = self.refined(start, over, over_area, [2.0, 2.0], looks);
            // A rotation replaces a smaller one only if it fits clearly better.
            if found.1 > best.1 + 0.002 {
                best = found;
            }
        }
        best
    }

    fn look(&self, pose: Pose, over: &Patch, over_area: f64, looks: &mut usize) -> f64 {
        if *looks == 0 {
            return -1.0;
        }
        *looks -= 1;
        self.fit(pose, over, over_area)
    }

    /// Starting positions: centroid on centroid, and each corner of its bounding box on the matching corner of the
    /// other's.
    fn beginnings(&self, over: &Patch, degrees: f64) -> [Pose; 5] {
        let here = Patch::of_ring(self.corners(Pose { degrees, middle: [0.0, 0.0] })).bounds();
        let there = over.bounds();
        let low = [there[0].0 - here[0].0, there[1].0 - here[1].0];
        let high = [there[0].1 - here[0].1, there[1].1 - here[1].1];
        let middle = over.largest_part().map_or([0.0, 0.0], |ring| centroid(&ring));
        [middle, low, high, [low[0], high[1]], [high[0], low[1]]]
            .map(|middle| Pose { degrees, middle })
    }

    /// Refines a pose in steps of `feet` and `degrees`, which are halved once no step fits better.
    pub(crate) fn refined(
        &self,
        (mut pose, mut fit): (Pose, f64),
        over: &Patch,
        over_area: f64,
        [mut feet, mut degrees]: [f64; 2],
        looks: &mut usize,
    ) -> (Pose, f64) {
        while feet > 0.02 && *looks > 0 {
            let mut is_better = false;
            for [east, north, turn] in [
                [feet, 0.0, 0.0],
                [-feet, 0.0, 0.0],
                [0.0, feet, 0.0],
                [0.0, -feet, 0.0],
                [0.0, 0.0, degrees],
                [0.0, 0.0, -degrees],
            ] {
                let tried = Pose {
                    degrees: pose.degrees + turn,
                    middle: [pose.middle[0] + east, pose.middle[1] + north],
                };
                let fits = self.look(tried, over, over_area, looks);
                if fits > fit + 1e-9 {
                    (pose, fit, is_better) = (tried, fits, true);
                }
            }
            if !is_better {
                (feet, degrees) = (feet / 2.0, degrees / 2.0);
            }
        }
        (pose, fit)
    }
}

/// The prevailing direction of its sides, from 0 to under 90 degrees: the mean of four times each angle, so that
/// perpendicular sides count as the same direction.
fn prevailing_direction_deg(ring: &Ring) -> f64 {
    let next = ring.iter().cycle().skip(1);
    let lengths = ring.iter().zip(next).map(|(a, b)| libm::hypot(b[0] - a[0], b[1] - a[1]));
    let (mut cos4, mut sin4) = (0.0, 0.0);
    for (way, length) in directions(ring).iter().zip(lengths) {
        // The unit vector at twice the angle.
        let twice = [way[0] * way[0] - way[1] * way[1], 2.0 * way[0] * way[1]];
        cos4 += length * (twice[0] * twice[0] - twice[1] * twice[1]);
        sin4 += length * 2.0 * twice[0] * twice[1];
    }
    (libm::atan2(sin4, cos4).to_degrees() / 4.0).rem_euclid(90.0)
}

/// The centroid of a ring.
pub(crate) fn centroid(ring: &Ring) -> [f64; 2] {
    let first = ring.first().copied().unwrap_or([0.0, 0.0]);
    let next = ring.iter().cycle().skip(1);
    let (mut east, mut north, mut twice_area) = (0.0, 0.0, 0.0);
    for (a, b) in ring.iter().zip(next) {
        let (a, b) = ([a[0] - first[0], a[1] - first[1]], [b[0] - first[0], b[1] - first[1]]);
        let part = cross(a, b);
        twice_area += part;
        east += part * (a[0] + b[0]) / 3.0;
        north += part * (a[1] + b[1]) / 3.0;
    }
    if twice_area == 0.0 {
        first
    } else {
        [first[0] + east / twice_area, first[1] + north / twice_area]
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    /// 40 by 30 with a notch of 10 by 10 at one corner: 1,100 sq ft, 140 ft around.
    fn notched() -> Ring {
        vec![[0.0, 0.0], [40.0, 0.0], [40.0, 20.0], [30.0, 20.0], [30.0, 30.0], [0.0, 30.0]]
    }

    #[test]
    fn a_square_cornered_outline_grows_by_its_perimeter_and_four_squares() {
        let growth = Growth::of(&notched());
        assert_relative_eq!(growth.area, 1_100.0);
        assert_relative_eq!(growth.perimeter, 140.0);
        assert_relative_eq!(growth.corners, 4.0, max_relative = 1e-12);
        // 1,100 + 140·1.5 + 4·2.25 = 1,319.
        assert_relative_eq!(grown(&notched(), 1.5).area(), 1_319.0, max_relative = 1e-6);
        assert_relative_eq!(growth.to_cover(1_319.0), 1.5, max_relative = 1e-12);
        // 1,100 − 140 + 4 = 964: offset inward by a foot.
        assert_relative_eq!(growth.to_cover(964.0), -1.0, max_relative = 1e-12);
    }

    #[test]
    fn an_octagon_grows_by_its_own_corners() {
        // Eight turns of 45°: 8·tan 22.5° = 3.31370850.
        let half = std::f64::consts::SQRT_2 / 2.0;
        let ring: Ring = [
            [1.0, 0.0],
            [half, half],
            [0.0, 1.0],
            [-half, half],
            [-1.0, 0.0],
            [-half, -half],
            [0.0, -1.0],
            [half, -half],
        ]
        .map(|p| [10.0 * p[0], 10.0 * p[1]])
        .to_vec();
        let growth = Growth::of(&ring);
        assert_relative_eq!(growth.corners, 3.313_708_5, max_relative = 1e-8);
        let area = growth.area + growth.perimeter * 2.0 + growth.corners * 4.0;
        assert_relative_eq!(grown(&ring, 2.0).area(), area, max_relative = 1e-6);
    }

    #[test]
    fn an_outline_turned_and_shifted_is_laid_back() {
        let walls = Patch::of_ring(notched());
        for degrees in [0.0_f64, 13.0, 77.0, 145.0, -120.0] {
            let loose = Loose::new(&notched());
            let away = loose.corners(Pose { degrees, middle: [300.0, -80.0] });
            let loose = Loose::new(&away);
            let (pose, fit) = loose.best(&walls, &loose.turns(&notched()), &mut 10_000);
            assert!(fit > 0.995, "{degrees}: {fit}");
            let turned = (pose.degrees + degrees).rem_euclid(360.0);
            assert!(turned.min(360.0 - turned) < 0.3, "{degrees}: {turned}");
        }
    }
}
