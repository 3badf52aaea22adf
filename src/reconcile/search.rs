//! Searches for causes that would account for a figure, and computes how well each is supported.
//!
//! A total depends on what the office thinks exists, how it measures, and how the total is written down. Single
//! departures are weighed under every way of rounding, pairs only where they could still outweigh something else. The
//! support of a cause is its prior times the likelihood of the figure, divided by the sum over all. The sum includes
//! "something else", which also stands for several departures at once that no figure can distinguish.
//!
//! Bounds are checked first: what cannot reach a thousandth of the weight of something else is not computed.
#![expect(
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    reason = "explanations are weighed in floats"
)]

use crate::areas::is_in_total;
use crate::areas::range::Range;
use crate::geometry::compass::Axis;
use crate::geometry::traverse::{Shape, StepRounding};
use crate::house::wall_moves::{AtFace, CommonTaken};
use crate::reconcile::case::Case;
use crate::reconcile::cause::{Cause, MisreadWall};
use crate::reconcile::decision;
use crate::reconcile::departures::{Departure, DepartureKind, departures};
use crate::reconcile::evidence::Evidence;
use crate::reconcile::explanation::{self, Explanation, FigureRange, Labels};
use crate::reconcile::misread::{self, Wanted, misread};
use crate::reconcile::normal::OF_TOTAL;
use crate::reconcile::ours::{self, Question};
use crate::reconcile::settings::{Adds, Bound, RoundingTaken, Setting, goes_in, settings, ways};
use crate::reconcile::sums::{OtherClosings, Sum, SummedBy};
use crate::reconcile::total;
use crate::reconcile::totals::{Meant, TotalWritten, meant, nearest_meant};
use crate::reconcile::weights::Weights;
use crate::units::area::Area;
use crate::units::length::Step;
use strum::EnumCount;

/// How many explanations are kept.
const MOST_LISTED: usize = 24;
/// A cause with less than this share of the weight of something else is not computed.
const NEGLIGIBLE: f64 = 1e-3;
/// The least support of a cause for which other closings are tried.
const WORTH_CLOSING: f64 = 0.02;
/// The most pairs of departures that are weighed.
const MOST_PAIRS: usize = 20_000;

#[cfg(test)]
mod listing;

/// The possible explanations of a figure, best supported first.
#[derive(Clone, Debug, Default)]
pub struct Explanations {
    pub(crate) list: Vec<Explanation>,
    pub(crate) something_else: f64,
    pub(crate) weighed: u64,
    pub(crate) fitting: u64,
    /// Whether there was too much to weigh all of it.
    pub(crate) is_capped: bool,
    pub(crate) evidence: Option<Evidence>,
    /// What to check again in our own measurements.
    pub(crate) questions: Vec<Question>,
}

impl Explanations {
    /// The explanations: first those that are reported, in their order, then the others, best supported first.
    #[must_use]
    pub fn list(&self) -> &[Explanation] {
        &self.list
    }

    /// The explanations that are reported: at most three, best supported first.
    pub fn reported(&self) -> impl Iterator<Item = &Explanation> {
        self.list.iter().filter(|explanation| explanation.is_reported())
    }

    /// Whether any explanation is reported.
    pub(crate) fn is_any_reported(&self) -> bool {
        self.reported().next().is_some()
    }

    /// The best supported cause that gives the very figure, where none is reported, it is at least half as likely as
    /// something else, and nothing that fits is far likelier.
    pub(crate) fn unnamed(&self) -> Option<&Explanation> {
        const OF_SOMETHING_ELSE: f64 = 0.5;
        const FAR_LIKELIER: f64 = 4.0;
        let is_none = !self.is_any_reported();
        let best = self.list.iter().find(|one| one.gives_the_figure());
        let is_far_likelier = |one: &Explanation| {
            let mut others = self.list.iter().filter(|other| other.fits());
            others.any(|other| other.support > FAR_LIKELIER * one.support)
        };
        best.filter(|one| {
            is_none
                && one.support > OF_SOMETHING_ELSE * self.something_else
                && !is_far_likelier(one)
        })
    }

    /// Whether any cause that is printed with its support leaves nothing, or fits with some support, named or not.
    pub(crate) fn is_any_fitting(&self) -> bool {
        const PRINTED: f64 = 0.005;
        const LIKELY: f64 = 0.05;
        self.list.iter().any(|one| {
            !matches!(one.cause, Cause::None)
                && (one.support >= PRINTED && one.leaves.abs() < 0.5
                    || one.support >= LIKELY && one.fits())
        })
    }

    /// The support for something else, from 0 to 1: a cause that is not listed, or several at once.
    #[must_use]
    pub fn something_else(&self) -> f64 {
        self.something_else
    }

    /// How many combinations were weighed.
    #[must_use]
    pub fn weighed(&self) -> u64 {
        self.weighed
    }

    /// How many of the weighed combinations fit the figure.
    #[must_use]
    pub fn fitting(&self) -> u64 {
        self.fitting
    }

    /// What one of the record's other lines shows about its rounding; `None` if none shows anything.
    #[must_use]
    pub fn evidence(&self) -> Option<&Evidence> {
        self.evidence.as_ref()
    }

    /// Whether there was too much to weigh all of it.
    #[must_use]
    pub fn is_capped(&self) -> bool {
        self.is_capped
    }

    /// Searches for explanations of a case's figure.
    pub(super) fn of(case: &Case<'_>, weights: &Weights) -> Explanations {
        let house = case.listed.house;
        let is_free = |space: usize| {
            let at = &case.walls.spaces[space];
            at.traverse.sides.len() == house.spaces[space].sides.len()
        };
        let (departures, is_capped) = departures(case.listed, &case.ruled.areas, is_free, weights);
        let mut ways = ways(case, weights);
        let evidence = Evidence::of(case, &mut ways);
        let settings = settings(case, &departures, &ways, weights);
        let mut search = Search::new(case, weights, &departures, &settings);
        if search.start <= 0.0 {
            return Explanations::default();
        }
        search.is_capped |= is_capped;
        search.run();
        search.finish(evidence)
    }
}

