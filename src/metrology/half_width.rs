//! How far a reading may be from the truth: its half-width. Knows nothing of tools by name.

/// Returns the standard uncertainty of a reading whose true value lies anywhere within
/// `half_width` either side of it, no place likelier than another.
///
/// # Formula
///
/// `u = a / sqrt(3)`, the rectangular distribution.
///
/// ```text
///        +-----------------+
///        |                 |
///   -----+--------|--------+-----
///        |<- a -->|  reading
/// ```
///
/// # Source
///
/// JCGM 100:2008 (GUM), 4.3.7, equation (7).
#[must_use]
pub fn standard_uncertainty(half_width: f64) -> f64 {
    half_width / 3_f64.sqrt()
}

/// Returns the half-width whose standard uncertainty is `u`: the inverse of
/// [`standard_uncertainty`].
#[must_use]
pub fn of_standard_uncertainty(u: f64) -> f64 {
    u * 3_f64.sqrt()
}

/// Returns the mean and the half-width of a reading taken once or several times with a tool
/// that reads to ± `tool`, or `None` when there is no reading or a number is not finite.
///
/// # Formula
///
/// The half-width is the tool's, but at least half the spread of the readings. Reading again
/// never makes it smaller: one tool in one hand errs the same way each time.
///
/// # Example
///
/// ```
/// use tholebook::metrology::half_width;
///
/// assert_eq!(half_width::of_readings(&[11.0, 12.0, 14.0, 11.0], 0.5), Some((12.0, 1.5)));
/// assert_eq!(half_width::of_readings(&[11.0, 11.5], 0.5), Some((11.25, 0.5)));
/// ```
#[must_use]
pub fn of_readings(values: &[f64], tool: f64) -> Option<(f64, f64)> {
    if values.is_empty() || !tool.is_finite() || values.iter().any(|value| !value.is_finite()) {
        return None;
    }
    let mean = values.iter().sum::<f64>() / values.len() as f64;
    let most = values.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let least = values.iter().copied().fold(f64::INFINITY, f64::min);
    let half_width = tool.max((most - least) / 2.0);
    (mean.is_finite() && half_width.is_finite()).then_some((mean, half_width))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_reading_is_as_good_as_its_tool() {
        assert_eq!(of_readings(&[58.2], 0.2), Some((58.2, 0.2)));
    }

    #[test]
    fn readings_that_spread_widen_the_half_width() {
        assert_eq!(of_readings(&[12.0, 11.0, 13.0], 0.5), Some((12.0, 1.0)));
    }

    #[test]
    fn reading_the_same_again_does_not_make_the_tool_finer() {
        assert_eq!(of_readings(&[11.0; 100], 0.5), Some((11.0, 0.5)));
    }

    #[test]
    fn no_reading_and_no_number_give_nothing() {
        assert_eq!(of_readings(&[], 0.5), None);
        assert_eq!(of_readings(&[11.0, f64::NAN], 0.5), None);
        assert_eq!(of_readings(&[f64::INFINITY], 0.5), None);
        assert_eq!(of_readings(&[11.0], f64::NAN), None);
        assert_eq!(of_readings(&[f64::MAX, f64::MAX], 0.5), None);
        assert_eq!(of_readings(&[f64::MAX, -f64::MAX], 0.5), None);
    }

    #[test]
    fn a_half_width_comes_back_from_its_standard_uncertainty() {
        assert!((of_standard_uncertainty(standard_uncertainty(0.5)) - 0.5).abs() < 1e-15);
    }
}
