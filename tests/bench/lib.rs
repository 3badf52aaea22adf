//! Nothing: the benchmarks are in core.rs.
