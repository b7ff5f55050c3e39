//! What `lint` is asked to check: the files as they lie, a commit, what is about to be committed,
//! a merge.

use std::path::Path;

use super::arguments::Lint;
use super::book;
use super::exit::Exit;
use super::output::Done;
use super::standard_input::TextGiven;
use super::states;
use crate::model::Book;
use crate::reading;
use crate::reports::shown;
use crate::store;
use crate::store::CommitId;
use crate::store::Content;
use crate::store::Repository;
use crate::store::RepositoryError;
use crate::store::Store;
use crate::store::StoreError;
use crate::units::Date;

/// What is to be checked.
pub(super) struct Subject {
    /// Its texts.
    pub(super) store: Store,
    /// The day of its commit, where it is one.
    pub(super) day: Option<Date>,
    /// Where it comes from, where there is a repository that can be had.
    pub(super) origin: Option<Origin>,
    /// Why its past can't be looked at, though there is a repository.
    pub(super) no_past: Option<String>,
    /// Files that a merge can't decide by itself.
    pub(super) conflicts: Vec<String>,
}

/// The repository a subject comes from, and the commits before it.
pub(super) struct Origin {
    pub(super) repository: Repository,
    /// The commits that it follows on; none before the first one.
    pub(super) parents: Vec<CommitId>,
    /// The two sides of a merge, ours first.
    pub(super) sides: Option<[Side; 2]>,
    /// The commit that stands for it when it is compared with others.
    pub(super) tips: Vec<CommitId>,
}

/// One side of a merge.
pub(super) struct Side {
    pub(super) called: String,
    pub(super) book: Book,
}

/// Returns what is to be checked.
///
/// # Errors
///
/// What the command comes to instead: it can't be had.
pub(super) fn asked(
    arguments: &Lint,
    folder: Option<&Path>,
    instead: Option<TextGiven>,
) -> Result<Subject, Done> {
    match (&arguments.at, &arguments.merge_with) {
        (at, Some(theirs)) => merge(folder, at.as_deref().unwrap_or("HEAD"), theirs),
        (Some(rev), None) => commit(folder, rev),
        (None, None) if arguments.staged => staged(folder),
        (None, None) => files(folder, instead),
    }
}

/// In a hook git names the repository and its index; a book that is named is the same everywhere.
fn repository(folder: Option<&Path>) -> Result<Repository, StoreError> {
    match folder {
        Some(folder) => Repository::around(folder),
        None => Repository::from_environment(store::find_book(Path::new(".")).ok().as_deref()),
    }
}

/// Returns the files as they lie in the folder.
///
/// # Errors
///
/// What the command comes to instead: the book can't be had.
pub(super) fn files(folder: Option<&Path>, instead: Option<TextGiven>) -> Result<Subject, Done> {
    let mut store = book::opened(folder).map_err(|error| book::could_not(&error))?;
    if let Some(instead) = instead {
        instead.put_into(&mut store)?;
    }
    let repository = Repository::around(&store.root);
    let conflicts = match repository.as_ref().map(Repository::in_conflict) {
        Ok(Ok(paths)) => taken_out(&mut store, paths),
        Ok(Err(error)) => {
            store.warnings.push(format!("Not known, whether a merge is unfinished: {error}"));
            Vec::new()
        }
        Err(_) => Vec::new(),
    };
    let opened = repository.and_then(origin);
    let (origin, no_past) = match opened {
        Ok(origin) => (Some(origin), None),
        Err(StoreError::Repository(RepositoryError::None { .. })) => (None, None),
        Err(error) => (None, Some(error.to_string())),
    };
    Ok(Subject { store, day: None, origin, no_past, conflicts })
}

/// Takes the texts out of which a merge left both sides, and returns the paths of these and of
/// those that are not there. What somebody has merged by hand is read as it stands.
fn taken_out(store: &mut Store, in_conflict: Vec<String>) -> Vec<String> {
    let is_merged = |path: &String| {
        let named = store.files.iter().find(|named| named.path == *path);
        named.is_some_and(|named| !has_both_sides(&named.content))
    };
    let open: Vec<String> = in_conflict.into_iter().filter(|path| !is_merged(path)).collect();
    store.files.retain(|named| !open.contains(&named.path));
    open
}

