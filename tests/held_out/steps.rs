//! Areas as measured, to the tenth of a foot, to the whole foot, and with walls moved.

use fairfoot::Settings;
use num_traits::{Signed, Zero};

use super::twin::{self, Exact, Halves, Wall, random_house};
use super::walks::{areas, exact, fraction, nanometers, read_house, sides_file, whole_feet};

const HOUSES: u64 = 2_000;

fn directions(walls: &[Wall]) -> Vec<twin::Direction> {
    walls.iter().map(|wall| wall.direction).collect()
}

fn our_ties(halves: Halves) -> fairfoot::units::Halves {
    match halves {
        Halves::Up => fairfoot::units::Halves::Up,
        Halves::Down => fairfoot::units::Halves::Down,
        Halves::Even => fairfoot::units::Halves::Even,
    }
}

#[test]
fn areas_as_measured_are_those_of_the_second_computation() {
    for seed in 0..HOUSES {
        let walls = random_house::house(seed);
        let house = read_house(&sides_file("", &walls));
        let area = exact(house.spaces()[0].outline().area());
        assert_eq!(area, twin::as_measured(&walls), "house {seed}");
    }
}

#[test]
fn a_spread_misclosure_leaves_the_same_area_to_a_millionth() {
    for seed in 0..HOUSES {
        let walls = random_house::with_slack(seed);
        let house = read_house(&sides_file("", &walls));
        let area = exact(house.spaces()[0].outline().area());
        // Adjusted lengths are whole nanometers in the program and exact fractions in the second computation.
        let apart = (area - twin::as_measured(&walls)).abs();
        assert!(apart < fraction(1, 1_000_000), "house {seed}: {apart}");
    }
}

#[test]
fn walls_to_a_tenth_and_to_an_inch_close_as_the_second_computation_has_them() {
    for seed in 0..HOUSES {
        for walls in [random_house::house(seed), random_house::with_slack(seed)] {
            for halves in [Halves::Up, Halves::Down, Halves::Even] {
                for (fine, step) in [
                    (fairfoot::units::FineStep::TenthFoot, fraction(1, 10)),
                    (fairfoot::units::FineStep::Inch, fraction(1, 12)),
                ] {
                    let settings =
                        Settings { halves: our_ties(halves), fine, ..Settings::default() };
                    let house = read_house(&sides_file("", &walls));
                    let area = exact(areas(&house, &settings).gross().tenth_foot());
                    let (_, theirs) = twin::on_step_by_table(&walls, &step, halves);
                    assert_eq!(area, theirs, "house {seed}, {halves:?}, {fine:?}");
                }
            }
        }
    }
}

#[test]
fn whole_foot_walls_close_as_the_second_computation_has_them_unless_they_would_touch() {
    let mut touching = 0;
    let (mut tried, mut crossing, mut tied) = (0, 0, 0);
    for seed in 0..HOUSES {
        for walls in [random_house::house(seed), random_house::with_slack(seed)] {
            for halves in [Halves::Up, Halves::Down, Halves::Even] {
                tried += 1;
                let settings = Settings { halves: our_ties(halves), ..Settings::default() };
                let house = read_house(&sides_file("", &walls));
                let ours = areas(&house, &settings);
                let all = twin::nearest_closings(&walls, &fraction(1, 1), halves);
                assert!(!all.is_empty(), "house {seed}: more closings than can be listed");
                // Among those that are equally near, the first that does not touch itself.
                let is_clear = |closing: &&twin::Closing| {
                    twin::clear_of_itself(&directions(&walls), &whole_feet(&closing.lengths), 0)
                };
                if let Some(theirs) = all.iter().find(is_clear) {
                    tied += usize::from(all.iter().any(|other| other.area != theirs.area));
                    assert_eq!(
                        exact(ours.gross().whole_foot()),
                        theirs.area,
                        "house {seed}, {halves:?}"
                    );
                    continue;
                }
                touching += 1;
                // If every nearest closing touches itself, the program chooses one that does not, if there is one.
                let outline = ours.spaces()[0].whole_foot();
                let own: Vec<i64> = outline_feet(outline, &walls);
                let clear = twin::clear_of_itself(&directions(&walls), &own, 0);
                if !clear {
                    crossing += 1;
                    assert!(twin::widest(&walls).is_none() || ours.gross().widest().is_none());
                }
            }
        }
    }
    assert!(touching > 0, "narrow slots are among the houses");
    assert!(tried > 50 * crossing, "{crossing} of {tried} cannot be kept clear");
    assert!(20 * tied > tried, "{tied} of {tried} could close with another area");
}

