//! Angles from what a rule reads against a plumb line; knows neither pins nor boats.

use crate::units::Angle;
use crate::units::Length;

/// A reading that describes no triangle.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum ReadingError {
    /// The blade has no width, so there is nothing to pitch.
    #[error("the blade's width at the pitch mark must be above zero, found {0}")]
    WidthNotPositive(Length),
    /// The offset can't be more than the blade's width.
    #[error("an offset of {offset} is more than the blade's width of {edge_to_edge}")]
    OffsetPastEdge {
        /// The offset as read.
        offset: Length,
        /// The blade's width at the same mark.
        edge_to_edge: Length,
    },
    /// The plumb line has no length.
    #[error("the length down the plumb line must be above zero, found {0}")]
    GaugeNotPositive(Length),
}

impl ReadingError {
    /// Says what to do about it.
    #[must_use]
    pub const fn help(self) -> &'static str {
        match self {
            Self::WidthNotPositive(_) => "measure the blade edge to edge at the pitch mark",
            Self::OffsetPastEdge { .. } => {
                "read the offset again, and the blade edge to edge at the same mark"
            }
            Self::GaugeNotPositive(_) => "give the mm down the plumb line between the two readings",
        }
    }
}

/// Returns the pitch of a blade from the offset of its lower edge from a plumb line.
///
/// The bob hangs over the blade's top edge at the pitch mark. The offset is taken level, from the
/// lower edge to the line, positive with the top to the stern. The width is the blade's own, from
/// edge to edge at that mark: how far the mark is from the tip has no part in it.
///
/// ```text
///     top edge  o            seen along the shaft, stern to the left
///               |`.
///               |  `.  edge to edge
///        plumb  |    `.
///         line  |      `.
///               |<------->o  lower edge
///                 offset
/// ```
///
/// # Formula
///
/// `pitch = asin(offset / edge_to_edge)`, exact. An offset over mm *down the plumb line* is another
/// triangle, see [`slope_from_offset`]: 10 over 100 is 5.739 deg here and 5.711 deg there.
///
/// # Errors
///
/// [`ReadingError::WidthNotPositive`] or [`ReadingError::OffsetPastEdge`].
///
/// # Example
///
/// ```
/// use tholebook::geometry::reading::pitch_from_offset;
/// use tholebook::units::Length;
///
/// let pitch = pitch_from_offset(Length::mm(11.0), Length::mm(176.0))?;
/// assert_eq!(pitch.to_string(), "3.58 deg");
/// # Ok::<(), tholebook::geometry::reading::ReadingError>(())
/// ```
pub fn pitch_from_offset(offset: Length, edge_to_edge: Length) -> Result<Angle, ReadingError> {
    if edge_to_edge.as_mm() <= 0.0 {
        return Err(ReadingError::WidthNotPositive(edge_to_edge));
    }
    if offset.abs() > edge_to_edge {
        return Err(ReadingError::OffsetPastEdge { offset, edge_to_edge });
    }
    Ok(Angle::rad((offset.as_mm() / edge_to_edge.as_mm()).asin()))
}

/// Returns the angle of a slope given as mm sideways over mm down the plumb line.
///
/// ```text
///           plumb line
///               |<-offset->o
///               |        .'
///         down  |      .'
///               |    .'
///               |  .'
///               |.'
/// ```
///
/// # Formula
///
/// `slope = atan(offset / down)`, exact, between -90 and 90 deg.
///
/// # Errors
///
/// [`ReadingError::GaugeNotPositive`].
///
/// # Example
///
/// ```
/// use tholebook::geometry::reading::slope_from_offset;
/// use tholebook::units::Length;
///
/// let slope = slope_from_offset(Length::mm(7.0), Length::mm(100.0))?;
/// assert_eq!(slope.to_string(), "4.00 deg");
/// # Ok::<(), tholebook::geometry::reading::ReadingError>(())
/// ```
pub fn slope_from_offset(offset: Length, down: Length) -> Result<Angle, ReadingError> {
    if down.as_mm() <= 0.0 {
        return Err(ReadingError::GaugeNotPositive(down));
    }
    Ok(Angle::rad(offset.as_mm().atan2(down.as_mm())))
}

