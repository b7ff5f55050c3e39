//! Every command, in every format and every way of asking.

use std::collections::BTreeSet;
use std::path::Path;

use crate::trying;

/// What is only asked: nothing of the book is changed. `kittiwake` and `long-ash` may not be there.
const ASKED: &[&str] = &[
    "lint --as-of 2026-11-01",
    "lint --format text --width 20",
    "lint --format brief",
    "lint --format json",
    "lint --format sarif --show-waived",
    "lint --format junit",
    "lint --format markdown",
    "lint --format github",
    "lint --spoken",
    "lint --only kittiwake --no-waivers --fail-on never",
    "lint --staged",
    "lint --at HEAD --format json",
    "lint --at HEAD~1",
    "lint --since HEAD~1 --format json",
    "lint --since HEAD~1 --format markdown",
    "lint --rules-from HEAD~1",
    "lint --merge-with HEAD~1",
    "lint --glyphs ascii",
    "why gap-too-tight",
    "why kittiwake",
    "why kittiwake/seat-2/rowlock/gap --full",
    "why kittiwake/seat-2/rowlock/gap gap-too-tight",
    "rules",
    "settings",
    "settings --format json",
    "card kittiwake",
    "derive",
    "derive --format json",
    "diff",
    "diff HEAD~1 HEAD",
    "diff HEAD~1 --format json",
    "diff HEAD~1 --format markdown",
    "diff --staged",
    "history kittiwake/seat-2/rowlock/gap",
    "history kittiwake",
    "history kittiwake --all-touches --format markdown",
    "history kittiwake --format json",
    "history kittiwake --spoken",
    "history kittiwake/seat-2/rowlock/gap --trend",
    "history kittiwake --when gap-too-tight",
    "blame kittiwake",
    "blame kittiwake --format json",
    "blame kittiwake --format markdown --older-than 1",
    "blame kittiwake --spoken",
    "ready",
    "ready kittiwake --on 2026-11-28 --since HEAD~1",
    "ready --format json",
    "ready --format markdown",
    "worklist kittiwake",
    "worklist kittiwake --format json",
    "worklist kittiwake --result -",
    "fit masters-a",
    "fit masters-a --format json",
    "fit masters-a --format markdown",
    "match",
    "match kittiwake",
    "match long-ash --format json",
    "match --format markdown",
    "sheet kittiwake",
    "sheet kittiwake --blank --last",
    "measure kittiwake",
    "waivers",
    "mend",
    "view boats/kittiwake.yaml",
    "view club.yaml",
    "schema boat",
    "checkup",
    "checkup --format json",
    "guard status",
    "guard receive",
    "wire --check",
    "completions bash",
    "man",
];

/// What writes, in an order that leaves each something to do.
const WRITTEN: &[&str] = &[
    "mend --write",
    "derive --write",
    "measure kittiwake --from club.yaml --no-input",
    "pages --out paged",
    "waive kittiwake/rigged/date overdue --because sand --by Ines --until 2026-12-01",
    "worklist kittiwake --result planned",
    "lint --also json=said.json --also junit=said.xml",
    "splice boats/kittiwake.yaml boats/kittiwake.yaml oars/long-ash.yaml",
    "add boat gull --by Ines",
    "add oars gull-oars",
    "add crew gull-crew",
    "schema --out schemas",
    "start another --club Tarrow --ci none",
    "sample sampled",
    "wire",
    "unwire",
    "guard install",
    "guard remove",
];

/// What comes in on standard input: a push of something that can't be.
const INPUT: &[u8] = b"0000 ffff refs/heads/\x1b[2J::error::x\n";

/// Returns the lines that only ask.
pub(crate) fn asked() -> impl Iterator<Item = &'static str> {
    ASKED.iter().copied()
}

/// Puts every command before what lies in a folder.
pub(crate) fn try_all(folder: &Path) {
    for line in ASKED.iter().chain(WRITTEN) {
        let words: Vec<&str> = line.split(' ').collect();
        trying::run(folder, &words, INPUT).is_harmless(&words);
    }
}

/// Puts those that only ask before what lies in a folder, and leaves it as it was.
pub(crate) fn ask_all(folder: &Path) {
    ask(folder, |_| true);
}

/// Puts those before it that work something out of the readings.
pub(crate) fn ask_figures(folder: &Path) {
    const FIGURES: [&str; 12] = [
        "lint --as-of 2026-11-01",
        "lint --format json",
        "why kittiwake",
        "why kittiwake/seat-2/rowlock/gap --full",
        "card kittiwake",
        "derive",
        "derive --format json",
        "ready",
        "worklist kittiwake",
        "fit masters-a",
        "match",
        "match kittiwake",
    ];
    ask(folder, |line| FIGURES.contains(&line));
}

/// Puts those before it that look at the past.
pub(crate) fn ask_the_past(folder: &Path) {
    let past = ["diff", "history", "blame", "checkup", "guard"];
    ask(folder, |line| past.iter().any(|word| line.starts_with(word)) || line.contains("HEAD"));
}

fn ask(folder: &Path, is_asked: impl Fn(&str) -> bool) {
    for line in ASKED.iter().filter(|line| is_asked(line)) {
        let words: Vec<&str> = line.split(' ').collect();
        trying::run(folder, &words, INPUT).is_harmless(&words);
    }
}

#[test]
fn every_command_is_among_them() {
    let help = trying::run(Path::new("."), &["--help"], b"").out;
    let listed = help.lines().skip_while(|line| *line != "Commands:").skip(1);
    let listed = listed.take_while(|line| !line.is_empty());
    let own = listed.filter(|line| line.starts_with("  ") && !line.starts_with("   "));
    let own: BTreeSet<&str> = own.filter_map(|line| line.split_whitespace().next()).collect();
    let tried = ASKED.iter().chain(WRITTEN);
    let tried: BTreeSet<&str> = tried.filter_map(|line| line.split(' ').next()).collect();
    let missing: Vec<_> = own.difference(&tried).collect();
    assert!(own.len() > 20 && missing.is_empty(), "{missing:?} of {own:?}");
}
