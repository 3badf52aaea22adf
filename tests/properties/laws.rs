//! Laws of areas, ranges and bridges.

use fairfoot::{Areas, House, Settings};

use fairfoot::units::Area;
use proptest::prelude::*;

use super::houses::{
    Side, area_by_strips, backwards, coarse, file, from_corner, length, mirrored, towers, turned,
};

fn read_house(text: &str) -> House {
    fairfoot::read("house.sides", text).unwrap_or_else(|faults| panic!("{text}\n{faults}"))
}

fn areas(sides: &[Side]) -> Areas {
    read_house(&file("", sides)).areas(&Settings::default()).unwrap()
}

/// All results for a house that do not depend on where the walk begins.
fn figures(
    sides: &[Side],
) -> (Area, Option<fairfoot::areas::Range>, Option<fairfoot::areas::Range>) {
    let areas = areas(sides);
    (areas.gross().as_measured(), areas.gross().range(), areas.gross().widest())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(1_000))]

    #[test]
    fn the_area_is_that_of_its_strips(sides in towers()) {
        // A sixteenth of an inch is 1,587,500 nm.
        let halves = 2 * area_by_strips(&sides) * 1_587_500 * 1_587_500;
        prop_assert_eq!(figures(&sides).0, Area::from_half_nm2(halves));
    }

    #[test]
    fn the_first_corner_and_the_direction_do_not_matter(sides in towers(), first in 0_usize..20) {
        let home = figures(&sides);
        prop_assert_eq!(figures(&from_corner(&sides, first)), home);
        prop_assert_eq!(figures(&backwards(&sides)), home);
        let (ours, other) = (areas(&sides), areas(&backwards(&from_corner(&sides, first))));
        prop_assert_eq!(ours.gross().tenth_foot(), other.gross().tenth_foot());
        prop_assert_eq!(ours.gross().whole_foot(), other.gross().whole_foot());
        prop_assert_eq!(ours.equally_near_whole_foot(), other.equally_near_whole_foot());
    }

    #[test]
    fn a_quarter_turn_and_a_mirror_change_nothing(
        sides in towers(),
        quarters in 0_usize..4,
        mirror in any::<bool>(),
    ) {
        let sides = coarse(&sides);
        prop_assume!(sides.iter().all(|side| side.1 > 0));
        let seen = turned(&if mirror { mirrored(&sides) } else { sides.clone() }, quarters);
        let (ours, other) = (areas(&sides), areas(&seen));
        prop_assert_eq!(figures(&seen), figures(&sides));
        prop_assert_eq!(ours.gross().tenth_foot(), other.gross().tenth_foot());
        prop_assert_eq!(ours.gross().whole_foot(), other.gross().whole_foot());
    }

    #[test]
    fn moving_a_house_on_its_level_changes_nothing(sides in towers(), east in 1_i64..9_000) {
        let moved = file("", &sides)
            .replace("living \"House\"", &format!("living \"House\" start west {}", length(east)));
        let ours = areas(&sides);
        let other = read_house(&moved).areas(&Settings::default()).unwrap();
        prop_assert_eq!(ours.gross().as_measured(), other.gross().as_measured());
        prop_assert_eq!(ours.gross().whole_foot(), other.gross().whole_foot());
        prop_assert_eq!(ours.gross().range(), other.gross().range());
    }

    #[test]
    fn splitting_a_side_keeps_the_exact_area(sides in towers(), which in 0_usize..20, part in 1_i64..100) {
        let i = which % sides.len();
        let first = sides[i].1 * part / 100;
        prop_assume!(first > 0);
        let mut split = sides.clone();
        split.splice(i..=i, [(sides[i].0, first), (sides[i].0, sides[i].1 - first)]);
        prop_assert_eq!(areas(&split).gross().as_measured(), areas(&sides).gross().as_measured());
    }

    #[test]
    fn a_rounded_figure_lies_within_its_range_and_the_range_within_the_widest(sides in towers()) {
        let areas = areas(&sides);
        let whole = areas.gross().whole_foot();
        if let Some(range) = areas.gross().range() {
            prop_assert!(range.low <= whole && whole <= range.high);
            let widest = areas.gross().widest().expect("what the range allows, the widest does too");
            prop_assert!(widest.low <= range.low && range.high <= widest.high);
        }
    }

    #[test]
    fn tenths_are_never_far_from_as_measured(sides in towers()) {
        // Each of n sides is off by at most n tenths of a foot, however closing falls.
        let areas = areas(&sides);
        let apart = (areas.gross().tenth_foot() - areas.gross().as_measured()).sq_ft().abs();
        let round: f64 = sides.iter().map(|&(_, run)| length(run).feet()).sum();
        prop_assert!(apart <= round * 0.1 * f64::from(u32::try_from(sides.len()).unwrap()));
    }

    #[test]
    fn a_veneer_widens_by_its_perimeter_and_four_corners(sides in towers(), veneer in 1_i64..90) {
        let text = file(&format!("faces frame\nveneer {}", length(veneer)), &sides);
        let Ok(areas) = read_house(&text).areas(&Settings::default()) else { return Ok(()) };
        let space = &areas.spaces()[0];
        let perimeter: i128 = sides.iter().map(|&(_, run)| i128::from(run)).sum();
        let wider = i128::from(veneer) * perimeter + 4 * i128::from(veneer).pow(2);
        let unit = 2 * 1_587_500_i128.pow(2);
        prop_assert_eq!(space.outside().area() - space.as_measured(), Area::from_half_nm2(wider * unit));
    }

    #[test]
    fn there_and_back_between_faces_is_home(sides in towers(), veneer in 1_i64..90) {
        // For a house measured outside and a plan's figure at the frame, the face line is the change of area from
        // removing the veneer.
        let (t, p) = (i128::from(veneer), sides.iter().map(|&(_, run)| i128::from(run)).sum::<i128>());
        let head = format!("veneer {}\nplan 1,000 sq ft measured to frame", length(veneer));
        let checked = read_house(&file(&head, &sides));
        let settings = Settings::default();
        let areas = checked.areas(&settings).unwrap();
        let measured = areas.gross().as_measured();
        let Ok(reconciliation) = areas.reconcile(&fairfoot::Weights::default()) else { return Ok(()) };
        let face = reconciliation.figures()[0].lines()[0].area().sq_ft();
        let exact = Area::from_half_nm2((-t * p + 4 * t * t) * 2 * 1_587_500_i128.pow(2)).sq_ft();
        // Both ends of the line are rounded to tenths of a foot.
        let round: f64 = sides.iter().map(|&(_, run)| length(run).feet()).sum();
        prop_assert!((face - exact).abs() <= round * 0.2 * f64::from(u32::try_from(sides.len()).unwrap()), "{face} {exact} {measured:?}");
    }

    #[test]
    fn the_pieces_of_an_outline_add_up_and_are_as_few_as_possible(sides in towers(), quarters in 0_usize..4) {
        let areas = areas(&turned(&sides, quarters));
        for outline in [areas.spaces()[0].tenth_foot(), areas.spaces()[0].whole_foot()] {
            let pieces = outline.cuts().expect("right angles can be cut");
            prop_assert_eq!(pieces.iter().map(fairfoot::geometry::Cut::area).sum::<Area>(), outline.area());
            // A right-angled outline of n sides has n/2 − 2 inward corners, and each asks for at most one more piece.
            prop_assert!(pieces.len() < (sides.len() / 2).max(2), "{}", pieces.len());
        }
    }

    #[test]
    fn the_bridge_adds_up_exactly(
        sides in towers(),
        recorded in proptest::collection::vec(-3_i64..4, 24),
        figure in 100_i64..9_000,
        frame in any::<bool>(),
    ) {
        // Recorded lengths that close: each side's whole feet, changed in pairs across the house.
        let face = if frame { " measured to frame" } else { "" };
        let head = format!("veneer 4 5/8\"\nrecord {figure}.37 sq ft{face} counting \"Porch\"\nlisting {figure} sq ft");
        let mut text = file(&head, &sides);
        let n = sides.len();
        let side = format!("{} {}\n", super::houses::WORDS[sides[n - 1].0], length(sides[n - 1].1));
        let change = recorded[0];
        let noted = side.trim_end().to_owned() + &format!(" recorded {}'\n", (sides[n - 1].1 / 192 + change).max(1));
        text = text.replace(&side, &noted);
        text.push_str("porch \"Porch\" start west 100'\nnorth 8' 3\"\neast 12' 5\"\nsouth 8' 3\"\nwest 12' 5\"\n");
        let checked = read_house(&text);
        let settings = Settings::default();
        let areas = checked.areas(&settings).unwrap();
        let Ok(reconciliation) = areas.reconcile(&fairfoot::Weights::default()) else { return Ok(()) };
        for figure in reconciliation.figures() {
            let sum: Area = figure.lines().iter().map(fairfoot::reconcile::Line::area).sum();
            prop_assert_eq!(sum, figure.gap());
            prop_assert_eq!(figure.gap(), figure.area() - figure.measured());
        }
        let report = reconciliation.report().json();
        for figure in &report.figures {
            let micro = |text: &str| -> i128 {
                let (sign, digits) = text.strip_prefix('-').map_or((1, text), |digits| (-1, digits));
                let (whole, decimals) = digits.split_once('.').unwrap_or((digits, ""));
                sign * format!("{whole}{decimals:0<6}").parse::<i128>().unwrap()
            };
            let sum: i128 = figure.bridge.iter().map(|line| micro(&line.sq_ft)).sum();
            prop_assert_eq!(sum, micro(&figure.gap));
            prop_assert_eq!(micro(&figure.sq_ft.to_string()) - micro(&figure.start), sum);
        }
    }
}

