//! The faces and ways of rounding a figure may have been computed with, and the areas of this house under each.
#![expect(clippy::float_arithmetic, reason = "explanations are weighed in floats")]

use std::borrow::Cow;
use std::cell::OnceCell;
use std::rc::Rc;

use crate::areas::at_face::Walls;
use crate::areas::is_in_total;
use crate::areas::uncertainty::{OfRounding, chance_of_other_step};
use crate::geometry::outline::Outline;
use crate::geometry::traverse::{StepRounding, Traverse};
use crate::house::wall_moves::{AtFace, CommonTaken};
use crate::house::{Face, House};
use crate::reconcile::case::Case;
use crate::reconcile::departures::{Departure, DepartureKind, is_listed_alike};
use crate::reconcile::grid::{Axes, OfPart, OnGrid};
use crate::reconcile::normal::{Normal, reach};
use crate::reconcile::outcomes::{Outcomes, REACH_SQ_FT, Together, nearest_whole, of_rectangle};
use crate::reconcile::parts::Part;
use crate::reconcile::weights::Weights;
use crate::units::area::Area;
use crate::units::length::{Halves, Length, Step};

/// A way of rounding sides that is not the figure's own.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(crate) enum RoundingTaken {
    /// Every side rounded up.
    AlwaysUp,
    /// Every side rounded down.
    AlwaysDown,
    /// Halves rounded in the opposite direction.
    OtherHalves,
    /// To the half foot.
    HalfFoot,
    /// To the tenth of a foot or the inch.
    NotRounded,
    /// To the whole foot, although the figure does not say so.
    WholeFoot,
}

/// A way of rounding (`None` for the figure's own way) with its prior probability.
pub(super) type RoundingWay = (Option<RoundingTaken>, StepRounding, f64);

/// One face and one way of rounding, with the areas of this house under them, in square feet.
pub(super) struct Setting<'a> {
    pub(super) face: Face,
    /// How much of the walls shared with other dwellings is in it.
    pub(super) common: CommonTaken,
    /// The way of rounding; `None` for the figure's own.
    pub(super) rounding: Option<RoundingTaken>,
    /// Its prior probability.
    pub(super) chance: f64,
    /// The area of the house with what the figure says it counts.
    pub(super) total: Area,
    /// What the figure says it counts.
    pub(super) counting: Area,
    pub(super) total_sq_ft: f64,
    /// The mean of what an office would get minus the computed area, in square feet.
    pub(super) shift: f64,
    /// The variance of the total without departures, in square feet squared.
    pub(super) variance: f64,
    /// What each departure adds; empty at a face other than the figure's own.
    pub(super) adds: Vec<Adds>,
    way: StepRounding,
    reading: Length,
    walls: Cow<'a, Walls>,
    outlines: Vec<Cow<'a, Outline>>,
    areas: Vec<Area>,
    /// For each space, how many times it is in the total.
    times: Vec<f64>,
    variances: Vec<f64>,
    /// For each space, whether its area comes from the record itself and so has no uncertainty.
    is_known: Vec<bool>,
    axes: &'a Axes,
    listed: Vec<OfSpace>,
    base: OnceCell<Together>,
    /// The highest likelihood of any figure.
    most: OnceCell<f64>,
    /// Whether something is listed for every space.
    is_all_listed: OnceCell<bool>,
}

/// What an office could compute for a space, each computed when first needed.
#[derive(Default)]
struct OfSpace {
    grid: OnceCell<Option<OnGrid>>,
    outcomes: OnceCell<Outcomes>,
    /// The possible errors of all other spaces together; `None` if there are no others.
    others: OnceCell<Option<Together>>,
}

/// The possible errors of a space, with how many times they go into the total.
#[derive(Clone, Copy)]
struct Added<'a> {
    outcomes: &'a Outcomes,
    factor: f64,
    /// How far the total is above a whole number.
    over: f64,
}

/// What a departure adds to the total.
#[derive(Clone, Debug)]
pub(super) struct Adds {
    pub(super) area: Area,
    pub(super) sq_ft: f64,
    /// The variance of the total with it, in square feet squared.
    pub(super) variance: f64,
    /// For each space that it affects, how many more times the space is in the total; `None` if it affects none.
    changed: Option<Changes>,
    part: Option<(usize, Part)>,
    /// The part on the grid of its space, and the possible errors of the space with it, each computed when first
    /// needed.
    of_part: OnceCell<Option<OfPart>>,
    with_part: OnceCell<Option<Outcomes>>,
    /// The possible errors of the total with the part, computed when several figures are weighed.
    all: OnceCell<Together>,
    /// The possible errors of the total with the departure in the figure's own way, and how far above a whole number that
    /// total is.
    in_all: OnceCell<(f64, Together)>,
    /// The same part, where the office draws the outline without it.
    redrawn: OnceCell<Option<Box<Adds>>>,
    /// The outline drawn so; `None` where the part is added to the whole outline or taken off it.
    drawn: Option<Box<Drawn>>,
}

