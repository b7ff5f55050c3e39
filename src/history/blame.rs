//! Who set each value that stands in a record now.

use super::graph::Cell;
use super::kept::Kept;
use super::measured::LastMeasured;
use super::past::Past;
use super::threads::Thread;
use crate::model::Name;

/// A value that stands, and which node of the past set it.
#[derive(Clone, Debug, PartialEq)]
pub struct Set {
    /// Its name.
    pub name: Name,
    /// What it is; none where it can't be read now.
    pub value: Option<Kept>,
    /// The node that set it.
    pub node: usize,
    /// When it was measured, and by whom; none where it is nothing measured.
    pub measured: Option<LastMeasured>,
}

/// Returns every value that stands at the last step of the past, by name, each with the node that
/// set it: a value is passed to any parent that has the same.
#[must_use]
pub fn blame(past: &Past) -> Vec<Set> {
    let Some(last) = past.graph.last() else { return Vec::new() };
    let node = &past.graph.nodes[last];
    let set = |thread: &Thread| {
        let own = past.value(node.state, thread)?;
        let values = past.values(thread);
        let traced = past.graph.trace(|state| values.cell(state));
        let value = values.value(values.cell(node.state)).cloned();
        let is_unread = values.cell(node.state) == Cell::Unclear;
        let origin = if is_unread { last } else { traced[last].origin };
        let name = thread.name.clone();
        Some(Set { name, value, node: origin, measured: own.measured.clone() })
    };
    past.threads().iter().filter_map(set).collect()
}
