//! What a practitioner asks of a report, on small houses with figures computed by hand.

use fairfoot::reconcile::Reconciliation;
use fairfoot::report::Look;
use fairfoot::{Settings, Weights};

fn reconciled(text: &str) -> Reconciliation {
    let house = fairfoot::read("practice.sides", text.to_owned()).unwrap();
    house.areas(&Settings::default()).unwrap().reconcile(&Weights::default()).unwrap()
}

fn in_one_line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<&str>>().join(" ")
}

/// The report of a file without a veneer, in one line.
fn report(text: &str) -> String {
    let result = reconciled(&format!("veneer none\n{text}"));
    in_one_line(&result.report().text(Look::default()))
}

/// The same with every figure behind it.
fn why(text: &str) -> String {
    let result = reconciled(&format!("veneer none\n{text}"));
    in_one_line(&result.report().text(Look { why: true, ..Look::default() }))
}

/// The walls of a rectangle, north first.
fn rectangle(north: &str, east: &str) -> String {
    format!("north {north}\neast {east}\nsouth {north}\nwest {east}\n")
}

fn house(record: &str, walls: &str) -> String {
    format!("record {record}\nlevel \"Ground floor\"\nliving \"House\"\n{walls}")
}

/// An L of 24 × 26 and 34 × 32 = 1,712 in whole feet, and 24 × 6 = 144 with its corner squared off: 1,856, which no tape
/// brings to 1,859.
#[test]
fn walls_in_whole_feet_are_not_called_unrounded() {
    let walls = "north 26'\neast 24'\nnorth 6'\neast 34'\nsouth 32'\nwest 58'\n";
    let said = report(&house("1,859 sq ft", walls));
    assert!(!said.contains("not rounded to the foot"), "{said}");
    let near = "24' by 6', squared off (comes near): gives 1,856, 3 less than the record";
    assert!(said.contains(near), "{said}");
}

/// Down to the foot 45 × 33 and 14 × 10 or 11: the walls east are 59 and the wall west 60, so that 60' 7" becomes 59,
/// 1,485 + 154 = 1,639; or one of 15 feet, 1,485 + 165 = 1,650.
#[test]
fn walls_rounded_down_that_do_not_close_go_beyond_a_foot() {
    let walls = "north 33' 9\"\neast 45' 8\"\nsouth 22' 10\"\neast 14' 11\"\nsouth 10' 11\"\nwest 60' 7\"\n";
    let said = report(&house("1,639 sq ft", walls));
    let nearest = "with each wall within a foot of its length, the nearest possible totals are 1,635 and 1,650; the record is 1,639";
    assert!(said.contains(nearest), "{said}");
    let gives = "so rounded, these walls do not close; closing them changes some by more than a foot, and can give 1,639 to 1,650; the record is 1,639";
    assert!(said.contains(gives), "{said}");
}

/// 42' 4" is 42, and 31' 5" is 31 or, read within 0.1 ft, 32: each level 1,302 or 1,344, less 10 × 12 = 120.
/// 2,484, 2,526 and 2,568, and from 2,530 −46, −4 and +38.
#[test]
fn three_totals_are_listed() {
    let level = rectangle("31' 5\"", "42' 4\"");
    let text = format!(
        "{}level \"Upper floor\"\nliving \"Upper rooms\"\n{level}open \"Foyer\" start east 12' north 6'\n{}",
        house("2,547 sq ft", &level),
        rectangle("10' 4\"", "12' 3\"")
    );
    let said = in_one_line(&reconciled(&text).report().text(Look::default()));
    assert!(said.contains("this house can be 2,484, 2,526 or 2,568;"), "{said}");
    assert!(said.contains("2,530 2,484 2,484, 2,526 or 2,568"), "{said}");
    assert!(said.contains("could change it by −46, −4 or +38"), "{said}");
}

/// A basement room of 27' 4" by 24' 7": 27 × 25 = 675, or 27 × 24 = 648.
#[test]
fn two_totals_below_grade_are_listed() {
    let text = format!(
        "level \"Basement\" below grade\nliving \"Rec room\"\n{}level \"Ground floor\"\nliving \"House\"\n{}",
        rectangle("27' 4\"", "24' 7\""),
        rectangle("27' 4\"", "43' 2\"")
    );
    let said = report(&text);
    assert!(said.contains("Below grade, not included 672 675 648 or 675"), "{said}");
}

