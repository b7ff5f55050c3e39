//! A commit is checked as it is, whatever lies in the folder.

use std::fs;

use git2::Repository;

use crate::club::BOAT;
use crate::club::Club;
use crate::club::Files;
use crate::club::person;
use crate::club::sound;
use crate::run::DAY;
use crate::run::UNFIT;
use crate::run::UNLIKE;
use crate::run::club_of;
use crate::run::lint_in;
use crate::run::told;
use crate::run::unfit;
use crate::run::with_chock;

fn json(club: &Club, arguments: &[&str]) -> crate::run::Run {
    lint_in(club.path(), &[&["--format", "json"], arguments].concat())
}

#[test]
fn the_commits_own_day_is_today_where_it_was_made() {
    let club = Club::new();
    let late = git2::Time::new(crate::club::NEW_YEAR + DAY * 86_400 + 84_600, 120);
    let who = git2::Signature::new("Ines Marlow", "a@example.org", &late).expect("a person");
    let written = person("Ines Marlow", DAY - 20);
    let id = club.commit_by(&written, &who, &[], &sound()).to_string();
    assert_eq!(json(&club, &["--at", &id]).ends(0).json()["as_of"], "2026-11-02");
    let other = json(&club, &["--at", &id, "--as-of", "2027-06-01"]);
    assert_eq!(other.json()["as_of"], "2027-06-01");
    assert!(!other.found().is_empty(), "the readings are old by then");
}

#[test]
fn a_tag_with_or_without_words_a_branch_and_the_beginning_of_an_id_name_a_commit() {
    let (club, id) = club_of(&sound());
    let object = club.git.find_object(id, None).expect("the commit");
    club.git.tag_lightweight("plain", &object, false).expect("a tag");
    club.git.tag("spring", &object, &person("Ines Marlow", DAY), "rigged", false).expect("a tag");
    club.git.reference("refs/heads/sand", id, false, "").expect("a branch");
    let next = club.commit(DAY - 1, &[id], &unfit());
    club.check_out(next, &unfit());
    for rev in ["plain", "spring", "sand", "HEAD~1", &id.to_string()[..9]] {
        assert_eq!(json(&club, &["--at", rev]).ends(0).found(), [""; 0], "{rev}");
    }
    assert_eq!(json(&club, &["--at", "HEAD"]).ends(1).found(), [format!("- {UNFIT}")]);
}

#[test]
fn what_lies_in_the_folder_or_in_the_index_does_not_count() {
    let (club, _) = club_of(&sound());
    let mut dirty = unfit();
    dirty.insert("boats/new.yaml".to_owned(), "boat: [\n".to_owned());
    club.lay_out(&dirty);
    crate::run::stage(&club, &dirty);
    assert_eq!(json(&club, &["--at", "HEAD"]).ends(0).found(), [""; 0]);
    crate::run::empty(&club);
    assert_eq!(lint_in(club.path(), &["--at", "HEAD"]).ends(0).err, "");
    assert!(!club.path().join(BOAT).exists(), "nothing is checked out");
    assert_eq!(told(&club, &[]).code, Some(3));
}

fn below(files: &Files, folder: &str) -> Files {
    files.iter().map(|(path, text)| (format!("{folder}/{path}"), text.clone())).collect()
}

#[test]
fn a_book_in_a_subfolder_is_found_from_there_and_by_its_name() {
    let (club, _) = club_of(&below(&with_chock("630"), "log/book"));
    let book = club.path().join("log/book");
    fs::create_dir_all(&book).expect("a folder");
    let run = lint_in(&book, &["--at", "HEAD", "--format", "json"]).ends(1);
    assert_eq!(run.serious(), [format!("- {UNLIKE}")]);
    assert_eq!(run.json()["findings"][0]["spans"][0]["path"], BOAT);
    let named = lint_in(
        &std::env::temp_dir(),
        &[book.to_str().expect("plain"), "--at", "HEAD", "--format", "json"],
    );
    assert_eq!(named.ends(1).serious(), run.serious());
}

#[test]
fn a_bare_repository_may_be_the_book() {
    let (club, _) = club_of(&unfit());
    let bare = tempfile::tempdir().expect("a folder");
    let from = club.path().to_str().expect("plain");
    let mut copy = git2::build::RepoBuilder::new();
    copy.bare(true).clone(from, bare.path()).expect("a clone");
    assert!(Repository::open_bare(bare.path()).is_ok());
    let head = club.git.head().expect("a head").target().expect("a commit").to_string();
    let path = bare.path().to_str().expect("plain");
    let run = lint_in(club.path(), &[path, "--at", &head, "--format", "json"]).ends(1);
    assert_eq!(run.found(), [format!("- {UNFIT}")]);
    let run = lint_in(bare.path(), &["--at", &head, "--since", &head, "--format", "json"]).ends(1);
    assert_eq!(run.found(), [format!("known {UNFIT}")]);
    let run = lint_in(club.path(), &[path, "--staged"]).ends(3);
    assert!(run.err.contains("no working tree"), "{}", run.err);
}

#[test]
fn a_commit_without_a_book_or_any_boat_is_exit_3() {
    let (club, id) = club_of(&Files::from([("notes.txt".to_owned(), String::new())]));
    let run = lint_in(club.path(), &["--at", "HEAD"]).ends(3);
    assert!(run.err.contains("no book") && run.out.is_empty(), "{}", run.err);
    let empty = Files::from([("club.yaml".to_owned(), "logbook: 1\n".to_owned())]);
    let next = club.commit(DAY, &[id], &empty).to_string();
    lint_in(club.path(), &["--at", &next]).ends(3);
    lint_in(club.path(), &["--at", &next, "--allow-empty"]).ends(0);
}

#[test]
fn a_name_that_is_no_commit_is_wrong_usage() {
    let (club, _) = club_of(&sound());
    for rev in ["no-such", "HEAD:boats", ""] {
        let run = lint_in(club.path(), &[&format!("--at={rev}")]).ends(2);
        assert!(run.out.is_empty() && !run.err.is_empty());
    }
}

#[test]
fn a_committed_text_that_is_gone_is_exit_3() {
    let (club, _) = club_of(&sound());
    let blob = club.git.blob(sound()[BOAT].as_bytes()).expect("a blob").to_string();
    let object = club.git.path().join("objects").join(&blob[..2]).join(&blob[2..]);
    fs::remove_file(object).expect("removed");
    for state in [&["--at", "HEAD"][..], &["--staged"], &["--since", "HEAD"]] {
        let run = lint_in(club.path(), state).ends(3);
        assert!(run.err.contains(BOAT) && run.out.is_empty(), "{}", run.err);
    }
}
