//! The blades of a boat side by side: pitch square off, as read.
//!
//! As read, for trim takes part at every seat alike and roll has no part in a blade square off.
//! A blade that the hands set has no pitch to compare.

use super::words;
use crate::model::Place;
use crate::working::Attitude;
use crate::working::BoatSight;
use crate::working::Budget;
use crate::working::Lack;
use crate::working::SeatSight;
use crate::working::Worked;

/// Returns every blade that its rowlock sets, with its pitch.
pub(super) fn square_off<'b>(
    boat: &BoatSight<'b>,
) -> impl Iterator<Item = (SeatSight<'b>, Worked)> + use<'b> {
    let set = boat.seats().filter(|seat| !seat.hands_set_pitch());
    set.map(|seat| {
        let pitch = seat.pitch_beside_others().map_err(|lack| of_seat(&seat, lack));
        (seat, pitch)
    })
}

/// Names what is missing below the boat's own name.
fn of_seat(seat: &SeatSight, lack: Lack) -> Lack {
    let Lack::NotMeasured(fields) = lack else { return lack };
    let seat = seat.seat.number.map_or("seats".to_owned(), |own| format!("seat-{}", own.value));
    let named = |field: String| {
        if field.starts_with("pitch/") { format!("{seat}/{field}") } else { field }
    };
    Lack::NotMeasured(fields.into_iter().map(named).collect())
}

/// Returns where the pitch of a blade is written.
pub(super) fn place(seat: &SeatSight) -> Place {
    let reading = seat.pitch_reading(Attitude::Square);
    reading.map_or(seat.seat.place, |reading| reading.place)
}

/// Returns what is at a place: "4.89 deg here".
pub(super) fn here(pitch: &Budget) -> String {
    format!("{} here", words::number(pitch.value(), "deg"))
}

/// Returns whose pitch it is: "seat 2 at 4.89 deg".
pub(super) fn at_seat((seat, pitch): &(SeatSight, Budget)) -> String {
    let degrees = words::number(pitch.value(), "deg");
    format!("{} at {degrees}", seat.short())
}
