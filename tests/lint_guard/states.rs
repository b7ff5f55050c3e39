//! Commits and what is about to be committed.

use crate::club::BOAT;
use crate::club::Club;
use crate::club::edit;
use crate::club::sound;
use crate::run::lint;
use crate::run::lint_of;
use crate::run::one;
use crate::run::rigged_with_gap;

#[test]
fn a_commit_is_checked_as_it_is_whatever_lies_in_the_folder() {
    let club = Club::new();
    let mut tight = sound();
    rigged_with_gap(&mut tight, "55", "3.0", "2026-10-24");
    let ids = club.line(&[sound(), tight]);
    std::fs::write(club.path().join(BOAT), "boat: [").expect("a file");
    let before = lint(&club, &["--at", &ids[0].to_string()]);
    assert_eq!(before.code, 0, "{}", before.out);
    assert_eq!(lint(&club, &["--at", "HEAD"]).code, 1);
}

#[test]
fn the_clock_of_a_commit_is_its_own_day() {
    let club = Club::new();
    club.line(&[sound()]);
    let ran = lint_of(club.path(), &["--at", "HEAD", "--format", "json"]);
    assert_eq!(ran.json()["as_of"], "2026-01-01");
}

#[test]
fn a_bare_repository_is_checked_by_its_commits() {
    let club = Club::new();
    let id = club.line(&[sound()])[0].to_string();
    let folder = tempfile::tempdir().expect("a folder");
    let mut builder = git2::build::RepoBuilder::new();
    let from = club.path().to_str().expect("a path of UTF-8");
    builder.bare(true).clone(from, folder.path()).expect("a bare clone");
    let ran = lint_of(folder.path(), &["--at", &id, "--as-of", "2026-11-01"]);
    assert_eq!(ran.code, 0, "{}{}", ran.out, ran.err);
}

#[test]
fn what_is_staged_is_checked_and_not_the_file() {
    let club = Club::new();
    club.line(&[sound()]);
    let mut staged = sound();
    rigged_with_gap(&mut staged, "55", "3.0", "2026-10-24");
    club.lay_out(&staged);
    let mut index = club.git.index().expect("an index");
    index.add_all(["*"], git2::IndexAddOption::DEFAULT, None).expect("added");
    index.write().expect("written");
    club.lay_out(&sound());
    assert_eq!(lint(&club, &[]).code, 0);
    let ran = lint(&club, &["--staged", "--format", "json"]);
    assert_eq!(ran.code, 1, "{}", ran.err);
    assert!(ran.found().contains(&one("gap-too-tight", "kittiwake/seat-2/rowlock/gap", None)));
}

#[test]
fn states_that_exclude_each_other_are_wrong_usage() {
    let club = Club::new();
    club.line(&[sound()]);
    for words in [
        &["--at", "HEAD", "--staged"][..],
        &["--staged", "--merge-with", "HEAD"],
        &["--at", "HEAD", "--name", BOAT, "-"],
        &["--at", "-x"],
        &["--at", "nonsuch"],
    ] {
        assert_eq!(lint(&club, words).code, 2, "{words:?}");
    }
}

#[test]
fn outside_of_a_repository_there_is_no_other_state() {
    let folder = tempfile::tempdir().expect("a folder");
    for (path, text) in sound() {
        let path = folder.path().join(path);
        std::fs::create_dir_all(path.parent().expect("a folder")).expect("a new folder");
        std::fs::write(path, text).expect("a file");
    }
    assert_eq!(lint_of(folder.path(), &["--as-of", "2026-11-01"]).code, 0);
    for words in [&["--at", "HEAD"][..], &["--since", "HEAD"], &["--staged"]] {
        let ran = lint_of(folder.path(), words);
        assert_eq!(ran.code, 3, "{words:?}: {}", ran.err);
        assert!(ran.out.is_empty() && !ran.err.is_empty());
    }
}

#[test]
fn only_narrows_what_is_cured_too() {
    let mut fault = sound();
    edit(&mut fault, BOAT, "seat: 3", "chock-to-pin: 600", "chock-to-pin: 640");
    let club = Club::new();
    let ids = club.line(&[fault, sound()]);
    let base = ids[0].to_string();
    let ran = lint(&club, &["--since", &base, "--only", "long-ash", "--format", "json"]);
    assert_eq!(ran.json()["findings"].as_array().map(Vec::len), Some(0), "{}", ran.out);
}

#[test]
fn a_book_that_is_not_all_in_the_folder_is_not_checked_and_never_clear() {
    let club = Club::new();
    club.line(&[sound()]);
    let mut index = club.git.index().expect("an index");
    index.add_all(["*"], git2::IndexAddOption::DEFAULT, None).expect("added");
    let mut entry = index.get_path(std::path::Path::new(BOAT), 0).expect("the boat");
    entry.flags |= git2::IndexEntryFlag::EXTENDED.bits();
    entry.flags_extended |= git2::IndexEntryExtendedFlag::SKIP_WORKTREE.bits();
    index.add(&entry).expect("an entry");
    index.write().expect("written");
    std::fs::remove_file(club.path().join(BOAT)).expect("it was there");
    let ran = lint(&club, &["--since", "HEAD", "--format", "json"]);
    assert_eq!(ran.code, 3, "{}{}", ran.out, ran.err);
    assert!(ran.err.contains("sparse"), "{}", ran.err);
    let report = ran.json();
    let missed = report["not_checked"].as_array().expect("a list");
    assert!(missed.iter().any(|one| one["name"] == BOAT), "{}", ran.out);
}
