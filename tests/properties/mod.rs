//! Laws that hold for any house.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::integer_division,
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    reason = "a test that cannot go on has failed; laws are checked by plain arithmetic"
)]

mod bays;
mod houses;
mod laws;
mod lengths;
mod slanted;
mod texts;
