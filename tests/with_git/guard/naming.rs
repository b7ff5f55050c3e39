//! What the gates and their reports claim is what was looked at.

use std::fs;

use crate::git::done;
use crate::guard::club::BOAT;
use crate::guard::club::Club;
use crate::guard::club::other_hook;
use crate::guard::club::program;
use crate::guard::club::said;

#[test]
#[ignore = "needs git"]
fn a_push_of_which_nothing_was_checked_says_so() {
    let club = Club::new();
    club.server();
    let pushed = club.passes(&["push", "origin", "main"]);
    assert!(pushed.contains("nothing is against this push"), "{pushed}");
    club.unfit();
    club.committed("a crack");
    let tag = club.passes(&["push", "origin", "HEAD:refs/tags/bad"]);
    assert!(tag.contains("nothing of this push was checked"), "{tag}");
    club.stopped(
        &["push", "origin", "HEAD:refs/heads/refs/heads/main"],
        "refs/heads/refs/heads/main:",
    );
}

#[test]
#[ignore = "needs git"]
fn a_push_that_git_names_nothing_of_is_not_called_checked() {
    let club = Club::new();
    let output = program(&club.folder, &["guard", "push", "--remote=origin"], "");
    assert!(said(&output).contains("nothing was checked"), "{}", said(&output));
}

#[test]
#[ignore = "needs git"]
fn a_hook_that_only_speaks_of_the_program_is_not_in_order() {
    for text in [
        "#!/bin/sh\n# once ran: tholebook guard commit\nexit 0\n",
        "#!/bin/sh\ntholebook guard commit || true\n",
    ] {
        let club = Club::new();
        other_hook(&club.folder.join(".git"), "pre-commit", text);
        let output = program(&club.folder, &["guard", "status"], "");
        let status = said(&output);
        let line = status.lines().find(|line| line.starts_with("pre-commit ")).expect("its line");
        assert!(line.contains("another program's hook | tholebook guard install"), "{line}");
    }
}

#[test]
#[ignore = "needs git"]
fn a_boat_that_must_not_go_afloat_can_be_recorded() {
    let club = Club::guarded();
    club.unfit();
    let refused = club.stopped(&["commit", "--all", "--message", "a crack"], "out-of-use");
    let first = refused.find("out-of-use").expect("how to record it");
    assert!(first < refused.find("--no-verify").expect("how to pass it by"), "{refused}");
    let file = club.folder.join(BOAT);
    let text = fs::read_to_string(&file).expect("the boat");
    let today = jiff::ZonedDateTime::now().date();
    let out = format!("out-of-use: {{since: {today}, by: Ines Marlow, because: cracked}}\n");
    fs::write(&file, format!("{text}{out}")).expect("the boat");
    club.passes(&["commit", "--all", "--message", "a crack"]);
}

#[test]
#[ignore = "needs git"]
fn a_wiring_that_something_overrules_is_not_called_well() {
    let club = Club::new();
    let run = |words: &[&str]| said(&program(&club.folder, words, ""));
    run(&["wire"]);
    assert!(run(&["checkup"]).contains("by value: git asks tholebook"), "{}", run(&["checkup"]));
    done(&club.folder, &["config", "merge.tholebook.driver", "true"]);
    assert!(run(&["checkup"]).contains("something else is set"), "{}", run(&["checkup"]));
    run(&["wire"]);
    fs::write(club.folder.join("boats/.gitattributes"), "*.yaml -merge\n").expect("a file");
    let check = program(&club.folder, &["wire", "--check"], "");
    assert_eq!(check.status.code(), Some(1), "{}", said(&check));
    assert!(said(&check).contains("overruled: merge of boats/kittiwake.yaml"), "{}", said(&check));
    assert!(run(&["checkup"]).contains("merge of boats/kittiwake.yaml"), "{}", run(&["checkup"]));
    fs::write(club.folder.join(".git/info/attributes"), "*.yaml merge=union\n").expect("a file");
    assert!(run(&["checkup"]).contains("merge=union holds"), "{}", run(&["checkup"]));
}
