//! Sums that do not depend on how an office rounds: the lengths as typed, each level rounded by itself, or the rounded
//! walls closed in another way that is as near.
#![expect(clippy::float_arithmetic, reason = "distances from a sum are floats")]

use std::cell::OnceCell;

use crate::areas::range;
use crate::geometry::outline::Outline;
use crate::house::wall_moves::AtFace;
use crate::reconcile::case::Case;
use crate::reconcile::departures::{DepartureKind, Group, LevelTaken};
use crate::reconcile::settings::{RoundingTaken, Setting};
use crate::units::area::Area;
use crate::units::length::Step;

/// How far a figure may be from such a sum and still be it, in square feet: each space or level rounded by itself adds
/// up to a foot or two more or less.
pub(crate) const NEAR_A_SUM_SQ_FT: f64 = 2.0;

/// The share of offices that do not round to feet whose lengths are just those that were typed here: both come from one
/// plan, or one from the other. Judgment.
const OF_SAME_LENGTHS: f64 = 0.22;
/// The share of these whose total is the sum itself, and that is one and two square feet off it, either way. Judgment.
const OFF_THE_SUM: [f64; 3] = [0.44, 0.2, 0.06];

/// The most combinations of closings that are added up.
const MOST_CLOSINGS: usize = 400;

/// How a sum was added up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum SummedBy {
    /// The lengths as they were typed, or to the tenth of a foot, added up.
    Lengths,
    /// The same, with each level rounded to whole square feet.
    Levels,
    /// Walls rounded in the figure's own way and closed otherwise than here, as near to the typed lengths.
    Closing,
}

/// A total with a cause, and the total of the house without it, added up in the same way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Sum {
    pub(crate) by: SummedBy,
    pub(crate) house: Area,
    pub(crate) total: Area,
}

impl Sum {
    /// Whether it is a figure, as printed.
    pub(super) fn is_the(&self, figure: Area) -> bool {
        self.off(figure) == 0
    }

    /// How far a figure is from it, as printed.
    fn off(&self, figure: Area) -> i64 {
        (figure.whole_sq_ft() - self.total.whole_sq_ft()).abs()
    }
}

impl Setting<'_> {
    /// The likelihood that an office which does not round to feet has the very lengths that were typed here, and gets the
    /// figure from them at this face and with these departures; and the sum that comes nearest to the figure. `None`
    /// where none is near. `sq_ft` is the total to tenths of a foot.
    pub(super) fn of_same_lengths(
        &self,
        case: &Case<'_>,
        kind: Option<DepartureKind>,
        sq_ft: f64,
    ) -> Option<(f64, Sum)> {
        /// How far apart sums can be, in square feet.
        const APART: f64 = 8.0;
        use LevelTaken::{HalfBelow, ThreeQuartersBelow};
        // A share of an outline is no sum, and of parts there are many.
        let is_no_sum = matches!(
            kind,
            Some(
                DepartureKind::Part { .. }
                    | DepartureKind::Together(Group::Parts { .. })
                    | DepartureKind::Level { how: HalfBelow | ThreeQuartersBelow, .. }
            )
        );
        if self.rounding != Some(RoundingTaken::NotRounded)
            || is_no_sum
            || (case.figure.sq_ft() - sq_ft).abs() > APART
        {
            return None;
        }
        let spaces = 0..self.times().len();
        let areas: Vec<Area> = spaces.map(|i| self.typed_area(i)).collect();
        let outlines: Vec<&Outline> = self.walls().spaces.iter().map(|at| &at.outline).collect();
        let adds = kind.map_or(Area::ZERO, |kind| kind.effect(case.listed, &areas, &outlines));
        let house = case.total(&areas);
        let lengths = |house: Area, total: Area| Sum { by: SummedBy::Lengths, house, total };
        let tenths = lengths(self.total, Area::from_float_sq_ft(sq_ft));
        let levels = self.by_levels(case, kind, &areas);
        let sums = [Some(lengths(house, house + adds)), Some(tenths), levels];
        let nearest = sums.into_iter().flatten().min_by_key(|sum| sum.off(case.figure))?;
        let off = usize::try_from(nearest.off(case.figure)).ok()?;
        Some((OF_SAME_LENGTHS * OFF_THE_SUM.get(off)?, nearest))
    }

    /// The sum with each level rounded by itself; `None` where spaces are in it that are on no level.
    fn by_levels(
        &self,
        case: &Case<'_>,
        kind: Option<DepartureKind>,
        areas: &[Area],
    ) -> Option<Sum> {
        let house = case.listed.house;
        let is_elsewhere = matches!(
            kind,
            Some(DepartureKind::MissingCounted { .. } | DepartureKind::CountedAsListed { .. })
        );
        if is_elsewhere || !case.listed.counting.is_empty() || house.levels.len() < 2 {
            return None;
        }
        let changes = kind.map(|kind| kind.changes(case.listed)).unwrap_or_default();
        let rounded = |changes: &[(usize, f64)]| {
            let mut levels = vec![0.0; house.levels.len()];
            for (i, area) in areas.iter().enumerate() {
                let more = changes.iter().filter(|(space, _)| *space == i);
                let times = self.times()[i] + more.map(|(_, by)| by).sum::<f64>();
                levels[house.spaces[i].level] += times * area.sq_ft();
            }
            let sum = levels.into_iter().map(|sq_ft| (sq_ft + 0.5).floor()).sum::<f64>();
            Area::from_float_sq_ft(sum)
        };
        Some(Sum { by: SummedBy::Levels, house: rounded(&[]), total: rounded(&changes) })
    }
}

