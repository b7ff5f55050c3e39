//! Blades that are not pitched alike.

use super::apart;
use super::apart::Apart;
use super::bending;
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
use crate::model::LimitKey;
use crate::working::BoatSight;
use crate::working::Budget;
use crate::working::SeatSight;
use crate::working::Unit;

pub(super) static RULE: Rule = Rule {
    id: "pitch-mismatch",
    level: Level::Fault,
    checks: "The highest and the lowest pitch of the boat's blades, square off, differ by more than the limit.",
    reason: "Every blade must hold the water alike. Unequal blades pull unlike, and she rolls and pulls to one side.",
    remedy: "Bring the odd blade to the others, on its forward horn only; then set the gap again with the after horn.",
    formula: "highest less lowest pitch square off, as read: trim is the same at every seat, roll and lean count only as far as an oar is not laid quite square; of more than two blades it must be beyond by 1.12 times what it is good to",
    default: "at most 0.6 deg",
    sources: &[
        sources::GEOMETRY.at("trim takes part in every blade alike and cancels"),
        sources::PRACTICE.at("0.6 deg"),
    ],
    example: Example {
        wrong: &[(
            "boats/kittiwake.yaml",
            "seat: 2",
            "pitch: {catch: 11, square: 11, finish: 11}",
            "pitch: {catch: 11, square: 15, finish: 11}  # <--",
        )],
        right: &[
            (
                "boats/kittiwake.yaml",
                "seat: 2",
                "pitch: {catch: 11, square: 11, finish: 11}",
                "pitch: {catch: 12.5, square: 12.5, finish: 12.5}",
            ),
            ("boats/kittiwake.yaml", "seat: 2", "pitch: 3.58 deg", "pitch: 4.07 deg"),
        ],
    },
    looks: Looks::AtEachBoat(check),
};

fn check(boat: &BoatSight) -> Vec<Outcome> {
    let name = boat.boat.record();
    let range = Range::in_force(boat.in_force, LimitKey::PitchMatch, Unit::Deg);
    let pitches = blades::square_off(boat);
    apart::judge(range.as_ref(), &RULE, &name, pitches, |pitches, difference, judged, range| {
        let odd = pitches.odd_one();
        let others = pitches.all.iter().filter(|(seat, _)| seat.seat.place != odd.0.seat.place);
        let first = Finding::new(&RULE, name.clone(), blades::place(&odd.0), blades::here(&odd.1));
        others
            .fold(first, |finding, (seat, pitch)| {
                finding.also(blades::place(seat), blades::here(pitch))
            })
            .saying(format!(
                "{}: square off the blades differ by {} ({} the most, {} the least, each good to ± {}): {}",
                boat.boat.called(),
                words::measured(difference, Unit::Deg),
                blades::at_seat(pitches.high),
                blades::at_seat(pitches.low),
                words::number(pitches.good_to(), "deg"),
                range.beyond(judged),
            ))
            .remedy(remedy(pitches, judged.by))
    })
}

/// Moves the blades on the odd one's side that are too far from the other end.
fn remedy(pitches: &Apart<SeatSight>, by: f64) -> String {
    let odd: &(SeatSight, Budget) = pitches.odd_one();
    let too_high = odd.0.seat.place == pitches.high.0.seat.place;
    let sign = if too_high { -1.0 } else { 1.0 };
    let too_far = |pitch: &Budget| by - (pitch.value() - odd.1.value()).abs();
    let likewise = pitches
        .all
        .iter()
        .filter(|(seat, pitch)| seat.seat.place != odd.0.seat.place && too_far(pitch) > 0.0);
    let likewise: Vec<String> = likewise
        .map(|(seat, pitch)| {
            format!(
                " The same at {} by {}.",
                seat_words(seat),
                words::number(too_far(pitch), "deg")
            )
        })
        .collect();
    let first = bending::set_pitch(&odd.0, sign * by);
    format!("At {}: {first}{}", seat_words(&odd.0), likewise.concat())
}

fn seat_words(seat: &SeatSight) -> String {
    seat.seat.number.map_or_else(
        || "the seat without a number".to_owned(),
        |number| format!("seat {}", number.value),
    )
}
