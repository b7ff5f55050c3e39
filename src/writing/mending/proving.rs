//! Proves a correction: its fault is gone, and nothing else is said otherwise than before.

use super::State;
use crate::model::Name;
use crate::model::Said;
use crate::model::Written;
use crate::reading::Fault;
use crate::reading::What;

/// Returns whether the new text says what the old one said, but for the fault that is gone.
pub(super) fn holds(old: &State, new: &State, fault: &Fault) -> bool {
    match &fault.what {
        What::UnknownKey { nearest: Some(key), .. } => {
            let known = beside(&fault.name, key);
            let is_cured = |other: &Fault| is_same(other, fault) || is_missing(other, key, &known);
            rest_of_faults(old, new, is_cured)
                && rest_of_values(old, new, |name| {
                    name.is_within(known.as_str()) || name.is_within(fault.name.as_str())
                })
        }
        _ => {
            rest_of_faults(old, new, |other| is_same(other, fault))
                && same_digits(old, new)
                && rest_of_values(old, new, |name| *name == fault.name)
                && figures(new, &fault.name) > figures(old, &fault.name)
        }
    }
}

/// Returns the name of another key of the same section.
fn beside(name: &Name, key: &str) -> Name {
    match name.as_str().rsplit_once('/') {
        Some((section, _)) => Name::record(section).at(key),
        None => Name::record(key),
    }
}

fn is_same(one: &Fault, other: &Fault) -> bool {
    (&one.name, &one.what, one.place) == (&other.name, &other.what, other.place)
}

/// Returns whether a fault tells that the very key is missing that the correction writes.
fn is_missing(fault: &Fault, key: &str, name: &Name) -> bool {
    matches!(fault.what, What::MissingKey { key: missing } if missing == key) && fault.name == *name
}

/// Returns whether the faults are the old ones but for those that are cured, and some are.
fn rest_of_faults(old: &State, new: &State, is_cured: impl Fn(&Fault) -> bool) -> bool {
    let told = |fault: &Fault| format!("{}: {:?}", fault.name, fault.what);
    let mut left: Vec<String> =
        old.faults.iter().filter(|fault| !is_cured(fault)).map(told).collect();
    let mut now: Vec<String> = new.faults.iter().map(told).collect();
    left.sort_unstable();
    now.sort_unstable();
    left == now && now.len() < old.faults.len()
}

/// Returns whether every value that is not at the corrected place says what it said.
fn rest_of_values(old: &State, new: &State, is_there: impl Fn(&Name) -> bool) -> bool {
    let rest = |state: &State| -> Vec<(Name, Said)> {
        let all = state.book.written();
        let others = all.filter(|written| !is_there(&written.name));
        others.map(|written| (written.name.clone(), written.said.clone())).collect()
    };
    rest(old) == rest(new)
}

/// Returns whether both texts have the same digits in the same order.
fn same_digits(old: &State, new: &State) -> bool {
    let digits = |text: &str| text.chars().filter(char::is_ascii_digit).collect::<String>();
    digits(&old.text) == digits(&new.text)
}

/// Returns how many figures are read at a place.
fn figures(state: &State, name: &Name) -> usize {
    let is_figure = |written: &&Written| {
        written.name == *name && matches!(written.said, Said::Figure { .. } | Said::Slope(_))
    };
    state.book.written().filter(is_figure).count()
}
