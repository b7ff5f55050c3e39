//! An unfit oar that somebody would row with.

use super::finding::Finding;
use super::finding::Outcome;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use crate::model::Name;
use crate::model::Oar;
use crate::model::OarState;
use crate::model::Placed;
use crate::working::BoatSight;

pub(super) static RULE: Rule = Rule {
    id: "oar-unfit",
    level: Level::Danger,
    checks: "An oar marked unfit is at a seat of a boat or is one of her spares.",
    reason: "An oar that is not fit breaks when it is leaned on. The rower goes over backwards, \
             and the boat lies across the surf with three oars.",
    remedy: "Take the oar off the boat and put a sound one in its place; or mend it, have it passed, and only then mark it sound.",
    formula: "the state of every oar at a seat and of every spare is not unfit",
    default: "-",
    sources: &[sources::PRACTICE.at("an oar that is not fit is not carried")],
    example: Example {
        wrong: &[
            ("oars/long-ash.yaml", "oar: A1", "state: sound", "state: unfit"),
            ("oars/long-ash.yaml", "oar: A5", "state: sound", "state: unfit"),
            ("boats/kittiwake.yaml", "seat: 1", "oar: A1", "oar: A1  # <--"),
            ("boats/kittiwake.yaml", "", "spares: [A5]", "spares: [A5]  # <--"),
        ],
        right: &[
            ("oars/long-ash.yaml", "oar: A5", "state: sound", "state: unfit"),
            ("boats/kittiwake.yaml", "", "spares: [A5]", "spares: []"),
        ],
    },
    looks: Looks::AtEachBoat(check),
};

fn check(boat: &BoatSight) -> Vec<Outcome> {
    let called = boat.boat.called();
    let seats = boat.seats().filter_map(|seat| {
        let name = seat.name().at("oar");
        unfit(name, seat.seat.oar.as_ref()?, seat.oar?, &format!("at {}", seat.called()))
    });
    let spares = boat.boat.spares.iter().filter_map(|spare| {
        let oar = boat.book.oar(boat.boat, spare)?;
        unfit(boat.boat.record().at("spares"), spare, oar, &format!("a spare of {called}"))
    });
    seats.chain(spares).collect()
}

fn unfit(name: Name, carried: &Placed<String>, oar: &Oar, how: &str) -> Option<Outcome> {
    let state = oar.state.filter(|state| state.value == OarState::Unfit)?;
    let id = &carried.value;
    let finding = Finding::new(&RULE, name, carried.place, "this oar")
        .also(state.place, "marked unfit here")
        .saying(format!("oar {id} is marked unfit, and it is {how}"))
        .remedy(format!(
            "Take oar {id} off the boat and put a sound one in its place. Mark it sound only when it is mended and passed."
        ));
    Some(finding.found())
}
