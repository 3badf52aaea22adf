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
//! let areas = Areas::of(&read, &settings)?;
//! assert_eq!(areas.gross().tenth_foot().sq_ft_text(), "1205.58"); // 28.3 × 42.6
//! assert_eq!(areas.gross().whole_foot().whole_sq_ft(), 28 * 43);
//! let reconciliation = Reconciliation::of(&read, areas, &settings)?;
//! assert_eq!(reconciliation.figures()[0].gap().sq_ft_text(), "-5.58");
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

use std::sync::Arc;

pub mod areas;
pub mod batch;
pub mod diagnostic;
mod error;
pub mod geometry;
pub mod house;
pub mod pages;
pub mod reconcile;
pub mod report;
pub mod sketch;
pub mod units;
pub mod value;
pub mod verify;
pub mod wording;

pub use areas::{Areas, Settings};
pub use diagnostic::{Diagnostic, Diagnostics, Source};
pub use error::Error;
pub use house::House;
pub use pages::{Pages, Paper};
pub use reconcile::{Reconciliation, Weights};
pub use sketch::Sketch;

/// A sides file that was read and found sound.
#[derive(Clone, Debug)]
pub struct Sound {
    source: Source,
    sketch: Sketch,
    house: Arc<House>,
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

    /// The checked house, to be kept.
    pub(crate) fn shared_house(&self) -> Arc<House> {
        Arc::clone(&self.house)
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
pub fn read(name: impl Into<String>, text: impl Into<String>) -> Result<Sound, Diagnostics> {
    read_source(Source::new(name, text))
}

/// The same for a text that is already under its name.
///
/// # Errors
///
/// As [`read`].
pub fn read_source(source: Source) -> Result<Sound, Diagnostics> {
    let sketch::Reading { sketch, mut faults } = sketch::read(&source);
    let house = house::check(&sketch, &mut faults);
    match house {
        Some(house) => {
            diagnostic::sort(&mut faults);
            Ok(Sound { source, sketch, house: Arc::new(house), warnings: faults })
        }
        None => Err(Diagnostics::new(source, faults)),
    }
}

/// The sketch alone, whether or not its outlines close: for what needs the words only.
///
/// # Errors
///
/// The faults of reading it.
pub fn read_sketch(source: Source) -> Result<Sketch, Diagnostics> {
    let sketch::Reading { sketch, faults } = sketch::read(&source);
    if faults.is_empty() { Ok(sketch) } else { Err(Diagnostics::new(source, faults)) }
}

/// The text in the bytes of a file.
///
/// # Errors
///
/// A fault at the first byte that is not UTF-8.
pub fn decode(name: impl Into<String>, bytes: Vec<u8>) -> Result<Source, Diagnostics> {
    match String::from_utf8(bytes) {
        Ok(text) => Ok(Source::new(name, text)),
        Err(error) => {
            let at = error.utf8_error().valid_up_to();
            let bytes = error.as_bytes();
            let wide = bytes.starts_with(&[0xff, 0xfe]) || bytes.starts_with(&[0xfe, 0xff]);
            let text: String = String::from_utf8_lossy(bytes)
                .chars()
                .map(|c| if c == '\0' { ' ' } else { c })
                .collect();
            let help = if bytes.starts_with(b"%PDF") {
                "this is a PDF; if fairfoot made it, `fairfoot verify --sides` and its name print the sides file inside"
            } else if bytes.starts_with(b"\x89PNG") {
                "this is a picture; the sides file is inside the PDF and the SVG of the same pages"
            } else if wide {
                "this looks like UTF-16; save the file as UTF-8"
            } else {
                "save the file as plain text in UTF-8; a word processor's own format does not do"
            };
            let span = diagnostic::Span::new(at, at + '\u{fffd}'.len_utf8());
            let fault = Diagnostic::new(diagnostic::Word::NotText, span, "this is not UTF-8 text")
                .help(help);
            Err(Diagnostics::new(Source::new(name, text), vec![fault]))
        }
    }
}
