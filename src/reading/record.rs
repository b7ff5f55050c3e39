//! Named texts into the book: which kind of record each is, and all of them together.

use rayon::prelude::*;

use super::boat::boat;
use super::class::class;
use super::club::club;
use super::club::waiver;
use super::crew::crew;
use super::fault::Fault;
use super::fault::What;
use super::field::field;
use super::form::Described;
use super::form::Naming;
use super::nearest::nearest;
use super::oars::oar_set;
use super::section::Section;
use super::section::stands_for;
use super::section::text_of;
use super::sheet::Found;
use super::sheet::Sheet;
use super::tree;
use super::tree::Entry;
use super::tree::Node;
use super::tree::Shape;
use super::tree::Tree;
use super::tree::TreeFault;
use super::tree::TreeFaultKind;
use crate::model::Boat;
use crate::model::Book;
use crate::model::Class;
use crate::model::Club;
use crate::model::Crew;
use crate::model::FileId;
use crate::model::Name;
use crate::model::OarSet;
use crate::model::SourceFile;
use crate::model::Span;
use crate::model::Waiver;
use crate::store::CLUB_FILE;
use crate::store::Content;
use crate::store::MAX_FILE_BYTES;
use crate::store::Named;
use crate::store::Refusal;
use crate::store::WAIVERS_FILE;

/// The classes that are part of the program: path and text.
const BUILT_IN: [(&str, &str); 1] =
    [("built-in/surfboat.yaml", include_str!("classes/surfboat.yaml"))];

/// A kind of record.
#[derive(Clone, Copy, Debug, Eq, Hash, Ord, PartialEq, PartialOrd)]
pub enum RecordKind {
    /// A crew.
    Crew,
    /// An oar set.
    OarSet,
    /// A boat.
    Boat,
    /// A class.
    Class,
    /// The club's settings.
    Club,
    /// A waiver.
    Waiver,
}

/// A key that tells the kind of a record, and the kind.
type Telling = (&'static str, RecordKind);

impl RecordKind {
    /// Every kind and the word it is asked for by.
    pub const ALL: [(Self, &'static str); 6] = [
        (Self::Boat, "boat"),
        (Self::OarSet, "oar-set"),
        (Self::Crew, "crew"),
        (Self::Class, "class"),
        (Self::Club, "club"),
        (Self::Waiver, "waivers"),
    ];

    /// Returns the word.
    #[must_use]
    pub fn word(self) -> &'static str {
        Self::ALL.iter().find(|(kind, _)| *kind == self).map_or("", |(_, word)| word)
    }

    /// Returns the key that tells a record of this kind and holds its id; nothing where the file
    /// tells it.
    #[must_use]
    pub fn telling_key(self) -> &'static str {
        TELLING.iter().find(|(_, kind)| *kind == self).map_or("", |(key, _)| key)
    }
}

/// The keys that tell the kind of a record, the first that is present wins.
const TELLING: [Telling; 4] = [
    ("crew", RecordKind::Crew),
    ("oar-set", RecordKind::OarSet),
    ("boat", RecordKind::Boat),
    ("class", RecordKind::Class),
];

/// What one file says.
enum Record {
    Crew(Crew),
    OarSet(OarSet),
    Boat(Box<Boat>),
    Class(Class),
    Club(Box<Club>),
    Waivers(Vec<Waiver>),
    Nothing,
}

/// Reads every text of a book.
///
/// What can't be read is told in the list of faults, in the order of the files; the rest of the
/// book is read all the same.
#[must_use]
pub fn read(name: &str, texts: Vec<Named>) -> (Book, Vec<Fault>) {
    let built_in = BUILT_IN.iter().map(|(path, text)| (true, Named::text(path, text)));
    let all: Vec<_> = built_in.chain(texts.into_iter().map(|named| (false, named))).collect();
    let read: Vec<_> = all
        .into_par_iter()
        .enumerate()
        .map(|(number, (built_in, named))| file(FileId(number), built_in, named))
        .collect();
    together(name, read)
}

/// Returns whether a text begins a line with a key that tells the kind of a record. It is not read.
#[must_use]
pub fn tells_a_record(text: &str) -> bool {
    let tells = |line: &str| {
        let (key, _) = line.split_once(':').unwrap_or_default();
        TELLING.iter().any(|(telling, _)| *telling == key.trim_end())
    };
    text.trim_start_matches('\u{feff}').lines().any(tells)
}

