//! The directions of the plan and the two axes along which a traverse has to close.

/// A direction of the plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, strum::IntoStaticStr)]
#[strum(serialize_all = "kebab-case")]
pub enum Direction {
    /// Up the page when north is up.
    North,
    /// To the right when north is up.
    East,
    /// Opposite to north.
    South,
    /// Opposite to east.
    West,
}

impl Direction {
    /// Its word in the sides file.
    #[must_use]
    pub fn word(self) -> &'static str {
        self.into()
    }

    /// The axis it runs along.
    #[must_use]
    pub const fn axis(self) -> Axis {
        match self {
            Direction::North | Direction::South => Axis::North,
            Direction::East | Direction::West => Axis::East,
        }
    }

    /// 1 for north and east, -1 for south and west.
    #[must_use]
    pub const fn sign(self) -> i64 {
        match self {
            Direction::North | Direction::East => 1,
            Direction::South | Direction::West => -1,
        }
    }

    /// The direction to the right of somebody who walks this way.
    pub(crate) const fn right(self) -> Direction {
        match self {
            Direction::North => Direction::East,
            Direction::East => Direction::South,
            Direction::South => Direction::West,
            Direction::West => Direction::North,
        }
    }

    /// The direction back.
    pub(crate) const fn opposite(self) -> Direction {
        self.right().right()
    }

    /// The direction to the left of somebody who walks this way.
    pub(crate) const fn left(self) -> Direction {
        self.right().opposite()
    }

    /// The direction along `axis`: south or west if `sign` is negative, else north or east.
    pub(crate) const fn along(axis: Axis, sign: i64) -> Direction {
        match (axis, sign < 0) {
            (Axis::North, false) => Direction::North,
            (Axis::North, true) => Direction::South,
            (Axis::East, false) => Direction::East,
            (Axis::East, true) => Direction::West,
        }
    }
}

/// One of the two axes along which a traverse has to close.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Axis {
    /// North and south.
    North,
    /// East and west.
    East,
}

impl Axis {
    /// Both axes, north first.
    pub const BOTH: [Axis; 2] = [Axis::North, Axis::East];
}
