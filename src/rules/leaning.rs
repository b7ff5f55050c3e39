//! The two ways a pin can lean, in the words of the trade.

use crate::model::LimitKey;

/// One of the two ways a pin can lean.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum Leaning {
    /// Fore and aft; to the stern is positive.
    Aft,
    /// Across the boat; outboard is positive.
    Out,
}

impl Leaning {
    /// Returns the key of the reading.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Aft => "aft",
            Self::Out => "out",
        }
    }

    /// Returns the limit of the lean.
    #[must_use]
    pub const fn limit(self) -> LimitKey {
        match self {
            Self::Aft => LimitKey::PinAft,
            Self::Out => LimitKey::PinOut,
        }
    }

    /// Returns the axis in words.
    #[must_use]
    pub const fn axis(self) -> &'static str {
        match self {
            Self::Aft => "fore and aft",
            Self::Out => "in and out",
        }
    }

    /// Returns where a pin leans to.
    #[must_use]
    pub fn towards(self, lean: f64) -> &'static str {
        match (self, lean > 0.0) {
            (Self::Aft, true) => "to the stern",
            (Self::Aft, false) => "to the bow",
            (Self::Out, true) => "outboard",
            (Self::Out, false) => "inboard",
        }
    }

    /// Returns the edge of the plate on the side a pin leans to: the one to pack.
    #[must_use]
    pub fn edge(self, lean: f64) -> &'static str {
        match (self, lean > 0.0) {
            (Self::Aft, true) => "stern",
            (Self::Aft, false) => "bow",
            (Self::Out, true) => "outboard",
            (Self::Out, false) => "inboard",
        }
    }
}
