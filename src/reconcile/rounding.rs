//! Whether rounding could explain a figure: to the whole foot, or to the half foot if the figure says so.

use std::sync::{Arc, OnceLock};

use crate::areas::range::Range;
use crate::areas::ranges::AreaRanges;
use crate::house::House;
use crate::reconcile::{Ground, range_step, total};
use crate::units::area::Area;
use crate::units::length::{Halves, Step};

/// Whether rounding the walls of this house could give a figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize)]
pub enum CouldExplain {
    /// Some outline with rounded walls gives it.
    #[serde(rename = "yes")]
    Yes,
    /// Only if more walls are rounded against the rule than closing requires.
    #[serde(rename = "only against the rounding")]
    OnlyAgainst,
    /// No: no outline gives it, whichever walls are rounded up or down.
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
    /// The house at the figure's face, each wall rounded by the finer rule: what rounding to `step` starts from.
    start: Area,
    /// The answer, once it was asked for.
    answer: OnceLock<Option<CouldExplain>>,
}

impl RoundingTest {
    pub(super) fn of(house: &House, ground: &Ground<'_>, counting: Area) -> RoundingTest {
        RoundingTest {
            step: range_step(ground.rule.step),
            own: ground.rule.step,
            ranges: Arc::clone(&ground.ranges),
            halves: ground.rule.halves,
            wanted: ground.figure.area.area() - counting,
            start: total(house, &ground.fine.areas),
            answer: OnceLock::new(),
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
    /// `None` if any side is given by bearing, or if every wall is a whole number of such steps.
    #[must_use]
    pub fn typical_of_own(&self) -> Option<f64> {
        if self.ranges.are_on(self.own) { None } else { self.ranges.typical(self.own) }
    }

    /// Whether every wall of the house is a whole number of feet, so that rounding to the foot moves none.
    pub(crate) fn is_on_feet(&self) -> bool {
        self.ranges.are_on(Step::WholeFoot)
    }

    /// The range of areas possible under that rounding, with as few walls as possible rounded against the rule;
    /// `None` where it cannot be computed.
    #[must_use]
    pub fn range(&self) -> Option<Range> {
        self.ranges.usual(false)
    }

    /// The areas in that range, if they are two or three with nothing between them; else none.
    pub(crate) fn few(&self) -> Vec<Area> {
        self.ranges.few_totals(false)
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

    /// The house at the figure's face, each wall rounded by the finer rule.
    pub(crate) fn start(&self) -> Area {
        self.start
    }

    /// The area that rounding would have to give: the figure minus what it says it counts.
    #[must_use]
    pub fn wanted(&self) -> Area {
        self.wanted
    }

    /// Whether rounding could explain the figure: whether some outline with rounded walls gives it, or, where there
    /// are too many to try, whether it is in their range. `None` if the range cannot be computed.
    #[must_use]
    pub fn could_explain(&self) -> Option<CouldExplain> {
        *self.answer.get_or_init(|| {
            let listed = |any: bool| !matches!(self.around(any), Around::Between(_));
            let quickly = |any: bool| self.ranges.give(self.wanted.whole_sq_ft(), any);
            if self.is_in(self.range()) && quickly(false).unwrap_or_else(|| listed(false)) {
                return Some(CouldExplain::Yes);
            }
            // What an outline gives is in the widest range, which then need not be known. Where none gives it, it is
            // enough that there is one.
            let is_given = quickly(true);
            if is_given == Some(false) && self.ranges.has_widest() {
                return Some(CouldExplain::No);
            }
            let is_possible = is_given == Some(true)
                || self.is_in(Some(self.widest()?)) && is_given.unwrap_or_else(|| listed(true));
            Some(if is_possible { CouldExplain::OnlyAgainst } else { CouldExplain::No })
        })
    }

    /// The nearest possible areas below and above a figure that lies in a range but that no outline gives, in whole
    /// square feet as printed: of any outline if the answer is [`CouldExplain::No`], of those that are rounded as a
    /// rule if it is [`CouldExplain::OnlyAgainst`]. `None` if the figure is given, if it is outside the range, or if
    /// there are too many outlines to try.
    #[must_use]
    pub fn between(&self) -> Option<Between> {
        let (range, any) = match self.could_explain()? {
            CouldExplain::Yes => return None,
            CouldExplain::OnlyAgainst => (self.range(), false),
            CouldExplain::No => (self.widest(), true),
        };
        match self.is_in(range).then(|| self.around(any)) {
            Some(Around::Between(between)) => Some(between),
            _ => None,
        }
    }

    /// Whether rounding could give the figure with these spaces taken the other way: one that is not counted here added,
    /// one that is deducted not, one that is counted left out. `None` where there are too many outlines to try.
    pub(crate) fn could_explain_with(&self, changed: &[usize]) -> Option<CouldExplain> {
        let wanted = self.wanted.whole_sq_ft();
        let gives = |any: bool| self.ranges.give_with(changed, wanted, any);
        Some(match gives(false)? {
            true => CouldExplain::Yes,
            false if gives(true)? => CouldExplain::OnlyAgainst,
            false => CouldExplain::No,
        })
    }

    fn is_in(&self, range: Option<Range>) -> bool {
        range.is_some_and(|range| range.holds(self.wanted))
    }

    /// What rounded outlines give at and around the figure; with `any`, each wall may be rounded up or down.
    fn around(&self, any: bool) -> Around {
        let wanted = self.wanted.whole_sq_ft();
        let Some(totals) = self.ranges.totals(any) else { return Around::NotKnown };
        let below = totals.iter().rfind(|total| total.whole_sq_ft() <= wanted);
        let above = totals.iter().find(|total| total.whole_sq_ft() >= wanted);
        match (below, above) {
            (Some(&below), _) if below.whole_sq_ft() == wanted => Around::Given,
            (Some(&below), Some(&above)) => Around::Between(Between { below, above }),
            _ => Around::NotKnown,
        }
    }
}

/// What rounded outlines give at and around a figure.
enum Around {
    Given,
    Between(Between),
    /// There are too many outlines to try.
    NotKnown,
}