/// The pieces and the total that `--why` prints of each outline, in millionths.
fn printed_sums(report: &str) -> Vec<(i64, i64)> {
    let millionths = |line: &str| -> Option<i64> {
        let figure = line.split_whitespace().last()?.replace(',', "");
        let (whole, rest) = figure.split_once('.').unwrap_or((&figure, ""));
        let sign = if whole.starts_with('-') { -1 } else { 1 };
        let rest: i64 = format!("{rest:0<6}").parse().ok()?;
        Some(whole.parse::<i64>().ok()? * 1_000_000 + sign * rest)
    };
    let mut sums = Vec::new();
    let mut sum = 0;
    for line in report.lines() {
        let line = line.trim();
        if line.starts_with("with a calculator") {
            sum = 0;
        } else if line.starts_with("total ") {
            sums.extend(millionths(line).map(|total| (sum, total)));
        } else if line.split_once(" = ").is_some_and(|(letter, _)| letter.len() <= 2) {
            sum += millionths(line).unwrap_or(0);
        }
    }
    sums
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn the_pieces_of_a_curved_house_add_up_to_the_printed_total(
        high in 96_u32..960, wide in 96_u32..960, rise in 1_u32..400, outward in proptest::bool::ANY
    ) {
        let way = if outward { "east" } else { "west" };
        let rise = rise.min(wide / 3).min(high / 3);
        let text = format!(
            "record 900 sq ft\nlevel \"G\"\nliving \"House\"\nwest {wide}\"\nsouth {high}\"\neast {wide}\"\narc north {high}\" rise {rise}\" {way}\n"
        );
        let Ok(house) = fairfoot::read("curved.sides", text.as_str()) else { return Ok(()) };
        let Ok(areas) = house.areas(&Settings::default()) else { return Ok(()) };
        let result = areas.reconcile(&fairfoot::Weights::default()).unwrap();
        let look = fairfoot::report::Look { why: true, ..Default::default() };
        let report = result.report().text(look);
        let sums = printed_sums(&report);
        prop_assert!(!sums.is_empty(), "{}", report);
        for (sum, total) in sums {
            prop_assert_eq!(sum, total, "{}", &report);
        }
    }
}
