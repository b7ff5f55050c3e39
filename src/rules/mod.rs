//! What is wrong with a book, why it matters in the boat, and what to do.
//!
//! One file a rule. Everything said about a rule anywhere (`why`, `rules`, the table in the
//! README, the tests) is read from its [`Rule`] value; nothing about a rule is written twice.

mod anchor_not_allowed;
mod apart;
mod arc_disagrees;
mod bending;
mod blades;
mod boat_not_level;
mod checking;
mod defect_open;
mod finding;
mod gap_not_measured;
mod gap_rubs_in_roll;
mod gap_too_loose;
mod gap_too_tight;
mod handle_past_mark_disagrees;
mod handle_past_mark_wrong;
mod horn_hooks;
mod judging;
mod key_twice;
mod leaning;
mod level;
mod level_not_recorded;
mod lift_not_tried;
mod list;
mod measuring_again;
mod missing_key;
mod no_such_record;
mod not_a_date;
mod not_a_number;
mod not_measured;
mod oar_cannot_suit;
mod oar_did_not_lift_out;
mod oar_twice;
mod oar_unfit;
mod out_of_bounds;
mod pin_not_vertical;
mod pitch_mismatch;
mod pitch_out_of_range;
mod pitch_varies_through_arc;
mod record_twice;
mod rowlock_not_free;
mod rule;
mod seats_wrong;
mod sides_unequal;
pub mod sources;
mod tag_not_allowed;
mod too_large;
mod trials;
mod unknown_key;
mod unreadable;
mod words;
mod wrong_id;
mod wrong_unit;
mod wrong_word;

pub use checking::{Check, Checked, check};
pub use finding::{Figure, Finding, Label, LimitShown, NotChecked, Outcome};
pub use level::Level;
pub use list::{RULES, find};
pub use rule::{Edit, Example, Looks, Rule};
