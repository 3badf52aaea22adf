//! The bridge from measured area to figure: steps that add up to the gap exactly.
#![expect(clippy::float_arithmetic, reason = "a cause may count a level by three quarters")]

use crate::areas::range::Range;
use crate::house::House;
use crate::reconcile::cause::Cause;
use crate::reconcile::counting::counted_by;
use crate::reconcile::departures::Listed;
use crate::reconcile::explanation::{Explanation, FigureRange};
use crate::reconcile::recorded::Recorded;
use crate::reconcile::rounding::{CouldExplain, RoundingTest};
use crate::reconcile::search::Explanations;
use crate::reconcile::settings::{RoundingTaken, goes_in, times};
use crate::reconcile::totals::TotalWritten;
use crate::reconcile::{Ground, is_metric, total};
use crate::units::area::Area;
use crate::units::decimal::largest_remainder;
use crate::units::length::Step as SideStep;

/// A step of the bridge; the variants are in the order in which the steps are taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Step {
    /// Measuring to another face than the outside face.
    Face,
    /// Rounding the sides as the figure does.
    Rounding,
    /// Using the figure's own lengths, where the file gives them.
    RecordedSides,
    /// What the figure says it counts; if it does not say, what the best supported cause counts.
    Counting,
    /// What is left to explain.
    NotExplained,
}

impl Step {
    /// The name of the step in JSON.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Step::Face => "face",
            Step::Rounding => "rounding",
            Step::RecordedSides => "recorded sides",
            Step::Counting => "counting",
            Step::NotExplained => "not explained",
        }
    }
}

/// One step of the bridge with its area.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    step: Step,
    area: Area,
    range: Option<Range>,
    counted: Vec<String>,
    cause: Option<Cause>,
    rounding: Option<RoundingTaken>,
    is_within_rounding: bool,
    is_otherwise: bool,
    is_unrounded: bool,
}

impl Line {
    /// The step.
    #[must_use]
    pub fn step(&self) -> Step {
        self.step
    }

    /// What the step adds to the measured area; negative if it takes away.
    #[must_use]
    pub fn area(&self) -> Area {
        self.area
    }

    /// For rounding: the lowest and highest area it could add; `None` for other steps, or if that cannot be computed.
    #[must_use]
    pub fn range(&self) -> Option<Range> {
        self.range
    }

    /// For counting: whether it comes from the best supported cause, because the figure does not say what it counts.
    #[must_use]
    pub fn is_supported(&self) -> bool {
        self.cause.is_some()
    }

    /// For rounding: the way of rounding that the best supported cause goes with; `None` if that is the figure's own
    /// way.
    pub(crate) fn rounding(&self) -> Option<RoundingTaken> {
        self.rounding
    }

    /// For rounding: whether the rounded walls are closed otherwise than in the areas of this house, or, where the figure
    /// agrees with the house as measured, whether they are not rounded at all. For what is left: whether the two agree, or
    /// measuring again could make it.
    pub(crate) fn is_otherwise(&self) -> bool {
        self.is_otherwise
    }

    /// For rounding: whether the step takes the rounding of the measured walls back, because the figure is in square
    /// meters and says nothing of a rule.
    pub(crate) fn is_unrounded(&self) -> bool {
        self.is_unrounded
    }

    /// For what is left: whether rounding alone could account for it, so that no other cause is needed.
    #[must_use]
    pub fn is_within_rounding(&self) -> bool {
        self.is_within_rounding
    }

    /// For counting: the best supported cause; `None` if the figure itself says what it counts.
    pub(crate) fn cause(&self) -> Option<Cause> {
        self.cause
    }

    /// For counting: the names that the figure says it counts.
    #[must_use]
    pub fn counted(&self) -> &[String] {
        &self.counted
    }
}

