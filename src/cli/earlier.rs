//! The earlier state that the findings of `lint` are held against, and the readings that changed.

use std::collections::HashMap;
use std::collections::HashSet;

use super::book;
use super::exit::Exit;
use super::output::Done;
use super::states;
use super::subject::Origin;
use crate::history;
use crate::history::ChangeKind;
use crate::model::Book;
use crate::model::Name;
use crate::reading;
use crate::reading::Fault;
use crate::reports::shown;
use crate::rules::ChangedReading;
use crate::store::CommitId;
use crate::store::Content;
use crate::store::Named;
use crate::store::Repository;
use crate::store::RepositoryError;
use crate::store::Store;
use crate::store::StoreError;

/// An earlier state of the book.
pub(super) struct EarlierBook {
    /// What it is called.
    pub(super) called: String,
    pub(super) book: Book,
    pub(super) faults: Vec<Fault>,
}

/// Returns the book where the subject and `rev` parted, with the settings that hold now.
///
/// # Errors
///
/// What the command comes to instead: that state can't be had. It is never taken for an empty one,
/// which only a commit without any book is.
pub(super) fn since(origin: &Origin, rev: &str, now: &Store) -> Result<EarlierBook, Done> {
    if origin.tips.is_empty() && rev == "HEAD" {
        let called = "the time before the first commit".to_owned();
        return Ok(EarlierBook { called, book: Book::default(), faults: Vec::new() });
    }
    let base = base(origin, rev)?;
    let repository = &origin.repository;
    let had = || Ok((repository.details(base)?, at_or_before_the_book(repository, base)?));
    let (details, store) = had().map_err(|error: StoreError| book::could_not(&error))?;
    let day = details.committer.when.and_then(states::day_of);
    let day = day.map_or(String::new(), |day| format!(" of {day}"));
    let called = format!("commit {}{day}, where this and {rev} parted", base.short());
    let Some(store) = store else {
        let called = format!("{called}, before there was a book");
        return Ok(EarlierBook { called, book: Book::default(), faults: Vec::new() });
    };
    let store = with_settings_of(store, now, &["waivers.yaml"]);
    let (book, faults) = reading::read(&store.name, store.files);
    Ok(EarlierBook { called, book, faults })
}

/// Returns the texts of a commit; none where it holds no book in any folder. A book that lay
/// elsewhere is no missing one.
fn at_or_before_the_book(
    repository: &Repository,
    id: CommitId,
) -> Result<Option<Store>, StoreError> {
    match repository.at(id) {
        Err(StoreError::Repository(RepositoryError::NoBook { .. }))
            if !repository.has_any_book(id)? =>
        {
            Ok(None)
        }
        had => had.map(Some),
    }
}

/// Returns the newest commit that the subject and `rev` have in common.
fn base(origin: &Origin, rev: &str) -> Result<CommitId, Done> {
    let repository = &origin.repository;
    let had = || {
        let rev = repository.commit(rev)?;
        let mut newest: Option<CommitId> = None;
        for tip in &origin.tips {
            let Some(base) = repository.merge_base(rev, *tip)? else { continue };
            let later = match newest {
                Some(before) => repository.merge_base(before, base)? == Some(before),
                None => true,
            };
            newest = if later { Some(base) } else { newest };
        }
        Ok(newest)
    };
    let found = had().map_err(|error: StoreError| book::could_not(&error))?;
    found.ok_or_else(|| {
        let mut told = vec![shown::line(&format!(
            "This state and {rev} share no history that is here, so nothing can be called new or known."
        ))];
        if repository.is_shallow() {
            told.push("The clone is shallow. To fetch the rest: git fetch --unshallow".to_owned());
        }
        Done::refused(Exit::NotChecked, told)
    })
}

/// Returns a state with the settings of another: its club, its classes and its waivers, but for
/// those that are `kept`.
pub(super) fn with_settings_of(mut store: Store, other: &Store, kept: &[&str]) -> Store {
    let setting = |named: &Named| is_setting(&named.path) && !kept.contains(&named.path.as_str());
    store.files.retain(|named| !setting(named));
    store.files.extend(other.files.iter().filter(|named| setting(named)).cloned());
    store.files.sort_by(|one, other| one.path.cmp(&other.path));
    store
}

/// Returns whether a text is one of the book's settings.
pub(super) fn is_setting(path: &str) -> bool {
    let in_classes = path.split('/').next().is_some_and(|top| top.eq_ignore_ascii_case("classes"));
    path == "club.yaml" || path == "waivers.yaml" || in_classes
}

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
    let base = since.and_then(|rev| base(origin, rev).ok());
    if let Some(base) = base.filter(|base| !origin.parents.contains(base)) {
        let not_later = since_parent(origin, base, texts)?.into_iter();
        changed.extend(not_later.filter(|(_, one)| one.read_on <= one.read_before));
    }
    Ok(changed.into_values().collect())
}

/// Returns readings where they stand in a book; each once, however many readings it holds.
pub(super) fn placed(changed: Vec<ChangedReading>, book: &Book) -> Vec<ChangedReading> {
    let mut left: HashMap<Name, ChangedReading> =
        changed.into_iter().map(|one| (one.name.clone(), one)).collect();
    if left.is_empty() {
        return Vec::new();
    }
    let placed = book.written.iter().filter_map(|own| {
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
