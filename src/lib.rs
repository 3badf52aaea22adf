//! How big is this house? Two areas from its outside walls, and what explains the gap to the record.
//!
//! One road, each step a function of the one before:
//!
//! text → [`Sketch`] (what was written) → [`House`] (outlines that close) → [`Areas`] (each space
//! under each rule) → [`Reconciliation`] (the gap to each figure, step by step) → report.
//!
//! ```
//! use fairfoot::{Areas, Reconciliation, Settings};
//!
//! let text = r#"
//! record 1,200 sq ft
//! level "Ground floor"
//!   living "House"
//!     north 28' 4"
//!     east  42' 7"
//!     south 28' 4"
//!     west  42' 7"
//! "#;
//! let read = fairfoot::read("demo.sides", text)?;
//! let settings = Settings::default();
//! let areas = Areas::of(read.house(), &settings)?;
//! assert_eq!(areas.gross().tenth_foot().sq_ft_text(), "1205.58"); // 28.3 × 42.6
//! assert_eq!(areas.gross().whole_foot().whole_sq_ft(), 28 * 43);
//! let reconciliation = Reconciliation::of(&read, areas, &settings)?;
//! assert_eq!(reconciliation.figures()[0].gap().sq_ft_text(), "-5.58");
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod area;
pub mod diagnostic;
mod error;
mod house;
mod length;
mod rule;
mod sketch;
mod words;

pub use area::{Area, AreaUnit, WrittenArea, thousands};
pub use diagnostic::{Diagnostic, Faults, Source};
pub use error::Error;
pub use house::{House, Level, Lot, Outline, Place, Side, Space};
pub use length::{Form, Length, Step, Ties, Written};
pub use rule::{Rule, Settings};
pub use sketch::{Axis, Direction, Drawn, Face, Kind, MOST_BYTES, MOST_LINES, MOST_SIDES, Sketch, TakenFrom, Unit};

/// A sides file that was read and found sound.
#[derive(Clone, Debug)]
pub struct Sound {
    source: Source,
    sketch: Sketch,
    house: House,
    warnings: Vec<Diagnostic>,
}

impl Sound {
    /// The text it came from.
    pub fn source(&self) -> &Source {
        &self.source
    }

    /// What was written.
    pub fn sketch(&self) -> &Sketch {
        &self.sketch
    }

    /// The checked house.
    pub fn house(&self) -> &House {
        &self.house
    }

    /// What a person should know, in file order.
    pub fn warnings(&self) -> &[Diagnostic] {
        &self.warnings
    }
}

/// Reads a sides file and checks the house in it.
///
/// # Errors
///
/// All the faults of the text at once, in file order, with the warnings among them.
pub fn read(name: impl Into<String>, text: impl Into<String>) -> Result<Sound, Faults> {
    let source = Source::new(name, text);
    let sketch::Reading { sketch, mut faults } = sketch::read(&source);
    let house = house::check(&sketch, &mut faults);
    match house {
        Some(house) => {
            diagnostic::sort(&mut faults);
            Ok(Sound { source, sketch, house, warnings: faults })
        }
        None => Err(Faults::new(source, faults)),
    }
}
