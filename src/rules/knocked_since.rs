//! A knock that the readings don't know of.

use super::finding::Finding;
use super::finding::NotChecked;
use super::finding::Outcome;
use super::level::Level;
use super::rule::Example;
use super::rule::Looks;
use super::rule::Rule;
use super::sources;
use crate::model::Knock;
use crate::model::Name;
use crate::model::Placed;
use crate::units::Date;
use crate::working::BoatSight;
use crate::working::SeatSight;

pub(super) static RULE: Rule = Rule {
    id: "knocked-since",
    level: Level::Fault,
    checks: "The boat was rolled, hit, dropped or broke an oar, and a seat that it concerns was not measured again since.",
    reason: "A knock bends pins and horns and shifts plates, often out of sight. Readings from before \
             it describe a boat that is no more.",
    remedy: "Measure every value of the seats it concerns again and lift each oar out by hand; write them under read-again with the day, or rig anew.",
    formula: "a seat's readings count as older than a knock when any of them was last read before the knock's day; readings of the rigging day itself count as older too, for the book can't tell which came first, unless read-again names them that day or later",
    default: "-",
    sources: &[sources::PRACTICE.at("what was knocked is measured again")],
    example: Example {
        wrong: &[(
            "boats/kittiwake.yaml",
            "",
            "foot-holes: {first: 820",
            "knocks:\n  - {date: 2026-10-18, what: rolled in the shore break, where: [seat-3]}  # <--\nfoot-holes: {first: 820",
        )],
        right: &[(
            "boats/kittiwake.yaml",
            "",
            "foot-holes: {first: 820",
            "knocks:\n  - {date: 2026-10-18, what: rolled in the shore break, where: [seat-3]}\n\
             read-again:\n  - {date: 2026-10-18, by: Tomas Reyne, checked-by: Ines Marlow, values: [seat-3]}\nfoot-holes: {first: 820",
        )],
    },
    looks: Looks::AtEachBoat(check),
};

fn check(boat: &BoatSight) -> Vec<Outcome> {
    boat.boat.knocks.iter().filter_map(|knock| one(boat, knock)).collect()
}

fn one(boat: &BoatSight, knock: &Knock) -> Option<Outcome> {
    let record = boat.boat.record();
    let Some(day) = knock.date else {
        let missing = vec!["date of the knock".to_owned()];
        let missing = NotChecked { rule: RULE.id, name: record.at("knocks"), missing };
        return Some(Outcome::NotChecked(missing));
    };
    let seats: Vec<SeatSight> = boat.seats().collect();
    let concerned = seats.iter().filter(|seat| concerns(boat, knock, &seat.name()));
    let older: Vec<(&SeatSight, &Name)> =
        concerned.filter_map(|seat| Some((seat, unread_since(seat, day)?))).collect();
    let (_, example) = older.first()?;
    let called: Vec<String> = older.iter().map(|(seat, _)| seat.short()).collect();
    let what = knock.what.as_ref().map_or("knocked", |what| what.value.trim());
    let name = record.at("knocks").at(day.value);
    let finding = Finding::new(&RULE, name, day.place, "knocked on this day").saying(format!(
        "{}: {what} on {}; not all of {} was measured again since, such as {}",
        boat.boat.called(),
        day.value,
        called.join(", "),
        example.as_str().trim_start_matches(&format!("{record}/")),
    ));
    let rigged = boat.boat.rigged.date;
    let finding = match rigged {
        Some(rigged) => finding.also(rigged.place, "measured on this day"),
        None => finding,
    };
    let again = format!(
        "Measure all of {} again and lift the oars out by hand; write it under read-again: {{date, by, checked-by, values: [{}]}}.",
        called.join(", "),
        called.iter().map(|seat| seat.replace(' ', "-")).collect::<Vec<_>>().join(", "),
    );
    Some(finding.remedy(again).found())
}

/// A knock concerns the seats it names; all, where it names none, or something that is no seat of
/// hers.
fn concerns(boat: &BoatSight, knock: &Knock, seat: &Name) -> bool {
    let record = boat.boat.record();
    let named = |place: &Placed<String>| record.at(&place.value);
    let own: Vec<Name> = boat.seats().map(|seat| seat.name()).collect();
    let all_are_seats = knock.seats.iter().all(|place| own.contains(&named(place)));
    knock.seats.is_empty()
        || !all_are_seats
        || knock.seats.iter().any(|place| named(place) == *seat)
}

/// Returns a measured value of the seat that was not read again since a knock.
fn unread_since<'b>(seat: &SeatSight<'b>, knock: Placed<Date>) -> Option<&'b Name> {
    let rigged = seat.at.boat.rigged.date.map(|day| day.place);
    let since = |name: &Name| {
        seat.at.read_on(name).is_some_and(|read| {
            let again = Some(read.place) != rigged;
            read.value > knock.value || (again && read.value == knock.value)
        })
    };
    seat.at.measured_at(&seat.name()).into_iter().find(|name| !since(name))
}
