//! Gearing of an oar and the way its blade goes; knows one oar and no limits.

use super::finite;
use crate::units::Angle;
use crate::units::Length;

/// Measures of an oar that give no lever.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum GearingError {
    /// Nothing inboard, so nothing to pull on.
    #[error("the inboard must be above zero, found {0}")]
    InboardNotPositive(Length),
    /// The oar ends before its collar.
    #[error("the oar's length of {length} must be more than its inboard of {inboard}")]
    NothingOutboard {
        /// The whole oar.
        length: Length,
        /// Handle end to collar.
        inboard: Length,
    },
    /// The hands are not inboard of the pin.
    #[error("the hands must be inboard of the pin, found {0} from pin to hands")]
    HandsPastPin(Length),
    /// The blade's centre is not outboard of the pin.
    #[error("the blade's centre must be outboard of the pin, found {0} from pin to blade")]
    BladeInsidePin(Length),
}

impl GearingError {
    /// Says what to do about it.
    #[must_use]
    pub const fn help(self) -> &'static str {
        match self {
            Self::InboardNotPositive(_) => "measure from the handle's end to the collar's face",
            Self::NothingOutboard { .. } => "measure the oar's length and its inboard again",
            Self::HandsPastPin(_) => "measure the inboard and the grip again",
            Self::BladeInsidePin(_) => "measure the oar's length and its blade again",
        }
    }
}

/// The two arms of an oar, from the pin.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Levers {
    /// Pin to the middle of the hands.
    pub hand: Length,
    /// Pin to the centre of the blade.
    pub blade: Length,
}

/// Returns the gearing: outboard over inboard.
///
/// ```text
///   handle's end       collar's face                      tip
///      |------ inboard ------|---------- outboard ----------|
///      |------------------- length -------------------------|
/// ```
///
/// # Units
///
/// A plain ratio.
///
/// # Formula
///
/// `(length - inboard) / inboard`
///
/// # Errors
///
/// [`GearingError::InboardNotPositive`] or [`GearingError::NothingOutboard`].
///
/// # Example
///
/// ```
/// use tholebook::geometry::gearing::gearing;
/// use tholebook::units::Length;
///
/// let ratio = gearing(Length::mm(3860.0), Length::mm(1150.0))?;
/// assert_eq!(format!("{ratio:.3}"), "2.357");
/// # Ok::<(), tholebook::geometry::gearing::GearingError>(())
/// ```
pub fn gearing(length: Length, inboard: Length) -> Result<f64, GearingError> {
    if inboard.as_mm() <= 0.0 {
        return Err(GearingError::InboardNotPositive(inboard));
    }
    if length <= inboard {
        return Err(GearingError::NothingOutboard { length, inboard });
    }
    Ok(finite::held((length.as_mm() - inboard.as_mm()) / inboard.as_mm()))
}

/// Returns the two arms of an oar.
///
/// ```text
///   end  hands      collar  pin                centre  tip
///    |-----o-----------|----o--------------------o------|
///    |<--->| grip      |<-->| collar to pin      |<---->| tip to centre
///          |<--- hand ----->|<----- blade ------>|
/// ```
///
/// # Formula
///
/// ```text
/// hand  = inboard + collar_to_pin - handle_end_to_hands
/// blade = length - inboard - collar_to_pin - tip_to_blade_centre
/// ```
///
/// # Errors
///
/// [`GearingError::HandsPastPin`] or [`GearingError::BladeInsidePin`].
pub fn levers(
    length: Length,
    inboard: Length,
    collar_to_pin: Length,
    handle_end_to_hands: Length,
    tip_to_blade_centre: Length,
) -> Result<Levers, GearingError> {
    let to_pin = inboard.as_mm() + collar_to_pin.as_mm();
    let hand = finite::millimetres(to_pin - handle_end_to_hands.as_mm());
    let blade = finite::millimetres(length.as_mm() - to_pin - tip_to_blade_centre.as_mm());
    if hand.as_mm() <= 0.0 {
        return Err(GearingError::HandsPastPin(hand));
    }
    if blade.as_mm() <= 0.0 {
        return Err(GearingError::BladeInsidePin(blade));
    }
    Ok(Levers { hand, blade })
}

/// Returns the gearing of the true levers: pin to blade's centre over pin to hands.
///
/// It shifts both arms against [`gearing`]: the two can agree by accident; compare like with like.
///
/// # Formula
///
/// `blade / hand` of [`levers`].
///
/// # Errors
///
/// As [`levers`].
pub fn lever_gearing(
    length: Length,
    inboard: Length,
    collar_to_pin: Length,
    handle_end_to_hands: Length,
    tip_to_blade_centre: Length,
) -> Result<f64, GearingError> {
    let arms = levers(length, inboard, collar_to_pin, handle_end_to_hands, tip_to_blade_centre)?;
    Ok(finite::held(arms.blade.as_mm() / arms.hand.as_mm()))
}

