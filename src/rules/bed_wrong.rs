//! A round shaft that lies too shallow or too deep in its rowlock.

use super::finding::Finding;
use super::finding::Outcome;
use super::judging::Range;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use super::words;
use crate::geometry::bedding::chord_from_depth;
use crate::metrology::decision::Bound;
use crate::model::LimitKey;
use crate::units::Length;
use crate::working::Lack;
use crate::working::SeatSight;
use crate::working::Unit;

pub(super) static RULE: Rule = Rule {
    id: "bed-wrong",
    level: Level::Fault,
    checks: "A round shaft lies less deep in the bed of its rowlock than the least part of its diameter, or deeper than the most.",
    reason: "A shaft that lies shallow rides up the horns and jumps out; one that lies deep is gripped, \
             wears its leather and is slow to come out.",
    remedy: "Chalk the bed, drop the shaft in square and lift it; shape or pack the bed until the mark is as wide as it should be, then set the gap again.",
    formula: "depth / diameter = (1 - sqrt(1 - (width of the mark in the bed / diameter of the shaft)^2)) / 2",
    default: "0.25 to 0.37 of the diameter: the three meanings of \"a third\"",
    sources: &[
        sources::GEOMETRY.at("depth of a circle's segment from its chord"),
        sources::PRACTICE.at(
            "a round oar is bedded to a third: of its circumference, its diameter, its section",
        ),
    ],
    example: Example {
        wrong: &[
            (
                "oars/long-ash.yaml",
                "oar: A1",
                "shaft: {widest: 52, narrowest: 46, bears: flat",
                "shaft: {round: 52, bears: round",
            ),
            (
                "boats/kittiwake.yaml",
                "seat: 1",
                "seat-mark: 61",
                "oar-bed: 44  # <--\n    seat-mark: 61",
            ),
        ],
        right: &[
            (
                "oars/long-ash.yaml",
                "oar: A1",
                "shaft: {widest: 52, narrowest: 46, bears: flat",
                "shaft: {round: 52, bears: flat",
            ),
            (
                "boats/kittiwake.yaml",
                "seat: 1",
                "seat-mark: 61",
                "oar-bed: 45.2\n    seat-mark: 61",
            ),
        ],
    },
    looks: Looks::AtEachSeat(check),
};

fn check(seat: &SeatSight) -> Vec<Outcome> {
    let Some(oar) = seat.oar.filter(|oar| oar.shaft.is_round()) else { return Vec::new() };
    let name = seat.name().at("oar-bed");
    let range = Range::in_force(seat.at.in_force, LimitKey::Bed, Unit::None);
    let place = seat.seat.oar_bed.as_ref().map_or(seat.seat.place, |mark| mark.place);
    let round = oar.shaft.widest();
    if let Err(Lack::Impossible(_)) = seat.bed_fraction() {
        let said = format!("{}: the mark in the bed is wider than the shaft", seat.called());
        let remedy = "Read the mark and the shaft again, and look at the unit.";
        let finding = Finding::new(&RULE, name, place, "this mark");
        return vec![finding.saying(said).remedy(remedy).found()];
    }
    Range::finding(range.as_ref(), &RULE, &name, &seat.bed_fraction(), |depth, judged, range| {
        let finding = Finding::new(&RULE, name.clone(), place, "the mark in the bed");
        let finding = match round {
            Some(round) => finding.also(round.place, "the shaft's diameter"),
            None => finding,
        };
        let (deep, to) = match judged.bound {
            Bound::Least => ("shallow", "wider"),
            Bound::Most => ("deep", "narrower"),
        };
        let value = words::measured(depth, Unit::None);
        finding
            .saying(format!(
                "{}: the round shaft lies {value}, of its diameter deep in the bed: too {deep} by {} ({})",
                seat.called(),
                words::number(judged.by, ""),
                range.words(),
            ))
            .remedy(remedy(round.and_then(|round| round.values.first().copied()), range, to))
    })
}

/// Gives the width of the mark to reach, which is what one sees at the boat.
fn remedy(round: Option<Length>, range: &Range, to: &str) -> String {
    let mark = |bound| {
        let (round, part) = (round?, range.value(bound)?);
        chord_from_depth(round, Length::mm(round.as_mm() * part)).ok()
    };
    let reach = match (mark(Bound::Least), mark(Bound::Most)) {
        (Some(least), Some(most)) => format!(", {least} to {most}"),
        _ => String::new(),
    };
    format!(
        "Shape or pack the bed until the chalk mark is {to}{reach}; keep it flat along the shaft. Then set the gap again and lift the oar out by hand."
    )
}
