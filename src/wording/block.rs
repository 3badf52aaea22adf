//! Prose as plain blocks in reading order, which the terminal, the pages and the browser each set in their own way.

/// One block of prose.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Block {
    /// The main sentence about a figure, set largest.
    Statement(String),
    /// A heading.
    Heading(String),
    /// A paragraph.
    Paragraph(String),
    /// A name on the left with its figure on the right.
    Row {
        /// The name.
        name: String,
        /// The figure.
        figure: String,
    },
    /// A row under a rule: the sum of the rows before it.
    Total {
        /// The name.
        name: String,
        /// The figure.
        figure: String,
    },
    /// A note that explains the row before it.
    Note(String),
    /// What to type for more; shown on a screen, left out on paper.
    Hint(String),
    /// A table; each row has as many cells as there are heads.
    Table {
        /// The column heads; the first column holds names.
        heads: Vec<String>,
        /// The rows.
        rows: Vec<Vec<String>>,
    },
    /// An item of a list.
    Item(String),
    /// An item of a numbered list.
    Numbered {
        /// Counts from 1.
        number: usize,
        /// What it says.
        text: String,
    },
    /// A footnote, referred to in the text by its number in brackets: where a rule is found, since when it applies,
    /// and how sure it is.
    Footnote {
        /// Its number, from 1.
        number: usize,
        /// Its text.
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

/// Collects footnotes while a text is written; each note is listed only once.
#[derive(Debug, Default)]
pub(crate) struct Footnotes(Vec<String>);

impl Footnotes {
    /// The mark that refers to a note: ` [1]`. A new note is added to the list.
    pub(crate) fn mark(&mut self, text: String) -> String {
        let number = self.0.iter().position(|other| *other == text).unwrap_or_else(|| {
            self.0.push(text);
            self.0.len() - 1
        });
        format!(" [{}]", number + 1)
    }

    /// The footnotes as blocks, for the end of the text.
    pub(crate) fn blocks(self) -> impl Iterator<Item = Block> {
        let numbered = self.0.into_iter().enumerate();
        numbered.map(|(i, text)| Block::Footnote { number: i + 1, text })
    }
}
