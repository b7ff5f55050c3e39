//! The gate of a server: a bare repository whose `pre-receive` is `guard receive`.

use std::fs;
use std::path::Path;
use std::path::PathBuf;

use crate::git::done;
use crate::git::run;
use crate::git::write;
use crate::guard::club::BOAT;
use crate::guard::club::Club;
use crate::guard::club::edit;
use crate::guard::club::program;
use crate::guard::club::said;

/// A clone without hooks, and a server with a gate that has its book.
fn club() -> (Club, PathBuf) {
    let club = Club::new();
    let server = club.server();
    let said = club.passes(&["push", "origin", "main"]);
    assert!(said.contains("remote: tholebook: nothing is against this push"), "{said}");
    (club, server)
}

fn tip(server: &Path, branch: &str) -> String {
    done(server, &["rev-parse", "--verify", "--quiet", branch])
}

fn guard(club: &Club, branches: &str) {
    let text = fs::read_to_string(club.folder.join("club.yaml")).expect("a club");
    let (before, _) = text.split_once("protect:").expect("it protects");
    write(&club.folder, "club.yaml", &format!("{before}protect: {{branches: [{branches}]}}\n"));
    club.committed("what is guarded");
}

#[test]
#[ignore = "needs git"]
fn a_sound_push_is_taken_and_an_unsafe_one_is_not() {
    let (club, server) = club();
    club.remark("a new crew");
    club.committed("the crew");
    club.passes(&["push", "origin", "main"]);
    let before = tip(&server, "main");
    club.unfit();
    club.committed("unfit");
    let said = club.stopped(&["push", "origin", "main"], "remote: main: refused");
    assert!(
        said.contains("walk-round") && said.contains("nothing of this push was taken"),
        "{said}"
    );
    assert_eq!(tip(&server, "main"), before);
}

#[test]
#[ignore = "needs git"]
fn what_is_sent_back_is_plain_and_in_short_lines() {
    let (club, _) = club();
    let hostile = "name: Kittiwake";
    let to = format!("name: \"B\u{f6}e \\u001b[2J\\u202e{}\"", "x".repeat(900));
    edit(&club.folder, BOAT, "", hostile, &to);
    club.unfit();
    club.committed("unfit");
    let said = club.stopped(&["push", "origin", "main"], "walk-round");
    assert!(said.contains("B\\u{f6}e") && said.contains("\\u{1b}[2J\\u{202e}"), "{said}");
    for line in said.lines().filter_map(|line| line.strip_prefix("remote: ")) {
        // Git blanks out the rest of a line in its own way.
        let line = line.split("\u{1b}[K").next().unwrap_or_default().trim_end();
        assert!(line.is_ascii() && line.len() <= 163 && !line.contains('\u{1b}'), "{line:?}");
    }
}

#[test]
#[ignore = "needs git"]
fn a_new_branch_is_judged_by_what_it_brings_to_the_servers_own() {
    let (club, server) = club();
    edit(&club.folder, BOAT, "seat: 2", "chock-to-pin: 600", "chock-to-pin: 640");
    club.committed("chocks unlike");
    club.stopped(&["push", "origin", "main:refs/heads/trial"], "chocks-unlike");
    // Whoever keeps the server may let it in.
    let hook = server.join("hooks/pre-receive");
    fs::rename(&hook, server.join("aside")).expect("moved");
    club.passes(&["push", "--quiet", "origin", "main"]);
    fs::rename(server.join("aside"), &hook).expect("moved");
    club.remark("a new crew");
    club.committed("the crew");
    let said = club.passes(&["push", "origin", "main:refs/heads/trial"]);
    assert!(said.contains("0 new"), "{said}");
}

#[test]
#[ignore = "needs git"]
fn in_a_new_repository_every_finding_counts() {
    let club = Club::new();
    let server = club.server();
    edit(&club.folder, BOAT, "seat: 2", "chock-to-pin: 600", "chock-to-pin: 640");
    club.committed("chocks unlike");
    let said = club.stopped(&["push", "origin", "main"], "chocks-unlike");
    assert!(said.contains("every finding counts"), "{said}");
    assert!(!run(&server, &["rev-parse", "--verify", "--quiet", "main"]).status.success());
}

