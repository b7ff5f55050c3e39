//! Names of places in the book, such as `kittiwake/seat-2/rowlock/gap`.

use std::fmt;

/// The name of a value or of a record: the record's id, then the way down to the value.
///
/// The same names serve findings, waivers and the values read again.
#[derive(Clone, Debug, Eq, Hash, Ord, PartialEq, PartialOrd)]
pub struct Name(String);

impl Name {
    /// Returns the name of a record.
    #[must_use]
    pub fn record(id: &str) -> Self {
        Self(id.to_owned())
    }

    /// Returns the name of something inside this.
    #[must_use]
    pub fn at(&self, part: impl fmt::Display) -> Self {
        Self(format!("{}/{part}", self.0))
    }

    /// Returns the name of the value of a key inside this; as [`Self::at`], for the many keys of a
    /// record.
    #[must_use]
    pub fn key(&self, key: &str) -> Self {
        let mut name = String::with_capacity(self.0.len() + 1 + key.len());
        name.push_str(&self.0);
        name.push('/');
        name.push_str(key);
        Self(name)
    }

    /// Returns the name of a seat of a boat or of a crew.
    #[must_use]
    pub fn seat(&self, number: u32) -> Self {
        self.at(format_args!("seat-{number}"))
    }

    /// Returns the name as text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// Returns whether this is `whole` or lies inside it. `*` in `whole` stands for any one part.
    #[must_use]
    pub fn is_within(&self, whole: &str) -> bool {
        let rest = self.0.strip_prefix(whole);
        if rest.is_some_and(|rest| rest.is_empty() || rest.starts_with('/')) {
            return true;
        }
        if !whole.contains('*') {
            return false;
        }
        let mut own = self.0.split('/');
        whole.split('/').all(|part| own.next().is_some_and(|own| part == "*" || part == own))
    }
}

impl fmt::Display for Name {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_star_stands_for_any_one_part() {
        let gap = Name::record("kittiwake").seat(2).at("rowlock/gap");
        assert_eq!(gap.as_str(), "kittiwake/seat-2/rowlock/gap");
        for whole in ["kittiwake", "kittiwake/seat-2", "*/seat-2", "kittiwake/*/rowlock/gap"] {
            assert!(gap.is_within(whole), "{whole}");
        }
        for other in ["kitti", "kittiwake/seat-1", "kittiwake/*/gap", "*/*/*/*/*"] {
            assert!(!gap.is_within(other), "{other}");
        }
    }
}
