//! The ranges and uncertainties of a house's areas, each computed on first use.

use std::sync::{Arc, OnceLock};

use crate::areas::at_face::Walls;
use crate::areas::is_in_total;
use crate::areas::range;
use crate::areas::range::quick::Few;
use crate::areas::range::{Range, RoundingFreedom};
use crate::areas::uncertainty;
use crate::geometry::compass::Axis;
use crate::geometry::traverse::StepRounding;
use crate::house::House;
use crate::house::wall_moves::AtFace;
use crate::units::area::Area;
use crate::units::length::{Halves, Length, Step};

/// The most totals that are listed.
const MOST_TOTALS: usize = 20_000;

/// The possible ranges of the areas of a house with its walls at one face.
#[derive(Debug)]
pub(crate) struct AreaRanges {
    house: House,
    walls: Arc<Walls>,
    step: Step,
    reading: Length,
    /// The closings of each space with few walls, with as few walls as possible rounded against the rule, then any.
    few: [OnceLock<Vec<Option<Few>>>; 2],
    usual: OnceLock<Vec<Option<Range>>>,
    widest: OnceLock<Vec<Option<Range>>>,
    /// Those of the spaces that are in no total, in the same two ways. Nobody asks for them but who prints all spaces.
    others: [OnceLock<Vec<Option<Range>>>; 2],
    usual_totals: OnceLock<Option<Vec<Area>>>,
    any_totals: OnceLock<Option<Vec<Area>>>,
}

impl AreaRanges {
    /// The ranges for walls rounded to `step`, with the tape read to within `reading`.
    pub(crate) fn new(house: House, walls: Arc<Walls>, step: Step, reading: Length) -> AreaRanges {
        AreaRanges {
            house,
            walls,
            step,
            reading,
            few: Default::default(),
            usual: OnceLock::new(),
            widest: OnceLock::new(),
            others: Default::default(),
            usual_totals: OnceLock::new(),
            any_totals: OnceLock::new(),
        }
    }

    /// The walls that are rounded.
    pub(crate) fn walls(&self) -> &Walls {
        &self.walls
    }

    /// The range of the total above grade (or below grade, if `below`), with as few walls as possible rounded against
    /// the rule; `None` where it cannot be computed.
    pub(crate) fn usual(&self, below: bool) -> Option<Range> {
        self.total(self.all_usual(), below)
    }

    /// The range of that total if any wall may be rounded up or down; `None` where it cannot be computed.
    pub(crate) fn widest(&self, below: bool) -> Option<Range> {
        self.total(self.all_widest(), below)
    }

    /// Every total above grade possible on whole steps, in ascending order; with `any`, each wall may be rounded up
    /// or down. `None` where there are too many.
    pub(crate) fn totals(&self, any: bool) -> Option<&[Area]> {
        let known = if any { &self.any_totals } else { &self.usual_totals };
        known.get_or_init(|| self.listed(false, any)).as_deref()
    }

    /// Whether [`AreaRanges::totals`] has one of `sq_ft` whole square feet, found out without listing all of them: the
    /// space with the most sides is only asked whether it gives what the others leave. `None` where that is not found
    /// out quickly, or where the totals might be too many to list.
    pub(crate) fn give(&self, sq_ft: i64, any: bool) -> Option<bool> {
        let asked = self.counted(false).filter(|&i| !self.house.is_deducted(i));
        let asked = asked.max_by_key(|&i| self.walls.spaces[i].traverse.sides.len())?;
        let middle = Area::from_half_nm2(i128::from(sq_ft) * Area::SQUARE_FOOT.half_nm2());
        let half = Area::from_half_nm2(Area::SQUARE_FOOT.half_nm2() >> 1);
        let (low, high) = (middle - half, middle + half - Area::from_half_nm2(1));
        let few = || self.few(any)[asked].as_ref();
        // Most houses that many are read of have a single space.
        if self.house.spaces.len() == 1 {
            return range::gives(few().filter(|_| sq_ft > 0)?, &[low..=high], MOST_TOTALS);
        }
        let mut count = 1_usize;
        let mut of_others = |space: usize| {
            let areas = if space == asked { vec![Area::ZERO] } else { self.areas_of(space, any)? };
            count = count.saturating_mul(areas.len());
            Some(areas)
        };
        let others = totals_of(&self.house, false, MOST_TOTALS, &[], &mut of_others)?;
        // The larger the others are, the less is left, so that the ranges are in ascending order.
        let left = others.iter().rev().map(|&other| low - other..=high - other);
        let most = MOST_TOTALS.checked_div(count).filter(|_| sq_ft > 0)?;
        range::gives(few()?, &left.collect::<Vec<_>>(), most)
    }

    /// Whether [`AreaRanges::widest`] surely is computed for the total above grade, told without computing it.
    pub(crate) fn has_widest(&self) -> bool {
        let few = self.few(true);
        let is_computed = |space: usize| few[space].as_ref().is_some_and(range::quick::has_range);
        self.counted(false)
            .all(|space| is_computed(space) && self.house.deducted_from(space).all(is_computed))
    }

