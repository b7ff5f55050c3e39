//! A book's texts in any state that a git repository holds, and the history of its commits.
//!
//! Starts no program and writes nothing but what [`committing`] is asked for. The only place that names git; what it gives are ids of its
//! own, texts and plain sentences. What git leaves out of a folder is asked in [`ignoring`], where a
//! repository that can't be asked is never an error: it is a sentence for the user, and no file is
//! left out.

mod branches;
mod commit;
mod commits;
pub mod committing;
mod cure;
mod error;
mod following;
mod hooks;
mod ids;
mod ignoring;
mod kept_out;
mod lineage;
mod loose;
mod merging;
mod objects;
mod opening;
mod place;
mod records;
mod revision;
mod settings;
mod shallow;
mod soundness;
mod standing;
mod texts;

use std::path::Path;
use std::path::PathBuf;

use git2::Index;

use crate::store::Store;
use crate::store::error::StoreError;
use crate::store::names;

pub use commit::Commit;
pub use commit::Moment;
pub use commit::Person;
pub use error::Cut;
pub use error::RepositoryError;
pub use following::Moved;
pub use hooks::HooksFolder;
pub use hooks::Lies;
pub use ids::BlobId;
pub use ids::CommitId;
pub use merging::Merge;
pub use records::Record;
pub use records::Records;

pub(super) use ignoring::Ignoring;
pub(super) use kept_out::kept_out;
pub(super) use kept_out::refuse_cut_index;
pub(super) use opening::working_tree;

use following::Lay;
use lineage::Lineage;
use objects::Objects;
use opening::Opened;
use place::Place;
use records::Kept;

/// What is about to be committed, in words.
const STAGED: &str = "what is about to be committed";

/// A git repository, opened for one book in it.
///
/// # Example
///
/// ```no_run
/// use std::path::Path;
/// use tholebook::store::Repository;
///
/// let repository = Repository::around(Path::new("example-club"))?;
/// let before = repository.commit("HEAD~1")?;
/// for named in repository.at(before)?.files {
///     assert!(!named.path.is_empty());
/// }
/// # Ok::<(), tholebook::store::StoreError>(())
/// ```
pub struct Repository {
    git: git2::Repository,
    top: PathBuf,
    place: Place,
    lay: Lay,
    lineage: Lineage,
    kept: Kept,
}

impl Repository {
    /// Opens the repository around a book's root, whatever the environment says.
    ///
    /// The folder need not be there any more. A bare repository may be given itself: the book is at
    /// the top of its files, or the only one in them; else the book's folder is given as if it lay in
    /// the repository's own.
    ///
    /// # Errors
    ///
    /// No repository there, or one that can't be read or must not be trusted.
    pub fn around(book_root: &Path) -> Result<Self, StoreError> {
        opening::around(book_root).map(Self::of)
    }

    /// Opens the repository that git's environment names, with its index and objects, as a git hook
    /// must; without one, that around the current folder. Without a book's root the book is at the
    /// top of the files, or the only one in them.
    ///
    /// # Errors
    ///
    /// No repository there, or one that can't be read or must not be trusted.
    pub fn from_environment(book_root: Option<&Path>) -> Result<Self, StoreError> {
        opening::from_environment(book_root).map(Self::of)
    }

    fn of(Opened { git, top, below }: Opened) -> Self {
        let lineage = Lineage::new(shallow::edge(&git));
        let place = Place::new(top.clone(), below);
        Self { git, top, place, lay: Lay::default(), lineage, kept: Kept::default() }
    }

    /// Returns the top of the working tree, or the bare repository's own folder.
    #[must_use]
    pub fn top(&self) -> &Path {
        &self.top
    }

    /// Returns the book's root relative to the top, `/` between parts and empty at the top itself;
    /// none as long as the book was to be sought and no state of it was read.
    #[must_use]
    pub fn below(&self) -> Option<String> {
        self.place.known().map(|place| names::shown(&place))
    }

    /// Returns the book's texts as of a commit, by the same rules as
    /// [`open_folder`](crate::store::open_folder).
    ///
    /// # Errors
    ///
    /// No book in it, several, or something of it missing or damaged.
    pub fn at(&self, id: CommitId) -> Result<Store, StoreError> {
        self.at_without(id, |_| false)
    }

