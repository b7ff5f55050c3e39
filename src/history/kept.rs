//! One value at one time, kept apart from the book it stands in: one text serves a long history.

use super::grouping::Group;
use super::likeness::Likeness;
use super::likeness::same;
use super::measured::LastMeasured;
use super::value::Value;
use super::value::decimal;
use crate::model::Name;
use crate::model::Said;

/// A value: all that it says, in order, how that is written, and when it was measured.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Kept {
    /// What it says.
    pub said: Vec<Said>,
    /// How it is written.
    pub written: Vec<Box<str>>,
    /// When it was last measured, and by whom; none where it is nothing measured.
    pub measured: Option<LastMeasured>,
}

/// How a value that says the same is written otherwise.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum Rewritten {
    /// Not at all, or in its quotes and blanks.
    Not,
    /// In its unit.
    Unit,
    /// In its decimals, or in how often one reading is written.
    Precision,
}

impl Kept {
    pub(super) fn add(&mut self, value: Value<'_>) {
        self.said.extend(value.said);
        self.written.extend(value.texts.into_iter().map(Box::from));
        let day = |measured: &Option<LastMeasured>| measured.as_ref().map(|own| own.on);
        if day(&value.measured) > day(&self.measured) {
            self.measured = value.measured;
        }
    }

    /// Returns whether both say the same, however they are written.
    #[must_use]
    pub fn is_same(&self, other: &Self) -> bool {
        let alike = || same(&other.value(), &self.value());
        self.said == other.said || !matches!(alike(), Likeness::Changed | Likeness::Unread)
    }

    /// Returns whether it can't be told what the value says.
    #[must_use]
    pub fn is_unread(&self) -> bool {
        self.said.contains(&Said::Unread)
    }

    /// Returns how this is written otherwise than another that says the same.
    #[must_use]
    pub fn rewritten(&self, before: &Self) -> Rewritten {
        match same(&before.value(), &self.value()) {
            Likeness::UnitOnly => Rewritten::Unit,
            Likeness::PrecisionOnly | Likeness::ReadOften => Rewritten::Precision,
            Likeness::Same | Likeness::Changed | Likeness::Unread => Rewritten::Not,
        }
    }

    /// Returns the number of the value and its unit: of a reading taken several times, the mean.
    #[must_use]
    pub fn number(&self) -> Option<(f64, &'static str)> {
        self.value().figure()
    }

    /// Returns by how much this is more than another, and in which unit, where both are numbers
    /// that may be taken from one another.
    #[must_use]
    pub fn more_than(&self, before: &Self) -> Option<(f64, &'static str)> {
        let ((new, unit), (old, _)) = (self.number()?, before.number()?);
        let rounded = decimal(new - old);
        self.value().is_comparable(&before.value()).then_some((rounded, unit))
    }

    fn value(&self) -> Value<'_> {
        self.value_of(Name::record(""), Group::Record)
    }

    /// Returns it as a value of a state: it stands nowhere.
    pub(super) fn value_of(&self, name: Name, group: Group) -> Value<'_> {
        Value {
            name,
            said: self.said.clone(),
            places: Vec::new(),
            texts: self.written.iter().map(|text| &**text).collect(),
            group,
            measured: None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::Quantity;

    fn figures(numbers: &[f64], written: &[&str]) -> Kept {
        let said = |value: &f64| Said::Figure { value: *value, of: Quantity::Length };
        let written = written.iter().map(|text| Box::from(*text)).collect();
        Kept { said: numbers.iter().map(said).collect(), written, measured: None }
    }

    #[test]
    fn a_unit_and_a_decimal_change_nothing_and_are_told_apart() {
        let bare = figures(&[600.0], &["600"]);
        let (point, unit) = (figures(&[600.0], &["600.0"]), figures(&[600.0], &["60 cm"]));
        assert!(bare.is_same(&point) && bare.is_same(&unit));
        assert_eq!(bare.rewritten(&bare), Rewritten::Not);
        assert_eq!(point.rewritten(&bare), Rewritten::Precision);
        assert_eq!(unit.rewritten(&bare), Rewritten::Unit);
    }

    #[test]
    fn a_difference_is_a_decimal_as_its_figures_are() {
        let (old, new) = (figures(&[58.1], &["58.1"]), figures(&[58.3], &["58.3"]));
        assert_eq!(new.more_than(&old), Some((0.2, "mm")));
        assert_eq!(figures(&[11.0, 12.0], &["11", "12"]).number(), Some((11.5, "mm")));
        assert_eq!(Kept::default().number(), None);
    }
}
