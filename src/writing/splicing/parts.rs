//! The parts of a list in three states: seats and oars by their names, entries of a log by what
//! they say.

use super::Change;
use super::Does;
use super::differing;
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

/// Keys by which an entry of a log is known again when it was changed.
const DATES: [&str; 4] = ["found", "date", "finding", "name"];

const NOTHING: &Meaning = &Meaning::Empty;

/// One part in the states in which it stands, by its index there.
#[derive(Clone, Copy, Debug, Default)]
struct Part {
    base: Option<usize>,
    ours: Option<usize>,
    theirs: Option<usize>,
}

/// Finds what theirs changes in a list of sections.
pub(super) fn changes(theirs: &Theirs<'_>, three: Three<'_>, at: &Places, found: &mut Vec<Change>) {
    let lists = [of(three.base), of(three.ours), of(three.theirs)];
    let key = key_of(&at.ours).filter(|key| are_named(&lists, key));
    let parts = key.map_or_else(|| of_log(&lists), |key| named(&lists, key));
    for part in parts {
        of_part(theirs, &lists, (part, key), at, found);
    }
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

/// Pairs the entries of a log: those that say the same, then those of one day in their order. What
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
    for test in [same, is_of_one_day] {
        for (index, part) in old.iter().enumerate() {
            if partners[index].is_none() {
                let free = |at: &usize| !partners.contains(&Some(*at));
                partners[index] = (0..new.len()).filter(free).find(|at| test(part, &new[*at]));
            }
        }
    }
    partners
}

fn is_of_one_day(one: &Meaning, other: &Meaning) -> bool {
    let known = |key: &&str| *value_of(one, key) != Meaning::Empty;
    let key = DATES.iter().copied().find(|key| known(key));
    key.is_some_and(|key| value_of(one, key) == value_of(other, key))
}

fn of_part(
    theirs: &Theirs<'_>,
    lists: &[&[Meaning]; 3],
    (part, key): (Part, Option<&str>),
    at: &Places,
    found: &mut Vec<Change>,
) {
    let state = |list: usize, index: Option<usize>| index.map_or(NOTHING, |at| &lists[list][at]);
    let (base, ours) = (state(0, part.base), state(1, part.ours));
    let place = |own: usize| match key.map(|key| (key, value_of(ours, key))) {
        Some((key, Meaning::Word(name))) => at.ours.part(key, name),
        _ => at.ours.number(own + 1),
    };
    match (part.ours, part.theirs) {
        (Some(own), Some(other)) => {
            let three = Three { base, ours, theirs: &lists[2][other] };
            let at = Places { ours: place(own), theirs: at.theirs.number(other + 1) };
            differing::of_value(theirs, three, &at, found);
        }
        (Some(own), None) => {
            found.push(Change { at: place(own), does: Does::Remove, disputed: !same(ours, base) })
        }
        (None, Some(other)) => {
            let value = &lists[2][other];
            // Taken away here, changed there.
            let disputed = part.base.is_some();
            if !disputed || !same(value, base) {
                let wording = theirs.wording(&at.theirs.number(other + 1), value);
                let does = Does::Append(wording);
                found.push(Change { at: at.ours.clone(), does, disputed });
            }
        }
        (None, None) => {}
    }
}
