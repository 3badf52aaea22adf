//! Whether rounding could explain a figure: to the whole foot, or to the half foot if the figure says so.

use std::sync::Arc;

use crate::areas::range::Range;
use crate::areas::ranges::AreaRanges;
use crate::reconcile::{Ground, range_step};
use crate::units::area::Area;
use crate::units::length::{Halves, Step};

/// Whether rounding the walls of this house could give a figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize)]
pub enum CouldExplain {
    /// The figure is in the range.
    #[serde(rename = "yes")]
    Yes,
    /// Only if more walls are rounded against the rule than closing requires.
    #[serde(rename = "only against the rounding")]
    OnlyAgainst,
    /// No: the figure is outside even the widest range.
    #[serde(rename = "no")]
    No,
}

impl CouldExplain {
    /// The words printed for it.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            CouldExplain::Yes => "yes",
            CouldExplain::OnlyAgainst => "only against the rounding",
            CouldExplain::No => "no",
        }
    }
}

/// Two areas that this house can have with whole-foot walls, with no possible area between them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Between {
    /// The nearest area below the figure.
    pub below: Area,
    /// The nearest area above the figure.
    pub above: Area,
}

/// How far rounding can change this house at the figure's face, compared with the figure.
#[derive(Clone, Debug)]
pub struct RoundingTest {
    /// The step that the walls are assumed to be rounded to.
    pub(crate) step: Step,
    /// The step that the figure itself says its walls are rounded to.
    own: Step,
    /// The possible ranges when walls are rounded to `step`.
    ranges: Arc<AreaRanges>,
    halves: Halves,
    /// The figure minus what it says it counts: the area that rounding would have to give.
    pub(crate) wanted: Area,
}

impl RoundingTest {
    pub(super) fn of(ground: &Ground<'_>, counting: Area) -> RoundingTest {
        RoundingTest {
            step: range_step(ground.rule.step),
            own: ground.rule.step,
            ranges: Arc::clone(&ground.ranges),
            halves: ground.rule.halves,
            wanted: ground.figure.area.area() - counting,
        }
    }

    /// The step that the walls are assumed to be rounded to: the half foot if the figure says so, else the whole
    /// foot.
    #[must_use]
    pub fn step(&self) -> Step {
        self.step
    }

    /// The typical change of the area from that rounding, in square feet; `None` if any side is given by bearing.
    #[must_use]
    pub fn typical(&self) -> Option<f64> {
        self.ranges.typical(self.step)
    }

    /// The typical change of the area, in square feet, from rounding to the step that the figure itself states;
    /// `None` if any side is given by bearing.
    #[must_use]
    pub fn typical_of_own(&self) -> Option<f64> {
        self.ranges.typical(self.own)
    }

    /// The range of areas possible under that rounding, with as few walls as possible rounded against the rule;
    /// `None` where it cannot be computed.
    #[must_use]
    pub fn range(&self) -> Option<Range> {
        self.ranges.usual(false)
    }

    /// The range of areas possible under that rounding if any wall may be rounded up or down; `None` where it cannot
    /// be computed.
    #[must_use]
    pub fn widest(&self) -> Option<Range> {
        self.ranges.widest(false)
    }

    /// Whether all outlines close with each wall rounded independently; if not, some wall has to be adjusted.
    #[must_use]
    pub fn closes(&self) -> bool {
        self.ranges.closes(self.halves)
    }

    /// The area that rounding would have to give: the figure minus what it says it counts.
    #[must_use]
    pub fn wanted(&self) -> Area {
        self.wanted
    }

    /// Whether rounding could explain the figure; `None` if the range cannot be computed.
    #[must_use]
    pub fn could_explain(&self) -> Option<CouldExplain> {
        if self.range().is_some_and(|range| range.holds(self.wanted)) {
            return Some(CouldExplain::Yes);
        }
        match self.widest() {
            Some(widest) if widest.holds(self.wanted) => Some(CouldExplain::OnlyAgainst),
            Some(_) => Some(CouldExplain::No),
            None => None,
        }
    }

    /// The nearest possible areas below and above a figure that is in the range but that no outline gives, in whole
    /// square feet as printed. `None` if an outline gives it, if it is outside the range, or if there are too many
    /// outlines to try.
    #[must_use]
    pub fn between(&self) -> Option<Between> {
        let any = match self.could_explain()? {
            CouldExplain::Yes => false,
            CouldExplain::OnlyAgainst => true,
            CouldExplain::No => return None,
        };
        let totals = self.ranges.totals(any)?;
        let wanted = self.wanted.whole_sq_ft();
        let below = *totals.iter().rfind(|total| total.whole_sq_ft() <= wanted)?;
        let above = *totals.iter().find(|total| total.whole_sq_ft() >= wanted)?;
        let is_given = below.whole_sq_ft() == wanted || above.whole_sq_ft() == wanted;
        (!is_given).then_some(Between { below, above })
    }
}
