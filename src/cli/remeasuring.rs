//! The readings that changed since the commits before, each with the days it was read on.

use std::collections::HashMap;
use std::collections::HashSet;

use super::parting;
use super::subject::Origin;
use crate::history;
use crate::history::ChangeKind;
use crate::model::Book;
use crate::model::Name;
use crate::reading;
use crate::rules::ChangedReading;
use crate::store::CommitId;
use crate::store::Content;
use crate::store::Named;
use crate::store::StoreError;

/// Returns every reading that differs from what each of the commits before says, and, where an
/// earlier state is named, from what that says: a change may take several commits.
///
/// # Errors
///
/// A commit before that can't be had.
pub(super) fn changed_readings(
    origin: &Origin,
    since: Option<&str>,
    texts: &[Named],
) -> Result<Vec<ChangedReading>, StoreError> {
    let mut of_all: Option<HashMap<Name, ChangedReading>> = None;
    for parent in &origin.parents {
        let changed = since_parent(origin, *parent, texts)?;
        of_all = Some(match of_all {
            None => changed,
            Some(mut all) => {
                all.retain(|name, _| changed.contains_key(name));
                all
            }
        });
    }
    let mut changed = of_all.unwrap_or_default();
    // A base that can't be had is told where the findings are held against it.
    let base = since.and_then(|rev| parting::base(origin, rev).ok());
    if let Some(base) = base.filter(|base| !origin.parents.contains(base)) {
        let not_later = since_parent(origin, base, texts)?.into_iter();
        changed.extend(not_later.filter(|(_, one)| one.read_on <= one.read_before));
    }
    Ok(changed.into_values().collect())
}

/// Returns readings where they stand in a book; each once, however many readings it holds. Of a boat
/// that says herself she was worked out there are none: that is told of her as a danger.
pub(super) fn placed(changed: Vec<ChangedReading>, book: &Book) -> Vec<ChangedReading> {
    let mut left: HashMap<Name, ChangedReading> =
        changed.into_iter().map(|one| (one.name.clone(), one)).collect();
    if left.is_empty() {
        return Vec::new();
    }
    let predicted = book.boats.iter().filter(|boat| boat.predicted.is_some_and(|own| own.value));
    for boat in predicted {
        left.retain(|name, _| !name.is_within(&boat.id.value));
    }
    let placed = book.written().filter_map(|own| {
        let one = left.remove(&own.name)?;
        Some(ChangedReading { place: own.place, ..one })
    });
    placed.collect()
}

/// Only files that are not the same in both are read.
fn since_parent(
    origin: &Origin,
    parent: CommitId,
    texts: &[Named],
) -> Result<HashMap<Name, ChangedReading>, StoreError> {
    let repository = &origin.repository;
    let records = repository.records_beside(parent, texts)?;
    let before: HashMap<&str, _> = records.iter().map(|record| (&*record.path, record)).collect();
    let is_same = |named: &Named| match (&named.content, before.get(named.path.as_str())) {
        (Content::Text(text), Some(record)) => !record.link && record.blob.is_of(text),
        _ => false,
    };
    let (same, differing): (Vec<&Named>, Vec<&Named>) =
        texts.iter().partition(|named| is_same(named));
    let same: HashSet<&str> = same.into_iter().map(|named| named.path.as_str()).collect();
    let mut old = Vec::new();
    for record in records.iter().filter(|record| !same.contains(&*record.path)) {
        let content = repository.content(record)?;
        old.push(Named { path: record.path.to_string(), content });
    }
    let (old, _) = reading::read("before", old);
    let (new, _) = reading::read("now", differing.into_iter().cloned().collect());
    Ok(readings(&old, &new))
}

fn readings(old: &Book, new: &Book) -> HashMap<Name, ChangedReading> {
    let changed = history::changes(old, new).into_iter();
    let changed = changed.filter(|change| change.kind == ChangeKind::Changed);
    let reading = |change: history::Change| {
        let (old, new) = (change.old?, change.new?);
        let (read_before, read_on) = (old.measured?.on, new.measured?.on);
        let place = new.place?;
        let name = change.name;
        let one = ChangedReading {
            name: name.clone(),
            place,
            old: old.text,
            new: new.text,
            read_on,
            read_before,
        };
        Some((name, one))
    };
    changed.filter_map(reading).collect()
}
