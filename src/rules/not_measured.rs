//! Readings that the class asks for and that nobody took.

use super::finding::Finding;
use super::finding::Outcome;
use super::judging::not_checked;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use crate::model::Name;
use crate::working::Lack;
use crate::working::SeatSight;

pub(super) static RULE: Rule = Rule {
    id: "not-measured",
    level: Level::Unsure,
    checks: "A seat lacks a reading that its class says must be measured.",
    reason: "What was not measured is not known, and the checks that need it were not made.",
    remedy: "Measure it at the boat and write it down.",
    formula: "every field under must-measure of the class is written at every seat; the gap and the lift have rules of their own",
    default: "the class's must-measure",
    sources: &[sources::CLUB.at("what must be measured")],
    example: Example {
        wrong: &[
            ("boats/kittiwake.yaml", "", "- seat: 2", "- seat: 2  # <--"),
            ("boats/kittiwake.yaml", "seat: 2", "spread: 792", "spread: not measured"),
            ("boats/kittiwake.yaml", "seat: 2", "\n    chock-to-pin: 600", ""),
            ("boats/kittiwake.yaml", "", "- seat: 4", "- seat: 4  # <--"),
            ("boats/kittiwake.yaml", "seat: 4", "seat-mark: 61", "seat-mark:"),
        ],
        right: &[
            ("boats/kittiwake.yaml", "seat: 2", "spread: 792", "spread: [792, 792]"),
            ("boats/kittiwake.yaml", "seat: 4", "seat-mark: 61", "seat-mark: {read: 61, to: 1}"),
        ],
    },
    looks: Looks::AtEachSeat(check),
};

/// Fields whose absence another rule tells.
const TOLD_ELSEWHERE: [&str; 2] = ["rowlock/gap", "lifts-out"];

fn check(seat: &SeatSight) -> Vec<Outcome> {
    let (Some(class), name) = (seat.at.in_force.class, seat.name()) else { return Vec::new() };
    let file = seat.at.book.file(seat.at.boat.file);
    let lack = if !file.whole {
        Some(Lack::NotMeasured(vec![format!("the rest of {}", file.path)]))
    } else if seat.seat.number.is_none() {
        Some(Lack::NotMeasured(vec!["seat".to_owned()]))
    } else {
        None
    };
    if let Some(lack) = lack {
        return vec![not_checked(&RULE, &name, &lack)];
    }
    let fields = class.must_measure.iter().map(|field| field.value.as_str());
    let written = written(seat, &name);
    let missing: Vec<&str> = fields
        .filter(|field| !is_told_elsewhere(field) && !is_among(&written, &name.key(field)))
        .collect();
    if missing.is_empty() { Vec::new() } else { vec![finding(seat, name, &missing).found()] }
}

fn finding(seat: &SeatSight, name: Name, missing: &[&str]) -> Finding {
    let missing = missing.join(", ");
    let place = seat.seat.number.map_or(seat.seat.place, |number| number.place);
    Finding::new(&RULE, name, place, "this seat")
        .saying(format!("{}: not measured: {missing}", seat.called()))
        .remedy(format!("Measure and write: {missing}."))
}

fn is_told_elsewhere(field: &str) -> bool {
    let field = Name::record(field);
    TOLD_ELSEWHERE.iter().any(|told| field.is_within(told))
}

/// Returns the names of all that stands at a seat or around it.
fn written<'b>(seat: &SeatSight<'b>, name: &Name) -> Vec<&'b Name> {
    let names = seat.at.book.written_in(seat.at.boat.file).iter().map(|own| &own.name);
    names.filter(|own| own.meets(name)).collect()
}

/// Returns whether something stands there, even if it could not be read: that has been told.
fn is_among(written: &[&Name], wanted: &Name) -> bool {
    written.iter().any(|name| name.meets(wanted))
}
