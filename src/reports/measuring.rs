//! What whoever measures sees: what is asked together, with the last values; the verdict beside each.

use super::look::Look;
use super::look::columns;
use super::shown;
use crate::model::Book;
use crate::model::Name;
use crate::model::Place;
use crate::rules::Checked;
use crate::rules::Finding;
use crate::rules::Sum;

/// One value of what is asked together.
#[derive(Clone, Debug, Default, Eq, PartialEq)]
pub struct MeasuredRow {
    /// What it is called.
    pub what: String,
    /// What the record says; nothing where it was never measured.
    pub last: String,
    /// The day of that.
    pub on: String,
    /// Who read it.
    pub by: String,
    /// What was read today.
    pub now: String,
}

/// Returns what is asked together, under its heading, as a table.
#[must_use]
pub fn measuring_screen(heading: &str, rows: &[MeasuredRow], look: Look) -> String {
    let head = ["", "last", "read on", "by", "today"].map(str::to_owned);
    let cells = |row: &MeasuredRow| {
        [&row.what, &row.last, &row.on, &row.by, &row.now].map(|text| shown::line(text))
    };
    let table: Vec<[String; 5]> = std::iter::once(head).chain(rows.iter().map(cells)).collect();
    let width = |column: usize| table.iter().map(|row| columns(&row[column])).max().unwrap_or(0);
    let widths: Vec<usize> = (0..5).map(width).collect();
    let line = |row: &[String; 5]| {
        let pad = |(cell, width): (&String, &usize)| {
            format!("{cell}{}  ", " ".repeat(width - columns(cell)))
        };
        let cells: String = row.iter().zip(&widths).map(pad).collect();
        format!("  {}\n", cells.trim_end())
    };
    let table: String = table.iter().map(line).collect();
    look.words(&format!("\n{}\n{table}", shown::line(heading)))
}

/// Rules that hold a record against itself and say nothing of what was just read.
const ABOUT_THE_RECORD: [&str; 3] = ["sum-wrong", "sum-missing", "tool-too-coarse"];

/// So many clear values are told beside a reading.
const CLEAR: usize = 2;

/// Returns what the rules say of a value: each finding it takes part in, the worst first, else what is
/// clear; and whether one of them is a danger.
#[must_use]
pub fn verdict_beside(
    book: &Book,
    (checked, sums): (&Checked, &[Sum]),
    name: &Name,
    look: Look,
) -> (String, bool) {
    let places: Vec<Place> =
        book.written().filter(|own| own.name == *name).map(|own| own.place).collect();
    let is_here = |place: Place| places.iter().any(|own| overlap(*own, place));
    let about = |finding: &&Finding| {
        let takes_part = finding.labels.iter().any(|label| is_here(label.place));
        (takes_part || finding.name.is_within(name.as_str()))
            && !ABOUT_THE_RECORD.contains(&finding.rule.id)
    };
    let found: Vec<&Finding> = checked.findings.iter().filter(about).collect();
    let danger = found.iter().any(|finding| finding.level == crate::rules::Level::Danger);
    let lines = if found.is_empty() {
        let clear = sums.iter().filter(|sum| {
            sum.value.parts().iter().any(|part| is_here(part.input.place))
                && !ABOUT_THE_RECORD.contains(&sum.rule.id)
        });
        let mut clear: Vec<String> =
            clear.map(|sum| format!("{} {}", sum.rule.id, sum.result())).collect();
        // A spare that is as thick as the seat's oar clears by as much.
        clear.dedup();
        clear.truncate(CLEAR);
        if clear.is_empty() { Vec::new() } else { vec![format!("clear: {}", clear.join("; "))] }
    } else {
        found.iter().map(|finding| told(finding)).collect()
    };
    let line = |line: &String| format!("{}\n", look.hanging(&shown::line(line), "    ", "      "));
    (lines.iter().map(line).collect(), danger)
}

fn told(finding: &Finding) -> String {
    let level = super::verdict::with_letter(finding.level);
    format!("{level} {}: {}", finding.rule.id, finding.message)
}

fn overlap(one: Place, other: Place) -> bool {
    one.file == other.file && one.span.start < other.span.end && other.span.start < one.span.end
}
