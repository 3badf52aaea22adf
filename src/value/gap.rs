//! How much larger the record is than the house, both measured the same way.

use crate::house::Face;
use crate::house::House;
use crate::reconcile::{BridgeStep, CouldExplain, Explanation, Figure, Line, Reconciliation};

/// The record's area and the measured one, in whole square feet as printed.
///
/// If the record itself states its face and what it counts, these are not part of the gap: they are first applied to
/// the measured area, so that both are measured the same way.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Gap {
    pub(crate) record: i64,
    pub(crate) measured: i64,
    pub(crate) alike: i64,
    pub(crate) agrees: bool,
    pub(crate) counted: Vec<String>,
    pub(crate) face: Face,
    pub(crate) rounding: Option<CouldExplain>,
}

impl Gap {
    /// The gap; `None` if there is no record, or nothing was measured.
    pub(crate) fn of(reconciliation: &Reconciliation) -> Option<Gap> {
        let figure = record(reconciliation)?;
        let measured = figure.measured().whole_sq_ft();
        let counting = figure.line(BridgeStep::Counting).filter(|line| is_said(line));
        (measured > 0).then(|| Gap {
            record: figure.area().whole_sq_ft(),
            measured,
            agrees: figure.agreement().agrees(),
            alike: figure.measured_like_figure().whole_sq_ft(),
            counted: counting.map(|line| line.counted().to_vec()).unwrap_or_default(),
            face: figure.face(),
            rounding: figure.rounding_test().could_explain(),
        })
    }

    /// The record's area, in whole square feet.
    #[must_use]
    pub fn record(&self) -> i64 {
        self.record
    }

    /// The measured area in whole square feet, at the outside face, each wall rounded by the finer rule.
    #[must_use]
    pub fn measured(&self) -> i64 {
        self.measured
    }

    /// The measured area in whole square feet, at the record's own face and with what it says it counts.
    #[must_use]
    pub fn alike(&self) -> i64 {
        self.alike
    }

    /// The names of what the record says it counts besides living area.
    #[must_use]
    pub fn counted(&self) -> &[String] {
        &self.counted
    }

    /// The face the record is assumed to be measured to.
    #[must_use]
    pub fn face(&self) -> Face {
        self.face
    }

    /// Whether rounding the walls of this house to the foot could give the record; `None` if that cannot be
    /// computed.
    #[must_use]
    pub fn rounding(&self) -> Option<CouldExplain> {
        self.rounding
    }

    /// Whether the record and [`Gap::alike`] agree as closely as anyone measures.
    #[must_use]
    pub fn agrees(&self) -> bool {
        self.agrees
    }

    /// The record minus [`Gap::alike`], in whole square feet; negative if the record is smaller.
    #[must_use]
    pub fn sq_ft(&self) -> i64 {
        self.record - self.alike
    }
}

/// The record; `None` if it is not among the figures.
pub(crate) fn record(reconciliation: &Reconciliation) -> Option<&Figure> {
    reconciliation.figures().iter().find(|figure| figure.is_record())
}

/// Whether the figure itself states what the line adds.
fn is_said(line: &Line) -> bool {
    match line.step() {
        BridgeStep::Face => true,
        BridgeStep::Counting => !line.is_supported(),
        _ => false,
    }
}

/// The names of the uncounted spaces that the record says it counts, or would have to count to reach its total.
pub(crate) fn counted_spaces<'a>(figure: &Figure, house: &'a House) -> Vec<&'a str> {
    let said = figure.line(BridgeStep::Counting).filter(|line| is_said(line));
    let said = said.map(Line::counted).unwrap_or_default();
    // The likeliest cause, and what is as likely as it.
    let reported = || figure.explanations().reported();
    let best = reported().next();
    let is_as_likely = |one: &&Explanation| best.is_some_and(|best| one.is_as_likely_as(best));
    let would: Vec<usize> = reported().filter(is_as_likely).flat_map(Explanation::counts).collect();
    let spaces = house.spaces().iter().enumerate();
    let counted = spaces.filter(|(i, space)| {
        !space.is_counted() && (would.contains(i) || said.iter().any(|name| name == space.name()))
    });
    counted.map(|(_, space)| space.name()).collect()
}
