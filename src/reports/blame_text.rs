//! Who set every value of a record, as text.

use super::look::Look;
use super::look::columns;
use super::shown;
use super::through_time::Blame;
use super::through_time::BlameRow;
use super::through_time::committed;
use super::through_time::words;
use crate::history::Key;

/// How wide the columns are: name, value, who, day, age.
const WIDTHS: [usize; 5] = [26, 14, 18, 12, 7];

/// Returns who set every value of a record, as a table.
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
    let heads = ["value of", "is", "set by, commit", "measured", "days"].map(ToOwned::to_owned);
    out.push_str(&format!("{}\n", look.heading().style(line(&heads, look))));
    for row in rows {
        out.push_str(&line(&cells(key, row), look));
        out.push('\n');
    }
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
    let who = match &row.made {
        Some(made) => format!("{} {}", made.short, made.author),
        None => "not committed yet".to_owned(),
    };
    let day = match (&row.set.measured, &row.made) {
        (Some(measured), _) => measured.on.to_string(),
        (None, Some(made)) => committed(made),
        (None, None) => "-".to_owned(),
    };
    let age = row.age.map_or_else(|| "-".to_owned(), |age| age.to_string());
    [name.to_owned(), value, who, day, age]
}

fn line(cells: &[String; 5], look: Look) -> String {
    let spare = look.width.saturating_sub(WIDTHS.iter().sum());
    let mut out = String::new();
    for (number, cell) in cells.iter().enumerate() {
        // What a wider terminal has to spare goes to the names, then to people.
        let room = WIDTHS[number] + [spare / 2, 0, spare - spare / 2, 0, 0][number];
        let text = cut(&look.words(&shown::line(cell)), room - 1, look);
        let blanks = " ".repeat(room - columns(&text));
        match number {
            4 => out.push_str(&format!("{}{text}", &blanks[1..])),
            _ => out.push_str(&format!("{text}{blanks}")),
        }
    }
    out.trim_end().to_owned()
}

/// Returns a text cut down to its column.
fn cut(text: &str, room: usize, look: Look) -> String {
    if columns(text) <= room {
        return text.to_owned();
    }
    let mark = look.cut();
    let mut kept = String::new();
    for c in text.chars() {
        kept.push(c);
        if columns(&kept) + columns(mark) > room {
            kept.pop();
            break;
        }
    }
    format!("{kept}{mark}")
}
