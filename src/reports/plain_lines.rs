//! A record as plain lines, one value a line in a settled order, for git to compare. Layout, order,
//! quotes and decimals that say nothing are gone; comments stand at the end.

use std::cmp::Ordering;
use std::collections::HashMap;

use super::difference::plain;
use super::shown;
use crate::model::Book;
use crate::model::Quantity;
use crate::model::Said;
use crate::model::Written;
use crate::reading::tree;
use crate::reading::tree::Node;
use crate::reading::tree::Shape;
use crate::units::Slope;

/// Returns every value of a book's only text, each on a line of its own; nothing where the text can't
/// be read to its end, or is no record.
#[must_use]
pub fn plain_lines(book: &Book) -> Option<String> {
    let text = &book.files.first()?.text;
    let tree = tree::read(text);
    let root = tree.root.filter(|_| tree.faults.is_empty() && tree.complete)?;
    let mut found = Found { text, written: written(book), lines: Vec::new() };
    found.take(&root, "");
    if found.written.is_empty() {
        return None;
    }
    found.lines.sort_by(|(one, ..), (other, ..)| in_number_order(one, other));
    let values = found.lines.iter().map(|(name, says)| format!("{name}: {says}\n"));
    let comments = tree::comments(text, &root);
    let comments = comments.iter().map(|span| &text[span.start..span.end]);
    let comments = comments.map(|comment| format!("{}\n", shown::line(comment)));
    Some(values.chain(comments).collect())
}

/// Returns every value by the byte at which it is written.
fn written(book: &Book) -> HashMap<usize, &Written> {
    book.written().map(|own| (own.place.span.start, own)).collect()
}

struct Found<'b> {
    text: &'b str,
    written: HashMap<usize, &'b Written>,
    /// Name and what it says.
    lines: Vec<(String, String)>,
}

impl Found<'_> {
    /// Takes every value at or below a node; `way` is its name where the record has none for it.
    fn take(&mut self, node: &Node, way: &str) {
        let below =
            |part: &str| if way.is_empty() { part.to_owned() } else { format!("{way}/{part}") };
        match &node.shape {
            Shape::Map(entries) => {
                for entry in entries {
                    self.take(&entry.value, &below(&entry.key));
                }
            }
            Shape::List(items) => {
                for (index, item) in items.iter().enumerate() {
                    self.take(item, &below(&(index + 1).to_string()));
                }
            }
            Shape::Scalar(_) => self.lines.push(self.line(node, way)),
            Shape::Empty | Shape::Refused => {}
        }
    }

    fn line(&self, node: &Node, way: &str) -> (String, String) {
        let text = &self.text[node.span.start..node.span.end];
        let (name, says) = match self.written.get(&node.span.start) {
            Some(own) => (own.name.as_str(), says(&own.said, text)),
            None => (way, bare(text).to_owned()),
        };
        (shown::line(name), shown::line(&says))
    }
}

/// Returns what a value says, in the unit of a bare number.
fn says(said: &Said, text: &str) -> String {
    match said {
        Said::Figure { value, of: Quantity::Ratio | Quantity::Count } => plain(*value),
        Said::Figure { value, of } => format!("{} {}", plain(*value), of.unit()),
        Said::Slope(Slope::Offset(offset)) => format!("{} mm", plain(offset.as_mm())),
        Said::Slope(Slope::Over { offset, down }) => {
            format!("{} mm over {} mm", plain(offset.as_mm()), plain(down.as_mm()))
        }
        Said::Slope(Slope::Angle(angle)) => format!("{} deg", plain(angle.as_deg())),
        Said::Text(text) => text.to_string(),
        Said::Unread => bare(text).to_owned(),
    }
}

/// Returns a written text without the quotes around it.
fn bare(text: &str) -> &str {
    let quoted = |mark| text.strip_prefix(mark)?.strip_suffix(mark);
    quoted('"').or_else(|| quoted('\'')).unwrap_or(text)
}

/// Compares two names; `seat-2` comes before `seat-10`.
fn in_number_order(one: &str, other: &str) -> Ordering {
    let parts = |name: &str| -> Vec<(bool, u64, String)> {
        let part = |part: &str| match part.parse() {
            Ok(number) => (true, number, String::new()),
            Err(_) => (false, 0, part.to_owned()),
        };
        name.split(['/', '-']).map(part).collect()
    };
    parts(one).cmp(&parts(other)).then_with(|| one.cmp(other))
}
