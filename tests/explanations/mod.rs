//! How often the explanations find the true cause, and whether their support means what it says.
//!
//! Random offices measure random houses: each with its own tape within ± 0.15 ft per wall, in whole feet,
//! distributing odd steps in its own way. Then each makes one departure, drawn at random and known to the test.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::integer_division,
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::cast_possible_wrap,
    clippy::print_stdout,
    reason = "a test that cannot go on has failed; a simulation is floats"
)]

mod agreement;
mod calibration;
mod causes;
mod house;
mod measures;
mod office;
mod practice;
mod published;
mod random;
mod sentences;
mod told;
