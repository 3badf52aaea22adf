//! Rules of the trade: common walls, detached living space, lots, comparing like with like, implausible sizes.
//!
//! Every figure is computed by hand in the comment next to it.

use fairfoot::diagnostic::Word;
use fairfoot::units::{Area, Length};
use fairfoot::{Areas, House, Settings};

use super::text_report;

fn read(text: &str) -> House {
    fairfoot::read("trade.sides", text).unwrap_or_else(|faults| panic!("{faults}\n{text}"))
}

fn areas(text: &str) -> Areas {
    read(text).areas(&Settings::default()).unwrap_or_else(|faults| panic!("{faults}\n{text}"))
}

fn is(area: Area, sq_ft: f64) {
    assert!((area.sq_ft() - sq_ft).abs() < 1e-4, "{} {sq_ft}", area.sq_ft());
}

fn words(house: &House) -> Vec<Word> {
    house.warnings().iter().map(fairfoot::Diagnostic::word).collect()
}

/// A row house of 30 by 20 ft between two others.
fn row_house(head: &str, common: &str) -> String {
    format!(
        "{head}\nlevel \"Ground floor\"\nliving \"House\"\nnorth 30' {common}\neast 20'\nsouth 30' {common}\nwest 20'\n"
    )
}

#[test]
fn a_common_wall_taped_inside_counts_to_its_centerline() {
    // Front and back move out by the wall of 6", 31 ft deep; each common wall by half of its thickness: of 6" 3", 20
    // 1/2 ft wide; of 9" 4 1/2", 20 3/4 ft.
    let inside = "faces inside\nveneer none\nwall 6\"";
    is(areas(&row_house(inside, "common")).gross().tenth_foot(), 635.5);
    let outside =
        |head: &str, common: &str| areas(&row_house(head, common)).spaces()[0].outside().area();
    is(outside(inside, "common"), 31.0 * 20.5);
    is(outside(inside, "common wall 9\""), 31.0 * 20.75);
    // Nothing stated: 6" for front and back, half of 8" for each common wall.
    is(outside("faces inside\nveneer none", "common"), 31.0 * (20.0 + 8.0 / 12.0));
    // Taped outside, or at the frame, a common wall stays; front and back carry 6" of veneer at the frame.
    is(outside("veneer none", "common"), 600.0);
    is(outside("faces frame\nveneer 6\"", "common"), 31.0 * 20.0);
}

#[test]
fn an_assumed_common_wall_is_stated_and_within_2_inches() {
    let ours = areas(&row_house("faces inside\nveneer none\nwall 6\"", "common"));
    assert!(ours.warnings().is_empty(), "{:?}", ours.warnings());
    let ours = areas(&row_house("faces inside\nveneer none", "common"));
    assert_eq!(ours.warnings().len(), 2);
    // Of 2" half counts: two walls of 30 ft within 1", front and back of 20 ft within 1", each one error for its kind:
    // (60/12)² + (40/12)² = 36.1111; as measured (15² + 15² + 10² + 10²)(1/24)² = 1.128472. 2 √((36.1111 + 1.128472) /
    // 3).
    let found = ours.gross().plus_minus_outside();
    assert!((found - 7.046_476).abs() < 1e-4, "{found}");
}

#[test]
fn a_stated_thickness_is_within_a_quarter_inch_and_the_worst_case_adds_everything() {
    // 40 by 30 ft at the frame, each wall within 1/2" = 1/24 ft. As measured opposite walls share: 20, 20, 15, 15 ft of
    // growth: at worst 70/24; squares (400 + 400 + 225 + 225)/576 = 2.170139, 2 √(2.170139 / 3). The veneer within 1/4"
    // = 1/48 ft on 140 ft: 140/48 more at worst, (140/48)² = 8.506944 more in squares.
    let text = "faces frame\nveneer 6\"\nlevel \"G\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\n";
    let ours = areas(text);
    let gross = ours.gross();
    let near =
        |found: f64, by_hand: f64| assert!((found - by_hand).abs() < 1e-4, "{found} {by_hand}");
    near(gross.plus_minus(), 1.701_034);
    near(gross.worst_case(), 2.916_667);
    near(gross.plus_minus_outside(), 3.773_076);
    near(gross.worst_case_outside(), 5.833_333);
    // Outside 41 × 31 is 1,271.
    let report = text_report(text);
    assert!(report.contains("the area is 1,271 ± 4 sq ft, about 19 times in 20, or ± 6 sq ft at worst, with all errors adding up, if each wall is within 1/2\" and each wall thickness is within 1/4\", as assumed here."), "{report}");
}

