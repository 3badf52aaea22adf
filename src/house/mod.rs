//! The checked house: a [`House`] exists only if its outlines close.
//!
//! Later steps do not look at the sides file again. The house holds the figures, particulars and values they need.

pub(crate) mod check;
mod model;
mod pictures;
pub(crate) mod wall_moves;

pub use crate::house::check::{
    MOST_FIGURES, MOST_LEVELS, MOST_MISSING, MOST_OUTLINES, MOST_PICTURES, MOST_SPACES,
};
pub(crate) use crate::sketch::statement::{FigureKind, Measured, Run, SideRule, Thickness};
pub(crate) use crate::sketch::value_statement::{Exemption, Place, Sale, TaxRate, Values};
pub use crate::sketch::{Face, Kind, ReferenceSource, Side, SideNumber, TakenFrom, Unit};
pub(crate) use model::{Checked, Missing, Model, PublishedFigure, ReferenceOutline, TapedCheck};
pub use model::{House, LengthSource, Level, Lot, Space};
pub use pictures::WallPicture;
