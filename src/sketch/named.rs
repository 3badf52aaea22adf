//! Names as typed.

use crate::diagnostic::Span;

/// A name as typed, with its span.
#[derive(Clone, Debug)]
pub(crate) struct Named {
    pub(crate) text: String,
    pub(crate) span: Span,
}

impl PartialEq for Named {
    /// Compares only the text, not the span.
    fn eq(&self, other: &Named) -> bool {
        self.text == other.text
    }
}
