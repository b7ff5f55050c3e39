//! `lint` over any state of the book: commits, what is about to be committed, merges; beside an
//! earlier state; by limits from elsewhere. No git program is needed.

#[path = "lint_states/changed.rs"]
mod changed;
#[path = "history/club.rs"]
#[allow(dead_code, reason = "the timeline's tests use all of it")]
mod club;
#[path = "lint_states/guarded.rs"]
mod guarded;
#[path = "lint_states/merges.rs"]
mod merges;
#[path = "lint_states/run.rs"]
mod run;
#[path = "lint_states/since.rs"]
mod since;
#[path = "lint_states/states.rs"]
mod states;
