//! What `history` and `blame` say, and what they say instead.

use std::process::Command;

use crate::club::BOAT;
use crate::club::Club;
use crate::club::GAP;
use crate::club::edit;
use crate::club::person;
use crate::club::sound;
use crate::club::with_gap;
use crate::run::json;
use crate::run::run;

#[test]
fn who_wrote_a_change_and_who_committed_it_are_told_apart() {
    let club = Club::new();
    let first = club.commit_by(&person("Ines Marlow", 3), &person("Tomas Reyne", 9), &[], &sound());
    club.check_out(first, &sound());
    for command in [&["history", GAP][..], &["blame", "kittiwake"]] {
        let text = run(&club, &[command, &["--width", "200"]].concat()).out;
        let told = "written by Ines Marlow, committed 2026-01-10 by Tomas Reyne";
        assert!(text.contains(told), "{text}");
        let table = run(&club, &[command, &["--format", "markdown"]].concat()).out;
        assert!(table.contains("written by") && table.contains("by Tomas Reyne"), "{table}");
    }
    let club = Club::new();
    club.line(&[sound()]);
    let text = run(&club, &["history", GAP]).out;
    assert!(text.contains("committed 2026-01-01 by Ines Marlow"), "{text}");
    assert!(!text.contains("written by"), "{text}");
}

#[test]
fn a_seats_number_is_no_amount() {
    let bends = "bends:\n  - {date: 2026-10-17, by: Ines Marlow, seat: 1, part: pin, deg: 3}\n";
    let club = Club::new();
    let mut first = sound();
    first.get_mut(BOAT).expect("the boat").push_str(bends);
    let mut second = first.clone();
    edit(&mut second, BOAT, "bends:", "seat: 1", "seat: 2");
    edit(&mut second, BOAT, "bends:", "deg: 3", "deg: 4");
    club.line(&[first, second]);
    let text = run(&club, &["history", "kittiwake/bends"]).out;
    assert!(text.contains("1/seat: 1 → 2") && !text.contains("(+1)"), "{text}");
    let json = json(&club, &["history", "kittiwake/bends/1/seat"]);
    assert_eq!(json["rows"][1]["delta"], serde_json::Value::Null);
}

#[test]
fn an_empty_name_is_refused_in_plain_words() {
    let club = Club::new();
    club.line(&[sound()]);
    for command in ["history", "blame"] {
        for name in ["", "  "] {
            let refused = run(&club, &[command, name]);
            assert_eq!((refused.code, &*refused.out), (Some(2), ""));
            assert!(refused.err.contains("The name is empty"), "{}", refused.err);
        }
    }
}

#[test]
fn what_is_worked_out_has_no_history_and_its_readings_are_named() {
    let club = Club::new();
    club.line(&[sound()]);
    for name in ["clearance", "gearing", "worked-out/pitch", "worked-out"] {
        let refused = run(&club, &["history", &format!("kittiwake/seat-2/{name}")]);
        assert_eq!((refused.code, &*refused.out), (Some(2), ""), "{name}");
        assert!(refused.err.contains("is worked out, not written"), "{}", refused.err);
    }
    let refused = run(&club, &["history", "kittiwake/seat-2/clearance"]).err;
    assert!(refused.contains(GAP) && refused.contains("long-ash/A2/shaft/widest"), "{refused}");
    let unknown = run(&club, &["history", "kittiwake/seat-2/rowlock/gup"]).err;
    assert!(!unknown.contains("worked out") && unknown.contains("gap"), "{unknown}");
}

#[test]
fn a_bare_repository_is_asked_from_within_as_lint_is() {
    let club = Club::new();
    let ids = club.line(&[sound(), with_gap("58")]);
    club.git.reference("refs/heads/main", ids[1], true, "").expect("a branch");
    let bare = tempfile::tempdir().expect("a folder");
    let from = club.path().to_str().expect("a path");
    git2::build::RepoBuilder::new().bare(true).clone(from, bare.path()).expect("a clone");
    for words in [&["history", GAP][..], &["blame", "kittiwake"]] {
        let mut program = Command::new(env!("CARGO_BIN_EXE_tholebook"));
        program.current_dir(bare.path()).args(words).args(["--at", &ids[1].to_string()]);
        let done = program.output().expect("a run");
        let told = String::from_utf8_lossy(&done.stderr).into_owned();
        assert_eq!(done.status.code(), Some(0), "{words:?}: {told}");
        assert!(String::from_utf8_lossy(&done.stdout).contains("58 mm"));
    }
}

#[test]
fn every_row_is_a_sentence_where_it_is_to_be_read_aloud() {
    let club = Club::new();
    let ids = club.line(&[sound(), with_gap("58.5")]);
    let spoken = run(&club, &["history", GAP, "--spoken"]);
    let short = &ids[1].to_string()[..8];
    let expected = format!(
        "{GAP}: 60 millimetres to 58.5 millimetres (-1.5 millimetres), measured 2026-10-17 by Ines \
         Marlow; committed 2026-01-02 by Ines Marlow, {short}, verdict then: note."
    );
    assert_eq!(spoken.out.lines().collect::<Vec<_>>()[1..], [expected]);
    let blame = run(&club, &["blame", "kittiwake", "--spoken", "--as-of", "2026-10-27"]);
    let own = blame.out.lines().find(|line| line.starts_with(GAP)).expect("the gap");
    let expected = format!(
        "{GAP} is 58.5 millimetres, measured 2026-10-17 by Ines Marlow, 10 days ago; committed \
         2026-01-02 by Ines Marlow, {short}."
    );
    assert_eq!(own, expected);
    let since = run(&club, &["history", GAP, "--spoken", "--when", "gap-too-tight"]).out;
    assert_eq!(since, format!("{GAP} gap-too-tight: never found there.\n"));
    assert_eq!(run(&club, &["blame", "kittiwake", "--spoken", "--format", "json"]).code, Some(2));
}
