//! The laws of `tests/hostile`, for the fuzz targets.

#[path = "../hostile/laws.rs"]
pub mod laws;
#[path = "../held_out/twin.rs"]
#[allow(dead_code)]
mod twin;
#[path = "../held_out/walks.rs"]
#[allow(dead_code)]
mod walks;
