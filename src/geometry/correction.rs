//! How much to pack or bend to bring a pin upright, and what play hides; knows no limits.

use super::finite;
use crate::units::Angle;
use crate::units::Length;

/// A rowlock that can't have play.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum PlayError {
    /// The bush has no length to tilt over.
    #[error("the length of the rowlock's bush must be above zero, found {0}")]
    BushNotPositive(Length),
    /// The pin is thicker than the hole.
    #[error("the play between pin and rowlock can't be below zero, found {0}")]
    PlayNegative(Length),
}

impl PlayError {
    /// Says what to do about it.
    #[must_use]
    pub const fn help(self) -> &'static str {
        match self {
            Self::BushNotPositive(_) => "measure how much of the pin the rowlock covers",
            Self::PlayNegative(_) => "measure the pin and the rowlock's hole again",
        }
    }
}

/// Returns the packing that brings a leaning pin upright, under the far edge of its plate.
///
/// The near edge stays down. A pin that leans aft (positive) is packed under the stern edge, one
/// that leans out (positive) under the outboard edge; negative, under the other one. The two ways
/// are independent.
///
/// ```text
///       \ pin leans
///        \
///   ______\________            near edge
///   |  plate ___---'
///   | --'  '
///   packing        |
///   |<--- base --->|    measured level
/// ```
///
/// # Formula
///
/// `base tan(lean)`
///
/// # Example
///
/// ```
/// use tholebook::geometry::correction::packing_thickness;
/// use tholebook::units::{Angle, Length};
///
/// let packing = packing_thickness(Length::mm(100.0), Angle::deg(2.0));
/// assert_eq!(packing.to_string(), "3.5 mm");
/// ```
#[must_use]
pub fn packing_thickness(base: Length, lean: Angle) -> Length {
    finite::millimetres(base.as_mm() * lean.tan())
}

/// Returns the packing where the base is measured along the leaning plate.
///
/// # Formula
///
/// `base sin(lean)`; 0.55 % less than [`packing_thickness`] at 6 deg.
#[must_use]
pub fn packing_along_plate(base: Length, lean: Angle) -> Length {
    finite::millimetres(base.as_mm() * lean.sin())
}

/// Returns how far a point on the pin is out of place, level, at a height above the bend.
///
/// Positive the way the pin leans: bend it back by as much.
///
/// ```text
///   |<-->|  tip move
///    \   |
///     \  |  height
///      \ |
///       \|  bend
/// ```
///
/// # Formula
///
/// `height tan(lean)`
#[must_use]
pub fn tip_move(height: Length, lean: Angle) -> Length {
    finite::millimetres(height.as_mm() * lean.tan())
}

/// Returns how far a loose rowlock can tilt on its pin, from one end of its play to the other.
///
/// ```text
///        | pin |
///      |/|     | |
///      | |     |/|   bush length
///      ->|-|<-       play across the pin, both sides together
/// ```
///
/// # Formula
///
/// `atan(play / bush_length)`
///
/// # Accuracy
///
/// The pin's own thickness across the tilted bush is left out: 1 % at 6 deg.
///
/// # Errors
///
/// [`PlayError::BushNotPositive`] or [`PlayError::PlayNegative`].
pub fn pin_play_tilt(play: Length, bush_length: Length) -> Result<Angle, PlayError> {
    if bush_length.as_mm() <= 0.0 {
        return Err(PlayError::BushNotPositive(bush_length));
    }
    if play.as_mm() < 0.0 {
        return Err(PlayError::PlayNegative(play));
    }
    Ok(Angle::rad(play.as_mm().atan2(bush_length.as_mm())))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(value: f64) -> Length {
        Length::mm(value)
    }

    /// Source: worked by hand, mm of packing by base and lean.
    #[test]
    fn packing_follows_base_and_lean() {
        for (base, lean, packing) in
            [(60.0, 1.0, 1.05), (80.0, 2.0, 2.79), (100.0, 3.0, 5.24), (120.0, 3.0, 6.29)]
        {
            let found = packing_thickness(mm(base), Angle::deg(lean)).as_mm();
            assert!((found - packing).abs() < 5e-3, "{base} {lean}: {found}");
        }
    }

    #[test]
    fn an_upright_pin_needs_nothing() {
        let upright = Angle::deg(0.0);
        assert!(packing_thickness(mm(100.0), upright).as_mm().abs() < 1e-15);
        assert!(packing_along_plate(mm(100.0), upright).as_mm().abs() < 1e-15);
        assert!(tip_move(mm(100.0), upright).as_mm().abs() < 1e-15);
    }

    #[test]
    fn a_pin_that_leans_the_other_way_is_mended_the_other_way() {
        let (out, inward) = (Angle::deg(1.5), Angle::deg(-1.5));
        for mend in [packing_thickness, packing_along_plate, tip_move] {
            assert!(mend(mm(100.0), out).as_mm() > 0.0);
            let both = mend(mm(100.0), out).as_mm() + mend(mm(100.0), inward).as_mm();
            assert!(both.abs() < 1e-12);
        }
    }

    #[test]
    fn a_base_along_the_plate_takes_a_little_less() {
        let level = packing_thickness(mm(100.0), Angle::deg(6.0)).as_mm();
        let along = packing_along_plate(mm(100.0), Angle::deg(6.0)).as_mm();
        assert!((1.0 - along / level - 0.0055).abs() < 5e-5);
    }

    #[test]
    fn a_tight_rowlock_does_not_tilt_and_a_loose_one_does() {
        let tilt = |play| pin_play_tilt(mm(play), mm(60.0)).expect("a sound bush").as_deg();
        assert!(tilt(0.0).abs() < 1e-15);
        assert!((tilt(1.0) - 0.955).abs() < 5e-4);
        assert!((tilt(60.0) - 45.0).abs() < 1e-12);
    }

    #[test]
    fn a_bush_without_length_and_a_pin_too_thick_are_refused() {
        for bush in [0.0, -1.0] {
            let expected = PlayError::BushNotPositive(mm(bush));
            assert_eq!(pin_play_tilt(mm(1.0), mm(bush)), Err(expected));
            assert!(expected.help().contains("pin"));
        }
        let expected = PlayError::PlayNegative(mm(-0.1));
        assert_eq!(pin_play_tilt(mm(-0.1), mm(60.0)), Err(expected));
        assert!(expected.help().contains("hole"));
    }
}
