//! Crews and their chocks, oars and their sets.

use tholebook::rules::Edit;
use tholebook::rules::Level;

use crate::found::BOAT;
use crate::found::CREW;
use crate::found::OARS;
use crate::found::before_seats;
use crate::found::checked;
use crate::found::found;
use crate::found::not_checked;
use crate::found::of;
use crate::found::only;
use crate::found::uncertainty;

// ---- the back chock

#[test]
fn a_short_crew_wants_the_chock_nearer_the_pin() {
    // 600 + 16.8/100 x (1700 - 1800) = 583.2; 600 is 16.8 off, 1.8 beyond 15. The reading and the
    // stature are good to 2 mm each: u = sqrt(2^2 + (0.168 x 2)^2) / sqrt 3 = 1.171, U = 2.34.
    let crew = "crew: masters-a\nboat: kittiwake\nrowers:\n  - {seat: 1, stature: 1700}\n";
    let edits = [(CREW, "", "", crew)];
    let checked = checked(&edits);
    let notes = of(&checked, "chock-distance");
    assert_eq!(notes.len(), 4);
    assert!(notes[0].message.contains("583.2 mm suits"), "{}", notes[0].message);
    assert!(notes[0].message.contains("masters-a"), "{}", notes[0].message);
    assert!((uncertainty(notes[0]) - 2.3418).abs() < 1e-3);
    // Within what it is good to: still a note, and nobody is told to move a chock.
    assert!(notes.iter().all(|note| note.level == Level::Note));
    assert!(notes[0].remedy.starts_with("Too close to call"), "{}", notes[0].remedy);
}

#[test]
fn only_crews_that_name_the_boat_count_and_without_one_the_aim_is_as_set() {
    let other = "crew: masters-a\nboat: fulmar\nrowers:\n  - {seat: 1, stature: 1300}\n";
    let edits =
        [(CREW, "", "", other), (BOAT, "seat: 2", "chock-to-pin: 600", "chock-to-pin: 621")];
    let note = only(&edits, "chock-distance");
    assert!(note.message.contains("600.0 mm suits"), "{}", note.message);
    assert!(note.message.contains("a stature of 1800 mm"), "{}", note.message);
}

#[test]
fn a_limit_switched_off_moves_no_chock() {
    let edits = [
        (BOAT, "seat: 2", "chock-to-pin: 600", "chock-to-pin: 700"),
        before_seats("limits: {chock: none, chocks: none}\n"),
    ];
    assert!(found(&edits, "chock-distance").is_empty());
    assert!(found(&edits, "chocks-unlike").is_empty());
}

// ---- the set that a boat carries

/// Ids are compared one by one: with too many of them none is offered, and a few are named.
#[test]
fn a_slip_is_offered_the_nearest_id_unless_there_are_too_many() {
    let slip = (BOAT, "", "oars: long-ash", "oars: long-ahs");
    let set = |number: usize| -> Edit {
        let path = format!("oars/set-{number}.yaml").leak();
        (path, "", "", format!("oar-set: set-{number}\n").leak())
    };
    let with_sets = |most: usize| -> Vec<Edit> { (1..most).map(set).chain([slip]).collect() };
    for (most, remedy) in [(1, "Did you mean `long-ash`?"), (500, "Did you mean `long-ash`?")] {
        assert_eq!(only(&with_sets(most), "no-such-record").remedy, remedy);
    }
    let crowded = only(&with_sets(501), "no-such-record").remedy;
    assert!(crowded.starts_with("Write one that there is: long-ash, set-1, "), "{crowded}");
    assert!(crowded.contains(", …. Or add the one"), "{crowded}");
}

// ---- oars of a set

const FLEX: &str = "{drop: 70, load-kg: 10, at: 2500}";

#[test]
fn half_the_load_and_half_the_drop_is_the_same_flex() {
    let like = [(OARS, "oar: A2", FLEX, "{drop: 35, load-kg: 5, at: 2500}")];
    assert!(found(&like, "oars-unlike").is_empty());
    let limp = [(OARS, "oar: A2", FLEX, "{drop: 70, load-kg: 5, at: 2500}")];
    let name = "long-ash/A2/flex/drop".to_owned();
    assert_eq!(found(&limp, "oars-unlike"), [(name, Level::Fault)]);
}

#[test]
fn a_drop_is_brought_to_one_reach_by_its_cube() {
    // 34 at 2000 is 34 x (2500/2000)^3 = 66.41 at 2500: 3.59 of a mean of 69.28 is 5.2 %.
    let like = [(OARS, "oar: A2", FLEX, "{drop: 34, load-kg: 10, at: 2000}")];
    assert!(found(&like, "oars-unlike").is_empty());
    // 45 comes to 87.89: 17.89 of a mean of 73.58 is 24.3 %.
    let limp = [(OARS, "oar: A2", FLEX, "{drop: 45, load-kg: 10, at: 2000}")];
    let value = only(&limp, "oars-unlike").value.expect("a value");
    assert_eq!(format!("{:.1} {}", value.number, value.unit), "24.3 %");
}

