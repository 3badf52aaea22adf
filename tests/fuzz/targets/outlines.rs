//! The law `outlines`.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| fairfoot_fuzz::laws::outlines(bytes));
