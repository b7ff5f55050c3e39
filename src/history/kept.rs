//! One value at one time: what it says, free of how it was written, and what changed since another.

use crate::model::Quantity;
use crate::model::Said;
use crate::units::Slope;

/// A value: every reading of it, in order, and how each was written.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Kept {
    /// What it says.
    pub said: Vec<Said>,
    /// How it was written.
    pub written: Vec<Box<str>>,
}

/// How a value differs from another that says the same.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum Rewritten {
    /// Not at all.
    Not,
    /// In its unit.
    Unit,
    /// In its decimals, its quotes or its blanks.
    Precision,
}

impl Kept {
    /// Returns whether both say the same, however they were written.
    #[must_use]
    pub fn is_same(&self, other: &Self) -> bool {
        self.said == other.said
    }

    /// Returns whether it can't be told what the value says.
    #[must_use]
    pub fn is_unread(&self) -> bool {
        self.said.contains(&Said::Unread)
    }

    /// Returns how this was written otherwise than another that says the same.
    #[must_use]
    pub fn rewritten(&self, before: &Self) -> Rewritten {
        if self.written == before.written {
            return Rewritten::Not;
        }
        let unit = |text: &str| -> String {
            text.chars().filter(|c| c.is_alphabetic() || *c == '°').collect()
        };
        let units = |value: &Self| -> Vec<String> {
            value.written.iter().map(|text| unit(text)).collect()
        };
        if units(self) == units(before) { Rewritten::Precision } else { Rewritten::Unit }
    }

    /// Returns the number of the value and its unit: of a reading taken several times, the mean.
    #[must_use]
    pub fn number(&self) -> Option<(f64, &'static str)> {
        let numbers: Vec<(f64, &'static str)> =
            self.said.iter().map(number).collect::<Option<_>>()?;
        let unit = numbers.first()?.1;
        if numbers.iter().any(|(_, own)| *own != unit) {
            return None;
        }
        let sum: f64 = numbers.iter().map(|(number, _)| number).sum();
        Some((sum / numbers.len() as f64, unit))
    }

    /// Returns by how much this is more than another, and in which unit, where both are numbers of
    /// one unit.
    #[must_use]
    pub fn more_than(&self, before: &Self) -> Option<(f64, &'static str)> {
        let ((new, unit), (old, old_unit)) = (self.number()?, before.number()?);
        // Figures are decimals: what binary adds to their difference is no measurement.
        let rounded = ((new - old) * 1e9).round() / 1e9;
        (unit == old_unit).then_some((rounded, unit))
    }
}

/// Slopes written as an offset alone are millimetres over what the field says.
fn number(said: &Said) -> Option<(f64, &'static str)> {
    match said {
        Said::Figure { value, of } => Some((*value, of.unit())),
        Said::Slope(Slope::Offset(offset)) => Some((offset.as_mm(), Quantity::Length.unit())),
        Said::Slope(Slope::Angle(angle)) => Some((angle.as_deg(), Quantity::Angle.unit())),
        Said::Slope(Slope::Over { .. }) | Said::Text(_) | Said::Unread => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn figures(numbers: &[f64], written: &[&str]) -> Kept {
        let said = |value: &f64| Said::Figure { value: *value, of: Quantity::Length };
        Kept {
            said: numbers.iter().map(said).collect(),
            written: written.iter().map(|text| Box::from(*text)).collect(),
        }
    }

    #[test]
    fn a_unit_and_a_decimal_change_nothing_and_are_told_apart() {
        let (bare, point, unit) =
            (figures(&[600.0], &["600"]), figures(&[600.0], &["600.0"]), figures(&[600.0], &["60 cm"]));
        assert!(bare.is_same(&point) && bare.is_same(&unit));
        assert_eq!(bare.rewritten(&bare), Rewritten::Not);
        assert_eq!(point.rewritten(&bare), Rewritten::Precision);
        assert_eq!(unit.rewritten(&bare), Rewritten::Unit);
    }

    #[test]
    fn a_difference_is_a_decimal_as_its_figures_are() {
        let (old, new) = (figures(&[58.1], &["58.1"]), figures(&[58.3], &["58.3"]));
        assert_eq!(new.more_than(&old), Some((0.2, "mm")));
        assert_eq!(figures(&[11.0, 12.0], &[]).number(), Some((11.5, "mm")));
        assert_eq!(Kept::default().number(), None);
    }
}
