//! Says what area a cause gives and how a figure compares with it.
//!
//! The numbers compared are whole square feet as printed, so that a reader who compares them reaches the same result.
#![expect(
    clippy::float_arithmetic,
    clippy::cast_possible_truncation,
    reason = "what a cause gives is a float, rounded to whole square feet once, here"
)]

use crate::reconcile::explanation::FigureRange;
use crate::units::decimal::thousands;

/// The area that a cause gives, in whole square feet as printed, and the figure that it is compared with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Gives {
    sq_ft: i64,
    low: i64,
    high: i64,
    figure: i64,
}

impl Gives {
    /// What a cause gives, with the range that rounding could make of it.
    pub(crate) fn of(sq_ft: f64, band: FigureRange, figure: i64) -> Gives {
        let whole = |sq_ft: f64| (sq_ft + 0.5).floor() as i64;
        Gives { sq_ft: whole(sq_ft), low: whole(band.low), high: whole(band.high), figure }
    }

    /// The comparison in words: `gives 1,806, 30 less than the record`, with a range where rounding could change it.
    pub(crate) fn said(self, who: &str) -> String {
        let (sq_ft, apart) = (thousands(self.sq_ft), self.figure - self.sq_ft);
        let compared = match apart {
            0 => return format!("gives {sq_ft}, as {who} says"),
            1.. => format!("{} less than {who}", thousands(apart)),
            _ => format!("{} more than {who}", thousands(-apart)),
        };
        if self.low < self.high && (self.low..=self.high).contains(&self.figure) {
            let (low, high) = (thousands(self.low), thousands(self.high));
            format!("gives {sq_ft}, {compared}; rounding could make it {low} to {high}")
        } else {
            format!("gives {sq_ft}, {compared}")
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_text_follows_from_the_comparison() {
        let said = |figure: i64| {
            Gives::of(1_872.2, FigureRange { low: 1_864.0, high: 1_880.3 }, figure)
                .said("the record")
        };
        assert_eq!(said(1_872), "gives 1,872, as the record says");
        assert_eq!(
            said(1_877),
            "gives 1,872, 5 less than the record; rounding could make it 1,864 to 1,880"
        );
        assert_eq!(
            said(1_866),
            "gives 1,872, 6 more than the record; rounding could make it 1,864 to 1,880"
        );
        let one = FigureRange { low: 1_806.0, high: 1_806.0 };
        assert_eq!(
            Gives::of(1_806.0, one, 1_836).said("the plan"),
            "gives 1,806, 30 less than the plan"
        );
    }
}