/// The result for one cause: its weight over all ways of rounding, and the best of them.
#[derive(Clone, Copy, Debug)]
struct Found {
    cause: Cause,
    weight: f64,
    best: f64,
    /// How often an office that does this, and nothing else, gets just this figure.
    likelihood: f64,
    rounding: Option<RoundingTaken>,
    sq_ft: f64,
    sigma: f64,
    effect: Effect,
    /// The sum of the very lengths typed that comes nearest to the figure, if one is near.
    sum: Option<Sum>,
}

impl Found {
    /// How well it represents its cause: 2 if it is the figure to the square foot without anything being taken
    /// otherwise, 1 if it is a sum near the figure, 0 for all else.
    fn rank(&self, figure: f64) -> u8 {
        let is_it = (figure - self.sq_ft).abs() < 0.5 && self.rounding.is_none();
        if is_it { 2 } else { u8::from(self.sum.is_some()) }
    }
}

/// What a cause adds at the figure's own face and rule.
#[derive(Clone, Copy, Debug)]
enum Effect {
    Exact(Area),
    Float(f64),
}

struct Search<'a> {
    case: &'a Case<'a>,
    departures: &'a [Departure],
    settings: &'a [Setting<'a>],
    figure: f64,
    /// The area of the house measured in the figure's own way.
    start: f64,
    /// The prior probability of no departure.
    none: f64,
    /// The weight of something else.
    otherwise: f64,
    found: Vec<Found>,
    /// The index in `found` of each departure alone.
    singles: Vec<usize>,
    /// The index in `found` of each way in which a total can be written, without a departure and with each.
    written: Vec<usize>,
    weighed: u64,
    fitting: u64,
    is_capped: bool,
    misread_odds: f64,
    totals: Vec<Meant>,
    questions: Vec<Question>,
    closings: OtherClosings,
    /// Causes in the figure's own way of rounding that a sum of the typed lengths stands for.
    behind_sums: Vec<Found>,
}

const NOWHERE: usize = usize::MAX;

/// From the lowest to the highest figure that can have any likelihood, before it is rounded.
struct Near {
    low: f64,
    high: f64,
}

impl Near {
    fn about(sq_ft: f64, reach: f64) -> Near {
        Near { low: sq_ft - reach, high: sq_ft + reach }
    }

    /// From the lowest to the highest figure of both.
    fn or(self, other: &Near) -> Near {
        Near { low: self.low.min(other.low), high: self.high.max(other.high) }
    }

    /// Whether a total that was meant may lie in it.
    fn holds(&self, meant: Meant) -> bool {
        meant.middle + meant.wide >= self.low && meant.middle - meant.wide <= self.high
    }
}

/// The house, as it is or with a departure, beside which a total could have been meant.
struct Beside<'a> {
    setting: &'a Setting<'a>,
    prior: f64,
    /// Where any figure is likely: one of a single whole number, and one of a range.
    near: [Near; 2],
    bound: Option<Bound<'a>>,
}

