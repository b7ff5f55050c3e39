//! The values of a record through time, each followed by what it is and not by what it is called:
//! the second bend of today may have been the first one before.

use std::collections::HashMap;

use super::entries::Entries;
use super::entries::Entry;
use super::graph::Graph;
use super::kept::Kept;
use super::past::RecordState;
use super::record::Record;
use super::record::Slot;
use crate::model::Name;

/// One value through time.
#[derive(Clone, Debug, Eq, Ord, PartialEq, PartialOrd)]
pub struct Thread {
    /// What it is called now; what is gone, what it was called last.
    pub name: Name,
    /// Whether it stands in the last state.
    pub stands: bool,
    at: At,
}

/// How a value is found in a state.
#[derive(Clone, Debug, Eq, Hash, Ord, PartialEq, PartialOrd)]
enum At {
    /// By its name.
    Named(Slot),
    /// By its part of a list, and its name below that.
    InEntry(Entry, Box<str>),
}

/// Every value of a record through time.
pub(super) struct Threads {
    /// By name.
    pub(super) all: Vec<Thread>,
    /// In each state, which of the record's parts an entry is.
    parts: Vec<HashMap<Entry, usize>>,
}

impl Thread {
    /// Returns the name of the part of a list that the value belongs to, where that is a number
    /// and no more than so many words deep.
    pub(super) fn number(&self, depth: usize) -> Option<&str> {
        let At::InEntry(_, below) = &self.at else { return None };
        let part = self.name.as_str().strip_suffix(&**below)?.strip_suffix('/')?;
        let last = part.rsplit('/').next()?;
        let is_number = last.bytes().all(|byte| byte.is_ascii_digit());
        (is_number && part.split('/').count() <= depth).then_some(part)
    }
}

impl Threads {
    pub(super) fn of(graph: &Graph, states: &[RecordState]) -> Self {
        let entries = Entries::of(graph, states);
        let parts = entries.iter().map(|own| own.iter().copied().zip(0..).collect()).collect();
        let mut known: HashMap<At, (Name, bool)> = HashMap::new();
        let mut seen = vec![false; states.len()];
        let last = graph.nodes.last().map(|node| node.state);
        // The newest first: what it is called there is what it is called.
        for state in graph.nodes.iter().rev().map(|node| node.state) {
            let Some(record) = states[state].record() else { continue };
            if std::mem::replace(&mut seen[state], true) {
                continue;
            }
            let stands = last == Some(state);
            for (at, slot) in places(record, &entries[state]) {
                known.entry(at).or_insert_with(|| (slot, stands));
            }
        }
        let thread = |(at, (name, stands))| Thread { name, stands, at };
        let mut all: Vec<Thread> = known.into_iter().map(thread).collect();
        all.sort_unstable();
        Self { all, parts }
    }

    pub(super) fn has_part(&self, state: usize, thread: &Thread) -> bool {
        match &thread.at {
            At::Named(_) => true,
            At::InEntry(entry, _) => self.parts[state].contains_key(entry),
        }
    }

    pub(super) fn value<'r>(
        &self,
        state: usize,
        record: &'r Record,
        thread: &Thread,
    ) -> Option<&'r Kept> {
        match &thread.at {
            At::Named(slot) => record.values.get(slot),
            At::InEntry(entry, below) => {
                record.parts[*self.parts[state].get(entry)?].values.get(below)
            }
        }
    }

    /// Returns what a value is called in a state, and the value.
    pub(super) fn found<'r>(
        &self,
        state: usize,
        record: &'r Record,
        thread: &Thread,
    ) -> Option<(Slot, &'r Kept)> {
        let value = self.value(state, record, thread)?;
        let slot = match &thread.at {
            At::Named(slot) => slot.clone(),
            At::InEntry(entry, below) => {
                let part = &record.parts[*self.parts[state].get(entry)?].slot;
                Slot { name: part.name.at(below), nth: part.nth }
            }
        };
        Some((slot, value))
    }
}

/// Returns where every value of a record is found, and what it is called there.
fn places<'r>(
    record: &'r Record,
    entries: &'r [Entry],
) -> impl Iterator<Item = (At, Name)> + use<'r> {
    let named = record.values.keys().map(|slot| (At::Named(slot.clone()), slot.name.clone()));
    let in_parts = record.parts.iter().zip(entries).flat_map(|(part, entry)| {
        let below = part.values.keys();
        below.map(|own| (At::InEntry(*entry, own.clone()), part.slot.name.at(own)))
    });
    named.chain(in_parts)
}
