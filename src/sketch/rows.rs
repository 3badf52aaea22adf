//! The walks of a sides file as rows, and edits of single rows that leave all other text unchanged.
//!
//! A form on a screen shows rows, and the text remains the source: each row names its line, and each edit returns
//! the whole new text. Directions are those of someone who stands in the street and faces the house: [`Way::Back`],
//! [`Way::Right`], [`Way::Front`], [`Way::Left`]. Positions are in feet from the level's origin, with `x` to the
//! right and `y` down toward the street.
//!
//! ```
//! use fairfoot::sketch::rows::{Edit, Way, edited, rows};
//!
//! let text = "front south\nlevel \"Ground\"\n  living \"House\"\n    north 28' # the west wall\n";
//! let walks = rows(text).walks;
//! assert_eq!(walks[0].rows[0].way, Some(Way::Back));
//! assert_eq!(walks[0].gap, "28' toward the street");
//! let (how, shape) = Default::default();
//! let longer = Edit::Side { line: 4, way: Way::Back, length: "30' 6\"".into(), how, shape };
//! assert!(edited(text, &longer).contains("    north 30' 6\" # the west wall"));
//! ```

mod corners;
mod edit;
mod maker;
mod open;
mod way;

use serde::{Deserialize, Serialize};

use super::Reading;
use super::statement::{Statement, usual_form};
use crate::diagnostic::Source;
use crate::geometry::compass::Direction;
pub use edit::{Edit, edited};
use maker::Maker;
pub use way::Way;

/// How the length of a row was obtained.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum How {
    /// Taped.
    #[default]
    Measured,
    /// Not measured: it follows from the other walls.
    Closing,
    /// It was estimated.
    About,
}

/// The shape of a side, with the lengths, as typed, that a straight wall does not have.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "is", rename_all = "lowercase")]
pub enum Shape {
    /// A straight wall.
    #[default]
    Straight,
    /// An angled bay; the length of the row is its width along the wall.
    Bay {
        /// How far it projects.
        out: String,
        /// The width of its flat front.
        flat: String,
    },
    /// A round bay; the length of the row is its width along the wall.
    Round {
        /// How far it projects.
        out: String,
    },
    /// A slanted wall; the length of the row is its first leg.
    Slant {
        /// The direction of the second leg.
        to: Way,
        /// The length of the second leg.
        leg: String,
    },
    /// A side that a row can only show, not edit.
    Other,
}

/// A part of what a row draws: a line or an arc up to a position.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Piece {
    /// Its end, in feet.
    pub to: [f64; 2],
    /// For an arc, its radius in feet, and whether it bulges to the right of the walking direction; `None` for a
    /// line.
    pub curve: Option<(f64, bool)>,
}

/// One side as a row.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Row {
    /// Its line in the file, counted from 1.
    pub line: usize,
    /// The number of its first side in walking order, from 1, as a report and the pages show it. The corner where it
    /// begins has the same number.
    pub number: usize,
    /// How many sides it stands for: an angled bay three, any other row one.
    pub sides: usize,
    /// Its direction; `None` for a side that a row can only show: a curved wall, a bearing or `close`.
    pub way: Option<Way>,
    /// Its shape.
    pub shape: Shape,
    /// The side as typed, without the words after it.
    pub typed: String,
    /// The length as typed; empty if it has none.
    pub length: String,
    /// The length of a side by closing, as it follows from the other sides; empty if it does not follow, or was
    /// typed.
    pub found: String,
    /// The length as feet, inches and a fraction of an inch, also one that cannot be read, such as `6' 24"`; `None` if
    /// it cannot be written that way.
    pub parts: Option<[String; 3]>,
    /// How the length was obtained.
    pub how: How,
    /// The name of its picture file; `None` if it has no picture.
    pub picture: Option<String>,
    /// Whether the line could be read.
    pub is_read: bool,
    /// The direction in which a wall inserted after it most likely goes: across it, toward the start if that is missed.
    pub then: Way,
    /// The start of the side, in feet.
    pub from: [f64; 2],
    /// The end of the side, in feet.
    pub to: [f64; 2],
    /// What is drawn from its start to its end: one line or arc, for an angled bay three lines.
    pub pieces: Vec<Piece>,
}

