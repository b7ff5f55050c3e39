//! Lengths, angles, slopes and weights: finite always; how they are read and printed.
//!
//! Knows no boats and no files. Every comparison with NaN is false, so a NaN would pass each
//! safety check unseen: a quantity that is not finite can't be made.

mod angle;
mod date;
mod figure;
mod length;
mod number;
mod ratio;
mod slope;
mod weight;

pub use angle::Angle;
pub use date::{Date, NotADate};
pub use figure::{Figure, FigureFault, Unit};
pub use length::Length;
pub use number::NumberFault;
pub use ratio::Ratio;
pub use slope::Slope;
pub use weight::Weight;

/// A number from outside was infinite or not a number.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[error("expected a finite number, found {0}")]
pub struct NotFinite(pub f64);

/// Writes the parts that every quantity of one number shares.
macro_rules! quantity {
    ($name:ident, $symbol:literal, $places:literal) => {
        impl $name {
            /// Reads a number, alone or with a unit, and keeps how it was written.
            ///
            /// # Errors
            ///
            /// [`FigureFault`](crate::units::FigureFault): the number, or its unit.
            pub fn figure(text: &str) -> Result<crate::units::Figure, crate::units::FigureFault> {
                crate::units::figure::figure(text, Self::UNITS)
            }

            /// Reads a number, alone or with a unit.
            ///
            /// # Errors
            ///
            /// [`FigureFault`](crate::units::FigureFault): the number, or its unit.
            pub fn read(text: &str) -> Result<Self, crate::units::FigureFault> {
                Self::figure(text).map(|figure| Self(figure.value))
            }

            /// Returns the size without its sign.
            #[must_use]
            pub const fn abs(self) -> Self {
                Self(self.0.abs())
            }
        }

        impl TryFrom<f64> for $name {
            type Error = crate::units::NotFinite;

            fn try_from(value: f64) -> Result<Self, Self::Error> {
                if value.is_finite() {
                    Ok(Self(value))
                } else {
                    Err(crate::units::NotFinite(value))
                }
            }
        }

        impl std::ops::Neg for $name {
            type Output = Self;

            fn neg(self) -> Self {
                Self(-self.0)
            }
        }

        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                let places = f.precision().unwrap_or($places);
                write!(f, "{:.places$} {}", self.0, $symbol)
            }
        }
    };
}
pub(crate) use quantity;
