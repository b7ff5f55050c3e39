//! `lint` by guarded limits, of changed readings and odd states: what a gate must not let through.
//! No git program is needed.

#[path = "lint_guard/changed.rs"]
mod changed;
#[path = "history/club.rs"]
#[allow(dead_code, reason = "shared with other tests, which use more of it")]
mod club;
#[path = "lint_guard/guarded.rs"]
mod guarded;
#[path = "lint_guard/run.rs"]
mod run;
#[path = "lint_guard/states.rs"]
mod states;
