//! Two states of a book that are asked for by words: a folder, a commit, what is about to be
//! committed, the files as they lie.

use std::path::Path;
use std::path::PathBuf;

use super::book;
use super::exit::Exit;
use super::output::Done;
use crate::reports::shown;
use crate::store;
use crate::store::CLUB_FILE;
use crate::store::CommitId;
use crate::store::Moment;
use crate::store::Repository;
use crate::store::RepositoryError;
use crate::store::Store;
use crate::store::StoreError;
use crate::units::Date;

/// One state of a book.
pub(super) struct State {
    /// What it is called.
    pub(super) called: String,
    /// Its texts; none before the first commit.
    pub(super) store: Option<Store>,
    /// The day of its commit, where it is one.
    pub(super) day: Option<Date>,
}

/// Two states, as asked for.
pub(super) struct Asked<'a> {
    pub(super) from: Option<&'a str>,
    pub(super) to: Option<&'a str>,
    pub(super) staged: bool,
    pub(super) book: Option<&'a Path>,
}

/// What one side is to be.
enum Wanted<'a> {
    Named(&'a str),
    Parting(&'a str, &'a str),
    LastCommit,
    Staged,
    Files,
}

/// Returns the two states.
///
/// # Errors
///
/// What the command comes to instead: wrong usage, or a state that can't be had.
pub(super) fn both(asked: &Asked) -> Result<(State, State), Done> {
    let (from, to) = wanted(asked)?;
    let mut seeker = Seeker { book: asked.book, repository: None };
    Ok((seeker.state(&from)?, seeker.state(&to)?))
}

fn wanted<'a>(asked: &Asked<'a>) -> Result<(Wanted<'a>, Wanted<'a>), Done> {
    let last_if_nothing = |rev: &'a str| {
        if rev.is_empty() { Wanted::LastCommit } else { Wanted::Named(rev) }
    };
    for text in asked.from.into_iter().chain(asked.to) {
        if is_no_folder(text) {
            return Err(refused(StoreError::NoFolder { folder: text.into() }));
        }
    }
    let range = asked.from.filter(|from| from.contains("..") && !Path::new(from).exists());
    if let Some(range) = range {
        if asked.to.is_some() || asked.staged {
            return Err(wrong("A..B names both sides: give nothing beside it."));
        }
        if let Some((one, other)) = range.split_once("...") {
            let own = |rev: &'a str| if rev.is_empty() { "HEAD" } else { rev };
            return Ok((Wanted::Parting(own(one), own(other)), last_if_nothing(other)));
        }
        let (one, other) = range.split_once("..").unwrap_or((range, ""));
        return Ok((last_if_nothing(one), last_if_nothing(other)));
    }
    let from = asked.from.map_or(Wanted::LastCommit, Wanted::Named);
    Ok(match (asked.to, asked.staged) {
        (Some(to), _) => (from, Wanted::Named(to)),
        (None, true) => (from, Wanted::Staged),
        (None, false) => (from, Wanted::Files),
    })
}

fn wrong(told: &str) -> Done {
    let told = vec![told.to_owned(), "For more: tholebook diff --help".to_owned()];
    Done::refused(Exit::Usage, told)
}

/// Finds states; opens the repository when the first of them needs it.
struct Seeker<'a> {
    book: Option<&'a Path>,
    repository: Option<Repository>,
}

