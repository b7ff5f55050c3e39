//! What is wrong with a book, why it matters in the boat, and what to do.
//!
//! One file a rule. Everything said about a rule anywhere (`why`, `rules`, the table in the
//! README, the tests) is read from its [`Rule`] value; nothing about a rule is written twice.

mod apart;
mod arc_disagrees;
mod bending;
mod blades;
mod boat_not_level;
mod checking;
mod finding;
mod gap_not_measured;
mod gap_rubs_in_roll;
mod gap_too_loose;
mod gap_too_tight;
mod handle_past_mark_disagrees;
mod handle_past_mark_wrong;
mod horn_hooks;
mod judging;
mod leaning;
mod level;
mod level_not_recorded;
mod lift_not_tried;
mod list;
mod measuring_again;
mod oar_cannot_suit;
mod oar_did_not_lift_out;
mod pin_not_vertical;
mod pitch_mismatch;
mod pitch_out_of_range;
mod pitch_varies_through_arc;
mod rowlock_not_free;
mod rule;
mod sides_unequal;
pub mod sources;
mod trials;
mod unknown_key;
mod words;

pub use checking::{Check, Checked, check};
pub use finding::{Figure, Finding, Label, LimitShown, NotChecked, Outcome};
pub use level::Level;
pub use list::{RULES, find};
pub use rule::{Edit, Example, Looks, Rule};
