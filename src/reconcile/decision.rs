//! The decision which causes are reported. Steps, lists, marks, batch and JSON all follow from it.
#![expect(clippy::float_arithmetic, reason = "supports are floats")]

use crate::reconcile::case::Case;
use crate::reconcile::cause::Cause;
use crate::reconcile::explanation::{Explanation, Strength};
use crate::reconcile::settings::Setting;
use crate::units::area::Area;

/// The most causes that are reported.
pub(crate) const MOST_REPORTED: usize = 3;
/// If rounding alone fits, a cause is reported only if it has at least this share of that support; another way of
/// rounding needs at least all of it.
const BESIDE_ROUNDING: f64 = 0.25;
/// A cause that is alone and has more support than this is the only common one that fits.
const NEARLY_SURE: f64 = 0.8;
/// Causes whose effects differ by less than this cannot be told apart by any figure.
const ALIKE_SQ_FT: f64 = 0.5;
/// The largest ratio of support between causes that are about equally common.
const ABOUT_AS_COMMON: f64 = 4.0;

/// Decides which causes of a list, best supported first, are reported: those that fit and have more support than
/// something else.
///
/// Causes that no figure can tell apart are counted together. If the figure agrees with the house, as
/// measured or under the figure's own rule, nothing is reported.
pub(super) fn decide(
    list: &mut [Explanation],
    something_else: f64,
    case: &Case<'_>,
    settings: &[Setting<'_>],
) {
    let own = settings.first().map(|own| own.total);
    let figure = case.figure.whole_sq_ft();
    let agrees = |total: Area| total.whole_sq_ft() == figure;
    if agrees(case.start) || own.is_some_and(agrees) {
        return;
    }
    let rounding = list.iter().find(|one| one.cause == Cause::None && one.fits());
    let beside = rounding.map_or(0.0, |one| one.support);
    let least = |cause: Cause| {
        if matches!(cause, Cause::Rounding(_)) { beside } else { BESIDE_ROUNDING * beside }
    };
    let together: Vec<f64> = list.iter().map(|one| support_of_alike(list, one)).collect();
    let mut fitting: Vec<usize> = Vec::new();
    for (i, one) in list.iter().enumerate() {
        let is_supported = together[i] > something_else && together[i] >= least(one.cause);
        let is_new = !fitting.iter().any(|&i| one.cause.goes_beyond(list[i].cause));
        if one.cause != Cause::None && one.fits() && is_supported && is_new {
            fitting.push(i);
        }
    }
    let is_first_of_its_kind = |place: &usize| {
        // Two that change the house alike are still two, unless a reader would hear the same twice.
        let here = &list[fitting[*place]];
        let is_same =
            |&i: &usize| is_alike(&list[i], here) && list[i].cause.says_the_same(here.cause);
        !fitting[..*place].iter().any(is_same)
    };
    let count = (0..fitting.len()).filter(is_first_of_its_kind).count();
    for (place, &i) in fitting.iter().take(MOST_REPORTED).enumerate() {
        let is_only = count == 1 && together[i] > NEARLY_SURE;
        list[i].strength = Some(match place {
            0 if is_only => Strength::Only,
            0 => Strength::LikeliestOf(count),
            _ => Strength::AlsoFits,
        });
    }
}

/// The support of a cause together with causes that no figure can tell apart from it and that are about as common.
/// Much more common ones do not add to it.
fn support_of_alike(list: &[Explanation], at: &Explanation) -> f64 {
    if at.cause == Cause::None {
        return at.support;
    }
    let alike = |other: &&Explanation| {
        other.cause != Cause::None
            && is_alike(other, at)
            && other.support <= ABOUT_AS_COMMON * at.support
    };
    list.iter().filter(alike).map(|other| other.support).sum()
}

fn is_alike(one: &Explanation, other: &Explanation) -> bool {
    (one.sq_ft - other.sq_ft).abs() < ALIKE_SQ_FT
}
