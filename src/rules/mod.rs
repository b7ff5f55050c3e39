//! What is wrong with a book, why it matters in the boat, and what to do.
//!
//! One file a rule. Everything said about a rule anywhere (`why`, `rules`, the table in the
//! README, the tests) is read from its [`Rule`] value; nothing about a rule is written twice.

mod checking;
mod finding;
mod gap_too_tight;
mod judging;
mod level;
mod list;
mod pin_not_vertical;
mod rule;
pub mod sources;
mod unknown_key;
mod words;

pub use checking::{Check, Checked, check};
pub use finding::{Figure, Finding, Label, LimitShown, NotChecked, Outcome};
pub use level::Level;
pub use list::{RULES, find};
pub use rule::{Edit, Example, Looks, Rule};
