//! The cold bends of each part of a boat over the years. Knows no limit.

use super::sight::BoatSight;
use crate::model::Bend;
use crate::model::BentPart;

/// The bends of one part of one seat, in the order of their days.
#[derive(Clone, Debug)]
pub struct Bent<'b> {
    /// The seat's number.
    pub seat: u32,
    /// The part.
    pub part: BentPart,
    /// Its bends.
    pub bends: Vec<&'b Bend>,
}

impl Bent<'_> {
    /// Returns the degrees of all bends that have them, whichever way each was bent.
    #[must_use]
    pub fn in_all(&self) -> f64 {
        let degrees = self.bends.iter().filter_map(|bend| bend.angle);
        degrees.map(|angle| angle.value.abs().as_deg()).sum()
    }

    /// Returns how many bends have no degrees.
    #[must_use]
    pub fn unknown(&self) -> usize {
        self.bends.iter().filter(|bend| bend.angle.is_none()).count()
    }
}

impl<'b> BoatSight<'b> {
    /// Returns every part that was bent, with its bends.
    #[must_use]
    pub fn bent(&self) -> Vec<Bent<'b>> {
        let mut parts: Vec<Bent> = Vec::new();
        for bend in &self.boat.bends {
            let (Some(seat), Some(part)) = (bend.seat, bend.part) else { continue };
            let (seat, part) = (seat.value, part.value);
            match parts.iter_mut().find(|held| held.seat == seat && held.part == part) {
                Some(held) => held.bends.push(bend),
                None => parts.push(Bent { seat, part, bends: vec![bend] }),
            }
        }
        for part in &mut parts {
            part.bends.sort_by_key(|bend| bend.date.map(|date| date.value));
        }
        parts
    }
}
