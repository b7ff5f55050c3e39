//! Why a repository could not give a state of a book; holds names and reasons, opens nothing.

use std::path::Path;
use std::path::PathBuf;

use git2::ErrorCode;
use thiserror::Error;

use crate::store::names;

/// Why a repository could not give a state of a book. One variant for each thing the user would
/// mend differently.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum RepositoryError {
    /// No repository is around the folder.
    #[error("\"{}\" is in no git repository, so there is no history to read", names::shown(folder))]
    None {
        /// The folder as it was given.
        folder: PathBuf,
    },
    /// Git's environment leads to no repository.
    #[error("git's environment leads to no repository")]
    NoneInEnvironment,
    /// The repository belongs to another user.
    #[error("the repository belongs to another user")]
    NotTrusted {
        /// The folder that git would have to trust.
        folder: PathBuf,
    },
    /// Branches are kept as a reftable.
    #[error("the repository keeps its branches in a form that can't be read here (reftable)")]
    RefTable {
        /// The repository.
        folder: PathBuf,
    },
    /// Ids are SHA-256.
    #[error("the repository keeps its history in a form that can't be read here (SHA-256)")]
    Sha256 {
        /// The repository.
        folder: PathBuf,
    },
    /// The repository can't be read for another reason.
    #[error("the repository can't be read ({said})")]
    Unreadable {
        /// The repository.
        folder: PathBuf,
        /// What libgit2 said.
        said: String,
    },
    /// The repository's working tree is set to a folder that the book does not lie in.
    #[error(
        "the repository's working tree is \"{}\", and the book is not in it",
        names::shown(top)
    )]
    Elsewhere {
        /// The working tree.
        top: PathBuf,
        /// The repository's own folder.
        git_dir: PathBuf,
    },
    /// A bare repository that is a part of another one's files.
    #[error(
        "\"{}\" is a repository that lies among the tracked files of another one",
        names::shown(folder)
    )]
    Nested {
        /// The bare repository.
        folder: PathBuf,
    },
    /// A bare repository has no index.
    #[error("nothing is about to be committed here: the repository has no working tree")]
    NothingStaged,
    /// The index is in two pieces.
    #[error("git's index is split, which can't be read here")]
    SplitIndex {
        /// A folder in the working tree.
        folder: PathBuf,
    },
    /// The index is cut short for a sparse checkout.
    #[error("git's index is a sparse one, which can't be read here")]
    SparseIndex {
        /// A folder in the working tree.
        folder: PathBuf,
    },
    /// The index can't be read for another reason.
    #[error("git's index can't be read ({said})")]
    UnreadableIndex {
        /// A folder in the working tree.
        folder: PathBuf,
        /// What libgit2 said.
        said: String,
    },
    /// A merge is not finished: these paths have two forms in the index.
    #[error("a merge is not finished: {}", paths.join(", "))]
    Unmerged {
        /// Paths relative to the book's root, sorted; never empty.
        paths: Vec<String>,
    },
    /// There is no book where it was looked for.
    #[error("{} holds no book: {}", .state, missing(place.as_deref()))]
    NoBook {
        /// The state of the repository that was looked at, in words.
        state: String,
        /// The folder that was looked into, relative to the repository's top; none when every
        /// folder was.
        place: Option<String>,
    },
    /// There are several books, and none at the top.
    #[error("{state} holds several books: {}", places.join(", "))]
    SeveralBooks {
        /// The state of the repository that was looked at, in words.
        state: String,
        /// Their folders, relative to the repository's top, sorted.
        places: Vec<String>,
        /// The repository's top.
        top: PathBuf,
    },
    /// What was written can't name one commit.
    #[error("\"{rev}\" can't be the name of a commit: {why}")]
    NoRevision {
        /// As it was written, cut after some characters.
        rev: String,
        /// Why, in plain words.
        why: String,
    },
    /// Nothing is called so.
    #[error("there is no branch, tag or commit \"{rev}\"")]
    UnknownRevision {
        /// As it was written.
        rev: String,
        /// The branch or tag that looks most like it.
        nearest: Option<String>,
        /// The repository, when its history is cut short.
        shallow: Option<PathBuf>,
    },
    /// Several things begin so.
    #[error("\"{rev}\" is the beginning of more than one id")]
    AmbiguousRevision {
        /// As it was written.
        rev: String,
    },
    /// It names something, and no commit.
    #[error("\"{rev}\" names no commit, but a {what}")]
    NotACommit {
        /// As it was written.
        rev: String,
        /// What it names.
        what: String,
    },
    /// The repository knows of things that it does not hold.
    #[error("the repository does not hold {}", what.join(", "))]
    Absent {
        /// What is missing: paths of the book, or objects of git; never empty.
        what: Vec<String>,
        /// The repository.
        folder: PathBuf,
        /// How the repository came to hold less.
        cut: Cut,
    },
    /// An object is there and can't be what it should be.
    #[error("the repository is damaged: {what} ({said})")]
    Damaged {
        /// The object or path.
        what: String,
        /// What is wrong with it.
        said: String,
        /// The repository.
        folder: PathBuf,
    },
    /// A state holds more than any book.
    #[error("{what} holds too much for a boat book: {limit}")]
    TooMuch {
        /// The folder or state.
        what: String,
        /// The limit, with what it counts.
        limit: String,
    },
}

/// How a repository came to hold less than its history names.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cut {
    /// Cloned to a depth.
    Shallow,
    /// Cloned with a filter: git fetches what is missing when it needs it.
    Filtered,
    /// Neither: something was lost.
    No,
}

impl RepositoryError {
    /// Returns the error for a repository that would not open.
    pub(super) fn opening(top: &Path, error: &git2::Error) -> Self {
        let folder = top.to_path_buf();
        let said = error.message().to_owned();
        if error.code() == ErrorCode::Owner {
            Self::NotTrusted { folder }
        } else if said.contains("extensions.refstorage") {
            Self::RefTable { folder }
        } else if said.contains("object format") {
            Self::Sha256 { folder }
        } else {
            Self::Unreadable { folder, said }
        }
    }

    /// Returns the error for an index that can't be read.
    pub(super) fn index(folder: &Path, error: &git2::Error) -> Self {
        let folder = folder.to_path_buf();
        let said = error.message();
        if said.contains("'link'") {
            Self::SplitIndex { folder }
        } else if said.contains("'sdir'") {
            Self::SparseIndex { folder }
        } else {
            Self::UnreadableIndex { folder, said: said.to_owned() }
        }
    }
}

fn missing(place: Option<&str>) -> String {
    match place {
        None => "there is no club.yaml in it".into(),
        Some("") => "there is no club.yaml at its top".into(),
        Some(place) => format!("there is no club.yaml in \"{place}\""),
    }
}
