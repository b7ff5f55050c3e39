//! What a value says, free of its place and its layout.

use super::address::Address;
use super::address::Step;
use crate::reading::tree::Node;
use crate::reading::tree::Shape;

/// What a value says.
#[derive(Clone, Debug, Eq, PartialEq)]
pub enum Meaning {
    /// Nothing.
    Empty,
    /// A word, a number, a text.
    Word(String),
    /// Keys and values, in the order they are written.
    Map(Vec<(String, Meaning)>),
    /// Values in order.
    List(Vec<Meaning>),
}

impl Meaning {
    /// Returns what a node says. What was refused says nothing.
    #[must_use]
    pub fn of(node: &Node) -> Self {
        match &node.shape {
            Shape::Empty | Shape::Refused => Self::Empty,
            Shape::Scalar(scalar) => Self::Word(scalar.text.clone()),
            Shape::List(items) => Self::List(items.iter().map(Self::of).collect()),
            Shape::Map(entries) => Self::Map(
                entries.iter().map(|entry| (entry.key.clone(), Self::of(&entry.value))).collect(),
            ),
        }
    }

    /// Returns what stands at the end of the steps; nothing where the way does not exist.
    #[must_use]
    pub fn get(&self, at: &Address) -> Option<&Self> {
        at.steps().iter().try_fold(self, |here, step| match (here, step) {
            (Self::Map(map), Step::Key(key)) => value_of(map, key),
            (Self::List(list), step) => list.get(here_of(list, step)?),
            _ => None,
        })
    }

    /// Returns what is said whatever the order of the keys; a section or list without parts is as
    /// good as nothing.
    #[must_use]
    pub fn settled(self) -> Self {
        match self {
            Self::Map(map) if map.is_empty() => Self::Empty,
            Self::List(list) if list.is_empty() => Self::Empty,
            Self::Map(map) => {
                let settled = |(key, value): (String, Self)| (key, value.settled());
                let mut map: Vec<_> = map.into_iter().map(settled).collect();
                map.sort_by(|(one, _), (other, _)| one.cmp(other));
                Self::Map(map)
            }
            Self::List(list) => Self::List(list.into_iter().map(Self::settled).collect()),
            Self::Empty | Self::Word(_) => self,
        }
    }

    /// Returns what is said without the keys that say nothing.
    #[must_use]
    pub(in crate::writing) fn pruned(self) -> Self {
        match self {
            Self::Map(map) => {
                let pruned = map.into_iter().map(|(key, value)| (key, value.pruned()));
                Self::Map(pruned.filter(|(_, value)| *value != Self::Empty).collect())
            }
            Self::List(list) => Self::List(list.into_iter().map(Self::pruned).collect()),
            Self::Empty | Self::Word(_) => self,
        }
    }

    /// Puts a value at the end of the steps, with the sections on the way.
    pub(super) fn set(&mut self, steps: &[Step], value: Self) {
        match steps.split_first() {
            None => *self = value,
            Some((step, rest)) => {
                if let Some(below) = self.step_into(step) {
                    below.set(rest, value);
                }
            }
        }
    }

    /// Takes what stands at the end of the steps away; a section left without values says nothing.
    pub(super) fn remove(&mut self, steps: &[Step]) {
        let Some((step, rest)) = steps.split_first() else { return };
        if !rest.is_empty() {
            if let Some(below) = self.step_into(step) {
                below.remove(rest);
            }
            return;
        }
        match (&mut *self, step) {
            (Self::Map(map), Step::Key(key)) => map.retain(|(own, _)| own != key),
            (Self::List(list), step) => {
                if let Some(index) = here_of(list, step) {
                    list.remove(index);
                }
            }
            _ => {}
        }
    }

    /// Adds a value to the list at the end of the steps.
    pub(super) fn append(&mut self, steps: &[Step], value: Self) {
        match steps.split_first() {
            Some((step, rest)) => {
                if let Some(below) = self.step_into(step) {
                    below.append(rest, value);
                }
            }
            None => match self {
                Self::List(list) => list.push(value),
                _ => *self = Self::List(vec![value]),
            },
        }
    }

    /// Returns what one step leads to, made if it is not there.
    fn step_into(&mut self, step: &Step) -> Option<&mut Self> {
        match step {
            Step::Key(key) => {
                if !matches!(self, Self::Map(_)) {
                    *self = Self::Map(Vec::new());
                }
                let Self::Map(map) = self else { return None };
                let index = map.iter().position(|(own, _)| own == key).unwrap_or_else(|| {
                    map.push((key.clone(), Self::Empty));
                    map.len() - 1
                });
                map.get_mut(index).map(|(_, value)| value)
            }
            step => {
                if !matches!(self, Self::List(_)) {
                    *self = Self::List(Vec::new());
                }
                let Self::List(list) = self else { return None };
                let index = here_of(list, step).unwrap_or_else(|| {
                    list.push(Self::new_part(step));
                    list.len() - 1
                });
                list.get_mut(index)
            }
        }
    }

    /// Returns a part of a list that says nothing but its own name.
    fn new_part(step: &Step) -> Self {
        match step {
            Step::Part { key, is } => Self::Map(vec![(key.clone(), Self::Word(is.clone()))]),
            Step::Key(_) | Step::Number(_) => Self::Empty,
        }
    }

    /// Returns whether this, a part of a list, is the one that a step names.
    fn is_part(&self, key: &str, is: &str) -> bool {
        matches!(self, Self::Map(map) if value_of(map, key) == Some(&Self::Word(is.to_owned())))
    }
}

fn value_of<'m>(map: &'m [(String, Meaning)], key: &str) -> Option<&'m Meaning> {
    map.iter().find(|(own, _)| own == key).map(|(_, value)| value)
}

/// Returns the index of the part of a list that a step leads to.
fn here_of(list: &[Meaning], step: &Step) -> Option<usize> {
    match step {
        Step::Key(_) => None,
        Step::Part { key, is } => list.iter().position(|part| part.is_part(key, is)),
        Step::Number(number) => number.checked_sub(1).filter(|index| *index < list.len()),
    }
}
