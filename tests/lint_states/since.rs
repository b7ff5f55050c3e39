//! Findings beside those of an earlier state: by name and rule, never by line or value.

use crate::club::BOAT;
use crate::club::Club;
use crate::club::Files;
use crate::club::edit;
use crate::club::sound;
use crate::run::Ran;
use crate::run::lint;
use crate::run::one;
use crate::run::rigged_with_gap;

/// The sound book with a handle that passes the mark by too little.
fn with_a_fault() -> Files {
    let mut files = sound();
    edit(&mut files, BOAT, "seat: 3", "chock-to-pin: 600", "chock-to-pin: 640");
    files
}

const FAULT: (&str, &str) = ("chocks-unlike", "kittiwake");

fn since_first(states: &[Files]) -> Ran {
    let club = Club::new();
    let ids = club.line(states);
    lint(&club, &["--since", &ids[0].to_string(), "--format", "json"])
}

/// The same state on a new day, so that a changed reading is a reading.
fn on_a_new_day(mut files: Files) -> Files {
    crate::run::rigged_on(&mut files, "2026-10-24");
    files
}

#[test]
fn a_fault_that_stood_before_is_known_and_does_not_stop() {
    let ran = since_first(&[with_a_fault(), on_a_new_day(with_a_fault())]);
    assert_eq!(ran.found(), [one(FAULT.0, FAULT.1, Some("known"))]);
    assert_eq!(ran.code, 0);
}

#[test]
fn a_base_that_is_this_very_state_makes_all_known() {
    let ran = since_first(&[with_a_fault()]);
    assert_eq!(ran.found(), [one(FAULT.0, FAULT.1, Some("known"))]);
    assert_eq!(ran.code, 0);
}

#[test]
fn lines_that_moved_and_a_file_that_was_renamed_make_nothing_new() {
    let mut moved = with_a_fault();
    let text = moved.remove(BOAT).expect("the boat");
    moved.insert("boats/surf/renamed.yaml".to_owned(), format!("# Kittiwake\n\n\n{text}"));
    let ran = since_first(&[with_a_fault(), moved]);
    assert_eq!(ran.found(), [one(FAULT.0, FAULT.1, Some("known"))]);
    assert_eq!(ran.code, 0);
}

#[test]
fn a_fault_that_grew_stops() {
    let mut worse = on_a_new_day(with_a_fault());
    edit(&mut worse, BOAT, "seat: 3", "chock-to-pin: 640", "chock-to-pin: 650");
    let ran = since_first(&[with_a_fault(), worse]);
    assert_eq!(ran.found(), [one(FAULT.0, FAULT.1, Some("worse"))]);
    assert_eq!(ran.code, 1);
}

#[test]
fn a_new_fault_stops() {
    let ran = since_first(&[sound(), on_a_new_day(with_a_fault())]);
    assert_eq!(ran.found(), [one(FAULT.0, FAULT.1, Some("new"))]);
    assert_eq!(ran.code, 1);
}

#[test]
fn a_danger_stops_whatever_its_age() {
    let mut tight = sound();
    rigged_with_gap(&mut tight, "55", "3.0", "2026-10-24");
    let ran = since_first(&[tight.clone(), tight]);
    let found = ran.found();
    let known = found
        .iter()
        .filter(|one| one.0 == "gap-too-tight")
        .all(|one| one.2.as_deref() == Some("known"));
    assert!(known && !found.is_empty(), "{found:?}");
    assert_eq!(ran.code, 1);
}

#[test]
fn what_is_cured_is_told_and_not_counted() {
    let ran = since_first(&[with_a_fault(), on_a_new_day(sound())]);
    assert_eq!(ran.found(), [one(FAULT.0, FAULT.1, Some("cured"))]);
    assert_eq!(ran.json()["summary"]["fault"], 0);
    assert_eq!(ran.code, 0);
}

#[test]
fn a_limit_that_was_tightened_judges_both_states() {
    let mut tightened = on_a_new_day(sound());
    edit(
        &mut tightened,
        "club.yaml",
        "",
        "people:",
        "limits:\n  surfboat:\n    loose: {most: 13}\npeople:",
    );
    let ran = since_first(&[sound(), tightened]);
    assert!(!ran.found().is_empty());
    assert!(ran.found().iter().all(|one| one.2.as_deref() == Some("known")), "{:?}", ran.found());
    assert_eq!(ran.code, 0);
}

#[test]
fn a_fault_whose_waiver_was_taken_away_stops() {
    let mut waived = with_a_fault();
    let waiver = "- finding: kittiwake\n  rule: chocks-unlike\n  because: a tall rower\n  by: Tomas Reyne\n  until: 2026-11-30\n  at: 40\n";
    waived.insert("waivers.yaml".to_owned(), waiver.to_owned());
    assert_eq!(since_first(&[waived.clone(), waived.clone()]).code, 0);
    let ran = since_first(&[waived, on_a_new_day(with_a_fault())]);
    assert_eq!(ran.found(), [one(FAULT.0, FAULT.1, Some("worse"))]);
    assert_eq!(ran.code, 1);
}

#[test]
fn a_base_that_can_t_be_had_is_never_taken_for_an_empty_one() {
    let club = Club::new();
    club.line(&[with_a_fault()]);
    let unknown = lint(&club, &["--since", "nonsuch"]);
    assert_eq!((unknown.code, unknown.out.as_str()), (3, ""), "{}", unknown.err);
    let stranger = club.commit(9, &[], &sound()).to_string();
    let unrelated = lint(&club, &["--since", &stranger]);
    assert_eq!((unrelated.code, unrelated.out.as_str()), (3, ""), "{}", unrelated.err);
    assert!(unrelated.err.contains("share no history"), "{}", unrelated.err);
}

#[test]
fn before_the_first_commit_all_is_new() {
    let club = Club::new();
    let files = with_a_fault();
    club.lay_out(&files);
    let mut index = club.git.index().expect("an index");
    index.add_all(["*"], git2::IndexAddOption::DEFAULT, None).expect("added");
    index.write().expect("written");
    let ran = lint(&club, &["--staged", "--since", "HEAD", "--format", "json"]);
    assert_eq!(ran.found(), [one(FAULT.0, FAULT.1, Some("new"))], "{}", ran.err);
    assert_eq!(ran.code, 1);
}

#[test]
fn the_last_line_says_what_became_of_the_findings() {
    let club = Club::new();
    let ids = club.line(&[with_a_fault(), on_a_new_day(sound())]);
    let ran = lint(&club, &["--since", &ids[0].to_string(), "--format", "brief"]);
    let line = ran.out.lines().last().expect("a line");
    assert!(line.ends_with("0 new, 0 worse, 0 known, 2 cured"), "{line}");
    assert!(ran.out.contains("cured: fault chocks-unlike kittiwake"), "{}", ran.out);
}
