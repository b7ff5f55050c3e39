//! How a reading drifts along a straight line, whether that is more than chance, and when it would
//! reach a limit. Knows not what was read.

use super::budget::COVERAGE;
use super::trend::Trend;

/// With fewer readings nobody can tell a drift from chance.
pub const LEAST_READINGS: usize = 4;

/// How many times the span of the readings one may look ahead. Common practice, no source.
pub const AHEAD: f64 = 2.0;

/// Student's t for 95 %, two-sided, by degrees of freedom from 1 on.
///
/// # Source
///
/// JCGM 100:2008 (GUM), table G.2 (from memory).
const STUDENT: [f64; 20] = [
    12.71, 4.30, 3.18, 2.78, 2.57, 2.45, 2.36, 2.31, 2.26, 2.23, 2.20, 2.18, 2.16, 2.14, 2.13,
    2.12, 2.11, 2.10, 2.09, 2.09,
];

/// A drift.
///
/// # Formula
///
/// The line is that of [`Trend`]. With `s` the scatter of the `n` readings about it and `u` the
/// standard uncertainty of one reading, whichever gives more counts:
///
/// ```text
/// F = max(t(n - 2) s, 2 u)
/// U(slope) = F / sqrt(Sxx)        U(line at x) = F sqrt(1/n + (x - x̄)² / Sxx)
/// ```
///
/// # Source
///
/// JCGM 100:2008 (GUM), H.3 and G.3; readings that all show the same are no better than their tool.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drift {
    /// The line.
    pub trend: Trend,
    first: f64,
    last: f64,
    factor: f64,
}

/// When a drift would reach a limit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reached {
    /// The earliest, where the edge of the line's uncertainty meets the limit; never before the
    /// last reading.
    pub early: f64,
    /// Where the line itself meets it.
    pub at: f64,
    /// The latest; none where that is further ahead than may be told.
    pub late: Option<f64>,
}

/// Why there is no drift to be told.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum NoDrift {
    /// There are so many readings, and [`LEAST_READINGS`] are needed.
    TooFew(usize),
    /// All stand at one place, or are no numbers.
    AtOnePlace,
}

/// Why no day is foretold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum NotForetold {
    /// The drift is no more than chance would bring.
    Chance,
    /// It leads away from the limit.
    Away,
    /// The line has reached the limit already.
    Reached,
    /// It would be further ahead than [`AHEAD`] times the span of the readings.
    TooFar,
}

impl Drift {
    /// Fits a drift through `(x, y)` readings in order of `x`, each good to the standard
    /// uncertainty given.
    ///
    /// # Errors
    ///
    /// [`NoDrift`]: too few readings, or all at one place.
    pub fn of(points: &[(f64, f64)], reading_uncertainty: f64) -> Result<Self, NoDrift> {
        if points.len() < LEAST_READINGS {
            return Err(NoDrift::TooFew(points.len()));
        }
        let trend = Trend::through(points).ok_or(NoDrift::AtOnePlace)?;
        let scatter = student(points.len() - 2) * trend.residual_sd;
        let factor = scatter.max(COVERAGE * reading_uncertainty);
        let ends = points.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |ends, (x, _)| {
            (ends.0.min(*x), ends.1.max(*x))
        });
        Ok(Self { trend, first: ends.0, last: ends.1, factor })
    }

    /// Returns how far it drifts for one step of x.
    #[must_use]
    pub fn slope(&self) -> f64 {
        self.trend.slope
    }

    /// Returns the expanded uncertainty of the slope.
    #[must_use]
    pub fn expanded(&self) -> f64 {
        self.factor / self.trend.sxx.sqrt()
    }

    /// Returns the expanded uncertainty of the line at `x`.
    #[must_use]
    pub fn expanded_at(&self, x: f64) -> f64 {
        let away = x - self.trend.mean_x;
        self.factor * (1.0 / self.trend.count + away * away / self.trend.sxx).sqrt()
    }

    /// Returns whether the drift is more than its uncertainty.
    #[must_use]
    pub fn is_beyond_chance(&self) -> bool {
        self.slope().abs() > self.expanded()
    }

    /// Returns when it would reach a limit.
    ///
    /// # Formula
    ///
    /// Where the distance of the line from the limit equals the expanded uncertainty of the line:
    /// both roots of a quadratic. It has two whenever the slope is beyond chance.
    ///
    /// # Source
    ///
    /// E. C. Fieller's interval for a ratio, as used for reading a straight calibration line
    /// backwards; textbook, from memory.
    ///
    /// # Errors
    ///
    /// [`NotForetold`]: why it can't be told.
    pub fn reaches(&self, limit: f64) -> Result<Reached, NotForetold> {
        if !self.is_beyond_chance() {
            return Err(NotForetold::Chance);
        }
        let Trend { slope, mean_x, mean_y, count, sxx, .. } = self.trend;
        let off = mean_y - limit;
        let at = mean_x - off / slope;
        if at <= self.last {
            // A line that met the limit before it was first read has led away from it ever since.
            let away = at <= self.first;
            return Err(if away { NotForetold::Away } else { NotForetold::Reached });
        }
        let horizon = self.last + AHEAD * (self.last - self.first);
        if at > horizon {
            return Err(NotForetold::TooFar);
        }
        let a = slope * slope - self.factor * self.factor / sxx;
        let half = self.factor * (a / count + off * off / sxx).sqrt();
        let root = |sign: f64| mean_x + (-off * slope + sign * half) / a;
        let late = Some(root(1.0)).filter(|late| *late <= horizon);
        Ok(Reached { early: root(-1.0).max(self.last), at, late })
    }
}

