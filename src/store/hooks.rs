//! One file in git's folder of hooks: looked at, put there, taken away; knows no text of its own.
//!
//! A hook of another program is never lost: it is kept beside under a name that git does not run,
//! and put back when the other one is taken away. There is no moment without a hook, and none with
//! half of one.

use std::fs;
use std::fs::File;
use std::io;
use std::io::ErrorKind;
use std::io::Read as _;
use std::io::Write as _;
use std::path::Path;
use std::path::PathBuf;

use thiserror::Error;

use crate::store::error;
use crate::store::names;

/// What is added to the name of a hook that is kept.
pub const KEPT: &str = ".kept-by-tholebook";

/// The most that is read of a hook. One of ours has a twentieth of it.
const MOST_BYTES: u64 = 1 << 16;

/// A hook as it is found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Hook {
    /// Its file.
    pub path: PathBuf,
    /// What is there.
    pub there: There,
    /// Whether another one is kept beside it.
    pub has_kept: bool,
}

/// What stands in the place of a hook.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum There {
    /// Nothing.
    Nothing,
    /// A file, or a link to one.
    File {
        /// Its text; none where it is no text, or a long one.
        text: Option<String>,
        /// Whether the system would run it.
        is_executable: bool,
    },
    /// Something that is no file.
    NoFile,
}

/// Why a hook was not put in its place or not taken away. What was there is there still.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum HookError {
    /// There is a hook, and one that was kept before.
    #[error(
        "\"{}\" is another program's hook, and \"{}\" was kept before it",
        names::shown(path),
        names::shown(&kept(path))
    )]
    TwoToKeep {
        /// The hook.
        path: PathBuf,
    },
    /// Something that is no file.
    #[error("\"{}\" is not a file", names::shown(path))]
    NoFile {
        /// What it is called.
        path: PathBuf,
    },
    /// The disk or the system refused.
    #[error("\"{}\": {reason}", names::shown(path))]
    Refused {
        /// The hook.
        path: PathBuf,
        /// Why, in plain words where it is one of the usual things.
        reason: String,
    },
}

impl HookError {
    /// Returns what the user can do.
    #[must_use]
    pub fn help(&self) -> String {
        match self {
            Self::TwoToKeep { path } => format!(
                "Make one of the two, as {}, and take the other away; then try again.",
                names::quoted(path)
            ),
            Self::NoFile { .. } => "Take it away, then try again.".into(),
            Self::Refused { .. } => "See that you may write in that folder, then try again.".into(),
        }
    }
}

/// Looks at a hook.
///
/// # Errors
///
/// The system refuses to show it.
pub fn look(folder: &Path, name: &str) -> Result<Hook, HookError> {
    let path = folder.join(name);
    let refused =
        |error: &io::Error| HookError::Refused { path: path.clone(), reason: error::reason(error) };
    let is_there = |path: &Path| match fs::symlink_metadata(path) {
        Ok(_) => Ok(true),
        Err(error) if is_nothing(&error) => Ok(false),
        Err(error) => Err(refused(&error)),
    };
    let has_kept = is_there(&kept(&path))?;
    let there = if is_there(&path)? {
        standing(&path).map_err(|error| refused(&error))?
    } else {
        There::Nothing
    };
    Ok(Hook { path, there, has_kept })
}

impl Hook {
    /// Puts a text in the place. What is there is kept beside it, unless it `is_own`.
    ///
    /// # Errors
    ///
    /// There are two to keep, something that is no file, or the system refuses.
    pub fn put(&self, text: &str, is_own: bool) -> Result<(), HookError> {
        self.may_put(is_own)?;
        let put = || {
            if let Some(folder) = self.path.parent() {
                fs::create_dir_all(folder)?;
            }
            let new = whole(&self.path, text)?;
            let settled = self.keep(is_own).and_then(|()| fs::rename(&new, &self.path));
            if settled.is_err() {
                // What is said of the first trouble matters more than a second one.
                let _ = fs::remove_file(&new);
            }
            settled
        };
        put().map_err(|error| self.refused(&error))
    }

