//! Texts that can't be had: in conflict, or kept out of the folder. What is in them is not missing.

use std::fs;

use crate::club::BOAT;
use crate::club::Club;
use crate::club::Files;
use crate::club::edit;
use crate::club::sound;
use crate::run::DAY;
use crate::run::OARS;
use crate::run::Run;
use crate::run::UNFIT;
use crate::run::club_of;
use crate::run::lint;
use crate::run::stage_merge;
use crate::run::told;
use crate::run::unfit;

const CREW: &str = "crews/masters-a.yaml";

/// One commit, and two that follow it and change one line of a file differently; the first of the
/// two is checked out, the other is the branch `theirs`.
fn parted(base: &Files, path: &str, line: &str, both: [&str; 2]) -> (Club, [Files; 2]) {
    let club = Club::new();
    let sides = both.map(|to| {
        let mut files = base.clone();
        edit(&mut files, path, "", line, to);
        files
    });
    let first = club.commit(DAY - 9, &[], base);
    let [ours, theirs] = sides.each_ref().map(|files| club.commit(DAY - 1, &[first], files));
    club.check_out(ours, &sides[0]);
    club.git.reference("refs/heads/theirs", theirs, false, "").expect("a branch");
    (club, sides)
}

fn of_oars(base: &Files) -> Club {
    parted(base, OARS, "length: 3860", ["length: 3850", "length: 3840"]).0
}

/// Checks that a text is told as not checked, and nothing as missing.
#[track_caller]
fn is_unread(run: &Run, path: &str, rule: &str) {
    let json = run.json();
    let all = json["not_checked"].as_array().expect("a list");
    let unread = format!("the text of {path}");
    let missed = |one: &serde_json::Value| {
        one["rule"] == rule && one["missing"].to_string().contains(&unread)
    };
    assert!(all.iter().any(missed), "{json:#}");
    assert!(all.iter().any(|one| one["name"] == path), "{json:#}");
    let told = format!("{}{}", run.out, run.err);
    for missing in ["not in the book", "there is no", "no such", "no crew of hers", "has no oar"] {
        assert!(!told.contains(missing), "{missing}: {told}");
    }
}

#[test]
fn an_oar_set_in_conflict_is_not_missing() {
    let club = of_oars(&sound());
    let run = told(&club, &["--merge-with", "theirs"]).ends(3);
    is_unread(&run, OARS, "gap-not-measured");
    is_unread(&run, OARS, "no-such-record");
    is_unread(&run, OARS, "gap-too-loose");
    assert_eq!(run.serious(), [""; 0]);
    let run = told(&club, &["--merge-with", "theirs", "--only", "long-ash"]).ends(3);
    assert!(run.err.contains("can't be read here"), "{}", run.err);
    let run = told(&club, &["--merge-with", "theirs", "--since", "HEAD"]).ends(3);
    assert_eq!(run.serious(), [""; 0], "nothing is new because it can't be read");
}

#[test]
fn a_danger_beside_it_is_told_all_the_same() {
    let mut base = sound();
    edit(&mut base, BOAT, "seat: 3", "gap: 60", "gap: not measured");
    let run = told(&of_oars(&base), &["--merge-with", "theirs"]).ends(3);
    let danger = "- danger gap-not-measured kittiwake/seat-3/rowlock";
    assert!(run.found().contains(&danger.to_owned()), "{:?}", run.found());
    let run = told(&of_oars(&unfit()), &["--merge-with", "theirs"]).ends(3);
    assert_eq!(run.found()[0], format!("- {UNFIT}"));
}

#[test]
fn a_boat_in_conflict_is_not_missing_and_her_waivers_are_not_unused() {
    let mut base = sound();
    let waiver = "- finding: kittiwake\n  rule: chocks-unlike\n  because: a short rower\n  \
                  by: Tomas Reyne\n  until: 2026-11-20\n  at: 30\n";
    base.insert("waivers.yaml".to_owned(), waiver.to_owned());
    let (club, _) = parted(&base, BOAT, "wind: light", ["wind: none", "wind: strong"]);
    let run = told(&club, &["--merge-with", "theirs"]).ends(3);
    is_unread(&run, BOAT, "waiver-unused");
    is_unread(&run, BOAT, "no-such-record");
    assert_eq!(run.serious(), [""; 0]);
}

#[test]
fn a_crew_in_conflict_is_not_taken_for_one_without_a_stature() {
    let mut base = sound();
    edit(&mut base, CREW, "", "boat: kittiwake", "boat: kittiwake\n# a\nx-note: a");
    let (club, _) = parted(&base, CREW, "x-note: a", ["x-note: b", "x-note: c"]);
    let run = told(&club, &["--merge-with", "theirs"]).ends(3);
    is_unread(&run, CREW, "chock-distance");
}

