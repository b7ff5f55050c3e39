//! One reading as it goes into a sum: where it was written, with what it was read, what it is.

use crate::model::Place;
use crate::model::Tool;

/// What a number is a number of.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum Unit {
    /// Millimetres.
    Mm,
    /// Degrees.
    Deg,
    /// Kilograms.
    Kg,
    /// Parts of a hundred.
    Percent,
    /// How many times.
    Times,
    /// Days.
    Days,
    /// Nothing.
    None,
}

impl Unit {
    /// Returns the unit as it is shown.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Mm => "mm",
            Self::Deg => "deg",
            Self::Kg => "kg",
            Self::Percent => "%",
            Self::Times => "times",
            Self::Days => "days",
            Self::None => "",
        }
    }
}

/// One reading that takes part in a sum. Two inputs that are equal are one and the same reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Input {
    /// Where it was written.
    pub place: Place,
    /// What it is, in a few words.
    pub what: &'static str,
    /// What it was read with.
    pub tool: Tool,
    /// The reading, in its own unit.
    pub value: f64,
    /// Its unit.
    pub unit: Unit,
}
