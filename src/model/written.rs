//! Every value as it stands in the book: its name, its place, and what it says.
//!
//! A value here is compared with itself at another time, so it is kept free of how it was
//! written: `600` and `60 cm` say the same, and so do `11` and `11.0`.

use super::name::Name;
use super::place::Place;
use crate::units::Slope;

/// One value that stands in the book. A reading taken several times stands there as often, under
/// one name, in the order of the list.
#[derive(Clone, Debug, PartialEq)]
pub struct Written {
    /// Its name.
    pub name: Name,
    /// Where it stands.
    pub place: Place,
    /// What it says.
    pub said: Said,
}

/// What a value says.
#[derive(Clone, Debug, PartialEq)]
pub enum Said {
    /// What could not be read; that has been told.
    Unread,
    /// A figure, in the unit of a bare number.
    Figure {
        /// The figure.
        value: f64,
        /// What it is a figure of.
        of: Quantity,
    },
    /// A slope.
    Slope(Slope),
    /// A word, an id, a day, a text.
    Text(Box<str>),
}

/// What a figure is a figure of.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum Quantity {
    /// A length, in millimetres.
    Length,
    /// An angle, in degrees.
    Angle,
    /// A weight, in kilograms.
    Weight,
    /// A number without a unit.
    Ratio,
    /// A count.
    Count,
}

impl Quantity {
    /// Returns the unit of a bare number, as it is written; nothing where there is none.
    #[must_use]
    pub const fn unit(self) -> &'static str {
        match self {
            Self::Length => "mm",
            Self::Angle => "deg",
            Self::Weight => "kg",
            Self::Ratio | Self::Count => "",
        }
    }
}
