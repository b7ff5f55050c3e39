//! A map or list whose end has not been read yet. Knows its own children and nothing above it.

use std::collections::HashMap;
use std::collections::hash_map;

use super::Entry;
use super::Node;
use super::Shape;
use super::TreeFault;
use super::TreeFaultKind;
use crate::model::Span;

/// A map or list that is still being read.
pub(super) struct Opened {
    /// From its first byte to the last byte read so far.
    pub(super) span: Span,
    /// Whether it began with a bracket, and so ends with one.
    pub(super) bracket: bool,
    inside: Inside,
}

enum Inside {
    List(Vec<Node>),
    Map(Map),
}

#[derive(Default)]
struct Map {
    /// A place for each key that was good when it came; emptied if the key comes again.
    entries: Vec<Option<Entry>>,
    first_seen: HashMap<String, FirstSeen>,
    next: Next,
}

struct FirstSeen {
    entry: usize,
    span: Span,
}

#[derive(Default)]
enum Next {
    #[default]
    Key,
    ValueOf(String, Span),
    ValueOfRefusedKey,
}

impl Opened {
    pub(super) fn list(start: usize, bracket: bool) -> Self {
        let span = Span { start, end: start };
        Self { span, bracket, inside: Inside::List(Vec::new()) }
    }

    pub(super) fn map(start: usize, bracket: bool) -> Self {
        let span = Span { start, end: start };
        Self { span, bracket, inside: Inside::Map(Map::default()) }
    }

    /// Returns whether what comes next stands where a key should.
    pub(super) fn awaits_key(&self) -> bool {
        matches!(&self.inside, Inside::Map(Map { next: Next::Key, .. }))
    }

    /// Returns whether what comes next is the value of a key.
    pub(super) fn awaits_value(&self) -> bool {
        matches!(&self.inside, Inside::Map(map) if !matches!(map.next, Next::Key))
    }

    /// Takes a key, and returns the fault if the map has it already.
    pub(super) fn take_key(&mut self, key: String, span: Span) -> Option<TreeFault> {
        self.reach(span);
        let Inside::Map(map) = &mut self.inside else { return None };
        match map.first_seen.entry(key.clone()) {
            hash_map::Entry::Vacant(place) => {
                place.insert(FirstSeen { entry: map.entries.len(), span });
                map.next = Next::ValueOf(key, span);
                None
            }
            hash_map::Entry::Occupied(first) => {
                let also = Some(first.get().span);
                if let Some(entry) = map.entries.get_mut(first.get().entry) {
                    *entry = None;
                }
                map.next = Next::ValueOfRefusedKey;
                Some(TreeFault { what: TreeFaultKind::KeyTwice { key }, at: span, also })
            }
        }
    }

    /// Passes over a key that can't be used; so will its value be.
    pub(super) fn refuse_key(&mut self, span: Span) {
        self.reach(span);
        if let Inside::Map(map) = &mut self.inside {
            map.next = Next::ValueOfRefusedKey;
        }
    }

    /// Takes a value: the next of a list, or that of the key before it.
    pub(super) fn take_value(&mut self, value: Node) {
        self.reach(value.span);
        match &mut self.inside {
            Inside::List(list) => list.push(value),
            Inside::Map(map) => {
                if let Next::ValueOf(key, key_span) = std::mem::take(&mut map.next) {
                    map.entries.push(Some(Entry { key, key_span, value }));
                }
            }
        }
    }

    /// Returns the whole; a key whose value was never reached keeps a refused one.
    pub(super) fn closed(mut self) -> Node {
        if let Inside::Map(Map { next: Next::ValueOf(_, key), .. }) = &self.inside {
            let span = Span { start: key.end, end: key.end };
            self.take_value(Node { span, shape: Shape::Refused });
        }
        let shape = match self.inside {
            Inside::List(list) => Shape::List(list),
            Inside::Map(map) => Shape::Map(map.entries.into_iter().flatten().collect()),
        };
        Node { span: self.span, shape }
    }

    fn reach(&mut self, child: Span) {
        self.span.end = self.span.end.max(child.end);
    }
}
