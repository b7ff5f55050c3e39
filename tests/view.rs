//! A record as plain lines, as git compares it.

use std::process::Command;

use tholebook::reading;
use tholebook::reports::plain_lines;
use tholebook::store::Named;

fn lines(text: &str) -> Option<String> {
    let (book, _) = reading::read_alone(Named::text("boats/petrel.yaml", text));
    plain_lines(&book)
}

const BOAT: &str = "\
boat: petrel
seats:
  - seat: 10
    rowlock: {gap: 57.50} # twice
  - seat: 2
    rowlock: {gap: 5.8 cm}
    pitch: {catch: 11 over 176}
x-paint: \"blue # not red\"
";

#[test]
fn every_value_has_its_own_line_in_a_settled_order() {
    let lines = lines(BOAT).expect("a record");
    let expected = "\
petrel/boat: petrel
petrel/seat-2/pitch/catch: 11 mm over 176 mm
petrel/seat-2/rowlock/gap: 58 mm
petrel/seat-2/seat: 2
petrel/seat-10/rowlock/gap: 57.5 mm
petrel/seat-10/seat: 10
x-paint: blue # not red
# twice
";
    assert_eq!(lines, expected);
}

#[test]
fn layout_quotes_and_decimals_make_no_difference() {
    let other = BOAT
        .replace("57.50", "57.5")
        .replace("5.8 cm", "58")
        .replace("  - seat", "- seat")
        .replace("    ", "  ");
    assert_ne!(other, BOAT);
    assert_eq!(lines(&other), lines(BOAT));
}

#[test]
fn what_is_no_record_or_has_a_fault_has_no_lines() {
    for text in ["", "boat: [petrel\n", "on: push\n", "boat: a\nboat: b\n"] {
        assert_eq!(lines(text), None, "{text:?}");
    }
}

#[test]
fn a_file_that_is_no_record_is_shown_as_it_is() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("x.yaml");
    for (bytes, shown) in [
        (&b"boat: [petrel\r\n"[..], "boat: [petrel\n"),
        (&b"a: \x1b[2J\n"[..], "a: \\u{1b}[2J\n"),
        (&b"\xff\n"[..], "\u{fffd}\n"),
        (&b""[..], ""),
    ] {
        std::fs::write(&file, bytes).expect("a file");
        let view = Command::new(env!("CARGO_BIN_EXE_tholebook")).arg("view").arg(&file).output();
        let view = view.expect("it runs");
        assert!(view.status.success());
        assert_eq!(String::from_utf8_lossy(&view.stdout), shown);
    }
}
