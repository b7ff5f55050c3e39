//! An oar that did not come out by hand.

use super::finding::Finding;
use super::finding::Outcome;
use super::judging::not_checked;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use super::words;
use crate::model::Lift;
use crate::model::Placed;
use crate::working::Lack;
use crate::working::SeatSight;

pub(super) static RULE: Rule = Rule {
    id: "oar-did-not-lift-out",
    level: Level::Danger,
    checks: "When its oar was lifted out by hand it jammed, or came only with a pull, in some place of the oar.",
    reason: "What jams by hand on the trailer jams in the surf. An oar that can't come out breaks, throws the rower, or holds the boat down by the blade.",
    remedy: "Find what holds it: gap, leather, sand, a stiff rowlock, a hooked horn. Put that right and lift the oar out again at every angle.",
    formula: "the words written: jams is a danger, stiffly a fault",
    default: "-",
    sources: &[sources::PRACTICE.at("lift every oar out by hand before going afloat")],
    example: Example {
        wrong: &[
            (
                "boats/kittiwake.yaml",
                "seat: 1",
                "lifts-out: {square: freely, catch: freely",
                "lifts-out:\n      square: jams  # <--\n      catch: stiffly  # <--",
            ),
            (
                "boats/kittiwake.yaml",
                "seat: 1",
                "# <--, finish: freely, along: freely}",
                "# <--\n      finish: freely\n      along: jams  # <--",
            ),
        ],
        right: &[(
            "boats/kittiwake.yaml",
            "seat: 1",
            "lifts-out: {square: freely, catch: freely, finish: freely, along: freely}",
            "lifts-out: {along: freely, square: freely, finish: freely, catch: freely}",
        )],
    },
    looks: Looks::AtEachSeat(check),
};

fn check(seat: &SeatSight) -> Vec<Outcome> {
    let each = seat.seat.lifts_out.each();
    let found = each.iter().filter_map(|(attitude, lift)| one(seat, attitude, (*lift)?));
    let mut outcomes: Vec<Outcome> = found.collect();
    let missing = each.iter().filter(|(_, lift)| lift.is_none());
    let missing: Vec<String> =
        missing.map(|(attitude, _)| format!("lifts-out/{attitude}")).collect();
    if !missing.is_empty() {
        let name = seat.name().at("lifts-out");
        outcomes.push(not_checked(&RULE, &name, &Lack::NotMeasured(missing)));
    }
    outcomes
}

fn one(seat: &SeatSight, attitude: &str, lift: Placed<Lift>) -> Option<Outcome> {
    let (level, how) = match lift.value {
        Lift::Freely => return None,
        Lift::Stiffly => (Level::Fault, "comes out only with a pull"),
        Lift::Jams => (Level::Danger, "jams"),
    };
    let name = seat.name().at(format_args!("lifts-out/{attitude}"));
    let finding = Finding::new(&RULE, name, lift.place, how).level(level).saying(format!(
        "{}: the oar {how} {}",
        seat.called(),
        words::lying(attitude)
    ));
    Some(finding.found())
}
