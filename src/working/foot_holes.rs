//! Where the foot brace can be: the holes, from the back chock.

use super::lack::Lack;
use super::lack::Worked;
use super::lack::work;
use super::sight::BoatSight;

/// More holes than any boat has: a figure above it is a slip.
const MOST: u32 = 100;

impl BoatSight<'_> {
    /// Returns the numbers of the foot holes, 1 nearest the seat.
    pub fn foot_holes(&self) -> Result<Vec<u32>, Lack> {
        let count = self.boat.foot_holes.count.map(|count| count.value);
        let first = self.foot_hole(1);
        let Some(count) = count else {
            let others = first.err().map(|lack| lack.missing().to_vec()).unwrap_or_default();
            return Err(Lack::NotMeasured([vec!["foot-holes/count".to_owned()], others].concat()));
        };
        first?;
        if count > MOST {
            return Err(Lack::Impossible("no boat has more than 100 foot holes"));
        }
        if count == 0 {
            return Err(Lack::Impossible("the boat has no foot holes"));
        }
        Ok((1..=count).collect())
    }

    /// Returns back chock to the foot brace in a hole, in millimetres, for a chock where the holes
    /// were measured from.
    pub fn foot_hole(&self, number: u32) -> Worked {
        let holes = &self.boat.foot_holes;
        let first = self.length(holes.first.as_ref(), "foot-holes/first", "chock to foot hole 1");
        let apart = self.length(holes.apart.as_ref(), "foot-holes/apart", "foot holes apart");
        let further = f64::from(number.saturating_sub(1));
        work([&first, &apart], |[first, apart]| Some(first + further * apart))
    }
}
