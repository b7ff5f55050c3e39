//! Reads one text and gives what was told of it, with the bytes that each fault points at.

use tholebook::model::Book;
use tholebook::model::Place;
use tholebook::model::Seat;
use tholebook::reading;
use tholebook::store::Named;

/// A fault with the text it points at.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Told {
    pub(crate) rule: &'static str,
    /// The bytes pointed at.
    pub(crate) text: String,
    /// The bytes of the second place.
    pub(crate) also: Option<String>,
    /// The first byte pointed at.
    pub(crate) start: usize,
    pub(crate) name: String,
    pub(crate) message: String,
    pub(crate) help: String,
}

/// Reads texts under their paths.
pub(crate) fn read_all(texts: Vec<Named>) -> (Book, Vec<Told>) {
    let (book, faults) = reading::read("book", texts);
    let text = |place: Place| {
        let text = &book.file(place.file).text;
        text.get(place.span.start..place.span.end).expect("bytes of the file").to_owned()
    };
    let told = faults.iter().map(|fault| Told {
        rule: fault.what.rule(),
        text: text(fault.place),
        also: fault.also.map(text),
        start: fault.place.span.start,
        name: fault.name.to_string(),
        message: fault.what.to_string(),
        help: fault.what.help(),
    });
    let told = told.collect();
    (book, told)
}

/// Reads one text under a path.
pub(crate) fn read_at(path: &str, text: &str) -> (Book, Vec<Told>) {
    read_all(vec![Named::text(path, text)])
}

/// Reads one record.
pub(crate) fn read(text: &str) -> (Book, Vec<Told>) {
    read_at("records/one.yaml", text)
}

/// Returns a boat with one seat, with these lines in the seat.
pub(crate) fn boat_with_seat(lines: &str) -> String {
    let lines = lines.replace('\n', "\n    ");
    format!(
        "boat: petrel\nclass: surfboat\noars: long-ash\nrigged: {{date: 2026-10-17, by: I.M.}}\nseats:\n  - seat: 1\n    side: port\n    oar: A1\n    {lines}\n"
    )
}

/// Reads a boat with one seat, with these lines in the seat.
pub(crate) fn seat(lines: &str) -> (Seat, Vec<Told>) {
    let (book, told) = read(&boat_with_seat(lines));
    let boat = book.boats.first().expect("a boat");
    (boat.seats.first().expect("a seat").clone(), told)
}

/// Returns the rule and the text of each fault.
pub(crate) fn pairs(told: &[Told]) -> Vec<(&str, &str)> {
    told.iter().map(|told| (told.rule, told.text.as_str())).collect()
}
