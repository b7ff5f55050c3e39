//! The rows of a sheet to write on, in the order of the work. Knows no paper.

use crate::model::LimitKey;
use crate::model::Oar;
use crate::model::Reading;
use crate::reports::card_readings::offset;
use crate::reports::card_readings::read;
use crate::units::Length;
use crate::units::Slope;
use crate::working::SeatSight;

/// One value to be taken at every seat.
pub(super) struct Row {
    /// The field it goes to, as the records' form names it.
    pub(super) field: &'static str,
    /// What people call it, with its unit.
    pub(super) called: &'static str,
    /// The limit that is told beside it, and of what it is one.
    pub(super) limit: Option<(LimitKey, &'static str)>,
    /// What is written.
    pub(super) written: Written,
}

/// What is written into a box.
#[derive(Clone, Copy, Eq, PartialEq)]
pub(super) enum Written {
    /// A number.
    Number,
    /// A number before anything was bent or packed, and one after.
    FoundAndLeft,
    /// One of these words, marked.
    Word(&'static [&'static str]),
    /// One of three letters for each way that the oar is lifted.
    Lifts,
}

/// A step of the work with its rows.
pub(super) struct Step {
    pub(super) called: &'static str,
    pub(super) rows: Vec<Row>,
}

const fn row(field: &'static str, called: &'static str) -> Row {
    Row { field, called, limit: None, written: Written::Number }
}

impl Row {
    const fn by(mut self, key: LimitKey, of: &'static str) -> Self {
        self.limit = Some((key, of));
        self
    }

    const fn writes(mut self, written: Written) -> Self {
        self.written = written;
        self
    }
}

/// Returns the steps of the first side: what is done before the oars are laid.
pub(super) fn first_side() -> Vec<Step> {
    let pins = vec![
        row("boat/seats/pin/spread", "spread, mm"),
        row("boat/seats/pin/along", "along, mm"),
        row("boat/seats/pin/lean/aft", "lean aft, mm").by(LimitKey::PinAft, "lean"),
        row("boat/seats/pin/lean/out", "lean out, mm").by(LimitKey::PinOut, "lean"),
        row("boat/seats/pin/thick", "pin thick, mm"),
        row("boat/seats/pin/plate/along", "plate along, mm"),
        row("boat/seats/pin/plate/across", "plate across, mm"),
    ];
    let handles = vec![
        row("oar-set/oars/inboard", "inboard, mm"),
        row("boat/seats/seat-mark", "seat mark, mm"),
        row("boat/seats/handle-past-mark", "past mark, mm").by(LimitKey::Handle, "past mark"),
    ];
    let chocks = vec![
        row("boat/seats/chock-to-pin", "chock to pin, mm").by(LimitKey::Chock, "chock to pin"),
    ];
    let step = |called, rows| Step { called, rows };
    vec![step("Pins", pins), step("Handles", handles), step("Back chocks", chocks)]
}

/// Returns the steps of the second side: blades, rowlocks, oars.
pub(super) fn second_side() -> Vec<Step> {
    use Written::FoundAndLeft;
    let pitch = vec![
        row("boat/seats/pitch/catch", "catch, mm").writes(FoundAndLeft),
        row("boat/seats/pitch/square", "square off, mm")
            .by(LimitKey::Pitch, "pitch")
            .writes(FoundAndLeft),
        row("boat/seats/pitch/finish", "finish, mm").writes(FoundAndLeft),
    ];
    let gaps = vec![
        row("boat/seats/rowlock/gap", "gap, mm")
            .by(LimitKey::Clearance, "clears")
            .writes(FoundAndLeft),
        row("boat/seats/rowlock/after-tip", "after tip, mm"),
        row("boat/seats/rowlock/horn", "horn, mm"),
        row("boat/seats/rowlock/long", "horn long, mm"),
        row("boat/seats/rowlock/above-seat", "above seat, mm"),
        row("boat/seats/oar-bed", "mark in bed, mm").by(LimitKey::Bed, "part of shaft"),
        row("boat/seats/rowlock/turns", "turns")
            .writes(Written::Word(&["free", "stiff", "seized"])),
        row("boat/seats/lifts-out", "lifts out").writes(Written::Lifts),
    ];
    let oars = vec![
        row("oar-set/oars/length", "length, mm"),
        row("oar-set/oars/shaft/widest", "widest, mm"),
        row("oar-set/oars/shaft/narrowest", "narrowest, mm"),
    ];
    let step = |called, rows| Step { called, rows };
    vec![step("Pitch", pitch), step("Rowlocks", gaps), step("Oars", oars)]
}

/// Returns what was read of a row's value at a seat last time.
pub(super) fn last(seat: &SeatSight, field: &str) -> Option<String> {
    let (record, pin, rowlock) = (seat.seat, &seat.seat.pin, &seat.seat.rowlock);
    let of_oar = |pick: fn(&Oar) -> Option<&Reading<Length>>| seat.oar.and_then(pick);
    let slope: Option<&Reading<Slope>> = match field {
        "boat/seats/pin/lean/aft" => pin.lean.aft.as_ref(),
        "boat/seats/pin/lean/out" => pin.lean.out.as_ref(),
        "boat/seats/pitch/catch" => record.pitch.catch.as_ref(),
        "boat/seats/pitch/square" => record.pitch.square.as_ref(),
        "boat/seats/pitch/finish" => record.pitch.finish.as_ref(),
        _ => None,
    };
    let length = match field {
        "boat/seats/pin/spread" => pin.spread.as_ref(),
        "boat/seats/pin/along" => pin.along.as_ref(),
        "boat/seats/pin/thick" => pin.thick.as_ref(),
        "boat/seats/pin/plate/along" => pin.plate.along.as_ref(),
        "boat/seats/pin/plate/across" => pin.plate.across.as_ref(),
        "oar-set/oars/inboard" => of_oar(|oar| oar.inboard.as_ref()),
        "boat/seats/seat-mark" => record.seat_mark.as_ref(),
        "boat/seats/handle-past-mark" => record.handle_past_mark.as_ref(),
        "boat/seats/chock-to-pin" => record.chock_to_pin.as_ref(),
        "boat/seats/rowlock/gap" => rowlock.gap.as_ref(),
        "boat/seats/rowlock/after-tip" => rowlock.after_tip.as_ref(),
        "boat/seats/rowlock/horn" => rowlock.horn.as_ref(),
        "boat/seats/rowlock/long" => rowlock.long.as_ref(),
        "boat/seats/rowlock/above-seat" => rowlock.above_seat.as_ref(),
        "boat/seats/oar-bed" => record.oar_bed.as_ref(),
        "oar-set/oars/length" => of_oar(|oar| oar.length.as_ref()),
        "oar-set/oars/shaft/widest" => of_oar(|oar| oar.shaft.widest()),
        "oar-set/oars/shaft/narrowest" => of_oar(|oar| oar.shaft.narrowest()),
        _ => None,
    };
    offset(slope).or_else(|| read(length))
}
