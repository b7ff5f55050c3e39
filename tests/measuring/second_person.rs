//! A second person's own readings, blind, beside the first one's.

use crate::book::BOAT;
use crate::book::Book;
use crate::book::RIGGED;

const SECOND: &str = "rigged/by: Tomas Reyne\nseat-1/rowlock/gap: 60.2\nseat-2/rowlock/gap: 58.5\n";

#[test]
fn disagreements_are_listed_and_both_readings_are_kept() {
    let book = Book::sound().edit(BOAT, "  checked-by: Tomas Reyne\n", "");
    let words = ["--second", "--write", "--as-of", RIGGED];
    let run = book.measure("kittiwake", SECOND, &words);
    let run = run.ends(1).tells("2 values read by two people; they disagree on 1.");
    run.tells("seat-2/rowlock/gap: first 60, second 58.5 (1.5 mm apart; the tool allows 0.4 mm)");
    let text = book.text(BOAT);
    assert!(text.contains("gap: [60, 60.2]") && text.contains("gap: [60, 58.5]"), "{text}");
    assert!(text.contains("checked-by: Tomas Reyne"), "{text}");
    assert!(text.contains("by: Ines Marlow"), "the first one stays who measured: {text}");
    assert!(!text.contains("read-again"), "{text}");
}

#[test]
fn two_who_agree_end_clear() {
    let book = Book::sound().edit(BOAT, "  checked-by: Tomas Reyne\n", "");
    let agreed = SECOND.replace("58.5", "60");
    let run = book.measure("kittiwake", &agreed, &["--second", "--write", "--as-of", RIGGED]);
    run.ends(0).tells("2 values read by two people; they disagree on 0.");
}

#[test]
fn on_another_day_or_by_the_same_person_they_are_listed_and_not_written() {
    let book = Book::sound();
    let before = book.text(BOAT);
    let run = book.measure("kittiwake", SECOND, &["--second", "--write"]).ends(1);
    run.tells("they disagree on 1.")
        .tells("Nothing can be written of it: the first readings are not of 2026-10-31");
    let same = SECOND.replace("Tomas Reyne", "Ines Marlow");
    let run = book.measure("kittiwake", &same, &["--second", "--write", "--as-of", RIGGED]).ends(1);
    run.tells("the second person is the one who measured first");
    let nobody = SECOND.replace("rigged/by: Tomas Reyne\n", "");
    let run = book.measure("kittiwake", &nobody, &["--second", "--write", "--as-of", RIGGED]);
    run.ends(1).tells("nobody said who measured");
    assert_eq!(book.text(BOAT), before);
}
