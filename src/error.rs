//! Errors for the caller of the library, as opposed to diagnostics for the writer of a sides file.

use std::fmt;

/// An error of a library call.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Error {
    /// The text is not a length.
    Length {
        /// What is wrong with it.
        message: String,
        /// How to write one.
        help: String,
    },
    /// The weights of departures cannot be used; says why.
    Weights(String),
    /// The house would fill more pages than are allowed.
    TooManyPages {
        /// The number of pages it would fill.
        pages: usize,
        /// The largest number of pages allowed.
        most: usize,
    },
    /// The file to verify has no sides file inside from which its pages could be made again; says what is missing.
    NotVerified(String),
    /// The map cannot be read, or a shape in it is not the outline of a building; says why.
    Map(String),
    /// A page could not be drawn. This is a bug in fairfoot.
    Drawing(String),
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Error::Length { message, help } => write!(f, "{message}; {help}"),
            Error::Weights(message) => write!(f, "these weights cannot be used: {message}"),
            Error::TooManyPages { pages, most } => write!(
                f,
                "this file would fill {pages} pages, and {most} is the most; give one house a file of its own, without long comments"
            ),
            Error::NotVerified(message) | Error::Map(message) => f.write_str(message),
            Error::Drawing(message) => write!(f, "the pages could not be drawn: {message}"),
        }
    }
}

impl std::error::Error for Error {}
