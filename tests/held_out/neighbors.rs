//! Walls touched by neighbors: which parts of them carry no veneer, in whole inches.

use fairfoot::Settings;
use proptest::prelude::*;

use super::walks::{areas, read_house};

/// For every wall (north, east, south, west) of a rectangle of `size` inches, the stretches that neighbors cover:
/// from and to, from the west or south end.
type Covered = [Vec<(i64, i64)>; 4];

const VENEER: i64 = 6;
/// Four tolerances of half an inch: ends this near to a corner are at it, and walls this near to each other are
/// one.
const SLACK: i64 = 2;

/// The outside area, in square inches: each free inch of wall adds the veneer's thickness, and each corner whose
/// two walls are both free there adds its square.
fn outside(size: (i64, i64), covered: &Covered) -> i64 {
    let length = |side: usize| if side.is_multiple_of(2) { size.0 } else { size.1 };
    let snapped = |side: usize, at: i64| match at {
        at if at <= SLACK => 0,
        at if at >= length(side) - SLACK => length(side),
        at => at,
    };
    let stretches = |side: usize| {
        let all =
            covered[side].iter().map(move |&(from, to)| (snapped(side, from), snapped(side, to)));
        all.filter(|(from, to)| to - from > SLACK)
    };
    let free =
        |side: usize| length(side) - stretches(side).map(|(from, to)| to - from).sum::<i64>();
    let begins_free = |side: usize| stretches(side).all(|(from, _)| from > 0);
    let ends_free = |side: usize| stretches(side).all(|(_, to)| to < length(side));
    let corners = [
        ends_free(0) && ends_free(1),
        begins_free(1) && ends_free(2),
        begins_free(2) && begins_free(3),
        ends_free(3) && begins_free(0),
    ];
    let corners: i64 = corners.into_iter().map(i64::from).sum();
    size.0 * size.1 + VENEER * (0..4).map(free).sum::<i64>() + VENEER * VENEER * corners
}

/// A rectangle walked from one of its corners, in either direction.
fn walked(size: (i64, i64), first: usize, back: bool) -> (String, (i64, i64)) {
    let (east, north) = size;
    let corners = [(0, 0), (0, north), (east, north), (east, 0)];
    let mut order: Vec<usize> = (0..4).map(|i| (first + i) % 4).collect();
    if back {
        order[1..].reverse();
    }
    let mut text = String::new();
    for i in 0..4 {
        let (from, to) = (corners[order[i]], corners[order[(i + 1) % 4]]);
        let (word, run) = match (to.0 - from.0, to.1 - from.1) {
            (0, run) if run > 0 => ("north", run),
            (0, run) => ("south", -run),
            (run, _) if run > 0 => ("east", run),
            (run, _) => ("west", -run),
        };
        text.push_str(&format!("{word} {run}\"\n"));
    }
    (text, corners[first])
}

/// Offsets east or west, north or south.
fn start((east, north): (i64, i64)) -> String {
    let part = |far: i64, ahead: &str, back: &str| match far {
        0 => String::new(),
        far if far > 0 => format!(" {ahead} {far}\""),
        far => format!(" {back} {}\"", -far),
    };
    let parts = format!("{}{}", part(north, "north", "south"), part(east, "east", "west"));
    if parts.is_empty() { parts } else { format!(" start{parts}") }
}

/// A neighbor's start along a wall, its length, its distance from the wall, its first corner, its direction.
type Neighbor = (i64, i64, i64, usize, bool);

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2_000))]

    #[test]
    fn a_wall_moves_where_no_neighbor_touches_it(
        size in (150_i64..480, 150_i64..480),
        walk in (0_usize..4, any::<bool>()),
        neighbors in proptest::collection::vec(
            proptest::option::of((-30_i64..300, 40_i64..200, -1_i64..=SLACK, 0_usize..4, any::<bool>())),
            4,
        ),
        second in (proptest::option::of(3_i64..60), 40_i64..90),
    ) {
        const DEEP: i64 = 60;
        let (text, at) = walked(size, walk.0, walk.1);
        let mut file = format!("faces frame\nveneer {VENEER}\"\nlevel \"G\"\nliving \"House\"{}\n{text}", start(at));
        let mut covered: Covered = Default::default();
        for (side, neighbor) in neighbors.iter().enumerate() {
            let &Some((from, length, off, first, back)): &Option<Neighbor> = neighbor else { continue };
            let wall = if side.is_multiple_of(2) { size.0 } else { size.1 };
            // Neighbors to the east and west stay between the corners, so that no two cover the same area.
            let (from, to) = match side.is_multiple_of(2) {
                true => (from.min(wall - 10), (from + length).min(wall + 30)),
                false => (from.clamp(0, wall - 40), (from.clamp(0, wall - 40) + length).min(wall)),
            };
            let mut all = vec![(from, to)];
            // A second one on the north wall, with a gap between it and the first, or back to back with it.
            if let (0, Some(gap)) = (side, second.0) {
                all.push((to + gap, to + gap + second.1));
            }
            for (i, (from, to)) in all.into_iter().enumerate() {
                let size_of = if side.is_multiple_of(2) { (to - from, DEEP) } else { (DEEP, to - from) };
                let corner = match side {
                    0 => (from, size.1 + off),
                    1 => (size.0 + off, from),
                    2 => (from, -DEEP - off),
                    _ => (-DEEP - off, from),
                };
                let (walls, first_corner) = walked(size_of, first, back);
                let begins = start((corner.0 + first_corner.0, corner.1 + first_corner.1));
                file.push_str(&format!("garage \"G{side}{i}\"{begins}\n{walls}"));
                covered[side].push((from, to));
            }
        }
        let area = areas(&read_house(&file), &Settings::default()).spaces()[0].outside().area();
        let expected = fairfoot::units::Area::SQUARE_FOOT.sq_ft() * outside(size, &covered) as f64 / 144.0;
        prop_assert!((area.sq_ft() - expected).abs() < 1e-9, "{} {expected}\n{file}", area.sq_ft());
    }
}
