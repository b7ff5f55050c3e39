//! What was found on the walk round the boat, and what was not looked at.

use super::finding::Finding;
use super::finding::Outcome;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use crate::model::Condition;
use crate::model::WalkRound;
use crate::working::BoatSight;

pub(super) static RULE: Rule = Rule {
    id: "walk-round",
    level: Level::Danger,
    checks: "An item of the walk round was found unfit (danger) or to be watched (note), or an item of the class's list has no answer (unsure).",
    reason: "A missing bung, a torn foot strap or an open buoyancy tank does more harm in the surf than \
             any wrong pitch, and is seen by walking once round the boat.",
    remedy: "Put the item right and look at it again; look at every item of the list and write ok, watch or unfit.",
    formula: "every item of the class's list is answered; items the class does not have are the club's own and count alike",
    default: "the class's list",
    sources: &[sources::PRACTICE.at("a boat is looked over before she goes afloat")],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "walk-round", "foot-straps: ok", "foot-straps: unfit  # <--"),
            ("boats/kittiwake.yaml", "walk-round", "bung: ok", "bung: watch  # <--"),
            ("boats/kittiwake.yaml", "walk-round", "    hull: ok\n", ""),
            ("boats/kittiwake.yaml", "", "walk-round:", "walk-round:  # <--"),
        ],
        right: &[("boats/kittiwake.yaml", "walk-round", "hull: ok", "hull: ok\n    anchor: ok")],
    },
    looks: Looks::AtEachBoat(check),
};

fn check(boat: &BoatSight) -> Vec<Outcome> {
    let answers = &boat.boat.rigged.walk_round;
    let found = answers.iter().filter_map(|answer| one(boat, answer));
    found.chain(unanswered(boat)).collect()
}

fn one(boat: &BoatSight, answer: &WalkRound) -> Option<Outcome> {
    let item = &answer.item.value;
    let (level, what, remedy) = match answer.condition.value {
        Condition::Ok => return None,
        Condition::Watch => (
            Level::Note,
            "to be watched",
            format!("Look at it before every outing; put the {item} right before it is unfit."),
        ),
        Condition::Unfit => (
            Level::Danger,
            "unfit",
            format!("Put the {item} right, have it looked at again, and write what was found."),
        ),
    };
    let name = boat.boat.record().at("rigged/walk-round").at(item);
    let finding = Finding::new(&RULE, name, answer.condition.place, what)
        .level(level)
        .saying(format!("{}, walk round: {item}: {what}", boat.boat.called()))
        .remedy(remedy);
    Some(finding.found())
}

/// One finding for all that was not looked at: fourteen would hide what else is wrong.
fn unanswered(boat: &BoatSight) -> Option<Outcome> {
    let rigged = &boat.boat.rigged;
    let answered = |item: &str| rigged.walk_round.iter().any(|answer| answer.item.value == item);
    let items = boat.in_force.class.map_or(&[][..], |class| &class.walk_round);
    let open: Vec<&str> =
        items.iter().map(|item| &*item.value).filter(|item| !answered(item)).collect();
    if open.is_empty() {
        return None;
    }
    let name = boat.boat.record().at("rigged/walk-round");
    let place = rigged.walk_round_at.or_else(|| rigged.date.map(|date| date.place));
    let finding = Finding::new(&RULE, name, place.unwrap_or(rigged.place), "not all looked at")
        .level(Level::Unsure)
        .saying(format!(
            "{}: not looked at on the walk round: {}",
            boat.boat.called(),
            open.join(", ")
        ))
        .remedy("Look at each of them and write ok, watch or unfit.");
    Some(finding.found())
}
