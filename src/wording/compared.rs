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
use crate::wording::size::size_of_sq_ft;

/// What makes the area that a cause gives uncertain.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Unsure {
    /// How each wall was rounded.
    Rounding,
    /// How the outline was closed, where every wall is rounded one way.
    Closing,
    /// How the office's tape was read, where its walls are not rounded.
    OfficeReading,
    /// How the tape behind another figure was read, where walls are not rounded.
    Reading,
}

impl Unsure {
    fn words(self) -> &'static str {
        match self {
            Unsure::Rounding => "rounding",
            Unsure::Closing => "closing the outline",
            Unsure::OfficeReading => "how the office's tape was read",
            Unsure::Reading => "how the tape was read",
        }
    }
}

/// The area that a cause gives, in whole square feet as printed, and the figure that it is compared with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Gives {
    sq_ft: i64,
    low: i64,
    high: i64,
    figure: i64,
    unsure: Unsure,
}

impl Gives {
    /// What a cause gives, with the range that `unsure` could make of it.
    pub(crate) fn of(sq_ft: f64, band: FigureRange, figure: i64, unsure: Unsure) -> Gives {
        let whole = |sq_ft: f64| (sq_ft + 0.5).floor() as i64;
        Gives { sq_ft: whole(sq_ft), low: whole(band.low), high: whole(band.high), figure, unsure }
    }

    /// The same of a total that was meant and typed differently, against the house: `the house gives 1,361, 13 more
    /// than the 1,348 meant`, with a range where rounding could change it.
    pub(crate) fn said_of_meant(self, meant: i64, is_metric: bool) -> String {
        let shift = meant - self.figure;
        let Gives { sq_ft, low, high, unsure, .. } = self;
        let of_house = Gives {
            sq_ft: sq_ft + shift,
            low: low + shift,
            high: high + shift,
            figure: meant,
            unsure,
        };
        let number = match is_metric {
            true => size_of_sq_ft(meant, true),
            false => thousands(meant),
        };
        format!("the house {}", of_house.said(&format!("the {number} meant"), is_metric))
    }

    /// Whether the cause gives just the figure.
    pub(crate) fn is_as_said(self) -> bool {
        self.sq_ft == self.figure
    }

    /// The comparison in words: `gives 1,806, 30 less than the record`, with a range where rounding could change it. A
    /// metric file has square meters first.
    pub(crate) fn said(self, who: &str, is_metric: bool) -> String {
        let number = |sq_ft: i64| match is_metric {
            true => size_of_sq_ft(sq_ft, true),
            false => thousands(sq_ft),
        };
        let (sq_ft, apart) = (number(self.sq_ft), self.figure - self.sq_ft);
        let compared = match apart {
            0 => return format!("gives {sq_ft}, as {who} says"),
            1.. => format!("{} less than {who}", number(apart)),
            _ => format!("{} more than {who}", number(-apart)),
        };
        if self.low < self.high && (self.low..=self.high).contains(&self.figure) {
            let (low, high) = (number(self.low), number(self.high));
            let unsure = self.unsure.words();
            format!("gives {sq_ft}, {compared}; {unsure} could make it {low} to {high}")
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
            let band = FigureRange { low: 1_864.0, high: 1_880.3 };
            Gives::of(1_872.2, band, figure, Unsure::Rounding).said("the record", false)
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
        let swapped = FigureRange { low: 1_382.0, high: 1_412.0 };
        let meant = |sq_ft: f64| {
            Gives::of(sq_ft, swapped, 1_384, Unsure::OfficeReading).said_of_meant(1_348, false)
        };
        assert_eq!(
            meant(1_397.0),
            "the house gives 1,361, 13 more than the 1,348 meant; how the office's tape was read could make it 1,346 to 1,376"
        );
        let one = FigureRange { low: 1_806.0, high: 1_806.0 };
        assert_eq!(
            Gives::of(1_806.0, one, 1_836, Unsure::Reading).said("the plan", false),
            "gives 1,806, 30 less than the plan"
        );
        let up = FigureRange { low: 1_550.0, high: 1_576.0 };
        assert_eq!(
            Gives::of(1_550.0, up, 1_576, Unsure::Closing).said("the record", false),
            "gives 1,550, 26 less than the record; closing the outline could make it 1,550 to 1,576"
        );
        let half = FigureRange { low: 990.0, high: 990.0 };
        assert_eq!(
            Gives::of(990.0, half, 990, Unsure::Rounding).said("the record", true),
            "gives 92.0 sq m (990 sq ft), as the record says"
        );
    }
}
