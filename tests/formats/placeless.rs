//! A finding whose only places are in the program's own classes is shown at its record, or at the
//! club's settings: other programs drop what has no place.

use serde_json::Value;
use tholebook::model::Book;
use tholebook::model::FileId;
use tholebook::model::Name;
use tholebook::model::Place;
use tholebook::model::Span;
use tholebook::reports;
use tholebook::reports::Ended;
use tholebook::reports::Report;
use tholebook::rules::Checked;
use tholebook::rules::Level;
use tholebook::units::Date;

use crate::github::commands;
use crate::markdown::rows;
use crate::sound_book::SoundBook;

const TIGHT: [(&str, &str, &str, &str); 1] =
    [("boats/kittiwake.yaml", "seat: 1", "gap: 60", "gap: 55")];

/// One finding of a name, all of whose places are in a class of the program's.
fn placeless(name: &str) -> (Book, Checked) {
    let (book, mut checked) = SoundBook::with(&TIGHT).check();
    let built_in = book.files.iter().position(|file| file.built_in).expect("a class");
    checked.findings.truncate(1);
    checked.findings[0].name = Name::record(name);
    for label in &mut checked.findings[0].labels {
        label.place = Place { file: FileId(built_in), span: Span { start: 9, end: 12 } };
    }
    (book, checked)
}

#[track_caller]
fn is_shown_at(name: &str, path: &str) {
    let (book, checked) = placeless(name);
    let as_of = Date::read("2026-11-01").expect("a day");
    let report = Report { book: &book, checked: &checked, as_of, only: &[], earlier: None };
    let ended = Ended {
        report,
        below: "log book",
        gate: Level::Fault,
        exit_code: 1,
        told: &[],
        show_waived: false,
    };
    let log: Value = serde_json::from_str(&reports::sarif(&ended)).expect("JSON");
    let place = &log["runs"][0]["results"][0]["locations"][0]["physicalLocation"];
    let uri = format!("log%20book/{path}");
    assert_eq!(place["artifactLocation"]["uri"], *uri);
    assert_eq!(
        (&place["region"]["startLine"], &place["region"]["startColumn"]),
        (&1.into(), &1.into())
    );
    let told = commands(&reports::github(&ended));
    assert_eq!(
        (told[0].property("file"), told[0].property("line")),
        (&*format!("log book/{path}"), "1")
    );
    assert_eq!(rows(&reports::markdown(&ended), "Findings")[0][1], format!("log book/{path}:1"));
    assert!(reports::junit(&ended).contains(&format!("log book/{path}:1:1: {name}")));
}

#[test]
fn it_is_shown_at_its_record() {
    is_shown_at("kittiwake/seat-1", "boats/kittiwake.yaml");
    is_shown_at("long-ash", "oars/long-ash.yaml");
    is_shown_at("masters-a", "crews/masters-a.yaml");
}

#[test]
fn where_it_has_no_record_it_is_shown_at_the_settings() {
    is_shown_at("surfboat/limits", "club.yaml");
}
