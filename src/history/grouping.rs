//! Which seat, oar or part of a list a value belongs to, told from its name.
//!
//! A bend, a knock or a person has no id of its own: its number or day only says where it stood in
//! the list. Two knocks of one day share their names, and are told apart here.

use std::collections::HashMap;
use std::collections::HashSet;

use crate::model::Name;
use crate::reading::RecordKind;

/// Lists whose parts have no id of their own, and the key that a part begins with.
const LISTS: [(&str, &str); 9] = [
    ("bends", "date"),
    ("read-again", "date"),
    ("knocks", "date"),
    ("defects", "found"),
    ("people", "name"),
    ("waivers", "finding"),
    ("seats", ""),
    ("oars", ""),
    ("rowers", ""),
];

/// The smallest whole that a value belongs to.
#[derive(Clone, Debug, Eq, Hash, Ord, PartialEq, PartialOrd)]
pub enum Group {
    /// The record itself.
    Record,
    /// A seat or an oar, by its own number or id; `nth` counts those of one name, from 0.
    Own {
        /// Its name.
        name: Name,
        /// Which of those of one name.
        nth: usize,
    },
    /// A part of a list without an id of its own; `nth` counts those of one name, from 0.
    Part {
        /// The name of the list.
        list: Name,
        /// Its name: that of the list, then the number or the day.
        name: Name,
        /// Which of those of one name.
        nth: usize,
    },
}

impl Group {
    /// Returns the name of the seat, oar or part of a list; none of the record itself.
    #[must_use]
    pub const fn name(&self) -> Option<&Name> {
        match self {
            Self::Record => None,
            Self::Own { name, .. } | Self::Part { name, .. } => Some(name),
        }
    }

    /// Returns a value's name below its group, such as `rowlock/gap`.
    #[must_use]
    pub fn below<'n>(&self, value: &'n Name) -> &'n str {
        let whole = self.name().map_or("", Name::as_str);
        let rest = value.as_str().strip_prefix(whole).unwrap_or_default();
        rest.strip_prefix('/').unwrap_or(rest)
    }

    /// Returns whether a value follows from the readings of the seat.
    pub(super) fn is_worked_out(&self, name: &Name) -> bool {
        matches!(self, Self::Own { .. }) && self.below(name).starts_with("worked-out")
    }
}

fn is_seat(name: &Name) -> bool {
    name.as_str().rsplit('/').next().is_some_and(|last| last.starts_with("seat-"))
}

/// Tells the groups of a record's values, asked in the order they are written.
pub(super) struct Grouping {
    kind: RecordKind,
    record: Name,
    current: Option<Current>,
    /// How many groups of each name have begun.
    begun: HashMap<Name, usize>,
}

/// The group that the last value belonged to.
struct Current {
    group: Group,
    seen: HashSet<Name>,
    last: Name,
}

impl Grouping {
    pub(super) fn new(kind: RecordKind, id: &str) -> Self {
        Self { kind, record: Name::record(id), current: None, begun: HashMap::new() }
    }

    /// Returns the group of the next value.
    pub(super) fn of(&mut self, name: &Name) -> Group {
        let (list, own) = self.split(name);
        let Some(own) = own else {
            self.current = None;
            return Group::Record;
        };
        if let Some(current) = &mut self.current
            && current.group.name() == Some(&own)
            && !current.ends_before(name)
        {
            current.seen.insert(name.clone());
            current.last.clone_from(name);
            return current.group.clone();
        }
        let begun = self.begun.entry(own.clone()).or_insert(0);
        let nth = *begun;
        *begun += 1;
        let group = match list {
            Some(list) => Group::Part { list, name: own, nth },
            None => Group::Own { name: own, nth },
        };
        let seen = HashSet::from([name.clone()]);
        self.current = Some(Current { group: group.clone(), seen, last: name.clone() });
        group
    }

    /// Returns whether a value of a group only says which record, seat or oar it is.
    pub(super) fn is_identity(&self, group: &Group, name: &Name) -> bool {
        match group {
            Group::Record => *name == self.record.at(self.kind.telling_key()),
            Group::Own { name: own, .. } if is_seat(own) => group.below(name) == "seat",
            Group::Own { .. } => group.below(name) == "oar",
            Group::Part { list, .. } => {
                let list = list.as_str().rsplit('/').next().unwrap_or_default();
                match (list, group.below(name)) {
                    ("seats" | "rowers", key) => key == "seat",
                    ("oars", key) => key == "oar",
                    _ => false,
                }
            }
        }
    }

    /// Returns the list, where the group is a part of one, and the group.
    fn split(&self, name: &Name) -> (Option<Name>, Option<Name>) {
        let below = name.as_str().strip_prefix(self.record.as_str()).unwrap_or_default();
        let parts: Vec<&str> = below.trim_start_matches('/').split('/').collect();
        let own_oar = self.kind == RecordKind::OarSet && !["measured", "oars"].contains(&parts[0]);
        match parts.as_slice() {
            [list, part, _, ..] if is_list(list) => self.part(&self.record, list, part),
            [oar, "defects", part, _, ..] if own_oar => {
                self.part(&self.record.at(oar), "defects", part)
            }
            [seat, _, ..] if seat.starts_with("seat-") => (None, Some(self.record.at(seat))),
            [oar, _, ..] if own_oar => (None, Some(self.record.at(oar))),
            _ => (None, None),
        }
    }

    fn part(&self, whole: &Name, list: &str, part: &str) -> (Option<Name>, Option<Name>) {
        let list = whole.at(list);
        let own = list.at(part);
        (Some(list), Some(own))
    }
}

impl Current {
    /// Returns whether the group ends before a value of this name: one of a list may stand several
    /// times, but not with others between, and the key that a part begins with stands once.
    fn ends_before(&self, name: &Name) -> bool {
        let begins = match &self.group {
            Group::Part { list, .. } => {
                let list = list.as_str().rsplit('/').next().unwrap_or_default();
                let key = LISTS.iter().find(|(own, _)| *own == list).map_or("", |(_, key)| key);
                self.group.below(name) == key
            }
            _ => false,
        };
        self.seen.contains(name) && (begins || self.last != *name)
    }
}

fn is_list(part: &str) -> bool {
    LISTS.iter().any(|(list, _)| *list == part)
}