/// Reads one text by itself, without the classes that are part of the program.
#[must_use]
pub fn read_alone(text: Named) -> (Book, Vec<Fault>) {
    together("", vec![file(FileId(0), false, text)])
}

fn together(name: &str, read: Vec<(SourceFile, Record, Found)>) -> (Book, Vec<Fault>) {
    let mut book = Book::default();
    name.clone_into(&mut book.name);
    let mut faults = Vec::new();
    book.files.reserve_exact(read.len());
    for (source, record, found) in read {
        book.files.push(source);
        book.readings += found.readings;
        faults.extend(found.faults);
        keep(&mut book, record);
    }
    (book.indexed(), faults)
}

fn keep(book: &mut Book, record: Record) {
    match record {
        Record::Crew(crew) => book.crews.push(crew),
        Record::OarSet(set) => book.oar_sets.push(set),
        Record::Boat(boat) => book.boats.push(*boat),
        Record::Class(class) => book.classes.push(class),
        Record::Club(club) => book.club = *club,
        Record::Waivers(waivers) => book.waivers.extend(waivers),
        Record::Nothing => {}
    }
}

fn file(id: FileId, built_in: bool, named: Named) -> (SourceFile, Record, Found) {
    let Named { path, content } = named;
    let (text, refused) = match content {
        Content::Text(text) => (text, None),
        Content::Refused(refusal) => refused(refusal),
    };
    let (record, mut found, whole) = match refused {
        Some((what, span)) => (Record::Nothing, refusal(id, &path, what, span), false),
        None => text_of_file(id, &path, &text),
    };
    let mut written = std::mem::take(&mut found.written);
    // Most of a book's memory is this.
    written.shrink_to_fit();
    (SourceFile { path, text, built_in, whole, written }, record, found)
}

/// Tells why bytes that were read are no text, and what of them can be shown.
fn refused(refusal: Refusal) -> (String, Option<(What, Span)>) {
    let nowhere = Span { start: 0, end: 0 };
    match refusal {
        Refusal::Link => (String::new(), Some((What::Link, nowhere))),
        Refusal::NotUtf8 { at, lossy } => {
            let width = lossy[at..].chars().next().map_or(0, char::len_utf8);
            let span = Span { start: at, end: at + width };
            (lossy, Some((What::NotUtf8 { at: at + 1 }, span)))
        }
        Refusal::TooLarge { bytes } => {
            let what = What::FileTooLarge { bytes, most: MAX_FILE_BYTES };
            (String::new(), Some((what, nowhere)))
        }
    }
}

fn refusal(id: FileId, path: &str, what: What, span: Span) -> Found {
    let sheet = Sheet::new(id, "", false);
    let name = path_name(path);
    sheet.tell(what, &name, span, None);
    sheet.into_found(&name)
}

/// Returns what one text says, what was found in it, and whether it could be read to its end.
fn text_of_file(id: FileId, path: &str, text: &str) -> (Record, Found, bool) {
    let Tree { root, faults, complete } = tree::read(text);
    let sheet = Sheet::new(id, text, complete);
    let telling = root.as_ref().and_then(|root| telling(root, &faults));
    let name = record_name(path, root.as_ref(), telling);
    for fault in faults {
        if matches!(fault.what, TreeFaultKind::KeyTwice { .. }) {
            sheet.keep_twice(fault);
        } else {
            sheet.tell(What::Tree(fault.what), &name, fault.at, fault.also);
        }
    }
    let record = root.map_or(Record::Nothing, |root| record(&sheet, path, &name, telling, &root));
    (record, sheet.into_found(&name), complete)
}

/// Returns the key that tells the kind of a record, and the kind. A key given twice tells it too.
fn telling(root: &Node, faults: &[TreeFault]) -> Option<Telling> {
    let Shape::Map(entries) = &root.shape else { return None };
    let is_below = |at: Span| {
        let within = |of: Span| of.start <= at.start && at.end <= of.end;
        entries.iter().any(|entry| within(entry.value.span))
    };
    let is_twice = |key: &str, fault: &TreeFault| match &fault.what {
        TreeFaultKind::KeyTwice { key: twice } => twice == key && !is_below(fault.at),
        _ => false,
    };
    let has = |key: &str| {
        entries.iter().any(|entry| entry.key == key)
            || faults.iter().any(|fault| is_twice(key, fault))
    };
    TELLING.into_iter().find(|(key, _)| has(key))
}

