//! Answers in a file: the rules of the dialogue, everything or nothing.

use crate::book::BOAT;
use crate::book::Book;
use crate::book::LATER;

/// Chocked level on the later day.
const LEVEL: &str = "rigged/level/trim: 0.0\nrigged/level/roll: 0.1\n";

fn with(lines: &str) -> String {
    format!("{LEVEL}{lines}")
}

#[test]
fn only_what_was_read_gets_the_day_and_every_other_byte_stays() {
    let book = Book::sound();
    let before = book.text(BOAT);
    let lines = with("seat-2/rowlock/gap: 60.2\nseat-1/pin/spread:\n");
    let run = book.measure("kittiwake", &lines, &["--write"]).ends(0);
    let run = run.tells("Read again on 2026-10-31: seat-2/rowlock/gap.");
    assert!(run.out.contains("boats/kittiwake.yaml is written.\n"), "{}", run.out);
    let text = book.text(BOAT);
    let again = "  - {date: 2026-10-31, by: Ines Marlow, values: [seat-2/rowlock/gap]}\n";
    assert!(text.contains(again), "{text}");
    assert!(text.contains("date: 2026-10-17"), "the rigging day stays");
    assert_eq!(text.matches("60.2").count(), 1, "{text}");
    // Line by line: what is not of this reading is as it was.
    let stays = |line: &&str| before.lines().any(|own| own == *line);
    let changed: Vec<&str> = text.lines().filter(|line| !stays(line)).collect();
    let worked_out = changed.iter().filter(|line| line.contains("worked-out")).count();
    assert_eq!(changed.len() - worked_out, 3, "{changed:?}");
    assert!(worked_out <= 1, "{changed:?}");
}

#[test]
fn nothing_is_written_unless_told() {
    let book = Book::sound();
    let before = book.text(BOAT);
    let run = book.measure("kittiwake", &with("seat-2/rowlock/gap: 60.2\n"), &[]).ends(0);
    run.tells("seat 2: gap 60 → 60.2 mm").tells("Nothing was written. To write it: --write");
    assert_eq!(book.text(BOAT), before);
    assert_eq!(book.commits(), 1);
}

#[test]
fn one_bad_line_and_nothing_is_taken() {
    let book = Book::sound();
    let before = book.text(BOAT);
    let lines =
        with("seat-2/rowlock/gap: 60.2\nseat-9/rowlock/gap: 60\nseat-1/rowlock/gap: wide\n");
    let run = book.measure("kittiwake", &lines, &["--write"]).ends(2);
    let run = run.tells("line 4: nothing is called seat-9/rowlock/gap here; did you mean");
    run.tells("line 5: seat-1/rowlock/gap: ").tells("Nothing was written.");
    assert_eq!(book.text(BOAT), before);
}

#[test]
fn every_unit_of_the_format_may_be_given_and_stays_as_written() {
    let book = Book::sound();
    let lines = "seat-1/rowlock/gap: 6 cm\nseat-2/rowlock/gap: [60, 60.2]\n\
                 seat-3/pin/spread: 79.2 cm\nseat-4/pitch/square: 11 over 176\n";
    book.measure("kittiwake", &with(lines), &["--write"]).ends(0);
    let text = book.text(BOAT);
    for value in ["gap: 6 cm", "gap: [60, 60.2]", "spread: 79.2 cm", "square: 11 over 176"] {
        assert!(text.contains(value), "{value}: {text}");
    }
}

#[test]
fn a_boat_out_of_level_is_refused_until_a_reason_is_given() {
    let book = Book::sound();
    let before = book.text(BOAT);
    let rolled = "rigged/level/trim: 0.0\nrigged/level/roll: 2.5\nseat-1/rowlock/gap: 60.2\n";
    let refused = book.measure("kittiwake", rolled, &["--write"]).ends(1);
    refused.tells("Not level: ").tells("rigged/level/accepted: the reason");
    let unlevelled = book.measure("kittiwake", "seat-1/rowlock/gap: 60.2\n", &["--write"]).ends(1);
    unlevelled.tells("the level was not read today");
    assert_eq!(book.text(BOAT), before);

    let accepted = "seat-1/rowlock/gap: 60.2\nrigged/level/accepted: callipers only\n";
    let run = book.measure("kittiwake", accepted, &["--write", "--commit"]).ends(0);
    run.tells("Committed as ");
    assert!(book.text(BOAT).contains("accepted: callipers only"));
    assert!(book.last_message().contains("Measured out of level: callipers only"));
}

