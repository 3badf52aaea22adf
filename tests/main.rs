//! All tests of the program, by subject; one binary, so that the library is linked once.
//!
//! `cargo test --test main worth::` runs one subject. Tests over thousands of houses take a sample; with
//! `FAIRFOOT_FULL=1` in the environment they take all.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests stop with a panic and say what they measured"
)]

mod batch;
mod commands;
mod documents;
mod explanations;
mod faults;
mod held_out;
mod hostile;
mod maps;
mod pages;
mod photographs;
mod properties;
mod published;
mod recorded;
mod worth;

/// The number of cases of a long test: all if `FAIRFOOT_FULL` is set.
pub(crate) fn cases(all: u32) -> u32 {
    if std::env::var_os("FAIRFOOT_FULL").is_some() {
        all
    } else {
        (all >> 3).clamp(20.min(all), 100)
    }
}
