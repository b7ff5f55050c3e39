//! A page, and the numbers in its drawings.

use tholebook::model::Book;
use tholebook::reports;
use tholebook::reports::Asked;
use tholebook::reports::AtCommit;
use tholebook::reports::Report;
use tholebook::rules::Checked;
use tholebook::rules::Edit;
use tholebook::units::Date;

use crate::sound_book::SoundBook;

pub(crate) const BOAT: &str = "boats/kittiwake.yaml";

pub(crate) fn with<T>(edits: &[Edit], tell: impl Fn(&Report) -> T) -> T {
    let (book, checked) = SoundBook::with(edits).check();
    told(&book, &checked, tell)
}

pub(crate) fn told<T>(book: &Book, checked: &Checked, tell: impl Fn(&Report) -> T) -> T {
    let as_of = Date::read("2026-11-01").expect("a day");
    tell(&Report { book, checked, as_of, only: &[], earlier: None })
}

pub(crate) fn sheet(edits: &[Edit]) -> String {
    with(edits, |report| reports::sheet(report, &report.book.boats[0], &AtCommit::None))
}

pub(crate) fn blank(edits: &[Edit], asked: Asked) -> String {
    with(edits, |report| reports::blank_sheet(report, &report.book.boats[0], asked))
}

/// A drawing of the boat as a file of its own.
pub(crate) fn drawing(id: &str, edits: &[Edit]) -> String {
    let all = with(edits, |report| reports::drawings(report, &report.book.boats[0]));
    all.into_iter().find(|called| called.id == id).expect(id).drawing.svg()
}

/// The numbers of an attribute of every element whose class begins so.
#[track_caller]
pub(crate) fn numbers(svg: &str, class: &str, attributes: &[&str]) -> Vec<Vec<f64>> {
    let elements = svg.split('<').filter(|element| {
        element.contains(&format!("class=\"{class} "))
            || element.contains(&format!("class=\"{class}\""))
    });
    let number = |element: &str, attribute: &str| {
        let (_, rest) = element.split_once(&format!(" {attribute}=\"")).expect(attribute);
        rest.split('"').next().expect("a value").parse().expect("a number")
    };
    elements.map(|element| attributes.iter().map(|key| number(element, key)).collect()).collect()
}

pub(crate) fn one_to(svg: &str) -> f64 {
    let (_, rest) = svg.split_once("data-one-to=\"").expect("a scale");
    rest.split('"').next().expect("a value").parse().expect("a number")
}

/// Nearer than the thousandths of a millimetre of paper can tell at the scale of a plan.
#[track_caller]
pub(crate) fn near(one: f64, other: f64) {
    assert!((one - other).abs() < 0.15, "{one} is not {other}");
}
