//! Where it is written, what it refuses, and that nobody's settings change it.

use std::fs;
use std::path::Path;

use git2::Repository;
use git2::Status;
use git2::StatusOptions;
use tempfile::tempdir;

use super::HEAD;
use super::head;
use super::run;
use super::sample;
use super::write;

#[test]
fn the_ids_are_the_same_every_time() {
    let folder = tempdir().expect("a folder");
    let (one, two) = (write(&folder.path().join("one")), write(&folder.path().join("two")));
    assert_eq!(head(&one), head(&two));
    assert_eq!(head(&one), HEAD, "the story has changed: see the remark at HEAD");
}

#[test]
fn main_is_checked_out_and_the_folder_is_clean() {
    let folder = tempdir().expect("a folder");
    let repository = write(&folder.path().join("book"));
    assert_eq!(repository.head().expect("a head").name(), Ok("refs/heads/main"));
    assert!(!repository.is_bare());
    assert_clean(&repository);
    assert!(folder.path().join("book/club.yaml").is_file());
    assert_eq!(names(folder.path()), ["book"]);
}

#[test]
fn nobodys_settings_change_it() {
    let folder = tempdir().expect("a folder");
    let home = folder.path().join("home");
    let hooks = folder.path().join("hooks");
    fs::create_dir_all(&hooks).expect("a folder");
    fs::create_dir_all(home.join("template/hooks")).expect("a folder");
    fs::write(home.join("template/stray"), "stray").expect("a file");
    fs::write(hooks.join("post-checkout"), "#!/bin/sh\nexit 1\n").expect("a file");
    let settings = format!(
        "[user]\n\tname = Someone Else\n\temail = else@elsewhere.example\n\tsigningkey = none\n\
         [commit]\n\tgpgsign = true\n[tag]\n\tgpgsign = true\n[init]\n\tdefaultBranch = trunk\n\
         \ttemplateDir = {}\n[core]\n\tautocrlf = true\n\tsafecrlf = true\n\thooksPath = {}\n\
         \tcommentChar = auto\n[i18n]\n\tcommitEncoding = latin1\n",
        home.join("template").display(),
        hooks.display()
    );
    fs::write(home.join(".gitconfig"), settings).expect("a file");
    let elsewhere = folder.path().join("elsewhere.git");
    let other = Repository::init_bare(&elsewhere).expect("a repository");
    let book = folder.path().join("book");
    let mut command = sample(&book);
    command.env("HOME", &home).env("XDG_CONFIG_HOME", &home).env("GIT_DIR", &elsewhere);
    command.env("GIT_WORK_TREE", folder.path()).env("GIT_INDEX_FILE", elsewhere.join("no-index"));
    command.env("GIT_AUTHOR_NAME", "Someone Else").env("GIT_COMMITTER_DATE", "2001-01-01 00:00");
    command.env("GIT_OBJECT_DIRECTORY", elsewhere.join("objects")).env("TZ", "Asia/Kolkata");
    let done = run(command.env("PATH", ""));
    assert_eq!(done.code, Some(0), "{}", done.err);
    let repository = Repository::open(&book).expect("a repository");
    assert_eq!(head(&repository), HEAD);
    assert_clean(&repository);
    assert!(!book.join(".git/stray").exists());
    assert!(other.is_empty().expect("it can be asked"));
}

#[test]
fn a_folder_with_something_in_it_is_refused_and_left_untouched() {
    let folder = tempdir().expect("a folder");
    fs::write(folder.path().join("tide.txt"), "high at six").expect("a file");
    let done = run(&mut sample(folder.path()));
    assert_eq!((done.code, done.out.as_str()), (Some(2), ""));
    assert!(done.err.contains("is not empty") && done.err.contains("Nothing was changed"));
    assert_eq!(names(folder.path()), ["tide.txt"]);
}

#[test]
fn a_file_and_a_folder_in_nowhere_are_refused() {
    let folder = tempdir().expect("a folder");
    let file = folder.path().join("tide.txt");
    fs::write(&file, "high at six").expect("a file");
    let done = run(&mut sample(&file));
    assert_eq!(done.code, Some(2));
    assert!(done.err.contains("it is not a folder"), "{}", done.err);
    assert_eq!(fs::read_to_string(&file).expect("a text"), "high at six");
    let done = run(&mut sample(&folder.path().join("nowhere/book")));
    assert_eq!(done.code, Some(2));
    assert!(done.err.contains("there is no folder"), "{}", done.err);
    assert_eq!(names(folder.path()), ["tide.txt"]);
}

#[test]
fn an_empty_folder_stays_the_same_folder() {
    let folder = tempdir().expect("a folder");
    let mut command = sample(Path::new("."));
    let done = run(command.current_dir(folder.path()));
    assert_eq!(done.code, Some(0), "{}", done.err);
    let repository = Repository::open(folder.path()).expect("a repository");
    assert_eq!(head(&repository), HEAD);
    assert_clean(&repository);
    assert_eq!(names(folder.path()), [".git", "boats", "club.yaml", "crews", "oars"]);
}

/// A name too long for the disk is the one refusal of a disk that every test machine gives.
#[test]
fn what_the_disk_refuses_ends_with_3_and_leaves_nothing() {
    let folder = tempdir().expect("a folder");
    let done = run(&mut sample(&folder.path().join("n".repeat(300))));
    assert_eq!((done.code, done.out.as_str()), (Some(3), ""));
    assert!(done.err.contains("could not be written"), "{}", done.err);
    assert_eq!(names(folder.path()), [""; 0]);
}

#[test]
fn a_repository_around_it_is_left_alone() {
    let folder = tempdir().expect("a folder");
    let around = Repository::init(folder.path()).expect("a repository");
    let inner = write(&folder.path().join("book"));
    assert_eq!(head(&inner), HEAD);
    assert!(around.is_empty().expect("it can be asked"));
}

#[track_caller]
fn assert_clean(repository: &Repository) {
    let mut all = StatusOptions::new();
    all.include_untracked(true).recurse_untracked_dirs(true);
    let statuses = repository.statuses(Some(&mut all)).expect("a status");
    let changed: Vec<Status> = statuses.iter().map(|entry| entry.status()).collect();
    assert_eq!(changed, []);
    let index = repository.index().expect("an index");
    assert!(index.len() > 5 && index.iter().all(|entry| entry.file_size > 0 || cfg!(not(unix))));
}

fn names(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).expect("a folder").map(|entry| entry.expect("an entry"));
    let mut names: Vec<String> =
        entries.map(|entry| entry.file_name().into_string().expect("UTF-8")).collect();
    names.sort_unstable();
    names
}
