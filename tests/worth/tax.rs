//! Whether the tax changes: the cap, the value below which the tax changes, the difference.

use fairfoot::value::{Method, TaxOutcome, Worth};

use super::{text, worth_of};

/// 300 sq ft too many: a fifth of the improvement value.
const GAP: &str = "record 1,500 sq ft\nplace texas\ntax year 2026\nhomestead since 2021\n";

fn outcome(worth: &Worth, method: Method) -> &TaxOutcome {
    let outcomes = worth.tax().expect("taxed values").outcomes();
    outcomes.iter().find(|outcome| outcome.method() == method).expect("the way")
}

#[test]
fn a_capped_value_rises_by_a_tenth_at_most_and_new_improvements() {
    // 23.23, read: 280,000 + 28,000 = 308,000; with 15,000 of new improvements 323,000.
    let most = |new: &str| {
        let worth = worth_of(&format!(
            "{GAP}last year assessed $280,000\nvalue market $400,000 improvement $310,000{new}"
        ))
        .unwrap();
        (worth.cap().unwrap().most().decimal_text(), worth.tax().unwrap().assessed().decimal_text())
    };
    assert_eq!(most(""), ("308000".to_owned(), "308000".to_owned()));
    assert_eq!(most(" new $15,000"), ("323000".to_owned(), "323000".to_owned()));
}

#[test]
fn below_the_cap_the_market_value_is_taxed() {
    // The lesser of the two: 304,000 under 308,000.
    let lines =
        format!("{GAP}last year assessed $280,000\nvalue market $304,000 improvement $200,000");
    let worth = worth_of(&lines).unwrap();
    let tax = worth.tax().unwrap();
    assert!(tax.is_assessed_computed());
    assert_eq!(tax.assessed().decimal_text(), "304000");
}

#[test]
fn the_cap_begins_the_year_after_the_homestead() {
    // 23.23, read: from January 1 of the year after the first one that qualifies.
    let capped = |since: u16| {
        let lines = GAP.replace("2021", &since.to_string());
        let lines = format!(
            "{lines}last year assessed $280,000\nvalue market $400,000 improvement $310,000"
        );
        worth_of(&lines).unwrap().cap().is_some()
    };
    assert_eq!((capped(2025), capped(2026)), (true, false));
    let without_place = GAP.replace("place texas\n", "");
    let lines = format!("{without_place}last year assessed $280,000\nvalue market $400,000");
    assert!(worth_of(&lines).unwrap().cap().is_none(), "the cap is a rule of the place");
}

#[test]
fn a_market_value_still_above_the_taxed_value_changes_no_tax() {
    // A fifth of 200,000 is 40,000: 412,000 − 40,000 = 372,000, and 371,000 is taxed.
    let lines = format!(
        "{GAP}value market $412,000 assessed $371,000 improvement $200,000\ntax rate 2 per $100"
    );
    let worth = worth_of(&lines).unwrap();
    let outcome = outcome(&worth, Method::Proportion);
    assert_eq!(outcome.market().decimal_text(), "372000");
    assert!(!outcome.reaches());
    assert_eq!(outcome.less_tax().unwrap().decimal_text(), "0");
    let reported = text(&worth);
    assert!(reported.contains("falls below $371,000, $41,000 lower than now"), "{reported}");
    assert!(reported.contains("this year's tax stays as it is"), "{reported}");
    assert!(!reported.contains("tax saved"), "{reported}");
}

#[test]
fn below_the_taxed_value_only_the_difference_changes_the_tax() {
    // 412,000 − 50,000 = 362,000; 371,000 − 362,000 = 9,000; at 2.14 per 100: 192.60.
    let lines = format!(
        "{GAP}value market $412,000 assessed $371,000 improvement $250,000\ntax rate 2.14 per $100"
    );
    let worth = worth_of(&lines).unwrap();
    let outcome = outcome(&worth, Method::Proportion);
    assert!(outcome.reaches());
    assert_eq!(outcome.less_tax().unwrap().decimal_text(), "192.6");
    assert!(text(&worth).contains("estimated tax saved, at 2.14 per $100 | $193"));
    assert!(text(&worth).contains("Rates are set later in the year"));
    // The same as 21.4 per $1,000.
    let lines = lines.replace("2.14 per $100", "21.4 per $1,000");
    let worth = worth_of(&lines).unwrap();
    assert_eq!(worth.tax().unwrap().outcomes()[0].less_tax().unwrap().decimal_text(), "192.6");
}

#[test]
fn an_exemption_applies_to_the_unit_that_gives_it() {
    // School: 140,000 − 130,000 leaves 10,000 to tax now and nothing at 120,000: 10,000 at 1 is 100.
    // County: 140,000 − 120,000 = 20,000 at 0.5 is 100.
    let values = "value market $140,000 assessed $140,000 improvement $100,000\nexemption $130,000 \"school\"\n";
    let rates = "tax rate 1 per $100 \"school\"\ntax rate 0.5 per $100 \"county\"";
    let worth = worth_of(&format!("{GAP}{values}{rates}")).unwrap();
    assert_eq!(outcome(&worth, Method::Proportion).less_tax().unwrap().decimal_text(), "200");
    // With one rate for all, 1.5 on 10,000, and a sentence about what that means.
    let worth = worth_of(&format!("{GAP}{values}tax rate 1.5 per $100")).unwrap();
    assert_eq!(outcome(&worth, Method::Proportion).less_tax().unwrap().decimal_text(), "150");
    assert!(text(&worth).contains("school: deducted for every rate here"));
}

#[test]
fn exemptions_that_leave_nothing_to_tax_leave_no_difference() {
    let values = "value market $140,000 assessed $140,000 improvement $100,000\nexemption $100,000 \"a\"\nexemption $60,000 \"b\"\n";
    let worth = worth_of(&format!("{GAP}{values}tax rate 2 per $100")).unwrap();
    assert_eq!(outcome(&worth, Method::Proportion).less_tax().unwrap().decimal_text(), "0");
}

#[test]
fn a_value_is_never_below_nothing() {
    let sale = "comparable \"A\" 1,200 sq ft sold $1,200,000 on 2025-08-14";
    let worth = worth_of(&format!("{GAP}value market $90,000 assessed $90,000\n{sale}")).unwrap();
    // 1,000 a sq ft × 300 is more than all of it.
    assert_eq!(outcome(&worth, Method::UnitPrice).market().decimal_text(), "0");
}

#[test]
fn more_than_the_cap_is_a_question() {
    // 337,000 and a tenth is 370,700; the notice has 371,000.
    let lines = format!(
        "{GAP}last year assessed $337,000\nvalue market $412,000 assessed $371,000 improvement $200,000"
    );
    let worth = worth_of(&lines).unwrap();
    assert_eq!(worth.cap().unwrap().most().decimal_text(), "370700");
    assert!(text(&worth).contains("the notice has $300 more than that: ask the appraisal office"));
}

#[test]
fn a_missing_taxed_value_is_not_guessed() {
    let worth = worth_of("record 1,500 sq ft\nvalue market $412,000 improvement $200,000").unwrap();
    assert!(worth.tax().is_none());
    assert!(text(&worth).contains("does not say what the tax is paid on"));
}