/// An outline that is drawn without a part.
#[derive(Clone, Debug)]
struct Drawn {
    /// Its walls, and the outline of them rounded and closed.
    traverse: Traverse,
    outline: Outline,
    grid: OnceCell<Option<OnGrid>>,
}

/// How likely figures can be at most, looked up instead of worked out.
pub(super) struct Bound<'a> {
    /// The total in whole square feet, and its possible errors.
    whole: f64,
    listed: &'a Together,
    /// No error that is not listed is likelier.
    unlisted: f64,
}

impl Bound<'_> {
    /// No less than the likelihood of a figure.
    pub(super) fn of(&self, figure: f64) -> f64 {
        self.listed.at(figure - self.whole) + self.unlisted
    }
}

/// The share of offices that leave a part out of the sketch itself: the wall is written straight through, and that
/// wall is rounded. The others fill it in or take it off on a sketch of the whole outline. Judgment.
const DRAWN_WITHOUT: f64 = 0.5;

/// The changes of a departure, which every setting shares.
type Changes = Rc<[(usize, f64)]>;

impl Adds {
    /// For each space that it affects, how many more times the space is in the total.
    fn changes(&self) -> &[(usize, f64)] {
        self.changed.as_deref().unwrap_or_default()
    }

    /// What adds this area and changes nothing else.
    fn of(area: Area) -> Adds {
        Adds {
            area,
            sq_ft: area.sq_ft(),
            variance: 0.0,
            changed: None,
            part: None,
            of_part: OnceCell::new(),
            with_part: OnceCell::new(),
            all: OnceCell::new(),
            in_all: OnceCell::new(),
            redrawn: OnceCell::new(),
            drawn: None,
        }
    }
}

/// The ways of rounding with their prior probabilities, the figure's own first.
pub(super) fn ways(case: &Case<'_>, weights: &Weights) -> Vec<RoundingWay> {
    let halves = case.settings.halves;
    let own = case.rule.step;
    let other = if halves == Halves::Up { Halves::Down } else { Halves::Up };
    let foot = Step::WholeFoot;
    let fine = StepRounding::Nearest(case.settings.fine.step(), halves);
    let half = StepRounding::Nearest(Step::HalfFoot, halves);
    let mut list = vec![(None, StepRounding::Nearest(own, halves), 0.0)];
    if own == foot {
        list.extend([
            (Some(RoundingTaken::AlwaysUp), StepRounding::Up(foot), weights.always_up),
            (Some(RoundingTaken::AlwaysDown), StepRounding::Down(foot), weights.always_down),
            (
                Some(RoundingTaken::OtherHalves),
                StepRounding::Nearest(foot, other),
                weights.ties_the_other_way,
            ),
            (Some(RoundingTaken::HalfFoot), half, weights.half_foot),
            (Some(RoundingTaken::NotRounded), fine, weights.not_rounded),
        ]);
    } else if !case.is_metric {
        list.extend([
            (
                Some(RoundingTaken::WholeFoot),
                StepRounding::Nearest(foot, halves),
                weights.not_rounded,
            ),
            (Some(RoundingTaken::AlwaysUp), StepRounding::Up(foot), weights.always_up),
        ]);
    }
    list[0].2 = 1.0 - list.iter().map(|(.., chance)| chance).sum::<f64>();
    list
}

/// Every face and way of rounding with the areas of this house, the figure's own first. If the file gives the
/// record's own sides, that is the only setting, and nothing about sides is guessed.
pub(super) fn settings<'a>(
    case: &Case<'a>,
    departures: &[Departure],
    ways: &[RoundingWay],
    weights: &Weights,
) -> Vec<Setting<'a>> {
    let spreads: Vec<OfRounding> = case.walls.spaces.iter().map(spread_of).collect();
    let own = StepRounding::Nearest(case.rule.step, case.settings.halves);
    let changes = departures.iter().map(|departure| departure.kind.changes(case.listed).into());
    let changes: Vec<Changes> = changes.collect();
    if let Some(recorded) = case.recorded {
        let variances = spreads.iter().map(|spread| spread.variance(own, case.settings.reading));
        let outlines = recorded.outlines.iter().map(Cow::Borrowed).collect();
        let seen = Seen {
            walls: Cow::Borrowed(case.walls),
            outlines,
            areas: recorded.areas.clone(),
            variances: variances.collect(),
            is_known: recorded.has.clone(),
        };
        return vec![seen.under(case, (departures, &changes), (None, own, 1.0))];
    }
    let others = [Face::Outside, Face::Frame, Face::Inside].into_iter();
    let others = others.filter(|face| *face != case.face);
    let common = other_common_walls(case, weights);
    let of_common = common.iter().map(|setting| setting.chance).sum::<f64>();
    let own_face = 1.0 - others.map(|face| of_face(face, weights)).sum::<f64>() - of_common;
    let mut list: Vec<Setting<'a>> = Vec::with_capacity(8);
    for &(rounding, way, chance) in ways {
        if rounding == Some(RoundingTaken::OtherHalves) && !case.has_halves() {
            // No wall is exactly halfway, so both are the same.
            list[0].chance += own_face * chance;
            continue;
        }
        let Some(outlines) = closed(case, case.walls, rounding, way) else { continue };
        let variances = spreads.iter().map(|spread| spread.variance(way, case.settings.reading));
        let variances = variances.collect();
        let seen = Seen::new(Cow::Borrowed(case.walls), outlines, variances);
        list.push(seen.under(case, (departures, &changes), (rounding, way, own_face * chance)));
    }
    list.extend(other_faces(case, weights));
    list.extend(common);
    list
}

