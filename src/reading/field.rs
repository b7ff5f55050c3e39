//! A field of a record: its key, what it means and how it is measured, what it may be.

use crate::model::Tool;

/// Everything known about one field.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Field {
    /// The key.
    pub key: &'static str,
    /// What it is and how it is measured, in one sentence.
    pub about: &'static str,
    /// Whether it must be there.
    pub must: bool,
    /// What it is read with.
    pub tool: Tool,
    /// The least it can be, where that differs from its kind's.
    pub least: Option<f64>,
    /// The most it can be, where that differs from its kind's.
    pub most: Option<f64>,
    /// Whether a text may have several lines.
    pub many_lines: bool,
    /// The one word that may stand for a whole section.
    pub word: Option<&'static str>,
}

/// What was read, in a reading that says how finely.
pub const READ: Field = field("read", "what was read").must();

/// How finely, in the same.
pub const TO: Field = field("to", "how finely");

/// Returns a field that may be left out and is read with a tape.
pub(super) const fn field(key: &'static str, about: &'static str) -> Field {
    Field {
        key,
        about,
        must: false,
        tool: Tool::Tape,
        least: None,
        most: None,
        many_lines: false,
        word: None,
    }
}

impl Field {
    /// It must be there.
    pub(super) const fn must(mut self) -> Self {
        self.must = true;
        self
    }

    /// It is read with this tool.
    pub(super) const fn by(mut self, tool: Tool) -> Self {
        self.tool = tool;
        self
    }

    /// It can't be outside of these.
    pub(super) const fn within(mut self, least: f64, most: f64) -> Self {
        self.least = Some(least);
        self.most = Some(most);
        self
    }

    /// It can't be less than this.
    pub(super) const fn from(mut self, least: f64) -> Self {
        self.least = Some(least);
        self
    }

    /// One word may stand for the whole section.
    pub(super) const fn or_word(mut self, word: &'static str) -> Self {
        self.word = Some(word);
        self
    }

    /// Its text may have several lines.
    pub(super) const fn long(mut self) -> Self {
        self.many_lines = true;
        self
    }
}
