//! All that is said to people, for the terminal, the pages and any other place alike.

pub(crate) mod sentences;
pub(crate) mod value;

pub use value::Block;
