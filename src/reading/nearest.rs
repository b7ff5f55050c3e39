//! The known word that looks most like a written one.

/// How alike two words must be for one to be offered for the other: 1 is equal.
const ALIKE: f32 = 0.6;

/// Returns the known word that looks most like `written`, if any does.
#[must_use]
pub fn nearest<'k>(written: &str, known: &[&'k str]) -> Option<&'k str> {
    let short: String = written.chars().take(60).flat_map(char::to_lowercase).collect();
    similar::get_close_matches(short.as_str(), known, 1, ALIKE).first().copied()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_slip_of_the_pen_is_recognised_and_a_strange_word_is_not() {
        let known = ["seat-mark", "spread", "pitch"];
        assert_eq!(nearest("seatmark", &known), Some("seat-mark"));
        assert_eq!(nearest("Spred", &known), Some("spread"));
        assert_eq!(nearest("zzz", &known), None);
    }
}