#[test]
fn the_first_corner_and_direction_do_not_affect_the_chosen_closing() {
    // The plan rotated by quarter turns and mirrored, from another corner, backward: the same two areas.
    let words = [
        twin::Direction::North,
        twin::Direction::East,
        twin::Direction::South,
        twin::Direction::West,
    ];
    let turned = |direction: twin::Direction, quarters: usize, mirrored: bool| {
        let way = words.iter().position(|word| *word == direction).unwrap_or(0);
        words[(if mirrored { 4 - way } else { way } + quarters) % 4]
    };
    for seed in 0..600 {
        for walls in [random_house::house(seed), random_house::with_slack(seed)] {
            let areas_of = |walls: &[Wall]| {
                let ours = areas(&read_house(&sides_file("", walls)), &Settings::default());
                (ours.gross().tenth_foot(), ours.gross().whole_foot())
            };
            let home = areas_of(&walls);
            let place = usize::try_from(seed).unwrap_or(0);
            let mut other = walls.clone();
            other.rotate_left(place % walls.len());
            if place % 2 == 1 {
                other.reverse();
                other.iter_mut().for_each(|wall| wall.direction = turned(wall.direction, 2, false));
            }
            for wall in &mut other {
                wall.direction = turned(wall.direction, (place >> 1) % 4, (place >> 3) % 2 == 1);
            }
            assert_eq!(areas_of(&other), home, "house {seed}");
        }
    }
}

/// The walls of an outline in whole feet, in the order typed.
fn outline_feet(outline: &fairfoot::geometry::Outline, walls: &[Wall]) -> Vec<i64> {
    let corners = outline.corners();
    let n = corners.len();
    (0..n)
        .map(|i| {
            let (from, to) = (corners[i], corners[(i + 1) % n]);
            let along = match walls[i].direction {
                twin::Direction::North => to.north - from.north,
                twin::Direction::South => from.north - to.north,
                twin::Direction::East => to.east - from.east,
                twin::Direction::West => from.east - to.east,
            };
            assert_eq!(along.nm().rem_euclid(304_800_000), 0, "a wall in whole feet");
            along.nm().div_euclid(304_800_000)
        })
        .collect()
}

#[test]
fn walls_move_to_another_face_as_the_second_computation_moves_them() {
    let mut vanished = 0;
    for seed in 0..HOUSES {
        let walls = random_house::house(seed);
        let sixteenths = i64::try_from(seed % 160).unwrap() + 1;
        let thickness = fraction(sixteenths, 192);
        let veneer = fairfoot::units::Length::from_nm(nanometers(&thickness));
        let head = format!("faces frame\nveneer {veneer}");
        let each = vec![thickness; walls.len()];
        let house = read_house(&sides_file(&head, &walls));
        match (outside(&house), twin::moved(&walls, &each)) {
            (Ok(ours), Some(theirs)) => {
                assert_eq!(exact(ours.spaces()[0].outside().area()), theirs, "house {seed}");
            }
            (Err(faults), None) => {
                vanished += 1;
                assert_eq!(faults.list()[0].word().as_str(), "side-vanishes");
            }
            (ours, theirs) => {
                panic!("house {seed}: {:?} and {theirs:?}", ours.map(|a| a.gross().tenth_foot()))
            }
        }
    }
    assert!(vanished > 0, "some slots are narrower than two veneers");
}

fn outside(house: &fairfoot::House) -> Result<fairfoot::Areas, fairfoot::Diagnostics> {
    house.areas(&Settings::default())
}

#[test]
fn a_veneer_on_some_walls_only_moves_those_alone() {
    for seed in 0..HOUSES {
        let walls = random_house::house(seed);
        let veneer = fairfoot::units::Length::from_nm(4 * 25_400_000 + 5 * 3_175_000);
        let mut text = format!("faces frame\nveneer {veneer}\nlevel \"G\"\nliving \"House\"\n");
        let mut each: Vec<Exact> = Vec::new();
        for (i, wall) in walls.iter().enumerate() {
            let bare = (seed >> (i % 16)) & 1 == 1;
            let length = fairfoot::units::Length::from_nm(nanometers(&wall.feet));
            let none = if bare { " veneer none" } else { "" };
            text.push_str(&format!("{} {length}{none}\n", super::walks::word(wall.direction)));
            each.push(if bare { Exact::zero() } else { fraction(37, 96) });
        }
        let house = read_house(&text);
        match (outside(&house), twin::moved(&walls, &each)) {
            (Ok(ours), Some(theirs)) => {
                assert_eq!(exact(ours.spaces()[0].outside().area()), theirs, "house {seed}");
            }
            (Err(_), None) => {}
            (ours, theirs) => panic!("house {seed}: {} and {theirs:?}", ours.is_ok()),
        }
    }
}

