//! The classes of causes of a gap to the record. Which ways of correction are open depends on the class.

use crate::reconcile::{BridgeStep, CauseClass, Figure, Reconciliation};
use crate::units::area::Area;
use crate::value::gap::record;

/// All classes, in the order in which they are shown.
const ALL: [CauseClass; 3] = [CauseClass::Typed, CauseClass::Described, CauseClass::Measured];

/// The classes of mistakes that may be behind the gap: those of the reported causes, of what the record says it
/// counts, of walls with another length on the record, and of a record whose own sketch gives another total. Each
/// class once; empty without a record.
pub(crate) fn classes(reconciliation: &Reconciliation) -> Vec<CauseClass> {
    let Some(figure) = record(reconciliation) else { return Vec::new() };
    let mut found: Vec<CauseClass> =
        figure.explanations().reported().filter_map(|explanation| explanation.class()).collect();
    found.extend(stated(figure));
    ALL.into_iter().filter(|class| found.contains(class)).collect()
}

/// The classes that follow from what the file states about the record, without weighing causes.
fn stated(figure: &Figure) -> impl Iterator<Item = CauseClass> {
    let is_there = |step| figure.line(step).is_some_and(|line| line.area() != Area::ZERO);
    let own = figure.own_sketch().map(Area::whole_sq_ft);
    let typed = own.is_some_and(|own| own != figure.area().whole_sq_ft());
    [
        typed.then_some(CauseClass::Typed),
        is_there(BridgeStep::Counting).then_some(CauseClass::Described),
        is_there(BridgeStep::RecordedSides).then_some(CauseClass::Measured),
    ]
    .into_iter()
    .flatten()
}
