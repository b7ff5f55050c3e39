//! Each kind of change, and what is none.

use std::fs;

use serde_json::Value;
use serde_json::json;

use super::pair::BOAT;
use super::pair::CREW;
use super::pair::OARS;
use super::pair::Pair;
use super::pair::each;
use super::pair::run;

#[test]
fn a_book_is_no_different_from_itself() {
    for book in ["example-club", "tests/data/sound-book"] {
        let done = run(std::path::Path::new("."), &[book, book, "--exit-code"]);
        assert_eq!(done.code, Some(0), "{}{}", done.out, done.err);
        assert!(done.out.starts_with("Nothing changed in the rig"), "{}", done.out);
        let done = run(std::path::Path::new("."), &[book, book, "--format", "json"]);
        let json: Value = serde_json::from_str(&done.out).expect("JSON");
        assert_eq!(json["changes"], json!([]));
        assert_eq!(json["consequences"], json!([]));
        assert_eq!(json["findings"], json!({"new": [], "worse": [], "cured": []}));
    }
}

/// A boat written anew in another order, other indents, another file, with quotes and comments.
const WRITTEN_ANEW: &str = "\
# written anew
class: \"surfboat\"
boat:   'kittiwake'
spares:
    - A5
oars: long-ash
name: Kittiwake
foot-holes:
    count: 8
    apart: 30
    first: 820
level-mark:
    found-afloat: \"2026-09-05\"
    where: >-
        after edge
        of thwart 2
";

#[test]
fn only_what_says_something_else_is_a_change() {
    let pair = Pair::new();
    let text = pair.text("b", BOAT);
    let rest = &text[text.find("rigged:").expect("a rig day")..];
    let rest =
        rest.replacen("gap: 60", "gap: 60.0", 1).replacen("spread: 792", "spread: 79.2 cm", 1);
    let rest = rest.replacen("along: 4040", "along: 4041", 1);
    pair.write("b", "boats/old/K1.yml", &format!("{WRITTEN_ANEW}{rest}"));
    fs::remove_file(pair.path("b").join(BOAT)).expect("a file less");
    let expected = [
        "changed kittiwake/seat-2/pin/along",
        "precision-only kittiwake/seat-1/rowlock/gap",
        "unit-only kittiwake/seat-1/pin/spread",
    ];
    assert_eq!(pair.changes(), expected);
    let change = pair.change("kittiwake/seat-2/pin/along");
    assert_eq!(change["old"], json!(4040.0));
    assert_eq!(change["new"], json!(4041.0));
    assert_eq!((&change["delta"], &change["unit"]), (&json!(1.0), &json!("mm")));
    assert_eq!(change["old_place"]["path"], BOAT);
    assert_eq!(change["new_place"]["path"], "boats/old/K1.yml");
    let (line, column) = (&change["old_place"]["line"], &change["old_place"]["column"]);
    let text = pair.text("a", BOAT);
    let at = text.find("along: 4040").expect("the value");
    assert_eq!(*line, json!(text[..at].matches('\n').count() + 1));
    assert_eq!(*column, json!("      along: ".len() + 1));
}

#[test]
fn a_value_that_came_and_one_that_went_are_told_as_such() {
    let pair = Pair::new().edit("b", BOAT, "      horn: 46\n", "").edit(
        "b",
        CREW,
        "who: I.M.",
        "who: I.M., arc: {catch: 52}",
    );
    assert_eq!(
        pair.changes(),
        ["added masters-a/seat-1/arc/catch", "removed kittiwake/seat-1/rowlock/horn"]
    );
    let gone = pair.change("kittiwake/seat-1/rowlock/horn");
    assert_eq!(
        (&gone["old"], &gone["new"], &gone["unit"]),
        (&json!(46.0), &Value::Null, &json!("mm"))
    );
}

#[test]
fn not_measured_is_the_same_as_nothing_and_a_removal_of_what_was_there() {
    let pair =
        Pair::new().edit("b", BOAT, "    chock-to-pin: 600", "    chock-to-pin: not measured");
    assert_eq!(pair.changes(), ["removed kittiwake/seat-1/chock-to-pin"]);
}

