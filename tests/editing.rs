//! Edits in place change their target and nothing else.
//!
//! A second, independent YAML reader (`serde_yaml`) says what each text says before and after.

#[path = "editing/by_chance.rs"]
mod by_chance;
#[path = "editing/by_hand.rs"]
mod by_hand;
#[path = "editing/checking.rs"]
mod checking;
