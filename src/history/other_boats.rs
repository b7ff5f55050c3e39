//! Boats other than the one that is asked for, by what little of each may matter to her: which oars
//! she carries, and since when. Reads no text in full.

use std::collections::HashMap;

use crate::store::BlobId;
use crate::units::Date;

/// Texts that are surely of a boat of another id, and don't name the id asked for.
#[derive(Default)]
pub struct OtherBoats {
    by_blob: HashMap<BlobId, Option<Short>>,
}

/// What of a boat may matter to another one.
struct Short {
    boat: Box<str>,
    oars: Box<str>,
    rigged: Option<Date>,
}

impl OtherBoats {
    pub(super) fn add(&mut self, blob: BlobId, text: Option<&str>) {
        self.by_blob.insert(blob, text.and_then(Short::of));
    }

    /// Returns whether a text is surely of such a boat, and of one that does not carry these oars.
    #[must_use]
    pub fn has(&self, blob: BlobId, oars: Option<&str>) -> bool {
        let Some(known) = self.by_blob.get(&blob) else { return false };
        oars.is_none_or(|oars| known.as_ref().is_some_and(|own| &*own.oars != oars))
    }

    /// Returns a text in short: the boat, her oars and her rigging day; none where it has to be
    /// read to know.
    #[must_use]
    pub fn in_short(&self, blob: BlobId) -> Option<String> {
        let Short { boat, oars, rigged } = self.by_blob.get(&blob)?.as_ref()?;
        let rigged = rigged.as_ref()?;
        Some(format!("boat: {boat}\noars: {oars}\nrigged: {{date: {rigged}}}\n"))
    }
}

impl Short {
    /// Reads it off the lines; none where they are not of the usual form.
    fn of(text: &str) -> Option<Self> {
        let (boat, oars) = (only(text, "boat:")?, only(text, "oars:")?);
        Some(Self { boat: boat.into(), oars: oars.into(), rigged: rigged(text) })
    }
}

/// Returns the word of a key that stands once, at the beginning of a line.
fn only<'t>(text: &'t str, key: &str) -> Option<&'t str> {
    let mut lines = text.lines().filter_map(|line| line.strip_prefix(key));
    let word = lines.next().filter(|_| lines.next().is_none())?.trim();
    let is_plain = |c: char| c.is_ascii_alphanumeric() || c == '-';
    (!word.is_empty() && word.chars().all(is_plain)).then_some(word)
}

/// Returns the day below `rigged:`, where it stands on a line of its own.
fn rigged(text: &str) -> Option<Date> {
    let mut lines = text.lines().skip_while(|line| line.trim_end() != "rigged:").skip(1);
    let first = lines.next()?;
    Date::read(first.strip_prefix("  date: ")?.trim_end()).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_matters_is_read_off_the_lines() {
        let text = "boat: skua\noars: long-ash\nrigged:\n  date: 2026-10-17\n  by: Ines Marlow\n";
        let short = Short::of(text).expect("the usual form");
        assert_eq!((&*short.boat, &*short.oars), ("skua", "long-ash"));
        assert_eq!(short.rigged, Date::read("2026-10-17").ok());
    }

    #[test]
    fn what_is_not_of_the_usual_form_is_not_guessed() {
        for odd in [
            "boat: skua\noars: &a long-ash\n",
            "boat: skua\noars:\n  long-ash\n",
            "boat: skua\noars: long-ash # old\n",
            "boat: skua\noars: long-ash\noars: short-ash\n",
            "boat: skua\n",
        ] {
            assert!(Short::of(odd).is_none(), "{odd}");
        }
        for odd in ["rigged: {date: 2026-10-17}\n", "rigged:\n  by: Ines\n  date: 2026-10-17\n"] {
            assert_eq!(rigged(odd), None, "{odd}");
        }
    }
}
