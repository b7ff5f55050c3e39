//! Opens a repository and finds where the book's folder lies in it; reads no commit.
//!
//! A book that is named must be the same book inside a git hook and outside, so a folder is opened
//! without regard to the environment; only [`from_environment`] heeds it, as git's hooks need. Whose
//! the repository is stays libgit2's to check.

use std::ffi::OsStr;
use std::fs;
use std::io;
use std::path::Component;
use std::path::Path;
use std::path::PathBuf;

use git2::ErrorCode;
use git2::Repository;
use git2::RepositoryOpenFlags;

use crate::store::error::StoreError;
use crate::store::repository::error::RepositoryError;
use crate::store::repository::ignoring::Tracked;
use crate::store::seeking;

/// The rank of a place for objects. Those on the disk have 1 and 2.
const BEFORE_THE_DISK: i32 = 1000;

/// A repository, and where in it the book lies.
pub(super) struct Opened {
    pub(super) git: Repository,
    /// The working tree, or the bare repository itself.
    pub(super) top: PathBuf,
    /// The book's root relative to the top; none when it is to be sought.
    pub(super) below: Option<PathBuf>,
}

/// Opens the repository around a folder, which need not be there any more.
pub(super) fn around(book: &Path) -> Result<Opened, StoreError> {
    let (folder, rest) = as_far_as_it_is(book)?;
    let git = open(&folder).map_err(|error| {
        let top = folder_with_git(&folder);
        match (top, error.code()) {
            (None, ErrorCode::NotFound) if rest.as_os_str().is_empty() => {
                RepositoryError::None { folder: book.into() }.into()
            }
            (None, ErrorCode::NotFound) => StoreError::NoFolder { folder: book.into() },
            (top, _) => RepositoryError::opening(top.unwrap_or(&folder), &error).into(),
        }
    })?;
    if git.is_bare() {
        refuse_nested(&git)?;
    }
    Ok(placed(git, Some(folder.join(rest)))?)
}

/// Opens the repository that git's environment names, or that the current folder lies in.
pub(super) fn from_environment(book: Option<&Path>) -> Result<Opened, StoreError> {
    let git = Repository::open_from_env().map_err(|error| match error.code() {
        ErrorCode::NotFound => RepositoryError::NoneInEnvironment,
        _ => {
            let here = real(Path::new(".")).unwrap_or_else(|_| ".".into());
            RepositoryError::opening(folder_with_git(&here).unwrap_or(&here), &error)
        }
    })?;
    let book = match book {
        Some(book) => {
            let (folder, rest) = as_far_as_it_is(book)?;
            Some(folder.join(rest))
        }
        None => None,
    };
    Ok(placed(git, book)?)
}

/// Opens the repository around a folder, without regard to the environment.
pub(super) fn open(folder: &Path) -> Result<Repository, git2::Error> {
    Repository::open_ext(folder, RepositoryOpenFlags::CROSS_FS, [] as [&OsStr; 0])
}

/// Returns the top of the working tree that a folder lies in, if it lies in one.
pub(in crate::store) fn working_tree(folder: &Path) -> Option<PathBuf> {
    let opened = open(folder).ok();
    let top = opened.as_ref().and_then(Repository::workdir).and_then(|top| real(top).ok());
    top.filter(|top| folder.starts_with(top)).or_else(|| folder_with_git(folder).map(Into::into))
}

/// Returns the nearest folder upwards that holds `.git`.
pub(super) fn folder_with_git(folder: &Path) -> Option<&Path> {
    folder.ancestors().find(|folder| fs::symlink_metadata(folder.join(".git")).is_ok())
}

/// Returns a folder's path relative to the working tree it must lie in.
pub(super) fn below_working_tree(
    git: &Repository,
    root: &Path,
) -> Result<PathBuf, RepositoryError> {
    let top = git.workdir().unwrap_or(git.path());
    let below = real(top).ok().and_then(|top| root.strip_prefix(top).map(Into::into).ok());
    below.ok_or_else(|| RepositoryError::Elsewhere { top: top.into(), git_dir: git.path().into() })
}

fn placed(git: Repository, book: Option<PathBuf>) -> Result<Opened, RepositoryError> {
    keep_in_memory(&git).map_err(|error| RepositoryError::opening(git.path(), &error))?;
    let top = git.workdir().unwrap_or(git.path());
    let top = real(top).unwrap_or_else(|_| top.to_path_buf());
    let below = match book {
        Some(book) => Some(below_working_tree(&git, &book)?),
        None => None,
    };
    // A bare repository's own folder says nothing of where in its files the book lies.
    let below = below.filter(|below| !git.is_bare() || !below.as_os_str().is_empty());
    Ok(Opened { git, top, below })
}

/// Sees to it that what libgit2 makes, as the texts of a merge, never reaches the disk.
fn keep_in_memory(git: &Repository) -> Result<(), git2::Error> {
    let objects = git.odb()?;
    objects.add_new_mempack_backend(BEFORE_THE_DISK).map(|_| ())
}

/// Returns the real part of a path that is there, and what follows it.
fn as_far_as_it_is(book: &Path) -> Result<(PathBuf, PathBuf), StoreError> {
    let gone = || StoreError::NoFolder { folder: book.into() };
    for there in book.ancestors() {
        let folder = if there.as_os_str().is_empty() { Path::new(".") } else { there };
        let rest = book.strip_prefix(there).unwrap_or(Path::new(""));
        match fs::symlink_metadata(folder) {
            Err(error) if error.kind() == io::ErrorKind::NotFound => {}
            _ if rest.components().all(|part| matches!(part, Component::Normal(_))) => {
                return Ok((seeking::real_folder(folder)?, rest.into()));
            }
            _ => return Err(gone()),
        }
    }
    Err(gone())
}

/// Refuses a bare repository that came with the files of the repository around it: whoever gave
/// those files made it, and nobody here asked for it.
fn refuse_nested(bare: &Repository) -> Result<(), RepositoryError> {
    let folder = real(bare.path()).unwrap_or_else(|_| bare.path().into());
    let Some(parent) = folder.parent() else { return Ok(()) };
    let tracked = match open(parent) {
        Ok(outer) if outer.is_bare() => false,
        Ok(outer) => {
            let below = below_working_tree(&outer, &folder)?;
            let tracked = Tracked::below(Path::new(""), &outer);
            tracked.map_or(true, |tracked| tracked.touches(&below))
        }
        Err(_) => folder_with_git(parent).is_some(),
    };
    if tracked { Err(RepositoryError::Nested { folder }) } else { Ok(()) }
}

fn real(path: &Path) -> io::Result<PathBuf> {
    fs::canonicalize(path)
}
