//! What must hold of any text at all, once it is read.

use tholebook::model::Span;
use tholebook::reading::tree;
use tholebook::reading::tree::LEVELS;
use tholebook::reading::tree::Node;
use tholebook::reading::tree::Scalar;
use tholebook::reading::tree::Shape;
use tholebook::reading::tree::Style;

/// Reads `text` and asserts all that must hold for any text at all.
pub(crate) fn looked_over(text: &str) {
    let tree = tree::read(text);
    let place = |span: Span| {
        let inside = text.get(span.start..span.end).is_some();
        assert!(inside, "{span:?} is no place in {:?}", &text[..text.floor_char_boundary(999)]);
    };
    for fault in &tree.faults {
        place(fault.at);
        fault.also.into_iter().for_each(place);
    }
    assert!(tree.faults.is_sorted_by_key(|fault| fault.at.start));
    assert!(tree.complete || !tree.faults.is_empty(), "unread and untold: {text:?}");
    assert!(tree.root.is_some() || !tree.faults.is_empty(), "nothing and untold: {text:?}");
    if let Some(root) = &tree.root {
        node(text, root, LEVELS);
    }
}

fn node(text: &str, node: &Node, levels: usize) {
    let written = text.get(node.span.start..node.span.end);
    let written = written.unwrap_or_else(|| panic!("{:?} is no place", node.span));
    match &node.shape {
        Shape::Scalar(scalar) => self::scalar(text, node.span, scalar),
        Shape::Empty => assert!(matches!(written, "" | "~" | "null" | "Null" | "NULL")),
        Shape::Refused => {}
        Shape::List(list) => children(text, node.span, list.iter(), levels),
        Shape::Map(entries) => {
            for entry in entries {
                let key = text.get(entry.key_span.start..entry.key_span.end);
                assert!(key.is_some_and(|key| !key.is_empty()), "{:?}", entry.key_span);
                assert!(entry.key_span.start >= node.span.start);
                assert!(entry.key_span.end <= entry.value.span.start, "{entry:?} in {text:?}");
            }
            children(text, node.span, entries.iter().map(|entry| &entry.value), levels);
        }
    }
}

fn scalar(text: &str, span: Span, scalar: &Scalar) {
    let written = &text[span.start..span.end];
    let ends: &[char] = match scalar.style {
        Style::Plain => &[],
        Style::Quoted => &['"', '\''],
        Style::Block => &['|', '>'],
    };
    assert!(
        !written.is_empty() && written.trim_matches([' ', '\t', '\n', '\r']) == written
            || scalar.style == Style::Block,
        "{written:?}"
    );
    assert!(ends.is_empty() || written.starts_with(ends), "{written:?} in {text:?}");
    assert!(scalar.style != Style::Quoted || written.ends_with(ends), "{written:?}");
    if let Some(cut) = scalar.cut_by {
        assert_eq!(cut.start, span.end + 1);
        assert!(text[cut.start..cut.end].starts_with('#'));
    }
}

fn children<'n>(text: &str, parent: Span, nodes: impl Iterator<Item = &'n Node>, levels: usize) {
    assert!(levels > 0, "too deep");
    let mut reached = parent.start;
    for child in nodes {
        assert!(reached <= child.span.start, "out of order: {child:?} in {text:?}");
        reached = child.span.end;
        node(text, child, levels - 1);
    }
    assert!(reached <= parent.end, "{parent:?} does not hold {reached} in {text:?}");
}
