//! How much a finding matters.

/// How much a finding matters. The greater, the worse.
#[derive(Clone, Copy, Debug, Eq, Hash, Ord, PartialEq, PartialOrd)]
pub enum Level {
    /// Worth knowing.
    Note,
    /// The reading is too coarse, or something needed was not measured, to decide.
    Unsure,
    /// Out of tolerance, or the record is wrong.
    Fault,
    /// Can hurt someone or break gear, or is not shown to be clear of it.
    Danger,
}

impl Level {
    /// Every level, the worst first.
    pub const ALL: [Self; 4] = [Self::Danger, Self::Fault, Self::Unsure, Self::Note];

    /// Returns the word for it.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Danger => "danger",
            Self::Fault => "fault",
            Self::Unsure => "unsure",
            Self::Note => "note",
        }
    }
}
