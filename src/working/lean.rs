//! The lean of a pin by the plumb bob, corrected for the boat's level.

use super::Budget;
use super::lack::Lack;
use super::lack::Worked;
use super::lack::work;
use super::sight::SeatSight;
use crate::geometry::arc::Lean;
use crate::geometry::level::true_lean;
use crate::geometry::reading::slope_from_offset;
use crate::model::Reading;
use crate::units::Angle;
use crate::units::Length;
use crate::units::Slope;

impl SeatSight<'_> {
    /// Returns the plumbed lean to the stern, corrected for level, in degrees.
    pub fn lean_aft(&self) -> Worked {
        let aft = self.plumbed(self.seat.pin.lean.aft.as_ref(), "pin/lean/aft", "lean aft");
        let side = self.side()?;
        work([&aft, &self.at.trim()], |[aft, trim]| {
            let apparent = Lean { aft: Angle::deg(aft), out: Angle::deg(0.0) };
            let level = Angle::deg(0.0);
            Some(true_lean(apparent, Angle::deg(trim), level, side).aft.as_deg())
        })
    }

    /// Returns the plumbed lean away from the centreline, corrected for level, in degrees.
    pub fn lean_out(&self) -> Worked {
        let out = self.plumbed(self.seat.pin.lean.out.as_ref(), "pin/lean/out", "lean out");
        let side = self.side()?;
        work([&out, &self.at.roll()], |[out, roll]| {
            let apparent = Lean { aft: Angle::deg(0.0), out: Angle::deg(out) };
            let level = Angle::deg(0.0);
            Some(true_lean(apparent, level, Angle::deg(roll), side).out.as_deg())
        })
    }

    pub(super) fn plumbed(
        &self,
        reading: Option<&Reading<Slope>>,
        field: &str,
        what: &'static str,
    ) -> Worked {
        let reading = reading.ok_or_else(|| Lack::of(field))?;
        let gauge = self.at.boat.rigged.pin_gauge;
        let gauge = gauge.map(|gauge| {
            let (value, place) = (gauge.value.as_mm(), gauge.place);
            self.at.as_it_stands(value, place, "pin gauge")
        });
        self.slope(reading, what, &gauge.ok_or_else(|| Lack::of("rigged/pin-gauge")))
    }

    fn slope(&self, reading: &Reading<Slope>, what: &'static str, gauge: &Worked) -> Worked {
        let over = |over: &Worked| {
            work([&self.at.tools.offset(reading, what), over], |[offset, over]| {
                slope_from_offset(Length::mm(offset), Length::mm(over)).ok().map(Angle::as_deg)
            })
        };
        match reading.values.first() {
            Some(Slope::Angle(_)) => self.at.tools.slope_angle(reading, what),
            Some(Slope::Over { down, .. }) => over(&Ok(Budget::exact(down.as_mm()))),
            _ => over(gauge),
        }
    }
}
