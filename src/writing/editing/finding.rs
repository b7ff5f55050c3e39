//! Looks for a place in the tree of a text.

use super::address::Address;
use super::address::Step;
use crate::reading::tree::Entry;
use crate::reading::tree::Node;
use crate::reading::tree::Shape;

/// How far down a place could be followed, and what is left of the way.
#[derive(Clone, Copy, Debug)]
pub(super) struct Reached<'n, 'a> {
    /// The value at the end of the part that stands in the text.
    pub(super) node: &'n Node,
    /// The steps that lead there.
    pub(super) taken: usize,
    /// The steps that are left.
    pub(super) left: &'a [Step],
}

/// Follows the steps as far as they stand in the text.
pub(super) fn reached<'n, 'a>(root: &'n Node, at: &'a Address) -> Reached<'n, 'a> {
    let mut here = Reached { node: root, taken: 0, left: at.steps() };
    while let Some((step, left)) = here.left.split_first() {
        let Some(node) = below(here.node, step) else { break };
        here = Reached { node, taken: here.taken + 1, left };
    }
    here
}

/// Returns the value one step down.
#[must_use]
pub fn below<'n>(node: &'n Node, step: &Step) -> Option<&'n Node> {
    match (&node.shape, step) {
        (Shape::Map(entries), Step::Key(key)) => entry(entries, key).map(|entry| &entry.value),
        (Shape::List(items), step) => items.get(index(items, step)?),
        _ => None,
    }
}

/// Returns the entry of a key.
pub(super) fn entry<'n>(entries: &'n [Entry], key: &str) -> Option<&'n Entry> {
    entries.iter().find(|entry| entry.key == key)
}

/// Returns the index of the part of a list that a step leads to.
pub(super) fn index(items: &[Node], step: &Step) -> Option<usize> {
    match step {
        Step::Key(_) => None,
        Step::Number(number) => number.checked_sub(1).filter(|index| *index < items.len()),
        Step::Part { key, is } => items.iter().position(|item| says(item, key, is)),
    }
}

fn says(item: &Node, key: &str, is: &str) -> bool {
    let Shape::Map(entries) = &item.shape else { return false };
    let value = entry(entries, key).map(|entry| &entry.value.shape);
    matches!(value, Some(Shape::Scalar(scalar)) if scalar.text == is)
}
