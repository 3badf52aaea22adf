//! The page of questions for the office, made only on request.

use crate::pages::blocks;
use crate::pages::layout::{Flow, Stack};
use crate::reconcile::Reconciliation;
use crate::wording::sentences::Sentences;

/// Fills the page of questions.
pub(crate) fn request(flow: &mut Flow, say: &Sentences<'_>, reconciliation: &Reconciliation) {
    flow.begin("Request", "Questions for the office that keeps the record, in order.");
    let mut stack = Stack::new(flow.width_pt());
    blocks::set(&mut stack, &say.questions_for_the_office(reconciliation), blocks::USUAL);
    flow.pour(&stack);
}
