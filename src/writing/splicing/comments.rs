//! Comments of theirs that no line of the joined text holds: none is lost.

use super::Sides;
use crate::reading::tree;

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
    let Some(root) = tree::read(text).root else { return Vec::new() };
    let spans = tree::comments(text, &root);
    spans.iter().map(|span| text[span.start..span.end].to_owned()).collect()
}
