//! Puts the files of a new book in their places; takes them away again if not all can be written.

use std::fs;
use std::io;
use std::path::Path;
use std::path::PathBuf;

use crate::store;
use crate::store::saving;
use crate::store::saving::NotSaved;

/// What was made so far, in the order it was made.
#[derive(Debug, Default)]
pub(super) struct Made(Vec<PathBuf>);

impl Made {
    /// Makes a folder and those above it that are not there.
    ///
    /// # Errors
    ///
    /// The folder and why it can't be made.
    pub(super) fn folder(&mut self, folder: &Path) -> Result<(), String> {
        if folder.is_dir() || folder.as_os_str().is_empty() {
            return Ok(());
        }
        if let Some(above) = folder.parent() {
            self.folder(above)?;
        }
        match fs::create_dir(folder) {
            Ok(()) => self.0.push(folder.to_owned()),
            Err(error) => return Err(not_made(folder, &error)),
        }
        Ok(())
    }

    /// Writes a file that is not there; returns whether it was not.
    ///
    /// # Errors
    ///
    /// The file and why it can't be written.
    pub(super) fn file(&mut self, path: &Path, text: &str) -> Result<bool, String> {
        match saving::save_new(path, text) {
            Ok(()) => self.0.push(path.to_owned()),
            Err(NotSaved::Exists) => return Ok(false),
            Err(why) => return Err(format!("{} can't be written: {why}", store::shown(path))),
        }
        Ok(true)
    }

    /// Takes away what was made, the last first; a folder that holds something else stays.
    pub(super) fn take_back(self) {
        for path in self.0.iter().rev() {
            let _ = if path.is_dir() { fs::remove_dir(path) } else { fs::remove_file(path) };
        }
    }
}

fn not_made(folder: &Path, error: &io::Error) -> String {
    let why = NotSaved::from(io::Error::from(error.kind()));
    format!("the folder {} can't be made: {why}", store::shown(folder))
}
