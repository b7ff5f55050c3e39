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
    root(edited).is_ok_and(|new| settled(Meaning::of(&new)) == settled(meant))
}

/// Returns what is said whatever the order of the keys; a section or list without parts is as good as
/// nothing.
fn settled(meaning: Meaning) -> Meaning {
    match meaning {
        Meaning::Map(map) if map.is_empty() => Meaning::Empty,
        Meaning::List(list) if list.is_empty() => Meaning::Empty,
        Meaning::Map(map) => {
            let mut map: Vec<_> =
                map.into_iter().map(|(key, value)| (key, settled(value))).collect();
            map.sort_by(|(one, _), (other, _)| one.cmp(other));
            Meaning::Map(map)
        }
        Meaning::List(list) => Meaning::List(list.into_iter().map(settled).collect()),
        Meaning::Empty | Meaning::Word(_) => meaning,
    }
}
