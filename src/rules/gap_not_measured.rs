//! A rowlock and an oar that nobody measured against each other.

use super::finding::Finding;
use super::finding::Outcome;
use super::judging::not_checked;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use super::unread::Unread;
use crate::model::Name;
use crate::model::Oar;
use crate::model::Place;
use crate::model::Placed;
use crate::working::BoatSight;
use crate::working::Lack;
use crate::working::SeatSight;

pub(super) static RULE: Rule = Rule {
    id: "gap-not-measured",
    level: Level::Danger,
    checks: "A seat of a boat in use has no gap or its oar no shaft section, or a spare has none, so that nobody knows whether the oar comes out.",
    reason: "An oar that jams breaks, throws the rower, or holds the boat down by the blade. What was not measured is not known to be clear.",
    remedy: "Measure the gap between the horns and the widest section of the shaft with callipers, leather wet, and write them; or take the boat out of use.",
    formula: "a gap, an oar found in the boat's set, and its widest section",
    default: "-",
    sources: &[
        sources::GEOMETRY.at("clearance needs both"),
        sources::ISO_14253.at("the burden of proof reversed: conformity must be proven"),
    ],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "seat: 1", "gap: 60", "gap: not measured  # <--"),
            ("boats/kittiwake.yaml", "seat: 2", "oar: A2", "oar: A9  # <--"),
            ("boats/kittiwake.yaml", "seat: 3", "oar: A3", "oar: A3  # <--"),
            ("oars/long-ash.yaml", "oar: A3", "widest: 52, ", ""),
            ("boats/kittiwake.yaml", "", "spares: [A5]", "spares: [A7]  # <--"),
        ],
        right: &[
            ("oars/long-ash.yaml", "oar: A1", "widest: 52, narrowest: 46", "round: 51"),
            ("boats/kittiwake.yaml", "seat: 1", "clearance: 8.0", "clearance: 9.0"),
        ],
    },
    looks: Looks::AtEachBoat(check),
};

/// What is missing, where to look first, and where else.
struct Gap {
    missing: Vec<String>,
    fields: Vec<String>,
    place: Place,
    also: Option<Place>,
}

fn check(boat: &BoatSight) -> Vec<Outcome> {
    let seats = boat.seats().filter_map(|seat| {
        let gap = of_seat(&seat)?;
        let told = told(boat, &seat.called(), seat.name().at("rowlock"), gap);
        Some(told)
    });
    let spares = boat.boat.spares.iter().filter_map(|spare| {
        let gap = of_spare(boat, spare)?;
        let name = boat.boat.record().at(format_args!("spare/{}", spare.value));
        let called = format!("{}, spare {}", boat.boat.called(), spare.value);
        Some(told(boat, &called, name, gap))
    });
    seats.chain(spares).collect()
}

/// A danger of a boat in use; of one that isn't, or where all that is missing stands in a text that
/// can't be had here, a check that was not made.
fn told(boat: &BoatSight, called: &str, name: Name, gap: Gap) -> Outcome {
    if boat.boat.is_out_of_use() || gap.missing.is_empty() {
        return not_checked(&RULE, &name, &Lack::NotMeasured(gap.fields));
    }
    let missing = gap.missing.join(", and ");
    let finding = Finding::new(&RULE, name, gap.place, "not known to let the oar go")
        .saying(format!("{called}: nobody knows whether the oar comes out: {missing}"));
    match gap.also {
        Some(place) => finding.also(place, "its widest section is missing").found(),
        None => finding.found(),
    }
}

/// What a seat lacks. The first place is the rowlock's, unless only the oar is at fault.
fn of_seat(seat: &SeatSight) -> Option<Gap> {
    let rowlock = &seat.seat.rowlock;
    let written = seat.seat.oar.as_ref();
    let oar = lacking(&seat.at, written, seat.oar);
    let gap = rowlock.gap.is_none().then(|| "the gap is not measured".to_owned());
    let place = match (&gap, written) {
        (None, Some(written)) => written.place,
        _ => rowlock.place.unwrap_or(seat.seat.place),
    };
    let fields = gap.iter().map(|_| "rowlock/gap".to_owned());
    let fields = fields.chain(oar.iter().map(|(_, field)| field.clone())).collect();
    let also = seat.oar.filter(|_| oar.is_some()).map(section_place);
    let lacks = gap.is_some() || oar.is_some();
    let missing = gap.into_iter().chain(oar.and_then(|(why, _)| why)).collect();
    lacks.then_some(Gap { missing, fields, place, also })
}

fn of_spare(boat: &BoatSight, spare: &Placed<String>) -> Option<Gap> {
    let oar = boat.book.oar(boat.boat, spare);
    let (why, field) = lacking(boat, Some(spare), oar)?;
    let also = oar.map(section_place);
    let missing = why.into_iter().collect();
    Some(Gap { missing, fields: vec![field], place: spare.place, also })
}

/// Why nobody knows how wide an oar is, and the field that is missing. The reason is none where it
/// may well be known, in a text that can't be had here.
fn lacking(
    boat: &BoatSight,
    written: Option<&Placed<String>>,
    oar: Option<&Oar>,
) -> Option<(Option<String>, String)> {
    if oar.is_some_and(|oar| oar.shaft.widest().is_some()) {
        return None;
    }
    let set = boat.boat.oars.as_ref().map(|set| &set.value);
    let unread = set.filter(|_| boat.oars.is_none() && written.is_some());
    if let Some((set, unread)) = unread.and_then(|set| Some((set, Unread::of(boat.book)?))) {
        let broken = matches!(unread, Unread::Broken(_));
        let why = format!("the set {set} was not found, but {} can't be read", unread.what());
        return Some((
            broken.then_some(why),
            if broken { "oars".to_owned() } else { unread.what() },
        ));
    }
    let (why, field) = lacking_in_the_book(boat, written, oar);
    Some((Some(why), field))
}

fn lacking_in_the_book(
    boat: &BoatSight,
    written: Option<&Placed<String>>,
    oar: Option<&Oar>,
) -> (String, String) {
    let Some(id) = written.map(|id| &id.value) else {
        return ("no oar is named".to_owned(), "oar".to_owned());
    };
    let set = boat.boat.oars.as_ref().map(|set| &set.value);
    match (oar, boat.oars, set) {
        (Some(oar), ..) if oar.shaft.is_dry() => (
            format!("oar {id} was measured with its leather dry; wet it and measure again"),
            format!("{id}/shaft/widest"),
        ),
        (Some(_), Some(set), _) if !boat.book.file(set.file).whole => (
            format!("the set {} can't be read as far as the section of {id}", set.id.value),
            format!("{id}/shaft/widest"),
        ),
        (Some(_), ..) => (
            format!("the widest section of oar {id} is not measured"),
            format!("{id}/shaft/widest"),
        ),
        (None, Some(set), _) if !boat.book.file(set.file).whole => {
            (format!("the set {} can't be read as far as oar {id}", set.id.value), "oar".to_owned())
        }
        (None, Some(set), _) => {
            (format!("the set {} has no oar {id}", set.id.value), "oar".to_owned())
        }
        (None, None, Some(set)) => (format!("the set {set} is not in the book"), "oars".to_owned()),
        (None, None, None) => ("the boat has no oar set".to_owned(), "oars".to_owned()),
    }
}

fn section_place(oar: &Oar) -> Place {
    oar.shaft.place.unwrap_or(oar.place)
}
