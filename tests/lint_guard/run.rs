//! Runs `lint` on a club's repository, and the changes that the tests make.

use std::process::Command;

use serde_json::Value;

use crate::club::BOAT;
use crate::club::Club;
use crate::club::Files;
use crate::club::edit;

pub(crate) struct Ran {
    pub(crate) code: i32,
    pub(crate) out: String,
    pub(crate) err: String,
}

/// Runs `lint` on the club's folder as of 2026-11-01.
pub(crate) fn lint(club: &Club, words: &[&str]) -> Ran {
    lint_of(club.path(), &[words, &["--as-of", "2026-11-01"]].concat())
}

/// Runs `lint` on a folder.
pub(crate) fn lint_of(folder: &std::path::Path, words: &[&str]) -> Ran {
    let mut program = Command::new(env!("CARGO_BIN_EXE_tholebook"));
    program.arg("lint").arg(folder).args(words).env("NO_COLOR", "1").env("COLUMNS", "80");
    let output = program.output().expect("the program runs");
    Ran {
        code: output.status.code().expect("an exit code"),
        out: String::from_utf8(output.stdout).expect("text"),
        err: String::from_utf8(output.stderr).expect("text"),
    }
}

impl Ran {
    pub(crate) fn json(&self) -> Value {
        serde_json::from_str(&self.out).unwrap_or_else(|error| panic!("{error}: {}", self.err))
    }

    /// Returns rule, name and state of every finding that is no note.
    pub(crate) fn found(&self) -> Vec<(String, String, Option<String>)> {
        let report = self.json();
        let findings = report["findings"].as_array().expect("findings").iter();
        let text = |value: &Value| value.as_str().map(str::to_owned);
        let graver = findings.filter(|finding| finding["level"] != "note");
        graver
            .map(|one| {
                let (rule, name) = (text(&one["rule"]), text(&one["name"]));
                (rule.expect("a rule"), name.expect("a name"), text(&one["state"]))
            })
            .collect()
    }
}

/// One finding, as [`Ran::found`] gives it.
pub(crate) fn one(rule: &str, name: &str, state: Option<&str>) -> (String, String, Option<String>) {
    (rule.to_owned(), name.to_owned(), state.map(str::to_owned))
}

/// Sets the gap of seat 2, with its worked-out clearance, on a new rigging day.
pub(crate) fn rigged_with_gap(files: &mut Files, gap: &str, clearance: &str, day: &str) {
    edit(files, BOAT, "seat: 2", "gap: 60", &format!("gap: {gap}"));
    edit(files, BOAT, "seat: 2", "clearance: 8.0", &format!("clearance: {clearance}"));
    rigged_on(files, day);
}

pub(crate) fn rigged_on(files: &mut Files, day: &str) {
    edit(files, BOAT, "rigged", "date: 2026-10-17", &format!("date: {day}"));
}
