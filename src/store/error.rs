//! Why a book could not be had; holds names and reasons, opens nothing.

use std::fmt;
use std::io;
use std::path::Path;
use std::path::PathBuf;

use thiserror::Error;

use crate::store::names;
use crate::store::repository::RepositoryError;

/// Why a book could not be had. One variant for each thing the user would mend differently.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum StoreError {
    /// There is nothing of that name.
    #[error("there is no folder \"{}\"", names::shown(folder))]
    NoFolder {
        /// The folder as it was given.
        folder: PathBuf,
    },
    /// There is something of that name, but no folder.
    #[error("\"{}\" is not a folder", names::shown(path))]
    NotAFolder {
        /// The path as it was given.
        path: PathBuf,
    },
    /// The folder holds no book.
    #[error("there is no club.yaml in \"{}\", so it is no boat book", names::shown(folder))]
    NoBook {
        /// The folder as it was given.
        folder: PathBuf,
        /// A folder near it that does hold `club.yaml`: above it, else one level down.
        nearest: Option<PathBuf>,
    },
    /// Bytes of the book could not be had. Every such path is named.
    #[error("{}", listed(unread))]
    CannotRead {
        /// Each path with its reason, sorted; never empty.
        unread: Vec<Unread>,
    },
    /// The repository could not give the state of the book that was asked for.
    #[error(transparent)]
    Repository(#[from] RepositoryError),
}

impl StoreError {
    /// Returns what the user can do.
    #[must_use]
    pub fn help(&self) -> String {
        match self {
            Self::NoFolder { .. } => {
                "Check how the name is spelt. Give the folder that holds club.yaml.".into()
            }
            Self::NotAFolder { .. } => "Give the folder that holds club.yaml, not a file.".into(),
            Self::NoBook { nearest: Some(nearest), .. } => {
                format!("There is a book in \"{}\": give that folder.", names::shown(nearest))
            }
            Self::NoBook { nearest: None, .. } => {
                "Give the folder that holds club.yaml. For a new book: tholebook start DIR".into()
            }
            Self::CannotRead { .. } => {
                "Nothing was checked. Each of these must be a plain file or \
                folder that you may read: put that right, then try again."
                    .into()
            }
            Self::Repository(error) => error.help(),
        }
    }
}

/// A path whose bytes could not be had, and why.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Unread {
    /// Relative to the book's root and written as a path of a text is; the root itself as given.
    pub path: String,
    /// Why, in plain words.
    pub reason: String,
}

impl Unread {
    pub(super) fn new(path: &Path, reason: impl Into<String>) -> Self {
        Self { path: names::shown(path), reason: reason.into() }
    }

    pub(super) fn because(path: &Path, error: &io::Error) -> Self {
        Self::new(path, reason(error))
    }
}

impl fmt::Display for Unread {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "\"{}\": {}", self.path, self.reason)
    }
}

/// Returns what the system said, in plain words where it is one of the usual things.
pub(super) fn reason(error: &io::Error) -> String {
    match error.kind() {
        io::ErrorKind::PermissionDenied => "you may not read it".into(),
        io::ErrorKind::NotFound => "it went away while the book was read".into(),
        _ => error.to_string(),
    }
}

fn listed(unread: &[Unread]) -> String {
    let lines: Vec<String> = unread.iter().map(Unread::to_string).collect();
    match lines.as_slice() {
        [one] => format!("could not read {one}"),
        many => format!("could not read {} things:\n{}", many.len(), many.join("\n")),
    }
}
