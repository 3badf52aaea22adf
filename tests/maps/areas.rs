//! Areas on the ground compared with values that were published or computed in another way.

use approx::assert_relative_eq;
use fairfoot::maps::{Feature, Format, features};

const SQUARE_FOOT_M2: f64 = 0.092_903_04;

fn only(format: Format, text: &str) -> Feature {
    let mut found = features(format, text).unwrap();
    assert_eq!(found.len(), 1);
    found.remove(0)
}

/// OGC 07-147r2 (KML 2.2), section 10.5.4, the example's ring, longitude first. Its geodesic area, 5,289.256538 m², was
/// computed with Karney's geographiclib (it is not printed in the standard).
#[test]
fn the_ring_of_the_kml_standard_has_its_geodesic_area() {
    let text = "<kml xmlns=\"http://www.opengis.net/kml/2.2\"><Placemark><name>ring</name><Polygon><outerBoundaryIs><LinearRing><coordinates>\
        -122.365662,37.826988,0 -122.365202,37.826302,0 -122.364581,37.82655,0 -122.365038,37.827237,0 -122.365662,37.826988,0\
        </coordinates></LinearRing></outerBoundaryIs></Polygon></Placemark></kml>";
    let outline = only(Format::Kml, text).outline().unwrap();
    assert_relative_eq!(
        outline.geodesic_sq_ft() * SQUARE_FOOT_M2,
        5_289.256_538,
        max_relative = 1e-9
    );
    // The plane agrees with the ellipsoid to 1 in 100,000 at the size of a house.
    assert_relative_eq!(outline.plane_sq_ft(), outline.geodesic_sq_ft(), max_relative = 1e-5);
    // Its perimeter on the ellipsoid is 295.164027 m by the same library.
    let around: f64 = outline.sides().iter().map(|side| side.feet * 0.3048).sum();
    assert_relative_eq!(around, 295.164_027, max_relative = 1e-5);
}

/// GeographicLib, PlanimeterTest Planimeter10 and others use shapes far larger than a house. The
/// published area of a square of 1,000 m sides on the equator (Planimeter29) is 1e6 m² within 0.01.
/// Here: the corners that lie 100 m along the equator and 100 m along the meridian from 0, 0. On WGS 84
/// a degree of longitude there is 111,319.491 m and one of latitude 110,574.276 m (from memory;
/// any geodesy text), so the square is 0.000898315° by 0.000904369°.
#[test]
fn a_square_on_the_equator_has_a_hectare() {
    let text =
        "POLYGON ((0 0, 0.000898315285 0, 0.000898315285 0.000904369477, 0 0.000904369477, 0 0))";
    let outline = only(Format::Wkt, text).outline().unwrap();
    assert_relative_eq!(outline.plane_sq_ft() * SQUARE_FOOT_M2, 10_000.0, max_relative = 1e-6);
    assert_relative_eq!(outline.geodesic_sq_ft() * SQUARE_FOOT_M2, 10_000.0, max_relative = 1e-6);
    let azimuths: Vec<f64> = outline.sides().iter().map(|side| side.azimuth_degrees).collect();
    assert_eq!(azimuths, [90.0, 0.0, 270.0, 180.0]);
    for side in outline.sides() {
        assert_relative_eq!(side.feet, 100.0 / 0.3048, max_relative = 1e-6);
    }
}

/// The direction, the first corner and a repeated corner do not change the area.
#[test]
fn the_way_round_changes_no_area() {
    let one = "POLYGON ((10 50, 10.0002 50, 10.0002 50.0001, 10 50.0001, 10 50))";
    let other =
        "POLYGON ((10.0002 50.0001, 10.0002 50, 10.0002 50, 10 50, 10 50.0001, 10.0002 50.0001))";
    let [one, other] = [one, other].map(|text| only(Format::Wkt, text).outline().unwrap());
    assert_relative_eq!(one.plane_sq_ft(), other.plane_sq_ft(), max_relative = 1e-12);
    // On the ellipsoid a clockwise walk must not give the rest of the earth.
    assert_relative_eq!(one.geodesic_sq_ft(), other.geodesic_sq_ft(), max_relative = 1e-7);
}