#[test]
#[ignore = "needs git"]
fn the_servers_own_branch_is_neither_deleted_nor_replaced_by_a_push() {
    let (club, server) = club();
    let before = tip(&server, "main");
    done(&server, &["config", "receive.denyDeleteCurrent", "ignore"]);
    club.stopped(&["push", "origin", "--delete", "main"], "is not deleted by a push");
    done(&club.folder, &["commit", "--quiet", "--amend", "--message", "another book"]);
    club.stopped(&["push", "--force", "origin", "main"], "would replace commits");
    assert_eq!(tip(&server, "main"), before);
}

#[test]
#[ignore = "needs git"]
fn another_branch_may_be_replaced_by_what_is_sound_and_deleted() {
    let (club, server) = club();
    club.remark("one");
    club.committed("one");
    club.passes(&["push", "origin", "main:refs/heads/trial"]);
    done(&club.folder, &["commit", "--quiet", "--amend", "--message", "another"]);
    club.passes(&["push", "--force", "origin", "main:refs/heads/trial"]);
    assert_eq!(tip(&server, "trial"), done(&club.folder, &["rev-parse", "main"]));
    club.unfit();
    done(&club.folder, &["commit", "--quiet", "--all", "--amend", "--message", "unfit"]);
    club.stopped(&["push", "--force", "origin", "main:refs/heads/trial"], "walk-round");
    club.passes(&["push", "origin", "--delete", "trial"]);
    assert!(!run(&server, &["rev-parse", "--verify", "--quiet", "trial"]).status.success());
}

#[test]
#[ignore = "needs git"]
fn tags_mark_what_is_there_and_of_two_branches_the_worse_decides() {
    let (club, server) = club();
    done(&club.folder, &["branch", "sound"]);
    club.unfit();
    club.committed("unfit");
    club.passes(&["tag", "--annotate", "--message=t", "day-one"]);
    club.passes(&["tag", "day-two"]);
    let said = club.passes(&["push", "origin", "day-one", "day-two"]);
    assert!(said.contains("tags/day-one: no branch: not checked"), "{said}");
    let said = club.stopped(&["push", "origin", "sound", "main:refs/heads/trial"], "walk-round");
    assert!(said.contains("sound: may be taken") && said.contains("trial: refused"), "{said}");
    assert!(!run(&server, &["rev-parse", "--verify", "--quiet", "sound"]).status.success());
    club.passes(&["push", "origin", "--delete", "day-one", "day-two"]);
}

#[test]
#[ignore = "needs git"]
fn a_push_does_not_free_itself_nor_another_branch() {
    let (club, _) = club();
    guard(&club, "main, race");
    club.passes(&["push", "--quiet", "origin", "main", "main:refs/heads/race"]);
    // What club.yaml does not name is free.
    done(&club.folder, &["switch", "--quiet", "--create", "trial"]);
    club.unfit();
    club.committed("unfit");
    let said = club.passes(&["push", "origin", "trial"]);
    assert!(said.contains("trial: not guarded"), "{said}");
    // Naming another branch in the same push changes nothing, be it on the free branch or here.
    guard(&club, "nothing");
    club.passes(&["push", "--quiet", "origin", "trial"]);
    club.stopped(&["push", "origin", "trial:refs/heads/race"], "walk-round");
    club.stopped(&["push", "origin", "trial:refs/heads/main"], "walk-round");
    club.stopped(&["push", "origin", "trial:refs/heads/main", "trial"], "walk-round");
    // A sound list without the branch is for the club to decide; the server's own stays guarded.
    done(&club.folder, &["switch", "--quiet", "main"]);
    guard(&club, "elsewhere");
    club.passes(&["push", "--quiet", "origin", "main"]);
    club.unfit();
    club.committed("unfit");
    club.stopped(&["push", "origin", "main"], "walk-round");
    // The branch's own list guards it still.
    club.stopped(&["push", "origin", "main:refs/heads/race"], "walk-round");
}

