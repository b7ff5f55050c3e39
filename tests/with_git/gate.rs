//! `lint` as a gate: in a hook that git calls, and of a merge that git makes.

use std::fs;
use std::path::Path;
use std::path::PathBuf;
use std::process::Command;

use crate::git::Yard;
use crate::git::done;
use crate::git::run;
use crate::git::write;

const BOAT: &str = "boats/kittiwake.yaml";
const OARS: &str = "oars/long-ash.yaml";
const GATE: &str = "lint --staged --since HEAD --as-of 2026-11-01 --format brief";

fn sound(path: &str) -> String {
    fs::read_to_string(Path::new("tests/data/sound-book").join(path)).expect("a text")
}

fn boat(from: &str, to: &str) -> String {
    assert!(sound(BOAT).contains(from), "{from}");
    sound(BOAT).replacen(from, to, 1)
}

fn unfit() -> String {
    boat("hull: ok", "hull: unfit")
}

/// A repository without a commit, whose commits the program has to let pass.
fn guarded(yard: &Yard) -> PathBuf {
    let folder = yard.folder.join("club");
    done(&yard.folder, &["init", "--quiet", "--initial-branch=main", "club"]);
    for path in ["club.yaml", BOAT, OARS, "crews/masters-a.yaml"] {
        write(&folder, path, &sound(path));
    }
    let program = env!("CARGO_BIN_EXE_tholebook");
    let hook = folder.join(".git/hooks/pre-commit");
    fs::create_dir_all(folder.join(".git/hooks")).expect("a folder");
    fs::write(&hook, format!("#!/bin/sh\nexec '{program}' {GATE} >&2\n")).expect("a file");
    #[cfg(unix)]
    fs::set_permissions(&hook, std::os::unix::fs::PermissionsExt::from_mode(0o755)).expect("ours");
    folder
}

/// Runs git, which the hook must stop; returns what was said.
#[track_caller]
fn stopped(folder: &Path, words: &[&str]) -> String {
    let output = run(folder, words);
    let said = String::from_utf8_lossy(&output.stderr).into_owned();
    assert!(!output.status.success(), "{said}");
    said
}

fn commits(folder: &Path) -> String {
    done(folder, &["rev-list", "--count", "HEAD"])
}

#[test]
#[ignore = "needs git"]
fn the_first_commit_and_those_after_pass_or_are_stopped_by_what_they_will_hold() {
    let yard = Yard::new();
    let folder = guarded(&yard);
    write(&folder, BOAT, &unfit());
    done(&folder, &["add", "--all"]);
    let said = stopped(&folder, &["commit", "--message", "unfit"]);
    assert!(said.contains("(new)") && said.contains("hull: unfit"), "{said}");
    write(&folder, BOAT, &sound(BOAT));
    stopped(&folder, &["commit", "--message", "what is staged is not the file"]);
    done(&folder, &["add", "--all"]);
    done(&folder, &["commit", "--message", "sound"]);
    write(&folder, BOAT, &unfit());
    done(&folder, &["commit", "--allow-empty", "--message", "the file is not staged"]);
    stopped(&folder, &["commit", "--all", "--message", "all"]);
    assert_eq!(commits(&folder), "2");
}

#[test]
#[ignore = "needs git"]
fn a_commit_of_one_file_is_checked_with_that_file_only() {
    let yard = Yard::new();
    let folder = guarded(&yard);
    done(&folder, &["add", "--all"]);
    done(&folder, &["commit", "--message", "sound"]);
    write(&folder, BOAT, &unfit());
    done(&folder, &["add", "--all"]);
    write(&folder, "crews/masters-a.yaml", &format!("{}# new\n", sound("crews/masters-a.yaml")));
    done(&folder, &["commit", "--message", "the crew", "crews/masters-a.yaml"]);
    stopped(&folder, &["commit", "--message", "the boat", BOAT]);
    stopped(&folder, &["-C", "boats", "commit", "--all", "--message", "from below"]);
    done(&folder, &["worktree", "add", "--quiet", "../linked"]);
    let linked = yard.folder.join("linked");
    write(&linked, BOAT, &unfit());
    stopped(&linked, &["commit", "--all", "--message", "in a linked worktree"]);
}

