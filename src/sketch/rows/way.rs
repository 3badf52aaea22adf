//! Directions as seen from the street.

use serde::{Deserialize, Serialize};

use crate::geometry::compass::Direction;

/// A direction as seen from the street.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Way {
    /// Back: away from the street.
    Back,
    /// To the right.
    Right,
    /// Toward the street.
    Front,
    /// To the left.
    Left,
}

impl Way {
    /// Every direction, clockwise from the back.
    pub const ALL: [Way; 4] = [Way::Back, Way::Right, Way::Front, Way::Left];

    /// Converts a compass direction; the street is on the `front` side.
    pub(super) fn of(direction: Direction, front: Direction) -> Way {
        let turn = (clockwise(direction) + 4 - clockwise(front) + 2) % 4;
        Way::ALL[turn]
    }

    /// The compass direction.
    pub(super) fn direction(self, front: Direction) -> Direction {
        let turn = Way::ALL.iter().position(|&way| way == self).unwrap_or(0);
        CLOCKWISE[(turn + clockwise(front) + 2) % 4]
    }

    /// Its word, as a sides file takes it too.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Way::Back => "back",
            Way::Right => "right",
            Way::Front => "front",
            Way::Left => "left",
        }
    }

    /// The phrase that follows a length: `toward the back`, `to the right`.
    #[must_use]
    pub const fn spoken(self) -> &'static str {
        match self {
            Way::Back => "toward the back",
            Way::Right => "to the right",
            Way::Front => "toward the street",
            Way::Left => "to the left",
        }
    }
}

const CLOCKWISE: [Direction; 4] =
    [Direction::North, Direction::East, Direction::South, Direction::West];

fn clockwise(direction: Direction) -> usize {
    CLOCKWISE.iter().position(|&one| one == direction).unwrap_or(0)
}

/// A direction from its word or first letter.
pub(super) fn direction(word: &str) -> Option<Direction> {
    let word = word.to_lowercase();
    CLOCKWISE.into_iter().find(|one| one.word() == word || one.word()[..1] == word)
}

/// A direction as a row shows it, from a compass word or from `back`, `right`, `front`, `left`.
pub(super) fn way_of(word: &str, front: Direction) -> Option<Way> {
    let seen = match word.to_lowercase().as_str() {
        "back" => Some(Way::Back),
        "right" => Some(Way::Right),
        "front" => Some(Way::Front),
        "left" => Some(Way::Left),
        _ => None,
    };
    seen.or_else(|| direction(word).map(|direction| Way::of(direction, front)))
}
