//! What changed between two books, by what they say.

use std::collections::HashMap;

use super::change::Change;
use super::change::ChangeKind;
use super::change::State;
use super::doubt::Doubt;
use super::doubt::strangers;
use super::likeness::Likeness;
use super::likeness::same;
use super::moving::with_moves;
use super::pairing;
use super::pairing::Grouped;
use super::pairing::grouped;
use super::value::Value;
use super::value::decimal;
use super::value::tells_which;
use super::values::RecordValues;
use super::values::of_book;
use crate::model::Book;
use crate::model::Name;

/// Returns everything that changed from one book to another: record by record, by kind and id,
/// then what can't be read at all.
#[must_use]
pub fn changes(old: &Book, new: &Book) -> Vec<Change> {
    let (old_records, new_records) = (of_book(old), of_book(new));
    let unread_old = strangers((old, &old_records), (new, &new_records));
    let unread_new = strangers((new, &new_records), (old, &old_records));
    let mut changes = Vec::new();
    for pair in pairing::records((old, &old_records), (new, &new_records)) {
        match pair {
            (Some(before), Some(after)) => changes.extend(of_record(before, after)),
            (Some(gone), None) => {
                let kind = unread_new.kind_of(gone, old, ChangeKind::Removed);
                changes.push(whole(kind, gone, Some(old), None));
            }
            (None, Some(come)) => {
                let kind = unread_old.kind_of(come, new, ChangeKind::Added);
                changes.push(whole(kind, come, None, Some(new)));
            }
            (None, None) => {}
        }
    }
    let mut changes = with_moves(changes, &old_records, &new_records);
    changes.extend(unread_old.told(old, true));
    changes.extend(unread_new.told(new, false));
    changes
}

fn whole(
    kind: ChangeKind,
    record: &RecordValues,
    old: Option<&Book>,
    new: Option<&Book>,
) -> Change {
    let state = |book: &Book| State::words(book.file(record.file).path.clone(), record.place(book));
    Change::of_whole(kind, record.name(), old.map(state), new.map(state))
}

/// Returns what changed in one record.
fn of_record(old: &RecordValues, new: &RecordValues) -> Vec<Change> {
    let (old_groups, new_groups) = (grouped(old), grouped(new));
    let (was, is) = (Doubt::of(old, true), Doubt::of(new, false));
    let compare = |pair: pairing::Pair<&Grouped>| match pair {
        (Some(before), Some(after)) => of_group(&new.name(), before, after, &was, &is),
        (Some(gone), None) => vec![group(ChangeKind::Removed, &new.name(), gone, &is)],
        (None, Some(come)) => vec![group(ChangeKind::Added, &new.name(), come, &was)],
        (None, None) => Vec::new(),
    };
    pairing::groups(&old_groups, &new_groups).into_iter().flat_map(compare).collect()
}

/// A seat, an oar or a part of a list that came or went as a whole.
fn group(kind: ChangeKind, record: &Name, grouped: &Grouped, other: &Doubt) -> Change {
    let kind = if other.may_hold(&grouped.group) { ChangeKind::Unreadable } else { kind };
    let name = grouped.group.name().unwrap_or(record).clone();
    let state = Some(State::of_group(&grouped.values, &grouped.group));
    let came = kind == ChangeKind::Added || (kind == ChangeKind::Unreadable && other.is_old());
    let (old, new) = if came { (None, state) } else { (state, None) };
    Change::of_whole(kind, name, old, new)
}

fn of_group(record: &Name, old: &Grouped, new: &Grouped, was: &Doubt, is: &Doubt) -> Vec<Change> {
    let whole = new.group.name().unwrap_or(record);
    let (before, after) = (by_field(old), by_field(new));
    let mut changes = Vec::new();
    for value in &new.values {
        changes.extend(match before.get(new.group.below(&value.name)) {
            Some(before) => of_value(whole, before, value),
            None => Some(lone(ChangeKind::Added, whole, value, was)),
        });
    }
    let gone = old.values.iter().filter(|own| !after.contains_key(old.group.below(&own.name)));
    changes.extend(gone.map(|value| lone(ChangeKind::Removed, whole, value, is)));
    changes
}

/// Returns the values of a group by their names in it; of two of one name, the first.
fn by_field<'g, 'b>(grouped: &'g Grouped<'_, 'b>) -> HashMap<&'g str, &'g Value<'b>> {
    let mut fields = HashMap::new();
    for value in &grouped.values {
        fields.entry(grouped.group.below(&value.name)).or_insert(*value);
    }
    fields
}

/// A value that only one side has.
fn lone(kind: ChangeKind, whole: &Name, value: &Value, other: &Doubt) -> Change {
    let added = kind == ChangeKind::Added;
    let unread = value.is_unread() || other.covers(&value.name);
    let kind = if unread { ChangeKind::Unreadable } else { kind };
    let mut state = State::of(value);
    let figure = value.figure();
    state.figure = figure.map(|(figure, _)| figure);
    let (old, new) = if added { (None, Some(state)) } else { (Some(state), None) };
    Change {
        name: value.name.clone(),
        whole: whole.clone(),
        kind,
        old,
        new,
        delta: None,
        unit: figure.map_or("", |(_, unit)| unit),
        is_text: value.is_text(),
    }
}

/// Compares a value with itself.
fn of_value(whole: &Name, old: &Value, new: &Value) -> Option<Change> {
    let again = was_measured_again(old, new);
    let kind = match same(old, new) {
        Likeness::Unread => ChangeKind::Unreadable,
        Likeness::Changed => ChangeKind::Changed,
        Likeness::ReadOften => ChangeKind::ReMeasured,
        _ if again => ChangeKind::ReMeasured,
        Likeness::UnitOnly => ChangeKind::UnitOnly,
        Likeness::PrecisionOnly => ChangeKind::PrecisionOnly,
        Likeness::Same => return None,
    };
    let (mut before, mut after) = (State::of(old), State::of(new));
    let figures = old.figure().zip(new.figure()).filter(|_| old.is_comparable(new));
    if let Some(((was, _), (is, _))) = figures {
        (before.figure, after.figure) = (Some(was), Some(is));
    }
    let changed = kind == ChangeKind::Changed;
    let is_amount = changed && !tells_which(&new.name);
    let delta = figures.filter(|_| is_amount).map(|((was, _), (is, _))| decimal(is - was));
    Some(Change {
        name: new.name.clone(),
        whole: whole.clone(),
        kind,
        old: Some(before),
        new: Some(after),
        delta,
        unit: figures.map_or("", |((_, unit), _)| unit),
        is_text: old.is_text() && new.is_text(),
    })
}

fn was_measured_again(old: &Value, new: &Value) -> bool {
    let days = old.measured.as_ref().zip(new.measured.as_ref());
    days.is_some_and(|(old, new)| new.on > old.on)
}
