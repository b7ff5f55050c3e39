//! A handle that is not where its oar and pin put it.

use super::finding::Finding;
use super::finding::Outcome;
use super::judging::judged_sum;
use super::judging::not_checked;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use super::sum::Against;
use super::words;
use crate::metrology::decision::disagrees;
use crate::model::Place;
use crate::working::Budget;
use crate::working::Lack;
use crate::working::SeatSight;
use crate::working::Unit;

pub(super) static RULE: Rule = Rule {
    id: "handle-past-mark-disagrees",
    level: Level::Fault,
    checks: "How far the handle passes the seat mark, as read, is not what inboard, spread and seat mark give, by more than both are good to.",
    reason: "One of the four readings is wrong, and nobody knows which: the collar may have slid, or a number may have been written in the wrong place.",
    remedy: "Measure inboard, spread, seat mark and handle past mark of this seat again; look whether the collar has slid.",
    formula: "difference = handle past mark, corrected for roll, - ((inboard of the oar + collar to pin) x cos(dip of the oar) - spread - seat mark); against how good the difference is",
    default: "-",
    sources: &[
        sources::GEOMETRY.at("a shaft square to the boat, sloping by its dip"),
        sources::GUM.at("5.2, what two values share counts once"),
    ],
    example: Example {
        wrong: &[
            (
                "boats/kittiwake.yaml",
                "seat: 1",
                "handle-past-mark: 321",
                "handle-past-mark: 330  # <--",
            ),
            (
                "boats/kittiwake.yaml",
                "seat: 2",
                "handle-past-mark: 321",
                "handle-past-mark: 311  # <--",
            ),
        ],
        right: &[(
            "boats/kittiwake.yaml",
            "seat: 1",
            "handle-past-mark: 321",
            "handle-past-mark: 325",
        )],
    },
    looks: Looks::AtEachSeat(check),
};

fn check(seat: &SeatSight) -> Vec<Outcome> {
    let name = seat.name().at("handle-past-mark");
    let (read, computed) = match both(seat) {
        Ok(both) => both,
        Err(lack) => return vec![not_checked(&RULE, &name, &lack)],
    };
    let difference = read.minus(&computed);
    let sum = judged_sum(&RULE, &name, &difference, Unit::Mm, Against::Agreement);
    if !disagrees(difference.value(), difference.expanded()) {
        return vec![sum];
    }
    let [first, others @ ..] = places(seat);
    let place = first.0.unwrap_or(seat.seat.place);
    let finding = Finding::new(&RULE, name, place, first.1)
        .saying(format!(
            "{}: as read, the handle passes the seat mark by {}; by inboard, spread and seat mark, by {}: they differ by {}, good to ± {}",
            seat.called(),
            words::measured(&read, Unit::Mm),
            words::measured(&computed, Unit::Mm),
            words::number(difference.value().abs(), "mm"),
            words::number(difference.expanded(), "mm"),
        ))
        .judged(words::figure(&difference, Unit::Mm), None);
    let finding = others.into_iter().fold(finding, |finding, (place, text)| match place {
        Some(place) => finding.also(place, text),
        None => finding,
    });
    vec![finding.found(), sum]
}

fn both(seat: &SeatSight) -> Result<(Budget, Budget), Lack> {
    Ok((seat.handle_read()?, seat.handle_computed()?))
}

fn places(seat: &SeatSight) -> [(Option<Place>, &'static str); 4] {
    let own = seat.seat;
    let inboard = seat.oar.and_then(|oar| oar.inboard.as_ref());
    [
        (own.handle_past_mark.as_ref().map(|read| read.place), "read here"),
        (inboard.map(|read| read.place), "inboard of its oar"),
        (own.pin.spread.as_ref().map(|read| read.place), "spread of its pin"),
        (own.seat_mark.as_ref().map(|read| read.place), "its seat mark"),
    ]
}
