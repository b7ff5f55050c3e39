//! One record as one text holds it, kept apart from its book. Knows no commits.

use std::collections::BTreeMap;

use super::kept::Kept;
use super::value::Value;
use super::values::of_file;
use crate::model::FileId;
use crate::model::Name;
use crate::reading;
use crate::reading::RecordKind;
use crate::store::Content;
use crate::store::Named;

/// Which record: its kind and its id. Two records of different kinds may have one id.
#[derive(Clone, Debug, Eq, Hash, Ord, PartialEq, PartialOrd)]
pub struct Key {
    /// Its kind.
    pub kind: RecordKind,
    /// Its id.
    pub id: String,
}

/// A record as one text holds it.
#[derive(Clone, Debug, PartialEq)]
pub struct Record {
    /// Which record.
    pub key: Key,
    /// Its values by name: as often as a value stands there, in order. What is worked out from
    /// others is left out.
    pub values: BTreeMap<Name, Kept>,
    /// Whether the text was read to its end; if not, what seems to be missing may only be unread.
    pub whole: bool,
    /// The oar set that a boat carries.
    pub oars: Option<String>,
}

/// What a text holds.
#[derive(Clone, Debug, PartialEq)]
pub enum Held {
    /// A record.
    Record(Box<Record>),
    /// Nothing that could be read as a record, and why.
    Unread(String),
}

/// Reads what one text holds.
#[must_use]
pub fn held(path: &str, content: Content) -> Held {
    let (book, faults) = reading::read_alone(Named { path: path.to_owned(), content });
    let Some(record) = of_file(&book, FileId(0)) else {
        let why = faults.first().map(|fault| fault.what.to_string());
        return Held::Unread(why.unwrap_or_else(|| "it holds no record".to_owned()));
    };
    let oars = book.boats.first().and_then(|boat| boat.oars.as_ref());
    Held::Record(Box::new(Record {
        key: Key { kind: record.kind, id: record.id },
        values: by_name(record.values),
        whole: record.whole,
        oars: oars.map(|oars| oars.value.clone()),
    }))
}

/// Puts together what has one name, as two knocks of one day have.
fn by_name(values: Vec<Value<'_>>) -> BTreeMap<Name, Kept> {
    let mut by_name: BTreeMap<Name, Kept> = BTreeMap::new();
    for value in values {
        by_name.entry(value.name.clone()).or_default().add(value);
    }
    by_name
}
