//! Which records, seats, oars and parts of lists of two books are one and the same.

use std::collections::BTreeMap;
use std::collections::HashMap;

use super::grouping::Group;
use super::likeness::Likeness;
use super::likeness::same;
use super::value::Value;
use super::values::RecordValues;
use crate::model::Book;
use crate::model::Name;
use crate::reading::RecordKind;

/// Two that are one, or one that has no other.
pub(super) type Pair<T> = (Option<T>, Option<T>);

/// How many comparisons of parts of one list are made; beyond, they are paired in order.
const MOST_COMPARED: usize = 250_000;

/// What tells a part of a list from the others, for people.
const KEYS: [(&str, &[&str]); 4] = [
    ("waivers", &["finding", "rule"]),
    ("people", &["name"]),
    ("read-again", &["date"]),
    ("bends", &["date", "seat", "part"]),
];

/// What it counts that two parts have the same key: more than all other values together.
const OF_ONE_KEY: usize = 1_000;

/// Returns the fields that tell a part of a list from the others.
fn keys_of(grouped: &Grouped) -> &'static [&'static str] {
    let list = list_of(grouped).and_then(|list| list.as_str().rsplit('/').next());
    KEYS.iter().find(|(own, _)| Some(*own) == list).map_or(&[], |(_, keys)| *keys)
}

/// Pairs records by kind and id. Of several of one id, those in one file belong together.
pub(super) fn records<'v, 'b>(
    (old_book, old): (&Book, &'v [RecordValues<'b>]),
    (new_book, new): (&Book, &'v [RecordValues<'b>]),
) -> Vec<Pair<&'v RecordValues<'b>>> {
    type Sides<'v, 'b> = (Vec<&'v RecordValues<'b>>, Vec<&'v RecordValues<'b>>);
    let mut by_id: BTreeMap<(RecordKind, &str), Sides> = BTreeMap::new();
    for record in old {
        by_id.entry((record.kind, &record.id)).or_default().0.push(record);
    }
    for record in new {
        by_id.entry((record.kind, &record.id)).or_default().1.push(record);
    }
    let in_one_file = |old: &RecordValues, new: &RecordValues| {
        old_book.file(old.file).path == new_book.file(new.file).path
    };
    by_id.into_values().flat_map(|(old, new)| paired(old, new, &[&in_one_file])).collect()
}

/// Pairs those that a test takes for one, test after test, then the rest in order.
fn paired<T: Copy>(old: Vec<T>, new: Vec<T>, tests: &[&dyn Fn(T, T) -> bool]) -> Vec<Pair<T>> {
    let mut partner: Vec<Option<usize>> = vec![None; old.len()];
    let mut taken = vec![false; new.len()];
    for test in tests {
        for (at, own) in
            old.iter().enumerate().filter(|(at, _)| partner[*at].is_none()).collect::<Vec<_>>()
        {
            let found = (0..new.len()).find(|other| !taken[*other] && test(*own, new[*other]));
            if let Some(other) = found {
                (partner[at], taken[other]) = (Some(other), true);
            }
        }
    }
    let mut rest = (0..new.len()).filter(|other| !taken[*other]).collect::<Vec<_>>().into_iter();
    for free in partner.iter_mut().filter(|partner| partner.is_none()) {
        *free = rest.next();
    }
    let both = old.iter().zip(partner).map(|(old, at)| (Some(*old), at.map(|at| new[at])));
    both.chain(rest.map(|at| (None, Some(new[at])))).collect()
}

/// A seat, an oar, a part of a list or the record itself, with its values.
pub(super) struct Grouped<'v, 'b> {
    pub(super) group: Group,
    pub(super) values: Vec<&'v Value<'b>>,
}

/// Returns the values of a record by group, in the order they begin.
pub(super) fn grouped<'v, 'b>(record: &'v RecordValues<'b>) -> Vec<Grouped<'v, 'b>> {
    let mut index: HashMap<&Group, usize> = HashMap::new();
    let mut groups: Vec<Grouped> = Vec::new();
    for value in &record.values {
        let at = *index.entry(&value.group).or_insert_with(|| {
            groups.push(Grouped { group: value.group.clone(), values: Vec::new() });
            groups.len() - 1
        });
        groups[at].values.push(value);
    }
    groups
}

