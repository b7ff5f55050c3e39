//! A boat of which nobody wrote down how she lay.

use super::finding::Finding;
use super::finding::Outcome;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use crate::model::Boat;
use crate::working::BoatSight;

pub(super) static RULE: Rule = Rule {
    id: "level-not-recorded",
    level: Level::Unsure,
    checks: "The level of the rigging day is not recorded, or the place where the level is laid isn't.",
    reason: "A plumb line shows lean and pitch against the earth, not against the water she floats on. Without the level, no pin can be called upright and no blade in range.",
    remedy: "Lay the level on its mark, read trim and roll, each turned end for end, and write the means; write where the mark is.",
    formula: "trim and roll, each once, and the place of the level mark",
    default: "-",
    sources: &[sources::PRACTICE.at("nothing measured before the boat is level means anything")],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "rigged:", "date: 2026-10-17", "date: 2026-10-17  # <--"),
            ("boats/kittiwake.yaml", "", "  level: {trim: 0.0, roll: 0.1}\n", ""),
        ],
        right: &[(
            "boats/kittiwake.yaml",
            "",
            "level-mark: {where: after edge of thwart 2, found-afloat: 2026-09-05}",
            "level-mark: {where: after edge of thwart 2}",
        )],
    },
    looks: Looks::AtEachBoat(check),
};

fn check(boat: &BoatSight) -> Vec<Outcome> {
    let missing = missing(boat.boat);
    if missing.is_empty() {
        return Vec::new();
    }
    let rigged = &boat.boat.rigged;
    let place = rigged.date.map_or(rigged.place, |date| date.place);
    let finding =
        Finding::new(&RULE, boat.boat.record(), place, "the rigging day").saying(format!(
            "{}: {} not recorded: nobody can say whether her pins are upright",
            boat.boat.called(),
            missing.join(", "),
        ));
    vec![finding.found()]
}

fn missing(boat: &Boat) -> Vec<&'static str> {
    let there = [
        ("trim", boat.rigged.trim.is_some()),
        ("roll", boat.rigged.roll.is_some()),
        ("place of the level mark", boat.level_mark.whereabouts.is_some()),
    ];
    there.into_iter().filter(|(_, there)| !there).map(|(what, _)| what).collect()
}
