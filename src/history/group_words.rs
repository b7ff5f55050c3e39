//! What stands in a seat, an oar or a part of a list, in a few words.

use super::grouping::Group;
use super::value::Value;

/// How many values are named one by one.
const NAMED: usize = 8;

/// Returns what stands in a group.
pub(super) fn contents(values: &[&Value], group: &Group) -> String {
    if values.len() > NAMED {
        return format!("{} values", values.len());
    }
    let each = values.iter().map(|value| format!("{} {}", group.below(&value.name), value.text()));
    each.collect::<Vec<_>>().join(", ")
}
