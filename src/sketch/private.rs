//! Leaves out of a sides file what its writer may want to keep private: comments, values, rates, sales, notes and
//! pictures.

use crate::sketch::Sketch;
use crate::sketch::statement::{Said, Statement};
use crate::sketch::tree::Line;

impl Sketch {
    /// The file in its canonical form without comments, without statements about values, taxes, dates and sales,
    /// and without notes and pictures after sides. Sides, figures and heads stay the same.
    pub fn tidied_without_private(&self) -> String {
        let lines = self.lines.iter().filter(|line| !is_private(line)).map(public).collect();
        super::tidy::tidied(&Sketch { lines, ..self.clone() })
    }
}

/// Whether a line contains only what is to be kept private.
fn is_private(line: &Line) -> bool {
    match &line.statement {
        Some(statement) => matches!(statement, Statement::Valued(_)),
        None => line.comment.is_some(),
    }
}

/// The line without its comment, note and picture.
fn public(line: &Line) -> Line {
    let mut statement = line.statement.clone();
    if let Some(Statement::Side(_, words) | Statement::Bay(_, words)) = &mut statement {
        *words = Said { note: None, photo_file: None, ..(**words).clone() }.into();
    }
    Line { statement, comment: None }
}
