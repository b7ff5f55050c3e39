//! A reading that changed since the commit before, and the day it was read on.

use std::fs;

use crate::club::BOAT;
use crate::club::Club;
use crate::club::Files;
use crate::club::edit;
use crate::club::sound;
use crate::run::DAY;
use crate::run::OARS;
use crate::run::Run;
use crate::run::club_of;
use crate::run::lint_in;
use crate::run::read_again;
use crate::run::told;

const RULE: &str = "changed-but-not-remeasured";
const CHOCK: &str = "kittiwake/seat-2/chock-to-pin";

fn chock(to: &str) -> Files {
    let mut files = sound();
    edit(&mut files, BOAT, "seat: 2", "chock-to-pin: 600", &format!("chock-to-pin: {to}"));
    files
}

/// What the rule told, as `level name`.
#[track_caller]
fn of_rule(run: &Run) -> Vec<String> {
    let told = run.found().into_iter().filter(|one| one.contains(RULE));
    told.map(|one| one.replace(&format!("{RULE} "), "").replace("- ", "")).collect()
}

/// What the rule tells of files that lie over the sound book, which is committed.
#[track_caller]
fn over_the_sound_book(files: &Files) -> Vec<String> {
    over(&sound(), files)
}

#[track_caller]
fn over(before: &Files, files: &Files) -> Vec<String> {
    let (club, _) = club_of(before);
    club.lay_out(files);
    of_rule(&told(&club, &[]))
}

#[test]
fn a_value_that_changed_on_the_day_it_was_read_before_is_a_fault_at_its_place() {
    let (club, _) = club_of(&sound());
    club.lay_out(&chock("602"));
    let run = told(&club, &[]).ends(1);
    assert_eq!(of_rule(&run), [format!("fault {CHOCK}")]);
    let json = run.json();
    let message = json["findings"][0]["message"].as_str().expect("words");
    assert!(message.contains("600 became 602") && message.contains("2026-10-17"), "{message}");
    let span = &json["findings"][0]["spans"][0];
    let line = fs::read_to_string(club.path().join(BOAT)).expect("a text");
    let line = line.lines().nth(span["start"]["line"].as_u64().expect("a line") as usize - 1);
    assert!(line.is_some_and(|line| line.contains("chock-to-pin: 602")), "{line:?}");
}

#[test]
fn within_a_day_of_reading_it_is_a_note() {
    let (club, _) = club_of(&sound());
    club.lay_out(&chock("602"));
    let on = |day| of_rule(&lint_in(club.path(), &["--format", "json", "--as-of", day]));
    for day in ["2026-10-17", "2026-10-18"] {
        assert_eq!(on(day), [format!("note {CHOCK}")], "{day}");
    }
    for day in ["2026-10-16", "2026-10-19"] {
        assert_eq!(on(day), [format!("fault {CHOCK}")], "{day}");
    }
}

#[test]
fn a_new_rig_day_or_an_entry_under_read_again_is_a_reading() {
    let mut rigged = chock("602");
    edit(&mut rigged, BOAT, "rigged", "2026-10-17", "2026-10-31");
    assert_eq!(over_the_sound_book(&rigged), [""; 0]);
    let mut again = chock("602");
    read_again(&mut again, 31, "seat-2/chock-to-pin");
    assert_eq!(over_the_sound_book(&again), [""; 0]);
    let mut other = chock("602");
    read_again(&mut other, 31, "seat-1/chock-to-pin");
    assert_eq!(over_the_sound_book(&other), [format!("fault {CHOCK}")]);
    let mut earlier = chock("602");
    edit(&mut earlier, BOAT, "rigged", "2026-10-17", "2026-10-10");
    assert_eq!(over_the_sound_book(&earlier), [format!("fault {CHOCK}")]);
}

#[test]
fn another_way_of_writing_the_same_is_no_change() {
    let mut written = sound();
    edit(&mut written, BOAT, "seat: 2", "square: 11,", "square: 11.0,");
    edit(&mut written, BOAT, "seat: 2", "spread: 792", "spread: 79.2 cm");
    edit(&mut written, BOAT, "seat: 3", "seat-mark: 61\n", "");
    edit(
        &mut written,
        BOAT,
        "seat: 3",
        "chock-to-pin: 600\n",
        "seat-mark: 61\n    chock-to-pin: 600\n",
    );
    assert_eq!(over_the_sound_book(&written), [""; 0]);
}

