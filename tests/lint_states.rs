//! `lint` of any state of a book, beside an earlier one and by guarded limits: repositories made
//! for it, the program as it is run, and no git program.

#[path = "lint_states/at.rs"]
mod at;
#[path = "history/club.rs"]
#[allow(dead_code, reason = "shared with other tests, which use more of it")]
mod club;
#[path = "lint_states/gone.rs"]
mod gone;
#[path = "lint_states/guarding.rs"]
mod guarding;
#[path = "lint_states/merging.rs"]
mod merging;
#[path = "lint_states/options.rs"]
mod options;
#[path = "lint_states/remeasured.rs"]
mod remeasured;
#[path = "lint_states/run.rs"]
mod run;
#[path = "lint_states/since.rs"]
mod since;
#[path = "lint_states/staged.rs"]
mod staged;
#[path = "lint_states/unread.rs"]
mod unread;
