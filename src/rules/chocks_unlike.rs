//! Back chocks that stand at different distances from their pins.

use super::apart;
use super::finding::Outcome;
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
use crate::working::Lack;
use crate::working::SeatSight;
use crate::working::Unit;
use crate::working::Worked;

pub(super) static RULE: Rule = Rule {
    id: "chocks-unlike",
    level: Level::Fault,
    checks: "The distances from back chock to pin differ from seat to seat by more than the limit.",
    reason: "All rowers finish against their chocks. Where the chocks differ, the blades leave the \
             water one after the other, and the boat checks and rolls.",
    remedy: "Measure from the after face of each chock, along the string; bring the odd chock in line with the others, then set the foot holes.",
    formula: "highest less lowest back chock to pin; of more than two it must be beyond by 1.12 times what it is good to",
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

fn check(boat: &BoatSight) -> Vec<Outcome> {
    let name = boat.boat.record();
    let range = Range::in_force(boat.in_force, LimitKey::Chocks, Unit::Mm);
    apart::judge(range.as_ref(), &RULE, &name, chocks(boat), |chocks, by, judged, range| {
        let (odd, to_pin) = chocks.odd_one();
        let seat = odd.short();
        apart::labelled(&RULE, name.clone(), chocks, label)
            .saying(format!(
                "{}: the back chocks differ by {}: {}; the odd one is {seat}, {} to the pin",
                boat.boat.called(),
                words::measured(by, Unit::Mm),
                range.beyond(judged),
                words::number(to_pin.value(), "mm"),
            ))
            .remedy(format!(
                "Measure {seat} again from the after face of the chock, along the string. If it still differs, move that chock in line with the others; then set the foot holes."
            ))
    })
}

/// Returns back chock to pin at every seat.
pub(super) fn chocks<'b>(
    boat: &BoatSight<'b>,
) -> impl Iterator<Item = (SeatSight<'b>, Worked)> + use<'b> {
    boat.seats().map(|seat| {
        let name = seat.below_boat("chock-to-pin");
        (seat, seat.chock_to_pin().map_err(|_| Lack::NotMeasured(vec![name])))
    })
}

fn label((seat, chock): &(SeatSight, Budget)) -> (Place, String) {
    let read = seat.seat.chock_to_pin.as_ref();
    let place = read.map_or(seat.seat.place, |read| read.place);
    (place, format!("{}: {}", seat.short(), words::number(chock.value(), "mm")))
}
