//! The known word that looks most like a written one.

/// How alike two words must be for one to be offered for the other: 1 is equal.
const ALIKE: f32 = 0.65;

/// Returns the known word that looks most like `written`, if any does.
#[must_use]
pub fn nearest<'k>(written: &str, known: &[&'k str]) -> Option<&'k str> {
    let small = |word: &str| word.chars().take(60).flat_map(char::to_lowercase).collect();
    let (written, small_known): (String, Vec<String>) =
        (small(written), known.iter().map(|word| small(word)).collect());
    let small_known: Vec<&str> = small_known.iter().map(String::as_str).collect();
    let found =
        similar::get_close_matches(written.as_str(), &small_known, 1, ALIKE).first().copied()?;
    small_known.iter().position(|word| *word == found).map(|index| known[index])
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

    #[test]
    fn capitals_make_no_difference() {
        assert_eq!(nearest("a1", &["B1", "A1"]), Some("A1"));
    }
}
