//! The tags of a PDF: what is a heading, a paragraph, a table or a drawing, in reading order.

use std::num::{NonZeroU16, NonZeroU32};

use krilla::tagging::{Identifier, TableHeaderScope, Tag, TagGroup, TagTree};

use crate::error::Error;
use crate::pages::export::pen::Pen;
use crate::pages::fonts::Typeface;
use crate::pages::page::{Ink, Passage, Role};
use crate::wording::heard::heard;

/// The tags so far.
#[derive(Default)]
pub(super) struct Tags {
    done: Vec<TagGroup>,
    open: Option<Open>,
}

/// The open element, to which a continuing line is added.
enum Open {
    /// A heading, a paragraph or a drawing, with its words as far as they are read.
    Block(TagGroup, String),
    /// A table: its rows, and the cells of each.
    Table(Vec<Vec<Cell>>),
}

struct Cell {
    is_head: bool,
    pieces: Vec<Identifier>,
}

impl Tags {
    /// Draws a passage and tags it.
    pub(super) fn passage(
        &mut self,
        passage: &Passage,
        inks: &[Ink],
        pen: &mut Pen<'_, '_>,
    ) -> Result<(), Error> {
        match &passage.role {
            Role::Furniture => pen.unread(inks)?,
            Role::Figure(told) => {
                let tag = || Tag::Figure(Some(told.clone())).into();
                let pieces = pen.drawing(inks)?;
                self.block(passage.continues, tag, pieces, String::new());
            }
            Role::Paragraph => {
                let pieces = pen.read(inks)?;
                self.block(passage.continues, || Tag::P.into(), pieces, words_of(inks));
            }
            Role::Heading(level) => {
                let level = NonZeroU16::new(*level).unwrap_or(NonZeroU16::MIN);
                let pieces = pen.read(inks)?;
                let tag = || Tag::Hn(level, None).into();
                self.block(passage.continues, tag, pieces, words_of(inks));
            }
            Role::Head(cells) => {
                self.close();
                self.open = Some(Open::Table(Vec::new()));
                self.row(false, true, cells, inks, pen)?;
            }
            Role::Cells(cells) => self.row(passage.continues, false, cells, inks, pen)?,
        }
        Ok(())
    }

    fn block(
        &mut self,
        continues: bool,
        tag: impl FnOnce() -> krilla::tagging::TagKind,
        pieces: Vec<Identifier>,
        words: String,
    ) {
        if let Some(Open::Block(group, before)) = self.open.as_mut().filter(|_| continues) {
            pieces.into_iter().for_each(|piece| group.push(piece));
            before.push_str(&words);
            return;
        }
        self.close();
        let mut group = TagGroup::new(tag());
        pieces.into_iter().for_each(|piece| group.push(piece));
        self.open = Some(Open::Block(group, words));
    }

    /// A row of the open table; one that continues belongs to the last cell before it.
    fn row(
        &mut self,
        continues: bool,
        is_head: bool,
        cells: &[usize],
        inks: &[Ink],
        pen: &mut Pen<'_, '_>,
    ) -> Result<(), Error> {
        let mut rest = inks;
        let mut row = Vec::with_capacity(cells.len());
        for &count in cells {
            let (here, after) = rest.split_at(count.min(rest.len()));
            rest = after;
            row.push(Cell { is_head, pieces: pen.read(here)? });
        }
        pen.unread(rest)?;
        if !matches!(self.open, Some(Open::Table(_))) {
            self.close();
            self.open = Some(Open::Table(Vec::new()));
        }
        let Some(Open::Table(rows)) = &mut self.open else { return Ok(()) };
        match rows.last_mut().and_then(|last| last.last_mut()).filter(|_| continues) {
            Some(cell) => cell.pieces.extend(row.into_iter().flat_map(|cell| cell.pieces)),
            None => rows.push(row),
        }
        Ok(())
    }

    /// Closes the open element.
    fn close(&mut self) {
        match self.open.take() {
            Some(Open::Block(mut group, words)) => {
                if has_a_length(&words) {
                    group.tag.set_actual_text(Some(heard(&words)));
                }
                self.done.push(group);
            }
            Some(Open::Table(rows)) => self.done.push(table(rows)),
            None => {}
        }
    }

    /// The tree of all tags.
    pub(super) fn finish(mut self, language: &str) -> TagTree {
        self.close();
        let mut tree = TagTree::new().with_lang(Some(language.to_owned()));
        for group in self.done {
            tree.push(group);
        }
        tree
    }
}

/// The words of a line, each with a blank behind it. The Source has none: it is read sign by sign.
fn words_of(inks: &[Ink]) -> String {
    let words = inks.iter().filter_map(|ink| match ink {
        Ink::Text(text) if text.hand != Typeface::Even => Some(format!("{} ", text.words)),
        _ => None,
    });
    words.collect()
}

/// Whether a text has a length with the marks of feet or inches, which many voices leave out: `15'` is then heard as 15.
fn has_a_length(words: &str) -> bool {
    let letters: Vec<char> = words.chars().collect();
    letters.windows(2).any(|pair| pair[0].is_ascii_digit() && matches!(pair[1], '\'' | '"'))
}

fn table(rows: Vec<Vec<Cell>>) -> TagGroup {
    let columns = rows.iter().map(Vec::len).max().unwrap_or(0);
    let mut table = TagGroup::new(Tag::Table);
    for row in rows {
        // A row with one cell, a name or a note, spans all columns.
        let across = match row.len() {
            1 => u32::try_from(columns).ok().and_then(NonZeroU32::new),
            _ => None,
        };
        let mut tagged = TagGroup::new(Tag::TR);
        for cell in row {
            let mut group = match cell.is_head {
                true => TagGroup::new(Tag::TH(TableHeaderScope::Column)),
                false => TagGroup::new(Tag::TD.with_col_span(across)),
            };
            cell.pieces.into_iter().for_each(|piece| group.push(piece));
            tagged.push(group);
        }
        table.push(tagged);
    }
    table
}
