//! A level or lot drawn to scale: conversion from ground to paper, walls, labels and marks.

pub(crate) mod canvas;
pub(crate) mod insets;
pub(crate) mod marks;
pub(crate) mod occupancy;
pub(crate) mod plan;
pub(crate) mod view;