/// A second boat that carries the same set, with stricter limits of her own.
const FULMAR: &str = "boat: fulmar\nclass: surfboat\noars: long-ash\n\
                      limits: {oar-length: {most: 2}}\nrigged: {date: 2026-10-17, by: Ines Marlow}\n";

#[test]
fn of_two_boats_that_carry_a_set_the_stricter_limit_counts() {
    let longer = (OARS, "oar: A3", "length: 3860", "length: 3864");
    assert!(found(&[longer], "oars-unlike").is_empty());
    // 4 mm, 2 beyond, good to 2 sqrt 2 x 2 / sqrt 3 = 3.27: it can't be called.
    let finding = only(&[longer, ("boats/fulmar.yaml", "", "", FULMAR)], "oars-unlike");
    assert_eq!((finding.name.as_str(), finding.level), ("long-ash/A3/length", Level::Unsure));
    let limit = finding.limit.expect("a limit");
    assert_eq!((limit.most, &*limit.from), (Some(2.0), "boats/fulmar.yaml:4"));
}

#[test]
fn oars_are_read_as_the_club_reads_whatever_a_rigging_day_says() {
    let edits = [
        (OARS, "oar: A3", "length: 3860", "length: 3870"),
        (BOAT, "rigged", "  where: trailer", "  readings: {tape: 0.1}\n  where: trailer"),
    ];
    assert!((uncertainty(&only(&edits, "oars-unlike")) - 3.266).abs() < 1e-3);
}

#[test]
fn a_set_that_no_boat_carries_is_counted_as_not_checked() {
    let set =
        "oar-set: short-ash\noars:\n  - {oar: B1, length: 3860}\n  - {oar: B2, length: 3960}\n";
    let edits = [("oars/short-ash.yaml", "", "", set)];
    assert!(found(&edits, "oars-unlike").is_empty());
    assert_eq!(not_checked(&edits, "oars-unlike"), ["short-ash: a boat that carries the set"]);
}

#[test]
fn an_oar_that_was_not_measured_is_counted_and_the_others_are_compared() {
    let unmeasured = (OARS, "oar: A2", "    length: 3860\n", "");
    assert_eq!(not_checked(&[unmeasured], "oars-unlike"), ["long-ash: A2/length"]);
    let edits = [unmeasured, (OARS, "oar: A3", "length: 3860", "length: 3880")];
    assert_eq!(found(&edits, "oars-unlike")[0].0, "long-ash/A3/length");
}

#[test]
fn the_odd_oar_is_shown_first_and_every_other_once() {
    let unlike = only(&[(OARS, "oar: A3", "length: 3860", "length: 3880")], "oars-unlike");
    let shown: Vec<&str> = unlike.labels.iter().map(|label| label.text.as_str()).collect();
    let others = ["A1: 3860.0 mm", "A2: 3860.0 mm", "A4: 3860.0 mm", "A5: 3860.0 mm"];
    assert_eq!(shown[0], "A3: 3880.0 mm");
    assert_eq!(shown[1..], others);
}

// ---- the bed of a round shaft

/// Source: the chord of a circle of 52: a quarter deep 2 sqrt(13 x 39) = 45.03, 0.37 deep
/// 2 sqrt(19.24 x 32.76) = 50.21.
#[test]
fn a_bed_that_is_too_shallow_says_how_wide_the_mark_must_become() {
    let shaft = "shaft: {widest: 52, narrowest: 46, bears: flat";
    let edits = [
        (OARS, "oar: A1", shaft, "shaft: {round: 52, bears: round"),
        (BOAT, "seat: 1", "seat-mark: 61", "oar-bed: 40\n    seat-mark: 61"),
    ];
    let remedy = only(&edits, "bed-wrong").remedy;
    assert!(remedy.contains("until the chalk mark is wider, 45.0"), "{remedy}");
    assert!(remedy.contains("to 50.2"), "{remedy}");
}

#[test]
fn an_oar_with_one_diameter_written_is_round_and_the_hands_set_it() {
    let edits = [(OARS, "oar: A1", "widest: 52, narrowest: 46, bears: flat", "round: 48")];
    assert_eq!(found(&edits, "hands-set-pitch")[0].0, "kittiwake/seat-1/oar");
    assert_eq!(not_checked(&edits, "bed-wrong"), ["kittiwake/seat-1/oar-bed: oar-bed"]);
    assert_eq!(found(&edits, "oars-unlike")[0].0, "long-ash/A1/shaft/round");
}
