//! What a merge would give, before it is made.

use serde_json::Value;

use crate::club::BOAT;
use crate::club::Club;
use crate::club::Files;
use crate::club::edit;
use crate::club::sound;
use crate::run::DAY;
use crate::run::OARS;
use crate::run::TODAY;
use crate::run::lint;
use crate::run::lint_in;
use crate::run::read_again;
use crate::run::told;

const THICK: &str = "thicker-spare";

/// A narrower gap at seat 2, safe with the oars of the book.
fn narrow() -> Files {
    let mut files = sound();
    edit(&mut files, BOAT, "seat: 2", "gap: 60", "gap: 58");
    edit(&mut files, BOAT, "seat: 2", "clearance: 8.0", "clearance: 6.0");
    read_again(&mut files, 31, "seat-2/rowlock/gap, seat-2/lifts-out");
    files
}

/// A spare oar with a thicker shaft, safe with the gaps of the book.
fn thick() -> Files {
    let mut files = sound();
    edit(&mut files, OARS, "oar: A5", "widest: 52", "widest: 53.4");
    edit(&mut files, OARS, "measured", "2026-10-03", "2026-10-31");
    files
}

/// Two branches from one commit: HEAD, and the other.
fn parted(base: &Files, ours: &Files, theirs: &Files) -> Club {
    let club = Club::new();
    let first = club.commit(DAY - 9, &[], base);
    let head = club.commit(DAY - 1, &[first], ours);
    let other = club.commit(DAY - 1, &[first], theirs);
    club.check_out(head, ours);
    club.git.reference(&format!("refs/heads/{THICK}"), other, false, "").expect("a branch");
    club
}

fn labels(found: &Value) -> String {
    let spans = found["spans"].as_array().expect("a list");
    let each = spans.iter().map(|span| format!("{} {}", span["path"], span["label"]));
    each.collect::<Vec<_>>().join("\n")
}

#[test]
fn two_safe_branches_whose_merge_is_not_safe_are_told_with_both_sides() {
    let club = parted(&sound(), &narrow(), &thick());
    for rev in ["HEAD", THICK] {
        lint(&club, &["--at", rev]).ends(0);
    }
    let run = told(&club, &["--merge-with", THICK]).ends(1);
    let json = run.json();
    let tight = &json["findings"][0];
    assert_eq!((&tight["rule"], &tight["level"]), (&"gap-too-tight".into(), &"danger".into()));
    let labels = labels(tight);
    assert!(labels.contains("gap") || labels.contains(BOAT), "{labels}");
    assert!(labels.contains(", from HEAD"), "{labels}");
    assert!(labels.contains(&format!(", from {THICK}")), "{labels}");
    let message = tight["message"].as_str().expect("words");
    let both = format!("one part comes from HEAD, another from {THICK}");
    assert!(message.contains(&both), "{message}");
    let text = lint(&club, &["--merge-with", THICK]).ends(1).out;
    assert!(text.contains(", from HEAD") && text.contains(&format!(", from {THICK}")), "{text}");
}

#[test]
fn the_side_that_is_merged_into_may_be_named_and_neither_is_checked_out() {
    let club = parted(&sound(), &narrow(), &thick());
    let before = lint(&club, &[]).ends(0).out;
    let run = told(&club, &["--at", THICK, "--merge-with", "HEAD"]).ends(1);
    assert!(run.out.contains(&format!("one part comes from {THICK}, another from HEAD")));
    assert_eq!(lint(&club, &[]).ends(0).out, before);
    assert_eq!(told(&club, &["--at", THICK, "--merge-with", "HEAD~1"]).ends(0).serious(), [""; 0]);
}

#[test]
fn a_merge_that_is_a_danger_is_new_since_either_side() {
    let club = parted(&sound(), &narrow(), &thick());
    for rev in ["HEAD", THICK] {
        let run = told(&club, &["--merge-with", THICK, "--since", rev]).ends(1);
        assert!(run.found()[0].starts_with("new danger gap-too-tight"), "{:?}", run.found());
    }
}

