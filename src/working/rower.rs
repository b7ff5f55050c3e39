//! A rower as the sums see it: stature, leg and arc with their budgets, in no boat's seat.

use super::lack::Worked;
use super::tools::Tools;
use crate::model::Reading;
use crate::model::Rower;
use crate::units::Angle;
use crate::units::Length;

/// A rower with the tools that crews are measured with.
#[derive(Clone, Copy)]
pub struct RowerSight<'b> {
    /// The tools.
    pub tools: Tools<'b>,
    /// The rower.
    pub rower: &'b Rower,
}

impl RowerSight<'_> {
    /// Returns the stature, in millimetres.
    pub fn stature(&self) -> Worked {
        self.length(self.rower.stature.as_ref(), "stature")
    }

    /// Returns the inside leg, in millimetres.
    pub fn leg(&self) -> Worked {
        self.length(self.rower.leg.as_ref(), "leg")
    }

    /// Returns the oar angle at the catch as measured; to the catch positive, in degrees.
    pub fn catch(&self) -> Worked {
        self.angle(self.rower.arc.catch.as_ref(), "arc/catch", "oar angle rowed at the catch")
    }

    /// Returns the oar angle at the finish as measured; abaft square it is below zero, in degrees.
    pub fn finish(&self) -> Worked {
        let finish = self.rower.arc.finish.as_ref();
        let finish = self.angle(finish, "arc/finish", "oar angle rowed at the finish")?;
        Ok(finish.scaled(-1.0))
    }

    fn length(&self, reading: Option<&Reading<Length>>, what: &'static str) -> Worked {
        self.tools.length(reading, what, what)
    }

    fn angle(&self, reading: Option<&Reading<Angle>>, field: &str, what: &'static str) -> Worked {
        self.tools.angle(reading, field, what)
    }
}
