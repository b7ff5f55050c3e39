//! What three pitch readings of one blade imply about its rowlock and its pin.
//!
//! Knows one oar on one pin. How good the readings are is not its business: it gives the
//! sensitivities, and what the angles can't tell apart.

mod sensitivities;
mod separation;

pub use sensitivities::Partials;
pub use sensitivities::Sensitivities;
pub use separation::Separation;
pub use separation::separation;

use super::arc;
use super::arc::Lean;
use super::arc::Rig;
use super::finite;
use super::matrix;
use super::matrix::Matrix;
use crate::units::Angle;
use sensitivities::Slopes;

/// The pitch of one blade at the catch, square off and at the finish.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ArcReadings {
    /// Pitch at the catch.
    pub catch: Angle,
    /// Pitch square off.
    pub square: Angle,
    /// Pitch at the finish.
    pub finish: Angle,
    /// Oar angle of the catch reading, positive.
    pub catch_at: Angle,
    /// Oar angle of the finish reading, negative.
    pub finish_at: Angle,
    /// How far the shaft slopes down to the blade.
    pub dip: Angle,
    /// The blade against the oar's own flat.
    pub oar_pitch: Angle,
}

/// The one rig that gives the three readings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Implied {
    /// The rowlock's working face against the pin.
    pub rowlock_pitch: Angle,
    /// Rowlock and oar together: all that a blade can show of the two.
    pub rig_pitch: Angle,
    /// The pin against the vertical.
    pub lean: Lean,
    /// How each moves with each of the readings.
    pub sensitivities: Sensitivities,
}

/// Readings that no rig explains, or angles that tell nothing.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum ArcError {
    /// The catch reading can't be told from the one square off, or isn't a catch.
    #[error("the catch must be read between 1 and 90 deg towards the bow, found {0}")]
    CatchAngle(Angle),
    /// The finish reading can't be told from the one square off, or isn't a finish.
    #[error("the finish must be read between -1 and -90 deg, towards the stern, found {0}")]
    FinishAngle(Angle),
    /// No rowlock pitch and lean give these three readings.
    #[error("no pin and rowlock give these three pitches: {catch}, {square}, {finish}")]
    NoRigFits {
        /// Pitch at the catch.
        catch: Angle,
        /// Pitch square off.
        square: Angle,
        /// Pitch at the finish.
        finish: Angle,
    },
}

impl ArcError {
    /// Says what to do about it.
    #[must_use]
    pub const fn help(self) -> &'static str {
        match self {
            Self::CatchAngle(_) | Self::FinishAngle(_) => {
                "read the pitch well to each side of square off; the wider, the better it tells"
            }
            Self::NoRigFits { .. } => "read the three pitches again, the shaft pressed to its face",
        }
    }
}

/// Nearer to square off than this, in degrees, a reading is the square-off reading again.
const LEAST_TURN: f64 = 1.0;
/// With the oar along the boat it can turn no further, in degrees.
const MOST_TURN: f64 = 90.0;
/// The small-angle start needs 3 or 4 steps; one that needs more isn't coming.
const MOST_STEPS: usize = 30;
/// A step or a misfit below this, in degrees, is none.
const NOTHING: f64 = 1e-9;

/// Returns the rig that gives the three readings, exactly.
///
/// Rowlock pitch and oar pitch differ only at third order: the blade shows their sum, `rig_pitch`.
///
/// # Formula
///
/// Newton's method on [`arc::pitch`], from the answer of [`inverse_linear`].
///
/// # Accuracy
///
/// 1e-9 deg. How much of it is true depends on the readings: see [`separation()`].
///
/// # Errors
///
/// [`ArcError`]: oar angles not clear of square off, or readings that no rig gives.
///
/// # Example
///
/// ```
/// use tholebook::geometry::arc_inverse::{ArcReadings, inverse};
/// use tholebook::units::Angle;
///
/// let readings = ArcReadings {
///     catch: Angle::deg(6.095),
///     square: Angle::deg(6.023),
///     finish: Angle::deg(5.077),
///     catch_at: Angle::deg(50.0),
///     finish_at: Angle::deg(-35.0),
///     dip: Angle::deg(6.0),
///     oar_pitch: Angle::deg(0.0),
/// };
/// assert_eq!(format!("{:.1}", inverse(readings)?.lean.aft), "2.0 deg");
/// # Ok::<(), tholebook::geometry::arc_inverse::ArcError>(())
/// ```
pub fn inverse(readings: ArcReadings) -> Result<Implied, ArcError> {
    check_angles(readings.catch_at, readings.finish_at)?;
    let no_rig = no_rig_fits(readings);
    let mut found = solve_linear(readings).ok_or(no_rig)?;
    for _ in 0..MOST_STEPS {
        let back = matrix::inverse(jacobian(readings, found)).ok_or(no_rig)?;
        let step = matrix::times(back, misfit(readings, found));
        found = std::array::from_fn(|i| found[i] - step[i]);
        // Also false for a NaN, so nothing that is not finite goes on.
        if !found.iter().all(|value| value.abs() < MOST_TURN) {
            return Err(no_rig);
        }
        if step.iter().all(|move_by| move_by.abs() < NOTHING) {
            return settled(readings, found).ok_or(no_rig);
        }
    }
    Err(no_rig)
}

