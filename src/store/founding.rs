//! Founds a repository: writes planned commits, in order, into a folder of their own; knows no
//! boats, no clock and no user.
//!
//! A commit's id follows from the plan alone: contents go into the repository byte by byte, both
//! signatures are the planned author's, nothing is signed, no template is copied and no hook runs.

mod placing;
mod working_copy;

use std::collections::BTreeMap;
use std::path::Path;

use git2::Oid;
use git2::Repository;
use git2::RepositoryInitOptions;
use git2::Signature;
use git2::Time;
use git2::Tree;
use thiserror::Error;

use crate::store::error;
use crate::store::names;

/// The branch that is checked out.
pub const MAIN: &str = "main";

const PLAIN_FILE: i32 = 0o100_644;
const FOLDER: i32 = 0o040_000;

/// A repository as it is to be.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Founding {
    /// The commits, parents before children. The first has no parent.
    pub commits: Vec<Planned>,
    /// Each branch with the label of the commit it stands at; [`MAIN`] among them.
    pub branches: BTreeMap<String, String>,
    /// The tags, each with a message of its own.
    pub tags: Vec<Tag>,
}

/// A commit as it is to be.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Planned {
    /// What the plan calls it.
    pub label: String,
    /// The labels of its parents, the one it stands on first.
    pub parents: Vec<String>,
    /// Who measured and committed it, and when.
    pub by: Signed,
    /// The whole message.
    pub message: String,
    /// Every file, by path with `/` between parts.
    pub files: BTreeMap<String, String>,
}

/// Someone's name under something.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Signed {
    /// The name.
    pub name: String,
    /// The address.
    pub email: String,
    /// Seconds since the first of January 1970, UTC.
    pub seconds: i64,
    /// How far the local time is ahead of UTC, in minutes.
    pub ahead: i32,
}

/// A tag with a message.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Tag {
    /// The tag's name.
    pub name: String,
    /// The label of the commit it stands at.
    pub at: String,
    /// The whole message.
    pub message: String,
    /// Who set it, and when.
    pub by: Signed,
}

/// Why a repository was not founded. Nothing was left in the folder.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum FoundingError {
    /// There is something in the folder.
    #[error("\"{0}\" is not empty")]
    NotEmpty(String),
    /// There is something of that name, but no folder.
    #[error("\"{0}\" is there already, and it is not a folder")]
    NotAFolder(String),
    /// The folder that the new one is to lie in is not there.
    #[error("there is no folder \"{0}\" to put it into")]
    NoParent(String),
    /// The disk or the system refused.
    #[error("\"{folder}\" could not be written: {reason}")]
    CannotWrite {
        /// The folder as it was given.
        folder: String,
        /// What the system said, in plain words where it is one of the usual things.
        reason: String,
    },
}

impl FoundingError {
    /// Returns what the user can do.
    #[must_use]
    pub fn help(&self) -> &'static str {
        match self {
            Self::NotEmpty(_) | Self::NotAFolder(_) => {
                "Nothing was changed. Give a folder that is not there yet, or an empty one."
            }
            Self::NoParent(_) => "Make that folder first, or check how the name is spelt.",
            Self::CannotWrite { .. } => {
                "Nothing was left behind. Give a folder that you may write to, on a disk with room."
            }
        }
    }
}

/// Why writing stopped, before the folder's name is known.
#[derive(Debug, Error)]
enum Stopped {
    #[error("{}", error::written(.0))]
    Disk(#[from] std::io::Error),
    #[error("{}", .0.message())]
    Git(#[from] git2::Error),
}

/// Writes a new repository with its files into a folder that is empty or not there yet, and
/// returns the id of the commit that is checked out, in hexadecimal digits.
///
/// It is written beside its place and moved there when it is whole.
///
/// # Errors
///
/// [`FoundingError`]: the folder is in use, can't be, or could not be written; so where the plan
/// names a label that no commit before has, or a path that is no plain name.
pub fn found(folder: &Path, plan: &Founding) -> Result<String, FoundingError> {
    let place = placing::Place::of(folder)?;
    let written = place.fill(|into| write(into, plan));
    written.map(|head| head.to_string()).map_err(|stopped| FoundingError::CannotWrite {
        folder: names::shown(folder),
        reason: stopped.to_string(),
    })
}

fn write(folder: &Path, plan: &Founding) -> Result<Oid, Stopped> {
    let repository = empty_repository(folder)?;
    let mut ids = BTreeMap::new();
    for planned in &plan.commits {
        let id = commit(&repository, planned, &ids)?;
        ids.insert(planned.label.as_str(), id);
    }
    for (branch, label) in &plan.branches {
        let name = format!("refs/heads/{branch}");
        repository.reference(&name, id_of(&ids, label)?, false, "founded")?;
    }
    for tag in &plan.tags {
        let at = repository.find_object(id_of(&ids, &tag.at)?, None)?;
        repository.tag(&tag.name, &at, &signature(&tag.by)?, &tag.message, false)?;
    }
    let head = repository.head()?.peel_to_commit()?;
    working_copy::lay_out(&repository, folder, &head.tree()?)?;
    Ok(head.id())
}

/// Makes a repository that owes nothing to templates or to the user's own settings.
fn empty_repository(folder: &Path) -> Result<Repository, git2::Error> {
    let mut options = RepositoryInitOptions::new();
    options.initial_head(MAIN).external_template(false).no_reinit(true);
    Repository::init_opts(folder, &options)
}

fn commit(
    repository: &Repository,
    planned: &Planned,
    ids: &BTreeMap<&str, Oid>,
) -> Result<Oid, git2::Error> {
    let tree = tree(repository, &planned.files)?;
    let by = signature(&planned.by)?;
    let parent = |label: &String| repository.find_commit(id_of(ids, label)?);
    let parents = planned.parents.iter().map(parent).collect::<Result<Vec<_>, _>>()?;
    let parents: Vec<_> = parents.iter().collect();
    repository.commit(None, &by, &by, &planned.message, &tree, &parents)
}

fn tree<'r>(
    repository: &'r Repository,
    files: &BTreeMap<String, String>,
) -> Result<Tree<'r>, git2::Error> {
    let files: Vec<(&str, &str)> =
        files.iter().map(|(path, text)| (path.as_str(), text.as_str())).collect();
    repository.find_tree(folder_of(repository, &files)?)
}

/// Writes the files of one folder, sorted by path, and the folders in it.
fn folder_of(repository: &Repository, files: &[(&str, &str)]) -> Result<Oid, git2::Error> {
    let mut builder = repository.treebuilder(None)?;
    let mut below: BTreeMap<&str, Vec<(&str, &str)>> = BTreeMap::new();
    for (path, text) in files {
        match path.split_once('/') {
            Some((folder, rest)) => below.entry(folder).or_default().push((rest, *text)),
            None => {
                builder.insert(path, repository.blob(text.as_bytes())?, PLAIN_FILE)?;
            }
        }
    }
    for (folder, files) in below {
        builder.insert(folder, folder_of(repository, &files)?, FOLDER)?;
    }
    builder.write()
}

fn signature(by: &Signed) -> Result<Signature<'static>, git2::Error> {
    Signature::new(&by.name, &by.email, &Time::new(by.seconds, by.ahead))
}

fn id_of(ids: &BTreeMap<&str, Oid>, label: &str) -> Result<Oid, git2::Error> {
    let unknown = || git2::Error::from_str(&format!("no commit before is called {label}"));
    ids.get(label).copied().ok_or_else(unknown)
}
