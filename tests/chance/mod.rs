//! Numbers that look like chance and are the same on every run.

/// xorshift64, from a seed that is not zero. Source: Marsaglia 2003, "Xorshift RNGs", Journal of
/// Statistical Software 8(14).
pub(crate) struct Chance(pub(crate) u64);

impl Chance {
    /// Returns a number from zero to less than `most`; zero where that is zero.
    pub(crate) fn below(&mut self, most: u64) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        self.0 % most.max(1)
    }
}
