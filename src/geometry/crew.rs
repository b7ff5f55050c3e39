//! Where a rower on a fixed seat catches and finishes; knows one rower, one seat and no boat's
//! records.
//!
//! Seen from above, x to the bow from the line of the pin. The back chock stops the back at the
//! finish, or straight legs against the foot brace do. The handle then meets the belly: that is the
//! finish. For the catch the body swings and slides to the stern with straight arms.
//!
//! # Source
//!
//! Lengths of the body as parts of the stature: Drillis and Contini (1966), by way of Winter,
//! Biomechanics and Motor Control of Human Movement, fig. 4.1 (second-hand; the page was not seen).
//! All else a [`Posture`] holds is assumed: angles of one rower are good to several degrees, those
//! of two rowers beside each other to less, for what is assumed of both cancels.

use super::finite;
use crate::units::Angle;
use crate::units::Length;

/// Hip joint to knee, as a part of the stature.
pub const THIGH: f64 = 0.245;
/// Knee to ankle, as a part of the stature.
pub const SHANK: f64 = 0.246;
/// Ankle to sole, as a part of the stature.
pub const ANKLE: f64 = 0.039;
/// Hip joint to the middle of the shoulders, as a part of the stature.
pub const TRUNK: f64 = 0.288;
/// Middle of the shoulders to the middle of the grip, as a part of the stature: upper arm, forearm,
/// half a hand.
pub const ARM: f64 = 0.186 + 0.146 + 0.054;

/// A rower's body.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Body {
    /// Standing height.
    pub stature: Length,
    /// Hip joint to ankle, the leg straight.
    pub leg: Length,
    /// Shoulders to grip, the arm straight.
    pub arm: Length,
}

impl Body {
    /// Returns the body that a stature usually goes with.
    #[must_use]
    pub fn of_stature(stature: Length) -> Self {
        let part = |part: f64| finite::millimetres(part * stature.as_mm());
        Self { stature, leg: part(THIGH + SHANK), arm: part(ARM) }
    }
}

/// Returns hip joint to ankle, from the inside leg: floor to crotch, standing.
///
/// # Formula
///
/// `inside leg + (hip above seat - ankle) stature`: sitting, the crotch is where the seat is.
#[must_use]
pub fn leg_of_inside_leg(inside: Length, stature: Length, hip_above_seat: f64) -> Length {
    finite::millimetres(inside.as_mm() + (hip_above_seat - ANKLE) * stature.as_mm())
}

/// How a rower sits and moves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Posture {
    /// Trunk against the upright at the finish, to the bow.
    pub layback: Angle,
    /// Trunk against the upright at the catch, to the stern.
    pub swing: Angle,
    /// How far the seat of the trousers slides on the bench.
    pub slide: Length,
    /// Angle at the knee when the legs are as straight as they are rowed; 180 deg is straight.
    pub knee: Angle,
    /// Back to hip joint, as a part of the stature.
    pub back_to_hip: f64,
    /// Hip joint to belly, as a part of the stature.
    pub hip_to_belly: f64,
    /// Seat to hip joint, as a part of the stature.
    pub hip_above_seat: f64,
}

impl Posture {
    /// What is assumed of every rower.
    ///
    /// # Source
    ///
    /// Assumed, no source; the back to hip joint agrees with a buttock-knee length of 605 mm at a
    /// stature of 1759 (about 0.069, second-hand).
    pub const USUAL: Self = Self {
        layback: Angle::deg(20.0),
        swing: Angle::deg(40.0),
        slide: Length::mm(100.0),
        knee: Angle::deg(165.0),
        back_to_hip: 0.065,
        hip_to_belly: 0.085,
        hip_above_seat: 0.05,
    };
}

/// A rower's place in the boat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bench {
    /// Back chock to pin, along the boat.
    pub chock_to_pin: Length,
    /// Back chock to the foot brace; none where the chock is known to stop the rower.
    pub brace: Option<Length>,
    /// Pin to the middle of the hands, along the oar.
    pub hand_lever: Length,
    /// Dip of the oar.
    pub dip: Angle,
    /// Pin to the middle of the rower's place, across the boat.
    pub across: Length,
    /// Hands above the seat.
    pub hands_above_seat: Length,
    /// Seat above the heels.
    pub seat_above_heels: Length,
}

