//! Writes records: what a club's files are to say. Touches no disk; `store` does that.

pub mod editing;
pub mod sample;
pub mod splicing;
