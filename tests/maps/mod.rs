//! Outlines from maps: areas compared with published values, every format, and malicious files.

mod areas;
mod city;
mod formats;
mod hostile;
mod roofs;
