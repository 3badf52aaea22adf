//! Feet, inches, acres and meters: the exact factors.

use fairfoot::units::{Area, Length};

use super::sheets::{In, areas, is_printed, is_within, lot, rectangle, tract};

/// Square meters, given as an exact decimal, in halves of a square nanometer.
fn half_nm2(square_meters: &str) -> i128 {
    let (whole, decimals) = square_meters.split_once('.').unwrap_or((square_meters, ""));
    assert!(decimals.len() <= 18, "finer than a square nanometer");
    2 * format!("{whole}{decimals:0<18}").parse::<i128>().unwrap()
}

/// Asserts that an area is exactly the given number of square meters.
#[track_caller]
fn is_exactly(area: Area, square_meters: &str) {
    assert_eq!(area.half_nm2(), half_nm2(square_meters));
}

#[test]
fn lengths_follow_the_published_factors() {
    // Each pair is one length by two names. Foot: NIST, "U.S. Survey Foot: Revised Unit Conversion
    // Factors" (0.3048 m exactly; 85 FR 62698, 5 Oct 2020). Inch: NIST SP 811 (2008) app. B.8, from
    // memory. 36 ft: SP 811 B.7.2. 36 in and 40.1 in: NIST LC 1137, read second-hand (printed
    // rounded to 91 cm and 101.9 cm).
    let pairs = [
        ("1 ft", "0.3048 m"),
        ("1 in", "2.54 cm"),
        ("36 ft", "10.9728 m"),
        ("36\"", "91.44 cm"),
        ("40.1\"", "101.854 cm"),
        ("12\"", "1'"),
    ];
    for (one, other) in pairs {
        assert_eq!(one.parse::<Length>(), other.parse::<Length>(), "{one} and {other}");
        assert!(one.parse::<Length>().is_ok(), "{one}");
    }
    // SP 811 B.7.2: 10.9728 m is written 11.0 m.
    is_printed(In::Meters.of("36 ft".parse().unwrap()), "11.0");
}

#[test]
fn a_square_foot_and_a_square_inch_are_exact() {
    // NIST SP 811 (2008) app. B.8, from memory: 9.290 304 E-02 m² and 6.4516 E-04 m².
    let foot = "1 ft".parse().unwrap();
    let inch = "1 in".parse().unwrap();
    is_exactly(Area::rectangle(foot, foot), "0.09290304");
    is_exactly(Area::rectangle(inch, inch), "0.00064516");
    is_exactly(areas(&rectangle("", "1 ft", "1 ft")).gross().as_measured(), "0.09290304");
}

#[test]
fn an_acre_of_land_is_exact() {
    // NIST, "U.S. Survey Foot: Revised Unit Conversion Factors": an acre is 43,560 sq ft, exactly
    // 4046.856 422 4 m². 660 ft by 66 ft: a furlong by a chain.
    let sides = ["north 660 ft", "east 66 ft", "south 660 ft", "west 66 ft"].map(str::to_owned);
    let checked = lot("", &sides);
    let acre = tract(&checked).area();
    is_exactly(acre, "4046.8564224");
    assert_eq!(acre, Area::ACRE);
    assert_eq!(acre.whole_sq_ft(), 43_560);
    // By the survey foot, given up at the end of 2022, it was 4046.872 609 874 m²: not this.
    is_within(In::Meters.of_area(acre), "4046.872609874", 0.0162);
    assert_ne!(acre.in_unit(Area::SQUARE_METER, 2), "4046.87");
}

#[test]
fn a_square_mile_of_land_is_exact() {
    // The same page: 2 589 988.110 336 m². (It prints the area of a square rod in "m", a misprint
    // for m².)
    let sides = ["north 5280 ft", "east 5280 ft", "south 5280 ft", "west 5280 ft"];
    let checked = lot("", &sides.map(str::to_owned));
    is_exactly(tract(&checked).area(), "2589988.110336");
    assert_eq!(tract(&checked).area().in_unit(Area::ACRE, 4), "640.0000");
}

#[test]
fn survey_feet_would_change_a_house_by_a_hundredth_of_a_square_foot() {
    // A survey foot is 1200/3937 m, 0.304 800 609 601 m (the same page): 50 of them are
    // 15.240 030 480 m to the nanometer. Worked from the factors: 2,500 such square feet are
    // 2,500.0100.
    let by_survey = areas(&rectangle("", "15.240030480 m", "15.240030480 m"));
    is_printed(by_survey.gross().as_measured().sq_ft(), "2500.0100");
    assert_eq!(by_survey.gross().whole_foot().whole_sq_ft(), 2_500);
    assert_eq!(by_survey.gross().tenth_foot().sq_ft_text(), "2500");
}

#[test]
fn a_record_in_square_meters_or_acres_is_taken_exactly() {
    // The same factors on what a file states: 1 acre is 43,560 sq ft; 0.09290304 m² is 1 sq ft.
    let read = |recorded: &str| {
        let sides = "north 660 ft\neast 66 ft\nsouth 660 ft\nwest 66 ft";
        let checked =
            super::sheets::read_house(&format!("lot \"Tract\" recorded {recorded}\n{sides}\n"));
        checked.lots()[0].recorded().unwrap()
    };
    assert_eq!(read("1 acre"), Area::ACRE);
    assert_eq!(read("4046.8564224 sq m"), Area::ACRE);
    assert_eq!(read("0.40468564224 hectares"), Area::ACRE);
    assert_eq!(read("43,560 sq ft"), Area::ACRE);
}
