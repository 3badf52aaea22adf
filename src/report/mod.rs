//! What a person reads and what a program reads: the same figures twice.

pub mod json;
mod table;
pub mod text;
mod worth;
pub mod worth_json;
