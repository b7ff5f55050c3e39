//! What can be wrong with a file as YAML, in words for whoever keeps the book.

use thiserror::Error;

use super::BYTES;
use super::LEVELS;
use super::NODES;
use crate::model::Span;

/// Something refused, and where.
#[derive(Clone, Debug, Eq, PartialEq, Error)]
#[error("{what}")]
pub struct TreeFault {
    /// What is wrong.
    pub what: TreeFaultKind,
    /// Where; empty only where there is no byte to point at.
    pub at: Span,
    /// The first place of a key given twice.
    pub also: Option<Span>,
}

impl TreeFault {
    pub(super) fn new(what: TreeFaultKind, at: Span) -> Self {
        Self { what, at, also: None }
    }
}

/// What is wrong. One variant for each thing that is mended differently.
#[derive(Clone, Debug, Eq, PartialEq, Error)]
pub enum TreeFaultKind {
    /// Nothing but blanks and comments.
    #[error("nothing is written in this file")]
    Empty,
    /// The text does not keep to the form of the file.
    #[error("{message}")]
    NotYaml {
        /// What is wrong, and mostly what to do.
        message: String,
    },
    /// A `---` inside the file, or more text after a `...`.
    #[error("a second record begins here")]
    TwoDocuments,
    /// `&name` before a value.
    #[error("`&{name}` is not allowed")]
    Anchor {
        /// The name after the `&`.
        name: String,
    },
    /// `*name` in place of a value.
    #[error("`*{name}` is not allowed: it stands for a value written elsewhere")]
    Alias {
        /// The name after the `*`.
        name: String,
    },
    /// `<<` as a key.
    #[error("`<<` is not allowed: it takes in keys written elsewhere")]
    MergeKey,
    /// `!word` before a value.
    #[error("`{tag}` is not allowed")]
    Tag {
        /// The tag as written, with its `!`.
        tag: String,
    },
    /// A line beginning with `%`, other than `%YAML 1.2`.
    #[error("`{text}` is not allowed")]
    Directive {
        /// The line as written.
        text: String,
    },
    /// A key that its map has already. Neither value is used.
    #[error("`{key}` is given twice, so neither is used")]
    KeyTwice {
        /// The key.
        key: String,
    },
    /// A list, a map or nothing at all where a key should stand.
    #[error("a key must be a word")]
    KeyNotText,
    /// More than a record can need.
    #[error("{limit}")]
    TooLarge {
        /// The limit that was passed.
        limit: Limit,
    },
    /// The stand-in that git's large file storage leaves when the file itself was not fetched.
    #[error("this is only a stand-in: the file itself is in git's large file storage")]
    LfsPointer,
    /// The marks that git leaves where two versions of a file did not fit together.
    #[error("two versions of this file were joined here and nobody has chosen between them")]
    Unmerged,
}

impl TreeFaultKind {
    /// Returns what to do, where the message does not say it already.
    #[must_use]
    pub fn help(&self) -> Option<&'static str> {
        match self {
            Self::NotYaml { .. } => None,
            Self::Empty => Some("Write the record, or take the file out of the book."),
            Self::TwoDocuments => Some("Give each record a file of its own, or take out the mark."),
            Self::Anchor { .. } => Some("Take it out; if it belongs to the text, put quotes."),
            Self::Alias { .. } => Some("Write the value out; if this is the text, put quotes."),
            Self::MergeKey => Some("Write the keys out here."),
            Self::Tag { .. } => Some("Take it out; if it belongs to the text, put quotes."),
            Self::Directive { .. } => Some("Take the line out."),
            Self::KeyTwice { .. } => Some("Keep the right one and take the other out."),
            Self::KeyNotText => Some("Write a word before the colon."),
            Self::TooLarge { .. } => Some("Split the record into several files."),
            Self::LfsPointer => Some("Fetch it with `git lfs pull`, then check again."),
            Self::Unmerged => Some("Keep the right lines and take out the marks."),
        }
    }
}

/// A limit on what one file may hold.
#[derive(Clone, Copy, Debug, Eq, PartialEq, Hash, Error)]
pub enum Limit {
    /// [`BYTES`].
    #[error("the file is longer than {} bytes", BYTES)]
    Bytes,
    /// [`LEVELS`].
    #[error("more than {} lists and maps stand one inside the other", LEVELS)]
    Levels,
    /// [`NODES`].
    #[error("the file holds more than {} keys and values", NODES)]
    Nodes,
}
