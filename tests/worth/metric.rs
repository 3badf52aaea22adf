//! A house in meters where no American law is meant: square meters first, money and paper as typed.

use fairfoot::pages::Paper;
use fairfoot::report::Look;
use fairfoot::{Reconciliation, Settings, Weights};

/// 30 ft is 9.144 m and 40 ft is 12.192 m, exactly: 1,200 sq ft, or 111.48 sq m. 131 sq m are 1,410.07 sq ft.
const HOUSE: &str = "place none\nunits meters\nrecord 131 sq m\nvalue market €300,000 assessed €300,000 improvement €262,000\n\
    level \"Ground floor\"\n  living \"House\"\n    north 9.144 m\n    east 12.192 m\n    south 9.144 m\n    west 12.192 m\n";

fn reconciled(text: &str) -> Reconciliation {
    let house = fairfoot::read("metric.sides", text).unwrap_or_else(|faults| panic!("{faults}"));
    let areas = house.areas(&Settings::default()).unwrap();
    areas.reconcile(&Weights::default()).unwrap()
}

#[test]
fn square_meters_come_first() {
    let all = reconciled(HOUSE);
    let told = all.report().text(Look { width: 100, ..Look::default() }).replace('\n', " ");
    // 131.0 less 111.5 is 19.5; 1,410 less 1,200 is 210; 210.07 ÷ 1,200 is 17.5%.
    let sentence = "Record 131 sq m (1,410 sq ft). Measured 111.5 sq m (1,200 sq ft). The record is 19.5 sq m (210 sq ft) larger: 17.5% of the measured area.";
    assert!(told.contains(sentence), "{told}");
    let row = told.split("In square meters").nth(1).unwrap();
    assert!(row.trim_start().starts_with("111.5 sq m"), "{row}");
}

#[test]
fn nothing_american_is_assumed() {
    let all = reconciled(HOUSE);
    let worth = all.worth(&fairfoot::value::AsOf::default()).unwrap();
    let told = super::text(&worth);
    // 262,000 × 210 ÷ 1,410 is 39,021.28.
    assert!(told.contains("€262,000 × 210 ÷ 1,410 | €39,021"), "{told}");
    assert!(told.contains("record | 131.0 sq m (1,410 sq ft)"), "{told}");
    for word in ["$", "Texas", "homestead", "1,925 sq ft"] {
        assert!(!told.contains(word), "{word}: {told}");
    }
    assert_eq!(worth.currency().sign(), "€");
    assert_eq!(Paper::usual_for(all.house()), Paper::A4);
}

#[test]
fn a_file_in_feet_keeps_square_feet_first() {
    let feet =
        HOUSE.replace("9.144 m", "30'").replace("12.192 m", "40'").replace("units meters\n", "");
    let all = reconciled(&feet);
    let told = all.report().text(Look { width: 100, ..Look::default() }).replace('\n', " ");
    assert!(told.contains("Record 1,410 sq ft (131 sq m). Measured 1,200 sq ft."), "{told}");
    assert!(!told.contains("In square meters"), "{told}");
}
