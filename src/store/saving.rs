//! Puts a text in the place of a file, whole or not at all; knows no boats.
//!
//! The text is written beside the file, both it and the folder are synced to the disk, and only
//! then does it take the file's name. Whatever stops it, a full disk, a power cut, a killed
//! program, the file is the old one or the new one, never half of either.

use std::fs;
use std::fs::File;
use std::fs::Metadata;
use std::fs::TryLockError;
use std::io;
use std::io::ErrorKind;
use std::io::Write as _;
use std::path::Path;
use std::path::PathBuf;

use thiserror::Error;

use super::error::written;

/// Why a file was not written. It is as it was.
#[derive(Clone, Debug, Eq, Error, PartialEq)]
pub enum NotSaved {
    /// It is a link to another place.
    #[error("it is a link to another place")]
    Link,
    /// It is no plain file.
    #[error("it is no plain file")]
    NotAFile,
    /// It is marked as one that is only read.
    #[error("it is marked read-only")]
    ReadOnly,
    /// It holds something else than what was read.
    #[error("it changed while this ran")]
    Changed,
    /// It is there already.
    #[error("it is there already")]
    Exists,
    /// The system refused.
    #[error("{0}")]
    Refused(String),
}

impl NotSaved {
    /// Returns what to do about it.
    #[must_use]
    pub const fn help(&self) -> &'static str {
        match self {
            Self::Link | Self::NotAFile => "put the record's own file there, then try again",
            Self::ReadOnly => "allow it to be written, then try again",
            Self::Changed => "look at what changed, then try again",
            Self::Exists => "choose another name, or edit the one that is there",
            Self::Refused(_) => "put that right, then try again",
        }
    }
}

impl From<io::Error> for NotSaved {
    fn from(error: io::Error) -> Self {
        match error.kind() {
            ErrorKind::NotFound => Self::Changed,
            ErrorKind::AlreadyExists => Self::Exists,
            _ => Self::Refused(written(&error)),
        }
    }
}

/// Writes `new` in the place of a record that was read as `read`. Its mode and, where that is
/// allowed, its owner stay.
///
/// # Errors
///
/// [`NotSaved`]; the file is as it was.
pub fn save(path: &Path, read: &str, new: &str) -> Result<(), NotSaved> {
    let about = fs::symlink_metadata(path)?;
    if about.is_symlink() {
        return Err(NotSaved::Link);
    }
    if !about.is_file() {
        return Err(NotSaved::NotAFile);
    }
    if about.permissions().readonly() {
        return Err(NotSaved::ReadOnly);
    }
    let beside = Beside::write(path, new.as_bytes(), Some(&about))?;
    // Looked at as late as can be: whoever saves in an editor meanwhile loses nothing.
    let is_same = fs::read(path)? == read.as_bytes();
    let is_link = fs::symlink_metadata(path)?.is_symlink();
    if !is_same || is_link {
        return Err(NotSaved::Changed);
    }
    Ok(beside.take_the_place(path)?)
}

/// Writes a file that is not there yet; one that is there stays as it is.
///
/// # Errors
///
/// [`NotSaved`]; nothing was written.
pub fn save_new(path: &Path, text: &str) -> Result<(), NotSaved> {
    if fs::symlink_metadata(path).is_ok() {
        return Err(NotSaved::Exists);
    }
    let beside =
        Beside::write(path, text.as_bytes(), None).map_err(|error| match error.kind() {
            ErrorKind::NotFound => NotSaved::Refused("there is no such folder".to_owned()),
            _ => error.into(),
        })?;
    Ok(beside.take_a_free_place(path)?)
}

/// Writes a text that is no record, such as a report: over whatever file is there, through a link.
///
/// # Errors
///
/// What the system said; a file that was there is as it was.
pub fn save_over(path: &Path, text: impl AsRef<[u8]>) -> io::Result<()> {
    let path = fs::canonicalize(path).unwrap_or_else(|_| path.to_owned());
    let about = fs::metadata(&path).ok();
    if about.as_ref().is_some_and(|about| !about.is_file()) {
        return Err(io::Error::other("what is there is no file"));
    }
    Beside::write(&path, text.as_ref(), about.as_ref())?.take_the_place(&path)
}

/// A whole file beside the one that it is to replace; taken away again unless it does.
struct Beside {
    path: PathBuf,
    /// Locked while this program lives: what nobody holds was left by a killed one.
    file: File,
    /// Whether the name is no longer ours: it may be another program's by now.
    is_gone: bool,
}

