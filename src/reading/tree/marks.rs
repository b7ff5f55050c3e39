//! The small signs between two values (colons, dashes, brackets, names in front of a value) and
//! other places that the parser does not give. Looks at bytes only.

use crate::model::Span;

/// An invisible mark that some systems write before the text.
pub(super) const BYTE_ORDER_MARK: char = '\u{feff}';

/// Walks over the signs that stand in `text` from a byte on, and ends before the first value.
pub(super) struct Marks<'t> {
    text: &'t str,
    at: usize,
}

/// Returns the signs from `from`, the end of a value, up to the next value.
pub(super) fn after(text: &str, from: usize) -> Marks<'_> {
    Marks { text, at: from }
}

/// Returns the first of `wanted` that stands between `from` and the value after it.
pub(super) fn first(text: &str, from: usize, wanted: &[u8]) -> Option<usize> {
    let is_wanted = |byte: &u8| wanted.contains(byte);
    after(text, from)
        .map(|mark| mark.start)
        .find(|start| text.as_bytes().get(*start).is_some_and(is_wanted))
}

impl Iterator for Marks<'_> {
    type Item = Span;

    fn next(&mut self) -> Option<Span> {
        let bytes = self.text.as_bytes();
        loop {
            let start = self.at;
            let length = match bytes.get(start)? {
                b' ' | b'\t' | b'\n' | b'\r' => {
                    self.at += 1;
                    continue;
                }
                b'#' => {
                    self.at = line_end(self.text, start);
                    continue;
                }
                _ if self.text[start..].starts_with(BYTE_ORDER_MARK) => {
                    self.at += BYTE_ORDER_MARK.len_utf8();
                    continue;
                }
                b'.' if bytes[start..].starts_with(b"...") => 3,
                b'&' | b'!' => word_length(&bytes[start..]),
                b':' | b'-' | b'?' | b',' | b'[' | b'{' | b'|' | b'>' | b'"' | b'\'' => 1,
                _ => return None,
            };
            self.at += length;
            return Some(Span { start, end: self.at });
        }
    }
}

fn word_length(bytes: &[u8]) -> usize {
    bytes.iter().position(u8::is_ascii_whitespace).unwrap_or(bytes.len())
}

/// Returns where the line that holds byte `at` ends, before its line break.
pub(super) fn line_end(text: &str, at: usize) -> usize {
    text[at..].find(['\n', '\r']).map_or(text.len(), |length| at + length)
}

/// Returns where the line that holds byte `at` begins.
pub(super) fn line_start(text: &str, at: usize) -> usize {
    text[..at].rfind(['\n', '\r']).map_or(0, |end| end + 1)
}

/// Returns the span of the character at byte `at`, or an empty one at the end of a line or text.
pub(super) fn character(text: &str, at: usize) -> Span {
    let start = text.floor_char_boundary(at);
    let length = text[start..].chars().next().filter(|c| !matches!(c, '\n' | '\r'));
    Span { start, end: start + length.map_or(0, char::len_utf8) }
}

/// Returns the comment that may be the rest of a text: after the plain value at `span`, exactly one
/// blank and a `#`.
pub(super) fn cut_by(text: &str, span: Span) -> Option<Span> {
    let one_line = !text[span.start..span.end].contains(['\n', '\r']);
    let cut = matches!(text.as_bytes().get(span.end..span.end + 2), Some([b' ' | b'\t', b'#']));
    let start = span.end + 1;
    (one_line && cut).then(|| Span { start, end: line_end(text, start) })
}

/// Returns the first tab, from the line of byte `from` on, that stands before all else on its line.
pub(super) fn leading_tab(text: &str, from: usize) -> Option<usize> {
    let mut start = line_start(text, from);
    for line in text[start..].split_inclusive(['\n', '\r']) {
        let blanks = line.len() - line.trim_start_matches([' ', '\t']).len();
        let ends_there = matches!(line.as_bytes().get(blanks), None | Some(b'\n' | b'\r'));
        if let Some(tab) = line[..blanks].find('\t').filter(|_| !ends_there) {
            return Some(start + tab);
        }
        start += line.len();
    }
    None
}

/// Returns the first tab among the blanks just before byte `at`.
pub(super) fn tab_before(text: &str, at: usize) -> Option<usize> {
    let before = text[..at].trim_end_matches([' ', '\t']).len();
    text[before..at].find('\t').map(|tab| before + tab)
}

/// Returns the bytes of a text block: from its `|` or `>` at `start` to the end of its last line
/// that isn't blank, wherever at or before `end` that is.
pub(super) fn block(text: &str, start: usize, end: usize) -> Span {
    let signs = |byte: &u8| matches!(byte, b'|' | b'>' | b'+' | b'-' | b'0'..=b'9');
    let head = start + text.as_bytes()[start..].iter().take_while(|byte| signs(byte)).count();
    let body = line_end(text, head).min(end);
    let last = text[body..end].trim_end_matches([' ', '\t', '\n', '\r']).len();
    // Blanks at the end of the last line belong to the text.
    let last = if last == 0 { head } else { line_end(text, body + last).min(end) };
    Span { start, end: last }
}
