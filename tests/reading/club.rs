//! The club's settings, its waivers, and limits wherever they stand.

use tholebook::model::LimitKey;
use tholebook::model::Tool;

use super::told::pairs;
use super::told::read;
use super::told::read_at;

#[test]
fn a_book_of_another_format_is_told_at_its_number() {
    let (_, told) = read_at("club.yaml", "logbook: 2\nclub: Tarrow Head Boat Club\n");
    assert_eq!(pairs(&told), [("unreadable", "2")]);
    assert!(told[0].message.contains("format 2"), "{}", told[0].message);
}

#[test]
fn a_club_without_a_format_is_told() {
    let (_, told) = read_at("club.yaml", "club: Tarrow Head Boat Club\n");
    assert_eq!(pairs(&told), [("missing-key", "club")]);
    assert_eq!(told[0].name, "club/logbook");
}

#[test]
fn the_settings_of_a_club_are_read() {
    let text = "logbook: 1
readings: {callipers: 0.1, level: 0.2 deg, yardstick: 3}
limits:
  surfboat:
    clearance: {least: 6, source: committee}
    gearing: none
    pitch: {least: 3 deg, most: steep}
people:
  - {name: Ines Marlow, may: [measure, fly]}
  - Tomas Reyne
protect: {longest-waiver-days: 60, branches: [main]}
publish-crew: maybe
";
    let (book, told) = read_at("club.yaml", text);
    let expected = [
        ("unknown-key", "yardstick"),
        ("not-a-number", "steep"),
        ("wrong-word", "fly"),
        ("unreadable", "Tomas Reyne"),
        ("wrong-word", "maybe"),
    ];
    assert_eq!(pairs(&told), expected);
    let callipers = book.club.half_widths.of(Tool::Callipers).map(|read| read.value);
    assert_eq!(callipers, Some(0.1));
    let limits = &book.club.limits[0].limits;
    assert_eq!(limits.of(LimitKey::Clearance).map(|limit| limit.bounds[0].value.value), Some(6.0));
    assert!(limits.of(LimitKey::Gearing).is_some_and(|limit| limit.off));
    assert_eq!(limits.of(LimitKey::Pitch).map(|limit| limit.bounds.len()), Some(1));
    assert_eq!(book.club.protect.longest_waiver_days.map(|days| days.value), Some(60));
}

#[test]
fn a_limit_switched_off_by_any_other_word_is_told() {
    let text =
        "class: sandboat\nlimits: {pitch: off, gearing: none, chock: {aim: 600, least: 5}}\n";
    let (book, told) = read(text);
    assert_eq!(pairs(&told), [("unreadable", "off"), ("unknown-key", "least")]);
    assert_eq!(book.classes[1].limits.0.len(), 2);
}

#[test]
fn a_tool_that_reads_to_nothing_is_out_of_bounds() {
    let (_, told) = read_at("club.yaml", "logbook: 1\nreadings: {rule: 0, bob: -1}\n");
    assert_eq!(pairs(&told), [("out-of-bounds", "0"), ("out-of-bounds", "-1")]);
}

#[test]
fn waivers_are_a_list_and_each_says_five_things() {
    let text = "- finding: kittiwake/seat-2/handle-past-mark
  rule: handle-past-mark-wrong
  because: |
    junior crew,
    collars moved in
  by: Tomas Reyne
  until: 2026-12-31
  at: 296
- finding: kittiwake/seat-3/pitch
  until: soon
  reason: none
";
    let (book, told) = read_at("waivers.yaml", text);
    let expected = [
        ("missing-key", "finding"),
        ("missing-key", "finding"),
        ("missing-key", "finding"),
        ("not-a-date", "soon"),
        ("unknown-key", "reason"),
    ];
    assert_eq!(pairs(&told), expected);
    assert_eq!(book.waivers.len(), 2);
    assert_eq!(book.waivers[0].at.map(|at| at.value), Some(296.0));
}

#[test]
fn waivers_that_are_no_list_are_told() {
    let (_, told) = read_at("waivers.yaml", "finding: kittiwake\n");
    assert_eq!(pairs(&told), [("unreadable", "finding: kittiwake")]);
}
