//! Repositories that can't be asked: every file is read, and the user is told what helps.

use std::fs;
use std::path::Path;
use std::path::PathBuf;

use git2::Repository;
use git2::RepositoryInitOptions;
use tholebook::store;
use tholebook::store::Store;

use crate::book::Book;
use crate::book::assert_warned;
use crate::book::paths;
use crate::book::run_again;
use crate::book::track;

/// Makes a book in a repository that ignores one of its two boats.
fn with_an_ignored_boat() -> (Book, Repository) {
    let book = Book::new("a book");
    let repository = book.with_git();
    book.write(".gitignore", "draft.yaml\n");
    book.write("boats/kittiwake.yaml", "");
    book.write("boats/draft.yaml", "");
    assert_eq!(paths(&book.open()), ["boats/kittiwake.yaml", "club.yaml"], "while all is well");
    (book, repository)
}

/// Asserts that all was read, and that the one warning has these words.
fn assert_all_read(store: &Store, words: &[&str]) {
    assert_eq!(paths(store), ["boats/draft.yaml", "boats/kittiwake.yaml", "club.yaml"]);
    assert_warned(store, &["Git's ignore rules were not used; every file was read: "]);
    assert_warned(store, words);
}

fn set(repository: &Repository, settings: &[(&str, &str)]) {
    let mut config = repository.config().expect("a repository has settings");
    for (name, value) in settings {
        config.set_str(name, value).expect("it can be set");
    }
}

#[test]
fn a_sha_256_repository_hinders_no_reading() {
    let (book, repository) = with_an_ignored_boat();
    set(
        &repository,
        &[("core.repositoryformatversion", "1"), ("extensions.objectformat", "sha256")],
    );
    assert_all_read(&book.open(), &["SHA-256", "a book' status --ignored --short"]);
    assert!(store::find_book(&book.root.join("boats")).is_ok());
}

#[test]
fn a_reftable_repository_hinders_no_reading() {
    let (book, repository) = with_an_ignored_boat();
    let settings = [("core.repositoryformatversion", "1"), ("extensions.refstorage", "reftable")];
    set(&repository, &settings);
    assert_all_read(
        &book.open(),
        &["reftable", "git clone --ref-format=files '", "a book' NEW-FOLDER"],
    );
}

#[test]
fn an_extension_of_a_later_git_hinders_no_reading() {
    let (book, repository) = with_an_ignored_boat();
    set(&repository, &[("core.repositoryformatversion", "1"), ("extensions.yetunknown", "true")]);
    assert_all_read(&book.open(), &["yetunknown", "git -C '", "a book' status"]);
}

#[test]
fn a_git_file_that_leads_nowhere_hinders_no_reading() {
    let book = Book::new("a book");
    book.write(".git", "gitdir: /nowhere/at/all\n");
    book.write("boats/kittiwake.yaml", "");
    book.write("boats/draft.yaml", "");
    assert_all_read(&book.open(), &["git -C '", "a book' status"]);
}

#[test]
fn an_index_that_is_no_index_leaves_nothing_out() {
    let (book, _repository) = with_an_ignored_boat();
    book.write(".git/index", "not an index at all, but long enough to be one of the small ones");
    let words = ["tracked files", "an ignored file may be one of the book's", "a book' status"];
    assert_all_read(&book.open(), &words);
}

/// An index with a part that must be understood and is not, laid out as in git's own description of
/// its index format: twelve bytes of head, the parts (four letters, four bytes of length, that many
/// bytes), twenty bytes of checksum.
#[test]
fn a_split_and_a_sparse_index_leave_nothing_out_and_name_their_cures() {
    let cures =
        [(b"link", "--no-split-index"), (b"sdir", "sparse-checkout reapply --no-sparse-index")];
    for (part, cure) in cures {
        let (book, _repository) = with_an_ignored_boat();
        let mut index = b"DIRC\0\0\0\x02\0\0\0\0".to_vec();
        index.extend_from_slice(part);
        index.extend_from_slice(&[0; 4]);
        index.extend_from_slice(&[0; 20]);
        book.write(".git/index", index);
        assert_all_read(&book.open(), &[cure]);
    }
}

#[test]
fn a_working_tree_that_lies_elsewhere_gives_no_rules() {
    let (book, repository) = with_an_ignored_boat();
    let elsewhere = book.around().join("elsewhere");
    fs::create_dir(&elsewhere).expect("a folder");
    set(&repository, &[("core.worktree", elsewhere.to_str().expect("plain"))]);
    assert_all_read(&book.open(), &["elsewhere", "config --unset core.worktree"]);

    fs::remove_file(book.root.join("club.yaml")).expect("it was there");
    fs::write(book.around().join("club.yaml"), "").expect("a file");
    assert!(store::find_book(&book.root.join("boats")).is_err(), "the search still ends at .git");
}