    /// Returns the same without the texts that are `left_out`: they are not read.
    ///
    /// # Errors
    ///
    /// No book in it, several, or something of it missing or damaged that is not left out.
    pub fn at_without(
        &self,
        id: CommitId,
        left_out: impl Fn(BlobId) -> bool,
    ) -> Result<Store, StoreError> {
        let objects = self.objects()?;
        let top = self.lineage.header(&objects, id.0)?.tree;
        let (below, book) = match self.lay.at(id.0) {
            Some(lay) => self.place.is_in_tree(&objects, top, lay, &state(id))?,
            None => self.place.in_tree(&objects, top, &state(id))?,
        };
        let mut things = standing::in_tree(&objects, book)?;
        things.retain(|thing| thing.kind != standing::Kind::File || !left_out(BlobId(thing.id)));
        let whole = objects.tree(top, "")?;
        texts::store(&objects, &self.top, &below, &things, |path| {
            let entry = whole.get_path(path);
            entry.is_ok_and(|entry| is_file(u32::try_from(entry.filemode()).unwrap_or(0)))
        })
    }

    /// Returns the book's texts as they are about to be committed.
    ///
    /// # Errors
    ///
    /// No index, one that can't be read or in which a merge is not finished, no book in it, or
    /// something of it missing or damaged.
    pub fn staged(&self) -> Result<Store, StoreError> {
        if self.git.is_bare() {
            return Err(RepositoryError::NothingStaged.into());
        }
        let index = self.git.index();
        let index = index.map_err(|error| RepositoryError::index(&self.top, &error))?;
        let below = self.place.in_index(&index, STAGED)?;
        let paths = merging::conflicts(&index, &below);
        if !paths.is_empty() {
            return Err(RepositoryError::Unmerged { paths }.into());
        }
        self.of_index(&self.objects()?, &index, &below)
    }

    /// Returns the paths of the book's texts that an unfinished merge left in conflict, sorted.
    ///
    /// # Errors
    ///
    /// An index that can't be read.
    pub fn in_conflict(&self) -> Result<Vec<String>, StoreError> {
        if self.git.is_bare() {
            return Ok(Vec::new());
        }
        let index = self.git.index();
        let index = index.map_err(|error| RepositoryError::index(&self.top, &error))?;
        let below = self.place.known().filter(|_| index.has_conflicts());
        Ok(below.map_or_else(Vec::new, |below| merging::conflicts(&index, &below)))
    }

    /// Returns the book's texts as a merge of two commits would leave them. Nothing is written.
    ///
    /// # Errors
    ///
    /// No book in the merge, or something that it needs missing or damaged.
    pub fn merged(&self, ours: CommitId, theirs: CommitId) -> Result<Merge, StoreError> {
        let base = self.merge_base(ours, theirs)?;
        if base.is_none() && self.is_shallow() {
            return Err(self.objects()?.absent(vec![merging::BEGINNING.into()]).into());
        }
        let index = merging::index(&self.git, ours.0, theirs.0)?;
        let below = self.place.in_index(&index, "the merge")?;
        let store = self.of_index(&self.objects()?, &index, &below)?;
        let conflicts = merging::conflicts(&index, &below);
        Ok(Merge { store, base, conflicts })
    }

    fn of_index(
        &self,
        objects: &Objects<'_>,
        index: &Index,
        below: &Path,
    ) -> Result<Store, StoreError> {
        let things = standing::in_index(index, below);
        texts::store(objects, &self.top, below, &things, |path| {
            index.get_path(path, 0).is_some_and(|entry| is_file(entry.mode))
        })
    }

    fn objects(&self) -> Result<Objects<'_>, RepositoryError> {
        Objects::of(&self.git)
    }

    fn unreadable(&self, error: &git2::Error) -> StoreError {
        let folder = objects::folder(&self.git);
        RepositoryError::Unreadable { folder, said: error.message().to_owned() }.into()
    }
}

fn is_file(mode: u32) -> bool {
    standing::Kind::of_mode(mode) == standing::Kind::File
}

fn state(id: CommitId) -> String {
    format!("commit {}", id.short())
}
