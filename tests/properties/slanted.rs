//! Slanted outlines compared with exact fractions, a geometry library and the formula of a mitered offset.

use fairfoot::Settings;

use fairfoot::units::Area;
use geo::{Area as _, LineString, Polygon};
use num_rational::Ratio;
use proptest::prelude::*;

/// Corners in whole inches, one on each of the given number of rays, with the inside on the left.
fn star() -> impl Strategy<Value = Vec<(i64, i64)>> {
    proptest::collection::vec((120_i32..900, 0_i32..60), 3..12).prop_map(|rays| {
        let count = f64::from(u32::try_from(rays.len()).unwrap());
        let corner = |(i, &(radius, jitter)): (usize, &(i32, i32))| {
            let turn = (f64::from(u32::try_from(i).unwrap()) + f64::from(jitter) / 100.0) / count;
            let (sine, cosine) = (turn * std::f64::consts::TAU).sin_cos();
            ((f64::from(radius) * cosine).round() as i64, (f64::from(radius) * sine).round() as i64)
        };
        rays.iter().enumerate().map(corner).collect()
    })
}

/// The outline as run-and-rise sides, or compass sides where one part is zero.
fn file(head: &str, corners: &[(i64, i64)]) -> String {
    let mut text = format!("{head}\nlevel \"G\"\nliving \"House\"\n");
    for (i, from) in corners.iter().enumerate() {
        let to = corners[(i + 1) % corners.len()];
        let (east, north) = (to.0 - from.0, to.1 - from.1);
        let east_word = if east > 0 { "east" } else { "west" };
        let north_word = if north > 0 { "north" } else { "south" };
        text.push_str(&match (east, north) {
            (0, north) => format!("{north_word} {}\"\n", north.abs()),
            (east, 0) => format!("{east_word} {}\"\n", east.abs()),
            (east, north) => {
                format!("diagonal {north_word} {}\" {east_word} {}\"\n", north.abs(), east.abs())
            }
        });
    }
    text
}

