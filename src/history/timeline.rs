//! Each change of a value, oldest first. Knows no verdict and no words for a person.

use std::collections::BTreeMap;

use super::graph::Cell;
use super::graph::Traced;
use super::kept::Kept;
use super::kept::Rewritten;
use super::measured::LastMeasured;
use super::past::Past;
use super::past::RecordState;
use super::past::Values;
use super::threads::Thread;
use crate::model::Name;

/// What happened to a value.
#[derive(Clone, Debug, PartialEq)]
pub enum Event {
    /// It stands there for the first time.
    FirstRecorded,
    /// It stands there at the oldest commit that is here; what was before was left behind.
    HistoryStarts,
    /// It is another.
    Changed,
    /// It stands there again after it did not.
    Again,
    /// It is no longer there, nor is its record.
    TakenOut,
    /// It is no longer given.
    NotMeasured,
    /// A merge kept one side's value though another side had set a different one.
    Merged {
        /// The nodes of the sides: the value there, none where it was not given, and the node that
        /// set it. The side that was kept comes first.
        sides: Vec<(Option<Kept>, usize)>,
    },
    /// A merge set a value that none of its sides had.
    MergedAnew {
        /// The sides.
        sides: Vec<(Option<Kept>, usize)>,
    },
    /// It can't be told what it is from here on, and why.
    Unclear(String),
    /// The same value, in another unit or with other decimals.
    Rewritten(Rewritten),
    /// The record stands in another file.
    Moved(String),
    /// Something else of the text changed.
    Untouched,
}

/// One row of a timeline.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// The name of the value, or of the record where it concerns the record as a whole.
    pub name: Name,
    /// What happened.
    pub event: Event,
    /// What the value was called there, where that is not its name.
    pub then: Option<Name>,
    /// The node of the past where it happened.
    pub node: usize,
    /// What it was.
    pub old: Option<Kept>,
    /// What it is.
    pub new: Option<Kept>,
    /// When it was measured, and by whom; none where it is nothing measured.
    pub measured: Option<LastMeasured>,
}

/// What rows are asked for.
#[derive(Clone, Copy, Debug, Default, Eq, PartialEq)]
pub struct Asked<'a> {
    /// The name, `*` for any one part: of a value, or of all below it.
    pub whole: &'a str,
    /// Whether to tell also what left the values as they were.
    pub all_touches: bool,
}

/// Returns every change of the values asked for, in the order of the commits and then by name.
/// `is_edge` tells the nodes whose parents were left behind.
#[must_use]
pub fn timeline(past: &Past, asked: Asked<'_>, is_edge: &dyn Fn(usize) -> bool) -> Vec<Row> {
    let mut rows: BTreeMap<(usize, Name, usize), Row> = BTreeMap::new();
    let mut unclear: BTreeMap<usize, Row> = BTreeMap::new();
    for (number, thread) in past.asked(asked.whole).into_iter().enumerate() {
        let values = past.values(thread);
        let traced = past.graph.trace(|state| values.cell(state));
        let told = Told { past, thread, values, traced };
        for node in 0..past.graph.nodes.len() {
            for row in told.row(node, is_edge).into_iter().chain(told.touch(node, asked)) {
                let is_own = row.name == thread.name;
                match row.event {
                    Event::Unclear(_) if !is_own => drop(unclear.insert(node, row)),
                    // What concerns the record as a whole is told once.
                    _ if !is_own => drop(rows.insert((node, row.name.clone(), 0), row)),
                    _ => drop(rows.insert((node, row.name.clone(), number), row)),
                }
            }
        }
    }
    for (node, row) in unclear {
        rows.insert((node, row.name.clone(), 0), row);
    }
    rows.into_values().collect()
}

/// One value through the whole past.
struct Told<'p> {
    past: &'p Past,
    thread: &'p Thread,
    values: Values<'p>,
    traced: Vec<Traced>,
}

