//! The one place through which text from outside passes before it is shown; knows no boats.
//!
//! A file, a name or an argument can hold bytes that steer a terminal, turn the reading order
//! round or can't be seen at all, and words that a build server takes for orders when they stand in
//! its log: `::error::`, `##[error]`. Three ways out lead from here:
//!
//! - [`line()`] for words: what can't be seen is written out, `\u{1b}`, and so is the second mark of
//!   an order;
//! - [`source`] for lines of a file that are drawn: each such character becomes as many plain ones
//!   as it has bytes, so that every place stays where it is;
//! - [`json`] for machines: the true text, with those characters as `\u001b`.

use std::io;

use serde::Serialize;
use serde_json::ser::Formatter;

/// Returns whether a character steers the terminal, the reading order or nothing that is seen.
///
/// # Source
///
/// C0, DEL and C1: ECMA-48. Marks of the reading order: Unicode Standard Annex 9, 2. Characters
/// without width and separators of lines: The Unicode Standard, 23.2.
#[must_use]
pub const fn is_hidden(c: char) -> bool {
    matches!(c,
        '\0'..='\u{1f}' | '\u{7f}'..='\u{9f}'
        | '\u{61c}' | '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}'
        | '\u{200b}'..='\u{200d}' | '\u{2060}' | '\u{feff}'
        | '\u{2028}' | '\u{2029}')
}

/// Returns whether the second mark of an order to a build server stands at a byte: of `::`, which is
/// obeyed at the beginning of a line, wherever a line is broken; or of `##word[`, which is obeyed
/// anywhere.
fn is_order(text: &str, at: usize) -> bool {
    let (before, rest) = (text.as_bytes()[..at].last(), &text[at..]);
    match before {
        Some(b':') => rest.starts_with(':'),
        Some(b'#') => is_order_in_brackets(rest),
        _ => false,
    }
}

fn is_order_in_brackets(rest: &str) -> bool {
    let word =
        |rest: &str| rest.trim_start_matches(|c: char| c.is_ascii_alphabetic()).starts_with('[');
    rest.strip_prefix('#').is_some_and(word)
}

/// Returns words for a person, on one line: hidden characters written out.
#[must_use]
pub fn line(text: &str) -> String {
    let mut shown = String::with_capacity(text.len());
    for (at, c) in text.char_indices() {
        if is_hidden(c) || is_order(text, at) {
            shown.extend(c.escape_unicode());
        } else {
            shown.push(c);
        }
    }
    shown
}

/// Returns words of the program for a person: its own line ends stay, all else is as in [`line()`].
#[must_use]
pub fn lines(text: &str) -> String {
    let each: Vec<String> = text.split('\n').map(line).collect();
    each.join("\n")
}

/// Returns a line of a file with as many bytes as it had: a hidden character becomes one `?` a
/// byte; tabs stay.
#[must_use]
pub fn source(text: &str) -> String {
    let mut shown = String::with_capacity(text.len());
    for (at, c) in text.char_indices() {
        match c {
            '\t' => shown.push(c),
            _ if is_hidden(c) || is_order(text, at) => {
                shown.extend(std::iter::repeat_n('?', c.len_utf8()))
            }
            _ => shown.push(c),
        }
    }
    shown
}

/// Returns JSON on one line: the true text, hidden characters as `\uXXXX`.
#[must_use]
pub fn json(value: &impl Serialize) -> String {
    let mut bytes = Vec::new();
    let mut writer = serde_json::Serializer::with_formatter(&mut bytes, Escaping);
    // Nothing here can fail: the bytes go to memory, and no key is anything but text.
    let written = value.serialize(&mut writer).is_ok();
    debug_assert!(written, "a report that JSON can't hold");
    let mut text = String::from_utf8_lossy(&bytes).into_owned();
    text.push('\n');
    text
}

/// Writes strings with hidden characters escaped, all else as JSON is commonly written.
struct Escaping;

