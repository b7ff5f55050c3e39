//! Limits and waivers taken from another commit, and limits that a change loosens.

use serde_json::Value;

use crate::club::BOAT;
use crate::club::Club;
use crate::club::Files;
use crate::club::edit;
use crate::club::sound;
use crate::run::DAY;
use crate::run::Run;
use crate::run::UNLIKE;
use crate::run::lint;
use crate::run::told;
use crate::run::with_chock;

const CLUB: &str = "club.yaml";
const LOOSENED: &str = "- fault limit-loosened club/limits/surfboat";

fn limit(files: Files, written: &str) -> Files {
    limits(files, &format!("  surfboat:\n    {written}\n"))
}

fn limits(mut files: Files, written: &str) -> Files {
    edit(&mut files, CLUB, "", "people:", &format!("limits:\n{written}people:"));
    files
}

fn of_boat(mut files: Files, written: &str) -> Files {
    edit(&mut files, BOAT, "", "seats:\n", &format!("limits:\n  {written}\nseats:\n"));
    files
}

/// A class of the club's own, with limits for the back chock only.
fn class(mut files: Files, id: &str, chocks: &str) -> Files {
    let built_in = include_str!("../../src/reading/classes/surfboat.yaml");
    let own = built_in
        .replace("class: surfboat", &format!("class: {id}"))
        .replace("chocks: {most: 15", &format!("chocks: {{most: {chocks}"));
    files.insert(format!("classes/{id}.yaml"), own);
    files
}

fn in_class(mut files: Files, id: &str) -> Files {
    edit(&mut files, BOAT, "", "class: surfboat", &format!("class: {id}"));
    files
}

/// A commit whose rules hold, and one that is proposed.
fn proposed(guarding: &Files, proposed: &Files) -> Club {
    let club = Club::new();
    let first = club.commit(DAY - 5, &[], guarding);
    let head = club.commit(DAY - 1, &[first], proposed);
    club.check_out(head, proposed);
    club
}

fn guarded(guarding: &Files, files: &Files) -> Run {
    told(&proposed(guarding, files), &["--at", "HEAD", "--rules-from", "HEAD~1"])
}

/// Path and line of the first place of the first finding of a rule.
#[track_caller]
fn place(run: &Run, rule: &str) -> (String, usize) {
    let json = run.json();
    let all = json["findings"].as_array().expect("a list");
    let one = all.iter().find(|one| one["rule"] == rule).unwrap_or_else(|| panic!("{json:#}"));
    let span: &Value = &one["spans"][0];
    let path = span["path"].as_str().expect("a path").to_owned();
    (path, span["start"]["line"].as_u64().expect("a line") as usize)
}

fn line_of(files: &Files, path: &str, words: &str) -> usize {
    1 + files[path].lines().position(|line| line.contains(words)).expect("the line")
}

#[test]
fn a_limit_of_the_club_that_is_loosened_is_told_at_its_line() {
    let before = limit(sound(), "chocks: {most: 12, source: agreed}");
    let after = limit(with_chock("630"), "chocks: {most: 40, source: mine}");
    let run = guarded(&before, &after).ends(1);
    let expected = [UNLIKE, "fault limit-loosened club/limits/surfboat/chocks"];
    let mut found = run.serious();
    found.sort();
    assert_eq!(found, expected.map(|one| format!("- {one}")));
    assert_eq!(place(&run, "limit-loosened"), (CLUB.into(), line_of(&after, CLUB, "most: 40")));
    let words = "most 12 mm became 40 mm (in the guarded commit: club.yaml:13)";
    assert!(run.out.contains(words), "{}", run.out);
    let text = lint(&proposed(&before, &after), &["--rules-from", "HEAD~1"]).ends(1);
    assert!(text.out.contains("chocks: {most: 40, source: mine}"), "{}", text.out);
    assert!(text.err.contains("those of HEAD~1 (commit "), "{}", text.err);
    lint(&proposed(&before, &after), &[]).ends(0);
}

