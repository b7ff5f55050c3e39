//! Names of places in the book, such as `kittiwake/seat-2/rowlock/gap`.

use std::fmt;

/// The name of a value or of a record: the record's id, then the way down to the value.
///
/// The same names serve findings, waivers and the values read again.
#[derive(Clone, Debug, Eq, Hash, Ord, PartialEq, PartialOrd)]
pub struct Name(Box<str>);

impl Name {
    /// Returns the name of a record.
    #[must_use]
    pub fn record(id: &str) -> Self {
        Self(id.into())
    }

    /// Returns the name of something inside this.
    #[must_use]
    pub fn at(&self, part: impl fmt::Display) -> Self {
        Self(format!("{}/{part}", self.0).into())
    }

    /// Returns the name of the value of a key inside this; as [`Self::at`], for the many keys of a
    /// record.
    #[must_use]
    pub fn key(&self, key: &str) -> Self {
        let mut name = String::with_capacity(self.0.len() + 1 + key.len());
        name.push_str(&self.0);
        name.push('/');
        name.push_str(key);
        Self(name.into())
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
        // Names part at a byte; unless a star stands for what follows there, they never meet again.
        let alike = self.0.bytes().zip(whole.bytes()).take_while(|(own, other)| own == other);
        let rest = alike.count();
        match whole.as_bytes().get(rest) {
            None if matches!(self.0.as_bytes().get(rest), None | Some(b'/')) => return true,
            None | Some(b'*') => {}
            Some(_) => return false,
        }
        let mut own = self.0.split('/');
        whole.split('/').all(|part| own.next().is_some_and(|own| part == "*" || part == own))
    }

    /// Returns whether this is `other`, lies inside it, or holds it.
    #[must_use]
    pub fn meets(&self, other: &Self) -> bool {
        let (outer, inner) =
            if self.0.len() < other.0.len() { (self, other) } else { (other, self) };
        let rest = inner.0.strip_prefix(&*outer.0);
        rest.is_some_and(|rest| rest.is_empty() || rest.starts_with('/'))
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
    fn names_meet_where_one_holds_the_other() {
        let gap = Name::record("kittiwake").seat(2).at("rowlock/gap");
        for other in ["kittiwake", "kittiwake/seat-2/rowlock", gap.as_str()] {
            let other = Name::record(other);
            assert!(gap.meets(&other) && other.meets(&gap), "{other}");
        }
        for other in ["kitti", "kittiwake/seat-2/row", "kittiwake/seat-1", "*"] {
            let other = Name::record(other);
            assert!(!gap.meets(&other) && !other.meets(&gap), "{other}");
        }
    }

    #[test]
    fn a_star_in_a_record_is_a_letter_of_it() {
        let odd = Name::record("kitti*/seat-2");
        assert!(odd.is_within("kitti*") && odd.is_within("*/seat-2"));
        assert!(!odd.is_within("kitti") && !odd.is_within("kitti*/seat"));
        assert!(Name::record("*gull/seat-2").is_within("*"));
    }

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
