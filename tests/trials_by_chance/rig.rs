//! A boat whose truth is known, and what tools of a known half-width read of her.
//!
//! Every truth is of the level boat at the oar angles written. What the bob shows of her as she
//! lies is worked out exactly: pins turned with the boat, blades on the pins so turned, each oar
//! laid a few degrees from where the record says.

use tholebook::geometry::Side;
use tholebook::geometry::arc;
use tholebook::geometry::arc::Lean;
use tholebook::geometry::arc::Rig;
use tholebook::geometry::level::apparent_lean;
use tholebook::units::Angle;

use crate::drawing::Draw;
use crate::record::Record;
use crate::record::SeatRecord;

/// Half-widths in millimetres and degrees, those of the sound book's club.
pub(crate) const CALLIPERS: f64 = 0.2;
pub(crate) const RULE: f64 = 0.5;
pub(crate) const BOB: f64 = 1.0;
pub(crate) const TAPE: f64 = 2.0;
pub(crate) const LEVEL: f64 = 0.2;
pub(crate) const OAR_ANGLE: f64 = 3.0;
pub(crate) const DIP: f64 = 2.0;

/// What the record and the class say of every boat.
pub(crate) const ANGLES: [f64; 3] = [50.0, 0.0, -35.0];
pub(crate) const USUAL_DIP: f64 = 6.0;
pub(crate) const COLLAR: f64 = 30.0;
pub(crate) const PIN_GAUGE: f64 = 150.0;

/// The truth of a boat, in millimetres and degrees.
pub(crate) struct Boat {
    pub(crate) trim: f64,
    pub(crate) roll: f64,
    pub(crate) dip: f64,
    pub(crate) seats: [Seat; 4],
}

/// The truth of a seat and its oar.
pub(crate) struct Seat {
    pub(crate) side: Side,
    pub(crate) aft: f64,
    pub(crate) out: f64,
    pub(crate) rowlock_pitch: f64,
    pub(crate) at_mark: f64,
    pub(crate) spread: f64,
    pub(crate) seat_mark: f64,
    pub(crate) above_seat: f64,
    pub(crate) inboard: f64,
    /// How far the collar has slid since inboard was measured.
    pub(crate) slid: f64,
    pub(crate) gap: f64,
    pub(crate) tip: f64,
    pub(crate) widest: f64,
    pub(crate) narrowest: f64,
    pub(crate) chock: f64,
}

impl Boat {
    /// A boat in order, lying up to 1 deg out of level, her oars dipping as the class says or up
    /// to 2 deg otherwise.
    pub(crate) fn in_order(draw: &mut Draw) -> Self {
        let (trim, roll) = (draw.between(-1.0, 1.0), draw.between(-1.0, 1.0));
        let dip = draw.read(USUAL_DIP, DIP);
        let sides = [Side::Starboard, Side::Port, Side::Starboard, Side::Port];
        let seats = sides.map(|side| Seat::in_order(draw, side, dip));
        Self { trim, roll, dip, seats }
    }

    /// Reads her with the club's tools. The level is read once for the whole boat.
    pub(crate) fn read(&self, draw: &mut Draw) -> Record {
        Record {
            trim: draw.read(self.trim, LEVEL),
            roll: draw.read(self.roll, LEVEL),
            seats: std::array::from_fn(|at| self.read_seat(&self.seats[at], draw)),
        }
    }

    fn read_seat(&self, seat: &Seat, draw: &mut Draw) -> SeatRecord {
        let shown = self.shown_lean(seat);
        let plumbed = |draw: &mut Draw, lean: Angle| draw.read(PIN_GAUGE * lean.tan(), RULE);
        let offset = |draw: &mut Draw, angle: f64| {
            let laid = draw.read(angle, OAR_ANGLE);
            let shown = pitch(seat.rowlock_pitch, shown, laid, self.dip);
            draw.read(seat.at_mark * shown.to_radians().sin(), RULE)
        };
        SeatRecord {
            side: seat.side,
            aft: plumbed(draw, shown.aft),
            out: plumbed(draw, shown.out),
            pitch: ANGLES.map(|angle| offset(draw, angle)),
            at_mark: draw.read(seat.at_mark, TAPE),
            spread: draw.read(seat.spread, BOB),
            seat_mark: draw.read(seat.seat_mark, BOB),
            handle: draw.read(self.shown_handle(seat), BOB),
            above_seat: draw.read(seat.above_seat, TAPE),
            inboard: draw.read(seat.inboard + seat.slid, TAPE),
            gap: draw.read(seat.gap, CALLIPERS),
            tip: draw.read(seat.tip, RULE),
            widest: draw.read(seat.widest, CALLIPERS),
            narrowest: draw.read(seat.narrowest, CALLIPERS),
            chock: draw.read(seat.chock, TAPE),
        }
    }

