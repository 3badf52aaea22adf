//! The checked house: levels whose outlines close; holding a [`House`] proves it.
//!
//! Nothing after the house looks at the sides file again: what later steps need of figures,
//! particulars and values, the house holds.

pub(crate) mod check;
mod model;
pub(crate) mod wall_moves;

pub use crate::house::check::{
    MOST_FIGURES, MOST_LEVELS, MOST_MISSING, MOST_OUTLINES, MOST_SPACES,
};
pub(crate) use crate::sketch::statement::{FigureKind, Measured, Run, SideRule, Thickness};
pub(crate) use crate::sketch::valued::{Exemption, Place, Sale, TaxRate, Values};
pub use crate::sketch::{Face, Kind, ReferenceSource, TakenFrom, Unit};
pub use model::{House, Level, Lot, Side, Space};
pub(crate) use model::{Missing, Model, PublishedFigure, ReferenceOutline};