/// 42 × 30 = 1,260 and the 528 that the record lists for a garage of 20 × 22 = 440 are 1,788.
#[test]
fn a_garage_may_be_counted_as_the_record_lists_it() {
    let text = format!(
        "{}garage \"Garage\" start east 42' 3\" recorded 528 sq ft\n{}",
        house("1,788 sq ft", &rectangle("30' 2\"", "42' 3\"")),
        rectangle("20' 2\"", "22' 3\"")
    );
    let said = report(&text);
    assert!(said.contains("possible: garage counted, as the record lists it +528"), "{said}");
    assert!(said.contains("- Garage counted, as the record lists it ("), "{said}");
    assert!(said.contains("ask whether the total counts the garage"), "{said}");
    assert!(said.contains("or state what else its 1,788 sq ft includes"), "{said}");
    assert!(!said.contains("which is exactly what is not explained"), "{said}");
}

/// 42 × 30 = 1,260 and a garage of 20 × 30 = 600; on the record 1,140 and 720, 120 the other way, or 1,380 and 480.
#[test]
fn the_wall_between_house_and_garage_may_stand_elsewhere_on_the_record() {
    let text = |record: &str, garage: &str| {
        format!(
            "{}garage \"Garage\" start east 42' recorded {garage} sq ft\n{}",
            house(record, &rectangle("30'", "42'")),
            rectangle("30'", "20'")
        )
    };
    let larger = "The record's garage is 120 sq ft larger than measured, which is exactly what its house is smaller by. Ask where the record puts the wall between them.";
    let said = report(&text("1,140 sq ft", "720"));
    assert!(said.contains(larger) && !said.contains("No common cause"), "{said}");
    let smaller = "The record's garage is 120 sq ft smaller than measured, which is exactly what its house is larger by. Ask where the record puts the wall between them.";
    let said = report(&text("1,380 sq ft", "480"));
    assert!(said.contains(smaller) && !said.contains("No common cause"), "{said}");
    // Listed as large as measured, it says nothing.
    assert!(!report(&text("1,140 sq ft", "600")).contains("wall between them"));
}

/// Both levels 28 × 30 = 840, the upper less two eaves of 6 × 30 = 180: 840 + 480 = 1,320, and 1,680 with both.
#[test]
fn two_low_parts_not_deducted_are_the_whole_level() {
    let text = format!(
        "{}level \"Upper floor\"\nliving \"Rooms\"\n{}low \"Front eaves\"\n{}low \"Rear eaves\" start north 22'\n{}",
        house("1,680 sq ft", &rectangle("28'", "30'")),
        rectangle("28'", "30'"),
        rectangle("6'", "30'"),
        rectangle("6'", "30'")
    );
    let said = report(&text);
    let (_, possible) = said.split_once("Possible:").unwrap();
    let (possible, _) = possible.split_once("To settle it").unwrap();
    assert_eq!(possible.matches(" - ").count(), 1, "{said}");
    assert!(possible.contains("(only common cause that fits)"), "{said}");
}

/// 42 × 30 = 1,260, a garage of 22 × 22 = 484 and a porch of 8 × 20 = 160: 1,904, all that is under the roof.
#[test]
fn two_spaces_under_the_roof_are_named_as_three_are() {
    let text = format!(
        "{}garage \"Garage\" start east 42'\n{}porch \"Front porch\" start south 8'\n{}",
        house("1,904 sq ft", &rectangle("30'", "42'")),
        rectangle("22'", "22'"),
        rectangle("8'", "20'")
    );
    let said = report(&text);
    let named = "- Garage and front porch counted (only common cause that fits): gives 1,904";
    assert!(said.contains(named), "{said}");
}

/// 42 × 31 = 1,302 in whole feet: rounding alone could explain it, and without a veneer the frame is the outside.
#[test]
fn the_figures_behind_a_report_do_not_contradict_it() {
    let said = why(&house("1,302 sq ft", &rectangle("30' 6\"", "41' 7\"")));
    assert!(said.contains("Rounding alone could explain it"), "{said}");
    assert!(!said.contains("rounding alone (not named"), "{said}");
    assert!(!said.contains("measured to the frame"), "{said}");
}

