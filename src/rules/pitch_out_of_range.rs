//! A blade with too much or too little pitch.

use super::bending;
use super::finding::Finding;
use super::finding::Outcome;
use super::judging::Range;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use super::words;
use crate::metrology::decision::Bound;
use crate::model::LimitKey;
use crate::working::Attitude;
use crate::working::SeatSight;
use crate::working::Unit;

pub(super) static RULE: Rule = Rule {
    id: "pitch-out-of-range",
    level: Level::Fault,
    checks: "The pitch of the blade square off is outside the limits, corrected for the boat's level.",
    reason: "Too little pitch and the blade dives and is hard to get out; too much and it washes out and lets the water go.",
    remedy: "Set the pitch on the forward horn only: less pitch, its top to the bow; more, to the stern. Then set the gap again with the after horn.",
    formula: "pitch = asin(offset square off / width at the pitch mark) - trim of the boat",
    default: "3 to 7 deg",
    sources: &[
        sources::GEOMETRY.at("offset over the blade's width edge to edge is the sine of the pitch"),
        sources::PRACTICE.at("10 to 12 mm of offset across the blade; 3 to 7 deg"),
    ],
    example: Example {
        wrong: &[
            (
                "boats/kittiwake.yaml",
                "seat: 1",
                "pitch: {catch: 11, square: 11, finish: 11}",
                "pitch: {catch: 11, square: 23, finish: 11}  # <--",
            ),
            (
                "boats/kittiwake.yaml",
                "seat: 2",
                "pitch: {catch: 11, square: 11, finish: 11}",
                "pitch: {catch: 11, square: 7.5, finish: 11}  # <--",
            ),
            (
                "boats/kittiwake.yaml",
                "seat: 3",
                "pitch: {catch: 11, square: 11, finish: 11}",
                "pitch: {catch: 11, square: -11, finish: 11}  # <--",
            ),
        ],
        right: &[
            (
                "boats/kittiwake.yaml",
                "seat: 1",
                "pitch: {catch: 11, square: 11, finish: 11}",
                "pitch: {catch: 9.4, square: 9.4, finish: 9.4}",
            ),
            ("boats/kittiwake.yaml", "seat: 1", "pitch: 3.58 deg", "pitch: 3.06 deg"),
        ],
    },
    looks: Looks::AtEachSeat(check),
};

fn check(seat: &SeatSight) -> Vec<Outcome> {
    if seat.hands_set_pitch() {
        return Vec::new();
    }
    let name = seat.name().at("pitch/square");
    let range = Range::in_force(seat.at.in_force, LimitKey::Pitch, Unit::Deg);
    let reading = seat.pitch_reading(Attitude::Square);
    let place = reading.map_or(seat.seat.place, |reading| reading.place);
    let pitch = seat.pitch(Attitude::Square);
    Range::finding(range.as_ref(), &RULE, &name, &pitch, |pitch, judged, range| {
        let change = match judged.bound {
            Bound::Least => judged.by,
            Bound::Most => -judged.by,
        };
        let here = format!("{} here", words::number(pitch.value(), "deg"));
        Finding::new(&RULE, name.clone(), place, here)
            .saying(format!(
                "{}: the pitch of the blade square off is {}: {}",
                seat.called(),
                words::measured(pitch, Unit::Deg),
                range.beyond(judged),
            ))
            .remedy(bending::set_pitch(seat, change))
    })
}
