//! The text of one file into a tree of values, each with its place. Knows YAML and no boats.
//!
//! The only place that names a YAML crate. Whatever the text holds, reading ends with a tree, with
//! faults, or with both: it neither panics nor follows the text deeper than [`LEVELS`].

mod build;
mod comments;
mod fault;
mod marks;
mod opened;
mod screening;
mod values;
mod wording;

pub use comments::comments;
pub use fault::Limit;
pub use fault::TreeFault;
pub use fault::TreeFaultKind;

use crate::model::Span;

/// The most bytes that a file may hold: 1 MiB.
pub const BYTES: usize = 1024 * 1024;

/// The most maps and lists that may stand one inside the other.
pub const LEVELS: usize = 32;

/// The most keys, values, lists and maps that a file may hold together.
pub const NODES: usize = 50_000;

/// What one file holds, and what is wrong with it as YAML.
#[derive(Clone, Debug, Eq, PartialEq)]
pub struct Tree {
    /// The outermost value; nothing if the file is empty or could not be read at all.
    pub root: Option<Node>,
    /// Everything refused, in the order of its places.
    pub faults: Vec<TreeFault>,
    /// Whether the whole file was read. If not, what seems to be missing may only be unread.
    pub complete: bool,
}

/// A value and its place.
#[derive(Clone, Debug, Eq, PartialEq)]
pub struct Node {
    /// The bytes of the value as written: with its quotes, from its `|` or `>`, or from the first
    /// byte of a map or list to the last byte of its last child or to its bracket.
    pub span: Span,
    /// What kind of value.
    pub shape: Shape,
}

/// What a value is.
#[derive(Clone, Debug, Eq, PartialEq)]
pub enum Shape {
    /// A word, a number, a text.
    Scalar(Scalar),
    /// Keys with their values, in the order of the file.
    Map(Vec<Entry>),
    /// Values in the order of the file.
    List(Vec<Node>),
    /// Nothing written, or a plain `~` or `null`. With nothing written the span is empty and stands
    /// just after the colon, the dash, or, where there is neither, the key.
    Empty,
    /// Something stands here that was refused, or that could not be read to its end; a fault has
    /// told so. It has no value, and it isn't missing.
    Refused,
}

/// A word, a number or a text, not yet told apart.
#[derive(Clone, Debug, Eq, PartialEq)]
pub struct Scalar {
    /// The text without quotes, its escapes and folded lines undone.
    pub text: String,
    /// How it was written.
    pub style: Style,
    /// From the `#` to the end of the line, where a plain value of one line is followed by exactly
    /// one blank and a `#`: perhaps the rest of the text and no comment.
    pub cut_by: Option<Span>,
}

/// How a scalar was written.
#[derive(Clone, Copy, Debug, Eq, PartialEq, Hash)]
pub enum Style {
    /// Without quotes.
    Plain,
    /// In single or double quotes.
    Quoted,
    /// As lines below a `|` or `>`.
    Block,
}

/// A key of a map with its value.
#[derive(Clone, Debug, Eq, PartialEq)]
pub struct Entry {
    /// The key, without quotes.
    pub key: String,
    /// Where the key is written, quotes included.
    pub key_span: Span,
    /// Its value.
    pub value: Node,
}

/// Returns the values of `text`, the whole text of one file, and all that is refused in it.
///
/// # Example
///
/// ```
/// use tholebook::reading::tree::{self, Shape};
///
/// let tree = tree::read("boat: kittiwake\n");
/// assert!(tree.faults.is_empty());
/// let Some(Shape::Map(entries)) = tree.root.map(|root| root.shape) else { panic!("a map") };
/// assert_eq!(entries[0].key, "boat");
/// assert_eq!(entries[0].value.span.start, 6);
/// ```
#[must_use]
pub fn read(text: &str) -> Tree {
    let tree = match screening::whole_file(text) {
        Some(fault) => Tree { root: None, faults: vec![fault], complete: false },
        None => build::tree(text),
    };
    Tree { faults: in_order(tree.faults), ..tree }
}

fn in_order(mut faults: Vec<TreeFault>) -> Vec<TreeFault> {
    faults.sort_by_key(|fault| fault.at);
    faults
}
