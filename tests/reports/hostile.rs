//! Texts of the book that would steer what reads the report.

use tholebook::reports;
use tholebook::reports::shown::is_hidden;
use tholebook::rules::Edit;

use crate::sound_book::SoundBook;
use crate::telling::BOAT;
use crate::telling::PLAIN;
use crate::telling::TIGHT;
use crate::telling::json;
use crate::telling::text;
use crate::telling::told;

/// Source: the terminal sequences are those of ECMA-48 (CSI 2 J clears, OSC 0 retitles) and the
/// bidirectional override of Unicode Standard Annex 9.
#[test]
fn no_text_of_the_book_can_steer_the_terminal() {
    let hostile =
        "note: \"a\\u001B[2J\\u009B2J \u{202e}evil\u{200b}\"\n    wund\u{202e}: 1\n    gap";
    let edit: Edit = (BOAT, "seat: 1", "gap", hostile);
    let name: Edit = (BOAT, "", "name: Kittiwake", "name: \"Kitti\\u001B]0;x\\u0007\\nwake\"");
    let raw: Edit = (BOAT, "", "wind: light", "wind: light # \u{1b}[31m\u{9b}\u{202e}\r");
    for edits in [vec![edit, TIGHT], vec![name, TIGHT], vec![raw, TIGHT]] {
        let (book, checked) = SoundBook::with(&edits).check();
        assert!(!checked.findings.is_empty() || edits.len() == 2, "{edits:?}");
        for out in [
            told(&book, &checked, |report| reports::text(report, PLAIN)),
            told(&book, &checked, |report| reports::brief(report, PLAIN)),
            told(&book, &checked, reports::json),
        ] {
            let hidden = out.chars().find(|c| *c != '\n' && is_hidden(*c));
            assert_eq!(hidden, None, "{out}");
        }
    }
    let drawn = text(&[name, TIGHT]);
    assert!(drawn.contains("Kitti\\u{1b}]0;x\\u{7}\\u{a}wake"), "{drawn}");
}

#[test]
fn json_carries_the_true_text() {
    let (name, true_name) = ("name: \"Kitti\\u001Bwake\u{202e}\"", "Kitti\u{1b}wake\u{202e}");
    let report = json(&[(BOAT, "", "name: Kittiwake", name), TIGHT]);
    let message = report["findings"][0]["message"].as_str().expect("a message");
    assert!(message.starts_with(true_name), "{message:?}");
}
