//! What is wrong with a book, why it matters in the boat, and what to do.
//!
//! One file a rule. Everything said about a rule anywhere (`why`, `rules`, the table in the
//! README, the tests) is read from its [`Rule`] value; nothing about a rule is written twice.

mod anchor_not_allowed;
mod checking;
mod defect_open;
mod finding;
mod gap_too_tight;
mod judging;
mod key_twice;
mod level;
mod list;
mod missing_key;
mod no_such_record;
mod not_a_date;
mod not_a_number;
mod not_measured;
mod oar_twice;
mod oar_unfit;
mod out_of_bounds;
mod pin_not_vertical;
mod record_twice;
mod rule;
mod seats_wrong;
pub mod sources;
mod tag_not_allowed;
mod too_large;
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
