//! Writes that are cut off: by a killed program, by a full disk. No record is lost or half-written.

use std::fs;
use std::path::Path;
use std::path::PathBuf;
use std::process::Child;
use std::process::Command;
use std::process::Stdio;
use std::thread;
use std::time::Duration;
use std::time::Instant;

use crate::chance::Chance;
use crate::run::BOAT;
use crate::run::Club;
use crate::run::Run;

const WRITES: u32 = 500;
const WAIVERS: &str = "waivers.yaml";
const DERIVE: [&str; 2] = ["derive", "--write"];
const WAIVE: [&str; 11] = [
    "waive",
    "kittiwake/rigged/level/roll",
    "boat-not-level",
    "--because",
    "the trailer stands on sand",
    "--by",
    "Tomas Reyne",
    "--until",
    "2026-12-01",
    "--as-of",
    "2026-11-01",
];

/// A rolled boat without any worked-out value.
fn unfinished() -> Club {
    let club = Club::new().edit(BOAT, "roll: 0.1", "roll: 1.5");
    let text = club.text(BOAT);
    let kept = text.lines().filter(|line| !line.contains("worked-out:"));
    let text: String = kept.map(|line| format!("{line}\n")).collect();
    fs::write(club.path(BOAT), text).expect("a written file");
    club
}

/// The names in the folder of a file that begin with a dot.
fn beside(file: &Path) -> Vec<PathBuf> {
    let entries = fs::read_dir(file.parent().expect("a folder")).expect("a folder");
    let paths = entries.map(|entry| entry.expect("an entry").path());
    let is_dotted = |path: &PathBuf| {
        path.file_name().is_some_and(|name| name.to_string_lossy().starts_with('.'))
    };
    paths.filter(is_dotted).collect()
}

/// Waits until a file is begun beside this one, or the program has ended.
fn wait_for_a_beginning(child: &mut Child, file: &Path) {
    while beside(file).is_empty() && child.try_wait().expect("a program").is_none() {
        thread::yield_now();
    }
}

/// Starts a write and kills it: every other time as soon as it has begun a file, else at any moment.
/// Returns whether it was caught with a file begun.
fn killed(club: &Club, words: &[&str], file: &str, moment: Option<Duration>) -> bool {
    let mut command = club.command(words);
    let mut child = command.stdout(Stdio::null()).stderr(Stdio::null()).spawn().expect("a program");
    match moment {
        Some(moment) => thread::sleep(moment),
        None => wait_for_a_beginning(&mut child, &club.path(file)),
    }
    child.kill().expect("it is killed, or has ended");
    child.wait().expect("it ends");
    let left = beside(&club.path(file));
    left.iter().for_each(|path| fs::remove_file(path).expect("it goes"));
    !left.is_empty()
}

#[test]
#[ignore = "takes a minute; run by name before a change lands"]
fn five_hundred_killed_writes_leave_every_record_whole() {
    let club = unfinished();
    let old = club.text(BOAT);
    let begun = Instant::now();
    club.run(&DERIVE).ends(0);
    club.run(&WAIVE).ends(0);
    let long = u64::try_from(begun.elapsed().as_micros() / 2).expect("a short time");
    let (new, waivers) = (club.text(BOAT), club.text(WAIVERS));
    let (mut chance, mut caught, mut outcomes) = (Chance(0x7469_6465), 0, [0_u32; 2]);
    for round in 0..WRITES {
        fs::write(club.path(BOAT), &old).expect("a written file");
        let _ = fs::remove_file(club.path(WAIVERS));
        let by_chance = Duration::from_micros(chance.below(long + long / 4));
        let moment = (round % 2 == 0).then_some(by_chance);
        if round % 4 < 2 {
            caught += u32::from(killed(&club, &DERIVE, BOAT, moment));
            let text = club.text(BOAT);
            assert!(text == old || text == new, "round {round}:\n{text}");
            outcomes[usize::from(text == new)] += 1;
        } else {
            caught += u32::from(killed(&club, &WAIVE, WAIVERS, moment));
            assert_eq!(club.text(BOAT), old, "round {round}");
            let there = fs::read_to_string(club.path(WAIVERS)).ok();
            assert!(there.as_ref().is_none_or(|text| *text == waivers), "round {round}: {there:?}");
            outcomes[usize::from(there.is_some())] += 1;
        }
    }
    assert!(caught > 20, "only {caught} writes were caught at work, {outcomes:?}");
    assert!(outcomes.iter().all(|times| *times > 20), "{caught} caught, {outcomes:?}");
}

