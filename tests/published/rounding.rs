//! Rounding: halves to even, halves up, halves down, and rounding once only.

use fairfoot::units::{Halves, Length, Step};
use rust_decimal::Decimal;

use super::sheets::{areas, areas_by, decimal, halves, is_printed, rectangle};

/// A length in feet, exact; `None` if it is not a whole number of nanometers.
fn feet(number: Decimal) -> Option<Length> {
    let nm = (number * Decimal::from(304_800_000)).normalize();
    nm.is_integer().then(|| Length::from_nm(nm.to_string().parse().unwrap()))
}

/// `value` rounded to the nearest `step`, computed both in whole feet and in tenths.
///
/// Value and step are multiplied by a power of ten to make the step 1 ft, and again to make it 0.1 ft, which only
/// moves the decimal point; both results must agree if both are whole nanometers.
fn rounded(value: &str, step: &str, halves: Halves) -> Decimal {
    let (value, step) = (decimal(value), decimal(step));
    let to = |foot_step: Step, size: Decimal| {
        let scale = size / step;
        let length = feet(value * scale)?.rounded(foot_step, halves);
        Some((Decimal::from(length.nm()) / Decimal::from(304_800_000) / scale).normalize())
    };
    let whole = to(Step::WholeFoot, Decimal::ONE);
    let tenths = to(Step::TenthFoot, Decimal::new(1, 1));
    if let (Some(whole), Some(tenths)) = (whole, tenths) {
        assert_eq!(whole, tenths, "{value} to {step}");
    }
    whole.or(tenths).expect("whole nanometers")
}

/// Value, step, the printed result for halves to even, and for halves up.
type Row = (&'static str, &'static str, &'static str, &'static str);

/// Asserts every row, halves to even and halves up.
#[track_caller]
fn all_round(rows: &[Row]) {
    for &(value, step, even, up) in rows {
        let shown = format!("{value} to {step}");
        assert_eq!(
            rounded(value, step, Halves::Even),
            decimal(even).normalize(),
            "{shown}, to even"
        );
        assert_eq!(rounded(value, step, Halves::Up), decimal(up).normalize(), "{shown}, up");
    }
}

// Halves up: Iowa DOT IM 202 puts them in place of ASTM E29 §6.4.3 (5 followed by zeros goes to the even digit; E29
// itself read second-hand). Where the two differ, the last column says so.

#[test]
fn field_testing_manual_rounds_halves_to_even() {
    // A field testing manual, "Rounding procedures", after ASTM E29.
    all_round(&[
        ("45.7500", "0.1", "45.8", "45.8"),
        ("45.4500", "0.1", "45.4", "45.5"),
        ("45.45001", "0.1", "45.5", "45.5"),
        ("45.45105", "0.1", "45.5", "45.5"),
        ("45.45099", "0.1", "45.5", "45.5"),
        ("45.74", "0.1", "45.7", "45.7"),
        ("45.76", "0.1", "45.8", "45.8"),
    ]);
}

#[test]
fn indian_standard_rounds_halves_to_even() {
    // IS 2:1960, Rules for rounding off numerical values, read second-hand.
    all_round(&[
        ("4.36", "1", "4", "4"),
        ("2.355", "1", "2", "2"),
        ("15.205", "0.1", "15.2", "15.2"),
        ("9.625", "1", "10", "10"),
        ("2.651", "0.1", "2.7", "2.7"),
        ("0.3552", "0.01", "0.36", "0.36"),
        ("12.545001", "0.01", "12.55", "12.55"),
    ]);
}

#[test]
fn college_tables_round_halves_to_even() {
    // Hartnell College, rounding handout.
    all_round(&[
        ("56.748", "0.1", "56.7", "56.7"),
        ("2.146", "0.01", "2.15", "2.15"),
        ("21.4501", "0.1", "21.5", "21.5"),
        ("21.350", "0.1", "21.4", "21.4"),
        ("21.45", "0.1", "21.4", "21.5"),
    ]);
    // A study site's page on rounding off.
    all_round(&[
        ("3.250", "0.1", "3.2", "3.3"),
        ("12.650", "0.1", "12.6", "12.7"),
        ("3.750", "0.1", "3.8", "3.8"),
        ("16.150", "0.1", "16.2", "16.2"),
    ]);
    // A physical sciences site's page on significant figures.
    all_round(&[
        ("735", "10", "740", "740"),
        ("8645", "10", "8640", "8650"),
        ("37.65", "0.1", "37.6", "37.7"),
        ("0.0275", "0.001", "0.028", "0.028"),
        ("70.5", "1", "70", "71"),
    ]);
}

#[test]
fn chemistry_laboratory_rounds_halves_to_even_but_for_two_misprints() {
    // Florida State University, chemistry laboratory notes.
    all_round(&[
        ("6.65", "0.1", "6.6", "6.7"),
        ("6.35", "0.1", "6.4", "6.4"),
        ("3.05", "0.1", "3.0", "3.1"),
    ]);
    // The same notes print 3.4665 as 6.466 and 3.4675 as 6.468: the whole number is misprinted.
    all_round(&[("3.4665", "0.001", "3.466", "3.467"), ("3.4675", "0.001", "3.468", "3.468")]);
}

