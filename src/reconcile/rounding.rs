//! Is rounding big enough? To the whole foot, or to the half foot where a figure says that.

use std::sync::Arc;

use crate::areas::range::Range;
use crate::areas::ranges::AreaRanges;
use crate::areas::uncertainty::typical_squared;
use crate::house::House;
use crate::reconcile::{Ground, range_step};
use crate::units::area::Area;
use crate::units::length::Step;

/// Whether whole-foot walls of this house could give a figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CouldExplain {
    /// The figure lies in the range.
    Yes,
    /// Only with more walls against the rounding than closing asks for.
    OnlyAgainst,
    /// Not at all.
    No,
}

impl CouldExplain {
    /// As printed.
    pub const fn words(self) -> &'static str {
        match self {
            CouldExplain::Yes => "yes",
            CouldExplain::OnlyAgainst => "only against the rounding",
            CouldExplain::No => "no",
        }
    }
}

/// Two areas that whole-foot walls of this house give with none between them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Between {
    /// The nearest below.
    pub below: Area,
    /// The nearest above.
    pub above: Area,
}

/// How big whole-foot rounding is on this house, at the figure's face.
#[derive(Clone, Debug)]
pub struct RoundingTest {
    /// What the walls are taken to be rounded to.
    pub(crate) step: Step,
    /// The typical size, in square feet; none where sides are given by bearings.
    pub(crate) typical: Option<f64>,
    /// The same of the step that the figure itself is stated to.
    own: Option<f64>,
    /// What the walls leave open on these steps.
    ranges: Arc<AreaRanges>,
    /// The figure less what it says it counts: what rounding would have to give.
    pub(crate) wanted: Area,
}

impl RoundingTest {
    pub(super) fn of(house: &House, ground: &Ground<'_>, counting: Area) -> RoundingTest {
        let step = range_step(ground.rule.step);
        RoundingTest {
            step,
            typical: typical(house, ground, step),
            own: typical(house, ground, ground.rule.step),
            ranges: Arc::clone(&ground.ranges),
            wanted: ground.figure.area.area() - counting,
        }
    }

    /// What the walls are taken to be rounded to: the half foot where the figure says so, else the whole foot.
    pub fn step(&self) -> Step {
        self.step
    }

    /// The typical size of that rounding, in square feet; none where sides are given by bearings.
    pub fn typical(&self) -> Option<f64> {
        self.typical
    }

    /// The typical size of rounding to what the figure's own walls are stated to, in square feet.
    pub fn typical_of_own(&self) -> Option<f64> {
        self.own
    }

    /// What whole feet could give.
    pub fn range(&self) -> Option<Range> {
        self.ranges.usual(false)
    }

    /// What whole feet could give at the very most.
    pub fn widest(&self) -> Option<Range> {
        self.ranges.widest(false)
    }

    /// What rounding would have to give: the figure less what it says it counts.
    pub fn wanted(&self) -> Area {
        self.wanted
    }

    /// The answer; none where the range cannot be stated.
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

    /// Where the figure lies between two areas that whole feet give, and no outline gives it, in whole square feet as printed;
    /// none where one does, where rounding is not big enough, or where there are too many outlines to go through.
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

/// Spaces, and what is taken off them, add in squares.
#[expect(clippy::float_arithmetic, reason = "statistics")]
fn typical(house: &House, ground: &Ground<'_>, step: Step) -> Option<f64> {
    let mut sum = 0.0;
    for space in (0..house.spaces.len()).filter(|&i| crate::areas::is_in_total(house, i, false)) {
        for i in std::iter::once(space).chain(house.taken_off(space)) {
            let at = &ground.walls.spaces[i];
            sum += typical_squared(&at.traverse, &at.outline, step.length())?;
        }
    }
    Some(libm::sqrt(sum))
}
