//! The values of a book by record, free of layout. Knows no other book.
//!
//! A record is known by its kind and its id; in which file it stands makes no difference.
//! Worked-out values follow from the others and are left out, and so are the keys that only say
//! which record, seat or oar it is.

use super::grouping::Grouping;
use super::known::Known;
use super::known::Record;
use super::measured::Measuring;
use super::value::Value;
use crate::model::Book;
use crate::model::FileId;
use crate::model::Name;
use crate::model::Place;
use crate::model::Said;
use crate::model::Written;
use crate::reading::RecordKind;

/// The values of one record, in the order of the format.
#[derive(Clone, Debug)]
pub struct RecordValues<'b> {
    /// The kind of the record.
    pub kind: RecordKind,
    /// The id; of the club's settings and of the waivers, `club`.
    pub id: String,
    /// The file it stands in.
    pub file: FileId,
    /// Whether the file could be read to its end; if not, what seems missing may only be unread.
    pub whole: bool,
    /// The values.
    pub values: Vec<Value<'b>>,
    /// Names of seats, oars and parts of lists whose own number or id can't be read.
    pub nameless: Vec<Name>,
}

impl<'b> RecordValues<'b> {
    /// Returns the name of the record.
    #[must_use]
    pub fn name(&self) -> Name {
        Name::record(&self.id)
    }

    /// Returns whether the record's own id can't be read, so that it goes by its file's name.
    #[must_use]
    pub fn is_nameless(&self) -> bool {
        self.nameless.contains(&self.name().at(self.kind.telling_key()))
    }

    /// Returns a value by its name; of two of one name, the first.
    #[must_use]
    pub fn get(&self, name: &Name) -> Option<&Value<'b>> {
        self.values.iter().find(|value| value.name == *name)
    }

    /// Returns the place that stands for the whole record.
    #[must_use]
    pub fn place(&self, book: &Book) -> Option<Place> {
        book.written_in(self.file).first().map(|written| written.place)
    }
}

/// Returns the values of every record of a book, by kind and id; of two of one kind and id, in
/// the order of their files. The program's own classes are none of the book's.
#[must_use]
pub fn of_book(book: &Book) -> Vec<RecordValues<'_>> {
    let known = Known::of(book);
    let files = (0..book.files.len()).map(FileId);
    let of_file = |file| known.get(file).map(|record| of_known(book, file, record));
    let mut records: Vec<RecordValues> = files.filter_map(of_file).collect();
    records.sort_by(|one, other| (one.kind, &one.id).cmp(&(other.kind, &other.id)));
    records
}

/// Returns the values of one record; of two of one kind and id, of the first.
#[must_use]
pub fn of_record<'b>(book: &'b Book, kind: RecordKind, id: &str) -> Option<RecordValues<'b>> {
    let known = Known::of(book);
    let mut files = (0..book.files.len()).map(FileId);
    files.find_map(|file| {
        let record = known.get(file).filter(|own| own.kind() == kind && own.id() == id)?;
        Some(of_known(book, file, record))
    })
}

/// Returns the values of the record in a file; none where no record could be read there, and none
/// of the program's own classes.
#[must_use]
pub fn of_file(book: &Book, file: FileId) -> Option<RecordValues<'_>> {
    Known::of(book).get(file).map(|record| of_known(book, file, record))
}

fn of_known<'b>(book: &'b Book, file: FileId, known: Record<'b>) -> RecordValues<'b> {
    let (kind, id) = (known.kind(), known.id());
    let mut record = RecordValues {
        kind,
        id: id.to_owned(),
        file,
        whole: book.file(file).whole,
        values: Vec::new(),
        nameless: Vec::new(),
    };
    let mut grouping = Grouping::new(kind, id);
    let measuring = Measuring::of(book, known);
    for written in book.written_in(file) {
        take(&mut record, book, &mut grouping, written);
    }
    for value in &mut record.values {
        value.measured = measuring.of_value(&value.name);
    }
    record
}

/// Adds one written value to its record: to the list it belongs to, or as a new one.
fn take<'b>(
    record: &mut RecordValues<'b>,
    book: &'b Book,
    grouping: &mut Grouping,
    written: &'b Written,
) {
    let group = grouping.of(&written.name);
    if group.is_worked_out(&written.name) {
        return;
    }
    if grouping.is_identity(&group, &written.name) {
        if written.said == Said::Unread {
            record.nameless.push(written.name.clone());
        }
        return;
    }
    let text = text_of(book, written);
    match record.values.last_mut() {
        Some(last) if last.name == written.name && last.group == group => last.add(written, text),
        _ => record.values.push(Value::new(written, text, group)),
    }
}

fn text_of<'b>(book: &'b Book, written: &'b Written) -> &'b str {
    match &written.said {
        Said::Text(text) => text,
        _ => {
            let span = written.place.span;
            book.file(written.place.file).text.get(span.start..span.end).unwrap_or_default()
        }
    }
}
