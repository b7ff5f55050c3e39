//! `lint` beside an earlier state of the book, and of merges before they are made. No git program
//! is needed.

#[path = "history/club.rs"]
#[allow(dead_code, reason = "shared with other tests, which use more of it")]
mod club;
#[path = "lint_beside/merging.rs"]
mod merging;
#[path = "lint_beside/run.rs"]
#[allow(dead_code, reason = "each of its tests uses its own part")]
mod run;
#[path = "lint_beside/since.rs"]
mod since;