/// What ends the way of the back to the bow.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum StoppedBy {
    /// The back chock.
    Chock,
    /// The legs: they are straight before the back is at the chock.
    Legs,
}

/// A rower who can't row there.
#[derive(Clone, Copy, Debug, Eq, PartialEq, thiserror::Error)]
pub enum CrewError {
    /// The straight legs don't reach down to the heels.
    #[error("the legs are shorter than the seat is high")]
    LegsTooShort,
    /// The handle would be beside or beyond the oar's own length.
    #[error("the handle can't come to the belly at this chock")]
    HandleOutOfReach,
    /// The arms don't reach the handle anywhere in its way.
    #[error("the arms don't reach the handle at the catch")]
    ArmsTooShort,
}

impl CrewError {
    /// Says what to do about it.
    #[must_use]
    pub const fn help(self) -> &'static str {
        match self {
            Self::LegsTooShort => "measure the leg and the stature again",
            Self::HandleOutOfReach => "measure chock to pin, inboard and grip again",
            Self::ArmsTooShort => "measure spread, seat mark and stature again",
        }
    }
}

/// Returns back chock to foot brace at which the legs are straight just as the back meets the chock.
///
/// # Formula
///
/// `back_to_hip stature + sqrt(l^2 - drop^2)`, `l` the leg at its knee angle by the cosine rule,
/// `drop` the seat above the heels.
///
/// # Errors
///
/// [`CrewError::LegsTooShort`].
pub fn brace_needed(
    body: Body,
    posture: Posture,
    seat_above_heels: Length,
) -> Result<Length, CrewError> {
    let thigh = body.leg.as_mm() * THIGH / (THIGH + SHANK);
    let shank = body.leg.as_mm() - thigh;
    let bent = thigh * thigh + shank * shank - 2.0 * thigh * shank * posture.knee.cos();
    let along = bent - seat_above_heels.as_mm().powi(2);
    if !(body.leg.as_mm() > 0.0 && along > 0.0) {
        return Err(CrewError::LegsTooShort);
    }
    Ok(finite::millimetres(posture.back_to_hip * body.stature.as_mm() + along.sqrt()))
}

/// Returns what stops the rower at the finish.
///
/// # Errors
///
/// As [`brace_needed`].
pub fn stopped_by(bench: Bench, body: Body, posture: Posture) -> Result<StoppedBy, CrewError> {
    let needed = brace_needed(body, posture, bench.seat_above_heels)?;
    let legs = bench.brace.is_some_and(|brace| brace > needed);
    Ok(if legs { StoppedBy::Legs } else { StoppedBy::Chock })
}

/// Returns how far to the bow of the pin the handle is at the finish.
///
/// ```text
///   bow <---------------- x ----------------|  pin
///    chock|back  hip  belly|handle          o
///         |<-------- chock to pin --------->|
/// ```
///
/// # Formula
///
/// ```text
/// back   = min(chock_to_pin, chock_to_pin - (brace - brace_needed))
/// hip    = back - back_to_hip stature
/// handle = hip + (hands - hip_above_seat stature) tan(layback) - hip_to_belly stature
/// ```
///
/// # Errors
///
/// As [`brace_needed`].
pub fn handle_at_finish(bench: Bench, body: Body, posture: Posture) -> Result<Length, CrewError> {
    let stature = body.stature.as_mm();
    let above_hip = bench.hands_above_seat.as_mm() - posture.hip_above_seat * stature;
    let hip = hip_at_finish(bench, body, posture)?;
    let handle = hip + above_hip * posture.layback.tan() - posture.hip_to_belly * stature;
    Ok(finite::millimetres(handle))
}

