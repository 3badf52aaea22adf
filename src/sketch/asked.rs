//! A space whose place was told in words, such as `on the right side, 6' from the front`: what the words mean, and how
//! its line reads once it has a place.

use crate::diagnostic::Span;
use crate::geometry::compass::Direction;
use crate::units::length::Length;

/// Where a space stands, as words tell it. All parts hold together; none if the words name nothing that was measured.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Whereabouts {
    pub(crate) parts: Vec<Part>,
    /// Whether the words say that it stands outside, as `behind the house` does and `on the right` does not.
    pub(crate) is_outside: bool,
    /// Whether the words name a door or a window that it stands at.
    pub(crate) is_at_a_door: bool,
    /// Whether the words put it between two things, which only a recess may show.
    pub(crate) is_between: bool,
}

impl Whereabouts {
    /// Whether the words put it right above something.
    pub(crate) fn is_over(&self) -> bool {
        self.parts.iter().any(|part| part.sort == Sort::Over)
    }
}

/// One thing that words tell of the place of a space.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Part {
    pub(crate) sort: Sort,
    /// The space that it counts from, as it is called; the first living space of the level unless the words name one.
    pub(crate) of: Option<String>,
}

/// What a part tells.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Sort {
    /// Against the walls on one side; inside, along them.
    Side(Direction),
    /// This far in from the end on one side.
    Inset(Direction, Length),
    /// With its near end at this end of another space.
    Past(Direction),
    /// In the middle of the side that another part names.
    Middle,
    /// With one of its corners on a corner.
    At(Point),
    /// Its walk begins this far from a corner, each way in turn.
    From(Point, Vec<(Direction, Length)>),
    /// This far from a corner, in a direction that the words do not say.
    Near(Point, Length),
    /// Against any wall.
    Against,
    /// Right above, on the next level.
    Over,
}

/// A corner of another space.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Point {
    /// Where the house's first walk begins.
    Origin,
    /// By its number.
    Numbered(usize),
    /// By its name.
    Named(String),
    /// The one farthest toward two sides, north or south first.
    Toward(Direction, Direction),
}

/// What comes of words about a place that are asked for.
pub(crate) const THEN: &str = ", and the next answer gives the lines to type";

/// A line of a space that lacks its place.
#[derive(Clone, Debug)]
pub(crate) struct Asked {
    /// The part of the text that the line with its place replaces.
    pub(crate) span: Span,
    pub(crate) line: Placeless,
}

/// The parts of the line of a space before and after its place.
#[derive(Clone, Debug, Default)]
pub(crate) struct Placeless {
    pub(crate) before: String,
    pub(crate) after: String,
    pub(crate) place: Whereabouts,
    /// The words about its place, as typed.
    pub(crate) said: String,
    /// Its size, north then east: each way in which it may be meant. None if its sides follow below.
    pub(crate) sizes: Vec<[String; 2]>,
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

    /// The line of a space that stands by itself, with the words about its place as a comment.
    pub(crate) fn by_itself(&self, size: Option<&[String; 2]>) -> String {
        let comment = format!("  # {}", self.said);
        self.clone().with_comment(&comment).at("detached", size)
    }

    /// The whole line with this place, and its sides below it if the line has its size; an empty place leaves it out.
    pub(crate) fn at(&self, place: &str, size: Option<&[String; 2]>) -> String {
        let parts = [self.before.as_str(), place, self.after.as_str()];
        let said: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
        let line = said.join(" ").replace("   #", "  #");
        match size {
            Some([north, east]) => {
                format!("{line}\nnorth {north}\neast {east}\nsouth {north}\nwest {east}")
            }
            None => line,
        }
    }

    /// Each way in which the size may be meant; one without a size if the sides follow below.
    pub(crate) fn ways(&self) -> Vec<Option<&[String; 2]>> {
        match self.sizes.is_empty() {
            true => vec![None],
            false => self.sizes.iter().map(Some).collect(),
        }
    }
}
