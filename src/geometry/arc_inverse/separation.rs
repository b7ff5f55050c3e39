//! What pitch readings at given oar angles can and can't tell apart; knows no readings.

use super::super::matrix;
use super::super::matrix::Matrix;
use super::ArcError;
use super::check_angles;
use crate::units::Angle;

/// How well three readings, at the catch, square off and at the finish, tell pitch from lean.
///
/// # Units
///
/// Plain numbers: degrees of result for each degree of independent error in each reading, and
/// ratios.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Separation {
    /// Standard error of rowlock and oar pitch together.
    pub amp_built_in: f64,
    /// Standard error of the lean to the stern.
    pub amp_aft: f64,
    /// Standard error of the lean outboard.
    pub amp_out: f64,
    /// Built-in pitch wrong by this, when every reading is wrong by one the worst way.
    pub worst_built_in: f64,
    /// Lean to the stern wrong by this, when every reading is wrong by one the worst way.
    pub worst_aft: f64,
    /// Lean outboard wrong by this, when every reading is wrong by one the worst way.
    pub worst_out: f64,
    /// Greatest stretch of the three equations over their least; 1 is best.
    pub condition: f64,
    /// Correlation of built-in pitch and lean to the stern; near -1 only their sum is known.
    pub correlation: f64,
    /// The part of a lean to the stern that shows as a bow in the curve of pitch.
    pub kappa: f64,
    /// Catch less finish, in degrees, for each degree of lean outboard.
    pub difference_gain: f64,
    /// Lean outboard falsely seen in catch less finish for each degree of lean to the stern.
    pub leak: f64,
}

/// Returns the three equations `rig + aft cos theta + out sin theta`: catch, square off, finish.
pub(super) fn rows(catch_at: Angle, finish_at: Angle) -> Matrix {
    [catch_at, Angle::deg(0.0), finish_at].map(|theta| [1.0, theta.cos(), theta.sin()])
}

/// Returns how well readings at these oar angles tell pitch from lean.
///
/// Square off, built-in pitch and lean to the stern simply add. Only as far as the curve of pitch
/// bows can they be told apart, and over a short arc it hardly does.
///
/// ```text
///   pitch
///     |    built-in + aft        .-' ' '-.        a lean to the stern: a bow, kappa high
///     |                       .-'         '-.
///     |    built-in      - - - - - - - - - - - -
///     +---------------------------+---------------- theta
///                  finish         0         catch
/// ```
///
/// # Formula
///
/// For `a`, `b` the catch and the finish angle without sign:
///
/// ```text
/// kappa           = 1 - cos((a + b)/2) / cos((a - b)/2)
/// difference_gain = sin a + sin b
/// leak            = -tan((a - b)/2)
/// ```
///
/// The rest from the inverse of the three equations of the small-angle form.
///
/// # Errors
///
/// [`ArcError::CatchAngle`] or [`ArcError::FinishAngle`] where an angle is not clear of square off.
pub fn separation(catch_at: Angle, finish_at: Angle) -> Result<Separation, ArcError> {
    check_angles(catch_at, finish_at)?;
    let forth = rows(catch_at, finish_at);
    let back = matrix::inverse(forth).ok_or(ArcError::CatchAngle(catch_at))?;
    let amp = back.map(|row| matrix::dot(row, row).sqrt());
    let worst = back.map(|row| row.iter().map(|x| x.abs()).sum::<f64>());
    let (catch, finish) = (catch_at.as_rad(), -finish_at.as_rad());
    let (half_sum, half_dif) = (f64::midpoint(catch, finish), (catch - finish) / 2.0);
    Ok(Separation {
        amp_built_in: amp[0],
        amp_aft: amp[1],
        amp_out: amp[2],
        worst_built_in: worst[0],
        worst_aft: worst[1],
        worst_out: worst[2],
        condition: matrix::greatest_stretch(forth) * matrix::greatest_stretch(back),
        correlation: matrix::dot(back[0], back[1]) / (amp[0] * amp[1]),
        kappa: 1.0 - half_sum.cos() / half_dif.cos(),
        difference_gain: catch.sin() + finish.sin(),
        leak: -half_dif.tan(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(catch: f64, finish: f64) -> Separation {
        separation(Angle::deg(catch), Angle::deg(finish)).expect("both clear of square off")
    }

    /// Source: geometry of equal angles m: out = (catch - finish) / (2 sin m), and
    /// aft = (square - (catch + finish)/2) / (1 - cos m).
    #[test]
    fn equal_angles_have_no_leak_and_plain_errors() {
        let sixty = at(60.0, -60.0);
        assert!(sixty.leak.abs() < 1e-15);
        assert!((sixty.amp_out - 2.0_f64.sqrt() / (2.0 * 0.75_f64.sqrt())).abs() < 1e-12);
        assert!((sixty.amp_aft - 1.5_f64.sqrt() / 0.5).abs() < 1e-12);
        assert!((sixty.kappa - 0.5).abs() < 1e-12);
    }

    #[test]
    fn the_wider_the_arc_the_better_it_tells() {
        let (narrow, wide) = (at(35.0, -25.0), at(60.0, -40.0));
        assert!(wide.amp_aft < narrow.amp_aft && wide.condition < narrow.condition);
        assert!(wide.kappa > narrow.kappa && wide.correlation > narrow.correlation);
    }

    /// Source: the library nalgebra, singular values, down to the narrowest arc taken.
    #[test]
    fn the_condition_is_the_ratio_of_singular_values() {
        for (catch, finish) in [(60.0, -40.0), (20.0, -20.0), (5.0, -3.0), (90.0, -1.0)] {
            let forth = rows(Angle::deg(catch), Angle::deg(finish));
            let values = nalgebra::Matrix3::from_fn(|i, j| forth[i][j]).singular_values();
            let expected = values.max() / values.min();
            assert!((at(catch, finish).condition / expected - 1.0).abs() < 1e-9, "{expected}");
        }
    }

    #[test]
    fn the_worst_case_is_never_better_than_the_standard_error() {
        let arc = at(50.0, -35.0);
        assert!(arc.worst_built_in > arc.amp_built_in);
        assert!(arc.worst_aft > arc.amp_aft && arc.worst_out > arc.amp_out);
        // Square off the two add up, so their worst cases differ by that one reading.
        assert!((arc.worst_aft - arc.worst_built_in - 1.0).abs() < 1e-12);
    }

    #[test]
    fn angles_that_tell_nothing_are_refused() {
        let refused = |c, f| separation(Angle::deg(c), Angle::deg(f)).expect_err("not clear");
        for catch in [0.0, 0.99, -50.0, 90.1] {
            assert_eq!(refused(catch, -35.0), ArcError::CatchAngle(Angle::deg(catch)));
        }
        for finish in [0.0, -0.99, 35.0, 50.0, -90.1] {
            assert_eq!(refused(50.0, finish), ArcError::FinishAngle(Angle::deg(finish)));
        }
        assert!(separation(Angle::deg(1.0), Angle::deg(-90.0)).is_ok());
        assert!(separation(Angle::deg(90.0), Angle::deg(-1.0)).is_ok());
    }
}
