//! A book narrowed to what the rules about one boat look at: else the work of each boat of a fleet
//! would be planned by looking at all of them. Places keep their meaning.

use std::collections::BTreeSet;

use crate::model::Boat;
use crate::model::Book;
use crate::model::FileId;
use crate::model::SourceFile;
use crate::reading::Fault;

/// The files of a book that are no boat's, no oar set's and no crew's.
pub(super) struct Common(BTreeSet<FileId>);

impl Common {
    pub(super) fn of(book: &Book) -> Self {
        let boats = book.boats.iter().map(|boat| boat.file);
        let sets = book.oar_sets.iter().map(|set| set.file);
        let records: BTreeSet<FileId> =
            boats.chain(sets).chain(book.crews.iter().map(|crew| crew.file)).collect();
        Self((0..book.files.len()).map(FileId).filter(|id| !records.contains(id)).collect())
    }

    /// Returns the book with one boat, her oars, the boats that share them and the crews of all
    /// these; and what was told of their files while they were read.
    pub(super) fn around(&self, book: &Book, faults: &[Fault], boat: &Boat) -> (Book, Vec<Fault>) {
        let mut own = records(book, boat);
        let mut files = self.0.clone();
        files.extend(own.boats.iter().map(|boat| boat.file));
        files.extend(own.oar_sets.iter().map(|set| set.file));
        files.extend(own.crews.iter().map(|crew| crew.file));
        let file = |(at, file): (usize, &SourceFile)| {
            if files.contains(&FileId(at)) {
                return file.clone();
            }
            let (path, text, written) = (file.path.clone(), String::new(), Vec::new());
            SourceFile { path, text, written, ..*file }
        };
        own.files = book.files.iter().enumerate().map(file).collect();
        let faults = faults.iter().filter(|fault| files.contains(&fault.place.file)).cloned();
        (own.indexed(), faults.collect())
    }
}

fn records(book: &Book, boat: &Boat) -> Book {
    let set = boat.oars.as_ref().map(|set| &set.value);
    let of_set = |other: &Boat| set.is_some() && other.oars.as_ref().map(|set| &set.value) == set;
    let mut own = Book::default();
    own.name.clone_from(&book.name);
    own.club = book.club.clone();
    own.classes.clone_from(&book.classes);
    own.waivers.clone_from(&book.waivers);
    own.unread.clone_from(&book.unread);
    own.readings = book.readings;
    let boats = book.boats.iter();
    own.boats =
        boats.filter(|other| other.id.value == boat.id.value || of_set(other)).cloned().collect();
    let sets = book.oar_sets.iter();
    own.oar_sets = sets.filter(|other| Some(&other.id.value) == set).cloned().collect();
    let rowed = |id: &str| own.boats.iter().any(|boat| boat.id.value == id);
    let crews = book.crews.iter();
    let crews = crews.filter(|crew| crew.boat.as_ref().is_some_and(|boat| rowed(&boat.value)));
    own.crews = crews.cloned().collect();
    own
}
