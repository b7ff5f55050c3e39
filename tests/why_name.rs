//! A reading's own sums, as `why NAME` tells them: numbers worked by hand, every rule that judges
//! a measured value, widths, hostile texts, plain words.

mod sound_book;

use std::fs;
use std::path::Path;
use std::process::Command;

use sound_book::SoundBook;
use tempfile::TempDir;
use tholebook::model::Book;
use tholebook::reports;
use tholebook::reports::Glyphs;
use tholebook::reports::Look;
use tholebook::reports::SumsAsked;
use tholebook::rules;
use tholebook::rules::Check;
use tholebook::rules::Checked;
use tholebook::rules::RULES;
use tholebook::rules::Sum;
use tholebook::store::Content;
use tholebook::store::Named;
use tholebook::units::Date;

const BOAT: &str = "boats/kittiwake.yaml";
const LOOK: Look = Look { width: 80, glyphs: Glyphs::Unicode, colour: false };

/// Words that only `--full` may say.
const METROLOGISTS: [&str; 8] = [
    "half-width",
    "rectangular",
    "sensitivity",
    "contribution",
    "uncertainty",
    "standard",
    "coverage",
    "conform",
];

/// The sound book in a folder of its own, with edits.
fn club(edits: &[rules::Edit]) -> TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    for text in SoundBook::with(edits).texts() {
        let to = folder.path().join(&text.path);
        fs::create_dir_all(to.parent().expect("a folder")).expect("a new folder");
        fs::write(to, text_of(&text)).expect("a new file");
    }
    folder
}

fn text_of(named: &Named) -> &str {
    match &named.content {
        Content::Text(text) => text,
        other => panic!("{}: {other:?}", named.path),
    }
}