#[test]
fn a_limit_that_is_switched_off_or_removed_is_loosened() {
    let before = limit(sound(), "chocks: {most: 12, source: agreed}");
    let off = limit(sound(), "chocks: none");
    let run = guarded(&before, &off).ends(1);
    assert_eq!(run.serious(), [format!("{LOOSENED}/chocks")]);
    assert_eq!(place(&run, "limit-loosened"), (CLUB.into(), line_of(&off, CLUB, "none")));
    assert!(run.out.contains("became no limit"), "{}", run.out);
    let run = guarded(&before, &sound()).ends(1);
    assert_eq!(run.serious(), [format!("{LOOSENED}/chocks")]);
    assert_eq!(place(&run, "limit-loosened"), (CLUB.into(), 1));
    assert!(run.out.contains("became 15 mm"), "{}", run.out);
    let run = guarded(&sound(), &off).ends(1);
    assert_eq!(run.serious(), [format!("{LOOSENED}/chocks")], "the class's own is switched off");
}

#[test]
fn each_end_of_a_limit_counts() {
    for (looser, words) in [
        ("handle: {least: 300, most: 335}", "least 305 mm became 300 mm"),
        ("handle: {least: 305, most: 340}", "most 335 mm became 340 mm"),
        ("chock: {aim: 600, within: 20}", "within 15 mm became 20 mm"),
        ("bends: {most: 3, in-all: 12 deg}", "in-all 10 deg became 12 deg"),
        ("clearance: {least: 4}", "least 5 mm became 4 mm"),
    ] {
        let run = guarded(&sound(), &limit(sound(), looser));
        assert!(run.out.contains(words), "{looser}: {}", run.out);
    }
}

#[test]
fn a_limit_that_is_tightened_or_written_otherwise_is_no_finding() {
    let before = limit(sound(), "chocks: {most: 12, source: agreed}");
    for same in ["chocks: {most: 11, source: agreed}", "chocks: {most: 1.2 cm, source: other}"] {
        let run = guarded(&before, &limit(sound(), same)).ends(0);
        assert_eq!(run.serious(), [""; 0], "{same}");
    }
}

#[test]
fn a_boats_own_limit_that_is_loosened_is_told_at_the_boat() {
    let before = of_boat(sound(), "chocks: {most: 12, source: agreed}");
    let after = of_boat(sound(), "chocks: {most: 40, source: mine}");
    for before in [before, sound()] {
        let run = guarded(&before, &after).ends(1);
        assert_eq!(run.serious(), ["- fault limit-loosened kittiwake/limits/chocks"]);
        assert_eq!(place(&run, "limit-loosened"), (BOAT.into(), line_of(&after, BOAT, "most: 40")));
    }
}

#[test]
fn a_class_of_the_clubs_that_is_loosened_is_told_at_the_class() {
    let before = in_class(class(sound(), "own", "12"), "own");
    let after = in_class(class(sound(), "own", "40"), "own");
    let run = guarded(&before, &after).ends(1);
    assert!(run.serious().iter().any(|one| one.contains("limit-loosened")), "{:?}", run.serious());
    let expected = ("classes/own.yaml".into(), line_of(&after, "classes/own.yaml", "chocks: {"));
    assert_eq!(place(&run, "limit-loosened"), expected);
}

#[test]
fn a_boat_that_is_moved_to_a_laxer_class_is_told_at_her_class() {
    let there = class(sound(), "lax", "40");
    let after = in_class(there.clone(), "lax");
    let run = guarded(&there, &after).ends(1);
    assert!(run.out.contains("limit-loosened"), "{}", run.out);
    assert_eq!(place(&run, "limit-loosened"), (BOAT.into(), line_of(&after, BOAT, "class: lax")));
    let brought = in_class(class(sound(), "lax", "40"), "lax");
    guarded(&sound(), &brought).ends(1);
}

