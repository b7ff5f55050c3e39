//! How a run ended. The numbers are part of the interface: hooks and servers read them.

use std::process::ExitCode;

/// How a run ended; of several, the highest applies.
#[derive(Clone, Copy, Debug, Eq, Ord, PartialEq, PartialOrd)]
pub(super) enum Exit {
    /// Done; nothing at or above the failing level.
    Clear,
    /// Findings at or above the failing level.
    Findings,
    /// Wrong usage, or settings that can't be used.
    Usage,
    /// The question could not be answered: nothing to check, or bytes that could not be had.
    NotChecked,
    /// A fault of the program.
    OwnFault,
}

impl Exit {
    /// Returns the number.
    pub(super) const fn code(self) -> u8 {
        match self {
            Self::Clear => 0,
            Self::Findings => 1,
            Self::Usage => 2,
            Self::NotChecked => 3,
            Self::OwnFault => 4,
        }
    }
}

impl From<Exit> for ExitCode {
    fn from(exit: Exit) -> Self {
        Self::from(exit.code())
    }
}
