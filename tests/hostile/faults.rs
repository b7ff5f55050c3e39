//! Faults from outside: a reader that goes, a disk without room, files that are no files, that vanish
//! or are too many. Each is told plainly, and ends in time.

use std::fs;
use std::fs::File;
use std::io::Read;
use std::os::unix::fs::symlink;
use std::os::unix::net::UnixListener;
use std::path::Path;
use std::process::Child;
use std::process::Command;
use std::process::Stdio;
use std::sync::atomic::AtomicBool;
use std::sync::atomic::Ordering;
use std::thread;
use std::thread::JoinHandle;
use std::time::Duration;
use std::time::Instant;

use git2::Repository;
use tempfile::TempDir;

use crate::books;
use crate::books::BOAT;
use crate::commands;
use crate::trying::Tried;

/// No fault may make the program wait.
pub(crate) const PATIENCE: Duration = Duration::from_secs(20);

/// A committed book with a boat that may not go afloat: a gap too tight for any oar.
fn unsafe_book() -> TempDir {
    let folder = books::committed();
    let boat = folder.path().join(BOAT);
    let text = fs::read_to_string(&boat).expect("a text");
    fs::write(&boat, text.replacen("gap: 59", "gap: 52", 1)).expect("a file");
    books::commit(&Repository::open(folder.path()).expect("a repository"));
    let lint = run(folder.path(), "lint --format brief").out;
    assert!(lint.contains(" danger gap-too-tight "), "{lint}");
    folder
}

/// The program with the words of a line, which must not hold a blank; its pipes are ours to read.
pub(crate) fn program(folder: &Path, line: &str) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_tholebook"));
    command.args(line.split(' ')).current_dir(folder).env("COLUMNS", "80").stdin(Stdio::null());
    command.stdout(Stdio::piped()).stderr(Stdio::piped());
    command
}

/// Runs a line to its end.
#[track_caller]
pub(crate) fn run(folder: &Path, line: &str) -> Tried {
    ended(program(folder, line).spawn().expect("the program runs"), line, PATIENCE)
}

/// Waits until a program has ended, and asserts that it was no fault of its own.
#[track_caller]
pub(crate) fn ended(mut child: Child, line: &str, patience: Duration) -> Tried {
    let (out, err) = (child.stdout.take().map(said), child.stderr.take().map(said));
    let begun = Instant::now();
    let status = loop {
        if let Some(status) = child.try_wait().expect("a program") {
            break status;
        }
        if begun.elapsed() > patience {
            child.kill().expect("it is stopped");
            panic!("{line} does not end");
        }
        thread::sleep(Duration::from_millis(2));
    };
    let text = |said: Option<JoinHandle<String>>| {
        said.map(|said| said.join().expect("what was said")).unwrap_or_default()
    };
    let tried = Tried { code: status.code(), out: text(out), err: text(err) };
    let own = tried.err.contains("panicked") || tried.err.contains("a fault of tholebook");
    assert!(!own && tried.code.is_none_or(|code| code < 4), "{line}: {}", tried.err);
    tried
}

fn said(mut pipe: impl Read + Send + 'static) -> JoinHandle<String> {
    thread::spawn(move || {
        let mut said = String::new();
        pipe.read_to_string(&mut said).expect("UTF-8 only");
        said
    })
}

/// Runs a line whose reader takes so many bytes and goes.
#[track_caller]
fn read_in_part(folder: &Path, line: &str, bytes: u64) -> Tried {
    let mut child = program(folder, line).spawn().expect("the program runs");
    let mut first = Vec::new();
    let pipe = child.stdout.take().expect("a pipe");
    pipe.take(bytes).read_to_end(&mut first).expect("the first bytes");
    ended(child, line, PATIENCE)
}

/// Returns every line that only asks, and one that makes pages beside the book.
fn lines(beside: &Path) -> impl Iterator<Item = String> {
    let pages = format!("pages --out {}", beside.join("pages").display());
    commands::asked().map(ToOwned::to_owned).chain([pages])
}

/// All is as if the reader had read on: the same code, so that a gate stays shut before an unsafe
/// book, and no word about the pipe.
#[test]
fn a_reader_that_goes_changes_no_code_and_is_not_spoken_of() {
    let (folder, beside) = (unsafe_book(), tempfile::tempdir().expect("a folder"));
    let (mut shut, mut long) = (0, 0);
    for line in lines(beside.path()) {
        let whole = run(folder.path(), &line);
        for bytes in [0, 100] {
            let part = read_in_part(folder.path(), &line, bytes);
            assert_eq!(part.code, whole.code, "{line}, {bytes} bytes: {}", part.err);
            assert_eq!(part.err, whole.err, "{line}, {bytes} bytes");
        }
        if line.starts_with("lint") && !line.contains("never") {
            assert_ne!(whole.code, Some(0), "{line}: the book is unsafe");
            shut += 1;
        }
        long += usize::from(whole.out.len() > 100);
    }
    assert!(shut > 15 && long > 45, "{shut} gates, {long} with more than a little to tell");
}

#[test]
fn a_result_that_finds_no_room_is_told_as_such_and_nothing_counts_as_done() {
    let full = Path::new("/dev/full");
    if !full.exists() {
        return;
    }
    let (folder, beside) = (unsafe_book(), tempfile::tempdir().expect("a folder"));
    let mut refused = 0;
    for line in lines(beside.path()) {
        let whole = run(folder.path(), &line);
        let to = File::options().write(true).open(full).expect("the full device");
        let child = program(folder.path(), &line).stdout(to).spawn().expect("the program runs");
        let cut = ended(child, &line, PATIENCE);
        if whole.out.is_empty() {
            assert_eq!(cut.code, whole.code, "{line}: there was nothing to write");
            continue;
        }
        assert_eq!(cut.code, Some(3), "{line}: {}", cut.err);
        assert!(cut.err.contains("The result could not be written: "), "{line}: {}", cut.err);
        refused += 1;
    }
    assert!(refused > 50, "only {refused} had something to write");
}

