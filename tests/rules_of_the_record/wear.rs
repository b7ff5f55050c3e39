//! The walk round, knocks and bends.

use tholebook::rules::Level;

use crate::found::BOAT;
use crate::found::before_seats;
use crate::found::found;
use crate::found::not_checked;
use crate::found::of;
use crate::found::only;
use crate::sound_book::SoundBook;

// ---- walk round

#[test]
fn a_boat_that_nobody_walked_round_has_one_finding_not_fourteen() {
    let edits = [(BOAT, "rigged", "  walk-round:", "  x-walk-round:")];
    let finding = only(&edits, "walk-round");
    let name = "kittiwake/rigged/walk-round";
    assert_eq!((finding.name.as_str(), finding.level), (name, Level::Unsure));
    assert_eq!(finding.message.matches(", ").count(), 13, "{}", finding.message);
}

#[test]
fn the_clubs_own_item_counts_like_the_classs() {
    let edits = [(BOAT, "rigged", "hull: ok", "hull: ok\n    anchor: unfit")];
    let name = "kittiwake/rigged/walk-round/anchor".to_owned();
    assert_eq!(found(&edits, "walk-round"), [(name, Level::Danger)]);
}

// ---- knocks

#[test]
fn a_knock_before_the_rigging_day_is_in_the_readings() {
    let edits = [before_seats("knocks:\n  - {date: 2026-10-16, what: hit a post}\n")];
    assert!(found(&edits, "knocked-since").is_empty());
}

#[test]
fn a_knock_on_the_rigging_day_counts_until_a_seat_is_read_again() {
    let knock = "knocks:\n  - {date: 2026-10-17, what: rolled, where: [seat-3]}\n";
    assert_eq!(found(&[before_seats(knock)], "knocked-since")[0].0, "kittiwake/knocks/2026-10-17");
    let again = "knocks:\n  - {date: 2026-10-17, what: rolled, where: [seat-3]}\n\
                 read-again:\n  - {date: 2026-10-17, by: Ines Marlow, checked-by: Tomas Reyne, values: [seat-3]}\n";
    assert!(found(&[before_seats(again)], "knocked-since").is_empty());
}

#[test]
fn a_seat_read_again_in_part_is_still_knocked() {
    let lines = "knocks:\n  - {date: 2026-10-18, what: rolled, where: [seat-3]}\n\
                 read-again:\n  - {date: 2026-10-20, by: Ines Marlow, checked-by: Tomas Reyne, values: [seat-3/pin, \"*/rowlock\", seat-3/lifts-out, seat-3/seat-mark, seat-3/handle-past-mark, seat-3/pitch]}\n";
    let finding = only(&[before_seats(lines)], "knocked-since");
    assert!(finding.message.contains("such as seat-3/chock-to-pin"), "{}", finding.message);
}

#[test]
fn a_knock_that_names_no_seat_of_hers_concerns_them_all() {
    for place in ["[]", "[bow]", "[seat-1, seat-9]"] {
        let lines = format!("knocks:\n  - {{date: 2026-10-18, what: hit, where: {place}}}\n");
        let mut book = SoundBook::new();
        book.edit(BOAT, "", "foot-holes: {first: 820, apart: 30, count: 8}\n", &lines);
        let (_, checked) = book.check();
        let message = &of(&checked, "knocked-since")[0].message;
        assert!(message.contains("seat 1, seat 2, seat 3, seat 4"), "{place}: {message}");
    }
}

// ---- bends

#[test]
fn three_bends_of_one_horn_are_allowed_and_the_other_horn_is_counted_apart() {
    let lines = "bends:\n\
                 - {date: 2024-05-04, seat: 2, part: after-horn, deg: 1}\n\
                 - {date: 2025-05-03, seat: 2, part: after-horn, deg: 1}\n\
                 - {date: 2026-05-02, seat: 2, part: after-horn, deg: 1}\n\
                 - {date: 2026-05-02, seat: 2, part: forward-horn, deg: 1}\n\
                 - {date: 2026-05-02, seat: 3, part: after-horn, deg: 1}\n";
    assert!(found(&[before_seats(lines)], "bent-often").is_empty());
}

#[test]
fn bending_there_and_back_is_bending_twice() {
    let lines = "bends:\n\
                 - {date: 2024-05-04, seat: 2, part: pin, deg: 6}\n\
                 - {date: 2025-05-03, seat: 2, part: pin, deg: -6}\n";
    let finding = only(&[before_seats(lines)], "bent-often");
    assert_eq!(finding.name.as_str(), "kittiwake/seat-2/pin");
    assert!(finding.message.contains("12.00 deg in all"), "{}", finding.message);
    assert_eq!(finding.labels.len(), 2);
}

#[test]
fn a_bend_of_unknown_size_is_counted_as_not_checked_when_nothing_else_decides() {
    let lines = "bends:\n- {date: 2024-05-04, seat: 2, part: pin}\n";
    let edits = [before_seats(lines)];
    assert!(found(&edits, "bent-often").is_empty());
    assert_eq!(
        not_checked(&edits, "bent-often"),
        ["kittiwake/seat-2/pin: degrees of a bend of the pin"]
    );
}