#[test]
fn a_wall_with_a_veneer_on_a_part_of_it_is_joined_by_a_square_jog_whichever_way_it_runs() {
    // Frame 40 by 20, 6 in of veneer all around: 41 × 21 = 861. Half of a wall of 20 ft has none: from its outer corner
    // to its middle 10 1/2 ft of 6 in are missing, 5 1/4.
    for turn in 0..4 {
        let words = ["north", "east", "south", "west"];
        let word = |way: usize| words[(way + turn) % 4];
        for backwards in [false, true] {
            let mut sides = vec![
                format!("{} 20'", word(0)),
                format!("{} 40'", word(1)),
                format!("{} 10' veneer none", word(2)),
                format!("{} 10'", word(2)),
                format!("{} 40'", word(3)),
            ];
            if backwards {
                let other = |side: String| {
                    let (way, rest) = side.split_once(' ').unwrap();
                    let place = words.iter().position(|word| *word == way).unwrap();
                    format!("{} {rest}", words[(place + 2) % 4])
                };
                sides = sides.into_iter().rev().map(other).collect();
            }
            let text = format!(
                "faces frame\nveneer 6\"\nlevel \"G\"\nliving \"House\"\n{}",
                sides.join("\n")
            );
            let ours = outside(&read_house(&text)).expect("areas");
            assert_eq!(exact(ours.spaces()[0].outside().area()), fraction(3_423, 4), "{text}");
        }
    }
}

#[test]
fn a_slanted_wall_with_a_veneer_on_a_part_of_it_is_joined_by_a_square_jog_too() {
    // A triangle of 12, 16 and 20 ft, 6 in of veneer: its half perimeter squared over its area is 6, so with mitered
    // corners 96 + 48/2 + 6/4 = 121.5. The half of the long wall at the flat corner (sine 0.6, cosine 0.8) has none: a
    // strip of 6 in is missing that is 10 + 3/2 long outside and 10 + (1/2)/0.6 along the wall, 5.58333.
    let words = ["north", "east", "south", "west"];
    for turn in 0..4 {
        for mirrored in [false, true] {
            let word = |way: usize| {
                let way = if mirrored { (4 - way) % 4 } else { way };
                words[(way + turn) % 4]
            };
            let half = format!("diagonal {} 6' {} 8'", word(2), word(1));
            let text = format!(
                "faces frame\nveneer 6\"\nlevel \"G\"\nliving \"House\"\n{} 12'\n{half}\n{half} veneer none\n{} 16'\n",
                word(0),
                word(3)
            );
            let ours =
                outside(&read_house(&text)).unwrap_or_else(|faults| panic!("{text}\n{faults}"));
            let area = ours.spaces()[0].outside().area().sq_ft();
            assert!((area - 115.916_667).abs() < 1e-4, "{area}\n{text}");
        }
    }
}

