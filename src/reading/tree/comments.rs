//! The comments of a text: what stands after a `#` that is part of no key and no value.

use super::Node;
use super::Shape;
use super::marks;
use crate::model::Span;

/// Returns where each comment stands, from its `#` to the last byte that is no blank.
///
/// # Example
///
/// ```
/// use tholebook::reading::tree;
///
/// let text = "boat: \"#1\" # the first\n";
/// let root = tree::read(text).root.unwrap();
/// let comments = tree::comments(text, &root);
/// assert_eq!(&text[comments[0].start..comments[0].end], "# the first");
/// assert_eq!(comments.len(), 1);
/// ```
#[must_use]
pub fn comments(text: &str, root: &Node) -> Vec<Span> {
    let mut taken = Vec::new();
    take(root, &mut taken);
    taken.sort_unstable();
    let mut comments = Vec::new();
    let mut at = 0;
    while let Some(found) = text[at..].find('#') {
        let start = at + found;
        let next = taken.partition_point(|span| span.end <= start);
        if let Some(span) = taken.get(next).filter(|span| span.start <= start) {
            at = span.end;
            continue;
        }
        at = marks::line_end(text, start);
        comments.push(Span { start, end: start + text[start..at].trim_end().len() });
    }
    comments
}

/// Takes the bytes of every key and single value.
fn take(node: &Node, taken: &mut Vec<Span>) {
    match &node.shape {
        Shape::Map(entries) => {
            for entry in entries {
                taken.push(entry.key_span);
                take(&entry.value, taken);
            }
        }
        Shape::List(items) => items.iter().for_each(|item| take(item, taken)),
        Shape::Scalar(_) | Shape::Refused => taken.push(node.span),
        Shape::Empty => {}
    }
}
