//! An oar that nobody lifted out since the rowlock may have changed.

use super::finding::Finding;
use super::finding::Outcome;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use super::trials;
use super::trials::Later;
use super::words;
use crate::working::SeatSight;

pub(super) static RULE: Rule = Rule {
    id: "lift-not-tried",
    level: Level::Unsure,
    checks: "The oar was not lifted out by hand in all four places, or not since the last knock or bend that concerns the seat.",
    reason: "A clear gap on paper doesn't show sand, friction or a bent horn. Lifting the oar out by hand does.",
    remedy: "Lift the seat's own oar out by hand at every turn of the shaft: square off, at the catch, at the finish and along the boat; write down how it came.",
    formula: "day of the trial against knocks and bends; a bend on the day of a trial comes before it, a knock on the rigging day after",
    default: "-",
    sources: &[sources::PRACTICE.at("tried again after every knock and bend")],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "seat: 1", "freely, along: freely}", "freely}  # <--"),
            (
                "boats/kittiwake.yaml",
                "seat: 2",
                "lifts-out: {square: freely, catch: freely, finish: freely, along: freely}",
                "lifts-out: {square: freely, catch: freely, finish: freely, along: freely}  # <--",
            ),
            (
                "boats/kittiwake.yaml",
                "seat: 3",
                "lifts-out: {square: freely, catch: freely, finish: freely, along: freely}",
                "lifts-out: {square: freely, catch: freely, finish: freely, along: freely}  # <--",
            ),
            (
                "boats/kittiwake.yaml",
                "",
                "seats:\n",
                "bends:\n  - {date: 2026-10-24, by: Ines Marlow, seat: 2, part: after-horn, deg: 2}\nknocks:\n  - {date: 2026-10-17, what: rolled in the shore break, where: [seat-3]}\nseats:\n",
            ),
        ],
        right: &[(
            "boats/kittiwake.yaml",
            "",
            "seats:\n",
            "bends:\n  - {date: 2026-10-17, by: Ines Marlow, seat: 2, part: after-horn, deg: 2}\nknocks:\n  - {date: 2026-10-24, what: rolled in the shore break, where: [seat-3]}\nread-again:\n  - {date: 2026-10-24, by: Tomas Reyne, checked-by: Ines Marlow, values: [seat-3]}\nseats:\n",
        )],
    },
    looks: Looks::AtEachSeat(check),
};

fn check(seat: &SeatSight) -> Vec<Outcome> {
    let lifts = &seat.seat.lifts_out;
    let name = seat.name().at("lifts-out");
    let place = lifts.place.unwrap_or(seat.seat.place);
    let untried = lifts.each().into_iter().filter(|(_, lift)| lift.is_none());
    let untried: Vec<&str> = untried.map(|(attitude, _)| words::lying(attitude)).collect();
    if !untried.is_empty() {
        let finding = Finding::new(&RULE, name, place, "not tried").saying(format!(
            "{}: the oar was not lifted out by hand {}",
            seat.called(),
            untried.join(", "),
        ));
        return vec![finding.found()];
    }
    let Some(Later { what, place: at }) = trials::since_lifted(seat) else { return Vec::new() };
    let finding = Finding::new(&RULE, name, place, "tried before")
        .also(at, "since then")
        .saying(format!("{}: {what}, and the oar was not lifted out since", seat.called()));
    vec![finding.found()]
}
