//! Every length of a seat, an oar and a rower by the name of its field, so that a class can say
//! what is plausible for it.

use super::Reading;
use super::boat::Seat;
use super::crew::Rower;
use super::oars::Oar;
use crate::units::Length;

/// The name of a length, below the name of what it belongs to, and the way to it.
pub type LengthOf<T> = (&'static str, fn(&T) -> Option<&Reading<Length>>);

impl Seat {
    /// Every length that is read at a seat.
    pub const LENGTHS: [LengthOf<Self>; 14] = [
        ("pin/spread", |seat| seat.pin.spread.as_ref()),
        ("pin/along", |seat| seat.pin.along.as_ref()),
        ("pin/thick", |seat| seat.pin.thick.as_ref()),
        ("pin/plate/along", |seat| seat.pin.plate.along.as_ref()),
        ("pin/plate/across", |seat| seat.pin.plate.across.as_ref()),
        ("rowlock/gap", |seat| seat.rowlock.gap.as_ref()),
        ("rowlock/after-tip", |seat| seat.rowlock.after_tip.as_ref()),
        ("rowlock/horn", |seat| seat.rowlock.horn.as_ref()),
        ("rowlock/long", |seat| seat.rowlock.long.as_ref()),
        ("rowlock/above-seat", |seat| seat.rowlock.above_seat.as_ref()),
        ("seat-mark", |seat| seat.seat_mark.as_ref()),
        ("handle-past-mark", |seat| seat.handle_past_mark.as_ref()),
        ("chock-to-pin", |seat| seat.chock_to_pin.as_ref()),
        ("oar-bed", |seat| seat.oar_bed.as_ref()),
    ];
}

impl Oar {
    /// Every length that is read on an oar.
    pub const LENGTHS: [LengthOf<Self>; 11] = [
        ("length", |oar| oar.length.as_ref()),
        ("inboard", |oar| oar.inboard.as_ref()),
        ("grip", |oar| oar.grip.as_ref()),
        ("blade/length", |oar| oar.blade.length.as_ref()),
        ("blade/width", |oar| oar.blade.width.as_ref()),
        ("blade/at-mark", |oar| oar.blade.at_mark.as_ref()),
        ("shaft/widest", |oar| oar.shaft.widest.as_ref()),
        ("shaft/narrowest", |oar| oar.shaft.narrowest.as_ref()),
        ("shaft/round", |oar| oar.shaft.round.as_ref()),
        ("flex/drop", |oar| oar.flex.drop.as_ref()),
        ("flex/at", |oar| oar.flex.at.as_ref()),
    ];
}

impl Rower {
    /// Every length that is read of a rower.
    pub const LENGTHS: [LengthOf<Self>; 2] =
        [("stature", |rower| rower.stature.as_ref()), ("leg", |rower| rower.leg.as_ref())];
}

/// What stands before the name of an oar's length, and of a rower's, where a class says what is
/// plausible.
pub const OF_AN_OAR: &str = "oar/";
/// As [`OF_AN_OAR`], of a rower.
pub const OF_A_ROWER: &str = "crew/";

/// Returns every name under which a class may say what is plausible.
#[must_use]
pub fn plausible_fields() -> Vec<String> {
    let seat = Seat::LENGTHS.iter().map(|(field, _)| (*field).to_owned());
    let oar = Oar::LENGTHS.iter().map(|(field, _)| format!("{OF_AN_OAR}{field}"));
    let rower = Rower::LENGTHS.iter().map(|(field, _)| format!("{OF_A_ROWER}{field}"));
    seat.chain(oar).chain(rower).collect()
}
