//! The worked-out values as JSON: a contract, key by key.

use serde::Serialize;
use serde::Serializer;
use serde::ser::SerializeMap;

use super::figures::Figure;
use super::figures::of_boat;
use super::figures::of_seat;
use super::json::FORMAT_VERSION;
use super::shown;
use super::telling_json::CanTell;
use super::telling_json::NextJson;
use super::telling_json::can_tell;
use super::telling_json::measure_next;
use crate::working::BoatSight;

#[derive(Serialize)]
struct Root<'r> {
    format_version: u32,
    boats: Vec<BoatJson<'r>>,
}

struct BoatJson<'r> {
    boat: &'r str,
    seats: Vec<SeatJson>,
    figures: Vec<Figure>,
}

#[derive(Serialize)]
struct SeatJson {
    seat: Option<u32>,
    worked_out: WorkedOut,
    not_worked_out: NotWorkedOut,
    can_tell: CanTell,
    measure_next: Vec<NextJson>,
}

struct WorkedOut(Vec<(&'static str, Value)>);

struct NotWorkedOut(Vec<(&'static str, String)>);

#[derive(Serialize)]
struct Value {
    number: f64,
    uncertainty: f64,
}

/// Returns every worked-out value of the boats as JSON, on one line.
///
/// A value that can't be worked out is left out, and the reason given under its name without the
/// unit; a boat whose own values are all there has no list of reasons.
#[must_use]
pub fn figures_json(boats: &[BoatSight]) -> String {
    let boats = boats.iter().map(boat).collect();
    shown::json(&Root { format_version: FORMAT_VERSION, boats })
}

fn boat<'r>(sight: &BoatSight<'r>) -> BoatJson<'r> {
    let seats = sight.seats().map(|seat| {
        let (worked_out, not_worked_out) = parted(&of_seat(&seat));
        SeatJson {
            seat: seat.seat.number.map(|number| number.value),
            worked_out,
            not_worked_out,
            can_tell: can_tell(&seat),
            measure_next: measure_next(&seat),
        }
    });
    BoatJson { boat: &sight.boat.id.value, seats: seats.collect(), figures: of_boat(sight) }
}

fn parted(figures: &[Figure]) -> (WorkedOut, NotWorkedOut) {
    let (mut worked, mut lacking) = (Vec::new(), Vec::new());
    for figure in figures {
        match &figure.worked {
            Ok(budget) => {
                let (number, uncertainty) = (budget.value(), budget.expanded());
                worked.push((figure.key, Value { number, uncertainty }));
            }
            Err(lack) => lacking.push((figure.short_key(), lack.to_string())),
        }
    }
    (WorkedOut(worked), NotWorkedOut(lacking))
}

impl Serialize for BoatJson<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let (worked, lacking) = parted(&self.figures);
        let mut map = serializer.serialize_map(None)?;
        map.serialize_entry("boat", self.boat)?;
        map.serialize_entry("seats", &self.seats)?;
        for (key, value) in &worked.0 {
            map.serialize_entry(key, value)?;
        }
        if !lacking.0.is_empty() {
            map.serialize_entry("not_worked_out", &lacking)?;
        }
        map.end()
    }
}

impl Serialize for WorkedOut {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.iter().map(|(key, value)| (key, value)))
    }
}

impl Serialize for NotWorkedOut {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.iter().map(|(key, value)| (key, value)))
    }
}