    /// Whether some total has `sq_ft` whole square feet where these spaces were taken the other way: one that is not
    /// counted is added, one that is deducted is not, one that is counted is left out. `None` where there are too many
    /// totals to tell.
    pub(crate) fn give_with(&self, changed: &[usize], sq_ft: i64, any: bool) -> Option<bool> {
        let areas = |space: usize| self.areas_of(space, any);
        let totals = totals_of(&self.house, false, MOST_TOTALS, changed, areas)?;
        Some(totals.iter().any(|total| total.whole_sq_ft() == sq_ft))
    }

    fn areas_of(&self, space: usize, any: bool) -> Option<Vec<Area>> {
        let few = self.few(any)[space].as_ref();
        range::areas(&self.walls.spaces[space], few, self.step, self.freedom(any))
    }

    fn freedom(&self, any: bool) -> RoundingFreedom {
        if any { RoundingFreedom::Any } else { RoundingFreedom::WithinReading(self.reading) }
    }

    /// The totals above grade (or below grade, if `below`) that are possible with as few walls as possible rounded
    /// against the rule, where these are two or three as printed: `1,204 or 1,232` and nothing between. Empty where there
    /// are others.
    pub(crate) fn few_totals(&self, below: bool) -> Vec<Area> {
        match below {
            true => few_of(self.listed(true, false).as_deref()),
            false => few_of(self.totals(false)),
        }
    }

    /// The areas of one space that are possible in the same way, where these are two or three as printed.
    pub(crate) fn few_of_space(&self, space: usize) -> Vec<Area> {
        few_of(self.areas_of(space, false).as_deref())
    }

    fn listed(&self, below: bool, any: bool) -> Option<Vec<Area>> {
        totals_of(&self.house, below, MOST_TOTALS, &[], |space| self.areas_of(space, any))
    }

    /// The range of one space without deductions; `None` where it cannot be computed.
    pub(crate) fn usual_of(&self, space: usize) -> Option<Range> {
        self.of_space(space, false)
    }

    /// The range of one space without deductions if any wall may be rounded up or down; `None` where it cannot be
    /// computed.
    pub(crate) fn widest_of(&self, space: usize) -> Option<Range> {
        self.of_space(space, true)
    }

    fn of_space(&self, space: usize, any: bool) -> Option<Range> {
        if self.is_in_a_total(space) {
            return if any { self.all_widest() } else { self.all_usual() }[space];
        }
        let others = || {
            let wanted = |other: usize| !self.is_in_a_total(other);
            self.ranges(any, &self.closings(any, wanted), wanted)
        };
        self.others[usize::from(any)].get_or_init(others)[space]
    }

    fn all_usual(&self) -> &[Option<Range>] {
        self.usual.get_or_init(|| self.of_totals(false))
    }

    fn all_widest(&self) -> &[Option<Range>] {
        self.widest.get_or_init(|| self.of_totals(true))
    }

    fn of_totals(&self, any: bool) -> Vec<Option<Range>> {
        self.ranges(any, self.few(any), |space| self.is_in_a_total(space))
    }

    /// The ranges of the spaces that are `wanted`; `None` for all others.
    fn ranges(
        &self,
        any: bool,
        few: &[Option<Few>],
        wanted: impl Fn(usize) -> bool,
    ) -> Vec<Option<Range>> {
        let freedom = self.freedom(any);
        let range = |(i, (at, few)): (usize, (&AtFace, &Option<Few>))| {
            if wanted(i) { range::range(at, few.as_ref(), self.step, freedom) } else { None }
        };
        self.walls.spaces.iter().zip(few).enumerate().map(range).collect()
    }

    fn few(&self, any: bool) -> &[Option<Few>] {
        let of_totals = || {
            let is_wanted = |space: usize| self.is_in_a_total(space);
            match self.few[0].get().filter(|_| any) {
                Some(known) => Few::widest_of_all(&self.walls.spaces, self.step, known, is_wanted),
                None => self.closings(any, is_wanted),
            }
        };
        self.few[usize::from(any)].get_or_init(of_totals)
    }

    /// The closings of the spaces that are `wanted`.
    fn closings(&self, any: bool, wanted: impl Fn(usize) -> bool) -> Vec<Option<Few>> {
        Few::of_all(&self.walls.spaces, self.step, self.freedom(any), wanted)
    }

    /// Whether a space goes into the total above grade or below it, counted or deducted.
    fn is_in_a_total(&self, space: usize) -> bool {
        let house = &self.house;
        let is_counted = |space: usize| house.spaces[space].counted;
        is_counted(space)
            || house.is_deducted(space) && house.spaces[space].parent.is_some_and(is_counted)
    }

