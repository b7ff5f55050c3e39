//! Where a value was written. The place is attached once, by `reading`, and carried.

/// A byte range in a text.
#[derive(Clone, Copy, Debug, Eq, Hash, Ord, PartialEq, PartialOrd)]
pub struct Span {
    /// The first byte.
    pub start: usize,
    /// The byte after the last.
    pub end: usize,
}

/// A file of the book, by its number in [`Book::files`](super::Book::files).
#[derive(Clone, Copy, Debug, Eq, Hash, Ord, PartialEq, PartialOrd)]
pub struct FileId(pub usize);

/// A byte range in a file of the book.
#[derive(Clone, Copy, Debug, Eq, Hash, Ord, PartialEq, PartialOrd)]
pub struct Place {
    /// The file.
    pub file: FileId,
    /// The bytes.
    pub span: Span,
}

/// A value and the place where it was written, joined for ever.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub struct Placed<T> {
    /// The value.
    pub value: T,
    /// Where it was written.
    pub place: Place,
}
