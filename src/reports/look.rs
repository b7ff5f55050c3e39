//! How a text report is to look: width, glyphs, colours. Whether a terminal can show them is for
//! the caller to find out.

use owo_colors::Style;

use super::shown;
use crate::rules::Level;

/// What drawings are made of.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum Glyphs {
    /// Lines and corners.
    Unicode,
    /// What every keyboard has.
    Ascii,
}

/// How a text report is to look.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub struct Look {
    /// How many columns a line may take.
    pub width: usize,
    /// What drawings are made of.
    pub glyphs: Glyphs,
    /// Whether to colour.
    pub colour: bool,
}

/// Orange and blue, which the colour-blind tell apart. Each contrasts with white and with black by
/// at least 4.5, so both can be read on a light and on a dark ground.
const ORANGE: (u8, u8, u8) = (192, 88, 0);
const BLUE: (u8, u8, u8) = (44, 118, 210);

/// Holds a number and its unit together while lines are broken.
const TIE: char = '\u{a0}';

/// Returns how many columns a text takes in a terminal.
pub(super) fn columns(text: &str) -> usize {
    textwrap::core::display_width(text)
}

impl Look {
    /// Returns the style of a level; without colours, a plain one.
    #[must_use]
    pub fn of_level(&self, level: Level) -> Style {
        let (r, g, b) = match level {
            Level::Danger | Level::Fault => ORANGE,
            Level::Unsure | Level::Note => BLUE,
        };
        match (self.colour, level) {
            (false, _) => Style::new(),
            (true, Level::Danger) => Style::new().truecolor(r, g, b).bold(),
            (true, _) => Style::new().truecolor(r, g, b),
        }
    }

    /// Returns the style of what stands beside the colour of `level`.
    #[must_use]
    pub fn beside(&self, level: Level) -> Style {
        match level {
            Level::Danger | Level::Fault => self.of_level(Level::Note),
            Level::Unsure | Level::Note => self.of_level(Level::Fault),
        }
    }

    /// Returns the style of headings.
    #[must_use]
    pub fn heading(&self) -> Style {
        if self.colour { Style::new().bold() } else { Style::new() }
    }

    /// Returns what is written where a line was cut.
    #[must_use]
    pub const fn cut(&self) -> &'static str {
        match self.glyphs {
            Glyphs::Unicode => "…",
            Glyphs::Ascii => "...",
        }
    }

    /// Returns a text cut down to so many columns, with the mark that says so.
    pub(super) fn cut_to(&self, text: &str, room: usize) -> String {
        if columns(text) <= room {
            return text.to_owned();
        }
        let mark = self.cut();
        let mut kept = String::new();
        for c in text.chars() {
            kept.push(c);
            if columns(&kept) + columns(mark) > room {
                kept.pop();
                break;
            }
        }
        format!("{kept}{mark}")
    }

    /// Returns words ready to be shown, in the glyphs asked for.
    #[must_use]
    pub fn words(&self, text: &str) -> String {
        let text = shown::lines(text);
        match self.glyphs {
            Glyphs::Unicode => text,
            Glyphs::Ascii => text
                .replace('±', "+/-")
                .replace('…', "...")
                .replace('→', "->")
                .replace('≤', "<=")
                .replace('≥', ">="),
        }
    }

    /// Returns words ready to be shown and broken into lines of the width, each begun with an
    /// indent.
    #[must_use]
    pub fn wrapped(&self, text: &str, indent: &str) -> String {
        self.hanging(text, indent, indent)
    }

    /// Returns words broken into lines of the width only after some signs; a line without such a
    /// sign stays as wide as it is.
    pub(super) fn broken_after(
        &self,
        signs: &[char],
        text: &str,
        first: &str,
        below: &str,
    ) -> String {
        let options = self.options(first, below).break_words(false);
        let mut tied = String::with_capacity(text.len());
        for c in text.chars() {
            let tie = c == ' ' && !tied.ends_with(signs);
            tied.push(if tie { TIE } else { c });
        }
        untied(&textwrap::fill(&tied, options))
    }

    fn options<'o>(&self, first: &'o str, below: &'o str) -> textwrap::Options<'o> {
        textwrap::Options::new(self.width)
            .initial_indent(first)
            .subsequent_indent(below)
            .word_separator(textwrap::WordSeparator::AsciiSpace)
            .word_splitter(textwrap::WordSplitter::NoHyphenation)
    }

    /// Returns words as [`wrapped`](Self::wrapped), with an indent of their own below the first
    /// line.
    #[must_use]
    pub fn hanging(&self, text: &str, first: &str, below: &str) -> String {
        untied(&textwrap::fill(&tied(&self.words(text)), self.options(first, below)))
    }
}

/// Ties a number to its unit and to how good it is, and a sign to its number, so that no line breaks between them.
pub(super) fn tied(text: &str) -> String {
    let mut tied = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(at) = rest.find(' ') {
        let (before, after) = (&rest[..at], &rest[at + 1..]);
        tied.push_str(before);
        tied.push(if belongs(before, after) { TIE } else { ' ' });
        rest = after;
    }
    tied.push_str(rest);
    tied
}

fn belongs(before: &str, after: &str) -> bool {
    let number = before.ends_with(|c: char| c.is_ascii_digit());
    let word = after.split(|c: char| !c.is_alphabetic() && c != '%').next().unwrap_or_default();
    let doubt = ["±", "+/-"];
    let good_to = number && doubt.iter().any(|sign| after.starts_with(sign));
    doubt.iter().any(|sign| before.ends_with(sign))
        || good_to
        || (number && ["mm", "deg", "kg", "m", "%", "days"].contains(&word))
}

/// Makes plain blanks of ties.
pub(super) fn untied(text: &str) -> String {
    text.replace(TIE, " ")
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: Web Content Accessibility Guidelines 2.1, relative luminance and contrast ratio;
    /// 4.5 is the least of criterion 1.4.3. (Formula and figure from memory.)
    #[test]
    fn each_colour_can_be_read_on_white_and_on_black() {
        let channel = |value: u8| {
            let part = f64::from(value) / 255.0;
            if part <= 0.040_45 { part / 12.92 } else { ((part + 0.055) / 1.055).powf(2.4) }
        };
        for (r, g, b) in [ORANGE, BLUE] {
            let light = 0.2126 * channel(r) + 0.7152 * channel(g) + 0.0722 * channel(b);
            let (on_white, on_black) = (1.05 / (light + 0.05), (light + 0.05) / 0.05);
            assert!(on_white >= 4.5 && on_black >= 4.5, "{on_white} {on_black}");
        }
    }

    #[test]
    fn a_number_is_never_parted_from_its_unit() {
        let look = Look { width: 24, glyphs: Glyphs::Unicode, colour: false };
        let text = "the gap clears oar A1 by 3.0 mm, good to ± 0.4 mm";
        let lines = look.wrapped(text, "");
        assert_eq!(lines, "the gap clears oar A1 by\n3.0 mm, good to ± 0.4 mm");
    }

    #[test]
    fn plain_glyphs_leave_no_sign_that_a_keyboard_lacks() {
        let look = Look { width: 80, glyphs: Glyphs::Ascii, colour: false };
        assert_eq!(look.words("± 0.4 mm"), "+/- 0.4 mm");
    }
}
