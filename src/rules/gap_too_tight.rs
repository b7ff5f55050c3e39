//! A rowlock that may not let its oar go.

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
use crate::model::Name;
use crate::model::Oar;
use crate::working::SeatSight;
use crate::working::Unit;
use crate::working::Worked;

pub(super) static RULE: Rule = Rule {
    id: "gap-too-tight",
    level: Level::Danger,
    checks: "The gap between the horns clears the widest section of the seat's oar, and of every spare, by less than the limit, or is not shown to clear it.",
    reason: "When the boat rolls or a wave takes the blade, the oar must come out of the rowlock. \
             An oar that jams breaks, throws the rower, or holds the boat down by the blade.",
    remedy: "Bend the after horn only, its top to the stern, until the gap is wide enough; low at the foot, a second bar holding so that the pin carries nothing; then lift the oar out by hand at every angle.",
    formula: "clearance = gap between the horns - widest part of the shaft; it must be over the limit by as much as it is good to",
    default: "at least 5 mm",
    sources: &[
        sources::GEOMETRY.at("a shaft passes a mouth no narrower than its widest section"),
        sources::ISO_14253.at("the burden of proof reversed: conformity must be proven"),
        sources::CLUB.at("5 mm"),
    ],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "seat: 1", "gap: 60", "gap: 55  # <--"),
            ("boats/kittiwake.yaml", "seat: 2", "gap: 60", "gap: 57.2  # <--"),
            ("boats/kittiwake.yaml", "seat: 3", "gap: 60", "gap: 51  # <--"),
        ],
        right: &[
            ("boats/kittiwake.yaml", "seat: 1", "gap: 60", "gap: 57.4"),
            ("boats/kittiwake.yaml", "seat: 1", "horn: 46", "horn: 36"),
            ("boats/kittiwake.yaml", "seat: 1", "clearance: 8.0", "clearance: 5.4"),
        ],
    },
    looks: Looks::AtEachSeat(check),
};

fn check(seat: &SeatSight) -> Vec<Outcome> {
    let own = seat.oar.map(|oar| (seat.name().at("rowlock/gap"), oar, seat.clearance()));
    let spares = seat.at.boat.spares.iter().filter_map(|spare| {
        let oar = seat.at.book.oar(seat.at.boat, spare)?;
        let name = seat.name().at(format_args!("spare/{}", spare.value));
        Some((name, oar, seat.clearance_of(oar)))
    });
    own.into_iter()
        .chain(spares)
        .flat_map(|(name, oar, clearance)| one(seat, name, oar, &clearance))
        .collect()
}

fn one(seat: &SeatSight, name: Name, oar: &Oar, clearance: &Worked) -> Vec<Outcome> {
    let range = Range::in_force(seat.at.in_force, LimitKey::Clearance, Unit::Mm);
    let Some(range) = range else { return Vec::new() };
    let gap = seat.seat.rowlock.gap.as_ref();
    let place = gap.map_or(seat.seat.place, |gap| gap.place);
    let id = oar.id.as_ref().map_or("", |id| &id.value);
    let own = seat.oar.is_some_and(|own| own.place == oar.place);
    let whose = if own { "oar" } else { "spare" };
    range.danger(&RULE, &name, clearance, |clearance, judged| {
        let finding = Finding::new(&RULE, name.clone(), place, "this gap")
            .saying(format!(
                "{}: the gap {} {whose} {id} by {}, good to ± {}: {} ({})",
                seat.called(),
                if clearance.value() < 0.0 { "is narrower than" } else { "clears" },
                words::number(clearance.value().abs(), "mm"),
                words::number(clearance.expanded(), "mm"),
                judged.danger_words(Unit::Mm),
                range.words(),
            ))
            .remedy(bending::set_gap(seat, judged.by + clearance.expanded()));
        match oar.shaft.widest() {
            Some(widest) => finding.also(widest.place, format!("the widest part of {id}")),
            None => finding,
        }
    })
}
