//! From size to value, in proportion and by unit price.

use fairfoot::value::Method;

use super::{HOUSE, text, way, whole, worth_of};

#[test]
fn a_file_without_values_gets_no_value_pages() {
    assert!(worth_of("record 1,300 sq ft\ntax year 2026").is_none());
}

#[test]
fn the_proportion_is_improvement_value_times_gap_over_record() {
    // 300 more than 1,200: a fifth of 1,500. A fifth of 250,000 is 50,000.
    let worth = worth_of("record 1,500 sq ft\nvalue improvement $250,000").unwrap();
    assert_eq!(worth.gap().unwrap().sq_ft(), 300);
    let way = way(&worth, Method::Proportion);
    assert_eq!(way.amount().decimal_text(), "50000");
    assert_eq!(way.working(), "$250,000 × 300 ÷ 1,500");
    assert_eq!(worth.ways().len(), 1, "no comparable, no unit price");
}

#[test]
fn money_that_does_not_divide_evenly_is_rounded_once() {
    // 100,000 × 150 ÷ 1,350 = 11,111.111…; 99,999.99 × 150 ÷ 1,350 = 11,111.11 exactly.
    let worth = worth_of("record 1,350 sq ft\nvalue improvement $100000").unwrap();
    let gives = way(&worth, Method::Proportion).amount();
    assert_eq!(gives.decimal_text(), "11111.111111");
    assert_eq!(gives.whole_text(), "$11,111");
    let worth = worth_of("record 1,350 sq ft\nvalue improvement $99,999.99").unwrap();
    assert_eq!(way(&worth, Method::Proportion).amount().decimal_text(), "11111.11");
    // 50,001 × 1,200 ÷ 2,400 = 25,000.5: halves are rounded away from zero.
    let worth = worth_of("record 2,400 sq ft\nvalue improvement $50,001").unwrap();
    assert_eq!(way(&worth, Method::Proportion).amount().whole(), Some(25_001));
}

#[test]
fn spaces_that_the_record_says_it_counts_are_no_gap() {
    // 20 × 20 of garage: 1,200 + 400 = 1,600 like for like, so that 1,700 has 100 more.
    let garage = "  garage \"Garage\" start east 40'\n    north 20'\n    east 20'\n    south 20'\n    west 20'\n";
    let lines = "value improvement $170,000\nrecord 1,700 sq ft counting \"Garage\"\n";
    let worth = whole(&format!("{lines}{HOUSE}{garage}"), None).unwrap();
    let gap = worth.gap().unwrap();
    assert_eq!((gap.measured(), gap.alike(), gap.sq_ft()), (1_200, 1_600, 100));
    assert_eq!(gap.counted(), ["Garage"]);
    // 170,000 × 100 ÷ 1,700
    assert_eq!(way(&worth, Method::Proportion).amount().decimal_text(), "10000");
    assert!(
        text(&worth)
            .contains("measured with Garage counted, as the record says of itself | 1,600 sq ft")
    );
}

#[test]
fn the_record_s_own_face_is_no_gap() {
    // To the frame 6 in inside brick: 29 × 39 = 1,131; a record of 1,131 there agrees.
    let lines = "veneer 6\"\nvalue improvement $170,000\nrecord 1,131 sq ft measured to frame\n";
    let worth = worth_of(lines).unwrap();
    assert_eq!(worth.gap().unwrap().sq_ft(), 0);
    assert!(worth.ways().is_empty());
    assert!(text(&worth).contains("The two agree"));
}

#[test]
fn a_gap_that_rounding_could_give_is_reported_as_such() {
    // 28' 6" × 42' 6" = 1,211.25; both may go up: 29 × 43 = 1,247.
    let house = |record: u32| {
        let sides = HOUSE.replace("30'", "28' 6\"").replace("40'", "42' 6\"");
        let file = format!("record {record} sq ft\nvalue improvement $200,000\n{sides}");
        text(&whole(&file, None).unwrap())
    };
    assert!(house(1_247).contains("rounding every wall to the foot could give the record"));
    assert!(!house(1_400).contains("rounding every wall"));
}

#[test]
fn a_smaller_record_is_stated_plainly_and_shows_no_saving() {
    let lines = "record 1,100 sq ft\nplace texas\ntax year 2026\nnotice 2026-04-20\nhomestead since 2020\n\
                 value market $250,000 assessed $250,000 improvement $200,000\ntax rate 2 per $100\n\
                 last year assessed $240,000\ncomparable \"A\" 1,150 sq ft sold $230,000 on 2025-09-01";
    let worth = worth_of(lines).unwrap();
    assert_eq!(worth.gap().unwrap().sq_ft(), -100);
    assert!(worth.ways().is_empty() && worth.tax().is_none() && worth.cap().is_none());
    assert!(worth.checklist().is_empty());
    assert!(worth.dates().deadlines().iter().all(|deadline| deadline.correct_below().is_none()));
    let reported = text(&worth);
    assert!(reported.contains("the record has less by | 100 sq ft"), "{reported}");
    assert!(reported.contains("may raise the value and with it the tax"), "{reported}");
    for saving in ["tax saved", "saving", "Would it change the tax", "in proportion", "unit price"]
    {
        assert!(!reported.contains(saving), "{saving}: {reported}");
    }
}

#[test]
fn without_a_record_there_is_nothing_to_value() {
    let worth = worth_of("value market $250,000 improvement $200,000").unwrap();
    assert!(worth.gap().is_none() && worth.ways().is_empty());
    assert!(text(&worth).contains("There is no difference to put a value on"));
}
