//! Where a new folder is written before it is whole, and how it gets to its place.
//!
//! A folder that is not there yet is written beside its name and renamed. One that is there, and
//! empty, keeps being the same folder, for someone may stand in it: its contents are written into
//! a folder inside and moved up.

use std::fs;
use std::io;
use std::io::ErrorKind;
use std::path::Path;
use std::path::PathBuf;

use super::FoundingError;
use super::Stopped;
use crate::store::error;
use crate::store::names;

/// A folder that may be filled.
pub(super) struct Place {
    folder: PathBuf,
    /// Whether the folder is there, and empty.
    is_there: bool,
}

impl Place {
    /// Returns the place, once it is known to be free.
    pub(super) fn of(folder: &Path) -> Result<Self, FoundingError> {
        let shown = || names::shown(folder);
        match fs::read_dir(folder).and_then(|mut entries| entries.next().transpose()) {
            Ok(None) => Ok(Self { folder: folder.into(), is_there: true }),
            Ok(Some(_)) => Err(FoundingError::NotEmpty(shown())),
            Err(error) if error.kind() == ErrorKind::NotFound => Self::new_folder(folder),
            Err(error) if error.kind() == ErrorKind::NotADirectory => {
                Err(FoundingError::NotAFolder(shown()))
            }
            Err(error) => {
                let reason = error::reason(&error);
                Err(FoundingError::CannotWrite { folder: shown(), reason })
            }
        }
    }

    fn new_folder(folder: &Path) -> Result<Self, FoundingError> {
        if fs::symlink_metadata(folder).is_ok() {
            return Err(FoundingError::NotAFolder(names::shown(folder)));
        }
        let above = folder.parent().filter(|above| !above.as_os_str().is_empty());
        match above.filter(|above| !above.is_dir()) {
            Some(above) => Err(FoundingError::NoParent(names::shown(above))),
            None => Ok(Self { folder: folder.into(), is_there: false }),
        }
    }

    /// Fills the place. What could not be written whole is taken away again.
    pub(super) fn fill<T>(
        &self,
        write: impl FnOnce(&Path) -> Result<T, Stopped>,
    ) -> Result<T, Stopped> {
        let aside = self.aside()?;
        let written = write(&aside).and_then(|written| {
            self.settle(&aside)?;
            Ok(written)
        });
        if written.is_err() {
            // What is said of the first trouble matters more than a second one.
            let _ = fs::remove_dir_all(&aside);
        }
        written
    }

    /// Makes the folder that is written into first, under a name that is free.
    fn aside(&self) -> io::Result<PathBuf> {
        let mut taken = 0;
        loop {
            let aside = self.name_aside(taken);
            match fs::create_dir(&aside) {
                Err(error) if error.kind() == ErrorKind::AlreadyExists && taken < 100 => taken += 1,
                made => return made.map(|()| aside),
            }
        }
    }

    fn name_aside(&self, taken: u32) -> PathBuf {
        let end = if taken == 0 { ".new".to_owned() } else { format!(".new-{taken}") };
        if self.is_there {
            return self.folder.join(end);
        }
        let mut name = self.folder.file_name().unwrap_or_default().to_owned();
        name.push(end);
        self.folder.with_file_name(name)
    }

    fn settle(&self, aside: &Path) -> io::Result<()> {
        if self.is_there { self.move_up(aside) } else { fs::rename(aside, &self.folder) }
    }

    /// Moves everything up, git's own folder last: until then there is no repository.
    fn move_up(&self, aside: &Path) -> io::Result<()> {
        let entries = fs::read_dir(aside)?.map(|entry| entry.map(|entry| entry.file_name()));
        let mut names = entries.collect::<io::Result<Vec<_>>>()?;
        names.sort_by_key(|name| name == ".git");
        let mut moved = Vec::new();
        for name in &names {
            let to = self.folder.join(name);
            if let Err(error) = fs::rename(aside.join(name), &to) {
                take_back(&moved);
                return Err(error);
            }
            moved.push(to);
        }
        fs::remove_dir(aside)
    }
}

fn take_back(moved: &[PathBuf]) {
    for path in moved {
        let _ = if path.is_dir() { fs::remove_dir_all(path) } else { fs::remove_file(path) };
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn fails_midway(into: &Path) -> Result<(), Stopped> {
        fs::write(into.join("club.yaml"), "logbook: 1\n")?;
        Err(io::Error::from(ErrorKind::StorageFull).into())
    }

    #[test]
    fn what_broke_off_leaves_nothing_beside_and_nothing_inside() {
        let around = tempfile::tempdir().expect("a folder");
        let empty = around.path().join("empty");
        fs::create_dir(&empty).expect("a folder");
        for folder in [around.path().join("new"), empty.clone()] {
            let place = Place::of(&folder).expect("a free place");
            let stopped = place.fill(fails_midway).expect_err("the disk is full");
            assert_eq!(stopped.to_string(), "the disk is full");
        }
        assert!(fs::read_dir(&empty).expect("a folder").next().is_none());
        assert_eq!(fs::read_dir(around.path()).expect("a folder").count(), 1);
    }

    #[test]
    fn a_name_that_is_taken_beside_is_not_touched() {
        let around = tempfile::tempdir().expect("a folder");
        let taken = around.path().join("book.new");
        fs::write(&taken, "mine").expect("a file");
        let place = Place::of(&around.path().join("book")).expect("a free place");
        place.fill(|into| Ok(fs::write(into.join("club.yaml"), "")?)).expect("it is filled");
        assert_eq!(fs::read_to_string(&taken).expect("a text"), "mine");
        assert!(around.path().join("book/club.yaml").is_file());
    }
}
