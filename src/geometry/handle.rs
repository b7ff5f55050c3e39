//! Where the handle's end comes to, across the boat; knows nothing of who sits there.

use super::finite;
use crate::units::Angle;
use crate::units::Length;

/// Returns how far the handle's end is past the seat mark, the oar square off.
///
/// `seat_mark` is positive on the far side of the centreline from the rowlock. `collar_to_pin` is
/// taken along the oar, from the collar's bearing face to the pin.
///
/// ```text
///   pin           string line    seat mark      handle's end
///    o---|------------|--------------|--------------|
///    |<->| collar     |<- seat mark ->|<- past mark ->|
///    |<---- spread ---->|
///        |<------------------ inboard ---------------->|   along the shaft
/// ```
///
/// # Formula
///
/// `(inboard + collar_to_pin) cos(dip) - spread - seat_mark`
///
/// # Accuracy
///
/// Exact square off; an oar 3 deg off square loses 1.6 mm of 1180, 5 deg loses 4.5 mm.
///
/// # Example
///
/// ```
/// use tholebook::geometry::handle::past_mark;
/// use tholebook::units::{Angle, Length};
///
/// let [inboard, collar, spread, mark] = [1150.0, 30.0, 792.0, 61.0].map(Length::mm);
/// let past = past_mark(inboard, collar, spread, mark, Angle::deg(6.0));
/// assert_eq!(past.to_string(), "320.5 mm");
/// ```
#[must_use]
pub fn past_mark(
    inboard: Length,
    collar_to_pin: Length,
    spread: Length,
    seat_mark: Length,
    dip: Angle,
) -> Length {
    let past_string = past_centreline(inboard, collar_to_pin, spread, dip);
    finite::millimetres(past_string.as_mm() - seat_mark.as_mm())
}

/// Returns how far the handle's end is past the centreline (the overlap), the oar square off.
///
/// # Formula
///
/// `(inboard + collar_to_pin) cos(dip) - spread`
#[must_use]
pub fn past_centreline(
    inboard: Length,
    collar_to_pin: Length,
    spread: Length,
    dip: Angle,
) -> Length {
    let along = inboard.as_mm() + collar_to_pin.as_mm();
    finite::millimetres(along * dip.cos() - spread.as_mm())
}

/// Returns the inboard that brings the handle's end so far past the seat mark.
///
/// # Formula
///
/// `(past_mark + spread + seat_mark) / cos(dip) - collar_to_pin`
#[must_use]
pub fn inboard_for(
    past_mark: Length,
    collar_to_pin: Length,
    spread: Length,
    seat_mark: Length,
    dip: Angle,
) -> Length {
    let across = past_mark.as_mm() + spread.as_mm() + seat_mark.as_mm();
    finite::millimetres(across / dip.cos() - collar_to_pin.as_mm())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn past(inboard: f64, collar: f64, spread: f64, mark: f64, dip: f64) -> f64 {
        let [inboard, collar, spread, mark] = [inboard, collar, spread, mark].map(Length::mm);
        past_mark(inboard, collar, spread, mark, Angle::deg(dip)).as_mm()
    }

    #[test]
    fn a_level_shaft_is_plain_subtraction() {
        assert!((past(1150.0, 30.0, 790.0, 60.0, 0.0) - 330.0).abs() < 1e-12);
    }

    /// Source: sensitivities of the formula: -1 to spread and seat mark, cos(dip) to inboard and
    /// collar, less handle for more dip.
    #[test]
    fn each_measure_moves_the_handle_its_own_way() {
        let middle = past(1150.0, 30.0, 790.0, 60.0, 6.0);
        let cos = 6.0_f64.to_radians().cos();
        assert!((past(1151.0, 30.0, 790.0, 60.0, 6.0) - middle - cos).abs() < 1e-9);
        assert!((past(1150.0, 31.0, 790.0, 60.0, 6.0) - middle - cos).abs() < 1e-9);
        assert!((past(1150.0, 30.0, 791.0, 60.0, 6.0) - middle + 1.0).abs() < 1e-9);
        assert!((past(1150.0, 30.0, 790.0, 61.0, 6.0) - middle + 1.0).abs() < 1e-9);
        assert!((past(1150.0, 30.0, 790.0, 60.0, 7.0) - middle + 2.34).abs() < 0.01);
    }

    #[test]
    fn the_inboard_that_was_asked_for_brings_the_handle_there() {
        for dip in [0.0, 4.0, 8.0] {
            let [wanted, collar, spread, mark] = [320.0, 30.0, 792.0, -61.0].map(Length::mm);
            let inboard = inboard_for(wanted, collar, spread, mark, Angle::deg(dip)).as_mm();
            assert!((past(inboard, 30.0, 792.0, -61.0, dip) - 320.0).abs() < 1e-9);
        }
    }

    #[test]
    fn past_the_centreline_is_past_a_mark_on_the_centreline() {
        let [inboard, collar, spread] = [1150.0, 30.0, 792.0].map(Length::mm);
        let overlap = past_centreline(inboard, collar, spread, Angle::deg(6.0)).as_mm();
        assert!((overlap - past(1150.0, 30.0, 792.0, 0.0, 6.0)).abs() < 1e-12);
    }

    #[test]
    fn numbers_of_no_boat_stay_finite() {
        assert!(past(f64::MAX, f64::MAX, -f64::MAX, 0.0, 180.0).is_finite());
        let [most, dip] = [Length::mm(f64::MAX), Length::mm(0.0)];
        assert!(inboard_for(most, dip, most, most, Angle::deg(90.0)).as_mm().is_finite());
    }
}
