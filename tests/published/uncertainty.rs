//! How far off an area may be if its sides are.
//!
//! Here ± is 2·√(Σ g²t²/3): t is the tolerance of a wall, taken as the half-width of a rectangular distribution
//! whose standard deviation is t/√3 (NIST TN 1297 §4.6, from memory), g the derivative of the area with respect to
//! that wall. A printed standard error σ of a length converts to t in two ways:
//!
//! - one reading: a wall is measured and the one opposite follows by closing. The derivative is the whole width, so
//!   t = √3·σ.
//! - two readings: both opposite walls are measured, each with half the width as its derivative after closing; two
//!   squared halves add up to a half. A standard error σ of their mean is that of each divided by √2, so t = √6·σ.

use super::sheets::{In, areas, house, is_printed, is_within, rectangle};

/// A printed length and its standard error.
type Measured = (&'static str, f64);

/// Half of the ±, which is one standard error of the area, in square units.
fn standard_error(text: &str, unit: In) -> f64 {
    let square_feet = areas(text).gross().plus_minus() / 2.0;
    match unit {
        In::Feet => square_feet,
        In::Meters => square_feet * 0.09290304,
    }
}

/// A tolerance, to the nanometer.
fn tolerance(standard_error: f64, unit: In, readings: f64) -> String {
    let meters = match unit {
        In::Feet => standard_error * 0.3048,
        In::Meters => standard_error,
    };
    format!("tolerance {:.9} m", (3.0 * readings).sqrt() * meters)
}

/// Each length is measured on one wall; the opposite wall is by closing.
fn one_reading(width: Measured, depth: Measured, unit: In) -> String {
    let word = unit.word();
    let side = |way: &str, (length, error): Measured| {
        format!("{way} {length} {word} {}", tolerance(error, unit, 1.0))
    };
    let sides = [
        side("north", depth),
        side("east", width),
        "south by closing".to_owned(),
        "west by closing".to_owned(),
    ];
    house("", &sides)
}

/// Each length is measured on both walls.
fn two_readings(width: Measured, depth: Measured, unit: In) -> String {
    let word = unit.word();
    let side = |way: &str, (length, error): Measured| {
        format!("{way} {length} {word} {}", tolerance(error, unit, 2.0))
    };
    let sides =
        [side("north", depth), side("east", width), side("south", depth), side("west", width)];
    house("", &sides)
}

#[test]
fn standard_error_of_a_lot_of_four_acres_is_as_printed() {
    // A practice problem for the PE surveying examination: 339.21 ± 0.05 ft by 563.67 ± 0.09 ft;
    // 191,202 sq ft, 4.389 acres, standard error 41.5 sq ft.
    let (x, y) = (("339.21", 0.05), ("563.67", 0.09));
    for text in [one_reading(x, y, In::Feet), two_readings(x, y, In::Feet)] {
        // 41.549 unrounded; printed 41.5.
        is_printed(standard_error(&text, In::Feet), "41.5");
        is_within(standard_error(&text, In::Feet), "41.549", 0.0005);
        let area = areas(&text).gross().as_measured();
        // 191,202.5007 exactly; printed cut to 191,202.
        assert_eq!(area.sq_ft_text(), "191202.5007");
        assert_eq!(area.in_unit(fairfoot::units::Area::ACRE, 3), "4.389");
    }
}

#[test]
fn error_of_a_product_is_as_remembered() {
    // C. D. Ghilani and P. R. Wolf, Elementary Surveying, error of a product, from memory:
    // 252.46 ± 0.053 ft by 605.08 ± 0.072 ft, errors at 95 %; 152,758 sq ft (printed 152,760),
    // ± 36.9 at 95 %. Half of each error is a standard error here, and the ± is twice one.
    let (x, y) = (("252.46", 0.053 / 2.0), ("605.08", 0.072 / 2.0));
    for text in [one_reading(x, y, In::Feet), two_readings(x, y, In::Feet)] {
        let gross = areas(&text);
        is_printed(gross.gross().plus_minus(), "36.9");
        assert_eq!(gross.gross().as_measured().sq_ft_text(), "152758.4968");
        is_within(gross.gross().as_measured().sq_ft(), "152,760", 5.0); // to ten square feet
    }
}

#[test]
fn worst_case_of_a_room_is_halfway_between_its_extremes() {
    // OpenStax, College Physics, ch. 1, problem 27 (worked on an engineering mathematics site): 3.955 ± 0.005 m by
    // 3.050 ± 0.005 m is 12.06 m², ± 0.035 m² where percentages are added.
    let area = |width: &str, depth: &str| {
        In::Meters.of_area(areas(&rectangle("", width, depth)).gross().as_measured())
    };
    is_printed(area("3.955 m", "3.050 m"), "12.06");
    let (low, high) = (area("3.950 m", "3.045 m"), area("3.960 m", "3.055 m"));
    is_printed((high - low) / 2.0, "0.035");
    is_printed((high - low) / 2.0, "0.035025"); // 3.955 × 0.005 + 3.050 × 0.005
    // Percentages, printed as 0.1264 + 0.1639 = 0.2903: one last digit is allowed for adding rounded ones.
    is_within((high - low) / 2.0 / area("3.955 m", "3.050 m") * 100.0, "0.2903", 0.0001);
    // A question-and-answer page prints ± 0.0105 for the same room, because of an error in a subtraction.
    assert!((high - low) / 2.0 > 3.0 * 0.0105);
    // Added in squares, which is the rule here, it is 0.02497 (worked): smaller than the worst case.
    let (x, y) = (("3.955", 0.005), ("3.050", 0.005));
    for text in [one_reading(x, y, In::Meters), two_readings(x, y, In::Meters)] {
        is_printed(standard_error(&text, In::Meters), "0.02497");
    }
}

#[test]
fn extremes_of_ten_by_five_lie_about_51() {
    // A science teaching site, 8.01: 10 ± 1 by 5 ± 1 is 36 to 66, that is 51 ± 15 and not 50 ± 15.
    let area = |width: &str, depth: &str| {
        areas(&rectangle("", width, depth)).gross().as_measured().whole_sq_ft()
    };
    let (low, high) = (area("9 ft", "4 ft"), area("11 ft", "6 ft"));
    assert_eq!((low, high), (36, 66));
    assert_eq!(low + high, 2 * 51);
    assert_eq!(high - low, 2 * 15);
}
