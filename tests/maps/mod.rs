//! Outlines out of maps: areas against published values, every format, and files that are meant to hurt.

mod areas;
mod city;
mod formats;
mod hostile;
mod roofs;
