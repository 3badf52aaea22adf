//! One change of a line that cannot be read, and how far a line can be read: what the rules make and look at.

use super::pieces::{Piece, join};
use crate::diagnostic::{Span, Word};
use crate::sketch::wanted::Wanted;

/// How far a line can be read.
#[derive(Clone, Debug)]
pub(in crate::sketch) struct Attempt {
    /// The line with near misses corrected, if it can be read to its end.
    pub(in crate::sketch) reads: Option<String>,
    /// Where reading stopped, in bytes of the line.
    pub(in crate::sketch) at: Span,
    pub(in crate::sketch) wanted: Wanted,
    /// The error that stopped it.
    pub(in crate::sketch) word: Option<Word>,
    /// The part that can be read is a side.
    pub(in crate::sketch) is_side: bool,
    /// Its first word is a word of the format.
    pub(in crate::sketch) knows_first: bool,
    /// The name of the last space before the line.
    pub(in crate::sketch) space: Option<String>,
    /// Bare numbers are meters.
    pub(in crate::sketch) is_metric: bool,
}

/// A change of a line.
pub(super) struct Edit {
    pub(super) line: String,
    pub(super) cause: String,
    /// Numbers are rewritten, so they cannot be compared one by one.
    pub(super) converts: bool,
    /// Used only if no other change of the same step can be read.
    pub(super) weak: bool,
    /// Of several such changes of one step, only the first that can be read is used.
    pub(super) one_of_many: bool,
}

impl Edit {
    pub(super) fn new(pieces: Vec<Piece>, cause: impl Into<String>) -> Edit {
        Edit::line(join(&pieces), cause)
    }

    pub(super) fn line(line: impl Into<String>, cause: impl Into<String>) -> Edit {
        let (line, cause) = (line.into(), cause.into());
        Edit { line, cause, converts: false, weak: false, one_of_many: false }
    }

    pub(super) fn weak(self) -> Edit {
        Edit { weak: true, ..self }
    }

    pub(super) fn one_of_many(self) -> Edit {
        Edit { one_of_many: true, ..self }
    }

    pub(super) fn conversion(pieces: Vec<Piece>, cause: impl Into<String>) -> Edit {
        Edit { converts: true, ..Edit::new(pieces, cause) }
    }
}
