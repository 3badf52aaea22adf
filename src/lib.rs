//! How big is this house? Two areas from its outside walls, and an explanation of the gap to the record.
//!
//! fairfoot measures a house from its outside walls and explains how its area differs from a published figure, such
//! as the county's record. A *sides file* lists the walls in walking order; `sketches/README.md` in the repository
//! describes the format. Each area is computed under two rules: every wall rounded to a tenth of a foot (or to the
//! inch), or to the whole foot. A gap is the published figure minus the measured area, so a record that is too large
//! has a positive gap.
//!
//! Each stage is built from the one before:
//!
//! text → [`Sketch`](sketch::Sketch) (what was written) → [`House`] (outlines that close) → [`Areas`] (each space
//! under both rules) → [`Reconciliation`] (the gap to each figure, step by step) → report and pages.
//!
#![cfg_attr(
    feature = "pages",
    doc = "The [`guide`] takes this house further, to errors, causes and pages."
)]
//!
//! ```
//! use fairfoot::{Settings, Weights};
//!
//! let text = r#"
//! record 1,250 sq ft
//! level "Ground floor"
//!   living "House"
//!     north 28' 4"
//!     east  42' 7 1/2"
//!     south 28' 4"
//!     west  42' 7 1/2"
//! "#;
//! let house = fairfoot::read("cottage.sides", text)?;
//! let areas = house.areas(&Settings::default())?;
//! assert_eq!(areas.gross().tenth_foot().sq_ft_text(), "1205.58"); // 28.3 × 42.6
//! assert_eq!(areas.gross().whole_foot().whole_sq_ft(), 28 * 43);
//! let result = areas.reconcile(&Weights::default())?;
//! assert_eq!(result.figures()[0].gap().sq_ft_text(), "44.42"); // 1,250 − 1,205.58
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! # Features
//!
//! Without features the library reads sides files, computes and reconciles areas, and writes the report as text.
//!
//! - `cli` (default): the program `fairfoot`; it includes all the others.
//! - `json`: the report as JSON, with its schema.
//! - `maps`: outlines from GeoJSON, KML, GPX, WKT and OSM XML.
//! - `pages`: the pages as SVG, PDF and PNG, and the guide.
//! - `verify`: whether a page is what the program makes of the sides file inside it; it includes `pages`.
#![cfg_attr(
    not(feature = "cli"),
    allow(
        dead_code,
        unused_imports,
        reason = "what only the pages, JSON or maps read is unused without them"
    )
)]

pub mod areas;
pub mod batch;
pub mod diagnostic;
mod error;
pub mod geometry;
#[cfg(feature = "pages")]
pub mod guide;
pub mod house;
#[cfg(feature = "maps")]
pub mod maps;
#[cfg(feature = "pages")]
pub mod pages;
mod read;
pub mod reconcile;
pub mod report;
pub mod sketch;
pub mod units;
pub mod value;
#[cfg(feature = "verify")]
pub mod verify;
pub mod wording;

pub use areas::{Areas, Settings};
pub use diagnostic::{Diagnostic, Diagnostics, Source};
pub use error::Error;
pub use house::House;
#[cfg(feature = "pages")]
pub use pages::{Pages, Paper};
pub use read::{decode, read, read_source};
pub use reconcile::{Reconciliation, Weights};
