//! What git ignores and what it tracks in a book's folder.
//!
//! Starts no program and writes nothing. A repository that can't be asked is never an error for
//! reading a folder: it is a sentence for the user, and no file is left out.

use std::collections::BTreeSet;
use std::path::Path;
use std::path::PathBuf;

use git2::ErrorCode;
use git2::IndexEntryExtendedFlag;
use git2::Repository;

use crate::store::names;
use crate::store::repository::error::RepositoryError;
use crate::store::repository::opening;

/// The ignore rules that hold in a book's folder.
pub(in crate::store) struct Ignoring {
    repository: Repository,
    /// The book's root, relative to the working tree.
    below: PathBuf,
    tracked: Tracked,
}

impl Ignoring {
    /// Returns the rules for a book's root, or none where no repository is around it.
    ///
    /// # Errors
    ///
    /// A sentence that says why the rules can't be used and what helps.
    pub(in crate::store) fn around(root: &Path) -> Result<Option<Self>, String> {
        let repository = match opening::open(root) {
            Ok(repository) => repository,
            Err(error) => {
                let top = opening::folder_with_git(root);
                let none = top.is_none() && error.code() == ErrorCode::NotFound;
                return if none { Ok(None) } else { Err(refused(top.unwrap_or(root), &error)) };
            }
        };
        let below = below_working_tree(&repository, root)?;
        let tracked =
            Tracked::below(&below, &repository).map_err(|error| unreadable(root, &error))?;
        let rules = Self { repository, below, tracked };
        if rules.ignores(Path::new(""))? {
            return Err("git ignores the book's own folder".into());
        }
        Ok(Some(rules))
    }

    /// Returns whether git ignores a path, relative to the book's root, and tracks nothing in it.
    ///
    /// # Errors
    ///
    /// A sentence that says why the rules can't be used and what helps.
    pub(in crate::store) fn leaves_out(&self, path: &Path) -> Result<bool, String> {
        Ok(self.ignores(path)? && !self.tracked.touches(path))
    }

    /// Returns the paths that a sparse checkout keeps out of the folder, relative to the book's root.
    pub(in crate::store) fn sparse(&self) -> impl Iterator<Item = PathBuf> {
        self.tracked.sparse.iter().map(|path| names::path_of_bytes(path.clone()))
    }

    fn ignores(&self, path: &Path) -> Result<bool, String> {
        let path = self.below.join(path);
        // The working tree itself has no name to ask for, and can't be ignored.
        if path.as_os_str().is_empty() {
            return Ok(false);
        }
        self.repository.is_path_ignored(path).map_err(|error| told(&error))
    }
}

/// The entries of the index below a book's root, relative to it.
pub(super) struct Tracked {
    paths: BTreeSet<Vec<u8>>,
    sparse: Vec<Vec<u8>>,
}

impl Tracked {
    pub(super) fn below(below: &Path, repository: &Repository) -> Result<Self, git2::Error> {
        let mut tracked = Self { paths: BTreeSet::new(), sparse: Vec::new() };
        let mut prefix = names::bytes(below);
        if !prefix.is_empty() {
            prefix.push(b'/');
        }
        for entry in repository.index()?.iter() {
            let Some(path) = entry.path.strip_prefix(prefix.as_slice()) else { continue };
            if entry.flags_extended & IndexEntryExtendedFlag::SKIP_WORKTREE.bits() != 0 {
                tracked.sparse.push(path.to_vec());
            }
            tracked.paths.insert(path.to_vec());
        }
        Ok(tracked)
    }

    /// Returns whether a path is tracked, or holds something tracked, or lies in a folder that is
    /// tracked as a whole, as a submodule is.
    pub(super) fn touches(&self, path: &Path) -> bool {
        let mut folder = names::bytes(path);
        folder.push(b'/');
        let next = self.paths.range(folder.clone()..).next();
        next.is_some_and(|next| next.starts_with(&folder))
            || path.ancestors().any(|path| self.paths.contains(&names::bytes(path)))
    }
}

/// Returns why a repository was not opened, and the command that helps.
fn refused(top: &Path, error: &git2::Error) -> String {
    match RepositoryError::opening(top, error) {
        sha @ RepositoryError::Sha256 { .. } => format!(
            "{sha}. To see what git ignores: git -C {} status --ignored --short",
            names::quoted(top)
        ),
        other => with_help(&other),
    }
}

/// Returns why the index was not read, and the command that helps.
fn unreadable(root: &Path, error: &git2::Error) -> String {
    format!(
        "the list of tracked files can't be had, so an ignored file may be one of the book's: {}",
        with_help(&RepositoryError::index(root, error))
    )
}

/// Returns the book's root relative to the working tree.
fn below_working_tree(repository: &Repository, root: &Path) -> Result<PathBuf, String> {
    if repository.workdir().is_none() {
        return Err(format!(
            "the repository \"{}\" has no working tree. If the book should not lie in it, move the \
             book; to see what git makes of it: git -C {} rev-parse --is-bare-repository",
            names::shown(repository.path()),
            names::quoted(root)
        ));
    }
    opening::below_working_tree(repository, root).map_err(|error| with_help(&error))
}

fn with_help(error: &RepositoryError) -> String {
    format!("{error}. {}", error.help())
}

fn told(error: &git2::Error) -> String {
    format!("the repository can't be read ({})", error.message())
}
