//! A day on which the whole was measured stands for every reading that has no day of its own. Where
//! one side moves it, readings of the other side would be given a day on which nobody took them.

use super::Change;
use super::Dispute;
use super::differing::same;
use super::differing::value_of;
use crate::writing::editing::Address;
use crate::writing::editing::Meaning;

/// The sections that hold the day.
const OF_THE_WHOLE: [&str; 2] = ["rigged", "measured"];

/// What the day says nothing of.
const APART: [&str; 6] = ["knocks", "bends", "defects", "out-of-use", "name", "spares"];

/// Disputes the changes of theirs that one side's new day does not agree with.
pub(super) fn dispute(states: [&Meaning; 3], found: &mut [Change]) {
    let [base, ours, theirs] = states;
    let Meaning::Map(keys) = ours else { return };
    for section in OF_THE_WHOLE {
        let [was, here, there] = [base, ours, theirs].map(|state| day(state, section));
        if same(here, there) || *was == Meaning::Empty {
            continue;
        }
        let has_readings = |key: &str| !APART.contains(&key) && !key.starts_with("x-");
        let ours_changed = |key: &str| !same(value_of(ours, key), value_of(base, key));
        let read_here = keys.iter().any(|(key, _)| has_readings(key) && ours_changed(key));
        let (moved_here, moved_there) = (!same(here, was), !same(there, was));
        let day = Address::root().key(section);
        for change in found.iter_mut() {
            let is_reading = matches!(first(&change.at), Some(key) if has_readings(key));
            let is_day = change.at.is_within(&day);
            if (moved_here && is_reading) || (moved_there && read_here && is_day) {
                change.dispute.get_or_insert(Dispute::Remeasured);
            }
        }
    }
}

fn day<'m>(state: &'m Meaning, section: &str) -> &'m Meaning {
    value_of(value_of(state, section), "date")
}

/// Returns the key that a place lies under.
fn first(at: &Address) -> Option<&str> {
    match at.steps().first() {
        Some(crate::writing::editing::Step::Key(key)) => Some(key),
        _ => None,
    }
}
