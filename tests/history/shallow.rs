//! A history that is not all there is told as such.

use std::fs;

use crate::club::Club;
use crate::club::GAP;
use crate::club::sound;
use crate::club::with_gap;
use crate::run::NONE;
use crate::run::json;
use crate::run::row;
use crate::run::rows;
use crate::run::run;

fn shallow() -> (Club, Vec<git2::Oid>) {
    let club = Club::new();
    let ids = club.line(&[sound(), with_gap("59"), with_gap("58")]);
    fs::write(club.git.path().join("shallow"), format!("{}\n", ids[1])).expect("a written file");
    (club, ids)
}

#[test]
fn the_edge_is_where_history_starts_not_where_a_value_was_set() {
    let (club, ids) = shallow();
    let expected = [row("history-starts", NONE, 59.0, ids[1]), row("changed", 59.0, 58.0, ids[2])];
    assert_eq!(rows(&club, &["history", GAP]), expected);
    let told = json(&club, &["history", GAP]);
    assert_eq!(told["complete"], false);
    assert_eq!(told["rows"][0]["at_the_edge"], true);
    assert_eq!(json(&club, &["blame", "kittiwake"])["complete"], false);
    let text = run(&club, &["history", GAP]).out;
    assert!(text.contains("≤ 2026-01-02") && text.contains("clone is shallow"), "{text}");
    assert!(text.contains("git fetch --unshallow"), "{text}");
    let text = run(&club, &["blame", "kittiwake"]).out;
    assert!(text.contains("≤ 2026-01-02"), "{text}");
}

#[test]
fn an_age_at_the_edge_is_the_least_it_can_be() {
    let (club, _) = shallow();
    let blame = json(&club, &["blame", "kittiwake", "--as-of", "2026-01-10"]);
    let own = |name: &str| {
        let values = blame["values"].as_array().expect("values");
        values.iter().find(|own| own["name"] == name).expect("a value").clone()
    };
    let class = own("kittiwake/class");
    assert_eq!((&class["age_days"], &class["may_be_older"]), (&8.into(), &true.into()));
    // What was measured says its own day.
    assert_eq!(own("kittiwake/seat-1/rowlock/gap")["may_be_older"], false);
    let asked = ["blame", "kittiwake", "--as-of", "2026-01-10", "--older-than", "30"];
    let text = run(&club, &asked).out;
    assert!(text.contains("≥8") && text.contains("at least so many days"), "{text}");
    assert!(text.lines().any(|line| line.starts_with("class ")), "{text}");
    assert!(text.lines().all(|line| line.chars().count() <= 80), "{text}");
}

#[test]
fn a_commit_that_may_only_be_cut_off_is_not_a_wrong_name() {
    let (club, ids) = shallow();
    for rev in [&ids[1].to_string()[..], "HEAD~1"] {
        let beyond = format!("{rev}~1");
        let refused = run(&club, &["history", GAP, "--at", &beyond]);
        assert_eq!(refused.code, Some(3), "{}", refused.err);
        assert!(refused.err.contains("--unshallow"), "{}", refused.err);
    }
    let whole = Club::new();
    whole.line(&[sound()]);
    assert_eq!(run(&whole, &["history", GAP, "--at", "HEAD~1"]).code, Some(2));
}

#[test]
fn a_whole_history_that_is_asked_for_and_not_there_is_exit_3() {
    let (club, _) = shallow();
    for command in [["history", GAP], ["blame", "kittiwake"]] {
        let mut arguments = command.to_vec();
        arguments.push("--require-full-history");
        let refused = run(&club, &arguments);
        assert_eq!((refused.code, &*refused.out), (Some(3), ""));
        assert!(refused.err.contains("--unshallow"), "{}", refused.err);
    }
    let whole = Club::new();
    whole.line(&[sound()]);
    assert_eq!(run(&whole, &["history", GAP, "--require-full-history"]).code, Some(0));
    assert_eq!(json(&whole, &["history", GAP])["complete"], true);
}

#[test]
fn a_text_that_was_left_behind_is_exit_3_with_one_message() {
    let club = Club::new();
    club.line(&[sound(), with_gap("58")]);
    let blob = club.git.blob(sound()[crate::club::BOAT].as_bytes()).expect("a blob").to_string();
    let object = club.git.path().join("objects").join(&blob[..2]).join(&blob[2..]);
    fs::remove_file(object).expect("a removed file");
    let refused = run(&club, &["history", GAP]);
    assert_eq!((refused.code, &*refused.out), (Some(3), ""));
    assert!(refused.err.contains("boats/kittiwake.yaml"), "{}", refused.err);
}

#[test]
fn without_a_repository_or_a_commit_there_is_a_plain_message() {
    let club = Club::new();
    club.lay_out(&sound());
    let blame = json(&club, &["blame", "kittiwake"]);
    assert_eq!(blame["values"][0]["commit"], NONE);
    fs::remove_dir_all(club.path().join(".git")).expect("a removed folder");
    for command in [["history", GAP], ["blame", "kittiwake"]] {
        let refused = run(&club, &command);
        assert_eq!((refused.code, &*refused.out), (Some(3), ""));
        assert!(refused.err.contains("repository"), "{}", refused.err);
    }
}
