//! Findings, rules and worked-out values as text and JSON.
//!
//! Turns what it is given into text and nothing else: it judges nothing, prints nothing, and
//! knows neither the clock nor the terminal. All text from outside passes through [`shown`].

mod aside;
mod brief;
mod card;
mod card_readings;
mod card_rows;
mod card_words;
mod cautions;
mod checked;
mod cutting;
mod difference;
mod excerpt;
mod explain;
mod figures;
mod figures_json;
mod figures_text;
mod folding;
mod json;
mod limit;
mod limit_layers;
mod look;
mod names_to_ask;
pub mod place;
mod putting_in;
mod schema;
mod settings;
pub mod shown;
mod spoken;
mod summary;
mod sums;
mod sums_in_full;
mod text;
mod verdict;

pub use brief::brief;
pub use card::card;
pub use cautions::{COLD_BENDING, NO_PERMISSION, WHERE_THE_SUMS_STOP};
pub use checked::text;
pub use difference::{Difference, diff_json, diff_markdown, diff_text};
pub use explain::{explain, rules};
pub use figures_json::figures_json;
pub use figures_text::figures_text;
pub use json::json;
pub use look::{Glyphs, Look};
pub use names_to_ask::names_to_ask;
pub use schema::{schema, schema_file};
pub use settings::settings;
pub use spoken::spoken;
pub use sums::{SumsAsked, sums};

use crate::model::Book;
use crate::rules::Checked;
use crate::units::Date;

/// What came of a check, with all that a report needs to tell it.
#[derive(Clone, Copy, Debug)]
pub struct Report<'r> {
    /// The book that was checked.
    pub book: &'r Book,
    /// What was found.
    pub checked: &'r Checked,
    /// The day that was taken for today.
    pub as_of: Date,
    /// The names that findings were asked for; all, where there are none.
    pub only: &'r [String],
}
