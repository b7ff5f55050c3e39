//! One oar in two places.

use std::collections::HashMap;

use super::finding::Finding;
use super::finding::Outcome;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use crate::model::Boat;
use crate::model::Book;
use crate::model::Name;
use crate::model::Place;
use crate::units::Date;

pub(super) static RULE: Rule = Rule {
    id: "oar-twice",
    level: Level::Fault,
    checks: "One oar is at two seats of a boat, or at a seat and among the spares; or two boats rigged on one day name the same set.",
    reason: "An oar can't be in two rowlocks. One of the two seats was measured with another oar, \
             so its gap is not known to clear the oar that will be in it.",
    remedy: "Look which oar lies at which seat and write that down; measure the seat that had the wrong one again.",
    formula: "every oar of a set is named once in a boat; two boats that name one set have different rigging days",
    default: "-",
    sources: &[sources::FORMAT.at("oars and spares of a boat")],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "seat: 3", "oar: A3", "oar: A2  # <--"),
            ("boats/kittiwake.yaml", "", "spares: [A5]", "spares: [A5, A4]  # <--"),
            (
                "boats/petrel.yaml",
                "",
                "",
                "boat: petrel\nclass: surfboat\noars: long-ash  # <--\nrigged: {date: 2026-10-17, by: Ines Marlow}\n",
            ),
        ],
        right: &[
            ("boats/kittiwake.yaml", "seat: 2", "oar: A2", "oar: A3"),
            ("boats/kittiwake.yaml", "seat: 3", "oar: A3", "oar: A2"),
        ],
    },
    looks: Looks::AtTheBook(check),
};

fn check(book: &Book, _: Date) -> Vec<Outcome> {
    let within = book.boats.iter().flat_map(within_a_boat);
    within.chain(between_boats(book)).map(Finding::found).collect()
}

/// A place where an oar of a boat is named.
struct Named<'b> {
    oar: &'b str,
    place: Place,
    name: Name,
    whereabouts: String,
}

fn within_a_boat(boat: &Boat) -> Vec<Finding> {
    let mut first: HashMap<&str, Named> = HashMap::new();
    let mut findings = Vec::new();
    for named in oars_named(boat) {
        match first.get(named.oar) {
            Some(before) => findings.push(twice(boat, before, named)),
            None => drop(first.insert(named.oar, named)),
        }
    }
    findings
}

fn oars_named(boat: &Boat) -> impl Iterator<Item = Named<'_>> {
    let seats = boat.seats.iter().filter_map(|seat| {
        let oar = seat.oar.as_ref()?;
        let (name, whereabouts) = match seat.number {
            Some(number) => (boat.record().seat(number.value), format!("at seat {}", number.value)),
            None => (boat.record().at("seats"), "at a seat without a number".to_owned()),
        };
        Some(Named { oar: &oar.value, place: oar.place, name: name.at("oar"), whereabouts })
    });
    let spares = boat.spares.iter().map(|spare| {
        let (name, whereabouts) = (boat.record().at("spares"), "among the spares".to_owned());
        Named { oar: &spare.value, place: spare.place, name, whereabouts }
    });
    seats.chain(spares)
}

fn twice(boat: &Boat, before: &Named, named: Named) -> Finding {
    let Named { oar, place, name, whereabouts } = named;
    let also = &before.whereabouts;
    let where_both = if *also == whereabouts {
        format!("twice {whereabouts}")
    } else {
        format!("{also} and {whereabouts}")
    };
    Finding::new(&RULE, name, place, format!("oar {oar} again"))
        .also(before.place, format!("oar {oar} first here"))
        .saying(format!("{}: oar {oar} is {where_both}", boat.called()))
}

fn between_boats(book: &Book) -> Vec<Finding> {
    let mut first: HashMap<(&str, Date), &Boat> = HashMap::new();
    let mut findings = Vec::new();
    for boat in &book.boats {
        let (Some(set), Some(date)) = (&boat.oars, boat.rigged.date) else { continue };
        match first.get(&(set.value.as_str(), date.value)) {
            Some(before) => findings.extend(shared(before, boat)),
            None => drop(first.insert((&set.value, date.value), boat)),
        }
    }
    findings
}

fn shared(before: &Boat, boat: &Boat) -> Option<Finding> {
    let (set, date) = (boat.oars.as_ref()?, boat.rigged.date?);
    let finding = Finding::new(&RULE, boat.record().at("oars"), set.place, "this set")
        .also(before.oars.as_ref()?.place, format!("{} names it too", before.called()))
        .level(Level::Note)
        .saying(format!(
            "{} and {} were both rigged on {} with the oars {}",
            before.called(),
            boat.called(),
            date.value,
            set.value
        ))
        .remedy("Only one of the two can be afloat with these oars. If one carries another set, write that set.");
    Some(finding)
}
