//! What fuzzing tries, on the texts that it has kept; `tests/fuzz` tries new ones.

#![cfg(unix)]

#[path = "editing/checking.rs"]
mod checking;
#[path = "fuzzed/edits.rs"]
mod edits;
#[path = "tree/looking_over.rs"]
mod looking_over;
#[path = "fuzzed/names.rs"]
mod names;
#[path = "fuzzed/reading.rs"]
mod reading;
#[path = "fuzzed/splice.rs"]
mod splice;
#[path = "fuzzed/values.rs"]
mod values;

use std::fs;
use std::path::Path;

/// Tries each text that was kept of a kind.
fn tried(kind: &str, tried: fn(&[u8])) {
    let folder = Path::new("tests/fuzz/corpus").join(kind);
    let kept = fs::read_dir(&folder).expect("a folder of texts");
    let texts: Vec<Vec<u8>> =
        kept.map(|entry| fs::read(entry.expect("an entry").path()).expect("a text")).collect();
    assert!(texts.len() > 20, "only {} texts in {}", texts.len(), folder.display());
    texts.iter().for_each(|text| tried(text));
}

#[test]
fn every_kept_file_is_read_and_reported() {
    tried("reading", reading::tried);
}

#[test]
fn every_kept_name_is_followed() {
    tried("names", names::tried);
}

#[test]
fn every_kept_value_is_read_or_told() {
    tried("values", values::tried);
}

#[test]
fn every_kept_edit_changes_its_target_only() {
    tried("edits", edits::tried);
}

#[test]
fn every_kept_trio_is_joined_or_refused() {
    tried("splice", splice::tried);
}
