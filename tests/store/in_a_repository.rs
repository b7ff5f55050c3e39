//! Books in a repository that git can be asked about.

use std::fs;
use std::path::Path;

use git2::IndexEntryExtendedFlag;
use git2::Repository;
use git2::Signature;
use git2::WorktreeAddOptions;
use tholebook::store;

use crate::book::Book;
use crate::book::assert_warned;
use crate::book::paths;
use crate::book::run_again;
use crate::book::track;
use crate::book::write;

fn ignoring(rules: &str) -> (Book, Repository) {
    let book = Book::new("b");
    let repository = book.with_git();
    book.write(".gitignore", rules);
    (book, repository)
}

#[test]
fn what_git_ignores_is_left_out_whole_folders_too() {
    let (book, _repository) = ignoring("draft-*\n/boats/sold/\n!draft-kept.yaml\n/scratch\n");
    for path in [
        "boats/kittiwake.yaml",
        "boats/draft-a.yaml",
        "boats/draft-kept.yaml",
        "boats/sold/skua.yaml",
        "oars/sold/long-ash.yaml",
        "scratch/x.yaml",
        "draft-x.yaml",
        "seen.yaml",
    ] {
        book.write(path, "");
    }
    book.write("boats/inner/.gitignore", "skua.yaml\n");
    book.write("boats/inner/skua.yaml", "");
    book.write(".git/info/exclude", "gannet.yaml\n");
    book.write("boats/gannet.yaml", "");
    let store = book.open();
    let expected =
        ["boats/draft-kept.yaml", "boats/kittiwake.yaml", "club.yaml", "oars/sold/long-ash.yaml"];
    assert_eq!(paths(&store), expected);
    assert_eq!(store.left_out, ["seen.yaml"]);
    assert!(store.warnings.is_empty(), "{:?}", store.warnings);
}

#[test]
fn without_a_repository_nothing_is_ignored_and_nothing_is_said() {
    let book = Book::new("b");
    book.write(".gitignore", "*.yaml\n");
    book.write("boats/kittiwake.yaml", "");
    let store = book.open();
    assert_eq!(paths(&store), ["boats/kittiwake.yaml", "club.yaml"]);
    assert!(store.warnings.is_empty(), "{:?}", store.warnings);
}

#[test]
fn a_tracked_file_is_read_though_git_ignores_it_or_its_folder() {
    let (book, repository) = ignoring("/boats/a*\n/oars/\n");
    for path in ["boats/a1.yaml", "boats/a2.yaml", "oars/x/long-ash.yaml", "oars/x/other.yaml"] {
        book.write(path, "");
    }
    track(&repository, "boats/a1.yaml");
    track(&repository, "oars/x/long-ash.yaml");
    assert_eq!(paths(&book.open()), ["boats/a1.yaml", "club.yaml", "oars/x/long-ash.yaml"]);
}

#[test]
fn a_tracked_file_that_was_removed_from_the_folder_is_not_missed() {
    let (book, repository) = ignoring("");
    book.write("boats/gone.yaml", "");
    track(&repository, "boats/gone.yaml");
    fs::remove_file(book.root.join("boats/gone.yaml")).expect("it was there");
    let store = book.open();
    assert_eq!(paths(&store), ["club.yaml"]);
    assert!(store.warnings.is_empty(), "{:?}", store.warnings);
}

#[test]
fn a_book_in_a_subfolder_goes_by_the_rules_and_the_index_of_the_whole() {
    let book = Book::new("club/book");
    let top = book.around().join("club");
    let repository = Repository::init(&top).expect("a repository");
    write(&top.join(".gitignore"), b"/book/boats/a*\n*.old.yaml\n");
    // The name of another folder begins with the book's: its entries are not the book's.
    write(&top.join("bookish/boats/a1.yaml"), b"");
    track(&repository, "bookish/boats/a1.yaml");
    for path in ["boats/a1.yaml", "boats/a2.yaml", "boats/b.yaml", "oars/x.old.yaml"] {
        book.write(path, "");
    }
    track(&repository, "book/boats/a2.yaml");
    let store = book.open();
    assert_eq!(paths(&store), ["boats/a2.yaml", "boats/b.yaml", "club.yaml"]);
    assert_eq!((store.name.as_str(), store.warnings.len()), ("book", 0));
    assert_eq!(store::find_book(&book.root.join("boats")).expect("a book"), book.root);
}

#[test]
fn a_linked_worktree_goes_by_its_own_index() {
    let (book, repository) = ignoring("/boats/a*\n");
    for path in ["boats/a1.yaml", "boats/a2.yaml"] {
        book.write(path, "");
    }
    for path in [".gitignore", "club.yaml", "boats/a1.yaml"] {
        track(&repository, path);
    }
    commit(&repository);
    let linked = book.around().join("linked");
    let options = WorktreeAddOptions::new();
    repository.worktree("linked", &linked, Some(&options)).expect("a worktree");
    write(&linked.join("boats/a2.yaml"), b"");
    write(&linked.join("boats/b.yaml"), b"");
    // Tracked in the main working tree only.
    track(&repository, "boats/a2.yaml");

    let store = store::open_folder(&linked).expect("a book");
    assert_eq!(paths(&store), ["boats/a1.yaml", "boats/b.yaml", "club.yaml"]);
    assert!(store.warnings.is_empty(), "{:?}", store.warnings);
    fs::remove_file(linked.join("club.yaml")).expect("it was there");
    write(&book.around().join("club.yaml"), b"");
    assert!(store::find_book(&linked.join("boats")).is_err(), "it does not leave the worktree");
}

