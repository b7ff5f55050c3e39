//! Oars geared differently from seat to seat.

use super::apart;
use super::apart::Apart;
use super::apart::Measure;
use super::finding::Outcome;
use super::judging::Judged;
use super::judging::Range;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use super::words;
use crate::model::LimitKey;
use crate::model::Place;
use crate::working::BoatSight;
use crate::working::Budget;
use crate::working::SeatSight;
use crate::working::Unit;
use crate::working::Worked;

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

fn check(boat: &BoatSight) -> Vec<Outcome> {
    let name = boat.boat.record();
    let range = Range::in_force(boat.in_force, LimitKey::Gearing, Unit::Percent);
    let say = |gearings: &Apart<SeatSight>, by: &Budget, judged: &Judged, range: &Range| {
        apart::labelled(&RULE, name.clone(), gearings, label)
            .saying(format!(
                "{}: the gearing differs by {}: {}; highest {}, lowest {}",
                boat.boat.called(),
                words::measured(by, Unit::Percent),
                range.beyond(judged),
                at_seat(gearings.high),
                at_seat(gearings.low),
            ))
            .remedy(format!(
                "Look at {} first: slide its collar, or give it another oar, so that inboard and outboard are like the others'.",
                gearings.odd_one().0.short()
            ))
    };
    apart::judge_as(Measure::Percent, range.as_ref(), &RULE, &name, gearings(boat), say)
}

/// Returns the gearing of every seat.
pub(super) fn gearings<'b>(
    boat: &BoatSight<'b>,
) -> impl Iterator<Item = (SeatSight<'b>, Worked)> + use<'b> {
    boat.seats().map(|seat| (seat, seat.gearing()))
}

fn label(one: &(SeatSight, Budget)) -> (Place, String) {
    let seat = &one.0.seat;
    (seat.oar.as_ref().map_or(seat.place, |oar| oar.place), at_seat(one))
}

fn at_seat((seat, gearing): &(SeatSight, Budget)) -> String {
    format!("{} with {}", seat.short(), words::number(gearing.value(), ""))
}
