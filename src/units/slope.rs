//! A slope: so much sideways over so much down, or an angle.

use super::figure::{FigureFault, Unit, figure};
use super::{Angle, Length};

/// A slope as it was read at the boat. What a lone offset was taken over is said at the field.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Slope {
    /// An offset alone: `11`.
    Offset(Length),
    /// An offset and the length down the plumb line: `11 over 176`.
    Over {
        /// Sideways.
        offset: Length,
        /// Down the plumb line.
        down: Length,
    },
    /// An angle: `3.6 deg`.
    Angle(Angle),
}

impl Slope {
    /// Reads a slope.
    ///
    /// # Errors
    ///
    /// [`FigureFault`]: one of the numbers, or a unit that is neither of a length nor of an angle.
    pub fn read(text: &str) -> Result<Self, FigureFault> {
        if let Some((offset, down)) = text.split_once(" over ") {
            return Ok(Self::Over { offset: Length::read(offset)?, down: Length::read(down)? });
        }
        let units: Vec<Unit> = Length::UNITS.iter().chain(Angle::UNITS).copied().collect();
        let read = figure(text, &units)?;
        if Angle::UNITS.iter().any(|unit| unit.word == read.unit.word) {
            return Ok(Self::Angle(Angle::deg(read.value)));
        }
        Ok(Self::Offset(Length::mm(read.value)))
    }
}

impl std::fmt::Display for Slope {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Offset(offset) => write!(f, "{offset}"),
            Self::Over { offset, down } => write!(f, "{offset} over {down}"),
            Self::Angle(angle) => write!(f, "{angle}"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_slope_is_an_offset_an_offset_over_a_length_or_an_angle() {
        assert_eq!(Slope::read("11"), Ok(Slope::Offset(Length::mm(11.0))));
        assert_eq!(Slope::read("1.1 cm"), Ok(Slope::Offset(Length::mm(11.0))));
        let over = Slope::Over { offset: Length::mm(-0.5), down: Length::mm(150.0) };
        assert_eq!(Slope::read("-0.5 over 150"), Ok(over));
        assert_eq!(Slope::read("3.6 deg"), Ok(Slope::Angle(Angle::deg(3.6))));
        assert_eq!(Slope::read("5.7°"), Ok(Slope::Angle(Angle::deg(5.7))));
    }

    #[test]
    fn a_slope_in_another_unit_is_refused() {
        assert!(matches!(Slope::read("3 %"), Err(FigureFault::Unit { .. })));
        assert!(matches!(Slope::read("11 over"), Err(FigureFault::Unit { .. })));
        assert!(matches!(Slope::read("11 over 1,5"), Err(FigureFault::Number(_))));
    }
}
