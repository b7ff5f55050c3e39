//! Chance, seeded: the same trial is drawn the same way on every machine.

use proptest::prelude::Rng;
use proptest::test_runner::RngAlgorithm;
use proptest::test_runner::TestRng;

/// A drawer of numbers.
pub(crate) struct Draw(TestRng);

impl Draw {
    /// A drawer of its own for each seed.
    pub(crate) fn seeded(seed: u64) -> Self {
        let mut bytes = [0; 32];
        bytes[..8].copy_from_slice(&seed.to_le_bytes());
        Self(TestRng::from_seed(RngAlgorithm::ChaCha, &bytes))
    }

    /// A number from `least` to `most`, no place likelier than another.
    pub(crate) fn between(&mut self, least: f64, most: f64) -> f64 {
        let part = (self.0.next_u64() >> 11) as f64 / (1_u64 << 53) as f64;
        least + part * (most - least)
    }

    /// A reading of a truth with a tool of this half-width.
    pub(crate) fn read(&mut self, truth: f64, half_width: f64) -> f64 {
        truth + self.between(-half_width, half_width)
    }

    /// +1 or -1.
    pub(crate) fn sign(&mut self) -> f64 {
        if self.between(-1.0, 1.0) < 0.0 { -1.0 } else { 1.0 }
    }

    /// Four values in any order.
    pub(crate) fn shuffled(&mut self, mut four: [f64; 4]) -> [f64; 4] {
        for last in (1..four.len()).rev() {
            let other = self.between(0.0, last as f64 + 1.0) as usize;
            four.swap(last, other.min(last));
        }
        four
    }
}
