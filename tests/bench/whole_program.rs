//! Times whole commands as a shell starts them, each beside a peer, in turn.
//!
//! `cargo bench --bench whole_program`. The start-up stands beside `git --version`; the lint of a club
//! of 50 boats beside its start-up; the lint of 1,000 files beside `yamllint`
//! and `check-jsonschema` where they are on the PATH (Python programs); the pages of 500 boats beside
//! their lint. The fastest of several runs counts.

#![allow(clippy::print_stdout, reason = "a bench says what it measured")]

mod fleet;

use std::error::Error;
use std::fs;
use std::path::Path;
use std::path::PathBuf;
use std::process::Command;
use std::process::Stdio;
use std::time::Duration;
use std::time::Instant;

const PROGRAM: &str = env!("CARGO_BIN_EXE_tholebook");
const DAY: &str = "2026-11-01";

/// How often each side of a pair is run.
const ROUNDS: usize = 5;

fn main() -> Result<(), Box<dyn Error>> {
    let folder = tempfile::tempdir()?;
    let [club, fleet] = [50, 500].map(|boats| folder.path().join(boats.to_string()));
    fleet::write(&club, 50)?;
    fleet::write(&fleet, 500)?;
    let start = of_program(&["--version"]);
    pair("start-up", start, "git --version", of("git", &["--version"]));
    pair("lint, 50 boats", lint(&club), "start-up", of_program(&["--version"]));
    pair("lint, 500 boats and 500 oar sets", lint(&fleet), "yamllint", yamllint(&fleet));
    pair("lint, 500 boats and 500 oar sets", lint(&fleet), "check-jsonschema", by_schema(&fleet)?);
    let out = folder.path().join("pages");
    pair("pages, 500 boats", pages(&fleet, &out), "their lint", lint(&fleet));
    pair("pages again, nothing changed", pages(&fleet, &out), "their lint", lint(&fleet));
    Ok(())
}

/// Runs two commands in turn and prints the fastest of each, and their ratio.
fn pair(called: &str, mut own: Command, peer: &str, mut other: Command) {
    let [mut fastest, mut beside] = [Duration::MAX; 2];
    for _ in 0..ROUNDS {
        let [Some(one), Some(two)] = [timed(&mut own), timed(&mut other)] else {
            println!("{called:<34} beside {peer}: not here, not measured");
            return;
        };
        (fastest, beside) = (fastest.min(one), beside.min(two));
    }
    let ratio = fastest.as_secs_f64() / beside.as_secs_f64();
    let [one, two] = [fastest, beside].map(|time| time.as_secs_f64() * 1e3);
    println!("{called:<34} {one:>8.1} ms   {peer:<17} {two:>8.1} ms   ratio {ratio:.3}");
}

/// Returns how long a command took; nothing where it is not here.
fn timed(command: &mut Command) -> Option<Duration> {
    let start = Instant::now();
    let status = command.stdout(Stdio::null()).stderr(Stdio::null()).status().ok()?;
    assert!(status.code().is_some_and(|code| code <= 1), "{command:?}: {status}");
    Some(start.elapsed())
}

fn of(program: &str, words: &[&str]) -> Command {
    let mut command = Command::new(program);
    command.args(words);
    command
}

fn of_program(words: &[&str]) -> Command {
    of(PROGRAM, words)
}

fn lint(book: &Path) -> Command {
    let mut command = of_program(&["lint", "--as-of", DAY]);
    command.arg(book);
    command
}

fn pages(book: &Path, out: &Path) -> Command {
    let mut command = of_program(&["pages", "--as-of", DAY]);
    command.arg("--book").arg(book).arg("--out").arg(out);
    command
}

fn yamllint(book: &Path) -> Command {
    let mut command = of("yamllint", &["-d", "relaxed"]);
    command.arg(book);
    command
}

/// The boats of a book beside the schema of a boat.
fn by_schema(book: &Path) -> Result<Command, Box<dyn Error>> {
    let mut command = of("check-jsonschema", &["--schemafile", "schema/boat.schema.json"]);
    let boats: Result<Vec<PathBuf>, _> =
        fs::read_dir(book.join("boats"))?.map(|entry| entry.map(|own| own.path())).collect();
    command.args(boats?);
    Ok(command)
}