/// Two porches of 8 × 12 = 96 beside 48 × 30 = 1,440, and 1,536.
#[test]
fn equals_are_called_so_and_each_needs_a_photo() {
    let porch = rectangle("8' 2\"", "12' 3\"");
    let text = format!(
        "{}porch \"Front porch\" start south 8' 2\" east 10'\n{porch}porch \"Back porch\" start north 30' 2\" east 10'\n{porch}",
        house("1,536 sq ft", &rectangle("30' 2\"", "48' 3\""))
    );
    let said = report(&text);
    assert!(said.contains("(fits as well as the next"), "{said}");
    assert!(!said.contains("likeliest of"), "{said}");
    let result = reconciled(&format!("veneer none\n{text}"));
    assert_eq!(result.without_photo(), ["Front porch", "Back porch"]);
    // As many are listed as are said to be named.
    let behind = why(&text);
    let named = behind.split_once("combinations weighed, ").unwrap().1;
    let count = behind.matches("(named above)").count();
    assert!(named.starts_with(&format!("{count} are named")), "{behind}");
}

/// 26 × 38 = 988 and 26 × 32 = 832 are 1,820; with 28 for 38 the house would be smaller than its upper floor, with 22 for
/// 32 it is not, and both give 1,560.
#[test]
fn of_two_walls_as_likely_the_one_that_leaves_the_upper_level_smaller_comes_first() {
    let text = format!(
        "{}level \"Upper floor\"\nliving \"Bedrooms\"\n{}",
        house("1,560 sq ft", &rectangle("26' 3\"", "38' 2\"")),
        rectangle("26' 3\"", "32' 4\"")
    );
    let said = report(&text);
    let first = "- Sides 2 and 4 of the bedrooms taken as 22', ten feet less, here 32' 4\" (fits as well as the next): gives 1,560";
    assert!(said.contains(first), "{said}");
}

/// 30 × 24 twice is 1,440; with 42 for 24, 2 × 1,260 = 2,520. 26 × 38 twice is 1,976; with 35 for 38, 2 × 910 = 1,820.
#[test]
fn a_wall_may_be_misread_on_both_levels() {
    let both = |record: &str, level: &str| {
        format!("{}level \"Upper floor\"\nliving \"Bedrooms\"\n{level}", house(record, level))
    };
    let said = report(&both("2,520 sq ft", &rectangle("30'", "24'")));
    let wall = "- Sides 2 and 4 taken as 42' on both levels, the digits of 24 swapped, here 24'";
    assert!(said.contains(wall), "{said}");
    assert!(
        said.contains("sides 2 and 4 of the house and sides 2 and 4 of the bedrooms"),
        "{said}"
    );
}

/// 1,200 twice less 132 is 2,268; less 132 once more, 2,136.
#[test]
fn an_opening_may_be_deducted_twice() {
    let text = format!(
        "{}level \"Upper floor\"\nliving \"Upper rooms\"\n{}open \"Foyer\"\n{}",
        house("2,136 sq ft", &rectangle("30'", "40'")),
        rectangle("30'", "40'"),
        rectangle("11'", "12'")
    );
    let said = report(&text);
    assert!(said.contains("- Foyer deducted twice ("), "{said}");
    assert!(said.contains("ask how often the total deducts the foyer"), "{said}");
}

/// 46 × 32 = 1,472 less half of 5 × 7 is 1,454.5; squared off, 1,472.
#[test]
fn a_slanted_corner_may_be_squared_off() {
    let walls = "north 32'\neast 39'\ndiagonal south 5' east 7'\nsouth 27'\nwest 46'\n";
    let said = report(&house("1,472 sq ft", walls));
    let corner = "he slanted corner at side 3 of the house squared off";
    assert!(said.contains(corner), "{said}");
    assert!(said.contains("compare side 3 of the house with the record's sketch"), "{said}");
}

/// 46 × 28 = 1,288 and half of a porch of 24 × 10 = 240 are 1,408.
#[test]
fn what_is_left_may_be_half_of_a_space() {
    let text = format!(
        "{}porch \"Porch\" start east 4' south 10' 2\"\n{}",
        house("1,408 sq ft", &rectangle("28' 2\"", "46' 3\"")),
        rectangle("10' 2\"", "24' 3\"")
    );
    let said = report(&text);
    let half = "The 120 sq ft that are left are half of the porch, 240 sq ft. Ask whether the record's total counts half of the porch.";
    assert!(said.contains(half), "{said}");
}