/// Returns the name of a record: its id, or its file where it has none.
fn record_name(path: &str, root: Option<&Node>, telling: Option<Telling>) -> Name {
    let id = match (root.map(|root| &root.shape), telling) {
        (Some(Shape::Map(entries)), Some((key, _))) => text_of(entries, key).map(Name::record),
        _ => None,
    };
    id.unwrap_or_else(|| path_name(path))
}

fn path_name(path: &str) -> Name {
    Name::record(path.trim_end_matches(".yaml").trim_end_matches(".yml"))
}

fn record(sheet: &Sheet, path: &str, name: &Name, telling: Option<Telling>, root: &Node) -> Record {
    match (path, &root.shape) {
        (_, Shape::Refused) => Record::Nothing,
        (WAIVERS_FILE, Shape::List(_)) => waivers(sheet, root),
        (WAIVERS_FILE, _) => {
            let what = What::Shape { expected: "a list of waivers, each begun with `- finding:`" };
            sheet.tell(what, name, root.span, None);
            Record::Nothing
        }
        (CLUB_FILE, Shape::Map(entries)) => {
            let span = stands_for(entries, "logbook", root.span);
            let at = Section::new(sheet, Name::record("club"), span, root.span, entries);
            Record::Club(Box::new(at.finish(club)))
        }
        (_, Shape::Map(entries)) => told_by_its_keys(sheet, name, telling, root.span, entries),
        _ => {
            let what = What::Shape { expected: "a record of `key: value` lines" };
            sheet.tell(what, name, root.span, None);
            Record::Nothing
        }
    }
}

fn waivers(sheet: &Sheet, root: &Node) -> Record {
    let entry = Entry {
        key: "waivers".to_owned(),
        key_span: Span { start: root.span.start, end: root.span.start },
        value: root.clone(),
    };
    let entries = [entry];
    let at = Section::new(sheet, Name::record("club"), root.span, root.span, &entries);
    let read = |at: &mut Section| {
        at.list(
            field("waivers", "findings the club lives with for a while"),
            Naming::Numbered,
            waiver,
        )
    };
    Record::Waivers(at.finish(read))
}

fn told_by_its_keys(
    sheet: &Sheet,
    name: &Name,
    telling: Option<Telling>,
    whole: Span,
    entries: &[Entry],
) -> Record {
    let Some((key, kind)) = telling else {
        tell_no_record(sheet, name, whole, entries);
        return Record::Nothing;
    };
    let span = stands_for(entries, key, whole);
    let at = Section::new(sheet, name.clone(), span, whole, entries);
    let read = match kind {
        RecordKind::Crew => at.finish(crew).map(Record::Crew),
        RecordKind::OarSet => at.finish(oar_set).map(Record::OarSet),
        RecordKind::Class => at.finish(class).map(Record::Class),
        _ => at.finish(boat).map(|boat| Record::Boat(Box::new(boat))),
    };
    read.unwrap_or(Record::Nothing)
}

fn tell_no_record(sheet: &Sheet, name: &Name, span: Span, entries: &[Entry]) {
    let keys: Vec<&str> = TELLING.iter().map(|(key, _)| *key).collect();
    let alike = |entry: &Entry| Some((entry.key.clone(), nearest(&entry.key, &keys)?));
    let alike = entries
        .iter()
        .take(20)
        .find_map(|entry| alike(entry).map(|(key, known)| ((key, known), entry.key_span)));
    let first = entries.first().map_or(span, |entry| entry.key_span);
    let (nearest, at) = alike.map_or((None, first), |(nearest, at)| (Some(nearest), at));
    let nearest = nearest.and_then(|(found, known)| {
        TELLING.iter().find(|(key, _)| *key == known).map(|(key, _)| (found, *key))
    });
    sheet.tell(What::NoRecord { nearest }, name, at, None);
}

/// Returns the form of a kind of record: every field that its reader asks for.
#[must_use]
pub fn form(kind: RecordKind) -> Vec<Described> {
    let sheet = Sheet::new(FileId(0), "", true);
    let mut at = Section::describing(&sheet);
    match kind {
        RecordKind::Crew => drop(crew(&mut at)),
        RecordKind::OarSet => drop(oar_set(&mut at)),
        RecordKind::Boat => drop(boat(&mut at)),
        RecordKind::Class => drop(class(&mut at)),
        RecordKind::Club => drop(club(&mut at)),
        RecordKind::Waiver => drop(waiver(&mut at)),
    }
    at.into_form()
}
