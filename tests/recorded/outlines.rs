//! Which walls of a sketch match which of ours.

use super::{house, reconciled, sketch, text_report};

/// Number of our side, number of theirs, feet of ours, feet of theirs.
type Pair = (usize, usize, i64, i64);

#[track_caller]
fn pairs(text: &str) -> (Vec<Pair>, bool) {
    let reconciled = reconciled(text);
    let [outline] = reconciled.outlines() else { panic!("one outline\n{text}") };
    let feet = |length: fairfoot::units::Length| length.nm() / fairfoot::units::Length::FOOT.nm();
    let pair = |side: &fairfoot::reconcile::MatchedSide| {
        (side.ours().get(), side.theirs().get(), feet(side.measured()), feet(side.drawn()))
    };
    let mut pairs: Vec<Pair> = outline.matched().iter().map(pair).collect();
    pairs.sort_unstable();
    (pairs, outline.same_corners())
}

const L_SHAPE: [&str; 6] =
    ["north 26'", "east 39'", "north 14'", "east 16'", "south 40'", "west 55'"];

#[test]
fn a_sketch_walked_the_other_way_from_another_corner_is_matched_wall_by_wall() {
    // From the corner at the end of our fifth side, backwards: our sides 5, 4, 3, 2, 1, 6.
    let theirs = ["north 41'", "west 16'", "south 15'", "west 39'", "south 26'", "east 55'"];
    let text = house(&L_SHAPE, &sketch("House", &theirs));
    let all = [
        (1, 5, 26, 26),
        (2, 4, 39, 39),
        (3, 3, 14, 15),
        (4, 2, 16, 16),
        (5, 1, 40, 41),
        (6, 6, 55, 55),
    ];
    assert_eq!(pairs(&text), (all.to_vec(), true));
    // From any corner, in either direction.
    for start in 0..6 {
        let mut turned = theirs;
        turned.rotate_left(start);
        let (found, same) = pairs(&house(&L_SHAPE, &sketch("House", &turned)));
        let turn = |&(ours, their, measured, drawn): &Pair| {
            (ours, (their + 5 - start) % 6 + 1, measured, drawn)
        };
        assert_eq!((found, same), (all.iter().map(turn).collect(), true), "from side {start}");
    }
    for start in 0..6 {
        let mut turned =
            ["north 26'", "east 39'", "north 15'", "east 16'", "south 41'", "west 55'"];
        turned.rotate_left(start);
        let (found, same) = pairs(&house(&L_SHAPE, &sketch("House", &turned)));
        let theirs: Vec<usize> = found.iter().map(|pair| pair.1).collect();
        let right: Vec<usize> = (0..6).map(|ours| (ours + 6 - start) % 6 + 1).collect();
        assert_eq!((theirs, same), (right, true), "from side {start}");
    }
}

/// Sides without a match that replace each other: numbers of ours and of theirs.
#[track_caller]
fn instead(text: &str) -> Vec<(Vec<usize>, Vec<usize>)> {
    let reconciled = reconciled(text);
    let [outline] = reconciled.outlines() else { panic!("one outline\n{text}") };
    let one = |instead: &fairfoot::reconcile::Substitution| {
        (
            instead.ours().map(fairfoot::house::SideNumber::get).collect(),
            instead.theirs().map(fairfoot::house::SideNumber::get).collect(),
        )
    };
    let mut all: Vec<(Vec<usize>, Vec<usize>)> = outline.instead().iter().map(one).collect();
    all.sort();
    all
}

