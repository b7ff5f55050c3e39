//! Records that may stand where nothing could be read: never told as missing.

use crate::model::Book;
use crate::model::FileId;
use crate::model::SourceFile;
use crate::reading::CLUB_FILE;
use crate::reading::WAIVERS_FILE;

/// Where a record may stand that was not found.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub(super) enum Unread<'b> {
    /// In a text that can't be had here.
    NotHere(&'b str),
    /// In a file that was looked at, of which nothing could be read.
    Broken(&'b str),
}

impl<'b> Unread<'b> {
    /// Returns the first such place of a book; none where every record was read.
    pub(super) fn of(book: &'b Book) -> Option<Self> {
        let not_here = book.unread.first().map(|path| Self::NotHere(path));
        not_here.or_else(|| broken(book).map(|file| Self::Broken(&file.path)))
    }

    /// Returns what was not read, in words.
    pub(super) fn what(self) -> String {
        match self {
            Self::NotHere(path) => format!("the text of {path}"),
            Self::Broken(path) => format!("the rest of {path}"),
        }
    }
}

/// Returns the first text in the crews' folder that can't be had here.
pub(super) fn crew(book: &Book) -> Option<Unread<'_>> {
    let is_crew = |path: &&String| {
        path.split('/').next().is_some_and(|top| top.eq_ignore_ascii_case("crews"))
    };
    book.unread.iter().find(is_crew).map(|path| Unread::NotHere(path))
}

/// Returns the first file that holds records and gave none that can be named.
fn broken(book: &Book) -> Option<&SourceFile> {
    let holds_records = |file: &SourceFile| ![CLUB_FILE, WAIVERS_FILE].contains(&&*file.path);
    let mut torn = book.files.iter().enumerate().filter(|(_, file)| !file.whole);
    let found =
        torn.find(|(number, file)| holds_records(file) && !is_record(book, FileId(*number)));
    found.map(|(_, file)| file)
}

/// Whether a file gave a record with an id; one without is called by its path.
fn is_record(book: &Book, file: FileId) -> bool {
    let boats = book.boats.iter().map(|boat| (boat.file, &boat.id));
    let sets = book.oar_sets.iter().map(|set| (set.file, &set.id));
    let crews = book.crews.iter().map(|crew| (crew.file, &crew.id));
    let classes = book.classes.iter().map(|class| (class.file, &class.id));
    let mut all = boats.chain(sets).chain(crews).chain(classes);
    all.any(|(own, id)| own == file && !id.value.contains('/'))
}
