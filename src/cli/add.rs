//! `add`: a new record, every field of it explained.

mod boat;
mod crew;
mod oars;

use super::arguments::Add;
use super::arguments::AddAt;
use super::arguments::AddWhat;
use super::book;
use super::book::OpenBook;
use super::exit::Exit;
use super::output::Done;
use super::saving;
use crate::reading;
use crate::reading::Fault;
use crate::reading::RecordKind;
use crate::reading::What;
use crate::reading::nearest;
use crate::reports;
use crate::reports::shown;
use crate::store::Named;
use crate::writing::blank::Blank;

/// How a class is called that holds as long as the book has none of its own.
const USUAL_CLASS: &str = "surfboat";

/// A record ready to be written.
struct New {
    kind: RecordKind,
    /// The folder of the book it belongs in.
    shelf: &'static str,
    id: String,
    blank: Blank,
    /// What the user should know of it, a line each.
    said: Vec<String>,
}

/// Runs the command.
pub(super) fn run(arguments: &Add) -> Done {
    let added = match &arguments.what {
        AddWhat::Boat(asked) => open(&asked.at).and_then(|open| {
            let new = boat::new(&open.book, asked)?;
            write(&open, new)
        }),
        AddWhat::Oars(asked) => open(&asked.at).and_then(|open| {
            let new = oars::new(&open.book, asked)?;
            write(&open, new)
        }),
        AddWhat::Crew(asked) => open(&asked.at).and_then(|open| {
            let new = crew::new(&open.book, asked)?;
            write(&open, new)
        }),
    };
    added.unwrap_or_else(|refused| refused)
}

fn open(at: &AddAt) -> Result<OpenBook, Done> {
    book::open(at.book.as_deref(), None)
}

/// Reads the record as it would stand, and writes it if nothing in it is wrong.
fn write(open: &OpenBook, mut new: New) -> Result<Done, Done> {
    new.blank.schema = schema(open, new.kind);
    let path = format!("{}/{}.yaml", new.shelf, new.id);
    let text = new.blank.text(new.kind);
    must_be_free(open, &new, &path)?;
    let (_, faults) = reading::read_alone(Named::text(&path, &text));
    let is_missing = |fault: &&Fault| matches!(fault.what, What::MissingKey { .. });
    if let Some(fault) = faults.iter().find(|fault| !is_missing(fault)) {
        return Err(refused(vec![format!("{}: {}", fault.name, fault.what), fault.what.help()]));
    }
    saving::save_new(open, &path, &text)
        .map_err(|why| Done::refused(Exit::NotChecked, vec![why]))?;
    let mut lines = vec![format!("{path} is written. An empty field is one not measured yet.")];
    lines.extend(new.said);
    let mut told = open.told.clone();
    let missing: Vec<String> = faults.iter().map(|fault| fault.name.to_string()).collect();
    if !missing.is_empty() {
        told.push(shown::line(&format!("Must still be written in it: {}", missing.join(", "))));
    }
    let result = lines.iter().map(|line| shown::line(line) + "\n").collect();
    Ok(Done { exit: Exit::Clear, result, told })
}

fn must_be_free(open: &OpenBook, new: &New, path: &str) -> Result<(), Done> {
    let book = &open.book;
    let file = match new.kind {
        RecordKind::Boat => book.boat(&new.id).map(|boat| boat.file),
        RecordKind::OarSet => book.oar_set(&new.id).map(|set| set.file),
        _ => book.crews.iter().find(|crew| crew.id.value == new.id).map(|crew| crew.file),
    };
    let taken = file.map(|file| &*book.file(file).path);
    let is_path = |own: &str| own.eq_ignore_ascii_case(path);
    let there = book.files.iter().map(|file| &*file.path).find(|own| is_path(own));
    match (taken, there) {
        (Some(taken), _) => {
            Err(refused(vec![format!("There is a {} already: {taken}", called(new))]))
        }
        (None, Some(there)) => Err(refused(vec![format!("There is a file already: {there}")])),
        (None, None) => Ok(()),
    }
}

fn called(new: &New) -> String {
    let what = match new.kind {
        RecordKind::OarSet => "set of oars",
        kind => kind.word(),
    };
    format!("{what} called {}", new.id)
}

/// Returns the path to a schema of the book, from a record on one of its shelves; none where the
/// book has no schemas.
fn schema(open: &OpenBook, kind: RecordKind) -> Option<String> {
    let below = format!("schema/{}", reports::schema_file(kind));
    open.root.join(&below).is_file().then(|| format!("../{below}"))
}

/// Refuses a name that nothing of this kind in the book has.
fn none_such(what: &str, written: &str, known: &[&str]) -> Done {
    let listed = match known {
        [] => format!("This book has no {what} yet."),
        known => format!("There are: {}", known.join(", ")),
    };
    let offer = nearest(written, known).map(|near| format!("Did you mean {near}?"));
    refused(vec![format!("There is no {what} called {written}."), offer.unwrap_or(listed)])
}

fn refused(mut told: Vec<String>) -> Done {
    told.push("Nothing is written.".to_owned());
    Done::refused(Exit::Usage, told.iter().map(|line| shown::line(line)).collect())
}
