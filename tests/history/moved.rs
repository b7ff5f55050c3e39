//! A book whose folder was moved inside its repository keeps its past.

use std::fs;
use std::process::Command;

use crate::club::BOAT;
use crate::club::Club;
use crate::club::Files;
use crate::club::set_gap;
use crate::club::sound;
use crate::club::with_gap;
use crate::run::json_in as json;
use crate::run::run_in as run;
use serde_json::Value;

const GAP: &str = crate::club::GAP;

/// Files as they stand in a folder.
fn below(folder: &str, files: &Files) -> Files {
    files.iter().map(|(path, text)| (format!("{folder}/{path}"), text.clone())).collect()
}

fn joined(one: Files, other: Files) -> Files {
    one.into_iter().chain(other).collect()
}

/// Each row's old, new and commit.
fn told(club: &Club, folder: &str) -> Vec<(Value, Value, Value)> {
    let json = json(club, folder, &["history", GAP]);
    let rows = json["rows"].as_array().expect("rows");
    rows.iter().map(|r| (r["old"].clone(), r["new"].clone(), r["commit"].clone())).collect()
}

fn row(old: Option<f64>, new: f64, id: git2::Oid) -> (Value, Value, Value) {
    (old.into(), new.into(), id.to_string().into())
}

#[test]
fn a_book_that_was_moved_keeps_its_past_and_the_move_is_told() {
    let later = with_gap("58");
    for (from, to) in [("club", "logbook"), ("", "logbook"), ("club", ""), ("club", "old/club")] {
        let lay = |folder: &str, files: &Files| match folder {
            "" => files.clone(),
            folder => below(folder, files),
        };
        let club = Club::new();
        let states = [
            lay(from, &sound()),
            lay(from, &with_gap("59")),
            lay(to, &with_gap("59")),
            lay(to, &later),
        ];
        let ids = club.line(&states);
        let expected =
            [row(None, 60.0, ids[0]), row(Some(60.0), 59.0, ids[1]), row(Some(59.0), 58.0, ids[3])];
        assert_eq!(told(&club, to), expected, "{from:?} to {to:?}");
        let json = json(&club, to, &["history", GAP]);
        assert_eq!(json["complete"], true);
        assert!(json["rows"].as_array().expect("rows").iter().all(|r| !r["verdict"].is_null()));
        let told = run(&club, to, &["blame", "kittiwake"]).err;
        let where_it_lay = if from.is_empty() { "at the top" } else { "in \"club\"" };
        assert!(told.contains(where_it_lay) && told.contains(&ids[2].to_string()[..8]), "{told}");
    }
}

#[test]
fn a_move_in_the_commit_that_changed_a_reading_is_followed() {
    let club = Club::new();
    let ids = club.line(&[below("club", &sound()), below("logbook", &with_gap("58"))]);
    let expected = [row(None, 60.0, ids[0]), row(Some(60.0), 58.0, ids[1])];
    assert_eq!(told(&club, "logbook"), expected);
}

#[test]
fn a_move_that_is_not_committed_yet_is_followed() {
    let club = Club::new();
    let ids = club.line(&[below("club", &sound())]);
    fs::remove_dir_all(club.path().join("club")).expect("a removed folder");
    club.lay_out(&below("logbook", &with_gap("58")));
    let json = json(&club, "logbook", &["history", GAP]);
    assert_eq!(json["rows"][0]["commit"], ids[0].to_string());
    assert_eq!(json["rows"][1]["commit"], Value::Null);
    let lint = run(&club, "logbook", &["history", GAP]);
    assert!(lint.err.contains("not committed yet"), "{}", lint.err);
}

#[test]
fn another_book_beside_a_new_one_is_not_its_past() {
    let club = Club::new();
    let mut lake = sound();
    let text = lake.remove(BOAT).expect("the boat");
    lake.insert("boats/kittiwake.yaml".to_owned(), text.replace("Kittiwake", "Lake boat"));
    set_gap(&mut lake, "55");
    for text in lake.values_mut() {
        text.insert_str(0, "# of the lake\n");
    }
    let both = joined(below("surf", &sound()), below("lake", &lake));
    let ids = club.line(&[below("surf", &sound()), both]);
    assert_eq!(told(&club, "lake"), [row(None, 55.0, ids[1])]);
    assert_eq!(json(&club, "lake", &["history", GAP])["complete"], true);
    assert_eq!(told(&club, "surf"), [row(None, 60.0, ids[0])]);
}

#[test]
fn a_book_that_may_be_another_is_told_and_the_history_is_not_whole() {
    let club = Club::new();
    let other = Files::from([
        ("club/club.yaml".to_owned(), "logbook: 1\nclub: Tarrow\n".to_owned()),
        ("club/boats/fulmar.yaml".to_owned(), "boat: fulmar\nclass: surfboat\n".to_owned()),
    ]);
    club.line(&[other, below("logbook", &sound())]);
    let json = json(&club, "logbook", &["history", GAP]);
    assert_eq!(json["complete"], false);
    let refused = run(&club, "logbook", &["history", GAP, "--require-full-history"]);
    assert_eq!(refused.code, Some(3));
    assert!(refused.err.contains("in \"club\""), "{}", refused.err);
}

#[test]
fn a_reading_that_changed_with_the_move_is_still_not_measured_again() {
    let club = Club::new();
    club.line(&[below("club", &sound()), below("logbook", &with_gap("59"))]);
    let lint = |folder: &str, more: &[&str]| {
        let mut program = Command::new(env!("CARGO_BIN_EXE_tholebook"));
        program.arg("lint").arg(club.path().join(folder)).args(more);
        let done = program.args(["--as-of", "2026-11-01"]).output().expect("a run");
        String::from_utf8(done.stdout).expect("UTF-8")
    };
    let at = lint("logbook", &["--at", "HEAD"]);
    assert!(at.contains("changed-but-not-remeasured"), "{at}");
}
