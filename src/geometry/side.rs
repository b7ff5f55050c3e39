//! The side of the boat an oar's blade is on; knows nothing of seats.

/// The side of the boat that the rowlock and the blade are on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Side {
    /// Left, looking to the bow.
    Port,
    /// Right, looking to the bow.
    Starboard,
}

impl Side {
    /// Returns +1 on port and -1 on starboard.
    #[must_use]
    pub const fn sign(self) -> f64 {
        match self {
            Self::Port => 1.0,
            Self::Starboard => -1.0,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Side;

    /// Source: roll is positive port side down, so it adds to the lean of a port pin.
    #[test]
    fn port_is_plus_one_and_starboard_minus_one() {
        assert!((Side::Port.sign() - 1.0).abs() < 1e-15);
        assert!((Side::Starboard.sign() + 1.0).abs() < 1e-15);
    }
}