impl<'a> Beside<'a> {
    fn of(setting: &'a Setting<'a>, adds: Option<&'a Adds>, prior: f64) -> Beside<'a> {
        let sq_ft = setting.total_sq_ft + adds.map_or(0.0, |adds| adds.sq_ft);
        let near = setting.reaches(adds).map(|reach| Near::about(sq_ft, reach));
        Beside { setting, prior, near, bound: setting.bound(sq_ft, adds) }
    }

    /// Whether it may have a total that could have been meant with a likelihood, times its prior, above the `least`.
    fn may_be(&self, meant: Meant, least: f64) -> bool {
        let is_wide = meant.wide > 1.0;
        let at_most = self.bound.as_ref().filter(|_| !is_wide);
        self.near[usize::from(is_wide)].holds(meant)
            && at_most.is_none_or(|bound| self.prior * bound.of(meant.middle) > least)
    }
}

impl<'a> Search<'a> {
    fn new(
        case: &'a Case<'a>,
        weights: &'a Weights,
        departures: &'a [Departure],
        settings: &'a [Setting<'a>],
    ) -> Search<'a> {
        let figure = case.figure.sq_ft();
        let start = settings.first().map_or(0.0, |own| own.total_sq_ft);
        let totals = meant(case.written, weights);
        let misread_odds = weights.misread / (1.0 - weights.misread);
        // How common each error in a total is does not depend on this figure.
        let of_totals = weights.total_swapped
            + weights.total_one_digit
            + weights.total_ten_times
            + weights.total_tenth
            + weights.total_rounded_10
            + weights.total_rounded_50
            + weights.total_rounded_100
            + weights.total_twice
            + weights.total_square_meters;
        let all = departures.iter().map(|departure| departure.odds).sum::<f64>()
            + misread_odds
            + of_totals;
        let none = libm::exp(-all);
        let several = 1.0 - (1.0 + all) * none;
        let otherwise = weights.something_else + (1.0 - weights.something_else) * several;
        Search {
            case,
            departures,
            settings,
            figure,
            start,
            none: (1.0 - weights.something_else) * none,
            otherwise: otherwise * anywhere(figure, start),
            found: Vec::with_capacity(32),
            singles: vec![NOWHERE; departures.len()],
            written: vec![NOWHERE; TotalWritten::COUNT * (departures.len() + 1)],
            weighed: 0,
            fitting: 0,
            is_capped: false,
            misread_odds,
            totals,
            questions: Vec::new(),
            closings: OtherClosings::of(case),
            behind_sums: Vec::new(),
        }
    }

    fn run(&mut self) {
        for setting in self.settings {
            self.alone(setting);
            self.with_one_departure(setting);
        }
        if let Some(own) = self.settings.first() {
            self.pairs(own);
            if self.case.recorded.is_none_or(|recorded| !recorded.has.contains(&true)) {
                self.misread(own);
            }
            self.totals(own);
            self.ours(own);
        }
    }

    /// Adds the weight of a new cause, or if `place` is given, adds to the cause at that index. Returns its index.
    fn push(&mut self, place: Option<usize>, found: Found) -> usize {
        match place {
            Some(place) => {
                self.add(place, found.weight, (found.sq_ft, found.sigma));
                let known = &mut self.found[place];
                let rank = |one: &Found| (one.rank(self.figure), one.best);
                let mut other = found;
                if rank(&other) > rank(known) {
                    other.weight = known.weight;
                    std::mem::swap(known, &mut other);
                }
                if other.rounding.is_none() && known.sum.is_some() {
                    self.behind_sums.push(other);
                }
                place
            }
            None => {
                self.found.push(Found { weight: 0.0, ..found });
                let place = self.found.len() - 1;
                self.add(place, found.weight, (found.sq_ft, found.sigma));
                place
            }
        }
    }

    /// Adds to the weight of a cause that gives this figure in one more way.
    fn add(&mut self, place: usize, weight: f64, (sq_ft, sigma): (f64, f64)) {
        let leaves = self.figure - sq_ft;
        self.fitting += u64::from(leaves.abs() <= explanation::allows(sigma));
        self.found[place].weight += weight;
    }

    /// Whether a cause with at most this weight can be ignored.
    fn is_negligible(&self, weight: f64) -> bool {
        weight <= NEGLIGIBLE * self.otherwise
    }

    /// Weighs a face and rounding without any departure.
    fn alone(&mut self, setting: &Setting<'_>) {
        self.weighed += 1;
        let total = setting.total_sq_ft;
        if setting.is_out_of_reach(self.figure - total, 1.0, setting.variance) {
            return;
        }
        let cause = cause_of(setting, self.case);
        let is_moved = matches!(cause, Cause::Face(_) | Cause::Common(_));
        let same = is_moved.then(|| setting.of_same_lengths(self.case, None, total)).flatten();
        let likelihood = setting.likelihood(self.figure, total, &[], 1.0)
            + same.map_or(0.0, |(likelihood, _)| likelihood);
        let weight = self.none * setting.chance * likelihood;
        if self.is_negligible(weight) {
            return;
        }
        // Walls taken elsewhere are compared with the house rounded in the same way.
        let own = if is_moved { self.setting(setting.rounding) } else { self.settings.first() };
        let sum = same.map(|(_, sum)| sum);
        let effect = Effect::Exact(setting.total - own.map_or(setting.total, |own| own.total));
        let (sigma, rounding) = (sigma(setting.variance), setting.rounding);
        let known = self.found.iter().position(|known| known.cause == cause);
        self.push(
            known,
            Found {
                cause,
                weight,
                best: weight,
                likelihood,
                rounding,
                sq_ft: total,
                sigma,
                effect,
                sum: sum.map(|sum| self.beside_own(sum, setting)),
            },
        );
    }

    /// A sum with walls taken elsewhere, from the house as it is measured in the figure's own way and added up alike.
    fn beside_own(&self, sum: Sum, setting: &Setting<'_>) -> Sum {
        let in_tenths = self.setting(setting.rounding).filter(|_| sum.total == setting.total);
        let typed = self.case.walls.spaces.iter().map(|at| at.outline.area());
        let house = match in_tenths {
            Some(own) => own.total,
            None => self.case.total(&typed.collect::<Vec<Area>>()),
        };
        Sum { house, ..sum }
    }

    fn with_one_departure(&mut self, setting: &Setting<'_>) {
        let base = self.none * setting.chance;
        let total = setting.total_sq_ft;
        self.weighed += setting.adds.len() as u64;
        for (i, (departure, adds)) in self.departures.iter().zip(&setting.adds).enumerate() {
            let base = base * departure.odds;
            if self.is_negligible(base) {
                continue;
            }
            for (adds, share) in setting.ways_to(adds) {
                let sq_ft = total + adds.sq_ft;
                if setting.is_out_of_reach(self.figure - sq_ft, 1.0, adds.variance) {
                    continue;
                }
                let same = setting.of_same_lengths(self.case, Some(departure.kind), sq_ft);
                let likelihood = setting.likelihood(self.figure, sq_ft, &[adds], 1.0)
                    + same.map_or(0.0, |(likelihood, _)| likelihood);
                let weight = base * share * likelihood;
                if self.is_negligible(weight) {
                    continue;
                }
                let found = Found {
                    cause: Cause::Departures(departure.kind, None),
                    weight,
                    best: weight,
                    likelihood,
                    rounding: setting.rounding,
                    sq_ft: sq_ft + setting.shift,
                    sigma: sigma(adds.variance),
                    effect: Effect::Exact(adds.area),
                    sum: same.map(|(_, sum)| sum),
                };
                let known = (self.singles[i] != NOWHERE).then_some(self.singles[i]);
                self.singles[i] = self.push(known, found);
            }
        }
    }

    /// Weighs pairs of departures, in the figure's own way, where a pair could still outweigh something else.
    fn pairs(&mut self, own: &Setting<'_>) {
        let mut order: Vec<usize> = (0..self.departures.len()).collect();
        order.sort_by(|&a, &b| {
            self.departures[b].odds.total_cmp(&self.departures[a].odds).then(a.cmp(&b))
        });
        let base = self.none * own.chance * own.most();
        let mut count = 0;
        for (place, &i) in order.iter().enumerate() {
            for &j in &order[place + 1..] {
                if base * self.departures[i].odds * self.departures[j].odds <= self.otherwise {
                    break;
                }
                count += 1;
                if count > MOST_PAIRS {
                    self.is_capped = true;
                    return;
                }
                self.pair(own, i.min(j), i.max(j));
            }
        }
    }

    fn pair(&mut self, own: &Setting<'_>, i: usize, j: usize) {
        self.weighed += 1;
        let (one, other) = (self.departures[i], self.departures[j]);
        // As any two parts of an outline do.
        if one.kind.excludes(other.kind, self.case.listed.house) {
            return;
        }
        let prior = self.none * own.chance * one.odds * other.odds;
        let mut known = None;
        for (adds, share) in own.ways_to_both(i, j) {
            let sq_ft = own.total_sq_ft + adds[0].sq_ft + adds[1].sq_ft;
            let variance = own.variance_with(&adds);
            if own.is_out_of_reach(self.figure - sq_ft, 1.0, variance) {
                continue;
            }
            let likelihood = own.likelihood(self.figure, sq_ft, &adds, 1.0);
            let weight = prior * share * likelihood;
            if !self.is_negligible(weight) {
                let cause = Cause::Departures(one.kind, Some(other.kind));
                let effect = Effect::Exact(adds[0].area + adds[1].area);
                let (best, sigma) = (weight, sigma(variance));
                let (rounding, sum) = (None, None);
                let found =
                    Found { cause, weight, best, likelihood, rounding, sq_ft, sigma, effect, sum };
                known = Some(self.push(known, found));
            }
        }
    }

    /// Weighs misread walls, in the figure's own way. All misreadings of one wall count as one cause, represented
    /// by the best.
    fn misread(&mut self, own: &Setting<'_>) {
        let case = self.case;
        let house = case.listed.house;
        let spaces: Vec<usize> = (0..house.spaces.len()).filter(|&i| goes_in(house, i)).collect();
        let walls: usize = spaces.iter().map(|&i| house.spaces[i].sides.len()).sum();
        let base = self.none * own.chance * self.misread_odds / walls.max(1) as f64;
        // Even all misreadings of one wall together could not outweigh something else.
        if base * own.most() <= self.otherwise {
            return;
        }
        let total = own.total_sq_ft;
        let is_metric = house.usual_form().is_metric();
        for &space in &spaces {
            let outline = &case.ruled.outlines[space].outline;
            let traverse = &case.walls.spaces[space].traverse;
            self.is_capped |= traverse.sides.len() > misread::MOST_SIDES;
            let sign = if house.spaces[space].counted { 1.0 } else { -1.0 };
            let mut sides = vec![NOWHERE; house.spaces[space].sides.len()];
            let effect = sign * (self.figure - total);
            let (reach, variance) = (own.reach(), own.variance);
            let wanted = Wanted { effect, reach, variance, is_metric };
            let ways = misread(traverse, outline, wanted, |one| {
                let sq_ft = total + sign * one.effect;
                let likelihood = own.likelihood_spread(self.figure, sq_ft, one.variance);
                let chances = (base * one.share * likelihood, likelihood);
                let total = (sq_ft, sigma(own.variance + one.variance), sign * one.effect);
                self.misread_wall(&mut sides[one.side], chances, total, || one.wall(space));
            });
            self.weighed += ways;
        }
        self.misread_on_two_levels(own, base);
    }

    /// Weighs walls misread in an outline that stands on two levels alike: whoever draws it once takes the same length on
    /// both.
    fn misread_on_two_levels(&mut self, own: &Setting<'_>, base: f64) {
        let Some((space, also)) = alike_on_two_levels(self.case) else { return };
        let total = own.total_sq_ft;
        let wanted = Wanted {
            effect: (self.figure - total) / 2.0,
            reach: own.reach() / 2.0,
            variance: own.variance / 4.0,
            is_metric: self.case.listed.house.usual_form().is_metric(),
        };
        let outline = &self.case.ruled.outlines[space].outline;
        let traverse = &self.case.walls.spaces[space].traverse;
        let mut sides = vec![NOWHERE; traverse.sides.len()];
        let ways = misread(traverse, outline, wanted, |one| {
            let (sq_ft, variance) = (total + 2.0 * one.effect, 4.0 * one.variance);
            let likelihood = own.likelihood_spread(self.figure, sq_ft, variance);
            let chances = (base * OF_BOTH_LEVELS * one.share * likelihood, likelihood);
            let total = (sq_ft, sigma(own.variance + variance), 2.0 * one.effect);
            let wall = || MisreadWall { also: Some(also), ..one.wall(space) };
            self.misread_wall(&mut sides[one.side], chances, total, wall);
        });
        self.weighed += ways;
    }

    /// Adds one way in which a wall is misread to those of the same wall, which are at this `place`: its weight and
    /// likelihood; the total, its deviation, and what the wall adds to it.
    #[inline(always)]
    fn misread_wall(
        &mut self,
        place: &mut usize,
        (weight, likelihood): (f64, f64),
        (sq_ft, sigma, effect): (f64, f64, f64),
        wall: impl FnOnce() -> MisreadWall,
    ) {
        if weight <= 0.0 {
            return;
        }
        let (figure, best, effect) = (self.figure, weight, Effect::Float(effect));
        let found = |cause: Cause, weight: f64| Found {
            cause,
            weight,
            best,
            likelihood,
            rounding: None,
            sq_ft,
            sigma,
            effect,
            sum: None,
        };
        if *place == NOWHERE {
            *place = self.push(None, found(Cause::Misread(wall()), weight));
            return;
        }
        self.add(*place, weight, (sq_ft, sigma));
        let known = &mut self.found[*place];
        let is_figure = |sq_ft: f64| (figure - sq_ft).abs() < 0.5;
        // The best of them stands for all.
        if best > known.best && is_figure(sq_ft) >= is_figure(known.sq_ft) {
            *known = found(Cause::Misread(wall()), known.weight);
        }
    }

    /// Looks for an error in our own measurements that would explain the gap, if rounding alone does not fit.
    fn ours(&mut self, own: &Setting<'_>) {
        let gap = self.figure - own.total_sq_ft;
        let allows = explanation::allows(sigma(own.variance));
        if gap.abs() > allows {
            self.questions = ours::questions(self.case, gap, allows);
        }
    }

    /// Weighs the totals that could have been meant, each with at most one departure.
    fn totals(&mut self, own: &Setting<'_>) {
        let is_own =
            |one: &&Setting<'_>| one.face == self.case.face && one.common == CommonTaken::Half;
        let at_own_face = self.settings.iter().filter(is_own);
        let settings: Vec<Beside<'_>> =
            at_own_face.map(|one| Beside::of(one, None, self.none * one.chance)).collect();
        let with_one = own.adds.iter().zip(self.departures).map(|(adds, departure)| {
            Beside::of(own, Some(adds), self.none * own.chance * departure.odds)
        });
        let departures: Vec<Beside<'_>> = with_one.collect();
        let anywhere = [0, 1].map(|place: usize| {
            let none = Near { low: f64::INFINITY, high: f64::NEG_INFINITY };
            settings.iter().chain(&departures).map(|one| &one.near[place]).fold(none, Near::or)
        });
        // How many departures are weighed with a total of this chance; those that follow are often as common.
        let mut of_chance = (f64::NAN, 0);
        for meant in std::mem::take(&mut self.totals) {
            let place = usize::from(meant.wide > 1.0);
            self.weighed += settings.len() as u64;
            let least = NEGLIGIBLE * self.otherwise / meant.chance;
            let is_weighed = |one: &Beside<'_>| one.prior > least;
            // Most totals that could have been meant are far from everything, and then are only counted.
            if !anywhere[place].holds(meant) {
                if of_chance.0 != meant.chance {
                    let weighed = departures.iter().filter(|one| is_weighed(one));
                    of_chance = (meant.chance, weighed.count() as u64);
                }
                self.weighed += of_chance.1;
                continue;
            }
            for one in settings.iter().filter(|one| one.may_be(meant, least)) {
                self.total(meant, one.setting, None);
            }
            for (i, one) in departures.iter().enumerate().filter(|(_, one)| is_weighed(one)) {
                self.weighed += 1;
                if one.may_be(meant, least) {
                    self.total(meant, own, Some(i));
                }
            }
        }
    }

    fn total(&mut self, meant: Meant, setting: &Setting<'_>, with: Option<usize>) {
        let adds: Option<&Adds> = with.map(|i| &setting.adds[i]);
        let total = setting.total_sq_ft + adds.map_or(0.0, |adds| adds.sq_ft);
        let variance = adds.map_or(setting.variance, |adds| adds.variance);
        let off = meant.middle - total;
        if setting.is_out_of_reach(off, meant.wide, variance) {
            return;
        }
        let odds = with.map_or(1.0, |with| self.departures[with].odds);
        let prior = self.none * setting.chance * meant.chance * odds;
        let adds: &[&Adds] = adds.as_slice();
        let likelihood = setting.likelihood(meant.middle, total, adds, meant.wide);
        let weight = prior * likelihood;
        if self.is_negligible(weight) {
            return;
        }
        let cause =
            Cause::Total { how: meant.how, with: with.map(|with| self.departures[with].kind) };
        let place = meant.how as usize * (self.departures.len() + 1) + with.map_or(0, |i| i + 1);
        let known = Some(self.written[place]).filter(|known| *known != NOWHERE);
        // If the total is within the range meant, nothing is left; otherwise, what is left is the distance beyond it.
        let beyond = (off.abs() - if meant.wide > 1.0 { meant.wide / 2.0 } else { 0.0 }).max(0.0);
        let written = self.figure - beyond.copysign(off) * scale(meant.how);
        let found = Found {
            cause,
            weight,
            best: weight,
            likelihood,
            rounding: setting.rounding,
            sq_ft: written,
            sigma: sigma(variance) * scale(meant.how),
            effect: Effect::Float(written - self.start),
            sum: None,
        };
        self.written[place] = self.push(known, found);
    }

    /// The list, best supported first, after deciding which causes are reported.
    fn finish(self, evidence: Option<Evidence>) -> Explanations {
        let sum = self.found.iter().map(|found| found.weight).sum::<f64>() + self.otherwise;
        let is_seen = |found: &&Found| found.weight >= NEGLIGIBLE * sum;
        let mut found: Vec<&Found> = self.found.iter().filter(is_seen).collect();
        found.sort_by(|a, b| b.weight.total_cmp(&a.weight));
        found.truncate(MOST_LISTED);
        let one = |found: &Found| self.explanation(found, sum);
        let mut list: Vec<Explanation> = found.into_iter().map(one).collect();
        let something_else = self.otherwise / sum;
        decision::decide(&mut list, something_else, self.case, self.departures, self.settings);
        Explanations {
            list,
            something_else,
            weighed: self.weighed,
            fitting: self.fitting,
            is_capped: self.is_capped,
            evidence,
            questions: self.questions,
        }
    }

    /// The setting at the figure's own face with this rounding; `None` if it was not computed.
    fn setting(&self, rounding: Option<RoundingTaken>) -> Option<&Setting<'a>> {
        let mut settings = self.settings.iter();
        settings.find(|one| one.face == self.case.face && one.rounding == rounding)
    }

    /// The range of figures that a cause can give: what rounding allows, and the figure itself where an office that
    /// takes the odd steps off one wall gets just that.
    fn band(&self, found: &Found) -> FigureRange {
        const LIKELY: f64 = 0.004;
        let band = self.of_rounded(found);
        let is_single =
            matches!(found.cause, Cause::Departures(_, None) | Cause::Face(_) | Cause::Common(_));
        if is_single && found.likelihood >= LIKELY {
            FigureRange { low: band.low.min(self.figure), high: band.high.max(self.figure) }
        } else {
            band
        }
    }

    fn of_rounded(&self, found: &Found) -> FigureRange {
        /// How much further a total that is off by a factor may be, as a share of it: nothing else comes near it.
        const OF_A_FACTOR: f64 = 0.03;
        let likely = FigureRange::about(found.sq_ft, explanation::allows(found.sigma) - 0.5);
        let only = |sq_ft: f64| FigureRange { low: sq_ft, high: sq_ft };
        match found.cause {
            Cause::Rounding(RoundingTaken::WholeFoot) => {
                self.usual().map_or(likely, |range| likely.within(range))
            }
            Cause::Rounding(_) => self.of_rounding(found).unwrap_or(only(found.sq_ft)),
            Cause::Departures(one, other) if found.rounding.is_none() => {
                self.widest(one, other).map_or(likely, |limits| likely.within(limits))
            }
            Cause::Total { how: TotalWritten::OneDigit | TotalWritten::RoundedTo10, .. } => {
                only(found.sq_ft)
            }
            // These change a total by far more than rounding could.
            Cause::Total {
                how:
                    TotalWritten::TenTimes
                    | TotalWritten::Tenth
                    | TotalWritten::Twice
                    | TotalWritten::SquareMeters,
                ..
            } => {
                let far = OF_A_FACTOR * found.sq_ft;
                FigureRange { low: likely.low - far, high: likely.high + far }
            }
            Cause::Total { how, with: None } if found.rounding.is_none() => {
                let range = if how == TotalWritten::Swapped { self.nearly() } else { self.usual() };
                let Some(range) = range else { return likely };
                let more = |sq_ft: f64| found.sq_ft + (sq_ft - self.start) * scale(how);
                let (low, high) = (more(range.low), more(range.high));
                likely
                    .within(FigureRange { low: low.min(found.sq_ft), high: high.max(found.sq_ft) })
            }
            _ => likely,
        }
    }

    /// The range from the total with every wall rounded one way to the figure, if an office that has to adjust walls
    /// to close, or that draws the house part by part, could likely get the figure that way; the parts of a front may
    /// add up to more than a foot beyond it. `None` if that is unlikely, or, for any other rounding, if the figure is
    /// beyond what rounding walls up or down can give.
    fn of_rounding(&self, found: &Found) -> Option<FigureRange> {
        const LIKELY: f64 = 0.005;
        let limits = self.case.ranges.widest(false).map(|range| self.with_counting(range));
        let is_beyond = limits.is_some_and(|limits| {
            self.figure < limits.low - 0.5 || self.figure > limits.high + 0.5
        });
        let is_likely = self.setting(found.rounding)?.chance_of(self.figure) >= LIKELY;
        let one_way = match found.rounding {
            Some(RoundingTaken::AlwaysUp) => Some(StepRounding::Up(Step::WholeFoot)),
            Some(RoundingTaken::AlwaysDown) => Some(StepRounding::Down(Step::WholeFoot)),
            _ => None,
        };
        let may_be = match one_way {
            Some(rounding) => self.is_on_its_side(rounding) && !self.closes_by_itself(rounding),
            None => !is_beyond,
        };
        (is_likely && may_be).then(|| FigureRange {
            low: found.sq_ft.min(self.figure),
            high: found.sq_ft.max(self.figure),
        })
    }

    /// Whether the figure lies where rounding every wall this way leads: above the area before rounding if they are
    /// rounded up, below it if down.
    fn is_on_its_side(&self, rounding: StepRounding) -> bool {
        let walls = self.case.walls.spaces.iter();
        let areas: Vec<Area> = walls.map(|at| at.outline.area()).collect();
        let measured = self.case.total(&areas).sq_ft();
        match rounding {
            StepRounding::Up(_) => self.figure > measured - 0.5,
            StepRounding::Down(_) => self.figure < measured + 0.5,
            StepRounding::Nearest(..) => true,
        }
    }

    /// Whether the walls of every counted space, each rounded this way, come back to their start, so that nothing is
    /// left for closing to change. `false` where a wall is not along an axis.
    fn closes_by_itself(&self, rounding: StepRounding) -> bool {
        let Some(own) = self.settings.first() else { return false };
        let counted = own.times().iter().zip(&self.case.walls.spaces).filter(|(n, _)| **n != 0.0);
        let closes = |at: &AtFace| {
            let mut ends = (0, 0);
            at.traverse.sides.iter().all(|side| match side.shape {
                Shape::Straight { direction, length } => {
                    let run = direction.sign() * rounding.rounded(length);
                    match direction.axis() {
                        Axis::North => ends.0 += run,
                        Axis::East => ends.1 += run,
                    }
                    true
                }
                _ => false,
            }) && ends == (0, 0)
        };
        counted.into_iter().all(|(_, at)| closes(at))
    }

    /// The range of figures that ordinary rounding can give; `None` where it cannot be computed.
    fn usual(&self) -> Option<FigureRange> {
        self.case.ranges.usual(false).map(|range| self.with_counting(range))
    }

    /// The range of figures that ordinary rounding can give, and a little beyond it where a wall is rounded against the rule; `None`
    /// where it cannot be computed.
    fn nearly(&self) -> Option<FigureRange> {
        /// How far beyond, as a share of the house.
        const BEYOND: f64 = 0.006;
        let (usual, widest) = (self.usual()?, self.case.ranges.widest(false)?);
        let beyond = BEYOND * self.start;
        let usual = FigureRange { low: usual.low - beyond, high: usual.high + beyond };
        Some(usual.within(self.with_counting(widest)))
    }

    /// A range of the house's area, with what the figure says it counts added.
    fn with_counting(&self, range: Range) -> FigureRange {
        let counting = match self.case.listed.counting {
            [] => 0.0,
            _ => self.start - total(self.case.listed.house, &self.case.ruled.areas).sq_ft(),
        };
        FigureRange { low: range.low.sq_ft() + counting, high: range.high.sq_ft() + counting }
    }

    /// The range of figures possible with these departures if any wall may be rounded up or down; `None` where it
    /// cannot be computed.
    fn widest(&self, one: DepartureKind, other: Option<DepartureKind>) -> Option<FigureRange> {
        let own = self.settings.first()?;
        let (listed, ranges) = (self.case.listed, self.case.ranges);
        if self.case.recorded.is_some() || !listed.counting.is_empty() {
            return None;
        }
        let changes = || [Some(one), other].into_iter().flatten().map(|kind| kind.changes(listed));
        let mut times = own.times().to_vec();
        changes().flatten().for_each(|(space, by)| times[space] += by);
        let mut band = FigureRange { low: 0.0, high: 0.0 };
        for (space, times) in times.into_iter().enumerate().filter(|(_, times)| *times != 0.0) {
            let (low, high) = if own.is_known(space) {
                let known = own.area(space);
                (known, known)
            } else {
                let range = ranges.widest_of(space)?;
                (range.low.sq_ft(), range.high.sq_ft())
            };
            band.low += (times * low).min(times * high);
            band.high += (times * low).max(times * high);
        }
        // A missing space, or one counted as listed, has the area that the record lists; a part is as uncertain as its walls.
        let each = [Some(one), other].into_iter().flatten();
        for kind in each.flat_map(|kind| kind.each(listed.house)) {
            let (more, either_way) = match kind {
                DepartureKind::CountedAsListed { space } => {
                    (listed.house.spaces[space].recorded.map_or(0.0, Area::sq_ft), 0.0)
                }
                DepartureKind::MissingCounted { missing } => {
                    (listed.house.missing[missing].recorded.area().sq_ft(), 0.0)
                }
                DepartureKind::Part { space, part } => {
                    let outline = &self.case.ruled.outlines[space].outline;
                    let walls = part.walls(outline);
                    let run = walls.map(|i| outline.vectors()[i].chord_length().feet());
                    (part.effect(outline).sq_ft(), run.iter().sum::<f64>())
                }
                _ => (0.0, 0.0),
            };
            band.low += more - either_way;
            band.high += more + either_way;
        }
        Some(band)
    }

    /// The figure itself, if every wall rounded one way can give it where the outline is closed in a likely way, or if
    /// ordinary rounding can give a total that is rounded to it; `None` for all else.
    fn closed_or_rounded(&self, found: &Found, band: FigureRange) -> Option<f64> {
        let is_one = match found.cause {
            Cause::Rounding(RoundingTaken::AlwaysUp | RoundingTaken::AlwaysDown) => true,
            Cause::Total { how, with: None } => {
                matches!(how, TotalWritten::RoundedTo50 | TotalWritten::RoundedTo100)
                    && found.rounding.is_none()
            }
            _ => false,
        };
        let is_given = band.low - 0.5 <= self.figure && self.figure <= band.high + 0.5;
        (is_one && is_given).then_some(self.figure)
    }

    /// The cause with its figures: closed otherwise in the figure's own way, where that gives just the figure and a sum
    /// of the typed lengths only nearly does.
    fn explanation(&self, found: &Found, sum: f64) -> Explanation {
        let is_off = found.sum.is_some_and(|one| !one.is_the(self.case.figure));
        let own = self.behind_sums.iter().find(|own| is_off && own.cause == found.cause);
        let own = own.map(|own| Found { weight: found.weight, sum: None, ..*own });
        let own = own.filter(|own| self.closed_otherwise(own, self.effect_of(own)).is_some());
        self.explained(own.as_ref().unwrap_or(found), sum)
    }

    /// What a cause that is counted otherwise adds.
    fn effect_of(&self, found: &Found) -> Area {
        match found.effect {
            Effect::Exact(area) => area,
            Effect::Float(sq_ft) => Area::from_float_sq_ft(sq_ft),
        }
    }

    fn explained(&self, found: &Found, sum: f64) -> Explanation {
        let own = self.setting(found.rounding).or(self.settings.first());
        let is_own = found.rounding.is_none() || matches!(found.cause, Cause::Rounding(_));
        let ruled = own.filter(|_| !is_own).map(|own| own.total);
        let counting = own.map_or(Area::ZERO, |own| own.counting);
        let mut band = self.band(found);
        let gives = self.closed_or_rounded(found, band);
        let effect = match found.effect {
            _ if gives.is_some() => {
                self.case.figure - self.settings.first().map_or(Area::ZERO, |own| own.total)
            }
            Effect::Exact(area) => area,
            // A written total is compared with the house under the figure's own rounding.
            Effect::Float(sq_ft) => Area::from_float_sq_ft(match ruled {
                Some(ruled) => found.sq_ft - ruled.sq_ft(),
                None => sq_ft,
            }),
        };
        let is_likely = found.weight >= WORTH_CLOSING * sum;
        let closed = || is_likely.then(|| self.closed_otherwise(found, effect)).flatten();
        let exact = found.sum.or_else(closed);
        let gives = exact.map_or(gives.unwrap_or(found.sq_ft), |exact| exact.total.sq_ft());
        if exact.is_some() {
            let ends = [gives, self.figure];
            band = FigureRange {
                low: ends.into_iter().fold(band.low, f64::min),
                high: ends.into_iter().fold(band.high, f64::max),
            };
        }
        Explanation {
            cause: found.cause,
            labels: Labels::of(self.case.listed.house),
            rounding: found.rounding,
            sq_ft: gives,
            leaves: self.figure - gives,
            sigma: found.sigma,
            band,
            printed: band,
            support: found.weight / sum,
            effect: exact.map_or(effect, |exact| exact.total - exact.house),
            ruled: exact.map(|exact| exact.house).or(ruled).map(|ruled| ruled - counting),
            counting,
            sum: exact,
            strength: None,
        }
    }

    /// The sum that is the figure to the square foot if the rounded walls are closed in another way that is as near,
    /// for what is counted otherwise and for a total with two digits swapped; `None` for all else, and where the
    /// figure is given without that.
    fn closed_otherwise(&self, found: &Found, effect: Area) -> Option<Sum> {
        let own = self.settings.first().filter(|_| found.rounding.is_none())?;
        let band = self.band(found);
        let is_within = band.low - 0.5 <= self.figure && self.figure <= band.high + 0.5;
        if (self.figure - found.sq_ft).abs() < 0.5 || !is_within {
            return None;
        }
        let figure = self.case.figure.whole_sq_ft();
        match found.cause {
            Cause::Departures(one, other) => {
                let kinds: Vec<DepartureKind> = [Some(one), other].into_iter().flatten().collect();
                self.closings.giving(figure, self.case, own, &kinds, effect)
            }
            Cause::Face(face) => {
                let is_it = |one: &&Setting<'_>| {
                    one.face == face && one.rounding.is_none() && one.common == CommonTaken::Half
                };
                let there = self.settings.iter().find(is_it)?;
                let at_face = OtherClosings::of(self.case).at_face(figure, self.case, there)?;
                Some(Sum { by: SummedBy::Closing, house: own.total, total: at_face })
            }
            Cause::Total { how: how @ TotalWritten::Swapped, with: None } => {
                let house = found.sq_ft - effect.sq_ft();
                let meant = nearest_meant(how, self.case.written, house)?.area();
                let sum =
                    self.closings.giving(meant.whole_sq_ft(), self.case, own, &[], Area::ZERO)?;
                Some(Sum { total: self.case.figure, ..sum })
            }
            _ => None,
        }
    }
}