impl Beside {
    fn write(path: &Path, text: &[u8], like: Option<&Metadata>) -> io::Result<Self> {
        let mut beside = Self::free_name(path)?;
        if let Some(like) = like {
            keep_owner(&beside.file, like);
            beside.file.set_permissions(like.permissions())?;
        }
        beside.file.write_all(text)?;
        beside.file.sync_all()?;
        Ok(beside)
    }

    /// Makes a file of a name that nothing has. It begins with a dot, so that no book ever reads one
    /// that a killed program left; the next one to write the same file takes that away.
    fn free_name(path: &Path) -> io::Result<Self> {
        let mut number = 0_u32;
        loop {
            let mut name = std::ffi::OsString::from(".");
            name.push(path.file_name().unwrap_or_default());
            name.push(format!(".new{number}"));
            let beside = path.with_file_name(name);
            match File::create_new(&beside) {
                Err(error) if error.kind() == ErrorKind::AlreadyExists && number < 1000 => {
                    number += u32::from(!clear_if_left(&beside));
                }
                // Another that looks for a name took it for one that was left: it is theirs now.
                Ok(file) if is_held(&file) || !stands_at(&file, &beside) => number += 1,
                made => return made.map(|file| Self { path: beside, file, is_gone: false }),
            }
        }
    }

    fn take_the_place(mut self, path: &Path) -> io::Result<()> {
        fs::rename(&self.path, path)?;
        self.is_gone = true;
        sync_folder(path);
        Ok(())
    }

    /// Takes a name only if nothing has it: a second name for the file, then the first one goes.
    fn take_a_free_place(self, path: &Path) -> io::Result<()> {
        match fs::hard_link(&self.path, path) {
            // Some disks, of cameras and phones, know no second names.
            Err(error) if error.kind() == ErrorKind::Unsupported || is_not_permitted(&error) => {
                match fs::symlink_metadata(path) {
                    Ok(_) => Err(ErrorKind::AlreadyExists.into()),
                    Err(_) => self.take_the_place(path),
                }
            }
            linked => linked.map(|()| sync_folder(path)),
        }
    }
}

impl Drop for Beside {
    fn drop(&mut self) {
        if !self.is_gone {
            // Why it could not be written is told; that its beginning can't be removed says no more.
            let _ = fs::remove_file(&self.path);
        }
    }
}

/// Takes a file away that no program holds; returns whether it is gone. Where a disk knows no locks,
/// it stays.
fn clear_if_left(beside: &Path) -> bool {
    let is_plain = fs::symlink_metadata(beside).is_ok_and(|about| about.is_file());
    let Ok(file) = is_plain.then(|| File::open(beside)).transpose() else { return false };
    // Held until it is gone, so that nobody else begins to write it.
    let is_left = |file: &File| file.try_lock().is_ok() && stands_at(file, beside);
    file.is_some_and(|file| is_left(&file) && fs::remove_file(beside).is_ok())
}

/// Returns whether another holds the file; else it is held here from now on.
fn is_held(file: &File) -> bool {
    matches!(file.try_lock(), Err(TryLockError::WouldBlock))
}

/// Returns whether the file still has its name: another may have taken it away and begun a new one.
#[cfg(unix)]
fn stands_at(file: &File, path: &Path) -> bool {
    use std::os::unix::fs::MetadataExt as _;
    let which = |about: Metadata| (about.dev(), about.ino());
    let [own, there] = [file.metadata(), fs::symlink_metadata(path)].map(|about| about.map(which));
    own.is_ok_and(|own| there.is_ok_and(|there| own == there))
}

#[cfg(not(unix))]
fn stands_at(_: &File, _: &Path) -> bool {
    true
}

fn is_not_permitted(error: &io::Error) -> bool {
    error.kind() == ErrorKind::PermissionDenied
}

/// Gives the new file to whom the old one belongs, where the two differ and it may be done.
#[cfg(unix)]
fn keep_owner(file: &File, like: &Metadata) {
    use std::os::unix::fs::MetadataExt as _;
    use std::os::unix::fs::fchown;
    let differs = |new: Metadata| (new.uid(), new.gid()) != (like.uid(), like.gid());
    if file.metadata().is_ok_and(differs) {
        let _ = fchown(file, Some(like.uid()), Some(like.gid()));
    }
}

#[cfg(not(unix))]
fn keep_owner(_: &File, _: &Metadata) {}

