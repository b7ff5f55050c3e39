//! The sound book with edits, checked and told.

use serde_json::Value;
use tholebook::model::Book;
use tholebook::reports;
use tholebook::reports::Glyphs;
use tholebook::reports::Look;
use tholebook::reports::Report;
use tholebook::rules::Checked;
use tholebook::rules::Edit;
use tholebook::units::Date;

use crate::sound_book::SoundBook;

pub(crate) const PLAIN: Look = Look { width: 80, glyphs: Glyphs::Unicode, colour: false };
pub(crate) const BOAT: &str = "boats/kittiwake.yaml";
pub(crate) const TIGHT: Edit = (BOAT, "seat: 1", "gap: 60", "gap: 55");

pub(crate) fn told(book: &Book, checked: &Checked, tell: impl Fn(&Report) -> String) -> String {
    let as_of = Date::read("2026-11-01").expect("a day");
    tell(&Report { book, checked, as_of, only: &[], earlier: None })
}

pub(crate) fn text_of(book: &SoundBook, look: Look) -> String {
    let (book, checked) = book.check();
    told(&book, &checked, |report| reports::text(report, look))
}

pub(crate) fn text(edits: &[Edit]) -> String {
    text_of(&SoundBook::with(edits), PLAIN)
}

pub(crate) fn json(edits: &[Edit]) -> Value {
    let (book, checked) = SoundBook::with(edits).check();
    serde_json::from_str(&told(&book, &checked, reports::json)).expect("JSON")
}

pub(crate) fn keys(value: &Value) -> Vec<&str> {
    value.as_object().expect("an object").keys().map(String::as_str).collect()
}

/// Returns the keys of the first object in `text` after `start`, in the order they are written.
pub(crate) fn ordered(text: &str, start: &str) -> Vec<String> {
    let from = text.find(start).unwrap_or_else(|| panic!("{start} in {text}")) + start.len();
    let (mut depth, mut keys, mut quoted) = (0_i32, Vec::new(), None);
    let bytes = text.as_bytes();
    for at in from..bytes.len() {
        match (bytes[at], quoted) {
            (b'"', None) => quoted = Some(at + 1),
            (b'"', Some(begun)) if bytes[at - 1] != b'\\' => {
                if depth == 1 && bytes[at + 1] == b':' {
                    keys.push(text[begun..at].to_owned());
                }
                quoted = None;
            }
            (b'{' | b'[', None) => depth += 1,
            (b'}' | b']', None) => {
                depth -= 1;
                if depth == 0 {
                    break;
                }
            }
            _ => {}
        }
    }
    keys
}