/// How common it is that a wall is misread on both of two levels with the same walls, beside one of them alone: as often
/// as not such a house is drawn once. Judgment.
const OF_BOTH_LEVELS: f64 = 1.0;

/// Two counted spaces on different levels with the same walls, as measured and as rounded; `None` if there are none.
fn alike_on_two_levels(case: &Case<'_>) -> Option<(usize, usize)> {
    let house = case.listed.house;
    let is_one = |&i: &usize| is_in_total(house, i, false) && house.spaces[i].parent.is_none();
    let several = house.levels.len() > 1;
    let mut spaces = (0..house.spaces.len()).filter(|i| several && is_one(i));
    let walls = |i: usize| {
        (case.walls.spaces[i].outline.vectors(), case.ruled.outlines[i].outline.vectors())
    };
    spaces.find_map(|one| {
        let mut others = (one + 1..house.spaces.len()).filter(is_one);
        let is_alike =
            |&i: &usize| house.spaces[i].level != house.spaces[one].level && walls(i) == walls(one);
        others.find(is_alike).map(|other| (one, other))
    })
}

/// The cause that a face and a way of rounding are, without any departure.
fn cause_of(setting: &Setting<'_>, case: &Case<'_>) -> Cause {
    match setting.rounding {
        _ if setting.face != case.face => Cause::Face(setting.face),
        _ if setting.common != CommonTaken::Half => Cause::Common(setting.common),
        None => Cause::None,
        Some(rounding) => Cause::Rounding(rounding),
    }
}