/// The lines of the bridge for one figure.
pub(super) fn lines(
    house: &House,
    ground: &Ground<'_>,
    recorded: Option<&Recorded>,
    explanations: &Explanations,
    start: Area,
    test: &RoundingTest,
    (agrees, is_read): (bool, bool),
) -> Vec<Line> {
    let plain = |step: Step, area: Area| Line {
        step,
        area,
        range: None,
        counted: Vec::new(),
        cause: None,
        rounding: None,
        is_within_rounding: false,
        is_otherwise: false,
        is_unrounded: false,
    };
    let best = explanations.reported().next();
    let at_face = total(house, &ground.fine.areas);
    let figures_own = total(house, &ground.ruled.areas);
    let otherwise = best.and_then(|best| best.ruled);
    // A figure that is the house as measured was not rounded to feet.
    let apart = |areas: &[Area]| {
        let counted = counted_by(house, &ground.figure.counting, areas);
        let area = total(house, areas) + counted;
        (ground.figure.area.area().whole_sq_ft() - area.whole_sq_ft()).abs()
    };
    let is_as_measured = is_read
        || agrees
            && best.is_none()
            && recorded.is_none()
            && apart(&ground.fine.areas) < apart(&ground.ruled.areas);
    // Nobody has rounded the walls of a figure in square meters to a part of a foot. What a cause adds was computed with
    // rounded walls.
    let is_unrounded = is_metric(ground.figure.area)
        && ground.figure.sides.is_none()
        && best.is_none()
        && recorded.is_none()
        && ground.figure.counting.is_empty();
    let ruled = match otherwise {
        Some(ruled) => ruled,
        None if is_unrounded => total(house, &ground.walls.areas()),
        None if is_as_measured => at_face,
        None => figures_own,
    };
    // Few figures have all steps.
    let mut lines = Vec::with_capacity(5);
    lines.extend([plain(Step::Face, at_face - start), plain(Step::Rounding, ruled - at_face)]);
    if otherwise.is_some() {
        lines[1].rounding = best.and_then(|best| best.rounding);
        lines[1].is_otherwise = lines[1].rounding.is_none();
    } else if is_unrounded {
        lines[1].is_unrounded = true;
    } else if is_as_measured {
        lines[1].is_otherwise = true;
    } else if matches!(ground.rule.step, SideStep::WholeFoot | SideStep::HalfFoot) {
        lines[1].range = ground
            .ranges
            .usual(false)
            .map(|range| Range { low: range.low - at_face, high: range.high - at_face });
    }
    if let Some(recorded) = recorded {
        lines.push(plain(Step::RecordedSides, total(house, &recorded.areas) - ruled));
    }
    if !ground.figure.counting.is_empty() {
        let areas = if is_as_measured { &ground.fine.areas } else { &ground.ruled.areas };
        let areas = recorded.map_or(areas, |recorded| &recorded.areas);
        let counted = ground.figure.counting.clone();
        // What is counted is rounded as the house is.
        let area = best.filter(|_| otherwise.is_some()).map_or_else(
            || counted_by(house, &ground.figure.counting, areas),
            |best| best.counting,
        );
        lines.push(Line { counted, ..plain(Step::Counting, area) });
    }
    lines.extend(
        best.map(|best| Line { cause: Some(best.cause), ..plain(Step::Counting, best.effect) }),
    );
    let explained: Area = lines.iter().map(Line::area).sum();
    let gap = ground.figure.area.area() - start;
    let rest = gap - explained;
    // What a named cause leaves is compared with the ranges printed beside the areas; without a cause, the same test tells
    // as in the sentence on rounding.
    let is_rounded = matches!(ground.rule.step, SideStep::WholeFoot | SideStep::HalfFoot);
    let is_within_rounding = rest.whole_sq_ft() != 0
        && recorded.is_none()
        && match best {
            Some(best) => best.printed.leaves_open(ground.figure.area.area()),
            None => is_rounded && test.could_explain() == Some(CouldExplain::Yes),
        };
    let is_otherwise = is_read || agrees && best.is_none();
    lines.push(Line { is_within_rounding, is_otherwise, ..plain(Step::NotExplained, rest) });
    lines
}

