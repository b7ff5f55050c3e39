//! Keeps a folder of texts that no hand edits: writes what differs, takes away what it wrote itself
//! and is no longer wanted; knows no boats.
//!
//! The folder holds a list of what was written into it. A folder that is not empty and has no such
//! list belongs to somebody else and stays as it is. Nothing outside of the folder is touched: links
//! and ways up are refused, and a name is one of letters, digits and hyphens.

use std::collections::BTreeSet;
use std::fs;
use std::io;
use std::io::ErrorKind;
use std::path::Component;
use std::path::Path;
use std::path::PathBuf;

use thiserror::Error;

use super::error::written;
use super::names::shown;

/// The list of what was written.
const LIST: &str = ".tholebook-pages";

/// The first line of the list.
const FIRST_LINE: &str =
    "Written by tholebook pages. What is listed here is written anew, or taken away, by it.";

/// What the name of a text ends in while it is being written.
const BEGUN: &str = ".begun";

/// A text with its name in the folder.
#[derive(Clone, Debug, Eq, PartialEq)]
pub struct Leaf {
    /// Its name: small letters, digits and hyphens, then `.html`.
    pub name: String,
    /// The text.
    pub text: String,
}

/// What was done.
#[derive(Clone, Copy, Debug, Default, Eq, PartialEq)]
pub struct Published {
    /// How many texts were written.
    pub written: usize,
    /// How many were there already, as they should be.
    pub unchanged: usize,
    /// How many were taken away.
    pub removed: usize,
}

/// Why nothing, or not all, was written.
#[derive(Clone, Debug, Eq, Error, PartialEq)]
pub enum NotPublished {
    /// The way to the folder goes up.
    #[error("the folder's path holds `..`")]
    WayUp,
    /// The folder lies in the book.
    #[error("the folder lies in the book")]
    InBook,
    /// The folder lies among git's own files.
    #[error("the folder lies among git's own files")]
    InGit,
    /// Something is a link to another place.
    #[error("{0} is a link to another place")]
    Link(String),
    /// Something is no folder, or no plain file.
    #[error("{0} is not what it should be: something else is there")]
    SomethingElse(String),
    /// The folder was not made by this program, and is not empty.
    #[error("the folder is not empty, and tholebook pages did not make it")]
    Foreign,
    /// The system refused.
    #[error("{path}: {why}")]
    Refused {
        /// What could not be had or written.
        path: String,
        /// What the system said.
        why: String,
    },
}

impl NotPublished {
    /// Returns what to do about it.
    #[must_use]
    pub const fn help(&self) -> &'static str {
        match self {
            Self::WayUp => "give the folder's whole path, such as /srv/pages",
            Self::InBook => "give a folder beside the book: what is in the book is a record",
            Self::InGit => "give a folder of its own",
            Self::Link(_) => "give the true folder, and put plain files there",
            Self::SomethingElse(_) => "move it away, or give another folder",
            Self::Foreign => "give an empty folder or a new one",
            Self::Refused { .. } => "put that right, then try again",
        }
    }

    fn refused(path: &Path, error: &io::Error) -> Self {
        Self::Refused { path: shown(path), why: written(error) }
    }
}

/// Writes texts into a folder, and takes away those that were written before and are not among them.
///
/// # Errors
///
/// [`NotPublished`]. Where the folder is refused, nothing was touched; where the system refuses
/// half-way, every text is the old one or the new one.
pub fn publish(out: &Path, book: &Path, leaves: &[Leaf]) -> Result<Published, NotPublished> {
    let folder = allowed(out, book)?;
    let before = list_of(&folder)?;
    for name in before.iter().chain(leaves.iter().map(|leaf| &leaf.name)) {
        plain_or_absent(&folder.join(name))?;
    }
    fs::create_dir_all(&folder).map_err(|error| NotPublished::refused(&folder, &error))?;
    let now: BTreeSet<String> = leaves.iter().map(|leaf| leaf.name.clone()).collect();
    for name in before.union(&now) {
        clear_beginning(&folder.join(name))?;
    }
    // What is about to be written is listed first: what a killed run leaves is known as its own.
    write_list(&folder, before.union(&now))?;
    let mut done = Published::default();
    for leaf in leaves {
        if put(&folder.join(&leaf.name), &leaf.text)? {
            done.written += 1;
        } else {
            done.unchanged += 1;
        }
    }
    for name in before.difference(&now) {
        let path = folder.join(name);
        match fs::remove_file(&path) {
            Ok(()) => done.removed += 1,
            Err(error) if error.kind() == ErrorKind::NotFound => {}
            Err(error) => return Err(NotPublished::refused(&path, &error)),
        }
    }
    write_list(&folder, now.iter())?;
    Ok(done)
}

/// Returns the folder's true path, where it may be written to.
fn allowed(out: &Path, book: &Path) -> Result<PathBuf, NotPublished> {
    if out.components().any(|part| part == Component::ParentDir) {
        return Err(NotPublished::WayUp);
    }
    match fs::symlink_metadata(out) {
        Ok(about) if about.is_symlink() => return Err(NotPublished::Link(shown(out))),
        Ok(about) if !about.is_dir() => return Err(NotPublished::SomethingElse(shown(out))),
        Ok(_) => {}
        Err(error) if error.kind() == ErrorKind::NotFound => {}
        Err(error) => return Err(NotPublished::refused(out, &error)),
    }
    let folder = true_path(out)?;
    let book = fs::canonicalize(book).map_err(|error| NotPublished::refused(book, &error))?;
    if folder.starts_with(&book) {
        return Err(NotPublished::InBook);
    }
    if folder.iter().any(|part| part == ".git") {
        return Err(NotPublished::InGit);
    }
    Ok(folder)
}

