//! Where a book's root is found, and the ways a root can be given.

use std::env;
use std::fs;
use std::path::Path;
use std::path::PathBuf;

use git2::Repository;
use tholebook::store;
use tholebook::store::StoreError;

use crate::book::Book;
use crate::book::paths;

fn found(start: &Path) -> PathBuf {
    store::find_book(start).expect("a book is around it")
}

fn nearest(result: Result<impl std::fmt::Debug, StoreError>) -> Option<PathBuf> {
    match result {
        Err(StoreError::NoBook { nearest, .. }) => nearest,
        other => panic!("{other:#?}"),
    }
}

#[test]
fn the_nearest_folder_upwards_with_club_yaml_is_the_book() {
    let book = Book::new("b");
    book.write("boats/old/a.yaml", "");
    book.write("inner/club.yaml", "");
    book.write("inner/boats/a.yaml", "");
    assert_eq!(found(&book.root), book.root);
    assert_eq!(found(&book.root.join("boats/old")), book.root);
    assert_eq!(found(&book.root.join("inner/boats")), book.root.join("inner"));
}

#[test]
fn the_search_does_not_leave_the_working_tree() {
    let book = Book::new("b");
    let yard = book.root.join("yard");
    book.write("yard/boats/a.yaml", "");
    assert_eq!(found(&yard.join("boats")), book.root, "while there is no repository");
    Repository::init(&yard).expect("a repository");
    assert_eq!(nearest(store::find_book(&yard.join("boats"))), None);
    book.write("yard/club.yaml", "");
    assert_eq!(found(&yard.join("boats")), yard, "the top of the tree itself counts");
}

#[test]
fn the_search_does_not_leave_a_working_tree_that_can_not_be_opened() {
    let book = Book::new("b");
    let yard = book.root.join("yard");
    book.write("yard/boats/a.yaml", "");
    book.write("yard/.git", "gitdir: /nowhere/at/all\n");
    assert_eq!(nearest(store::find_book(&yard.join("boats"))), None);
}

#[test]
fn without_a_book_anywhere_the_search_ends_at_the_top_of_the_file_system() {
    let empty = tempfile::tempdir().expect("a temporary folder");
    let error = store::find_book(empty.path()).expect_err("no book above a temporary folder");
    let expected = StoreError::NoBook { folder: empty.path().into(), nearest: None };
    assert_eq!(error, expected);
    assert!(error.to_string().contains("no club.yaml"), "{error}");
    assert!(error.help().contains("tholebook start"), "{}", error.help());
}

#[test]
fn a_folder_without_club_yaml_is_no_book_and_the_nearest_one_is_named() {
    let book = Book::new("b");
    book.write("boats/a.yaml", "");
    let error = store::open_folder(&book.root.join("boats")).expect_err("the root is above");
    assert!(error.help().contains(book.root.to_str().expect("plain")), "{}", error.help());
    assert_eq!(nearest(Err::<(), _>(error)), Some(book.root.clone()));

    assert_eq!(nearest(store::open_folder(&book.around())), Some(book.root.clone()));
    assert_eq!(nearest(store::find_book(&book.around())), Some(book.root.clone()));
}

#[test]
fn a_root_may_be_given_with_a_slash_a_dot_or_from_where_one_stands() {
    let book = Book::new("tarrow head");
    book.write("boats/a.yaml", "");
    let root = book.root.to_str().expect("plain");
    let from_here = from_here(&book.root);
    for given in [
        root,
        &format!("{root}/"),
        &format!("{root}/."),
        &format!("{root}/boats/.."),
        &format!("{root}//boats/../"),
        from_here.to_str().expect("plain"),
    ] {
        let store = store::open_folder(Path::new(given)).expect("the same book");
        assert_eq!(
            (store.root.as_path(), store.name.as_str()),
            (&*book.root, "tarrow head"),
            "{given}"
        );
        assert_eq!(paths(&store), ["boats/a.yaml", "club.yaml"], "{given}");
        assert_eq!(found(&Path::new(given).join("boats")), book.root, "{given}");
    }
}

/// Returns the way to a folder from the folder that the test runs in.
fn from_here(folder: &Path) -> PathBuf {
    let here = env::current_dir().and_then(fs::canonicalize).expect("the test runs somewhere");
    let up: PathBuf = here.iter().skip(1).map(|_| "..").collect();
    up.join(folder.strip_prefix("/").expect("it begins at the top"))
}

#[test]
fn a_bare_dot_is_the_folder_one_stands_in() {
    // The folder of this process can't be changed under the other tests, so another one stands there.
    let book = Book::new("tarrow-head");
    let child = crate::book::run_again("seeking::the_dot_seen_from_inside", |child| {
        child.current_dir(&book.root).env("STANDING_IN", "tarrow-head")
    });
    assert!(child.contains("1 passed"), "{child}");
}

/// Does its work when another test runs it in a book.
#[test]
fn the_dot_seen_from_inside() {
    let Some(name) = env::var_os("STANDING_IN") else { return };
    let here = fs::canonicalize(".").expect("the test runs somewhere");
    for given in [".", "./"] {
        let store = store::open_folder(Path::new(given)).expect("a book");
        assert_eq!((&store.root, Some(store.name.as_str())), (&here, name.to_str()));
        assert_eq!(found(Path::new(given)), here);
    }
}

#[cfg(unix)]
#[test]
fn a_root_that_is_given_as_a_link_keeps_the_name_it_was_given() {
    let book = Book::new("b");
    let link = book.around().join("our-book");
    std::os::unix::fs::symlink(&book.root, &link).expect("a link");
    let store = store::open_folder(&link).expect("the root itself may be a link");
    assert_eq!((store.root, store.name.as_str()), (book.root.clone(), "our-book"));
}
