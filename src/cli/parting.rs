//! Where the history of what is checked and another commit parted, and the book as it was there.

use super::book;
use super::exit::Exit;
use super::limits_from;
use super::output::Done;
use super::states;
use super::subject::Origin;
use crate::model::Book;
use crate::reading;
use crate::reading::Fault;
use crate::reports::shown;
use crate::store::CommitId;
use crate::store::Repository;
use crate::store::RepositoryError;
use crate::store::Store;
use crate::store::StoreError;
use crate::store::WAIVERS_FILE;

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
    let called = format!("commit {}{day}{}", base.short(), parted(repository, base, rev));
    let Some(store) = store else {
        let called = format!("{called}, before there was a book");
        return Ok(EarlierBook { called, book: Book::default(), faults: Vec::new() });
    };
    let store = limits_from::with_settings_of(store, now, &[WAIVERS_FILE]);
    let (book, faults) = reading::read(&store.name, store.files);
    Ok(EarlierBook { called, book, faults })
}

/// Returns what is said of the place where a subject and `rev` parted; nothing where it is `rev`
/// itself, called by its id.
fn parted(repository: &Repository, base: CommitId, rev: &str) -> String {
    let is_id = rev.len() >= 40 && rev.bytes().all(|byte| byte.is_ascii_hexdigit());
    let short = if is_id { rev.get(..8).unwrap_or(rev) } else { rev };
    match repository.commit(rev) {
        Ok(id) if id == base && is_id => String::new(),
        Ok(id) if id == base => format!(" ({short})"),
        _ => format!(", where this and {short} parted"),
    }
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
pub(super) fn base(origin: &Origin, rev: &str) -> Result<CommitId, Done> {
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