/// Returns the rig that gives the three readings, by the small-angle form; the dip has no part.
///
/// # Formula
///
/// With `a`, `b` the catch and the finish angle without sign:
///
/// ```text
/// aft = [(square - catch)/sin a + (square - finish)/sin b] / [tan(a/2) + tan(b/2)]
/// out = (catch - square)/sin a + aft tan(a/2)
/// rig = square - aft
/// ```
///
/// # Accuracy
///
/// On exact readings, leans of 2 and 1 deg: 0.03 deg; leans of 6 deg and dip 8: 0.51 deg.
///
/// # Errors
///
/// [`ArcError`], as for [`inverse`].
pub fn inverse_linear(readings: ArcReadings) -> Result<Implied, ArcError> {
    check_angles(readings.catch_at, readings.finish_at)?;
    let no_rig = no_rig_fits(readings);
    let found = solve_linear(readings).ok_or(no_rig)?;
    let back = matrix::inverse(linear_jacobian(readings)).ok_or(no_rig)?;
    let lean = rig_of(readings, found).lean;
    Ok(implied(readings, found, back, Slopes::linear(lean, angles(readings))))
}

fn check_angles(catch_at: Angle, finish_at: Angle) -> Result<(), ArcError> {
    let turned = LEAST_TURN..=MOST_TURN;
    if !turned.contains(&catch_at.as_deg()) {
        return Err(ArcError::CatchAngle(catch_at));
    }
    if !turned.contains(&-finish_at.as_deg()) {
        return Err(ArcError::FinishAngle(finish_at));
    }
    Ok(())
}

fn no_rig_fits(readings: ArcReadings) -> ArcError {
    let ArcReadings { catch, square, finish, .. } = readings;
    ArcError::NoRigFits { catch, square, finish }
}

fn angles(readings: ArcReadings) -> [Angle; 3] {
    [readings.catch_at, Angle::deg(0.0), readings.finish_at]
}

fn pitches(readings: ArcReadings) -> [f64; 3] {
    [readings.catch, readings.square, readings.finish].map(Angle::as_deg)
}

/// Returns the rig of a rowlock pitch, a lean aft and a lean out in degrees.
fn rig_of(readings: ArcReadings, found: [f64; 3]) -> Rig {
    let [rowlock_pitch, aft, out] = found.map(finite::degrees);
    Rig { rowlock_pitch, oar_pitch: readings.oar_pitch, lean: Lean { aft, out } }
}

fn linear_jacobian(readings: ArcReadings) -> Matrix {
    separation::rows(readings.catch_at, readings.finish_at)
}

fn solve_linear(readings: ArcReadings) -> Option<[f64; 3]> {
    let back = matrix::inverse(linear_jacobian(readings))?;
    let found = matrix::times(back, pitches(readings).map(|p| p - readings.oar_pitch.as_deg()));
    found.iter().all(|value| value.is_finite()).then_some(found)
}

/// Returns how far the pitches of a rig are from the readings, in degrees.
fn misfit(readings: ArcReadings, found: [f64; 3]) -> [f64; 3] {
    let rig = rig_of(readings, found);
    let shown = angles(readings).map(|theta| arc::pitch(rig, theta, readings.dip).as_deg());
    let read = pitches(readings);
    std::array::from_fn(|i| shown[i] - read[i])
}

/// Returns how the three pitches move with rowlock pitch, lean aft and lean out.
fn jacobian(readings: ArcReadings, found: [f64; 3]) -> Matrix {
    let moved = |which: usize, by: f64, theta: Angle| {
        let mut other = found;
        other[which] += by;
        arc::pitch(rig_of(readings, other), theta, readings.dip).as_deg()
    };
    angles(readings).map(|theta| {
        std::array::from_fn(|which| sensitivities::slope(|by| moved(which, by, theta)))
    })
}

fn settled(readings: ArcReadings, found: [f64; 3]) -> Option<Implied> {
    let fits = misfit(readings, found).iter().all(|by| by.abs() < NOTHING);
    let back = matrix::inverse(jacobian(readings, found)).filter(|_| fits)?;
    let slopes = Slopes::exact(rig_of(readings, found), angles(readings), readings.dip);
    Some(implied(readings, found, back, slopes))
}

fn implied(readings: ArcReadings, found: [f64; 3], back: Matrix, slopes: Slopes) -> Implied {
    let Rig { rowlock_pitch, oar_pitch, lean } = rig_of(readings, found);
    let rig_pitch = finite::degrees(rowlock_pitch.as_deg() + oar_pitch.as_deg());
    Implied { rowlock_pitch, rig_pitch, lean, sensitivities: Sensitivities::new(back, slopes) }
}

#[cfg(test)]
mod tests;
