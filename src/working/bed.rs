//! How deep a round shaft lies in the bed of its rowlock.

use super::lack::Worked;
use super::lack::work;
use super::sight::SeatSight;
use crate::geometry::bedding;
use crate::units::Length;

impl SeatSight<'_> {
    /// Returns the depth in the bed as a part of the shaft's diameter, from the width of the mark.
    pub fn bed_fraction(&self) -> Worked {
        let mark =
            self.length(self.seat.oar_bed.as_ref(), "oar-bed", "width of the mark in the bed");
        let round = self.of_oar(
            |oar| oar.shaft.round.as_ref().or(oar.shaft.widest()),
            "shaft/round",
            "diameter of the shaft",
        );
        work([&round, &mark], |figures| {
            let [round, mark] = figures.map(Length::mm);
            let depth = bedding::depth_from_chord(round, mark).ok()?;
            Some(depth.as_mm() / round.as_mm())
        })
    }
}
