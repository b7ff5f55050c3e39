#![no_main]

#[path = "../../editing/checking.rs"]
mod checking;
#[path = "../../fuzzed/edits.rs"]
mod edits;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| edits::tried(bytes));
