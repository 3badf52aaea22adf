//! All prose for people, shared by the terminal, the pages and the browser.

pub(crate) mod accounts;
pub(crate) mod block;
pub(crate) mod causes;
pub(crate) mod certainty;
pub(crate) mod compared;
#[cfg(feature = "pages")]
pub(crate) mod compass;
pub(crate) mod conclusion;
#[cfg(feature = "pages")]
pub(crate) mod draft;
pub(crate) mod figure;
pub(crate) mod half_feet;
#[cfg(feature = "pages")]
pub(crate) mod heard;
pub(crate) mod map;
pub(crate) mod near_misses;
pub(crate) mod office;
pub(crate) mod opening;
pub(crate) mod outlines;
pub(crate) mod own_lengths;
pub(crate) mod photographs;
pub(crate) mod products;
pub(crate) mod request;
pub(crate) mod rounding;
pub mod rows;
pub(crate) mod sentences;
pub(crate) mod size;
pub(crate) mod step_lines;
mod strips;
pub(crate) mod value;
mod worked;

pub use block::Block;
pub use sentences::{DISCLAIMER, SMALLER_RECORD};
