//! Finds the folder that a book's root is; reads no text.

use std::fs;
use std::io;
use std::path::Path;
use std::path::PathBuf;

use crate::store::error::StoreError;
use crate::store::error::Unread;
use crate::store::layout::CLUB_FILE;
use crate::store::repository;

/// Returns the root of the book around a folder: the nearest folder upwards that holds `club.yaml`.
/// It never leaves the working tree of the repository that the folder lies in.
///
/// # Errors
///
/// [`StoreError`]: no such folder, not a folder, no book around it, or a folder that can't be
/// looked into.
pub fn find_book(start: &Path) -> Result<PathBuf, StoreError> {
    let folder = real_folder(start)?;
    match climb(&folder)? {
        Some(root) => Ok(root),
        None => Err(no_book(start, &folder)),
    }
}

/// Returns the whole path of a folder, every link in it resolved.
pub(super) fn real_folder(given: &Path) -> Result<PathBuf, StoreError> {
    let folder = fs::canonicalize(given).map_err(|error| match error.kind() {
        io::ErrorKind::NotFound => StoreError::NoFolder { folder: given.into() },
        io::ErrorKind::NotADirectory => StoreError::NotAFolder { path: given.into() },
        _ => cannot_read(given, &error),
    })?;
    match fs::metadata(&folder) {
        Ok(found) if found.is_dir() => Ok(folder),
        Ok(_) => Err(StoreError::NotAFolder { path: given.into() }),
        Err(error) => Err(cannot_read(given, &error)),
    }
}

/// Returns whether a folder holds something named `club.yaml`, be it a link or a folder: what it is
/// worth is found out when it is read.
pub(super) fn is_book(folder: &Path) -> Result<bool, StoreError> {
    let club = folder.join(CLUB_FILE);
    match fs::symlink_metadata(&club) {
        Ok(_) => Ok(true),
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(false),
        Err(error) => Err(cannot_read(&club, &error)),
    }
}

/// Returns the error for a folder without `club.yaml`, with the nearest folder that has it.
pub(super) fn no_book(given: &Path, folder: &Path) -> StoreError {
    let above = climb(folder).unwrap_or_default();
    StoreError::NoBook { folder: given.into(), nearest: above.or_else(|| one_level_down(folder)) }
}

fn climb(folder: &Path) -> Result<Option<PathBuf>, StoreError> {
    let top = repository::working_tree(folder);
    for step in folder.ancestors() {
        if is_book(step)? {
            return Ok(Some(step.into()));
        }
        if top.as_deref() == Some(step) {
            break;
        }
    }
    Ok(None)
}

/// Returns the first folder in a folder that is a book. What can't be looked into gives no hint.
fn one_level_down(folder: &Path) -> Option<PathBuf> {
    let entries = fs::read_dir(folder).ok()?.filter_map(Result::ok);
    let books = entries.map(|entry| entry.path()).filter(|path| path.join(CLUB_FILE).is_file());
    books.min()
}

fn cannot_read(path: &Path, error: &io::Error) -> StoreError {
    StoreError::CannotRead { unread: vec![Unread::because(path, error)] }
}
