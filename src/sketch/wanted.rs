//! What could have followed where a line cannot be read.

/// What was expected where reading stopped.
#[derive(Clone, Debug, Default)]
pub(super) struct Wanted {
    /// The words that could come there.
    pub(super) words: Vec<String>,
    /// Whether a quoted text could come there.
    pub(super) text: bool,
}
