//! Single objects of a repository, with what is missing or damaged told as such.

use git2::ErrorClass;
use git2::ErrorCode;
use git2::ObjectType;
use git2::Odb;
use git2::Oid;
use git2::Repository;
use git2::Tree;

use crate::store::named::Content;
use crate::store::named::MAX_FILE_BYTES;
use crate::store::named::Refusal;
use crate::store::repository::error::Cut;
use crate::store::repository::error::RepositoryError;
use crate::store::repository::loose::Loose;

/// The objects of a repository.
pub(super) struct Objects<'r> {
    git: &'r Repository,
    base: Odb<'r>,
    loose: Loose,
}

/// Why an object was not had.
pub(super) enum Missed {
    /// The repository does not hold it.
    Absent,
    /// It is there, and it is not what it should be.
    Damaged(String),
}

impl<'r> Objects<'r> {
    pub(super) fn of(git: &'r Repository) -> Result<Self, RepositoryError> {
        let base = git.odb().map_err(|error| RepositoryError::opening(git.path(), &error))?;
        Ok(Self { git, base, loose: Loose::of(git) })
    }

    /// Returns the bytes of a commit.
    pub(super) fn commit(&self, id: Oid) -> Result<Vec<u8>, RepositoryError> {
        let read = || {
            self.refuse_broken(id)?;
            let object = self.base.read(id).map_err(Missed::because)?;
            if object.kind() != ObjectType::Commit {
                return Err(Missed::Damaged(format!("a {}, no commit", object.kind())));
            }
            Ok(object.data().to_vec())
        };
        read().map_err(|missed| self.error(&format!("commit {id}"), missed))
    }

    /// Returns a folder as it was committed.
    pub(super) fn tree(&self, id: Oid, what: &str) -> Result<Tree<'r>, RepositoryError> {
        let whole = self.refuse_broken(id);
        let tree = whole.and_then(|()| self.git.find_tree(id).map_err(Missed::because));
        let what = if what.is_empty() { format!("tree {id}") } else { format!("\"{what}\"") };
        tree.map_err(|missed| self.error(&what, missed))
    }

    /// Returns a text. What is too large is not read.
    pub(super) fn content(&self, id: Oid) -> Result<Content, Missed> {
        self.refuse_broken(id)?;
        let (bytes, kind) = self.base.read_header(id).map_err(Missed::because)?;
        if kind != ObjectType::Blob {
            return Err(Missed::Damaged(format!("a {kind} in the place of a file")));
        }
        if bytes as u64 > MAX_FILE_BYTES {
            return Ok(Content::Refused(Refusal::TooLarge { bytes: bytes as u64 }));
        }
        let object = self.base.read(id).map_err(Missed::because)?;
        Ok(Content::of_bytes(object.data().to_vec()))
    }

    fn refuse_broken(&self, id: Oid) -> Result<(), Missed> {
        match self.loose.broken(id) {
            Some(said) => Err(Missed::Damaged(said.to_owned())),
            None => Ok(()),
        }
    }

    /// Returns the error for something that was not had.
    pub(super) fn error(&self, what: &str, missed: Missed) -> RepositoryError {
        match missed {
            Missed::Absent => self.absent(vec![what.to_owned()]),
            Missed::Damaged(said) => {
                RepositoryError::Damaged { what: what.into(), said, folder: folder(self.git) }
            }
        }
    }

    /// Returns the error for things that the repository does not hold.
    pub(super) fn absent(&self, what: Vec<String>) -> RepositoryError {
        RepositoryError::Absent { what, folder: folder(self.git), cut: cut(self.git) }
    }
}

impl Missed {
    pub(super) fn because(error: git2::Error) -> Self {
        // A walk that stops at a missing object keeps the message, but not the code.
        let lost = error.class() == ErrorClass::Odb && error.message().contains("not found");
        if lost || error.code() == ErrorCode::NotFound {
            Self::Absent
        } else {
            Self::Damaged(error.message().to_owned())
        }
    }
}

/// Returns the folder to name in a command.
pub(super) fn folder(git: &Repository) -> std::path::PathBuf {
    let folder = git.workdir().unwrap_or(git.path());
    folder.components().collect()
}

/// Returns whether a repository was cloned with a filter.
pub(super) fn is_filtered(git: &Repository) -> bool {
    let filtered = || {
        let config = git.config()?.snapshot()?;
        let mut entries = config.entries(Some("^remote\\..*\\.promisor$"))?;
        Ok::<bool, git2::Error>(entries.next().is_some_and(|entry| entry.is_ok()))
    };
    filtered().unwrap_or(false)
}

fn cut(git: &Repository) -> Cut {
    if is_filtered(git) {
        Cut::Filtered
    } else if super::shallow::is(git) {
        Cut::Shallow
    } else {
        Cut::No
    }
}
