//! How deep a round shaft sits in its rowlock; knows no limits.

mod seat;

pub use seat::RoundSeat;
pub use seat::seat_in_flat_u;
pub use seat::seat_in_round_u;

use super::finite;
use crate::units::Angle;
use crate::units::Length;

/// Measures of a bed that no round shaft can have.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum BeddingError {
    /// The shaft has no thickness.
    #[error("the shaft's diameter must be above zero, found {0}")]
    DiameterNotPositive(Length),
    /// The mark in the bed is wider than the shaft that made it.
    #[error("a bed of {chord} can't be made by a shaft of {diameter}")]
    ChordOutside {
        /// Straight width of the mark.
        chord: Length,
        /// The shaft.
        diameter: Length,
    },
    /// The shaft sits deeper than it is thick.
    #[error("a depth of {depth} is outside a shaft of {diameter}")]
    DepthOutside {
        /// Bottom of the shaft to the edges of the bed.
        depth: Length,
        /// The shaft.
        diameter: Length,
    },
    /// The rowlock has no width or no depth.
    #[error("the rowlock's width and depth must be above zero, found {0}")]
    RowlockNotPositive(Length),
}

impl BeddingError {
    /// Says what to do about it.
    #[must_use]
    pub const fn help(self) -> &'static str {
        match self {
            Self::DiameterNotPositive(_) => "measure the shaft across, leather and all",
            Self::ChordOutside { .. } | Self::DepthOutside { .. } => {
                "chalk the bed again, and measure the mark and the shaft at the same place"
            }
            Self::RowlockNotPositive(_) => "measure the rowlock's bed again",
        }
    }
}

/// Returns how deep a round shaft sits, from the straight width of its mark in the bed.
///
/// ```text
///          .-' ' '-.
///         /    diameter
///        |           |
///     ---+---chord---+---   edges of the bed
///         \    |    /
///          '-. v .-'   depth
/// ```
///
/// # Formula
///
/// `(diameter - sqrt(diameter^2 - chord^2)) / 2`; at most half the diameter.
///
/// # Errors
///
/// [`BeddingError::DiameterNotPositive`], or [`BeddingError::ChordOutside`] for a chord below zero
/// or above the diameter.
///
/// # Example
///
/// ```
/// use tholebook::geometry::bedding::depth_from_chord;
/// use tholebook::units::Length;
///
/// let depth = depth_from_chord(Length::mm(50.0), Length::mm(40.0))?;
/// assert_eq!(depth.to_string(), "10.0 mm");
/// # Ok::<(), tholebook::geometry::bedding::BeddingError>(())
/// ```
pub fn depth_from_chord(diameter: Length, chord: Length) -> Result<Length, BeddingError> {
    check_diameter(diameter)?;
    if chord.as_mm() < 0.0 || chord > diameter {
        return Err(BeddingError::ChordOutside { chord, diameter });
    }
    Ok(finite::millimetres(diameter.as_mm() * fraction_of(chord.as_mm() / diameter.as_mm())))
}

/// Returns the part of its diameter that a round shaft sits deep, from the mark in the bed.
///
/// # Units
///
/// A plain part of one: a third is 0.333.
///
/// # Formula
///
/// `(1 - sqrt(1 - (chord/diameter)^2)) / 2`
///
/// # Errors
///
/// As [`depth_from_chord`].
pub fn fraction(diameter: Length, chord: Length) -> Result<f64, BeddingError> {
    depth_from_chord(diameter, chord)?;
    Ok(fraction_of(chord.as_mm() / diameter.as_mm()))
}

fn fraction_of(chord: f64) -> f64 {
    // Written so that two nearly equal numbers are never taken from each other.
    chord * chord / (1.0 + ((1.0 - chord) * (1.0 + chord)).sqrt()) / 2.0
}

/// Returns the straight width of the mark that a round shaft makes in its bed.
///
/// # Formula
///
/// `2 sqrt(depth (diameter - depth))`
///
/// # Errors
///
/// [`BeddingError::DiameterNotPositive`], or [`BeddingError::DepthOutside`] for a depth below zero
/// or above the diameter.
pub fn chord_from_depth(diameter: Length, depth: Length) -> Result<Length, BeddingError> {
    let part = part_of(diameter, depth)?;
    Ok(finite::millimetres(diameter.as_mm() * 2.0 * (part * (1.0 - part)).sqrt()))
}

/// Returns the angle, at the shaft's centre, over which it touches its bed.
///
/// # Formula
///
/// `2 acos(1 - 2 depth/diameter)`
///
/// # Errors
///
/// As [`chord_from_depth`].
pub fn contact_arc(diameter: Length, depth: Length) -> Result<Angle, BeddingError> {
    let part = part_of(diameter, depth)?;
    Ok(Angle::rad(2.0 * (1.0 - 2.0 * part).acos()))
}

fn part_of(diameter: Length, depth: Length) -> Result<f64, BeddingError> {
    check_diameter(diameter)?;
    if depth.as_mm() < 0.0 || depth > diameter {
        return Err(BeddingError::DepthOutside { depth, diameter });
    }
    Ok(depth.as_mm() / diameter.as_mm())
}

fn check_diameter(diameter: Length) -> Result<(), BeddingError> {
    if diameter.as_mm() <= 0.0 {
        return Err(BeddingError::DiameterNotPositive(diameter));
    }
    Ok(())
}

/// What "a third of the round oar sits in the rowlock" is a third of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ThirdOf {
    /// Of the thickness, straight down.
    Depth,
    /// Of the way round.
    Circumference,
    /// Of the area of the section.
    Area,
}

