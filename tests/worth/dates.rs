//! Deadlines: days counted on a calendar by hand.

use fairfoot::value::Deadline;
use jiff::civil::{Date, date};

use super::{text, worth_of, worth_on};

fn deadlines(lines: &str, key: &str) -> Vec<Deadline> {
    let worth = worth_of(&format!("record 1,500 sq ft\nplace texas\n{lines}")).unwrap();
    let all = worth.dates().deadlines().iter();
    all.filter(|deadline| deadline.rule().key() == key).cloned().collect()
}

fn deadline(lines: &str, key: &str) -> Deadline {
    let mut found = deadlines(lines, key);
    assert_eq!(found.len(), 1, "{key} in {lines}");
    found.remove(0)
}

fn protest(notice: Date) -> Deadline {
    deadline(&format!("tax year {}\nnotice {notice}", notice.year()), "protest")
}

/// 41.44(a)(1), read: the later of May 15 and the 30th day after delivery. 1.06, read: past weekends and
/// legal holidays. Weekdays are counted by hand.
#[test]
fn may_15_moves_past_a_weekend() {
    for (year, month, day) in [
        (2020, 5, 15), // a Friday
        (2021, 5, 17), // a Saturday
        (2022, 5, 16), // a Sunday
        (2023, 5, 15), // a Monday
        (2024, 5, 15), // a Wednesday, in a leap year
        (2025, 5, 15), // a Thursday
        (2026, 5, 15), // a Friday
        (2027, 5, 17), // a Saturday
        (2028, 5, 15), // a Monday, in a leap year
        (2029, 5, 15), // a Tuesday
        (2032, 5, 17), // a Saturday, in a leap year
    ] {
        let found = protest(date(year, 4, 1));
        assert_eq!(found.day(), Some(date(year, month, day)), "{year}");
        assert_eq!(found.unmoved(), Some(date(year, 5, 15)), "{year}");
        assert_eq!(found.moved_past().is_empty(), (month, day) == (5, 15), "{year}");
    }
}

#[test]
fn the_thirtieth_day_counts_if_it_is_later() {
    // April has 30 days: the 30th day after April 20 is May 20.
    for (notice, unmoved, day) in [
        (date(2020, 4, 20), date(2020, 5, 20), date(2020, 5, 20)), // a Wednesday
        (date(2021, 4, 20), date(2021, 5, 20), date(2021, 5, 20)), // a Thursday
        (date(2022, 4, 20), date(2022, 5, 20), date(2022, 5, 20)), // a Friday
        (date(2023, 4, 20), date(2023, 5, 20), date(2023, 5, 22)), // a Saturday
        (date(2024, 4, 20), date(2024, 5, 20), date(2024, 5, 20)), // a Monday
        (date(2025, 4, 20), date(2025, 5, 20), date(2025, 5, 20)), // a Tuesday
        (date(2026, 4, 20), date(2026, 5, 20), date(2026, 5, 20)), // a Wednesday
        (date(2027, 4, 20), date(2027, 5, 20), date(2027, 5, 20)), // a Thursday
        (date(2028, 4, 20), date(2028, 5, 20), date(2028, 5, 22)), // a Saturday
        (date(2029, 4, 20), date(2029, 5, 20), date(2029, 5, 21)), // a Sunday
    ] {
        let found = protest(notice);
        assert_eq!((found.unmoved(), found.day()), (Some(unmoved), Some(day)), "{notice}");
        // The law was last checked in 2026.
        assert_eq!(found.is_certain(), notice.year() == 2026, "{notice}");
    }
}

#[test]
fn a_notice_after_april_15_moves_the_deadline() {
    // The 30th day after April 15 is May 15 itself, after April 16 it is May 16, a Saturday in 2026.
    assert_eq!(protest(date(2026, 4, 14)).unmoved(), Some(date(2026, 5, 15)));
    assert_eq!(protest(date(2026, 4, 15)).unmoved(), Some(date(2026, 5, 15)));
    let found = protest(date(2026, 4, 16));
    assert_eq!((found.unmoved(), found.day()), (Some(date(2026, 5, 16)), Some(date(2026, 5, 18))));
    assert_eq!(found.moved_past(), ["Saturday, May 16, 2026", "Sunday, May 17, 2026"]);
}

#[test]
fn february_has_its_own_length_in_leap_years() {
    // A late notice for the year before: the 30th day after January 31 is March 1 in 2028 (29 + 1)
    // and March 2 in 2027 (28 + 2), Texas Independence Day (Government Code 662.003(b)); both over May 15
    // of the year before.
    let late =
        |year: i16| deadline(&format!("tax year {}\nnotice {year}-01-31", year - 1), "protest");
    assert_eq!(late(2028).unmoved(), Some(date(2028, 3, 1)));
    assert_eq!(late(2028).day(), Some(date(2028, 3, 1))); // a Wednesday
    assert_eq!(late(2027).unmoved(), Some(date(2027, 3, 2)));
}

