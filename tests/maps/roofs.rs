//! A roof of a map laid over the walls: eave, fit, and what differs, on houses whose roofs are known.
#![expect(clippy::float_arithmetic, reason = "corners of a map are floats")]

use approx::assert_abs_diff_eq;
use fairfoot::reconcile::MapReport;
use fairfoot::{Reconciliation, Settings, Weights};

/// A rectangle of 40 by 30 ft with a garage of 20 by 20 at its right and a porch of 10 by 6 in front.
const HOUSE: &str = "level \"Ground\"
  living \"House\"
    north 30'
    east 40'
    south 30'
    west 40'
  garage \"Garage\" start east 40'
    north 20'
    east 20'
    south 20'
    west 20'
  porch \"Porch\" start east 5'
    east 10'
    south 6'
    west 10'
    north 6'
";

fn reconciled(text: &str) -> Reconciliation {
    let house = fairfoot::read("roof.sides", text).unwrap_or_else(|errors| panic!("{errors}"));
    house.areas(&Settings::default()).unwrap().reconcile(&Weights::default()).unwrap()
}

/// A map's outline from corners in feet, rotated clockwise as it would lie on a map.
fn map(corners: &[(f64, f64)], turned_degrees: f64) -> String {
    let mut text = "map outline \"City map\" of \"House\"\n".to_owned();
    for (i, a) in corners.iter().enumerate() {
        let b = corners[(i + 1) % corners.len()];
        let (east, north) = (b.0 - a.0, b.1 - a.1);
        let azimuth = east.atan2(north).to_degrees() + turned_degrees;
        let azimuth = azimuth.rem_euclid(360.0);
        let (from, angle, toward) = match azimuth {
            a if a <= 90.0 => ("N", a, "E"),
            a if a <= 180.0 => ("S", 180.0 - a, "E"),
            a if a <= 270.0 => ("S", a - 180.0, "W"),
            a => ("N", 360.0 - a, "W"),
        };
        let feet = east.hypot(north);
        text.push_str(&format!("  bearing {from} {angle:.4}° {toward} {feet:.3}'\n"));
    }
    text
}

fn only(reconciliation: &Reconciliation) -> &MapReport {
    let [map] = reconciliation.maps() else { panic!("{}", reconciliation.maps().len()) };
    map
}

/// The corners of house and garage (1,600 sq ft, 160 ft around) with an eave all around, by hand.
fn house_and_garage(eave: f64) -> Vec<(f64, f64)> {
    let t = eave;
    vec![
        (-t, -t),
        (60.0 + t, -t),
        (60.0 + t, 20.0 + t),
        (40.0 + t, 20.0 + t),
        (40.0 + t, 30.0 + t),
        (-t, 30.0 + t),
    ]
}

#[test]
fn an_eave_is_solved_from_areas_and_told_as_ordinary_or_not() {
    // 0.4 is under half a foot; 0.5, 2 and 2.5 are ordinary; 2.7 is more. A + P·t + 4t²: 1,600 + 180·2 + 16 = 1,976.
    for (eave, is_ordinary) in [(0.4, false), (0.5, true), (2.0, true), (2.5, true), (2.7, false)] {
        let text = format!("{HOUSE}{}", map(&house_and_garage(eave), 0.0));
        let told = reconciled(&text);
        let roof = only(&told).comparison().unwrap();
        assert_abs_diff_eq!(roof.walls_sq_ft(), 1_600.0, epsilon = 0.01);
        assert_abs_diff_eq!(
            roof.roof_sq_ft(),
            1_600.0 + 180.0 * eave + 4.0 * eave * eave,
            epsilon = 0.3
        );
        assert_abs_diff_eq!(roof.eave_ft(), eave, epsilon = 0.01);
        assert_eq!(roof.is_ordinary(), is_ordinary, "{eave}");
        assert!(roof.fit() > 0.99, "{eave}: {}", roof.fit());
        assert_eq!(roof.parts(), []);
    }
}

#[test]
fn a_map_may_be_turned_any_way() {
    for turned in [3.0, 41.0, 100.0, -70.0, 178.0] {
        let text = format!("{HOUSE}{}", map(&house_and_garage(1.5), turned));
        let told = reconciled(&text);
        let roof = only(&told).comparison().unwrap();
        assert!(roof.fit() > 0.985, "{turned}: {}", roof.fit());
        let apart = (roof.turned_degrees() - turned).rem_euclid(360.0);
        assert!(apart.min(360.0 - apart) < 0.5, "{turned}: {}", roof.turned_degrees());
        assert_abs_diff_eq!(roof.fitted_eave_ft(), 1.5, epsilon = 0.2);
    }
}

#[test]
fn true_north_settles_which_way_a_symmetrical_house_lies() {
    let square = [(-1.0, -1.0), (31.0, -1.0), (31.0, 31.0), (-1.0, 31.0)];
    for degrees in [10.0, 80.0] {
        let text = format!(
            "true north N {degrees}° E\nlevel \"Ground\"\n  living \"House\"\n    north 30'\n    east 30'\n    south 30'\n    west 30'\n{}",
            map(&square, degrees)
        );
        let told = reconciled(&text);
        let roof = only(&told).comparison().unwrap();
        assert_abs_diff_eq!(roof.turned_degrees(), degrees, epsilon = 0.3);
    }
}

