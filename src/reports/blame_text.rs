//! Who set every value of a record, as text.

use std::cmp::Reverse;

use super::look::Look;
use super::look::columns;
use super::shown;
use super::through_time::Blame;
use super::through_time::BlameRow;
use super::through_time::Made;
use super::through_time::by_whom;
use super::through_time::words;
use crate::history::Key;

/// How wide the columns are: name, value, day, age, commit.
const WIDTHS: [usize; 5] = [34, 15, 11, 6, 14];

/// Returns who set every value of a record: a table, then the commits it names.
#[must_use]
pub fn blame_text(blame: &Blame, look: Look) -> String {
    let mut out = String::new();
    for (key, rows) in &blame.records {
        if !out.is_empty() {
            out.push('\n');
        }
        out.push_str(&record(key, rows, blame, look));
    }
    if let Some(cut) = &blame.cut {
        out.push('\n');
        out.push_str(&look.wrapped(cut, ""));
        out.push('\n');
    }
    out
}

fn record(key: &Key, rows: &[BlameRow], blame: &Blame, look: Look) -> String {
    let mut out = format!("{}\n\n", look.heading().style(shown::line(&key.id)));
    if rows.is_empty() {
        out.push_str(&nothing(blame));
        return out;
    }
    let heads = ["value of", "is", "measured", "days", "set by"].map(ToOwned::to_owned);
    out.push_str(&format!("{}\n", look.heading().style(line(&heads, look))));
    for row in rows {
        out.push_str(&line(&cells(key, row), look));
        out.push('\n');
    }
    out.push('\n');
    out.push_str(&commits(rows, look));
    out
}

fn nothing(blame: &Blame) -> String {
    match blame.older_than {
        Some(days) => format!("No value is older than {days} days.\n"),
        None => "No value stands there.\n".to_owned(),
    }
}

fn cells(key: &Key, row: &BlameRow) -> [String; 5] {
    let name = row.set.name.as_str();
    let name = name.strip_prefix(&*key.id).and_then(|rest| rest.strip_prefix('/')).unwrap_or(name);
    let value = row.set.value.as_ref().map_or_else(|| "unreadable".to_owned(), words);
    let measured = row.set.measured.as_ref();
    let day = measured.map_or_else(|| "-".to_owned(), |measured| measured.on.to_string());
    let age = row.age_words().map_or_else(|| "-".to_owned(), |age| age.replace(" ", ""));
    let commit = row.made.as_ref().map_or("not committed", |made| &*made.short);
    [name.to_owned(), value, day, age, commit.to_owned()]
}

/// Returns every commit of the table, the newest first.
fn commits(rows: &[BlameRow], look: Look) -> String {
    let mut commits: Vec<&Made> = rows.iter().filter_map(|row| row.made.as_ref()).collect();
    commits.sort_by_key(|made| (Reverse(made.committed_on), &made.commit));
    commits.dedup();
    let mut out = String::new();
    for made in commits {
        let told = format!("{}  {}", made.short, by_whom(made));
        out.push_str(&look.hanging(&shown::line(&told), "", "          "));
        out.push('\n');
    }
    if rows.iter().any(|row| row.made.is_none()) {
        out.push_str(&look.wrapped("Values not committed yet are those in the folder.", ""));
        out.push('\n');
    }
    if rows.iter().any(|row| row.may_be_older) {
        out.push_str(&look.wrapped("≥: at least so many days; it may be older.", ""));
        out.push('\n');
    }
    out
}

fn line(cells: &[String; 5], look: Look) -> String {
    let spare = look.width.saturating_sub(WIDTHS.iter().sum());
    let mut out = String::new();
    for (number, cell) in cells.iter().enumerate() {
        // What a wider terminal has to spare goes to the names, then to the values.
        let room = WIDTHS[number] + [spare - spare / 2, spare / 2, 0, 0, 0][number];
        let text = look.cut_to(&look.words(&shown::line(cell)), room - 1);
        let blanks = " ".repeat(room - 1 - columns(&text));
        match number {
            3 => out.push_str(&format!("{blanks}{text} ")),
            _ => out.push_str(&format!("{text}{blanks} ")),
        }
    }
    out.trim_end().to_owned()
}
