//! The record in each file of a book, looked up once: a book may hold a hundred thousand.

use std::collections::HashMap;

use crate::model::Boat;
use crate::model::Book;
use crate::model::Class;
use crate::model::Crew;
use crate::model::FileId;
use crate::model::OarSet;
use crate::reading::RecordKind;
use crate::store::WAIVERS_FILE;

/// A record of a book.
#[derive(Clone, Copy, Debug)]
pub(super) enum Record<'b> {
    Boat(&'b Boat),
    OarSet(&'b OarSet),
    Crew(&'b Crew),
    Class(&'b Class),
    Club,
    Waivers,
}

impl<'b> Record<'b> {
    pub(super) const fn kind(self) -> RecordKind {
        match self {
            Self::Boat(_) => RecordKind::Boat,
            Self::OarSet(_) => RecordKind::OarSet,
            Self::Crew(_) => RecordKind::Crew,
            Self::Class(_) => RecordKind::Class,
            Self::Club => RecordKind::Club,
            Self::Waivers => RecordKind::Waiver,
        }
    }

    /// Returns the id; of the club's settings and of the waivers, `club`.
    pub(super) fn id(self) -> &'b str {
        match self {
            Self::Boat(boat) => &boat.id.value,
            Self::OarSet(set) => &set.id.value,
            Self::Crew(crew) => &crew.id.value,
            Self::Class(class) => &class.id.value,
            Self::Club | Self::Waivers => "club",
        }
    }
}

/// The record in each file, the program's own classes left out.
pub(super) struct Known<'b>(HashMap<FileId, Record<'b>>);

impl<'b> Known<'b> {
    pub(super) fn of(book: &'b Book) -> Self {
        let boats = book.boats.iter().map(|own| (own.file, Record::Boat(own)));
        let sets = book.oar_sets.iter().map(|own| (own.file, Record::OarSet(own)));
        let crews = book.crews.iter().map(|own| (own.file, Record::Crew(own)));
        let classes = book.classes.iter().map(|own| (own.file, Record::Class(own)));
        let club = book.club.file.map(|file| (file, Record::Club));
        let numbered = book.files.iter().enumerate();
        let waivers = numbered
            .filter(|(_, source)| source.path == WAIVERS_FILE)
            .map(|(number, _)| (FileId(number), Record::Waivers));
        let all = boats.chain(sets).chain(crews).chain(classes).chain(club).chain(waivers);
        let mut known = HashMap::new();
        for (file, record) in all.filter(|(file, _)| !book.file(*file).built_in) {
            known.entry(file).or_insert(record);
        }
        Self(known)
    }

    /// Returns the record in a file; none where none could be read there.
    pub(super) fn get(&self, file: FileId) -> Option<Record<'b>> {
        self.0.get(&file).copied()
    }
}
