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

impl From<Exit> for ExitCode {
    fn from(exit: Exit) -> Self {
        match exit {
            Exit::Clear => Self::SUCCESS,
            Exit::Findings => Self::from(1),
            Exit::Usage => Self::from(2),
            Exit::NotChecked => Self::from(3),
            Exit::OwnFault => Self::from(4),
        }
    }
}
