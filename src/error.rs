//! Errors for the caller of the library, as opposed to diagnostics for the writer of a sides file.

/// An error in a call to the library.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum Error {
    /// The text is not a length.
    #[error("{message}; {help}")]
    Length {
        /// What is wrong with the text.
        message: String,
        /// How to write a length.
        help: String,
    },
    /// The weights of departures cannot be used; the text says why.
    #[error("these weights cannot be used: {0}")]
    Weights(String),
    /// The house would fill more pages than are allowed.
    #[error(
        "this file would fill {pages} pages, and {most} is the most; give one house a file of its own, without long comments"
    )]
    TooManyPages {
        /// The number of pages it would fill.
        pages: usize,
        /// The largest number of pages allowed.
        most: usize,
    },
    /// The chosen sections have nothing to show for this house, so there would be no page.
    #[error(
        "these sections have nothing to show for this house; add `exhibit`, which every house has"
    )]
    NoPages,
    /// The file to verify contains no sides file from which its pages could be regenerated; the text says what is
    /// missing.
    #[error("{0}")]
    NotVerified(String),
    /// The file to verify is a picture, which cannot be checked.
    #[error(
        "{kind} has no sides file inside; ask for the PDF or the SVG pages, or compare the fingerprint on its foot with `fairfoot verify --print FILE.sides`"
    )]
    Picture {
        /// What it is, with its article: `a PNG`.
        kind: &'static str,
    },
    /// The sides file inside the file to verify has an error, so that it has been changed since the pages were made.
    #[error("the sides file inside has an error: {error}")]
    SidesInside {
        /// The sides file.
        sides: String,
        /// Its first error.
        error: String,
    },
    /// The map cannot be read, or a shape in it cannot be the outline of a building; the text says why.
    #[error("{0}")]
    Map(String),
    /// A page could not be drawn. This is a bug in fairfoot.
    #[error("the pages could not be drawn: {0}")]
    Drawing(String),
}
