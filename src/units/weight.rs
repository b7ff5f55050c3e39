//! A weight.

use super::figure::Unit;
use super::quantity;

/// A weight, kept in kilograms.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Weight(f64);

quantity!(Weight, "kg", 1);

impl Weight {
    /// What a weight may be written in; a bare number is in the first.
    pub const UNITS: &'static [Unit] = &[Unit::ten("kg", 0)];

    /// Returns the number of kilograms.
    #[must_use]
    pub const fn as_kg(self) -> f64 {
        self.0
    }
}
