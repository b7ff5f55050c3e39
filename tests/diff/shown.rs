//! How a difference looks: plain words, 80 columns, and nothing that steers a terminal or a page.

use serde_json::Value;

use super::pair::BOAT;
use super::pair::Pair;

/// Steers a terminal, turns the reading order, breaks a table, makes markup, calls someone.
const HOSTILE: &str = "\"a \\e[2J \\u202E | `b` <img src=x> \\n# head @ines [x](http://y) www.z\"";

fn hostile() -> Pair {
    let note = format!("    note: {HOSTILE}\n    chock-to-pin: 600");
    Pair::new().edit("b", BOAT, "    chock-to-pin: 600", &note)
}

#[test]
fn a_change_reads_as_one_would_say_it() {
    let text = Pair::new().edit("b", BOAT, "gap: 60", "gap: 62").run(&[]).out;
    assert!(text.contains("kittiwake, seat 1: gap 60 → 62 mm (2 mm wider)"), "{text}");
    assert!(text.contains("clearance 8.0 → 10.0 mm, good to ± 0.3 mm"), "{text}");
}

#[test]
fn a_note_shows_the_words_that_changed() {
    let note = |pair: Pair, side: &str, note: &str| {
        let text = format!("    note: {note}\n    chock-to-pin: 600");
        pair.edit(side, BOAT, "    chock-to-pin: 600", &text)
    };
    let pair = note(note(Pair::new(), "a", "horn bent 3 mm"), "b", "horn bent 4 mm");
    let text = pair.run(&[]).out;
    assert!(text.contains("note horn bent [-3-]{+4+} mm"), "{text}");
    let change = pair.change("kittiwake/seat-1/note");
    assert_eq!((&change["kind"], &change["new"]), (&"changed".into(), &"horn bent 4 mm".into()));
}

#[test]
fn no_line_is_wider_than_the_terminal() {
    let pair = Pair::new().edit("b", BOAT, "gap: 60", "gap: 55").edit(
        "b",
        BOAT,
        "date: 2026-10-17",
        "date: 2026-11-07",
    );
    for width in ["60", "80"] {
        let text = pair.run(&["--width", width]).out;
        let most: usize = width.parse().expect("a number");
        let wide: Vec<&str> = text.lines().filter(|line| line.chars().count() > most).collect();
        assert!(wide.is_empty(), "{wide:#?}");
    }
}

#[test]
fn hostile_words_steer_nothing() {
    let text = hostile().run(&[]).out;
    assert!(!text.contains(['\u{1b}', '\u{202e}']), "{text:?}");
    let page = hostile().run(&["--format", "markdown"]).out;
    assert!(!page.contains(['\u{1b}', '\u{202e}', '@']), "{page:?}");
    assert!(
        !page.contains("<img") && !page.contains("http://") && !page.contains("www."),
        "{page}"
    );
    let row = page.lines().find(|line| line.contains("img")).expect("the row");
    let bare = row.replace("\\|", "").replace("\\`", "");
    assert_eq!(bare.matches('|').count(), 6, "{row}");
    assert_eq!(bare.matches('`').count(), 0, "{row}");
    assert!(!page.contains("\n# "));
}

#[test]
fn json_holds_the_true_text_with_what_can_t_be_seen_escaped() {
    let run = hostile().run(&["--format", "json"]);
    assert!(!run.out.contains(['\u{1b}', '\u{202e}']));
    let json: Value = serde_json::from_str(&run.out).expect("JSON");
    let note = json["changes"][0]["new"].as_str().expect("a text");
    assert!(note.contains("\u{1b}[2J \u{202e} | `b` <img"), "{note:?}");
}

#[test]
fn a_page_holds_tables_of_what_changed_followed_and_was_found() {
    let page = Pair::new().edit("b", BOAT, "gap: 60", "gap: 55").run(&["--format", "markdown"]).out;
    assert!(page.contains("| kittiwake, seat 1 | gap | 60 mm | 55 mm | 5 mm narrower |"), "{page}");
    assert!(page.contains("| kittiwake, seat 1 | clearance | 8.0 → 3.0 mm, good to ± 0.3 mm |"));
    assert!(page.contains("| danger | gap-too-tight |"), "{page}");
}

#[test]
fn where_nothing_changed_that_is_said() {
    let pair = Pair::new();
    assert_eq!(
        pair.run(&[]).out,
        "Nothing changed in the rig from the files in a to the files in b.\n"
    );
    let page = pair.run(&["--format", "markdown"]).out;
    assert_eq!(page, "Nothing changed in the rig from the files in a to the files in b.\n");
}
