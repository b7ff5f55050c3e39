//! Points of a rigged boat seen from above; knows one pin and one oar, and no seats.

use super::Side;
use super::finite;
use crate::units::Angle;
use crate::units::Length;

/// A point of the boat seen from above.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlanPoint {
    /// Along the string line, to the bow positive.
    pub along: Length,
    /// Square to the string line, to port positive.
    pub across: Length,
}

/// Returns the point that stands so far from the string line on one side, away from it positive.
#[must_use]
pub fn beside_string(along: Length, out: Length, side: Side) -> PlanPoint {
    PlanPoint { along, across: finite::millimetres(side.sign() * out.as_mm()) }
}

/// Returns a point of an oar, so far from its pin along the shaft, to the blade positive.
///
/// ```text
///     bow
///      ^      blade        port oar; a starboard one is its mirror image
///      |   .'
///      | .' theta
///      o- - - - - -> outboard
///    .' pin
///   ' handle
/// ```
///
/// # Formula
///
/// ```text
/// along  = pin + from_pin cos(dip) sin(theta)
/// across = pin + side from_pin cos(dip) cos(theta)
/// ```
///
/// `theta` is positive to the catch, `dip` with the blade low, `side` +1 on port.
///
/// # Accuracy
///
/// Exact for a straight shaft whose axis crosses the pin's.
#[must_use]
pub fn on_oar(pin: PlanPoint, side: Side, theta: Angle, dip: Angle, from_pin: Length) -> PlanPoint {
    let seen = from_pin.as_mm() * dip.cos();
    PlanPoint {
        along: finite::millimetres(pin.along.as_mm() + seen * theta.sin()),
        across: finite::millimetres(pin.across.as_mm() + side.sign() * seen * theta.cos()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn end(side: Side, theta: f64, dip: f64) -> (f64, f64) {
        let pin = beside_string(Length::mm(2000.0), Length::mm(800.0), side);
        let end = on_oar(pin, side, Angle::deg(theta), Angle::deg(dip), Length::mm(1000.0));
        (end.along.as_mm(), end.across.as_mm())
    }

    fn near(got: (f64, f64), want: (f64, f64)) {
        assert!((got.0 - want.0).hypot(got.1 - want.1) < 1e-9, "{got:?} {want:?}");
    }

    /// Source: the right triangle with sides 1, 1/2 and the root of 3/4.
    #[test]
    fn an_oar_at_thirty_degrees_reaches_half_its_length_to_the_bow() {
        let out = 1000.0 * 0.75_f64.sqrt();
        near(end(Side::Port, 30.0, 0.0), (2500.0, 800.0 + out));
        near(end(Side::Starboard, 30.0, 0.0), (2500.0, -800.0 - out));
        near(end(Side::Port, -30.0, 0.0), (1500.0, 800.0 + out));
    }

    #[test]
    fn a_dipped_oar_is_seen_shorter_from_above() {
        near(end(Side::Port, 0.0, 60.0), (2000.0, 1300.0));
    }
}
