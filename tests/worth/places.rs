//! Places other than Texas: days counted on a calendar by hand, two years each.
//!
//! January 1 is a Thursday in 2026 and a Friday in 2027; weekdays in the comments were counted from there.

use fairfoot::value::{CauseClass, Deadline, Reach};
use jiff::civil::{Date, date};

use super::{text, worth_of};

fn deadline(place: &str, lines: &str, key: &str) -> Deadline {
    let worth = worth_of(&format!("record 1,500 sq ft\nplace {place}\n{lines}")).unwrap();
    let found = worth.dates().deadlines().iter().find(|deadline| deadline.rule().key() == key);
    found.unwrap_or_else(|| panic!("{key} of {place}")).clone()
}

/// The day of a rule, for a tax year, with the notice that it counts from.
fn day(place: &str, year: i16, notice: Option<Date>, key: &str) -> Option<Date> {
    let notice = notice.map(|notice| format!("\nnotice {notice}")).unwrap_or_default();
    deadline(place, &format!("tax year {year}{notice}"), key).day()
}

const FIRST: &str = "first appeal";

/// RCW 84.40.038, read: the later of July 1 and 30 days after the notice.
#[test]
fn washington_counts_to_july_1_or_thirty_days() {
    for year in [2026, 2027] {
        // May 20 + 30 is June 19 (11 days to the 31st, then 19); June 10 + 30 is July 10 (20, then 10).
        assert_eq!(day("washington", year, Some(date(year, 5, 20)), FIRST), Some(date(year, 7, 1)));
        assert_eq!(
            day("washington", year, Some(date(year, 6, 10)), FIRST),
            Some(date(year, 7, 10))
        );
        assert_eq!(day("washington", year, None, FIRST), None);
    }
    // July 10 is a Friday in 2026, a Saturday in 2027.
    let asks = |year: i16| {
        let lines = format!("tax year {year}\nnotice {year}-06-10");
        deadline("washington", &lines, FIRST).asks().join(" ")
    };
    assert!(!asks(2026).contains("Saturday"), "{}", asks(2026));
    assert!(asks(2027).contains("Friday, July 9, 2027 is safe either way"), "{}", asks(2027));
}

/// C.R.S. 39-5-121(1)(a), 39-5-122(1)(a), read: June 8. 39-10-114, second-hand: two years back.
#[test]
fn colorado_takes_protests_to_june_8() {
    assert_eq!(day("colorado", 2026, None, FIRST), Some(date(2026, 6, 8))); // a Monday
    assert_eq!(day("colorado", 2027, None, FIRST), Some(date(2027, 6, 8))); // a Tuesday
    let past = |year: i16| deadline("colorado", &format!("tax year {year}"), "past years");
    assert_eq!(past(2026).in_words(), Some("tax years 2024 to 2025"));
    assert_eq!(past(2027).in_words(), Some("tax years 2025 to 2026"));
}

/// R&T 1603(b), read: September 15, or November 30 by county; the earlier is shown.
#[test]
fn california_is_safe_to_september_15() {
    for year in [2026, 2027] {
        let found = deadline("california", &format!("tax year {year}"), FIRST);
        assert_eq!(found.day(), Some(date(year, 9, 15))); // a Tuesday, a Wednesday
        assert!(found.asks().iter().any(|ask| ask.contains("November 30")));
    }
}

/// RPTL 512(1), 524(1), read: the fourth Tuesday of May.
#[test]
fn new_york_hears_grievances_on_the_fourth_tuesday_of_may() {
    // May 1 is a Friday in 2026: Tuesdays 5, 12, 19, 26; a Saturday in 2027: 4, 11, 18, 25.
    assert_eq!(day("new-york", 2026, None, FIRST), Some(date(2026, 5, 26)));
    assert_eq!(day("new-york", 2027, None, FIRST), Some(date(2027, 5, 25)));
}

/// R.C. 5715.19(A)(1), read as quoted in a bill: March 31 of the next year.
#[test]
fn ohio_takes_complaints_to_march_31_of_the_next_year() {
    assert_eq!(day("ohio", 2025, None, FIRST), Some(date(2026, 3, 31))); // a Tuesday
    assert_eq!(day("ohio", 2026, None, FIRST), Some(date(2027, 3, 31))); // a Wednesday
}