#[test]
fn a_jog_of_only_one_outline_is_reported_and_the_other_walls_match() {
    let square = ["north 30'", "east 40'", "south 30'", "west 40'"];
    let jogged = ["north 30'", "east 22'", "south 5'", "east 18'", "south 25'", "west 40'"];
    // The walls at the jog are other walls, not the same ones at another length.
    let text = house(&square, &sketch("House", &jogged));
    assert_eq!(pairs(&text), (vec![(1, 1, 30, 30), (4, 6, 40, 40)], false));
    assert_eq!(instead(&text), [(vec![2, 3], vec![2, 3, 4, 5])]);
    let report = text_report(&text);
    assert!(
        report.contains("this file has side 2 (east 40') and side 3 (south 30'); the sketch has side 2 (east 22'), side 3 (south 5'), side 4 (east 18') and side 5 (south 25') instead"),
        "{report}"
    );
    assert!(!report.contains("walls that differ"), "{report}");

    let text = house(&jogged, &sketch("House", &square));
    assert_eq!(pairs(&text), (vec![(1, 1, 30, 30), (6, 4, 40, 40)], false));
    assert_eq!(instead(&text), [(vec![2, 3, 4, 5], vec![2, 3])]);
    // A jog of half a foot changes the adjacent walls by no more than rounding.
    let small = ["north 30'", "east 39' 6\"", "south 29' 6\"", "east 6\"", "south 6\"", "west 40'"];
    let text = house(&small, &sketch("House", &square));
    assert_eq!(pairs(&text).0, [(1, 1, 30, 30), (2, 2, 39, 40), (3, 3, 29, 30), (6, 4, 40, 40)]);
    assert_eq!(instead(&text), [(vec![4, 5], vec![])]);
    let report = text_report(&text);
    assert!(
        report.contains("only in this file: side 4 (east 6\") and side 5 (south 6\")"),
        "{report}"
    );
    assert!(!report.contains("only on the sketch"), "{report}");
    let text = house(&square, &sketch("House", &small));
    assert_eq!(instead(&text), [(vec![], vec![4, 5])]);
    assert!(
        text_report(&text).contains("only on the sketch: side 4 (east 6\") and side 5 (south 6\")")
    );
}

#[test]
fn a_jog_and_a_bay_that_a_sketch_leaves_out_are_reported_separately() {
    // The jog: 22' 4" + 17' 11" = 40' 3" east and 4' 2" + 24' = 28' 2" south, for 40 and 28. The bay: 12 + 2 1/2 + 5'
    // 3" + 2 1/2 + 18 = 40' 3" west, for 40.
    let ours = [
        "north 28' 2\"",
        "east 22' 4\"",
        "south 4' 2\"",
        "east 17' 11\"",
        "south 24'",
        "west 12'",
        "diagonal south 2' 6\" west 2' 6\"",
        "west 5' 3\"",
        "diagonal north 2' 6\" west 2' 6\"",
        "west 18'",
    ];
    let theirs = ["north 28'", "east 40'", "south 28'", "west 40'"];
    let both = [(vec![2, 3, 4, 5], vec![2, 3]), (vec![6, 7, 8, 9, 10], vec![4])];
    let text = house(&ours, &sketch("House", &theirs));
    assert_eq!(pairs(&text), (vec![(1, 1, 28, 28)], false));
    assert_eq!(instead(&text), both);
    let report = text_report(&text);
    assert!(
        report.contains("this file has side 6 (west 12') to side 10 (west 18'); the sketch has side 4 (west 40') instead"),
        "{report}"
    );
    // The same from the sketch walked the other way: its sides 1 west to 4 south are the fourth to the first.
    let back = ["east 40'", "north 28'", "west 40'", "south 28'"];
    let text = house(&ours, &sketch("House", &back));
    assert_eq!(pairs(&text), (vec![(1, 4, 28, 28)], false));
    assert_eq!(instead(&text), [(vec![2, 3, 4, 5], vec![3, 2]), (vec![6, 7, 8, 9, 10], vec![1])]);
}

#[test]
fn a_differing_wall_between_matching_walls_stays_a_pair() {
    // An L whose wing the sketch has two feet longer, and a jog of theirs at the far end.
    let theirs = [
        "north 26'",
        "east 39'",
        "north 16'",
        "east 16'",
        "south 42'",
        "west 20'",
        "south 3'",
        "west 10'",
        "north 3'",
        "west 25'",
    ];
    let text = house(&L_SHAPE, &sketch("House", &theirs));
    let all = vec![(1, 1, 26, 26), (2, 2, 39, 39), (3, 3, 14, 16), (4, 4, 16, 16)];
    assert_eq!(pairs(&text), (all, false));
    assert_eq!(instead(&text), [(vec![5, 6], vec![5, 6, 7, 8, 9, 10])]);
}

