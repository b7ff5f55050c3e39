//! Since when a finding stands, and where it was cured.

use serde::Serialize;

use super::json::FORMAT_VERSION;
use super::look::Look;
use super::shown;
use super::through_time::Made;
use super::through_time::committed;
use super::verdict::with_letter;
use crate::rules::Level;

/// The commits at which a finding came and went.
#[derive(Clone, Debug)]
pub struct Since {
    /// The name asked for.
    pub name: String,
    /// The rule.
    pub rule: &'static str,
    /// Each coming and going, the oldest first.
    pub rows: Vec<FoundRow>,
    /// Whether the finding stands at the end of the history.
    pub stands: bool,
    /// Why the history is not whole, and what helps; none where it is.
    pub cut: Option<String>,
}

/// A commit at which a finding came or went; none for what is not committed yet.
#[derive(Clone, Debug)]
pub struct FoundRow {
    /// The record.
    pub name: String,
    /// The commit.
    pub made: Option<Made>,
    /// How much it mattered; none where it was cured.
    pub level: Option<Level>,
    /// Whether the club lived with it there: it was waived.
    pub waived: bool,
    /// Whether it was found just before, too.
    pub stood: bool,
}

#[derive(Serialize)]
struct SinceJson<'r> {
    format_version: u32,
    name: &'r str,
    rule: &'r str,
    rows: Vec<FoundJson<'r>>,
    stands: bool,
    complete: bool,
}

#[derive(Serialize)]
struct FoundJson<'r> {
    name: &'r str,
    kind: &'static str,
    commit: Option<&'r str>,
    author: Option<&'r str>,
    committed_on: Option<String>,
    level: Option<&'static str>,
    waived: bool,
    at_the_edge: bool,
}

impl FoundRow {
    fn kind(&self) -> &'static str {
        match self.level {
            Some(_) if self.stood && self.waived => "waived",
            Some(_) => "found",
            None => "cured",
        }
    }

    /// Returns what happened; `first` is whether nothing was found before.
    pub(super) fn what(&self, first: bool) -> String {
        let Some(level) = self.level else { return "cured".to_owned() };
        let how = match (self.stood, self.waived) {
            (true, true) => "waived from here on",
            (true, false) => "not waived any more",
            (false, _) if first => "first found",
            (false, _) => "found again",
        };
        let waived = if self.waived && !self.stood { " (waived)" } else { "" };
        format!("{how}: {}{waived}", with_letter(level))
    }

    pub(super) fn day(&self) -> String {
        self.made.as_ref().map_or_else(|| "not committed yet".to_owned(), committed)
    }

    pub(super) fn who(&self) -> String {
        let by = |made: &Made| match &made.committer {
            Some(by) => format!("{} written by {}, committed by {by}", made.short, made.author),
            None => format!("{} by {}", made.short, made.author),
        };
        self.made.as_ref().map(by).unwrap_or_default()
    }
}

/// Returns since when a finding stands as text.
#[must_use]
pub fn since_text(since: &Since, look: Look) -> String {
    let title = format!("{} {}", shown::line(&since.name), since.rule);
    let mut out = format!("{}\n\n", look.heading().style(title));
    if since.rows.is_empty() {
        out.push_str("Never found there.\n");
    }
    for (number, row) in since.rows.iter().enumerate() {
        let what = row.what(number == 0);
        let line = format!("{}  {what}  {}", row.day(), row.who());
        out.push_str(look.hanging(&shown::line(&line), "", "    ").trim_end());
        out.push('\n');
    }
    if !since.rows.is_empty() {
        let waived = since.rows.last().is_some_and(|row| row.waived);
        out.push_str(match (since.stands, waived) {
            (true, true) => "It stands, waived.\n",
            (true, false) => "It stands.\n",
            (false, _) => "It does not stand any more.\n",
        });
    }
    if let Some(cut) = &since.cut {
        out.push('\n');
        out.push_str(&look.wrapped(cut, ""));
        out.push('\n');
    }
    out
}

/// Returns since when a finding stands as JSON.
#[must_use]
pub fn since_json(since: &Since) -> String {
    shown::json(&SinceJson {
        format_version: FORMAT_VERSION,
        name: &since.name,
        rule: since.rule,
        rows: since.rows.iter().map(found_json).collect(),
        stands: since.stands,
        complete: since.cut.is_none(),
    })
}

fn found_json(row: &FoundRow) -> FoundJson<'_> {
    let made = row.made.as_ref();
    FoundJson {
        name: &row.name,
        kind: row.kind(),
        commit: made.map(|made| &*made.commit),
        author: made.map(|made| &*made.author),
        committed_on: made.and_then(|made| made.committed_on).map(|day| day.to_string()),
        level: row.level.map(Level::word),
        waived: row.waived,
        at_the_edge: made.is_some_and(|made| made.is_edge),
    }
}

/// Returns since when a finding stands as a Markdown table.
#[must_use]
pub fn since_markdown(since: &Since) -> String {
    let cell = super::cell::cell;
    let mut out = format!("### {} {}\n\n", cell(&since.name), since.rule);
    out.push_str("| committed | commit | what happened |\n| --- | --- | --- |\n");
    for (number, row) in since.rows.iter().enumerate() {
        let what = row.what(number == 0);
        out.push_str(&format!("| {} | {} | {what} |\n", cell(&row.day()), cell(&row.who())));
    }
    if let Some(cut) = &since.cut {
        out.push_str(&format!("\n{}\n", cell(cut)));
    }
    out
}
