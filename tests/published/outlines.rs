//! Outlines with a stated area from the test suites of open geometry libraries.

use fairfoot::House;

use super::sheets::{In, areas, between, house, read_house};

/// Corners (north, east) as living space.
fn walked(corners: &[[&str; 2]]) -> House {
    read_house(&house("", &between(corners, In::Feet)))
}

/// The area of the only space, exact.
fn area_of(corners: &[[&str; 2]]) -> String {
    walked(corners).spaces()[0].outline().area().sq_ft_text()
}

#[test]
fn square_with_and_without_a_court_has_the_stated_area_and_length() {
    // JTS, AreaLengthTest: a square from 20 to 40, length 80, area 400; with a hole from 25 to 35,
    // length 120, area 300.
    let square = "level \"Ground floor\"\nliving \"House\"\nn 20\ne 20\ns 20\nw 20\n";
    let court = "court \"Court\" start east 5 north 5\nn 10\ne 10\ns 10\nw 10\n";
    let length = |text: &str| -> String {
        let checked = read_house(text);
        let round = checked.spaces().iter().map(|space| space.outline().perimeter());
        round.sum::<fairfoot::units::Length>().decimal_feet()
    };
    assert_eq!(areas(square).gross().as_measured().sq_ft_text(), "400");
    assert_eq!(length(square), "80");
    let both = format!("{square}{court}");
    assert_eq!(areas(&both).gross().as_measured().sq_ft_text(), "300");
    assert_eq!(areas(&both).gross().tenth_foot().sq_ft_text(), "300");
    assert_eq!(areas(&both).gross().whole_foot().sq_ft_text(), "300");
    assert_eq!(length(&both), "120");
}

#[test]
fn both_ways_round_give_one_area() {
    // JTS, AreaTest: a ring from 100 to 200 is +10000 clockwise, -10000 the other way; here an area is never below
    // zero.
    let ring = [["100", "100"], ["200", "100"], ["200", "200"], ["100", "200"]];
    assert_eq!(area_of(&ring), "10000");
    let back = [ring[0], ring[3], ring[2], ring[1]];
    assert_eq!(area_of(&back), "10000");
}

#[test]
fn slanted_rings_have_the_stated_areas() {
    // GEOS, signedAreaTest (east north there): 8400 and -2400. A repeated corner there is not a side.
    assert_eq!(area_of(&[["180", "60"], ["240", "140"], ["180", "200"], ["120", "120"]]), "8400");
    assert_eq!(area_of(&[["180", "60"], ["120", "140"], ["180", "100"], ["240", "140"]]), "2400");
}

#[test]
fn small_shapes_have_the_stated_areas() {
    // The crate geo, tests of area.rs: 5 × 6, a triangle in the unit square, 10 × 10 with two unit
    // holes.
    assert_eq!(area_of(&[["0", "0"], ["0", "5"], ["6", "5"], ["6", "0"]]), "30");
    assert_eq!(area_of(&[["0", "0"], ["0", "1"], ["1", "1"]]), "0.5");
    let text = "units feet\nlevel \"Ground floor\"\nliving \"House\"\nn 10\ne 10\ns 10\nw 10\n\
                court \"West court\" start east 1 north 1\nn 1\ne 1\ns 1\nw 1\n\
                court \"East court\" start east 5 north 5\nn 1\ne 1\ns 1\nw 1\n";
    assert_eq!(areas(text).gross().as_measured().sq_ft_text(), "98");
}

#[test]
fn overlapping_squares_have_the_worked_areas() {
    // JTS, TestOverlayAA, case 0: squares from 10 to 100 and from 50 to 200. The shapes are
    // published; their areas, worked exactly: 8100 and 22500, 2500 in common, 28100 together, 5600
    // of the first alone.
    let first = [["10", "10"], ["100", "10"], ["100", "100"], ["10", "100"]];
    assert_eq!(area_of(&first), "8100");
    let second = [["50", "50"], ["200", "50"], ["200", "200"], ["50", "200"]];
    assert_eq!(area_of(&second), "22500");
    let together = [
        ["10", "10"],
        ["100", "10"],
        ["100", "50"],
        ["200", "50"],
        ["200", "200"],
        ["50", "200"],
        ["50", "100"],
        ["10", "100"],
    ];
    assert_eq!(area_of(&together), "28100");
    // The part in common as a garage under the roof of the first: it is deducted.
    let garage =
        "garage \"Garage\" within \"House\" start east 40 north 40\nn 50\ne 50\ns 50\nw 50\n";
    let alone = areas(&format!("{}{garage}", house("", &between(&first, In::Feet))));
    assert_eq!(alone.gross().as_measured().sq_ft_text(), "5600");
    assert_eq!(alone.spaces()[1].as_measured().sq_ft_text(), "2500");
}
