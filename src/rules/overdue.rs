//! Readings that are too old.

use super::finding::Finding;
use super::finding::Outcome;
use super::judging::Range;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use super::words;
use crate::model::Book;
use crate::model::LimitKey;
use crate::model::Placed;
use crate::units::Date;
use crate::working::BoatSight;
use crate::working::Budget;
use crate::working::Unit;

pub(super) static RULE: Rule = Rule {
    id: "overdue",
    level: Level::Fault,
    checks: "The oldest reading at a seat of the boat is older than the limit.",
    reason: "Pins work loose, leather wears and swells, horns are knocked. Old readings tell how the boat \
             was, not how she is.",
    remedy: "Measure the boat again; write the new day under rigged, or name what was read again under read-again.",
    formula: "today less the rigging day, or less the day of read-again for the values it names; the oldest value counts",
    default: "at most 42 days",
    sources: &[sources::CLUB.at("42 days")],
    example: Example {
        wrong: &[("boats/kittiwake.yaml", "rigged", "date: 2026-10-17", "date: 2026-09-19  # <--")],
        right: &[("boats/kittiwake.yaml", "rigged", "date: 2026-10-17", "date: 2026-09-20")],
    },
    looks: Looks::AtTheBook(check),
};

fn check(book: &Book, today: Date) -> Vec<Outcome> {
    let boats = book.boats.iter();
    boats.flat_map(|boat| one(&BoatSight::new(book, boat), today)).collect()
}

fn one(boat: &BoatSight, today: Date) -> Vec<Outcome> {
    let range = Range::in_force(boat.in_force, LimitKey::Age, Unit::Days);
    let (Some(range), Some(oldest)) = (range, oldest(boat)) else { return Vec::new() };
    let age = Ok(Budget::exact(today.days_after(oldest.value) as f64));
    let rigged = boat.boat.rigged.date.unwrap_or(oldest);
    let name = boat.boat.record().at("rigged/date");
    Range::finding(Some(&range), &RULE, &name, &age, |age, judged, range| {
        let finding = Finding::new(&RULE, name.clone(), rigged.place, "the rigging day");
        let again = oldest.place != rigged.place;
        let finding = if again { finding.also(oldest.place, "read again") } else { finding };
        finding.saying(format!(
            "{}: the oldest reading is of {}, {} ago: {}",
            boat.boat.called(),
            oldest.value,
            words::number(age.value(), "days"),
            range.beyond(judged),
        ))
    })
}

/// Returns the day on which the oldest value of a seat was read; where nothing was measured, the
/// rigging day.
fn oldest(boat: &BoatSight) -> Option<Placed<Date>> {
    let names = boat.seats().flat_map(|seat| boat.measured_at(&seat.name()));
    let days = names.filter_map(|name| boat.read_on(name));
    days.min_by_key(|day| day.value).or(boat.boat.rigged.date)
}