/// The sides of one space.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Walk {
    /// The line that begins the space, counted from 1.
    pub line: usize,
    /// The word for its kind; `lot` for the land.
    pub kind: &'static str,
    /// Its name.
    pub name: String,
    /// The name of its level; empty for the land.
    pub level: String,
    /// The name of the space it lies in; `None` if it lies in none.
    pub within: Option<String>,
    /// Its start in feet, `x` then `y`.
    pub start: [f64; 2],
    /// The space and the corner (from 1) at which it begins; `None` if it does not begin at a corner.
    pub corner: Option<(String, usize)>,
    /// The directions and lengths from where its level begins to where it begins; empty if it begins there, or at a
    /// corner.
    pub off: Vec<(Way, String)>,
    /// Its sides.
    pub rows: Vec<Row>,
    /// What is missing to return to the start, in words; empty if nothing is missing.
    pub gap: String,
    /// Whether the walk returns to its start.
    pub is_closed: bool,
    /// Whether it misses its start by so little that no wall is likely to be left: along each axis by two feet, or by a
    /// fiftieth of what was walked.
    pub is_near: bool,
}

/// The fields of a form that come from the lines before the first level.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Heads {
    /// `property`
    pub property: String,
    /// `account`
    pub account: String,
    /// The area after `record`, as typed.
    pub record: String,
    /// The area after `listing`, as typed.
    pub listing: String,
    /// The area after `plan`, as typed.
    pub plan: String,
    /// The thickness after `veneer`, or `none`.
    pub veneer: String,
    /// The unit of numbers without one; empty if the file does not state it.
    pub units: String,
}

/// A sides file as rows.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Rows {
    /// The fields before the first level.
    pub heads: Heads,
    /// The compass words that the file uses for back, right, front, left.
    pub compass: [&'static str; 4],
    /// The names of the levels, in file order.
    pub levels: Vec<String>,
    /// Every walk, in file order.
    pub walks: Vec<Walk>,
    /// The line of each field that has one.
    pub fields: Vec<(&'static str, usize)>,
}

impl Row {
    /// Whether the length of a wall is still empty although it was not left to follow from the others.
    #[must_use]
    pub fn lacks_length(&self) -> bool {
        !self.is_read && self.way.is_some() && self.how != How::Closing && self.length.is_empty()
    }

    fn empty() -> Row {
        Row {
            line: 0,
            number: 1,
            sides: 1,
            way: None,
            shape: Shape::Straight,
            typed: String::new(),
            length: String::new(),
            found: String::new(),
            parts: None,
            how: How::Measured,
            picture: None,
            is_read: true,
            then: Way::Back,
            from: [0.0; 2],
            to: [0.0; 2],
            pieces: Vec::new(),
        }
    }
}

/// The rows of a text. A side that cannot be read becomes a row with `is_read` set to `false`; other unreadable
/// lines are left out.
#[must_use]
pub fn rows(text: &str) -> Rows {
    let source = Source::new("", text);
    let Reading { sketch, .. } = super::read(&source);
    let runs = sketch.lines.iter().filter_map(|line| match &line.statement {
        Some(Statement::Side(run, _)) => Some(run),
        _ => None,
    });
    let mut maker = Maker::new(front_of(&sketch), usual_form(runs));
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    for (i, typed) in text.lines().enumerate() {
        let statement = sketch.lines.get(i).and_then(|line| line.statement.as_ref());
        maker.line(i + 1, typed, statement);
    }
    maker.finish()
}

/// The text with the directions of its rows as seen from the street, line for line; `None` if it does not say where the
/// street is. Its errors say back, right, front and left where they quote what was typed.
#[must_use]
pub fn in_ways(text: &str) -> Option<String> {
    let reading = super::read(&Source::new("", text));
    let front = reading.sketch.heads.front?;
    let rows = rows(text).walks.into_iter().flat_map(|walk| walk.rows);
    let lines: Vec<usize> = rows.filter(|row| row.way.is_some()).map(|row| row.line).collect();
    let seen = |(i, line): (usize, &str)| match lines.contains(&(i + 1)) {
        true => edit::in_ways(line, front),
        false => line.to_owned(),
    };
    Some(text.split_inclusive('\n').enumerate().map(seen).collect())
}

/// The street side, or south (the bottom of the plan) if it is not stated.
fn front_of(sketch: &super::Sketch) -> Direction {
    sketch.heads.front.unwrap_or(Direction::South)
}

#[cfg(test)]
mod tests;
