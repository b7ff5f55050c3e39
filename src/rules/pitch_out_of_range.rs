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
use crate::working::Lack;
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
    let impossible = Attitude::ALL.into_iter().filter_map(|attitude| impossible(seat, attitude));
    impossible.chain(square_off(seat)).collect()
}

/// An offset wider than the blade: one of the two was read or written wrongly.
fn impossible(seat: &SeatSight, attitude: Attitude) -> Option<Outcome> {
    let Err(Lack::Impossible(_)) = seat.pitch_as_read(attitude) else { return None };
    let name = seat.name().at("pitch").at(attitude.key());
    let place = seat.pitch_reading(attitude)?.place;
    let finding = Finding::new(&RULE, name, place, "this offset").saying(format!(
        "{}: the offset {} is wider than the blade at its pitch mark: it can't be",
        seat.called(),
        attitude.words(),
    ));
    let width = seat.oar.and_then(|oar| oar.blade.at_mark.as_ref());
    let finding = match width {
        Some(width) => finding.also(width.place, "the blade's width there"),
        None => finding,
    };
    Some(finding.remedy("Read both again, edges to line, and look at the unit.").found())
}

fn square_off(seat: &SeatSight) -> Vec<Outcome> {
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
