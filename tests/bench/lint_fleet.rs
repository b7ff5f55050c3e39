//! Times the whole lint of a fleet against `serde_yaml` merely reading the same files, in one run.
//!
//! `cargo bench --bench lint_fleet -- 10000` for ten thousand boats; the default is 1000.

#![allow(clippy::print_stdout, reason = "a bench says what it measured")]

mod fleet;

use std::error::Error;
use std::fs;
use std::path::Path;
use std::time::Duration;
use std::time::Instant;

use rayon::prelude::*;
use tholebook::reading;
use tholebook::reports;
use tholebook::reports::Report;
use tholebook::rules;
use tholebook::rules::Check;
use tholebook::store;
use tholebook::units::Date;

/// How often each side is run; the fastest run counts.
const ROUNDS: usize = 3;

fn main() -> Result<(), Box<dyn Error>> {
    let boats = std::env::args().find_map(|word| word.parse().ok()).unwrap_or(1000);
    let folder = tempfile::tempdir()?;
    let bytes = fleet::write(folder.path(), boats)?;
    let megabytes = bytes as f64 / 1e6;
    println!("{boats} boats and as many oar sets, {megabytes:.1} MB, best of {ROUNDS}");
    let (mut lint, mut peer) = (Duration::MAX, Duration::MAX);
    for _ in 0..ROUNDS {
        lint = lint.min(timed(|| whole_lint(folder.path()))?);
        peer = peer.min(timed(|| merely_read(folder.path()))?);
    }
    println!("whole lint, files to JSON      {:>8.3} s", lint.as_secs_f64());
    println!("serde_yaml, files to values    {:>8.3} s", peer.as_secs_f64());
    println!("ratio                          {:>8.2}", lint.as_secs_f64() / peer.as_secs_f64());
    Ok(())
}

fn timed(job: impl Fn() -> Result<usize, Box<dyn Error>>) -> Result<Duration, Box<dyn Error>> {
    let start = Instant::now();
    let done = job()?;
    assert!(done > 0, "nothing was done");
    Ok(start.elapsed())
}

/// Returns how many bytes the report holds.
fn whole_lint(root: &Path) -> Result<usize, Box<dyn Error>> {
    let store = store::open_folder(root)?;
    let (book, faults) = reading::read(&store.name, store.files);
    let as_of = Date::read("2026-11-01")?;
    let mut checked = rules::check(&book, &faults, Check { as_of });
    checked.waive(&book, as_of);
    Ok(reports::json(&Report { book: &book, checked: &checked, as_of, only: &[], earlier: None })
        .len())
}

/// Returns how many files were read, on as many threads as the lint.
fn merely_read(root: &Path) -> Result<usize, Box<dyn Error>> {
    let mut files = Vec::new();
    for folder in ["boats", "oars"] {
        for entry in fs::read_dir(root.join(folder))? {
            files.push(entry?.path());
        }
    }
    let read = |path: &std::path::PathBuf| {
        let text = fs::read_to_string(path).map_err(|error| error.to_string())?;
        serde_yaml::from_str::<serde_yaml::Value>(&text).map_err(|error| error.to_string())
    };
    let values: Vec<_> = files.par_iter().map(read).collect::<Result<_, _>>()?;
    Ok(values.len())
}