/// A house of 30 by 40 ft and living space of 20 by 20 ft next to it.
fn with_casita(words: &str) -> String {
    format!(
        "level \"Ground floor\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\nliving \"Casita\" {words}\nnorth 20'\neast 20'\nsouth 20'\nwest 20'\n"
    )
}

#[test]
fn living_space_that_touches_no_other_is_detached_unless_counted() {
    // 30 × 40 = 1,200; with the casita 400 more.
    for (words_after, total, is_reported) in [
        ("start east 60'", 1_200, true),
        ("start east 60' counted", 1_600, true),
        ("start east 60' not counted", 1_200, false),
        ("start east 40'", 1_600, false),
        // Two walls of one room, 2" apart by the tape, are one wall.
        ("start east 40' 2\"", 1_600, false),
        ("detached", 1_200, true),
    ] {
        let text = with_casita(words_after);
        let ours = areas(&text);
        assert_eq!(ours.gross().tenth_foot().whole_sq_ft(), total, "{words_after}");
        assert_eq!(words(ours.house()).contains(&Word::LivingApart), is_reported, "{words_after}");
    }
    let report = text_report(&with_casita("start east 60'"));
    assert!(report.contains("Casita (living, detached, not counted)"), "{report}");
}

#[test]
fn rooms_above_the_house_are_not_detached() {
    let upper = |start: &str| {
        format!(
            "{}level \"Upper floor\"\nliving \"West room\"\nnorth 12'\neast 14'\nsouth 12'\nwest 14'\nliving \"East room\" start {start}\nnorth 10'\neast 12'\nsouth 10'\nwest 12'\n",
            with_casita("start east 60'")
        )
    };
    // 1,200 + 12 × 14 + 10 × 12; above the casita the room of 120 is detached.
    assert_eq!(areas(&upper("east 28'")).gross().tenth_foot().whole_sq_ft(), 1_488);
    assert_eq!(areas(&upper("east 62'")).gross().tenth_foot().whole_sq_ft(), 1_368);
}

#[test]
fn a_room_over_an_attached_garage_is_counted_and_asked_about() {
    let upper = |start: &str, words: &str| {
        format!(
            "{}garage \"Garage\" start {start}\nnorth 20'\neast 20'\nsouth 20'\nwest 20'\nlevel \"Upper floor\"\nliving \"West room\"\nnorth 12'\neast 14'\nsouth 12'\nwest 14'\nliving \"Bonus room\" start east 46' {words}\nnorth 10'\neast 12'\nsouth 10'\nwest 12'\n",
            with_casita("start north 40'")
        )
    };
    // 1,200 + 12 × 14, and 10 × 12 over a garage that stands against the house.
    for (start, words_after, total, is_reported) in [
        ("east 40'", "", 1_488, true),
        ("east 40'", "counted", 1_488, false),
        ("east 40'", "not counted", 1_368, false),
        // A garage that stands 4' away leads nowhere.
        ("east 44'", "", 1_368, true),
    ] {
        let ours = areas(&upper(start, words_after));
        assert_eq!(ours.gross().tenth_foot().whole_sq_ft(), total, "{start} {words_after}");
        let faults = ours.house().warnings().iter();
        let bonus = faults.filter(|one| one.message().contains("Bonus room"));
        assert_eq!(bonus.count(), usize::from(is_reported), "{start} {words_after}");
    }
}

/// A lot of 180 by 210 ft whose lines run 10° off north and east.
const CALLS: [&str; 4] = [
    "bearing N 10° E 210'",
    "bearing S 80° E 180'",
    "bearing S 10° W 210'",
    "bearing N 80° W 180'",
];