#[test]
fn what_was_plumbed_under_two_levels_is_not_written_as_if_under_one() {
    let book = Book::sound();
    let before = book.text(BOAT);
    let other = "rigged/level/trim: 0.9\nrigged/level/roll: 0.1\nseat-1/pitch/square: 11.2\n";
    let reason = format!("{other}rigged/level/accepted: on sand\n");
    let run = book.measure("kittiwake", &reason, &["--write"]).ends(1);
    run.tells(
        "the boat lies otherwise than when the rest was plumbed (trim 0.9 deg today, 0.0 deg then)",
    )
    .tells("or plumb pins, pitch and handles at every seat today");
    assert_eq!(book.text(BOAT), before);
}

#[test]
fn a_jump_read_once_is_told_and_read_twice_is_not() {
    let book = Book::sound();
    let once = book.measure("kittiwake", &with("seat-1/chock-to-pin: 630\n"), &[]);
    once.tells("seat-1/chock-to-pin: 30.0 mm more than last time, and read once only.");
    let twice = book.measure("kittiwake", &with("seat-1/chock-to-pin: [630, 630]\n"), &[]);
    assert!(!twice.err.contains("read once only"), "{}", twice.err);
}

#[test]
fn not_measured_is_written_so_and_gets_no_day() {
    let book = Book::sound();
    let lines = with("seat-1/rowlock/above-seat: not measured\n");
    book.measure("kittiwake", &lines, &["--write"]);
    let text = book.text(BOAT);
    assert!(text.contains("above-seat: not measured"), "{text}");
    assert!(!text.contains("read-again"), "{text}");
}

#[test]
fn without_a_terminal_it_says_so_and_an_unknown_boat_is_named() {
    let book = Book::sound();
    book.run(&["measure", "kittiwake"]).ends(2).tells("this is no terminal").tells("--from FILE");
    book.run(&["measure", "kittiwake", "--no-input"]).ends(2);
    let unknown = book.measure("kitiwake", LEVEL, &[]).ends(2);
    unknown.tells("There is no boat or oar set called kitiwake. Did you mean kittiwake?");
    let missing = book.run(&["measure", "kittiwake", "--from", "none.txt", "--no-input"]).ends(3);
    missing.tells("The answers in none.txt could not be read");
}

#[test]
fn what_guard_would_refuse_is_written_and_not_committed() {
    let book = Book::sound();
    let lines = with("seat-1/rowlock/gap: [50, 50]\n");
    let run = book.measure("kittiwake", &lines, &["--write", "--commit"]).ends(1);
    run.tells("The check before a commit would refuse this one").tells("Not committed.");
    assert!(book.text(BOAT).contains("gap: [50, 50]"));
    assert_eq!(book.commits(), 1);
}

#[test]
fn oars_have_one_day_and_keep_it_when_not_all_is_read() {
    let book = Book::sound();
    let run = book.measure("long-ash", "A5/shaft/widest: 52.1\n", &["--write"]).ends(0);
    run.tells("A set of oars has one day for all that is measured of it.");
    let text = book.text("oars/long-ash.yaml");
    assert!(text.contains("widest: 52.1") && text.contains("date: 2026-10-03"), "{text}");
    let all = crate::answers::of_the_oars();
    let all = all.replace("measured/date: 2026-10-03\n", "");
    book.measure("long-ash", &all, &["--write"]).ends(0).tells("All was read");
    assert!(book.text("oars/long-ash.yaml").contains(&format!("date: {LATER}")));
}
