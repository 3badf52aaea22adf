//! Directions of the plan and the two axes on which a walk has to close.

/// A direction of the plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Direction {
    /// Up the page while north is up.
    North,
    /// To the right while north is up.
    East,
    /// Against north.
    South,
    /// Against east.
    West,
}

impl Direction {
    /// The word of the sides file.
    pub const fn word(self) -> &'static str {
        match self {
            Direction::North => "north",
            Direction::East => "east",
            Direction::South => "south",
            Direction::West => "west",
        }
    }

    /// The axis it runs along.
    pub const fn axis(self) -> Axis {
        match self {
            Direction::North | Direction::South => Axis::North,
            Direction::East | Direction::West => Axis::East,
        }
    }

    /// 1 along its axis, -1 against it.
    pub const fn sign(self) -> i64 {
        match self {
            Direction::North | Direction::East => 1,
            Direction::South | Direction::West => -1,
        }
    }

    /// The direction of an axis with a sign.
    pub(crate) const fn along(axis: Axis, sign: i64) -> Direction {
        match (axis, sign < 0) {
            (Axis::North, false) => Direction::North,
            (Axis::North, true) => Direction::South,
            (Axis::East, false) => Direction::East,
            (Axis::East, true) => Direction::West,
        }
    }
}

/// One of the two directions in which a walk has to close.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Axis {
    /// North and south.
    North,
    /// East and west.
    East,
}

impl Axis {
    /// Both, north first.
    pub const BOTH: [Axis; 2] = [Axis::North, Axis::East];
}
