//! A program that is stopped by a signal at any moment: what it wrote is whole, or not there, and the
//! next run brings all.

use std::collections::BTreeMap;
use std::fs;
use std::io::Write as _;
use std::path::Path;
use std::process::Child;
use std::process::Command;
use std::process::Stdio;
use std::thread;
use std::time::Duration;
use std::time::Instant;

use git2::Repository;
use tempfile::TempDir;

use crate::books;
use crate::books::BOAT;
use crate::chance::Chance;
use crate::faults::PATIENCE;
use crate::faults::ended;
use crate::faults::program;
use crate::faults::run;

const SIGNALS: [&str; 2] = ["INT", "TERM"];

/// Returns a moment before so long has passed.
fn moment(chance: &mut Chance, most: Duration) -> Duration {
    let most = u64::try_from(most.as_micros()).expect("a short time");
    Duration::from_micros(chance.below(most))
}

/// A shell that stands by to send a signal: by the time that one is started, all would be written.
struct Hand(Child);

impl Hand {
    fn at(child: &Child, signal: &str) -> Self {
        let line = format!("read go; kill -s {signal} {}", child.id());
        let mut shell = Command::new("sh");
        shell.args(["-c", &line]).stdin(Stdio::piped()).stderr(Stdio::null());
        Self(shell.spawn().expect("a shell"))
    }

    fn stop(mut self) {
        let mut pipe = self.0.stdin.take().expect("a pipe");
        pipe.write_all(b"\n").expect("it listens");
        self.0.wait().expect("it ends");
    }
}

/// Starts a line and stops it: after so long, or as soon as something is begun. Returns whether the
/// signal, and nothing else, ended it.
fn stop(
    folder: &Path,
    line: &str,
    signal: &str,
    moment: Option<Duration>,
    is_begun: impl Fn() -> bool,
) -> bool {
    let mut child = program(folder, line).spawn().expect("the program runs");
    let hand = Hand::at(&child, signal);
    match moment {
        Some(moment) => thread::sleep(moment),
        None => {
            while !is_begun() && child.try_wait().expect("a program").is_none() {
                thread::yield_now();
            }
        }
    }
    hand.stop();
    ended(child, line, PATIENCE).code.is_none()
}

/// Returns every file of a folder, by name.
fn all(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    let Ok(entries) = fs::read_dir(folder) else { return BTreeMap::new() };
    let file = |entry: std::io::Result<fs::DirEntry>| {
        let path = entry.expect("an entry").path();
        let name = path.file_name().expect("a name").to_string_lossy().into_owned();
        (name, fs::read(path).expect("a file"))
    };
    entries.map(file).collect()
}

fn names(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).expect("a folder");
    let name = |entry: fs::DirEntry| entry.file_name().to_string_lossy().into_owned();
    entries.map(|entry| name(entry.expect("an entry"))).collect()
}

/// A book with so many boats that their pages take a while.
fn fleet() -> TempDir {
    let folder = books::committed();
    for number in 0..40 {
        books::put(folder.path(), format!("boats/b{number}.yaml"), format!("boat: b{number}\n"));
    }
    folder
}

#[test]
fn pages_that_are_stopped_are_whole_and_the_next_run_brings_them_all() {
    let (book, beside) = (fleet(), tempfile::tempdir().expect("a folder"));
    let line = |out: &Path, day: &str| format!("pages --out {} --as-of {day}", out.display());
    let (first, second) = (beside.path().join("first"), beside.path().join("second"));
    run(book.path(), &line(&first, "2026-11-01"));
    let begun = Instant::now();
    run(book.path(), &line(&second, "2026-11-02"));
    let (long, old, new) = (begun.elapsed(), all(&first), all(&second));
    let (mut chance, mut stopped, mut midway) = (Chance(0x6f61_7273), 0, 0);
    for round in 0..32 {
        let out = beside.path().join(format!("out-{round}"));
        if round % 4 < 2 {
            run(book.path(), &line(&out, "2026-11-01"));
        }
        let anew = || {
            let page = fs::read(out.join("boat-b0.html"));
            page.is_ok_and(|page| Some(&page) == new.get("boat-b0.html"))
        };
        let moment = (round % 3 == 0).then(|| moment(&mut chance, long));
        let words = line(&out, "2026-11-02");
        stopped += u32::from(stop(book.path(), &words, SIGNALS[round % 2], moment, anew));
        let left = all(&out);
        for (name, page) in left.iter().filter(|(name, _)| name.ends_with(".html")) {
            let is_whole = [&old, &new].iter().any(|run| run.get(name) == Some(page));
            assert!(is_whole, "{name} is half-written in round {round}");
        }
        midway += u32::from(!left.is_empty() && left != old && left != new);
        assert_eq!(run(book.path(), &words).code, Some(0), "round {round}");
        assert!(all(&out) == new, "round {round}: {:?}", all(&out).keys());
    }
    assert!(stopped > 5 && midway > 0, "{stopped} were stopped, {midway} midway");
}

