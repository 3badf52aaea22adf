//! What a wrong size was worth in tax, as a county published it.

use fairfoot::value::AsOf;
use fairfoot::{Settings, Weights};

/// Orange County, North Carolina, board papers of 2017 (documents 49609 and 49656, read): a record of 1,784 sq ft,
/// 1,336 sq ft in truth; value $258,413 → $237,300, a difference of $21,113; rates 0.016104 for 2014 to 2016,
/// 0.015804 for 2013, 0.015404 for 2012; refunds $340.00 three times, $333.67, $325.22, together $1,678.89.
///
/// The value of the house without its land was not in the papers seen. $84,074.98 is 21,113 × 1,784 ÷ 448, to the
/// cent: in proportion it gives the county's difference. So only the steps from that difference to each refund are
/// compared with the county.
#[test]
fn refunds_of_a_county_come_out_to_the_cent() {
    let years = [
        ("1.6104", "$340.00"),
        ("1.6104", "$340.00"),
        ("1.6104", "$340.00"),
        ("1.5804", "$333.67"),
        ("1.5404", "$325.22"),
    ];
    let mut cents: u32 = 0;
    for (rate, refund) in years {
        let found = refund_at(rate);
        assert_eq!(found, refund, "{rate} per $100");
        cents += found.replace(['$', '.'], "").parse::<u32>().unwrap();
    }
    assert_eq!(cents, 167_889);
}

/// The reduction of the tax, in cents, for a house of 33.4 ft by 40 ft: 1,336 sq ft.
fn refund_at(rate: &str) -> String {
    let text = format!(
        "record 1,784 sq ft\nplace none\nvalue market $258,413 assessed $258,413 improvement $84,074.98\n\
         tax rate {rate} per $100\nlevel \"Ground floor\"\n  living \"House\"\n    north 33.4'\n    east 40'\n    south 33.4'\n    west 40'\n"
    );
    let house = fairfoot::read("refund.sides", &text).unwrap_or_else(|faults| panic!("{faults}"));
    let areas = house.areas(&Settings::default()).unwrap();
    let worth = areas.reconcile(&Weights::default()).unwrap().worth(&AsOf::default()).unwrap();
    assert_eq!(worth.gap().unwrap().sq_ft(), 448);
    assert_eq!(worth.ways()[0].amount().whole_text(), "$21,113");
    let outcome = &worth.tax().unwrap().outcomes()[0];
    assert_eq!(outcome.market().whole_text(), "$237,300");
    outcome.less_tax().unwrap().cents_text()
}
