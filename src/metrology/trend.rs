//! A straight line through points, and how sure it is. Knows not what the points are.

/// A straight line fitted by least squares.
///
/// ```text
///   y |                  .  '
///     |           .  ' o       slope = rise / run
///     |  o  .  '  ^
///     |  '        | residual
///     |'          o
///     +---------------------- x
///   intercept at x = 0
/// ```
///
/// # Formula
///
/// With means `x̄`, `ȳ` and `Sxx = sum (x - x̄)²`,
///
/// ```text
/// slope = sum (x - x̄)(y - ȳ) / Sxx        intercept = ȳ - slope x̄
/// s² = sum residual² / (n - 2)            u²(slope) = s² / Sxx
/// u²(line at x) = s² (1/n + (x - x̄)² / Sxx)
/// ```
///
/// # Accuracy
///
/// The uncertainties come from the scatter of the points alone, `y` only: every point weighs the
/// same and `x` is exact.
///
/// # Source
///
/// JCGM 100:2008 (GUM), H.3. Checked against NIST `StRD` Norris and GUM H.3.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Trend {
    /// Where the line is at x = 0.
    pub intercept: f64,
    /// How far the line rises for one step of x.
    pub slope: f64,
    /// The standard uncertainty of the intercept.
    pub intercept_uncertainty: f64,
    /// The standard uncertainty of the slope.
    pub slope_uncertainty: f64,
    /// The correlation coefficient of intercept and slope, -1 to 1.
    pub correlation: f64,
    /// The standard deviation of the points about the line.
    pub residual_sd: f64,
    /// The part of the variation of y that the line explains; none when y does not vary.
    pub r_squared: Option<f64>,
    /// The F statistic of the slope; none when every point lies on the line.
    pub f: Option<f64>,
    pub(super) count: f64,
    pub(super) mean_x: f64,
    pub(super) mean_y: f64,
    pub(super) sxx: f64,
}

impl Trend {
    /// Fits a line through `(x, y)` points. `None` with fewer than three, when all stand at one
    /// x, or when a number is not finite.
    ///
    /// # Example
    ///
    /// ```
    /// use tholebook::metrology::trend::Trend;
    ///
    /// let trend = Trend::through(&[(0.0, 4.0), (1.0, 4.5), (2.0, 4.4), (3.0, 5.1)]);
    /// let trend = trend.expect("four points");
    /// assert_eq!(format!("{:.2} ± {:.2}", trend.slope, trend.slope_uncertainty), "0.32 ± 0.10");
    /// ```
    #[must_use]
    pub fn through(points: &[(f64, f64)]) -> Option<Self> {
        let (&(first, _), others) = points.split_first()?;
        let stands_still = others.iter().all(|(x, _)| (x - first).abs() <= 0.0);
        if points.len() < 3 || stands_still {
            return None;
        }
        let trend = fit(points);
        let figures =
            [trend.intercept, trend.slope, trend.intercept_uncertainty, trend.correlation];
        figures.iter().all(|figure| figure.is_finite()).then_some(trend)
    }

    /// Returns where the line is at `x`.
    #[must_use]
    pub fn value_at(&self, x: f64) -> f64 {
        self.mean_y + self.slope * (x - self.mean_x)
    }

    /// Returns the standard uncertainty of [`value_at`](Self::value_at): of the line itself, not
    /// of a new reading beside it.
    #[must_use]
    pub fn standard_uncertainty_at(&self, x: f64) -> f64 {
        let away = x - self.mean_x;
        self.residual_sd * (1.0 / self.count + away * away / self.sxx).sqrt()
    }
}

fn fit(points: &[(f64, f64)]) -> Trend {
    let count = points.len() as f64;
    let sum = |term: &dyn Fn(f64, f64) -> f64| points.iter().map(|&(x, y)| term(x, y)).sum::<f64>();
    let (mean_x, mean_y) = (sum(&|x, _| x) / count, sum(&|_, y| y) / count);
    let sxx = sum(&|x, _| (x - mean_x).powi(2));
    let syy = sum(&|_, y| (y - mean_y).powi(2));
    let slope = sum(&|x, y| (x - mean_x) * (y - mean_y)) / sxx;
    let scatter = sum(&|x, y| (y - mean_y - slope * (x - mean_x)).powi(2));
    let residual_sd = (scatter / (count - 2.0)).sqrt();
    let mean_square_x = sum(&|x, _| x * x) / count;
    Trend {
        intercept: mean_y - slope * mean_x,
        slope,
        intercept_uncertainty: residual_sd * (mean_square_x / sxx).sqrt(),
        slope_uncertainty: residual_sd / sxx.sqrt(),
        correlation: -mean_x / mean_square_x.sqrt(),
        residual_sd,
        r_squared: (syy > 0.0).then(|| 1.0 - scatter / syy),
        f: (scatter > 0.0).then(|| slope * slope * sxx / residual_sd.powi(2)),
        count,
        mean_x,
        mean_y,
        sxx,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn points_on_a_line_give_that_line_and_no_scatter() {
        let trend = Trend::through(&[(1.0, 5.0), (2.0, 7.0), (3.0, 9.0)]).expect("three points");
        assert!((trend.slope - 2.0).abs() < 1e-15 && (trend.intercept - 3.0).abs() < 1e-15);
        assert!(trend.residual_sd < 1e-15);
        assert_eq!(trend.f, None);
        assert_eq!(trend.r_squared, Some(1.0));
    }

    #[test]
    fn a_level_line_explains_nothing() {
        let trend = Trend::through(&[(1.0, 5.0), (2.0, 5.0), (3.0, 5.0)]).expect("three points");
        assert_eq!(trend.r_squared, None);
    }

    #[test]
    fn too_few_points_and_points_at_one_place_give_no_line() {
        assert_eq!(Trend::through(&[]), None);
        assert_eq!(Trend::through(&[(1.0, 5.0), (2.0, 7.0)]), None);
        assert_eq!(Trend::through(&[(0.1, 5.0), (0.1, 7.0), (0.1, 6.0)]), None);
    }

    #[test]
    fn no_number_gives_no_line() {
        for lost in [f64::NAN, f64::INFINITY] {
            assert_eq!(Trend::through(&[(1.0, 5.0), (2.0, lost), (3.0, 9.0)]), None);
            assert_eq!(Trend::through(&[(1.0, 5.0), (lost, 7.0), (3.0, 9.0)]), None);
        }
    }

    #[test]
    fn the_line_is_surest_amid_its_points() {
        let trend = Trend::through(&[(0.0, 1.0), (1.0, 3.0), (2.0, 2.0)]).expect("three points");
        let amid = trend.standard_uncertainty_at(1.0);
        assert!((amid - trend.residual_sd / 3_f64.sqrt()).abs() < 1e-15);
        assert!(
            trend.standard_uncertainty_at(0.9) > amid && trend.standard_uncertainty_at(1.1) > amid
        );
    }
}
