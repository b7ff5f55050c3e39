//! A round shaft: the hands, not the rowlock, set its blade.

use super::finding::Finding;
use super::finding::Outcome;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use crate::working::SeatSight;

pub(super) static RULE: Rule = Rule {
    id: "hands-set-pitch",
    level: Level::Note,
    checks: "The seat's oar has a round shaft with no flat.",
    reason: "Nothing in the rowlock holds a round shaft square, so the rower's hands set the blade's \
             pitch, stroke by stroke; no bend of a horn changes it and the limits on pitch do not apply.",
    remedy: "Nothing, if the club rows so; else fit a leather with a flat, write `bears: flat`, and measure the pitch.",
    formula: "the shaft bears round, or has one diameter and no flat is written",
    default: "-",
    sources: &[sources::GEOMETRY.at("a round shaft is not held against turning about its own axis")],
    example: Example {
        wrong: &[
            ("oars/long-ash.yaml", "oar: A1", "bears: flat", "bears: round"),
            ("boats/kittiwake.yaml", "seat: 1", "oar: A1", "oar: A1  # <--"),
        ],
        right: &[(
            "oars/long-ash.yaml",
            "oar: A1",
            "widest: 52, narrowest: 46, bears: flat",
            "round: 52, bears: flat",
        )],
    },
    looks: Looks::AtEachSeat(check),
};

fn check(seat: &SeatSight) -> Vec<Outcome> {
    let Some(oar) = seat.oar.filter(|oar| oar.shaft.hands_set_pitch()) else {
        return Vec::new();
    };
    let Some(id) = &seat.seat.oar else { return Vec::new() };
    let bears = oar.shaft.bears.map(|bears| bears.place);
    let round = bears.or_else(|| oar.shaft.round.as_ref().map(|round| round.place));
    let finding =
        Finding::new(&RULE, seat.name().at("oar"), id.place, "this oar is round").saying(format!(
            "{}: oar {} has a round shaft with no flat: the hands set its pitch, not the rowlock",
            seat.called(),
            id.value
        ));
    let finding = match round {
        Some(round) => finding.also(round, "round here"),
        None => finding,
    };
    vec![finding.found()]
}
