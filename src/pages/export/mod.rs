//! Pages as files: SVG and PDF are written from the same inks, PNG is drawn from the SVG.

pub(crate) mod pdf;
mod pen;
pub(crate) mod png;
pub(crate) mod svg;
mod tags;
