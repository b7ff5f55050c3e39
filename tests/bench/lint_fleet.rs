//! Times the whole lint of a fleet against `serde_yaml` merely reading the same files, on one thread and
//! on as many as the lint has, in one run.
//!
//! `cargo bench --bench lint_fleet -- 100 10000` for a hundred boats, then ten thousand; the default is
//! 1000. Smaller fleets go first: the most memory is that of all that came before.

#![allow(clippy::print_stdout, reason = "a bench says what it measured")]

mod fleet;

use std::cell::RefCell;
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

/// Both sides run with the allocator that the program runs with.
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

/// How often each side is run; the fastest run counts.
const ROUNDS: usize = 3;

fn main() -> Result<(), Box<dyn Error>> {
    let asked: Vec<usize> = std::env::args().filter_map(|word| word.parse().ok()).collect();
    let fleets = if asked.is_empty() { vec![1000] } else { asked };
    fleets.into_iter().try_for_each(one_fleet)
}

fn one_fleet(boats: usize) -> Result<(), Box<dyn Error>> {
    let folder = tempfile::tempdir()?;
    let bytes = fleet::write(folder.path(), boats)?;
    let megabytes = bytes as f64 / 1e6;
    println!("{boats} boats and as many oar sets, {megabytes:.1} MB, best of {ROUNDS}");
    let alone = rayon::ThreadPoolBuilder::new().num_threads(1).build()?;
    let steps = Steps::default();
    let mut lint = timed(|| whole_lint(folder.path(), &steps))?;
    let peak = peak_megabytes().map_or("unknown".to_owned(), |peak| format!("{peak:>8.1} MB"));
    println!("most memory so far, the lint's         {peak}");
    let [mut one, mut many] = [Duration::MAX; 2];
    for _ in 0..ROUNDS {
        lint = lint.min(timed(|| whole_lint(folder.path(), &steps))?);
        one = one.min(timed(|| alone.install(|| merely_read(folder.path())))?);
        many = many.min(timed(|| merely_read(folder.path()))?);
    }
    let ratio = |peer: Duration| lint.as_secs_f64() / peer.as_secs_f64();
    println!("whole lint, files to JSON              {:>8.3} s", lint.as_secs_f64());
    println!("  of the last one: {}", steps.borrow().join(", "));
    println!("serde_yaml, files to values, 1 thread  {:>8.3} s", one.as_secs_f64());
    println!("serde_yaml, files to values, threads   {:>8.3} s", many.as_secs_f64());
    println!("ratio, to one thread                   {:>8.2}", ratio(one));
    println!("ratio, to as many threads              {:>8.2}", ratio(many));
    Ok(())
}

/// Returns the most memory that this process had at once, as Linux counts it.
fn peak_megabytes() -> Option<f64> {
    let status = fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"))?;
    let kibibytes: f64 = line.trim().strip_suffix(" kB")?.parse().ok()?;
    Some(kibibytes * 1024.0 / 1e6)
}

fn timed(job: impl Fn() -> Result<usize, String>) -> Result<Duration, Box<dyn Error>> {
    let start = Instant::now();
    let done = job()?;
    assert!(done > 0, "nothing was done");
    Ok(start.elapsed())
}

/// What each step of a lint took, as people say it.
type Steps = RefCell<Vec<String>>;

/// Returns how many bytes the report holds.
fn whole_lint(root: &Path, steps: &Steps) -> Result<usize, String> {
    steps.take();
    let mut start = Instant::now();
    let mut done = |step: &str| {
        steps.borrow_mut().push(format!("{step} {:.3} s", start.elapsed().as_secs_f64()));
        start = Instant::now();
    };
    let store = store::open_folder(root).map_err(|error| error.to_string())?;
    done("files");
    let (book, faults) = reading::read(&store.name, store.files);
    done("reading");
    let as_of = Date::read("2026-11-01").map_err(|error| error.to_string())?;
    let mut checked = rules::check(&book, &faults, Check { as_of });
    checked.waive(&book, as_of);
    done("rules");
    let report = Report { book: &book, checked: &checked, as_of, only: &[], earlier: None };
    let bytes = reports::json(&report).len();
    done("report");
    drop((checked, book, faults));
    done("letting go");
    Ok(bytes)
}

/// Returns how many files were read, on the threads of the pool it is called in.
fn merely_read(root: &Path) -> Result<usize, String> {
    let mut files = Vec::new();
    for folder in ["boats", "oars"] {
        for entry in fs::read_dir(root.join(folder)).map_err(|error| error.to_string())? {
            files.push(entry.map_err(|error| error.to_string())?.path());
        }
    }
    let read = |path: &std::path::PathBuf| {
        let text = fs::read_to_string(path).map_err(|error| error.to_string())?;
        serde_yaml::from_str::<serde_yaml::Value>(&text).map_err(|error| error.to_string())
    };
    let values: Vec<_> = files.par_iter().map(read).collect::<Result<_, _>>()?;
    Ok(values.len())
}