#[test]
fn sides_in_one_line_are_one_wall_on_both_sides() {
    let ours = ["north 10'", "north 20'", "east 15'", "east 25'", "south 30'", "west 40'"];
    // The sketch begins in the middle of its first wall, whose first side is then its last.
    let theirs = ["north 15'", "east 41'", "south 31'", "west 20'", "west 21'", "north 16'"];
    let text = house(&ours, &sketch("House", &theirs));
    let all = vec![(1, 6, 30, 31), (3, 2, 40, 41), (5, 3, 30, 31), (6, 4, 40, 41)];
    assert_eq!(pairs(&text), (all, true));
    // And in the middle of the wall that runs east.
    let theirs = ["east 21'", "south 31'", "west 41'", "north 31'", "east 20'"];
    let all = vec![(1, 4, 30, 31), (3, 5, 40, 41), (5, 2, 30, 31), (6, 3, 40, 41)];
    assert_eq!(pairs(&house(&ours, &sketch("House", &theirs))), (all, true));
    // A foot more is beyond rounding; a side that turns back does not continue a wall.
    let ours = ["north 10'", "north 20'", "east 40'", "south 30'", "west 40'"];
    let theirs = ["north 33'", "east 40'", "south 33'", "west 40'"];
    let report = text_report(&house(&ours, &sketch("House", &theirs)));
    assert!(report.contains("side 1 (north 10' + north 20') 30' 33' +3'"), "{report}");
    assert!(report.contains("side 4 (south 30') 30' 33' +3'"), "{report}");
}

#[test]
fn a_wall_differs_if_neither_rounding_nor_reading_the_tape_makes_the_difference() {
    // Half a foot of rounding and 0.15 ft of reading: 7" is within, 8" is not.
    let square = |north: &str| {
        [
            format!("north {north}"),
            "east 40'".to_owned(),
            format!("south {north}"),
            "west 40'".to_owned(),
        ]
    };
    for (north, is_reported) in
        [("30' 7\"", false), ("30' 8\"", true), ("29' 5\"", false), ("29' 4\"", true)]
    {
        let ours = square(north);
        let ours: Vec<&str> = ours.iter().map(String::as_str).collect();
        let theirs = ["north 30'", "east 40'", "south 30'", "west 40'"];
        let report = text_report(&house(&ours, &sketch("House", &theirs)));
        assert_eq!(report.contains("walls that differ"), is_reported, "{north}: {report}");
    }
}

#[test]
fn a_sketch_that_names_no_space_is_of_the_house_if_it_has_about_its_size() {
    // 30 × 40 = 1,200: no further off than half of that, 600.
    let square = ["north 30'", "east 40'", "south 30'", "west 40'"];
    let own = |north: i64, east: i64| {
        let sides = [("north", north), ("east", east), ("south", north), ("west", east)];
        let sides = sides.map(|(way, feet)| format!("{way} {feet}'"));
        let sides: Vec<&str> = sides.iter().map(String::as_str).collect();
        let reconciled = reconciled(&house(&square, &sketch("Card", &sides)));
        reconciled.figures()[0].own_sketch().map(|area| area.whole_sq_ft())
    };
    assert_eq!(own(30, 40), Some(1_200));
    assert_eq!(own(24, 26), Some(624));
    assert_eq!(own(20, 30), None);
    assert_eq!(own(45, 39), Some(1_755));
    assert_eq!(own(45, 40), None);
}

