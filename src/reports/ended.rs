//! A check as other programs are told of it: what came of it, how it ended, and where its files lie
//! in the repository. Knows no format and no repository.

use super::Report;
use super::place::Places;
use super::place::Position;
use crate::model::Book;
use crate::model::FileId;
use crate::reading::CLUB_FILE;
use crate::rules::Finding;
use crate::rules::Level;

/// A check and how it ended.
#[derive(Clone, Copy, Debug)]
pub struct Ended<'r> {
    /// What came of it.
    pub report: Report<'r>,
    /// The book's folder below the top of its repository, as the store writes paths; empty where it
    /// is the top, or where there is no repository.
    pub below: &'r str,
    /// The least level that counts for the exit code.
    pub gate: Level,
    /// The exit code.
    pub exit_code: u8,
    /// What the user is told besides, ready to be shown.
    pub told: &'r [String],
    /// Whether findings that are waived are told too, where other programs would take them for
    /// ones that stand.
    pub show_waived: bool,
}

/// Where a program that must have one place may show a finding.
pub(super) struct Spot<'f> {
    pub(super) file: FileId,
    pub(super) start: Position,
    pub(super) end: Position,
    /// What is there; nothing where the finding itself has no place in the book.
    pub(super) label: Option<&'f str>,
}

/// The beginning of a file.
const FIRST: Position = Position { line: 1, column: 1, byte: 0 };

impl Ended<'_> {
    /// Returns whether a finding counts for the exit code.
    pub(super) fn gates(&self, finding: &Finding) -> bool {
        finding.stands() && finding.level >= self.gate
    }

    /// Returns a path of the book as one from the top of the repository.
    pub(super) fn path(&self, path: &str) -> String {
        match self.below {
            "" => path.to_owned(),
            below => format!("{below}/{path}"),
        }
    }

    /// Returns the path of a file, from the top of the repository; that of the club's settings
    /// where there is no such file.
    pub(super) fn path_of(&self, book: &Book, file: FileId) -> String {
        self.path(book.files.get(file.0).map_or(CLUB_FILE, |file| &file.path))
    }

    /// Returns the findings that other programs are told of, in their order.
    pub(super) fn findings(&self) -> impl Iterator<Item = &Finding> {
        let all = self.report.checked.findings.iter();
        all.filter(|finding| self.show_waived || finding.waived.is_none())
    }

    /// Returns whether there was any text to be checked.
    pub(super) const fn was_had(&self) -> bool {
        !self.report.book.files.is_empty()
    }

    /// Returns whether the question could be answered.
    pub(super) const fn was_checked(&self) -> bool {
        self.exit_code < 2
    }
}

/// Returns where a finding is shown: its first place in the book, else the file of its record, else
/// the club's settings. The program's own classes have no place in the book.
pub(super) fn spot<'f>(book: &Book, places: &Places, finding: &'f Finding) -> Spot<'f> {
    let in_book = |label: &&crate::rules::Label| !places.file(label.place).built_in;
    match finding.labels.iter().find(in_book) {
        Some(label) => Spot {
            file: label.place.file,
            start: places.start(label.place),
            end: places.end(label.place),
            label: Some(&label.text),
        },
        None => {
            let id = finding.name.as_str().split('/').next().unwrap_or_default();
            let file = file_of(book, id).or_else(|| settings(book));
            let file = file.unwrap_or(FileId(usize::MAX));
            Spot { file, start: FIRST, end: FIRST, label: None }
        }
    }
}

/// Returns the file of the boat, the oar set or the crew of this id.
pub(super) fn file_of(book: &Book, id: &str) -> Option<FileId> {
    let boats = book.boats.iter().map(|boat| (&boat.id.value, boat.file));
    let oar_sets = book.oar_sets.iter().map(|set| (&set.id.value, set.file));
    let crews = book.crews.iter().map(|crew| (&crew.id.value, crew.file));
    let mut records = boats.chain(oar_sets).chain(crews);
    records.find(|(own, _)| *own == id).map(|(_, file)| file)
}

fn settings(book: &Book) -> Option<FileId> {
    book.files.iter().position(|file| file.path == CLUB_FILE).map(FileId)
}

/// Returns a text of no more than so many characters; what was cut is marked.
pub(super) fn at_most(text: &str, characters: usize) -> String {
    match text.char_indices().nth(characters) {
        Some((at, _)) => format!("{} …", &text[..at]),
        None => text.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_long_text_is_cut_between_characters_and_says_so() {
        assert_eq!(at_most("Möwe", 2), "Mö …");
        assert_eq!(at_most("Möwe", 4), "Möwe");
    }
}