/// A small disk in memory, taken away at the end.
struct SmallDisk(tempfile::TempDir);

impl SmallDisk {
    fn new() -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        let words = ["-t", "tmpfs", "-o", "size=64k", "tmpfs"];
        let mounted = Command::new("mount").args(words).arg(folder.path()).status();
        assert!(mounted.expect("mount").success(), "only root can mount a disk");
        Self(folder)
    }

    fn path(&self, path: &str) -> PathBuf {
        self.0.path().join(path)
    }

    /// Fills the disk but for so many bytes.
    fn fill_but(&self, free: usize) {
        let filler = self.path("filler");
        let mut bytes = vec![b'x'; 64 * 1024];
        while fs::write(&filler, &bytes).is_err() {
            bytes.truncate(bytes.len() - 1024);
        }
        bytes.truncate(bytes.len().saturating_sub(free));
        fs::write(&filler, &bytes).expect("a smaller file");
    }

    fn run(&self, words: &[&str]) -> Run {
        let mut command = Command::new(env!("CARGO_BIN_EXE_tholebook"));
        Run::of(command.args(words).current_dir(self.0.path()).stdin(Stdio::null()))
    }
}

impl Drop for SmallDisk {
    fn drop(&mut self) {
        let _ = Command::new("umount").arg(self.0.path()).status();
    }
}

#[test]
#[ignore = "mounts a disk, as root only; run by name before a change lands"]
fn on_a_full_disk_every_record_stays_as_it_was_and_that_is_told() {
    let club = unfinished().edit(BOAT, "gap: 60", "gap: 60 MM");
    // Longer than a page, so that the disk can fill in the middle of it.
    let long = format!("{}{}", club.text(BOAT), "# laid up for the winter\n".repeat(200));
    fs::write(club.path(BOAT), long).expect("a written file");
    let disk = SmallDisk::new();
    for path in ["club.yaml", BOAT, "oars/long-ash.yaml", "crews/masters-a.yaml"] {
        fs::create_dir_all(disk.path(path).parent().expect("a folder")).expect("a folder");
        fs::copy(club.path(path), disk.path(path)).expect("a copy");
    }
    let (slipped, sound) = (club.text(BOAT), club.text(BOAT).replace("60 MM", "60"));
    let add = ["add", "boat", "gull", "--by", "Ines Marlow"];
    let cases: [(&[&str], &str, &str); 4] = [
        (&["mend", "--write"], BOAT, &slipped),
        (&DERIVE, BOAT, &sound),
        (&WAIVE, WAIVERS, &sound),
        (&add, "boats/gull.yaml", &sound),
    ];
    for free in [0, 4096] {
        for (words, file, boat) in cases {
            fs::write(disk.path(BOAT), boat).expect("room for the boat");
            disk.fill_but(if file == WAIVERS { 0 } else { free });
            let run = disk.run(words).ends(3);
            assert!(run.err.contains("the disk is full"), "{words:?}: {}", run.err);
            assert_eq!(fs::read_to_string(disk.path(BOAT)).expect("a boat"), boat, "{words:?}");
            assert_eq!(disk.path(file).exists(), file == BOAT, "{words:?}");
            assert!(beside(&disk.path(file)).is_empty(), "{words:?}");
            fs::remove_file(disk.path("filler")).expect("it goes");
            assert_eq!(disk.run(words).code, Some(0), "{words:?}: with room it is done");
            if file != BOAT {
                fs::remove_file(disk.path(file)).expect("it goes");
            }
        }
    }
}