/// Exit code, what was said, what was told besides; with every run of blanks as one blank.
fn why(folder: &Path, asked: &[&str]) -> (Option<i32>, String, String) {
    let mut command = Command::new(env!("CARGO_BIN_EXE_tholebook"));
    command.arg("why").args(asked).arg("--book").arg(folder);
    command.args(["--as-of", "2026-11-01", "--width", "80"]);
    let run = command.output().expect("the program runs");
    let words = |bytes: &[u8]| {
        let text = String::from_utf8_lossy(bytes);
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    (run.status.code(), words(&run.stdout), words(&run.stderr))
}

fn told(folder: &TempDir, asked: &[&str]) -> String {
    let (code, said, besides) = why(folder.path(), asked);
    assert_eq!(code, Some(0), "{asked:?}: {besides}");
    said
}

fn holds(said: &str, sentences: &[&str]) {
    for sentence in sentences {
        assert!(said.contains(sentence), "not said: {sentence}\n{said}");
    }
}

fn as_of() -> Check {
    Check { as_of: Date::read("2026-11-01").expect("a day") }
}

fn report(book: &Book, checked: &Checked, sums: &[&Sum], full: bool) -> String {
    let findings: Vec<_> = checked.findings.iter().collect();
    let not_checked: Vec<_> = checked.not_checked.iter().collect();
    let name = "kittiwake";
    let (findings, not_checked) = (&findings[..], &not_checked[..]);
    reports::sums(SumsAsked { book, name, sums, findings, not_checked, full }, LOOK)
}

/// By hand: 60 - 52 = 8; 2 sqrt(0.2^2/3 + 0.2^2/3) = 0.33; 8 - 5 = 3.
#[test]
fn a_number_written_down_wrong_is_told_apart_from_the_reading() {
    let wrong = (BOAT, "seat: 1", "clearance: 8.0", "clearance: 7.0");
    let said = told(&club(&[wrong]), &["kittiwake/seat-1/rowlock/gap"]);
    let (own, written) = said
        .split_once("Apart from that, the number written under worked-out (sum-wrong)")
        .expect("told apart");
    assert!(
        own.contains("The verdict (gap-too-tight) Clear: inside the limit by 3.0 mm."),
        "{own}"
    );
    assert!(!own.contains("What was found"), "{own}");
    let found = "Wrong in the book: 7.0 mm is written; the readings don't give it. What was found \
                 of the number written down, not of the reading";
    assert!(written.trim_start().starts_with(found), "{written}");
}

#[test]
fn a_gap_tells_its_clearance_from_the_readings_to_the_verdict() {
    let said = told(&club(&[]), &["kittiwake/seat-2/rowlock/gap", "gap-too-tight"]);
    holds(
        &said,
        &[
            "gap between the horns: 60.0 mm, read with callipers to ± 0.2 mm. boats/kittiwake.yaml:65",
            "1 mm more of it makes the result 1.0 mm more. 50 % of the doubt comes from it.",
            "widest part of the shaft: 52.0 mm, read with callipers to ± 0.2 mm. oars/long-ash.yaml:19",
            "gap between the horns 60.0 mm - widest part of the shaft 52.0 mm = 8.0 mm.",
            "8.0 mm, good to ± 0.3 mm.",
            "At least 5 mm.",
            "Clear: inside the limit by 3.0 mm.",
            "Lift every oar out by hand before going afloat.",
        ],
    );
    assert!(!said.contains("gap-too-loose"), "only what was asked: {said}");
}

/// By hand: atan(0.5 / 150) = 0.19 deg; 1 / 150 = 0.38 deg a mm; rule 0.5 mm: u = 0.110 deg; level
/// 0.2 deg: u = 0.115 deg; 2 sqrt(0.110^2 + 0.115^2) = 0.32 deg; shares 48 and 52 %; 1 - 0.19.
#[test]
fn a_lean_is_told_with_the_pin_gauge_that_turns_it_into_degrees() {
    let said = told(&club(&[]), &["kittiwake/seat-1/pin/lean/aft", "pin-not-vertical"]);
    holds(
        &said,
        &[
            "lean aft: 0.5 mm, read with the rule to ± 0.5 mm.",
            "1 mm more of it makes the result 0.38 deg more. 48 % of the doubt comes from it.",
            "pin gauge: 150.0 mm, taken as it stands.",
            "lean = atan(0.5 mm / 150.0 mm) - 0.00 deg = 0.19 deg.",
            "0.19 deg, good to ± 0.32 deg.",
            "Most of the doubt comes from the trim of the boat: 52 %.",
            "At most 1 deg either way. Set by class surfboat.",
            "Clear: inside the limit by 0.81 deg.",
        ],
    );
}

/// By hand: 2 sqrt((0.5^2 + 0.2^2) / 3) = 0.62, with callipers 0.33; 57.2 - 52 - 5 = 0.2.
#[test]
fn the_one_measurement_that_would_sharpen_it_is_named_with_its_tool_and_what_it_wins() {
    let coarse = [(BOAT, "seat: 2", "gap: 60", "gap: {read: 57.2, to: 0.5}")];
    let said = told(&club(&coarse), &["kittiwake/seat-2/rowlock/gap", "gap-too-tight"]);
    holds(
        &said,
        &[
            "Not shown to clear, too close to call: inside the limit by 0.2 mm, but good to ± 0.6 mm only.",
            "Read the gap between the horns again with callipers, to ± 0.2 mm: boats/kittiwake.yaml:65 (kittiwake/seat-2/rowlock/gap). Then the result is good to ± 0.3 mm; now it is ± 0.6 mm.",
        ],
    );
}

/// By hand: 0.2 / sqrt 3 = 0.1155; sqrt(2) x 0.1155 = 0.1633; twice that 0.3266; (8 - 5) / 0.1633
/// is 18 standard deviations.
#[test]
fn the_words_of_the_metrologist_are_told_in_full_only() {
    let (club, name) = (club(&[]), "kittiwake/seat-2/rowlock/gap");
    let full = told(&club, &[name, "gap-too-tight", "--full"]);
    holds(
        &full,
        &[
            "half-width a = 0.2000 mm, rectangular, standard uncertainty u = a/sqrt 3 = 0.1155 mm.",
            "sensitivity c = -1.000, contribution |c| u = 0.1155 mm.",
            "Combined standard uncertainty u = 0.1633 mm",
            "U = 2u = 0.3266 mm",
            "the true value lies beyond the limit is less than 0.01 %",
            "GUM",
            "ISO 14253-1",
        ],
    );
    let plain = told(&club, &[name]);
    for word in METROLOGISTS {
        assert!(!plain.contains(word), "{word}: {plain}");
    }
}

#[test]
fn a_reading_tells_every_value_that_rests_on_it_each_once() {
    let steep = [(BOAT, "seat: 2", "square: 11", "square: 13")];
    let said = told(&club(&steep), &["kittiwake/seat-2/pitch/square"]);
    let rules = ["pitch-out-of-range", "pitch-mismatch", "sides-unequal", "sum-wrong"];
    holds(&said, &rules);
    assert_eq!(said.matches("pitch-mismatch kittiwake").count(), 1, "{said}");
}

#[test]
fn what_is_missing_is_told_by_name() {
    let without = [(BOAT, "seat: 1", "      horn: 46\n", "")];
    let said = told(&club(&without), &["kittiwake/seat-1/rowlock/gap", "gap-rubs-in-roll"]);
    holds(&said, &["Not checked. What is missing: rowlock/horn."]);
}

/// By hand, of each blade: 0.5 mm is 0.163 deg, u = 0.0942 deg; the width's 2 mm add u = 0.0235 deg;
/// of two blades, 2 sqrt(2 (0.0942^2 + 0.0235^2)) = 0.27 deg.
#[test]
fn a_boat_tells_her_own_sums_and_what_can_be_asked() {
    let said = told(&club(&[]), &["kittiwake"]);
    holds(
        &said,
        &[
            "pitch-mismatch: 0.00 deg, good to ± 0.28 deg. Clear: inside the limit by 0.60 deg.",
            "kittiwake/seat-N/rowlock/gap (seats 1, 2, 3, 4): gap-too-tight, gap-too-loose",
        ],
    );
    let said = told(&club(&[]), &["kittiwake", "pitch-mismatch"]);
    holds(&said, &["offset square off: 11.0 mm, read with the rule to ± 0.5 mm."]);
    assert!(!said.contains("sides-unequal"), "{said}");
}

#[test]
fn an_unknown_name_is_refused_and_the_nearest_offered() {
    let club = club(&[]);
    let (code, said, told) = why(club.path(), &["kittiwake/seat-2/rowlok/gap"]);
    assert_eq!((code, &*said), (Some(2), ""));
    holds(&told, &["Did you mean kittiwake/seat-2/rowlock/gap?"]);
    let (code, _, told) = why(club.path(), &["kittiwake/seat-2/rowlock/gap", "chock-distance"]);
    assert_eq!(code, Some(2));
    holds(&told, &["chock-distance works out nothing at kittiwake/seat-2/rowlock/gap"]);
    let (code, _, told) = why(club.path(), &["kitiwake/\u{1b}[2J\u{202e}"]);
    assert_eq!(code, Some(2));
    assert!(told.contains("\\u{1b}") && !told.contains(['\u{1b}', '\u{202e}']), "{told:?}");
}

#[test]
fn what_a_file_holds_steers_no_terminal() {
    let limit = "publish-crew: false\nlimits: {surfboat: {clearance: {least: 5, source: \"a\\e[2J\\u202Eb\"}}}";
    let club = club(&[("club.yaml", "", "publish-crew: false", limit)]);
    let said = told(&club, &["kittiwake/seat-2/rowlock/gap", "gap-too-tight"]);
    assert!(said.contains("\\u{1b}[2J\\u{202e}b"), "{said}");
    assert!(!said.contains(['\u{1b}', '\u{202e}']), "{said:?}");
}

/// Whoever finds fault with a measured value can be asked for its sum.
#[test]
fn every_rule_that_judges_a_measured_value_gives_its_sum() {
    let mut rules_with_sums = Vec::new();
    for rule in RULES {
        let (book, checked) = SoundBook::with(rule.example.wrong).check();
        let sums = rules::sums(&book, as_of());
        let of_rule = |finding: &&rules::Finding| finding.rule.id == rule.id;
        for finding in checked.findings.iter().filter(of_rule) {
            let Some(value) = finding.value.filter(|value| value.uncertainty.is_some()) else {
                continue;
            };
            let sum = sums.iter().find(|sum| {
                let same = (sum.value.value() - value.number).abs() < 1e-9;
                sum.rule.id == rule.id && finding.name.is_within(sum.name.as_str()) && same
            });
            let sum = sum.unwrap_or_else(|| panic!("{}: no sum of {}", rule.id, finding.name));
            assert!(!sum.verdict().starts_with("Clear"), "{}: {}", rule.id, sum.verdict());
            let said = report(&book, &checked, &[sum], false);
            for heading in ["What was read", "The result", "The limit", "The verdict"] {
                assert!(said.contains(heading), "{}: {heading}: {said}", rule.id);
            }
            rules_with_sums.push(rule.id);
        }
    }
    for id in ["gap-too-tight", "arc-disagrees", "tool-too-coarse", "oars-unlike", "bed-wrong"] {
        assert!(rules_with_sums.contains(&id), "{id}: {rules_with_sums:?}");
    }
}

#[test]
fn no_line_is_wider_than_the_width_and_no_plain_word_is_the_metrologists() {
    for rule in RULES {
        let (book, checked) = SoundBook::with(rule.example.wrong).check();
        let sums = rules::sums(&book, as_of());
        let sums: Vec<&Sum> = sums.iter().collect();
        let plain = report(&book, &checked, &sums, false);
        let full = report(&book, &checked, &sums, true);
        let findings: Vec<_> = checked.findings.iter().collect();
        let names = reports::names_to_ask("kittiwake", &findings, &sums, LOOK);
        for line in plain.lines().chain(full.lines()).chain(names.lines()) {
            assert!(line.chars().count() <= 80, "{}: {line}", rule.id);
        }
        for word in METROLOGISTS {
            assert!(!plain.contains(word), "{}: {word}", rule.id);
        }
    }
}