#[test]
fn what_is_no_reading_may_change_on_any_day() {
    let mut files = sound();
    edit(&mut files, BOAT, "seat: 2", "chock-to-pin: 600", "chock-to-pin: 600\n    note: sanded");
    edit(&mut files, BOAT, "seat: 2", "oar: A2", "oar: A5");
    edit(&mut files, BOAT, "spares", "[A5]", "[A2]");
    edit(&mut files, BOAT, "wind", "light", "none");
    assert_eq!(over_the_sound_book(&files), [""; 0]);
}

#[test]
fn an_oars_value_has_the_day_of_its_set() {
    let mut files = sound();
    edit(&mut files, OARS, "oar: A2", "length: 3860", "length: 3861");
    assert_eq!(over_the_sound_book(&files), ["fault long-ash/A2/length"]);
    edit(&mut files, OARS, "measured", "2026-10-03", "2026-10-30");
    assert_eq!(over_the_sound_book(&files), [""; 0]);
}

#[test]
fn a_file_that_was_renamed_hides_no_change_and_makes_none() {
    let moved = |mut files: Files| {
        let text = files.remove(BOAT).expect("the boat");
        files.insert("boats/heavy/k.yml".to_owned(), text);
        files
    };
    assert_eq!(over_the_sound_book(&moved(sound())), [""; 0]);
    assert_eq!(over_the_sound_book(&moved(chock("602"))), [format!("fault {CHOCK}")]);
}

#[test]
fn a_value_that_comes_or_goes_has_not_changed() {
    let mut without = sound();
    edit(&mut without, BOAT, "seat: 2", "    seat-mark: 61\n", "");
    assert_eq!(over(&without, &sound()), [""; 0]);
    assert_eq!(over(&sound(), &without), [""; 0]);
}

#[test]
fn a_merge_that_keeps_the_value_of_one_parent_has_changed_nothing() {
    let club = Club::new();
    let first = club.commit(DAY - 9, &[], &sound());
    let ours = club.commit(DAY - 8, &[first], &chock("602"));
    let theirs = club.commit(DAY - 8, &[first], &chock("604"));
    let told_of = |files: &Files| {
        let merge = club.commit(DAY - 3, &[ours, theirs], files).to_string();
        of_rule(&told(&club, &["--at", &merge]))
    };
    assert_eq!(told_of(&chock("602")), [""; 0]);
    assert_eq!(told_of(&chock("604")), [""; 0]);
    assert_eq!(told_of(&chock("600")), [format!("fault {CHOCK}")]);
    assert_eq!(told_of(&chock("603")), [format!("fault {CHOCK}")]);
}

#[test]
fn while_a_merge_is_being_finished_both_sides_are_the_commits_before() {
    let club = Club::new();
    let first = club.commit(DAY - 9, &[], &sound());
    let ours = club.commit(DAY - 8, &[first], &sound());
    let theirs = club.commit(DAY - 8, &[first], &chock("604"));
    club.check_out(ours, &chock("604"));
    crate::run::stage(&club, &chock("604"));
    for staged in [&[][..], &["--staged"]] {
        assert_eq!(of_rule(&told(&club, staged)), [format!("fault {CHOCK}")]);
    }
    fs::write(club.git.path().join("MERGE_HEAD"), format!("{theirs}\n")).expect("written");
    for staged in [&[][..], &["--staged"]] {
        assert_eq!(of_rule(&told(&club, staged)), [""; 0]);
    }
}

#[test]
fn a_commit_is_held_beside_the_one_before_and_the_first_beside_none() {
    let club = Club::new();
    let first = club.commit(DAY - 9, &[], &sound());
    let second = club.commit(DAY - 8, &[first], &chock("602"));
    let third = club.commit(DAY - 7, &[second], &chock("602"));
    for (id, found) in [(first, vec![]), (second, vec![format!("fault {CHOCK}")]), (third, vec![])]
    {
        let run = told(&club, &["--at", &id.to_string()]);
        assert_eq!(of_rule(&run), found);
        assert_eq!(run.json()["not_checked"], serde_json::json!([]));
    }
}

