//! Forces of the water on one blade for a pull at its handle; knows one oar, no boat.

use super::finite;
use super::gearing::Levers;
use crate::units::Angle;

/// What the water does to a blade.
///
/// # Units
///
/// Newtons, for a pull in newtons square to the oar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BladeForce {
    /// Level, square to the oar.
    pub horizontal: f64,
    /// Upward.
    pub lift: f64,
    /// Square to the blade's face.
    pub normal: f64,
}

/// Returns the force of the water on a blade whose pull at the handle it balances.
///
/// ```text
///             lift ^   . normal
///                  | .'
///      horizontal -+'       seen along the shaft: pitch tips the push upward
///                 / pitch
///         blade  /
/// ```
///
/// # Formula
///
/// ```text
/// horizontal = pull hand / blade
/// lift       = horizontal tan(pitch) cos(dip)
/// normal     = horizontal / cos(pitch)
/// ```
///
/// Friction along the blade and the oar's weight are left out.
#[must_use]
pub fn blade_force(pull: f64, levers: Levers, pitch: Angle, dip: Angle) -> BladeForce {
    let horizontal = pull * (levers.hand.as_mm() / levers.blade.as_mm());
    BladeForce {
        horizontal: finite::held(horizontal),
        lift: finite::held(horizontal * pitch.tan() * dip.cos()),
        normal: finite::held(horizontal / pitch.cos()),
    }
}

/// Returns the part of the horizontal force that is left at a pitch, at the same blade speed.
///
/// # Units
///
/// A plain part of one: upright it is 1.
///
/// # Formula
///
/// `cos^3(pitch)`: the force goes with the square of the speed square to the face, and its level
/// part with the cosine once more.
#[must_use]
pub fn part_left_at_same_speed(pitch: Angle) -> f64 {
    pitch.cos().powi(3)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Length;

    fn at(pitch: f64, dip: f64) -> BladeForce {
        let levers = Levers { hand: Length::mm(1030.0), blade: Length::mm(2470.0) };
        blade_force(400.0, levers, Angle::deg(pitch), Angle::deg(dip))
    }

    #[test]
    fn an_upright_blade_lifts_nothing() {
        let force = at(0.0, 6.0);
        assert!(force.lift.abs() < 1e-12 && (force.normal - force.horizontal).abs() < 1e-12);
        assert!((part_left_at_same_speed(Angle::deg(0.0)) - 1.0).abs() < 1e-15);
    }

    #[test]
    fn pitch_lifts_the_blade_and_leaves_the_level_force_alone() {
        assert!(at(4.0, 6.0).lift > 0.0 && at(-4.0, 6.0).lift < 0.0);
        assert!((at(4.0, 6.0).horizontal - at(8.0, 6.0).horizontal).abs() < 1e-12);
    }

    #[test]
    fn without_dip_the_three_are_a_right_triangle() {
        let force = at(5.0, 0.0);
        assert!((force.horizontal.hypot(force.lift) - force.normal).abs() < 1e-9);
    }

    /// Source: an independent program: from 4 to 8 deg the force at equal blade speed falls by 2.2 %.
    #[test]
    fn more_pitch_loses_a_little_force_at_the_same_speed() {
        let [four, eight] = [4.0, 8.0].map(|p| part_left_at_same_speed(Angle::deg(p)));
        assert!((1.0 - eight / four - 0.022).abs() < 5e-4);
    }
}
