//! Converts positions on the ground to positions on the page, at a standard scale with the street side at the
//! bottom.
#![expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    reason = "places on a page are in points"
)]

use crate::geometry::compass::Direction;
use crate::geometry::outline::Outline;
use crate::geometry::outline::Vector;
use crate::pages::page::{Point, Run};
use crate::units::length::Length;

/// A standard scale, so that a scale ruler can be used on the print.
///
/// Architect's scales down to 1/16 in = 1 ft, then engineer's scales (common practice).
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Scale {
    pub(crate) words: &'static str,
    /// Points on the page per foot of the house.
    pub(crate) pt_per_ft: f64,
    /// Whether its words are a ratio, which holds in any unit.
    pub(crate) is_ratio: bool,
}

impl Scale {
    /// Inches on the page for feet of the house.
    const fn inches(words: &'static str, pt_per_ft: f64) -> Scale {
        Scale { words, pt_per_ft, is_ratio: false }
    }

    /// 1 on the page for a length of the house.
    const fn ratio(words: &'static str, length: f64) -> Scale {
        Scale { words, pt_per_ft: 864.0 / length, is_ratio: true }
    }
}

/// The standard scales, largest first; the last ones are for lots several miles wide.
pub(crate) const SCALES: [Scale; 20] = [
    Scale::inches("1/4 in = 1 ft", 18.0),
    Scale::inches("3/16 in = 1 ft", 13.5),
    Scale::inches("1/8 in = 1 ft", 9.0),
    Scale::inches("3/32 in = 1 ft", 6.75),
    Scale::inches("1/16 in = 1 ft", 4.5),
    Scale::inches("1 in = 20 ft", 72.0 / 20.0),
    Scale::inches("1 in = 30 ft", 72.0 / 30.0),
    Scale::inches("1 in = 40 ft", 72.0 / 40.0),
    Scale::inches("1 in = 50 ft", 72.0 / 50.0),
    Scale::inches("1 in = 60 ft", 72.0 / 60.0),
    Scale::inches("1 in = 100 ft", 72.0 / 100.0),
    Scale::inches("1 in = 200 ft", 72.0 / 200.0),
    Scale::inches("1 in = 400 ft", 72.0 / 400.0),
    Scale::inches("1 in = 1,000 ft", 72.0 / 1_000.0),
    Scale::inches("1 in = 2,000 ft", 72.0 / 2_000.0),
    Scale::inches("1 in = 5,000 ft", 72.0 / 5_000.0),
    Scale::inches("1 in = 10,000 ft", 72.0 / 10_000.0),
    Scale::inches("1 in = 50,000 ft", 72.0 / 50_000.0),
    Scale::inches("1 in = 100,000 ft", 72.0 / 100_000.0),
    Scale::inches("1 in = 1,000,000 ft", 72.0 / 1_000_000.0),
];

/// The standard scales for a house in meters that is not in a place with American rules, largest first (common practice):
/// those of a metric scale ruler down to 1:125, then ones that are read on it with twice or ten times the length.
pub(crate) const METRIC_SCALES: [Scale; 16] = [
    Scale::ratio("1:50", 50.0),
    Scale::ratio("1:75", 75.0),
    Scale::ratio("1:100", 100.0),
    Scale::ratio("1:125", 125.0),
    Scale::ratio("1:150", 150.0),
    Scale::ratio("1:200", 200.0),
    Scale::ratio("1:250", 250.0),
    Scale::ratio("1:500", 500.0),
    Scale::ratio("1:1,000", 1e3),
    Scale::ratio("1:2,500", 2.5e3),
    Scale::ratio("1:5,000", 5e3),
    Scale::ratio("1:10,000", 1e4),
    Scale::ratio("1:50,000", 5e4),
    Scale::ratio("1:250,000", 2.5e5),
    Scale::ratio("1:1,000,000", 1e6),
    Scale::ratio("1:12,500,000", 1.25e7),
];

/// The standard scales of a drawing, largest first.
pub(crate) const fn scales(in_meters: bool) -> &'static [Scale] {
    if in_meters { &METRIC_SCALES } else { &SCALES }
}

/// The smallest of them.
pub(crate) fn smallest(in_meters: bool) -> Scale {
    scales(in_meters).last().copied().unwrap_or(SCALES[SCALES.len() - 1])
}

/// A position on the ground in nanometers: east, then north.
pub(crate) type OnSite = (i64, i64);

/// The orientation of the plan: the street side is at the bottom.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Turned {
    pub(crate) front: Direction,
}

impl Turned {
    /// Converts a position east and north to one to the right and up on the page.
    pub(crate) fn of(self, (east, north): OnSite) -> OnSite {
        match self.front {
            Direction::South => (east, north),
            Direction::West => (-north, east),
            Direction::North => (-east, -north),
            Direction::East => (north, -east),
        }
    }
}