#[test]
fn a_curved_wall_moves_round_its_own_center_whichever_way_it_faces() {
    // A wall of a house of 20 by 10 ft bulges in the middle, 6 in of veneer all around: 21 × 11 = 231, and of a circle
    // about the same center what lies beyond the moved wall. Half a circle of 5 ft becomes one of 5 1/2, cut 6 in
    // beyond its center: 5.5² acos(1/11) − 0.5 √30 = 42.02417. Hollowed out it becomes one of 4 1/2, and the wall cuts
    // off more than half: 4.5² (π − acos(1/9)) + 0.5 √20 = 36.29935. A chord of 8 ft rising 2 is of a circle of 5 ft
    // whose center lies 3 ft behind: 5.5² acos(7/11) − 3.5 √18 = 11.80165; hollowed out 4.5² acos(5/9) − 2.5 √14 =
    // 10.52661.
    let words = ["north", "east", "south", "west"];
    let cases = [
        (5, "10'", "5'", 0, 42.024_17),
        (5, "10'", "5'", 2, -36.299_35),
        (6, "8'", "2'", 0, 11.801_65),
        (6, "8'", "2'", 2, -10.526_61),
    ];
    for turn in 0..4 {
        let word = |way: usize| words[(way + turn) % 4];
        let [north, east, south, west] = [word(0), word(1), word(2), word(3)];
        for (beside, chord, rise, toward, more) in cases {
            let toward = word(toward);
            let text = format!(
                "faces frame\nveneer 6\"\nlevel \"G\"\nliving \"House\"\n{north} 10'\n{east} {beside}'\narc {east} {chord} rise {rise} {toward}\n{east} {beside}'\n{south} 10'\n{west} 20'\n"
            );
            let Ok(ours) = outside(&read_house(&text)) else { panic!("{text}") };
            let found = ours.spaces()[0].outside().area().sq_ft();
            assert!((found - (231.0 + more)).abs() < 1e-4, "{found} {more}\n{text}");
        }
    }
}

/// North, east, south and west of a plan turned and mirrored.
fn eight_ways() -> impl Iterator<Item = [&'static str; 4]> {
    let words = ["north", "east", "south", "west"];
    (0..8).map(move |way| {
        let (turn, mirrored) = (way % 4, way >= 4);
        [0, 1, 2, 3].map(|i| words[(if mirrored { 4 - i } else { i } + turn) % 4])
    })
}

#[test]
fn a_round_end_that_runs_on_from_its_walls_moves_with_them_whichever_way_it_faces() {
    // Half a circle of 5 ft on walls of 20 ft that run on into it, 6 in of veneer all around: 11 × 20.5 and half a
    // circle of 5 1/2: 225.5 + 47.51659.
    for [north, east, south, west] in eight_ways() {
        let text = format!(
            "faces frame\nveneer 6\"\nlevel \"G\"\nliving \"House\"\n{north} 20'\narc {east} 10' rise 5' {north}\n{south} 20'\n{west} 10'\n"
        );
        let Ok(ours) = outside(&read_house(&text)) else { panic!("{text}") };
        let found = ours.spaces()[0].outside().area().sq_ft();
        assert!((found - 273.016_59).abs() < 1e-4, "{found}\n{text}");
    }
}

#[test]
fn slanted_walls_that_run_on_into_a_curve_move_with_it_whichever_way_it_faces() {
    // A wall of 10 ft, a slant of 4 by 3, an arc of 6 ft rising 1, of a circle of 5 ft, which leaves the slant without
    // a bend as tan(θ/2) = 2/6 and tan θ = 3/4, and down again. Frame 14 · 10 + 10 · 3 + 12.5 (2θ − 0.96) = 174.08753,
    // walls of 44 + 10 θ = 50.43501. 6 in outward: half of those more, and 1/4 of what the bends come to: two of a
    // right angle with 1, two at the eaves with tan 26.565° = 1/2, the arc with θ = 0.64350: 174.08753 + 25.21751 +
    // 0.91088.
    for [north, east, south, west] in eight_ways() {
        let text = format!(
            "faces frame\nveneer 6\"\nlevel \"G\"\nliving \"House\"\n{north} 10'\ndiagonal {north} 3' {east} 4'\narc {east} 6' rise 1' {north}\ndiagonal {south} 3' {east} 4'\n{south} 10'\n{west} 14'\n"
        );
        let Ok(ours) = outside(&read_house(&text)) else { panic!("{text}") };
        let found = ours.spaces()[0].outside().area().sq_ft();
        assert!((found - 200.215_92).abs() < 1e-4, "{found}\n{text}");
    }
}

#[test]
fn a_slot_narrower_than_half_a_step_is_gone_under_tenths_and_kept_a_foot_wide_under_whole_feet() {
    // Two wings of 10 by 10 ft on 20 by 10, half an inch apart: in tenths the slot has no width, 400; in whole feet an
    // outline that does not touch itself needs a foot of it, taken from the wall across or from a wing: 20 × 20 less 10
    // or 20 × 21 less 10.
    let text = "level \"G\"\nliving \"House\"\nnorth 20'\neast 10'\nsouth 10'\neast 1/2\"\nnorth 10'\neast 10'\nsouth 20'\nwest 20' 1/2\"\n";
    let ours = areas(&read_house(text), &Settings::default());
    assert_eq!(ours.gross().tenth_foot().sq_ft_text(), "400");
    // Measured are 20 × 20 ft 1/2 in less 10 ft of the slot, 400.42: 410 is the nearer.
    assert_eq!(ours.gross().whole_foot().whole_sq_ft(), 410);
}