fn of_face(face: Face, weights: &Weights) -> f64 {
    if face == Face::Inside { weights.face_inside } else { weights.face }
}

/// The share of cases in which walls measured inside or at the frame are not rounded to feet: the frame is read from a
/// plan in feet and inches, the inside by someone who measures rooms. Judgment.
const FINE_AT_ANOTHER_FACE: f64 = 0.4;

/// The house at the other faces without departures: under the figure's own rounding, and not rounded to feet where
/// the file says how thick the walls are.
fn other_faces<'a>(case: &Case<'a>, weights: &Weights) -> Vec<Setting<'a>> {
    let faces = [Face::Outside, Face::Frame, Face::Inside].into_iter();
    let at = |face: Face| {
        let walls = case.could_be_at(face).then(|| case.walls_at(face)).flatten()?;
        let is_fine = case.listed.house.states_walls();
        let walls = Cow::Borrowed(walls);
        let mut list = at_other_walls(case, walls, of_face(face, weights), is_fine);
        list.iter_mut().for_each(|setting| setting.face = face);
        Some(list)
    };
    faces.filter(|face| *face != case.face).filter_map(at).flatten().collect()
}

/// The house with the walls that it shares with other dwellings counted whole, or left out, without departures.
fn other_common_walls<'a>(case: &Case<'a>, weights: &Weights) -> Vec<Setting<'a>> {
    let at = |common: CommonTaken| {
        let walls = Walls::with_common(case.listed.house, case.face, common)?;
        let mut list = at_other_walls(case, Cow::Owned(walls), weights.common_walls, true);
        list.iter_mut().for_each(|setting| setting.common = common);
        Some(list)
    };
    [CommonTaken::Whole, CommonTaken::LeftOut].into_iter().filter_map(at).flatten().collect()
}

/// The house with walls that were moved: under the figure's own rounding and, where that is coarse and `is_fine`, not
/// rounded to feet.
fn at_other_walls<'a>(
    case: &Case<'a>,
    walls: Cow<'a, Walls>,
    chance: f64,
    is_fine: bool,
) -> Vec<Setting<'a>> {
    let (step, halves) = (case.rule.step, case.settings.halves);
    let own = (None, StepRounding::Nearest(step, halves));
    let fine = StepRounding::Nearest(case.settings.fine.step(), halves);
    let fine = (Some(RoundingTaken::NotRounded), fine);
    let is_fine = step == Step::WholeFoot && is_fine;
    let of_fine = if is_fine { FINE_AT_ANOTHER_FACE } else { 0.0 };
    let ways = [Some((own, 1.0 - of_fine)), is_fine.then_some((fine, of_fine))];
    let under = |((rounding, way), share): ((Option<RoundingTaken>, StepRounding), f64)| {
        let outlines = closed(case, &walls, Some(RoundingTaken::WholeFoot), way)?;
        let variance = |at: &AtFace| spread_of(at).variance(way, case.settings.reading);
        let variances = walls.spaces.iter().map(variance).collect();
        let seen = Seen::new(walls.clone(), outlines, variances);
        Some(seen.under(case, (&[], &[]), (rounding, way, share * chance)))
    };
    ways.into_iter().flatten().filter_map(under).collect()
}

/// The closed outlines under a way of rounding; those already computed are borrowed.
fn closed<'a>(
    case: &Case<'a>,
    walls: &Walls,
    rounding: Option<RoundingTaken>,
    way: StepRounding,
) -> Option<Vec<Cow<'a, Outline>>> {
    let known = match rounding {
        None => Some(case.ruled),
        Some(RoundingTaken::NotRounded) => Some(case.fine),
        _ => None,
    };
    if let Some(ruled) = known {
        return Some(ruled.outlines.iter().map(|one| Cow::Borrowed(&one.outline)).collect());
    }
    walls
        .spaces
        .iter()
        .map(|at| at.traverse.close_on(way, at.outline.area()).map(Cow::Owned))
        .collect()
}

/// Whether a space goes into the total above grade, counted or deducted.
pub(super) fn goes_in(house: &House, space: usize) -> bool {
    let in_total = |i: usize| is_in_total(house, i, false);
    in_total(space) || house.is_deducted(space) && house.spaces[space].parent.is_some_and(in_total)
}

/// The outlines and areas of a house under one face and way of rounding.
struct Seen<'a> {
    walls: Cow<'a, Walls>,
    outlines: Vec<Cow<'a, Outline>>,
    areas: Vec<Area>,
    variances: Vec<f64>,
    is_known: Vec<bool>,
}

