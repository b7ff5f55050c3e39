//! A part that was bent cold too often or too far.

use super::finding::Finding;
use super::finding::NotChecked;
use super::finding::Outcome;
use super::judging::Judged;
use super::judging::Range;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use super::words;
use crate::model::Bend;
use crate::model::BentPart;
use crate::model::LimitKey;
use crate::model::Name;
use crate::model::Part;
use crate::model::Word;
use crate::working::Bent;
use crate::working::BoatSight;
use crate::working::Budget;
use crate::working::Unit;

pub(super) static RULE: Rule = Rule {
    id: "bent-often",
    level: Level::Fault,
    checks: "One horn or one pin of a seat was bent cold more often over the years, or by more degrees in all, than the limit.",
    reason: "Every cold bend hardens the metal and can start a crack in it or in its zinc. A horn or pin \
             bent once too often breaks at sea, under load.",
    remedy: "Replace the part; do not bend it again. Look at its foot for cracks meanwhile.",
    formula: "bends of one part counted; degrees summed, to whichever side each was bent; a bend without degrees counts, its size unknown",
    default: "at most 3 times, at most 10 deg in all",
    sources: &[
        sources::CLUB.at("3 times, 10 deg"),
        sources::ASTM_A143.at("cold work ages galvanised steel"),
    ],
    example: Example {
        wrong: &[(
            "boats/kittiwake.yaml",
            "",
            "foot-holes: {first: 820",
            "bends:\n  - {date: 2024-05-04, seat: 2, part: after-horn, deg: 2}\n  \
             - {date: 2025-05-03, seat: 2, part: after-horn, deg: -1}\n  \
             - {date: 2025-09-06, seat: 2, part: after-horn}\n  \
             - {date: 2026-05-02, seat: 2, part: after-horn, deg: 1}  # <--\n  \
             - {date: 2025-05-03, seat: 4, part: pin, deg: 6}\n  \
             - {date: 2026-05-02, seat: 4, part: pin, deg: 5}  # <--\nfoot-holes: {first: 820",
        )],
        right: &[(
            "boats/kittiwake.yaml",
            "",
            "foot-holes: {first: 820",
            "bends:\n  - {date: 2024-05-04, seat: 2, part: after-horn, deg: 4}\n  \
             - {date: 2025-05-03, seat: 2, part: after-horn, deg: 4}\n  \
             - {date: 2026-05-02, seat: 2, part: after-horn, deg: 2}\n  \
             - {date: 2026-05-02, seat: 2, part: forward-horn, deg: 2}\nfoot-holes: {first: 820",
        )],
    },
    looks: Looks::AtEachBoat(check),
};

fn check(boat: &BoatSight) -> Vec<Outcome> {
    boat.bent().iter().flat_map(|part| one(boat, part)).collect()
}

fn one(boat: &BoatSight, part: &Bent) -> Vec<Outcome> {
    let limit = |which| boat.in_force.limit(LimitKey::Bends, which);
    let at_most = |which, unit| Range::of_figures(boat.tools, None, limit(which), unit);
    let over = |range: Option<&Range>, value: f64| {
        let say = |_: &Budget, _: &Judged, range: &Range| finding(boat, part, &range.words());
        Range::finding(range, &RULE, &name(boat, part), &Ok(Budget::exact(value)), say)
    };
    let (often, far) = (at_most(Part::Most, Unit::Times), at_most(Part::InAll, Unit::Deg));
    // One part, one finding: how often comes before how far.
    let mut found = over(often.as_ref(), part.bends.len() as f64);
    if !found.iter().any(Outcome::is_finding) {
        found.extend(over(far.as_ref(), part.in_all()));
    }
    if !found.iter().any(Outcome::is_finding) && far.is_some() && part.unknown() > 0 {
        found.push(size_unknown(boat, part));
    }
    found
}

fn size_unknown(boat: &BoatSight, part: &Bent) -> Outcome {
    let missing = vec![format!("degrees of a bend of the {}", words_of(part.part))];
    Outcome::NotChecked(NotChecked { rule: RULE.id, name: name(boat, part), missing })
}

fn name(boat: &BoatSight, part: &Bent) -> Name {
    let which = if part.part == BentPart::Pin { "pin" } else { "rowlock" };
    boat.boat.record().seat(part.seat).at(which)
}

fn words_of(part: BentPart) -> String {
    part.word().replace('-', " ")
}

fn finding(boat: &BoatSight, part: &Bent, limit: &str) -> Finding {
    let mut bends = part.bends.iter().rev();
    let size = |bend: &Bend| {
        bend.angle.map_or("size not written".to_owned(), |angle| {
            words::number(angle.value.as_deg(), "deg")
        })
    };
    let place = |bend: &Bend| bend.part.map_or(boat.boat.id.place, |part| part.place);
    let last = bends.next().map_or(boat.boat.id.place, |bend| place(bend));
    let newest = part.bends.last().map_or_else(String::new, |bend| size(bend));
    let first = Finding::new(&RULE, name(boat, part), last, format!("the last bend, {newest}"));
    let finding = bends.fold(first, |finding, bend| finding.also(place(bend), size(bend)));
    let unknown = part.unknown();
    let and = if unknown > 0 { format!(", and {unknown} of unknown size") } else { String::new() };
    let part_words = words_of(part.part);
    finding
        .saying(format!(
            "{}, seat {}: the {part_words} was bent {} times, {} in all{and} ({limit})",
            boat.boat.called(),
            part.seat,
            part.bends.len(),
            words::number(part.in_all(), "deg"),
        ))
        .remedy(format!(
            "Replace the {part_words}; do not bend it again. Until then look at its foot for cracks before every outing."
        ))
}
