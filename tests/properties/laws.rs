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

/// How far the area of towers can change when each side is rounded to a step (in sixteenths of an inch) and the walk
/// closed again, in square feet.
///
/// A side is off by its own rounding; each step by which the rounded sides miss moves one side by a step more. The
/// errors of an axis cancel over the walk, so no corner lies off by more than half of them together, and no point of
/// the house can gain more than that across its width.
fn allowed_sq_ft(sides: &[Side], step: f64) -> f64 {
    let of_axis = |axis: usize| {
        let runs = sides.iter().filter(move |side| side.0 % 2 == axis);
        let off = runs.clone().map(|&(way, run)| {
            // What rounds to nothing keeps one step.
            let off = (run as f64 / step).round().max(1.0) * step - run as f64;
            (off.abs(), if way < 2 { off } else { -off })
        });
        let (errors, missed) = off.fold((0.0, 0.0), |sum, off| (sum.0 + off.0, sum.1 + off.1));
        let across: i64 = runs.filter(|side| side.0 < 2).map(|side| side.1).sum();
        let least: i64 = sides.iter().filter(|side| side.0 == axis).map(|side| side.1).sum();
        assert_eq!(across, least, "north and east are what is walked away from the first corner");
        (across as f64, errors + f64::abs(missed))
    };
    let ((high, north), (wide, east)) = (of_axis(0), of_axis(1));
    // A sixteenth of an inch squared is 1/36,864 sq ft.
    (wide * north / 2.0 + (high + north / 2.0) * east / 2.0) / 36_864.0 + 1e-9
}

/// The same walls at the frame: outside towers walked clockwise, with a veneer of so many sixteenths taken away. A side
/// loses it at each end where the house turns away, and gains it where it turns back. `None` if a side vanishes.
fn at_frame(sides: &[Side], veneer: i64) -> Option<Vec<Side>> {
    let n = sides.len();
    let loss = |from: Side, to: Side| if (to.0 + 4 - from.0) % 4 == 1 { veneer } else { -veneer };
    let taped = (0..n).map(|i| {
        let (before, side, after) = (sides[(i + n - 1) % n], sides[i], sides[(i + 1) % n]);
        (side.0, side.1 - loss(before, side) - loss(side, after))
    });
    let taped: Vec<Side> = taped.collect();
    taped.iter().all(|side| side.1 > 0).then_some(taped)
}

