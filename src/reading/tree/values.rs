//! One scalar of the parser into a value with its exact bytes. Knows the text before it, not the
//! map or list it stands in.

use granit_parser::ScalarStyle;

use super::Node;
use super::Scalar;
use super::Shape;
use super::Style;
use super::marks;
use crate::model::Span;

/// Returns the value that the parser reads as `read` from the bytes `at` of `text`; `last` is where
/// the value or key before it ends.
pub(super) fn value(text: &str, last: usize, read: &str, style: ScalarStyle, at: Span) -> Node {
    let source = &text[at.start..at.end];
    let (span, style, cut_by) = match style {
        ScalarStyle::Plain if source.is_empty() => return empty(nothing_at(text, last, at.start)),
        ScalarStyle::Plain if is_null(source) => return empty(at),
        ScalarStyle::Plain => (at, Style::Plain, marks::cut_by(text, at)),
        ScalarStyle::SingleQuoted | ScalarStyle::DoubleQuoted => (at, Style::Quoted, None),
        ScalarStyle::Literal | ScalarStyle::Folded => (block(text, last, at), Style::Block, None),
    };
    Node { span, shape: Shape::Scalar(Scalar { text: read.to_owned(), style, cut_by }) }
}

/// Returns the bytes of a text block from its sign on; the parser gives those of its lines.
fn block(text: &str, last: usize, at: Span) -> Span {
    let start = marks::first(text, last, b"|>").unwrap_or(at.start);
    marks::block(text, start, at.end.max(start))
}

/// Returns the place of a value that isn't there: just after the sign that promised it. The parser
/// says `to`: where the colon begins, or anywhere up to the next value.
fn nothing_at(text: &str, last: usize, to: usize) -> Span {
    let is_colon = |sign: &Span| text.as_bytes().get(sign.start) == Some(&b':');
    let before = |sign: &Span| sign.end <= to || (sign.start == to && is_colon(sign));
    let end = marks::after(text, last).take_while(before).last().map_or(last, |sign| sign.end);
    Span { start: end, end }
}

fn is_null(source: &str) -> bool {
    matches!(source, "~" | "null" | "Null" | "NULL")
}

fn empty(span: Span) -> Node {
    Node { span, shape: Shape::Empty }
}