#[test]
fn limits_in_conflict_are_not_loosened() {
    let mut base = sound();
    let limits = "limits:\n  surfboat:\n    chocks: {most: 12, source: agreed}\npeople:";
    edit(&mut base, "club.yaml", "", "people:", limits);
    let (club, _) = parted(&base, "club.yaml", "most: 12", ["most: 11", "most: 10"]);
    let run = told(&club, &["--merge-with", "theirs", "--rules-from", "HEAD~1"]).ends(3);
    is_unread(&run, "club.yaml", "limit-loosened");
    assert!(!run.found().iter().any(|one| one.contains("limit-loosened")), "{:?}", run.found());
}

#[test]
fn nothing_to_check_is_not_said_of_a_book_that_is_all_in_conflict() {
    let mut base = sound();
    base.retain(|path, _| path == "club.yaml" || path == OARS);
    let run = lint(&of_oars(&base), &["--merge-with", "theirs"]).ends(3);
    assert!(!run.err.contains("Nothing to check"), "{}", run.err);
}

#[test]
fn in_the_folder_of_an_unfinished_merge_it_is_the_same() {
    let (club, sides) = parted(&sound(), OARS, "length: 3860", ["length: 3850", "length: 3840"]);
    stage_merge(&club, "theirs");
    let file = club.path().join(OARS);
    let [ours, theirs] = sides.each_ref().map(|files| files[OARS].as_str());
    fs::write(&file, format!("<<<<<<< HEAD\n{ours}=======\n{theirs}>>>>>>> theirs\n"))
        .expect("written");
    let run = told(&club, &[]).ends(3);
    is_unread(&run, OARS, "gap-not-measured");
    assert_eq!(run.serious(), [""; 0]);
    assert!(run.err.contains("merge by hand"), "{}", run.err);
    fs::remove_file(&file).expect("it was there");
    is_unread(&told(&club, &[]).ends(3), OARS, "gap-not-measured");
    fs::write(&file, theirs).expect("written");
    let read = told(&club, &[]).json();
    assert_eq!(read["checked"]["oar_sets"], 1, "what is merged by hand is read");
    assert!(!read["not_checked"].to_string().contains("the text of"), "{read:#}");
}

#[test]
fn a_set_that_is_broken_is_a_danger_that_is_not_called_missing() {
    let mut files = sound();
    files.insert(OARS.to_owned(), "oar-set: [\n".to_owned());
    let club = Club::new();
    let id = club.commit(DAY - 1, &[], &files);
    club.check_out(id, &files);
    let run = told(&club, &[]).ends(1);
    assert!(run.found().iter().any(|one| one.contains("danger gap-not-measured")));
    assert!(!run.out.contains("not in the book"), "{}", run.out);
    assert!(run.out.contains("the rest of oars/long-ash.yaml can't be read"), "{}", run.out);
    let whole = &sound()[OARS];
    let (before, _) = whole.split_once("widest: 52").expect("a section");
    files.insert(OARS.to_owned(), format!("{before}widest: [\n"));
    club.lay_out(&files);
    let run = told(&club, &[]).ends(1);
    let json = run.json();
    let all = json["findings"].as_array().expect("a list").iter();
    let dangers = all.filter(|one| one["rule"] == "gap-not-measured");
    let words: Vec<&str> = dangers.map(|one| one["message"].as_str().expect("words")).collect();
    assert_eq!(words.len(), 5, "{words:?}");
    assert!(words.iter().all(|one| one.contains("can't be read as far as")), "{words:?}");
}

/// Keeps a text out of the folder, as a sparse checkout does.
fn keep_out(club: &Club, path: &str) {
    let mut index = club.git.index().expect("an index");
    let mut entry = index.get_path(std::path::Path::new(path), 0).expect("the text");
    entry.flags |= git2::IndexEntryFlag::EXTENDED.bits();
    entry.flags_extended |= git2::IndexEntryExtendedFlag::SKIP_WORKTREE.bits();
    index.add(&entry).expect("an entry");
    index.write().expect("written");
    fs::remove_file(club.path().join(path)).expect("it was there");
}

#[test]
fn what_is_kept_out_of_the_folder_is_not_missing_and_not_cured() {
    for (path, rule) in [(BOAT, "no-such-record"), (OARS, "gap-not-measured")] {
        let (club, _) = club_of(&sound());
        keep_out(&club, path);
        let run = told(&club, &["--since", "HEAD"]).ends(3);
        is_unread(&run, path, rule);
        assert!(run.err.contains("sparse"), "{}", run.err);
        assert_eq!(run.serious(), [""; 0]);
    }
}
