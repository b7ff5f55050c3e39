//! The past of one record: its states, how they follow from one another, and its values through
//! them. Knows no git and no file.

use std::rc::Rc;

use super::graph::Cell;
use super::graph::Graph;
use super::kept::Kept;
use super::record::Held;
use super::record::Key;
use super::record::Record;
use super::record::Slot;
use super::threads::Thread;
use super::threads::Threads;
use super::walked::record;

/// The past of one record.
pub struct Past {
    /// Which record.
    pub key: Key,
    /// The steps that may matter.
    pub graph: Graph,
    /// The states of the nodes.
    pub states: Vec<RecordState>,
    threads: Threads,
}

/// What a step has of a record.
#[derive(Clone, Debug)]
pub enum RecordState {
    /// No file holds it.
    Gone,
    /// One file holds it, or several that say the same.
    Held {
        /// The file.
        path: Rc<str>,
        /// The record.
        held: Rc<Held>,
    },
    /// It can't be told what it is, and why.
    Unclear(String),
}

impl RecordState {
    /// Returns the record, where it stands there and can be read.
    #[must_use]
    pub fn record(&self) -> Option<&Record> {
        match self {
            Self::Held { held, .. } => record(held),
            Self::Gone | Self::Unclear(_) => None,
        }
    }
}

/// What every state says of one value, each different value with a number of its own.
pub struct Values<'p> {
    cells: Vec<Cell>,
    values: Vec<&'p Kept>,
}

impl<'p> Values<'p> {
    /// Returns what holds in a state.
    #[must_use]
    pub fn cell(&self, state: usize) -> Cell {
        self.cells[state]
    }

    /// Returns the value that a cell stands for.
    #[must_use]
    pub fn value(&self, cell: Cell) -> Option<&'p Kept> {
        match cell {
            Cell::Value(number) => Some(self.values[number]),
            Cell::Absent | Cell::Unclear => None,
        }
    }
}

impl Past {
    pub(super) fn new(key: Key, graph: Graph, states: Vec<RecordState>) -> Self {
        let threads = Threads::of(&graph, &states);
        Self { key, graph, states, threads }
    }

    /// Returns every value that the record ever had, by what it is called now; what is gone, by
    /// what it was called last.
    #[must_use]
    pub fn threads(&self) -> &[Thread] {
        &self.threads.all
    }

    /// Returns the values that are called so now. A number names what has it now, not what is gone
    /// and had it last; a name that nothing has now, what had it once.
    #[must_use]
    pub fn asked(&self, whole: &str) -> Vec<&Thread> {
        let own: Vec<&Thread> =
            self.threads().iter().filter(|own| own.name.is_within(whole)).collect();
        if own.is_empty() {
            let had = |own: &&Thread| {
                let mut states = 0..self.states.len();
                states.any(|at| self.slot(at, own).is_some_and(|own| own.name.is_within(whole)))
            };
            return self.threads().iter().filter(had).collect();
        }
        let depth = whole.split('/').count();
        let standing: std::collections::HashSet<&str> =
            own.iter().filter(|own| own.stands).filter_map(|own| own.number(depth)).collect();
        let is_outdone =
            |own: &&Thread| own.number(depth).is_some_and(|number| standing.contains(number));
        own.into_iter().filter(|own| own.stands || !is_outdone(own)).collect()
    }

    /// Returns what a value is called in a state, where it stands there.
    #[must_use]
    pub fn slot(&self, state: usize, thread: &Thread) -> Option<Slot> {
        let record = self.states[state].record()?;
        self.threads.found(state, record, thread).map(|(slot, _)| slot)
    }

    /// Returns the value in a state.
    #[must_use]
    pub fn value(&self, state: usize, thread: &Thread) -> Option<&Kept> {
        self.threads.value(state, self.states[state].record()?, thread)
    }

    /// Returns whether the part of a list that a value belongs to stands in a state; of a value
    /// that belongs to none, whether the record does.
    #[must_use]
    pub fn has_whole(&self, state: usize, thread: &Thread) -> bool {
        self.states[state].record().is_some() && self.threads.has_part(state, thread)
    }

    /// Returns what every state says of one value.
    #[must_use]
    pub fn values(&self, thread: &Thread) -> Values<'_> {
        let mut values: Vec<&Kept> = Vec::new();
        let mut cells = Vec::with_capacity(self.states.len());
        for (number, state) in self.states.iter().enumerate() {
            let cell = match (state, state.record(), self.value(number, thread)) {
                (RecordState::Unclear(_), ..) => Cell::Unclear,
                (.., Some(value)) if value.is_unread() => Cell::Unclear,
                (.., Some(value)) => {
                    let known = values.iter().rposition(|own| own.is_same(value));
                    Cell::Value(known.unwrap_or_else(|| {
                        values.push(value);
                        values.len() - 1
                    }))
                }
                (_, Some(record), None) if !record.whole => Cell::Unclear,
                _ => Cell::Absent,
            };
            cells.push(cell);
        }
        Values { cells, values }
    }
}
