//! A side that could contain a whole misclosure, and how likely that is.

use std::borrow::Cow;

use crate::geometry::compass::Direction;

/// A 64th of an inch, below which a walk is back at its start.
pub(super) const SIXTY_FOURTH: i64 = 396_875;

/// A common error in one side that would explain a misclosure.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Slip {
    TypedTwice,
    OneTooMany,
    OtherWay,
    /// Walked another quarter turn: south instead of west.
    QuarterTurn(Direction),
    /// `73` for 7.3.
    PointLeftOut,
    /// `2.8` for 28, or for 280.
    PointMisplaced,
    /// Several times as long as every other side.
    FarLonger,
    DigitsSwapped,
    DigitDroppedOrDoubled,
    InchesLeftOff,
    FeetLeftOff,
    FeetAndInchesExchanged,
    /// Off by one, five or ten feet.
    Miscounted,
    /// Tenths of a foot written as inches, or the reverse.
    InchesAndTenths,
    /// `302"` for 30' 2".
    RunTogether,
    /// `44.7"` or `28.10` for feet and inches.
    WithAPoint,
    /// A number without a unit that was read in meters.
    MetersWithoutUnit,
    /// Read in one unit and typed in another.
    Unit {
        read: ReadIn,
        typed: ReadIn,
    },
    /// A bearing, read in another way or two.
    Bearing(String),
}

/// A unit in which a length can be read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, strum::Display)]
#[strum(serialize_all = "lowercase")]
pub(crate) enum ReadIn {
    Feet,
    Inches,
    Meters,
    Centimeters,
    Millimeters,
}

impl ReadIn {
    /// A number in this unit, as it is typed.
    pub(crate) fn typed(self, number: &str) -> String {
        match self {
            ReadIn::Feet => format!("{number}'"),
            ReadIn::Inches => format!("{number}\""),
            ReadIn::Meters => format!("{number} m"),
            ReadIn::Centimeters => format!("{number} cm"),
            ReadIn::Millimeters => format!("{number} mm"),
        }
    }
}

impl Slip {
    /// The error in words, to follow "perhaps" or to end in a question mark.
    pub(crate) fn words(&self) -> Cow<'static, str> {
        match self {
            Slip::TypedTwice => "typed twice",
            Slip::OneTooMany => "one too many",
            Slip::OtherWay => "walked the other way",
            Slip::QuarterTurn(direction) => return format!("walked {}", direction.word()).into(),
            Slip::PointLeftOut => "a point left out",
            Slip::PointMisplaced => "a point misplaced",
            Slip::FarLonger => "many times longer than the others",
            Slip::DigitsSwapped => "digits swapped",
            Slip::DigitDroppedOrDoubled => "a digit dropped or doubled",
            Slip::InchesLeftOff => "inches left off",
            Slip::FeetLeftOff => "feet left off",
            Slip::FeetAndInchesExchanged => "feet and inches exchanged",
            Slip::Miscounted => "a foot, five or ten miscounted",
            Slip::InchesAndTenths => "inches and tenths mixed up",
            Slip::RunTogether => "feet and inches run together",
            Slip::WithAPoint => "feet and inches with a point",
            Slip::MetersWithoutUnit => "meters, without their unit",
            Slip::Unit { read, typed } => return format!("{read}, not {typed}").into(),
            Slip::Bearing(bearings) => return bearings.clone().into(),
        }
        .into()
    }
}

/// A side that could contain the whole misclosure, and how common such an error is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Suspect {
    pub(crate) side: usize,
    /// The common error; `None` if only the size of the side's length fits.
    pub(crate) slip: Option<Slip>,
    /// How likely it is.
    pub(super) rank: Rank,
    /// Whether it would agree with its recorded length once the error is undone, which it does not as typed.
    pub(super) agrees: bool,
    /// How the side reads with the error undone; `None` if the error does not say.
    pub(super) undone: Option<Undone>,
    /// The side that has to have an error of its own, which together with this one leaves nothing of the misclosure.
    pub(crate) with: Option<usize>,
}

/// A side with its error undone, and what the walk would then still miss.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Undone {
    pub(super) to: Reread,
    /// In nanometers.
    pub(super) left: i64,
}

/// What becomes of a side whose error is undone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Reread {
    /// Another length, in nanometers.
    Length(i64),
    /// Another direction.
    Toward(Direction),
    /// Taken out of the walk.
    Gone,
}

/// How likely a suspect is, the likeliest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Rank {
    /// Its number has no unit, although those of the other sides have one.
    NoUnit,
    /// Its number has a wrong unit.
    Unit,
    /// A common error has the size of the misclosure.
    Common,
    /// Only its length is large enough.
    Size,
}

impl Suspect {
    pub(super) fn of_size(side: usize) -> Suspect {
        Suspect { side, slip: None, rank: Rank::Size, agrees: false, undone: None, with: None }
    }

    pub(super) fn common(side: usize, slip: Slip) -> Suspect {
        Suspect { slip: Some(slip), rank: Rank::Common, ..Suspect::of_size(side) }
    }

    /// The same suspect, with how it reads once its error is undone.
    pub(super) fn undone(self, to: Reread, left: i64) -> Suspect {
        Suspect { undone: Some(Undone { to, left: left.abs() }), ..self }
    }

    /// What the walk would miss with the error undone; the most possible if that is not known.
    pub(super) fn left(&self) -> i64 {
        self.undone.map_or(i64::MAX, |undone| undone.left)
    }

    /// Whether the walk would then be back at its start to a 64th of an inch.
    pub(super) fn is_exact(&self) -> bool {
        self.left() <= SIXTY_FOURTH
    }
}

/// The number with each pair of neighboring digits swapped, one variant per pair.
pub(super) fn swapped(number: i64) -> Vec<i64> {
    let digits: Vec<char> = number.to_string().chars().collect();
    let swap = |i: usize| {
        let mut digits = digits.clone();
        digits.swap(i, i + 1);
        digits.into_iter().collect::<String>().parse().ok()
    };
    (0..digits.len().saturating_sub(1)).filter_map(swap).filter(|&other| other != number).collect()
}
