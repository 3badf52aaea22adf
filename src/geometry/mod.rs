//! Traverses, outlines and the operations on them, independent of houses.
//!
//! East and north are positive. An outline walked with its inside on the left has a positive signed area. Positions
//! are whole nanometers.

pub(crate) mod compass;
pub(crate) mod fit;
pub(crate) mod nearest_closing;
pub(crate) mod offset;
pub(crate) mod outline;
pub(crate) mod overlap;
pub(crate) mod partition;
pub(crate) mod traverse;

pub use compass::{Axis, Direction};
pub use outline::{Outline, Place};
pub use partition::Cut;
