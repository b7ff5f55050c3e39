//! Drawings of a boat and of how she is measured, as SVG: to scale where that can be, every number
//! from the readings, what was not measured left out or broken and said so.

mod arcs;
mod course;
mod lean;
mod marks;
mod paper;
mod pitch;
mod plan;
mod rowlock;
mod sketches;

pub(super) use arcs::ArcRowed;
pub(super) use arcs::arcs;
pub(super) use course::Course;
pub(super) use course::Event;
pub(super) use course::course;
pub(super) use lean::lean;
pub use paper::Drawing;
pub(super) use paper::STYLE;
pub(super) use paper::cut;
pub(super) use pitch::PitchAxis;
pub(super) use pitch::pitch;
pub(super) use plan::plan;
pub(super) use rowlock::rowlock;
pub(super) use sketches::{said_of, sketch_book, sketched, tool_of, with_all};
pub use sketches::{sentence, sketches};

use super::Report;
use super::card::Subject;
use crate::model::Boat;
use crate::working::SeatSight;

/// A drawing and what its file or its part of a page is called.
pub struct Called {
    /// Such as `plan`, or `rowlock-2` of seat 2.
    pub id: String,
    /// The drawing.
    pub drawing: Drawing,
}

/// Returns every drawing of a boat: the plan, then those of each seat from the bow.
#[must_use]
pub fn drawings(report: &Report, boat: &Boat) -> Vec<Called> {
    let subject = Subject::of(report, boat);
    let seats = subject.seats();
    let axis = PitchAxis::of(&seats);
    let mut all = vec![Called { id: "plan".to_owned(), drawing: plan(&subject) }];
    for (place, seat) in (1..).zip(&seats) {
        let mut add =
            |kind: &str, drawing| all.push(Called { id: format!("{kind}-{place}"), drawing });
        add("rowlock", rowlock(&subject, seat));
        add("pitch", pitch(&subject, seat, axis));
        add("lean", lean(&subject, seat));
    }
    all
}

/// Returns what a seat is called on a drawing: "seat 2, port, A2".
pub(super) fn called(seat: &SeatSight) -> String {
    use crate::model::Word;
    let number = seat.seat.number.map_or("?".to_owned(), |number| number.value.to_string());
    let side = seat.seat.side.map_or("side not known", |side| side.value.word());
    let oar = seat.seat.oar.as_ref().map_or("no oar", |oar| &oar.value);
    format!("seat {number}, {side}, {oar}")
}
