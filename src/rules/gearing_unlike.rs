//! Oars geared differently from seat to seat.

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
    id: "gearing-unlike",
    level: Level::Note,
    checks: "Outboard over inboard differs from seat to seat by more than the limit.",
    reason: "A higher gearing is heavier in the hands: at the same stroke those rowers tire first, \
             and the sides pull unequally.",
    remedy: "Set the collars so that inboard and outboard are alike, or swap oars within the set; nothing, if the club gears the seats differently on purpose.",
    formula: "gearing = (length - inboard) / inboard; highest less lowest, in parts of a hundred of the mean",
    default: "at most 2 %",
    sources: &[sources::GEOMETRY.at("levers"), sources::CLUB.at("2 %")],
    example: Example {
        wrong: &[
            ("oars/long-ash.yaml", "oar: A3", "inboard: 1150", "inboard: 1180"),
            ("boats/kittiwake.yaml", "seat: 3", "oar: A3", "oar: A3  # <--"),
        ],
        right: &[
            ("oars/long-ash.yaml", "oar: A3", "inboard: 1150", "inboard: 1154"),
            (
                "boats/kittiwake.yaml",
                "seat: 3",
                "handle-past-mark: 320.5, gearing: 2.357",
                "handle-past-mark: 324.5, gearing: 2.345",
            ),
        ],
    },
    looks: Looks::AtEachBoat(check),
};

/// Returns the gearing of a seat, to be compared with the others.
pub(super) fn gearing_of(seat: SeatSight) -> Candidate {
    let oar = seat.seat.oar.as_ref();
    Candidate {
        name: seat.name().at("oar"),
        called: seat.short(),
        place: oar.map_or(seat.seat.place, |oar| oar.place),
        value: seat.gearing(),
    }
}

fn check(boat: &BoatSight) -> Vec<Outcome> {
    let range = Range::in_force(boat.in_force, LimitKey::Gearing, Unit::Percent);
    let Some(range) = range else { return Vec::new() };
    let (members, mut outcomes) = alike::gather(&RULE, boat.seats().map(gearing_of));
    let Some(apart) = Apart::of(&members) else { return outcomes };
    let Some(percent) = apart.percent(&members) else { return outcomes };
    let name = boat.boat.record();
    outcomes.extend(Range::finding(Some(&range), &RULE, &name, &Ok(percent), |by, judged, range| {
        alike::finding(&RULE, name.clone(), &members, &apart, Unit::None)
            .saying(format!(
                "{}: the gearing differs by {}: over by {} ({}); highest {} with {}, lowest {} with {}",
                boat.boat.called(),
                words::measured(by, Unit::Percent),
                words::number(judged.by, "%"),
                range.words(),
                apart.highest.called,
                words::number(apart.highest.value.value(), ""),
                apart.lowest.called,
                words::number(apart.lowest.value.value(), ""),
            ))
            .remedy(format!(
                "Look at {} first: slide its collar, or give it another oar, so that inboard and outboard are like the others'.",
                apart.odd.called
            ))
    }));
    outcomes
}