/// The figures that a reported cause can give, by what is printed elsewhere: for rounding to feet the possible ranges of
/// the spaces, each as often as the cause has it in the total; for closing, where the cause is another rounding, and for
/// reading a tape, where walls are not rounded, its own.
///
/// A range of the walls at another face, or rounded another way, is not printed, so there it is one figure.
pub(super) fn printed_range(house: &House, ground: &Ground<'_>, one: &Explanation) -> FigureRange {
    use TotalWritten::{SquareMeters, TenTimes, Tenth, Twice};
    let single = FigureRange { low: one.sq_ft, high: one.sq_ft };
    let is_to_feet = matches!(ground.rule.step, SideStep::WholeFoot | SideStep::HalfFoot);
    match (one.cause, one.rounding) {
        // Walls in whole feet are the same with and without rounding.
        (_, Some(RoundingTaken::NotRounded)) if ground.ranges.are_on(SideStep::WholeFoot) => {
            return single;
        }
        (Cause::Rounding(_), _) | (_, Some(RoundingTaken::NotRounded)) => return one.band,
        (_, None) if !is_to_feet => return one.band,
        (Cause::Face(_) | Cause::Common(_), _)
        | (_, Some(RoundingTaken::AlwaysUp | RoundingTaken::AlwaysDown))
        | (_, Some(RoundingTaken::HalfFoot | RoundingTaken::WholeFoot)) => return single,
        // These have rounding in them more than once, or not in square feet.
        (Cause::Total { how: TenTimes | Tenth | Twice | SquareMeters, .. }, _) => return single,
        _ => {}
    }
    let own = total(house, &ground.ruled.areas);
    let from = one.sq_ft - one.ruled.map_or(Area::ZERO, |ruled| ruled - own).sq_ft();
    printed_changes(house, ground, one.cause)
        .map_or(single, |(less, more)| FigureRange { low: from + less, high: from + more })
}

/// By how much rounding to feet can lower and raise the total with a cause, in square feet, by the possible range of each
/// space as printed; `None` where one cannot be computed.
fn printed_changes(house: &House, ground: &Ground<'_>, cause: Cause) -> Option<(f64, f64)> {
    let listed = Listed { house, counting: &ground.figure.counting };
    let is_named = |i: usize| ground.figure.counting.contains(&house.spaces[i].name);
    let mut times: Vec<f64> = (0..house.spaces.len()).map(|i| times(house, i)).collect();
    for i in (0..times.len()).filter(|&i| is_named(i)) {
        times[i] += 1.0;
    }
    for (i, by) in cause.departures().flat_map(|kind| kind.changes(listed)) {
        times[i] += by;
    }
    let (mut less, mut more) = (0.0, 0.0);
    for (i, times) in times.into_iter().enumerate().filter(|(_, times)| *times != 0.0) {
        // A space listed by itself is counted with the area listed there.
        if house.spaces[i].recorded.is_some() && !goes_in(house, i) {
            continue;
        }
        let (range, own) = (ground.ranges.usual_of(i)?, ground.ruled.areas[i]);
        let ends = [(range.low - own).sq_ft() * times, (range.high - own).sq_ft() * times];
        less += ends[0].min(ends[1]);
        more += ends[0].max(ends[1]);
    }
    Some((less, more))
}

impl super::Figure {
    /// The lines in millionths of a square foot, rounded by largest remainder so that they add up to the gap.
    pub(crate) fn lines_in_millionths(&self) -> Vec<i128> {
        let parts: Vec<i128> = self.lines.iter().map(|line| line.area().half_nm2()).collect();
        // The gap as printed: the printed figure minus the printed measured area.
        let millionths = |area: Area| {
            crate::units::decimal::millionths(area.half_nm2(), Area::SQUARE_FOOT.half_nm2())
        };
        let total = millionths(self.area) - millionths(self.start);
        largest_remainder(&parts, Area::MILLIONTH_OF_A_SQUARE_FOOT.half_nm2(), total)
    }

    /// The lines in whole square feet: each takes the total before it, as printed, to the total after it, as printed.
    /// So they add up, and lead exactly to any total that is also printed elsewhere.
    pub(crate) fn lines_in_sq_ft(&self) -> Vec<i64> {
        let mut at = self.start;
        let step = |line: &Line| {
            let before = at.whole_sq_ft();
            at = at + line.area();
            at.whole_sq_ft() - before
        };
        self.lines.iter().map(step).collect()
    }
}
