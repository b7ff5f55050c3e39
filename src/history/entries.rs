//! Which parts of lists are one and the same through time. A bend or a knock has no id: its number
//! or its day only says where it stands in one state. Knows no names that are asked for.

use std::collections::BTreeSet;
use std::collections::HashMap;
use std::collections::HashSet;

use super::graph::Graph;
use super::pairing::Grouped;
use super::pairing::parts_of_lists;
use super::past::RecordState;
use super::record::Part;
use super::value::Value;

/// One part of a list through time, by a number of its own.
pub(super) type Entry = usize;

/// Finds the entries of a record's states, from the oldest on.
///
/// Each part of each state is a spot. Spots that are one and the same are joined; no two of one
/// state ever are.
pub(super) struct Entries<'p> {
    states: Vec<&'p [Part]>,
    /// The first spot of each state.
    first: Vec<usize>,
    /// Another spot that each one is joined to; itself, if it is the last.
    joined: Vec<usize>,
    /// The states of the spots that are joined to each last one.
    spread: Vec<BTreeSet<usize>>,
    /// Where each wording stood.
    known: HashMap<String, usize>,
}

impl<'p> Entries<'p> {
    /// Finds all entries, and returns those of each state in the order of its parts.
    pub(super) fn of(graph: &Graph, states: &'p [RecordState]) -> Vec<Vec<Entry>> {
        let mut own = Self::new(states);
        let (mut last, mut done): (Vec<Option<usize>>, HashSet<(usize, usize)>) =
            Default::default();
        let mut seen = HashSet::new();
        for node in &graph.nodes {
            let before: Vec<usize> = node.parents.iter().filter_map(|at| last[*at]).collect();
            if states[node.state].record().is_none() {
                last.push(before.first().copied());
                continue;
            }
            last.push(Some(node.state));
            for from in before {
                if from != node.state && done.insert((from, node.state)) {
                    own.pair(from, node.state);
                }
            }
            if seen.insert(node.state) {
                own.remember(node.state);
            }
        }
        (0..states.len()).map(|state| own.entries(state)).collect()
    }

    fn new(states: &'p [RecordState]) -> Self {
        let parts = |state: &'p RecordState| state.record().map_or(&[][..], |own| &own.parts);
        let states: Vec<&[Part]> = states.iter().map(parts).collect();
        let mut own = Self {
            states: Vec::new(),
            first: Vec::new(),
            joined: Vec::new(),
            spread: Vec::new(),
            known: HashMap::new(),
        };
        for (number, parts) in states.iter().enumerate() {
            own.first.push(own.joined.len());
            for _ in *parts {
                own.joined.push(own.joined.len());
                own.spread.push(BTreeSet::from([number]));
            }
        }
        own.states = states;
        own
    }

    fn entries(&self, state: usize) -> Vec<Entry> {
        let first = self.first[state];
        (first..first + self.states[state].len()).map(|spot| self.entry(spot)).collect()
    }

    fn entry(&self, mut spot: usize) -> Entry {
        while self.joined[spot] != spot {
            spot = self.joined[spot];
        }
        spot
    }

    fn join(&mut self, one: usize, other: usize) {
        let (one, other) = (self.entry(one), self.entry(other));
        if one == other || !self.spread[one].is_disjoint(&self.spread[other]) {
            return;
        }
        let more = self.spread[one].len() >= self.spread[other].len();
        let (to, from) = if more { (one, other) } else { (other, one) };
        let states = std::mem::take(&mut self.spread[from]);
        self.spread[to].extend(states);
        self.joined[from] = to;
    }

    /// Pairs the parts of a state with those of the state it follows from.
    fn pair(&mut self, old: usize, new: usize) {
        let (before, after) = (self.states[old], self.states[new]);
        let mut same: HashMap<String, Vec<usize>> = HashMap::new();
        for (at, part) in before.iter().enumerate().rev() {
            same.entry(part.wording()).or_default().push(at);
        }
        let mut left: Vec<usize> = Vec::new();
        for (at, part) in after.iter().enumerate() {
            match same.get_mut(&part.wording()).and_then(Vec::pop) {
                Some(was) => self.join(self.first[old] + was, self.first[new] + at),
                None => left.push(at),
            }
        }
        let mut gone: Vec<usize> = same.into_values().flatten().collect();
        gone.sort_unstable();
        for (was, is) in paired(before, &gone, after, &left) {
            self.join(self.first[old] + was, self.first[new] + is);
        }
    }

    /// Joins parts that follow from nothing with what was worded so before they were gone.
    fn remember(&mut self, state: usize) {
        for (at, part) in self.states[state].iter().enumerate() {
            let (spot, wording) = (self.first[state] + at, part.wording());
            if let Some(before) = self.known.insert(wording, spot)
                && self.spread[self.entry(spot)].len() == 1
            {
                self.join(before, spot);
            }
        }
    }
}

/// Pairs what is not worded alike.
fn paired(before: &[Part], gone: &[usize], after: &[Part], come: &[usize]) -> Vec<(usize, usize)> {
    if gone.is_empty() || come.is_empty() {
        return Vec::new();
    }
    let (old, new) = (values(before, gone), values(after, come));
    let pairs = parts_of_lists(&grouped(before, gone, &old), &grouped(after, come, &new));
    pairs.into_iter().map(|(was, is)| (gone[was], come[is])).collect()
}

fn values<'r>(parts: &'r [Part], those: &[usize]) -> Vec<Vec<Value<'r>>> {
    those.iter().map(|at| parts[*at].as_values()).collect()
}

fn grouped<'v, 'b>(
    parts: &[Part],
    those: &[usize],
    values: &'v [Vec<Value<'b>>],
) -> Vec<Grouped<'v, 'b>> {
    let one = |(at, values): (&usize, &'v Vec<Value<'b>>)| Grouped {
        group: parts[*at].group(),
        values: values.iter().collect(),
    };
    those.iter().zip(values).map(one).collect()
}
