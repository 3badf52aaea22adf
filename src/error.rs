//! What can go wrong for whoever calls the library, apart from faults in a sides file.

use std::fmt;

/// A mistake of the caller.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Error {
    /// A text is not a length.
    Length {
        /// What is wrong with it.
        message: String,
        /// How to write one.
        help: String,
    },
    /// Weights of departures that cannot be used.
    Weights(String),
    /// A house that would fill so many pages, of so many at most.
    TooManyPages {
        /// What it would fill.
        pages: usize,
        /// The most a house may fill.
        most: usize,
    },
    /// A file has no sides inside from which its pages could be made anew.
    NotVerified(String),
    /// A map that cannot be read, or a shape in it that is no outline of a building.
    Map(String),
    /// A page could not be drawn: a mistake of this program.
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
