//! The law `photographs`.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| fairfoot_fuzz::laws::photographs(bytes));