/// The mapping of the ground to a page.
#[derive(Clone, Copy, Debug)]
pub(crate) struct View {
    pub(crate) turned: Turned,
    pub(crate) scale: Scale,
    /// The position of the ground's origin on the page.
    pub(crate) origin: Point,
}

impl View {
    pub(crate) fn spot(&self, point: OnSite) -> Point {
        let (right, up) = self.turned.of(point);
        Point::new(self.origin.x_pt + self.points(right), self.origin.y_pt - self.points(up))
    }

    /// The length on the page of a length on the ground, in points.
    pub(crate) fn points(&self, nm: i64) -> f64 {
        nm as f64 / Length::FOOT.nm() as f64 * self.scale.pt_per_ft
    }

    /// The walls of an outline on the page, with its first corner at `at`.
    pub(crate) fn walls(&self, outline: &Outline, at: OnSite) -> Vec<WallOnPage> {
        let outside = if outline.turn() > 0 { 1.0 } else { -1.0 };
        let corners = outline.points();
        let one = |(vector, corner): (&Vector, &OnSite)| {
            let from = (at.0 + corner.0, at.1 + corner.1);
            let to = (from.0 + vector.east, from.1 + vector.north);
            self.wall(vector, from, to, outside)
        };
        outline.vectors().iter().zip(&corners).map(one).collect()
    }

    /// One wall between two positions; `outside` is 1 if the space is on its left, -1 if on its right.
    pub(crate) fn wall(
        &self,
        vector: &Vector,
        from: OnSite,
        to: OnSite,
        outside: f64,
    ) -> WallOnPage {
        let (from, to) = (self.spot(from), self.spot(to));
        let right = from.to(to).unit().turned();
        let radius_pt = vector
            .curve()
            .map_or(0.0, |curve| curve.radius / Length::FOOT.nm() as f64 * self.scale.pt_per_ft);
        WallOnPage {
            from,
            to,
            out: Point::default().plus(right, outside),
            rise_pt: self.points(vector.rise),
            radius_pt,
        }
    }

    /// An outline with its curves as short straight lines, with its first corner at `at`.
    pub(crate) fn flattened(&self, outline: &Outline, at: OnSite) -> Vec<Point> {
        let points = outline.flattened();
        points.iter().map(|&(east, north, _)| self.spot((at.0 + east, at.1 + north))).collect()
    }
}

/// One wall on a page.
#[derive(Clone, Copy, Debug)]
pub(crate) struct WallOnPage {
    pub(crate) from: Point,
    pub(crate) to: Point,
    /// The unit vector out of the space.
    pub(crate) out: Point,
    /// How far it bulges to the right of the walking direction; 0 for a straight wall.
    pub(crate) rise_pt: f64,
    pub(crate) radius_pt: f64,
}

impl WallOnPage {
    pub(crate) fn length_pt(&self) -> f64 {
        self.from.to(self.to).length()
    }

    pub(crate) fn is_curved(&self) -> bool {
        self.radius_pt > 0.0
    }

    /// The middle of the wall; for a curved wall, of the curve.
    pub(crate) fn middle(&self) -> Point {
        let right = self.from.to(self.to).unit().turned();
        self.from.middle(self.to).plus(right, self.rise_pt)
    }

    /// The path step along it.
    pub(crate) fn run(&self) -> Run {
        if !self.is_curved() {
            return Run::Line(self.to);
        }
        Run::Arc {
            to: self.to,
            radius_pt: self.radius_pt,
            is_large: self.rise_pt.abs() > self.radius_pt,
            clockwise: self.rise_pt < 0.0,
        }
    }

    /// The wall as straight lines, close enough for checking what touches it.
    pub(crate) fn stretches(&self) -> Vec<(Point, Point)> {
        const PIECES: u32 = 12;
        if !self.is_curved() {
            return vec![(self.from, self.to)];
        }
        let chord = self.length_pt();
        let along = self.from.to(self.to).unit();
        let out = Point::default().plus(along.turned(), self.rise_pt.signum());
        let rise = self.rise_pt.abs();
        let half = libm::asin((chord / (2.0 * self.radius_pt)).min(1.0));
        let half = if rise <= self.radius_pt { half } else { std::f64::consts::PI - half };
        let center = self.from.middle(self.to).plus(out, rise - self.radius_pt);
        let spot = |k: u32| {
            let angle = half * (2.0 * f64::from(k) / f64::from(PIECES) - 1.0);
            center
                .plus(along, self.radius_pt * libm::sin(angle))
                .plus(out, self.radius_pt * libm::cos(angle))
        };
        (0..PIECES).map(|k| (spot(k), spot(k + 1))).collect()
    }
}

