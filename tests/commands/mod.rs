//! The program run as a user runs it: what it prints where, and its exit codes.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test that cannot go on has failed"
)]

mod always_the_same;
mod files;
mod interrupted;
mod json;
mod output;
mod pages;
mod tidy;

use std::path::PathBuf;

use assert_cmd::Command;

/// The program, isolated from the settings of this machine's terminal.
pub(crate) fn fairfoot() -> Command {
    let mut command = Command::new(assert_cmd::cargo::cargo_bin!("fairfoot"));
    command.env_remove("NO_COLOR").env_remove("CLICOLOR_FORCE").env_remove("COLUMNS");
    command
}

/// A sketch that ships with the program.
pub(crate) fn sketch(name: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("sketches").join(name)
}

/// A plain house without errors.
pub(crate) const PLAIN: &str = "record 1,200 sq ft\nlevel \"Ground floor\"\n  living \"House\"\n    north 28' 4\"\n    east  42' 7\"\n    south 28' 4\"\n    west  42' 7\"\n";

/// The output as text.
pub(crate) fn text(bytes: &[u8]) -> String {
    String::from_utf8(bytes.to_vec()).expect("text")
}
