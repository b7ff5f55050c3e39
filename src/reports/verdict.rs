//! The verdict of one value: the worst that was found of it, told by letter and word.

use super::look::Look;
use crate::rules::Finding;
use crate::rules::Level;

/// What may be said of a value.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum Verdict {
    /// Something was found.
    Found(Level),
    /// Something was found, and the club lives with it for a while.
    Waived,
    /// It was looked at, and nothing was found.
    Clear,
    /// Nobody looked: it was not measured, or no rule is in force for it.
    NotChecked,
}

/// What each verdict means.
pub(super) const LEGEND: &str = "D danger, F fault, U unsure, N note; waived: the club lives with \
     it for a while; clear: looked at and in order; -: not checked. First what was read, below it what is worked out from it, ± how good \
     it is. Positive: lean to the stern and outboard, pitch with the blade's top to the stern.";

impl Verdict {
    /// Returns the verdict of a value that findings were made of; `checked` is whether any rule
    /// looked at it.
    pub fn of<'f>(findings: impl Iterator<Item = &'f Finding>, checked: bool) -> Self {
        let (waived, standing): (Vec<_>, Vec<_>) =
            findings.partition(|finding| finding.waived.is_some());
        match standing.iter().map(|finding| finding.level).max() {
            Some(level) => Self::Found(level),
            None if !waived.is_empty() => Self::Waived,
            None if checked => Self::Clear,
            None => Self::NotChecked,
        }
    }

    /// Returns the verdict as a word; none where nobody looked.
    pub(super) fn word(self) -> Option<&'static str> {
        match self {
            Self::Found(level) => Some(level.word()),
            Self::Waived => Some("waived"),
            Self::Clear => Some("clear"),
            Self::NotChecked => None,
        }
    }

    /// Returns the verdict as letter and word.
    pub(super) fn words(self) -> String {
        match self {
            Self::Found(level) => with_letter(level),
            Self::Waived => "waived".to_owned(),
            Self::Clear => "clear".to_owned(),
            Self::NotChecked => "-".to_owned(),
        }
    }

    /// Returns the verdict where there is little room: the letter alone.
    pub(super) fn short(self) -> String {
        match self {
            Self::Found(level) => letter(level),
            Self::Waived => "waived".to_owned(),
            Self::Clear => "clear".to_owned(),
            Self::NotChecked => "-".to_owned(),
        }
    }

    /// Returns words in the colour of the verdict; of one that is not bad, as they are.
    pub(super) fn coloured(self, words: &str, look: Look) -> String {
        match self {
            Self::Found(level) => look.of_level(level).style(words).to_string(),
            _ => words.to_owned(),
        }
    }
}

/// Returns a level as letter and word: "F fault".
pub(super) fn with_letter(level: Level) -> String {
    format!("{} {}", letter(level), level.word())
}

fn letter(level: Level) -> String {
    level.word()[..1].to_uppercase()
}
