//! What can't be read is told and walked over, never taken as removed.

use crate::club::BOAT;
use crate::club::Club;
use crate::club::Files;
use crate::club::GAP;
use crate::club::edit;
use crate::club::sound;
use crate::club::with_gap;
use crate::run::NONE;
use crate::run::json;
use crate::run::row;
use crate::run::rows;
use crate::run::run;
use crate::run::set_by;

fn with_boat(text: &str) -> Files {
    let mut files = sound();
    files.insert(BOAT.to_owned(), text.to_owned());
    files
}

#[test]
fn a_file_that_cannot_be_read_is_told_and_walked_over() {
    for broken in ["<<<<<<< ours\nname: [\n", "", "boat: kittiwake\nname: [unclosed\n"] {
        let club = Club::new();
        let ids = club.line(&[sound(), with_boat(broken), sound(), with_gap("58")]);
        let all = rows(&club, &["history", GAP]);
        let expected = [
            row("first-recorded", NONE, 60.0, ids[0]),
            row("unreadable", NONE, NONE, ids[1]),
            row("changed", 60.0, 58.0, ids[3]),
        ];
        assert_eq!(all, expected, "{broken:?}");
        let blame = json(&club, &["blame", "kittiwake"]);
        assert_eq!(set_by(&blame, "kittiwake/seat-3/seat-mark"), Some(ids[0].to_string()));
    }
}

#[test]
fn a_number_that_cannot_be_read_is_no_change_of_value() {
    let club = Club::new();
    let ids = club.line(&[sound(), with_gap("6O"), sound()]);
    let all = rows(&club, &["history", GAP]);
    assert_eq!(all[1], row("unreadable", 60.0, NONE, ids[1]));
    assert_eq!(all.len(), 2, "{all:?}");
}

#[test]
fn two_records_with_one_id_are_told_and_count_for_nothing() {
    let club = Club::new();
    let mut twice = sound();
    twice.insert("boats/copy.yaml".to_owned(), with_gap("55")[BOAT].clone());
    let ids = club.line(&[sound(), twice, with_gap("58")]);
    let all = rows(&club, &["history", GAP]);
    let expected = [
        row("first-recorded", NONE, 60.0, ids[0]),
        row("unreadable", NONE, NONE, ids[1]),
        row("changed", 60.0, 58.0, ids[2]),
    ];
    assert_eq!(all, expected);
    let words = json(&club, &["history", GAP])["rows"][1]["words"].clone();
    let words = words.as_str().expect("words");
    assert!(words.contains("boats/copy.yaml and boats/kittiwake.yaml"), "{words}");
}

#[test]
fn a_copy_that_says_the_same_changes_nothing() {
    let club = Club::new();
    let mut twice = sound();
    twice.insert("boats/copy.yaml".to_owned(), with_gap("60.0")[BOAT].clone());
    club.line(&[sound(), twice, sound()]);
    assert_eq!(rows(&club, &["history", GAP]).len(), 1);
}

#[test]
fn two_records_that_swap_their_files_keep_their_own_past() {
    let club = Club::new();
    let fulmar = with_gap("63")[BOAT].replace("kittiwake", "fulmar");
    let mut first = sound();
    first.insert("boats/fulmar.yaml".to_owned(), fulmar.clone());
    let mut swapped = first.clone();
    swapped.insert("boats/fulmar.yaml".to_owned(), first[BOAT].clone());
    swapped.insert(BOAT.to_owned(), fulmar);
    let ids = club.line(&[first, swapped]);
    assert_eq!(rows(&club, &["history", GAP]), [row("first-recorded", NONE, 60.0, ids[0])]);
    let other = rows(&club, &["history", "fulmar/seat-2/rowlock/gap"]);
    assert_eq!(other, [row("first-recorded", NONE, 63.0, ids[0])]);
}

#[test]
fn a_boat_that_cannot_be_read_now_is_not_blamed_on_anyone() {
    let club = Club::new();
    club.line(&[sound()]);
    club.lay_out(&with_boat("name: [\n"));
    let refused = run(&club, &["blame", "kittiwake"]);
    assert_eq!(refused.code, Some(3), "{}", refused.out);
    assert!(refused.err.contains("can't be read"), "{}", refused.err);
}

#[test]
fn a_commit_without_any_book_is_walked_over_as_one_without_the_boat() {
    let club = Club::new();
    let readme: Files = [("README".to_owned(), "a club\n".to_owned())].into();
    let ids = club.line(&[readme, sound()]);
    assert_eq!(rows(&club, &["history", GAP]), [row("first-recorded", NONE, 60.0, ids[1])]);
}

#[test]
fn a_knock_of_the_same_day_is_kept_apart_from_the_other() {
    let club = Club::new();
    let knocks = |whats: &[&str]| {
        let mut files = sound();
        let each: String =
            whats.iter().map(|what| format!("  - {{date: 2026-10-18, what: {what}}}\n")).collect();
        let text = files.get_mut(BOAT).expect("the boat");
        text.push_str(&format!("knocks:\n{each}"));
        files
    };
    let mut states = vec![knocks(&["rolled"]), knocks(&["rolled", "dropped"])];
    edit(&mut states[0], BOAT, "knocks", "rolled", "rolled");
    let ids = club.line(&states);
    let all = rows(&club, &["history", "kittiwake/knocks/2026-10-18/what"]);
    assert_eq!(all.len(), 2, "{all:?}");
    assert_eq!(all[1].3, Some(ids[1].to_string()));
}
