//! A seat seen from above: its pin, its oar, where the rower sits. Every point in millimetres, along
//! the string line to the bow, across it to port.

use super::Budget;
use super::lack::Lack;
use super::lack::Worked;
use super::lack::work;
use super::pitch::Attitude;
use super::sight::SeatSight;
use crate::geometry::arc;
use crate::geometry::plan;
use crate::units::Angle;
use crate::units::Length;

/// A point seen from above: along to the bow, across to port, in millimetres.
pub type Seen = (f64, f64);

/// An oar seen from above, at one oar angle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OarSeen {
    /// The end of the handle.
    pub handle: Seen,
    /// Where the blade begins; the pin, where the blade was not measured.
    pub neck: Option<Seen>,
    /// The blade's tip.
    pub tip: Seen,
}

impl SeatSight<'_> {
    /// Returns how far the pin stands from the stern mark, along the string.
    pub fn along(&self) -> Worked {
        self.length(self.seat.pin.along.as_ref(), "pin/along", "place of the pin")
    }

    /// Returns a point so far from the string line on the side of the oar; away from it positive.
    ///
    /// # Errors
    ///
    /// [`Lack`]: the side is not known.
    pub fn beside_string(&self, along: f64, out: f64) -> Result<Seen, Lack> {
        let (along, out) = (Length::mm(along), Length::mm(out));
        Ok(seen(plan::beside_string(along, out, self.side()?)))
    }

    /// Returns the oar at an oar angle in degrees, to the catch positive, its pin so far from the
    /// stern mark.
    ///
    /// # Errors
    ///
    /// [`Lack`]: what was not measured.
    pub fn oar_seen(&self, along: f64, theta: f64) -> Result<OarSeen, Lack> {
        let side = self.side()?;
        let spread = Length::mm(self.spread()?.value());
        let pin = plan::beside_string(Length::mm(along), spread, side);
        let dip = Angle::deg(self.at.dip()?.value());
        let (inside, outside) = self.reach()?;
        let at = |from_pin: f64| {
            seen(plan::on_oar(pin, side, Angle::deg(theta), dip, Length::mm(from_pin)))
        };
        let blade = self.oar.and_then(|oar| oar.blade.length.as_ref());
        let neck = blade.map(|blade| at(outside - blade.mean()));
        Ok(OarSeen { handle: at(-inside), neck, tip: at(outside) })
    }

    /// Returns pin to handle end and pin to blade tip, along the shaft, in millimetres.
    ///
    /// # Errors
    ///
    /// [`Lack`]: what was not measured.
    pub fn reach(&self) -> Result<(f64, f64), Lack> {
        let (collar, _) = self.collar_to_pin()?;
        let inside = work([&self.inboard()], |[inboard]| Some(inboard + collar))?;
        let lengths = [&self.oar_length(), &Ok(inside.clone())];
        let outside = work(lengths, |[length, inside]| Some(length - inside))?;
        Ok((inside.value(), outside.value()))
    }

    /// Returns the pitch that the three readings give at any oar angle in degrees, in degrees.
    ///
    /// # Errors
    ///
    /// [`Lack`]: readings that are missing, or that no pin and rowlock could give.
    pub fn pitch_along_arc(&self, thetas: &[f64]) -> Result<Vec<f64>, Lack> {
        let implied = self.arc_lean()?;
        let own = self.own_pitch()??.value();
        let angle = |budget: &Budget| Angle::deg(budget.value());
        let lean = arc::Lean { aft: angle(&implied.aft), out: angle(&implied.out) };
        let rowlock_pitch = Angle::deg(implied.rig_pitch.value() - own);
        let rig = arc::Rig { rowlock_pitch, oar_pitch: Angle::deg(own), lean };
        let dip = Angle::deg(self.at.dip()?.value());
        Ok(thetas.iter().map(|theta| arc::pitch(rig, Angle::deg(*theta), dip).as_deg()).collect())
    }

    /// Returns the oar angle of an attitude in degrees, to the catch positive: square off, nought;
    /// else where the pitch was read, else as the class rows.
    ///
    /// # Errors
    ///
    /// [`Lack`]: nobody says at what angle.
    pub fn laid_at(&self, attitude: Attitude) -> Result<f64, Lack> {
        match attitude {
            Attitude::Square => Ok(0.0),
            Attitude::Catch | Attitude::Finish => Ok(self.oar_angle(attitude)?.value()),
        }
    }
}

fn seen(point: plan::PlanPoint) -> Seen {
    (point.along.as_mm(), point.across.as_mm())
}
