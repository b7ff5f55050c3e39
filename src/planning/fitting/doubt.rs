//! A value with everything it may be out by: readings, what is assumed of all, what sets one rower
//! apart. Knows no boat.

use super::assumed::Assumed;
use crate::model::Place;
use crate::working::Budget;
use crate::working::Input;

/// Why a value may be out. What two rowers share cancels in their difference.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Cause {
    /// A reading.
    Read(Input),
    /// What is assumed of every rower alike.
    OfAll(Assumed),
    /// How far one rower is from what is assumed of all.
    OfOne {
        /// Where the rower is written.
        rower: Place,
        /// What is assumed.
        what: Assumed,
    },
}

/// A value and every cause it may be out by.
pub type Doubt = crate::metrology::Budget<Cause>;

/// Returns a value that rests on readings alone.
pub(super) fn of_readings(budget: &Budget) -> Doubt {
    budget.parts().iter().fold(Doubt::exact(budget.value()), |doubt, part| {
        doubt.with_input(part.half_width, part.sensitivity, Cause::Read(part.input))
    })
}
