//! Keys: unknown, given twice, missing; and what they say of a record's kind.

use super::told::pairs;
use super::told::read;
use super::told::seat;

#[test]
fn an_unknown_key_is_pointed_at_and_the_nearest_known_one_is_offered() {
    let (_, told) = seat("rowlok: {gap: 58}\nseatmark: 61\nzzz: 1");
    let expected = [("unknown-key", "rowlok"), ("unknown-key", "seatmark"), ("unknown-key", "zzz")];
    assert_eq!(pairs(&told), expected);
    assert_eq!(told[0].help, "Did you mean `rowlock`?");
    assert_eq!(told[1].help, "Did you mean `seat-mark`?");
    assert!(told[2].help.contains("x-zzz"), "{}", told[2].help);
    assert_eq!(told[0].name, "petrel/seat-1/rowlok");
}

#[test]
fn the_clubs_own_keys_are_passed_over_at_every_level() {
    let (_, told) = seat("x-anything: [1, {a: b}]\nrowlock: {gap: 58, x-colour: red}");
    assert!(told.is_empty(), "{told:?}");
}

#[test]
fn a_key_given_twice_is_shown_at_both_places_under_its_own_name_and_neither_is_used() {
    let (read, told) = seat("rowlock:\n  gap: 58\n  horn: 46\n  \"gap\": 59");
    assert_eq!(pairs(&told), [("key-twice", "\"gap\"")]);
    assert_eq!(told[0].also.as_deref(), Some("gap"));
    assert_eq!(told[0].name, "petrel/seat-1/rowlock/gap");
    assert!(read.rowlock.gap.is_none());
    assert!(read.rowlock.horn.is_some());
}

#[test]
fn a_key_given_three_times_is_told_twice_against_the_first() {
    let (_, told) = seat("seat-mark: 61\nseat-mark: 62\nseat-mark: 63");
    assert_eq!(pairs(&told), [("key-twice", "seat-mark"), ("key-twice", "seat-mark")]);
    assert!(told[0].start < told[1].start);
}

#[test]
fn a_key_that_must_be_there_and_stands_twice_is_not_called_missing() {
    let (_, told) = seat("oar: A2");
    assert_eq!(pairs(&told), [("key-twice", "oar")]);
    assert_eq!(told[0].name, "petrel/seat-1/oar");
}

#[test]
fn a_record_whose_own_key_stands_twice_is_still_read_as_that_kind() {
    let (book, told) =
        read("boat: a\nboat: b\nclass: surfboat\noars: o\nrigged: {date: soon, by: I.}\n");
    assert_eq!(pairs(&told), [("key-twice", "boat"), ("not-a-date", "soon")]);
    assert_eq!(book.boats.len(), 1, "she is looked at under the name of her record");
    assert_eq!(book.classes.len(), 1, "the boat was taken for a class");
}

#[test]
fn every_missing_key_is_told_at_what_stands_for_the_whole() {
    let (_, told) = read("boat: petrel\nseats:\n  - {seat: 2}\n  - {side: port, oar: A1}\n");
    let expected = [
        ("missing-key", "petrel"),
        ("missing-key", "petrel"),
        ("missing-key", "petrel"),
        ("missing-key", "2"),
        ("missing-key", "2"),
        ("missing-key", "side"),
    ];
    assert_eq!(pairs(&told), expected);
    let mut names: Vec<&str> = told.iter().map(|told| told.name.as_str()).collect();
    names.sort_unstable();
    let missing = [
        "petrel/class",
        "petrel/oars",
        "petrel/rigged",
        "petrel/seat-2/oar",
        "petrel/seat-2/side",
        "petrel/seats/2/seat",
    ];
    assert_eq!(names, missing);
}

#[test]
fn the_kind_of_a_record_is_told_by_its_keys_whatever_their_order() {
    let texts = [
        "boat: kittiwake\nrowers: []\ncrew: masters\n",
        "oars: []\noar-set: ash\n",
        "rigged: {by: I., date: 2026-10-17}\noars: ash\nclass: surfboat\nboat: kittiwake\n",
        "seats: 4\nclass: sandboat\n",
    ];
    let named = (0..).zip(texts).map(|(number, text): (usize, _)| {
        tholebook::store::Named::text(&format!("anywhere/{number}.yml"), text)
    });
    let (book, told) = super::told::read_all(named.collect());
    assert!(told.is_empty(), "{told:?}");
    assert_eq!(book.crews[0].id.value, "masters");
    assert_eq!(book.oar_sets[0].id.value, "ash");
    assert_eq!(book.boats[0].id.value, "kittiwake");
    assert_eq!(book.classes[1].id.value, "sandboat");
}

#[test]
fn a_record_of_no_kind_is_told_at_the_key_that_looks_most_like_one() {
    let (book, told) = read("name: Petrel\nbaot: petrel\n");
    assert_eq!(pairs(&told), [("unreadable", "baot")]);
    assert!(told[0].help.contains("`boat: ID`"), "{}", told[0].help);
    assert!(book.boats.is_empty());
    let (_, told) = read("12: 13\n");
    assert_eq!(pairs(&told), [("unreadable", "12")]);
}
