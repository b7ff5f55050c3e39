//! The record that is measured, with its questions, the days of its values, and its tools.

use crate::cli::arguments::Measure;
use crate::cli::book;
use crate::cli::book::OpenBook;
use crate::cli::exit::Exit;
use crate::cli::lint::today;
use crate::cli::look::look;
use crate::cli::output::Done;
use crate::model::Boat;
use crate::model::Book;
use crate::model::FileId;
use crate::model::Name;
use crate::model::OarSet;
use crate::reading::RecordKind;
use crate::reports::Look;
use crate::reports::shown;
use crate::store::Store;
use crate::store::committing;
use crate::units::Date;
use crate::working::BoatSight;
use crate::working::Tools;
use crate::writing::editing;
use crate::writing::measuring::About;
use crate::writing::measuring::Dialogue;
use crate::writing::measuring::Last;
use crate::writing::measuring::Question;
use crate::writing::measuring::SeatAbout;
use crate::writing::measuring::questions;

/// A record that is measured.
pub(super) struct Measured {
    pub(super) store: Store,
    pub(super) open: OpenBook,
    pub(super) kind: RecordKind,
    pub(super) id: String,
    pub(super) file: FileId,
    pub(super) today: Date,
    pub(super) look: Look,
}

impl Measured {
    /// Opens the book and finds the record.
    ///
    /// # Errors
    ///
    /// What the command comes to instead.
    pub(super) fn open(arguments: &Measure) -> Result<Self, Done> {
        let store = book::opened(arguments.book.as_deref());
        let store = store.map_err(|error| book::could_not(&error))?;
        let open = book::read(store.clone());
        let (kind, file) = found(&open, &arguments.name)?;
        let today = arguments.as_of.unwrap_or_else(today);
        let (id, look) = (arguments.name.clone(), look(&arguments.look));
        Ok(Self { store, open, kind, id, file, today, look })
    }

    /// Returns the path of the record below the book's root.
    pub(super) fn path(&self) -> &str {
        &self.open.book.file(self.file).path
    }

    /// Returns its text.
    pub(super) fn text(&self) -> &str {
        &self.open.book.file(self.file).text
    }

    pub(super) fn boat(&self) -> Option<&Boat> {
        self.open.book.boats.iter().find(|boat| boat.file == self.file)
    }

    fn set(&self) -> Option<&OarSet> {
        self.open.book.oar_sets.iter().find(|set| set.file == self.file)
    }

    /// Returns what people call it.
    pub(super) fn called(&self) -> &str {
        self.boat().map_or(&self.id, Boat::called)
    }

    /// Returns the dialogue at its beginning.
    ///
    /// # Errors
    ///
    /// The record has faults, or nothing to measure.
    pub(super) fn dialogue(&self, second: bool) -> Result<Dialogue, Done> {
        let says = editing::read(self.text()).map_err(|refused| {
            let told = [format!("{}: {refused}.", self.path()), refused.help().to_owned()];
            Done::refused(Exit::NotChecked, told.map(|line| shown::line(&line)).to_vec())
        })?;
        let mut all = questions(self.kind, &says, &self.about()?);
        for question in &mut all {
            self.date(question);
        }
        self.offer_who(&mut all, second);
        let dialogue = Dialogue::new((self.kind, &self.id), self.text(), all, self.today);
        Ok(if second { dialogue.blind() } else { dialogue })
    }

    fn about(&self) -> Result<About, Done> {
        let mut about = About::default();
        if let Some(boat) = self.boat() {
            about.seats = self.seats(boat);
            let class = boat.class.as_ref().and_then(|id| self.open.book.class(&id.value));
            let items = class.map(|class| class.walk_round.iter());
            about.walk_round = items.into_iter().flatten().map(|item| item.value.clone()).collect();
        }
        if let Some(set) = self.set() {
            let ids = set.oars.iter().filter_map(|oar| oar.id.as_ref());
            about.oars = ids.map(|id| id.value.clone()).collect();
        }
        if about.seats.is_empty() && about.oars.is_empty() {
            let told = format!("{} has no seats and no oars to measure.", self.path());
            let help = "Each begins with its own line in the file: - seat: 1, or - oar: A1";
            return Err(Done::refused(Exit::Usage, vec![shown::line(&told), help.to_owned()]));
        }
        Ok(about)
    }

    fn seats(&self, boat: &Boat) -> Vec<SeatAbout> {
        let sight = BoatSight::new(&self.open.book, boat);
        let seat = |seat: crate::working::SeatSight| {
            let number = seat.seat.number?.value;
            let is_round = seat.oar.is_some_and(|oar| oar.shaft.round.is_some());
            Some(SeatAbout { number, is_round })
        };
        let mut seats: Vec<SeatAbout> = sight.seats().filter_map(seat).collect();
        seats.sort_by_key(|seat| seat.number);
        seats.dedup_by_key(|seat| seat.number);
        seats
    }

    /// Says of a question when it was last read, by whom, and how finely its tool reads.
    fn date(&self, question: &mut Question) {
        let name = Name::record(&self.id).at(&question.name);
        let book = &self.open.book;
        let tools = self.boat().map_or(Tools::of_club(book), |boat| Tools::of_day(book, boat));
        question.fine = question.is_reading().then(|| tools.half_width(question.tool));
        let read = if question.is_dated { self.last_read(&name) } else { None };
        if let (Some(last), Some((on, by))) = (&mut question.last, read) {
            (last.on, last.by) = (Some(on), by);
        }
    }

    fn last_read(&self, name: &Name) -> Option<(Date, Option<String>)> {
        if let Some(boat) = self.boat() {
            let (on, by) = BoatSight::new(&self.open.book, boat).last_read(name)?;
            return Some((on.value, by.map(|by| by.value.clone())));
        }
        let measured = &self.set()?.measured;
        Some((measured.date?.value, measured.by.as_ref().map(|by| by.value.clone())))
    }

    /// Offers the name that git knows, else the last one, as who measures; a second person gives
    /// their own.
    fn offer_who(&self, all: &mut [Question], second: bool) {
        let names = ["rigged/by", "measured/by"];
        let Some(who) = all.iter_mut().find(|own| names.contains(&&*own.name)) else { return };
        let known = |name: &String| {
            let people = &self.open.book.club.people;
            people.is_empty()
                || people.iter().any(|own| own.name.as_ref().is_some_and(|own| own.value == *name))
        };
        let identity = committing::identity(&self.open.root).filter(known);
        let last = who.last.take().map(|last| last.text);
        let offered = if second { None } else { identity.or(last) };
        who.last = offered.map(|text| Last { text, on: None, by: None });
    }
}

/// Returns the kind and the file of a record by its id.
fn found(open: &OpenBook, id: &str) -> Result<(RecordKind, FileId), Done> {
    let book: &Book = &open.book;
    let boat = book.boat(id).map(|boat| (RecordKind::Boat, boat.file));
    let set = || book.oar_set(id).map(|set| (RecordKind::OarSet, set.file));
    boat.or_else(set).ok_or_else(|| {
        let boats = book.boats.iter().map(|boat| &*boat.id.value);
        let sets = book.oar_sets.iter().map(|set| &*set.id.value);
        let ids: Vec<&str> = boats.chain(sets).collect();
        let known = match ids.as_slice() {
            [] => "This book has no boat and no oar set that can be read.".to_owned(),
            ids => format!("There are {}.", shown::line(&ids.join(", "))),
        };
        let mut told = open.told.clone();
        told.extend(book::unknown("boat or oar set", id, &ids, &known));
        told.extend(open.unread());
        Done::refused(Exit::Usage, told)
    })
}