impl Seeker<'_> {
    fn state(&mut self, wanted: &Wanted) -> Result<State, Done> {
        match wanted {
            Wanted::Named(text) if is_book(text) => folder(Path::new(text)),
            Wanted::Named(text) => self.commit_named(text),
            Wanted::Parting(one, other) => self.parting(one, other),
            Wanted::LastCommit => self.last_commit(),
            Wanted::Staged => {
                let store = self.repository()?.staged().map_err(refused)?;
                let called = "what is about to be committed".to_owned();
                Ok(State { called, store: Some(store), day: None })
            }
            Wanted::Files => folder(&self.root().map_err(refused)?),
        }
    }

    /// Returns the book's own folder.
    fn root(&self) -> Result<PathBuf, StoreError> {
        match self.book {
            Some(folder) => Ok(folder.to_owned()),
            None => store::find_book(Path::new(".")),
        }
    }

    fn repository(&mut self) -> Result<&Repository, Done> {
        if self.repository.is_none() {
            // A state may be asked for where no file of the book lies any more.
            let root = self.root().unwrap_or_else(|_| PathBuf::from("."));
            self.repository = Some(Repository::around(&root).map_err(refused)?);
        }
        self.repository.as_ref().ok_or_else(|| wrong("No repository was opened."))
    }

    fn commit_named(&mut self, text: &str) -> Result<State, Done> {
        let is_there = Path::new(text).exists();
        let found = self.repository().and_then(|own| own.commit(text).map_err(refused));
        match found {
            Ok(id) => self.commit(id, text),
            // What lies there and is no commit was meant as a folder.
            Err(_) if is_there => folder(Path::new(text)),
            Err(refused) => Err(refused),
        }
    }

    fn commit(&mut self, id: CommitId, text: &str) -> Result<State, Done> {
        let repository = self.repository()?;
        let store = repository.at(id).map_err(refused)?;
        let day = repository.details(id).map_err(refused)?.committer.when.and_then(day_of);
        let short = id.short();
        let name = if short.starts_with(text) || text.starts_with(&short) {
            format!("commit {short}")
        } else {
            format!("{text} (commit {short})")
        };
        let called = day.map_or(name.clone(), |day| format!("{name} of {day}"));
        Ok(State { called, store: Some(store), day })
    }

    fn last_commit(&mut self) -> Result<State, Done> {
        match self.repository()?.head().map_err(refused)? {
            Some(id) => self.commit(id, "HEAD"),
            None => {
                let called = "nothing, before the first commit".to_owned();
                Ok(State { called, store: None, day: None })
            }
        }
    }

    fn parting(&mut self, one: &str, other: &str) -> Result<State, Done> {
        let repository = self.repository()?;
        let commit = |rev| repository.commit(rev).map_err(refused);
        let base = repository.merge_base(commit(one)?, commit(other)?).map_err(refused)?;
        let Some(base) = base else {
            let told = format!("{one} and {other} share no history that is here.");
            let help = match repository.is_shallow() {
                true => "The clone is shallow. To fetch the rest: git fetch --unshallow",
                false => "To compare them as they are, write two dots: A..B",
            };
            let told = vec![shown::line(&told), help.to_owned()];
            return Err(Done::refused(Exit::NotChecked, told));
        };
        self.commit(base, &format!("where {one} and {other} parted"))
    }
}

/// Returns whether a text can only be meant as a folder, and none is there.
fn is_no_folder(text: &str) -> bool {
    let path = Path::new(text);
    let is_path = ["../", "./", "~/"].iter().any(|start| text.starts_with(start));
    (is_path || path.is_absolute()) && path.symlink_metadata().is_err()
}

fn is_book(text: &str) -> bool {
    Path::new(text).join(CLUB_FILE).symlink_metadata().is_ok()
}

fn folder(path: &Path) -> Result<State, Done> {
    let store = store::open_tracked(path).map_err(refused)?;
    let called = format!("the files in {}", store.name);
    Ok(State { called, store: Some(store), day: None })
}

/// Returns the day of a moment where it was written down.
pub(super) fn day_of(moment: Moment) -> Option<Date> {
    Date::on_clock(moment.seconds, moment.offset_minutes)
}

/// A name that stands for no commit is wrong usage; what can't be had is not, nor what may only be
/// cut off from the history.
pub(super) fn refused(error: StoreError) -> Done {
    let misnamed = matches!(
        &error,
        StoreError::Repository(
            RepositoryError::NoRevision { .. }
                | RepositoryError::UnknownRevision { shallow: None, .. }
                | RepositoryError::AmbiguousRevision { .. }
                | RepositoryError::NotACommit { .. }
        )
    );
    let done = book::could_not(&error);
    if misnamed { Done { exit: Exit::Usage, ..done } } else { done }
}
