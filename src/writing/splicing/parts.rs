//! The parts of a list in three states: seats and oars by their names, entries of a log by what
//! they say.

use super::Change;
use super::Dispute;
use super::Does;
use super::differing;
use super::differing::NOTHING;
use super::differing::Places;
use super::differing::Theirs;
use super::differing::Three;
use super::differing::same;
use super::differing::value_of;
use crate::writing::editing::Address;
use crate::writing::editing::Meaning;
use crate::writing::editing::Step;

/// Lists whose parts have a name of their own, and the key that holds it.
const NAMED: [(&str, &str); 3] = [("seats", "seat"), ("rowers", "seat"), ("oars", "oar")];

/// Keys by which an entry of a log is known again when it was changed: the first pair of which one
/// is there.
const KNOWN_BY: [[&str; 2]; 4] =
    [["found", "found"], ["date", "date"], ["finding", "rule"], ["name", "name"]];

/// One part in the states in which it stands, by its index there.
#[derive(Clone, Copy, Debug, Default)]
struct Part {
    base: Option<usize>,
    ours: Option<usize>,
    theirs: Option<usize>,
}

/// Finds what theirs changes in a list of sections, and returns what it says with all of it.
pub(super) fn changes(
    theirs: &Theirs<'_>,
    three: Three<'_>,
    at: &Places,
    found: &mut Vec<Change>,
) -> Meaning {
    let lists = [of(three.base), of(three.ours), of(three.theirs)];
    let key = key_of(&at.ours).filter(|key| are_named(&lists, key));
    let parts = key.map_or_else(|| of_log(&lists), |key| named(&lists, key));
    let mut meant: Vec<Option<Meaning>> = lists[1].iter().cloned().map(Some).collect();
    for part in parts {
        let says = of_part(theirs, &lists, (part, key), at, found);
        match part.ours {
            Some(own) => meant[own] = says,
            None => meant.extend(says.map(Some)),
        }
    }
    Meaning::List(meant.into_iter().flatten().collect())
}

fn of(state: &Meaning) -> &[Meaning] {
    match state {
        Meaning::List(parts) => parts,
        _ => &[],
    }
}

/// Returns the key that names the parts of the list at a place.
fn key_of(at: &Address) -> Option<&'static str> {
    let Some(Step::Key(list)) = at.steps().last() else { return None };
    NAMED.iter().find(|(name, _)| name == list).map(|(_, key)| *key)
}

/// Returns whether every part of every list has a name that no other part of it has.
fn are_named(lists: &[&[Meaning]; 3], key: &str) -> bool {
    lists.iter().all(|list| {
        let names: Vec<&Meaning> = list.iter().map(|part| value_of(part, key)).collect();
        let is_own = |(index, name): (usize, &&Meaning)| {
            **name != Meaning::Empty && !names[..index].contains(name)
        };
        names.iter().enumerate().all(is_own)
    })
}

fn named(lists: &[&[Meaning]; 3], key: &str) -> Vec<Part> {
    let [base, ours, theirs] = lists;
    let find = |list: &[Meaning], name| list.iter().position(|part| value_of(part, key) == name);
    let of_base = base.iter().enumerate().map(|(index, part)| {
        let name = value_of(part, key);
        Part { base: Some(index), ours: find(ours, name), theirs: find(theirs, name) }
    });
    let new = theirs.iter().enumerate().filter_map(|(index, part)| {
        let name = value_of(part, key);
        let is_new = find(base, name).is_none();
        is_new.then(|| Part { base: None, ours: find(ours, name), theirs: Some(index) })
    });
    of_base.chain(new).collect()
}

/// Pairs the entries of a log: those that say the same, then those known again in their order. What
/// both sides added is one entry only if it says the same.
fn of_log(lists: &[&[Meaning]; 3]) -> Vec<Part> {
    let [base, ours, theirs] = lists;
    let (in_ours, in_theirs) = (partners(base, ours), partners(base, theirs));
    let of_base = (0..base.len()).map(|index| Part {
        base: Some(index),
        ours: in_ours[index],
        theirs: in_theirs[index],
    });
    let new_of = |partners: &[Option<usize>], list: &[Meaning]| -> Vec<usize> {
        (0..list.len()).filter(|index| !partners.contains(&Some(*index))).collect()
    };
    let new_ours = new_of(&in_ours, ours);
    let new = new_of(&in_theirs, theirs).into_iter().map(|index| {
        let twin = new_ours.iter().copied().find(|own| same(&ours[*own], &theirs[index]));
        Part { base: None, ours: twin, theirs: Some(index) }
    });
    of_base.chain(new).collect()
}

/// Returns, for each entry of the old list, its partner in the new one.
fn partners(old: &[Meaning], new: &[Meaning]) -> Vec<Option<usize>> {
    let mut partners = vec![None; old.len()];
    for test in [same, is_known_again] {
        for (index, part) in old.iter().enumerate() {
            if partners[index].is_none() {
                let free = |at: &usize| !partners.contains(&Some(*at));
                partners[index] = (0..new.len()).filter(free).find(|at| test(part, &new[*at]));
            }
        }
    }
    partners
}

fn is_known_again(one: &Meaning, other: &Meaning) -> bool {
    let is_there = |keys: &[&str; 2]| *value_of(one, keys[0]) != Meaning::Empty;
    let keys = KNOWN_BY.into_iter().find(is_there);
    keys.is_some_and(|keys| keys.iter().all(|key| value_of(one, key) == value_of(other, key)))
}

/// Finds what theirs changes in one part, and returns what it says with all of it; nothing where it
/// is gone. The names of seats and oars hold their fields apart; an entry of a log is one thing, put
/// together by whoever signed it, and never joined from two sides.
fn of_part(
    theirs: &Theirs<'_>,
    lists: &[&[Meaning]; 3],
    (part, key): (Part, Option<&str>),
    at: &Places,
    found: &mut Vec<Change>,
) -> Option<Meaning> {
    let state = |list: usize, index: Option<usize>| index.map_or(NOTHING, |at| &lists[list][at]);
    let (base, ours) = (state(0, part.base), state(1, part.ours));
    let place = |own: usize| match key.map(|key| (key, value_of(ours, key))) {
        Some((key, Meaning::Word(name))) => at.ours.part(key, name),
        _ => at.ours.number(own + 1),
    };
    let dispute = |disputed: bool| disputed.then_some(Dispute::Both);
    match (part.ours, part.theirs) {
        (Some(own), Some(other)) => {
            let three = Three { base, ours, theirs: &lists[2][other] };
            let at = Places { ours: place(own), theirs: at.theirs.number(other + 1) };
            let is_entry = key.is_none() && !same(ours, base) && !same(three.theirs, base);
            Some(match is_entry && !same(ours, three.theirs) {
                true => differing::of_whole(theirs, three, &at, found),
                false => differing::of_value(theirs, three, &at, found),
            })
        }
        (Some(own), None) => {
            let dispute = dispute(!same(ours, base));
            found.push(Change { at: place(own), does: Does::Remove, dispute });
            None
        }
        (None, Some(other)) => {
            let value = &lists[2][other];
            // Taken away here, changed there.
            let disputed = part.base.is_some();
            if disputed && same(value, base) {
                return None;
            }
            let does = Does::Append(theirs.wording(&at.theirs.number(other + 1), value));
            found.push(Change { at: at.ours.clone(), does, dispute: dispute(disputed) });
            Some(value.clone())
        }
        (None, None) => None,
    }
}
