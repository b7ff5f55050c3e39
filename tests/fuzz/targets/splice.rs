#![no_main]

#[path = "../../fuzzed/splice.rs"]
mod splice;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| splice::tried(bytes));
