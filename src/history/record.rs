//! One record as one text holds it: its values by name, and when and by whom they were measured.
//!
//! Knows texts and the book's format; knows no commits.

use std::collections::BTreeMap;

use crate::model::Book;
use crate::model::Measured;
use crate::model::Name;
use crate::model::Placed;
use super::value::Value;
use crate::reading;
use crate::store::Content;
use crate::store::Named;
use crate::units::Date;

/// What a record is. Two records of different kinds may have one id.
#[derive(Clone, Copy, Debug, Eq, Hash, Ord, PartialEq, PartialOrd)]
pub enum Kind {
    /// A boat.
    Boat,
    /// An oar set.
    OarSet,
    /// A crew.
    Crew,
    /// A class.
    Class,
    /// The club's settings.
    Club,
    /// The waivers.
    Waivers,
}

/// Which record: its kind and its id.
#[derive(Clone, Debug, Eq, Hash, Ord, PartialEq, PartialOrd)]
pub struct Key {
    /// Its kind.
    pub kind: Kind,
    /// Its id.
    pub id: String,
}

/// A record as one text holds it.
#[derive(Clone, Debug)]
pub struct Record {
    /// Which record.
    pub key: Key,
    /// Its values by name. What is worked out from others is left out.
    pub values: BTreeMap<Name, Kept>,
    /// Whether the text was read to its end; if not, what seems to be missing may only be unread.
    pub whole: bool,
    /// The oar set that a boat carries.
    pub oars: Option<String>,
    measured: Vec<Session>,
}

/// What a text holds.
#[derive(Clone, Debug)]
pub enum Held {
    /// A record.
    Record(Box<Record>),
    /// Nothing that could be read as a record, and why.
    Unread(String),
}

/// A day on which values were read, and by whom.
#[derive(Clone, Debug)]
struct Session {
    on: Option<Date>,
    by: Option<String>,
    /// The names that were read; all, where there are none.
    names: Option<Vec<Name>>,
}

/// When a value was measured, and by whom, as far as it is written.
#[derive(Clone, Debug, Default, Eq, PartialEq)]
pub struct MeasuredBy {
    /// The day.
    pub on: Option<Date>,
    /// The person.
    pub by: Option<String>,
}

/// Reads what one text holds.
#[must_use]
pub fn held(path: &str, content: Content) -> Held {
    let (book, faults) = reading::read_alone(Named { path: path.to_owned(), content });
    let key = key(&book, path);
    let whole = book.files.first().is_some_and(|file| file.whole);
    let Some(key) = key else {
        let why = faults.first().map(|fault| fault.what.to_string());
        return Held::Unread(why.unwrap_or_else(|| "it holds no record".to_owned()));
    };
    let measured = sessions(&book);
    let oars = book.boats.first().and_then(|boat| boat.oars.as_ref());
    let oars = oars.map(|oars| oars.value.clone());
    Held::Record(Box::new(Record { key, values: values(book), whole, oars, measured }))
}

impl Record {
    /// Returns when a value was measured, and by whom: when it was read again, else on the day of
    /// the whole record. Of two equal days the last counts.
    #[must_use]
    pub fn measured(&self, name: &Name) -> MeasuredBy {
        let covers = |session: &&Session| {
            let of = |whole: &Name| name.is_within(whole.as_str());
            session.names.as_ref().is_none_or(|names| names.iter().any(of))
        };
        let last = self.measured.iter().filter(covers).max_by_key(|session| session.on);
        last.map_or_else(MeasuredBy::default, |session| MeasuredBy {
            on: session.on,
            by: session.by.clone(),
        })
    }
}

fn key(book: &Book, path: &str) -> Option<Key> {
    let of = |kind: Kind, id: Option<&Placed<String>>| {
        id.map(|id| Key { kind, id: id.value.clone() })
    };
    let club = |kind| Some(Key { kind, id: "club".to_owned() });
    let read = book.files.first().is_some_and(|file| file.whole);
    of(Kind::Boat, book.boats.first().map(|boat| &boat.id))
        .or_else(|| of(Kind::OarSet, book.oar_sets.first().map(|set| &set.id)))
        .or_else(|| of(Kind::Crew, book.crews.first().map(|crew| &crew.id)))
        .or_else(|| of(Kind::Class, book.classes.first().map(|class| &class.id)))
        .or_else(|| match path {
            "club.yaml" if read => club(Kind::Club),
            "waivers.yaml" if read => club(Kind::Waivers),
            _ => None,
        })
}

fn values(book: Book) -> BTreeMap<Name, Kept> {
    let Book { written, files, .. } = book;
    let text = files.first().map_or("", |file| &*file.text);
    let mut values: BTreeMap<Name, Kept> = BTreeMap::new();
    for written in written.into_iter().filter(|own| !own.name.is_within("*/*/worked-out")) {
        let span = written.place.span;
        let value = values.entry(written.name).or_default();
        value.written.push(text.get(span.start..span.end).unwrap_or_default().into());
        value.said.push(written.said);
    }
    values
}

fn sessions(book: &Book) -> Vec<Session> {
    let boats = book.boats.iter().flat_map(|boat| {
        let record = boat.record();
        let rigged = session(boat.rigged.date, boat.rigged.by.as_ref(), None);
        let again = boat.read_again.iter().filter(|again| again.date.is_some());
        let again = again.map(move |again| {
            let names = again.values.iter().map(|name| record.at(&name.value)).collect();
            session(again.date, again.by.as_ref(), Some(names))
        });
        std::iter::once(rigged).chain(again)
    });
    let sets = book.oar_sets.iter().map(|set| &set.measured);
    let crews = book.crews.iter().map(|crew| &crew.measured);
    let of = |measured: &Measured| session(measured.date, measured.by.as_ref(), None);
    boats.chain(sets.chain(crews).map(of)).collect()
}

fn session(
    on: Option<Placed<Date>>,
    by: Option<&Placed<String>>,
    names: Option<Vec<Name>>,
) -> Session {
    Session { on: on.map(|on| on.value), by: by.map(|by| by.value.clone()), names }
}
