//! The whole book as pages for a browser, each a text that needs nothing from outside. Judges
//! nothing and writes no file.

mod boat;
mod bodies;
mod changes;
mod courses;
mod crew;
mod findings;
mod fleet;
mod found;
mod frame;
mod happened;
mod limits;
mod marks;
mod measuring;
mod naming;
mod narrowing;
mod oars;
mod rig;
mod rowlocks;
mod standing;
mod values;
mod waivers;
mod work;

use std::collections::HashMap;

use rayon::prelude::*;

use super::AtCommit;
use super::Made;
use super::Report;
use super::TimelineRow;
use super::WaiverRow;
use super::html;
use crate::history::Key;
use crate::history::LastMeasured;
use crate::model::Boat;
use crate::model::Crew;
use crate::model::Name;
use crate::model::OarSet;
use crate::model::Place;
use crate::reading::Fault;
use crate::rules::Sum;
use found::Found;
use frame::Frame;
use naming::Names;
use narrowing::Common;

/// The styles of every page, besides the palette.
const STYLE: &str = include_str!("pages.css");

/// All that pages are made of.
pub struct Pages<'p> {
    /// The book and what was found.
    pub report: Report<'p>,
    /// What was told while it was read.
    pub faults: &'p [Fault],
    /// Every value that was judged.
    pub sums: &'p [Sum],
    /// The waivers, and whether each counts.
    pub waivers: Vec<WaiverRow<'p>>,
    /// Which commit the texts are of.
    pub commit: AtCommit,
    /// The past of the records, or why it is not known.
    pub past: Result<BookPast, String>,
    /// Texts of the book that could not be had.
    pub missing: Vec<String>,
}

/// The past of every record of a book.
pub struct BookPast {
    /// By record.
    pub records: HashMap<Key, RecordPast>,
    /// Why the history is not whole; none where it is.
    pub cut: Option<String>,
}

/// The past of one record.
pub struct RecordPast {
    /// Who set each value that stands.
    pub set: HashMap<Name, SetBy>,
    /// Every change, the oldest first.
    pub rows: Vec<TimelineRow>,
}

/// Who set a value, and when it was measured.
pub struct SetBy {
    /// The commit; none for what is not committed yet.
    pub made: Option<Made>,
    /// When it was measured, and by whom; none where it is nothing measured.
    pub measured: Option<LastMeasured>,
}

/// A page with the name of its file.
pub struct NamedPage {
    /// The name: small letters, digits and hyphens, then `.html`.
    pub name: String,
    /// The text.
    pub text: String,
}

/// All that the making of one page may look at.
struct Site<'p> {
    pages: &'p Pages<'p>,
    found: Found<'p>,
    names: Names,
    common: Common,
    /// Where each value stands, by name.
    places: HashMap<&'p Name, Place>,
    /// The judged values that rest on what stands at a place.
    resting: HashMap<Place, Vec<&'p Sum>>,
}

/// One page to be made.
enum Topic<'p> {
    Fleet,
    Boat(usize, &'p Boat),
    Oars(usize, &'p OarSet),
    Crew(usize, &'p Crew),
    Rowlocks,
    Measuring,
    Limits,
    Waivers,
    Changes,
}

/// Returns every page of a book.
#[must_use]
pub fn pages(pages: &Pages) -> Vec<NamedPage> {
    let book = pages.report.book;
    let mut resting: HashMap<Place, Vec<&Sum>> = HashMap::new();
    for sum in pages.sums {
        for part in sum.value.parts() {
            resting.entry(part.input.place).or_default().push(sum);
        }
    }
    let places = book.written().map(|own| (&own.name, own.place)).collect();
    let (found, names, common) = (Found::of(&pages.report), Names::of(book), Common::of(book));
    let site = Site { pages, found, names, common, places, resting };
    let fixed = [
        Topic::Fleet,
        Topic::Rowlocks,
        Topic::Measuring,
        Topic::Limits,
        Topic::Waivers,
        Topic::Changes,
    ];
    let boats = book.boats.iter().enumerate().map(|(at, boat)| Topic::Boat(at, boat));
    let sets = book.oar_sets.iter().enumerate().map(|(at, set)| Topic::Oars(at, set));
    let crews = book.crews.iter().enumerate().map(|(at, crew)| Topic::Crew(at, crew));
    let topics: Vec<Topic> = fixed.into_iter().chain(boats).chain(sets).chain(crews).collect();
    topics.par_iter().map(|topic| site.page(topic)).collect()
}

impl Site<'_> {
    fn page(&self, topic: &Topic) -> NamedPage {
        let (name, frame) = match topic {
            Topic::Fleet => (naming::FLEET.to_owned(), fleet::page(self)),
            Topic::Boat(at, boat) => (self.names.boats[*at].clone(), boat::page(self, boat)),
            Topic::Oars(at, set) => (self.names.sets[*at].clone(), oars::page(self, set)),
            Topic::Crew(at, crew) => (self.names.crews[*at].clone(), crew::page(self, crew)),
            Topic::Rowlocks => (naming::ROWLOCKS.to_owned(), rowlocks::page(self)),
            Topic::Measuring => (naming::MEASURING.to_owned(), measuring::page()),
            Topic::Limits => (naming::LIMITS.to_owned(), limits::page(self)),
            Topic::Waivers => (naming::WAIVERS.to_owned(), waivers::page(self)),
            Topic::Changes => (naming::CHANGES.to_owned(), changes::page(self)),
        };
        let text = self.framed(&name, &frame);
        NamedPage { name, text }
    }

    fn framed(&self, name: &str, frame: &Frame) -> String {
        let body = frame::body(self, name, frame);
        let styles = [super::drawings::STYLE, STYLE];
        let title = frame::title(self, frame);
        html::page(&html::Page { title: &title, styles: &styles, body })
    }

    /// Returns where a value stands.
    fn written(&self, name: &Name) -> Option<Place> {
        self.places.get(name).copied()
    }

    /// Returns the judged values that rest on what stands at a place.
    fn sums_resting_on(&self, place: Option<Place>) -> &[&Sum] {
        place.and_then(|place| self.resting.get(&place)).map_or(&[], Vec::as_slice)
    }

    fn past(&self, key: &Key) -> Option<&RecordPast> {
        self.pages.past.as_ref().ok()?.records.get(key)
    }
}
