//! How far the handle passes the seat mark: as read, as worked out, and past the centreline.

use super::Budget;
use super::input::Input;
use super::input::Unit;
use super::lack::Worked;
use super::lack::together;
use super::lack::work;
use super::sight::SeatSight;
use crate::geometry::handle;
use crate::geometry::level::true_past_mark;
use crate::model::Tool;
use crate::units::Angle;
use crate::units::Length;

/// How high a handle end stands above the seat where nobody measured it, in millimetres.
///
/// # Source
///
/// An illustrative figure, no published source.
const USUAL_HEIGHT: f64 = 300.0;

/// How far a boat's handles may stand from the usual height, in millimetres. From the same figure.
const HEIGHT_HALF_WIDTH: f64 = 150.0;

impl SeatSight<'_> {
    /// Returns pin to the centreline.
    pub fn spread(&self) -> Worked {
        self.length(self.seat.pin.spread.as_ref(), "pin/spread", "spread")
    }

    /// Returns the seat mark, on the far side of the centreline from the rowlock positive.
    pub fn seat_mark(&self) -> Worked {
        self.length(self.seat.seat_mark.as_ref(), "seat-mark", "seat mark")
    }

    /// Returns how far the handle passes the seat mark, as read and corrected for roll.
    ///
    /// The bob hangs from the handle end: in a rolled boat it falls to the low side by the
    /// handle's height above the seat times the tangent of the roll.
    pub fn handle_read(&self) -> Worked {
        let field = "handle-past-mark";
        let read = self.length(self.seat.handle_past_mark.as_ref(), field, "handle past mark");
        let side = self.side()?;
        let height = self.handle_height(&read)?;
        work([&read, &Ok(height), &self.at.roll()], |[read, height, roll]| {
            let [read, height] = [read, height].map(Length::mm);
            Some(true_past_mark(read, height, Angle::deg(roll), side).as_mm())
        })
    }

    /// Returns pin to the middle of the rower's place, across the boat, in millimetres.
    pub fn pin_to_seat_mark(&self) -> Worked {
        work([&self.spread(), &self.seat_mark()], |[spread, mark]| Some(spread + mark))
    }

    /// Returns how high the hands are above the seat, the blade at rowing height, in millimetres.
    pub fn hands_above_seat(&self) -> Worked {
        let above = self.above_seat();
        work([&above, &self.hand_lever(), &self.at.dip()], |[above, lever, dip]| {
            Some(above + lever * Angle::deg(dip).sin())
        })
    }

    /// Returns how high the rowlock's bed is above the seat.
    fn above_seat(&self) -> Worked {
        let above = self.seat.rowlock.above_seat.as_ref();
        self.length(above, "rowlock/above-seat", "rowlock above seat")
    }

    /// Returns the height of the handle end above the seat. Not measured, it is an input of its
    /// own, as uncertain as boats are different.
    fn handle_height(&self, read: &Worked) -> Worked {
        let inputs = [&self.above_seat(), &self.inboard(), &self.collar(), &self.at.dip()];
        let risen = work(inputs, |[above, inboard, collar, dip]| {
            Some(above + (inboard + collar) * Angle::deg(dip).sin())
        });
        risen.or_else(|_| {
            let [read] = together([read])?;
            let place = read.parts().first().map(|part| part.input.place);
            let (what, tool) = ("height of the handle above the seat", Tool::Tape);
            let value = USUAL_HEIGHT;
            let input = |place| Input { place, what, tool, value, unit: Unit::Mm };
            Ok(place.map_or_else(
                || Budget::exact(value),
                |place| Budget::reading(value, HEIGHT_HALF_WIDTH, input(place)),
            ))
        })
    }

    /// Returns how far the handle passes the seat mark, from inboard, spread, seat mark and dip.
    pub fn handle_computed(&self) -> Worked {
        let mark = self.seat_mark();
        let inputs = [&self.inboard(), &self.collar(), &self.spread(), &mark, &self.at.dip()];
        work(inputs, |[inboard, collar, spread, mark, dip]| {
            let [inboard, collar, spread, mark] = [inboard, collar, spread, mark].map(Length::mm);
            Some(handle::past_mark(inboard, collar, spread, mark, Angle::deg(dip)).as_mm())
        })
    }

    /// The collar's bearing face to the pin, as it stands.
    fn collar(&self) -> Worked {
        let (collar, place) = self.collar_to_pin()?;
        Ok(self.at.as_it_stands(collar, place, "collar to pin"))
    }

    /// Returns how far the handle passes the centreline, from inboard, spread and dip.
    pub fn overlap(&self) -> Worked {
        let (collar, _) = self.collar_to_pin()?;
        work([&self.inboard(), &self.spread(), &self.at.dip()], |[inboard, spread, dip]| {
            let [inboard, collar, spread] = [inboard, collar, spread].map(Length::mm);
            Some(handle::past_centreline(inboard, collar, spread, Angle::deg(dip)).as_mm())
        })
    }

    /// Returns back chock to pin.
    pub fn chock_to_pin(&self) -> Worked {
        self.length(self.seat.chock_to_pin.as_ref(), "chock-to-pin", "back chock to pin")
    }

    /// Returns how far the after horn's tip stands to the stern of its shank.
    pub fn after_tip(&self) -> Worked {
        let tip = self.seat.rowlock.after_tip.as_ref();
        self.length(tip, "rowlock/after-tip", "tip of the after horn")
    }
}