#[test]
#[ignore = "needs git"]
fn a_list_that_cannot_be_read_frees_no_branch_and_can_be_mended() {
    let (club, server) = club();
    guard(&club, "main");
    let sound = fs::read_to_string(club.folder.join("club.yaml")).expect("a club");
    write(&club.folder, "club.yaml", &sound.replace("[main]", "[main"));
    club.committed("slipped");
    club.stopped(&["push", "origin", "main"], "club.yaml");
    let hook = server.join("hooks/pre-receive");
    fs::rename(&hook, server.join("aside")).expect("moved");
    club.passes(&["push", "--quiet", "origin", "main"]);
    fs::rename(server.join("aside"), &hook).expect("moved");
    write(&club.folder, "club.yaml", &sound);
    club.unfit();
    club.committed("mended, and unfit");
    club.stopped(&["push", "origin", "main:refs/heads/trial"], "walk-round");
    edit(&club.folder, BOAT, "walk-round", "hull: unfit", "hull: ok");
    club.committed("fit");
    club.passes(&["push", "origin", "main"]);
}

#[test]
#[ignore = "needs git"]
fn limits_are_held_where_the_server_says_so() {
    let (club, server) = club();
    edit(&club.folder, BOAT, "seat: 2", "chock-to-pin: 600", "chock-to-pin: 640");
    edit(&club.folder, BOAT, "rigged", "date: 2026-10-17", "date: 2026-10-24");
    club.committed("chocks unlike");
    let text = fs::read_to_string(club.folder.join("club.yaml")).expect("a club");
    let looser = "limits:\n  surfboat:\n    chocks: {most: 60, source: nobody}\n";
    write(&club.folder, "club.yaml", &format!("{text}{looser}"));
    club.committed("a limit that suits");
    let hook = server.join("hooks/pre-receive");
    let text = fs::read_to_string(&hook).expect("a hook");
    fs::write(&hook, text.replace(" guard receive", " guard receive --hold-limits"))
        .expect("a hook");
    let said = club.stopped(&["push", "origin", "main"], "limit-loosened");
    assert!(said.contains("chocks-unlike"), "{said}");
    fs::write(&hook, text).expect("a hook");
    let said = club.passes(&["push", "origin", "main"]);
    assert!(said.contains("limit loosened: "), "{said}");
}

#[test]
#[ignore = "needs git"]
fn a_branch_without_a_book_and_a_book_in_a_folder() {
    let club = Club::at("book");
    let server = club.server();
    club.passes(&["push", "--quiet", "origin", "main"]);
    edit(&club.folder.join("book"), BOAT, "walk-round", "hull: ok", "hull: unfit");
    club.committed("unfit");
    club.stopped(&["push", "origin", "main"], "walk-round");
    done(&club.folder, &["switch", "--quiet", "--orphan", "pages"]);
    write(&club.folder, "index.html", "");
    club.committed("pages");
    club.stopped(&["push", "origin", "pages"], "club.yaml");
    let said = said(&program(&server, &["guard", "install", "--book", "book"], ""));
    assert!(said.contains("written anew"), "{said}");
    club.stopped(&["push", "origin", "main"], "walk-round");
}

#[test]
#[ignore = "needs git"]
fn a_server_with_a_working_tree_has_a_gate_too() {
    let (club, _) = club();
    done(&club.yard.folder, &["clone", "--quiet", "club", "shore"]);
    let shore = club.yard.folder.join("shore");
    done(&shore, &["config", "receive.denyCurrentBranch", "updateInstead"]);
    let line = format!("#!/bin/sh\nexec '{}' guard receive\n", crate::guard::club::PROGRAM);
    crate::guard::club::other_hook(&shore.join(".git"), "pre-receive", &line);
    club.remark("a new crew");
    club.committed("the crew");
    club.passes(&["push", "../shore", "main"]);
    club.unfit();
    club.committed("unfit");
    club.stopped(&["push", "../shore", "main"], "walk-round");
}

