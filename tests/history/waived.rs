//! A finding that the club lives with for a while is no less found.

use crate::club::Club;
use crate::club::Files;
use crate::club::GAP;
use crate::club::with_gap;
use crate::run::json;
use crate::run::run;

const RULE: &str = "gap-too-loose";

/// A gap that is too loose, with a waiver until a day.
fn waived(until: &str) -> Files {
    let mut files = with_gap("69");
    let waiver = format!(
        "- finding: {GAP}\n  rule: {RULE}\n  because: new collars are ordered\n  by: Tomas Reyne\n  \
         until: {until}\n  at: 23.0\n"
    );
    files.insert("waivers.yaml".to_owned(), waiver);
    files
}

/// Each row's kind and whether it was waived.
fn rows(club: &Club) -> Vec<(String, bool)> {
    let json = json(club, &["history", GAP, "--at", "HEAD", "--when", RULE]);
    let rows = json["rows"].as_array().expect("rows");
    let kind = |row: &serde_json::Value| row["kind"].as_str().expect("a kind").to_owned();
    rows.iter().map(|row| (kind(row), row["waived"] == true)).collect()
}

#[test]
fn the_commit_that_waived_a_finding_is_told() {
    let club = Club::new();
    club.line(&[with_gap("69"), waived("2026-01-20"), with_gap("69")]);
    let expected = [("found", false), ("waived", true), ("found", false)];
    assert_eq!(rows(&club), expected.map(|(kind, waived)| (kind.to_owned(), waived)));
    let text = run(&club, &["history", GAP, "--at", "HEAD", "--when", RULE]).out;
    assert!(
        text.contains("waived from here on: ") && text.contains("not waived any more"),
        "{text}"
    );
    assert!(text.contains("It stands.\n"), "{text}");
}

#[test]
fn what_was_waived_from_the_first_is_found_and_called_waived() {
    let club = Club::new();
    club.line(&[waived("2026-01-20")]);
    assert_eq!(rows(&club), [("found".to_owned(), true)]);
    let text = run(&club, &["history", GAP, "--at", "HEAD", "--when", RULE]).out;
    assert!(text.contains("(waived)") && text.contains("It stands, waived."), "{text}");
}

#[test]
fn a_waiver_that_ended_between_two_commits_is_told_at_the_second() {
    let club = Club::new();
    // The commits are a day apart, and the second day is the waiver's last.
    let mut later = waived("2026-01-02");
    later.insert("docs/notes.txt".to_owned(), "a note\n".to_owned());
    let states = [waived("2026-01-02"), later.clone(), waived("2026-01-02"), later];
    club.line(&states);
    let expected = [("found", true), ("found", false)];
    assert_eq!(rows(&club), expected.map(|(kind, waived)| (kind.to_owned(), waived)));
}