fn lot(calls: &[&str]) -> String {
    format!("{}lot \"Lot\"\n{}\n", with_casita("start east 40'"), calls.join("\n"))
}

#[test]
fn the_last_call_of_a_lot_runs_straight_back() {
    // 180 × 210 = 37,800, by three calls and `close` as by four.
    for calls in [CALLS.to_vec(), [&CALLS[..3], &["close"]].concat()] {
        let house = read(&lot(&calls));
        let lot = &house.lots()[0];
        is(lot.outline().area(), 37_800.0);
        assert_eq!(lot.outline().corners().len(), 4);
    }
    let text = lot(&[&CALLS[..3], &["close"]].concat());
    let house = read(&text);
    let message = house.warnings()[0].message().to_owned();
    assert_eq!(
        message,
        "`Lot`: the last call is computed from the others, N 80° 00' 00\" W 180.00 ft"
    );
    assert!(house.lots()[0].closure().is_none());
    assert!(
        text_report(&text)
            .contains("the last call is computed, so the calls cannot be checked by it")
    );
}

#[test]
fn a_call_of_a_lot_does_not_follow_from_one_axis() {
    let text = lot(&[&CALLS[..3], &["west by closing"]].concat());
    let faults = fairfoot::read("lot.sides", &text).expect_err("an error");
    let words: Vec<Word> = faults.list().iter().map(fairfoot::Diagnostic::word).collect();
    assert_eq!(words, [Word::ClosingInLot]);
}

#[test]
fn the_closure_of_a_lot_is_a_distance_and_a_ratio() {
    // 210 + 180 + 210 + 179.99 = 779.99 ft, and 0.01 ft short of the start: 1 : 77,999, to three digits 77,900.
    let text = lot(&["north 210'", "east 180'", "south 210'", "west 179.99'"]);
    let house = read(&text);
    let (distance, ratio) = house.lots()[0].closure().expect("it misses");
    assert_eq!((distance, ratio), (Length::from_nm(3_048_000), 77_900));
    assert!(
        text_report(&text).contains("end 0.01 ft from where they began, in 779.99 ft (1 : 77,900)"),
        "{}",
        text_report(&text)
    );
}

#[test]
fn a_lot_that_does_not_close_gets_no_question_about_walls() {
    let faults =
        fairfoot::read("lot.sides", lot(&["north 210'", "east 180'", "south 201'", "west 180'"]))
            .expect_err("an error");
    let fault = &faults.list()[0];
    let all = format!("{} {}", fault.message(), fault.helps().join(" "));
    assert!(all.contains("the calls end 9' north of where they began"), "{all}");
    assert!(all.contains("compare with the deed") && !all.contains("wall"), "{all}");
}

#[test]
fn like_is_compared_with_like() {
    // 30 × 40 = 1,200 and a porch of 100. With it 1,300: the record has 2 more, 2 ÷ 1,300 = 0.15 %.
    let with = |head: &str| {
        format!(
            "{head}\nlevel \"G\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\nporch \"Porch\" start west 10'\nnorth 10'\neast 10'\nsouth 10'\nwest 10'\n"
        )
    };
    let report = text_report(&with("record 1,302 sq ft counting \"Porch\""));
    assert!(report.contains("Record 1,302 sq ft, with the porch. Measured 1,300 sq ft, with the porch. They agree within 2 sq ft."), "{report}");
    // Less 6" of veneer all around: 29 × 39 = 1,131.
    let report = text_report(&with("veneer 6\"\nplan 1,130 sq ft measured to frame"));
    assert!(
        report
            .contains("Plan 1,130 sq ft, taken at the frame. Measured at the frame: 1,131 sq ft."),
        "{report}"
    );
    let report = text_report(&with("record 1,190 sq ft"));
    assert!(report.contains("Caution: the record is smaller than this house."), "{report}");
    // With the porch 1,300, and a record of 1,310 is not smaller; one of 1,210 with the porch is.
    assert!(!text_report(&with("record 1,310 sq ft counting \"Porch\"")).contains("Caution"));
    assert!(text_report(&with("record 1,210 sq ft counting \"Porch\"")).contains("Caution"));
}