/// Returns Student's t for 95 %, never less than the coverage used everywhere else.
fn student(freedom: usize) -> f64 {
    let listed = freedom.checked_sub(1).and_then(|at| STUDENT.get(at));
    listed.copied().unwrap_or(COVERAGE).max(COVERAGE)
}

#[cfg(test)]
mod tests {
    use super::*;

    const FALLING: [(f64, f64); 5] =
        [(0.0, 60.0), (30.0, 59.6), (60.0, 59.0), (90.0, 58.4), (120.0, 58.0)];

    fn falling() -> Drift {
        Drift::of(&FALLING, 0.0).expect("five readings")
    }

    #[test]
    fn fewer_than_four_readings_and_readings_of_one_day_are_refused() {
        assert_eq!(Drift::of(&FALLING[..3], 0.1), Err(NoDrift::TooFew(3)));
        assert_eq!(Drift::of(&[(1.0, 5.0); 4], 0.1), Err(NoDrift::AtOnePlace));
    }

    /// By hand: the slope is -156/9000; the readings lie 0.04, 0.08 and 0 off the line, so that
    /// s = sqrt(0.016/3), and t for three degrees of freedom is 3.18.
    #[test]
    fn scattered_readings_are_as_good_as_their_scatter_lets_them_be() {
        let drift = falling();
        let expected = 3.18 * (0.016_f64 / 3.0).sqrt() / 9000.0_f64.sqrt();
        assert!((drift.slope() + 156.0 / 9000.0).abs() < 1e-12);
        assert!((drift.expanded() - expected).abs() < 1e-9, "{}", drift.expanded());
    }

    /// Readings that all say the same, of a tool without a fault, drift by nothing.
    #[test]
    fn nothing_is_not_beyond_chance() {
        let still = Drift::of(&[(0.0, 60.0), (1.0, 60.0), (2.0, 60.0), (3.0, 60.0)], 0.0);
        let still = still.expect("four readings");
        assert!(!still.is_beyond_chance());
        assert_eq!(still.reaches(60.0), Err(NotForetold::Chance));
    }

    /// A line of whole numbers that falls by 1 a day, from 60 on day 100 to 57 on day 103.
    #[test]
    fn the_days_on_which_it_is_read_and_the_last_that_is_foretold_belong_to_them() {
        let days = [(100.0, 60.0), (101.0, 59.0), (102.0, 58.0), (103.0, 57.0)];
        let drift = Drift::of(&days, 0.1).expect("four readings");
        assert_eq!(drift.reaches(60.0), Err(NotForetold::Away));
        assert_eq!(drift.reaches(59.0), Err(NotForetold::Reached));
        assert_eq!(drift.reaches(57.0), Err(NotForetold::Reached));
        // 103 and twice the span of 3 days: to day 109, where it stands at 51.
        assert_eq!(drift.reaches(51.0).map(|reached| reached.at), Ok(109.0));
        assert_eq!(drift.reaches(50.9), Err(NotForetold::TooFar));
    }

    #[test]
    fn readings_on_a_line_are_no_better_than_their_tool() {
        let flat = [(0.0, 60.0), (1.0, 60.0), (2.0, 60.0), (3.0, 60.0)];
        let drift = Drift::of(&flat, 0.1).expect("four readings");
        assert!((drift.expanded() - 0.2 / 5.0_f64.sqrt()).abs() < 1e-12);
        assert!(!drift.is_beyond_chance());
        assert_eq!(drift.reaches(50.0), Err(NotForetold::Chance));
    }

    /// At both ends the limit is as far from the line as the line is good to.
    #[test]
    fn the_interval_ends_where_the_uncertainty_of_the_line_meets_the_limit() {
        let drift = falling();
        let reached = drift.reaches(56.0).expect("ahead");
        let late = reached.late.expect("not too far");
        assert!(reached.early < reached.at && reached.at < late);
        for end in [reached.early, late] {
            let off = (drift.trend.value_at(end) - 56.0).abs();
            assert!((off - drift.expanded_at(end)).abs() < 1e-9, "{off}");
        }
        assert!((drift.trend.value_at(reached.at) - 56.0).abs() < 1e-9);
    }

    #[test]
    fn no_day_is_foretold_further_ahead_than_twice_the_span() {
        let drift = falling();
        // 60 mm less 0.0173 mm a day: 54.8 mm at 300 days, 54.0 mm well after 360.
        assert!(drift.reaches(54.8).is_ok());
        assert_eq!(drift.reaches(53.0), Err(NotForetold::TooFar));
    }

    #[test]
    fn a_limit_behind_is_reached_or_led_away_from() {
        assert_eq!(falling().reaches(59.0), Err(NotForetold::Reached));
        assert_eq!(falling().reaches(65.0), Err(NotForetold::Away));
    }
}
