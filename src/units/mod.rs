//! Exact quantities: lengths, areas and money, with their rounding and spelling.
//!
//! A length is a whole number of nanometers and an area a whole number of half square nanometers. Neither is ever
//! computed in floats, except areas of curved and slanted walls.

pub(crate) mod area;
pub(crate) mod decimal;
pub(crate) mod length;
pub(crate) mod money;

pub use area::{Area, AreaUnit, WrittenArea};
pub use decimal::thousands;
pub use length::{FineStep, Form, Halves, Length, Step, WrittenLength};
pub use money::{Currency, Money};
