//! Which options go together, and what is read from standard input inside a repository.

use std::io::Write as _;
use std::process::Stdio;

use crate::club::BOAT;
use crate::club::sound;
use crate::run::TODAY;
use crate::run::UNLIKE;
use crate::run::club_of;
use crate::run::command;
use crate::run::lint;
use crate::run::with_chock;

#[test]
fn states_that_exclude_each_other_are_wrong_usage() {
    let (club, _) = club_of(&sound());
    for wrong in [
        &["--at", "HEAD", "--staged"][..],
        &["--staged", "--merge-with", "HEAD"],
        &["--at", "HEAD", "--staged", "--merge-with", "HEAD"],
        &["--at", "HEAD", "--name", BOAT, "-"],
        &["--staged", "--name", BOAT, "-"],
        &["--merge-with", "HEAD", "--name", BOAT, "-"],
        &["--at", "HEAD", "--at", "HEAD"],
        &["--since", "HEAD", "--since", "HEAD"],
        &["--at"],
        &["--spoken", "--format", "json"],
        &["--name", BOAT],
        &["-"],
    ] {
        let run = lint(&club, wrong).ends(2);
        assert!(run.out.is_empty() && !run.err.is_empty(), "{wrong:?}");
    }
}

#[test]
fn every_state_goes_with_an_earlier_one_and_with_guarded_limits() {
    let (club, _) = club_of(&sound());
    for state in [&[][..], &["--at", "HEAD"], &["--staged"], &["--merge-with", "HEAD"]] {
        for more in [&["--since", "HEAD"][..], &["--rules-from", "HEAD"], &["--no-waivers"]] {
            for format in ["text", "brief", "json"] {
                let run = lint(&club, &[state, more, &["--format", format]].concat()).ends(0);
                assert!(!run.out.is_empty());
            }
            lint(&club, &[state, more, &["--spoken"]].concat()).ends(0);
        }
    }
}

#[test]
fn a_text_from_standard_input_is_held_beside_the_commits() {
    let (club, _) = club_of(&sound());
    let given = |text: &str| {
        let arguments = ["--name", BOAT, "--since", "HEAD", "--as-of", TODAY, "--format", "json"];
        let mut command = command(club.path(), &[&arguments[..], &["-"]].concat());
        command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::piped());
        let mut child = command.spawn().expect("a run");
        let mut stdin = child.stdin.take().expect("piped");
        stdin.write_all(text.as_bytes()).expect("taken");
        drop(stdin);
        let done = child.wait_with_output().expect("an end");
        let text = |bytes| String::from_utf8(bytes).expect("UTF-8");
        crate::run::Run { code: done.status.code(), out: text(done.stdout), err: text(done.stderr) }
    };
    assert_eq!(given(&with_chock("630")[BOAT]).ends(1).serious(), [format!("new {UNLIKE}")]);
    let changed = sound()[BOAT].replacen("chock-to-pin: 600", "chock-to-pin: 602", 1);
    let rule = "new fault changed-but-not-remeasured kittiwake/seat-1/chock-to-pin";
    assert_eq!(given(&changed).ends(1).serious(), [rule]);
    assert_eq!(given(&sound()[BOAT]).ends(0).found(), [""; 0]);
}

#[test]
fn outside_of_a_repository_there_is_no_other_state() {
    let (club, _) = club_of(&sound());
    std::fs::remove_dir_all(club.path().join(".git")).expect("removed");
    lint(&club, &[]).ends(0);
    for words in [&["--at", "HEAD"][..], &["--since", "HEAD"], &["--staged"]] {
        let run = lint(&club, words).ends(3);
        assert!(run.out.is_empty() && !run.err.is_empty(), "{words:?}");
    }
}
