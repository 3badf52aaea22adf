//! How big is this house? Two areas from its outside walls, and what explains the gap to the record.
//!
//! One road, each step a function of the one before:
//!
//! text → [`Sketch`] (what was written) → [`House`] (outlines that close) → [`Areas`] (each space
//! under each rule) → [`Reconciliation`] (the gap to each figure, step by step) → report.
//!
//! ```
//! use fairfoot::{Settings, Weights};
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
//! let house = fairfoot::read("demo.sides", text)?;
//! let areas = house.areas(&Settings::default())?;
//! assert_eq!(areas.gross().tenth_foot().sq_ft_text(), "1205.58"); // 28.3 × 42.6
//! assert_eq!(areas.gross().whole_foot().whole_sq_ft(), 28 * 43);
//! let result = areas.reconcile(&Weights::default())?;
//! assert_eq!(result.figures()[0].gap().sq_ft_text(), "-5.58");
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

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

/// Reads a sides file and checks the house in it.
///
/// # Errors
///
/// All the faults of the text at once, in file order, with the warnings among them.
pub fn read(name: impl Into<String>, text: impl Into<String>) -> Result<House, Diagnostics> {
    read_source(Source::new(name, text))
}

/// The same for a text that is already under its name.
///
/// # Errors
///
/// As [`read`].
pub fn read_source(source: Source) -> Result<House, Diagnostics> {
    let sketch::Reading { sketch, mut faults } = sketch::read(&source);
    match house::check::check(&source, &sketch, &mut faults) {
        Some(mut model) => {
            diagnostic::sort(&mut faults);
            model.warnings = faults;
            Ok(House::new(model))
        }
        None => Err(Diagnostics::new(source, faults)),
    }
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
