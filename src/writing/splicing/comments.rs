//! Comments of theirs that no line of the joined text holds: none is lost.

use super::Sides;
use crate::reading::tree;
use crate::reading::tree::Node;
use crate::reading::tree::Shape;

/// What stands before the comments of theirs that found no place.
const ASIDE: &str = "# From the other side; put it where it belongs:";

/// Returns the comments that theirs added and the joined text does not hold.
pub(super) fn lost(sides: &Sides<'_>, joined: &str) -> Vec<String> {
    let mut held = comments(sides.base);
    held.extend(comments(joined));
    let mut lost = comments(sides.theirs);
    lost.retain(|comment| !held.contains(comment));
    lost.dedup();
    lost
}

/// Returns the text with comments at its end.
pub(super) fn added(text: String, comments: &[String]) -> String {
    if comments.is_empty() {
        return text;
    }
    let ending = if text.contains("\r\n") { "\r\n" } else { "\n" };
    let mut added = text;
    if !added.ends_with('\n') {
        added.push_str(ending);
    }
    for line in std::iter::once(ASIDE).chain(comments.iter().map(String::as_str)) {
        added.push_str(line);
        added.push_str(ending);
    }
    added
}

/// Returns every comment of a text, from its `#` on.
fn comments(text: &str) -> Vec<String> {
    let mut values = Vec::new();
    if let Some(root) = tree::read(text).root {
        collect(&root, &mut values);
    }
    values.sort_unstable();
    let mut comments = Vec::new();
    let mut at = 0;
    while let Some(found) = text[at..].find('#') {
        let sign = at + found;
        let end = text[sign..].find('\n').map_or(text.len(), |end| sign + end);
        match values.iter().find(|(start, end)| (*start..*end).contains(&sign)) {
            Some((_, end)) => at = *end,
            None => {
                comments.push(text[sign..end].trim_end().to_owned());
                at = end;
            }
        }
    }
    comments
}

/// Collects the bytes of every key and single value.
fn collect(node: &Node, values: &mut Vec<(usize, usize)>) {
    match &node.shape {
        Shape::Map(entries) => {
            for entry in entries {
                values.push((entry.key_span.start, entry.key_span.end));
                collect(&entry.value, values);
            }
        }
        Shape::List(items) => items.iter().for_each(|item| collect(item, values)),
        Shape::Scalar(_) => values.push((node.span.start, node.span.end)),
        Shape::Empty | Shape::Refused => {}
    }
}
