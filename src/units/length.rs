//! A length.

use super::figure::Unit;
use super::quantity;

/// A length, kept in millimetres.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Length(f64);

quantity!(Length, "mm", 1);

impl Length {
    /// What a length may be written in; a bare number is in the first.
    ///
    /// # Source
    ///
    /// The inch is 25.4 mm by definition (international yard and pound agreement, 1959).
    pub const UNITS: &'static [Unit] = &[
        Unit::ten("mm", 0),
        Unit::ten("cm", 1),
        Unit::ten("m", 3),
        Unit::ratio("in", 254.0, 10.0),
    ];

    /// Wraps a number of millimetres known to be finite.
    ///
    /// # Panics
    ///
    /// If `millimetres` is infinite or NaN. For numbers from a file use `try_from`.
    #[must_use]
    pub const fn mm(millimetres: f64) -> Self {
        assert!(millimetres.is_finite(), "a length must be finite");
        Self(millimetres)
    }

    /// Returns the number of millimetres.
    #[must_use]
    pub const fn as_mm(self) -> f64 {
        self.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{FigureFault, NumberFault};

    #[test]
    fn a_length_is_read_in_each_unit() {
        for text in ["600", "600mm", "60 cm", "60cm", "0.6 m", "+600 mm"] {
            assert_eq!(Length::read(text), Ok(Length::mm(600.0)), "{text}");
        }
        assert_eq!(Length::read("23 5/8 in"), Ok(Length::mm(600.075)));
        assert_eq!(Length::read("5/8 in"), Ok(Length::mm(15.875)));
        assert_eq!(Length::read("-1 1/2 in"), Ok(Length::mm(-38.1)));
        assert_eq!(Length::read("1.5mm"), Ok(Length::mm(1.5)));
    }

    #[test]
    fn an_unknown_unit_is_told_with_the_known_ones() {
        for text in ["6 ft", "1,5 furlong", "60 CM", "3 deg"] {
            let fault = Length::read(text).expect_err(text);
            let unit = matches!(fault, FigureFault::Unit { .. });
            assert!(unit || text.contains(','), "{text}: {fault}");
        }
        let fault = Length::read("6 ft").expect_err("feet");
        assert_eq!(fault.help(), "write it in mm, cm, m, in");
    }

    #[test]
    fn what_is_no_number_is_not_told_as_a_unit() {
        let cases = [
            ("0x1f", NumberFault::OtherBase),
            ("1e3", NumberFault::Exponent),
            (".nan", NumberFault::NotFinite),
            ("-.inf", NumberFault::NotFinite),
            ("1,5 mm", NumberFault::DecimalComma),
            ("−2 mm", NumberFault::DashMinus),
            ("nine", NumberFault::NotANumber),
            ("1 000 mm", NumberFault::Blank),
            ("1/0 in", NumberFault::NotANumber),
            ("5/8", NumberFault::NotANumber),
        ];
        for (text, fault) in cases {
            assert_eq!(Length::read(text), Err(FigureFault::Number(fault)), "{text}");
        }
    }
}
