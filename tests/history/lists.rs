//! Bends, knocks and people have no ids: each is followed by what it says, not by its number.

use serde_json::Value;

use crate::club::BOAT;
use crate::club::Club;
use crate::club::Files;
use crate::club::edit;
use crate::club::sound;
use crate::run::NONE;
use crate::run::json;
use crate::run::names_by;
use crate::run::row;
use crate::run::rows;
use crate::run::run;
use crate::run::set_by;

const FIRST: &str = "  - {date: 2026-10-17, by: Ines Marlow, seat: 1, part: after-horn, deg: 3}\n";
const SECOND: &str = "  - {date: 2026-10-18, by: Ines Marlow, seat: 2, part: after-horn, deg: 2}\n";
const FRONT: &str = "  - {date: 2026-11-01, by: Tomas Reyne, seat: 4, part: pin, deg: 1}\n";

/// The sound book with a list at the end of the boat.
fn with(key: &str, parts: &[&str]) -> Files {
    let mut files = sound();
    let text = files.get_mut(BOAT).expect("the boat");
    text.push_str(&format!("{key}:\n{}", parts.concat()));
    files
}

fn bends(parts: &[&str]) -> Files {
    with("bends", parts)
}

#[test]
fn a_bend_put_in_front_takes_nobody_elses_commit() {
    let club = Club::new();
    let states = [bends(&[FIRST]), bends(&[FIRST, SECOND]), bends(&[FRONT, FIRST, SECOND])];
    let ids = club.line(&states);
    let first = [row("first-recorded", NONE, 3.0, ids[0])];
    assert_eq!(rows(&club, &["history", "kittiwake/bends/2/deg"]), first);
    let second = [row("first-recorded", NONE, 2.0, ids[1])];
    assert_eq!(rows(&club, &["history", "kittiwake/bends/3/deg"]), second);
    let front = [row("first-recorded", NONE, 1.0, ids[2])];
    assert_eq!(rows(&club, &["history", "kittiwake/bends/1/deg"]), front);
    let blame = json(&club, &["blame", "kittiwake"]);
    for (name, id) in [("1", ids[2]), ("2", ids[0]), ("3", ids[1])] {
        let name = format!("kittiwake/bends/{name}/deg");
        assert_eq!(set_by(&blame, &name), Some(id.to_string()), "{name}");
    }
}

#[test]
fn a_name_of_today_follows_the_bend_back_and_says_what_it_was_called() {
    let club = Club::new();
    let corrected = FIRST.replace("deg: 3", "deg: 4");
    let states = [bends(&[FIRST]), bends(&[&corrected]), bends(&[FRONT, &corrected])];
    let ids = club.line(&states);
    let name = "kittiwake/bends/2/deg";
    let expected = [row("first-recorded", NONE, 3.0, ids[0]), row("changed", 3.0, 4.0, ids[1])];
    assert_eq!(rows(&club, &["history", name]), expected);
    let told = json(&club, &["history", name]);
    assert_eq!(told["rows"][1]["name"], name);
    assert_eq!(told["rows"][1]["name_then"], "kittiwake/bends/1/deg");
    let text = run(&club, &["history", name]).out;
    assert!(text.contains("then kittiwake/bends/1/deg"), "{text}");
}

#[test]
fn a_bend_taken_out_is_one_loss_and_its_number_is_the_next_ones() {
    let club = Club::new();
    let ids = club.line(&[bends(&[FIRST, SECOND]), bends(&[SECOND])]);
    let own = [row("first-recorded", NONE, 2.0, ids[0])];
    assert_eq!(rows(&club, &["history", "kittiwake/bends/1/deg"]), own);
    let all = rows(&club, &["history", "kittiwake/bends"]);
    let gone: Vec<_> = all.iter().filter(|row| row.0 == "taken-out").collect();
    assert_eq!(gone.len(), 5, "{all:?}");
    assert!(all.iter().all(|row| ["first-recorded", "taken-out"].contains(&&*row.0)), "{all:?}");
    // The second bend is the first one now; what was asked for by its old number is still found.
    let once = rows(&club, &["history", "kittiwake/bends/2/deg"]);
    assert_eq!(once, own);
}

