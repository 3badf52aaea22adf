//! Compares a figure with an interval, and words the result.
//!
//! The numbers compared are whole square feet as printed, so that a reader who compares them finds the same.
#![expect(
    clippy::float_arithmetic,
    clippy::cast_possible_truncation,
    reason = "an interval about a float is rounded to whole square feet once, here"
)]

use crate::areas::range::Place;
use crate::units::decimal::thousands;

/// An interval in whole square feet, as printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Interval {
    low: i64,
    high: i64,
}

impl Interval {
    /// The interval around `middle`, extending by `either_way` on each side.
    pub(crate) fn about(middle: f64, either_way: f64) -> Interval {
        let whole = |sq_ft: f64| sq_ft.round() as i64;
        Interval { low: whole(middle - either_way), high: whole(middle + either_way) }
    }

    /// `1,530 to 1,581`, or one number if both ends are the same.
    pub(crate) fn text(self) -> String {
        if self.low == self.high {
            thousands(self.low)
        } else {
            format!("{} to {}", thousands(self.low), thousands(self.high))
        }
    }

    /// Whether `who` fits, or by how much it is above or below; `who` ends with a comma.
    pub(crate) fn compared(self, who: &str, sq_ft: i64) -> String {
        match Place::of(sq_ft, self.low, self.high) {
            Place::Within => format!("{who} fits"),
            Place::Above => format!("{who} is {} above", thousands(sq_ft - self.high)),
            Place::Below => format!("{who} is {} below", thousands(self.low - sq_ft)),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_text_follows_from_the_comparison() {
        let interval = Interval::about(1_872.2, 8.0);
        assert_eq!(interval.text(), "1,864 to 1,880");
        assert_eq!(interval.compared("the record, 1,877,", 1_877), "the record, 1,877, fits");
        assert_eq!(interval.compared("the record, 1,881,", 1_881), "the record, 1,881, is 1 above");
        assert_eq!(interval.compared("it,", 860), "it, is 1,004 below");
    }
}
