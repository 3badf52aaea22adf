//! How big is this house? Two areas from its outside walls, and an explanation of the gap to the record.
//!
//! There is one road, on which each step is made from the one before:
//!
//! text → [`Sketch`](sketch::Sketch) (what was written) → [`House`] (outlines that close) → [`Areas`] (each space
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
