//! Converts walls of the second computation to a sides file, and its results to ours.

use fairfoot::{Areas, House, Settings};

use fairfoot::units::Length;
use num_bigint::BigInt;
use num_traits::ToPrimitive;

use super::twin::{Direction, Exact, Wall};

/// Feet as an integer number of nanometers.
pub(crate) fn nanometers(feet: &Exact) -> i64 {
    let nm = feet * Exact::from(BigInt::from(304_800_000));
    assert!(nm.is_integer(), "{feet} ft is a whole number of nanometers");
    nm.to_integer().to_i64().expect("a wall is short")
}

/// A fraction of integers.
pub(crate) fn fraction(top: i64, bottom: i64) -> Exact {
    Exact::new(BigInt::from(top), BigInt::from(bottom))
}

/// The word of a direction.
pub(crate) fn word(direction: Direction) -> &'static str {
    match direction {
        Direction::North => "north",
        Direction::East => "east",
        Direction::South => "south",
        Direction::West => "west",
    }
}

/// A sides file with one living space of these walls; `head` precedes the level.
pub(crate) fn sides_file(head: &str, walls: &[Wall]) -> String {
    let mut text = format!("{head}\nlevel \"Ground floor\"\nliving \"House\"\n");
    for wall in walls {
        let length = Length::from_nm(nanometers(&wall.feet));
        let tolerance = Length::from_nm(nanometers(&wall.tolerance));
        text.push_str(&format!("{} {length} tolerance {tolerance}\n", word(wall.direction)));
    }
    text
}

/// Reads a text that is known to be valid.
pub(crate) fn read_house(text: &str) -> House {
    fairfoot::read("walk.sides", text).unwrap_or_else(|faults| panic!("{text}\n{faults}"))
}

/// The areas of a text.
pub(crate) fn areas(checked: &House, settings: &Settings) -> Areas {
    checked.areas(settings).unwrap_or_else(|faults| panic!("{faults}"))
}

/// An area of the program as an exact fraction of square feet.
pub(crate) fn exact(area: fairfoot::units::Area) -> Exact {
    Exact::new(
        BigInt::from(area.half_nm2()),
        BigInt::from(fairfoot::units::Area::SQUARE_FOOT.half_nm2()),
    )
}

/// Lengths in whole feet, for testing whether an outline touches itself.
pub(crate) fn whole_feet(lengths: &[Exact]) -> Vec<i64> {
    lengths.iter().map(|feet| feet.to_integer().to_i64().expect("a wall is short")).collect()
}
