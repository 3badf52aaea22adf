//! Exact quantities: lengths, areas, money; reading them, writing them, rounding them.
//!
//! A length is a whole number of nanometers, an area a whole number of half square nanometers. No
//! float enters either.

pub(crate) mod area;
pub(crate) mod decimal;
pub(crate) mod length;
pub(crate) mod money;

pub use area::{Area, AreaUnit, WrittenArea};
pub use decimal::thousands;
pub use length::{Form, Halves, Length, Step, Written};
pub use money::Money;
