//! Back chocks that stand at different distances from their pins.

use super::alike;
use super::alike::Candidate;
use super::finding::Outcome;
use super::judging::Range;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use super::words;
use crate::model::LimitKey;
use crate::working::Apart;
use crate::working::BoatSight;
use crate::working::SeatSight;
use crate::working::Unit;

pub(super) static RULE: Rule = Rule {
    id: "chocks-unlike",
    level: Level::Fault,
    checks: "The distances from back chock to pin differ from seat to seat by more than the limit.",
    reason: "All rowers finish against their chocks. Where the chocks differ, the blades leave the \
             water one after the other, and the boat checks and rolls.",
    remedy: "Measure from the after face of each chock, along the string; bring the odd chock in line with the others, then set the foot holes.",
    formula: "highest less lowest back chock to pin",
    default: "at most 15 mm",
    sources: &[sources::PRACTICE.at("all finish against the chock at one moment")],
    example: Example {
        wrong: &[(
            "boats/kittiwake.yaml",
            "seat: 3",
            "chock-to-pin: 600",
            "chock-to-pin: 622  # <--",
        )],
        right: &[
            ("boats/kittiwake.yaml", "seat: 3", "chock-to-pin: 600", "chock-to-pin: 607"),
            ("boats/kittiwake.yaml", "seat: 4", "chock-to-pin: 600", "chock-to-pin: 593"),
        ],
    },
    looks: Looks::AtEachBoat(check),
};

/// Returns the back chock of a seat, to be compared with the others.
pub(super) fn chock_of(seat: SeatSight) -> Candidate {
    let read = seat.seat.chock_to_pin.as_ref();
    Candidate {
        name: seat.name().at("chock-to-pin"),
        called: seat.short(),
        place: read.map_or(seat.seat.place, |read| read.place),
        value: seat.chock_to_pin(),
    }
}

fn check(boat: &BoatSight) -> Vec<Outcome> {
    let range = Range::in_force(boat.in_force, LimitKey::Chocks, Unit::Mm);
    let Some(range) = range else { return Vec::new() };
    let (members, mut outcomes) = alike::gather(&RULE, boat.seats().map(chock_of));
    let Some(apart) = Apart::of(&members) else { return outcomes };
    let name = boat.boat.record();
    let by = Ok(apart.by.clone());
    outcomes.extend(Range::finding(Some(&range), &RULE, &name, &by, |by, judged, range| {
        let odd = words::number(apart.odd.value.value(), "mm");
        alike::finding(&RULE, name.clone(), &members, &apart, Unit::Mm)
            .saying(format!(
                "{}: the back chocks differ by {}: over by {} ({}); the odd one is {}, {odd} to the pin",
                boat.boat.called(),
                words::measured(by, Unit::Mm),
                words::number(judged.by, "mm"),
                range.words(),
                apart.odd.called,
            ))
            .remedy(format!(
                "Measure {} again from the after face of the chock, along the string. If it still differs, move that chock in line with the others; then set the foot holes.",
                apart.odd.called
            ))
    }));
    outcomes
}