/// Has the folder written to the disk, so that the new name lasts too. What is renamed by now is
/// whole either way; a folder that can't be opened is no reason to call it unwritten.
fn sync_folder(path: &Path) {
    let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty());
    if let Ok(folder) = File::open(folder.unwrap_or(Path::new("."))) {
        let _ = folder.sync_all();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn folder() -> tempfile::TempDir {
        tempfile::tempdir().expect("a folder")
    }

    fn names(folder: &Path) -> Vec<String> {
        let entries = fs::read_dir(folder).expect("a folder");
        let name = |entry: io::Result<fs::DirEntry>| entry.expect("an entry").file_name();
        entries.map(|entry| name(entry).to_string_lossy().into_owned()).collect()
    }

    #[test]
    fn a_record_is_replaced_and_nothing_stays_beside_it() {
        let folder = folder();
        let path = folder.path().join("kittiwake.yaml");
        fs::write(&path, "gap: 58\n").expect("a file");
        save(&path, "gap: 58\n", "gap: 59\n").expect("it is saved");
        assert_eq!(fs::read_to_string(&path).expect("a text"), "gap: 59\n");
        assert_eq!(names(folder.path()), ["kittiwake.yaml"]);
    }

    #[test]
    fn many_writers_at_once_leave_a_whole_text_and_nothing_beside_it() {
        let folder = folder();
        let path = folder.path().join("kittiwake.yaml");
        let write = |writer: usize| {
            for time in 0..25 {
                let line = format!("gap: {writer}.{time}\n");
                save_over(&path, line.repeat(200)).expect("it is saved");
                let there = fs::read_to_string(&path).expect("a text");
                let mut lines = there.lines();
                let first = lines.next().expect("a line");
                assert!(lines.clone().count() == 199 && lines.all(|line| line == first), "{there}");
            }
        };
        let write = &write;
        std::thread::scope(|all| {
            (0..4).for_each(|writer| drop(all.spawn(move || write(writer))));
        });
        assert_eq!(names(folder.path()), ["kittiwake.yaml"]);
    }

    #[test]
    fn a_record_that_someone_else_saved_meanwhile_stays_theirs() {
        let folder = folder();
        let path = folder.path().join("kittiwake.yaml");
        fs::write(&path, "gap: 60\n").expect("a file");
        assert_eq!(save(&path, "gap: 58\n", "gap: 59\n"), Err(NotSaved::Changed));
        assert_eq!(fs::read_to_string(&path).expect("a text"), "gap: 60\n");
        assert_eq!(names(folder.path()), ["kittiwake.yaml"]);
        fs::remove_file(&path).expect("it goes");
        assert_eq!(save(&path, "gap: 58\n", "gap: 59\n"), Err(NotSaved::Changed));
        assert!(names(folder.path()).is_empty());
    }

    #[test]
    fn a_new_record_never_takes_the_place_of_another() {
        let folder = folder();
        let path = folder.path().join("fulmar.yaml");
        save_new(&path, "boat: fulmar\n").expect("it is saved");
        assert_eq!(save_new(&path, "boat: gannet\n"), Err(NotSaved::Exists));
        assert_eq!(fs::read_to_string(&path).expect("a text"), "boat: fulmar\n");
        assert_eq!(names(folder.path()), ["fulmar.yaml"]);
    }

    #[cfg(unix)]
    #[test]
    fn the_mode_stays_and_links_and_read_only_records_are_refused() {
        use std::os::unix::fs::PermissionsExt as _;
        let folder = folder();
        let path = folder.path().join("kittiwake.yaml");
        fs::write(&path, "gap: 58\n").expect("a file");
        let mode = |mode| fs::set_permissions(&path, fs::Permissions::from_mode(mode));
        mode(0o664).expect("a mode");
        save(&path, "gap: 58\n", "gap: 59\n").expect("it is saved");
        let kept = fs::metadata(&path).expect("a file").permissions().mode();
        assert_eq!(kept & 0o777, 0o664);
        let link = folder.path().join("link.yaml");
        std::os::unix::fs::symlink(&path, &link).expect("a link");
        assert_eq!(save(&link, "gap: 59\n", "gap: 60\n"), Err(NotSaved::Link));
        mode(0o444).expect("a mode");
        assert_eq!(save(&path, "gap: 59\n", "gap: 60\n"), Err(NotSaved::ReadOnly));
        assert_eq!(fs::read_to_string(&path).expect("a text"), "gap: 59\n");
    }
}
