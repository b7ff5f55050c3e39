//! What must be true of every rule, whoever adds it.

mod sound_book;

use std::collections::BTreeSet;

use sound_book::SoundBook;
use tholebook::model::Book;
use tholebook::reading;
use tholebook::rules;
use tholebook::rules::Check;
use tholebook::rules::Checked;
use tholebook::rules::Finding;
use tholebook::rules::Looks;
use tholebook::rules::RULES;
use tholebook::rules::Rule;
use tholebook::units::Date;

/// Returns the marked lines of a book: path and line, counted from 1.
fn marked(book: &SoundBook) -> BTreeSet<(String, usize)> {
    book.lines().filter(|(_, _, line)| line.ends_with("# <--")).map(|(p, n, _)| (p, n)).collect()
}

/// Checks a book as the rule needs it: by itself, or beside an earlier state.
fn checked(book: &SoundBook, rule: &Rule) -> (Book, Checked) {
    match rule.looks {
        Looks::BesideEarlier => book.check_beside_the_sound_one(),
        _ => book.check(),
    }
}

/// Returns the lines that a rule points at first.
fn pointed_at(book: &SoundBook, rule: &Rule) -> BTreeSet<(String, usize)> {
    let (read, checked) = checked(book, rule);
    let of_rule = |finding: &&Finding| finding.rule.id == rule.id;
    let lines = checked.findings.iter().filter(of_rule).map(|finding| {
        let place = finding.labels[0].place;
        let file = read.file(place.file);
        let before = &file.text[..place.span.start];
        (file.path.clone(), before.matches('\n').count() + 1)
    });
    lines.collect()
}

#[test]
fn nothing_is_wrong_with_the_sound_book() {
    let (_, checked) = SoundBook::new().check();
    let found: Vec<&str> = checked.findings.iter().map(|finding| &*finding.message).collect();
    assert!(found.is_empty(), "{found:#?}");
}

/// Each rule looks once for both, and neither hides anything of the other.
#[test]
fn a_check_with_sums_gives_what_each_gives_alone() {
    let with = Check { as_of: Date::read("2026-11-01").expect("a day") };
    for rule in RULES {
        let texts = SoundBook::with(rule.example.wrong).texts();
        let (book, faults) = reading::read("sound-book", texts);
        let (checked, sums) = rules::check_with_sums(&book, &faults, with);
        let alone = rules::check(&book, &faults, with);
        assert_eq!(format!("{:?}", checked.findings), format!("{:?}", alone.findings));
        assert_eq!(checked.not_checked, alone.not_checked, "{}", rule.id);
        assert_eq!(format!("{sums:?}"), format!("{:?}", rules::sums(&book, with)), "{}", rule.id);
    }
    let (book, faults) = reading::read("sound-book", SoundBook::new().texts());
    let (checked, sums) = rules::check_with_sums(&book, &faults, with);
    let judged = |rule: &str| sums.iter().filter(|sum| sum.rule.id == rule).count();
    assert_eq!((checked.findings.len(), judged("gap-too-tight")), (0, 8), "4 seats, own and spare");
}

#[test]
fn every_wrong_example_is_found_where_it_is_marked() {
    for rule in RULES {
        let book = SoundBook::with(rule.example.wrong);
        let marked = marked(&book);
        assert!(!marked.is_empty(), "{}: the wrong example marks no line", rule.id);
        let found = pointed_at(&book, rule);
        let unmarked: Vec<_> = found.difference(&marked).collect();
        let missed: Vec<_> = marked.difference(&found).collect();
        assert!(missed.is_empty(), "{}: not found: {missed:?}", rule.id);
        assert!(unmarked.is_empty(), "{}: found but not marked: {unmarked:?}", rule.id);
    }
}

#[test]
fn no_rule_objects_to_a_right_example() {
    for rule in RULES {
        let (_, checked) = checked(&SoundBook::with(rule.example.right), rule);
        let found: Vec<_> = checked
            .findings
            .iter()
            .filter(|f| f.waived.is_none())
            .map(|f| (f.rule.id, &f.message))
            .collect();
        assert!(found.is_empty(), "{}: {found:#?}", rule.id);
    }
}

#[test]
fn every_rule_file_is_listed_once_under_its_own_name() {
    let mut files: Vec<String> = rule_files();
    files.sort();
    let mut ids: Vec<String> = RULES.iter().map(|rule| rule.id.to_owned()).collect();
    ids.sort();
    assert_eq!(ids, files);
}

/// Files of `src/rules/` that hold a rule: those that begin a `static RULE`.
fn rule_files() -> Vec<String> {
    let entries = std::fs::read_dir("src/rules").expect("src/rules");
    let paths = entries.map(|entry| entry.expect("an entry").path());
    let holds = |path: &std::path::PathBuf| {
        let text = std::fs::read_to_string(path).expect("a file of UTF-8");
        text.contains("static RULE: Rule")
    };
    let name = |path: std::path::PathBuf| {
        path.file_stem().expect("a name").to_string_lossy().replace('_', "-")
    };
    paths.filter(|path| path.is_file()).filter(holds).map(name).collect()
}

#[test]
fn every_rule_says_what_why_and_who_says_so() {
    for rule in RULES {
        for text in [rule.checks, rule.reason, rule.remedy] {
            assert!(text.ends_with('.'), "{}: not a sentence: {text}", rule.id);
            assert!(!text.contains("  "), "{}: two blanks: {text}", rule.id);
        }
        assert!(!rule.sources.is_empty(), "{}: no source", rule.id);
        assert!(!rule.formula.is_empty() && !rule.default.is_empty(), "{}", rule.id);
    }
}

#[test]
fn every_finding_says_where_what_and_what_to_do() {
    for rule in RULES {
        let (_, checked) = SoundBook::with(rule.example.wrong).check();
        for finding in checked.findings {
            assert!(!finding.message.is_empty(), "{}", finding.rule.id);
            assert!(!finding.remedy.is_empty(), "{}", finding.rule.id);
            assert!(!finding.labels.is_empty(), "{}", finding.rule.id);
        }
    }
}

/// What a rule says is for the beach: words of the metrologist stay in `why --full` and the docs.
#[test]
fn no_message_uses_words_of_the_metrologist() {
    const BARRED: [&str; 6] =
        ["non-conform", "derived", "span ", "excess", "half-width", "uncertainty"];
    for rule in RULES.iter().filter(|rule| !matches!(rule.looks, Looks::WhileReading)) {
        let (_, checked) = SoundBook::with(rule.example.wrong).check();
        for finding in checked.findings {
            for word in BARRED {
                let said = format!("{} {}", finding.message, finding.remedy);
                assert!(!said.contains(word), "{}: {word}: {said}", finding.rule.id);
            }
        }
    }
}
