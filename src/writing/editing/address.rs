//! The way from the outermost value of a text down to one inside it.

use std::fmt;

/// One step down.
#[derive(Clone, Debug, Eq, Hash, PartialEq)]
pub enum Step {
    /// Into the value of a key.
    Key(String),
    /// Into the first part of a list whose `key` says `is`: `seat: 2`.
    Part {
        /// The key that names the parts of the list.
        key: String,
        /// What it says.
        is: String,
    },
    /// Into a part of a list, counted from 1.
    Number(usize),
}

/// A place in a text, whether or not something stands there.
#[derive(Clone, Debug, Default, Eq, Hash, PartialEq)]
pub struct Address(Vec<Step>);

impl Address {
    /// Returns the place of the outermost value.
    #[must_use]
    pub const fn root() -> Self {
        Self(Vec::new())
    }

    /// Returns the place one step further down.
    #[must_use]
    pub fn at(&self, step: Step) -> Self {
        let mut steps = self.0.clone();
        steps.push(step);
        Self(steps)
    }

    /// Returns the place of a key's value.
    #[must_use]
    pub fn key(&self, key: &str) -> Self {
        self.at(Step::Key(key.to_owned()))
    }

    /// Returns the place of the part of a list whose `key` says `is`.
    #[must_use]
    pub fn part(&self, key: &str, is: &str) -> Self {
        self.at(Step::Part { key: key.to_owned(), is: is.to_owned() })
    }

    /// Returns the place of a part of a list, counted from 1.
    #[must_use]
    pub fn number(&self, number: usize) -> Self {
        self.at(Step::Number(number))
    }

    /// Returns the steps.
    #[must_use]
    pub fn steps(&self) -> &[Step] {
        &self.0
    }

    /// Returns the number of the part of a list that the last step leads to; 0 where it is none.
    #[must_use]
    pub(in crate::writing) fn last_number(&self) -> usize {
        match self.0.last() {
            Some(Step::Number(number)) => *number,
            _ => 0,
        }
    }

    /// Returns whether this is `whole` or lies inside it.
    #[must_use]
    pub fn is_within(&self, whole: &Self) -> bool {
        self.0.starts_with(&whole.0)
    }
}

impl fmt::Display for Step {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Key(key) => f.write_str(key),
            Self::Part { key, is } if key == "seat" => write!(f, "seat-{is}"),
            Self::Part { is, .. } => f.write_str(is),
            Self::Number(number) => write!(f, "{number}"),
        }
    }
}

/// As the names of the book: the list that a named part stands in is left out.
impl fmt::Display for Address {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let is_list_of_named =
            |index: usize| matches!(self.0.get(index + 1), Some(Step::Part { .. }));
        let steps = self.0.iter().enumerate().filter(|(index, _)| !is_list_of_named(*index));
        for (number, (_, step)) in steps.enumerate() {
            let before = if number == 0 { "" } else { "/" };
            write!(f, "{before}{step}")?;
        }
        Ok(())
    }
}
