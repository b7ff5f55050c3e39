//! Findings, rules and worked-out values as text and JSON.
//!
//! Turns what it is given into text and nothing else: it judges nothing, prints nothing, and
//! knows neither the clock nor the terminal. All text from outside passes through [`shown`].

mod aside;
mod blame_text;
mod blank;
mod brief;
mod card;
mod card_readings;
mod card_rows;
mod card_words;
mod cautions;
mod cell;
mod changed_lines;
mod chart;
mod checked;
mod checkup;
mod concerning;
mod cutting;
mod difference;
mod drawings;
mod drifting;
mod ended;
mod excerpt;
mod explain;
mod figures;
mod figures_json;
mod figures_text;
mod fitting_json;
mod fitting_text;
mod fitting_words;
mod folding;
mod github;
mod how_to_measure;
mod html;
mod json;
mod junit;
mod limit;
mod limit_layers;
mod look;
mod markdown;
mod matching_grid;
mod matching_json;
mod matching_markdown;
mod matching_rows;
mod matching_text;
mod matching_words;
mod measuring;
mod names_to_ask;
mod pages;
pub mod place;
mod plain_lines;
mod putting_in;
mod ready;
mod said;
mod sarif;
mod schema;
mod settings;
mod sheet;
pub mod shown;
mod since;
mod spoken;
mod stopping;
mod summary;
mod sums;
mod sums_in_full;
mod telling;
mod telling_json;
mod text;
mod through_time;
mod through_time_json;
mod through_time_markdown;
mod through_time_spoken;
mod timeline_text;
mod verdict;
mod waivers;
mod worklist_json;
mod worklist_text;

pub use blame_text::blame_text;
pub use blank::{Asked, blank_sheet};
pub use brief::brief;
pub use card::card;
pub use cautions::{COLD_BENDING, NO_PERMISSION, WHERE_THE_SUMS_STOP};
pub use changed_lines::changed_lines;
pub use checked::text;
pub use checkup::{LookedAt, Standing, checkup_json, checkup_text};
pub use concerning::concerns;
pub use difference::{Difference, diff_json, diff_markdown, diff_text};
pub use drawings::{Called, Drawing, drawings, sentence, sketches};
pub use drifting::{Drifting, Objection};
pub use ended::Ended;
pub use explain::{explain, rules};
pub use figures_json::figures_json;
pub use figures_text::figures_text;
pub use fitting_json::fitting_json;
pub use fitting_text::fitting_text;
pub use github::github;
pub use how_to_measure::how_to_measure;
pub use json::json;
pub use junit::junit;
pub use look::{Glyphs, Look};
pub use markdown::markdown;
pub use matching_json::matching_json;
pub use matching_markdown::matching_markdown;
pub use matching_text::{matching_seats, matching_text};
pub use measuring::{MeasuredRow, measuring_screen, verdict_beside};
pub use names_to_ask::names_to_ask;
pub use pages::{BookPast, NamedPage, Pages, RecordPast, SetBy, pages};
pub use plain_lines::plain_lines;
pub use ready::{Before, Ready, ready_json, ready_markdown, ready_text};
pub use sarif::sarif;
pub use schema::{schema, schema_file};
pub use settings::settings;
pub use sheet::{AtCommit, sheet};
pub use since::{FoundRow, Since, since_json, since_markdown, since_text};
pub use spoken::spoken;
pub use stopping::stopping;
pub use sums::{SumsAsked, sums};
pub use through_time::{Blame, BlameRow, Made, Points, Timeline, TimelineRow};
pub use through_time_json::{blame_json, timeline_json};
pub use through_time_markdown::{blame_markdown, timeline_markdown};
pub use through_time_spoken::{blame_spoken, since_spoken, timeline_spoken};
pub use timeline_text::timeline_text;
pub use verdict::Verdict;
pub use waivers::{WaiverRow, waivers};
pub use worklist_json::worklist_json;
pub use worklist_text::worklist_text;

use crate::model::Book;
use crate::rules::Checked;
use crate::rules::Finding;
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
    /// The earlier check that the findings were held against, where there was one.
    pub earlier: Option<Earlier<'r>>,
}

/// An earlier check of the book.
#[derive(Clone, Copy, Debug)]
pub struct Earlier<'r> {
    /// What the state is called that was checked.
    pub called: &'r str,
    /// The book as it was.
    pub book: &'r Book,
    /// What was found there and is mended.
    pub cured: &'r [Finding],
    /// How many findings went away with their records: mended or not, nobody knows.
    pub gone: usize,
}
