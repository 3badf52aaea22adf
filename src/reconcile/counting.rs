//! What counting named spaces adds to a total.

use crate::house::House;
use crate::reconcile::total;
use crate::units::area::Area;

/// What counting all the named spaces adds to a total; `areas` has one area per space. A named space inside a counted
/// one is no longer deducted from it.
pub(super) fn counted_by(house: &House, names: &[String], areas: &[Area]) -> Area {
    if names.is_empty() {
        return Area::ZERO;
    }
    let is_named = |i: usize| names.iter().any(|name| *name == house.spaces[i].name);
    let lies_in = |i: usize| house.spaces[i].kind.lies_in_another();
    let counts =
        |i: usize| crate::areas::is_in_total(house, i, false) || is_named(i) && !lies_in(i);
    let net = |i: usize| {
        let kept = |&other: &usize| !(is_named(other) && lies_in(other));
        areas[i] - house.deducted_from(i).filter(kept).map(|other| areas[other]).sum::<Area>()
    };
    let spaces: Area = (0..house.spaces.len()).filter(|&i| counts(i)).map(net).sum();
    let missing = &house.missing;
    let listed = missing.iter().filter(|missing| names.contains(&missing.name));
    spaces - total(house, areas) + listed.map(|missing| missing.recorded.area()).sum()
}
