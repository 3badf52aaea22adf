//! From degrees to feet, on a plane that touches the ellipsoid at the middle of the outline.
//!
//! On WGS 84 (a = 6,378,137 m, 1/f = 298.257223563) a degree of latitude at φ is M·π/180 long and
//! one of longitude N·cos φ·π/180, with the radii of curvature M = a(1 − e²)/(1 − e² sin²φ)^(3/2) and
//! N = a/√(1 − e² sin²φ) (Snyder, *Map Projections: A Working Manual*, USGS Professional Paper 1395,
//! 1987, equations 4-18 to 4-20, from memory). Over a house the plane differs from the ellipsoid by
//! less than 1 in 100,000 of the area.
#![expect(
    clippy::float_arithmetic,
    reason = "degrees are decimals of a map; nothing here decides an area of the house"
)]

use std::fmt::Write as _;

use geo::{BoundingRect as _, Contains as _, Distance as _, Euclidean, GeodesicArea as _};
use geo::{Coord, LineString, Point, Polygon};

use crate::diagnostic::is_hidden;
use crate::error::Error;
use crate::maps::{Feature, Position};
use crate::units::decimal::thousands;

const FOOT_M: f64 = 0.3048;
const MOST_CORNERS: usize = 1_000;
const LONGEST_SIDE_FT: f64 = 10_000.0;
/// The greatest latitude, north or south, at which a plane with north up makes sense.
const NORTHERNMOST: f64 = 85.0;
/// A shape smaller than a square foot is not a building.
const SMALLEST_M2: f64 = FOOT_M * FOOT_M;
/// A shorter side comes from clicking twice on one corner, and is dropped.
const SHORTEST_SIDE_FT: f64 = 0.02;

/// A plane that touches the earth at `middle`; x is east and y is north, in meters.
#[derive(Clone, Copy, Debug)]
struct Plane {
    middle: Position,
    m_per_degree_east: f64,
    m_per_degree_north: f64,
}

impl Plane {
    fn at(middle: Position) -> Plane {
        const A_M: f64 = 6_378_137.0;
        const F: f64 = 1.0 / 298.257_223_563;
        const E2: f64 = F * (2.0 - F);
        let phi = middle.latitude.to_radians();
        let sin = libm::sin(phi);
        let w2 = 1.0 - E2 * sin * sin;
        let w = w2.sqrt();
        let (meridian, normal) = (A_M * (1.0 - E2) / (w2 * w), A_M / w);
        let degree = std::f64::consts::PI / 180.0;
        Plane {
            middle,
            m_per_degree_east: normal * libm::cos(phi) * degree,
            m_per_degree_north: meridian * degree,
        }
    }

    fn place(&self, position: Position) -> Coord<f64> {
        Coord {
            x: (position.longitude - self.middle.longitude) * self.m_per_degree_east,
            y: (position.latitude - self.middle.latitude) * self.m_per_degree_north,
        }
    }
}

/// A side on the ground.
///
/// # Units
///
/// Degrees clockwise from true north, from 0 to under 360; feet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MapSide {
    /// Its azimuth in degrees clockwise from true north.
    pub azimuth_degrees: f64,
    /// Its length in feet.
    pub feet: f64,
}

impl MapSide {
    /// As a line of a sides file: `bearing N 45.503° E 40.25'`.
    fn line(&self) -> String {
        let azimuth = self.azimuth_degrees;
        let (from, angle, toward) = match azimuth {
            a if a <= 90.0 => ("N", a, "E"),
            a if a <= 180.0 => ("S", 180.0 - a, "E"),
            a if a <= 270.0 => ("S", a - 180.0, "W"),
            a => ("N", 360.0 - a, "W"),
        };
        // As in `tidy`: without trailing zeros.
        let cut = |number: String| number.trim_end_matches('0').trim_end_matches('.').to_owned();
        let (angle, feet) = (cut(format!("{angle:.3}")), cut(format!("{:.2}", self.feet)));
        format!("bearing {from} {angle}° {toward} {feet}'")
    }
}

/// An outline of a map as sides on the ground, with its area computed two ways.
#[derive(Clone, Debug, PartialEq)]
pub struct MapOutline {
    sides: Vec<MapSide>,
    plane_sq_ft: f64,
    geodesic_sq_ft: f64,
    holes: usize,
}

