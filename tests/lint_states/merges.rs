//! A merge is checked before it is made.

use crate::club::BOAT;
use crate::club::Club;
use crate::club::edit;
use crate::club::sound;
use crate::run::OARS;
use crate::run::lint;
use crate::run::one;
use crate::run::rigged_with_gap;
use crate::run::thicker_spare;

/// A club with two branches: `narrow` narrowed a gap, `spare` brought a thicker spare oar.
fn two_safe_branches() -> Club {
    let (club, base) = (Club::new(), sound());
    let (mut narrow, mut spare) = (base.clone(), base.clone());
    rigged_with_gap(&mut narrow, "58", "6.0", "2026-10-24");
    thicker_spare(&mut spare, "53.3");
    let start = club.commit(0, &[], &base);
    let narrowed = club.commit(1, &[start], &narrow);
    let brought = club.commit(2, &[start], &spare);
    for (name, id) in [("narrow", narrowed), ("spare", brought)] {
        let commit = club.git.find_commit(id).expect("a commit");
        club.git.branch(name, &commit, false).expect("a branch");
    }
    club.check_out(narrowed, &narrow);
    club
}

#[test]
fn two_safe_branches_that_are_unsafe_together_are_told_with_both_sides() {
    let club = two_safe_branches();
    for side in ["narrow", "spare"] {
        let alone = lint(&club, &["--at", side]);
        assert_eq!(alone.code, 0, "{side}: {}", alone.out);
    }
    let merged = lint(&club, &["--merge-with", "spare", "--format", "json"]);
    assert_eq!(merged.code, 1, "{}", merged.err);
    assert_eq!(merged.found(), [one("gap-too-tight", "kittiwake/seat-2/spare/A5", None)]);
    let report = merged.json();
    let labels = report["findings"][0]["spans"].as_array().expect("spans");
    let label = |path: &str| {
        let own = labels.iter().find(|span| span["path"] == path).expect("a span");
        own["label"].as_str().expect("a label").to_owned()
    };
    assert!(label(BOAT).ends_with(", from HEAD"), "{}", label(BOAT));
    assert!(label(OARS).ends_with(", from spare"), "{}", label(OARS));
    let message = report["findings"][0]["message"].as_str().expect("a message");
    assert!(message.ends_with("one part comes from HEAD, another from spare"), "{message}");
}

#[test]
fn the_side_may_be_any_commit_and_nothing_is_written() {
    let club = two_safe_branches();
    let before = listing(club.path());
    let merged = lint(&club, &["--at", "spare", "--merge-with", "narrow", "--format", "json"]);
    assert_eq!(merged.code, 1, "{}", merged.err);
    assert_eq!(listing(club.path()), before);
}

fn listing(folder: &std::path::Path) -> Vec<std::path::PathBuf> {
    let mut all = Vec::new();
    for entry in std::fs::read_dir(folder).expect("a folder") {
        let path = entry.expect("an entry").path();
        if path.is_dir() {
            all.extend(listing(&path));
        }
        all.push(path);
    }
    all.sort();
    all
}

#[test]
fn since_the_other_branch_only_what_the_merge_brings_is_new() {
    let club = two_safe_branches();
    let words = ["--merge-with", "spare", "--since", "spare", "--format", "json"];
    let merged = lint(&club, &words);
    let expected = [one("gap-too-tight", "kittiwake/seat-2/spare/A5", Some("new"))];
    assert_eq!(merged.found(), expected, "{}", merged.err);
}

#[test]
fn a_file_that_both_sides_changed_in_one_place_is_not_checked() {
    let (club, base) = (Club::new(), sound());
    let (mut one_side, mut other) = (base.clone(), base.clone());
    rigged_with_gap(&mut one_side, "58", "6.0", "2026-10-24");
    rigged_with_gap(&mut other, "59", "7.0", "2026-10-25");
    let start = club.commit(0, &[], &base);
    let ours = club.commit(1, &[start], &one_side);
    let theirs = club.commit(2, &[start], &other).to_string();
    club.check_out(ours, &one_side);
    let merged = lint(&club, &["--merge-with", &theirs]);
    assert_eq!(merged.code, 3, "{}", merged.out);
    assert!(merged.err.contains(&format!("Not checked: {BOAT}.")), "{}", merged.err);
}

/// Git's `merge=union` keeps the lines of both sides: a key may then stand twice.
#[test]
fn a_key_that_a_union_merge_doubled_is_told_with_both_places() {
    let (club, mut base) = (Club::new(), sound());
    base.insert(".gitattributes".to_owned(), "*.yaml merge=union\n".to_owned());
    let (mut one_side, mut other) = (base.clone(), base.clone());
    edit(&mut one_side, BOAT, "seat: 2", "      gap: 60", "      gap: 58");
    edit(&mut other, BOAT, "seat: 2", "      gap: 60", "      gap: 59");
    let start = club.commit(0, &[], &base);
    let ours = club.commit(1, &[start], &one_side);
    let theirs = club.commit(2, &[start], &other).to_string();
    club.check_out(ours, &one_side);
    let merged = lint(&club, &["--merge-with", &theirs, "--format", "json"]);
    assert_eq!(merged.code, 1, "{}", merged.err);
    let report = merged.json();
    let findings = report["findings"].as_array().expect("findings");
    let twice = findings.iter().find(|one| one["rule"] == "key-twice").expect("key-twice");
    assert_eq!(twice["name"], "kittiwake/seat-2/rowlock/gap");
    assert_eq!(twice["spans"].as_array().map(Vec::len), Some(2), "{twice}");
}