    /// Says whether [`put`](Self::put) would find its place fit, and changes nothing.
    ///
    /// # Errors
    ///
    /// There are two to keep, or something that is no file.
    pub fn may_put(&self, is_own: bool) -> Result<(), HookError> {
        match &self.there {
            There::NoFile => Err(HookError::NoFile { path: self.path.clone() }),
            There::File { .. } if !is_own && self.has_kept && !self.is_kept_already() => {
                Err(HookError::TwoToKeep { path: self.path.clone() })
            }
            _ => Ok(()),
        }
    }

    /// Takes the hook away and puts back what was kept, if anything was.
    ///
    /// # Errors
    ///
    /// The system refuses.
    pub fn take_away(&self) -> Result<(), HookError> {
        let taken = if self.has_kept {
            fs::rename(kept(&self.path), &self.path)
        } else {
            fs::remove_file(&self.path)
        };
        taken.map_err(|error| self.refused(&error))
    }

    /// A second name for the file that is there, so that it is never without one.
    fn keep(&self, is_own: bool) -> io::Result<()> {
        if is_own || self.there == There::Nothing || self.has_kept {
            return Ok(());
        }
        let kept = kept(&self.path);
        // Some disks know no second names.
        fs::hard_link(&self.path, &kept).or_else(|_| fs::rename(&self.path, &kept))
    }

    /// A run that broke off left the hook under both names.
    fn is_kept_already(&self) -> bool {
        let bytes = |path: &Path| fs::read(path).ok();
        let kept = bytes(&kept(&self.path));
        kept.is_some() && kept == bytes(&self.path)
    }

    fn refused(&self, error: &io::Error) -> HookError {
        HookError::Refused { path: self.path.clone(), reason: error::written(error) }
    }
}

/// Returns the name under which a hook is kept.
#[must_use]
pub fn kept(path: &Path) -> PathBuf {
    let mut name = path.file_name().unwrap_or_default().to_owned();
    name.push(KEPT);
    path.with_file_name(name)
}

fn standing(path: &Path) -> io::Result<There> {
    let found = match fs::metadata(path) {
        // A link that leads nowhere is a hook that git does not find.
        Err(error) if is_nothing(&error) => {
            return Ok(There::File { text: None, is_executable: false });
        }
        found => found?,
    };
    if !found.is_file() {
        return Ok(There::NoFile);
    }
    let mut bytes = Vec::new();
    // One that may be run and not read is somebody else's all the same.
    let read = File::open(path).and_then(|file| file.take(MOST_BYTES + 1).read_to_end(&mut bytes));
    let text = read.ok().filter(|length| *length as u64 <= MOST_BYTES);
    let text = text.and_then(|_| String::from_utf8(bytes).ok());
    Ok(There::File { text, is_executable: is_executable(&found) })
}

fn is_nothing(error: &io::Error) -> bool {
    matches!(error.kind(), ErrorKind::NotFound | ErrorKind::NotADirectory)
}

#[cfg(unix)]
fn is_executable(found: &fs::Metadata) -> bool {
    use std::os::unix::fs::PermissionsExt as _;
    found.permissions().mode() & 0o111 != 0
}

#[cfg(not(unix))]
fn is_executable(_: &fs::Metadata) -> bool {
    true
}

/// Writes a text beside its place, ready to be run, and returns where.
fn whole(path: &Path, text: &str) -> io::Result<PathBuf> {
    let mut name = path.file_name().unwrap_or_default().to_owned();
    name.push(".new-by-tholebook");
    let new = path.with_file_name(name);
    let mut file = File::create(&new)?;
    file.write_all(text.as_bytes())?;
    #[cfg(unix)]
    file.set_permissions(std::os::unix::fs::PermissionsExt::from_mode(0o755))?;
    file.sync_all()?;
    Ok(new)
}

