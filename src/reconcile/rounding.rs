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
    /// No.
    #[serde(rename = "no")]
    No,
}

impl CouldExplain {
    /// The words printed.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            CouldExplain::Yes => "yes",
            CouldExplain::OnlyAgainst => "only against the rounding",
            CouldExplain::No => "no",
        }
    }
}

/// Two areas that whole-foot walls of this house can give, with none between them.
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
    /// The step the walls are assumed to be rounded to.
    pub(crate) step: Step,
    /// The step that the figure's own walls are stated to.
    own: Step,
    /// The possible ranges on these steps.
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

    /// The step the walls are assumed to be rounded to: the half foot if the figure says so, else the whole foot.
    #[must_use]
    pub fn step(&self) -> Step {
        self.step
    }

    /// The typical change from that rounding, in square feet; `None` if any side is given by bearing.
    #[must_use]
    pub fn typical(&self) -> Option<f64> {
        self.ranges.typical(self.step)
    }

    /// The typical change from rounding to the step the figure's own walls are stated to, in square feet.
    #[must_use]
    pub fn typical_of_own(&self) -> Option<f64> {
        self.ranges.typical(self.own)
    }

    /// The range of areas possible under rounding.
    #[must_use]
    pub fn range(&self) -> Option<Range> {
        self.ranges.usual(false)
    }

    /// The range if any wall may be rounded either way.
    #[must_use]
    pub fn widest(&self) -> Option<Range> {
        self.ranges.widest(false)
    }

    /// Whether all outlines close with each wall rounded by itself; otherwise somebody has to move a wall.
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

    /// The nearest possible areas below and above the figure, if the figure is in the range but no outline gives
    /// it, in whole square feet as printed. `None` if one gives it, if it is outside the range, or if there are too
    /// many outlines to try.
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
