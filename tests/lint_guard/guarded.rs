//! Limits and waivers taken from another commit.

use crate::club::BOAT;
use crate::club::Club;
use crate::club::Files;
use crate::club::edit;
use crate::club::sound;
use crate::run::Ran;
use crate::run::lint;
use crate::run::one;

/// Checks the second state by the limits of the first.
fn guarded(first: Files, second: Files) -> Ran {
    let club = Club::new();
    let ids = club.line(&[first, second]);
    lint(&club, &["--rules-from", &ids[0].to_string(), "--format", "json"])
}

/// The sound book with limits of the club's own.
fn with_limits(limits: &str) -> Files {
    let mut files = sound();
    let written = format!("limits:\n  surfboat:\n    {limits}\npeople:");
    edit(&mut files, "club.yaml", "", "people:", &written);
    files
}

#[test]
fn a_limit_that_the_club_loosened_is_told_at_its_line() {
    let ran = guarded(sound(), with_limits("loose: {most: 18}"));
    assert_eq!(ran.found(), [one("limit-loosened", "club/limits/surfboat/loose", None)]);
    assert_eq!(ran.code, 1);
    let report = ran.json();
    let span = &report["findings"][0]["spans"][0];
    let club = &with_limits("loose: {most: 18}")["club.yaml"];
    let line = club.lines().position(|line| line.contains("loose:")).expect("the limit") + 1;
    assert_eq!((&span["path"], &span["start"]["line"]), (&"club.yaml".into(), &line.into()));
}

#[test]
fn a_limit_that_was_switched_off_or_taken_out_is_told() {
    let off = guarded(sound(), with_limits("loose: none"));
    assert_eq!(off.found(), [one("limit-loosened", "club/limits/surfboat/loose", None)]);
    let out = guarded(with_limits("loose: {most: 14}"), sound());
    assert_eq!(out.found(), [one("limit-loosened", "club/limits/surfboat/loose", None)]);
}

#[test]
fn a_limit_that_a_boat_loosened_for_herself_is_told() {
    let mut own = sound();
    edit(&mut own, BOAT, "", "spares: [A5]", "spares: [A5]\nlimits: {loose: {most: 18}}");
    let ran = guarded(sound(), own);
    assert_eq!(ran.found(), [one("limit-loosened", "kittiwake/limits/loose", None)]);
}

#[test]
fn a_tighter_limit_is_no_finding_and_does_not_count_yet() {
    let ran = guarded(sound(), with_limits("loose: {most: 13}"));
    assert_eq!(ran.found(), [], "the limits are those of the first commit");
    assert_eq!(ran.code, 0);
    assert!(ran.err.contains("Limits and waivers are those of"), "{}", ran.err);
}

#[test]
fn a_waiver_granted_in_the_same_change_does_not_count() {
    let mut fault = sound();
    edit(&mut fault, BOAT, "rigged", "date: 2026-10-17", "date: 2026-10-24");
    edit(&mut fault, BOAT, "seat: 3", "chock-to-pin: 600", "chock-to-pin: 640");
    let waiver = "- finding: kittiwake\n  rule: chocks-unlike\n  because: a tall rower\n  by: Tomas Reyne\n  until: 2026-11-30\n  at: 40\n";
    fault.insert("waivers.yaml".to_owned(), waiver.to_owned());
    let club = Club::new();
    let ids = club.line(&[sound(), fault]);
    assert_eq!(lint(&club, &[]).code, 0);
    assert_eq!(lint(&club, &["--rules-from", &ids[0].to_string()]).code, 1);
}

#[test]
fn a_boat_can_t_lift_a_danger_by_limits_of_her_own() {
    let mut own = sound();
    edit(&mut own, BOAT, "", "spares: [A5]", "spares: [A5]\nlimits: {clearance: {least: 1}}");
    edit(&mut own, BOAT, "seat: 2", "gap: 60", "gap: 55");
    edit(&mut own, BOAT, "seat: 2", "clearance: 8.0", "clearance: 3.0");
    edit(&mut own, BOAT, "rigged", "date: 2026-10-17", "date: 2026-10-24");
    let ran = guarded(sound(), own);
    let found = ran.found();
    assert!(
        found.contains(&one("limit-loosened", "kittiwake/limits/clearance", None)),
        "{found:?}"
    );
    assert!(
        found.contains(&one("gap-too-tight", "kittiwake/seat-2/rowlock/gap", None)),
        "{found:?}"
    );
}

#[test]
fn a_boat_keeps_the_limits_of_her_own_that_she_has_there() {
    let mut strict = sound();
    edit(&mut strict, BOAT, "", "spares: [A5]", "spares: [A5]\nlimits: {loose: {most: 13}}");
    let ran = guarded(strict.clone(), sound());
    let found = ran.found();
    assert!(found.iter().any(|one| one.0 == "gap-too-loose"), "{found:?}");
    assert!(found.iter().any(|one| one.0 == "limit-loosened"), "{found:?}");
}

#[test]
fn both_ends_of_a_limit_are_told() {
    let ran = guarded(sound(), with_limits("pitch: {least: 1 deg, most: 9 deg}"));
    let ends = ran.found().iter().filter(|one| one.0 == "limit-loosened").count();
    assert_eq!(ends, 2, "{}", ran.out);
}
