//! An after horn that hooks over the oar.

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
use crate::working::SeatSight;
use crate::working::Unit;

pub(super) static RULE: Rule = Rule {
    id: "horn-hooks",
    level: Level::Danger,
    checks: "The tip of the after horn stands ahead of its shank, or is not shown to stand clear of it.",
    reason: "In a crab the shaft is driven against the after horn. Under a tip that hooks over it, it can't come up and out.",
    remedy: "Bend the tip of the after horn to the stern until it stands abaft its shank; then measure the gap again and lift the oar out by hand at every angle.",
    formula: "after-tip; it must be over 0 by as much as it is good to",
    default: "over 0 mm",
    sources: &[
        sources::GEOMETRY.at("a shaft can't pass straight up under an overhang"),
        sources::ISO_14253.at("the burden of proof reversed: conformity must be proven"),
    ],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "seat: 1", "after-tip: 3", "after-tip: -3  # <--"),
            ("boats/kittiwake.yaml", "seat: 2", "after-tip: 3", "after-tip: 0.5  # <--"),
        ],
        right: &[("boats/kittiwake.yaml", "seat: 1", "after-tip: 3", "after-tip: 0.6")],
    },
    looks: Looks::AtEachSeat(check),
};

fn check(seat: &SeatSight) -> Vec<Outcome> {
    let name = seat.name().at("rowlock/after-tip");
    let range = Range::at_least_nought(seat.at.in_force, Unit::Mm, "geometry: no overhang");
    let reading = seat.seat.rowlock.after_tip.as_ref();
    let place = reading.map_or(seat.seat.place, |reading| reading.place);
    range.danger(&RULE, &name, &seat.after_tip(), |tip, judged| {
        let way = if tip.value() < 0.0 { "ahead of" } else { "abaft" };
        Finding::new(&RULE, name.clone(), place, "tip of the after horn")
            .saying(format!(
                "{}: the tip of the after horn stands {} {way} its shank, good to ± {}: {} (at least 0 mm abaft)",
                seat.called(),
                words::number(tip.value().abs(), "mm"),
                words::number(tip.expanded(), "mm"),
                judged.danger_words(Unit::Mm),
            ))
            .remedy(bending::unhook(judged.by + tip.expanded()))
    })
}