#[test]
#[ignore = "needs git"]
fn the_commit_that_ends_a_merge_is_held_beside_both_sides() {
    let yard = Yard::new();
    let folder = guarded(&yard);
    done(&folder, &["add", "--all"]);
    done(&folder, &["commit", "--message", "sound"]);
    done(&folder, &["checkout", "--quiet", "-b", "other"]);
    write(&folder, BOAT, &boat("chock-to-pin: 600", "chock-to-pin: 602"));
    let said = stopped(&folder, &["commit", "--all", "--message", "not read again"]);
    assert!(said.contains("changed-but-not-remeasured"), "{said}");
    done(&folder, &["commit", "--all", "--no-verify", "--message", "on another day"]);
    done(&folder, &["checkout", "--quiet", "main"]);
    done(&folder, &["commit", "--allow-empty", "--message", "meanwhile"]);
    done(&folder, &["merge", "--quiet", "--no-commit", "other"]);
    done(&folder, &["commit", "--message", "merged"]);
}

/// Runs `lint` in a folder; returns the exit code and what was found, a line each.
fn lint(folder: &Path, words: &[&str]) -> (Option<i32>, String) {
    let mut program = Command::new(env!("CARGO_BIN_EXE_tholebook"));
    program.arg("lint").args(["--as-of", "2026-11-01", "--format", "brief"]).args(words);
    let output = program.current_dir(folder).output().expect("the program runs");
    (output.status.code(), String::from_utf8_lossy(&output.stdout).into_owned())
}

#[test]
#[ignore = "needs git"]
fn a_merge_that_git_finds_clean_is_told_before_and_after() {
    let yard = Yard::new();
    let folder = guarded(&yard);
    done(&folder, &["add", "--all"]);
    done(&folder, &["commit", "--message", "sound"]);
    done(&folder, &["checkout", "--quiet", "-b", "spare"]);
    let (before, spare) = sound(OARS).split_once("oar: A5").map(own).expect("a spare");
    let oars = format!("{before}oar: A5{}", spare.replacen("widest: 52", "widest: 53.3", 1));
    write(&folder, OARS, &oars.replacen("date: 2026-10-03", "date: 2026-10-24", 1));
    done(&folder, &["commit", "--all", "--message", "a thicker spare"]);
    done(&folder, &["checkout", "--quiet", "main"]);
    let narrow = sound(BOAT)
        .replace("gap: 60", "gap: 58")
        .replace("clearance: 8.0", "clearance: 6.0")
        .replacen("date: 2026-10-17", "date: 2026-10-24", 1);
    write(&folder, BOAT, &narrow);
    done(&folder, &["commit", "--all", "--message", "narrower gaps"]);
    for side in ["HEAD", "spare"] {
        assert_eq!(lint(&folder, &["--at", side]).0, Some(0), "{side}");
    }
    let before = lint(&folder, &["--merge-with", "spare"]);
    assert!(before.0 == Some(1) && before.1.contains("gap-too-tight"), "{}", before.1);
    done(&folder, &["merge", "--quiet", "--no-edit", "spare"]);
    let after = lint(&folder, &[]);
    assert!(after.0 == Some(1) && after.1.contains("kittiwake/seat-2/spare/A5"), "{}", after.1);
}

fn own((before, after): (&str, &str)) -> (String, String) {
    (before.to_owned(), after.to_owned())
}

#[test]
#[ignore = "needs git"]
fn a_merge_in_memory_is_the_one_that_git_makes() {
    let yard = Yard::new();
    let folder = guarded(&yard);
    fs::remove_file(folder.join(".git/hooks/pre-commit")).expect("it was there");
    write(&folder, ".gitattributes", "*.yaml merge=union\n");
    done(&folder, &["add", "--all"]);
    done(&folder, &["commit", "--message", "sound"]);
    for (branch, gap) in [("one", "59"), ("two", "58")] {
        done(&folder, &["checkout", "--quiet", "-b", branch, "main"]);
        write(&folder, BOAT, &boat("gap: 60", &format!("gap: {gap}")));
        done(&folder, &["commit", "--all", "--message", branch]);
    }
    let program = |arguments: &[&str]| {
        let mut command = Command::new(env!("CARGO_BIN_EXE_tholebook"));
        command.arg("lint").args(arguments).args(["--as-of", "2026-11-01", "--format", "json"]);
        let output = command.current_dir(&folder).output().expect("a run");
        let json: serde_json::Value = serde_json::from_slice(&output.stdout).expect("JSON");
        let all = json["findings"].as_array().expect("a list").clone();
        all.into_iter().find(|one| one["rule"] == "key-twice").expect("a key twice")
    };
    let before = program(&["--merge-with", "one"]);
    done(&folder, &["merge", "--quiet", "--message", "merged", "one"]);
    let after = program(&[]);
    let places = |found: &serde_json::Value| {
        let spans = found["spans"].as_array().expect("places").iter();
        spans.map(|span| span["start"]["line"].clone()).collect::<Vec<_>>()
    };
    assert_eq!(places(&before), places(&after));
    assert_eq!(places(&after).len(), 2);
}