impl Formatter for Escaping {
    fn write_string_fragment<W>(&mut self, writer: &mut W, fragment: &str) -> io::Result<()>
    where
        W: ?Sized + io::Write,
    {
        let mut written = 0;
        let steers = |at: usize, c| is_hidden(c) || (c == '#' && is_order(fragment, at));
        for (at, c) in fragment.char_indices().filter(|(at, c)| steers(*at, *c)) {
            writer.write_all(&fragment.as_bytes()[written..at])?;
            write!(writer, "\\u{:04x}", u32::from(c))?;
            written = at + c.len_utf8();
        }
        writer.write_all(&fragment.as_bytes()[written..])
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Any text, with more hidden characters in it than chance would bring.
    fn texts() -> impl Strategy<Value = String> {
        let hidden = prop_oneof![
            proptest::char::range('\0', '\u{a0}'),
            proptest::char::range('\u{200a}', '\u{2070}'),
            Just('\u{61c}'),
            Just('\u{feff}'),
            Just('"'),
            Just('\\'),
            Just(':'),
            Just('#'),
            Just('['),
        ];
        proptest::collection::vec(prop_oneof![any::<char>(), hidden], 0..60)
            .prop_map(|chars| chars.into_iter().collect())
    }

    proptest! {
        #[test]
        fn no_words_hold_a_hidden_character(text in texts()) {
            prop_assert!(!line(&text).contains(is_hidden));
            prop_assert!(!lines(&text).replace('\n', "").contains(is_hidden));
            prop_assert!(!line(&text).contains("::") && !line(&text).contains("##["));
        }

        #[test]
        fn a_drawn_line_keeps_its_length_and_every_other_place(text in texts()) {
            let shown = source(&text);
            prop_assert_eq!(shown.len(), text.len());
            prop_assert!(!shown.replace('\t', "").contains(is_hidden));
            let plain = |at: usize, c| !is_hidden(c) && !is_order(&text, at);
            for (at, c) in text.char_indices().filter(|(at, c)| plain(*at, *c)) {
                prop_assert!(shown[at..].starts_with(c));
            }
        }

        #[test]
        fn json_parses_back_to_the_true_text(text in texts()) {
            let written = json(&[&text]);
            prop_assert!(!written.trim_end().contains(is_hidden), "{}", written);
            let back: Vec<String> = serde_json::from_str(&written).expect("JSON");
            prop_assert_eq!(&back[0], &text);
        }
    }

    /// Source: ECMA-48, 5.2 and 5.3: C0 is 00 to 1F, C1 is 80 to 9F; DEL is 7F.
    #[test]
    fn each_kind_of_hidden_character_is_written_out() {
        assert_eq!(line("a\u{1b}[2Jb"), "a\\u{1b}[2Jb");
        assert_eq!(line("\u{9b}\u{202e}\u{200b}\n"), "\\u{9b}\\u{202e}\\u{200b}\\u{a}");
        assert_eq!(source("\u{1b}\u{9b}\u{202e}\t\r"), "??????\t?");
        assert_eq!(json(&"\u{1b}\u{202e}\u{7f}"), "\"\\u001b\\u202e\\u007f\"\n");
        assert_eq!(line("Möwe ± 0.2"), "Möwe ± 0.2");
    }

    /// Source: from memory of two build servers' runners: `::name::` is obeyed at the beginning of
    /// a line, blanks aside; `##[name]` and `##word[name]` are obeyed anywhere in it.
    #[test]
    fn what_a_build_server_would_obey_is_broken_up() {
        assert_eq!(line("::error::x"), ":\\u{3a}error:\\u{3a}x");
        assert_eq!(line("a ##[error]b ##vso[x]"), "a #\\u{23}[error]b #\\u{23}vso[x]");
        assert_eq!(line("12:30 # a ## b #[c]"), "12:30 # a ## b #[c]");
        assert_eq!(source("# ::x ##[y] ## z"), "# :?x #?[y] ## z");
        assert_eq!(json(&"::x ##vso[y]"), "\"::x #\\u0023vso[y]\"\n");
    }
}
