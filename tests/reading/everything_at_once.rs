//! One file with a fault of every sort: all are told, and all that is sound is read.

use super::told::pairs;
use super::told::read;

const BOAT: &str = "\
boat: petrel
name: Petrel #2
class: no
oars: long-ash
oars: old-ash
spares: [A5, 6A]
foot-holes: {first: 820, apart: 30, count: 8.5}
rigged:
  date: 17.10.2026
  by: &who Ines
  checked-by: *who
  where: lawn
  level: {trim: 1,5, roll: 60}
  wind: !!str light
seats:
  - seat: 1
    side: port
    rowlock: {gap: 6 ft, horn: 46, colour: red}
    seat-mark: [61, sixty]
    pitch: {catch: [11, 3 deg], square: 11}
  - just words
  - seat: 2
    side: starboard
    oar: A2
    lifts-out: freely
    handle-past-mark: 321
";

#[test]
fn every_fault_is_told_at_its_bytes() {
    let (_, told) = read(BOAT);
    let expected = [
        ("unreadable", "#2"),
        ("wrong-id", "no"),
        ("key-twice", "oars"),
        ("wrong-id", "6A"),
        ("not-a-number", "8.5"),
        ("not-a-date", "17.10.2026"),
        ("anchor-not-allowed", "&who"),
        ("anchor-not-allowed", "*who"),
        ("wrong-word", "lawn"),
        ("not-a-number", "1,5"),
        ("out-of-bounds", "60"),
        ("tag-not-allowed", "!!str"),
        ("missing-key", "1"),
        ("wrong-unit", "6 ft"),
        ("unknown-key", "colour"),
        ("not-a-number", "sixty"),
        ("wrong-unit", "[11, 3 deg]"),
        ("unreadable", "just words"),
        ("unreadable", "freely"),
    ];
    assert_eq!(pairs(&told), expected);
}

#[test]
fn what_is_sound_between_the_faults_is_read() {
    let (book, _) = read(BOAT);
    let boat = &book.boats[0];
    assert_eq!(boat.id.value, "petrel");
    assert_eq!(boat.spares.iter().map(|spare| spare.value.as_str()).collect::<Vec<_>>(), ["A5"]);
    assert!(boat.foot_holes.first.is_some());
    assert_eq!(boat.seats.len(), 2);
    assert!(boat.seats[0].rowlock.horn.is_some() && boat.seats[0].pitch.square.is_some());
    assert!(boat.seats[1].handle_past_mark.is_some());
}

#[test]
fn every_fault_says_what_and_what_to_do_in_whole_sentences() {
    let (_, told) = read(BOAT);
    for told in told {
        assert!(!told.message.is_empty() && told.message.len() < 200, "{told:?}");
        assert!(told.help.ends_with(['.', '?']), "{told:?}");
        assert!(told.help.chars().next().is_some_and(|c| !c.is_lowercase()), "{told:?}");
    }
}

#[test]
fn every_fault_becomes_a_finding() {
    let texts = vec![tholebook::store::Named::text("boats/petrel.yaml", BOAT)];
    let (book, faults) = tholebook::reading::read("book", texts);
    let as_of = tholebook::units::Date::read("2026-11-01").expect("a day");
    let checked = tholebook::rules::check(&book, &faults, tholebook::rules::Check { as_of });
    for fault in &faults {
        let is_it = |finding: &&tholebook::rules::Finding| {
            finding.rule.id == fault.what.rule() && finding.labels[0].place == fault.place
        };
        assert!(checked.findings.iter().any(|finding| is_it(&finding)), "{fault:?}");
    }
}