fn has_both_sides(content: &Content) -> bool {
    matches!(content, Content::Text(text) if text.lines().any(|line| line.starts_with("<<<<<<< ")))
}

/// What is not committed yet follows on the commit checked out, and on those being merged into it.
fn origin(repository: Repository) -> Result<Origin, StoreError> {
    let mut parents: Vec<CommitId> = repository.head()?.into_iter().collect();
    parents.extend(repository.being_merged()?);
    Ok(Origin { repository, tips: parents.clone(), parents, sides: None })
}

fn staged(folder: Option<&Path>) -> Result<Subject, Done> {
    let had = || staged_in(repository(folder)?, &[]);
    had().map_err(|error: StoreError| book::could_not(&error))
}

/// Returns what is about to be committed, which follows on the `others` too.
///
/// # Errors
///
/// It can't be had.
pub(super) fn staged_in(
    repository: Repository,
    others: &[CommitId],
) -> Result<Subject, StoreError> {
    let store = repository.staged()?;
    let mut origin = origin(repository)?;
    origin.parents.extend(others);
    origin.tips.extend(others);
    Ok(Subject { store, day: None, origin: Some(origin), no_past: None, conflicts: Vec::new() })
}

fn commit(folder: Option<&Path>, rev: &str) -> Result<Subject, Done> {
    let had = || commit_in(repository(folder)?, rev);
    had().map_err(states::refused)
}

/// Returns the book of a commit.
///
/// # Errors
///
/// It can't be had.
pub(super) fn commit_in(repository: Repository, rev: &str) -> Result<Subject, StoreError> {
    let id = repository.commit(rev)?;
    let store = repository.at(id)?;
    let details = repository.details(id)?;
    let day = details.committer.when.and_then(states::day_of);
    let edge = details.at_the_edge;
    let no_past = edge.then(|| "the commit before is not in this shallow clone".to_owned());
    let parents = if edge { Vec::new() } else { details.parents };
    let origin = Origin { repository, parents, tips: vec![id], sides: None };
    Ok(Subject { store, day, origin: Some(origin), no_past, conflicts: Vec::new() })
}

fn merge(folder: Option<&Path>, ours: &str, theirs: &str) -> Result<Subject, Done> {
    let had = || {
        let repository = repository(folder)?;
        let tips = [repository.commit(ours)?, repository.commit(theirs)?];
        let merge = repository.merged(tips[0], tips[1])?;
        let side = |called: &str, id| {
            let store = repository.at(id)?;
            let (book, _) = reading::read(&store.name, store.files);
            Ok::<_, StoreError>(Side { called: shown::line(called), book })
        };
        let sides = Some([side(ours, tips[0])?, side(theirs, tips[1])?]);
        let (store, conflicts) = (merge.store, merge.conflicts);
        let origin = Origin { repository, parents: tips.to_vec(), tips: tips.to_vec(), sides };
        Ok(Subject { store, day: None, origin: Some(origin), no_past: None, conflicts })
    };
    had().map_err(states::refused)
}

impl Subject {
    /// Holds what changed beside one commit before, instead of those it was made from: what came
    /// and went in between is no change.
    pub(super) fn follows_on(&mut self, before: CommitId) {
        if let Some(origin) = &mut self.origin {
            origin.parents = vec![before];
            self.no_past = None;
        }
    }

    /// Returns the book's folder below the top of its repository, as paths of texts are written.
    pub(super) fn below(&self) -> String {
        let known = self.origin.as_ref().and_then(|origin| origin.repository.below());
        known.unwrap_or_else(|| store::below_top(&self.store.root))
    }

    /// Returns the repository that another state is asked of.
    ///
    /// # Errors
    ///
    /// There is none.
    pub(super) fn origin(&self) -> Result<&Origin, Done> {
        self.origin.as_ref().ok_or_else(|| {
            let why = self.no_past.clone().unwrap_or_else(|| {
                "The book lies in no git repository, so there is no other state of it.".to_owned()
            });
            Done::refused(Exit::NotChecked, vec![shown::line(&why)])
        })
    }
}
