//! A level or a lot drawn to scale: from the ground to the paper, walls, labels, marks.

pub(crate) mod canvas;
pub(crate) mod insets;
pub(crate) mod marks;
pub(crate) mod occupancy;
pub(crate) mod plan;
pub(crate) mod view;
