//! Paths as URIs and words as messages, as SARIF wants them. Knows no finding.

use super::form::Message;
use crate::reports::shown;

/// Returns words as a message on one line.
pub(super) fn message(words: &str) -> Message {
    Message { text: plain(&shown::line(words)) }
}

/// Returns words that are ready to be shown as plain ones. Brackets and braces would make links and
/// gaps to be filled in.
///
/// # Source
///
/// SARIF 2.1.0, 3.11.5 and 3.11.6.
pub(super) fn plain(words: &str) -> String {
    let mut text = String::with_capacity(words.len());
    for c in words.chars() {
        match c {
            '{' | '}' => text.extend([c, c]),
            '[' | ']' => text.extend(['\\', c]),
            _ => text.push(c),
        }
    }
    text
}

/// Returns a path as a relative URI reference. The path is written as the store writes it: `\xNN`
/// is a byte that is no UTF-8, `\\` a backslash.
///
/// # Source
///
/// RFC 3986, 2.1 and 2.3: whatever is not unreserved is percent-encoded, byte by byte; so no first
/// part can be taken for a scheme (4.2).
pub(super) fn uri(path: &str) -> String {
    let mut uri = String::with_capacity(path.len());
    let mut rest = path.as_bytes();
    while let [byte, after @ ..] = rest {
        let (byte, after) = unescaped(rest).unwrap_or((*byte, after));
        let plain = byte.is_ascii_alphanumeric() || b"-._~/".contains(&byte);
        if plain {
            uri.push(char::from(byte));
        } else {
            uri.push_str(&format!("%{byte:02X}"));
        }
        rest = after;
    }
    uri
}

fn unescaped(text: &[u8]) -> Option<(u8, &[u8])> {
    match text {
        [b'\\', b'\\', rest @ ..] => Some((b'\\', rest)),
        [b'\\', b'x', high, low, rest @ ..] => Some((digit(*high)? * 16 + digit(*low)?, rest)),
        _ => None,
    }
}

fn digit(byte: u8) -> Option<u8> {
    char::from(byte).to_digit(16).and_then(|digit| u8::try_from(digit).ok())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_path_is_percent_encoded_byte_by_byte_and_its_escapes_are_undone() {
        assert_eq!(uri("boats/kittiwake.yaml"), "boats/kittiwake.yaml");
        assert_eq!(uri("boats/möwe #2%.yaml"), "boats/m%C3%B6we%20%232%25.yaml");
        assert_eq!(uri(r"boats/\xff\\x41.yaml"), "boats/%FF%5Cx41.yaml");
        assert_eq!(uri(r"a:b/\q\x"), r"a%3Ab/%5Cq%5Cx");
    }

    #[test]
    fn words_make_no_link_and_no_gap() {
        assert_eq!(message("[x](http://y) {0}").text, r"\[x\](http://y) {{0}}");
        assert_eq!(message("\u{1b}").text, r"\u{{1b}}");
    }
}
