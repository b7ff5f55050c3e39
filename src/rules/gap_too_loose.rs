//! A rowlock that may lose its oar.

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
use crate::model::LimitKey;
use crate::working::SeatSight;
use crate::working::Unit;

pub(super) static RULE: Rule = Rule {
    id: "gap-too-loose",
    level: Level::Fault,
    checks: "The gap between the horns is wider than the narrowest section of the seat's oar by more than the limit.",
    reason: "Under load the shaft knocks between the horns, and the oar jumps out of the rowlock when it is needed most.",
    remedy: "Close the gap on the after horn only, its top to the bow; low at the foot, a second bar holding; then lift the oar out by hand at every angle.",
    formula: "looseness = gap between the horns - narrowest part of the shaft",
    default: "at most 15 mm",
    sources: &[sources::CLUB.at("15 mm")],
    example: Example {
        wrong: &[("boats/kittiwake.yaml", "seat: 1", "gap: 60", "gap: 64  # <--")],
        right: &[
            ("boats/kittiwake.yaml", "seat: 1", "gap: 60", "gap: 60.9"),
            ("boats/kittiwake.yaml", "seat: 1", "clearance: 8.0", "clearance: 8.9"),
        ],
    },
    looks: Looks::AtEachSeat(check),
};

fn check(seat: &SeatSight) -> Vec<Outcome> {
    let name = seat.name().at("rowlock/gap");
    let range = Range::in_force(seat.at.in_force, LimitKey::Loose, Unit::Mm);
    let gap = seat.seat.rowlock.gap.as_ref();
    let place = gap.map_or(seat.seat.place, |gap| gap.place);
    let narrowest = seat.oar.and_then(|oar| oar.shaft.narrowest());
    Range::finding(range.as_ref(), &RULE, &name, &seat.looseness(), |loose, judged, range| {
        let finding = Finding::new(&RULE, name.clone(), place, "this gap")
            .saying(format!(
                "{}: the gap is wider than the narrowest part of the oar by {}: {}",
                seat.called(),
                words::measured(loose, Unit::Mm),
                range.beyond(judged),
            ))
            .remedy(bending::set_gap(seat, -judged.by));
        match narrowest {
            Some(narrowest) => finding.also(narrowest.place, "the narrowest part of the oar"),
            None => finding,
        }
    })
}
