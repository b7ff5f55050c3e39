//! Keeps a computed number finite; knows nothing of what it means.

use crate::units::Angle;
use crate::units::Length;

/// Returns an angle; an overflow stays at the largest number there is.
pub(super) fn degrees(value: f64) -> Angle {
    Angle::deg(held(value))
}

/// Returns a length; an overflow stays at the largest number there is.
pub(super) fn millimetres(value: f64) -> Length {
    Length::mm(held(value))
}

/// Returns a plain number; an overflow stays at the largest number there is.
pub(super) fn held(value: f64) -> f64 {
    if value.is_nan() {
        // The least number, because a clearance then fails.
        return -f64::MAX;
    }
    value.clamp(-f64::MAX, f64::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_overflow_stays_at_the_largest_number() {
        assert!(degrees(f64::INFINITY).as_deg() >= f64::MAX);
        assert!(millimetres(f64::NEG_INFINITY).as_mm() <= -f64::MAX);
    }

    #[test]
    fn what_is_not_a_number_becomes_the_least_one() {
        assert!(millimetres(f64::NAN).as_mm() <= -f64::MAX);
    }

    #[test]
    fn a_plain_number_is_left_as_it_is() {
        assert!((degrees(-3.58).as_deg() + 3.58).abs() < 1e-15);
    }
}
