//! Lines of text in columns, as wide as the reader's screen.

use crate::diagnostic::words::{GLUE, glued};
use unicode_width::UnicodeWidthStr;

/// Text built line by line, never wider than the given number of columns.
#[derive(Debug)]
pub(crate) struct Page {
    out: String,
    width: usize,
    styled: bool,
}

impl Page {
    pub(crate) fn new(width: usize, styled: bool) -> Page {
        Page { out: String::new(), width: width.clamp(30, 100), styled }
    }

    pub(crate) fn finish(self) -> String {
        self.out
    }

    /// Whether figures are set in columns beside their names; on a narrow page they are set below.
    pub(crate) fn is_wide(&self) -> bool {
        self.width >= 72
    }

    pub(crate) fn blank(&mut self) {
        if !self.out.is_empty() && !self.out.ends_with("\n\n") {
            self.out.push('\n');
        }
    }

    /// Adds a paragraph, wrapped between words.
    pub(crate) fn paragraph(&mut self, text: &str) {
        self.indented(text, 0, 0);
    }

    /// Adds a paragraph, in bold if the page is styled.
    pub(crate) fn bold(&mut self, text: &str) {
        for line in textwrap::wrap(&glued(text), self.width) {
            let line = line.replace(GLUE, " ");
            if self.styled {
                self.out.push_str(&format!("\u{1b}[1m{line}\u{1b}[0m\n"));
            } else {
                self.push(&line);
            }
        }
    }

    /// Adds a heading.
    pub(crate) fn heading(&mut self, text: &str) {
        self.blank();
        self.bold(text);
    }

    /// Adds a paragraph whose first line is indented by `first` columns and the others by `rest`.
    pub(crate) fn indented(&mut self, text: &str, first: usize, rest: usize) {
        let (first, rest) = (" ".repeat(first), " ".repeat(rest));
        let options =
            textwrap::Options::new(self.width).initial_indent(&first).subsequent_indent(&rest);
        for line in textwrap::wrap(&glued(text), options) {
            self.push(&line);
        }
    }

    /// Adds a name on the left and a figure at the right edge; a long name is wrapped.
    pub(crate) fn ledger(&mut self, name: &str, figure: &str, indent: usize) {
        let room = self.width.saturating_sub(figure.width() + 2);
        if room < indent + 16 {
            self.indented(name, indent, indent + 4);
            return self.indented(figure, indent + 4, indent + 4);
        }
        let (first, rest) = (" ".repeat(indent), " ".repeat(indent + 4));
        let options = textwrap::Options::new(room).initial_indent(&first).subsequent_indent(&rest);
        let lines = textwrap::wrap(name, options);
        let Some((last, before)) = lines.split_last() else {
            return;
        };
        for line in before {
            self.push(line);
        }
        let gap = self.width.saturating_sub(last.width() + figure.width());
        self.push(&format!("{last}{:gap$}{figure}", ""));
    }

    /// Adds a rule across the figures, before a sum.
    pub(crate) fn rule(&mut self, figure_width: usize) {
        let gap = self.width.saturating_sub(figure_width);
        self.push(&format!("{:gap$}{}", "", "-".repeat(figure_width)));
    }

    /// Adds a name with cells on the right, each with its head, text and width. On a narrow page each cell is set
    /// below the name, after its head.
    pub(crate) fn row<Head: AsRef<str>>(
        &mut self,
        name: &str,
        cells: &[(Head, String, usize)],
        indent: usize,
    ) {
        if !self.is_wide() {
            self.indented(name, indent, indent + 4);
            for (head, cell, _) in cells.iter().filter(|(_, cell, _)| !cell.is_empty()) {
                self.ledger(head.as_ref(), cell, indent + 4);
            }
            return;
        }
        let wide = |cell: &str, width: usize| width.max(cell.width() + 2);
        let in_lines = |cell: &str, width: usize| match cell.contains(", ") {
            true => textwrap::wrap(&cell.replace(" or ", " or\u{a0}"), width.saturating_sub(2))
                .into_iter()
                .map(|line| line.replace(GLUE, " "))
                .collect(),
            false => vec![cell.to_owned()],
        };
        // A list in the last column goes on below.
        let (below, cells): (Vec<String>, Vec<(&Head, String, usize)>) = match cells.split_last() {
            Some(((head, cell, width), before)) => {
                let mut lines = in_lines(cell, *width).into_iter();
                let last = (head, lines.next().unwrap_or_default(), *width);
                let before = before.iter().map(|(head, cell, width)| (head, cell.clone(), *width));
                (lines.collect(), before.chain([last]).collect())
            }
            None => return,
        };
        let columns: usize = cells.iter().map(|(_, cell, width)| wide(cell, *width)).sum();
        let room = self.width.saturating_sub(columns);
        let lines = in_column(name, room, indent);
        let Some((last, before)) = lines.split_last() else { return };
        for line in before {
            self.push(line);
        }
        let mut line = last.clone();
        let pad = room.saturating_sub(line.width());
        line.push_str(&" ".repeat(pad));
        for (_, cell, width) in &cells {
            let pad = wide(cell, *width) - cell.width();
            line.push_str(&" ".repeat(pad));
            line.push_str(cell);
        }
        self.push(&line);
        for line in below {
            let pad = self.width.saturating_sub(line.width());
            self.push(&format!("{}{line}", " ".repeat(pad)));
        }
    }

    fn push(&mut self, line: &str) {
        self.out.push_str(&line.trim_end().replace(GLUE, " "));
        self.out.push('\n');
    }
}

/// A name wrapped to fit a column.
fn in_column(name: &str, columns: usize, indent: usize) -> Vec<String> {
    let (first, rest) = (" ".repeat(indent), " ".repeat(indent + 4));
    let options = textwrap::Options::new(columns.saturating_sub(1).max(indent + 5))
        .initial_indent(&first)
        .subsequent_indent(&rest);
    let name = glued(name);
    let lines = textwrap::wrap(&name, options);
    if lines.is_empty() {
        return vec![String::new()];
    }
    lines.into_iter().map(|line| line.into_owned()).collect()
}
