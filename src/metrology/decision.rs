//! What may be said of an uncertain value against a limit. Knows neither what was measured nor
//! what to do about it.
//!
//! ```text
//!                         most
//!               inside      |      beyond
//!   ------------------------+------------------------>  value
//!                  |<- U -->|<- U -->|
//!   ordinary    Within      |Undecided    Beyond
//!   danger   Clear |     NotShown    |    Short
//! ```
//!
//! Every comparison is written so that a number that is not one (NaN) falls on the worse side.

/// Figures closer than this are the same figure. It takes up the rounding of binary numbers
/// (64.1 - 59.1 comes to a little less than 5) and is no tolerance: no tool reads so fine.
pub const GRAIN: f64 = 1e-9;

/// By how much wider than U a difference is judged when its two values were picked as the highest
/// and the lowest of several: any of four pairs may be the one that errs, so each may in 1.25 %, not
/// in 2.5 %. That is 2.24 standard uncertainties instead of 2.
///
/// # Source
///
/// The Bonferroni inequality for four pairs, two values against two; normal distribution.
pub const PICKED: f64 = 1.12;

/// The least and the most a value may be; a side left out is not limited.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Bounds {
    /// The least it may be.
    pub least: Option<f64>,
    /// The most it may be.
    pub most: Option<f64>,
}

/// One side of [`Bounds`].
#[derive(Clone, Copy, Debug, Eq, Hash, PartialEq)]
pub enum Bound {
    /// The lower limit.
    Least,
    /// The upper limit.
    Most,
}

/// What an ordinary limit says: a fault must be proven.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Verdict {
    /// The value itself is within the limits.
    Within,
    /// It is beyond a limit, and surely so.
    Beyond {
        /// How far beyond, above zero; NaN when a number fed in was.
        by: f64,
        /// The limit passed.
        bound: Bound,
    },
    /// It is beyond a limit, but by no more than it is good to.
    Undecided {
        /// How far beyond, above zero.
        by: f64,
        /// The limit passed.
        bound: Bound,
    },
}

/// What a danger limit says: being clear of it must be proven.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum DangerVerdict {
    /// The value is inside every limit, and surely so.
    Clear {
        /// How far inside the nearer limit; without a limit, infinite.
        by: f64,
    },
    /// It is beyond a limit, and surely so.
    Short {
        /// How far beyond, above zero.
        by: f64,
        /// The limit passed.
        bound: Bound,
    },
    /// It is not shown to be inside: measure again. A number that is not one ends here, for
    /// doubt must stop a boat and must not bend metal.
    NotShown {
        /// How far inside the limit, below zero when beyond it; NaN when a number fed in was.
        margin: f64,
        /// The limit in question.
        bound: Bound,
    },
}

/// Judges a value against an ordinary limit.
///
/// # Source
///
/// ISO 14253-1: non-conformity is proven when the value is beyond the limit by more than its
/// expanded uncertainty.
///
/// # Example
///
/// ```
/// use tholebook::metrology::decision::{self, Bound, Bounds, Verdict};
///
/// let at_most_1 = Bounds { least: None, most: Some(1.0) };
/// assert_eq!(decision::ordinary(0.9, 0.5, at_most_1), Verdict::Within);
/// let verdict = decision::ordinary(1.25, 0.5, at_most_1);
/// assert_eq!(verdict, Verdict::Undecided { by: 0.25, bound: Bound::Most });
/// ```
#[must_use]
pub fn ordinary(value: f64, expanded: f64, bounds: Bounds) -> Verdict {
    let Some((by, bound)) = beyond(value, expanded, bounds) else { return Verdict::Within };
    if by <= GRAIN {
        Verdict::Within
    } else if by <= expanded + GRAIN {
        Verdict::Undecided { by, bound }
    } else {
        Verdict::Beyond { by, bound }
    }
}

/// Judges a value against a danger limit: the burden of proof is reversed.
///
/// # Source
///
/// ISO 14253-1, the rule for proving conformity: the value must be inside the limit by at least
/// its expanded uncertainty.
///
/// # Example
///
/// ```
/// use tholebook::metrology::decision::{self, Bound, Bounds, DangerVerdict};
///
/// let at_least_5 = Bounds { least: Some(5.0), most: None };
/// assert_eq!(decision::danger(7.0, 1.5, at_least_5), DangerVerdict::Clear { by: 2.0 });
/// let verdict = decision::danger(6.0, 1.5, at_least_5);
/// assert_eq!(verdict, DangerVerdict::NotShown { margin: 1.0, bound: Bound::Least });
/// ```
#[must_use]
pub fn danger(value: f64, expanded: f64, bounds: Bounds) -> DangerVerdict {
    let Some((by, bound)) = beyond(value, expanded, bounds) else {
        return DangerVerdict::Clear { by: f64::INFINITY };
    };
    let margin = -by;
    if margin >= expanded - GRAIN {
        DangerVerdict::Clear { by: margin }
    } else if by > expanded + GRAIN {
        DangerVerdict::Short { by, bound }
    } else {
        DangerVerdict::NotShown { margin, bound }
    }
}

/// Returns whether two values that should be one differ by more than `expanded`, the expanded
/// uncertainty of their difference.
#[must_use]
pub fn disagrees(difference: f64, expanded: f64) -> bool {
    let agrees = difference.abs() <= expanded + GRAIN;
    !agrees
}

/// Returns whether a value good to ± `expanded` is too coarse to be judged by these limits,
/// whatever it is: coarser than half the band between two limits, or than a single limit is
/// large. A single limit of 0 is a place, not a size; no tool is called too coarse for it.
#[must_use]
pub fn tool_too_coarse(expanded: f64, bounds: Bounds) -> bool {
    let room = match (bounds.least, bounds.most) {
        (Some(least), Some(most)) => (most - least) / 2.0,
        (Some(single), None) | (None, Some(single)) if single != 0.0 => single.abs(),
        _ => return false,
    };
    let fine_enough = expanded <= room + GRAIN;
    !fine_enough
}

/// Returns how far the value is beyond the limit it does worst against, negative inside, and
/// that limit. NaN in any number comes out, so that no comparison with it is true.
fn beyond(value: f64, expanded: f64, bounds: Bounds) -> Option<(f64, Bound)> {
    let least = bounds.least.map(|least| (least - value, Bound::Least));
    let most = bounds.most.map(|most| (value - most, Bound::Most));
    let (by, bound) = match (least, most) {
        (Some(low), Some(high)) if low.0.is_nan() || low.0 > high.0 => low,
        (Some(_), Some(high)) => high,
        (low, high) => low.or(high)?,
    };
    Some((if expanded.is_nan() { f64::NAN } else { by }, bound))
}
