//! Before a race: a page a boat, with what the book holds of her on the day. Judges nothing, and
//! never says that she is fit to go.

mod cells;
mod fitting;
mod happened;
mod json;
mod markdown;
mod page;
mod seats;
mod sections;
mod text;
mod work;

pub use json::ready_json;
pub use markdown::ready_markdown;
pub use text::ready_text;

use super::Report;
use crate::history::Change;
use crate::model::Boat;
use crate::rules::Level;

/// What is told before a race.
#[derive(Clone, Copy, Debug)]
pub struct Ready<'r> {
    /// What came of the check as of the day.
    pub report: Report<'r>,
    /// The boats asked for, in the order of their pages.
    pub boats: &'r [&'r Boat],
    /// What changed since an earlier state, where that was asked.
    pub before: Option<Before<'r>>,
    /// The least level that stops a boat.
    pub gate: Level,
}

/// An earlier state, and what changed since.
#[derive(Clone, Copy, Debug)]
pub struct Before<'r> {
    /// What the state is called.
    pub called: &'r str,
    /// What changed, in every record.
    pub changes: &'r [Change],
}
