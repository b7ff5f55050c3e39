//! The program as it is run in a club's folder.

use std::process::Command;

use git2::Oid;
use serde_json::Value;

use crate::club::Club;

pub(crate) struct Run {
    pub(crate) code: Option<i32>,
    pub(crate) out: String,
    pub(crate) err: String,
}

pub(crate) fn run(club: &Club, arguments: &[&str]) -> Run {
    run_in(club, "", arguments)
}

/// Runs a command on a book that lies in a folder of the club's repository.
pub(crate) fn run_in(club: &Club, folder: &str, arguments: &[&str]) -> Run {
    let done = Command::new(env!("CARGO_BIN_EXE_tholebook"))
        .args(arguments)
        .arg("--book")
        .arg(club.path().join(folder))
        .env_remove("COLUMNS")
        .env("NO_COLOR", "1")
        .output()
        .expect("a run");
    Run {
        code: done.status.code(),
        out: String::from_utf8(done.stdout).expect("UTF-8"),
        err: String::from_utf8(done.stderr).expect("UTF-8"),
    }
}

/// Runs a command and returns its JSON.
pub(crate) fn json(club: &Club, arguments: &[&str]) -> Value {
    json_in(club, "", arguments)
}

/// As [`json`], of a book that lies in a folder of the club's repository.
pub(crate) fn json_in(club: &Club, folder: &str, arguments: &[&str]) -> Value {
    let run = run_in(club, folder, &[arguments, &["--format", "json"]].concat());
    assert_eq!(run.code, Some(0), "{}{}", run.out, run.err);
    serde_json::from_str(&run.out).expect("JSON")
}

/// A row in short: kind, old, new, commit.
pub(crate) type Short = (String, Value, Value, Option<String>);

pub(crate) fn rows(club: &Club, arguments: &[&str]) -> Vec<Short> {
    let json = json(club, arguments);
    let rows = json["rows"].as_array().expect("rows");
    let short = |row: &Value| {
        (
            row["kind"].as_str().expect("a kind").to_owned(),
            row["old"].clone(),
            row["new"].clone(),
            row["commit"].as_str().map(ToOwned::to_owned),
        )
    };
    rows.iter().map(short).collect()
}

/// The names of the rows that a commit made.
pub(crate) fn names_by(all: &Value, commit: Oid) -> Vec<&str> {
    let rows = all["rows"].as_array().expect("rows").iter();
    let own = rows.filter(|row| row["commit"] == commit.to_string());
    own.map(|row| row["name"].as_str().expect("a name")).collect()
}

/// The row one expects.
pub(crate) fn row(kind: &str, old: impl Into<Value>, new: impl Into<Value>, commit: Oid) -> Short {
    (kind.to_owned(), old.into(), new.into(), Some(commit.to_string()))
}

pub(crate) const NONE: Value = Value::Null;

/// Returns the commit that set a value; none where it is not committed.
pub(crate) fn set_by(blame: &Value, name: &str) -> Option<String> {
    let values = blame["values"].as_array().expect("values");
    let own = values.iter().find(|value| value["name"] == name);
    let own = own.unwrap_or_else(|| panic!("{name} in {blame:#}"));
    own["commit"].as_str().map(ToOwned::to_owned)
}
