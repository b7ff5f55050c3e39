//! A number without a unit: a gearing, a part of a diameter, a count.

use super::figure::Unit;
use super::quantity;

/// A number without a unit.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Ratio(f64);

quantity!(Ratio, "", 3);

impl Ratio {
    /// A ratio has no unit, but for a part of a hundred, which may say so.
    pub const UNITS: &'static [Unit] = &[Unit::ten("", 0), Unit::ten("%", 0)];

    /// Returns the number.
    #[must_use]
    pub const fn value(self) -> f64 {
        self.0
    }
}