#[test]
fn a_wall_partly_shared_with_a_garage_moves_only_beside_it() {
    // 30 × 40 with 6 in of veneer is 31 × 41; along 20 ft of the garage the wall stays: 20 × 1/2 less. Where the garage
    // begins at the corner, the 6 in below it are not moved out either: 20 1/2 × 1/2.
    let garage = |start: &str| {
        format!(
            "faces frame\nveneer 6\"\nlevel \"G\"\nliving \"House\"\nnorth 30'\neast 40'\nsouth 30'\nwest 40'\ngarage \"Garage\" start {start}east 40'\nnorth 20'\neast 20'\nsouth 20'\nwest 20'\n"
        )
    };
    for (start, area) in [("north 5' ", 1_261.0), ("north 10' ", 1_260.75), ("", 1_260.75)] {
        let Ok(ours) = outside(&read_house(&garage(start))) else { panic!("{start}") };
        let found = ours.spaces()[0].outside().area().sq_ft();
        assert!((found - area).abs() < 1e-6, "{start}: {found}");
    }
}

#[test]
fn missing_thicknesses_are_the_assumed_ones() {
    // Inside 20 by 10 ft. Behind a veneer 4 7/16 and 4 5/8 in, 145/192 ft; without one 6 in; the veneer alone 37/96 ft.
    let room = "level \"G\"\nliving \"House\"\nnorth 20'\neast 10'\nsouth 20'\nwest 10'\n";
    for (head, each) in [
        ("faces inside", fraction(145, 192)),
        ("faces inside\nveneer none", fraction(1, 2)),
        ("faces frame", fraction(37, 96)),
        ("faces inside\nwall 5\"", fraction(5, 12) + fraction(37, 96)),
    ] {
        let ours = outside(&read_house(&format!("{head}\n{room}"))).expect("areas");
        let twice = each * fraction(2, 1);
        let area = (fraction(20, 1) + &twice) * (fraction(10, 1) + &twice);
        assert_eq!(exact(ours.spaces()[0].outside().area()), area, "{head}");
    }
}

#[test]
fn a_wall_shared_with_a_garage_carries_no_veneer_and_one_with_a_porch_does() {
    // Frame 40 by 20 ft, 6 in of veneer: 41 × 21; a garage along the whole of one short side leaves that wall where
    // it is, 40 1/2 × 21. A garage on another level, or one that lies 3 ft off, does not matter.
    let beside = |kind: &str, start: &str, level: &str| {
        format!(
            "faces frame\nveneer 6\"\nlevel \"G\"\nliving \"House\"\nnorth 20'\neast 40'\nsouth 20'\nwest 40'\n{level}{kind} \"Other\" start east {start}\nnorth 20'\neast 20'\nsouth 20'\nwest 20'\n"
        )
    };
    for (text, area) in [
        (beside("garage", "40'", ""), fraction(81, 2) * fraction(21, 1)),
        (beside("living", "40'", ""), fraction(81, 2) * fraction(21, 1)),
        // An inch short at either end is the same wall: four tolerances of half an inch.
        (
            beside("garage", "40'", "").replace(
                "north 20'\neast 20'\nsouth 20'\nwest 20'",
                "north 19' 11\"\neast 20'\nsouth 19' 11\"\nwest 20'",
            ),
            fraction(81, 2) * fraction(21, 1),
        ),
        (
            beside("garage", "40' north 1\"", "").replace(
                "north 20'\neast 20'\nsouth 20'\nwest 20'",
                "north 19' 11\"\neast 20'\nsouth 19' 11\"\nwest 20'",
            ),
            fraction(81, 2) * fraction(21, 1),
        ),
        (beside("porch", "40'", ""), fraction(861, 1)),
        (beside("garage", "43'", ""), fraction(861, 1)),
        (beside("garage", "20'", "level \"Upper\"\n"), fraction(861, 1)),
    ] {
        let ours = outside(&read_house(&text)).expect("areas");
        assert_eq!(exact(ours.spaces()[0].outside().area()), area, "{text}");
    }
}

