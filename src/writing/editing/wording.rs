//! How a value is written: on one line, or in the lines it has elsewhere.

use super::meaning::Meaning;
use crate::reading::TAKEN_FOR_OTHERS;

/// A value to be written.
#[derive(Clone, Debug, Eq, PartialEq)]
pub struct Wording {
    meaning: Meaning,
    /// How it is written elsewhere; the outermost of several lines at column 0.
    written: Option<String>,
}

impl Wording {
    /// Returns a word, a number or a text, in quotes where it needs them.
    #[must_use]
    pub fn word(text: &str) -> Self {
        Self::of(Meaning::Word(text.to_owned()))
    }

    /// Returns a value written on one line.
    #[must_use]
    pub const fn of(meaning: Meaning) -> Self {
        Self { meaning, written: None }
    }

    /// Returns a value as it is written elsewhere, on one line or several; `written` must say just
    /// that.
    #[must_use]
    pub const fn as_written(meaning: Meaning, written: String) -> Self {
        Self { meaning, written: Some(written) }
    }

    /// Returns what it says.
    #[must_use]
    pub const fn meaning(&self) -> &Meaning {
        &self.meaning
    }

    /// Returns its lines, if it is written on more than one.
    pub(super) fn lines(&self) -> Option<&str> {
        self.written.as_deref().filter(|written| written.contains('\n'))
    }

    /// Returns it on one line.
    #[must_use]
    pub fn on_one_line(&self) -> String {
        let written = self.written.as_deref().filter(|written| !written.contains('\n'));
        written.map_or_else(|| on_one_line(&self.meaning), str::to_owned)
    }
}

/// Returns a value on one line: groups in `{}`, lists in `[]`.
pub(super) fn on_one_line(meaning: &Meaning) -> String {
    match meaning {
        Meaning::Empty => "~".to_owned(),
        Meaning::Word(text) => word(text),
        Meaning::List(list) => {
            let parts: Vec<String> = list.iter().map(on_one_line).collect();
            format!("[{}]", parts.join(", "))
        }
        Meaning::Map(map) => {
            let parts: Vec<String> = map
                .iter()
                .map(|(key, value)| format!("{}: {}", word(key), on_one_line(value)))
                .collect();
            format!("{{{}}}", parts.join(", "))
        }
    }
}

/// Returns a text so that it reads as itself wherever it stands, in quotes only where it must.
#[must_use]
pub fn word(text: &str) -> String {
    if is_plain(text) { text.to_owned() } else { quoted(text) }
}

fn is_plain(text: &str) -> bool {
    let first = text.chars().next().is_some_and(|first| first.is_alphanumeric());
    let is_signed =
        text.starts_with(['-', '+']) && text[1..].starts_with(|c: char| c.is_ascii_digit());
    let harmless = |c: char| c.is_alphanumeric() || " .-+_/()°'".contains(c);
    let taken = TAKEN_FOR_OTHERS.iter().any(|word| text.eq_ignore_ascii_case(word));
    (first || is_signed) && text.chars().all(harmless) && !text.ends_with(' ') && !taken
}

fn quoted(text: &str) -> String {
    let mut quoted = String::from("\"");
    for letter in text.chars() {
        match letter {
            '"' => quoted.push_str("\\\""),
            '\\' => quoted.push_str("\\\\"),
            '\n' => quoted.push_str("\\n"),
            '\t' => quoted.push_str("\\t"),
            // The last two are no characters, and no YAML may hold them as they are.
            control if control.is_control() || matches!(control, '\u{fffe}' | '\u{ffff}') => {
                quoted.push_str(&format!("\\u{:04x}", u32::from(control)));
            }
            other => quoted.push(other),
        }
    }
    quoted.push('"');
    quoted
}
