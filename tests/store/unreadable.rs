//! Bytes that can't be had: nothing is given, and every path is named.

use std::fs;
use std::path::Path;

use tholebook::store;
use tholebook::store::StoreError;
use tholebook::store::Unread;

use crate::book::Book;

fn unread(book: &Book) -> Vec<Unread> {
    match store::open_folder(&book.root) {
        Err(StoreError::CannotRead { unread }) => unread,
        other => panic!("{other:#?}"),
    }
}

fn paths(unread: &[Unread]) -> Vec<&str> {
    unread.iter().map(|unread| unread.path.as_str()).collect()
}

#[test]
fn a_folder_in_the_place_of_a_root_file_can_not_be_read_and_both_are_named() {
    let book = Book::new("b");
    fs::remove_file(book.root.join("club.yaml")).expect("it was there");
    book.write("club.yaml/a.yaml", "");
    book.write("waivers.yaml/b.yaml", "");
    let unread = unread(&book);
    assert_eq!(paths(&unread), ["club.yaml", "waivers.yaml"]);
    assert!(unread.iter().all(|unread| unread.reason == "it is a folder, not a file"));
}

#[test]
fn every_unread_path_is_in_the_message_with_its_reason() {
    let book = Book::new("b");
    fs::remove_file(book.root.join("club.yaml")).expect("it was there");
    fs::create_dir_all(book.root.join("club.yaml")).expect("a folder");
    let one = store::open_folder(&book.root).expect_err("club.yaml is a folder");
    assert_eq!(one.to_string(), "could not read \"club.yaml\": it is a folder, not a file");
    assert!(one.help().contains("plain file"), "{}", one.help());

    fs::create_dir_all(book.root.join("waivers.yaml")).expect("a folder");
    let two = store::open_folder(&book.root).expect_err("so is waivers.yaml").to_string();
    assert!(two.starts_with("could not read 2 things:\n"), "{two}");
    for line in ["\"club.yaml\": it is a folder", "\"waivers.yaml\": it is a folder"] {
        assert!(two.contains(line), "{two}");
    }
}

#[cfg(unix)]
#[test]
fn a_socket_named_like_a_record_can_not_be_read_and_does_not_hang() {
    use std::os::unix::net::UnixListener;

    let book = Book::new("b");
    book.write("boats/kittiwake.yaml", "");
    fs::create_dir(book.root.join("boats/a")).expect("a folder");
    let sockets = ["boats/a/x.yaml", "boats/a.yaml", "boats/not-a-record", "elsewhere.yaml"];
    let held = sockets.map(|path| UnixListener::bind(book.root.join(path)).expect("a socket"));
    let unread = unread(&book);
    assert_eq!(paths(&unread), ["boats/a.yaml", "boats/a/x.yaml"], "sorted by the whole path");
    assert!(unread.iter().all(|unread| unread.reason.contains("a socket")), "{unread:#?}");
    drop(held);
}

#[cfg(unix)]
#[test]
fn files_and_folders_without_permission_are_all_named() {
    let book = Book::new("b");
    for path in ["boats/a.yaml", "boats/b.yaml", "boats/c.yaml", "oars/d.yaml", "private/e.yaml"] {
        book.write(path, "");
    }
    forbid(&book, &["boats/a.yaml", "boats/c.yaml", "oars", "private"]);
    if fs::File::open(book.root.join("boats/a.yaml")).is_ok() {
        return; // For the system's own user permission bits do not count.
    }
    let unread = unread(&book);
    allow(&book, &["oars", "private"]);
    assert_eq!(paths(&unread), ["boats/a.yaml", "boats/c.yaml", "oars"]);
    assert!(unread.iter().all(|unread| unread.reason == "you may not read it"), "{unread:#?}");
}

#[cfg(unix)]
#[test]
fn a_forbidden_folder_where_no_record_is_looked_for_is_only_told() {
    let book = Book::new("b");
    book.write("private/e.yaml", "");
    forbid(&book, &["private"]);
    if fs::read_dir(book.root.join("private")).is_ok() {
        return; // For the system's own user permission bits do not count.
    }
    let store = book.open();
    allow(&book, &["private"]);
    crate::book::assert_warned(&store, &["\"private\" could not be looked into"]);
    assert!(store.left_out.is_empty());
}

/// Takes every permission from these paths.
#[cfg(unix)]
fn forbid(book: &Book, paths: &[&str]) {
    set_mode(book, paths, 0o000);
}

/// Gives it back, so that the folder can be removed with the book.
#[cfg(unix)]
fn allow(book: &Book, paths: &[&str]) {
    set_mode(book, paths, 0o700);
}

#[cfg(unix)]
fn set_mode(book: &Book, paths: &[&str], mode: u32) {
    use std::os::unix::fs::PermissionsExt;

    for path in paths {
        let permissions = fs::Permissions::from_mode(mode);
        fs::set_permissions(book.root.join(path), permissions).expect("it is ours");
    }
}

#[test]
fn a_root_that_is_not_there_or_is_no_folder_is_told_apart() {
    let book = Book::new("b");
    for (path, no_folder) in
        [("nowhere", true), ("", true), ("club.yaml", false), ("club.yaml/x", false)]
    {
        let given = if path.is_empty() { Path::new("").into() } else { book.root.join(path) };
        for error in [
            store::open_folder(&given).expect_err("no folder"),
            store::find_book(&given).expect_err("no folder"),
        ] {
            let expected = if no_folder {
                StoreError::NoFolder { folder: given.clone() }
            } else {
                StoreError::NotAFolder { path: given.clone() }
            };
            assert_eq!(error, expected);
            assert!(error.help().contains("club.yaml"), "{}", error.help());
        }
    }
}
