//! Times `history` and `blame` of one boat against git's own log and line blame of her file, in one
//! run, where a git program is there.
//!
//! `cargo bench --bench through_time -- 200000` for so many commits; the default is 2000.

#![allow(clippy::print_stdout, reason = "a bench says what it measured")]

#[path = "years.rs"]
mod years;

use std::error::Error;
use std::path::Path;
use std::process::Command;
use std::process::Stdio;
use std::time::Duration;
use std::time::Instant;

use tholebook::history;
use tholebook::history::Asked;
use tholebook::history::Walked;
use tholebook::store::Repository;

/// How often each side is run; the fastest run counts.
const ROUNDS: usize = 3;

/// The boat that is asked for, and her file.
const BOAT: &str = "boat-7";
const FILE: &str = "boats/boat-7.yaml";

fn main() -> Result<(), Box<dyn Error>> {
    let commits = std::env::args().find_map(|word| word.parse().ok()).unwrap_or(2000);
    let folder = tempfile::tempdir()?;
    let changes = years::write(folder.path(), commits)?;
    println!("{commits} commits of 50 boats, {changes} of them of one; best of {ROUNDS}");
    let own_history = best(|| timeline(folder.path(), "boat-7/seat-2/rowlock/gap"))?;
    let own_boat = best(|| timeline(folder.path(), BOAT))?;
    let own_blame = best(|| blame(folder.path()))?;
    told("history of one value", own_history);
    told("history of the boat", own_boat);
    told("blame of the boat", own_blame);
    let program = |command, name| best(|| whole_program(folder.path(), command, name));
    let whole = program("history", "boat-7/seat-2/rowlock/gap")?;
    told("history, the whole program", whole);
    told("blame, the whole program", program("blame", BOAT)?);
    let log = || git(folder.path(), &["log", "--format=%H", "--", FILE]);
    let lines = || git(folder.path(), &["blame", "HEAD", "--", FILE]);
    if log().is_err() {
        println!("there is no git program here to compare with");
        return Ok(());
    }
    let (log, lines) = (best(log)?, best(lines)?);
    println!("ratio, program to git log      {:>8.2}", whole.as_secs_f64() / log.as_secs_f64());
    told("git log of her file", log);
    told("git blame of her file", lines);
    println!(
        "ratio, history to git log      {:>8.2}",
        own_history.as_secs_f64() / log.as_secs_f64()
    );
    println!("ratio, boat to git log         {:>8.2}", own_boat.as_secs_f64() / log.as_secs_f64());
    println!(
        "ratio, blame to git blame      {:>8.2}",
        own_blame.as_secs_f64() / lines.as_secs_f64()
    );
    Ok(())
}

fn told(what: &str, time: Duration) {
    println!("{what:<30} {:>8.3} s", time.as_secs_f64());
}

fn best(job: impl Fn() -> Result<usize, Box<dyn Error>>) -> Result<Duration, Box<dyn Error>> {
    let mut best = Duration::MAX;
    for _ in 0..ROUNDS {
        let start = Instant::now();
        let done = job()?;
        best = best.min(start.elapsed());
        assert!(done > 0, "nothing was done");
    }
    Ok(best)
}

fn walked(root: &Path) -> Result<Walked, Box<dyn Error>> {
    let repository = Repository::around(root)?;
    let head = repository.head()?;
    Ok(Walked::back_from(&repository, head, None, Some(BOAT))?)
}

fn timeline(root: &Path, whole: &str) -> Result<usize, Box<dyn Error>> {
    let walked = walked(root)?;
    let key = walked.keys().into_iter().next().ok_or("no boat")?;
    let past = walked.past(&key);
    Ok(history::timeline(&past, Asked { whole, all_touches: false }, &|_| false).len())
}

fn blame(root: &Path) -> Result<usize, Box<dyn Error>> {
    let walked = walked(root)?;
    let key = walked.keys().into_iter().next().ok_or("no boat")?;
    Ok(history::blame(&walked.past(&key)).len())
}

/// Runs the program itself: with the verdict of every row.
fn whole_program(root: &Path, command: &str, name: &str) -> Result<usize, Box<dyn Error>> {
    let mut program = Command::new(env!("CARGO_BIN_EXE_tholebook"));
    let done = program.args([command, name, "--at", "HEAD", "--book"]).arg(root).output()?;
    if done.status.success() { Ok(done.stdout.len()) } else { Err("the program failed".into()) }
}

fn git(root: &Path, arguments: &[&str]) -> Result<usize, Box<dyn Error>> {
    let mut git = Command::new("git");
    let done = git.arg("-C").arg(root).args(arguments).stderr(Stdio::null()).output()?;
    if done.status.success() { Ok(done.stdout.len()) } else { Err("git failed".into()) }
}