/// F.S. 194.011(3)(d), second-hand: 25 days after mailing.
#[test]
fn florida_counts_twenty_five_days() {
    // August 14 + 25: 17 days to the 31st, then 8.
    for year in [2026, 2027] {
        let found = deadline("florida", &format!("tax year {year}\nnotice {year}-08-14"), FIRST);
        assert_eq!(found.day(), Some(date(year, 9, 8))); // a Tuesday, a Wednesday
        assert!(!found.is_certain());
        assert_eq!(day("florida", year, None, FIRST), None);
    }
}

/// O.C.G.A. 48-5-306, 48-5-311, second-hand: 45 days.
#[test]
fn georgia_counts_forty_five_days() {
    // April 24 + 45: 6 days to the 30th, 31 of May, then 8.
    for year in [2026, 2027] {
        assert_eq!(day("georgia", year, Some(date(year, 4, 24)), FIRST), Some(date(year, 6, 8)));
    }
}

/// N.J.S.A. 54:3-21, its opening from memory: April 1, or 45 days after a notice. 54:51A-7, read: three years more.
#[test]
fn new_jersey_counts_to_april_1_or_forty_five_days() {
    for year in [2026, 2027] {
        // March 20 + 45: 11 days to the 31st, 30 of April, then 4. February 1 + 45: 27 to the 28th, then March 18.
        assert_eq!(day("new-jersey", year, Some(date(year, 3, 20)), FIRST), Some(date(year, 5, 4)));
        assert_eq!(day("new-jersey", year, Some(date(year, 2, 1)), FIRST), Some(date(year, 4, 1)));
        let found = deadline("new-jersey", &format!("tax year {year}\nnotice {year}-03-20"), FIRST);
        assert!(!found.is_certain());
    }
    let past = deadline("new-jersey", "tax year 2026", "past years");
    assert_eq!(past.in_words(), Some("the tax year and the three after it"));
}

/// Va. Code 58.1-3980(A), 58.1-3981(C), read: three years from the last day of the tax year.
#[test]
fn virginia_corrects_for_three_years() {
    assert_eq!(day("virginia", 2026, None, FIRST), None);
    assert_eq!(day("virginia", 2026, None, "past years"), Some(date(2029, 12, 31))); // a Monday
    let found = deadline("virginia", "tax year 2025", "past years");
    assert_eq!(found.day(), Some(date(2028, 12, 31))); // a Sunday, after a leap day
    assert!(found.asks().join(" ").contains("Friday, December 29, 2028 is safe either way"));
}

/// MCL 211.53b, read: the Tuesdays after the third Monday of July and the second of December.
#[test]
fn michigan_boards_meet_on_two_tuesdays() {
    for (year, july, december) in [
        (2026, 21, 15), // Mondays of July 6, 13, 20; of December 7, 14
        (2027, 20, 14), // Mondays of July 5, 12, 19; of December 6, 13
    ] {
        let on = |key| day("michigan", year, None, key);
        assert_eq!(on("qualified error, July"), Some(date(year, 7, july)));
        assert_eq!(on("qualified error, December"), Some(date(year, 12, december)));
        assert_eq!(on("second appeal"), Some(date(year, 7, 31)));
        assert_eq!(on(FIRST), None);
    }
}

#[test]
fn what_was_not_read_is_a_question() {
    for (place, key) in [
        ("florida", FIRST),
        ("georgia", FIRST),
        ("new-jersey", FIRST),
        ("virginia", FIRST),
        ("michigan", FIRST),
        ("michigan", "second appeal"),
        ("ohio", "other correction"),
        ("washington", "other correction"),
        ("texas", "affidavit"),
        ("texas", "unequal appraisal"),
        ("texas", "cap without a homestead"),
    ] {
        let found = deadline(place, "tax year 2026\nnotice 2026-04-20", key);
        assert!(!found.is_certain(), "{place}: {key}");
    }
}

#[test]
fn a_way_to_a_correction_is_listed_for_the_errors_it_may_correct() {
    let worth = worth_of("record 1,500 sq ft\nplace new-york\ntax year 2026").unwrap();
    let keys = |class| {
        let routes = worth.dates().routes(&[class]);
        routes.iter().map(|route| route.rule().key().to_owned()).collect::<Vec<_>>()
    };
    // RPTL 550(2), 554, read: what was copied or added up incorrectly; not a wrong description.
    assert_eq!(keys(CauseClass::Typed), [FIRST, "other correction"]);
    assert_eq!(keys(CauseClass::Described), [FIRST]);
    assert_eq!(keys(CauseClass::Measured), [FIRST]);
    // Texas Tax Code 25.25(c): a court and an office's form differ on sizes.
    let past = deadline("texas", "tax year 2026", "past years");
    assert_eq!(past.reach(CauseClass::Typed), Some(Reach::Yes));
    assert_eq!(past.reach(CauseClass::Measured), Some(Reach::Ask));
    let pay = deadline("texas", "tax year 2026", "payment");
    assert_eq!(pay.reach(CauseClass::Typed), None);
}

