//! An angle.

use super::figure::Unit;
use super::quantity;

/// An angle, kept in degrees.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Angle(f64);

quantity!(Angle, "deg", 2);

impl Angle {
    /// What an angle may be written in; a bare number is in the first.
    pub const UNITS: &'static [Unit] = &[Unit::ten("deg", 0), Unit::ten("°", 0)];

    /// Wraps a number of degrees known to be finite.
    ///
    /// # Panics
    ///
    /// If `degrees` is infinite or NaN. For numbers from a file use `try_from`.
    #[must_use]
    pub const fn deg(degrees: f64) -> Self {
        assert!(degrees.is_finite(), "an angle must be finite");
        Self(degrees)
    }

    /// Wraps a number of radians known to be finite.
    ///
    /// # Panics
    ///
    /// If `radians` is infinite or NaN.
    #[must_use]
    pub fn rad(radians: f64) -> Self {
        Self::deg(radians.to_degrees())
    }

    /// Returns the number of degrees.
    #[must_use]
    pub const fn as_deg(self) -> f64 {
        self.0
    }

    /// Returns the number of radians.
    #[must_use]
    pub const fn as_rad(self) -> f64 {
        self.0.to_radians()
    }

    /// Returns the sine.
    #[must_use]
    pub fn sin(self) -> f64 {
        self.as_rad().sin()
    }

    /// Returns the cosine.
    #[must_use]
    pub fn cos(self) -> f64 {
        self.as_rad().cos()
    }

    /// Returns the tangent.
    #[must_use]
    pub fn tan(self) -> f64 {
        self.as_rad().tan()
    }
}
