//! The sound book with changes, and its oars tried in its rowlocks.

use tholebook::model::Book;
use tholebook::planning::matching::Match;
use tholebook::planning::matching::NotFound;
use tholebook::planning::matching::Tried;
use tholebook::planning::matching::not_found;
use tholebook::working::BoatSight;
use tholebook::working::Worked;

use crate::sound_book::SoundBook;

pub(super) const BOAT: &str = "boats/kittiwake.yaml";
pub(super) const OARS: &str = "oars/long-ash.yaml";

/// File, after what, from, to.
pub(super) type Change<'c> = (&'c str, &'c str, &'c str, &'c str);

/// The sound book with changes.
pub(super) fn changed(changes: &[Change]) -> SoundBook {
    let mut book = SoundBook::new();
    for (path, after, from, to) in changes {
        book.edit(path, after, from, to);
    }
    book
}

pub(super) fn read(book: &SoundBook) -> Book {
    tholebook::reading::read("sound-book", book.texts()).0
}

/// Every set in every boat.
pub(super) fn matches(book: &Book) -> Vec<Match<'_>> {
    let boats = book.boats.iter().map(|boat| BoatSight::new(book, boat));
    boats.flat_map(|boat| book.oar_sets.iter().map(move |set| Match::of(boat, set))).collect()
}

pub(super) fn lacks(book: &Book) -> Vec<NotFound<'_>> {
    let boats = book.boats.iter().map(|boat| BoatSight::new(book, boat));
    boats.flat_map(|boat| not_found(&boat)).collect()
}

/// Tells of one oar in one seat of the only boat, after changes.
pub(super) fn tried<T>(
    changes: &[Change],
    seat: u32,
    oar: &str,
    tell: impl FnOnce(&Tried<'_>) -> T,
) -> T {
    let book = read(&changed(changes));
    let matches = matches(&book);
    let mut all = matches.iter().flat_map(Match::all);
    let found = all.find(|(at, tried)| {
        let number = at.seat.seat.number.is_some_and(|number| number.value == seat);
        number && tried.oar.is_called(oar)
    });
    tell(found.expect("the oar in the seat").1)
}

/// The figure and how good it is.
#[track_caller]
pub(super) fn figure(worked: &Worked) -> (f64, f64) {
    let budget = worked.as_ref().expect("a figure");
    (budget.value(), budget.expanded())
}

#[track_caller]
pub(super) fn close(found: f64, expected: f64, within: f64) {
    assert!((found - expected).abs() <= within, "{found} is not {expected} ± {within}");
}
