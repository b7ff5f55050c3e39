//! What is wrong with a book, why it matters in the boat, and what to do.
//!
//! One file a rule. Everything said about a rule anywhere (`why`, `rules`, the table in the
//! README, the tests) is read from its [`Rule`] value; nothing about a rule is written twice.

mod apart;
mod arc_disagrees;
mod bed_wrong;
mod bending;
mod bent_often;
mod blades;
mod boat_not_level;
mod checking;
mod chock_distance;
mod chocks_unlike;
mod date_in_future;
mod finding;
mod gap_not_measured;
mod gap_rubs_in_roll;
mod gap_too_loose;
mod gap_too_tight;
mod gearing_unlike;
mod handle_past_mark_disagrees;
mod handle_past_mark_wrong;
mod hands_set_pitch;
mod horn_hooks;
mod judging;
mod knocked_since;
mod leaning;
mod level;
mod level_not_recorded;
mod lift_not_tried;
mod list;
mod measuring_again;
mod not_signed_off;
mod oar_cannot_suit;
mod oar_did_not_lift_out;
mod oars_unlike;
mod overdue;
mod pin_not_vertical;
mod pitch_mismatch;
mod pitch_out_of_range;
mod pitch_varies_through_arc;
mod predicted_not_measured;
mod rowlock_not_free;
mod rule;
mod sides_unequal;
mod signer_unknown;
pub mod sources;
mod sum_missing;
mod sum_wrong;
mod tool_too_coarse;
mod trials;
mod unit_suspect;
mod unknown_key;
mod walk_round;
mod words;

pub use checking::{Check, Checked, check};
pub use finding::{Figure, Finding, Label, LimitShown, NotChecked, Outcome};
pub use level::Level;
pub use list::{RULES, find};
pub use rule::{Edit, Example, Looks, Rule};
