//! Waivers: what counts, for whom, until when, for what value; and what is told of those that don't.

mod sound_book;

use sound_book::SoundBook;
use tholebook::rules::Checked;
use tholebook::rules::Edit;
use tholebook::rules::Level;

const BOAT: &str = "boats/kittiwake.yaml";

/// Roll of 1.5 deg, good to ± 0.23: over the 1 deg allowed, a fault.
const ROLLED: Edit = (BOAT, "", "roll: 0.1", "roll: 1.5");

const WAIVER: &str = "- finding: kittiwake/rigged/level/roll\n  rule: boat-not-level\n  \
                      because: the trailer stands on sand\n  by: Tomas Reyne\n  \
                      until: 2026-12-01\n  at: 1.5\n";

/// Checks the rolled boat with a waiver whose lines are changed.
fn waived(changes: &[(&str, &str)], as_of: &str) -> Checked {
    let mut waiver = WAIVER.to_owned();
    for (from, to) in changes {
        assert!(waiver.contains(from), "{from}");
        waiver = waiver.replacen(from, to, 1);
    }
    let mut book = SoundBook::with(&[ROLLED]);
    book.edit("waivers.yaml", "", "", &waiver);
    book.check_as_of(as_of).1
}

/// The rules about waivers that were broken.
fn about_waivers(checked: &Checked) -> Vec<&'static str> {
    let about = |id: &&str| id.starts_with("waiver-");
    checked.findings.iter().map(|finding| finding.rule.id).filter(about).collect()
}

/// The rules about waivers that were broken, and whether the finding itself is waived.
fn told(checked: &Checked) -> (Vec<&'static str>, bool) {
    let told = about_waivers(checked);
    let rolled = |id: &str| id == "boat-not-level";
    let found = checked.findings.iter().find(|finding| rolled(finding.rule.id));
    (told, found.expect("the boat is rolled").waived.is_some())
}

#[test]
fn a_waiver_that_counts_takes_its_finding_out_of_the_count() {
    let checked = waived(&[], "2026-11-01");
    assert_eq!(told(&checked), (vec![], true));
    let all = checked.findings.iter().filter(|finding| finding.level == Level::Fault).count();
    assert_eq!(checked.count(Level::Fault), all - 1);
}

#[test]
fn the_last_day_counts_and_the_day_after_does_not() {
    assert_eq!(told(&waived(&[], "2026-12-01")), (vec![], true));
    assert_eq!(told(&waived(&[], "2026-12-02")), (vec!["waiver-lapsed"], false));
}

#[test]
fn a_last_day_that_is_none_counts_as_past() {
    let checked = waived(&[("2026-12-01", "next spring")], "2026-11-01");
    assert_eq!(told(&checked), (vec!["waiver-lapsed"], false));
    let told = checked.findings.iter().any(|finding| finding.rule.id == "not-a-date");
    assert!(told, "the day itself is told too");
}

#[test]
fn a_value_further_out_lapses_and_one_less_far_out_does_not() {
    let lapsed = (vec!["waiver-lapsed"], false);
    assert_eq!(told(&waived(&[("at: 1.5", "at: 1.49")], "2026-11-01")), lapsed);
    assert_eq!(told(&waived(&[("at: 1.5", "at: 1.6")], "2026-11-01")), (vec![], true));
}

/// On the other side of its limits "further out" is down: -1.5 is further out than -1.4.
#[test]
fn further_out_is_down_where_the_value_is_under_its_limit() {
    let mut book = SoundBook::with(&[(BOAT, "", "roll: 0.1", "roll: -1.5")]);
    let waiver = "- {finding: kittiwake/rigged/level/roll, rule: boat-not-level, because: sand, \
                  by: Tomas Reyne, until: 2026-12-01, at: -1.4}\n";
    book.edit("waivers.yaml", "", "", waiver);
    assert_eq!(told(&book.check().1), (vec!["waiver-lapsed"], false));
    book.edit("waivers.yaml", "", "at: -1.4", "at: -1.6");
    assert_eq!(told(&book.check().1), (vec![], true));
}

#[test]
fn name_and_rule_must_be_exact() {
    for change in [("level/roll", "level"), ("boat-not-level", "boat-level"), ("kitti", "Kitti")] {
        let checked = waived(&[change], "2026-11-01");
        assert_eq!(told(&checked), (vec!["waiver-unused"], false), "{change:?}");
    }
}

#[test]
fn a_waiver_of_what_could_not_be_checked_is_not_called_unused() {
    let level = told_of("roll: 0.1");
    assert_eq!(level, (vec!["waiver-unused"], vec![]), "the boat is level");
    let not_measured = told_of("roll:");
    assert_eq!(not_measured, (vec![], vec!["rigged/level/roll".to_owned()]));
}

/// What is told of the waiver of a roll that reads thus, and what is missing to tell it.
fn told_of(roll: &'static str) -> (Vec<&'static str>, Vec<String>) {
    let mut book = SoundBook::with(&[(BOAT, "", "roll: 0.1", roll)]);
    book.edit("waivers.yaml", "", "", WAIVER);
    let checked = book.check_as_of("2026-11-01").1;
    let undone = checked.not_checked.iter().filter(|undone| undone.rule == "waiver-unused");
    (about_waivers(&checked), undone.flat_map(|undone| undone.missing.clone()).collect())
}

#[test]
fn who_may_not_waive_waives_nothing() {
    for by in ["Ines Marlow", "Nobody Known"] {
        let checked = waived(&[("Tomas Reyne", by)], "2026-11-01");
        assert_eq!(told(&checked), (vec!["waiver-not-allowed"], false), "{by}");
    }
}

/// The club allows 60 days: from 1 November that is 31 December.
#[test]
fn no_waiver_lasts_longer_than_the_club_allows() {
    let until = |day| waived(&[("2026-12-01", day)], "2026-11-01");
    assert_eq!(told(&until("2026-12-31")), (vec![], true));
    assert_eq!(told(&until("2027-01-01")), (vec!["waiver-not-allowed"], false));
}

#[test]
fn a_waiver_must_say_its_value_and_its_reason() {
    let refused = (vec!["waiver-not-allowed"], false);
    assert_eq!(told(&waived(&[("  at: 1.5\n", "")], "2026-11-01")), refused);
    assert_eq!(
        told(&waived(&[("  because: the trailer stands on sand\n", "")], "2026-11-01")),
        refused
    );
}

#[test]
fn a_danger_is_never_waived() {
    let mut book = SoundBook::with(&[(BOAT, "seat: 2", "gap: 60", "gap: 54")]);
    let waiver = "- {finding: kittiwake/seat-2/rowlock/gap, rule: gap-too-tight, because: today only, \
                  by: Tomas Reyne, until: 2026-11-02, at: 2}\n";
    book.edit("waivers.yaml", "", "", waiver);
    let (_, checked) = book.check();
    assert_eq!(checked.worst(), Some(Level::Danger));
    assert!(checked.findings.iter().all(|finding| finding.waived.is_none()));
    assert!(checked.findings.iter().any(|finding| finding.rule.id == "waiver-not-allowed"));
}