/// 30.2 × 42.3 = 1,277.46 and 22.2 × 22.3 = 495.06: 1,772.52, rounded once.
#[test]
fn what_is_counted_has_one_size() {
    let text = format!(
        "{}garage \"Garage\" start east 42' 3\"\n{}",
        house("1,904 sq ft counting \"Garage\"", &rectangle("30' 2\"", "42' 3\"")),
        rectangle("22' 2\"", "22' 3\"")
    );
    let said = report(&text);
    assert!(said.contains("1,277 + 495 = 1,773, rounded once"), "{said}");
    assert!(!said.contains("496"), "{said}");
}

/// 1,000 and 484 are 1,484, by the garage or by the room above it.
#[test]
fn rooms_are_named_alike() {
    let text = format!(
        "{}garage \"Garage\" start east 40'\n{square}level \"Upper floor\"\nunfinished \"Bonus room\" start east 40'\n{square}",
        house("1,484 sq ft", &rectangle("25'", "40'")),
        square = rectangle("22'", "22'")
    );
    let said = report(&text);
    assert!(said.contains("- Bonus room counted"), "{said}");
    assert!(said.contains("whether the total counts the garage or the bonus room"), "{said}");
}

/// 30 × 50 = 1,500.
#[test]
fn the_name_of_a_figure_is_not_a_person() {
    let text = house("0 sq ft", &rectangle("30'", "50'"));
    let said = report(&text.replace("record 0 sq ft", "figure \"appraiser\" 1,900 sq ft"));
    assert!(said.contains("The figure \"appraiser\" is 400 sq ft larger"), "{said}");
    assert!(said.contains("lease correct the figure \"appraiser\" to 1,500 sq ft"), "{said}");
    assert!(!said.contains("the appraiser") && !said.contains("The appraiser"), "{said}");
    assert!(!said.contains("the record's"), "{said}");
}

/// A space that begins at a corner of the house, given by `start`.
fn space(kind: &str, name: &str, start: &str, north: &str, east: &str) -> String {
    format!("{kind} \"{name}\"{start}\n{}", rectangle(north, east))
}

/// 28 × 46 = 1,288, and below it 28 × 12 + 28 × 10 + 28 × 9 = 868: 2,156.
#[test]
fn the_rooms_of_a_basement_are_one_decision() {
    let below = format!(
        "level \"Basement\" below grade\n{}{}{}",
        space("living", "Rec room", "", "28'", "12'"),
        space("living", "Bedroom below", " start east 12'", "28'", "10'"),
        space("living", "Bath", " start east 22'", "28'", "9'")
    );
    let ground = format!("level \"Ground floor\"\n{}", space("living", "House", "", "28'", "46'"));
    let said = report(&format!("record 2,156 sq ft\n{below}{ground}"));
    assert!(said.contains("- Rec room, bedroom below and bath counted ("), "{said}");
    assert!(said.contains("gives 2,156, as the record says"), "{said}");
    assert!(!said.contains("No common cause"), "{said}");
}

/// A basement of 28 × 20 + 28 × 26 = 1,288, as large as the house above it: 2,576. Two rooms or one, it comes first.
#[test]
fn a_basement_of_two_rooms_comes_before_a_level_counted_twice() {
    let text = format!(
        "record 2,576 sq ft\nlevel \"Basement\" below grade\n{}{}level \"Ground floor\"\n{}",
        space("living", "Rec room", "", "28'", "20'"),
        space("living", "Bedroom below", " start east 20'", "28'", "26'"),
        space("living", "House", "", "28'", "46'")
    );
    let said = report(&text);
    assert!(said.contains("Possible: - Rec room and bedroom below counted ("), "{said}");
}

