//! A bay equals the sides it stands for, whichever way the outline is walked.

use proptest::prelude::*;

fn area(text: &str) -> i128 {
    let house = fairfoot::read("bay.sides", text).expect("a house that closes");
    let areas = house.areas(&fairfoot::Settings::default()).expect("areas");
    areas.gross().as_measured().half_nm2()
}

/// A house of 40 by 30 ft whose east wall has three parts, from north to south: 10' of wall, the bay, 12' of wall.
fn clockwise(bay: &str) -> String {
    format!(
        "level \"G\"\nliving \"H\"\nnorth 30'\neast 40'\nsouth 10'\n{bay}\nsouth 12'\nwest 40'\n"
    )
}

fn counterclockwise(bay: &str) -> String {
    format!(
        "level \"G\"\nliving \"H\"\neast 40'\nnorth 12'\n{bay}\nnorth 10'\nwest 40'\nsouth 30'\n"
    )
}

#[test]
fn an_angled_bay_adds_its_trapezoid() {
    // (8 + 4) / 2 × 2 = 12 sq ft beside 1,200.
    let square_foot = 2 * 304_800_000_i128.pow(2);
    let bay = area(&clockwise("bay south 8' out 2' flat 4'"));
    assert_eq!(bay, 1_212 * square_foot);
    assert_eq!(area(&counterclockwise("bay north 8' out 2' flat 4'")), bay);
}

#[test]
fn a_round_bay_is_the_arc_over_its_width() {
    let bay = area(&clockwise("bay south 8' out 2' round"));
    assert_eq!(bay, area(&clockwise("arc south 8' rise 2' east")));
    assert_eq!(area(&counterclockwise("bay north 8' out 2' round")), bay);
}

#[test]
fn a_bay_is_turned_outward_beside_walls_by_closing() {
    let sides = "north 30'\neast 40'\nsouth 10'\nbay south 8' out 2' flat 4'";
    let closing = |last: &str| format!("level \"G\"\nliving \"H\"\n{sides}\n{last}\n");
    let measured = area(&closing("south 12'\nwest 40'"));
    assert_eq!(area(&closing("south by closing\nwest by closing")), measured);
    assert_eq!(area(&closing("close")), measured);
    let other_way = "level \"G\"\nliving \"H\"\nwest 40'\nsouth 12'\nbay south 8' out 2' flat 4'\neast by closing\nnorth by closing\n";
    assert_eq!(area(other_way), {
        // 40 × 20 and the bay.
        let square_foot = 2 * 304_800_000_i128.pow(2);
        812 * square_foot
    });
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn a_bay_is_the_diagonals_it_stands_for(flat in 1_i64..200, more in 1_i64..200, out in 1_i64..300) {
        let inches = |sixteenths: i64| format!("{}.{:04}\"", sixteenths / 16, sixteenths % 16 * 625);
        // The width is even in sixteenths over the flat front, so that each half is on a tape.
        let width = flat + 2 * more;
        let (side, out_by, front) = (inches(more), inches(out), inches(flat));
        let bay = format!("bay south {} out {out_by} flat {front}", inches(width));
        let typed = format!(
            "diagonal south {side} east {out_by}\nsouth {front}\ndiagonal south {side} west {out_by}"
        );
        let house = |sides: &str| {
            format!("level \"G\"\nliving \"H\"\nnorth 100'\neast 40'\nsouth 10'\n{sides}\nsouth by closing\nwest 40'\n")
        };
        prop_assert_eq!(area(&house(&bay)), area(&house(&typed)));
    }
}
