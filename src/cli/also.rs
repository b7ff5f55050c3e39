//! Reports that are written to files beside the one that is shown. Never into a book's records.

use std::fs;
use std::io;
use std::io::ErrorKind;
use std::path::Path;
use std::path::PathBuf;

use super::arguments::Also;
use super::arguments::Format;
use super::exit::Exit;
use super::output::Done;
use crate::reports::shown;
use crate::store;
use crate::store::CLUB_FILE;
use crate::store::saving::save_over;

/// Refuses files that a report must not be written to, before anything is done.
///
/// # Errors
///
/// What the command comes to instead: one of them is a text of a book, or is named twice.
pub(super) fn refuse(also: &[Also]) -> Result<(), Done> {
    let mut seen: Vec<PathBuf> = Vec::new();
    for Also { file, .. } in also {
        let whole = resolved(file);
        let why = if is_text_of_a_book(&whole) {
            "it is one of the book's own files, or stands where they do"
        } else if seen.contains(&whole) {
            "two reports can't go into one file"
        } else {
            seen.push(whole);
            continue;
        };
        let told = vec![not_written(file, why), "Give --also another file.".to_owned()];
        return Err(Done::refused(Exit::Usage, told));
    }
    Ok(())
}

/// Writes each report whole, or not at all; tells what could not be written.
pub(super) fn write(also: &[Also], render: impl Fn(Format) -> Option<String>) -> Vec<String> {
    let write_one = |Also { format, file }: &Also| match render(*format) {
        None => Some(not_written(file, "there is nothing to report")),
        Some(text) => save_over(file, &text).err().map(|error| not_written(file, &reason(&error))),
    };
    also.iter().filter_map(write_one).collect()
}

fn not_written(file: &Path, why: &str) -> String {
    shown::line(&format!("{} was not written: {why}.", store::shown(file)))
}

fn reason(error: &io::Error) -> String {
    match error.kind() {
        ErrorKind::NotFound => "its folder is not there".to_owned(),
        ErrorKind::NotADirectory => "what should be its folder is a file".to_owned(),
        ErrorKind::PermissionDenied => "you may not write there".to_owned(),
        ErrorKind::StorageFull => "the disk is full".to_owned(),
        _ => error.to_string(),
    }
}

/// Returns the file itself, every link followed as far as there is something.
fn resolved(file: &Path) -> PathBuf {
    let folder = match file.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder,
        _ => Path::new("."),
    };
    let in_folder = || Some(fs::canonicalize(folder).ok()?.join(file.file_name()?));
    fs::canonicalize(file).ok().or_else(in_folder).unwrap_or_else(|| file.to_owned())
}

/// Returns whether a file is, or would be, read as a text of any book around it.
fn is_text_of_a_book(file: &Path) -> bool {
    let is_club = file.file_name().is_some_and(|name| name.eq_ignore_ascii_case(CLUB_FILE));
    let folders = file.ancestors().skip(1);
    let mut books = folders.filter(|folder| folder.join(CLUB_FILE).symlink_metadata().is_ok());
    is_club || books.any(|book| file.strip_prefix(book).is_ok_and(store::may_be_text))
}