/// Legal holidays: Texas Government Code 662.003(a) and (b)(1) to (6), read with 662.021.
#[test]
fn a_thirtieth_day_on_a_legal_holiday_moves() {
    // The last Monday of May: the 25th in 2026, 30 days after April 25.
    let found = protest(date(2026, 4, 25));
    assert_eq!(found.unmoved(), Some(date(2026, 5, 25)));
    assert_eq!(found.day(), Some(date(2026, 5, 26)));
    assert_eq!(found.moved_past(), ["Monday, May 25, 2026, Memorial Day"]);
    // The Saturday before it goes past all three days.
    let found = protest(date(2026, 4, 23));
    assert_eq!(found.unmoved(), Some(date(2026, 5, 23)));
    assert_eq!(found.day(), Some(date(2026, 5, 26)));
    assert_eq!(found.moved_past().len(), 3);
    // June 19, a Friday in 2026: 30 days after May 20.
    let found = protest(date(2026, 5, 20));
    assert_eq!((found.unmoved(), found.day()), (Some(date(2026, 6, 19)), Some(date(2026, 6, 22))));
}

#[test]
fn memorial_day_is_the_last_monday_of_may_in_every_year() {
    // Counted by hand.
    for (year, day) in [
        (2020, 25),
        (2021, 31),
        (2022, 30),
        (2023, 29),
        (2024, 27),
        (2025, 26),
        (2026, 25),
        (2027, 31),
        (2028, 29),
        (2029, 28),
    ] {
        // The notice 30 days before: April has 30 days.
        let notice = if day == 31 { date(year, 5, 1) } else { date(year, 4, day) };
        let found = protest(notice);
        assert_eq!(found.unmoved(), Some(date(year, 5, day)), "{year}");
        assert!(found.moved_past()[0].ends_with("Memorial Day"), "{year}");
    }
}

/// 31.02 (second-hand: two county tax offices): delinquent on February 1; 33.01 (read). So January 31 is the last day
/// to pay.
#[test]
fn payment_is_the_end_of_january_and_always_a_question() {
    for (year, day) in [
        (2019, date(2020, 1, 31)), // a Friday
        (2020, date(2021, 2, 1)),  // from a Sunday
        (2021, date(2022, 1, 31)), // a Monday
        (2022, date(2023, 1, 31)), // a Tuesday
        (2023, date(2024, 1, 31)), // a Wednesday
        (2024, date(2025, 1, 31)), // a Friday
        (2025, date(2026, 2, 2)),  // from a Saturday
        (2026, date(2027, 2, 1)),  // from a Sunday
        (2027, date(2028, 1, 31)), // a Monday
        (2028, date(2029, 1, 31)), // a Wednesday
    ] {
        let found = deadline(&format!("tax year {year}"), "payment");
        assert_eq!(found.day(), Some(day), "{year}");
        assert!(!found.is_certain(), "{year}");
    }
    let worth = worth_of("place texas\ntax year 2026").unwrap();
    assert!(
        text(&worth).contains(
            "Tax paid by (31.02, 31.04(a), 33.01, 33.07, 1.08) | ask the appraisal office"
        )
    );
}

/// 25.25(d) as HB 2159 (86th Legislature, 2019) has it: a quarter for homesteads from tax year 2019. The
/// county form at Brazoria gives 100,000 → 80,000 and → 75,000.
#[test]
fn a_late_correction_takes_a_quarter_or_a_third() {
    let below = |year: u16, homestead: &str| {
        let lines = format!(
            "tax year {year}\n{homestead}value market $400,000 assessed $360,000 improvement $9,000"
        );
        let found = deadline(&lines, "late correction");
        found.correct_below().unwrap().decimal_text()
    };
    // 360,000 ÷ 1.25 = 288,000; 360,000 ÷ (4/3) = 270,000.
    assert_eq!(below(2026, "homestead since 2019\n"), "288000");
    assert_eq!(below(2026, ""), "270000");
    assert_eq!(below(2019, "homestead since 2015\n"), "288000");
    assert_eq!(below(2018, "homestead since 2015\n"), "270000");
    // Not moved: the earlier day is the safe one. January 31, 2027 is a Sunday.
    let found = deadline("tax year 2026", "late correction");
    assert_eq!(found.day(), Some(date(2027, 1, 31)));
}

/// A county's page on protests (brazoriacad.org/protest-form, read): of $100,000 the correct value is at most
/// $80,000 for a homestead, $75,000 for other property.
#[test]
fn a_late_correction_comes_out_as_a_county_publishes_it() {
    for (homestead, below) in [("homestead since 2019\n", "80000"), ("", "75000")] {
        let lines = format!(
            "tax year 2026\n{homestead}value market $100,000 assessed $100,000 improvement $9,000"
        );
        let found = deadline(&lines, "late correction");
        assert_eq!(found.correct_below().unwrap().decimal_text(), below);
    }
}