#[test]
fn a_waiver_that_comes_with_the_change_does_not_count() {
    let waiver = "- finding: kittiwake\n  rule: chocks-unlike\n  because: a short rower\n  \
                  by: Tomas Reyne\n  until: 2026-11-20\n  at: 30\n";
    let mut after = with_chock("630");
    after.insert("waivers.yaml".to_owned(), waiver.to_owned());
    lint(&proposed(&sound(), &after), &[]).ends(0);
    assert_eq!(guarded(&sound(), &after).ends(1).serious(), [format!("- {UNLIKE}")]);
    let mut before = sound();
    before.insert("waivers.yaml".to_owned(), waiver.to_owned());
    let run = guarded(&before, &with_chock("630")).ends(0);
    assert_eq!(run.json()["findings"][0]["waived"]["by"], "Tomas Reyne");
}

#[test]
fn a_person_who_comes_with_the_change_may_not_sign() {
    let mut after = sound();
    edit(&mut after, CLUB, "Tomas Reyne", "Tomas Reyne", "Ada Quill");
    edit(&mut after, BOAT, "checked-by", "Tomas Reyne", "Ada Quill");
    let run = guarded(&sound(), &after);
    assert!(run.out.contains("signer-unknown"), "{}", run.out);
}

#[test]
fn settings_that_can_not_be_read_are_told_though_others_are_used() {
    for (path, text, code) in [
        (CLUB, "logbook: 1\nlimits: {surfboat\n", 2),
        ("waivers.yaml", "- finding: [\n", 1),
        ("classes/own.yaml", "class: [own\n", 1),
    ] {
        let mut after = sound();
        after.insert(path.to_owned(), text.to_owned());
        lint(&proposed(&sound(), &after), &[]).ends(code);
        let run = guarded(&sound(), &after).ends(code);
        assert_eq!(place(&run, "unreadable").0, path);
    }
}

#[test]
fn guarding_settings_that_can_not_be_read_are_exit_2() {
    let mut before = sound();
    before.insert(CLUB.to_owned(), "logbook: 1\nlimits: {surfboat\n".to_owned());
    guarded(&before, &sound()).ends(2);
}

#[test]
fn rules_that_can_not_be_had_are_exit_3() {
    let club = proposed(&sound(), &with_chock("630"));
    for rev in ["no-such", "HEAD~9"] {
        let run = lint(&club, &["--rules-from", rev]).ends(3);
        assert!(run.out.is_empty() && !run.err.is_empty());
    }
}

#[test]
fn with_an_earlier_state_both_sides_are_judged_by_the_guarded_limits() {
    let before = limit(with_chock("612"), "chocks: {most: 5, source: agreed}");
    let after = limit(with_chock("612"), "chocks: {most: 40, source: mine}");
    let club = proposed(&before, &after);
    let run = told(&club, &["--since", "HEAD~1", "--rules-from", "HEAD~1"]).ends(1);
    let mut found = run.serious();
    found.sort();
    let loosened = LOOSENED.replace("- ", "new ");
    assert_eq!(found, [format!("known {UNLIKE}"), format!("{loosened}/chocks")]);
}

#[test]
fn a_limit_that_is_tightened_does_not_count_yet() {
    let run = guarded(&sound(), &limit(sound(), "loose: {most: 13}")).ends(0);
    assert_eq!(run.serious(), [""; 0], "the limits are those of the first commit");
}

#[test]
fn a_boat_can_not_lift_a_danger_by_limits_of_her_own() {
    let mut tight = of_boat(sound(), "clearance: {least: 1}");
    edit(&mut tight, BOAT, "seat: 2", "gap: 60", "gap: 55");
    let found = guarded(&sound(), &tight).ends(1).serious();
    assert!(found.contains(&"- fault limit-loosened kittiwake/limits/clearance".to_owned()));
    let danger = "- danger gap-too-tight kittiwake/seat-2/rowlock/gap";
    assert!(found.contains(&danger.to_owned()), "{found:?}");
}

#[test]
fn a_boat_keeps_the_limits_of_her_own_that_she_has_there() {
    let strict = of_boat(sound(), "loose: {most: 13}");
    let found = guarded(&strict, &sound()).ends(1).serious();
    assert!(found.iter().any(|one| one.contains("gap-too-loose")), "{found:?}");
    assert!(found.iter().any(|one| one.contains("limit-loosened")), "{found:?}");
}
