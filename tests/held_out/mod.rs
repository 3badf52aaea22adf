//! Random houses compared with a second computation that shares no code with the program.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::float_arithmetic,
    clippy::cast_precision_loss,
    reason = "a test that cannot go on has failed; curved and slanted walls are floats"
)]

mod neighbors;
mod range;
mod second_opinion;
mod steps;
#[allow(
    dead_code,
    unreachable_pub,
    clippy::integer_division,
    reason = "it stands alone: each test uses its own part of it"
)]
pub(crate) mod twin;
pub(crate) mod walks;