/// Returns how far a pin leans, from its offset over the gauge of the pin tube.
///
/// The same triangle as [`slope_from_offset`], looked at square from the side or from the end.
///
/// # Errors
///
/// [`ReadingError::GaugeNotPositive`].
pub fn lean_from_offset(offset: Length, gauge: Length) -> Result<Angle, ReadingError> {
    slope_from_offset(offset, gauge)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(value: f64) -> Length {
        Length::mm(value)
    }

    /// Source: the 3-4-5 triangle; asin(3/5) = 36.869 897 645 844 deg.
    #[test]
    fn thirty_across_a_blade_of_fifty_is_the_345_triangle() {
        let pitch = pitch_from_offset(mm(30.0), mm(50.0)).expect("the offset is inside the blade");
        assert!((pitch.as_deg() - 36.869_897_645_844).abs() < 1e-12, "{pitch}");
    }

    #[test]
    fn equal_legs_slope_half_a_right_angle() {
        let slope = slope_from_offset(mm(80.0), mm(80.0)).expect("the line has a length");
        assert!((slope.as_deg() - 45.0).abs() < 1e-12);
    }

    #[test]
    fn no_offset_is_no_angle_and_the_other_way_is_negative() {
        let pitch = |offset| pitch_from_offset(mm(offset), mm(176.0)).expect("inside the blade");
        let lean = |offset| lean_from_offset(mm(offset), mm(150.0)).expect("the gauge is 150");
        assert!(pitch(0.0).as_deg().abs() < 1e-15 && lean(0.0).as_deg().abs() < 1e-15);
        assert!((pitch(-11.0).as_deg() + pitch(11.0).as_deg()).abs() < 1e-15);
        assert!((lean(-3.0).as_deg() + lean(3.0).as_deg()).abs() < 1e-15);
        assert!(pitch(-11.0).as_deg() < 0.0 && lean(-3.0).as_deg() < 0.0);
    }

    #[test]
    fn more_offset_is_more_angle_up_to_the_edge_of_the_blade() {
        let mut before = -91.0;
        for offset in -176..=176 {
            let pitch = pitch_from_offset(mm(f64::from(offset)), mm(176.0)).expect("inside");
            assert!(pitch.as_deg() > before, "at {offset}");
            before = pitch.as_deg();
        }
        assert!((before - 90.0).abs() < 1e-12);
    }

    #[test]
    fn a_blade_without_width_is_refused() {
        for width in [0.0, -176.0] {
            let refused = pitch_from_offset(mm(0.0), mm(width));
            assert_eq!(refused, Err(ReadingError::WidthNotPositive(mm(width))));
        }
    }

    #[test]
    fn an_offset_past_the_blades_edge_is_refused_either_way() {
        for offset in [176.1, -176.1] {
            let refused = pitch_from_offset(mm(offset), mm(176.0));
            let expected =
                ReadingError::OffsetPastEdge { offset: mm(offset), edge_to_edge: mm(176.0) };
            assert_eq!(refused, Err(expected));
        }
    }

    #[test]
    fn a_plumb_line_without_length_is_refused() {
        for down in [0.0, -100.0] {
            let expected = Err(ReadingError::GaugeNotPositive(mm(down)));
            assert_eq!(slope_from_offset(mm(7.0), mm(down)), expected);
            assert_eq!(lean_from_offset(mm(7.0), mm(down)), expected);
        }
    }

    #[test]
    fn every_refusal_says_what_to_do() {
        let width = ReadingError::WidthNotPositive(mm(0.0)).help();
        let gauge = ReadingError::GaugeNotPositive(mm(0.0)).help();
        let past = ReadingError::OffsetPastEdge { offset: mm(2.0), edge_to_edge: mm(1.0) }.help();
        assert!(width.contains("edge to edge") && past.contains("again"));
        assert!(gauge.contains("plumb line"));
    }
}
