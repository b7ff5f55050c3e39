//! Opens and reads the book, once a command.

use std::path::Path;
use std::path::PathBuf;

use super::exit::Exit;
use super::output::Done;
use super::standard_input::TextGiven;
use crate::model::Boat;
use crate::model::Book;
use crate::reading;
use crate::reading::Fault;
use crate::reading::nearest;
use crate::reports::shown;
use crate::store;
use crate::store::CLUB_FILE;
use crate::store::Content;
use crate::store::Named;
use crate::store::Store;
use crate::store::StoreError;

/// A book that was read, and what the user should know besides.
pub(super) struct OpenBook {
    /// Where its files lie.
    pub(super) root: PathBuf,
    pub(super) book: Book,
    pub(super) faults: Vec<Fault>,
    pub(super) told: Vec<String>,
    /// Texts of the book that are not in the folder.
    pub(super) absent: Vec<String>,
    /// Files among the records that hold one, and are not read for their names.
    pub(super) strays: Vec<String>,
}

/// Opens and reads a book: the one in the folder given, else the one around the current folder.
///
/// # Errors
///
/// What the command comes to instead: the book can't be had, or `instead` is no text of it.
pub(super) fn open(given: Option<&Path>, instead: Option<TextGiven>) -> Result<OpenBook, Done> {
    let mut store = opened(given).map_err(|error| could_not(&error))?;
    if let Some(instead) = instead {
        instead.put_into(&mut store)?;
    }
    Ok(read(store))
}

/// Reads a book's texts, wherever they came from.
pub(super) fn read(store: Store) -> OpenBook {
    let told = besides(&store);
    let holds = |named: &&Named| matches!(&named.content, Content::Text(text) if reading::tells_a_record(text));
    let strays = store.strays.iter().filter(holds).map(|named| named.path.clone()).collect();
    let (root, absent) = (store.root, store.absent);
    let (mut book, faults) = reading::read(&store.name, store.files);
    book.unread.clone_from(&absent);
    OpenBook { root, book, faults, told, absent, strays }
}

impl OpenBook {
    /// Returns whether there is nothing that could be checked.
    pub(super) fn is_empty(&self) -> bool {
        let Book { boats, oar_sets, crews, .. } = &self.book;
        boats.is_empty() && oar_sets.is_empty() && crews.is_empty() && self.faults.is_empty()
    }

    /// Returns how many things could not be read, in words, where there are any.
    pub(super) fn unread(&self) -> Option<String> {
        let count = self.faults.len();
        let things = if count == 1 { "thing" } else { "things" };
        let told = format!("{count} {things} in this book can't be read; see tholebook lint");
        (count > 0).then_some(told)
    }

    /// Returns whether the club's settings could not be read as they stand.
    pub(super) fn settings_are_bad(&self) -> bool {
        let path = |fault: &Fault| &*self.book.file(fault.place.file).path;
        self.faults.iter().any(|fault| path(fault) == CLUB_FILE)
    }
}

pub(super) fn opened(given: Option<&Path>) -> Result<Store, StoreError> {
    match given {
        Some(folder) => store::open_folder(folder),
        None => store::open_folder(&store::find_book(Path::new("."))?),
    }
}

/// Words of the store keep to one line each, whatever a file's name holds.
pub(super) fn could_not(error: &StoreError) -> Done {
    let mut told = match error {
        StoreError::CannotRead { unread } => {
            unread.iter().map(|unread| format!("Could not read {unread}")).collect()
        }
        other => vec![other.to_string()],
    };
    told.push(error.help());
    Done::refused(Exit::NotChecked, told.iter().map(|line| shown::line(line)).collect())
}

fn besides(store: &Store) -> Vec<String> {
    let left_out = store.left_out.iter().map(|path| {
        format!(
            "Not read: {path}. Records are the files in boats, oars, crews and classes whose names \
             end in .yaml or .yml; not those in folders whose names begin with a dot."
        )
    });
    let warnings = store.warnings.iter().cloned();
    warnings.chain(left_out).map(|line| shown::line(&line)).collect()
}

impl OpenBook {
    /// Returns a boat by its id.
    ///
    /// # Errors
    ///
    /// What the command comes to instead: there is no such boat.
    pub(super) fn boat(&self, id: &str) -> Result<&Boat, Done> {
        self.book.boat(id).ok_or_else(|| {
            let ids: Vec<&str> = self.book.boats.iter().map(|boat| &*boat.id.value).collect();
            let known = match ids.as_slice() {
                [] => "This book has no boat that can be read.".to_owned(),
                ids => format!("There are {}.", shown::line(&ids.join(", "))),
            };
            self.refused(Exit::Usage, unknown("boat", id, &ids, &known))
        })
    }

    /// Returns what a command comes to that can't go on: why, beside what is to be told of the book.
    pub(super) fn refused(&self, exit: Exit, why: Vec<String>) -> Done {
        let mut told = self.told.clone();
        told.extend(why);
        told.extend(self.unread());
        Done::refused(exit, told)
    }
}

/// Returns the words for a name that nothing has, with the nearest one that something has.
pub(super) fn unknown(what: &str, written: &str, known: &[&str], else_see: &str) -> Vec<String> {
    let written_shown = shown::line(written);
    let offer = match nearest(written, known) {
        Some(known) => format!("Did you mean {}?", shown::line(known)),
        None => else_see.to_owned(),
    };
    vec![format!("There is no {what} called {written_shown}. {offer}")]
}