/// Whether a figure is a total of walls rounded and closed here.
fn is_closed(case: &Case<'_>) -> bool {
    case.recorded.is_none()
        && case.listed.counting.is_empty()
        && matches!(case.rule.step, Step::WholeFoot | Step::HalfFoot)
}

/// The other ways to close the rounded walls of each space, computed when first asked for.
pub(super) struct OtherClosings {
    spaces: Vec<OnceCell<Vec<Area>>>,
}

impl OtherClosings {
    pub(super) fn of(case: &Case<'_>) -> OtherClosings {
        OtherClosings { spaces: vec![OnceCell::new(); case.walls.spaces.len()] }
    }

    /// The sum that is `wanted` whole square feet, with the rounded walls of some space closed in another way that is as near
    /// to the typed lengths; `None` where there is none.
    pub(super) fn giving(
        &self,
        wanted: i64,
        case: &Case<'_>,
        own: &Setting<'_>,
        kinds: &[DepartureKind],
        effect: Area,
    ) -> Option<Sum> {
        let is_part = |kind: &DepartureKind| matches!(kind, DepartureKind::Part { .. });
        if !is_closed(case) || kinds.iter().any(is_part) {
            return None;
        }
        let mut times = own.times().to_vec();
        for (space, by) in kinds.iter().flat_map(|kind| kind.changes(case.listed)) {
            times[space] += by;
        }
        let house = case.total(&case.ruled.areas);
        // The total, and that of the house, as each is now, with one space after the other closed in all its ways.
        let mut sums = vec![(house + effect, house)];
        for (space, &times) in times.iter().enumerate() {
            let (in_house, here) = (own.times()[space], case.ruled.areas[space]);
            if times == 0.0 && in_house == 0.0 || own.is_known(space) {
                continue;
            }
            let others = self.of_space(case, &case.walls.spaces[space], space);
            let mut more = Vec::new();
            for &(total, house) in &sums {
                for &other in others.iter().filter(|other| **other != here) {
                    let by = (other - here).sq_ft();
                    let added = |times: f64| Area::from_float_sq_ft(times * by);
                    more.push((total + added(times), house + added(in_house)));
                }
            }
            sums.extend(more);
            if sums.len() > MOST_CLOSINGS {
                return None;
            }
        }
        let found = sums.into_iter().skip(1).find(|(total, _)| total.whole_sq_ft() == wanted);
        found.map(|(total, house)| Sum { by: SummedBy::Closing, house, total })
    }

    /// The total that is `wanted` whole square feet at another face, closed there in another way that is as near; `None`
    /// where there is none. These closings are of that face alone.
    pub(super) fn at_face(
        &self,
        wanted: i64,
        case: &Case<'_>,
        there: &Setting<'_>,
    ) -> Option<Area> {
        if !is_closed(case) {
            return None;
        }
        let mut totals = vec![there.total];
        for (space, &times) in there.times().iter().enumerate() {
            if times == 0.0 || there.is_known(space) {
                continue;
            }
            let others = self.of_space(case, &there.walls().spaces[space], space);
            let by =
                |other: &Area| Area::from_float_sq_ft(times * (other.sq_ft() - there.area(space)));
            let more: Vec<Area> = others.iter().map(by).chain([Area::ZERO]).collect();
            let each = |total: Area| more.iter().map(move |by| total + *by);
            totals = totals.into_iter().flat_map(each).collect();
            if totals.len() > MOST_CLOSINGS {
                return None;
            }
        }
        totals.into_iter().find(|total| total.whole_sq_ft() == wanted)
    }

    fn of_space(&self, case: &Case<'_>, at: &AtFace, space: usize) -> &[Area] {
        self.spaces[space].get_or_init(|| {
            range::equally_near(at, case.rule.step, case.settings.halves).unwrap_or_default()
        })
    }
}
