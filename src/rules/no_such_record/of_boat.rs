//! What a boat names: her class, oars, seats and values.

use super::CLASSES;
use super::SETS;
use super::Seek;
use super::fields;
use super::leads_nowhere;
use super::lost;
use super::not_checked;
use crate::model::Boat;
use crate::model::Name;
use crate::model::OarSet;
use crate::model::Place;
use crate::model::Placed;
use crate::rules::finding::Outcome;

pub(super) fn check(seek: &Seek, boat: &Boat) -> Vec<Outcome> {
    let record = boat.record();
    let class = boat.class.as_ref();
    let class = class.and_then(|id| seek.record(&record.at("class"), id, &CLASSES));
    let set = boat.oars.as_ref();
    let set = set.and_then(|id| seek.record(&record.at("oars"), id, &SETS));
    let oars = match seek.book.oars_of(boat) {
        Some(set) => oars(seek, boat, set),
        None => Vec::new(),
    };
    let seats = seats(seek, boat);
    let values = values(seek, boat);
    class.into_iter().chain(set).chain(oars).chain(seats).chain(values).collect()
}

/// The oar of each seat and the spares, in the boat's set.
fn oars(seek: &Seek, boat: &Boat, set: &OarSet) -> Vec<Outcome> {
    let record = boat.record();
    let seats = boat.seats.iter().filter_map(|seat| {
        let name = seat.number.map_or_else(|| record.at("seats"), |seat| record.seat(seat.value));
        Some((name.at("oar"), seat.oar.as_ref()?))
    });
    let spares = boat.spares.iter().map(|spare| (record.at("spares"), spare));
    let known: Vec<&str> =
        set.oars.iter().filter_map(|oar| Some(&*oar.id.as_ref()?.value)).collect();
    let look = |(name, id): (Name, &Placed<String>)| {
        if known.contains(&&*id.value) {
            return None;
        }
        if let Some(torn) = seek.torn(set.file) {
            return Some(not_checked(&name, torn));
        }
        let what = format!("the set {} has no oar `{}`", set.id.value, id.value);
        Some(lost(&name, id.place, &id.value, &what, &known))
    };
    seats.chain(spares).filter_map(look).collect()
}

/// The seats that bends and knocks name.
fn seats(seek: &Seek, boat: &Boat) -> Vec<Outcome> {
    let bends = boat.record().at("bends");
    let bends = (1..).zip(&boat.bends).filter_map(|(number, bend): (usize, _)| {
        seat(seek, boat, &bends.at(number).at("seat"), bend.seat?)
    });
    let knocks = (1..).zip(&boat.knocks).flat_map(|(number, knock): (usize, _)| {
        let below = boat.record().at("knocks");
        let name = match knock.date {
            Some(date) => below.at(date.value),
            None => below.at(number),
        };
        let name = name.at("where");
        knock.seats.iter().filter_map(move |seat| seat_name(seek, boat, &name, seat))
    });
    bends.chain(knocks).collect()
}

/// Looks for a seat of a boat by its number.
pub(super) fn seat(seek: &Seek, boat: &Boat, name: &Name, seat: Placed<u32>) -> Option<Outcome> {
    seat_called(seek, boat, name, seat.place, &format!("seat-{}", seat.value))
}

fn seat_name(seek: &Seek, boat: &Boat, name: &Name, seat: &Placed<String>) -> Option<Outcome> {
    seat_called(seek, boat, name, seat.place, &seat.value)
}

fn seat_called(
    seek: &Seek,
    boat: &Boat,
    name: &Name,
    place: Place,
    written: &str,
) -> Option<Outcome> {
    let known: Vec<String> =
        boat.seats.iter().filter_map(|seat| Some(format!("seat-{}", seat.number?.value))).collect();
    if known.iter().any(|seat| seat == written) {
        return None;
    }
    if let Some(torn) = seek.torn(boat.file) {
        return Some(not_checked(name, torn));
    }
    let what = format!("{} has no `{written}`", boat.called());
    // Each seat looks as much like another: none is offered before the others.
    let seats = if known.is_empty() { "none".to_owned() } else { known.join(", ") };
    let remedy = format!("Write a seat that she has: {seats}.");
    Some(leads_nowhere(name, place, &what, remedy))
}

/// The names of the values read again.
fn values(seek: &Seek, boat: &Boat) -> Vec<Outcome> {
    let below = boat.record().at("read-again");
    let values = (1..).zip(&boat.read_again).flat_map(|(number, again): (usize, _)| {
        let name = below.at(number).at("values");
        again.values.iter().filter_map(move |value| value_named(seek, boat, &name, value))
    });
    values.collect()
}

fn value_named(seek: &Seek, boat: &Boat, name: &Name, value: &Placed<String>) -> Option<Outcome> {
    let whole = boat.record().at(&value.value);
    let is_there = |name: &Name| name.is_within(whole.as_str());
    if seek.book.written_in(boat.file).iter().any(|own| is_there(&own.name)) {
        return None;
    }
    let fields = fields::of_a_boat(boat);
    if fields.iter().any(|field| is_there(&boat.record().at(field))) {
        return None;
    }
    if let Some(torn) = seek.torn(boat.file) {
        return Some(not_checked(name, torn));
    }
    let parts = |name: &str| name.split('/').count();
    let alike: Vec<&str> = fields
        .iter()
        .map(String::as_str)
        .filter(|field| parts(field) == parts(&value.value))
        .collect();
    let what = format!("{} has no value `{}`", boat.called(), value.value);
    Some(lost(name, value.place, &value.value, &what, &alike))
}
