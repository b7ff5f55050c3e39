//! A crew of four in the sound book, as tests want them.

use std::fmt::Write as _;

use tholebook::model::Book;
use tholebook::planning::fitting::Fit;
use tholebook::planning::fitting::fit;
use tholebook::working::BoatSight;

use crate::sound_book::SoundBook;

pub(super) const BOAT: &str = "boats/kittiwake.yaml";
pub(super) const CREW: &str = "crews/masters-a.yaml";

/// One rower as written.
#[derive(Clone, Debug, Default)]
pub(super) struct Rower {
    pub(super) stature: u32,
    pub(super) leg: Option<u32>,
    pub(super) hole: Option<u32>,
    pub(super) arc: Option<(u32, u32)>,
}

impl Rower {
    pub(super) fn of(stature: u32) -> Self {
        Self { stature, ..Self::default() }
    }

    pub(super) fn in_hole(self, hole: u32) -> Self {
        Self { hole: Some(hole), ..self }
    }
}

/// A crew, the chocks of the four seats and the foot holes.
#[derive(Clone, Debug)]
pub(super) struct Club {
    pub(super) rowers: Vec<Rower>,
    pub(super) chocks: [u32; 4],
    pub(super) first: u32,
    pub(super) apart: u32,
    pub(super) count: u32,
}

impl Club {
    pub(super) fn of(rowers: Vec<Rower>) -> Self {
        Self { rowers, chocks: [600; 4], first: 800, apart: 30, count: 10 }
    }

    /// The book with this crew in its boat.
    pub(super) fn book(&self) -> Book {
        let mut book = SoundBook::new();
        let holes = format!(
            "foot-holes: {{first: {}, apart: {}, count: {}}}",
            self.first, self.apart, self.count
        );
        book.edit(BOAT, "", "foot-holes: {first: 820, apart: 30, count: 8}", &holes);
        for (seat, chock) in (1..).zip(self.chocks) {
            let to = format!("chock-to-pin: {chock}");
            book.edit(BOAT, &format!("seat: {seat}"), "chock-to-pin: 600", &to);
        }
        book.edit(CREW, "", "", &self.crew());
        tholebook::reading::read("sound-book", book.texts()).0
    }

    fn crew(&self) -> String {
        let mut text = "crew: masters-a\nboat: kittiwake\nrowers:\n".to_owned();
        for (seat, rower) in (1..).zip(&self.rowers) {
            write!(text, "  - {{seat: {seat}, stature: {}", rower.stature).expect("a text");
            let field = |key: &str, value: Option<u32>| {
                value.map_or(String::new(), |value| format!(", {key}: {value}"))
            };
            text.push_str(&field("leg", rower.leg));
            text.push_str(&field("foot-hole", rower.hole));
            if let Some((catch, finish)) = rower.arc {
                write!(text, ", arc: {{catch: {catch}, finish: {finish}}}").expect("a text");
            }
            text.push_str("}\n");
        }
        text
    }
}

/// Seats the only crew of a book in her boat.
pub(super) fn seated(book: &Book) -> Fit<'_> {
    let boat = book.boat("kittiwake").expect("the boat");
    fit(book, &book.crews[0], BoatSight::new(book, boat))
}