#[test]
fn a_bare_repository_around_the_book_gives_no_rules() {
    let (book, _repository) = with_an_ignored_boat();
    fs::remove_dir_all(book.root.join(".git")).expect("it was there");
    let mut options = RepositoryInitOptions::new();
    Repository::init_opts(&book.root, options.bare(true)).expect("a repository");
    book.write("info/exclude", "kittiwake.yaml\n");
    assert_all_read(&book.open(), &["no working tree"]);
}

#[test]
fn a_bare_repository_nested_in_the_book_does_not_end_the_search() {
    let (book, _repository) = with_an_ignored_boat();
    let nested = book.root.join("boats/nested");
    Repository::init_bare(&nested).expect("a repository");
    assert_eq!(store::find_book(&nested).expect("the book around it"), book.root);
    assert_eq!(paths(&book.open()), ["boats/kittiwake.yaml", "club.yaml"], "nor change the rules");
}

#[test]
fn rules_that_are_a_folder_are_no_rules() {
    let (book, _repository) = with_an_ignored_boat();
    fs::remove_file(book.root.join(".gitignore")).expect("it was there");
    fs::create_dir(book.root.join(".gitignore")).expect("a folder");
    assert_eq!(paths(&book.open()), ["boats/draft.yaml", "boats/kittiwake.yaml", "club.yaml"]);
}

#[cfg(unix)]
#[test]
fn a_repository_of_another_user_hinders_no_reading_and_the_command_told_helps() {
    let (book, repository) = with_an_ignored_boat();
    track(&repository, "boats/kittiwake.yaml");
    if !give_away(&book.root) {
        return; // Only the system's own user can give a folder away.
    }
    let home = tempfile::tempdir().expect("a temporary folder");
    let seen = |trusted: &str| {
        fs::write(home.path().join(".gitconfig"), trusted).expect("a file");
        run_again("odd_repositories::the_foreign_book_seen_by_a_user", |child| {
            child.env("HOME", home.path()).env("FOREIGN", &book.root).env("TRUSTED", trusted)
        })
    };
    for trusted in ["", &format!("[safe]\n\tdirectory = {}\n", book.root.display())] {
        let said = seen(trusted);
        assert!(said.contains("1 passed"), "{trusted}: {said}");
    }
}

/// Does its work when another test runs it with a book that is not its own.
#[test]
fn the_foreign_book_seen_by_a_user() {
    let Some(root) = std::env::var_os("FOREIGN") else { return };
    let store = store::open_folder(Path::new(&root)).expect("a book");
    if std::env::var_os("TRUSTED").is_some_and(|trusted| !trusted.is_empty()) {
        assert_eq!(paths(&store), ["boats/kittiwake.yaml", "club.yaml"]);
        assert!(store.warnings.is_empty(), "{:?}", store.warnings);
    } else {
        let root = Path::new(&root).display();
        let command = format!("git config --global --add safe.directory '{root}'");
        assert_all_read(&store, &["belongs to another user", &command]);
    }
    let inside = Path::new(&root).join("boats");
    assert_eq!(store::find_book(&inside).expect("it is found"), Path::new(&root));
}

/// Gives a folder and the repository in it to a user who is nobody here.
#[cfg(unix)]
fn give_away(root: &Path) -> bool {
    [root.to_path_buf(), root.join(".git")]
        .iter()
        .all(|path| std::os::unix::fs::chown(path, Some(54_321), Some(54_321)).is_ok())
}

/// The room starts no program, it never tells git to trust a stranger, and it heeds the environment
/// in one place only, where hooks need it.
#[test]
fn the_room_has_no_words_for_starting_programs_or_for_trusting_strangers() {
    let files = sources(Path::new("src/store"));
    assert!(files.len() > 20, "{files:?}");
    for file in files {
        let text = fs::read_to_string(&file).expect("source is text");
        let hooks = file.ends_with("repository/opening.rs");
        let of_hooks: &[&str] = if hooks { &[] } else { &["FROM_ENV", "open_from_env"] };
        let words = ["process::", "Command::", "verify_owner", "set_verify"];
        for word in words.iter().chain(of_hooks) {
            assert!(!text.contains(word), "{word} in {}", file.display());
        }
    }
}

fn sources(folder: &Path) -> Vec<PathBuf> {
    let entries = fs::read_dir(folder).expect("tests run in the crate's folder");
    let entries = entries.map(|entry| entry.expect("an entry").path());
    entries.flat_map(|path| if path.is_dir() { sources(&path) } else { vec![path] }).collect()
}
