//! Laws of lengths: written and read back, rounded to a step.

use fairfoot::units::{Form, Halves, Length, Step, WrittenLength};
use num_rational::Ratio;
use proptest::prelude::*;

const STEPS: [Step; 4] = [Step::WholeFoot, Step::HalfFoot, Step::Inch, Step::TenthFoot];

fn read(text: &str) -> i64 {
    text.parse::<Length>().unwrap_or_else(|error| panic!("{text}: {error}")).nm()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2_000))]

    #[test]
    fn a_length_on_a_tape_is_written_and_read_back(sixty_fourths in 1_i64..7_000_000) {
        let length = Length::from_nm(sixty_fourths * 396_875);
        prop_assert_eq!(read(&length.to_string()), length.nm());
    }

    #[test]
    fn every_spelling_of_one_length_is_one_length(feet in 0_i64..9_999, inches in 0_i64..12, eighths in 1_i64..8) {
        let nm = feet * 304_800_000 + inches * 25_400_000 + eighths * 3_175_000;
        let thousandths = eighths * 125;
        let whole_inches = feet * 12 + inches;
        for text in [
            format!("{feet}' {inches} {eighths}/8\""),
            format!("{feet}'{inches} {eighths}/8\""),
            format!("{feet}'-{inches}-{eighths}/8\""),
            format!("{feet}' {inches}-{eighths}/8\""),
            format!("{feet} ft {inches} {eighths}/8 in"),
            format!("{feet}’ {inches} {eighths}/8″"),
            format!("{feet}' {inches}.{thousandths:03}\""),
            format!("{whole_inches} {eighths}/8\""),
            format!("{whole_inches}.{thousandths:03}\""),
        ] {
            prop_assert_eq!(read(&text), nm, "{}", text);
        }
    }

    #[test]
    fn decimals_of_feet_and_meters_are_exact(ten_thousandths in 1_i64..90_000_000) {
        let (whole, rest) = (ten_thousandths / 10_000, ten_thousandths % 10_000);
        prop_assert_eq!(read(&format!("{whole}.{rest:04}'")), ten_thousandths * 30_480);
        prop_assert_eq!(read(&format!("{whole}.{rest:04} ft")), ten_thousandths * 30_480);
        prop_assert_eq!(read(&format!("{whole}.{rest:04}")), ten_thousandths * 30_480);
        if whole < 3_000 {
            prop_assert_eq!(read(&format!("{whole}.{rest:04} m")), ten_thousandths * 100_000);
            let mm = ten_thousandths % 3_000_000 + 1;
            prop_assert_eq!(read(&format!("{mm} mm")), mm * 1_000_000);
            let hundredths = format!("{}.{:02} cm", ten_thousandths / 100, ten_thousandths % 100);
            prop_assert_eq!(read(&hundredths), ten_thousandths * 100_000);
        }
    }

    #[test]
    fn what_is_written_in_a_form_reads_back(tenths_of_mm in 1_i64..30_000_000) {
        let length = Length::from_nm(tenths_of_mm * 100_000);
        for form in [Form::Meters, Form::Centimeters, Form::Millimeters] {
            let text = WrittenLength::new(length, form).to_string();
            prop_assert_eq!(read(&text), length.nm(), "{}", text);
        }
        let hundredths = Length::from_nm(tenths_of_mm % 999_999 * 3_048_000 + 3_048_000);
        let text = WrittenLength::new(hundredths, Form::DecimalFeet).to_string();
        prop_assert_eq!(read(&text), hundredths.nm(), "{}", text);
    }

    #[test]
    fn rounding_is_what_exact_fractions_give(nm in 1_i64..3_048_000_000_000) {
        let length = Length::from_nm(nm);
        for step in STEPS {
            let unit = step.length().nm();
            let steps = Ratio::new(nm, unit);
            let half = Ratio::new(1, 2);
            prop_assert_eq!(length.rounded(step, Halves::Up).nm(), (steps + half).floor().to_integer() * unit);
            prop_assert_eq!(length.rounded(step, Halves::Down).nm(), (steps - half).ceil().to_integer() * unit);
            let even = length.rounded(step, Halves::Even).nm();
            prop_assert!((even - nm).abs() * 2 <= unit);
        }
    }

    #[test]
    fn halves_round_as_the_setting_says(feet in 0_i64..9_000) {
        let half = Length::from_nm(feet * 304_800_000 + 152_400_000);
        prop_assert_eq!(half.rounded(Step::WholeFoot, Halves::Up).nm(), (feet + 1) * 304_800_000);
        prop_assert_eq!(half.rounded(Step::WholeFoot, Halves::Down).nm(), feet * 304_800_000);
        let even = feet + feet % 2;
        prop_assert_eq!(half.rounded(Step::WholeFoot, Halves::Even).nm(), even * 304_800_000);
    }

    #[test]
    fn no_text_makes_the_reader_of_lengths_stop(text in "\\PC{0,30}") {
        let _ = text.parse::<Length>();
    }
}

#[test]
fn inches_are_shown_as_a_tape_has_them_and_else_as_decimals() {
    // 25,400,000 nm an inch, 396,875 a sixty-fourth; a tenth of an inch, 2,540,000, is on no tape in inches.
    for (nm, shown) in [
        (25_400_000, "1\""),
        (12_700_000, "1/2\""),
        (396_875, "1/64\""),
        (25_400_000 + 3 * 396_875, "1 3/64\""),
        (7 * 25_400_000 + 2_540_000, "7.1\""),
        (2_540_000, "0.1\""),
        (304_800_000 + 5_080_000, "1' 0.2\""),
    ] {
        assert_eq!(Length::from_nm(nm).to_string(), shown);
    }
}

#[test]
fn lengths_are_rounded_for_people_in_the_form_they_were_typed_in() {
    // 42' 7" is 12.9794 m and 42.58333… ft.
    let length: Length = "42' 7\"".parse().unwrap();
    for (form, shown) in [
        (Form::FeetAndInches, "42' 7\""),
        (Form::DecimalFeet, "42.58'"),
        (Form::Meters, "12.979 m"),
        (Form::Centimeters, "1,297.9 cm"),
        (Form::Millimeters, "12,979 mm"),
    ] {
        assert_eq!(WrittenLength::new(length, form).spoken(), shown);
    }
    // A third of a millimeter rounds to zero millimeters.
    assert_eq!(
        WrittenLength::new(Length::from_nm(300_000), Form::Millimeters).spoken(),
        "under 1 mm"
    );
}
