//! Any file in a book: it is read, judged and reported, every place lies inside it, and nothing of
//! it reaches a terminal that is not a printed sign.

use tholebook::model::Place;
use tholebook::reading;
use tholebook::reports;
use tholebook::reports::Glyphs;
use tholebook::reports::Look;
use tholebook::reports::Report;
use tholebook::rules;
use tholebook::rules::Check;
use tholebook::store::Named;
use tholebook::units::Date;

const LOOK: Look = Look { width: 80, glyphs: Glyphs::Ascii, colour: false };

/// What stands beside the file: its boat's oars and the club's settings.
const BESIDE: [(&str, &str); 2] = [
    ("club.yaml", include_str!("../data/sound-book/club.yaml")),
    ("oars/long-ash.yaml", include_str!("../data/sound-book/oars/long-ash.yaml")),
];

/// Reads the bytes as a boat of a book and tells what is found.
pub(crate) fn tried(bytes: &[u8]) {
    let text = String::from_utf8_lossy(bytes);
    crate::looking_over::looked_over(&text);
    let beside = BESIDE.map(|(path, text)| Named::text(path, text));
    let texts = beside.into_iter().chain([Named::text("boats/kittiwake.yaml", &text)]).collect();
    let (book, faults) = reading::read("book", texts);
    let as_of = Date::read("2026-11-01").expect("a day");
    let mut checked = rules::check(&book, &faults, Check { as_of });
    checked.waive(&book, as_of);
    let places = checked.findings.iter().flat_map(|found| &found.labels).map(|label| label.place);
    places.for_each(|place: Place| {
        let file = &book.file(place.file).text;
        assert!(file.get(place.span.start..place.span.end).is_some(), "{place:?} in {text:?}");
    });
    let report = Report { book: &book, checked: &checked, as_of, only: &[], earlier: None };
    let told =
        [reports::text(&report, LOOK), reports::json(&report), reports::spoken(&report, LOOK)];
    let cards = book.boats.iter().map(|boat| reports::card(&report, boat, LOOK));
    for told in told.into_iter().chain(cards) {
        let raw = told.chars().find(|sign| sign.is_control() && *sign != '\n');
        assert_eq!(raw, None, "{told}");
    }
}