/// 1,288 and three additions of 9 × 7 = 63, 12 × 13 = 156 and 14 × 15 = 210, of which the record has none.
#[test]
fn of_a_level_only_the_house_may_be_counted() {
    let text = format!(
        "record 1,288 sq ft\nlevel \"Ground floor\"\n{}{}{}{}",
        space("living", "House", "", "28'", "46'"),
        space("living", "Bath addition", " start east 46'", "9'", "7'"),
        space("living", "Sun room", " start north 28'", "12'", "13'"),
        space("living", "Den", " start north 28' east 20'", "14'", "15'")
    );
    let said = report(&text);
    assert!(said.contains("- Bath addition, sun room and den not counted ("), "{said}");
    assert!(!said.contains("No common cause"), "{said}");
}

/// 1,288 and an attic of 28 × 30 = 840, of which 150 + 150 + 36 = 336 are low: 2,128 with all of them.
#[test]
fn three_low_parts_not_deducted_are_one_habit() {
    let text = format!(
        "record 2,128 sq ft\nlevel \"Ground floor\"\n{}level \"Attic\"\n{}{}{}{}",
        space("living", "House", "", "28'", "46'"),
        space("living", "Attic rooms", "", "28'", "30'"),
        space("low", "South eaves", "", "5'", "30'"),
        space("low", "North eaves", " start north 23'", "5'", "30'"),
        space("low", "East eaves", " start north 8' east 26'", "9'", "4'")
    );
    let said = report(&text);
    let all = "- South eaves (low ceiling), north eaves (low ceiling) and east eaves (low ceiling) not deducted (";
    assert!(said.contains(all), "{said}");
    assert!(!said.contains("No common cause"), "{said}");
}

/// Two levels of 28 × 36 = 1,008, the upper one less two strips of 6 × 36 = 216: its walls are as large as those below,
/// so that 2,016 is no other outline, but what is low not deducted.
#[test]
fn an_outline_as_large_as_the_one_below_is_not_taken_from_it() {
    let strips = |kind: &str, one: &str, other: &str| {
        format!(
            "record 2,016 sq ft\nlevel \"Ground floor\"\n{}level \"Attic\"\n{}{}{}",
            space("living", "House", "", "28'", "36'"),
            space("living", "Attic rooms", "", "28'", "36'"),
            space(kind, one, "", "6'", "36'"),
            space(kind, other, " start north 22'", "6'", "36'")
        )
    };
    let said = report(&strips("low", "Front eaves", "Rear eaves"));
    let both = "Possible: - Front eaves (low ceiling) and rear eaves (low ceiling) not deducted (";
    assert!(said.contains(both), "{said}");
    assert!(!said.contains("as large as the whole level below"), "{said}");
    let said = report(&strips("open", "Foyer", "Well"));
    assert!(said.contains("Possible: - Foyer and well not deducted ("), "{said}");
}

/// 1,288 alone, while the file says that the record counts the garage of 22 × 20 = 440 too: 1,728.
#[test]
fn what_a_record_is_said_to_count_may_be_missing_from_it() {
    let text = format!(
        "record 1,288 sq ft counting \"Garage\"\nlevel \"Ground floor\"\n{}{}",
        space("living", "House", "", "28'", "46'"),
        space("garage", "Garage", " start east 46'", "22'", "20'")
    );
    let said = report(&text);
    let not_counted = "- Garage not counted, although it is said here to be (";
    assert!(said.contains(not_counted), "{said}");
    assert!(said.contains("ask whether the total counts the garage"), "{said}");
    assert!(!said.contains("No common cause"), "{said}");
}

/// 28' 4" by 46' 3" are 1,310.42, and in whole feet 28 × 46 = 1,288. 1,315 is 5 more than the one and 27 more than the
/// other; 1,287 is 1 less than the other.
#[test]
fn a_few_square_feet_are_not_made_many_by_an_assumed_rule() {
    let said = report(&house("1,315 sq ft", &rectangle("28' 4\"", "46' 3\"")));
    let unrounded = "Walls not rounded to the foot would leave 5 sq ft, which two readings with a tape may differ by.";
    assert!(said.contains(unrounded), "{said}");
    assert!(said.contains("how walls are rounded"), "{said}");
    assert!(!said.contains("sketch") && !said.contains("Rounding alone"), "{said}");
    let said = report(&house("1,287 sq ft", &rectangle("28' 4\"", "46' 3\"")));
    let all_but = "Rounding walls to the foot would explain all but 1 sq ft, which is too little to look for a cause.";
    assert!(said.contains(all_but), "{said}");
    assert!(!said.contains("sketch") && !said.contains("Rounding alone"), "{said}");
    // Nor are 300.
    let said = report(&house("1,588 sq ft", &rectangle("28' 4\"", "46' 3\"")));
    assert!(!said.contains("not rounded to the foot") && !said.contains("all but"), "{said}");
}

