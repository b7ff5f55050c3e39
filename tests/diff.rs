//! What changed between two states of a book.

#[path = "diff/values.rs"]
mod values;