/// What a run leaves that is killed in the very moment of writing.
#[test]
fn beginnings_of_pages_are_cleared_away_by_the_next_run() {
    let (book, beside) = (fleet(), tempfile::tempdir().expect("a folder"));
    let out = beside.path().join("pages");
    let line = format!("pages --out {} --as-of 2026-11-01", out.display());
    fs::create_dir(&out).expect("a folder");
    fs::write(out.join(".tholebook-pages.begun"), "Written by tho").expect("a beginning");
    assert_eq!(run(book.path(), &line).code, Some(0), "the list was all that was begun");
    let whole = all(&out);
    for name in ["boat-b0", "boat-b1"] {
        fs::write(out.join(format!(".{name}.html.begun")), "<!doct").expect("a beginning");
    }
    assert_eq!(run(book.path(), &line).code, Some(0));
    assert!(all(&out) == whole, "beginnings of pages that did not change: {:?}", names(&out));
    fs::remove_file(book.path().join("boats/b1.yaml")).expect("a boat is sold");
    fs::write(out.join(".boat-b1.html.begun"), "<!doct").expect("a beginning");
    assert_eq!(run(book.path(), &line).code, Some(0));
    assert!(names(&out).iter().all(|name| !name.contains("b1.html")), "{:?}", names(&out));
    // Where there is more than that beginning, the folder is somebody else's.
    fs::rename(out.join(".tholebook-pages"), out.join(".tholebook-pages.begun")).expect("a list");
    let refused = run(book.path(), &line);
    assert_eq!(refused.code, Some(2), "{}", refused.err);
}

#[test]
fn a_record_whose_writing_is_stopped_is_the_old_one_or_the_new_one() {
    let folder = books::committed();
    let (boat, line) = (folder.path().join(BOAT), "derive --write");
    let text = fs::read_to_string(&boat).expect("a text");
    let old: String = text.split_inclusive('\n').filter(|at| !at.contains("worked-out:")).collect();
    fs::write(&boat, &old).expect("a file");
    let begun = Instant::now();
    assert_eq!(run(folder.path(), line).code, Some(0));
    let (long, new) = (begun.elapsed(), fs::read_to_string(&boat).expect("a text"));
    assert_ne!(old, new);
    let beside = || names(&folder.path().join("boats"));
    let (mut chance, mut stopped, mut left) = (Chance(0x7468_6f6c), 0, 0);
    for round in 0..60 {
        fs::write(&boat, &old).expect("a file");
        let moment = (round % 3 == 0).then(|| moment(&mut chance, long));
        let is_begun = || beside().len() > 1;
        stopped += u32::from(stop(folder.path(), line, SIGNALS[round % 2], moment, is_begun));
        let text = fs::read_to_string(&boat).expect("a text");
        assert!(text == old || text == new, "round {round}:\n{text}");
        // Not after every run: the next one is to find what several left.
        if text == old && round % 4 == 3 {
            left += u32::from(beside().len() > 1);
            assert_eq!(run(folder.path(), line).code, Some(0), "round {round}");
            assert_eq!(fs::read_to_string(&boat).expect("a text"), new, "round {round}");
            assert_eq!(beside(), ["kittiwake.yaml"], "round {round}: beginnings are cleared away");
        }
    }
    assert!(stopped > 10 && left > 0, "{stopped} were stopped, {left} beginnings cleared away");
}

/// Writes of others are left alone: their beginnings are held as long as they live.
#[test]
fn a_beginning_that_someone_holds_is_left_to_them() {
    let folder = books::committed();
    let boat = folder.path().join(BOAT);
    let text = fs::read_to_string(&boat).expect("a text");
    let old: String = text.split_inclusive('\n').filter(|at| !at.contains("worked-out:")).collect();
    let begun = folder.path().join("boats/.kittiwake.yaml.new0");
    let held = fs::File::create_new(&begun).expect("a beginning");
    held.lock().expect("it is held");
    fs::write(&boat, &old).expect("a file");
    assert_eq!(run(folder.path(), "derive --write").code, Some(0));
    assert!(begun.exists(), "it is held");
    drop(held);
    fs::write(&boat, &old).expect("a file");
    assert_eq!(run(folder.path(), "derive --write").code, Some(0));
    assert!(!begun.exists(), "nobody holds it");
}

/// What was begun stays beside as `club.new`: a folder of that name may be somebody's own, and is
/// never taken away.
#[test]
fn a_sample_that_is_stopped_is_whole_or_not_there() {
    let beside = tempfile::tempdir().expect("a folder");
    let club = beside.path().join("club");
    let line = "sample club";
    let begun = Instant::now();
    assert_eq!(run(beside.path(), line).code, Some(0));
    let long = begun.elapsed();
    let head =
        |at: &Path| Repository::open(at).and_then(|own| Ok(own.head()?.peel_to_commit()?.id()));
    let whole = head(&club).expect("a repository");
    let (mut chance, mut stopped) = (Chance(0x7361_6d70), 0);
    for round in 0..24 {
        fs::remove_dir_all(&club).expect("it goes");
        let moment = Some(moment(&mut chance, long));
        stopped += u32::from(stop(beside.path(), line, SIGNALS[round % 2], moment, || false));
        if !club.exists() {
            assert_eq!(run(beside.path(), line).code, Some(0), "round {round}");
        }
        let repository = Repository::open(&club).expect("a repository");
        assert_eq!(head(&club), Ok(whole), "round {round}");
        let changed = repository.statuses(None).expect("a working copy");
        assert!(changed.is_empty(), "round {round}: {} files are not whole", changed.len());
        assert!(names(beside.path()).iter().all(|name| name.starts_with("club")), "round {round}");
    }
    assert!(stopped > 5, "only {stopped} were stopped");
}