fn commit(repository: &Repository) {
    let mut index = repository.index().expect("an index");
    let tree = index.write_tree().expect("a tree");
    let tree = repository.find_tree(tree).expect("it was just written");
    let by = Signature::now("Ines Marlow", "ines@example.org").expect("a plain name");
    repository.commit(Some("HEAD"), &by, &by, "first", &tree, &[]).expect("a commit");
}

#[test]
fn a_submodule_in_an_ignored_folder_is_tracked_as_a_whole() {
    let (book, repository) = ignoring("/boats/lent\n");
    book.write("boats/lent/skua.yaml", "");
    let lent = Repository::init(book.root.join("boats/lent")).expect("a repository");
    track(&lent, "skua.yaml");
    commit(&lent);
    assert_eq!(paths(&book.open()), ["club.yaml"]);
    track(&repository, "boats/lent");
    assert_eq!(paths(&book.open()), ["boats/lent/skua.yaml", "club.yaml"]);
}

#[test]
fn an_ignored_club_yaml_is_read_all_the_same_and_told() {
    let (book, repository) = ignoring("*.yaml\n");
    book.write("boats/a.yaml", "");
    let store = book.open();
    assert_eq!(paths(&store), ["club.yaml"]);
    assert_warned(&store, &["git add --force club.yaml"]);
    track(&repository, "club.yaml");
    assert!(book.open().warnings.is_empty());
}

#[test]
fn a_book_whose_own_folder_is_ignored_is_read_whole_and_told() {
    let book = Book::new("yard/trial");
    let yard = book.around().join("yard");
    Repository::init(&yard).expect("a repository");
    write(&yard.join(".gitignore"), b"trial/\n");
    book.write("boats/a.yaml", "");
    let store = book.open();
    assert_eq!(paths(&store), ["boats/a.yaml", "club.yaml"]);
    assert_warned(&store, &["every file was read", "ignores the book's own folder"]);
}

#[test]
fn what_a_sparse_checkout_keeps_away_is_named() {
    let (book, repository) = ignoring("");
    for path in ["boats/a.yaml", "boats/b.yaml", "boats/notes.txt", "docs/c.yaml"] {
        book.write(path, "");
        track(&repository, path);
    }
    let mut index = repository.index().expect("an index");
    for path in ["boats/a.yaml", "boats/b.yaml", "boats/notes.txt", "docs/c.yaml"] {
        let mut entry = index.get_path(Path::new(path), 0).expect("it is tracked");
        entry.flags_extended |= IndexEntryExtendedFlag::SKIP_WORKTREE.bits();
        index.add(&entry).expect("it is an entry");
    }
    index.write().expect("the index can be written");
    for path in ["boats/a.yaml", "boats/notes.txt", "docs/c.yaml"] {
        fs::remove_file(book.root.join(path)).expect("it was there");
    }
    let store = book.open();
    assert_eq!(paths(&store), ["boats/b.yaml", "club.yaml"]);
    assert_warned(&store, &["so not read: boats/a.yaml. ", " sparse-checkout disable"]);
}

#[cfg(unix)]
#[test]
fn odd_names_are_asked_for_as_git_keeps_them() {
    use std::ffi::OsStr;
    use std::os::unix::ffi::OsStrExt;

    let (book, repository) = ignoring("*.yaml\n");
    let names: [&[u8]; 4] = [b"two\nlines.yaml", b"my boat.yaml", b"\xe9.yaml", b"a\\b.yaml"];
    let mut index = repository.index().expect("an index");
    for name in names {
        let path = Path::new("boats").join(OsStr::from_bytes(name));
        book.write(&path, "");
        index.add_path(&path).expect("the file is there");
    }
    index.write().expect("the index can be written");
    book.write("boats/untracked.yaml", "");
    let shown =
        [r"boats/\xe9.yaml", r"boats/a\\b.yaml", "boats/my boat.yaml", "boats/two\nlines.yaml"];
    assert_eq!(paths(&book.open())[..4], shown);
    assert_eq!(paths(&book.open()).len(), 5);
}

#[test]
fn a_named_book_is_the_same_inside_a_hook_and_without_any_program_at_hand() {
    let other = Book::new("other");
    let git = other.with_git().path().to_path_buf();
    let said = run_again(
        "in_a_repository::a_tracked_file_is_read_though_git_ignores_it_or_its_folder",
        |child| {
            let child = child.env("GIT_DIR", &git).env("GIT_WORK_TREE", &other.root);
            child.env("GIT_INDEX_FILE", git.join("no-such-index")).env("PATH", "")
        },
    );
    assert!(said.contains("1 passed"), "{said}");
}
