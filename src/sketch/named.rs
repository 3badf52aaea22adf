//! Names as typed.

use crate::diagnostic::Span;

/// A name as typed, with its place.
#[derive(Clone, Debug)]
pub(crate) struct Named {
    pub(crate) text: String,
    pub(crate) span: Span,
}

impl PartialEq for Named {
    /// Two names are the same when their letters are; their places do not matter.
    fn eq(&self, other: &Named) -> bool {
        self.text == other.text
    }
}
