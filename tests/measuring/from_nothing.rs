//! A book made from nothing by `start`, `add` and `measure` alone.

use crate::answers;
use crate::book::BOAT;
use crate::book::Book;
use crate::book::RIGGED;

/// A repository in which a book, its oars and a boat are begun, and nothing is measured.
fn begun() -> Book {
    let book = Book::nothing();
    book.run(&["start", ".", "--club", "Tarrow Head Boat Club", "--ci", "none"]).ends(0);
    let oars = ["--oar", "A1", "--oar", "A2", "--oar", "A3", "--oar", "A4", "--oar", "A5"];
    book.run(&[&["add", "oars", "long-ash"], &oars[..]].concat()).ends(0);
    let boat = ["add", "boat", "kittiwake", "--by", "Ines Marlow", "--first-side", "starboard"];
    book.run(&[&boat[..], &["--spare", "A5", "--as-of", RIGGED]].concat()).ends(0);
    book
}

#[test]
fn a_book_is_started_filled_and_measured_and_lint_finds_neither_danger_nor_fault() {
    let book = begun();
    let write = ["--write", "--commit", "--as-of", RIGGED];
    book.measure("long-ash", &answers::of_the_oars(), &write).ends(0);
    let back = [&write[..], &["--back-in-use"]].concat();
    let measured = book.measure("kittiwake", &answers::of_the_boat(), &back).ends(0);
    measured
        .tells("She is out of use since 2026-10-17, by Ines Marlow: not measured yet.")
        .tells("She is used again")
        .tells("Nothing was pushed.");

    assert_eq!(book.commits(), 2);
    assert!(book.last_message().starts_with("kittiwake: measured on 2026-10-17 by Ines Marlow\n"));
    let lint = book.run(&["lint", "--at", "HEAD", "--as-of", "2026-11-01", "--format", "brief"]);
    lint.ends(0)
        .tells("checked 1 boat, 1 oar set, 0 crews, 137 readings: 0 dangers, 0 faults, 0 unsure");
    let text = book.text(BOAT);
    assert!(!text.contains("\nout-of-use:"), "she is used");
    assert!(text.contains("# gap: "), "what explains the fields stays");
    let status = book.git().status_file(BOAT.as_ref()).expect("a status");
    assert_eq!(status, git2::Status::CURRENT);
}

#[test]
fn what_was_measured_gives_the_same_sums_as_the_record_it_was_read_from() {
    let book = begun();
    let write = ["--write", "--as-of", RIGGED];
    book.measure("long-ash", &answers::of_the_oars(), &write).ends(0);
    book.measure("kittiwake", &answers::of_the_boat(), &write).ends(0);
    let sums = |book: &Book| {
        let run = book.run(&["derive", "kittiwake", "--format", "json"]).ends(0);
        serde_json::from_str::<serde_json::Value>(&run.out).expect("JSON")["boats"].clone()
    };
    let own = sums(&book);
    assert_eq!(own, sums(&Book::sound()));
    assert!(own[0]["seats"][3]["worked_out"]["pitch_deg"]["number"].is_f64(), "{own}");
}

#[test]
fn a_boat_with_a_danger_stays_out_of_use_whatever_is_said() {
    let book = begun();
    let write = ["--write", "--as-of", RIGGED, "--back-in-use"];
    book.measure("long-ash", &answers::of_the_oars(), &write[..3]).ends(0);
    let tight = answers::of_the_boat().replace("seat-3/rowlock/gap: 60", "seat-3/rowlock/gap: 50");
    book.measure("kittiwake", &tight, &write)
        .tells("A danger stands, so she stays out of use.")
        .tells("seat-3/rowlock/gap: a danger, and read once only.");
    assert!(book.text(BOAT).contains("\nout-of-use:"));
    assert!(book.text(BOAT).contains("gap: 50"), "what was read is written all the same");
}