#[test]
fn international_standard_rounds_halves_to_even() {
    // ISO 80000-1:2009, annex B, from memory.
    all_round(&[
        ("12.223", "0.1", "12.2", "12.2"),
        ("12.25", "0.1", "12.2", "12.3"),
        ("12.251", "0.1", "12.3", "12.3"),
        ("12.275", "0.1", "12.3", "12.3"),
        ("12.35", "0.1", "12.4", "12.4"),
        ("1223.3", "10", "1220", "1220"),
        ("1225.0", "10", "1220", "1230"),
        ("1225.1", "10", "1230", "1230"),
        ("1227.5", "10", "1230", "1230"),
        ("1235.0", "10", "1240", "1240"),
    ]);
}

#[test]
fn guide_for_the_use_of_si_rounds_halves_to_even() {
    // NIST SP 811 (2008) B.7.1, from memory: to 3, 2, 5 and 7 digits.
    all_round(&[
        ("6.9749515", "0.01", "6.97", "6.97"),
        ("6.9749515", "0.1", "7.0", "7.0"),
        ("6.9749515", "0.0001", "6.9750", "6.9750"),
        ("6.9749515", "0.000001", "6.974952", "6.974952"),
        ("6.9749505", "0.000001", "6.974950", "6.974951"),
    ]);
}

#[test]
fn half_feet_are_halves_up_or_down_by_the_setting() {
    // Maryland SDAT, Assessment Procedure Manual: 12 ft 7 in is 13, 12 ft 6 in is 12.
    let whole = |text: &str, halves: Halves| {
        text.parse::<Length>().unwrap().rounded(Step::WholeFoot, halves).to_string()
    };
    assert_eq!(whole("12' 7\"", Halves::Down), "13'");
    assert_eq!(whole("12' 6\"", Halves::Down), "12'");
    // Common practice rounds the half up; to even it is 12 as well, and 14 for 13 ft 6 in.
    assert_eq!(whole("12' 6\"", Halves::Up), "13'");
    assert_eq!(whole("12' 6\"", Halves::Even), "12'");
    assert_eq!(whole("13' 6\"", Halves::Even), "14'");
    assert_eq!(whole("13' 6\"", Halves::Down), "13'");
}

#[test]
fn inches_round_to_half_feet_as_one_practitioner_does() {
    // A practitioner's own scheme for half feet, read second-hand: 1 to 3 in down, 4 to 9 in to the
    // half, over 9 in up; so 3 in and 9 in, the ties, go down.
    let scheme = [0, 0, 0, 0, 6, 6, 6, 6, 6, 6, 12, 12, 12];
    for (inches, printed) in (0_i64..).zip(scheme) {
        let typed = Length::from_nm((20 * 12 + inches) * Length::INCH.nm());
        let rounded = typed.rounded(Step::HalfFoot, Halves::Down);
        assert_eq!(rounded.nm(), (20 * 12 + printed) * Length::INCH.nm(), "{inches} in");
    }
}

#[test]
fn a_length_is_rounded_once_only() {
    // Ontario Ministry of Transportation, LS-100 §3.3: 1.347 to 0.1 is 1.3, not 1.35 and then 1.4.
    assert_eq!(rounded("1.347", "0.1", Halves::Up), decimal("1.3"));
    assert_eq!(rounded("1.347", "0.01", Halves::Up), decimal("1.35"));
    assert_eq!(rounded("1.35", "0.1", Halves::Up), decimal("1.4"));
    // The same for walls: 12.46 ft is 12 ft, not 12.5 ft and then 13 ft.
    let areas = areas(&rectangle("", "12.46 ft", "30 ft"));
    assert_eq!(areas.gross().tenth_foot().sq_ft_text(), "375"); // 12.5 × 30
    assert_eq!(areas.gross().whole_foot().sq_ft_text(), "360"); // 12 × 30
}

#[test]
fn halves_of_walls_round_as_the_setting_says() {
    // Maryland's examples as a house: 12 ft 7 in by 12 ft 6 in.
    let house = rectangle("", "12' 7\"", "12' 6\"");
    let whole =
        |ties_go: Halves| areas_by(&house, halves(ties_go)).gross().whole_foot().whole_sq_ft();
    assert_eq!(whole(Halves::Down), 13 * 12);
    assert_eq!(whole(Halves::Even), 13 * 12);
    assert_eq!(whole(Halves::Up), 13 * 13);
}

#[test]
fn sides_rounded_first_move_a_large_area() {
    // A tape 30.05 m long for 30 m, on 249.50 m by 496.85 m. Printed 124,380.18 m², from sides
    // rounded to 249.92 and 497.68 first (their product is 124,380.1856, cut). Exactly, the area by
    // the square of the scale is 124,377.633: 2.55 m² less.
    let rounded = areas(&rectangle("", "249.92 m", "497.68 m"));
    let square_meters =
        |areas: &fairfoot::Areas| super::sheets::In::Meters.of_area(areas.gross().as_measured());
    super::sheets::is_within(square_meters(&rounded), "124,380.18", 0.01);
    let exact = areas(&rectangle("", "249.915833333 m", "497.678083333 m"));
    is_printed(square_meters(&exact), "124,377.633");
}
