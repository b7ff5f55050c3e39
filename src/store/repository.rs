//! What git knows of a book's folder: where its working tree ends, what it ignores, what it tracks.
//!
//! Starts no program and writes nothing. A repository that can't be asked is never an error for
//! reading a folder: it is a sentence for the user, and no file is left out.

use std::collections::BTreeSet;
use std::ffi::OsStr;
use std::fs;
use std::path::Path;
use std::path::PathBuf;

use git2::ErrorCode;
use git2::IndexEntryExtendedFlag;
use git2::Repository;
use git2::RepositoryOpenFlags;

use crate::store::names;

/// The ignore rules that hold in a book's folder.
pub(super) struct Ignoring {
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
    pub(super) fn around(root: &Path) -> Result<Option<Self>, String> {
        let repository = match open(root) {
            Ok(repository) => repository,
            Err(error) => {
                let top = folder_with_git(root);
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
    pub(super) fn leaves_out(&self, path: &Path) -> Result<bool, String> {
        Ok(self.ignores(path)? && !self.tracked.touches(path))
    }

    /// Returns the paths that a sparse checkout keeps out of the folder, relative to the book's root.
    pub(super) fn sparse(&self) -> impl Iterator<Item = PathBuf> {
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
struct Tracked {
    paths: BTreeSet<Vec<u8>>,
    sparse: Vec<Vec<u8>>,
}

impl Tracked {
    fn below(below: &Path, repository: &Repository) -> Result<Self, git2::Error> {
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
    fn touches(&self, path: &Path) -> bool {
        let mut folder = names::bytes(path);
        folder.push(b'/');
        let next = self.paths.range(folder.clone()..).next();
        next.is_some_and(|next| next.starts_with(&folder))
            || path.ancestors().any(|path| self.paths.contains(&names::bytes(path)))
    }
}

/// Returns the top of the working tree that a folder lies in, if it lies in one.
pub(super) fn working_tree(folder: &Path) -> Option<PathBuf> {
    let opened = open(folder).ok();
    let top = opened.as_ref().and_then(Repository::workdir).and_then(|top| real(top).ok());
    top.filter(|top| folder.starts_with(top)).or_else(|| folder_with_git(folder).map(Into::into))
}

/// Opens the repository around a folder, without regard to the environment: a book that is named
/// must be the same book inside a hook and outside.
fn open(folder: &Path) -> Result<Repository, git2::Error> {
    Repository::open_ext(folder, RepositoryOpenFlags::CROSS_FS, [] as [&OsStr; 0])
}

fn below_working_tree(repository: &Repository, root: &Path) -> Result<PathBuf, String> {
    let Some(top) = repository.workdir() else {
        return Err(format!(
            "the repository \"{}\" has no working tree. If the book should not lie in it, move the \
             book; to see what git makes of it: git -C {} rev-parse --is-bare-repository",
            names::shown(repository.path()),
            names::quoted(root)
        ));
    };
    let below = real(top).ok().and_then(|top| root.strip_prefix(top).map(Into::into).ok());
    below.ok_or_else(|| {
        format!(
            "the repository's working tree is \"{}\", and the book is not in it. If that is a \
             mistake: git --git-dir={} config --unset core.worktree",
            names::shown(top),
            names::quoted(repository.path())
        )
    })
}

/// Returns the nearest folder upwards that holds `.git`.
fn folder_with_git(folder: &Path) -> Option<&Path> {
    folder.ancestors().find(|folder| fs::symlink_metadata(folder.join(".git")).is_ok())
}

fn real(path: &Path) -> std::io::Result<PathBuf> {
    fs::canonicalize(path)
}

/// Returns why a repository was not opened, and the command that helps.
fn refused(top: &Path, error: &git2::Error) -> String {
    let folder = names::quoted(top);
    let said = error.message();
    if error.code() == ErrorCode::Owner {
        format!(
            "the repository belongs to another user. If you trust it: \
             git config --global --add safe.directory {folder} (a setting given by the environment \
             does not count here)"
        )
    } else if said.contains("extensions.refstorage") {
        format!(
            "the repository keeps its branches in a form that can't be read here (reftable). A clone \
             can be: git clone --ref-format=files {folder} NEW-FOLDER"
        )
    } else if said.contains("object format") {
        format!(
            "the repository keeps its history in a form that can't be read here (SHA-256). To see \
             what git ignores: git -C {folder} status --ignored --short"
        )
    } else {
        format!("{}. To see what git says: git -C {folder} status", told(error))
    }
}

/// Returns why the index was not read, and the command that helps.
fn unreadable(root: &Path, error: &git2::Error) -> String {
    let said = error.message();
    let (to, command) = if said.contains("'link'") {
        ("write it anew in one piece", "update-index --no-split-index")
    } else if said.contains("'sdir'") {
        ("write it anew in full", "sparse-checkout reapply --no-sparse-index")
    } else {
        ("see what git says", "status")
    };
    format!(
        "the list of tracked files (git's index) can't be read ({said}), so an ignored file may be \
         one of the book's. To {to}: git -C {} {command}",
        names::quoted(root)
    )
}

fn told(error: &git2::Error) -> String {
    format!("the repository can't be read ({})", error.message())
}
