//! A boat whose record states no worked-out value.

use super::finding::Finding;
use super::finding::Outcome;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use crate::working::BoatSight;

pub(super) static RULE: Rule = Rule {
    id: "sum-missing",
    level: Level::Note,
    checks: "No seat of the boat has a worked-out value, though the readings give some.",
    reason: "A worked-out value beside its readings tells a slip of the pen from a bent horn: change \
             one without the other, and it is told.",
    remedy: "Run `tholebook derive --write`: it works the values out and writes them beside the readings.",
    formula: "no seat has a key under worked-out",
    default: "-",
    sources: &[sources::FORMAT.at("worked-out values")],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "", "boat: kittiwake", "boat: kittiwake  # <--"),
            ("boats/kittiwake.yaml", "seat: 1", "worked-out:", "x-worked-out:"),
            ("boats/kittiwake.yaml", "seat: 2", "    worked-out:", "    x-worked-out:"),
            ("boats/kittiwake.yaml", "seat: 3", "    worked-out:", "    x-worked-out:"),
            ("boats/kittiwake.yaml", "seat: 4", "    worked-out:", "    x-worked-out:"),
        ],
        right: &[
            ("boats/kittiwake.yaml", "seat: 2", "    worked-out:", "    x-worked-out:"),
            ("boats/kittiwake.yaml", "seat: 3", "    worked-out:", "    x-worked-out:"),
            ("boats/kittiwake.yaml", "seat: 4", "    worked-out:", "    x-worked-out:"),
        ],
    },
    looks: Looks::AtEachBoat(check),
};

fn check(boat: &BoatSight) -> Vec<Outcome> {
    let sums = || boat.seats().flat_map(|seat| seat.sums());
    let stated = sums().any(|sum| sum.stated.is_some());
    if stated || !sums().any(|sum| sum.worked.is_ok()) {
        return Vec::new();
    }
    let place = boat.boat.id.place;
    let finding = Finding::new(&RULE, boat.boat.record(), place, "no worked-out values")
        .saying(format!("{}: no worked-out value is written at any seat", boat.boat.called()));
    vec![finding.found()]
}
