//! A rowlock that doesn't turn on its pin.

use super::finding::Finding;
use super::finding::Outcome;
use super::judging::not_checked;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use crate::model::Turns;
use crate::working::Lack;
use crate::working::SeatSight;

pub(super) static RULE: Rule = Rule {
    id: "rowlock-not-free",
    level: Level::Danger,
    checks: "The rowlock is seized on its pin, or turns only when pushed.",
    reason: "A rowlock that doesn't follow the oar pinches the shaft, so that a gap that clears on paper holds it fast; and the oar is levered against the pin.",
    remedy: "Take the rowlock off, clean pin and bush of salt and sand, grease, and turn it by hand; a bent pin or a worn bush is replaced. Then lift the oar out by hand at every angle.",
    formula: "the word written: seized is a danger, stiff a fault",
    default: "-",
    sources: &[sources::GEOMETRY.at("a shaft not square to its rowlock needs widest / cos(angle) + length of the horns x tan(angle)"), sources::PRACTICE.at("a rowlock turns by itself")],
    example: Example {
        wrong: &[("boats/kittiwake.yaml","seat: 1","turns: free","turns: seized  # <--"),("boats/kittiwake.yaml","seat: 2","turns: free","turns: stiff  # <--")],
        right: &[("boats/kittiwake.yaml","seat: 1","turns: free","turns: 'free'")],
    },
    looks: Looks::AtEachSeat(check),
};

fn check(seat: &SeatSight) -> Vec<Outcome> {
    let name = seat.name().at("rowlock/turns");
    let Some(turns) = seat.seat.rowlock.turns else {
        let lack = Lack::NotMeasured(vec!["rowlock/turns".to_owned()]);
        return vec![not_checked(&RULE, &name, &lack)];
    };
    let (level, how) = match turns.value {
        Turns::Free => return Vec::new(),
        Turns::Stiff => (Level::Fault, "turns only when pushed"),
        Turns::Seized => (Level::Danger, "is seized on its pin"),
    };
    let finding = Finding::new(&RULE, name, turns.place, how)
        .level(level)
        .saying(format!("{}: the rowlock {how}", seat.called()));
    vec![finding.found()]
}