#[test]
fn what_follows_is_never_a_change() {
    let pair =
        Pair::new().edit("b", BOAT, "worked-out: {pitch: 3.58 deg", "worked-out: {pitch: 3.6 deg");
    assert_eq!(pair.changes(), [] as [&str; 0]);
}

#[test]
fn a_whole_record_or_oar_is_one_change() {
    let pair = Pair::new().add("b", OARS, "  - oar: A9\n    length: 3860\n    inboard: 1150\n");
    fs::remove_file(pair.path("b").join(CREW)).expect("a file less");
    assert_eq!(pair.changes(), ["added long-ash/A9", "removed masters-a"]);
    assert_eq!(pair.change("masters-a")["old_place"]["path"], CREW);
}

#[test]
fn oars_that_change_seats_are_moved() {
    let pair = Pair::new().edit("b", BOAT, "oar: A1", "oar: A3").edit(
        "b",
        BOAT,
        "seat: 3\n    side: starboard\n    oar: A3",
        "seat: 3\n    side: starboard\n    oar: A1",
    );
    assert_eq!(pair.changes(), ["moved long-ash/A1", "moved long-ash/A3"]);
    let moved = pair.change("long-ash/A1");
    assert_eq!(moved["old"], "kittiwake/seat-1");
    assert_eq!(moved["new"], "kittiwake/seat-3");
    let text = pair.run(&[]).out;
    assert!(
        text.contains("long-ash, A1: moved from kittiwake, seat 1 to kittiwake, seat 3"),
        "{text}"
    );
}

#[test]
fn a_spare_that_comes_to_a_seat_is_moved_and_the_oar_it_replaces_is_told() {
    let pair =
        Pair::new().edit("b", BOAT, "oar: A1", "oar: A5").edit("b", BOAT, "spares: [A5]\n", "");
    assert_eq!(pair.changes(), ["changed kittiwake/seat-1/oar", "moved long-ash/A5"]);
    assert_eq!(pair.change("long-ash/A5")["old"], "kittiwake/spares");
}

#[test]
fn a_set_that_goes_to_another_boat_is_moved_once_with_its_oars() {
    let other = "boat: fulmar\nclass: surfboat\nrigged: {date: 2026-10-17, by: Ines Marlow}\n";
    let pair = Pair::new();
    pair.write(
        "a",
        "boats/fulmar.yaml",
        &format!("{other}oars: short-ash\nseats:\n- {{seat: 1, side: port, oar: B1}}\n"),
    );
    pair.write(
        "b",
        "boats/fulmar.yaml",
        &format!("{other}oars: long-ash\nseats:\n- {{seat: 1, side: port, oar: A1}}\n"),
    );
    let text = pair.text("b", BOAT).replacen("oars: long-ash", "oars: short-ash", 1);
    pair.write("b", BOAT, &text.replacen("oar: A1", "oar: B1", 1));
    assert_eq!(pair.changes(), ["moved long-ash", "moved short-ash"]);
    let moved = pair.change("long-ash");
    assert_eq!((&moved["old"], &moved["new"]), (&json!("kittiwake"), &json!("fulmar")));
}

#[test]
fn what_was_measured_again_and_is_the_same_is_told_as_such() {
    let again = "read-again:\n  - {date: 2026-10-24, by: Tomas Reyne, checked-by: Ines Marlow, values: [seat-2/rowlock/gap]}\n";
    let pair = Pair::new().add("b", BOAT, again);
    assert_eq!(
        pair.changes(),
        ["added kittiwake/read-again/1", "re-measured kittiwake/seat-2/rowlock/gap"]
    );
    let change = pair.change("kittiwake/seat-2/rowlock/gap");
    assert_eq!(change["new_measured"], json!({"on": "2026-10-24", "by": "Tomas Reyne"}));
    let text = pair.run(&[]).out;
    let line = "kittiwake, seat 2: 1 value, on 2026-10-24 by Tomas Reyne, last on 2026-10-17: gap";
    assert!(text.replace("\n    ", " ").contains(line), "{text}");
}