#[test]
fn a_bend_that_comes_back_is_the_one_that_went() {
    let club = Club::new();
    let states = [bends(&[FIRST, SECOND]), bends(&[SECOND]), bends(&[FRONT, SECOND, FIRST])];
    let ids = club.line(&states);
    let expected = [
        row("first-recorded", NONE, 3.0, ids[0]),
        row("taken-out", 3.0, NONE, ids[1]),
        row("recorded-again", NONE, 3.0, ids[2]),
    ];
    assert_eq!(rows(&club, &["history", "kittiwake/bends/3/deg"]), expected);
}

#[test]
fn two_knocks_of_one_day_are_two() {
    let gate = "  - {date: 2026-10-18, what: hit the gate}\n";
    let surf = "  - {date: 2026-10-18, what: rolled in the shore break}\n";
    let club = Club::new();
    let ids = club.line(&[with("knocks", &[gate]), with("knocks", &[surf, gate])]);
    let what = "kittiwake/knocks/2026-10-18/what";
    let expected = [
        row("first-recorded", NONE, "hit the gate", ids[0]),
        row("first-recorded", NONE, "rolled in the shore break", ids[1]),
    ];
    assert_eq!(rows(&club, &["history", what]), expected);
    let blame = json(&club, &["blame", "kittiwake"]);
    let own = |value: &&Value| value["name"] == what;
    let mut said: Vec<(String, String)> = blame["values"]
        .as_array()
        .expect("values")
        .iter()
        .filter(own)
        .map(|value| (value["value"].to_string(), value["commit"].to_string()))
        .collect();
    said.sort();
    assert_eq!(
        said,
        [
            ("\"hit the gate\"".to_owned(), format!("\"{}\"", ids[0])),
            ("\"rolled in the shore break\"".to_owned(), format!("\"{}\"", ids[1])),
        ]
    );
}

#[test]
fn bends_of_two_branches_are_one_each_after_the_merge() {
    let club = Club::new();
    let base = club.commit(0, &[], &bends(&[SECOND]));
    let ours = club.commit(1, &[base], &bends(&[FIRST, SECOND]));
    let theirs = club.commit(2, &[base], &bends(&[FRONT, SECOND]));
    let merged = bends(&[FRONT, FIRST, SECOND]);
    let merge = club.commit(3, &[ours, theirs], &merged);
    club.check_out(merge, &merged);
    let all = rows(&club, &["history", "kittiwake/bends"]);
    assert!(all.iter().all(|row| row.0 == "first-recorded"), "{all:?}");
    assert_eq!(all.len(), 15, "{all:?}");
    for (number, set, deg) in [("1", theirs, 1.0), ("2", ours, 3.0), ("3", base, 2.0)] {
        let name = format!("kittiwake/bends/{number}/deg");
        assert_eq!(rows(&club, &["history", &name]), [row("first-recorded", NONE, deg, set)]);
    }
}

#[test]
fn one_bend_entered_on_both_branches_is_one() {
    let club = Club::new();
    let base = club.commit(0, &[], &bends(&[SECOND]));
    let ours = club.commit(1, &[base], &bends(&[FIRST, SECOND]));
    let mut theirs_too = bends(&[SECOND, FIRST]);
    edit(&mut theirs_too, BOAT, "seat: 3", "seat-mark: 61", "seat-mark: 62");
    let theirs = club.commit(2, &[base], &theirs_too);
    let mut merged = bends(&[FIRST, SECOND]);
    edit(&mut merged, BOAT, "seat: 3", "seat-mark: 61", "seat-mark: 62");
    let merge = club.commit(3, &[ours, theirs], &merged);
    club.check_out(merge, &merged);
    let all = rows(&club, &["history", "kittiwake/bends/1/deg"]);
    assert!(all.iter().all(|row| !row.0.starts_with("merge")), "{all:?}");
    assert!(all.iter().all(|row| row.0 != "taken-out"), "{all:?}");
}

#[test]
fn a_person_put_in_front_changes_no_other() {
    let club = Club::new();
    let mut second = sound();
    let front = "people:\n  - {name: Jo Orme, may: [measure]}\n";
    edit(&mut second, "club.yaml", "", "people:\n", front);
    let ids = club.line(&[sound(), second]);
    let all = json(&club, &["history", "club/people"]);
    assert_eq!(names_by(&all, ids[1]), ["club/people/1/may", "club/people/1/name"]);
}
