#![no_main]

#[path = "../../fuzzed/names.rs"]
mod names;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| names::tried(bytes));
