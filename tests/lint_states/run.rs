//! `lint` run over a club's repository, what it found in short, and edits of her boat.

use std::fs;
use std::path::Path;
use std::process::Command;
use std::process::Stdio;

use git2::Oid;
use serde_json::Value;

use crate::club::BOAT;
use crate::club::Club;
use crate::club::Files;
use crate::club::edit;
use crate::club::sound;

pub(crate) const OARS: &str = "oars/long-ash.yaml";
pub(crate) const TODAY: &str = "2026-11-01";

/// The day of `TODAY`, counted from the new year.
pub(crate) const DAY: i64 = 304;

pub(crate) struct Run {
    pub(crate) code: Option<i32>,
    pub(crate) out: String,
    pub(crate) err: String,
}

impl Run {
    #[track_caller]
    pub(crate) fn ends(self, code: i32) -> Self {
        assert_eq!(self.code, Some(code), "out: {}\nerr: {}", self.out, self.err);
        self
    }

    #[track_caller]
    pub(crate) fn json(&self) -> Value {
        serde_json::from_str(&self.out)
            .unwrap_or_else(|_| panic!("no JSON: {}\n{}", self.out, self.err))
    }

    /// Every finding as `state level rule name`, in order.
    #[track_caller]
    pub(crate) fn found(&self) -> Vec<String> {
        let json = self.json();
        let findings = json["findings"].as_array().expect("a list");
        let word = |value: &Value| value.as_str().unwrap_or("-").to_owned();
        let short =
            |one: &Value| ["state", "level", "rule", "name"].map(|key| word(&one[key])).join(" ");
        findings.iter().map(short).collect()
    }

    /// The findings without the notes.
    #[track_caller]
    pub(crate) fn serious(&self) -> Vec<String> {
        let mut found = self.found();
        found.retain(|one| !one.contains(" note "));
        found
    }
}

pub(crate) fn command(folder: &Path, arguments: &[&str]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_tholebook"));
    for name in ["GIT_DIR", "GIT_INDEX_FILE", "GIT_WORK_TREE", "COLUMNS", "CLICOLOR_FORCE"] {
        command.env_remove(name);
    }
    command.arg("lint").args(arguments).env("NO_COLOR", "1");
    command.current_dir(folder).stdin(Stdio::null());
    command
}

/// Runs `lint` in a folder.
pub(crate) fn lint_in(folder: &Path, arguments: &[&str]) -> Run {
    of(&mut command(folder, arguments))
}

pub(crate) fn of(command: &mut Command) -> Run {
    let done = command.output().expect("a run");
    let text = |bytes| String::from_utf8(bytes).expect("UTF-8");
    Run { code: done.status.code(), out: text(done.stdout), err: text(done.stderr) }
}

/// Runs `lint` in the club's folder, on the day that these tests are on.
pub(crate) fn lint(club: &Club, arguments: &[&str]) -> Run {
    lint_in(club.path(), &[&["--as-of", TODAY], arguments].concat())
}

/// The same, with JSON.
pub(crate) fn told(club: &Club, arguments: &[&str]) -> Run {
    lint(club, &[&["--format", "json"], arguments].concat())
}

/// Puts files into the index, and only there.
pub(crate) fn stage(club: &Club, files: &Files) {
    let tree = club.git.find_tree(club.tree(files)).expect("a tree");
    let mut index = club.git.index().expect("an index");
    index.read_tree(&tree).expect("an index of it");
    index.write().expect("a written index");
}

/// Leaves the merge of HEAD with another commit in the index, unfinished where both sides changed
/// the same lines.
pub(crate) fn stage_merge(club: &Club, theirs: &str) {
    let commit =
        |rev| club.git.revparse_single(rev).expect(rev).peel_to_commit().expect("a commit");
    let theirs = commit(theirs);
    let mut merged = club.git.merge_commits(&commit("HEAD"), &theirs, None).expect("an index");
    assert!(merged.has_conflicts());
    let mut index = club.git.index().expect("an index");
    index.clear().expect("empty");
    for entry in merged.iter() {
        index.add(&entry).expect("an entry");
    }
    index.write().expect("written");
    merged.clear().expect("empty");
    let head = format!("{}\n", theirs.id());
    fs::write(club.git.path().join("MERGE_HEAD"), head).expect("written");
}

/// A club of one commit of some files, checked out.
/// A commit before, a commit after, which is checked out.
pub(crate) fn before_and_after(before: &Files, after: &Files) -> Club {
    let club = Club::new();
    let first = club.commit(DAY - 5, &[], before);
    let head = club.commit(DAY - 1, &[first], after);
    club.check_out(head, after);
    club
}

pub(crate) fn club_of(files: &Files) -> (Club, Oid) {
    let club = Club::new();
    let id = club.commit(DAY - 2, &[], files);
    club.check_out(id, files);
    stage(&club, files);
    (club, id)
}

/// Says that some values were read again on a day of October.
pub(crate) fn read_again(files: &mut Files, day: u8, values: &str) {
    let text = files.get_mut(BOAT).expect("a boat");
    if !text.contains("read-again:") {
        text.push_str("read-again:\n");
    }
    text.push_str(&format!(
        "  - {{date: 2026-10-{day}, by: Ines Marlow, checked-by: Tomas Reyne, values: [{values}]}}\n"
    ));
}

/// The sound book with a back chock of seat 2 elsewhere, read again: within 15 mm of the others it
/// is sound, else chocks-unlike.
pub(crate) fn with_chock(chock: &str) -> Files {
    let mut files = sound();
    edit(&mut files, BOAT, "seat: 2", "chock-to-pin: 600", &format!("chock-to-pin: {chock}"));
    read_again(&mut files, 28, "seat-2/chock-to-pin");
    files
}

/// The sound book with a hull that is unfit: a danger.
pub(crate) fn unfit() -> Files {
    let mut files = sound();
    edit(&mut files, BOAT, "walk-round", "hull: ok", "hull: unfit");
    read_again(&mut files, 28, "rigged/walk-round/hull");
    files
}

pub(crate) const UNFIT: &str = "danger walk-round kittiwake/rigged/walk-round/hull";
pub(crate) const UNLIKE: &str = "fault chocks-unlike kittiwake";

/// Empties the folder, but for its repository.
pub(crate) fn empty(club: &Club) {
    for entry in fs::read_dir(club.path()).expect("a folder").flatten() {
        if entry.file_name() != ".git" {
            let path = entry.path();
            if path.is_dir() { fs::remove_dir_all(path) } else { fs::remove_file(path) }
                .expect("removed");
        }
    }
}
