//! What a line could have gone on with.

/// What was wanted where a line could not be read on.
#[derive(Clone, Debug, Default)]
pub(super) struct Wanted {
    /// The words that could stand there.
    pub(super) words: Vec<String>,
    /// A text could stand there.
    pub(super) text: bool,
}