#[test]
fn a_listed_area_equal_to_the_unexplained_rest_is_asked_about() {
    // 1,248 on the record, 30 × 40 = 1,200 here: 48 left, as much as it lists for the step of 6 × 8.
    let step = |recorded: &str| {
        let text = house(
            &["north 30'", "east 40'", "south 30'", "west 40'"],
            &format!(
                "porch \"Front step\" start east 40' recorded {recorded} sq ft\nnorth 6'\neast 8'\nsouth 6'\nwest 8'\n"
            ),
        );
        text_report(&text.replace("1,200", "1,248"))
    };
    assert!(step("48").contains("possible: front step counted +48"), "{}", step("48"));
    // Listed with another area, it would leave a foot: the record's own area is what its total would contain.
    assert!(!step("47").contains("possible: front step counted +48"), "{}", step("47"));
}

#[test]
fn a_sketch_may_leave_out_what_lies_in_the_house_or_have_it_inside() {
    // 30 × 40 with a garage of 20 × 20 in its corner: 800. A sketch of the L that is left comes to 800 as it is; one of
    // the whole house, with a jog of a foot on 20 ft of its wall, comes to 1,180 and has the garage deducted.
    let garage = "garage \"Garage\" within \"House\" start north 10' east 20'\nnorth 20'\neast 20'\nsouth 20'\nwest 20'\n";
    let own = |sides: &[&str]| {
        let after = format!("{garage}{}", sketch("House", sides));
        let text = house(&["north 30'", "east 40'", "south 30'", "west 40'"], &after);
        // A total that no way of deducting gives.
        let reconciled = reconciled(&text.replace("1,200", "1,100"));
        reconciled.figures()[0].own_sketch().map(|area| area.whole_sq_ft())
    };
    assert_eq!(
        own(&["north 30'", "east 20'", "south 20'", "east 20'", "south 10'", "west 40'"]),
        Some(800)
    );
    assert_eq!(
        own(&["north 29'", "east 40'", "south 30'", "west 20'", "north 1'", "west 20'"]),
        Some(780)
    );
    assert_eq!(own(&["north 30'", "east 40'", "south 30'", "west 40'"]), Some(800));
    // What the record says of the garage comes before our measure of it: 1,200 less 390.
    let listed = garage.replace(" start", " recorded 390 sq ft start");
    let whole = ["north 30'", "east 40'", "south 30'", "west 40'"];
    let reconciled = reconciled(
        &house(&whole, &format!("{listed}{}", sketch("House", &whole))).replace("1,200", "1,100"),
    );
    assert_eq!(reconciled.figures()[0].own_sketch().map(|area| area.whole_sq_ft()), Some(810));
}

#[test]
fn a_sketch_without_deductions_agrees_if_it_gives_the_total() {
    // 28 × 40 + 24 × 30 = 1,840; the foyer, 8 × 9 = 72, is open here and no line of the record's.
    let text = |record: &str| {
        let (ground, upper) = (
            "north 28'\neast 40'\nsouth 28'\nwest 40'",
            "north 24'\neast 30'\nsouth 24'\nwest 30'",
        );
        format!(
            "record {record} sq ft\nlevel \"Ground\"\nliving \"House\"\n{ground}\nlevel \"Upper\"\nliving \"Bedrooms\"\n{upper}\nopen \"Foyer\" start east 10' north 8'\nnorth 9'\neast 8'\nsouth 9'\nwest 8'\nrecord outline \"Ground\" of \"House\"\n{ground}\nrecord outline \"Upper\" of \"Bedrooms\"\n{upper}\n"
        )
    };
    let own = |record: &str| {
        let reconciled = reconciled(&text(record));
        reconciled.figures()[0].own_sketch().map(|area| area.whole_sq_ft())
    };
    assert_eq!((own("1,840"), own("1,768"), own("1,800")), (Some(1_840), Some(1_768), Some(1_768)));
    let report = text_report(&text("1,840"));
    assert!(report.contains("own sketch and its total agree, with nothing deducted."), "{report}");
    assert!(text_report(&text("1,768")).contains("own sketch and its total agree."));
    let report = text_report(&text("1,800"));
    assert!(
        report.contains("do not agree: its sides come to 1,840 sq ft, or 1,768 less what is deducted here; its total is 1,800 sq ft."),
        "{report}"
    );
    // With the record's own lengths in the steps, rounding explains nothing, and no cause that leaves nothing of the 132
    // sq ft is likely.
    let report = text_report(&text("1,900"));
    let said = "No common cause is likely enough to be named for the 132 sq ft that are left.";
    assert!(report.contains(said), "{report}");
}

