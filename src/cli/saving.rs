//! Puts changed texts of a book back into its folder, and tells what could not be.

use super::book::OpenBook;
use crate::model::SourceFile;
use crate::reports::shown;
use crate::store;
use crate::store::saving;
use crate::store::saving::NotSaved;

/// Writes the new text of a file of the book.
///
/// # Errors
///
/// Why it is not changed, ready to be shown.
pub(super) fn save(open: &OpenBook, file: &SourceFile, new: &str) -> Result<(), String> {
    let path = store::file_of(&open.root, &file.path);
    saving::save(&path, &file.text, new).map_err(|why| not_changed(&file.path, &why))
}

/// Writes a file that the book does not have yet.
///
/// # Errors
///
/// Why it is not written, ready to be shown.
pub(super) fn save_new(open: &OpenBook, path: &str, text: &str) -> Result<(), String> {
    let file = store::file_of(&open.root, path);
    saving::save_new(&file, text).map_err(|why| not_written(path, &why))
}

fn not_changed(path: &str, why: &NotSaved) -> String {
    shown::line(&format!("{path} is as it was: {why}; {}", why.help()))
}

/// Returns the words for a file that is not there now either.
pub(super) fn not_written(path: &str, why: &NotSaved) -> String {
    shown::line(&format!("{path} is not written: {why}; {}", why.help()))
}
