//! Departures in a drawing or a count, by the side or the level that they affect.

use super::{house, reconciled};

#[track_caller]
fn labels(text: &str) -> Vec<Vec<String>> {
    let reconciled = reconciled(text);
    let list = reconciled.figures()[0].explanations().list();
    list.iter().map(|explanation| explanation.departures().to_vec()).collect()
}

fn begins(labels: &[Vec<String>], words: &str) -> Vec<String> {
    let mut all: Vec<String> =
        labels.iter().flatten().filter(|label| label.starts_with(words)).cloned().collect();
    all.sort();
    all.dedup();
    all
}

#[test]
fn a_recess_and_a_jog_are_found_from_whatever_corner_the_walk_begins() {
    // 31 × 41 with 4 × 10 cut out of its north wall, or projecting from it: a record of 1,271 has neither.
    let recess = [
        "north 31'",
        "east 15'",
        "south 4'",
        "east 10'",
        "north 4'",
        "east 16'",
        "south 31'",
        "west 41'",
    ];
    let jog = [
        "north 31'",
        "east 15'",
        "north 4'",
        "east 10'",
        "south 4'",
        "east 16'",
        "south 31'",
        "west 41'",
    ];
    for start in 0..8 {
        let side = |number: usize| (number + 7 - start) % 8 + 1;
        let mut turned = recess;
        turned.rotate_left(start);
        let found = labels(&house(&turned, "").replace("1,200", "1,271"));
        // The recess lies after its first wall and after its second.
        let mut two = [3, 4].map(|number| format!("filled in: House side {}", side(number)));
        two.sort();
        assert_eq!(begins(&found, "filled in"), two, "from side {start}");
        assert!(two.iter().any(|label| found[0] == [label.clone()]), "{found:?}");
        assert_eq!(begins(&found, "left off"), [""; 0], "from side {start}");

        let mut turned = jog;
        turned.rotate_left(start);
        let found = labels(&house(&turned, "").replace("1,200", "1,271"));
        assert_eq!(found[0], [format!("left off: House side {}", side(4))], "from side {start}");
        assert_eq!(begins(&found, "left off").len(), 1, "{found:?}");
    }
}

#[test]
fn a_level_is_compared_with_the_level_below() {
    // 1,200, 900 and 400 on three levels; the second taken at the whole of the first is 300 more.
    let level = |name: &str, north: i64, east: i64| {
        format!(
            "level \"{name}\"\nliving \"{name} rooms\"\nnorth {north}'\neast {east}'\nsouth {north}'\nwest {east}'\n"
        )
    };
    let levels =
        [level("Ground", 30, 40), level("First", 30, 30), level("Second", 20, 20)].concat();
    let found = labels(&format!("record 2,800 sq ft\n{levels}"));
    assert_eq!(found[0], ["level: First at the whole outline below"]);
    // And the third at the whole of the second, 500 more.
    let found = labels(&format!("record 3,000 sq ft\n{levels}"));
    assert_eq!(found[0], ["level: Second at the whole outline below"]);
}

#[test]
fn a_level_is_not_taken_in_two_ways_at_once() {
    // 1,200 below and 900 above; counted twice, and at the whole of the level below, it would come to 3,300.
    let level = |name: &str, east: i64| {
        format!(
            "level \"{name}\"\nliving \"{name} rooms\"\nnorth 30'\neast {east}'\nsouth 30'\nwest {east}'\n"
        )
    };
    let found =
        labels(&format!("record 3,300 sq ft\n{}{}", level("Ground", 40), level("First", 30)));
    let ways = |labels: &Vec<String>| {
        labels.iter().filter(|label| label.starts_with("level: First")).count()
    };
    assert!(!found.is_empty() && found.iter().all(|labels| ways(labels) < 2), "{found:?}");
}

#[test]
fn a_recess_is_between_walls_at_a_right_angle() {
    // Two turns inward, both at a slanted wall: nothing to fill in. 10 × 20 + 15 × 10 and half of 5 × 5.
    let slanted = [
        "north 20'",
        "east 10'",
        "south 5'",
        "diagonal south 5' east 5'",
        "east 10'",
        "south 10'",
        "west 25'",
    ];
    let text = house(&slanted, "").replace("1,200", "420");
    let found = labels(&text);
    assert_eq!(begins(&found, "filled in"), [""; 0]);
    assert_eq!(begins(&found, "left off"), [""; 0]);
}