    /// How a pin leans against the plumb line in the boat as she lies.
    fn shown_lean(&self, seat: &Seat) -> Lean {
        let [trim, roll] = [self.trim, self.roll].map(Angle::deg);
        apparent_lean(seat.lean(), trim, roll, seat.side)
    }

    /// Where the bob at the handle's end falls in the boat as she lies.
    fn shown_handle(&self, seat: &Seat) -> f64 {
        let (sin, cos) = self.dip.to_radians().sin_cos();
        let along = seat.inboard + COLLAR;
        let past = along * cos - seat.spread - seat.seat_mark;
        let height = seat.above_seat + along * sin;
        past - seat.side.sign() * height * self.roll.to_radians().tan()
    }
}

impl Seat {
    fn in_order(draw: &mut Draw, side: Side, dip: f64) -> Self {
        let widest = draw.between(48.0, 54.0);
        let mut seat = Self {
            side,
            aft: draw.between(-0.8, 0.8),
            out: draw.between(-0.8, 0.8),
            rowlock_pitch: 4.0,
            at_mark: draw.between(165.0, 190.0),
            spread: 792.0,
            seat_mark: draw.between(40.0, 80.0),
            above_seat: draw.between(150.0, 230.0),
            inboard: draw.between(1120.0, 1180.0),
            slid: 0.0,
            gap: widest + 8.0,
            tip: 4.0,
            widest,
            narrowest: widest - 4.0,
            chock: 600.0,
        };
        seat.put_handle(320.0, dip);
        seat.set_pitch(4.5, dip);
        seat
    }

    pub(crate) fn lean(&self) -> Lean {
        Lean { aft: Angle::deg(self.aft), out: Angle::deg(self.out) }
    }

    /// The true pitch in the level boat at one oar angle.
    pub(crate) fn pitch(&self, angle: f64, dip: f64) -> f64 {
        pitch(self.rowlock_pitch, self.lean(), angle, dip)
    }

    /// Bends the forward horn until the true pitch square off is this.
    pub(crate) fn set_pitch(&mut self, aim: f64, dip: f64) {
        for _ in 0..6 {
            self.rowlock_pitch += aim - self.pitch(0.0, dip);
        }
    }

    /// Moves the pin until the handle truly is so far past the mark.
    pub(crate) fn put_handle(&mut self, past: f64, dip: f64) {
        self.spread = (self.inboard + COLLAR) * dip.to_radians().cos() - self.seat_mark - past;
    }

    /// How much the true pitch varies from catch to finish.
    pub(crate) fn varies(&self, dip: f64) -> f64 {
        let pitches = ANGLES.map(|angle| self.pitch(angle, dip));
        let most = pitches.into_iter().fold(f64::MIN, f64::max);
        most - pitches.into_iter().fold(f64::MAX, f64::min)
    }

    /// Leans the pin in one direction until the true pitch varies by this.
    pub(crate) fn lean_until_it_varies(&mut self, by: f64, direction: f64, dip: f64) {
        let (mut least, mut most) = (0.0, 8.0);
        for _ in 0..40 {
            let lean = f64::midpoint(least, most);
            (self.aft, self.out) = (lean * direction.cos(), lean * direction.sin());
            if self.varies(dip) < by { least = lean } else { most = lean }
        }
    }
}

fn pitch(rowlock_pitch: f64, lean: Lean, angle: f64, dip: f64) -> f64 {
    let [rowlock_pitch, oar_pitch, angle, dip] = [rowlock_pitch, 0.0, angle, dip].map(Angle::deg);
    arc::pitch(Rig { rowlock_pitch, oar_pitch, lean }, angle, dip).as_deg()
}