/// Something in the place of a record: what it is, how it is made, the code, and what is said of it.
type Odd = (&'static str, fn(&Path), i32, &'static str);

const ODD: [Odd; 5] = [
    ("a pipe", |at| pipe(at), 3, "it is a pipe, a socket or a device, not a file"),
    ("a socket", |at| drop(UnixListener::bind(at).expect("a socket")), 3, "a socket or a device"),
    ("a link in a ring", |at| symlink("x.yaml", at).expect("a link"), 1, "link"),
    ("a link to nothing", |at| symlink("nowhere", at).expect("a link"), 1, "link"),
    ("a folder", |at| books::put(at, "y.yaml", "boat: y\nodd: 1\n"), 1, "boats/x.yaml/y.yaml"),
];

fn pipe(at: &Path) {
    assert!(Command::new("mkfifo").arg(at).status().expect("mkfifo").success());
}

/// What lies in a folder that is named like a record is read as any other.
#[test]
fn what_is_no_file_is_told_at_its_place_and_never_passed_over() {
    for (what, make, code, why) in ODD {
        let folder = books::committed();
        make(&folder.path().join("boats/x.yaml"));
        for line in ["lint", "lint --format brief", "lint --format json", "lint --format sarif"] {
            let run = run(folder.path(), line);
            let told = format!("{}{}", run.out, run.err);
            assert_eq!(run.code, Some(code), "{what}, {line}: {told}");
            assert!(told.contains(why) && told.contains("boats/x.yaml"), "{what}, {line}: {told}");
            // What could not be read at all is no report of what was.
            assert!(code != 3 || !run.out.contains("checked 1 boat"), "{what}, {line}: {told}");
        }
        assert_ne!(run(folder.path(), "ready").code, Some(0), "{what}");
        for line in ["card kittiwake", "derive --write", "diff", "history kittiwake", "match"] {
            run(folder.path(), line);
        }
    }
}

/// Takes a boat's file away, puts it back, and writes it anew, until told to stop; returns how often.
fn swap(folder: &Path, stop: &AtomicBool) -> u32 {
    let (boat, aside) = (folder.join(BOAT), folder.join("boats/aside"));
    let text = fs::read(&boat).expect("a text");
    let mut times = 0;
    while !stop.load(Ordering::Relaxed) {
        fs::rename(&boat, &aside).expect("it goes aside");
        fs::rename(&aside, &boat).expect("it comes back");
        fs::remove_file(&boat).expect("it goes");
        fs::write(&boat, &text).expect("it is written anew");
        times += 1;
    }
    times
}

#[test]
fn a_record_that_comes_and_goes_is_read_or_told_as_gone() {
    let (folder, beside) = (books::committed(), tempfile::tempdir().expect("a folder"));
    let stop = AtomicBool::new(false);
    let pages = format!("pages --out {}", beside.path().join("pages").display());
    let times = thread::scope(|scope| {
        let swapping = scope.spawn(|| swap(folder.path(), &stop));
        let tried = std::panic::catch_unwind(|| {
            for line in ["lint", &pages, "diff"].iter().cycle().take(90) {
                let run = run(folder.path(), line);
                assert!(run.code.is_some_and(|code| code != 2), "{line}: {}", run.err);
                assert!(run.code != Some(3) || !run.err.is_empty(), "{line}: a silent 3");
            }
        });
        stop.store(true, Ordering::Relaxed);
        let times = swapping.join().expect("how often");
        tried.map(|()| times).unwrap_or_else(|fault| std::panic::resume_unwind(fault))
    });
    assert!(times > 1000, "only {times} times");
}

/// Returns the most memory that a program had so far, in MiB, where the system tells it.
fn peak(id: u32) -> Option<u64> {
    let status = fs::read_to_string(format!("/proc/{id}/status")).ok()?;
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"))?;
    Some(line.trim().trim_end_matches(" kB").parse::<u64>().ok()? / 1024)
}

#[test]
#[ignore = "100,000 files"]
#[allow(clippy::print_stdout, reason = "the figures are there to be read with --nocapture")]
fn a_hundred_thousand_files_are_linted_in_bounded_time_and_memory() {
    let folder = books::committed();
    // Records that say nothing but their name bring five findings each; those without, one.
    for (key, findings, most_seconds, most_mib) in [("id", 1, 60, 600), ("boat", 5, 90, 1600)] {
        for number in 0..100_000 {
            books::put(
                folder.path(),
                format!("boats/b{number}.yaml"),
                format!("{key}: b{number}\n"),
            );
        }
        let begun = Instant::now();
        let child = program(folder.path(), "lint --format brief").spawn().expect("it runs");
        let id = child.id();
        let watching = thread::spawn(move || {
            let mut most = None;
            while let Some(now) = peak(id) {
                most = Some(now);
                thread::sleep(Duration::from_millis(20));
            }
            most
        });
        let run = ended(child, "lint", Duration::from_secs(most_seconds));
        let (took, most) = (begun.elapsed(), watching.join().expect("what was seen"));
        println!("100,000 files of `{key}: bN`: {took:.1?}, at most {most:?} MiB");
        let lines = run.out.lines().filter(|line| line.starts_with("boats/b")).count();
        assert_eq!((run.code, lines), (Some(1), findings * 100_000), "{}", run.err);
        assert!(most.is_none_or(|most| most < most_mib), "{most:?} MiB");
    }
}
