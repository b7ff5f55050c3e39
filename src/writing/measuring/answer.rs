//! What was answered to one question.

use crate::reading::READ;
use crate::writing::editing::Meaning;
use crate::writing::editing::Wording;

/// What was answered.
#[derive(Clone, Debug, Default, Eq, PartialEq)]
pub enum Answer {
    /// Nothing yet.
    #[default]
    Open,
    /// It was not measured today: what the record says keeps its day.
    Kept,
    /// Nobody knows it: the record is to say so.
    NotMeasured,
    /// It was read.
    Read(Wording),
}

impl Answer {
    /// Returns what was read.
    #[must_use]
    pub const fn read(&self) -> Option<&Wording> {
        match self {
            Self::Read(wording) => Some(wording),
            _ => None,
        }
    }
}

/// Returns whether a value was read once only.
pub(super) fn is_single(wording: &Wording) -> bool {
    readings(wording.meaning()).len() == 1
}

/// Returns two answers to one question as one list of readings. How finely the first was read, where
/// it says so, stays.
pub(super) fn both(first: &Wording, second: &Wording) -> Wording {
    let all = [readings(first.meaning()), readings(second.meaning())].concat();
    let list = Meaning::List(all.into_iter().map(Meaning::Word).collect());
    match first.meaning() {
        Meaning::Map(map) => {
            let part = |(key, value): &(String, Meaning)| {
                let value = if key == READ.key { list.clone() } else { value.clone() };
                (key.clone(), value)
            };
            Wording::of(Meaning::Map(map.iter().map(part).collect()))
        }
        _ => Wording::of(list),
    }
}

/// Returns every reading of a value, as it is written.
pub(super) fn readings(meaning: &Meaning) -> Vec<String> {
    match meaning {
        Meaning::Empty => Vec::new(),
        Meaning::Word(text) => vec![text.clone()],
        Meaning::List(list) => list.iter().flat_map(readings).collect(),
        Meaning::Map(map) => {
            let read = map.iter().find(|(key, _)| key == READ.key);
            read.map(|(_, value)| readings(value)).unwrap_or_default()
        }
    }
}
