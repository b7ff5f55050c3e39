//! Named texts of a book, wherever they came from; knows no boats and no YAML.
//!
//! The only room that names git and the only one that reads a book's files. What it gives, a
//! [`Store`], does not tell where the texts came from: [`open_folder`] gives those of a folder, a
//! [`Repository`] those of a commit, of what is about to be committed, and of a merge. It also
//! founds a repository from commits that were planned elsewhere, puts files among git's hooks, and
//! saves a text in the place of a file.
//!
//! ```text
//! club.yaml      the book's root is the folder that holds it
//! waivers.yaml
//! boats/         every *.yaml and *.yml below these four,
//! oars/          in any letter case, subfolders too,
//! crews/         those in folders whose name begins with a dot aside
//! classes/
//! ```

mod error;
mod folder;
pub mod founding;
pub mod hooks;
mod layout;
mod line_merge;
mod named;
mod names;
pub mod publishing;
mod repository;
pub mod saving;
mod seeking;
mod walking;

use std::path::Path;
use std::path::PathBuf;

pub use error::StoreError;
pub use error::Unread;
pub use folder::open_folder;
pub use folder::open_tracked;
pub use layout::CLUB_FILE;
pub use layout::WAIVERS_FILE;
pub use layout::may_be_text;
pub use line_merge::LineMerge;
pub use line_merge::Marks;
pub use line_merge::by_lines;
pub use named::Content;
pub use named::MAX_FILE_BYTES;
pub use named::Named;
pub use named::Refusal;
pub use names::quoted;
pub use names::shown;
pub use repository::BlobId;
pub use repository::Commit;
pub use repository::CommitId;
pub use repository::Cut;
pub use repository::HooksFolder;
pub use repository::Lies;
pub use repository::Merge;
pub use repository::Moment;
pub use repository::Moved;
pub use repository::Person;
pub use repository::Record;
pub use repository::Records;
pub use repository::Repository;
pub use repository::RepositoryError;
pub use repository::committing;
pub use seeking::find_book;

/// Returns a book's root relative to the top of the working tree that it lies in, written as the
/// paths of texts are; empty where it is the top, or lies in none. Asks no more than where the
/// repository is, so that one which can't be trusted answers too.
#[must_use]
pub fn below_top(root: &Path) -> String {
    let top = repository::working_tree(root);
    let below = top.and_then(|top| root.strip_prefix(top).ok().map(names::shown));
    below.unwrap_or_default()
}

/// The texts of one book.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Store {
    /// The book's root: whole, every link in it resolved. For texts out of a repository it is where
    /// that folder is, or would be, in the working tree or below the bare repository.
    pub root: PathBuf,
    /// The root's own name as it was given, for messages; the true name where none was given (`.`).
    pub name: String,
    /// The texts, sorted by path.
    pub files: Vec<Named>,
    /// YAML files in places where no record is looked for, and files among the records whose names
    /// or folders are no record's, sorted. Elsewhere, folders whose name begins with a dot,
    /// `schema/` and `target/` are not searched for them, nor is what git ignores.
    pub left_out: Vec<String>,
    /// Those of the files left out that lie among the records and could be had, sorted by path.
    pub strays: Vec<Named>,
    /// Texts that belong to the book and are not in its folder: a sparse checkout keeps them out.
    pub absent: Vec<String>,
    /// What the user should know though the texts are complete, in plain words.
    pub warnings: Vec<String>,
}

impl Store {
    /// Returns where the file of a [`Named::path`] lies, escapes undone.
    ///
    /// # Example
    ///
    /// ```no_run
    /// use std::path::Path;
    /// use tholebook::store;
    ///
    /// let book = store::open_folder(Path::new("example-club"))?;
    /// let file = book.file("boats/kittiwake.yaml");
    /// assert!(file.ends_with("boats/kittiwake.yaml"));
    /// # Ok::<(), store::StoreError>(())
    /// ```
    #[must_use]
    pub fn file(&self, path: &str) -> PathBuf {
        file_of(&self.root, path)
    }
}

/// Returns where the file of a [`Named::path`] lies below a book's root, escapes undone.
#[must_use]
pub fn file_of(root: &Path, path: &str) -> PathBuf {
    root.join(names::path_of(path))
}
