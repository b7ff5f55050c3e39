//! What is about to be committed is the index, not the files beside it.

use std::fs;

use crate::club::BOAT;
use crate::club::Club;
use crate::club::edit;
use crate::club::sound;
use crate::run::DAY;
use crate::run::TODAY;
use crate::run::UNFIT;
use crate::run::UNLIKE;
use crate::run::club_of;
use crate::run::command;
use crate::run::lint;
use crate::run::of;
use crate::run::stage;
use crate::run::stage_merge;
use crate::run::told;
use crate::run::unfit;
use crate::run::with_chock;

#[test]
fn the_index_counts_and_not_the_file() {
    let (club, _) = club_of(&sound());
    club.lay_out(&unfit());
    assert_eq!(told(&club, &["--staged"]).ends(0).found(), [""; 0]);
    stage(&club, &unfit());
    club.lay_out(&sound());
    assert_eq!(told(&club, &["--staged"]).ends(1).found(), [format!("- {UNFIT}")]);
    lint(&club, &[]).ends(0);
}

#[test]
fn a_file_of_which_a_part_is_staged_is_checked_by_that_part() {
    let (club, _) = club_of(&sound());
    let staged = with_chock("630");
    let mut both = staged.clone();
    edit(&mut both, BOAT, "walk-round", "hull: ok", "hull: unfit");
    stage(&club, &staged);
    club.lay_out(&both);
    assert_eq!(told(&club, &["--staged"]).ends(1).serious(), [format!("- {UNLIKE}")]);
    let run = told(&club, &["--staged", "--since", "HEAD"]).ends(1);
    assert_eq!(run.serious(), [format!("new {UNLIKE}")]);
    let span = &run.json()["findings"][0]["spans"][0];
    let line = span["start"]["line"].as_u64().expect("a line") as usize;
    let text = staged[BOAT].lines().nth(line - 1);
    assert!(text.is_some_and(|text| text.contains("630")), "{text:?}");
}

#[test]
fn a_record_that_is_only_in_the_folder_or_only_in_the_index_is_what_git_will_make_of_it() {
    let (club, _) = club_of(&sound());
    fs::write(club.path().join("boats/new.yaml"), "boat: [\n").expect("written");
    lint(&club, &[]).ends(1);
    lint(&club, &["--staged"]).ends(0);
    crate::run::empty(&club);
    lint(&club, &["--staged"]).ends(0);
}

#[test]
fn an_unfinished_merge_in_the_index_is_exit_3() {
    let club = Club::new();
    let first = club.commit(DAY - 9, &[], &sound());
    let ours = club.commit(DAY - 2, &[first], &with_chock("601"));
    let theirs = club.commit(DAY - 2, &[first], &with_chock("602"));
    club.check_out(ours, &with_chock("601"));
    stage_merge(&club, &theirs.to_string());
    let run = lint(&club, &["--staged"]).ends(3);
    assert!(run.err.contains("merge is not finished") && run.err.contains(BOAT), "{}", run.err);
}

#[test]
fn an_index_that_git_names_counts_unless_the_book_is_named() {
    let (club, _) = club_of(&sound());
    stage(&club, &unfit());
    let other = club.git.path().join("other-index");
    fs::rename(club.git.path().join("index"), &other).expect("moved");
    stage(&club, &sound());
    let from = |book: &[&str]| {
        let arguments = [book, &["--staged", "--as-of", TODAY, "--format", "json"]].concat();
        let mut command = command(club.path(), &arguments);
        of(command.env("GIT_INDEX_FILE", &other).env("GIT_DIR", club.git.path()))
    };
    assert_eq!(from(&[]).ends(1).found(), [format!("- {UNFIT}")]);
    assert_eq!(from(&["."]).ends(0).found(), [""; 0]);
}
