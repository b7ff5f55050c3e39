//! What is wrong with a book, why it matters in the boat, and what to do.
//!
//! One file a rule. Everything said about a rule anywhere (`why`, `rules`, the table in the
//! README, the tests) is read from its [`Rule`] value; nothing about a rule is written twice.

mod alike;
mod bed_wrong;
mod bent_often;
mod checking;
mod chock_distance;
mod chocks_unlike;
mod date_in_future;
mod finding;
mod gap_too_tight;
mod gearing_unlike;
mod hands_set_pitch;
mod judging;
mod knocked_since;
mod level;
mod list;
mod not_signed_off;
mod oars_unlike;
mod overdue;
mod pin_not_vertical;
mod predicted_not_measured;
mod rule;
mod signer_unknown;
pub mod sources;
mod sum_missing;
mod sum_wrong;
mod tool_too_coarse;
mod unit_suspect;
mod unknown_key;
mod walk_round;
mod words;

pub use checking::{Check, Checked, check};
pub use finding::{Figure, Finding, Label, LimitShown, NotChecked, Outcome};
pub use level::Level;
pub use list::{RULES, find};
pub use rule::{Edit, Example, Looks, Rule};
