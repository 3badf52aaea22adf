//! [`Edit`], which a rule returns, and [`Attempt`], which it is given.

use super::pieces::{Piece, join};
use crate::diagnostic::{Span, Word};
use crate::sketch::wanted::Wanted;

/// How far a line can be read.
#[derive(Clone, Debug)]
pub(in crate::sketch) struct Attempt {
    /// The line with near misses corrected; `None` if it cannot be read to its end.
    pub(in crate::sketch) reads: Option<String>,
    /// Where reading stopped, as bytes of the line.
    pub(in crate::sketch) at: Span,
    pub(in crate::sketch) wanted: Wanted,
    /// The code word of the error that stopped it.
    pub(in crate::sketch) word: Option<Word>,
    /// Whether the part that can be read is a side.
    pub(in crate::sketch) is_side: bool,
    /// Whether its first word is a word of the format.
    pub(in crate::sketch) knows_first: bool,
    /// The name of the last space before the line.
    pub(in crate::sketch) space: Option<String>,
    /// The name of the space on its level that places are counted from.
    pub(in crate::sketch) house: Option<String>,
    /// Whether bare numbers are meters.
    pub(in crate::sketch) is_metric: bool,
    /// What bare numbers are.
    pub(in crate::sketch) units: crate::sketch::statement::Unit,
    /// The lines around it.
    pub(in crate::sketch) beside: Beside,
}

/// The nearest lines before and after a line that are neither empty nor comments, and its own comment.
#[derive(Clone, Debug, Default)]
pub(in crate::sketch) struct Beside {
    pub(in crate::sketch) before: std::rc::Rc<str>,
    pub(in crate::sketch) after: std::rc::Rc<str>,
    /// The street side, if it has been stated.
    pub(in crate::sketch) front: Option<crate::geometry::compass::Direction>,
    /// Whether an American state has been named.
    pub(in crate::sketch) is_american: bool,
    /// Whether the lines above are the calls of a lot.
    pub(in crate::sketch) in_lot: bool,
    /// Whether another line of the file is the record's figure.
    pub(in crate::sketch) has_record: bool,
    /// Whether its level is not the first of the file.
    pub(in crate::sketch) has_level_above: bool,
    /// The walls of the only living space above it, if the file has one level so far, as they were typed.
    pub(in crate::sketch) walls: std::rc::Rc<[std::rc::Rc<str>]>,
    /// To which face these walls were measured, as the line of that space says it, with a space before it.
    pub(in crate::sketch) walls_face: std::rc::Rc<str>,
    /// What follows the `#` of the line itself.
    pub(in crate::sketch) comment: Option<std::rc::Rc<str>>,
    /// The names of the corners above it on its level, the nearest first.
    pub(in crate::sketch) corners: std::rc::Rc<[std::rc::Rc<str>]>,
    /// The names of the spaces and levels of the file.
    pub(in crate::sketch) spaces: std::rc::Rc<[std::rc::Rc<str>]>,
    /// The spaces of the rest of the file, each by its kind and its name.
    pub(in crate::sketch) known: std::rc::Rc<[[std::rc::Rc<str>; 2]]>,
    /// The lines of the walk of the space that places are counted from.
    pub(in crate::sketch) house_walk: std::rc::Rc<[std::rc::Rc<str>]>,
    /// The lines of the walk of the last space above.
    pub(in crate::sketch) last_walk: std::rc::Rc<[std::rc::Rc<str>]>,
    /// Whether the last space above is a part of another: an opening, a stair, or what is too low.
    pub(in crate::sketch) last_is_a_part: bool,
    /// The lines after it, up to the first that begins something else.
    pub(in crate::sketch) following: std::rc::Rc<[std::rc::Rc<str>]>,
    /// Whether the file says how thick its veneer is, or that it has none.
    pub(in crate::sketch) has_veneer: bool,
    /// Whether the file says how thick its brick or stone is.
    pub(in crate::sketch) has_brick: bool,
}

/// A change of a line.
pub(super) struct Edit {
    pub(super) line: String,
    pub(super) cause: String,
    /// Whether numbers are rewritten, so that they cannot be compared one by one.
    pub(super) converts: bool,
    /// Whether it is used only if no other change of the same step can be read.
    pub(super) weak: bool,
    /// Whether only the first of several such changes of one step that can be read is used.
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