/// Returns whether a program is there that the system would run.
#[must_use]
pub fn is_program(path: &Path) -> bool {
    fs::metadata(path).is_ok_and(|found| found.is_file() && is_executable(&found))
}

#[cfg(test)]
mod tests {
    use super::*;

    const NAME: &str = "pre-commit";

    fn names(folder: &Path) -> Vec<String> {
        let entries = fs::read_dir(folder).expect("a folder").flatten();
        let mut names: Vec<String> =
            entries.map(|entry| entry.file_name().to_string_lossy().into_owned()).collect();
        names.sort();
        names
    }

    fn seen(folder: &Path) -> Hook {
        look(folder, NAME).expect("it can be looked at")
    }

    #[test]
    fn a_hook_is_put_where_none_was_and_taken_away_again() {
        let around = tempfile::tempdir().expect("a folder");
        let folder = around.path().join("hooks");
        seen(&folder).put("one", false).expect("it is put there");
        let there = There::File { text: Some("one".to_owned()), is_executable: true };
        assert_eq!(seen(&folder).there, there);
        seen(&folder).put("two", true).expect("it is put there");
        assert_eq!(names(&folder), [NAME]);
        seen(&folder).take_away().expect("it is taken away");
        assert!(names(&folder).is_empty());
    }

    #[test]
    fn what_was_there_is_kept_and_comes_back() {
        let around = tempfile::tempdir().expect("a folder");
        let folder = around.path();
        fs::write(folder.join(NAME), "theirs").expect("a file");
        seen(folder).put("ours", false).expect("it is put there");
        assert_eq!(names(folder), [NAME, "pre-commit.kept-by-tholebook"]);
        seen(folder).put("ours anew", true).expect("it is put there");
        seen(folder).take_away().expect("it is taken away");
        assert_eq!(names(folder), [NAME]);
        assert_eq!(fs::read_to_string(folder.join(NAME)).expect("a text"), "theirs");
    }

    #[test]
    fn of_two_hooks_to_keep_none_is_lost() {
        let around = tempfile::tempdir().expect("a folder");
        let folder = around.path();
        fs::write(folder.join(NAME), "theirs").expect("a file");
        fs::write(kept(&folder.join(NAME)), "an older one").expect("a file");
        let refused = seen(folder).put("ours", false).expect_err("two to keep");
        assert!(matches!(refused, HookError::TwoToKeep { .. }));
        assert_eq!(names(folder).len(), 2);
        // A run that broke off between keeping and putting left one hook under two names.
        fs::write(kept(&folder.join(NAME)), "theirs").expect("a file");
        seen(folder).put("ours", false).expect("it is put there");
        assert_eq!(fs::read_to_string(kept(&folder.join(NAME))).expect("a text"), "theirs");
    }

    #[test]
    fn a_folder_in_the_place_of_a_hook_is_left_alone() {
        let around = tempfile::tempdir().expect("a folder");
        let folder = around.path();
        fs::create_dir(folder.join(NAME)).expect("a folder");
        let refused = seen(folder).put("ours", false).expect_err("a folder");
        assert!(matches!(refused, HookError::NoFile { .. }));
        assert_eq!(names(folder), [NAME]);
    }

    #[cfg(unix)]
    #[test]
    fn a_link_is_kept_as_a_link_and_one_that_leads_nowhere_too() {
        let around = tempfile::tempdir().expect("a folder");
        let folder = around.path();
        for target in ["/bin/sh", "gone"] {
            std::os::unix::fs::symlink(target, folder.join(NAME)).expect("a link");
            seen(folder).put("ours", false).expect("it is put there");
            let link = fs::read_link(kept(&folder.join(NAME))).expect("a link");
            assert_eq!(link, Path::new(target));
            seen(folder).take_away().expect("it is taken away");
            assert_eq!(fs::read_link(folder.join(NAME)).expect("a link"), Path::new(target));
            fs::remove_file(folder.join(NAME)).expect("it was there");
        }
    }
}