/// Returns a path with every link in it resolved, though its last parts may not be there yet.
fn true_path(out: &Path) -> Result<PathBuf, NotPublished> {
    let whole = std::path::absolute(out).map_err(|error| NotPublished::refused(out, &error))?;
    for there in whole.ancestors() {
        match fs::canonicalize(there) {
            Ok(known) => {
                let rest = whole.strip_prefix(there).unwrap_or(Path::new(""));
                return Ok(if rest.as_os_str().is_empty() { known } else { known.join(rest) });
            }
            // A link that leads nowhere is there all the same.
            Err(_) if there.is_symlink() => return Err(NotPublished::Link(shown(there))),
            Err(error) if error.kind() == ErrorKind::NotFound => {}
            Err(error) => return Err(NotPublished::refused(there, &error)),
        }
    }
    Ok(whole)
}

/// Returns the names of what was written into a folder before.
fn list_of(folder: &Path) -> Result<BTreeSet<String>, NotPublished> {
    let path = folder.join(LIST);
    plain_or_absent(&path)?;
    match fs::read_to_string(&path) {
        Ok(text) if text.starts_with(FIRST_LINE) => {
            let names = text.lines().skip(1).filter(|name| is_name(name));
            Ok(names.map(str::to_owned).collect())
        }
        Ok(_) => Err(NotPublished::Foreign),
        Err(error) if error.kind() == ErrorKind::NotFound => match fs::read_dir(folder) {
            Ok(mut entries) => {
                // A first run that was killed may have left the beginning of its list, and no more.
                let own = begun(&path);
                let is_own =
                    |entry: io::Result<fs::DirEntry>| entry.is_ok_and(|it| it.path() == own);
                if entries.all(is_own) { Ok(BTreeSet::new()) } else { Err(NotPublished::Foreign) }
            }
            Err(error) if error.kind() == ErrorKind::NotFound => Ok(BTreeSet::new()),
            Err(error) => Err(NotPublished::refused(folder, &error)),
        },
        Err(error) if error.kind() == ErrorKind::InvalidData => Err(NotPublished::Foreign),
        Err(error) => Err(NotPublished::refused(&path, &error)),
    }
}

/// Returns whether a name is one that this program gives: no list can lead it out of the folder.
fn is_name(name: &str) -> bool {
    let Some(stem) = name.strip_suffix(".html") else { return false };
    let allowed = |byte: u8| matches!(byte, b'a'..=b'z' | b'0'..=b'9' | b'-');
    !stem.is_empty() && stem.bytes().all(allowed)
}

fn plain_or_absent(path: &Path) -> Result<(), NotPublished> {
    match fs::symlink_metadata(path) {
        Ok(about) if about.is_symlink() => Err(NotPublished::Link(shown(path))),
        Ok(about) if !about.is_file() => Err(NotPublished::SomethingElse(shown(path))),
        Ok(_) => Ok(()),
        Err(error) if error.kind() == ErrorKind::NotFound => Ok(()),
        Err(error) => Err(NotPublished::refused(path, &error)),
    }
}

fn write_list<'n>(
    folder: &Path,
    names: impl Iterator<Item = &'n String>,
) -> Result<(), NotPublished> {
    let mut text = format!("{FIRST_LINE}\n");
    names.for_each(|name| text.push_str(&format!("{name}\n")));
    put(&folder.join(LIST), &text).map(drop)
}

/// Puts a text in the place of a file, whole or not at all, unless it is there already; returns
/// whether it was written. Not synced to the disk: what a power cut takes is written again.
fn put(path: &Path, text: &str) -> Result<bool, NotPublished> {
    let refused = |error: io::Error| NotPublished::refused(path, &error);
    if fs::read(path).is_ok_and(|there| there == text.as_bytes()) {
        return Ok(false);
    }
    clear_beginning(path)?;
    let beside = begun(path);
    let written = fs::File::create_new(&beside)
        .and_then(|mut file| io::Write::write_all(&mut file, text.as_bytes()))
        .and_then(|()| fs::rename(&beside, path));
    written.map(|()| true).map_err(|error| {
        // Why it could not be written is told; that its beginning can't be removed says no more.
        let _ = fs::remove_file(&beside);
        refused(error)
    })
}

/// Returns where a text is written before it takes its name.
fn begun(path: &Path) -> PathBuf {
    let name = path.file_name().unwrap_or_default().to_string_lossy();
    path.with_file_name(format!(".{}{BEGUN}", name.trim_start_matches('.')))
}

/// Takes away what a killed run began to write.
fn clear_beginning(path: &Path) -> Result<(), NotPublished> {
    match fs::remove_file(begun(path)) {
        Err(error) if error.kind() != ErrorKind::NotFound => {
            Err(NotPublished::refused(path, &error))
        }
        _ => Ok(()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_never_leads_out_of_the_folder() {
        assert!(is_name("boat-kittiwake.html"));
        for name in ["../x.html", "a/b.html", ".html", "A.html", "x.htm", "c:x.html", "a..html"] {
            assert!(!is_name(name), "{name}");
        }
    }
}
