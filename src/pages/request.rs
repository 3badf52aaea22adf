//! The page of questions for the office, made only on request: who asks, the questions with room for the answers, and
//! who answered.
#![expect(clippy::float_arithmetic, reason = "places on a page are in points")]

use crate::pages::blocks;
use crate::pages::blocks::{Sizes, USUAL};
use crate::pages::layout::{Flow, Row, Stack};
use crate::pages::page::{Ink, Point, Role, Stroke};
use crate::reconcile::Reconciliation;
use crate::wording::Block;
use crate::wording::sentences::Sentences;

/// The least and the largest room for an answer, in points.
const ANSWER_PT: (f64, f64) = (17.0, 54.0);
/// The distance between two lines of an answer, in points.
const LINE_PT: f64 = 17.0;
/// Where an answer and the items of a question begin, in points: where its text does.
const INDENT_PT: f64 = 18.0;

/// Fills the page of questions.
pub(crate) fn request(flow: &mut Flow, say: &Sentences<'_>, reconciliation: &Reconciliation) {
    flow.begin(
        "Request",
        "Questions for the office that keeps the record, in order, with room for the answers.",
    );
    let blocks = say.questions_for_the_office(reconciliation);
    let is_question = |block: &&Block| matches!(block, Block::Numbered { .. });
    let answers: f64 = blocks.iter().filter(is_question).map(|_| 1.0).sum();
    // What is left of the page is for the answers.
    let room = flow.room_pt() - stack(flow, &blocks, 0.0).height_pt() - 2.0;
    let answer_pt = (room / answers.max(1.0)).clamp(ANSWER_PT.0, ANSWER_PT.1);
    flow.pour(&stack(flow, &blocks, answer_pt));
}

fn stack(flow: &Flow, blocks: &[Block], answer_pt: f64) -> Stack {
    let mut stack = Stack::new(flow.width_pt());
    stack.fields(
        34.0,
        &[(0.0, 0.2, "date"), (0.23, 0.58, "asked by"), (0.61, 1.0, "where to answer")],
    );
    let sizes = Sizes { paragraph_pt: 8.6, ..USUAL };
    for (i, block) in blocks.iter().enumerate() {
        match block {
            Block::Item(text) => stack.item(9.2, &format!("\u{2013} {text}"), INDENT_PT),
            _ => {
                blocks::one(&mut stack, block, sizes);
            }
        }
        let next = blocks.get(i + 1);
        let is_last_of_question = matches!(block, Block::Numbered { .. } | Block::Item(_))
            && !matches!(next, Some(Block::Item(_)));
        if is_last_of_question && answer_pt > 0.0 {
            stack.hold();
            stack.row(answer(flow.width_pt(), answer_pt));
        }
    }
    stack.fields(40.0, &[(0.0, 0.4, "answered for the office by"), (0.43, 0.62, "date")]);
    stack
}

/// Lines to write an answer on.
fn answer(width_pt: f64, height_pt: f64) -> Row {
    let mut row = Row { height_pt, role: Role::Furniture, ..Row::default() };
    let mut y_pt = LINE_PT - 2.0;
    while y_pt <= height_pt {
        let ends = [INDENT_PT, width_pt].map(|x_pt| Point::new(x_pt, y_pt));
        let line = Stroke::line(ends[0], ends[1], 0.4).dashed([1.0, 2.0]);
        row.inks.push(Ink::Stroke(line));
        y_pt += LINE_PT;
    }
    row
}
