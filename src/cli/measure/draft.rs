//! The draft of a measuring: saved at every answer, where no commit ever takes it along.
//!
//! It lies in git's own folder; where there is none, beside the book in a file whose name begins with
//! a dot. Its lines are those of a file of answers.

use std::fs;
use std::io::ErrorKind;
use std::path::PathBuf;

use super::subject::Measured;
use crate::cli::exit::Exit;
use crate::cli::output::Done;
use crate::reports::shown;
use crate::store;
use crate::store::committing;
use crate::store::saving;
use crate::writing::measuring::Dialogue;
use crate::writing::measuring::Lines;

/// Where the draft of a record lies.
pub(super) struct Draft {
    path: PathBuf,
}

impl Draft {
    pub(super) fn of(measured: &Measured, second: bool) -> Self {
        let whose = if second { "second" } else { "measure" };
        let id: String =
            measured.id.chars().filter(|c| c.is_ascii_alphanumeric() || *c == '-').collect();
        let root = &measured.open.root;
        let path = match committing::git_folder(root) {
            Some(git) => {
                // Two books of one repository have drafts of their own.
                let below = store::below_top(root).replace(['/', '\\'], "_");
                git.join("tholebook").join(below).join(format!("{whose}-{id}.txt"))
            }
            None => root.join(format!(".{whose}-{id}.txt")),
        };
        Self { path }
    }

    /// Returns where it lies, to be shown.
    fn place(&self) -> String {
        store::shown(&self.path)
    }

    /// Returns whether there is one.
    pub(super) fn is_there(&self) -> bool {
        self.path.exists()
    }

    /// Returns what it says, if there is one.
    ///
    /// # Errors
    ///
    /// What the command comes to instead: it can't be read, and must not be written over unseen.
    pub(super) fn lines(&self) -> Result<Option<Lines>, Done> {
        let why = match fs::read_to_string(&self.path) {
            Err(error) if error.kind() == ErrorKind::NotFound => return Ok(None),
            Err(error) => vec![error.to_string()],
            Ok(text) => match Lines::read(&text) {
                Ok(lines) => return Ok(Some(lines)),
                Err(faults) => faults.iter().map(ToString::to_string).collect(),
            },
        };
        Err(self.unfit("The draft can't be read.", why))
    }

    /// Returns what the command comes to where the draft can't be gone on with.
    pub(super) fn unfit(&self, what: &str, why: Vec<String>) -> Done {
        let mut told = vec![format!("{what} Mend it or take it away: {}", self.place())];
        told.extend(why);
        Done::refused(Exit::NotChecked, told.iter().map(|line| shown::line(line)).collect())
    }

    /// Saves the answers so far.
    ///
    /// # Errors
    ///
    /// What the system said; a draft that was there before is as it was.
    pub(super) fn save(&self, measured: &Measured, dialogue: &Dialogue) -> Result<(), String> {
        let head = format!(
            "# Answers of tholebook measure {}; nothing after the colon: not measured today.\n",
            measured.id
        );
        let text = format!("{head}{}", dialogue.draft());
        let folder = self.path.parent().map(fs::create_dir_all).transpose();
        let saved = folder.and_then(|_| saving::save_over(&self.path, &text));
        saved.map_err(|error| error.to_string())
    }

    /// Takes it away; one that is not there is gone too.
    pub(super) fn remove(&self) {
        let _ = fs::remove_file(&self.path);
    }
}