#[test]
fn values_that_came_together_are_no_change_without_a_reading() {
    let mut theirs = sound();
    edit(&mut theirs, BOAT, "seat: 4", "seat-mark: 61", "seat-mark: 61.5");
    let run = told(&parted(&sound(), &narrow(), &theirs), &["--merge-with", THICK]);
    assert!(!run.out.contains("changed-but-not-remeasured"), "{}", run.out);
}

#[test]
fn a_conflict_in_a_record_is_told_with_its_path_and_is_exit_3() {
    let mut theirs = sound();
    edit(&mut theirs, BOAT, "seat: 2", "gap: 60", "gap: 59");
    let club = parted(&sound(), &narrow(), &theirs);
    let run = told(&club, &["--merge-with", THICK]).ends(3);
    assert!(run.err.contains("Not checked: boats/kittiwake.yaml."), "{}", run.err);
    assert!(run.err.contains("merge by hand"), "{}", run.err);
    let run = told(&club, &["--merge-with", THICK, "--since", "HEAD"]).ends(3);
    let cured = run.found().into_iter().filter(|one| one.starts_with("cured")).count();
    assert_eq!(cured, 0, "what was not merged is not cured");
}

#[test]
fn a_conflict_beside_a_danger_is_exit_3_and_the_danger_is_told() {
    let mut ours = narrow();
    let mut theirs = sound();
    edit(&mut theirs, OARS, "oar: A4", "length: 3860", "length: 3850");
    edit(&mut ours, OARS, "oar: A4", "length: 3860", "length: 3840");
    edit(&mut ours, BOAT, "walk-round", "hull: ok", "hull: unfit");
    let run = told(&parted(&sound(), &ours, &theirs), &["--merge-with", THICK]).ends(3);
    assert!(run.err.contains("Not checked: oars/long-ash.yaml."), "{}", run.err);
    assert!(run.out.contains("walk-round"), "{}", run.out);
}

#[test]
fn a_conflict_outside_the_records_leaves_the_records_checked() {
    let with = |words: &str| {
        let mut files = sound();
        files.insert("notes.txt".to_owned(), format!("{words}\n"));
        files
    };
    let club = parted(&with("a"), &with("b"), &with("c"));
    lint(&club, &["--merge-with", THICK]).ends(0);
}

#[test]
fn lines_of_both_sides_kept_by_a_union_are_a_key_twice_with_both_places() {
    let with = |gap: &str| {
        let mut files = sound();
        edit(&mut files, BOAT, "seat: 2", "gap: 60", &format!("gap: {gap}"));
        files.insert(".gitattributes".to_owned(), "*.yaml merge=union\n".to_owned());
        files
    };
    let club = parted(&with("60"), &with("59"), &with("58"));
    let run = told(&club, &["--merge-with", THICK]).ends(1);
    let json = run.json();
    let findings = json["findings"].as_array().expect("a list");
    let twice = findings.iter().find(|one| one["rule"] == "key-twice").expect("a key twice");
    let spans = twice["spans"].as_array().expect("places");
    let line = |at: usize| spans[at]["start"]["line"].as_u64().expect("a line");
    assert_eq!((spans.len(), line(0).abs_diff(line(1))), (2, 1), "{spans:#?}");
}

#[test]
fn a_name_that_is_no_commit_is_wrong_usage_with_nothing_checked() {
    let club = parted(&sound(), &narrow(), &thick());
    for wrong in [&["--merge-with", "no-such"][..], &["--at", "no-such", "--merge-with", THICK]] {
        let run = lint(&club, wrong).ends(2);
        assert!(run.err.contains("no-such") && run.out.is_empty(), "{}", run.err);
    }
}

#[test]
fn without_a_repository_there_is_nothing_to_merge() {
    let club = parted(&sound(), &narrow(), &thick());
    std::fs::remove_dir_all(club.path().join(".git")).expect("removed");
    let run = lint_in(club.path(), &["--merge-with", THICK, "--as-of", TODAY]).ends(3);
    assert!(run.err.contains("repository") && run.out.is_empty(), "{}", run.err);
}
