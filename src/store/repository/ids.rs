//! Names of commits and of texts in a repository; opens nothing.

use std::fmt;

use git2::ObjectType;
use git2::Oid;

/// How many digits of an id are shown where a person reads it.
const SHORT: usize = 8;

/// The id of a commit. It shows as forty hexadecimal digits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct CommitId(pub(super) Oid);

/// The id of one text in one form: two texts with the same bytes have the same id.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct BlobId(pub(super) Oid);

impl CommitId {
    /// Returns the first eight digits, for a person to read.
    #[must_use]
    pub fn short(self) -> String {
        short(self.0)
    }
}

impl BlobId {
    /// Returns whether it is the id of a text, kept as it stands.
    #[must_use]
    pub fn is_of(self, text: &str) -> bool {
        Oid::hash_object(ObjectType::Blob, text.as_bytes()).is_ok_and(|own| own == self.0)
    }

    /// Returns the first eight digits, for a person to read.
    #[must_use]
    pub fn short(self) -> String {
        short(self.0)
    }
}

fn short(id: Oid) -> String {
    id.to_string().chars().take(SHORT).collect()
}

impl fmt::Display for CommitId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

impl fmt::Display for BlobId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}
