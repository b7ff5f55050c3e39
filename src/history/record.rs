//! One record as one text holds it, kept apart from its book. Knows no commits.

use std::collections::BTreeMap;

use super::grouping::Group;
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

/// A name, and which of those of that name: a record may hold two seats of one number.
#[derive(Clone, Debug, Eq, Hash, Ord, PartialEq, PartialOrd)]
pub struct Slot {
    /// The name.
    pub name: Name,
    /// Which of those of one name, from 0.
    pub nth: usize,
}

/// A part of a list without an id of its own, such as a bend or a knock.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// The name of the list.
    pub list: Name,
    /// What it is called in this text: the list's name, then a number or a day.
    pub slot: Slot,
    /// Its values by their names below the part's.
    pub values: BTreeMap<Box<str>, Kept>,
}

/// A record as one text holds it.
#[derive(Clone, Debug, PartialEq)]
pub struct Record {
    /// Which record.
    pub key: Key,
    /// Its values by name, but for those in parts of lists: as often as a value stands there, in
    /// order. What is worked out from others is left out.
    pub values: BTreeMap<Slot, Kept>,
    /// The parts of its lists, in the order they are written.
    pub parts: Vec<Part>,
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
    let mut own = Record {
        key: Key { kind: record.kind, id: record.id },
        values: BTreeMap::new(),
        parts: Vec::new(),
        whole: record.whole,
        oars: oars.map(|oars| oars.value.clone()),
    };
    record.values.into_iter().for_each(|value| own.take(value));
    Held::Record(Box::new(own))
}

impl Record {
    fn take(&mut self, value: Value<'_>) {
        let nth = match &value.group {
            Group::Part { list, name, nth } => {
                let slot = Slot { name: name.clone(), nth: *nth };
                let below = value.group.below(&value.name).into();
                let list = list.clone();
                return self.part(list, slot).values.entry(below).or_default().add(value);
            }
            Group::Own { nth, .. } => *nth,
            Group::Record => 0,
        };
        let slot = Slot { name: value.name.clone(), nth };
        self.values.entry(slot).or_default().add(value);
    }

    /// Returns whether both were read to their ends and say the same, however it is written.
    pub(super) fn says_same(&self, other: &Self) -> bool {
        let said = |own: &Kept, other: &Kept| own.said == other.said;
        let values = |own: &BTreeMap<Box<str>, Kept>, other: &BTreeMap<Box<str>, Kept>| {
            own.len() == other.len()
                && own
                    .iter()
                    .zip(other)
                    .all(|(own, other)| own.0 == other.0 && said(own.1, other.1))
        };
        let mut own = self.values.iter().zip(&other.values);
        let mut parts = self.parts.iter().zip(&other.parts);
        self.whole
            && other.whole
            && self.values.len() == other.values.len()
            && self.parts.len() == other.parts.len()
            && own.all(|(own, other)| own.0 == other.0 && said(own.1, other.1))
            && parts
                .all(|(own, other)| own.slot == other.slot && values(&own.values, &other.values))
    }

    fn part(&mut self, list: Name, slot: Slot) -> &mut Part {
        let known = self.parts.iter().rposition(|part| part.slot == slot);
        let at = known.unwrap_or_else(|| {
            self.parts.push(Part { list, slot, values: BTreeMap::new() });
            self.parts.len() - 1
        });
        &mut self.parts[at]
    }
}

impl Part {
    /// Returns the part as the comparing of two states knows it.
    pub(super) fn group(&self) -> Group {
        let Slot { name, nth } = self.slot.clone();
        Group::Part { list: self.list.clone(), name, nth }
    }

    /// Returns its values as the comparing of two states knows them.
    pub(super) fn as_values(&self) -> Vec<Value<'_>> {
        let name = |below: &str| self.slot.name.at(below);
        let each = self.values.iter();
        each.map(|(below, kept)| kept.value_of(name(below), self.group())).collect()
    }

    /// Returns all that is written in it: two parts of one list with the same are alike.
    pub(super) fn wording(&self) -> String {
        let mut text = self.list.to_string();
        for (below, kept) in &self.values {
            text.push('\n');
            text.push_str(below);
            for written in &kept.written {
                text.push('\u{0}');
                text.push_str(written);
            }
        }
        text
    }
}
