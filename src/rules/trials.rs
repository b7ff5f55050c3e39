//! When an oar was last lifted out by hand, and what happened to the seat since.
//!
//! Days have no hours. A bend on the day of a trial comes before it, for an oar is lifted out when
//! the bending is done. A knock on the rigging day comes after it, for nobody rigs a boat while
//! she is rolled; a knock on the day of a later trial comes before it, for it is why one tries.

use crate::model::Bend;
use crate::model::BentPart;
use crate::model::Knock;
use crate::model::Place;
use crate::model::Placed;
use crate::units::Date;
use crate::working::SeatSight;

/// Something that happened to a seat after its oar was last lifted out.
pub(super) struct Later {
    /// What happened, and when.
    pub(super) what: String,
    /// Where it is written.
    pub(super) place: Place,
}

/// The day of a trial, and whether it is the rigging day.
#[derive(Clone, Copy, Eq, Ord, PartialEq, PartialOrd)]
struct Trial {
    day: Date,
    again: bool,
}

/// Returns what happened to the seat since its oar was lifted out in all four places.
pub(super) fn since_lifted(seat: &SeatSight) -> Option<Later> {
    let trial = lifted(seat);
    knocked(seat, trial).or_else(|| bent(seat, trial))
}

/// The oldest of the four trials; none where a day is missing.
fn lifted(seat: &SeatSight) -> Option<Trial> {
    let attitudes = seat.seat.lifts_out.each();
    let trials = attitudes.iter().map(|(attitude, _)| tried(seat, attitude));
    trials.min().flatten()
}

fn tried(seat: &SeatSight, attitude: &str) -> Option<Trial> {
    let boat = seat.at.boat;
    let name = seat.name().at(format_args!("lifts-out/{attitude}"));
    let lists = |value: &str| name.is_within(boat.record().at(value).as_str());
    let again = boat.read_again.iter().filter(|again| again.values.iter().any(|v| lists(&v.value)));
    let again = again.filter_map(|again| Some(Trial { day: again.date?.value, again: true }));
    let rigged = boat.rigged.date.map(|date| Trial { day: date.value, again: false });
    again.chain(rigged).max()
}

fn knocked(seat: &SeatSight, trial: Option<Trial>) -> Option<Later> {
    let after =
        |day: Date| trial.is_none_or(|trial| day > trial.day || (day == trial.day && !trial.again));
    let knocks = seat.at.boat.knocks.iter().filter(|knock| concerns(knock, seat));
    let knock = knocks
        .filter(|knock| knock.date.is_none_or(|date| after(date.value)))
        .max_by_key(|knock| knock.date.map(|date| date.value))?;
    let place = knock.date.map(|date| date.place);
    Some(Later {
        what: format!("she took a knock{}", on(knock.date)),
        place: place.or_else(|| Some(knock.what.as_ref()?.place)).unwrap_or(seat.seat.place),
    })
}

/// Whether a knock concerns a seat: it names the seat, or names no seat at all.
fn concerns(knock: &Knock, seat: &SeatSight) -> bool {
    let named = |at: &Placed<String>| seat.at.boat.record().at(&at.value);
    let here = |at: &Placed<String>| {
        seat.name().is_within(named(at).as_str()) || named(at).is_within(seat.name().as_str())
    };
    let mut seats = knock.seats.iter().filter(|at| at.value.starts_with("seat-")).peekable();
    seats.peek().is_none() || knock.seats.iter().any(here)
}

fn bent(seat: &SeatSight, trial: Option<Trial>) -> Option<Later> {
    let number = seat.seat.number?.value;
    let own = |bend: &&Bend| bend.seat.is_some_and(|own| own.value == number);
    let after = |bend: &&Bend| {
        let late = |day: Date| trial.is_none_or(|trial| day > trial.day);
        bend.date.is_none_or(|date| late(date.value))
    };
    let bends = seat.at.boat.bends.iter().filter(own).filter(after);
    let bend = bends.max_by_key(|bend| bend.date.map(|date| date.value))?;
    let part = match bend.part.map(|part| part.value) {
        Some(BentPart::ForwardHorn) => "its forward horn",
        Some(BentPart::AfterHorn) => "its after horn",
        Some(BentPart::Pin) => "its pin",
        None => "it",
    };
    Some(Later {
        what: format!("{part} was bent{}", on(bend.date)),
        place: bend.date.map_or(seat.seat.place, |date| date.place),
    })
}

fn on(date: Option<Placed<Date>>) -> String {
    date.map_or(" on a day not written".to_owned(), |date| format!(" on {}", date.value))
}
