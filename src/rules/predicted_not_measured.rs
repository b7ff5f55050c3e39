//! A record that was worked out and never measured.

use super::finding::Finding;
use super::finding::Outcome;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use crate::working::BoatSight;

pub(super) static RULE: Rule = Rule {
    id: "predicted-not-measured",
    level: Level::Danger,
    checks: "A boat's record in the book is marked `predicted: true`.",
    reason: "Such a record says what a worklist should lead to. Nobody has measured that it did; a gap \
             that is right on paper may hold the oar fast.",
    remedy: "Do the work, measure the boat, write what was read, and take `predicted` out.",
    formula: "predicted is true",
    default: "-",
    sources: &[sources::FORMAT.at("predicted")],
    example: Example {
        wrong: &[(
            "boats/kittiwake.yaml",
            "",
            "foot-holes: {first: 820",
            "predicted: true  # <--\nfoot-holes: {first: 820",
        )],
        right: &[(
            "boats/kittiwake.yaml",
            "",
            "foot-holes: {first: 820",
            "predicted: false\nfoot-holes: {first: 820",
        )],
    },
    looks: Looks::AtEachBoat(check),
};

fn check(boat: &BoatSight) -> Vec<Outcome> {
    let Some(predicted) = boat.boat.predicted.filter(|predicted| predicted.value) else {
        return Vec::new();
    };
    let finding = Finding::new(&RULE, boat.boat.record(), predicted.place, "never measured")
        .saying(format!(
            "{}: these values were worked out beforehand; nobody has measured them",
            boat.boat.called()
        ));
    vec![finding.found()]
}
