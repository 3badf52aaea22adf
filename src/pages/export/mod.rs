//! Pages as files: SVG is the original; PDF and PNG are made from it.

pub(crate) mod pdf;
pub(crate) mod png;
pub(crate) mod svg;
