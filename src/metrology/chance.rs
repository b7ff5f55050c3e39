//! How likely the true value lies beyond a limit, taking its error as normally distributed.
//! Knows no verdict: no rule turns on a chance.

use crate::metrology::decision;
use crate::metrology::decision::Bounds;
use crate::metrology::decision::Verdict;

/// Returns the chance, 0 to 1, that the true value lies beyond either limit.
///
/// # Formula
///
/// With `Q` the upper tail of the normal distribution,
///
/// ```text
/// chance = Q((value - least) / u) + Q((most - value) / u)      Q(z) = erfc(z / sqrt(2)) / 2
/// ```
///
/// With `u = 0` it is 0 or 1; when a number is not one (NaN), 1.
///
/// # Accuracy
///
/// Some 1e-13 of the chance itself, far into the tail too. The sum of many
/// rectangular inputs is only near to normal; a single one is not.
///
/// # Source
///
/// JCGM 106:2012, 7.2 to 7.4 (clause numbers from memory).
///
/// # Example
///
/// ```
/// use tholebook::metrology::chance;
/// use tholebook::metrology::decision::Bounds;
///
/// let at_most_10 = Bounds { least: None, most: Some(10.0) };
/// assert_eq!(format!("{:.4}", chance::beyond(9.0, 0.5, at_most_10)), "0.0228");
/// ```
#[must_use]
pub fn beyond(value: f64, standard_uncertainty: f64, bounds: Bounds) -> f64 {
    if standard_uncertainty <= 0.0 {
        let within = decision::ordinary(value, 0.0, bounds) == Verdict::Within;
        return if within { 0.0 } else { 1.0 };
    }
    let under =
        bounds.least.map_or(0.0, |least| upper_tail((value - least) / standard_uncertainty));
    let over = bounds.most.map_or(0.0, |most| upper_tail((most - value) / standard_uncertainty));
    // `min` gives the number when the other is NaN, so NaN comes out as certainly beyond.
    (under + over).min(1.0)
}

/// Returns how far inside a single limit a value must stay for the chance of its true value
/// lying beyond to be `chance`, or `None` when that is not above 0 and below 1. Negative for
/// chances above a half.
///
/// # Formula
///
/// The inverse of [`beyond`] for one limit: `z * u` with `Q(z) = chance`, found by halving.
///
/// # Source
///
/// JCGM 106:2012, 8.3.2, guard band (clause number from memory).
///
/// # Example
///
/// ```
/// use tholebook::metrology::chance;
///
/// let inside = chance::guard_band(0.05, 2.0).expect("between 0 and 1");
/// assert_eq!(format!("{inside:.3}"), "3.290");
/// ```
#[must_use]
pub fn guard_band(chance: f64, standard_uncertainty: f64) -> Option<f64> {
    (chance > 0.0 && chance < 1.0).then(|| upper_quantile(chance) * standard_uncertainty)
}

fn upper_tail(z: f64) -> f64 {
    libm::erfc(z / 2_f64.sqrt()) / 2.0
}

/// Returns the `z` that is exceeded with this chance, to the last bit or so.
fn upper_quantile(chance: f64) -> f64 {
    // Beyond 40 standard deviations the tail is smaller than any double.
    let (mut low, mut high) = (-40.0, 40.0);
    loop {
        let middle = (low + high) / 2.0;
        if middle <= low || middle >= high {
            return middle;
        }
        if upper_tail(middle) > chance {
            low = middle;
        } else {
            high = middle;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const AT_MOST_10: Bounds = Bounds { least: None, most: Some(10.0) };

    #[test]
    fn a_value_on_the_limit_is_beyond_it_half_the_time() {
        assert!((beyond(10.0, 0.3, AT_MOST_10) - 0.5).abs() < 1e-15);
        let at_least_10 = Bounds { least: Some(10.0), most: None };
        assert!((beyond(10.0, 0.3, at_least_10) - 0.5).abs() < 1e-15);
    }

    /// Source: the normal distribution holds 68.27 % within one standard deviation.
    #[test]
    fn both_limits_count() {
        let band = Bounds { least: Some(9.0), most: Some(11.0) };
        assert!((beyond(10.0, 1.0, band) - 0.317_310_5).abs() < 1e-7);
    }

    #[test]
    fn an_exact_value_is_within_or_beyond() {
        assert!(beyond(10.0, 0.0, AT_MOST_10) < 1e-300);
        assert!(beyond(10.1, 0.0, AT_MOST_10) > 0.999_999);
    }

    #[test]
    fn no_number_is_certainly_beyond() {
        for (value, u) in [(f64::NAN, 1.0), (1.0, f64::NAN), (f64::NAN, 0.0)] {
            assert!(beyond(value, u, AT_MOST_10) > 0.999_999, "{value} ± {u}");
        }
        let lost = Bounds { least: Some(f64::NAN), most: Some(10.0) };
        assert!(beyond(1.0, 1.0, lost) > 0.999_999);
    }

    #[test]
    fn without_a_limit_nothing_is_beyond() {
        assert!(beyond(1e9, 1.0, Bounds::default()) < 1e-300);
    }

    #[test]
    fn no_guard_band_gives_certainty() {
        for chance in [0.0, 1.0, -0.1, 1.1, f64::NAN] {
            assert_eq!(guard_band(chance, 1.0), None, "{chance}");
        }
    }

    #[test]
    fn an_even_chance_needs_no_guard_band() {
        let band = guard_band(0.5, 1.0).expect("between 0 and 1");
        assert!(band.abs() < 1e-15, "{band}");
    }

    /// The quantile is bracketed widely enough for the smallest chance there is.
    #[test]
    fn the_smallest_chance_has_a_guard_band() {
        let smallest = f64::from_bits(1);
        let z = guard_band(smallest, 1.0).expect("between 0 and 1");
        assert!(z > 38.0 && z < 39.0, "{z}");
    }
}