/// Pairs the groups of two records, in the order of the new one; those that are gone come last.
pub(super) fn groups<'g, 'v, 'b>(
    old: &'g [Grouped<'v, 'b>],
    new: &'g [Grouped<'v, 'b>],
) -> Vec<Pair<&'g Grouped<'v, 'b>>> {
    let mut partner: Vec<Option<usize>> = vec![None; new.len()];
    let mut taken = vec![false; old.len()];
    let by_group: HashMap<&Group, usize> =
        old.iter().enumerate().map(|(at, own)| (&own.group, at)).collect();
    for (at, own) in new.iter().enumerate().filter(|(_, own)| list_of(own).is_none()) {
        if let Some(other) = by_group.get(&own.group) {
            (partner[at], taken[*other]) = (Some(*other), true);
        }
    }
    for (old_at, new_at) in parts_of_lists(old, new) {
        (partner[new_at], taken[old_at]) = (Some(old_at), true);
    }
    let here = new.iter().zip(partner).map(|(new, at)| (at.map(|at| &old[at]), Some(new)));
    let gone = old.iter().zip(taken).filter(|(_, taken)| !taken).map(|(old, _)| (Some(old), None));
    here.chain(gone).collect()
}

/// Pairs the parts of lists by what they say; numbers and days only say where they stand.
pub(super) fn parts_of_lists(old: &[Grouped], new: &[Grouped]) -> Vec<(usize, usize)> {
    let pairs = |(own, other): (Vec<usize>, Vec<usize>)| parts(old, new, &own, &other);
    lists(old, new).into_iter().flat_map(pairs).collect()
}

fn list_of<'g>(grouped: &'g Grouped) -> Option<&'g Name> {
    match &grouped.group {
        Group::Part { list, .. } => Some(list),
        _ => None,
    }
}

/// Returns, list by list, the parts of both sides.
fn lists(old: &[Grouped], new: &[Grouped]) -> Vec<(Vec<usize>, Vec<usize>)> {
    let mut lists: BTreeMap<&Name, (Vec<usize>, Vec<usize>)> = BTreeMap::new();
    for (at, own) in old.iter().enumerate() {
        list_of(own).into_iter().for_each(|list| lists.entry(list).or_default().0.push(at));
    }
    for (at, own) in new.iter().enumerate() {
        list_of(own).into_iter().for_each(|list| lists.entry(list).or_default().1.push(at));
    }
    lists.into_values().collect()
}

/// Pairs the parts of one list: those that say the same first, then those of one key, then those
/// that share the most.
fn parts(old: &[Grouped], new: &[Grouped], own: &[usize], other: &[usize]) -> Vec<(usize, usize)> {
    let (mut own, mut other) = (own.to_vec(), other.to_vec());
    let mut pairs = Vec::new();
    let mut take = |own: &mut Vec<usize>,
                    other: &mut Vec<usize>,
                    least: &dyn Fn(usize) -> usize| {
        own.retain(|old_at| {
            let scored = other.iter().map(|new_at| (score(&old[*old_at], &new[*new_at]), *new_at));
            let enough = scored.filter(|(score, _)| *score >= least(*old_at));
            // Of equal scores the first counts.
            let best = enough.rev().max_by_key(|(score, _)| *score);
            if let Some((_, new_at)) = best {
                pairs.push((*old_at, new_at));
                other.retain(|at| *at != new_at);
            }
            best.is_none()
        });
    };
    if own.len().saturating_mul(other.len()) > MOST_COMPARED {
        return own.into_iter().zip(other).collect();
    }
    take(&mut own, &mut other, &|_| usize::MAX);
    take(&mut own, &mut other, &|_| OF_ONE_KEY);
    take(&mut own, &mut other, &|at| old[at].values.len().div_ceil(2).max(1));
    pairs
}

/// Returns how many values two parts share; without end where they say the same.
fn score(old: &Grouped, new: &Grouped) -> usize {
    let shared = old.values.iter().filter(|value| {
        let below = old.group.below(&value.name);
        let other = new.values.iter().find(|other| new.group.below(&other.name) == below);
        let alike = other.map(|other| same(value, other));
        alike.is_some_and(|alike| !matches!(alike, Likeness::Changed | Likeness::Unread))
    });
    let shared = shared.count();
    let all = shared == old.values.len() && shared == new.values.len();
    let keys = keys_of(old);
    let text = |grouped: &Grouped, key: &str| {
        let own = grouped.values.iter().find(|own| grouped.group.below(&own.name) == key);
        own.map(|own| own.text())
    };
    let one = !keys.is_empty() && keys.iter().all(|key| text(old, key) == text(new, key));
    match (all, one) {
        (true, _) => usize::MAX,
        (false, true) => shared + OF_ONE_KEY,
        (false, false) => shared,
    }
}