impl MapOutline {
    pub(super) fn of(feature: &Feature) -> Result<MapOutline, Error> {
        let ring = &feature.ring;
        let plane = Plane::at(middle(ring)?);
        let mut corners: Vec<Coord<f64>> = Vec::with_capacity(ring.len());
        for place in ring.iter().map(|&position| plane.place(position)) {
            if corners.last().is_none_or(|last| feet_between(*last, place) > SHORTEST_SIDE_FT) {
                corners.push(place);
            }
        }
        while let [first, .., last] = corners[..]
            && feet_between(first, last) <= SHORTEST_SIDE_FT
        {
            corners.pop();
        }
        if corners.len() < 3 {
            return Err(Error::Map(
                "this shape has fewer than three corners; choose another".to_owned(),
            ));
        }
        if corners.len() > MOST_CORNERS {
            return Err(Error::Map(format!(
                "this shape has {} corners, and an outline has at most 1,000; choose a building",
                corners.len()
            )));
        }
        let sides: Vec<MapSide> = (0..corners.len())
            .map(|i| side(corners[i], corners[(i + 1) % corners.len()]))
            .collect();
        if let Some(long) = sides.iter().find(|side| side.feet > LONGEST_SIDE_FT) {
            return Err(Error::Map(format!(
                "a side of this shape is {:.0} ft long, and a wall is at most 10,000 ft; choose a building",
                long.feet
            )));
        }
        if shoelace_m2(&corners) < SMALLEST_M2 {
            return Err(Error::Map("this shape has no area; choose another".to_owned()));
        }
        if crosses_itself(&corners) {
            return Err(Error::Map(
                "this shape crosses itself, so its area is not known; choose another, or draw it again"
                    .to_owned(),
            ));
        }
        Ok(MapOutline {
            plane_sq_ft: shoelace_m2(&corners) / (FOOT_M * FOOT_M),
            geodesic_sq_ft: geodesic_m2(ring) / (FOOT_M * FOOT_M),
            sides,
            holes: feature.holes,
        })
    }

    /// The sides in the order of the map.
    #[must_use]
    pub fn sides(&self) -> &[MapSide] {
        &self.sides
    }

    /// The area in the tangent plane, in square feet.
    #[must_use]
    pub fn plane_sq_ft(&self) -> f64 {
        self.plane_sq_ft
    }

    /// The area in the tangent plane in whole square feet, with commas.
    #[must_use]
    pub fn plane_text(&self) -> String {
        with_commas(self.plane_sq_ft)
    }

    /// The area on the ellipsoid in square feet (Karney, *Algorithms for geodesics*, J. Geodesy 87, 2013).
    #[must_use]
    pub fn geodesic_sq_ft(&self) -> f64 {
        self.geodesic_sq_ft
    }

    /// The outline as lines of a sides file: an outline named `name` for the space `of`; `source` says where it comes
    /// from. Characters that a sides file cannot have there are left out; a name with nothing left becomes `Map`.
    #[must_use]
    pub fn block(&self, name: &str, of: &str, source: &str) -> String {
        let is_usable = |c: &char| !is_hidden(*c) && !matches!(c, '"' | '“' | '”');
        let clean = |text: &str| -> String { text.chars().filter(is_usable).take(200).collect() };
        let name = Some(clean(name)).filter(|name| !name.trim().is_empty());
        let name = name.unwrap_or_else(|| "Map".to_owned());
        let mut text = String::new();
        let _ = writeln!(text, "# from {}", clean(source));
        let _ = writeln!(
            text,
            "# mostly the roof, seen from above; {} sq ft before its corners were rounded",
            with_commas(self.geodesic_sq_ft)
        );
        if self.holes > 0 {
            let _ = writeln!(
                text,
                "# {} left out: courts, if there are any, are not in this outline",
                holes(self.holes)
            );
        }
        let _ = writeln!(text, "map outline \"{name}\" of \"{}\"", clean(of));
        for side in &self.sides {
            let _ = writeln!(text, "  {}", side.line());
        }
        text
    }
}

/// An area rounded to whole square feet, with commas.
#[expect(
    clippy::cast_possible_truncation,
    reason = "an outline has at most 1,000 sides of 10,000 ft"
)]
pub(crate) fn with_commas(sq_ft: f64) -> String {
    thousands(sq_ft.round() as i64)
}

fn holes(count: usize) -> String {
    if count == 1 { "1 hole".to_owned() } else { format!("{count} holes") }
}

