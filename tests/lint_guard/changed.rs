//! A reading that changed is a new reading, with a new day.

use crate::club::BOAT;
use crate::club::Club;
use crate::club::Files;
use crate::club::edit;
use crate::club::sound;
use crate::run::Ran;
use crate::run::lint;
use crate::run::lint_of;
use crate::run::one;
use crate::run::rigged_on;

const NAME: &str = "kittiwake/seat-2/chock-to-pin";

fn edited(to: &str) -> Files {
    let mut files = sound();
    edit(&mut files, BOAT, "seat: 2", "chock-to-pin: 600", to);
    files
}

/// Checks the files as they lie, the sound book being what was committed.
fn beside_the_sound_book(files: &Files) -> Ran {
    let club = Club::new();
    club.line(&[sound()]);
    club.lay_out(files);
    lint(&club, &["--format", "json"])
}

#[test]
fn a_reading_that_changed_without_a_new_day_is_a_fault() {
    let ran = beside_the_sound_book(&edited("chock-to-pin: 602"));
    assert_eq!(ran.found(), [one("changed-but-not-remeasured", NAME, None)]);
    let message = ran.json()["findings"][0]["message"].to_string();
    assert!(message.contains("600") && message.contains("602"), "{message}");
    assert_eq!(ran.code, 1);
}

#[test]
fn within_a_day_of_reading_it_is_a_slip_of_the_pen() {
    let club = Club::new();
    club.line(&[sound()]);
    club.lay_out(&edited("chock-to-pin: 602"));
    let ran = lint_of(club.path(), &["--as-of", "2026-10-18", "--format", "json"]);
    let note = |one: &&serde_json::Value| one["rule"] == "changed-but-not-remeasured";
    let report = ran.json();
    let found = report["findings"].as_array().expect("findings").iter().find(note);
    assert_eq!(found.expect("a note")["level"], "note");
    assert_eq!(ran.code, 0, "{}", ran.out);
}

#[test]
fn a_new_rigging_day_or_a_second_reading_makes_it_right() {
    let mut new_day = edited("chock-to-pin: 602");
    rigged_on(&mut new_day, "2026-10-24");
    assert_eq!(beside_the_sound_book(&new_day).code, 0);
    let mut again = edited("chock-to-pin: 602");
    let text = again.get_mut(BOAT).expect("the boat");
    text.push_str("read-again:\n  - {date: 2026-10-24, by: Tomas Reyne, checked-by: Ines Marlow, values: [seat-2/chock-to-pin]}\n");
    let ran = beside_the_sound_book(&again);
    assert_eq!(ran.code, 0, "{}", ran.out);
}

#[test]
fn what_says_the_same_in_another_way_has_not_changed() {
    for same in ["chock-to-pin: 600.0", "chock-to-pin: 60 cm", "chock-to-pin: \"600\""] {
        assert_eq!(beside_the_sound_book(&edited(same)).code, 0, "{same}");
    }
    let mut renamed = sound();
    let text = renamed.remove(BOAT).expect("the boat");
    renamed.insert("boats/kitty.yaml".to_owned(), format!("# anew\n{text}"));
    assert_eq!(beside_the_sound_book(&renamed).code, 0);
}

#[test]
fn what_is_no_reading_may_change() {
    let ran = beside_the_sound_book(&edited("chock-to-pin: 600\n    note: new chock bolts"));
    assert_eq!(ran.code, 0, "{}", ran.out);
}

#[test]
fn a_merge_that_keeps_the_value_of_one_side_changed_nothing() {
    let club = Club::new();
    let mut changed = edited("chock-to-pin: 602");
    rigged_on(&mut changed, "2026-10-24");
    let start = club.commit(0, &[], &sound());
    let one_side = club.commit(1, &[start], &changed);
    let mut other = sound();
    edit(&mut other, BOAT, "", "wind: light", "wind: none");
    let other = club.commit(2, &[start], &other);
    let mut both = changed.clone();
    edit(&mut both, BOAT, "", "wind: light", "wind: none");
    let merge = club.commit(3, &[one_side, other], &both).to_string();
    let ran = lint(&club, &["--at", &merge]);
    assert_eq!(ran.code, 0, "{}", ran.out);
}

#[test]
fn a_commit_is_held_beside_the_one_before() {
    let club = Club::new();
    let ids = club.line(&[sound(), edited("chock-to-pin: 602"), edited("chock-to-pin: 602")]);
    let at = |number: usize| lint(&club, &["--at", &ids[number].to_string(), "--format", "json"]);
    assert_eq!(at(0).found(), []);
    assert_eq!(at(1).found(), [one("changed-but-not-remeasured", NAME, None)]);
    assert_eq!(at(2).found(), []);
}

#[test]
fn where_the_history_was_cut_off_the_check_is_not_made_and_that_is_told() {
    let club = Club::new();
    let ids = club.line(&[sound(), edited("chock-to-pin: 602")]);
    std::fs::write(club.git.path().join("shallow"), format!("{}\n", ids[1])).expect("a file");
    let ran = lint(&club, &["--at", "HEAD", "--format", "json"]);
    let report = ran.json();
    let missed = |one: &serde_json::Value| one["rule"] == "changed-but-not-remeasured";
    assert!(report["not_checked"].as_array().expect("a list").iter().any(missed), "{}", ran.out);
}

#[test]
fn a_change_that_takes_two_commits_is_held_beside_the_state_asked_for() {
    let club = Club::new();
    let mut second = edited("chock-to-pin: 602");
    edit(&mut second, BOAT, "", "wind: light", "wind: none");
    let ids = club.line(&[sound(), edited("chock-to-pin: 602"), second]);
    let words = ["--at", "HEAD", "--since", &ids[0].to_string(), "--format", "json"];
    assert_eq!(lint(&club, &words).found(), [one("changed-but-not-remeasured", NAME, Some("new"))]);
}

#[test]
fn a_merge_under_way_brings_its_own_readings() {
    let club = Club::new();
    let mut changed = edited("chock-to-pin: 602");
    rigged_on(&mut changed, "2026-10-24");
    let mut ours = sound();
    rigged_on(&mut ours, "2026-10-24");
    let start = club.commit(0, &[], &sound());
    let theirs = club.commit(1, &[start], &changed);
    let ours = (club.commit(2, &[start], &ours), ours);
    club.check_out(ours.0, &ours.1);
    club.lay_out(&changed);
    assert_eq!(lint(&club, &[]).code, 1, "without a merge it is no new reading");
    std::fs::write(club.git.path().join("MERGE_HEAD"), format!("{theirs}\n")).expect("a file");
    let ran = lint(&club, &[]);
    assert_eq!(ran.code, 0, "{}", ran.out);
}
