//! A repository made by the git program, for one test.

use std::ffi::OsStr;
use std::fs;
use std::path::Path;
use std::path::PathBuf;
use std::process::Command;
use std::process::Output;

use tempfile::TempDir;
use tholebook::store::Repository;
use tholebook::store::RepositoryError;
use tholebook::store::Store;
use tholebook::store::StoreError;

/// A folder that is gone when the test ends, with repositories in it.
pub(crate) struct Yard {
    _kept: TempDir,
    pub(crate) folder: PathBuf,
}

impl Yard {
    pub(crate) fn new() -> Self {
        let kept = tempfile::tempdir().expect("a temporary folder");
        let folder = fs::canonicalize(kept.path()).expect("it was just made");
        Self { _kept: kept, folder }
    }

    /// Makes a repository `club` with three commits of one boat, by `git init` with options.
    pub(crate) fn club(&self, options: &[&str]) -> PathBuf {
        let club = self.folder.join("club");
        let start = [&["init", "--quiet", "--initial-branch=main"], options, &["club"]].concat();
        done(&self.folder, &start);
        write(&club, "club.yaml", "");
        for pin in 1..=3 {
            write(&club, "boats/a.yaml", &format!("pin: {pin}\n"));
            write(&club, "docs/notes.txt", "");
            done(&club, &["add", "--all"]);
            done(&club, &["commit", "--quiet", "--message", &format!("pin {pin}")]);
        }
        club
    }

    /// Clones `club` as another repository would be fetched.
    pub(crate) fn clone(&self, name: &str, options: &[&str]) -> PathBuf {
        let from = format!("file://{}", self.folder.join("club").display());
        done(&self.folder, &[&["clone", "--quiet"], options, &[&from, name]].concat());
        self.folder.join(name)
    }
}

/// Runs git with nobody's settings but these.
pub(crate) fn run(folder: &Path, words: &[&str]) -> Output {
    let mut git = Command::new("git");
    for name in ["GIT_DIR", "GIT_INDEX_FILE", "GIT_WORK_TREE", "GIT_OBJECT_DIRECTORY"] {
        git.env_remove(name);
    }
    git.env("GIT_CONFIG_NOSYSTEM", "1").env("GIT_CONFIG_GLOBAL", "/dev/null");
    for who in ["AUTHOR", "COMMITTER"] {
        git.env(format!("GIT_{who}_NAME"), "Ines Marlow");
        git.env(format!("GIT_{who}_EMAIL"), "ines@example.org");
    }
    git.current_dir(folder).args(words).output().expect("git is here")
}

/// Runs git, which must succeed, and returns what it said.
pub(crate) fn done(folder: &Path, words: &[&str]) -> String {
    let output = run(folder, words);
    let errors = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "git {words:?}: {errors}");
    String::from_utf8_lossy(&output.stdout).trim().to_owned()
}

pub(crate) fn write(folder: &Path, path: impl AsRef<OsStr>, text: &str) {
    let file = folder.join(Path::new(path.as_ref()));
    fs::create_dir_all(file.parent().expect("a file lies in a folder")).expect("a folder");
    fs::write(file, text).expect("a file");
}

pub(crate) fn opened(folder: &Path) -> Repository {
    Repository::around(folder).expect("it opens")
}

/// Returns the texts of a commit.
pub(crate) fn at(folder: &Path, rev: &str) -> Result<Store, StoreError> {
    let repository = opened(folder);
    repository.at(repository.commit(rev)?)
}

pub(crate) fn error<T>(came_to: Result<T, StoreError>) -> RepositoryError {
    match came_to {
        Err(StoreError::Repository(error)) => error,
        Err(other) => panic!("another error: {other}"),
        Ok(_) => panic!("no error"),
    }
}

/// Runs the git command that an error's help ends with.
pub(crate) fn follow(error: &RepositoryError) {
    let help = error.help();
    let (_, command) = help.split_once("git -C ").unwrap_or_else(|| panic!("{help}"));
    let words: Vec<&str> = command.split_whitespace().collect();
    done(Path::new(words[0]), &words[1..]);
}
