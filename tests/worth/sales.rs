//! Comparables: near in size by the record and by the tape, and their price per square foot.

use fairfoot::Settings;
use fairfoot::value::AsOf;
use fairfoot::value::Method;

use super::{HOUSE, way, worth_of};

fn sale(name: &str, sq_ft: u32, sold: u32) -> String {
    format!("comparable \"{name}\" {sq_ft} sq ft sold ${sold} on 2025-08-14\n")
}

#[test]
fn near_is_within_ten_percent_ends_included() {
    // Of 1,200 measured: 1,080 to 1,320; of 1,500 recorded: 1,350 to 1,650. Common practice.
    let sizes = [1_079, 1_080, 1_320, 1_321, 1_349, 1_350, 1_650, 1_651];
    let sales: String = sizes.iter().map(|size| sale(&size.to_string(), *size, 200_000)).collect();
    let worth = worth_of(&format!("record 1,500 sq ft\n{sales}")).unwrap();
    let near = |of: fn(&fairfoot::value::Comparable) -> Option<bool>| -> Vec<i64> {
        let list = worth.comparables().list().iter();
        list.filter(|one| of(one) == Some(true)).map(|one| one.sq_ft()).collect()
    };
    assert_eq!(near(|one| one.is_near_measured()), [1_080, 1_320]);
    assert_eq!(near(|one| one.is_near_record()), [1_350, 1_650]);
}

#[test]
fn a_recorded_size_is_compared_with_the_record() {
    let lines = "record 1,500 sq ft\ncomparable \"A\" 1,250 sq ft recorded 1,400 sq ft sold $250,000 on 2025-08-14";
    let worth = worth_of(lines).unwrap();
    let one = &worth.comparables().list()[0];
    assert_eq!((one.is_near_record(), one.is_near_measured()), (Some(true), Some(true)));
    assert_eq!(one.unit_price().decimal_text(), "200"); // 250,000 ÷ 1,250: the size, not the record
}

#[test]
fn the_band_is_a_setting() {
    let text = format!("record 1,500 sq ft\n{}{HOUSE}", sale("A", 1_400, 280_000));
    let checked = fairfoot::read("band.sides", text).unwrap();
    let settings = Settings::default();
    let all = checked.areas(&settings).unwrap().reconcile(&fairfoot::Weights::default()).unwrap();
    // 200 of 1,200 is 16.7 %.
    let near = |band: u8| {
        let worth = all.worth(&AsOf { today: None, band }).unwrap();
        worth.comparables().list()[0].is_near_measured()
    };
    assert_eq!((near(16), near(17)), (Some(false), Some(true)));
}

#[test]
fn the_median_of_three_is_the_middle_one() {
    // 190, 200 and 230 a sq ft; 300 more at 200.
    let sales = [sale("A", 1_200, 276_000), sale("B", 1_100, 209_000), sale("C", 1_300, 260_000)];
    let worth = worth_of(&format!("record 1,500 sq ft\n{}", sales.concat())).unwrap();
    let way = way(&worth, Method::UnitPrice);
    assert_eq!(way.amount().decimal_text(), "60000");
    assert_eq!(way.working(), "$260,000 ÷ 1,300 × 300");
    let (low, high) = way.range().unwrap();
    assert_eq!((low.decimal_text(), high.decimal_text()), ("57000".to_owned(), "69000".to_owned()));
}

#[test]
fn the_median_of_two_is_halfway_and_not_rounded_between() {
    // 250,000 ÷ 1,200 = 208.333…, 240,000 ÷ 1,150 = 208.695652…; halfway 208.514492…
    let sales = [sale("A", 1_200, 250_000), sale("B", 1_150, 240_000)];
    let worth = worth_of(&format!("record 1,500 sq ft\n{}", sales.concat())).unwrap();
    let unit = worth.comparables().unit_price().unwrap();
    assert_eq!(unit.median().decimal_text(), "208.514493");
    let way = way(&worth, Method::UnitPrice);
    // 208.514492753… × 300 = 62,554.347826
    assert_eq!(way.amount().decimal_text(), "62554.347826");
    assert_eq!(way.working(), "($250,000 ÷ 1,200 + $240,000 ÷ 1,150) ÷ 2 × 300");
}

#[test]
fn comparables_not_near_in_size_count_only_if_none_is_near() {
    let near = sale("A", 1_200, 240_000); // 200 a sq ft
    let far = sale("B", 2_400, 360_000); // 150 a sq ft
    let worth = worth_of(&format!("record 1,500 sq ft\n{near}{far}")).unwrap();
    let unit = worth.comparables().unit_price().unwrap();
    assert!(unit.is_of_near_ones());
    assert_eq!((unit.count(), unit.median().decimal_text().as_str()), (1, "200"));
    let worth = worth_of(&format!("record 1,500 sq ft\n{far}")).unwrap();
    let unit = worth.comparables().unit_price().unwrap();
    assert!(!unit.is_of_near_ones());
    assert_eq!(unit.median().decimal_text(), "150");
}