impl<'a> Seen<'a> {
    fn new(
        walls: Cow<'a, Walls>,
        outlines: Vec<Cow<'a, Outline>>,
        variances: Vec<f64>,
    ) -> Seen<'a> {
        let areas: Vec<Area> = outlines.iter().map(|outline| outline.area()).collect();
        let is_known = vec![false; areas.len()];
        Seen { walls, outlines, areas, variances, is_known }
    }

    fn under(
        mut self,
        case: &Case<'a>,
        (departures, changes): (&[Departure], &[Changes]),
        (rounding, way, chance): RoundingWay,
    ) -> Setting<'a> {
        let house = case.listed.house;
        // A space the record lists separately, and does not count, has the area listed there.
        for (i, space) in house.spaces.iter().enumerate() {
            let listed = space.recorded.filter(|_| {
                !goes_in(house, i)
                    && house.deducted_from(i).next().is_none()
                    && is_listed_alike(space, self.areas[i])
            });
            if let Some(listed) = listed {
                (self.areas[i], self.is_known[i]) = (listed, true);
            }
        }
        let zero_if_known = self.variances.iter_mut().zip(&self.is_known);
        zero_if_known.filter(|(_, known)| **known).for_each(|(variance, _)| *variance = 0.0);
        let times: Vec<f64> = (0..self.areas.len()).map(|i| times(house, i)).collect();
        let squares = times.iter().zip(&self.variances).map(|(times, v)| times * times * v);
        let variance = squares.sum();
        let outlines: Vec<&Outline> = self.outlines.iter().map(Cow::as_ref).collect();
        let adds = |(departure, changes): (&Departure, &Changes)| {
            let area = departure.kind.effect(case.listed, &self.areas, &outlines);
            let more = changes
                .iter()
                .map(|&(i, by)| ((times[i] + by).powi(2) - times[i].powi(2)) * self.variances[i]);
            let part = match departure.kind {
                DepartureKind::Part { space, part } => Some((space, part)),
                _ => None,
            };
            let variance: f64 = variance + more.sum::<f64>();
            let changed = Some(changes).filter(|changes| !changes.is_empty()).cloned();
            Adds { variance, changed, part, ..Adds::of(area) }
        };
        let adds = departures.iter().zip(changes).map(adds).collect();
        let total = case.total(&self.areas);
        let counting = match case.listed.counting {
            [] => Area::ZERO,
            _ => total - crate::reconcile::total(house, &self.areas),
        };
        let mut setting = Setting {
            face: case.face,
            common: CommonTaken::Half,
            rounding,
            chance,
            total,
            counting,
            total_sq_ft: total.sq_ft(),
            shift: 0.0,
            variance,
            adds,
            way,
            reading: case.settings.reading,
            axes: &case.shared.axes,
            listed: self.areas.iter().map(|_| OfSpace::default()).collect(),
            walls: self.walls,
            outlines: self.outlines,
            areas: self.areas,
            times,
            variances: self.variances,
            is_known: self.is_known,
            base: OnceCell::new(),
            most: OnceCell::new(),
            is_all_listed: OnceCell::new(),
        };
        if !matches!(way, StepRounding::Nearest(..)) {
            setting.take_the_middle();
        }
        setting
    }
}

/// How many times a space is in the total: 1 if it counts, minus 1 if it is deducted from a space that counts.
pub(super) fn times(house: &House, space: usize) -> f64 {
    let in_total = |i: usize| is_in_total(house, i, false);
    let counted = if in_total(space) { 1.0 } else { 0.0 };
    let off = house.is_deducted(space) && house.spaces[space].parent.is_some_and(in_total);
    counted - if off { 1.0 } else { 0.0 }
}

