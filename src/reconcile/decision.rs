//! Decides which causes are reported. The steps, lists, marks, batch results and JSON all follow from this decision.
#![expect(clippy::float_arithmetic, reason = "supports are floats")]

use crate::areas::{is_in_total, net};
use crate::house::House;
use crate::reconcile::case::Case;
use crate::reconcile::cause::Cause;
use crate::reconcile::departures::{Departure, DepartureKind};
use crate::reconcile::explanation::{Explanation, Strength};
use crate::reconcile::rounding::{CouldExplain, RoundingTest};
use crate::reconcile::settings::{RoundingTaken, Setting};
use crate::reconcile::sums::{NEAR_A_SUM_SQ_FT, SummedBy};
use crate::reconcile::totals::TotalWritten;
use crate::units::area::Area;
use crate::units::decimal::rounded_quotient;

/// The most distinct causes that are reported.
pub(crate) const MOST_REPORTED: usize = 3;
/// If rounding alone fits, a cause is reported only if its support is at least this share of the support of rounding
/// alone; another way of rounding needs at least as much.
const BESIDE_ROUNDING: f64 = 0.2;
/// A cause that is alone and has more support than this is reported as the only common cause that fits.
const NEARLY_SURE: f64 = 0.8;
/// No figure can distinguish causes whose effects differ by less than this.
const ALIKE_SQ_FT: f64 = 0.5;
/// The largest ratio of support between causes that are about equally common.
const ABOUT_AS_COMMON: f64 = 4.0;
/// How many times as likely as a misread wall a cause with every wall as it is has to be, so that the wall is not listed.
const FAR_COMMONER: f64 = 10.0;
/// The least support at which another single cause that fits is listed beside a reported one.
const BESIDE_ANOTHER: f64 = 0.02;
/// The least support at which another single cause that fits keeps a reported one from being the only one.
const WORTH_A_THOUGHT: f64 = 0.005;
/// How many times the support of something else a pair of causes needs: some pair matches almost any figure by chance,
/// and a wrong pair is two false statements.
const FOR_A_PAIR: f64 = 2.5;
/// The same for another face: what it changes depends on the length of all walls, and so meets a wide range of figures.
const FOR_A_FACE: f64 = 1.4;
/// The same where the usual thickness of a wall is assumed.
const FOR_AN_ASSUMED_FACE: f64 = 3.0;
/// The same for a misread wall: there are many walls, and many lengths that each could be taken for.
const FOR_A_WALL: f64 = 1.3;
/// The same where neither swapped digits nor ten feet make one length of the other.
const FOR_A_WALL_WITHOUT_SLIP: f64 = 4.0;
/// The same for what depends on one place only: an opening, a stair, a level taken from the one below, everything under
/// the roof. Chance seldom meets these.
const FOR_ONE_PLACE: f64 = 0.75;

/// The same for whole spaces or levels counted or not, where a sum of the lengths as typed is the figure, or nearly: a
/// reader adds them up and wonders.
const FOR_A_SUM: f64 = 0.5;

/// The largest remainder after a misread wall, as a share of its effect.
const OF_MISREAD: f64 = 0.1;
/// The largest remainder after another rounding, as a share of its effect: walls that do not close when each is rounded
/// by itself are moved, and leave what that makes.
const OF_ROUNDING: f64 = 1.0;
/// Beside a cause that gives the figure, another is listed only if it leaves no more than this share of its effect.
const BESIDE_AN_EXACT: f64 = 0.5;
/// A remainder after either of them that is always allowed, in square feet.
const LEAST_LEFT: f64 = 3.0;
/// The least gap that is attributed to a misread wall, as a share of the house.
const OF_A_WALL: f64 = 0.01;
/// The least support of a cause that gives the very figure, named or not, that keeps another from being the only one.
const BESIDE_THE_ONLY: f64 = 0.05;
/// How many times as likely as another a cause is that keeps it from being named although it may not be named itself.
const FAR_LIKELIER: f64 = 4.0;
/// The least gap, in square feet, that is attributed to one wrong digit: a smaller one could as well come from a wall.
const OF_A_DIGIT: f64 = 100.0;

