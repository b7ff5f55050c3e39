//! `view`: a record as plain lines, for `git diff`. Whatever the file holds, something is shown.

use std::fs;

use super::arguments::View;
use super::exit::Exit;
use super::output::Done;
use crate::reading;
use crate::reports;
use crate::reports::shown;
use crate::store::Content;
use crate::store::MAX_FILE_BYTES;
use crate::store::Named;

/// Runs the command.
pub(super) fn run(arguments: &View) -> Done {
    match fs::read(&arguments.file) {
        Ok(bytes) => Done::result(lines(bytes)),
        Err(error) => {
            let file = shown::line(&arguments.file.display().to_string());
            Done::refused(Exit::NotChecked, vec![format!("Could not read {file}: {error}")])
        }
    }
}

/// Returns the record's lines, or the text as it is, what can't be seen written out.
fn lines(bytes: Vec<u8>) -> String {
    let raw = shown::lines(&String::from_utf8_lossy(&bytes).replace("\r\n", "\n"));
    if bytes.len() as u64 > MAX_FILE_BYTES {
        return raw;
    }
    let Content::Text(text) = Content::of_bytes(bytes) else { return raw };
    let (book, _) = reading::read_alone(Named::text("", &text));
    reports::plain_lines(&book).unwrap_or(raw)
}
