//! A level or lot drawn to scale: conversion from ground to paper, walls, labels and marks.

pub(crate) mod canvas;
pub(crate) mod fit;
pub(crate) mod insets;
pub(crate) mod marks;
mod names;
pub(crate) mod occupancy;
pub(crate) mod plan;
mod shapes;
pub(crate) mod side_words;
pub(crate) mod strip;
mod surfaces;
pub(crate) mod view;
mod walls;
