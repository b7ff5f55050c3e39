//! Charts of a boat's numbers through time, of those that changed.

use std::collections::BTreeMap;

use maud::Markup;
use maud::html;

use super::RecordPast;
use super::Site;
use crate::history::Key;
use crate::model::Boat;
use crate::model::Name;
use crate::model::Word;
use crate::reading::RecordKind;
use crate::reports::TimelineRow;
use crate::reports::drawings::Course;
use crate::reports::drawings::Event;
use crate::reports::drawings::course;
use crate::rules::Against;
use crate::units::Date;

/// What of a seat is drawn, and what it is called.
const DRAWN: [(&str, &str); 7] = [
    ("rowlock/gap", "gap"),
    ("pitch/square", "pitch square off"),
    ("pin/lean/aft", "lean aft"),
    ("pin/lean/out", "lean out"),
    ("handle-past-mark", "handle past mark"),
    ("chock-to-pin", "chock to pin"),
    ("rowlock/after-tip", "after tip"),
];

/// A value that moves by less than this with a reading doesn't rest on it.
const NEXT_TO_NOTHING: f64 = 1e-6;

pub(super) fn section(site: &Site, boat: &Boat) -> Markup {
    let key = Key { kind: RecordKind::Boat, id: boat.id.value.clone() };
    let Some(past) = site.past(&key) else {
        return html! { section { h2 id="time" { "Through time" } p { "Not known: see Changes." } } };
    };
    let courses = courses(site, boat, past);
    html! {
        section class="drawings" {
            h2 id="time" { "Through time" }
            @if courses.is_empty() { p { "Each value was read once, or was always the same." } } @else {
                p class="quiet" { "Points: readings. Broken lines: where a rule objects today, as the rest of the rig stands. B: bent, K: knocked." }
                div class="panels courses" {
                    @for (at, own) in courses.iter().enumerate() {
                        figure { (course(own).inline(&format!("course-{at}"))) }
                    }
                }
            }
        }
    }
}

fn courses(site: &Site, boat: &Boat, past: &RecordPast) -> Vec<Course> {
    let mut by_name: BTreeMap<&Name, Vec<&TimelineRow>> = BTreeMap::new();
    for row in &past.rows {
        by_name.entry(&row.row.name).or_default().push(row);
    }
    let mut numbers: Vec<u32> =
        boat.seats.iter().filter_map(|seat| seat.number.map(|own| own.value)).collect();
    numbers.sort_unstable();
    numbers.dedup();
    let mut all = Vec::new();
    for (field, called) in DRAWN {
        for number in &numbers {
            let name = boat.record().seat(*number).at(field);
            let Some(rows) = by_name.get(&name) else { continue };
            let Some((points, unit)) = points(rows) else { continue };
            all.push(Course {
                called: format!("Seat {number}, {called}"),
                unit,
                limits: limits(site, &name, points.last().map_or(0.0, |(_, last)| *last)),
                points,
                events: events(boat, *number),
            });
        }
    }
    all
}

/// Returns the numbers by day; none where there is but one, or all are the same.
fn points(rows: &[&TimelineRow]) -> Option<(Vec<(Date, f64)>, &'static str)> {
    let unit = rows.iter().rev().find_map(|row| row.row.new.as_ref()?.number())?.1;
    let point = |row: &&TimelineRow| {
        let (number, own) = row.row.new.as_ref()?.number()?;
        let measured = row.row.measured.as_ref().map(|own| own.on);
        let day = measured.or_else(|| row.made.as_ref()?.committed_on)?;
        (own == unit).then_some((day, number))
    };
    let mut points: Vec<(Date, f64)> = rows.iter().filter_map(point).collect();
    points.sort_by_key(|(day, _)| *day);
    let first = points.first()?.1;
    let moved = points.iter().any(|(_, number)| (number - first).abs() > NEXT_TO_NOTHING);
    moved.then_some((points, unit))
}

/// Returns to what a reading would have to come for a rule to object, all else staying as it is.
fn limits(site: &Site, name: &Name, number: f64) -> Vec<f64> {
    let written = site.written(name);
    let mut all: Vec<f64> = Vec::new();
    for sum in site.sums_resting_on(written) {
        let Against::Limit { .. } = sum.against else { continue };
        let parts = sum.value.parts().iter();
        let own = parts.filter(|part| Some(part.input.place) == written);
        let by: f64 = own.map(|part| part.sensitivity).sum();
        if by.abs() < NEXT_TO_NOTHING
            || !sum.name.is_within(name.as_str().split("/pitch").next().unwrap_or_default())
        {
            continue;
        }
        let bounds = sum.against.bounds();
        let at = |limit: f64| number + (limit - sum.value.value()) / by;
        all.extend(bounds.least.into_iter().chain(bounds.most).map(at));
    }
    all.sort_by(f64::total_cmp);
    all.dedup_by(|one, other| (*one - *other).abs() < 0.05);
    all
}

fn events(boat: &Boat, seat: u32) -> Vec<(Date, Event)> {
    let bends = boat.bends.iter().filter(|bend| bend.seat.is_none_or(|own| own.value == seat));
    let bends = bends.filter_map(|bend| {
        let part = bend.part.map_or("a part", |part| part.value.word());
        Some((bend.date?.value, Event::Bend(part.replace('-', " "))))
    });
    let called = format!("seat-{seat}");
    let knocks = boat.knocks.iter().filter(|knock| {
        knock.seats.is_empty() || knock.seats.iter().any(|own| own.value == called)
    });
    let knocks = knocks.filter_map(|knock| Some((knock.date?.value, Event::Knock)));
    bends.chain(knocks).collect()
}