#[test]
fn a_new_rig_day_is_one_line_a_boat_in_text_and_every_value_in_json() {
    let pair = Pair::new().edit("b", BOAT, "date: 2026-10-17", "date: 2026-11-07");
    let json = pair.json();
    let kinds =
        each(&json["changes"], |change| change["kind"].as_str().unwrap_or_default().to_owned());
    let again = kinds.iter().filter(|kind| *kind == "re-measured").count();
    assert!(again > 80, "{again}");
    assert_eq!(kinds.iter().filter(|kind| *kind != "re-measured").count(), 1);
    let text = pair.run(&[]).out;
    let lines = text.matches("on 2026-11-07 by Ines").count();
    assert_eq!(lines, 1, "four seats and the boat: {text}");
    let told = format!("kittiwake: {again} values, on 2026-11-07 by Ines Marlow");
    assert!(text.contains(&told), "{text}");
}

#[test]
fn a_few_seats_that_were_measured_again_are_told_one_by_one() {
    let read = "read-again:\n  - {date: 2026-11-07, by: Ines Marlow, values: [seat-1, seat-2]}\n";
    let text = Pair::new().add("b", BOAT, read).run(&[]).out;
    let (_, again) = text.split_once("Measured again, the same").expect("a section");
    assert!(
        again.contains("kittiwake, seat 1: ") && again.contains("kittiwake, seat 2: "),
        "{text}"
    );
}

#[test]
fn the_same_reading_taken_twice_is_a_measurement_and_its_order_is_nothing() {
    let pair = Pair::new().edit("b", BOAT, "gap: 60", "gap: [60, 60]");
    assert_eq!(pair.changes(), ["re-measured kittiwake/seat-1/rowlock/gap"]);
    let pair = Pair::new().edit("a", BOAT, "gap: 60", "gap: [60, 61]").edit(
        "b",
        BOAT,
        "gap: 60",
        "gap: [61, 60]",
    );
    assert_eq!(pair.changes(), [] as [&str; 0]);
}

#[test]
fn a_limit_switched_off_and_a_fineness_are_changes() {
    let pair = Pair::new().add("b", BOAT, "limits: {pitch: none}\n").edit(
        "b",
        "club.yaml",
        "callipers: 0.2",
        "callipers: 0.5",
    );
    assert_eq!(pair.changes(), ["added kittiwake/limits/pitch", "changed club/readings/callipers"]);
}

#[test]
fn two_kinds_may_share_an_id() {
    let pair = Pair::new()
        .edit("a", CREW, "crew: masters-a", "crew: kittiwake")
        .edit("b", CREW, "crew: masters-a", "crew: kittiwake")
        .edit("b", CREW, "weight: 82", "weight: 81");
    assert_eq!(pair.changes(), ["changed kittiwake/seat-1/weight"]);
    assert_eq!(pair.change("kittiwake/seat-1/weight")["new_place"]["path"], CREW);
}

#[test]
fn a_record_that_is_there_twice_is_compared_file_by_file() {
    let pair = Pair::new();
    let text = pair.text("a", BOAT);
    for side in ["a", "b"] {
        pair.write(side, "boats/again.yaml", &text);
    }
    let pair = pair.edit("b", BOAT, "gap: 60", "gap: 59");
    assert_eq!(pair.changes(), ["changed kittiwake/seat-1/rowlock/gap"]);
    assert_eq!(pair.change("kittiwake/seat-1/rowlock/gap")["new_place"]["path"], BOAT);
}

#[test]
fn only_what_was_asked_for_is_told_and_a_strange_name_is_refused() {
    let pair = Pair::new().edit("b", BOAT, "gap: 60", "gap: 59").edit(
        "b",
        CREW,
        "weight: 82",
        "weight: 81",
    );
    let run = pair.run(&["--only", "masters-a", "--format", "json"]);
    let json: Value = serde_json::from_str(&run.out).expect("JSON");
    assert_eq!(each(&json["changes"], |own| own["name"].clone()), ["masters-a/seat-1/weight"]);
    let run = pair.run(&["--only", "kittwake"]);
    assert_eq!(run.code, Some(2));
    assert!(run.err.contains("Did you mean kittiwake?"), "{}", run.err);
}

#[test]
fn changes_are_no_fault_unless_asked_for() {
    let pair = Pair::new().edit("b", BOAT, "gap: 60", "gap: 59");
    assert_eq!(pair.run(&[]).code, Some(0));
    assert_eq!(pair.run(&["--exit-code"]).code, Some(1));
}
