//! One side of the boat with more pitch than the other.

use super::blades;
use super::finding::Finding;
use super::finding::Outcome;
use super::judging::Range;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use super::words;
use crate::geometry::Side;
use crate::model::LimitKey;
use crate::model::Word;
use crate::working::BoatSight;
use crate::working::Budget;
use crate::working::SeatSight;
use crate::working::Unit;
use crate::working::Worked;

pub(super) static RULE: Rule = Rule {
    id: "sides-unequal",
    level: Level::Fault,
    checks: "The mean pitch of the port blades and of the starboard blades, square off, differ by more than the limit.",
    reason: "The side with more pitch lifts more at the same pull: she lists away from it, and the other side rows deep.",
    remedy: "Take pitch off the blades of the higher side, or give it to the lower, on the forward horns only; then set the gaps again with the after horns.",
    formula: "mean of port less mean of starboard, square off, as read: trim cancels and roll has no part",
    default: "at most 0.5 deg",
    sources: &[
        sources::GEOMETRY.at("lift on the blade is pull times the tangent of its pitch"),
        sources::CLUB.at("0.5 deg"),
    ],
    example: Example {
        wrong: &[
            (
                "boats/kittiwake.yaml",
                "seat: 2",
                "pitch: {catch: 11, square: 11, finish: 11}",
                "pitch: {catch: 11, square: 14, finish: 11}",
            ),
            (
                "boats/kittiwake.yaml",
                "seat: 4",
                "pitch: {catch: 11, square: 11, finish: 11}",
                "pitch: {catch: 11, square: 14.5, finish: 11}  # <--",
            ),
        ],
        right: &[
            (
                "boats/kittiwake.yaml",
                "seat: 2",
                "pitch: {catch: 11, square: 11, finish: 11}",
                "pitch: {catch: 12.4, square: 12.4, finish: 12.4}",
            ),
            ("boats/kittiwake.yaml", "seat: 2", "pitch: 3.58 deg", "pitch: 4.04 deg"),
            (
                "boats/kittiwake.yaml",
                "seat: 4",
                "pitch: {catch: 11, square: 11, finish: 11}",
                "pitch: {catch: 12.4, square: 12.4, finish: 12.4}",
            ),
            ("boats/kittiwake.yaml", "seat: 4", "pitch: 3.58 deg", "pitch: 4.04 deg"),
        ],
    },
    looks: Looks::AtEachBoat(check),
};

fn check(boat: &BoatSight) -> Vec<Outcome> {
    let name = boat.boat.record();
    let range = Range::in_force(boat.in_force, LimitKey::Sides, Unit::Deg);
    let port_less_starboard = boat.side_difference();
    let port_higher = port_less_starboard.as_ref().is_ok_and(|by| by.value() > 0.0);
    let sign = if port_higher { 1.0 } else { -1.0 };
    let apart = port_less_starboard.map(|difference| difference.scaled(sign));
    let (high, low) =
        if port_higher { (Side::Port, Side::Starboard) } else { (Side::Starboard, Side::Port) };
    Range::finding(range.as_ref(), &RULE, &name, &apart, |apart, judged, range| {
        labelled(boat, high)
            .saying(format!(
                "{}: {} has more pitch than {}, square off, by {}: {}",
                boat.boat.called(),
                high.word(),
                low.word(),
                words::measured(apart, Unit::Deg),
                range.beyond(judged),
            ))
            .remedy(remedy(high, low, judged.by))
    })
}

/// A finding that points first at the blade furthest from the mean of all.
fn labelled(boat: &BoatSight, high: Side) -> Finding {
    let there = |(seat, pitch): (_, Worked)| Some((seat, pitch.ok()?));
    let mut all: Vec<(SeatSight, Budget)> = blades::square_off(boat).filter_map(there).collect();
    let mean = Budget::mean(all.iter().map(|(_, pitch)| pitch)).map_or(0.0, |mean| mean.value());
    let off = |pitch: &Budget| (pitch.value() - mean).abs();
    let lower = |seat: &SeatSight| seat.seat.side.is_none_or(|side| side.value != high);
    all.sort_by(|one, other| {
        off(&other.1).total_cmp(&off(&one.1)).then(lower(&one.0).cmp(&lower(&other.0)))
    });
    let first = all.first().map_or(boat.boat.id.place, |(seat, _)| blades::place(seat));
    let text = all.first().map_or(String::new(), |(_, pitch)| blades::here(pitch));
    let finding = Finding::new(&RULE, boat.boat.record(), first, text);
    all.iter().skip(1).fold(finding, |finding, (seat, pitch)| {
        finding.also(blades::place(seat), blades::here(pitch))
    })
}

fn remedy(high: Side, low: Side, by: f64) -> String {
    let by = words::number(by, "deg");
    format!(
        "Give each {} blade less pitch by at least {by}, the top of its forward horn to the bow; or each {} blade as much more, to the stern. Then set the gaps again with the after horns.",
        high.word(),
        low.word(),
    )
}
