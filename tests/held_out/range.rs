//! The range of the whole-foot area, and the widest range.

use fairfoot::Settings;

use fairfoot::areas::Range;

use super::twin::{self, Exact, random_house};
use super::walks::{areas, exact, fraction, read_house, sides_file};

fn pair(range: Option<Range>) -> Option<(Exact, Exact)> {
    range.map(|range| (exact(range.low), exact(range.high)))
}

#[test]
fn the_range_and_the_widest_are_those_found_by_listing_every_outline() {
    let reach = fraction(15, 100);
    let mut stated = 0;
    for seed in 0..1_500 {
        for walls in [random_house::house(seed), random_house::with_slack(seed)] {
            let house = read_house(&sides_file("", &walls));
            let ours = areas(&house, &Settings::default());
            let (range, widest) = (pair(ours.gross().range()), pair(ours.gross().widest()));
            assert_eq!(range, twin::range(&walls, &reach), "house {seed}");
            assert_eq!(widest, twin::widest(&walls), "house {seed}");
            stated += u32::from(range.is_some());
        }
    }
    assert!(stated > 2_500, "the range is stated for nearly every house: {stated} of 3,000");
}

#[test]
fn another_reach_gives_another_range() {
    for (inches, reach) in [(1, fraction(1, 12)), (3, fraction(3, 12)), (6, fraction(6, 12))] {
        for seed in 0..400 {
            let walls = random_house::house(seed);
            let house = read_house(&sides_file("", &walls));
            let length: fairfoot::units::Length = format!("{inches}\"").parse().unwrap();
            let settings = Settings { reading: length, ..Settings::default() };
            let ours = areas(&house, &settings);
            assert_eq!(pair(ours.gross().range()), twin::range(&walls, &reach), "house {seed}");
        }
    }
}

#[test]
fn the_whole_foot_area_lies_in_its_range() {
    for seed in 0..3_000 {
        let walls = random_house::with_slack(seed);
        let house = read_house(&sides_file("", &walls));
        let ours = areas(&house, &Settings::default());
        if let Some(range) = ours.gross().range() {
            let whole = ours.gross().whole_foot();
            assert!(range.low <= whole && whole <= range.high, "house {seed}");
        }
    }
}
