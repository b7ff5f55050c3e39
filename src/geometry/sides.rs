//! What the oars of one side do against those of the other; knows no limits and no crew.

use super::Side;
use super::blade_force;
use super::finite;
use super::gearing::Levers;
use crate::units::Angle;
use crate::units::Length;

/// One oar at its pin, at one moment of the stroke.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WorkingOar {
    /// The side its blade is on.
    pub side: Side,
    /// Pin to the centreline.
    pub spread: Length,
    /// How far the pin is ahead of the point that moments are taken about, positive to the bow.
    pub ahead: Length,
    /// Pin to hands and pin to blade.
    pub levers: Levers,
    /// The oar angle, positive towards the catch.
    pub theta: Angle,
    /// The blade's pitch at that angle.
    pub pitch: Angle,
    /// How far the shaft slopes down to the blade.
    pub dip: Angle,
}

/// Oars that no index can be worked out for.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum SidesError {
    /// There are no oars.
    #[error("no oars to compare")]
    NoOars,
    /// An arm of an oar has no length.
    #[error("the arms of an oar must be above zero, found {0}")]
    LeverNotPositive(Length),
}

impl SidesError {
    /// Says what to do about it.
    #[must_use]
    pub const fn help(self) -> &'static str {
        match self {
            Self::NoOars => "measure the oars of every seat first",
            Self::LeverNotPositive(_) => "measure that oar's length, inboard and grip again",
        }
    }
}

/// Returns the mean pitch on port less the mean pitch on starboard, or nothing if a side has none.
///
/// Given pitches square off it is proof against roll. Positive: the port blades have more.
///
/// # Formula
///
/// `mean(port) - mean(starboard)`
///
/// # Example
///
/// ```
/// use tholebook::geometry::sides::side_difference;
/// use tholebook::units::Angle;
///
/// let [port, starboard] = [[4.0, 5.0], [4.0, 4.2]].map(|side| side.map(Angle::deg));
/// let more = side_difference(&port, &starboard).expect("both sides were read");
/// assert_eq!(more.to_string(), "0.40 deg");
/// ```
#[must_use]
pub fn side_difference(port: &[Angle], starboard: &[Angle]) -> Option<Angle> {
    Some(finite::degrees(mean(port)? - mean(starboard)?))
}

fn mean(angles: &[Angle]) -> Option<f64> {
    let mut count = 0.0;
    let mut mean = None;
    for angle in angles {
        count += 1.0;
        let before = mean.unwrap_or(0.0);
        // Shared out before adding, so that the sum can't overflow.
        mean = Some(before * ((count - 1.0) / count) + angle.as_deg() / count);
    }
    mean
}

/// Returns how strongly unequal pitch tips the boat over, for each newton of pull at the handles.
///
/// Positive: the port side is lifted. Nought for two sides alike. It tells who lifts more at equal
/// pull; not which way she will turn.
///
/// ```text
///      lift ^                      ^ lift        seen from the stern
///           |                      |
///     blade o------ pin --+-- pin -o blade
///           |<-- arm ---->|
/// ```
///
/// # Units
///
/// Metres: newton metres of tipping for each newton of pull.
///
/// # Formula
///
/// The sum over the oars, port plus and starboard minus, of
/// `(spread + blade cos(dip) cos(theta)) (hand/blade) tan(pitch) cos(dip)`.
///
/// # Errors
///
/// [`SidesError`]: no oars, or an arm of one without length.
pub fn tip_index(oars: &[WorkingOar]) -> Result<f64, SidesError> {
    check(oars)?;
    Ok(finite::held(oars.iter().map(|oar| tip_moment(oar, 1.0)).sum()))
}

/// Returns how one oar's lift tips the boat, positive with the port side lifted.
///
/// # Units
///
/// Newton metres, for a pull in newtons.
///
/// # Formula
///
/// `side (spread + blade cos(dip) cos(theta)) lift`
#[must_use]
pub fn tip_moment(oar: &WorkingOar, pull: f64) -> f64 {
    let force = blade_force::blade_force(pull, oar.levers, oar.pitch, oar.dip);
    let reach = metres(oar.levers.blade) * oar.dip.cos() * oar.theta.cos();
    finite::held(oar.side.sign() * (metres(oar.spread) + reach) * force.lift)
}

/// Returns how one oar turns the boat about the point that moments are taken about.
///
/// Positive turns the bow to port.
///
/// ```text
///         bow ^
///             |        starboard oar turns the bow to port: +
///    blade ---+--- blade
///             |
/// ```
///
/// # Units
///
/// Newton metres, for a pull in newtons.
///
/// # Formula
///
/// ```text
/// -side pull hand [cos(dip) + (spread cos(theta) + ahead sin(theta)) / blade]
/// +side horizontal tan(pitch) sin(dip) (ahead cos(theta) - spread sin(theta))
/// ```
#[must_use]
pub fn yaw_moment(oar: &WorkingOar, pull: f64) -> f64 {
    let force = blade_force::blade_force(pull, oar.levers, oar.pitch, oar.dip);
    let (spread, ahead) = (metres(oar.spread), metres(oar.ahead));
    let arm = (spread * oar.theta.cos() + ahead * oar.theta.sin()) / metres(oar.levers.blade);
    let level = pull * metres(oar.levers.hand) * (oar.dip.cos() + arm);
    let across = ahead * oar.theta.cos() - spread * oar.theta.sin();
    let tipped = force.horizontal * oar.pitch.tan() * oar.dip.sin() * across;
    finite::held(oar.side.sign() * (tipped - level))
}

/// Returns the share by which port turns the boat more than starboard at equal pull.
///
/// Positive: port is the stronger, the bow goes to starboard. Geometry of the rig only.
///
/// # Units
///
/// A plain part of one; 0.01 is one hundredth of all the turning there is.
///
/// # Formula
///
/// `(sum port - sum starboard) / sum` of `hand [1 + (spread cos(theta) + ahead sin(theta))/blade]`
///
/// # Errors
///
/// [`SidesError`]: no oars, or an arm of one without length.
pub fn yaw_index(oars: &[WorkingOar]) -> Result<f64, SidesError> {
    check(oars)?;
    let turning = |oar: &WorkingOar| {
        let (spread, ahead) = (metres(oar.spread), metres(oar.ahead));
        let arm = spread * oar.theta.cos() + ahead * oar.theta.sin();
        metres(oar.levers.hand) * (1.0 + arm / metres(oar.levers.blade))
    };
    let all: f64 = oars.iter().map(turning).sum();
    let more: f64 = oars.iter().map(|oar| oar.side.sign() * turning(oar)).sum();
    Ok(finite::held(more / all))
}

fn check(oars: &[WorkingOar]) -> Result<(), SidesError> {
    if oars.is_empty() {
        return Err(SidesError::NoOars);
    }
    let mut arms = oars.iter().flat_map(|oar| [oar.levers.hand, oar.levers.blade]);
    match arms.find(|arm| arm.as_mm() <= 0.0) {
        Some(arm) => Err(SidesError::LeverNotPositive(arm)),
        None => Ok(()),
    }
}

fn metres(length: Length) -> f64 {
    length.as_mm() / 1000.0
}

#[cfg(test)]
mod tests;