/// A closed path along consecutive walls.
pub(crate) fn path(walls: &[WallOnPage]) -> Vec<Run> {
    let mut runs: Vec<Run> = walls.first().map(|wall| Run::Move(wall.from)).into_iter().collect();
    runs.extend(walls.iter().map(WallOnPage::run));
    runs.push(Run::Close);
    runs
}

/// Whether a point is inside a figure (ray casting: an odd number of sides crossed).
pub(crate) fn is_inside(figure: &[Point], spot: Point) -> bool {
    let crosses = |(a, b): (&Point, &Point)| {
        (a.y_pt > spot.y_pt) != (b.y_pt > spot.y_pt)
            && spot.x_pt < a.x_pt + (spot.y_pt - a.y_pt) / (b.y_pt - a.y_pt) * (b.x_pt - a.x_pt)
    };
    let next = figure.iter().cycle().skip(1);
    figure.iter().zip(next).filter(|sides| crosses(*sides)).count() % 2 == 1
}

/// The distance from a point to the nearest of these lines, in points.
pub(crate) fn clearance_pt(stretches: &[(Point, Point)], spot: Point) -> f64 {
    let (mut least, mut least_square) = (f64::MAX, f64::MAX);
    for &(from, to) in stretches {
        let along = from.to(to);
        let square = along.dot(along);
        let share =
            if square > 0.0 { (from.to(spot).dot(along) / square).clamp(0.0, 1.0) } else { 0.0 };
        let way = from.plus(along, share).to(spot);
        let square = way.dot(way);
        // Most lines are farther off, which a comparison without a square root shows; the margin allows for rounding
        // errors.
        if square <= least_square * (1.0 + 1e-9) {
            least = least.min(way.length());
            least_square = least_square.min(square);
        }
    }
    least
}

/// Parallel lines clipped to figures, even-odd: areas inside an even number of figures stay blank.
pub(crate) fn hatching(figures: &[&[Point]], rising: bool, apart_pt: f64) -> Vec<(Point, Point)> {
    let slope = if rising { -1.0 } else { 1.0 };
    // On a line, y − slope·x is constant, and x gives the position along it.
    let level = |spot: &Point| spot.y_pt - slope * spot.x_pt;
    let spots = figures.iter().copied().flatten();
    let (low, high) = spots.fold((f64::MAX, f64::MIN), |(low, high), spot| {
        (low.min(level(spot)), high.max(level(spot)))
    });
    let step = apart_pt * std::f64::consts::SQRT_2;
    let mut lines = Vec::new();
    let mut at = (low / step).ceil() * step + step / 3.0;
    while at < high && lines.len() < 4_000 {
        let mut met: Vec<f64> = Vec::new();
        for figure in figures {
            for (a, b) in figure.iter().zip(figure.iter().cycle().skip(1)) {
                let (from, to) = (level(a) - at, level(b) - at);
                if (from > 0.0) != (to > 0.0) {
                    met.push(a.x_pt + from / (from - to) * (b.x_pt - a.x_pt));
                }
            }
        }
        met.sort_by(f64::total_cmp);
        for pair in met.chunks_exact(2) {
            let spot = |x_pt: f64| Point::new(x_pt, at + slope * x_pt);
            if pair[1] - pair[0] > 0.3 {
                lines.push((spot(pair[0]), spot(pair[1])));
            }
        }
        at += step;
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_street_side_comes_to_the_bottom() {
        let one_foot = Length::FOOT.nm();
        let down = |front: Direction, point: OnSite| {
            let scale = SCALES[0];
            let view = View { turned: Turned { front }, scale, origin: Point::default() };
            view.spot(point)
        };
        // A foot toward the street is 18 points down, on whichever side the street is.
        for (front, point) in [
            (Direction::South, (0, -one_foot)),
            (Direction::North, (0, one_foot)),
            (Direction::West, (-one_foot, 0)),
            (Direction::East, (one_foot, 0)),
        ] {
            assert_eq!(down(front, point), Point::new(0.0, 18.0), "{front:?}");
        }
        // It is turned, not mirrored: facing a house whose street is west, north is to the left.
        assert_eq!(down(Direction::West, (0, one_foot)), Point::new(-18.0, 0.0));
    }

    #[test]
    fn hatching_stays_inside_and_leaves_holes_blank() {
        let square = |low: f64, high: f64| {
            [(low, low), (high, low), (high, high), (low, high)].map(|(x, y)| Point::new(x, y))
        };
        let (outer, hole) = (square(0.0, 30.0), square(10.0, 20.0));
        let lines = hatching(&[&outer, &hole], true, 3.0);
        assert!(lines.len() > 8);
        for (from, to) in lines {
            let middle = from.middle(to);
            assert!(is_inside(&outer, middle) && !is_inside(&hole, middle), "{middle:?}");
        }
    }
}
