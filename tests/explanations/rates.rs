//! How often the true reason is found.

use fairfoot::Settings;

use super::office::{House, Random, Record, something_else, with_departures};

/// Each explanation's labels, sorted, with its support; and the support of something else.
pub(crate) fn explained(house: &House, record: &Record) -> (Vec<(Vec<String>, f64)>, f64) {
    let text = house.file(record.sq_ft);
    let sound = fairfoot::read("simulated.sides", text.clone())
        .unwrap_or_else(|faults| panic!("{text}\n{faults}"));
    let settings = Settings::default();
    let areas = sound.areas(&settings).unwrap();
    let reconciliation = areas.reconcile(&fairfoot::Weights::default()).unwrap();
    let explanations = reconciliation.figures()[0].explanations();
    let one = |explanation: &fairfoot::reconcile::Explanation| {
        let mut labels = explanation.departures().to_vec();
        labels.sort();
        (labels, explanation.support())
    };
    (explanations.list().iter().map(one).collect(), explanations.something_else())
}

const HOUSES: u64 = 500;

/// Of so many records the share whose true labels are among the first few.
fn found(count: usize, first: usize) -> f64 {
    let mut right = 0_u32;
    for seed in 0..HOUSES {
        let mut random = Random::new(seed + 10_000 * count as u64);
        let house = House::random(&mut random);
        let record = with_departures(&house, count, &mut random);
        let (list, _) = explained(&house, &record);
        let truth = record.labels.as_ref().unwrap();
        right += u32::from(list.iter().take(first).any(|(labels, _)| labels == truth));
    }
    f64::from(right) / HOUSES as f64
}

#[test]
fn with_no_departure_none_is_on_top_in_eight_of_ten() {
    let rate = found(0, 1);
    println!("no departure: on top {rate:.3}");
    assert!(rate >= 0.80, "{rate}");
}

#[test]
fn with_one_departure_the_true_one_is_among_the_first_five_in_eight_of_ten() {
    let (top, five) = (found(1, 1), found(1, 5));
    println!("one departure: on top {top:.3}, among the first five {five:.3}");
    assert!(five >= 0.80, "{five}");
}

#[test]
fn with_two_departures_the_true_ones_are_among_the_first_five_in_half() {
    let (top, five) = (found(2, 1), found(2, 5));
    println!("two departures: on top {top:.3}, among the first five {five:.3}");
    assert!(five >= 0.50, "{five}");
}

#[test]
fn of_figures_drawn_at_random_something_else_has_most_support_in_six_of_ten() {
    let mut most = 0_u32;
    for seed in 0..HOUSES {
        let mut random = Random::new(seed + 900_000);
        let house = House::random(&mut random);
        let record = something_else(&house, &mut random);
        let (list, otherwise) = explained(&house, &record);
        most += u32::from(list.first().is_none_or(|(_, support)| otherwise > *support));
    }
    let rate = f64::from(most) / HOUSES as f64;
    println!("something else: has most support {rate:.3}");
    assert!(rate >= 0.60, "{rate}");
}