fn hip_at_finish(bench: Bench, body: Body, posture: Posture) -> Result<f64, CrewError> {
    let needed = brace_needed(body, posture, bench.seat_above_heels)?.as_mm();
    let short = bench.brace.map_or(0.0, |brace| (brace.as_mm() - needed).max(0.0));
    Ok(bench.chock_to_pin.as_mm() - short - posture.back_to_hip * body.stature.as_mm())
}

/// Returns the oar angle at the finish, to the catch positive: below zero for a finish abaft square.
///
/// # Formula
///
/// `-asin(handle / (hand_lever cos(dip)))`, see [`handle_at_finish`].
///
/// # Accuracy
///
/// The sum is exact, the rower is not: layback by 5 deg is 1.0 deg, either thickness by a hundredth
/// of the stature 1.1 deg.
///
/// # Errors
///
/// [`CrewError::HandleOutOfReach`], or as [`brace_needed`].
///
/// # Example
///
/// ```
/// use tholebook::geometry::crew::{Bench, Body, Posture, finish};
/// use tholebook::units::{Angle, Length};
///
/// let bench = Bench {
///     chock_to_pin: Length::mm(600.0),
///     brace: None,
///     hand_lever: Length::mm(1030.0),
///     dip: Angle::deg(6.0),
///     across: Length::mm(950.0),
///     hands_above_seat: Length::mm(250.0),
///     seat_above_heels: Length::mm(200.0),
/// };
/// let tall = finish(bench, Body::of_stature(Length::mm(1800.0)), Posture::USUAL)?;
/// assert_eq!(tall.to_string(), "-22.27 deg");
/// # Ok::<(), tholebook::geometry::crew::CrewError>(())
/// ```
pub fn finish(bench: Bench, body: Body, posture: Posture) -> Result<Angle, CrewError> {
    let handle = handle_at_finish(bench, body, posture)?.as_mm();
    let sine = handle / reach_of_oar(bench);
    if sine.abs() < 1.0 {
        Ok(finite::degrees(-sine.asin().to_degrees()))
    } else {
        Err(CrewError::HandleOutOfReach)
    }
}

/// The hand lever as seen from above, in millimetres.
fn reach_of_oar(bench: Bench) -> f64 {
    bench.hand_lever.as_mm() * bench.dip.cos()
}

/// Returns the oar angle at the catch, to the catch positive.
///
/// # Formula
///
/// The hands are as far from the shoulders as the arms are long, one straight reach:
///
/// ```text
/// shoulders: x = hip - slide - TRUNK stature sin(swing), up = hip_above_seat stature + TRUNK stature cos(swing)
/// R^2 = arm^2 - (up - hands)^2,   q = hypot(x, across),   zeta = atan2(x, across)
/// catch = -zeta + acos((r^2 + q^2 - R^2) / (2 r q)),      r = hand_lever cos(dip)
/// ```
///
/// # Accuracy
///
/// The sum is exact; swing by 5 deg is 2.7 deg, slide by 30 mm 1.8 deg. The shoulders' turn to the
/// rowlock is left out.
///
/// # Errors
///
/// [`CrewError::ArmsTooShort`], or as [`brace_needed`].
pub fn catch(bench: Bench, body: Body, posture: Posture) -> Result<Angle, CrewError> {
    let stature = body.stature.as_mm();
    let trunk = TRUNK * stature;
    let hip = hip_at_finish(bench, body, posture)?;
    let x = hip - posture.slide.as_mm() - trunk * posture.swing.sin();
    let up = posture.hip_above_seat * stature + trunk * posture.swing.cos();
    let above_hands = up - bench.hands_above_seat.as_mm();
    let reach = body.arm.as_mm().powi(2) - above_hands.powi(2);
    let (r, across) = (reach_of_oar(bench), bench.across.as_mm());
    let q = x.hypot(across);
    let cosine = (r * r + q * q - reach) / (2.0 * r * q);
    if reach > 0.0 && cosine.abs() <= 1.0 {
        Ok(finite::degrees((cosine.acos() - x.atan2(across)).to_degrees()))
    } else {
        Err(CrewError::ArmsTooShort)
    }
}

#[cfg(test)]
mod tests;
