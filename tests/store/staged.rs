//! What is about to be committed: the index, not the folder, and that of a hook.

use crate::book::Book;
use crate::book::paths;
use crate::book::run_again;
use crate::commits::commit_all;
use crate::commits::error;
use crate::commits::opened;
use crate::commits::text;
use crate::index_entry::entry;
use git2::IndexEntry;
use std::fs;
use std::path::Path;
use tholebook::store;
use tholebook::store::RepositoryError;

#[test]
fn what_is_staged_is_what_the_index_holds_not_the_folder() {
    let book = Book::new("b");
    let git = book.with_git();
    book.write("boats/a.yaml", "staged");
    book.write("boats/gone.yaml", "");
    commit_all(&git, "first");
    book.write("boats/a.yaml", "not staged");
    book.write("boats/untracked.yaml", "");
    fs::remove_file(book.root.join("boats/gone.yaml")).expect("it was there");
    let store = opened(&git).staged().expect("the index");
    assert_eq!(paths(&store), ["boats/a.yaml", "boats/gone.yaml", "club.yaml"]);
    assert_eq!(text(&store, "boats/a.yaml"), "staged");
}

#[test]
fn what_is_only_meant_to_be_added_is_not_staged() {
    let book = Book::new("b");
    let git = book.with_git();
    commit_all(&git, "first");
    let mut index = git.index().expect("an index");
    let nothing = git.blob(b"").expect("a blob");
    let meant = git2::IndexEntryExtendedFlag::INTENT_TO_ADD.bits();
    index
        .add(&IndexEntry { flags_extended: meant, ..entry("boats/later.yaml", nothing, 0) })
        .expect("an entry");
    index.write().expect("the index can be written");
    assert_eq!(paths(&opened(&git).staged().expect("the index")), ["club.yaml"]);
}

#[test]
fn an_unfinished_merge_in_the_index_is_named_with_its_paths() {
    let book = Book::new("club/book");
    let git = git2::Repository::init(book.around().join("club")).expect("a repository");
    commit_all(&git, "first");
    let mut index = git.index().expect("an index");
    let blob = git.blob(b"x").expect("a blob");
    for (path, stage) in
        [("book/boats/b.yaml", 2), ("book/boats/b.yaml", 3), ("book/boats/a.yaml", 1), ("z", 2)]
    {
        index.add(&entry(path, blob, stage)).expect("an entry");
    }
    index.write().expect("the index can be written");
    let repository = store::Repository::around(&book.root).expect("it opens");
    let open = repository.in_conflict().expect("an index");
    assert_eq!(open, ["boats/a.yaml", "boats/b.yaml"]);
    let told = error(repository.staged());
    let RepositoryError::Unmerged { paths } = &told else { panic!("{told}") };
    assert_eq!(*paths, ["boats/a.yaml", "boats/b.yaml"]);
}

#[test]
fn a_hook_sees_the_index_that_git_is_about_to_commit_and_a_named_book_does_not() {
    let book = Book::new("b");
    let git = book.with_git();
    commit_all(&git, "first");
    book.write("boats/new.yaml", "");
    let other = git.path().join("next-index");
    fs::copy(git.path().join("index"), &other).expect("an index");
    let mut index = git2::Index::open(&other).expect("an index");
    index.add(&entry("boats/new.yaml", git.blob(b"").expect("a blob"), 0)).expect("an entry");
    index.write().expect("it can be written");
    let said = run_again("staged::the_book_seen_from_a_hook", |child| {
        let child = child.current_dir(&book.root).env("HOOK_OF", &book.root);
        child.env("GIT_INDEX_FILE", ".git/next-index")
    });
    assert!(said.contains("1 passed"), "{said}");
}

/// Does its work when another test runs it as a hook.
#[test]
fn the_book_seen_from_a_hook() {
    let Some(root) = std::env::var_os("HOOK_OF") else { return };
    for book in [None, Some(Path::new(&root)), Some(Path::new("."))] {
        let repository = store::Repository::from_environment(book).expect("it opens");
        let staged = repository.staged().expect("the index");
        assert_eq!(paths(&staged), ["boats/new.yaml", "club.yaml"]);
        assert_eq!(staged.root, Path::new(&root));
    }
    let named = store::Repository::around(Path::new(&root)).expect("it opens");
    assert_eq!(paths(&named.staged().expect("the index")), ["club.yaml"]);
}
