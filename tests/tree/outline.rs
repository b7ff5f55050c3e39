//! A tree as one line of text, so that a test can show all its places at once.

use tholebook::model::Span;
use tholebook::reading::tree;
use tholebook::reading::tree::Node;
use tholebook::reading::tree::Scalar;
use tholebook::reading::tree::Shape;
use tholebook::reading::tree::Style;

/// Returns the outline of a file that must be sound: `{key@0-3=text@5-9}@0-9`. A `'` stands before
/// quoted text, a `|` before a block, `~` for nothing, `!` for what was refused, and `#2-7` after
/// text that a comment may have cut.
pub(crate) fn sound(text: &str) -> String {
    let tree = tree::read(text);
    assert!(tree.faults.is_empty() && tree.complete, "{text:?}: {:?}", tree.faults);
    outline(&tree.root.expect("a sound file has a root"))
}

/// Returns the outline of whatever was read, and each fault with the text it points at.
pub(crate) fn faulty(text: &str) -> (String, Vec<(String, &str)>) {
    let tree = tree::read(text);
    let faults = tree.faults.iter().map(|fault| (fault.to_string(), at(text, fault.at))).collect();
    (tree.root.as_ref().map_or("nothing".to_owned(), outline), faults)
}

/// Returns what is written at `span`.
pub(crate) fn at(text: &str, span: Span) -> &str {
    text.get(span.start..span.end).unwrap_or_else(|| panic!("{span:?} is no place in {text:?}"))
}

pub(crate) fn outline(node: &Node) -> String {
    let shape = match &node.shape {
        Shape::Scalar(scalar) => return self::scalar(scalar, node.span),
        Shape::Map(entries) => {
            let entry = |entry: &tree::Entry| {
                format!("{}@{}={}", entry.key, place(entry.key_span), outline(&entry.value))
            };
            format!("{{{}}}", entries.iter().map(entry).collect::<Vec<_>>().join(" "))
        }
        Shape::List(list) => {
            format!("[{}]", list.iter().map(outline).collect::<Vec<_>>().join(" "))
        }
        Shape::Empty => "~".to_owned(),
        Shape::Refused => "!".to_owned(),
    };
    format!("{shape}@{}", place(node.span))
}

fn scalar(scalar: &Scalar, span: Span) -> String {
    let sign = match scalar.style {
        Style::Plain => "",
        Style::Quoted => "'",
        Style::Block => "|",
    };
    let cut = scalar.cut_by.map_or(String::new(), |cut| format!("#{}", place(cut)));
    format!("{sign}{}@{}{cut}", scalar.text.replace('\n', "/"), place(span))
}

fn place(span: Span) -> String {
    format!("{}-{}", span.start, span.end)
}