#[test]
fn a_space_that_the_record_lists_separately_is_counted_with_what_it_lists() {
    // A record of 1,300 holds the house, 30 × 40, and the porch, 5 × 20; one that lists the porch with 85 would come to
    // 1,285, and one that lists it with 84, by more than 15 sq ft another, is not taken to list this porch.
    let reported = |recorded: &str| {
        let words =
            if recorded.is_empty() { String::new() } else { format!(" recorded {recorded} sq ft") };
        let text = house(
            &["north 30'", "east 40'", "south 30'", "west 40'"],
            &format!(
                "porch \"Porch\" start east 40'{words}\nnorth 5'\neast 20'\nsouth 5'\nwest 20'\n"
            ),
        );
        let reconciled = reconciled(&text.replace("1,200", "1,300"));
        let reported = reconciled.figures()[0].explanations().reported();
        reported.map(|one| one.departures().join("; ")).any(|labels| labels == "counted: Porch")
    };
    assert!(reported("") && reported("100") && reported("84"));
    assert!(!reported("85"));
}

#[test]
fn a_jog_left_out_takes_off_no_more_than_its_smaller_depth() {
    // It projects 3 ft on one side and 5 on the other: 15 × 30 + 10 × 33 + 15 × 28 = 1,200, and 10 × 3 less without it.
    let jog = [
        "north 30'",
        "east 15'",
        "north 3'",
        "east 10'",
        "south 5'",
        "east 15'",
        "south 28'",
        "west 40'",
    ];
    let found = labels(&house(&jog, "").replace("1,200", "1,170"));
    assert_eq!(found[0], ["left off: House side 4"]);
}

#[test]
fn another_face_is_reported_if_the_walls_are_taken_there() {
    // with 6" of veneer all around, 29 × 39 = 1,131.
    let text = house(&["north 30'", "east 40'", "south 30'", "west 40'"], "");
    let text = format!("veneer 6\"\n{}", text.replace("1,200", "1,131"));
    assert_eq!(labels(&text)[0], ["face: frame"]);
    assert!(super::text_report(&text).contains("Measured to the frame"));
    let text = text.replace("1,131", "1,200").replace("30'", "30' 6\"");
    assert!(
        !super::text_report(&text).contains("Measured to"),
        "the figure's own face is not told"
    );
}

#[test]
fn spaces_outside_the_total_do_not_affect_its_range() {
    // A stair counts with the room around it, and an opening in an uncounted space does not reduce the total:
    // neither may widen the range.
    let wall = ["north 30' 6\"", "east 40' 6\"", "south 30' 6\"", "west 40' 6\""];
    let box_of = |kind: &str, start: &str| {
        format!("{kind} start {start}\nnorth 3' 6\"\neast 9' 6\"\nsouth 3' 6\"\nwest 9' 6\"\n")
    };
    let allows = |after: &str| {
        let reconciled = reconciled(&house(&wall, after));
        reconciled.figures()[0].explanations().list()[0].allows()
    };
    let plain = allows("");
    assert!((allows(&box_of("stair \"Stairs\"", "north 2' east 2'")) - plain).abs() < 1e-12);
    assert!((allows(&box_of("open \"Void\"", "north 2' east 2'")) - plain).abs() > 0.1);
}

#[test]
fn a_wall_between_a_notch_and_a_stair_is_no_jog() {
    // 10 × 20 + 6 × 12 + 7 × 24 + 7 × 28 = 636. The wall of 12 ft out of the notch projects on one side only; 12 × 6
    // less would be 564.
    let stairs = [
        "north 20'",
        "east 10'",
        "south 8'",
        "east 6'",
        "north 12'",
        "east 7'",
        "north 4'",
        "east 7'",
        "south 28'",
        "west 30'",
    ];
    let mut back = stairs.map(|side| {
        let (way, length) = side.split_once(' ').expect("a side");
        let way = match way {
            "north" => "south",
            "south" => "north",
            "east" => "west",
            _ => "east",
        };
        format!("{way} {length}")
    });
    back.reverse();
    for (sides, wall) in [(stairs.map(str::to_owned), 5), (back, 6)] {
        let sides: Vec<&str> = sides.iter().map(String::as_str).collect();
        let found = labels(&house(&sides, "").replace("1,200", "564"));
        assert_eq!(begins(&found, &format!("left off: House side {wall}")), [""; 0]);
    }
}
