//! The worked-out values that a seat's record may state, and what the readings give for each.

use super::input::Unit;
use super::lack::Worked;
use super::pitch::Attitude;
use super::sight::SeatSight;
use crate::model::Placed;
use crate::model::Stated;

/// One worked-out value.
pub struct Sum {
    /// Its key under `worked-out`.
    pub key: &'static str,
    /// What the record states.
    pub stated: Option<Placed<Stated>>,
    /// What the readings give.
    pub worked: Worked,
    /// The unit of both.
    pub unit: Unit,
}

impl SeatSight<'_> {
    /// Returns every worked-out value of the seat, in the order they are written.
    #[must_use]
    pub fn sums(&self) -> [Sum; 6] {
        let out = &self.seat.worked_out;
        let sum = |key, stated, worked, unit| Sum { key, stated, worked, unit };
        [
            sum("pitch", out.pitch, self.pitch(Attitude::Square), Unit::Deg),
            sum("handle-past-mark", out.handle_past_mark, self.handle_computed(), Unit::Mm),
            sum("gearing", out.gearing, self.gearing(), Unit::None),
            sum("clearance", out.clearance, self.clearance(), Unit::Mm),
            sum("lean-aft", out.lean_aft, self.lean_aft(), Unit::Deg),
            sum("lean-out", out.lean_out, self.lean_out(), Unit::Deg),
        ]
    }
}