#[test]
fn elsewhere_no_law_is_assumed() {
    let worth =
        worth_of("record 1,500 sq ft\nplace none\ntax year 2026\nnotice 2026-04-20").unwrap();
    assert!(worth.dates().deadlines().is_empty());
    let reported = text(&worth);
    assert!(reported.contains("the law of no place"), "{reported}");
    assert!(!reported.contains("texas") && !reported.contains("Texas"), "{reported}");
}

/// The classes of what is reported decide which ways are asked about, and what the page says about each.
#[test]
fn the_ways_shown_are_those_for_the_kind_of_what_is_reported() {
    const SHELL: &str = "level \"Ground\"\n  living \"House\"\n    north 30' 2\"\n    east 40' 3\"\n    south 30' 2\"\n    west 40' 3\"\n  garage \"Garage\" start east 40' 3\"\n    north 20' 1\"\n    east 22' 2\"\n    south 20' 1\"\n    west 22' 2\"\n";
    let classes = |lines: &str| {
        let text =
            format!("{lines}\nplace new-york\ntax year 2026\nvalue market $300,000\n{SHELL}");
        super::whole(&text, None).unwrap().classes().to_vec()
    };
    // The record says that it counts the garage: described. Together with it the house has 1,657 sq ft.
    assert!(classes("record 1,670 sq ft counting \"Garage\"").contains(&CauseClass::Described));
    // 30 by 40 is 1,200; with two digits swapped 2,100: typed.
    assert!(classes("record 2,100 sq ft").contains(&CauseClass::Typed));
    // With the garage, 30 by 40 and 20 by 22 are 1,640; a zero too many: typed as well as described.
    let text = format!(
        "record 16,400 sq ft counting \"Garage\"\nplace new-york\ntax year 2026\nvalue market $300,000\n{SHELL}"
    );
    let told = super::text(&super::whole(&text, None).unwrap());
    assert!(told.contains("described in another way (what counts"), "{told}");
    // RPTL 550(2), 554, read: a wrong description is not covered here; the complaint covers it.
    assert!(
        told.contains("554) | typed or added: covers this; described: does not cover this"),
        "{told}"
    );
    assert!(told.contains("(512(1), 512(1-a), 524(1)) | covers this\n"), "{told}");
}

/// An amount is printed with the sign that was typed, as is every amount computed from it; without one if none was
/// typed.
#[test]
fn money_keeps_the_sign_that_was_typed() {
    // 1,500 on the record, 1,200 measured: 200,000 × 300 ÷ 1,500 is 40,000; 400,000 ÷ 1,600 is 250 a square foot.
    for (sign, place, shown) in [
        ("€", "none", "€"),
        ("£", "none", "£"),
        ("$", "none", "$"),
        ("", "none", ""),
        ("", "texas", "$"),
    ] {
        let lines = format!(
            "record 1,500 sq ft\nplace {place}\nvalue market {sign}300,000 assessed {sign}300,000 improvement {sign}200,000\ntax rate 2 per {sign}100\ncomparable \"One\" 1,600 sq ft sold {sign}400,000 on 2026-01-05"
        );
        let told = text(&worth_of(&lines).unwrap());
        assert!(told.contains(&format!(" {shown}40,000")), "{sign} {place}: {told}");
        assert!(told.contains(&format!("2 per {shown}100")), "{sign} {place}: {told}");
        for other in ["$", "€", "£"].into_iter().filter(|other| *other != shown) {
            assert!(!told.contains(other), "{sign} {place}, {other}: {told}");
        }
    }
}

#[test]
fn sums_in_two_currencies_are_an_error() {
    let file = "record 1,500 sq ft\nvalue market €300,000\nlast year assessed $280,000\n";
    let faults = fairfoot::read("two.sides", file).unwrap_err().to_string();
    assert!(faults.contains("this sum has $, another one €"), "{faults}");
}