#[test]
fn stairs_match_where_the_lengths_are_nearer() {
    // Three steps against two, of which the second stands for the last two: 9 + 7 north and 7 + 7 east.
    let ours = [
        "north 4'",
        "east 6'",
        "north 9'",
        "east 7'",
        "north 7'",
        "east 7'",
        "south 20'",
        "west 20'",
    ];
    let theirs = ["north 4'", "east 6'", "north 16'", "east 14'", "south 20'", "west 20'"];
    let text = house(&ours, &sketch("House", &theirs));
    assert_eq!(pairs(&text).0, [(1, 1, 4, 4), (2, 2, 6, 6), (7, 5, 20, 20), (8, 6, 20, 20)]);
    assert_eq!(instead(&text), [(vec![3, 4, 5, 6], vec![3, 4])]);
    // The other way about.
    let text = house(&theirs, &sketch("House", &ours));
    assert_eq!(instead(&text), [(vec![3, 4], vec![3, 4, 5, 6])]);
}

#[test]
fn our_bay_and_theirs_at_different_places_are_reported_separately() {
    let ours = [
        "north 30'",
        "east 40'",
        "south 30'",
        "west 12'",
        "diagonal south 2' 6\" west 2' 6\"",
        "west 5'",
        "diagonal north 2' 6\" west 2' 6\"",
        "west 18'",
    ];
    let theirs = [
        "north 10'",
        "diagonal north 2' 6\" west 2' 6\"",
        "north 5'",
        "diagonal north 2' 6\" east 2' 6\"",
        "north 10'",
        "east 40'",
        "south 30'",
        "west 40'",
    ];
    let text = house(&ours, &sketch("House", &theirs));
    assert_eq!(pairs(&text).0, [(2, 6, 40, 40), (3, 7, 30, 30)]);
    assert_eq!(instead(&text), [(vec![1], vec![1, 2, 3, 4, 5]), (vec![4, 5, 6, 7, 8], vec![8])]);
}

#[test]
fn an_equal_area_listed_by_the_record_is_evidence() {
    // 1,734 on the record against 1,686 of its own sketch, and a front step listed with 48.
    let file = include_str!("../../sketches/record-sketch.sides");
    let report = text_report(file);
    assert!(report.contains("possible: front step counted +48"), "{report}");
    assert!(!report.contains("No common cause explains"), "{report}");
    // Without that line nothing is known that is 48 sq ft.
    let (before, rest) = file.split_once("  porch").unwrap();
    let (_, sketch) = rest.split_once("record outline").unwrap();
    let without = text_report(&format!("{before}record outline{sketch}"));
    assert!(without.contains("No common cause "), "{without}");
}

#[test]
fn a_sketch_of_one_of_two_spaces_with_one_name_says_nothing_about_the_other() {
    let walls = |feet: u32| format!("north 30'\neast {feet}'\nsouth 30'\nwest {feet}'\n");
    // The record has 30 × 42 on the ground where 30 × 40 was measured; the upper rooms are as measured.
    let text = format!(
        "record 2,460 sq ft\nlevel \"Ground\"\nliving \"Rooms\"\n{}level \"Upper\"\nliving \"Rooms\"\n{}record outline \"Ground\"\n{}",
        walls(40),
        walls(40),
        walls(42)
    );
    let report = text_report(&text);
    assert!(report.contains("sides 2 and 4 of the rooms"), "{report}");
    assert!(!report.contains("sides 1 and 2"), "{report}");
    assert_eq!(report.matches("of the rooms again").count(), 1, "{report}");
    // The file has the record's sketch, so nobody is asked for it.
    assert!(!report.contains("own sketch and the lengths on it"), "{report}");
}
