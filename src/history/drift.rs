//! The readings of one value through time, and what breaks them: a bend, a knock, something put
//! right. Works no line out and judges nothing.

use std::collections::BTreeMap;

use super::past::Past;
use super::record::Part;
use super::threads::Thread;
use crate::model::Name;
use crate::model::Said;
use crate::units::Date;

/// Why a value starts anew.
#[derive(Clone, Copy, Debug, Eq, Ord, PartialEq, PartialOrd)]
pub enum Break {
    /// Metal was bent.
    Bend,
    /// She took a knock.
    Knock,
    /// Something was mended: packed, straightened, given a new part.
    PutRight,
}

impl Break {
    /// Returns the word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Bend => "bend",
            Self::Knock => "knock",
            Self::PutRight => "put-right",
        }
    }

    /// Returns what happened, in words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Bend => "bent",
            Self::Knock => "knocked",
            Self::PutRight => "put right",
        }
    }
}

/// Returns the number of a value on each day it was measured, in its unit: also where it was
/// measured again and was the same. Of several on one day the last counts.
#[must_use]
pub fn readings(past: &Past, thread: &Thread, unit: &str) -> Vec<(Date, f64)> {
    let mut by_day = BTreeMap::new();
    for node in &past.graph.nodes {
        let Some(value) = past.value(node.state, thread) else { continue };
        let (Some((number, own)), Some(measured)) = (value.number(), value.measured.as_ref())
        else {
            continue;
        };
        if own == unit {
            by_day.insert(measured.on, number);
        }
    }
    by_day.into_iter().collect()
}

/// Returns the days on which a value started anew: what was bent or knocked at its seat, what was
/// put right in its record. All that any state told counts, also where it is gone now; a defect
/// whose words name other seats doesn't.
#[must_use]
pub fn breaks(past: &Past, name: &Name) -> Vec<(Date, Break)> {
    let mut all: Vec<(Date, Break)> = Vec::new();
    for record in past.states.iter().filter_map(super::RecordState::record) {
        all.extend(record.parts.iter().filter_map(|part| broken(part, name)));
    }
    all.sort_unstable();
    all.dedup();
    all
}

fn broken(part: &Part, name: &Name) -> Option<(Date, Break)> {
    let list = part.list.as_str();
    let (owner, kind) = list.rsplit_once('/')?;
    if !name.is_within(owner) {
        return None;
    }
    let seat = name.as_str().split('/').nth(1).filter(|part| part.starts_with("seat-"));
    let at_seat = |key: &str, whole: fn(&str) -> String| {
        let told: Vec<String> = part.texts(key).iter().map(|text| whole(text)).collect();
        told.is_empty() || seat.is_none_or(|seat| told.iter().any(|own| own == seat))
    };
    match kind {
        "bends" if at_seat("seat", |text| format!("seat-{text}")) => {
            Some((part.day("date")?, Break::Bend))
        }
        "knocks" if at_seat("where", |text| text.split('/').next().unwrap_or(text).to_owned()) => {
            Some((part.day("date")?, Break::Knock))
        }
        "defects" if seat.is_none_or(|seat| part.may_be_at(seat)) => {
            Some((part.day("put-right/date")?, Break::PutRight))
        }
        _ => None,
    }
}

impl Part {
    /// Returns what is written under a key, each as a text.
    fn texts(&self, key: &str) -> Vec<&str> {
        let kept = self.values.get(key);
        kept.into_iter().flat_map(|kept| &kept.written).map(|text| text.trim()).collect()
    }

    /// Returns whether a defect may be at a seat: its words name that seat, or none.
    fn may_be_at(&self, seat: &str) -> bool {
        let words = ["what", "put-right/how"].map(|key| self.texts(key).join(" ")).join(" ");
        let mut named = false;
        let mut rest = words.as_str();
        while let Some((_, after)) = rest.split_once("seat ") {
            let number: String = after.chars().take_while(char::is_ascii_digit).collect();
            if seat.strip_prefix("seat-") == Some(&number) {
                return true;
            }
            named |= !number.is_empty();
            rest = after;
        }
        !named
    }

    fn day(&self, key: &str) -> Option<Date> {
        self.values.get(key)?.said.iter().find_map(|said| match said {
            Said::Text(text) => Date::read(text).ok(),
            _ => None,
        })
    }
}
