//! Prose as plain parts in reading order: the terminal, the pages and any other place set the same parts.

/// One part of what is said.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Block {
    /// The one sentence about a figure, larger than all else.
    Statement(String),
    /// A heading.
    Heading(String),
    /// A paragraph.
    Paragraph(String),
    /// A name at the left with its figure at the right.
    Row {
        /// What it is.
        name: String,
        /// The figure.
        figure: String,
    },
    /// A row under a line: what the rows before it add up to.
    Total {
        /// What it is.
        name: String,
        /// The figure.
        figure: String,
    },
    /// What explains the row before it.
    Note(String),
    /// What to type for more: of use to whoever types, left out on paper.
    Hint(String),
    /// A table: as many cells in each row as there are heads.
    Table {
        /// What stands over the columns; the first is of the names.
        heads: Vec<String>,
        /// The rows.
        rows: Vec<Vec<String>>,
    },
    /// An item of a list.
    Item(String),
    /// A note at the end, for the number in brackets in the text: where a rule stands, since when, how sure it is.
    Footnote {
        /// Counts from 1.
        number: usize,
        /// What it says.
        text: String,
    },
}

impl Block {
    pub(crate) fn paragraph(text: impl Into<String>) -> Block {
        Block::Paragraph(text.into())
    }

    pub(crate) fn row(name: impl Into<String>, figure: impl Into<String>) -> Block {
        Block::Row { name: name.into(), figure: figure.into() }
    }

    pub(crate) fn total(name: impl Into<String>, figure: impl Into<String>) -> Block {
        Block::Total { name: name.into(), figure: figure.into() }
    }

    pub(crate) fn hint(text: impl Into<String>) -> Block {
        Block::Hint(text.into())
    }
}

/// Notes gathered while a text is written; the same note is told once.
#[derive(Debug, Default)]
pub(crate) struct Footnotes(Vec<String>);

impl Footnotes {
    /// The mark of a note, to stand behind what it is about: ` [1]`.
    pub(crate) fn mark(&mut self, text: String) -> String {
        let number = self.0.iter().position(|other| *other == text).unwrap_or_else(|| {
            self.0.push(text);
            self.0.len() - 1
        });
        format!(" [{}]", number + 1)
    }

    /// The notes, to stand at the end.
    pub(crate) fn blocks(self) -> impl Iterator<Item = Block> {
        let numbered = self.0.into_iter().enumerate();
        numbered.map(|(i, text)| Block::Footnote { number: i + 1, text })
    }
}
