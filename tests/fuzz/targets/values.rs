#![no_main]

#[path = "../../fuzzed/values.rs"]
mod values;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| values::tried(bytes));