/// Returns how far a point at `radius` along the shaft goes, along its arc over the water.
///
/// ```text
///             .-' ' '-.   arc
///         o'-----------'o     chord
///          \           /
///    finish  \       /  catch
///              \   /
///               pin
/// ```
///
/// # Formula
///
/// `radius cos(dip) (catch_at - finish_at)`, the angle in radians.
#[must_use]
pub fn arc_length(radius: Length, catch_at: Angle, finish_at: Angle, dip: Angle) -> Length {
    let angle = catch_at.as_rad() - finish_at.as_rad();
    finite::millimetres(radius.as_mm() * dip.cos() * angle)
}

/// Returns the straight distance from catch to finish of a point at `radius` along the shaft.
///
/// # Formula
///
/// `2 radius cos(dip) sin((catch_at - finish_at)/2)`
#[must_use]
pub fn chord_length(radius: Length, catch_at: Angle, finish_at: Angle, dip: Angle) -> Length {
    let half = (catch_at.as_rad() - finish_at.as_rad()) / 2.0;
    finite::millimetres(2.0 * radius.as_mm() * dip.cos() * half.sin())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(value: f64) -> Length {
        Length::mm(value)
    }

    #[test]
    fn equal_arms_have_a_gearing_of_one() {
        assert!((gearing(mm(2400.0), mm(1200.0)).expect("a sound oar") - 1.0).abs() < 1e-12);
    }

    /// Source: by hand, 10 mm of inboard is 1.2 % of the gearing of such an oar.
    #[test]
    fn more_inboard_is_less_gearing() {
        let at = |inboard| gearing(mm(3860.0), mm(inboard)).expect("a sound oar");
        assert!((at(1150.0) / at(1160.0) - 1.0 - 0.0123).abs() < 2e-4);
    }

    /// Source: worked by hand: 3900, 1150, 30, 150, 250 gives arms of 1030 and 2470.
    #[test]
    fn the_levers_start_at_the_pin() {
        let [length, inboard, collar, grip, tip] = [3900.0, 1150.0, 30.0, 150.0, 250.0].map(mm);
        let arms = levers(length, inboard, collar, grip, tip).expect("a sound oar");
        assert!((arms.hand.as_mm() - 1030.0).abs() < 1e-12);
        assert!((arms.blade.as_mm() - 2470.0).abs() < 1e-12);
        let ratio = lever_gearing(length, inboard, collar, grip, tip).expect("a sound oar");
        assert!((ratio - 2.398).abs() < 5e-4);
    }

    #[test]
    fn an_oar_without_inboard_or_outboard_is_refused() {
        for inboard in [0.0, -1.0] {
            let refused = gearing(mm(3860.0), mm(inboard));
            assert_eq!(refused, Err(GearingError::InboardNotPositive(mm(inboard))));
        }
        for length in [1150.0, 900.0] {
            let expected =
                GearingError::NothingOutboard { length: mm(length), inboard: mm(1150.0) };
            assert_eq!(gearing(mm(length), mm(1150.0)), Err(expected));
        }
    }

    #[test]
    fn hands_past_the_pin_and_a_blade_inside_it_are_refused() {
        let at =
            |length, grip| lever_gearing(mm(length), mm(1150.0), mm(30.0), mm(grip), mm(250.0));
        assert_eq!(at(3900.0, 1180.0), Err(GearingError::HandsPastPin(mm(0.0))));
        assert_eq!(at(1430.0, 150.0), Err(GearingError::BladeInsidePin(mm(0.0))));
        assert_eq!(at(1400.0, 150.0), Err(GearingError::BladeInsidePin(mm(-30.0))));
    }

    #[test]
    fn every_refusal_says_what_to_do() {
        let length = mm(1.0);
        assert!(GearingError::InboardNotPositive(length).help().contains("collar"));
        assert!(
            GearingError::NothingOutboard { length, inboard: length }.help().contains("length")
        );
        assert!(GearingError::HandsPastPin(length).help().contains("grip"));
        assert!(GearingError::BladeInsidePin(length).help().contains("blade"));
    }

    /// Source: a half turn: the arc is pi times the radius, the chord twice it.
    #[test]
    fn a_half_turn_has_the_arc_and_chord_of_a_half_circle() {
        let (catch, finish, level) = (Angle::deg(90.0), Angle::deg(-90.0), Angle::deg(0.0));
        let arc = arc_length(mm(1000.0), catch, finish, level).as_mm();
        let chord = chord_length(mm(1000.0), catch, finish, level).as_mm();
        assert!((arc - 1000.0 * std::f64::consts::PI).abs() < 1e-9);
        assert!((chord - 2000.0).abs() < 1e-9);
    }

    #[test]
    fn a_dipped_shaft_sweeps_less() {
        let at = |dip| arc_length(mm(2470.0), Angle::deg(50.0), Angle::deg(-35.0), Angle::deg(dip));
        assert!((at(60.0).as_mm() / at(0.0).as_mm() - 0.5).abs() < 1e-12);
    }
}
