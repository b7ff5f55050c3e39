//! What the sides of a boat do against each other.

use super::Budget;
use super::lack::Lack;
use super::lack::Worked;
use super::lack::together;
use super::lack::work;
use super::pitch::Attitude;
use super::sight::BoatSight;
use super::sight::SeatSight;
use crate::geometry::Side;
use crate::geometry::gearing::Levers;
use crate::geometry::sides::WorkingOar;
use crate::geometry::sides::tip_index;
use crate::units::Angle;
use crate::units::Length;

impl BoatSight<'_> {
    /// Returns the mean pitch on port less the mean pitch on starboard, square off, in degrees.
    ///
    /// Trim takes part on both sides alike and cancels; roll has no part in a blade square off.
    /// Blades that the hands set are left out.
    pub fn side_difference(&self) -> Worked {
        let port = self.mean_pitch(Side::Port)?;
        Ok(port.minus(&self.mean_pitch(Side::Starboard)?))
    }

    fn mean_pitch(&self, side: Side) -> Worked {
        let on_side = |seat: &SeatSight| seat.seat.side.is_some_and(|own| own.value == side);
        let set = |seat: &SeatSight| !seat.hands_set_pitch();
        let pitch = |seat: SeatSight| {
            let name = seat.name();
            seat.pitch_beside_others().map_err(|_| Lack::of(format!("{name}/pitch/square")))
        };
        let pitches: Vec<Budget> =
            self.seats().filter(on_side).filter(set).map(pitch).collect::<Result<_, _>>()?;
        Budget::mean(&pitches).ok_or_else(|| Lack::of("pitch/square of one side"))
    }

    /// Returns how strongly unequal blades roll the boat: roll moment over handle force, with all
    /// oars square off and pulled alike, in metres; the port side up is positive.
    pub fn tip_index(&self) -> Worked {
        let mut whole = Budget::exact(0.0);
        for seat in self.seats() {
            whole = whole.plus(&seat.tip_index()?);
        }
        if self.boat.seats.is_empty() { Err(Lack::of("seats")) } else { Ok(whole) }
    }
}

impl SeatSight<'_> {
    fn tip_index(&self) -> Worked {
        let side = self.side()?;
        let (hand, blade) = self.levers()?;
        let pitch = self.pitch(Attitude::Square);
        let spread = self.spread();
        together([&hand, &blade, &pitch, &spread])?;
        work(
            [&hand, &blade, &pitch, &spread, &self.at.dip()],
            |[hand, blade, pitch, spread, dip]| {
                let [hand, blade, spread] = [hand, blade, spread].map(Length::mm);
                let [pitch, dip, theta] = [pitch, dip, 0.0].map(Angle::deg);
                let levers = Levers { hand, blade };
                let ahead = Length::mm(0.0);
                let oar = WorkingOar { side, spread, ahead, levers, theta, pitch, dip };
                tip_index(&[oar]).ok()
            },
        )
    }
}