/// 50 × 30 = 1,500 with recesses of 8 × 4 and 6 × 5 in it, 1,438: a sketch of the plain rectangle has 1,500.
#[test]
fn all_recesses_filled_in_are_one_decision() {
    let walls = "north 30'\neast 15'\nsouth 4'\neast 8'\nnorth 4'\neast 27'\nsouth 30'\nwest 12'\nnorth 5'\nwest 6'\nsouth 5'\nwest 32'\n";
    let said = report(&house("1,500 sq ft", walls));
    assert!(said.contains("Gross area, outside measure 1,438 1,438 1,438"), "{said}");
    let both = "The recess after side 3 of the house, 4' by 8', and the recess after side 9 of the house, 5' by 6', filled in";
    assert!(said.contains(both), "{said}");
    assert!(said.contains("gives 1,500, as the record says"), "{said}");
    assert!(said.contains("compare sides 3 and 9 of the house with the record's sketch"), "{said}");
}

/// 41 × 26 = 1,066 with a jog of 9 × 4 on the north side and one on the south side: 1,138. The arms of the cross to the
/// east and west are no jogs beside them.
#[test]
fn jogs_on_two_sides_left_off_are_one_decision() {
    let walls = "north 26'\neast 12'\nnorth 4'\neast 9'\nsouth 4'\neast 20'\nsouth 26'\nwest 10'\nsouth 4'\nwest 9'\nnorth 4'\nwest 22'\n";
    let said = report(&house("1,066 sq ft", walls));
    let both = "The jog at side 4 of the house, 9' by 4', and the jog at side 10 of the house, 9' by 4', left off (";
    assert!(said.contains(both), "{said}");
    assert!(said.contains("gives 1,066, as the record says"), "{said}");
}

/// The same house without one of the two: 1,138 − 36 = 1,102, whichever it is.
#[test]
fn of_two_equal_jogs_neither_is_the_only_one() {
    let walls = "north 26'\neast 12'\nnorth 4'\neast 9'\nsouth 4'\neast 20'\nsouth 26'\nwest 10'\nsouth 4'\nwest 9'\nnorth 4'\nwest 22'\n";
    let said = report(&house("1,102 sq ft", walls));
    assert!(said.contains("at side 4 of the house, 9' by 4', left off (fits as well as"), "{said}");
    assert!(said.contains("at side 10 of the house, 9' by 4', left off (also fits)"), "{said}");
    assert!(!said.contains("only common cause"), "{said}");
}

/// 24 × 30 = 720 below and above; above, two strips of 24 × 5 are low: 720 + 480 = 1,200. A record of 1,446 counts both
/// strips, 240, and 6 more.
#[test]
fn two_low_strips_are_set_beside_what_is_left_together() {
    let walls = rectangle("30'", "24'");
    let strip = rectangle("5'", "24'");
    let text = format!(
        "{}level \"Upper floor\"\nliving \"Upper rooms\"\n{walls}low \"Front eaves\" under 5' start north 0'\n{strip}low \"Rear eaves\" under 5' start north 25'\n{strip}",
        house("1,446 sq ft", &walls)
    );
    let said = report(&text);
    let together = "would be 240 of the 246 sq ft that are left; the other 6 are too little to name a cause for.";
    assert!(said.contains(together), "{said}");
}

/// 34 × 28 = 952, and with a garage of 20 × 22 = 440 1,392; a record of 1,580 leaves 188 of 628 beside the garage, far
/// more than rounding changes such a house by. The garage is not named for a part of it.
#[test]
fn a_space_that_leaves_much_is_not_named() {
    let text = format!(
        "{}garage \"Garage\" start east 34'\n{}",
        house("1,580 sq ft", &rectangle("28' 3\"", "34' 2\"")),
        rectangle("20' 2\"", "22' 1\"")
    );
    let said = report(&text);
    assert!(!said.contains("The garage would be"), "{said}");
}
