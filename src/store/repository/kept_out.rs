//! The texts that a sparse checkout keeps out of a folder, as git's index has them.

use std::path::Path;

use crate::store::error::StoreError;
use crate::store::named::Named;
use crate::store::names;
use crate::store::repository::error::RepositoryError;
use crate::store::repository::objects::Missed;
use crate::store::repository::objects::Objects;
use crate::store::repository::opening;
use crate::store::repository::standing;

/// Returns the texts of these paths of a book, which git takes to be as they are in its index.
///
/// # Errors
///
/// The index can't be read, or it names a text that the repository does not hold.
pub(in crate::store) fn kept_out(root: &Path, paths: &[String]) -> Result<Vec<Named>, StoreError> {
    let git = opening::open(root).map_err(|error| RepositoryError::opening(root, &error))?;
    let below = opening::below_working_tree(&git, root)?;
    let index = git.index().map_err(|error| RepositoryError::index(root, &error))?;
    let objects = Objects::of(&git)?;
    let (mut texts, mut absent) = (Vec::new(), Vec::new());
    for (entry, path) in standing::entries_below(&index, &below) {
        let path = names::shown(&path);
        if !paths.contains(&path) {
            continue;
        }
        match objects.content(entry.id) {
            Ok(content) => texts.push(Named { path, content }),
            Err(Missed::Absent) => absent.push(path),
            Err(damaged) => return Err(objects.error(&path, damaged).into()),
        }
    }
    if absent.is_empty() { Ok(texts) } else { Err(objects.absent(absent).into()) }
}

/// Refuses an index that is cut short: nobody can tell then what is kept out of the folder.
pub(in crate::store) fn refuse_cut_index(root: &Path) -> Result<(), RepositoryError> {
    let Ok(git) = opening::open(root) else { return Ok(()) };
    match git.index().map_err(|error| RepositoryError::index(root, &error)) {
        Err(cut @ RepositoryError::SparseIndex { .. }) => Err(cut),
        _ => Ok(()),
    }
}