#[test]
#[ignore = "needs git"]
fn what_cannot_be_read_is_refused_with_three() {
    let (club, server) = club();
    let main = tip(&server, "main");
    let nothing = "0".repeat(40);
    let absent = "1".repeat(40);
    for (line, because) in [
        (String::new(), "Git said nothing"),
        ("\n".to_owned(), "can't be read"),
        (format!("{main} refs/heads/main\n"), "can't be read"),
        (format!("{main} {absent} refs/heads/main\n"), "refused"),
        (format!("{absent} {main} refs/heads/main\n"), "refused"),
        (format!("{nothing} {absent} refs/tags/x\n"), "refused"),
        (format!("{main} {main} refs/heads/main\nand then some\n"), "can't be read"),
    ] {
        let output = program(&server, &["guard", "receive"], &line);
        let said = said(&output);
        assert_eq!(output.status.code(), Some(3), "{line:?}: {said}");
        assert!(said.contains(because), "{line:?}: {said}");
    }
    let elsewhere = program(
        &club.yard.folder,
        &["guard", "receive"],
        &format!("{main} {main} refs/heads/main\n"),
    );
    assert_eq!(elsewhere.status.code(), Some(3), "{}", said(&elsewhere));
}

#[test]
#[ignore = "needs git"]
fn a_server_that_lost_a_text_of_the_state_before_refuses() {
    let (club, server) = club();
    let blob = done(&server, &["rev-parse", &format!("main:{BOAT}")]);
    fs::remove_file(server.join("objects").join(&blob[..2]).join(&blob[2..]))
        .expect("it was there");
    club.remark("a new crew");
    club.committed("the crew");
    club.stopped(&["push", "origin", "main"], "does not hold");
}

#[test]
#[ignore = "needs git"]
fn where_the_servers_own_branch_is_not_the_clubs_every_branch_is_guarded() {
    let (club, server) = club();
    guard(&club, "main");
    club.passes(&["push", "--quiet", "origin", "main"]);
    done(&server, &["symbolic-ref", "HEAD", "refs/heads/master"]);
    guard(&club, "nothing");
    club.unfit();
    club.committed("unfit");
    let said = club.stopped(&["push", "origin", "main:refs/heads/trial"], "walk-round");
    assert!(said.contains("git symbolic-ref HEAD"), "{said}");
    club.stopped(&["push", "origin", "main"], "walk-round");
    club.stopped(&["push", "origin", "--delete", "main"], "is not deleted by a push");
}

#[test]
#[ignore = "needs git"]
fn another_name_for_a_guarded_branch_is_guarded() {
    let (club, server) = club();
    guard(&club, "main");
    club.passes(&["push", "--quiet", "origin", "main"]);
    done(&server, &["symbolic-ref", "refs/heads/also", "refs/heads/main"]);
    club.unfit();
    club.committed("unfit");
    club.stopped(&["push", "origin", "main:refs/heads/also"], "walk-round");
}

#[test]
#[ignore = "needs git"]
fn several_books_on_a_server_are_each_guarded_once_they_are_named() {
    let club = Club::at("tarrow");
    crate::guard::club::book(&club.folder.join("sand bay"));
    club.committed("two books");
    let server = club.server();
    club.stopped(&["push", "origin", "main"], "guard install --book DIR");
    let words = ["guard", "install", "--book", "tarrow", "--book", "sand bay"];
    let output = program(&server, &words, "");
    assert!(output.status.success(), "{}", said(&output));
    club.passes(&["push", "origin", "main"]);
    edit(&club.folder.join("sand bay"), BOAT, "walk-round", "hull: ok", "hull: unfit");
    club.committed("unfit");
    let said = club.stopped(&["push", "origin", "main"], "walk-round");
    assert!(said.contains("The book tarrow:") && said.contains("main: may be taken"), "{said}");
}

#[test]
#[ignore = "needs git"]
fn without_the_program_nothing_is_taken() {
    let (club, server) = club();
    let hook = server.join("hooks/pre-receive");
    let text = fs::read_to_string(&hook).expect("a hook");
    let gone =
        text.replace(&format!("program='{}'", crate::guard::club::PROGRAM), "program='/gone'");
    assert_ne!(gone, text);
    fs::write(&hook, gone).expect("a hook");
    club.remark("a new crew");
    club.committed("the crew");
    club.stopped(&["push", "origin", "main"], "nothing is taken");
}
