//! Values through time: what `history` and `blame` tell of repositories made for it.

#[path = "history/blame.rs"]
mod blame;
#[path = "history/changes.rs"]
mod changes;
#[path = "history/club.rs"]
mod club;
#[path = "history/drift.rs"]
mod drift;
#[path = "history/hostile.rs"]
mod hostile;
#[path = "history/lists.rs"]
mod lists;
#[path = "history/long.rs"]
mod long;
#[path = "history/merges.rs"]
mod merges;
#[path = "history/moved.rs"]
mod moved;
#[path = "history/run.rs"]
mod run;
#[path = "history/shallow.rs"]
mod shallow;
#[path = "history/unclear.rs"]
mod unclear;
#[path = "history/waived.rs"]
mod waived;
#[path = "history/when.rs"]
mod when;
#[path = "history/words.rs"]
mod words;
