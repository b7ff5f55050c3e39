//! Merges: a row only where a value was chosen or made up.

use crate::club::BOAT;
use crate::club::Club;
use crate::club::GAP;
use crate::club::edit;
use crate::club::sound;
use crate::club::with_gap;
use crate::run::NONE;
use crate::run::json;
use crate::run::row;
use crate::run::rows;
use crate::run::set_by;

#[test]
fn a_merge_of_one_changed_side_makes_no_row() {
    let club = Club::new();
    let first = club.commit(0, &[], &sound());
    let changed = club.commit(1, &[first], &with_gap("58"));
    let other = club.commit(2, &[first], &sound());
    let merge = club.commit(3, &[other, changed], &with_gap("58"));
    club.check_out(merge, &with_gap("58"));
    let expected = [row("first-recorded", NONE, 60.0, first), row("changed", 60.0, 58.0, changed)];
    assert_eq!(rows(&club, &["history", GAP]), expected);
    assert_eq!(set_by(&json(&club, &["blame", "kittiwake"]), GAP), Some(changed.to_string()));
}

#[test]
fn a_merge_of_two_changed_sides_tells_which_was_kept() {
    let club = Club::new();
    let first = club.commit(0, &[], &sound());
    let ours = club.commit(1, &[first], &with_gap("58"));
    let theirs = club.commit(2, &[first], &with_gap("61"));
    let merge = club.commit(3, &[ours, theirs], &with_gap("61"));
    club.check_out(merge, &with_gap("61"));
    let all = rows(&club, &["history", GAP]);
    assert_eq!(all.len(), 4, "{all:?}");
    assert_eq!(all[3], row("merge", 58.0, 61.0, merge));
    let words = json(&club, &["history", GAP])["rows"][3]["words"].clone();
    let (kept, lost) = (&theirs.to_string()[..8], &ours.to_string()[..8]);
    assert_eq!(words, format!("merge kept 61 mm from {kept}, not 58 mm from {lost}"));
    assert_eq!(set_by(&json(&club, &["blame", "kittiwake"]), GAP), Some(theirs.to_string()));
}

#[test]
fn a_side_that_left_a_value_out_is_told_as_such() {
    let club = Club::new();
    let mut without = sound();
    edit(&mut without, BOAT, "seat: 2", "      gap: 60\n", "");
    let first = club.commit(0, &[], &sound());
    let ours = club.commit(1, &[first], &without);
    let theirs = club.commit(2, &[first], &with_gap("61"));
    let short = [&theirs, &ours].map(|id| id.to_string()[..8].to_owned());
    for (kept, words) in [
        (with_gap("61"), format!("merge kept 61 mm from {}, left out in {}", short[0], short[1])),
        (without, format!("merge left it out, as in {}, not 61 mm from {}", short[1], short[0])),
    ] {
        let merge = club.commit(3, &[ours, theirs], &kept);
        club.check_out(merge, &kept);
        let all = json(&club, &["history", GAP]);
        let last = all["rows"].as_array().expect("rows").last().expect("a row");
        assert_eq!(last["words"], words);
    }
}

#[test]
fn a_merge_that_drops_the_only_change_is_told() {
    let club = Club::new();
    let first = club.commit(0, &[], &sound());
    let changed = club.commit(1, &[first], &with_gap("58"));
    let other = club.commit(2, &[first], &sound());
    let merge = club.commit(3, &[other, changed], &sound());
    club.check_out(merge, &sound());
    let all = rows(&club, &["history", GAP]);
    assert_eq!(all.last(), Some(&row("merge", 58.0, 60.0, merge)));
    assert_eq!(set_by(&json(&club, &["blame", "kittiwake"]), GAP), Some(first.to_string()));
}

#[test]
fn a_merge_with_a_value_of_neither_side_set_it() {
    let club = Club::new();
    let first = club.commit(0, &[], &sound());
    let ours = club.commit(1, &[first], &with_gap("58"));
    let theirs = club.commit(2, &[first], &with_gap("61"));
    let merge = club.commit(3, &[ours, theirs], &with_gap("59.5"));
    club.check_out(merge, &with_gap("59.5"));
    let all = rows(&club, &["history", GAP]);
    assert_eq!(all.last(), Some(&row("merge-anew", 58.0, 59.5, merge)));
    assert_eq!(set_by(&json(&club, &["blame", "kittiwake"]), GAP), Some(merge.to_string()));
}

#[test]
fn a_merge_of_equal_sides_that_changes_the_value_is_a_change() {
    let club = Club::new();
    let first = club.commit(0, &[], &sound());
    let sides = [club.commit(1, &[first], &sound()), club.commit(2, &[first], &with_gap("60.0"))];
    let merge = club.commit(3, &sides, &with_gap("57"));
    club.check_out(merge, &with_gap("57"));
    let expected = [row("first-recorded", NONE, 60.0, first), row("changed", 60.0, 57.0, merge)];
    assert_eq!(rows(&club, &["history", GAP]), expected);
}

#[test]
fn a_history_that_was_joined_to_this_one_set_nothing_aside() {
    let club = Club::new();
    let readme = [("README".to_owned(), "a club\n".to_owned())].into();
    let own = club.commit(0, &[], &sound());
    let other = club.commit(1, &[], &readme);
    let merge = club.commit(2, &[other, own], &sound());
    club.check_out(merge, &sound());
    assert_eq!(rows(&club, &["history", GAP]), [row("first-recorded", NONE, 60.0, own)]);
}

#[test]
fn criss_cross_merges_keep_apart_what_each_chose() {
    let club = Club::new();
    let first = club.commit(0, &[], &sound());
    let ours = club.commit(1, &[first], &with_gap("58"));
    let theirs = club.commit(2, &[first], &with_gap("61"));
    let left = club.commit(3, &[ours, theirs], &with_gap("58"));
    let right = club.commit(4, &[theirs, ours], &with_gap("61"));
    let last = club.commit(5, &[left, right], &with_gap("61"));
    club.check_out(last, &with_gap("61"));
    let all = rows(&club, &["history", GAP]);
    let merges: Vec<_> = all.iter().filter(|row| row.0 == "merge").collect();
    let expected = [row("merge", 61.0, 58.0, left), row("merge", 58.0, 61.0, right)];
    assert_eq!(merges, expected.iter().collect::<Vec<_>>());
    assert_eq!(set_by(&json(&club, &["blame", "kittiwake"]), GAP), Some(theirs.to_string()));
}

#[test]
fn an_octopus_is_walked_along_every_arm() {
    let club = Club::new();
    let first = club.commit(0, &[], &sound());
    let arms: Vec<_> = ["58", "60", "62"]
        .iter()
        .zip(1..)
        .map(|(gap, day)| club.commit(day, &[first], &with_gap(gap)))
        .collect();
    let octopus = club.commit(9, &arms, &with_gap("62"));
    club.check_out(octopus, &with_gap("62"));
    let all = rows(&club, &["history", GAP]);
    assert_eq!(all.last(), Some(&row("merge", 58.0, 62.0, octopus)));
    assert_eq!(set_by(&json(&club, &["blame", "kittiwake"]), GAP), Some(arms[2].to_string()));
}
