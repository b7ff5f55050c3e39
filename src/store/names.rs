//! File names as text, and back, nothing lost; opens nothing.

use std::path::MAIN_SEPARATOR;
use std::path::Path;
use std::path::PathBuf;

/// Returns the path's bytes with `/` between parts, as git keeps them.
pub(super) fn bytes(path: &Path) -> Vec<u8> {
    let separator = u8::try_from(MAIN_SEPARATOR).unwrap_or(b'/');
    let bytes = path.as_os_str().as_encoded_bytes().iter();
    bytes.map(|byte| if *byte == separator { b'/' } else { *byte }).collect()
}

/// Returns the path as text: a byte that is no UTF-8 as `\xNN`, a backslash as `\\`.
#[must_use]
pub fn shown(path: &Path) -> String {
    let mut text = String::new();
    for chunk in bytes(path).utf8_chunks() {
        text.push_str(&chunk.valid().replace('\\', r"\\"));
        for byte in chunk.invalid() {
            text.push_str(&format!(r"\x{byte:02x}"));
        }
    }
    text
}

/// Returns the path that [`shown`] made this text of. An escape it never writes stands for itself.
pub(super) fn path_of(text: &str) -> PathBuf {
    let mut bytes = Vec::with_capacity(text.len());
    let mut rest = text.as_bytes();
    while let Some((byte, after)) = unescaped(rest) {
        bytes.push(byte);
        rest = after;
    }
    path_of_bytes(bytes)
}

/// Returns the first byte of what an escaped text stands for, and the text after it.
fn unescaped(text: &[u8]) -> Option<(u8, &[u8])> {
    match text {
        [b'\\', b'\\', rest @ ..] => Some((b'\\', rest)),
        [b'\\', b'x', high, low, rest @ ..] => match (digit(*high), digit(*low)) {
            (Some(high), Some(low)) => Some((high * 16 + low, rest)),
            _ => Some((b'\\', &text[1..])),
        },
        [byte, rest @ ..] => Some((*byte, rest)),
        [] => None,
    }
}

fn digit(byte: u8) -> Option<u8> {
    char::from(byte).to_digit(16).and_then(|digit| u8::try_from(digit).ok())
}

#[cfg(unix)]
pub(super) fn path_of_bytes(bytes: Vec<u8>) -> PathBuf {
    use std::os::unix::ffi::OsStringExt;
    std::ffi::OsString::from_vec(bytes).into()
}

#[cfg(not(unix))]
pub(super) fn path_of_bytes(bytes: Vec<u8>) -> PathBuf {
    String::from_utf8_lossy(&bytes).into_owned().into()
}

/// Returns the path as one word of a command line, in quotes if it needs them.
#[must_use]
pub fn quoted(path: &Path) -> String {
    let text = path.to_string_lossy();
    let plain = |c: char| c.is_alphanumeric() || "/._-:".contains(c);
    if text.chars().all(plain) {
        text.into_owned()
    } else {
        format!("'{}'", text.replace('\'', r"'\''"))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_folder_with_a_blank_or_a_quote_is_one_word_of_a_command() {
        assert_eq!(quoted(Path::new("/srv/boat-book")), "/srv/boat-book");
        assert_eq!(quoted(Path::new("/srv/boat book")), "'/srv/boat book'");
        assert_eq!(quoted(Path::new("/srv/o'r")), r"'/srv/o'\''r'");
    }

    #[cfg(unix)]
    #[test]
    fn every_name_comes_back_from_its_text_and_no_two_share_one() {
        let names: [&[u8]; 8] = [
            b"a",
            b"a\\b",
            b"a\\\\b",
            b"\xff",
            b"\\xff",
            b"\\\\xff",
            "\u{fffd}".as_bytes(),
            b"\xc3",
        ];
        let mut texts = std::collections::BTreeSet::new();
        for name in names {
            let text = shown(&path_of_bytes(name.to_vec()));
            assert_eq!(bytes(&path_of(&text)), name, "{text}");
            texts.insert(text);
        }
        assert_eq!(texts.len(), names.len());
    }
}