/// Square feet by cross products, in exact fractions.
fn by_fractions(corners: &[(i64, i64)]) -> Ratio<i64> {
    let n = corners.len();
    let doubled: i64 = (0..n)
        .map(|i| {
            let (a, b) = (corners[i], corners[(i + 1) % n]);
            a.0 * b.1 - a.1 * b.0
        })
        .sum();
    Ratio::new(doubled, 2 * 144)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(1_000))]

    #[test]
    fn the_area_is_that_of_exact_fractions_and_of_a_geometry_library(corners in star()) {
        let house = fairfoot::read("star.sides", file("", &corners));
        prop_assume!(house.is_ok(), "corners that fall together cross");
        let house = house.unwrap();
        let outline = house.spaces()[0].outline();
        let wanted = by_fractions(&corners);
        let unit = Area::SQUARE_FOOT.half_nm2();
        let exact = i128::from(*wanted.numer()) * unit / i128::from(*wanted.denom());
        prop_assert_eq!(outline.area(), Area::from_half_nm2(exact));
        let ring: LineString<f64> = corners.iter().map(|c| (c.0 as f64 / 12.0, c.1 as f64 / 12.0)).collect();
        let by_geo = Polygon::new(ring, Vec::new()).unsigned_area();
        prop_assert!((outline.area().sq_ft() - by_geo).abs() < 1e-6);
    }

    #[test]
    fn the_pieces_add_up(corners in star()) {
        let house = fairfoot::read("star.sides", file("", &corners));
        prop_assume!(house.is_ok(), "corners that fall together cross");
        let house = house.unwrap();
        let outline = house.spaces()[0].outline();
        let pieces = outline.cuts();
        prop_assume!(pieces.is_some(), "an outline with too many slanted walls in each other's way");
        let pieces = pieces.unwrap();
        prop_assert_eq!(pieces.iter().map(fairfoot::geometry::Cut::area).sum::<Area>(), outline.area());
    }

    #[test]
    fn a_veneer_widens_as_a_mitered_offset_does(corners in star(), inches in 1_i64..8) {
        let head = format!("faces frame\nveneer {inches}\"");
        let house = fairfoot::read("star.sides", file(&head, &corners));
        prop_assume!(house.is_ok(), "corners that fall together cross");
        let house = house.unwrap();
        let areas = house.areas(&Settings::default());
        prop_assume!(areas.is_ok(), "a wall too short for the veneer");
        let areas = areas.unwrap();
        let n = corners.len();
        let side = |i: usize| {
            let (a, b) = (corners[i % n], corners[(i + 1) % n]);
            ((b.0 - a.0) as f64 / 12.0, (b.1 - a.1) as f64 / 12.0)
        };
        let t = inches as f64 / 12.0;
        let round: f64 = (0..n).map(|i| side(i).0.hypot(side(i).1)).sum();
        let tangents: f64 = (0..n)
            .map(|i| {
                let (a, b) = (side(i), side(i + 1));
                let turn = (a.0 * b.1 - a.1 * b.0).atan2(a.0 * b.0 + a.1 * b.1);
                (turn / 2.0).tan()
            })
            .sum();
        // A + P·t + t²·Σ tan(θ/2)
        let wider = areas.spaces()[0].outside().area() - areas.spaces()[0].as_measured();
        prop_assert!((wider.sq_ft() - (round * t + t * t * tangents)).abs() < 1e-5);
    }

    #[test]
    fn rounded_slanted_walls_have_their_corners_on_whole_steps(corners in star()) {
        let house = fairfoot::read("star.sides", file("", &corners));
        prop_assume!(house.is_ok(), "corners that fall together cross");
        let house = house.unwrap();
        let areas = house.areas(&Settings::default()).unwrap();
        let space = &areas.spaces()[0];
        for (outline, unit) in [(space.tenth_foot(), 30_480_000), (space.whole_foot(), 304_800_000)] {
            for corner in outline.corners() {
                prop_assert_eq!(corner.east.nm() % unit, 0);
                prop_assert_eq!(corner.north.nm() % unit, 0);
            }
        }
    }

    #[test]
    fn the_first_corner_direction_and_mirroring_do_not_affect_how_slanted_walls_close(
        corners in star(),
        first in 0_usize..12,
        backwards in any::<bool>(),
        quarters in 0_usize..4,
        mirror in any::<bool>(),
    ) {
        // In whole inches of six, so that runs and rises tie for the odd foot often.
        let corners: Vec<(i64, i64)> =
            corners.iter().map(|c| ((c.0 + 3).div_euclid(6) * 6, (c.1 + 3).div_euclid(6) * 6)).collect();
        let mut other = corners.clone();
        other.rotate_left(first % corners.len());
        if backwards {
            other.reverse();
        }
        for corner in &mut other {
            if mirror {
                corner.0 = -corner.0;
            }
            for _ in 0..quarters {
                *corner = (corner.1, -corner.0);
            }
        }
        let areas = |corners: &[(i64, i64)]| {
            let house = fairfoot::read("star.sides", file("", corners)).ok()?;
            let areas = house.areas(&Settings::default()).ok()?;
            Some((areas.gross().tenth_foot(), areas.gross().whole_foot(), areas.gross().range()))
        };
        let ours = areas(&corners);
        prop_assume!(ours.is_some(), "corners that fall together cross");
        prop_assert_eq!(ours, areas(&other));
    }

    #[test]
    fn the_first_corner_and_direction_do_not_affect_how_curved_walls_close(
        quarters_of_a_foot in proptest::collection::vec(8_i64..60, 3),
        rise in 1_i64..24,
        first in 0_usize..6,
        backwards in any::<bool>(),
        mirror in any::<bool>(),
    ) {
        // A wall with an arc between two straight ones, in quarters of a foot.
        let [left, chord, right] = [0, 1, 2].map(|i| quarters_of_a_foot[i] * 3);
        let words = ["north", "east", "south", "west"];
        let word = |way: usize| if mirror { words[(4 - way) % 4] } else { words[way] };
        let sides = [
            (0, 240, false), (1, left, false), (1, chord, true), (1, right, false), (2, 240, false),
            (3, left + chord + right, false),
        ];
        let mut walk: Vec<(usize, i64, bool)> = sides.to_vec();
        walk.rotate_left(first);
        if backwards {
            walk.reverse();
            walk.iter_mut().for_each(|side| side.0 = (side.0 + 2) % 4);
        }
        let text = |walk: &[(usize, i64, bool)], word: &dyn Fn(usize) -> &'static str| {
            let mut text = "level \"G\"\nliving \"House\"\n".to_owned();
            for &(way, inches, is_arc) in walk {
                text.push_str(&if is_arc {
                    let most = (inches / 2).max(1);
                    format!("arc {} {inches}\" rise {}\" {}\n", word(way), (rise * 3).min(most), word(0))
                } else {
                    format!("{} {inches}\"\n", word(way))
                });
            }
            text
        };
        let areas = |text: String| {
            let house = fairfoot::read("arc.sides", text).ok()?;
            let areas = house.areas(&Settings::default()).ok()?;
            Some((areas.gross().tenth_foot(), areas.gross().whole_foot(), areas.gross().range()))
        };
        let home = areas(text(&sides, &|way| words[way]));
        prop_assert!(home.is_some());
        prop_assert_eq!(areas(text(&walk, &word)), home);
    }
}
