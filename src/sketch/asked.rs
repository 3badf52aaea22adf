//! A space whose place was told in words, such as `on the right side`: what the words mean, and how its line reads once
//! it has a place.

use crate::diagnostic::Span;
use crate::geometry::compass::Direction;
use crate::units::length::Length;

/// What words about the place of a space mean.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Whereabouts {
    /// On one side of the house.
    Side(Direction),
    /// At the corner between two sides of the house.
    Corner(Direction, Direction),
    /// This far from a numbered corner, each way in turn.
    FromCorner(usize, Vec<(Direction, Length)>),
    /// This far from a numbered corner, in a direction that the words do not say.
    NearCorner(usize, Length),
    /// This far from the corner between two sides of the house.
    NearCompassCorner(Direction, Direction, Length),
    /// This far from the wall on one side of the house.
    FromWall(Direction, Length),
    /// This far from the corner between two sides of the house, each way in turn.
    FromCompassCorner(Direction, Direction, Vec<(Direction, Length)>),
    /// On one side of the house, this far from where another side ends it.
    Along(Direction, Direction, Length),
    /// In the house, this far from two of its walls.
    FromWalls([(Direction, Length); 2]),
    /// The words name nothing that has been measured.
    Unknown,
}

/// A line of a space that lacks its place.
#[derive(Clone, Debug)]
pub(crate) struct Asked {
    /// The part of the text that the line with its place replaces.
    pub(crate) span: Span,
    pub(crate) line: Placeless,
}

/// The parts of the line of a space before and after its place.
#[derive(Clone, Debug)]
pub(crate) struct Placeless {
    pub(crate) before: String,
    pub(crate) after: String,
    pub(crate) place: Whereabouts,
    /// The space that the words count from, if they name one.
    pub(crate) of: Option<String>,
}

impl Placeless {
    /// The line with the comment that the typed line has.
    pub(crate) fn with_comment(mut self, comment: &str) -> Placeless {
        match self.after.contains('#') {
            true if !comment.is_empty() => {
                self.after.push(',');
                self.after.push_str(comment.trim_start().trim_start_matches('#'));
            }
            _ => self.after.push_str(comment),
        }
        self
    }

    /// The whole line with this place; an empty place leaves it out.
    pub(crate) fn at(&self, place: &str) -> String {
        let parts = [self.before.as_str(), place, self.after.as_str()];
        let said: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
        said.join(" ").replace("   #", "  #")
    }
}
