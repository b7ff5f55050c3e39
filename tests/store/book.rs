//! A book made for one test.

use std::fs;
use std::path::Path;
use std::path::PathBuf;
use std::process::Command;

use git2::Repository;
use tempfile::TempDir;
use tholebook::store;
use tholebook::store::Content;
use tholebook::store::Refusal;
use tholebook::store::Store;

/// A folder that is gone when the test ends, with a book in it.
pub(crate) struct Book {
    around: TempDir,
    pub(crate) root: PathBuf,
}

impl Book {
    /// Makes a book with `club.yaml` and nothing else, in a folder of the given name.
    pub(crate) fn new(name: &str) -> Self {
        let around = tempfile::tempdir().expect("a temporary folder");
        let root = fs::canonicalize(around.path()).expect("it was just made").join(name);
        let book = Self { around, root };
        book.write("club.yaml", "logbook: 1\n");
        book
    }

    /// The folder that the book's own folder lies in.
    pub(crate) fn around(&self) -> PathBuf {
        fs::canonicalize(self.around.path()).expect("it lives as long as the book")
    }

    pub(crate) fn write(&self, path: impl AsRef<Path>, content: impl AsRef<[u8]>) {
        write(&self.root.join(path), content.as_ref());
    }

    pub(crate) fn open(&self) -> Store {
        store::open_folder(&self.root).expect("the book can be read")
    }

    /// Makes the book's folder a repository.
    pub(crate) fn with_git(&self) -> Repository {
        Repository::init(&self.root).expect("a repository")
    }
}

pub(crate) fn write(file: &Path, content: &[u8]) {
    let folder = file.parent().expect("a file lies in a folder");
    fs::create_dir_all(folder).expect("a folder");
    fs::write(file, content).expect("a file");
}

/// Makes git track a file, ignored or not.
pub(crate) fn track(repository: &Repository, path: &str) {
    let mut index = repository.index().expect("an index");
    index.add_path(Path::new(path)).expect("the file is there");
    index.write().expect("the index can be written");
}

pub(crate) fn paths(store: &Store) -> Vec<&str> {
    store.files.iter().map(|named| named.path.as_str()).collect()
}

pub(crate) fn content<'a>(store: &'a Store, path: &str) -> &'a Content {
    let named = store.files.iter().find(|named| named.path == path);
    &named.unwrap_or_else(|| panic!("no {path} in {:?}", paths(store))).content
}

pub(crate) fn refused<'a>(store: &'a Store, path: &str) -> &'a Refusal {
    match content(store, path) {
        Content::Refused(refusal) => refusal,
        Content::Text(text) => panic!("{path} was read: {text:?}"),
    }
}

/// Asserts that the store has one warning, and that all these words are in it.
pub(crate) fn assert_warned(store: &Store, words: &[&str]) {
    let [warning] = store.warnings.as_slice() else { panic!("{:#?}", store.warnings) };
    for word in words {
        assert!(warning.contains(word), "no {word:?} in {warning:?}");
    }
}

/// Runs one test of this program in a process of its own, and returns what it said.
pub(crate) fn run_again(test: &str, with: impl FnOnce(&mut Command) -> &mut Command) -> String {
    let program = std::env::current_exe().expect("a test knows itself");
    let mut child = Command::new(program);
    child.args(["--exact", test]);
    let output = with(&mut child).output().expect("it runs already");
    String::from_utf8_lossy(&output.stdout).into_owned()
}
