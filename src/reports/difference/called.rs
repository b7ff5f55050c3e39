//! What people call the parts of a book: "kittiwake, seat 2", "after tip".

use crate::history::Change;

/// Parts of a name that say nothing to someone who stands at the seat.
const UNSAID: [&str; 1] = ["rowlock"];

/// Returns what people call a record, a seat, an oar or a part of a list.
pub(super) fn whole(name: &str) -> String {
    let mut parts = name.split('/');
    let mut called = parts.next().unwrap_or_default().to_owned();
    for part in parts {
        let part = match part.strip_prefix("seat-") {
            Some(number) => format!("seat {number}"),
            None => part.to_owned(),
        };
        let counts = part.bytes().next().is_some_and(|byte| byte.is_ascii_digit());
        called.push_str(if counts { " " } else { ", " });
        called.push_str(&part);
    }
    called
}

/// Returns what people call a value of a seat, an oar or a record.
pub(super) fn field(change: &Change) -> String {
    let below = change.below();
    let said = below.split('/').filter(|part| !UNSAID.contains(part));
    let words: Vec<String> = said.map(|part| part.replace('-', " ")).collect();
    if words.is_empty() { below.to_owned() } else { words.join(" ") }
}