impl Setting<'_> {
    /// Takes the mean and the spread from the listed outcomes. If every wall is rounded up, or every wall down, the
    /// nearest closing undoes the largest roundings, and most offices do not do that.
    fn take_the_middle(&mut self) {
        if let Some((mean, variance)) = self.base().mean_and_variance() {
            let more = (variance - self.variance).max(0.0);
            self.shift = mean;
            self.variance += more;
            self.adds.iter_mut().for_each(|adds| adds.variance += more);
        }
    }

    /// The likelihood of a figure, given a total that includes these departures. Any total within `wide` square
    /// feet may be published as this figure.
    pub(super) fn likelihood(&self, figure: f64, total: f64, adds: &[&Adds], wide: f64) -> f64 {
        // Published totals and listed errors are whole square feet. Half of an outline may end in a half: that is rounded
        // either way.
        let up = floor(total + 0.5);
        if up - total == 0.5 && wide <= 1.0 {
            let either =
                [up, up - 1.0].map(|whole| self.likelihood_of(figure, total, whole, adds, wide));
            return either.iter().sum::<f64>() / 2.0;
        }
        self.likelihood_of(figure, total, up, adds, wide)
    }

    /// The same with this whole total.
    fn likelihood_of(&self, figure: f64, total: f64, whole: f64, adds: &[&Adds], wide: f64) -> f64 {
        /// Less than any difference between totals: it rounds a half down.
        const A_LITTLE: f64 = 1e-6;
        let over = total - whole;
        let over = if over < 0.5 { over } else { over - A_LITTLE };
        let is_wide = wide > 1.0;
        let off = figure - if is_wide { total } else { whole };
        let (low, high) = (off - wide / 2.0, off + wide / 2.0);
        if adds.is_empty() && !is_wide {
            return self.likelihood_of_error(off);
        }
        let changes_no_walls = |adds: &&Adds| adds.changes().is_empty() && adds.part.is_none();
        let known = match adds {
            [adds] if is_wide => {
                self.with_part_alone(adds).map(|all| (all.within(low, high), all.rest))
            }
            [adds] => self.with_part_at(adds, f64::from(nearest_whole(off))),
            _ => None,
        };
        let (listed, rest) = if adds.iter().all(changes_no_walls) {
            let base = self.base();
            (if is_wide { base.within(low, high) } else { base.at(off) }, base.rest)
        } else if let Some(known) = known {
            known
        } else if self.is_open(adds) {
            (0.0, 1.0)
        } else if let Some(all) = self.in_all(adds, over) {
            (if is_wide { all.within(low, high) } else { all.at(off) }, all.rest)
        } else {
            self.listed(adds, over, |together, last| match last {
                None if is_wide => (together.within(low, high), together.rest),
                None => (together.at(off), together.rest),
                Some(last) if is_wide => {
                    let all = together.and(last.outcomes, last.factor, last.over);
                    (all.within(low, high), all.rest)
                }
                Some(last) => together.and_at(last.outcomes, last.factor, last.over, off),
            })
        };
        if rest < LEAST_REST {
            return listed;
        }
        let normal = Normal::of(unlisted(self.variance_with(adds)));
        let of_rest = if is_wide {
            normal.within(low - self.shift, high - self.shift)
        } else {
            normal.at(off - self.shift)
        };
        listed + rest * of_rest
    }

    /// The likelihood given the total without departures, with `more` variance added.
    #[inline]
    pub(super) fn likelihood_spread(&self, figure: f64, total: f64, more: f64) -> f64 {
        if more > 0.0 {
            Normal::of(self.variance + more).at(figure - total)
        } else {
            self.likelihood_of_error(figure - floor(total + 0.5))
        }
    }

    /// The likelihood of a total that is off by this much, without departures.
    #[inline]
    fn likelihood_of_error(&self, off: f64) -> f64 {
        let base = self.base();
        let listed = base.at(off);
        if base.rest < LEAST_REST {
            return listed;
        }
        listed + base.rest * Normal::of(unlisted(self.variance)).at(off - self.shift)
    }

    /// Whether a figure `off` square feet above a total has no likelihood at all, if the total has this variance and
    /// any total within `wide` square feet may be meant: nothing that far off is listed, and everything else is
    /// nearer.
    pub(super) fn is_out_of_reach(&self, off: f64, wide: f64, variance: f64) -> bool {
        let rounded = 0.5 + wide / 2.0;
        off.abs() > self.most_off(variance) + rounded
    }

    /// The distance in square feet from a total of this variance beyond which no figure has any likelihood, apart from
    /// rounding the total.
    pub(super) fn most_off(&self, variance: f64) -> f64 {
        (self.shift.abs() + reach(unlisted(variance))).max(REACH_SQ_FT)
    }

    /// The distance in square feet from the total without departures beyond which no figure has any likelihood.
    pub(super) fn reach(&self) -> f64 {
        self.reach_of(self.base(), self.variance)
    }

    /// The same for a total with these possible errors.
    fn reach_of(&self, all: &Together, variance: f64) -> f64 {
        let listed = all.ends().map_or(0.0, |(least, most)| most.max(-least));
        let more = self.shift.abs() + reach(unlisted(variance));
        1.0 + if all.rest < LEAST_REST { listed } else { listed.max(more) }
    }

    /// The distances in square feet from the total, with a departure if there is one, beyond which no figure has any
    /// likelihood: one for a single figure, less where the possible errors are listed already, and one for any of a range
    /// of figures, apart from its width.
    pub(super) fn reaches(&self, adds: Option<&Adds>) -> [f64; 2] {
        let all = self.known_errors(adds);
        let variance = adds.map_or(self.variance, |adds| self.variance_with(&[adds]));
        let most = self.most_off(adds.map_or(variance, |adds| adds.variance));
        [all.map_or(most, |all| self.reach_of(all, variance)), most]
    }

    /// The possible errors of the total, with a departure if there is one, as far as they are listed already.
    fn known_errors<'b>(&'b self, adds: Option<&'b Adds>) -> Option<&'b Together> {
        let Some(adds) = adds else { return self.base.get() };
        // A total half-way between two whole numbers is weighed as either, and these are the errors of one.
        let is_clear = |(over, _): &&(f64, Together)| over.abs() < 0.499;
        let in_all = || adds.in_all.get().filter(is_clear).map(|(_, all)| all);
        adds.all.get().or_else(in_all)
    }

    /// How likely any figure can be at most, given a total that includes a departure if there is one; `None` where its
    /// possible errors are not listed yet, or where it is weighed as either of two whole numbers.
    pub(super) fn bound<'b>(&'b self, total: f64, adds: Option<&'b Adds>) -> Option<Bound<'b>> {
        let whole = floor(total + 0.5);
        let listed = self.known_errors(adds).filter(|_| whole - total != 0.5)?;
        let variance = adds.map_or(self.variance, |adds| self.variance_with(&[adds]));
        let unlisted = listed.rest * Normal::of(unlisted(variance)).most();
        Some(Bound { whole, listed, unlisted })
    }

    /// How likely a figure is among the listed outcomes, without departures.
    pub(super) fn chance_of(&self, figure: f64) -> f64 {
        let whole = (self.total.sq_ft() + 0.5).floor();
        self.base().at(figure - whole)
    }

    /// The probability of one error of the total with a part filled in or left off, and that of all errors not listed;
    /// `None` if there is no grid for it.
    fn with_part_at(&self, adds: &Adds, wanted: f64) -> Option<(f64, f64)> {
        if let Some(all) = adds.all.get() {
            return Some((all.at(wanted), all.rest));
        }
        let (space, part) = adds.part?;
        if self.times[space] != 1.0 || !adds.changes().is_empty() {
            return None;
        }
        let others = self.listed[space].others.get_or_init(|| {
            let mut others = (0..self.times.len()).filter(|&i| i != space && self.times[i] != 0.0);
            others.next().map(|first| {
                let and = |all: Together, i: usize| all.and(self.outcomes(i), self.times[i], 0.0);
                others.fold(and(Together::new(), first), and)
            })
        });
        if let Some(drawn) = &adds.drawn {
            let grid = self.grid_of(drawn)?;
            return grid.with_part_at(&grid.no_part(), others.as_ref(), wanted);
        }
        let (grid, of_part) = (self.grid(space)?, self.of_part(adds, space, part)?);
        if self.rounding.is_some() {
            return grid.with_part_at(of_part, others.as_ref(), wanted);
        }
        // Totals that could have been meant are weighed with it too.
        let all = adds.all.get_or_init(|| match others {
            Some(others) => others.and(&grid.with_part(of_part), 1.0, 0.0),
            None => grid.total_with_part(of_part),
        });
        Some((all.at(wanted), all.rest))
    }

    /// The possible errors of a total of one space with a part filled in or left off, if they are listed already.
    fn with_part_alone<'b>(&self, adds: &'b Adds) -> Option<&'b Together> {
        let (space, _) = adds.part?;
        let is_alone = self.listed[space].others.get().is_some_and(Option::is_none);
        adds.all.get().filter(|_| is_alone)
    }

    /// How many times each space is in the total.
    pub(super) fn times(&self) -> &[f64] {
        &self.times
    }

    /// Whether a space has an area from the record itself.
    pub(super) fn is_known(&self, space: usize) -> bool {
        self.is_known[space]
    }

    /// The area of a space, in square feet.
    pub(super) fn area(&self, space: usize) -> f64 {
        self.areas[space].sq_ft()
    }

    /// The walls that it is computed from, not rounded.
    pub(super) fn walls(&self) -> &Walls {
        &self.walls
    }

    /// The area of a space with the lengths as they were typed, or as the record lists it by itself.
    pub(super) fn typed_area(&self, space: usize) -> Area {
        if self.is_known[space] {
            self.areas[space]
        } else {
            self.walls.spaces[space].outline.area()
        }
    }

    /// The highest likelihood of any figure.
    pub(super) fn most(&self) -> f64 {
        *self.most.get_or_init(|| {
            let base = self.base();
            base.most() + base.rest * Normal::of(unlisted(self.variance)).most()
        })
    }

    /// The variance of the total with these departures, in square feet squared.
    pub(super) fn variance_with(&self, adds: &[&Adds]) -> f64 {
        let more: f64 = adds.iter().map(|adds| adds.variance - self.variance).sum();
        // Two that take the same space out of the total would take its variance twice.
        (self.variance + more).max(0.0)
    }

    /// Whether nothing is listed for some space that is in the total with these departures. Then nothing is listed for
    /// the total either.
    fn is_open(&self, adds: &[&Adds]) -> bool {
        let has_list = |i: usize| {
            self.is_sure(i)
                || OnGrid::is_for(&self.walls.spaces[i].traverse, self.way, self.reading)
        };
        if *self.is_all_listed.get_or_init(|| (0..self.times.len()).all(has_list)) {
            return false;
        }
        let changes = || adds.iter().flat_map(|adds| adds.changes());
        let by =
            |space: usize| changes().filter(|(i, _)| *i == space).map(|(_, by)| by).sum::<f64>();
        // An outline that is drawn anew may have no more walls that are curved.
        let is_drawn = |space: usize| {
            let mut drawn = adds.iter().filter(|adds| adds.drawn.is_some());
            drawn.any(|adds| adds.part.is_some_and(|(of, _)| of == space))
        };
        (0..self.times.len()).any(|i| self.times[i] + by(i) != 0.0 && !has_list(i) && !is_drawn(i))
    }

    /// The possible errors of the total with one departure in the figure's own way, under which several figures are
    /// weighed; the total is `over` above a whole number. `None` in any other way, and where they were listed for another
    /// `over`.
    fn in_all<'b>(&self, adds: &[&'b Adds], over: f64) -> Option<&'b Together> {
        let &[one] = adds else { return None };
        if self.rounding.is_some() {
            return None;
        }
        let (its, all) = one.in_all.get_or_init(|| {
            let all = self.listed(adds, over, |together, last| match last {
                None => together.clone(),
                Some(last) => together.and(last.outcomes, last.factor, last.over),
            });
            (over, all)
        });
        (*its == over).then_some(all)
    }

    /// The possible errors of the total with these departures, with all spaces but the last of them combined; the total
    /// is `over` above a whole number.
    fn listed<T>(
        &self,
        adds: &[&Adds],
        over: f64,
        at: impl Fn(&Together, Option<Added<'_>>) -> T,
    ) -> T {
        let changes = || adds.iter().flat_map(|adds| adds.changes());
        let by =
            |space: usize| changes().filter(|(i, _)| *i == space).map(|(_, by)| by).sum::<f64>();
        let with_a_part = adds.iter().find_map(|adds| Some((*adds, adds.part?)));
        let part = with_a_part.map(|(_, part)| part);
        let with_part = with_a_part.and_then(|(adds, (space, part))| {
            let known = adds.with_part.get_or_init(|| self.with_part(adds, space, part));
            Some((space, known.as_ref()?))
        });
        let by_itself = part.filter(|_| with_part.is_none());
        let by_itself = by_itself.map(|(space, part)| self.part(space, part));
        let is_more = with_part.is_none() && changes().all(|&(i, _)| self.times[i] == 0.0);
        let (mut all, mut last): (Option<Together>, Option<Added<'_>>) = (None, None);
        let mut add = |outcomes, factor: f64, over: f64| {
            if let Some(before) = last.replace(Added { outcomes, factor, over }) {
                let start = self.from(is_more, all.as_ref());
                let next = start.and(before.outcomes, before.factor, before.over);
                drop(start);
                all = Some(next);
            }
        };
        if is_more {
            changes().for_each(|&(i, _)| add(self.outcomes(i), by(i), over));
        } else {
            for (i, times) in self.times.iter().enumerate() {
                let factor = times + by(i);
                if factor != 0.0 {
                    let own = with_part.filter(|(space, _)| *space == i);
                    add(own.map_or_else(|| self.outcomes(i), |(_, own)| own), factor, over);
                }
            }
        }
        if let Some(outcomes) = &by_itself {
            add(outcomes, 1.0, 0.0);
        }
        match last {
            Some(_) => at(&self.from(is_more, all.as_ref()), last),
            None => at(&Together::new(), None),
        }
    }

    /// The errors of the spaces that were combined already, or else those of an empty total.
    fn from<'b>(&'b self, is_more: bool, all: Option<&'b Together>) -> Cow<'b, Together> {
        match all {
            Some(all) => Cow::Borrowed(all),
            None if is_more => Cow::Borrowed(self.base()),
            None => Cow::Owned(Together::new()),
        }
    }

    fn base(&self) -> &Together {
        self.base.get_or_init(|| {
            let in_total = |i: &usize| self.times[*i] != 0.0;
            let spaces: Vec<usize> = (0..self.times.len()).filter(in_total).collect();
            // A total of one space needs no list of its own errors.
            if let [only] = spaces[..]
                && self.times[only] == 1.0
                && !self.is_sure(only)
                && let Some(grid) = self.grid(only)
            {
                return grid.total_with_part(&grid.no_part());
            }
            let and = |all: Together, i: usize| all.and(self.outcomes(i), self.times[i], 0.0);
            spaces.into_iter().fold(Together::new(), and)
        })
    }

    /// Whether the area of a space has no uncertainty.
    fn is_sure(&self, space: usize) -> bool {
        self.is_known[space] || self.variances[space] == 0.0
    }

    fn outcomes(&self, space: usize) -> &Outcomes {
        self.listed[space].outcomes.get_or_init(|| {
            if self.is_sure(space) {
                Outcomes::sure()
            } else {
                self.grid(space).map_or_else(Outcomes::open, OnGrid::whole)
            }
        })
    }

    fn grid(&self, space: usize) -> Option<&OnGrid> {
        let grid = self.listed[space].grid.get_or_init(|| {
            let at = &self.walls.spaces[space];
            OnGrid::of(&at.traverse, &self.outlines[space], self.way, self.reading, self.axes)
        });
        grid.as_ref()
    }

    fn grid_of<'b>(&self, drawn: &'b Drawn) -> Option<&'b OnGrid> {
        let of = || OnGrid::of(&drawn.traverse, &drawn.outline, self.way, self.reading, self.axes);
        drawn.grid.get_or_init(of).as_ref()
    }

    /// A part of a space on its grid; `None` if nothing is listed for it.
    fn of_part<'b>(&self, adds: &'b Adds, space: usize, part: Part) -> Option<&'b OfPart> {
        let of_part = adds.of_part.get_or_init(|| {
            if self.is_sure(space) {
                return None;
            }
            let sign = if part.shape.fills_in() { 1.0 } else { -1.0 };
            let (traverse, walls) =
                (&self.walls.spaces[space].traverse, part.walls(&self.outlines[space]));
            self.grid(space)?.part(traverse, walls, sign, adds.sq_ft)
        });
        of_part.as_ref()
    }

    /// The ways in which an office comes to a departure, each with its share: a part may be added to the whole outline
    /// or taken off it, or not be drawn at all.
    pub(super) fn ways_to<'b>(
        &self,
        adds: &'b Adds,
    ) -> impl Iterator<Item = (&'b Adds, f64)> + use<'b> {
        self.ways_beside(adds, &[])
    }

    /// The same for two departures, by index.
    pub(super) fn ways_to_both(
        &self,
        one: usize,
        other: usize,
    ) -> impl Iterator<Item = ([&Adds; 2], f64)> {
        let (one, other) = (&self.adds[one], &self.adds[other]);
        self.ways_beside(one, other.changes()).flat_map(move |(first, share)| {
            let others = self.ways_beside(other, one.changes());
            others.map(move |(second, its)| ([first, second], share * its))
        })
    }

    /// The ways to a departure together with another that makes these changes. An outline that the other leaves out
    /// or takes again is weighed as it is.
    fn ways_beside<'b>(
        &self,
        adds: &'b Adds,
        changes: &[(usize, f64)],
    ) -> impl Iterator<Item = (&'b Adds, f64)> + use<'b> {
        let is_changed = |space: usize| changes.iter().any(|(changed, _)| *changed == space);
        let is_kept = adds.part.is_some_and(|(space, _)| !is_changed(space));
        let redrawn = if is_kept { self.redrawn(adds) } else { None };
        let share = if redrawn.is_some() { DRAWN_WITHOUT } else { 0.0 };
        std::iter::once((adds, 1.0 - share)).chain(redrawn.map(|redrawn| (redrawn, share)))
    }

    /// A part that is not drawn at all; `None` where its walls are not rounded in the figure's own way to a step that
    /// is coarser than they are read.
    fn redrawn<'b>(&self, adds: &'b Adds) -> Option<&'b Adds> {
        let (space, part) = adds.part?;
        let redrawn = adds.redrawn.get_or_init(|| self.redraw(space, part).map(Box::new));
        redrawn.as_deref()
    }

    fn redraw(&self, space: usize, part: Part) -> Option<Adds> {
        let is_coarse = self.way.step().length().nm() > 2 * self.reading.nm();
        if self.rounding.is_some() || !is_coarse || self.is_sure(space) {
            return None;
        }
        let at = &self.walls.spaces[space];
        let traverse = part.simplified(&at.traverse, &at.outline)?;
        let measured = at.outline.area() + part.effect(&at.outline);
        let outline = traverse.close_on(self.way, measured)?;
        let own = OfRounding::new(&traverse, &outline).variance(self.way, self.reading);
        let (squared, area) = (self.times[space].powi(2), outline.area() - self.areas[space]);
        Some(Adds {
            variance: (self.variance - squared * self.variances[space]).max(0.0) + squared * own,
            part: Some((space, part)),
            drawn: Some(Box::new(Drawn { traverse, outline, grid: OnceCell::new() })),
            ..Adds::of(area)
        })
    }

    /// The possible deviations of a space with a part of it filled in or left off; `None` if nothing is listed for
    /// it.
    fn with_part(&self, adds: &Adds, space: usize, part: Part) -> Option<Outcomes> {
        if let Some(drawn) = &adds.drawn {
            return Some(self.grid_of(drawn).map_or_else(Outcomes::open, OnGrid::whole));
        }
        Some(self.grid(space)?.with_part(self.of_part(adds, space, part)?))
    }

    /// The possible errors of a part alone: its two walls may be rounded the other way.
    fn part(&self, space: usize, part: Part) -> Outcomes {
        let sides = &self.walls.spaces[space].traverse.sides;
        let wall = |side: usize| {
            let nm = sides[side].shape.vector().chord_length().nm();
            let length = self.outlines[space].vectors()[side].chord_length().feet();
            let toward = if self.way.rounded(nm) < nm { 1.0 } else { -1.0 };
            (length, chance_of_other_step(nm, self.way, self.reading), toward)
        };
        let sign = if part.shape.fills_in() { 1.0 } else { -1.0 };
        of_rectangle(
            part.walls(&self.outlines[space]).map(wall),
            self.way.step().length().feet(),
            sign,
        )
    }
}

/// The probability of errors that are not listed below which they are passed over.
const LEAST_REST: f64 = 1e-4;

/// The variance of errors that are not listed, given that of the total: they are larger than most listed ones.
fn unlisted(variance: f64) -> f64 {
    1.5 * variance + 1.0
}

/// The same as `f64::floor`, which is a slow library call on most machines, for any total.
#[expect(clippy::cast_possible_truncation, clippy::cast_precision_loss, reason = "far below 2⁵³")]
fn floor(total: f64) -> f64 {
    let whole = total as i64 as f64;
    if whole > total { whole - 1.0 } else { whole }
}

fn spread_of(at: &AtFace) -> OfRounding {
    OfRounding::new(&at.traverse, &at.outline)
}
