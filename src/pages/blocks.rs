//! Sets plain blocks of prose as rows of a page.
#![expect(clippy::float_arithmetic, reason = "sizes of letters are in points")]

use crate::pages::fonts::Typeface;
use crate::pages::layout::{Column, Stack};
use crate::wording::Block;

/// The letter sizes of blocks, in points, and the number of lines after which a block is cut.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Sizes {
    pub(crate) paragraph_pt: f64,
    pub(crate) row_pt: f64,
    pub(crate) note_pt: f64,
    pub(crate) table_pt: f64,
    /// The most lines of a block; `None` if blocks are not cut.
    pub(crate) most_lines: Option<usize>,
}

/// The sizes on most pages.
pub(crate) const USUAL: Sizes =
    Sizes { paragraph_pt: 8.0, row_pt: 8.2, note_pt: 7.2, table_pt: 7.5, most_lines: None };

/// Sets blocks one after the other; returns whether any was cut.
pub(crate) fn set(stack: &mut Stack, blocks: &[Block], sizes: Sizes) -> bool {
    let mut is_cut = false;
    for (i, block) in blocks.iter().enumerate() {
        is_cut |= one(stack, block, sizes);
        // A note stays with the row it belongs to.
        let next = blocks.get(i + 1);
        if matches!(block, Block::Row { .. }) && matches!(next, Some(Block::Note(_))) {
            stack.hold();
        }
    }
    is_cut
}

/// Sets the blocks of steps, each row with at most so many notes; returns whether any was cut, and the middle of each row,
/// for the bars beside them.
pub(crate) fn set_steps(
    stack: &mut Stack,
    blocks: &[Block],
    sizes: Sizes,
    most_notes: usize,
) -> (bool, Vec<f64>) {
    let (mut is_cut, mut rows, mut notes) = (false, Vec::new(), 0);
    for (i, block) in blocks.iter().enumerate() {
        notes = if matches!(block, Block::Note(_)) { notes + 1 } else { 0 };
        if notes > most_notes {
            is_cut = true;
            continue;
        }
        is_cut |= one(stack, block, sizes);
        if matches!(block, Block::Row { .. } | Block::Total { .. }) {
            let last = stack.rows.last().map_or(0.0, |row| row.height_pt);
            rows.push(stack.height_pt() - last / 2.0);
        }
        // A note stays with the row it belongs to.
        if matches!(block, Block::Row { .. }) && matches!(blocks.get(i + 1), Some(Block::Note(_))) {
            stack.hold();
        }
    }
    (is_cut, rows)
}

/// Sets one block; returns whether it was cut.
pub(crate) fn one(stack: &mut Stack, block: &Block, sizes: Sizes) -> bool {
    let most = sizes.most_lines.unwrap_or(usize::MAX);
    match block {
        Block::Statement(text) => stack.at_most(most, |stack| stack.bold(10.0, text)),
        Block::Heading(text) => {
            stack.heading(text);
            false
        }
        Block::Paragraph(text) => {
            stack.at_most(most, |stack| stack.paragraph(sizes.paragraph_pt, text))
        }
        Block::Row { name, figure } => {
            // A step without the end of its name is another step.
            stack.ledger_at_most(sizes.row_pt, name, figure, Typeface::Plain, most.max(2))
        }
        Block::Total { name, figure } => {
            stack.rule_over_figures();
            stack.ledger_at_most(sizes.row_pt, name, figure, Typeface::Bold, most)
        }
        Block::Note(text) => stack.at_most(most, |stack| stack.item(sizes.note_pt, text, 12.0)),
        // What to type is for the person at the screen, not for the reader of a page.
        Block::Hint(_) => false,
        Block::Table { heads, rows } => {
            table(stack, heads, rows, sizes);
            false
        }
        Block::Item(text) => {
            let text = format!("– {text}");
            stack.at_most(most, |stack| stack.item(sizes.paragraph_pt, &text, 6.0))
        }
        Block::Numbered { number, text } => {
            stack.space(5.0);
            stack.at_most(most, |stack| stack.numbered(sizes.paragraph_pt + 0.6, *number, text))
        }
        Block::Footnote { number, text } => {
            let text = format!("[{number}] {text}");
            stack.at_most(most, |stack| stack.item(6.8, &text, 0.0))
        }
    }
}

/// A table whose first column holds names.
fn table(stack: &mut Stack, heads: &[String], rows: &[Vec<String>], sizes: Sizes) {
    let column = |(i, head)| match i {
        0 => Column::words(head),
        _ => Column::figures(head, 62.0),
    };
    let columns: Vec<Column<'_>> =
        heads.iter().map(String::as_str).enumerate().map(column).collect();
    stack.table(sizes.table_pt, &columns, rows);
}