    /// The range of all counted spaces together, after deductions.
    fn total(&self, ranges: &[Option<Range>], below: bool) -> Option<Range> {
        let zero = Range { low: Area::ZERO, high: Area::ZERO };
        self.counted(below).try_fold(zero, |total, space| {
            let range = self.net(ranges, space)?;
            Some(Range { low: total.low + range.low, high: total.high + range.high })
        })
    }

    /// The range of one space after deductions: its lowest area less their highest, up to its highest less their
    /// lowest.
    fn net(&self, ranges: &[Option<Range>], space: usize) -> Option<Range> {
        self.house.deducted_from(space).try_fold(ranges[space]?, |range, other| {
            let off = ranges[other]?;
            Some(Range { low: range.low - off.high, high: range.high - off.low })
        })
    }

    /// How much rounding to a step typically changes the total above grade, in square feet; `None` if any side is given
    /// by bearing. Spaces and deductions are independent, so their variances add.
    #[expect(clippy::float_arithmetic, reason = "statistics")]
    pub(crate) fn typical(&self, step: Step) -> Option<f64> {
        let mut sum = 0.0;
        for space in self.counted(false) {
            for i in std::iter::once(space).chain(self.house.deducted_from(space)) {
                let at = &self.walls.spaces[i];
                sum += uncertainty::typical_squared(&at.traverse, &at.outline, step.length())?;
            }
        }
        Some(libm::sqrt(sum))
    }

    /// The uncertainty of the total from the tape and from the thicknesses that move walls to this face.
    pub(crate) fn spread(&self, below: bool) -> uncertainty::Spreads {
        uncertainty::spreads(&self.house, self.counted(below), &self.walls)
    }

    /// Whether every outline in the total above grade still closes when each wall is rounded independently to the
    /// nearest step.
    pub(crate) fn closes(&self, halves: Halves) -> bool {
        let way = StepRounding::Nearest(self.step, halves);
        let mut all =
            self.counted(false).flat_map(|i| std::iter::once(i).chain(self.house.deducted_from(i)));
        all.all(|i| {
            let traverse = &self.walls.spaces[i].traverse;
            let along = |axis: Axis| -> i64 {
                traverse.legs_along(axis).map(|leg| leg.sign * way.rounded(leg.length)).sum()
            };
            traverse.has_bearings() || Axis::BOTH.into_iter().all(|axis| along(axis) == 0)
        })
    }

    /// Whether every wall of the total above grade is a whole number of steps, so that rounding to it moves none.
    pub(crate) fn are_on(&self, step: Step) -> bool {
        let unit = step.length().nm();
        let mut all =
            self.counted(false).flat_map(|i| std::iter::once(i).chain(self.house.deducted_from(i)));
        all.all(|i| {
            let traverse = &self.walls.spaces[i].traverse;
            let is_on = |axis: Axis| traverse.legs_along(axis).all(|leg| leg.length % unit == 0);
            !traverse.has_bearings() && Axis::BOTH.into_iter().all(is_on)
        })
    }

    fn counted(&self, below: bool) -> impl Iterator<Item = usize> {
        (0..self.house.spaces.len()).filter(move |&i| is_in_total(&self.house, i, below))
    }
}

/// Areas in ascending order, each once as printed, if they are two or three; else none.
fn few_of(areas: Option<&[Area]>) -> Vec<Area> {
    const MOST: usize = 3;
    let mut areas = areas.unwrap_or_default().to_vec();
    areas.dedup_by_key(|area| area.whole_sq_ft());
    if (2..=MOST).contains(&areas.len()) { areas } else { Vec::new() }
}

/// Every total above grade (or below grade, if `below`) that is possible with these areas of each space, in ascending
/// order; `None` where there are more than `most`, or too many areas of one space. The spaces `changed` are taken the other way, as
/// [`AreaRanges::give_with`] says.
pub(super) fn totals_of(
    house: &House,
    below: bool,
    most: usize,
    changed: &[usize],
    mut areas_of: impl FnMut(usize) -> Option<Vec<Area>>,
) -> Option<Vec<Area>> {
    let mut totals = vec![Area::ZERO];
    let is_changed = |space: &usize| changed.contains(space);
    let is_in = |&i: &usize| {
        let is_counted = is_in_total(house, i, below);
        is_counted != (is_changed(&i) && (is_counted || !house.is_deducted(i)))
    };
    for space in (0..house.spaces.len()).filter(is_in) {
        let off = house.deducted_from(space).filter(|other| !is_changed(other));
        let off = off.map(|other| (other, true));
        for (one, is_off) in std::iter::once((space, false)).chain(off) {
            let areas = areas_of(one)?;
            if totals.len().saturating_mul(areas.len()) > most {
                return None;
            }
            let with = |total: Area, area: Area| if is_off { total - area } else { total + area };
            if let [area] = areas[..] {
                totals.iter_mut().for_each(|total| *total = with(*total, area));
                continue;
            }
            totals = totals
                .iter()
                .flat_map(|&total| areas.iter().map(move |&area| with(total, area)))
                .collect();
            totals.sort_unstable();
            totals.dedup();
        }
    }
    Some(totals)
}