#[test]
fn areas_from_a_plan_are_not_called_measured() {
    let text = "record 1,210 sq ft\nlevel \"G\"\nliving \"House\"\nnorth 30' from plan\neast 40' from plan\nsouth 30' from plan\nwest by closing\n";
    let report = text_report(text);
    assert!(
        report.contains("From the plan's lengths, outside: 1,200 sq ft. The record is 10 sq ft larger (0.8% of the area from the plan)."),
        "{report}"
    );
    assert!(
        !report.contains("Measured 1,200") && report.contains("No wall was measured"),
        "{report}"
    );
    assert!(
        text_report(&text.replace("south 30' from plan", "south 30'"))
            .contains("Measured 1,200 sq ft.")
    );
}

#[test]
fn a_house_of_implausible_size_is_asked_for_its_unit() {
    let house = |head: &str, mark: &str| {
        format!(
            "{head}level \"G\"\nliving \"House\"\nnorth 360{mark}\neast 480{mark}\nsouth 360{mark}\nwest 480{mark}\n"
        )
    };
    // 360 × 480 = 172,800 sq ft; as inches 30 × 40 ft = 1,200.
    let faults = fairfoot::read("size.sides", house("", "")).expect_err("an error");
    let fault = &faults.list()[0];
    assert_eq!(fault.word(), Word::UnitNeeded);
    assert!(fault.message().contains("172,800 sq ft"), "{}", fault.message());
    assert!(
        fault.helps()[0].contains("`units inches`, which makes it 1,200 sq ft"),
        "{:?}",
        fault.helps()
    );
    assert_eq!(areas(&house("units inches\n", "")).gross().tenth_foot().whole_sq_ft(), 1_200);
    // With a written unit it is accepted, but reported wherever its figures are.
    assert_eq!(words(&read(&house("", "'"))), [Word::UnlikelySize]);
    assert!(
        text_report(&house("", "'"))
            .contains("Check the lengths and their units: what is counted comes to 172,800 sq ft")
    );
    // A house in meters, 9 × 12 m = 1,162.5 sq ft, read as feet: 108.
    let small = "level \"G\"\nliving \"House\"\nnorth 9\neast 12\nsouth 9\nwest 12\n";
    let faults = fairfoot::read("size.sides", small).expect_err("an error");
    assert!(faults.list()[0].helps()[0].contains("`units meters`, which makes it 1,163 sq ft"));
}

#[test]
fn unusual_settings_are_reported() {
    let text = "record 1,210 sq ft\nlevel \"G\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\n";
    assert!(!text_report(text).contains("Settings other than the usual"));
    let settings = Settings {
        halves: fairfoot::units::Halves::Down,
        reading: Length::from_nm(91_440_000),
        ..Settings::default()
    };
    assert_eq!(
        settings.unusual(),
        ["a length halfway goes down", "an office reads its tape within 0.3 ft instead of 0.15"]
    );
    let report =
        read(text).areas(&settings).unwrap().reconcile(&fairfoot::Weights::default()).unwrap();
    let report = report
        .report()
        .text(fairfoot::report::Look { width: 200, ..fairfoot::report::Look::default() });
    assert!(
        report
            .contains("Settings other than the usual: a length halfway goes down; an office reads"),
        "{report}"
    );
}

#[test]
fn a_record_in_inches_is_compared_in_inches() {
    let text = "record 1,260 sq ft sides inch\nlevel \"G\"\nliving \"House\"\nnorth 30' 5\"\neast 40' 7\"\nsouth 30' 5\"\nwest 40' 7\"\n";
    let report = text_report(text);
    assert!(report.contains("The record's walls are stated to the inch"), "{report}");
    assert!(
        !report.contains("alone cannot explain") && !report.contains("whole-foot walls"),
        "{report}"
    );
    // The same record without what its walls are rounded to: 30 × 41 = 1,230, and 31 × 41 = 1,271 at most.
    let whole_feet = text_report(&text.replace(" sides inch", " sides whole-foot"));
    assert!(whole_feet.contains("alone cannot explain"), "{whole_feet}");
}
