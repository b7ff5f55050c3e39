//! One named text, or why its bytes are no text; knows no folder and no repository.

/// The most bytes a text may have, 1 MiB. The longest boat record takes a hundredth of it.
pub const MAX_FILE_BYTES: u64 = 1 << 20;

/// One named text of a book, or why it can't be a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Named {
    /// Relative to the book's root, `/` between parts. A byte that is no UTF-8 is written `\xNN` and
    /// a backslash `\\`, so that no two files share a path.
    pub path: String,
    /// The text, or why there is none.
    pub content: Content,
}

/// A text, or why there is none.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Content {
    /// The whole file, unchanged. It may be empty.
    Text(String),
    /// It was looked at, and it is no text.
    Refused(Refusal),
}

/// Why something in a record's place is no text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// A link to a file or a folder. It is not followed.
    Link,
    /// Bytes that are not UTF-8.
    NotUtf8 {
        /// The first bad byte, counted from 0.
        at: usize,
        /// The text with U+FFFD in the bad places, for showing.
        lossy: String,
    },
    /// More than [`MAX_FILE_BYTES`]. It was not read.
    TooLarge {
        /// The file's size.
        bytes: u64,
    },
}

impl Named {
    /// Returns a text under a path.
    #[must_use]
    pub fn text(path: &str, text: &str) -> Self {
        Self { path: path.to_owned(), content: Content::Text(text.to_owned()) }
    }
}

impl Content {
    /// Returns the bytes as a text, or the place where they stop being one.
    #[must_use]
    pub fn of_bytes(bytes: Vec<u8>) -> Self {
        match String::from_utf8(bytes) {
            Ok(text) => Self::Text(text),
            Err(error) => Self::Refused(Refusal::NotUtf8 {
                at: error.utf8_error().valid_up_to(),
                lossy: String::from_utf8_lossy(error.as_bytes()).into_owned(),
            }),
        }
    }
}
