//! Objects that git keeps in files of their own, and that a full disk or a power cut left short.
//! libgit2 reads such a one without end, so each is looked at before.

use std::fs;
use std::fs::File;
use std::io;
use std::path::Path;
use std::path::PathBuf;

use flate2::read::ZlibDecoder;
use git2::Oid;
use git2::Repository;

use crate::store::repository::error::RepositoryError;
use crate::store::repository::objects;

const CUT_SHORT: &str = "its file is cut short or overwritten";

/// Where a repository's objects lie that have files of their own.
pub(super) struct Loose {
    folders: Vec<PathBuf>,
}

impl Loose {
    /// Finds the folders: the repository's own, and those that it borrows from.
    pub(super) fn of(git: &Repository) -> Self {
        let own = git.commondir().join("objects");
        let borrowed = fs::read_to_string(own.join("info/alternates")).unwrap_or_default();
        let borrowed: Vec<PathBuf> = borrowed.lines().map(|line| own.join(line)).collect();
        Self { folders: [vec![own], borrowed].concat() }
    }

    /// Returns why an object can't be read, where it has a file of its own that is not whole.
    pub(super) fn broken(&self, id: Oid) -> Option<&'static str> {
        let name = id.to_string();
        let (folder, rest) = name.split_at(2);
        let below = Path::new(folder).join(rest);
        let is_broken = |objects: &PathBuf| is_broken(&objects.join(&below));
        self.folders.iter().any(is_broken).then_some(CUT_SHORT)
    }
}

/// Refuses a repository in which any object that has a file of its own is not whole: where libgit2
/// goes from commit to commit by itself, nobody can look before.
///
/// # Errors
///
/// [`RepositoryError::Damaged`], with the first such object.
pub(super) fn refuse_broken(git: &Repository) -> Result<(), RepositoryError> {
    let loose = Loose::of(git);
    let broken =
        loose.folders.iter().flat_map(|objects| files(objects)).find(|(_, file)| is_broken(file));
    match broken {
        None => Ok(()),
        Some((id, _)) => Err(RepositoryError::Damaged {
            what: format!("object {id}"),
            said: CUT_SHORT.into(),
            folder: objects::folder(git),
        }),
    }
}

/// What is not there, or can't be opened, is for libgit2 to tell.
fn is_broken(file: &Path) -> bool {
    File::open(file)
        .is_ok_and(|open| io::copy(&mut ZlibDecoder::new(open), &mut io::sink()).is_err())
}

/// Returns the objects of a folder that have a file of their own, each with its id.
fn files(objects: &Path) -> impl Iterator<Item = (String, PathBuf)> + use<> {
    let within = |folder: PathBuf| {
        let two = folder.file_name().map(|name| name.to_string_lossy().into_owned());
        let two = two.filter(|two| two.len() == 2).unwrap_or_default();
        let files = if two.is_empty() { None } else { fs::read_dir(&folder).ok() };
        let id = move |file: PathBuf| {
            let rest = file.file_name()?.to_string_lossy().into_owned();
            (rest.len() == 38).then(|| (format!("{two}{rest}"), file))
        };
        files.into_iter().flatten().flatten().filter_map(move |entry| id(entry.path()))
    };
    fs::read_dir(objects)
        .into_iter()
        .flatten()
        .flatten()
        .flat_map(move |entry| within(entry.path()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn committed() -> (tempfile::TempDir, Repository, PathBuf, Oid) {
        let folder = tempfile::tempdir().expect("a folder");
        let git = Repository::init(folder.path()).expect("a repository");
        let id = git.blob(&[b'x'; 3000]).expect("an object");
        let name = id.to_string();
        let file = git.path().join("objects").join(&name[..2]).join(&name[2..]);
        let mut mode = fs::metadata(&file).expect("a file").permissions();
        std::os::unix::fs::PermissionsExt::set_mode(&mut mode, 0o644);
        fs::set_permissions(&file, mode).expect("it may be written");
        (folder, git, file, id)
    }

    #[test]
    fn a_file_is_whole_or_it_is_told() {
        let (_folder, git, file, id) = committed();
        assert_eq!(Loose::of(&git).broken(id), None);
        assert!(refuse_broken(&git).is_ok());
        let whole = fs::read(&file).expect("an object");
        for short in 1..whole.len() {
            fs::write(&file, &whole[..short]).expect("a part of it");
            assert!(Loose::of(&git).broken(id).is_some(), "{short} of {} bytes", whole.len());
        }
        let error = refuse_broken(&git).expect_err("it is cut short").to_string();
        assert!(error.contains(&id.to_string()), "{error}");
    }

    #[test]
    fn what_is_borrowed_from_another_repository_is_looked_at_too() {
        let (_folder, git, file, id) = committed();
        let other = tempfile::tempdir().expect("a folder");
        let borrower = Repository::init(other.path()).expect("a repository");
        let from = format!("{}\n", git.path().join("objects").display());
        fs::create_dir_all(borrower.path().join("objects/info")).expect("a folder");
        fs::write(borrower.path().join("objects/info/alternates"), from).expect("a line");
        assert_eq!(Loose::of(&borrower).broken(id), None);
        fs::write(&file, b"x").expect("something else");
        assert!(Loose::of(&borrower).broken(id).is_some());
    }

    #[test]
    fn what_has_no_file_of_its_own_is_not_broken() {
        let (_folder, git, _, _) = committed();
        assert_eq!(Loose::of(&git).broken(Oid::ZERO_SHA1), None);
    }
}
