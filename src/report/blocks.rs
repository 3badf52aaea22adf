//! Sets blocks of prose as lines of text.

use unicode_width::UnicodeWidthStr;

use crate::report::table::Page;
use crate::wording::Block;

/// Sets blocks one after the other.
pub(super) fn set(page: &mut Page, blocks: &[Block]) {
    for block in blocks {
        part(page, block);
    }
}

fn part(page: &mut Page, block: &Block) {
    match block {
        Block::Statement(text) => page.bold(text),
        Block::Heading(text) => page.heading(text),
        Block::Paragraph(text) => page.paragraph(text),
        Block::Row { name, figure } => page.ledger(name, figure, 2),
        Block::Total { name, figure } => {
            page.rule(8);
            page.ledger(name, figure, 2);
        }
        Block::Note(text) | Block::Hint(text) => page.indented(text, 6, 6),
        Block::Table { heads, rows } => table(page, heads, rows),
        Block::Numbered { number, text } => {
            page.indented(&format!("{number}. {text}"), 2, 5);
        }
        Block::Item(text) => page.indented(&format!("- {text}"), 2, 4),
        Block::Footnote { number, text } => page.indented(&format!("[{number}] {text}"), 2, 6),
    }
}

fn table(page: &mut Page, heads: &[String], rows: &[Vec<String>]) {
    let widths: Vec<usize> = (0..heads.len()).map(|column| width(heads, rows, column)).collect();
    if page.is_wide() {
        line(page, heads, heads, &widths);
    }
    for row in rows {
        line(page, heads, row, &widths);
    }
}

/// The width of a column's widest cell, plus two spaces before it.
fn width(heads: &[String], rows: &[Vec<String>], column: usize) -> usize {
    let cells = std::iter::once(heads).chain(rows.iter().map(Vec::as_slice));
    2 + cells.filter_map(|row| row.get(column)).map(|cell| cell.width()).max().unwrap_or(0)
}

fn line(page: &mut Page, heads: &[String], row: &[String], widths: &[usize]) {
    let Some((name, cells)) = row.split_first() else { return };
    let columns = heads.iter().zip(widths).skip(1).zip(cells);
    let columns: Vec<(&str, String, usize)> =
        columns.map(|((head, width), cell)| (head.as_str(), cell.clone(), *width)).collect();
    page.row(name, &columns, 0);
}