impl Told<'_> {
    fn row(&self, node: usize, is_edge: &dyn Fn(usize) -> bool) -> Option<Row> {
        let own = &self.past.graph.nodes[node];
        let cell = self.values.cell(own.state);
        let before: Vec<Traced> = own.parents.iter().map(|parent| self.traced[*parent]).collect();
        if cell == Cell::Unclear {
            return self.unclear(node);
        }
        let Some(first) = before.first() else {
            let event = if is_edge(node) { Event::HistoryStarts } else { Event::FirstRecorded };
            return matches!(cell, Cell::Value(_)).then(|| self.told(node, event, Cell::Absent));
        };
        if before.iter().any(|side| side.cell == cell) {
            return self.kept(node, cell);
        }
        if before.len() > 1 && before.iter().any(|side| side.cell != first.cell) {
            let event =
                Event::MergedAnew { sides: before.iter().map(|own| self.side(own)).collect() };
            return Some(self.told(node, event, first.cell));
        }
        let event = match (first.cell, cell) {
            (Cell::Value(_), Cell::Value(_)) => Event::Changed,
            (Cell::Value(_), _) => self.gone(node, first.cell),
            (Cell::Absent, Cell::Value(_)) if self.stood_before(node) => Event::Again,
            (_, Cell::Value(_)) => Event::FirstRecorded,
            _ => return None,
        };
        Some(self.told(node, event, first.cell))
    }

    /// Tells a merge that set a side aside: one that had set its value without knowing of what was
    /// kept.
    fn kept(&self, node: usize, cell: Cell) -> Option<Row> {
        let parents = &self.past.graph.nodes[node].parents;
        let kept = parents.iter().find(|parent| self.traced[**parent].cell == cell)?;
        let lost = parents.iter().filter(|parent| {
            let side = self.traced[**parent];
            let known = |winner: &usize| self.past.graph.follows_from(*winner, side.origin);
            let winners = parents.iter().filter(|other| self.traced[**other].cell == cell);
            // Where it never stood nobody set it, as in a history that was joined to this one.
            let is_set = match side.cell {
                Cell::Unclear => false,
                Cell::Absent => !self.past.graph.nodes[side.origin].parents.is_empty(),
                Cell::Value(_) => true,
            };
            side.cell != cell && is_set && !winners.into_iter().any(known)
        });
        let lost: Vec<&usize> = lost.collect();
        let last = lost.first()?;
        let old = self.traced[**last].cell;
        let sides = std::iter::once(kept).chain(lost.iter().copied());
        let sides = sides.map(|parent| self.side(&self.traced[*parent])).collect();
        Some(self.told(node, Event::Merged { sides }, old))
    }

    fn side(&self, side: &Traced) -> (Option<Kept>, usize) {
        (self.values.value(side.cell).cloned(), side.origin)
    }

    fn gone(&self, node: usize, was: Cell) -> Event {
        let is_reading = self.values.value(was).is_some_and(|value| value.number().is_some());
        let stands = self.past.has_whole(self.past.graph.nodes[node].state, self.thread);
        if stands && is_reading { Event::NotMeasured } else { Event::TakenOut }
    }

    fn stood_before(&self, node: usize) -> bool {
        let stood = |traced: &Traced| matches!(traced.cell, Cell::Value(_));
        let before = self.traced[..node].iter().enumerate().filter(|(_, traced)| stood(traced));
        before.into_iter().any(|(other, _)| self.past.graph.follows_from(node, other))
    }

    /// Tells once, where it begins, that it can't be told what a value is.
    fn unclear(&self, node: usize) -> Option<Row> {
        let own = &self.past.graph.nodes[node];
        let state = &self.past.states[own.state];
        let was = |parent: &usize| self.values.cell(self.past.graph.nodes[*parent].state);
        let began =
            own.parents.is_empty() || own.parents.iter().any(|own| was(own) != Cell::Unclear);
        let (name, why) = match state {
            RecordState::Unclear(why) => (Name::record(&self.past.key.id), why.clone()),
            RecordState::Held { path, .. } if self.past.value(own.state, self.thread).is_none() => {
                (Name::record(&self.past.key.id), format!("{path} can't be read to its end"))
            }
            RecordState::Held { path, .. } => {
                (self.thread.name.clone(), format!("it can't be read in {path}"))
            }
            RecordState::Gone => return None,
        };
        let mut row = self.told(node, Event::Unclear(why), self.traced[node].cell);
        (row.name, row.new) = (name, None);
        if row.name != self.thread.name {
            (row.old, row.then) = (None, None);
        }
        began.then_some(row)
    }

    /// Tells what left the value as it was.
    fn touch(&self, node: usize, asked: Asked<'_>) -> Option<Row> {
        let own = &self.past.graph.nodes[node];
        let parent = self.past.graph.nodes.get(*own.parents.first()?)?;
        let (state, before) = (&self.past.states[own.state], &self.past.states[parent.state]);
        let value = |state| self.past.value(state, self.thread);
        let (now, then) = (value(own.state)?, value(parent.state)?);
        if !asked.all_touches || own.parents.len() > 1 || !now.is_same(then) {
            return None;
        }
        let (RecordState::Held { path, .. }, RecordState::Held { path: old_path, .. }) =
            (state, before)
        else {
            return None;
        };
        let (event, name) = match now.rewritten(then) {
            Rewritten::Not if path != old_path => (
                Event::Moved(format!("from {old_path} to {path}")),
                Name::record(&self.past.key.id),
            ),
            Rewritten::Not if asked.whole.contains('/') => {
                (Event::Untouched, self.thread.name.clone())
            }
            Rewritten::Not => return None,
            how => (Event::Rewritten(how), self.thread.name.clone()),
        };
        let mut row = self.told(node, event, self.values.cell(parent.state));
        (row.name, row.new) = (name, Some(now.clone()));
        row.old = Some(then.clone());
        if row.name != self.thread.name {
            (row.old, row.new, row.then) = (None, None, None);
        }
        Some(row)
    }

    fn told(&self, node: usize, event: Event, old: Cell) -> Row {
        let own = &self.past.graph.nodes[node];
        let measured = self.past.value(own.state, self.thread);
        let measured = measured.and_then(|value| value.measured.clone());
        let state = |node: &usize| self.past.graph.nodes[*node].state;
        let mut states = std::iter::once(own.state).chain(own.parents.iter().map(state));
        let called = states.find_map(|state| self.past.slot(state, self.thread));
        Row {
            name: self.thread.name.clone(),
            then: called.map(|slot| slot.name).filter(|name| *name != self.thread.name),
            event,
            node,
            old: self.values.value(old).cloned(),
            new: self.values.value(self.values.cell(own.state)).cloned(),
            measured,
        }
    }
}
