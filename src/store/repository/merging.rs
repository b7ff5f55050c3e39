//! Two commits merged in memory, as git would merge them; nothing reaches the disk.

use std::collections::BTreeSet;

use git2::Index;
use git2::MergeOptions;
use git2::Oid;
use git2::Repository;

use crate::store::Store;
use crate::store::layout;
use crate::store::names;
use crate::store::repository::error::RepositoryError;
use crate::store::repository::ids::CommitId;
use crate::store::repository::loose;
use crate::store::repository::objects;
use crate::store::repository::objects::Missed;
use crate::store::repository::objects::Objects;
use crate::store::repository::standing;

/// What a clone that is cut short may lack.
pub(super) const BEGINNING: &str = "what both sides began from";

/// What the merge of two commits would be.
#[derive(Clone, Debug)]
pub struct Merge {
    /// The book's texts. One in conflict is left out.
    pub store: Store,
    /// The commit that both follow from; none when they share no history.
    pub base: Option<CommitId>,
    /// The paths of the book's texts in conflict, sorted: what git could not merge by itself.
    pub conflicts: Vec<String>,
}

/// Returns the index that a merge would leave. The texts that it merges are kept where the
/// repository was opened to keep them: in memory.
pub(super) fn index(git: &Repository, ours: Oid, theirs: Oid) -> Result<Index, RepositoryError> {
    let said = |error: &git2::Error| RepositoryError::Unreadable {
        folder: objects::folder(git),
        said: error.message().to_owned(),
    };
    loose::refuse_broken(git)?;
    let commit = |id| git.find_commit(id).map_err(|error| said(&error));
    let options = MergeOptions::new();
    git.merge_commits(&commit(ours)?, &commit(theirs)?, Some(&options)).map_err(|error| {
        match (Missed::because(error), Objects::of(git)) {
            (Missed::Absent, Ok(objects)) => objects.absent(vec![BEGINNING.into()]),
            (Missed::Damaged(said), _) => {
                RepositoryError::Unreadable { folder: objects::folder(git), said }
            }
            (Missed::Absent, Err(error)) => error,
        }
    })
}

/// Returns the paths of a book's texts that have more than one form.
pub(super) fn conflicts(index: &Index, below: &std::path::Path) -> Vec<String> {
    let sides = standing::entries_below(index, below);
    let sides =
        sides.filter(|(entry, path)| standing::stage(entry) > 0 && layout::may_be_text(path));
    let paths: BTreeSet<String> = sides.map(|(_, path)| names::shown(&path)).collect();
    paths.into_iter().collect()
}
