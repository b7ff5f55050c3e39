//! A clock that is wrong: a day long before every reading, commits of a day that has not come.

use std::fs;
use std::path::Path;

use git2::Repository;
use git2::Signature;
use git2::Time;

use crate::books;
use crate::books::BOAT;
use crate::commands;
use crate::faults::run;

/// Every command that takes a day for today.
const WITH_A_DAY: [&str; 22] = [
    "lint --as-of",
    "lint --format json --as-of",
    "lint --format sarif --as-of",
    "lint --format markdown --as-of",
    "lint --spoken --as-of",
    "why kittiwake/seat-2/rowlock/gap --as-of",
    "card kittiwake --as-of",
    "diff HEAD~1 --as-of",
    "history kittiwake/seat-2/rowlock/gap --as-of",
    "blame kittiwake --as-of",
    "blame kittiwake --spoken --as-of",
    "blame kittiwake --format markdown --as-of",
    "blame kittiwake --format json --as-of",
    "ready kittiwake --on",
    "ready kittiwake --format markdown --on",
    "ready kittiwake --format json --on",
    "worklist kittiwake --as-of",
    "sheet kittiwake --as-of",
    "measure kittiwake --from club.yaml --no-input --as-of",
    "waivers --as-of",
    "waive kittiwake/rigged/date overdue --because sand --by Ines --until 2026-12-01 --as-of",
    "pages --out PAGES --as-of",
];

/// Returns a number of days that is told as less than none.
fn less_than_none(text: &str) -> Option<&str> {
    let words = text.split(|c: char| c.is_whitespace() || "(|>≥".contains(c));
    words.filter(|word| !word.is_empty()).find(|word| {
        let digits = word.strip_prefix('-').unwrap_or_default();
        let digits = digits.trim_end_matches(['…', ')', '<', ',']);
        digits.len() > 2 && digits.bytes().all(|byte| byte.is_ascii_digit())
    })
}

#[test]
fn every_command_that_takes_a_day_is_among_them() {
    let writes = ["pages --out", "waive"];
    let mut names: Vec<&str> = commands::asked().chain(writes).collect();
    names.iter_mut().for_each(|line| *line = line.split(' ').next().unwrap_or_default());
    names.dedup();
    let mut with_a_day = 0;
    for name in names {
        let help = run(Path::new("."), &format!("{name} --help")).out;
        if help.contains("--as-of <") || help.contains("--on <") {
            let is_among = |line: &&str| line.split(' ').next() == Some(name);
            assert!(WITH_A_DAY.iter().any(is_among), "{name}");
            with_a_day += 1;
        }
    }
    assert!(with_a_day > 10, "only {with_a_day}");
}

/// Asks every such command, and asserts that none tells an age of less than no days; numbers for
/// programs stay numbers.
fn ask_on(folder: &Path, day: &str) {
    let beside = tempfile::tempdir().expect("a folder");
    for line in WITH_A_DAY {
        let pages = beside.path().display().to_string();
        let line = format!("{line} {day}").replace("PAGES", &pages);
        let run = run(folder, &line);
        assert!(matches!(run.code, Some(0..=3)), "{line}: {}", run.err);
        let odd = less_than_none(&run.out).or_else(|| less_than_none(&run.err));
        assert!(line.contains("json") || odd.is_none(), "{line} tells {odd:?}:\n{}", run.out);
    }
    let pages: Vec<_> = fs::read_dir(beside.path()).expect("a folder").collect();
    assert!(pages.len() > 5, "{} pages", pages.len());
    for page in pages {
        let path = page.expect("an entry").path();
        let text = fs::read_to_string(&path).expect("a page");
        // Pictures have lengths below zero; words have not.
        let mut words = text.split('>').filter_map(|part| Some(part.split_once('<')?.0));
        let odd = words.find_map(less_than_none);
        assert!(odd.is_none(), "{} tells {odd:?}", path.display());
    }
}

#[test]
fn long_before_every_reading_no_age_is_told_and_each_day_is_a_fault() {
    let folder = books::committed();
    ask_on(folder.path(), "1971-01-01");
    let lint = run(folder.path(), "lint --format brief --as-of 1971-01-01");
    assert_eq!(lint.code, Some(1), "{}", lint.err);
    for name in ["kittiwake/rigged/date", "long-ash/measured/date"] {
        let told = format!("fault date-in-future {name}: ");
        assert!(lint.out.contains(&told), "{name}: {}", lint.out);
    }
    let blame = run(folder.path(), "blame kittiwake --as-of 1971-01-01").out;
    assert!(blame.contains("  ahead "), "{blame}");
    let blame = run(folder.path(), "blame kittiwake --spoken --as-of 1971-01-01").out;
    assert!(blame.contains(", of a day yet to come; "), "{blame}");
    let ready = run(folder.path(), "ready kittiwake --on 1971-01-01").out;
    assert!(ready.contains("Rigged 2026-10-17 (after that day)"), "{ready}");
}

#[test]
fn at_either_end_of_the_calendar_every_command_still_ends() {
    let folder = books::committed();
    for day in ["0001-01-01", "9999-12-31"] {
        ask_on(folder.path(), day);
    }
}

#[test]
fn commits_and_readings_of_a_day_that_has_not_come_are_told() {
    let folder = books::committed();
    let boat = folder.path().join(BOAT);
    let text = fs::read_to_string(&boat).expect("a text");
    fs::write(&boat, text.replace("date: 2026-10-17", "date: 2099-12-30")).expect("a file");
    let repository = Repository::open(folder.path()).expect("a repository");
    let mut index = repository.index().expect("an index");
    index.add_all(["*"], git2::IndexAddOption::DEFAULT, None).expect("all is added");
    let tree = repository.find_tree(index.write_tree().expect("a tree")).expect("a tree");
    index.write().expect("the index is written");
    let head = repository.head().expect("a head").peel_to_commit().expect("a commit");
    // The first of January 2100.
    let by = Signature::new("Ines", "i@example.org", &Time::new(4_102_444_800, 0)).expect("a name");
    repository.commit(Some("HEAD"), &by, &by, "rigged", &tree, &[&head]).expect("a commit");
    commands::ask_the_past(folder.path());
    ask_on(folder.path(), "2026-11-01");
    let lint = run(folder.path(), "lint --format brief --as-of 2026-11-01");
    assert_eq!(lint.code, Some(1));
    assert!(lint.out.contains("date-in-future kittiwake/rigged/date"), "{}", lint.out);
    let checkup = run(folder.path(), "checkup");
    assert_eq!(checkup.code, Some(1), "{}", checkup.out);
    assert!(checkup.out.contains("a commit later than now, of 2100-01-01"), "{}", checkup.out);
}
