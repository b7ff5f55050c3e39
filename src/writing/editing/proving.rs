//! Proves an edit: the new text says what the old one said, but for the target.

use super::Deed;
use super::address::Address;
use super::meaning::Meaning;
use super::root;
use crate::reading::tree::Node;

/// Returns whether the edited text says what the deed makes of the old one.
pub(super) fn holds(old: &Node, edited: &str, at: &Address, deed: &Deed<'_>) -> bool {
    let mut meant = Meaning::of(old);
    match deed {
        Deed::Set(value) => meant.set(at.steps(), value.meaning().clone()),
        Deed::Append(value) => meant.append(at.steps(), value.meaning().clone()),
        Deed::Remove => meant.remove(at.steps()),
    }
    let meant = meant.settled();
    root(edited).is_ok_and(|new| Meaning::of(&new).settled() == meant)
}
