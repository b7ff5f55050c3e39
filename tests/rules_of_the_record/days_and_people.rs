//! Days, signatures, and records that nobody measured.

use tholebook::rules::Edit;
use tholebook::rules::Level;

use crate::found::BOAT;
use crate::found::CREW;
use crate::found::OARS;
use crate::found::before_seats;
use crate::found::found;
use crate::found::of;
use crate::found::only;
use crate::sound_book::SoundBook;

// ---- days

#[test]
fn what_was_read_again_has_a_day_of_its_own() {
    let all = "read-again:\n  - {date: 2026-12-01, by: Ines Marlow, checked-by: Tomas Reyne, values: [\"*\"]}\n";
    let (_, checked) = SoundBook::with(&[before_seats(all)]).check_as_of("2026-12-20");
    assert!(of(&checked, "overdue").is_empty());
    let one = "read-again:\n  - {date: 2026-12-01, by: Ines Marlow, checked-by: Tomas Reyne, values: [seat-1]}\n";
    let (_, checked) = SoundBook::with(&[before_seats(one)]).check_as_of("2026-12-20");
    // 17 October to 20 December: 14 + 30 + 20 = 64 days.
    let overdue = of(&checked, "overdue");
    assert_eq!(overdue[0].value.map(|value| value.number), Some(64.0));
    assert!(overdue[0].message.contains("64 days ago: over by 22 days"), "{}", overdue[0].message);
}

#[test]
fn every_day_of_the_book_is_looked_at_where_it_stands() {
    let lines = "knocks:\n  - {date: 2027-01-01, what: hit}\n\
                 bends:\n  - {date: 2027-01-02, seat: 1, part: pin, deg: 1}\n\
                 defects:\n  - {found: 2027-01-03, what: crack, state: watch, put-right: {date: 2027-01-04}}\n\
                 out-of-use: {since: 2027-01-05}\n\
                 read-again:\n  - {date: 2027-01-06, by: Ines Marlow, checked-by: Tomas Reyne, values: [seat-1]}\n";
    let edits = [
        before_seats(lines),
        (BOAT, "", "found-afloat: 2026-09-05", "found-afloat: 2027-01-07"),
        (
            OARS,
            "oar: A1",
            "state: sound",
            "defects: [{found: 2027-01-08, what: split, state: watch}]",
        ),
        (CREW, "", "boat: kittiwake", "boat: kittiwake\nmeasured: {date: 2027-01-09}"),
    ];
    let mut names: Vec<String> = found(&edits, "date-in-future").into_iter().map(|f| f.0).collect();
    names.sort();
    assert_eq!(
        names,
        [
            "kittiwake/bends/1/date",
            "kittiwake/defects/2027-01-03/found",
            "kittiwake/defects/2027-01-03/put-right/date",
            "kittiwake/knocks/2027-01-01/date",
            "kittiwake/level-mark/found-afloat",
            "kittiwake/out-of-use/since",
            "kittiwake/read-again/1/date",
            "long-ash/A1/defects/2027-01-08/found",
            "masters-a/measured/date",
        ]
    );
}

// ---- signatures

#[test]
fn readings_without_a_second_person_are_unsure() {
    let edits = [(BOAT, "rigged", "  checked-by: Tomas Reyne\n", "")];
    let name = "kittiwake/rigged/checked-by".to_owned();
    assert_eq!(found(&edits, "not-signed-off"), [(name, Level::Unsure)]);
}

#[test]
fn every_name_of_the_book_must_be_listed_where_the_club_lists_people() {
    let lines = "bends:\n  - {date: 2026-05-02, by: Nobody, seat: 1, part: pin, deg: 1}\n\
                 out-of-use: {since: 2026-10-20, by: Nobody}\n\
                 defects:\n  - {found: 2026-10-03, what: crack, state: watch, put-right: {date: 2026-10-04, by: Nobody, how: new, passed-by: Nobody}}\n";
    let edits = [before_seats(lines)];
    let mut names: Vec<String> = found(&edits, "signer-unknown").into_iter().map(|f| f.0).collect();
    names.sort();
    assert_eq!(
        names,
        [
            "kittiwake/bends/1/by",
            "kittiwake/defects/2026-10-03/put-right/by",
            "kittiwake/defects/2026-10-03/put-right/passed-by",
            "kittiwake/out-of-use/by",
        ]
    );
    let open = ("club.yaml", "", "people:", "x-people:");
    let edits: Vec<Edit> = edits.into_iter().chain([open]).collect();
    assert!(found(&edits, "signer-unknown").is_empty());
}

// ---- predicted

#[test]
fn a_predicted_record_of_a_boat_out_of_use_is_shown_and_stops_nothing() {
    let edits = [before_seats(
        "predicted: true\nout-of-use: {since: 2026-10-20, by: Ines Marlow, because: gap}\n",
    )];
    let finding = only(&edits, "predicted-not-measured");
    assert_eq!(finding.level, Level::Danger);
    assert!(finding.shown_only);
}
