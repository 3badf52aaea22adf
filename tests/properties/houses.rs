//! Random houses for the laws.

use fairfoot::units::Length;
use proptest::prelude::*;

/// A side: a direction from 0 (north) clockwise to 3 (west), and its length in sixteenths of an inch.
pub(crate) type Side = (usize, i64);

pub(crate) const WORDS: [&str; 4] = ["north", "east", "south", "west"];

pub(crate) fn length(sixteenths: i64) -> Length {
    Length::from_nm(sixteenths * 1_587_500)
}

/// A right-angled outline: a base with towers of different heights side by side.
///
/// Heights and widths are over a foot, so that it does not cross itself; it closes exactly.
pub(crate) fn towers() -> impl Strategy<Value = Vec<Side>> {
    let one = (200_i64..6_000, 1_000_i64..9_000);
    proptest::collection::vec(one, 1..7).prop_map(|towers| {
        let mut sides = vec![(0, towers[0].1)];
        for (i, &(width, height)) in towers.iter().enumerate() {
            sides.push((1, width));
            let next = towers.get(i + 1).map_or(0, |next| next.1);
            match next - height {
                0 => {}
                rise if rise > 0 => sides.push((0, rise)),
                fall => sides.push((2, -fall)),
            }
        }
        sides.push((3, towers.iter().map(|tower| tower.0).sum()));
        // Equal heights leave two sides in one line: one side.
        let mut merged: Vec<Side> = Vec::new();
        for side in sides {
            match merged.last_mut() {
                Some(last) if last.0 == side.0 => last.1 += side.1,
                _ => merged.push(side),
            }
        }
        merged
    })
}

/// The area of such an outline in sixteenths of an inch squared, computed independently from strips.
pub(crate) fn area_by_strips(sides: &[Side]) -> i128 {
    let mut height = 0_i128;
    let mut area = 0_i128;
    for &(way, run) in sides {
        match way {
            0 => height += i128::from(run),
            2 => height -= i128::from(run),
            1 => area += height * i128::from(run),
            _ => area -= height * i128::from(run),
        }
    }
    area.abs()
}

/// A sides file of one living space.
pub(crate) fn file(head: &str, sides: &[Side]) -> String {
    let mut text = format!("{head}\nlevel \"Ground floor\"\nliving \"House\"\n");
    for &(way, run) in sides {
        text.push_str(&format!("{} {}\n", WORDS[way], length(run)));
    }
    text
}

/// The walk begun at another corner.
pub(crate) fn from_corner(sides: &[Side], first: usize) -> Vec<Side> {
    let first = first % sides.len();
    [&sides[first..], &sides[..first]].concat()
}

/// The walk in the opposite direction.
pub(crate) fn backwards(sides: &[Side]) -> Vec<Side> {
    sides.iter().rev().map(|&(way, run)| ((way + 2) % 4, run)).collect()
}

/// The house rotated by quarter turns.
pub(crate) fn turned(sides: &[Side], quarters: usize) -> Vec<Side> {
    sides.iter().map(|&(way, run)| ((way + quarters) % 4, run)).collect()
}

/// The house mirrored.
pub(crate) fn mirrored(sides: &[Side]) -> Vec<Side> {
    sides.iter().map(|&(way, run)| ((4 - way) % 4, run)).collect()
}

/// The same house with lengths in multiples of 3 inches, so that walls are more often halfway between whole feet;
/// it still closes.
pub(crate) fn coarse(sides: &[Side]) -> Vec<Side> {
    let coarse: Vec<Side> =
        sides.iter().map(|&(way, run)| (way, (run + 24).div_euclid(48) * 48)).collect();
    let sum = |ways: [usize; 2]| -> i64 {
        coarse
            .iter()
            .map(|&(way, run)| {
                if way == ways[0] {
                    run
                } else if way == ways[1] {
                    -run
                } else {
                    0
                }
            })
            .sum()
    };
    if sum([0, 2]) == 0 && sum([1, 3]) == 0 { coarse } else { sides.to_vec() }
}
