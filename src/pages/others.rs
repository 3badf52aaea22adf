//! The steps to all figures except the first, so that the Exhibit is about one dispute.

#![expect(clippy::float_arithmetic, reason = "places on a page are in points")]

use crate::pages::blocks;
use crate::pages::chart::chart;
use crate::pages::layout::Flow;
use crate::reconcile::{Figure, Reconciliation};
use crate::wording::Block;
use crate::wording::sentences::Sentences;

/// The width of the steps beside their chart, in points.
const STEPS_PT: f64 = 318.0;
/// The space between the steps and their chart, in points.
const BETWEEN_PT: f64 = 24.0;

/// Fills the pages of the other figures, if there are any.
pub(crate) fn others(flow: &mut Flow, say: &Sentences<'_>, reconciliation: &Reconciliation) {
    let others = reconciliation.figures().get(1..).unwrap_or_default();
    if others.is_empty() {
        return;
    }
    let heard: Vec<String> = say.statements(others);
    flow.go_on("Other figures", &heard.join(" "), 150.0);
    flow.others_begin();
    for (figure, statement) in others.iter().zip(heard) {
        one(flow, say, figure, statement);
    }
}

fn one(flow: &mut Flow, say: &Sentences<'_>, figure: &Figure, statement: String) {
    let mut top = flow.stack();
    top.space(4.0);
    blocks::one(&mut top, &Block::Statement(statement), blocks::USUAL);
    if let Some(own) = say.own_sketch(figure) {
        blocks::one(&mut top, &Block::Paragraph(own), blocks::USUAL);
    }
    let mut steps = flow.stack_of(STEPS_PT);
    steps.heading(&say.steps_title(figure));
    let told = say.steps(figure);
    let (_, rows) = blocks::set_steps(&mut steps, &told, blocks::USUAL, usize::MAX);
    let chart = chart(figure, say, flow.width_pt() - STEPS_PT - BETWEEN_PT, &mut steps, &rows);
    let mut possible = flow.stack();
    possible.space(3.0);
    blocks::set(&mut possible, &say.possible(figure), blocks::USUAL);
    possible.space(6.0);
    let height = steps.height_pt().max(chart.height_pt()) + top.height_pt();
    flow.need(height.min(300.0));
    flow.pour(&top);
    flow.beside(&steps, &chart, STEPS_PT + BETWEEN_PT);
    flow.pour(&possible);
}