#[test]
fn at_the_edge_of_a_shallow_clone_it_is_counted_as_not_checked() {
    let club = Club::new();
    let first = club.commit(DAY - 9, &[], &sound());
    let second = club.commit(DAY - 8, &[first], &chock("602"));
    fs::write(club.git.path().join("shallow"), format!("{second}\n")).expect("written");
    let run = told(&club, &["--at", &second.to_string()]).ends(0);
    assert_eq!(of_rule(&run), [""; 0]);
    let missed = &run.json()["not_checked"][0];
    assert_eq!(missed["rule"], RULE);
    assert!(missed["missing"][0].as_str().is_some_and(|why| why.contains("shallow")), "{missed}");
    let text = crate::run::lint(&club, &["--at", &second.to_string()]).out;
    assert!(text.contains("1 check not made"), "{text}");
    club.check_out(second, &chock("604"));
    assert_eq!(of_rule(&told(&club, &[])), [format!("fault {CHOCK}")], "its own state is here");
}

#[test]
fn without_a_repository_there_is_no_commit_before_and_nothing_missed() {
    let (club, _) = club_of(&sound());
    club.lay_out(&chock("602"));
    fs::remove_dir_all(club.path().join(".git")).expect("removed");
    let run = told(&club, &[]).ends(0);
    assert_eq!(run.json()["not_checked"], serde_json::json!([]));
}

#[test]
fn a_repository_that_can_not_be_read_is_counted_as_not_checked() {
    let (club, _) = club_of(&sound());
    club.lay_out(&chock("602"));
    fs::remove_dir_all(club.path().join(".git/objects")).expect("removed");
    fs::create_dir(club.path().join(".git/objects")).expect("an empty folder");
    let run = told(&club, &[]).ends(0);
    assert_eq!(run.json()["not_checked"][0]["rule"], RULE);
}

#[test]
fn it_can_be_waived_and_is_only_shown_on_a_boat_out_of_use() {
    let mut waived = chock("602");
    let waiver = format!(
        "- finding: {CHOCK}\n  rule: {RULE}\n  because: the pencil slipped\n  by: Tomas Reyne\n  \
         until: 2026-11-20\n"
    );
    waived.insert("waivers.yaml".to_owned(), waiver);
    let (club, _) = club_of(&sound());
    club.lay_out(&waived);
    fs::write(club.path().join("waivers.yaml"), &waived["waivers.yaml"]).expect("written");
    let run = told(&club, &[]).ends(0);
    assert_eq!(run.serious(), [format!("- fault {RULE} {CHOCK}")]);
    fs::remove_dir_all(club.path().join(".git")).expect("removed");
    assert_eq!(told(&club, &[]).ends(0).serious(), [""; 0], "nobody knows whether it is unused");
    let late = ["--format", "json", "--as-of", "2026-11-21"];
    assert_eq!(
        lint_in(club.path(), &late).ends(1).serious(),
        [format!("- fault waiver-unused {CHOCK}")]
    );
    let mut unused = chock("602");
    let out = "out-of-use: {since: 2026-10-20, by: Ines Marlow, because: cracked pin}\nseats:";
    edit(&mut unused, BOAT, "", "seats:\n", &format!("{out}\n"));
    let (club, _) = club_of(&sound());
    club.lay_out(&unused);
    assert_eq!(of_rule(&told(&club, &[]).ends(0)), [format!("fault {CHOCK}")]);
}

#[test]
fn a_change_that_takes_two_commits_is_held_beside_the_state_asked_for() {
    let mut changed = sound();
    edit(&mut changed, BOAT, "seat: 2", "chock-to-pin: 600", "chock-to-pin: 602");
    let mut second = changed.clone();
    edit(&mut second, BOAT, "", "wind: light", "wind: none");
    let club = Club::new();
    let ids = club.line(&[sound(), changed, second]);
    let run = told(&club, &["--at", "HEAD", "--since", &ids[0].to_string()]).ends(1);
    let fault = "new fault changed-but-not-remeasured kittiwake/seat-2/chock-to-pin";
    assert_eq!(run.serious(), [fault]);
}
