//! Seats that don't make up the boat.

use std::collections::BTreeMap;
use std::collections::BTreeSet;

use super::finding::Finding;
use super::finding::Outcome;
use super::judging::not_checked;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use crate::model::Class;
use crate::model::Placed;
use crate::model::Seat;
use crate::working::BoatSight;
use crate::working::Lack;

pub(super) static RULE: Rule = Rule {
    id: "seats-wrong",
    level: Level::Fault,
    checks: "A seat number stands twice, the class has more or fewer seats, or two neighbours have their oars on one side where the class alternates.",
    reason: "A seat that is missing, or written under another's number, is a seat nobody checks.",
    remedy: "Write each seat once, numbered from the bow, with the side its oar is on.",
    formula: "the numbers are 1 to the class's seats, each once; in a class that alternates, neighbours are on different sides",
    default: "-",
    sources: &[sources::FORMAT.at("seats, counted from the bow")],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "", "boat: kittiwake", "boat: kittiwake  # <--"),
            ("boats/kittiwake.yaml", "seat: 2", "side: port", "side: starboard  # <--"),
            ("boats/kittiwake.yaml", "", "- seat: 4", "- seat: 3  # <--"),
            (
                "boats/petrel.yaml",
                "",
                "",
                "boat: petrel  # <--\nclass: surfboat\noars: long-ash\nrigged: {date: 2026-10-18, by: Ines Marlow}\n",
            ),
            (
                "boats/heron.yaml",
                "",
                "",
                "boat: heron
class: surfboat
oars: long-ash
rigged: {date: 2026-10-19, by: Ines Marlow}
seats:
  - {seat: 1, side: port, oar: A1}
  - {seat: 2, side: starboard, oar: A2}
  - {seat: 3, side: port, oar: A3}
  - {seat: 4, side: starboard, oar: A4}
  - {seat: 5, side: port, oar: A5}  # <--
",
            ),
        ],
        right: &[(
            "boats/kittiwake.yaml",
            "",
            "- seat: 1\n    side: starboard\n    oar: A1",
            "- oar: A1\n    side: starboard\n    seat: 1",
        )],
    },
    looks: Looks::AtEachBoat(check),
};

fn check(boat: &BoatSight) -> Vec<Outcome> {
    let file = boat.book.file(boat.boat.file);
    if !file.whole {
        let lack = Lack::NotMeasured(vec![format!("the rest of {}", file.path)]);
        return vec![not_checked(&RULE, &boat.boat.record(), &lack)];
    }
    if boat.boat.seats.is_empty() {
        let finding = about(boat, boat.boat.id.place, "this boat", "no seats are written");
        return vec![finding.found()];
    }
    let class = boat.in_force.class;
    let count = class.and_then(|class| class.seats).map(|seats| seats.value);
    let alternating = class.and_then(|class| class.alternating);
    let mut findings = numbered_twice(boat);
    if let (Some(class), Some(count)) = (class, count) {
        findings.extend(too_many(boat, class, count));
        findings.extend(too_few(boat, class, count));
    }
    if alternating.is_some_and(|alternating| alternating.value) {
        findings.extend(one_sided(boat));
    }
    findings.into_iter().map(Finding::found).collect()
}

fn about(
    boat: &BoatSight,
    place: crate::model::Place,
    label: impl Into<String>,
    what: &str,
) -> Finding {
    Finding::new(&RULE, boat.boat.record(), place, label)
        .saying(format!("{}: {what}", boat.boat.called()))
}

fn numbers<'b>(boat: &BoatSight<'b>) -> impl Iterator<Item = Placed<u32>> + use<'b> {
    boat.boat.seats.iter().filter_map(|seat| seat.number)
}

fn numbered_twice(boat: &BoatSight) -> Vec<Finding> {
    let mut first = BTreeMap::new();
    let mut findings = Vec::new();
    for number in numbers(boat) {
        if let Some(before) = first.get(&number.value) {
            let what = format!("seat {} is written twice", number.value);
            let finding = about(boat, number.place, "and here", &what);
            findings.push(finding.also(*before, "first here"));
        } else {
            first.insert(number.value, number.place);
        }
    }
    findings
}

fn too_many(boat: &BoatSight, class: &Class, count: u32) -> Option<Finding> {
    let mut beyond = numbers(boat).filter(|number| number.value > count);
    let first = beyond.next()?;
    let what = format!("seat {}, but a {} has {count} seats", first.value, class.id.value);
    let finding = about(boat, first.place, format!("seat {}", first.value), &what);
    let finding = beyond
        .fold(finding, |finding, seat| finding.also(seat.place, format!("seat {}", seat.value)));
    Some(match class.seats {
        Some(seats) => finding.also(seats.place, format!("{count} seats")),
        None => finding,
    })
}

/// Seats whose number could not be read may be any of those that are missing.
fn too_few(boat: &BoatSight, class: &Class, count: u32) -> Option<Finding> {
    let written: BTreeSet<u32> = numbers(boat).map(|number| number.value).collect();
    let nameless = boat.boat.seats.iter().filter(|seat| seat.number.is_none()).count();
    let missing: Vec<String> = (1..=count)
        .filter(|number| !written.contains(number))
        .map(|number| format!("seat {number}"))
        .collect();
    if missing.len() <= nameless {
        return None;
    }
    let verb = if missing.len() == 1 { "is" } else { "are" };
    let missing = missing.join(" and ");
    let what = format!("{missing} {verb} not written; a {} has {count} seats", class.id.value);
    Some(about(boat, boat.boat.id.place, "this boat", &what))
}

fn one_sided(boat: &BoatSight) -> Option<Finding> {
    let seats: BTreeMap<u32, &Seat> =
        boat.boat.seats.iter().rev().filter_map(|seat| Some((seat.number?.value, seat))).collect();
    let pairs = seats.iter().filter_map(|(number, seat)| {
        let (side, next) = (seat.side?, seats.get(&(number + 1))?.side?);
        (side.value == next.value).then_some((*number, side, next))
    });
    let pairs: Vec<_> = pairs.collect();
    let (number, side, next) = pairs.first().copied()?;
    let word = crate::model::Word::word(side.value);
    let what = format!("seats {number} and {} both have their oars to {word}", number + 1);
    let label = |number: u32| format!("seat {number}, {word}");
    let finding = about(boat, next.place, label(number + 1), &what).also(side.place, label(number));
    Some(pairs[1..].iter().fold(finding, |finding, (number, side, next)| {
        let word = crate::model::Word::word(side.value);
        finding
            .also(next.place, format!("seat {}, {word}", number + 1))
            .also(side.place, format!("seat {number}, {word}"))
    }))
}