/// The standard deviation of a total, including the rounding of the total.
fn sigma(variance: f64) -> f64 {
    (variance + OF_TOTAL).sqrt()
}

/// The number by which the intended total was multiplied when it was written down.
fn scale(how: TotalWritten) -> f64 {
    match how {
        TotalWritten::TenTimes => 10.0,
        TotalWritten::Tenth => 0.1,
        TotalWritten::Twice => 2.0,
        TotalWritten::SquareMeters => 1.0 / Area::SQUARE_METER.sq_ft(),
        _ => 1.0,
    }
}

/// The likelihood of a figure, per whole square foot, if nothing is known about its origin. Most such figures are 0.70
/// to 1.35 times the house, a third as often within a twentieth of it, where rounding accounts for them; the rest are
/// spread up to thirty times more or less. Judgment.
fn anywhere(figure: f64, start: f64) -> f64 {
    const NEAR: (f64, f64) = (0.70, 1.35);
    const BESIDE: f64 = 0.05;
    const RARER: f64 = 0.3;
    const MOSTLY: f64 = 0.85;
    let ratio = figure / start;
    let wide = NEAR.1 - NEAR.0 - 2.0 * BESIDE * (1.0 - RARER);
    let near = match (ratio - 1.0).abs() {
        _ if !(NEAR.0..=NEAR.1).contains(&ratio) => 0.0,
        off if off < BESIDE => RARER,
        _ => 1.0,
    };
    let far = (1.0 - MOSTLY) / (2.0 * libm::log(30.0) * figure.max(1.0));
    MOSTLY * near / (wide * start) + far
}
