//! Waivers: a finding that the club lives with for a while.

use super::place::{Place, Placed};
use crate::units::Date;

/// A waiver, as written.
#[derive(Clone, Debug)]
pub struct Waiver {
    /// The place that stands for the waiver where a value is missing.
    pub place: Place,
    /// The name of the finding.
    pub finding: Option<Placed<String>>,
    /// The rule.
    pub rule: Option<Placed<String>>,
    /// Why.
    pub because: Option<Placed<String>>,
    /// Who granted it.
    pub by: Option<Placed<String>>,
    /// The last day it counts.
    pub until: Option<Placed<Date>>,
    /// The value it was granted for, in the unit of the finding.
    pub at: Option<Placed<f64>>,
}