/// Government Code 662.021, read: Columbus Day, December 24 and December 26 are not legal holidays.
#[test]
fn columbus_day_and_the_days_round_christmas_move_nothing() {
    // 30 days after: September has 30 days, so October 12, 2026, a Monday, comes of September 12; November has 30,
    // so December 24, a Thursday in 2026, comes of November 24. December 26, 2025, a Friday, comes of November 26.
    for (notice, day) in [
        (date(2026, 9, 12), date(2026, 10, 12)),
        (date(2026, 11, 24), date(2026, 12, 24)),
        (date(2025, 11, 26), date(2025, 12, 26)),
    ] {
        let found = protest(notice);
        assert_eq!((found.unmoved(), found.day()), (Some(day), Some(day)), "{notice}");
    }
    // The Friday after Thanksgiving is one: November 27 in 2026, of October 28 (3 days to the 31st, then 27).
    let found = protest(date(2026, 10, 28));
    assert_eq!(found.unmoved(), Some(date(2026, 11, 27)));
    assert_eq!(found.day(), Some(date(2026, 11, 30)));
}

/// 25.25(c), read in an older print: any of the five preceding years.
#[test]
fn past_years_are_the_five_before() {
    let found = deadline("tax year 2026", "past years");
    assert_eq!(found.in_words(), Some("tax years 2021 to 2025"));
    assert!(!found.is_certain());
}

/// 41.461 and 41.46, read: 14 and 15 days before the hearing; 25.25(b), read: at any time.
#[test]
fn deadlines_counted_from_the_hearing_are_stated_in_words() {
    assert_eq!(
        deadline("tax year 2026", "evidence").in_words(),
        Some("14 days before the hearing")
    );
    assert_eq!(
        deadline("tax year 2026", "hearing notice").in_words(),
        Some("15 days before the hearing")
    );
    let found = deadline("tax year 2026", "correction without a protest");
    assert_eq!((found.in_words(), found.day()), (Some("at any time"), None));
}

#[test]
fn without_the_notice_the_day_is_a_question() {
    let found = deadline("tax year 2027", "protest");
    assert_eq!((found.day(), found.is_certain()), (None, false));
    let worth = worth_of("place texas\ntax year 2026").unwrap();
    let reported = text(&worth);
    assert!(
        reported.contains("Protest filed by (41.44(a)(1)) | ask the appraisal office"),
        "{reported}"
    );
    assert!(reported.contains("Friday, May 15, 2026 or later"), "{reported}");
}

#[test]
fn a_year_other_than_that_of_the_last_check_is_a_question() {
    assert!(protest(date(2026, 4, 20)).is_certain());
    for year in [2019, 2025, 2027] {
        let found = protest(date(year, 4, 20));
        assert!(!found.is_certain(), "{year}");
        assert!(found.asks()[0].contains("2026-11-27"), "{:?}", found.asks());
    }
}

#[test]
fn without_a_place_there_are_two_questions_and_no_day() {
    let worth = worth_of("notice 2026-04-20\ntax year 2026").unwrap();
    assert!(worth.dates().deadlines().is_empty());
    let reported = text(&worth);
    assert!(reported.contains("Two questions for the appraisal office"), "{reported}");
    assert!(reported.contains("on its first page"), "{reported}");
    assert!(!reported.contains("May"), "{reported}");
}

#[test]
fn the_year_is_the_value_s_then_the_file_s_then_the_notice_s() {
    let year = |lines: &str| worth_of(&format!("place texas\n{lines}")).unwrap().dates().year();
    assert_eq!(year("value market $1,000 year 2024\ntax year 2025\nnotice 2026-04-20"), Some(2024));
    assert_eq!(year("tax year 2025\nnotice 2026-04-20"), Some(2025));
    assert_eq!(year("notice 2026-04-20"), Some(2026));
    assert_eq!(year(""), None);
}

#[test]
fn days_left_are_counted_from_the_day_given_and_no_other() {
    let lines = "place texas\nnotice 2026-04-17";
    let left = |today: Date| {
        let worth = worth_on(lines, Some(today)).unwrap();
        text(&worth).lines().find(|line| line.starts_with("Protest")).unwrap().to_owned()
    };
    assert!(left(date(2026, 5, 6)).ends_with("Monday, May 18, 2026, 12 days left"));
    assert!(left(date(2026, 5, 17)).ends_with("1 day left"));
    assert!(left(date(2026, 5, 18)).ends_with("today"));
    assert!(left(date(2026, 5, 20)).ends_with("2 days ago"));
    let worth = worth_of(lines).unwrap();
    assert!(!text(&worth).contains("days left"));
    assert_eq!(worth.dates().deadlines()[0].days_left(date(2026, 2, 28)), Some(79)); // 1 + 31 + 30 + 18 - 1
}
