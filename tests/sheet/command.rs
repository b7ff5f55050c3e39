//! The command: what it refuses, and its exit codes.

use std::process::Command;
use std::process::Output;

const BOOK: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/data/sound-book");

fn run(arguments: &[&str]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_tholebook"));
    command.arg("sheet").args(arguments).args(["--book", BOOK, "--as-of", "2026-11-01"]);
    command.output().expect("the program runs")
}

#[track_caller]
fn exits(arguments: &[&str], code: i32) -> Output {
    let done = run(arguments);
    assert_eq!(done.status.code(), Some(code), "{arguments:?}: {done:?}");
    done
}

#[test]
fn a_page_is_the_whole_result_and_does_not_gate() {
    for arguments in
        [&["kittiwake"][..], &["kittiwake", "--blank"], &["kittiwake", "--blank", "--twice"]]
    {
        let done = exits(arguments, 0);
        let page = String::from_utf8(done.stdout).expect("UTF-8");
        assert!(
            page.starts_with("<!DOCTYPE html>") && page.ends_with("</html>\n"),
            "{arguments:?}"
        );
    }
}

#[test]
fn options_that_fight_each_other_are_refused() {
    for arguments in [
        &["kittiwake", "--last"][..],
        &["kittiwake", "--twice"],
        &["kittiwake", "--blank", "--last", "--twice"],
        &[],
    ] {
        let done = exits(arguments, 2);
        assert!(done.stdout.is_empty(), "{arguments:?}");
    }
}

#[test]
fn a_boat_that_is_not_there_is_wrong_usage_and_names_those_that_are() {
    let done = exits(&["kittiwale"], 2);
    let told = String::from_utf8(done.stderr).expect("UTF-8");
    assert!(done.stdout.is_empty() && told.contains("kittiwake"), "{told}");
}
