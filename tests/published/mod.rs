//! Figures published outside the project, and what the same sides give here.
//!
//! Each figure has its document, edition and section next to it. A figure that was not read in the document itself says
//! so: "read second-hand" if another text quotes it, "from memory" if neither was at hand. A figure must match to half
//! its last printed digit; where more is allowed, or where a printed figure does not follow from its own sides, the
//! reason is next to it.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    clippy::print_stderr,
    reason = "a test that cannot go on has failed; printed figures are compared in floats"
)]

mod faces;
mod manuals;
mod outlines;
mod refunds;
mod rounding;
mod segments;
mod sheets;
mod staircases;
mod traverse;
mod uncertainty;
mod units;
mod vienna;

use crate::held_out::twin;