impl ThirdOf {
    /// Returns the depth in the bed as a part of the diameter.
    ///
    /// # Formula
    ///
    /// `1/3`; `(1 - cos 60)/2`; and `(1 - cos(a/2))/2` where `(a - sin a)/(2 pi) = 1/3`.
    #[must_use]
    pub const fn depth_fraction(self) -> f64 {
        match self {
            Self::Depth => 1.0 / 3.0,
            Self::Circumference => 0.25,
            Self::Area => THIRD_OF_AREA,
        }
    }
}

/// The depth at which a third of a circle's area is cut off, over its diameter.
const THIRD_OF_AREA: f64 = 0.367_533_957_698_611_5;

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(value: f64) -> Length {
        Length::mm(value)
    }

    #[test]
    fn a_shaft_bedded_to_half_marks_its_whole_diameter() {
        let depth = depth_from_chord(mm(50.0), mm(50.0)).expect("the chord is the diameter");
        assert!((depth.as_mm() - 25.0).abs() < 1e-12);
        let chord = chord_from_depth(mm(50.0), mm(25.0)).expect("inside the shaft");
        assert!((chord.as_mm() - 50.0).abs() < 1e-12);
        let arc = contact_arc(mm(50.0), mm(25.0)).expect("inside the shaft");
        assert!((arc.as_deg() - 180.0).abs() < 1e-12);
    }

    #[test]
    fn a_shaft_that_lies_wholly_in_its_bed_is_touched_all_round() {
        let arc = contact_arc(mm(50.0), mm(50.0)).expect("no deeper than the shaft is thick");
        assert!((arc.as_deg() - 360.0).abs() < 1e-12);
    }

    #[test]
    fn no_mark_is_no_depth() {
        let depth = depth_from_chord(mm(50.0), mm(0.0)).expect("no mark is allowed");
        assert!(depth.as_mm().abs() < 1e-15);
    }

    #[test]
    fn a_wider_mark_is_a_deeper_bed_and_comes_back() {
        let mut before = -1.0;
        for chord in 0..=50 {
            let chord = mm(f64::from(chord));
            let depth = depth_from_chord(mm(50.0), chord).expect("inside the shaft");
            assert!(depth.as_mm() > before);
            before = depth.as_mm();
            let back = chord_from_depth(mm(50.0), depth).expect("inside the shaft");
            assert!((back.as_mm() - chord.as_mm()).abs() < 1e-6, "{chord}");
            let part = fraction(mm(50.0), chord).expect("inside the shaft");
            assert!((part * 50.0 - before).abs() < 1e-12);
        }
    }

    /// Source: the circle itself: a third of the way round is 120 deg of it.
    #[test]
    fn a_third_of_the_way_round_is_120_degrees_of_contact() {
        let depth = mm(50.0 * ThirdOf::Circumference.depth_fraction());
        let arc = contact_arc(mm(50.0), depth).expect("inside the shaft");
        assert!((arc.as_deg() - 120.0).abs() < 1e-12);
    }

    /// Source: area of a circular segment, (a - sin a)/2 of the radius squared.
    #[test]
    fn a_third_of_the_area_is_cut_off_at_its_depth() {
        let depth = mm(ThirdOf::Area.depth_fraction());
        let arc = contact_arc(mm(1.0), depth).expect("inside the shaft").as_rad();
        let part = (arc - arc.sin()) / (2.0 * std::f64::consts::PI);
        assert!((part - 1.0 / 3.0).abs() < 1e-12, "{part}");
    }

    #[test]
    fn a_third_of_the_depth_is_a_third() {
        assert!((ThirdOf::Depth.depth_fraction() * 3.0 - 1.0).abs() < 1e-15);
    }

    #[test]
    fn a_mark_wider_than_the_shaft_is_refused() {
        for chord in [50.1, -1.0] {
            let expected = BeddingError::ChordOutside { chord: mm(chord), diameter: mm(50.0) };
            assert_eq!(depth_from_chord(mm(50.0), mm(chord)), Err(expected));
            assert_eq!(fraction(mm(50.0), mm(chord)), Err(expected));
        }
    }

    #[test]
    fn a_depth_outside_the_shaft_is_refused() {
        for depth in [50.1, -1.0] {
            let expected = BeddingError::DepthOutside { depth: mm(depth), diameter: mm(50.0) };
            assert_eq!(chord_from_depth(mm(50.0), mm(depth)), Err(expected));
            assert_eq!(contact_arc(mm(50.0), mm(depth)), Err(expected));
        }
    }

    #[test]
    fn a_shaft_without_thickness_is_refused() {
        for diameter in [0.0, -50.0] {
            let expected = BeddingError::DiameterNotPositive(mm(diameter));
            assert_eq!(depth_from_chord(mm(diameter), mm(0.0)), Err(expected));
            assert_eq!(fraction(mm(diameter), mm(0.0)), Err(expected));
            assert_eq!(chord_from_depth(mm(diameter), mm(0.0)), Err(expected));
            assert_eq!(contact_arc(mm(diameter), mm(0.0)), Err(expected));
        }
    }

    #[test]
    fn every_refusal_says_what_to_do() {
        let (chord, depth, diameter) = (mm(2.0), mm(2.0), mm(1.0));
        assert!(BeddingError::DiameterNotPositive(diameter).help().contains("shaft"));
        assert!(BeddingError::ChordOutside { chord, diameter }.help().contains("chalk"));
        assert!(BeddingError::DepthOutside { depth, diameter }.help().contains("chalk"));
        assert!(BeddingError::RowlockNotPositive(diameter).help().contains("bed"));
    }
}
