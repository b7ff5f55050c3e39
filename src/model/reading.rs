//! A value that was read at the boat, once or several times, with a tool.

use super::Place;
use crate::units::Length;

/// What a value was read with. How finely each reads is the club's to say.
#[derive(Clone, Copy, Debug, Eq, Hash, Ord, PartialEq, PartialOrd)]
pub enum Tool {
    /// Callipers.
    Callipers,
    /// A rule held against a line.
    Rule,
    /// A plumb bob over a mark.
    Bob,
    /// A tape.
    Tape,
    /// A spirit level or another level that shows an angle.
    Level,
    /// The angle an oar was laid at, in plan.
    OarAngle,
    /// The dip of an oar, blade at rowing height.
    Dip,
    /// Scales.
    Scales,
}

impl Tool {
    /// The tools whose fineness a club states, by their keys.
    pub const STATED: [(Self, &'static str); 7] = [
        (Self::Callipers, "callipers"),
        (Self::Rule, "rule"),
        (Self::Bob, "bob"),
        (Self::Tape, "tape"),
        (Self::Level, "level"),
        (Self::OarAngle, "oar-angle"),
        (Self::Dip, "dip"),
    ];

    /// Returns the tool as one would say it: "with …".
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Callipers => "callipers",
            Self::Rule => "the rule",
            Self::Bob => "the plumb bob",
            Self::Tape => "the tape",
            Self::Level => "the level",
            Self::OarAngle => "the oar-angle mark",
            Self::Dip => "the dip of the oar",
            Self::Scales => "the scales",
        }
    }
}

impl Reading<Length> {
    /// Returns the mean of the readings taken, in millimetres.
    #[must_use]
    pub fn mean(&self) -> f64 {
        let sum: f64 = self.values.iter().map(|value| value.as_mm()).sum();
        sum / self.values.len() as f64
    }
}

/// A value as it was read.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading<T> {
    /// Every reading taken; at least one.
    pub values: Vec<T>,
    /// How finely it was read, where the reading says so itself.
    pub to: Option<T>,
    /// What it was read with.
    pub tool: Tool,
    /// Where it was written.
    pub place: Place,
}