#[test]
fn what_stands_under_the_roof_is_found() {
    // House, garage and porch with 1 ft all around, by hand.
    let roof = [
        (-1.0, -1.0),
        (4.0, -1.0),
        (4.0, -7.0),
        (16.0, -7.0),
        (16.0, -1.0),
        (61.0, -1.0),
        (61.0, 21.0),
        (41.0, 21.0),
        (41.0, 31.0),
        (-1.0, 31.0),
    ];
    let with_porch = reconciled(&format!("{HOUSE}{}", map(&roof, 20.0)));
    let json = serde_json::to_value(with_porch.report().json()).unwrap();
    let under = &json["map_outlines"][0]["roof"]["under"];
    assert_eq!(*under, serde_json::json!(["House", "Garage", "Porch"]));
    let roof = only(&with_porch).comparison().unwrap();
    assert_abs_diff_eq!(roof.walls_sq_ft(), 1_660.0, epsilon = 0.01);
    assert_abs_diff_eq!(roof.eave_ft(), 1.0, epsilon = 0.02);
    let without = reconciled(&format!("{HOUSE}{}", map(&house_and_garage(1.0), 20.0)));
    assert_abs_diff_eq!(
        only(&without).comparison().unwrap().walls_sq_ft(),
        1_600.0,
        epsilon = 0.01
    );
}

#[test]
fn an_addition_that_the_walk_lacks_is_told_where_it_is() {
    // 12 by 14 ft at the back: with an eave of 1.5 ft on three sides, 15 by 14 beyond the roof of the rest.
    let roof = [
        (-1.5, -1.5),
        (61.5, -1.5),
        (61.5, 21.5),
        (41.5, 21.5),
        (41.5, 31.5),
        (23.5, 31.5),
        (23.5, 45.5),
        (8.5, 45.5),
        (8.5, 31.5),
        (-1.5, 31.5),
    ];
    let told = reconciled(&format!("{HOUSE}{}", map(&roof, -35.0)));
    let roof = only(&told).comparison().unwrap();
    assert_abs_diff_eq!(roof.fitted_eave_ft(), 1.5, epsilon = 0.1);
    assert!(roof.eave_ft() > 2.0, "{}", roof.eave_ft());
    let [part] = roof.parts() else { panic!("{:?}", roof.parts()) };
    assert!(part.is_only_on_map());
    assert_abs_diff_eq!(part.sq_ft(), 210.0, epsilon = 12.0);
    let (wide, deep) = part.size_ft().unwrap();
    assert_abs_diff_eq!(wide, 15.0, epsilon = 0.6);
    assert_abs_diff_eq!(deep, 14.0, epsilon = 0.6);
    assert_eq!(part.side(), fairfoot::geometry::Direction::North);
}

#[test]
fn a_room_that_the_map_lacks_is_told_too() {
    // The house alone with 2 ft all around: the garage has no roof over it. The outline is said to be of both.
    let text =
        format!("{HOUSE}{}", map(&[(-2.0, -2.0), (42.0, -2.0), (42.0, 32.0), (-2.0, 32.0)], 5.0))
            .replace("of \"House\"", "of \"Ground\"")
            .replace("garage \"Garage\"", "living \"Wing\"");
    let told = reconciled(&text);
    let roof = only(&told).comparison().unwrap();
    assert!(!roof.is_ordinary());
    // 20 by 20 less the eave of 2 ft over it: 360.
    let part = roof.parts().iter().find(|part| !part.is_only_on_map()).unwrap();
    assert_abs_diff_eq!(part.sq_ft(), 360.0, epsilon = 25.0);
    assert_eq!(part.side(), fairfoot::geometry::Direction::East);
}

#[test]
fn a_map_changes_no_figure() {
    let record = format!("record 1,390 sq ft\n{HOUSE}");
    let without = reconciled(&record);
    let with = reconciled(&format!("{record}{}", map(&house_and_garage(1.5), 12.0)));
    assert_eq!(with.areas().gross().tenth_foot(), without.areas().gross().tenth_foot());
    let figure = |reconciliation: &Reconciliation| {
        let all = serde_json::to_value(reconciliation.report().json()).unwrap();
        all["figures"].clone()
    };
    assert_eq!(figure(&with), figure(&without));
    assert!(
        with.report()
            .text(fairfoot::report::Look::default())
            .contains("None of its area is counted here")
    );
}

#[test]
fn an_outline_without_an_area_is_not_compared() {
    let text = format!(
        "{HOUSE}map outline \"City map\" of \"House\"\n  north 40'\n  east 30'\n  south 20'\n"
    );
    let told = reconciled(&text);
    assert!(only(&told).area().is_none() && only(&told).comparison().is_none());
}
