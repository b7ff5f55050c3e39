//! What a rowlock leaves beside the shaft: clearance, looseness, and clearance in a roll.

use super::Budget;
use super::lack::Lack;
use super::lack::Worked;
use super::lack::work;
use super::oar::OarSight;
use super::sight::BoatSight;
use super::sight::SeatSight;
use crate::geometry::clearance;
use crate::model::LimitKey;
use crate::model::Oar;
use crate::model::Part;
use crate::units::Angle;
use crate::units::Length;

/// How far round the oar is turned when it lies along the boat.
const ALONG: f64 = 90.0;

impl BoatSight<'_> {
    /// Returns the widest section of an oar's shaft.
    pub fn widest(&self, oar: &Oar) -> Worked {
        OarSight { tools: self.tools, oar }.widest()
    }
}

impl SeatSight<'_> {
    /// Returns the gap between the horns.
    pub fn gap(&self) -> Worked {
        self.length(self.seat.rowlock.gap.as_ref(), "rowlock/gap", "gap between the horns")
    }

    /// Returns the height of the lower horn, bed to tip.
    pub fn horn(&self) -> Worked {
        self.length(self.seat.rowlock.horn.as_ref(), "rowlock/horn", "height of the horn")
    }

    /// Returns the widest section of the seat's oar.
    pub fn widest(&self) -> Worked {
        self.oar_sight()?.widest()
    }

    /// Returns the narrowest section of the seat's oar.
    pub fn narrowest(&self) -> Worked {
        self.oar_sight()?.narrowest()
    }

    /// Returns the gap less the widest section of the seat's oar, in millimetres.
    pub fn clearance(&self) -> Worked {
        work([&self.gap(), &self.widest()], gap_less)
    }

    /// Returns the gap less the widest section of another oar, in millimetres.
    pub fn clearance_of(&self, oar: &Oar) -> Worked {
        work([&self.gap(), &self.at.widest(oar)], gap_less)
    }

    /// Returns the gap less the narrowest section of the seat's oar, in millimetres.
    pub fn looseness(&self) -> Worked {
        work([&self.gap(), &self.narrowest()], gap_less)
    }

    /// Returns what is left of the gap when the shaft is lifted straight out in a roll, the oar
    /// lying along the boat: the worst of every oar angle, in millimetres.
    pub fn clearance_in_roll(&self) -> Worked {
        self.clearance_in_roll_at(&Ok(Budget::exact(ALONG)))
    }

    /// Returns what is left of the gap in a roll at one oar angle, in millimetres.
    ///
    /// The wall is what stands of the lower horn above the middle of the shaft.
    pub fn clearance_in_roll_at(&self, oar_angle: &Worked) -> Worked {
        let roll = self.at.in_force.limit(LimitKey::Roll, Part::Most);
        let roll = Angle::deg(roll.ok_or_else(|| Lack::of("limit roll"))?.value);
        let horn =
            self.length(self.seat.rowlock.horn.as_ref(), "rowlock/horn", "height of the horn");
        let inputs = [&self.gap(), &self.widest(), &horn, oar_angle, &self.at.dip()];
        work(inputs, |[gap, widest, horn, angle, dip]| {
            let wall = Length::mm((horn - widest / 2.0).max(0.0));
            let [gap, widest] = [gap, widest].map(Length::mm);
            let [angle, dip] = [angle, dip].map(Angle::deg);
            Some(clearance::clearance_in_roll(gap, widest, wall, roll, angle, dip).as_mm())
        })
    }
}

fn gap_less([gap, section]: [f64; 2]) -> Option<f64> {
    Some(clearance::clearance(Length::mm(gap), Length::mm(section)).as_mm())
}
