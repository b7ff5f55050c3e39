//! `waive` and `waivers`: a waiver is written only if it counts, and all of them are listed.

use crate::run::BOAT;
use crate::run::Club;
use crate::run::Run;

const ROLL: &str = "kittiwake/rigged/level/roll";
const WAIVERS: &str = "waivers.yaml";

/// A boat that lies 1.5 deg over: a fault.
fn rolled() -> Club {
    Club::new().edit(BOAT, "roll: 0.1", "roll: 1.5")
}

fn waive(club: &Club, name: &str, rule: &str, by: &str, until: &str) -> Run {
    let words = ["waive", name, rule, "--because", "the trailer stands on sand", "--by", by];
    club.run(&[&words[..], &["--until", until, "--as-of", "2026-11-01"]].concat())
}

#[test]
fn a_waiver_is_written_and_lint_shows_the_finding_as_waived() {
    let club = rolled();
    club.lint(&["--only", ROLL]).ends(1);
    let run = waive(&club, ROLL, "boat-not-level", "Tomas Reyne", "2026-12-01").ends(0);
    assert_eq!(
        run.out,
        "waivers.yaml: kittiwake/rigged/level/roll boat-not-level is waived, at 1.50 deg\n  \
         by Tomas Reyne until 2026-12-01, 30 days from 2026-11-01\n"
    );
    assert_eq!(
        club.text(WAIVERS),
        "- finding: kittiwake/rigged/level/roll\n  rule: boat-not-level\n  because: the trailer \
         stands on sand\n  by: Tomas Reyne\n  until: 2026-12-01\n  at: 1.50\n"
    );
    let lint = club.lint(&["--only", ROLL, "--format", "json"]).ends(0);
    assert!(lint.out.contains("\"because\":\"the trailer stands on sand\""), "{}", lint.out);
    club.lint(&["--only", ROLL, "--no-waivers"]).ends(1);
    let later = club.run(&["lint", "--only", ROLL, "--as-of", "2026-12-02"]).ends(1);
    assert!(later.out.contains("waiver-lapsed"), "{}", later.out);
}

#[test]
fn a_lapsed_waiver_is_granted_anew_in_its_place() {
    let club = rolled();
    waive(&club, ROLL, "boat-not-level", "Tomas Reyne", "2026-12-01").ends(0);
    let club = club.edit(BOAT, "roll: 1.5", "roll: 1.7");
    assert!(club.lint(&["--only", ROLL]).ends(1).out.contains("waiver-lapsed"));
    waive(&club, ROLL, "boat-not-level", "Tomas Reyne", "2026-12-01").ends(0);
    assert_eq!(club.text(WAIVERS).matches("- finding").count(), 1);
    assert!(club.text(WAIVERS).contains("at: 1.70"));
    club.lint(&["--only", ROLL]).ends(0);
}

#[test]
fn a_danger_is_never_waived() {
    let club = Club::tight();
    let gap = "kittiwake/seat-1/rowlock/gap";
    let run = waive(&club, gap, "gap-too-tight", "Tomas Reyne", "2026-12-01").ends(2);
    assert!(run.err.contains("is a danger, and a danger can't be waived."), "{}", run.err);
    assert!(run.err.ends_with("Nothing is written.\n"), "{}", run.err);
    assert!(!club.path(WAIVERS).exists());
}

#[test]
fn what_the_waiver_rules_would_object_to_is_refused_with_their_words() {
    let club = rolled();
    let cases = [
        ("Ines Marlow", "2026-12-01", "Ines Marlow may not waive"),
        ("Tomas Reyne", "2027-03-01", "it lasts 120 days; the club allows 60 days"),
        ("Tomas Reyne", "2026-10-31", "its last day was 2026-10-31"),
        (" ", "2026-12-01", "A waiver says why, and who granted it."),
    ];
    for (by, until, why) in cases {
        let run = waive(&club, ROLL, "boat-not-level", by, until).ends(2);
        assert!(run.err.contains(why), "{by}, {until}: {}", run.err);
        assert!(!club.path(WAIVERS).exists(), "{by}, {until}");
    }
}

#[test]
fn a_finding_that_is_not_there_is_refused_and_the_nearest_is_named() {
    let club = rolled();
    let cases = [
        (ROLL, "overdue", "At that name there is: boat-not-level"),
        (
            "kittiwake/rigged/level/trim",
            "boat-not-level",
            "There is one at kittiwake/rigged/level/roll.",
        ),
        ("kittiwake", "boat-not-levl", "did you mean boat-not-level?"),
        ("kittiwake", "horn-hooks", "There is none anywhere in the book"),
    ];
    for (name, rule, told) in cases {
        let run = waive(&club, name, rule, "Tomas Reyne", "2026-12-01").ends(2);
        assert!(run.err.contains(told), "{name} {rule}: {}", run.err);
    }
}

#[test]
fn waivers_that_can_not_be_read_stay_as_they_are() {
    let club = rolled();
    std::fs::write(club.path(WAIVERS), "- finding: [kittiwake\n").expect("a written file");
    let run = waive(&club, ROLL, "boat-not-level", "Tomas Reyne", "2026-12-01").ends(3);
    assert!(run.err.contains("waivers.yaml is as it was"), "{}", run.err);
    assert_eq!(club.text(WAIVERS), "- finding: [kittiwake\n");
}

#[test]
fn all_waivers_are_listed_with_the_next_to_lapse() {
    let club = rolled().edit(BOAT, "foot-straps: ok", "foot-straps: watch");
    let none = club.run(&["waivers", "--as-of", "2026-11-01"]).ends(0);
    assert!(none.out.starts_with("No waivers"), "{}", none.out);
    let straps = "kittiwake/rigged/walk-round/foot-straps";
    waive(&club, straps, "walk-round", "Tomas Reyne", "2026-12-20").ends(0);
    waive(&club, ROLL, "boat-not-level", "Tomas Reyne", "2026-12-01").ends(0);
    let run = club.run(&["waivers", "--as-of", "2026-11-01"]).ends(0);
    let head = format!("2 waivers; the next to lapse: {ROLL} after 2026-12-01, 30 days left\n");
    assert!(run.out.starts_with(&head), "{}", run.out);
    assert!(run.out.contains("until 2026-12-20, 49 days left\n"), "{}", run.out);
    let later = club.run(&["waivers", "--as-of", "2026-12-02"]).ends(0);
    assert!(later.out.contains("until 2026-12-01, past\n"), "{}", later.out);
    assert!(later.out.contains("has lapsed: its last day was 2026-12-01"), "{}", later.out);
}
