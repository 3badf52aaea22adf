//! A side that could contain a whole misclosure, and how likely that is.

/// A side that could contain the whole misclosure, and how common such an error is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Suspect {
    pub(crate) side: usize,
    /// The common error, in words; `None` if only the size of the side's length fits.
    pub(crate) slip: Option<String>,
    /// How likely it is.
    pub(super) rank: Rank,
    /// Whether it would agree with its recorded length once the error is undone, which it does not as typed.
    pub(super) agrees: bool,
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
        Suspect { side, slip: None, rank: Rank::Size, agrees: false }
    }

    pub(super) fn common(side: usize, slip: impl Into<String>) -> Suspect {
        Suspect { side, slip: Some(slip.into()), rank: Rank::Common, agrees: false }
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