/// Decides which causes of a list, best supported first, are reported, and puts those first. Reported are those that
/// fit and have enough support beside something else.
///
/// Causes that no figure can tell apart are counted together. If the figure agrees with the house
/// measured its own way, or is what its own rule gives, nothing is reported.
pub(super) fn decide(
    list: &mut Vec<Explanation>,
    something_else: f64,
    case: &Case<'_>,
    departures: &[Departure],
    settings: &[Setting<'_>],
) {
    let house = case.listed.house;
    let own = settings.first().map(|own| own.total);
    let is_own = own.is_some_and(|own| own.whole_sq_ft() == case.figure.whole_sq_ft());
    if case.agrees || is_own {
        return;
    }
    let rounding = list.iter().find(|one| one.cause == Cause::None && one.fits());
    let beside = rounding.map_or(0.0, |one| one.support);
    let least = |cause: Cause| {
        if matches!(cause, Cause::Rounding(_)) { beside } else { BESIDE_ROUNDING * beside }
    };
    let together: Vec<f64> = list.iter().map(|one| support_of_alike(list, one)).collect();
    let can_be: Vec<bool> = list.iter().map(|one| can_be_reported(one, case)).collect();
    let is_supported = |&i: &usize| {
        let needed = needed(&list[i], case) * something_else;
        can_be[i] && together[i] > needed && together[i] >= least(list[i].cause)
    };
    let mut fitting: Vec<usize> = (0..list.len()).filter(is_supported).collect();
    let is_pair = |i: usize| is_pair(list[i].cause, house);
    // A pair is named only where it is likelier than any single cause, or where none fits about as well.
    let of_pairs = |i: &&usize| is_pair(**i);
    let best_pair = fitting.iter().filter(of_pairs).map(|&i| together[i]).fold(0.0, f64::max);
    let is_as_good = |&&i: &&usize| {
        let may_be_less = if is_exact(&list[i]) { ABOUT_AS_COMMON } else { 1.0 };
        !is_pair(i) && may_be_less * together[i] >= best_pair
    };
    if fitting.iter().any(|i| is_as_good(&i)) {
        let singles = fitting.iter().filter(|i| !is_pair(**i));
        let best_single = singles.map(|&i| list[i].support).fold(0.0, f64::max);
        fitting.retain(|&i| !is_pair(i) || list[i].support > best_single);
    } else if best_pair > 0.0 {
        fitting.retain(|&i| is_pair(i));
    }
    // Nothing is named before what is likelier and gives the very figure: that is named too, or nothing less likely is.
    let gives_it: Vec<usize> =
        (0..list.len()).filter(|&i| gives_the_figure(&list[i], case)).collect();
    let best = fitting.iter().map(|&i| list[i].support).fold(0.0, f64::max);
    if best > 0.0 {
        let likelier = |&&i: &&usize| list[i].support > best && !fitting.contains(&i);
        let likelier: Vec<usize> = gives_it.iter().filter(likelier).copied().collect();
        let unnamed = likelier.iter().filter(|&&i| !can_be[i]).map(|&i| list[i].support);
        let unnamed = unnamed.fold(0.0, f64::max);
        // Nor before what is far likelier and fits, and may not be named.
        let fits = |i: &usize| {
            !can_be[*i]
                && list[*i].fits()
                && changes_anything(&list[*i])
                && matches!(
                    list[*i].cause,
                    Cause::Departures(..) | Cause::Face(_) | Cause::Common(_)
                )
        };
        let far_likelier = (0..list.len()).filter(fits).map(|i| list[i].support);
        let far_likelier = far_likelier.fold(0.0, f64::max) / FAR_LIKELIER;
        fitting.retain(|&i| list[i].support >= far_likelier);
        fitting.extend(likelier.iter().filter(|&&i| can_be[i]));
        fitting.retain(|&i| list[i].support >= unnamed);
    }
    fitting.sort_unstable();
    let others = |least: f64| {
        let may =
            |&i: &usize| !is_pair(i) && can_be[i] && together[i] >= least && list[i].support > 0.0;
        (0..list.len()).filter(may).collect::<Vec<usize>>()
    };
    likely_upper_first(&mut fitting, list, case);
    let mut is_alone = false;
    if let Some(&first) = fitting.first() {
        let echoes = |i: usize| list[i].echoes(&list[first]);
        // What needs another rounding besides is two things at once.
        let is_one_of_many = is_pair(first)
            || list[first].misread_wall().is_some()
            || matches!(list[first].cause, Cause::Departures(..))
                && list[first].is_rounded_one_way();
        let is_rivaled = gives_it
            .iter()
            .any(|&i| i != first && !echoes(i) && list[i].support >= BESIDE_THE_ONLY);
        is_alone = together[first] > NEARLY_SURE
            && !is_one_of_many
            && !is_rivaled
            && others(WORTH_A_THOUGHT).into_iter().all(|i| i == first || echoes(i));
        if !is_pair(first) {
            let is_near_enough = |i: usize| {
                let may_leave = (BESIDE_AN_EXACT * list[i].effect.abs().sq_ft()).max(LEAST_LEFT);
                !is_exact(&list[first]) || is_exact(&list[i]) || list[i].leaves.abs() <= may_leave
            };
            for i in others(BESIDE_ANOTHER.max(BESIDE_ROUNDING * beside)) {
                if !fitting.contains(&i) && is_near_enough(i) {
                    fitting.push(i);
                }
            }
        }
    }
    // Beside what gives the very figure, or the same, with every wall as it is, no wall that is far less likely misread is
    // listed.
    let as_it_is: Vec<usize> =
        fitting.iter().copied().filter(|&i| list[i].misread_wall().is_none()).collect();
    fitting.retain(|&i| {
        let is_better = |other: &usize| {
            let other = &list[*other];
            (is_exact(other) || is_alike(other, &list[i]))
                && other.support > FAR_COMMONER * list[i].support
        };
        list[i].misread_wall().is_none() || !as_it_is.iter().any(is_better)
    });
    // What is listed has one order everywhere: that of its support, unless the very figure speaks for another one.
    fitting.sort_unstable();
    likely_upper_first(&mut fitting, list, case);
    let mut groups = in_groups(&fitting, list);
    exact_first(&mut groups, list, &together);
    let is_sure = groups.len() == 1 && is_alone;
    let is_only = is_sure
        && groups.first().and_then(|group| group.first()).is_some_and(|&first| {
            settings.first().is_none_or(|own| !may_be_another(&list[first], case, departures, own))
        });
    // Causes that mean the same to a reader stay as further entries while fewer than `MOST_REPORTED` are listed.
    let mut room = MOST_REPORTED.saturating_sub(groups.len());
    let mut order: Vec<usize> = Vec::new();
    for (place, group) in groups.iter().take(MOST_REPORTED).enumerate() {
        let echoes = room.min(group.len() - 1);
        room -= echoes;
        for &i in &group[..=echoes] {
            order.push(i);
            list[i].strength = Some(match place {
                0 if i != group[0] => Strength::AlsoFits,
                0 if is_only => Strength::Only,
                0 if is_sure => Strength::ByFar,
                0 if i != fitting[0] => Strength::NearestOf(groups.len()),
                0 => Strength::LikeliestOf(groups.len()),
                _ => Strength::AlsoFits,
            });
        }
    }
    put_first(list, &order);
}

/// Whether the figure lies where ordinary rounding takes the house with some other single departure, however unlikely
/// that is: a reader adds it to the range that stands on the page.
fn may_be_another(
    first: &Explanation,
    case: &Case<'_>,
    departures: &[Departure],
    own: &Setting<'_>,
) -> bool {
    let Some(range) = case.ranges.usual(false) else { return false };
    let is_first = |kind: DepartureKind| first.cause == Cause::Departures(kind, None);
    departures.iter().zip(&own.adds).any(|(departure, adds)| {
        let house = case.figure - adds.area - own.counting;
        adds.area.abs() >= Area::SQUARE_FOOT
            && !is_first(departure.kind)
            && range.low <= house
            && house <= range.high
    })
}

/// Says of each reported cause that leaves more than is usual that it comes near, and of no more than the others that
/// they fit. What a cause can give, as printed, is known by then.
pub(super) fn tell_near_from_fitting(list: &mut [Explanation], test: &RoundingTest) {
    let mut near: Vec<usize> = (0..list.len()).filter(|&i| list[i].is_reported()).collect();
    // Walls in whole feet are not rounded in any case, so that only the tape's slack would make the rest.
    let is_by_tape = |one: &Explanation| {
        one.rounding == Some(RoundingTaken::NotRounded)
            && one.leaves.abs() >= 0.5
            && test.is_on_feet()
    };
    near.retain(|&i| !list[i].leaves_little() || is_by_tape(&list[i]));
    let groups = in_groups(&near, list).len();
    for one in list.iter_mut() {
        let fit = |count: usize| count.saturating_sub(groups).max(1);
        one.strength = match one.strength {
            Some(Strength::NearestOf(count)) if fit(count) > 1 => {
                Some(Strength::NearestOf(fit(count)))
            }
            Some(Strength::LikeliestOf(count) | Strength::NearestOf(count)) => {
                Some(Strength::LikeliestOf(fit(count)))
            }
            other => other,
        };
    }
    for i in near {
        list[i].strength = Some(Strength::ComesNear);
    }
}

/// Whether a cause, however well supported, may be named for this figure.
fn can_be_reported(one: &Explanation, case: &Case<'_>) -> bool {
    let is_exact = is_exact(one);
    // An office that closes otherwise may leave by rounding what a small cause adds.
    let as_measured = (case.figure - case.like - one.effect).abs().sq_ft();
    let leaves_more = !is_exact && one.leaves.abs().min(as_measured) > one.effect.abs().sq_ft();
    if !one.fits() || !changes_anything(one) || !brings_nearer(one, case) || leaves_more {
        return false;
    }
    match one.cause {
        Cause::None | Cause::Rounding(RoundingTaken::NotRounded) => false,
        // An ordinary rounding to the foot is what the test of rounding is about.
        Cause::Rounding(RoundingTaken::WholeFoot)
            if case.test.could_explain().is_some_and(|could| could != CouldExplain::Yes) =>
        {
            false
        }
        // Closed in a likely way, the outline gives the very figure.
        Cause::Rounding(RoundingTaken::AlwaysUp | RoundingTaken::AlwaysDown) if is_exact => true,
        Cause::Rounding(_) => {
            let may_leave = (OF_ROUNDING * one.effect.abs().sq_ft()).max(LEAST_LEFT);
            is_exact || one.leaves.abs() <= may_leave
        }
        // Without a stated thickness of the walls, almost any small gap is about a wall thick. Where the file says that
        // there is no veneer, only the usual thickness of a wall is assumed, so that the very figure still says much.
        Cause::Face(_) => {
            let house = case.listed.house;
            house.states_walls() || house.veneer.is_some() && is_exact
        }
        Cause::Common(_) => true,
        Cause::Misread(_) => {
            let may_leave = (OF_MISREAD * one.effect.abs().sq_ft()).max(LEAST_LEFT);
            let is_large = (case.figure - case.like).abs().sq_ft() >= OF_A_WALL * case.like.sq_ft();
            is_large && one.leaves.abs() <= may_leave
        }
        // Rounding every wall the same way gives a single total, so the figure has to equal it.
        Cause::Departures(..) => is_exact || !one.is_rounded_one_way(),
        Cause::Total { how, with } => {
            let is_slip = matches!(
                how,
                TotalWritten::Swapped
                    | TotalWritten::OneDigit
                    | TotalWritten::RoundedTo10
                    | TotalWritten::RoundedTo50
                    | TotalWritten::RoundedTo100
            );
            let is_large = (case.figure - case.like).abs().sq_ft() >= OF_A_DIGIT;
            // Digits go with no other rounding than the figure's own, unless they give it exactly.
            let is_written = match one.rounding {
                None => true,
                Some(RoundingTaken::NotRounded) => is_exact || !is_slip,
                Some(_) => false,
            };
            let is_rounded = is_slip && !matches!(how, TotalWritten::Swapped);
            is_written
                && !is_round_already(how, case)
                && (is_exact || !is_rounded)
                && (with.is_none() || !is_slip)
                && (how != TotalWritten::OneDigit || is_large)
        }
    }
}

/// Whether a total is said to be rounded although the house itself, as it is rounded here, is as round: nobody rounds
/// that once more.
fn is_round_already(how: TotalWritten, case: &Case<'_>) -> bool {
    let unit = if case.is_metric { Area::SQUARE_METER } else { Area::SQUARE_FOOT }.half_nm2();
    let house = rounded_quotient(case.total(&case.ruled.areas).half_nm2(), unit);
    how.rounded_to().is_some_and(|to| house % i128::from(to) == 0)
}

/// Whether a cause changes the area by a square foot or more, so that it does not stand for nothing in the steps.
fn changes_anything(one: &Explanation) -> bool {
    one.effect.abs() >= Area::SQUARE_FOOT
}

/// Whether less is left with a cause than the whole gap: as the walls are rounded, or, with what the cause adds, as they
/// are measured. An office that closes an outline its own way may lose by rounding what a small cause adds.
fn brings_nearer(one: &Explanation, case: &Case<'_>) -> bool {
    let gap = case.figure - case.like;
    let is_in_the_house =
        matches!(one.cause, Cause::Departures(..) | Cause::Face(_) | Cause::Common(_));
    one.leaves.abs() < gap.abs().sq_ft() || is_in_the_house && (gap - one.effect).abs() < gap.abs()
}

/// How many times the support of something else a cause needs to be reported.
fn needed(one: &Explanation, case: &Case<'_>) -> f64 {
    use DepartureKind::{Deducted, Level, NotDeducted, UnderRoof};
    let is_metric = case.listed.house.usual_form().is_metric();
    match one.cause {
        cause if is_pair(cause, case.listed.house) => FOR_A_PAIR,
        // There is only one such sum of a house, so chance seldom meets it.
        Cause::Departures(UnderRoof, None) if is_a_sum(one) => FOR_A_SUM / 2.0,
        Cause::Departures(kind, None) if kind.is_of_whole_spaces() && is_a_sum(one) => FOR_A_SUM,
        Cause::Face(_) if case.listed.house.states_walls() => FOR_A_FACE,
        Cause::Face(_) => FOR_AN_ASSUMED_FACE,
        Cause::Misread(wall) if wall.slip().is_some() || is_metric => FOR_A_WALL,
        Cause::Misread(_) => FOR_A_WALL_WITHOUT_SLIP,
        Cause::Departures(
            NotDeducted { .. } | Deducted { .. } | Level { .. } | UnderRoof,
            None,
        ) => FOR_ONE_PLACE,
        _ => 1.0,
    }
}

/// Whether it gives the figure, or nearly, as a sum of the lengths as typed.
fn is_a_sum(one: &Explanation) -> bool {
    one.sum.is_some_and(|sum| sum.by != SummedBy::Closing)
}

/// Whether the cause leaves nothing, as printed, or is a sum of the lengths as typed that comes as near as such sums do.
fn is_exact(one: &Explanation) -> bool {
    one.leaves.abs() < 1.0 || one.sum.is_some() && one.leaves.abs() < NEAR_A_SUM_SQ_FT + 0.5
}

/// The distinct causes, each in a group with those that mean the same to a reader.
fn in_groups(fitting: &[usize], list: &[Explanation]) -> Vec<Vec<usize>> {
    let mut groups: Vec<Vec<usize>> = Vec::new();
    for &i in fitting {
        match groups.iter_mut().find(|group| list[i].echoes(&list[group[0]])) {
            Some(group) => group.push(i),
            None => groups.push(vec![i]),
        }
    }
    groups
}

/// Of two misread walls that are as likely, puts the one that leaves no upper level larger than the one below first.
fn likely_upper_first(fitting: &mut [usize], list: &[Explanation], case: &Case<'_>) {
    let house = case.listed.house;
    let levels: Vec<Area> = (0..house.levels.len())
        .map(|level| {
            let here = (0..house.spaces.len())
                .filter(|&i| house.spaces[i].level == level && is_in_total(house, i, false));
            here.map(|i| net(house, i, &case.ruled.areas)).sum()
        })
        .collect();
    let overhangs = |one: &Explanation| {
        let wall = one.misread_wall().filter(|wall| wall.also.is_none());
        let changed = wall.map(|wall| house.spaces[wall.space].level);
        let with = levels
            .iter()
            .enumerate()
            .map(|(level, &area)| if Some(level) == changed { area + one.effect } else { area });
        let with: Vec<Area> = with.filter(|&area| area > Area::ZERO).collect();
        with.windows(2).any(|two| two[1] > two[0])
    };
    let goes_first = |one: &Explanation, before: &Explanation| {
        let are_walls = before.misread_wall().is_some() && one.misread_wall().is_some();
        are_walls && one.is_as_likely_as(before) && overhangs(before) && !overhangs(one)
    };
    for end in 1..fitting.len() {
        let mut at = end;
        while at > 0 && goes_first(&list[fitting[at]], &list[fitting[at - 1]]) {
            fitting.swap(at - 1, at);
            at -= 1;
        }
    }
}

/// Puts what gives the very figure before likelier causes of its class that leave something, if they are about as common:
/// who adds up the one has the figure, and our judgment of how common the other is does not outweigh that.
fn exact_first(groups: &mut [Vec<usize>], list: &[Explanation], together: &[f64]) {
    let goes_first = |one: usize, before: usize| {
        let is_of_its_class =
            list[one].class().is_some_and(|its| list[before].class() == Some(its));
        gives_it(&list[one])
            && !gives_it(&list[before])
            && is_of_its_class
            && ABOUT_AS_COMMON * together[one] >= together[before]
    };
    for end in 1..groups.len() {
        let mut at = end;
        while at > 0 && goes_first(groups[at][0], groups[at - 1][0]) {
            groups.swap(at - 1, at);
            at -= 1;
        }
    }
}

/// Whether it leaves nothing, as printed.
fn gives_it(one: &Explanation) -> bool {
    one.leaves.abs() < ALIKE_SQ_FT
}

/// Moves what is reported to the front of the list, in this order.
fn put_first(list: &mut Vec<Explanation>, order: &[usize]) {
    let front: Vec<Explanation> = order.iter().map(|&i| list[i].clone()).collect();
    list.retain(|one| one.strength.is_none());
    list.splice(0..0, front);
}

/// Whether a cause is something that was done, other than in rounding, and gives the very figure.
fn gives_the_figure(one: &Explanation, case: &Case<'_>) -> bool {
    !matches!(one.cause, Cause::None | Cause::Rounding(_))
        && one.fits()
        && is_exact(one)
        && changes_anything(one)
        && brings_nearer(one, case)
}

/// Whether a cause consists of two departures. Two openings, or two low parts, that are not deducted are one habit.
fn is_pair(cause: Cause, house: &House) -> bool {
    match cause {
        Cause::Departures(one, Some(other)) => !one.is_one_habit_with(other, house),
        Cause::Total { with, .. } => with.is_some(),
        _ => false,
    }
}

/// The support of a cause together with the causes that no figure can distinguish from it and that are about as common.
/// Much more common ones do not add to it.
fn support_of_alike(list: &[Explanation], at: &Explanation) -> f64 {
    if at.cause == Cause::None {
        return at.support;
    }
    let alike = |other: &&Explanation| {
        is_alike(other, at)
            && other.cause != Cause::None
            && other.support <= ABOUT_AS_COMMON * at.support
    };
    list.iter().filter(alike).map(|other| other.support).sum()
}

fn is_alike(one: &Explanation, other: &Explanation) -> bool {
    (one.sq_ft - other.sq_ft).abs() < ALIKE_SQ_FT
}
