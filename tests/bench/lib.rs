//! Empty: the benchmarks are in core.rs.
