//! Reading and writing sides files. The result is a [`Sketch`]: the file's statements as written, with the span of
//! each.
//!
//! The reference of the format, with an annotated sample, is `sketches/README.md`.

pub(crate) mod asked;
mod assemble;
mod bay;
mod cursor;
mod lexer;
mod mend;
pub(crate) mod named;
mod nouns;
mod parser;
mod phrases;
mod plain;
mod private;
mod quantity;
mod reader;
pub mod rows;
mod second_look;
pub(crate) mod statement;
mod tidy;
mod tree;
mod value_parser;
pub(crate) mod value_statement;
mod wanted;
mod whole_walk;

pub(crate) use asked::{Asked, THEN, Whereabouts};
pub(crate) use assemble::names_a_garage;
pub(crate) use phrases::opens_level;
pub use reader::parse;
pub(crate) use reader::{Reading, in_one_row, read, read_without_lines};
pub use statement::{Face, Kind, ReferenceSource, TakenFrom, Unit};
pub(crate) use tidy::bearing_written;
pub use tree::Sketch;
pub(crate) use tree::{FigureSketch, Heads, LevelSketch, OutlineSketch, SpaceSketch, WalkSketch};
pub use tree::{Side, SideNumber};

/// The most lines a file may have.
pub const MOST_LINES: usize = 10_000;
/// The most bytes a file may have.
pub const MOST_BYTES: usize = 1_000_000;
/// The most sides an outline may have.
pub const MOST_SIDES: usize = 1_000;
/// The most characters a line may have.
const MOST_CHARACTERS: usize = 2_000;

impl Sketch {
    /// The file in its canonical form, with the same meaning and all comments.
    ///
    /// ```
    /// use fairfoot::Source;
    ///
    /// let source = Source::new("walk.sides", "LEVEL \"Ground\"\nliving \"House\"\nn 12'6\"\ne 20'\ns 12'6\"\nclose");
    /// assert_eq!(
    ///     fairfoot::sketch::parse(source)?.tidied(),
    ///     "level \"Ground\"\n  living \"House\"\n    north 12' 6\"\n    east  20'\n    south 12' 6\"\n    close\n"
    /// );
    /// # Ok::<(), fairfoot::Diagnostics>(())
    /// ```
    #[must_use]
    pub fn tidied(&self) -> String {
        tidy::tidied(self)
    }
}