#[test]
fn sides_by_bearing_are_rounded_in_length_and_closed_by_the_compass_rule() {
    // 10, 10, 11 and 10 ft to the whole foot, at right angles: they miss by 1 ft along the first. In proportion to
    // length the first gets 10/41 longer and the third 11/41 shorter, the others lean apart by as much: a trapezoid 10
    // ft high, its sides 10 + 10/41 and 11 − 11/41, so (21 − 1/41) × 5 = 104.87805.
    let text = "tolerance 1\"\nlevel \"G\"\nliving \"House\"\nbearing N 45° E 10' 4\"\nbearing S 45° E 10' 4\"\nbearing S 45° W 10' 7\"\nbearing N 45° W 10' 4\"\n";
    let ours = outside(&read_house(text)).expect("areas");
    let whole = ours.spaces()[0].whole_foot().area().sq_ft();
    assert!((whole - 104.878_05).abs() < 1e-4, "{whole}");
    // To the tenth 10.3, 10.3, 10.6 and 10.3: (20.9 − 0.3 × 0.3 ÷ 41.5) × 10.3 ÷ 2.
    let tenths = ours.spaces()[0].tenth_foot().area().sq_ft();
    assert!((tenths - (20.9 - 0.09 / 41.5) * 5.15).abs() < 1e-3, "{tenths}");
}

#[test]
fn rooms_taped_inside_share_the_partition_between_them() {
    // Two rooms of 20 by 20 separated by 4 1/2 in, walls 6 in: outside 41 ft 4 1/2 in by 21 ft.
    let room = "north 20'\neast 20'\nsouth 20'\nwest 20'\n";
    let text = format!(
        "wall 6\"\nveneer none\nfaces inside\nlevel \"G\"\nliving \"Left\"\n{room}\
         living \"Right\" start east 20' 4 1/2\"\n{room}"
    );
    let house = read_house(&text);
    let ours = outside(&house).expect("areas");
    let area: Exact = ours.spaces().iter().map(|space| exact(space.outside().area())).sum();
    assert_eq!(area, fraction(331, 8) * fraction(21, 1));
}

#[test]
fn the_pieces_of_every_random_house_add_up() {
    for seed in 0..HOUSES {
        let house = read_house(&sides_file("", &random_house::house(seed)));
        let outline = house.spaces()[0].outline();
        let pieces = outline.cuts().expect("right angles can be cut");
        let sum: fairfoot::units::Area = pieces.iter().map(fairfoot::geometry::Cut::area).sum();
        assert_eq!(sum, outline.area(), "house {seed}");
        let walls = outline.corners().len();
        assert!(2 * pieces.len() + 2 <= walls, "house {seed}: {} of {walls} sides", pieces.len());
    }
}

#[test]
fn an_estimated_wall_counts_on_a_step_with_what_closing_gives_it() {
    // 18' 2" and a guess of 16' against 34' 6": 4" over. As measured the guess, within a foot, takes 4" · 144/(144 +
    // 2/4), so that it is 16' 3.99" and the others stay. In tenths 18.2 + 16.3 = 34.5; 30.4 and 16.8 north, 47.2 south.
    let text = "level \"G\"\nliving \"House\"\nnorth 30' 5\"\neast 18' 2\"\nnorth 16' 10\"\neast 16' estimated\nsouth 47' 3\"\nwest 34' 6\"\n";
    let ours = areas(&read_house(text), &Settings::default());
    // 34.5 × 30.4 + 16.3 × 16.8.
    assert_eq!(ours.spaces()[0].tenth_foot().area().sq_ft_text(), "1322.64");
}

#[test]
fn a_rise_is_rounded_like_any_length_in_the_range() {
    // 2' 9" is 3 ft, farther than 0.15 ft from the half: one outline, 20 × 10 and the segment of a chord of 10 rising
    // 3, of a circle of 136/24 ft. 2' 7" may be 2 as well.
    let range = |rise: &str| {
        let text = format!(
            "level \"G\"\nliving \"House\"\nnorth 10'\neast 5'\narc east 10' rise {rise} north\neast 5'\nsouth 10'\nwest 20'\n"
        );
        let range =
            areas(&read_house(&text), &Settings::default()).gross().range().expect("a range");
        (range.low.sq_ft(), range.high.sq_ft())
    };
    let with = |rise: f64| {
        let radius = (100.0 + 4.0 * rise * rise) / (8.0 * rise);
        200.0 + radius * radius * (5.0 / radius).asin() - 5.0 * (radius - rise)
    };
    let is = |found: (f64, f64), low: f64, high: f64| {
        assert!((found.0 - low).abs() < 1e-6 && (found.1 - high).abs() < 1e-6, "{found:?}");
    };
    is(range("2' 9\""), with(3.0), with(3.0));
    is(range("2' 7\""), with(2.0), with(3.0));
    is(range("2' 3\""), with(2.0), with(2.0));
}

