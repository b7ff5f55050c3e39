//! `lint` over any state of the book: commits, what is about to be committed; by limits from
//! elsewhere; readings that changed. No git program is needed.

#[path = "lint_states/changed.rs"]
mod changed;
#[path = "history/club.rs"]
#[allow(dead_code, reason = "shared with other tests, which use more of it")]
mod club;
#[path = "lint_states/guarded.rs"]
mod guarded;
#[path = "lint_states/run.rs"]
mod run;
#[path = "lint_states/states.rs"]
mod states;
