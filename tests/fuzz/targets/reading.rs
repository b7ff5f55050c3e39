#![no_main]

#[path = "../../tree/looking_over.rs"]
mod looking_over;
#[path = "../../fuzzed/reading.rs"]
mod reading;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| reading::tried(bytes));