#[test]
fn rooms_taped_inside_have_a_partition_between_them_from_over_four_tolerances() {
    // Rooms of 10 by 10 ft with walls of 6". Up to 2" apart, four tolerances, they share a wall that stays where it is:
    // 10.5 × 11 each. Farther apart, each takes half: at 2 1/2" 10.5 + 1.25/12.
    let area = |apart: &str| {
        let text = format!(
            "faces inside\nveneer none\nwall 6\"\nlevel \"G\"\nliving \"A\"\nnorth 10'\neast 10'\nsouth 10'\nwest 10'\nliving \"B\" start east 10' {apart}\nnorth 10'\neast 10'\nsouth 10'\nwest 10'\n"
        );
        areas(&read_house(&text), &Settings::default()).spaces()[0].outside().area().sq_ft()
    };
    assert!((area("2\"") - 115.5).abs() < 1e-9, "{}", area("2\""));
    assert!((area("2 1/2\"") - 11.0 * (10.5 + 1.25 / 12.0)).abs() < 1e-9, "{}", area("2 1/2\""));
}

#[test]
fn a_chord_that_may_round_either_way_takes_its_segment_with_it() {
    // A curved wall of 10' 6" rising 3 ft, straight ones of 5 ft on each side of it, and a staircase down of 2' 6", 2'
    // 6", 3' 6" and 3' 6" with treads of 1 ft, against 12 ft: the chord is 10 or 11, and two of the four walls are the
    // larger.
    let text = "level \"G\"\nliving \"House\"\nnorth 12'\neast 5'\narc east 10' 6\" rise 3' north\neast 5'\nsouth 2' 6\"\neast 1'\nsouth 2' 6\"\neast 1'\nsouth 3' 6\"\neast 1'\nsouth 3' 6\"\nwest 23' 6\"\n";
    let segment = |chord: f64| {
        let radius = (chord * chord + 36.0) / 24.0;
        radius * radius * (chord / 2.0 / radius).asin() - chord / 2.0 * (radius - 3.0)
    };
    let mut all = Vec::new();
    for chord in [10.0, 11.0] {
        for larger in 0..16_u32 {
            if larger.count_ones() != 2 {
                continue;
            }
            let walls = [2.0, 2.0, 3.0, 3.0];
            let steps = walls.iter().enumerate().map(|(i, wall)| {
                let wall = wall + f64::from(larger >> i & 1);
                wall * (10.0 + chord + i as f64)
            });
            all.push(steps.sum::<f64>() + segment(chord));
        }
    }
    let (low, high) =
        all.iter().fold((f64::MAX, f64::MIN), |(low, high), &area| (low.min(area), high.max(area)));
    let range = areas(&read_house(text), &Settings::default()).gross().range().expect("a range");
    assert!((range.low.sq_ft() - low).abs() < 1e-6, "{} {low}", range.low.sq_ft());
    assert!((range.high.sq_ft() - high).abs() < 1e-6, "{} {high}", range.high.sq_ft());
}

#[test]
fn an_ambiguous_chord_beside_unambiguous_walls_takes_its_segment_too() {
    // 5 + 10' 6" + 5 against 20' 6", 10 ft deep: a chord of 10 on 20, or one of 11 on 21, each rising 3.
    let text = "level \"G\"\nliving \"House\"\nnorth 10'\neast 5'\narc east 10' 6\" rise 3' north\neast 5'\nsouth 10'\nwest 20' 6\"\n";
    let with = |chord: f64| {
        let radius = (chord * chord + 36.0) / 24.0;
        10.0 * (10.0 + chord) + radius * radius * (chord / 2.0 / radius).asin()
            - chord / 2.0 * (radius - 3.0)
    };
    let range = areas(&read_house(text), &Settings::default()).gross().range().expect("a range");
    assert!((range.low.sq_ft() - with(10.0)).abs() < 1e-6, "{}", range.low.sq_ft());
    assert!((range.high.sq_ft() - with(11.0)).abs() < 1e-6, "{}", range.high.sq_ft());
}