/// The center of the outline's bounding box.
fn middle(ring: &[Position]) -> Result<Position, Error> {
    let points: LineString<f64> =
        ring.iter().map(|p| Coord { x: p.longitude, y: p.latitude }).collect();
    let Some(bounds) = points.bounding_rect() else {
        return Err(Error::Map("this shape has no corners; choose another".to_owned()));
    };
    if bounds.width() > 180.0 {
        return Err(Error::Map(
            "this shape lies across the line where east and west meet; draw it on one side"
                .to_owned(),
        ));
    }
    let center = bounds.center();
    if center.y.abs() > NORTHERNMOST {
        return Err(Error::Map(
            "this shape lies at a pole, where there is no east and west to draw it by".to_owned(),
        ));
    }
    Ok(Position { longitude: center.x, latitude: center.y })
}

fn feet_between(a: Coord<f64>, b: Coord<f64>) -> f64 {
    libm::hypot(b.x - a.x, b.y - a.y) / FOOT_M
}

fn side(from: Coord<f64>, to: Coord<f64>) -> MapSide {
    let azimuth = libm::atan2(to.x - from.x, to.y - from.y).to_degrees();
    let azimuth_degrees = if azimuth < 0.0 { azimuth + 360.0 } else { azimuth };
    MapSide { azimuth_degrees, feet: feet_between(from, to) }
}

/// Whether two sides of the outline cross between their ends.
fn crosses_itself(corners: &[Coord<f64>]) -> bool {
    let n = corners.len();
    let ends = |i: usize| (corners[i], corners[(i + 1) % n]);
    // Positive where `at` lies to the left of the line.
    let turn = |(from, to): (Coord<f64>, Coord<f64>), at: Coord<f64>| {
        (to.x - from.x) * (at.y - from.y) - (to.y - from.y) * (at.x - from.x)
    };
    let parts = |line, (from, to)| turn(line, from) * turn(line, to) < 0.0;
    (0..n).any(|i| (i + 1..n).any(|k| parts(ends(i), ends(k)) && parts(ends(k), ends(i))))
}

/// The area in square meters by cross products of coordinates (any surveying text); positive for either direction of
/// the outline.
fn shoelace_m2(corners: &[Coord<f64>]) -> f64 {
    let n = corners.len();
    let doubled: f64 = (0..n)
        .map(|i| corners[i].x * corners[(i + 1) % n].y - corners[(i + 1) % n].x * corners[i].y)
        .sum();
    doubled.abs() / 2.0
}

fn geodesic_m2(ring: &[Position]) -> f64 {
    let points: LineString<f64> =
        ring.iter().map(|p| Coord { x: p.longitude, y: p.latitude }).collect();
    // For a clockwise ring, the unsigned area would be that of the rest of the earth.
    Polygon::new(points, Vec::new()).geodesic_area_signed().abs()
}

/// The distance of a feature from a position in meters, 0 if it contains it; `None` if it is not a shape.
pub(super) fn distance_m(feature: &Feature, at: Position) -> Option<f64> {
    let plane = Plane::at(at);
    let corners: LineString<f64> = feature.ring.iter().map(|&p| plane.place(p)).collect();
    let shape = Polygon::new(corners, Vec::new());
    let here = Point::new(0.0, 0.0);
    if shape.exterior().0.len() < 4 {
        return None;
    }
    Some(if shape.contains(&here) { 0.0 } else { Euclidean.distance(&here, &shape) })
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    /// GeographicLib's polygon tests Planimeter0 and Planimeter15 (Karney; MIT), as found in geographiclib-rs 0.2.7,
    /// which `geo` uses; corners are latitude and longitude. They are far larger than a house: only the area is
    /// tested.
    #[test]
    fn published_polygons_have_their_geodesic_areas() {
        let published: [(&[(f64, f64)], f64); 3] = [
            (&[(0.0, -1.0), (-1.0, 0.0), (0.0, 1.0), (1.0, 0.0)], 24_619_419_146.0),
            (&[(90.0, 0.0), (0.0, 0.0), (0.0, 90.0)], 63_758_202_715_511.0),
            (&[(2.0, 1.0), (1.0, 2.0), (3.0, 3.0)], 18_454_562_325.451_19),
        ];
        for (corners, square_meters) in published {
            let ring: Vec<Position> = corners
                .iter()
                .filter_map(|&(latitude, longitude)| Position::new(longitude, latitude))
                .collect();
            assert_eq!(ring.len(), corners.len());
            assert_relative_eq!(geodesic_m2(&ring), square_meters, max_relative = 1e-10);
        }
    }
}