/// 30' 6" × 40' 6": 1,235.25 as measured and by tenths; 31 × 41 = 1,271 by whole feet, which tenths must not allow.
#[test]
fn what_tenths_allow_is_less_than_what_whole_feet_do() {
    let (north, east) = (30 * 192 + 96, 40 * 192 + 96);
    let sides = [(0, north), (1, east), (2, north), (3, east)];
    let gross = areas(&sides);
    let whole = (gross.gross().whole_foot() - gross.gross().as_measured()).sq_ft();
    approx::assert_abs_diff_eq!(whole, 35.75, epsilon = 1e-9);
    assert!(whole <= allowed_sq_ft(&sides, 192.0));
    assert!(allowed_sq_ft(&sides, 19.2) < 1e-6, "both lengths are whole tenths");
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
    fn rounding_changes_an_area_by_no_more_than_its_walls_allow(sides in towers()) {
        let areas = areas(&sides);
        let apart = |rounded: Area| (rounded - areas.gross().as_measured()).sq_ft().abs();
        // A tenth of a foot is 19.2 sixteenths of an inch, a foot 192.
        let tenth = apart(areas.gross().tenth_foot());
        prop_assert!(tenth <= allowed_sq_ft(&sides, 19.2), "{tenth}");
        let whole = apart(areas.gross().whole_foot());
        prop_assert!(whole <= allowed_sq_ft(&sides, 192.0), "{whole}");
    }

    #[test]
    fn a_veneer_widens_by_its_perimeter_and_four_corners(sides in towers(), veneer in 1_i64..90) {
        let text = file(&format!("faces frame\nveneer {}", length(veneer)), &sides);
        let areas = read_house(&text).areas(&Settings::default());
        prop_assume!(areas.is_ok(), "a jog shorter than the veneer");
        let areas = areas.unwrap();
        let space = &areas.spaces()[0];
        let perimeter: i128 = sides.iter().map(|&(_, run)| i128::from(run)).sum();
        let wider = i128::from(veneer) * perimeter + 4 * i128::from(veneer).pow(2);
        let unit = 2 * 1_587_500_i128.pow(2);
        prop_assert_eq!(space.outside().area() - space.as_measured(), Area::from_half_nm2(wider * unit));
    }

    #[test]
    fn the_face_line_is_the_area_of_the_veneer(sides in towers(), veneer in 1_i64..90) {
        // A house measured outside and a plan's figure at the frame: the face line is the area of the same walls as
        // somebody types them who tapes the frame, less ours. Both are rounded to tenths of a foot.
        let frame = at_frame(&sides, veneer);
        prop_assume!(frame.is_some(), "a jog shorter than the veneer");
        let frame = frame.unwrap();
        let unit = 2 * 1_587_500_i128.pow(2);
        let (t, p) = (i128::from(veneer), sides.iter().map(|&(_, run)| i128::from(run)).sum::<i128>());
        let taken = 2 * (area_by_strips(&frame) - area_by_strips(&sides)) * 1_587_500_i128.pow(2);
        prop_assert_eq!(taken, (4 * t * t - t * p) * unit, "the frame of the test itself");
        let head = format!("veneer {}\nplan 1,000 sq ft measured to frame", length(veneer));
        let ours = read_house(&file(&head, &sides)).areas(&Settings::default()).unwrap();
        let by_tenths = ours.gross().tenth_foot();
        let reconciliation = ours.reconcile(&fairfoot::Weights::default());
        prop_assume!(reconciliation.is_ok(), "walls that cross when moved");
        let reconciliation = reconciliation.unwrap();
        let line = reconciliation.figures()[0].line(fairfoot::reconcile::BridgeStep::Face).expect("a face line");
        let theirs = areas(&frame).gross().tenth_foot();
        prop_assert_eq!(line.area(), theirs - by_tenths);
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
        change in -3_i64..4,
        figure in 100_i64..9_000,
        frame in any::<bool>(),
    ) {
        // The record has one length of its own, for the last side: its whole feet, a few feet more or less.
        let face = if frame { " measured to frame" } else { "" };
        let head = format!("veneer 4 5/8\"\nrecord {figure}.37 sq ft{face} counting \"Porch\"\nlisting {figure} sq ft");
        let last = sides[sides.len() - 1].1;
        let mut text = file(&head, &sides).trim_end().to_owned();
        text.push_str(&format!(" recorded {}'\n", (last / 192 + change).max(1)));
        text.push_str("porch \"Porch\" start west 100'\nnorth 8' 3\"\neast 12' 5\"\nsouth 8' 3\"\nwest 12' 5\"\n");
        let checked = read_house(&text);
        let settings = Settings::default();
        let areas = checked.areas(&settings).unwrap();
        let reconciliation = areas.reconcile(&fairfoot::Weights::default());
        prop_assume!(reconciliation.is_ok(), "walls that cross when moved to the frame");
        let reconciliation = reconciliation.unwrap();
        prop_assert_eq!(reconciliation.figures().len(), 2);
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
    let (mut sum, mut is_open) = (0, false);
    for line in report.lines() {
        let line = line.trim();
        if line.starts_with("with a calculator") {
            (sum, is_open) = (0, true);
        } else if line.starts_with("total ") && is_open {
            // Further down a line may begin with a total that is rounded to hundreds.
            is_open = false;
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
        let house = fairfoot::read("curved.sides", text.as_str());
        prop_assume!(house.is_ok(), "an arc that meets another wall");
        let areas = house.unwrap().areas(&Settings::default());
        prop_assume!(areas.is_ok(), "an arc that meets another wall once rounded");
        let areas = areas.unwrap();
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

/// The arc cuts off a segment of 598.1249995 sq ft, which is 598.12; rounded to millionths first it would be 598.13.
#[test]
fn a_total_is_rounded_once() {
    let text = "record 900 sq ft\nlevel \"G\"\nliving \"House\"\nwest 567\"\nsouth 638\"\neast 567\"\narc north 638\" rise 189\" east\n";
    let areas = fairfoot::read("curved.sides", text).unwrap().areas(&Settings::default()).unwrap();
    let result = areas.reconcile(&fairfoot::Weights::default()).unwrap();
    let look = fairfoot::report::Look { why: true, ..Default::default() };
    let sums = printed_sums(&result.report().text(look));
    assert_eq!(sums[0], (3_114_480_000, 3_114_480_000));
}
