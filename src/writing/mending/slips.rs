//! Whether a key is another one with a slip of the pen in it: only such a key is put right unasked.

/// Keys of at least this many letters may have two slips.
const LONG: usize = 6;

/// Returns whether `written` is `key` in other letters, with other marks between its words, or with
/// a slip or two. A digit is no slip: `spread2` is not `spread`.
pub(super) fn is_slip(written: &str, key: &str) -> bool {
    let plain = |text: &str| text.to_lowercase().replace(['-', '_', ' ', '.'], "");
    let (written, key) = (plain(written), plain(key));
    let allowed = if key.chars().count() >= LONG { 2 } else { 1 };
    !written.contains(|c: char| c.is_numeric()) && slips(&written, &key) <= allowed
}

/// Returns how many letters must be put in, taken out or changed to make one word of the other.
///
/// # Source
///
/// Wagner and Fischer, The String-to-String Correction Problem, J. ACM 21 (1974).
fn slips(one: &str, other: &str) -> usize {
    let other: Vec<char> = other.chars().collect();
    let mut row: Vec<usize> = (0..=other.len()).collect();
    for (above, letter) in one.chars().enumerate() {
        let mut corner = row[0];
        row[0] = above + 1;
        for (at, own) in other.iter().enumerate() {
            let changed = corner + usize::from(letter != *own);
            corner = row[at + 1];
            row[at + 1] = changed.min(row[at] + 1).min(corner + 1);
        }
    }
    row[other.len()]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_slip_is_a_letter_or_two_and_never_a_digit() {
        let slip = [
            ("Gap", "gap"),
            ("after_tip", "after-tip"),
            ("seatmark", "seat-mark"),
            ("spraed", "spread"),
            ("chock to pin", "chock-to-pin"),
            ("gab", "gap"),
        ];
        for (written, key) in slip {
            assert!(is_slip(written, key), "{written}");
        }
        for (written, key) in
            [("spread2", "spread"), ("gap-2", "gap"), ("tip", "pin"), ("mark", "seat-mark")]
        {
            assert!(!is_slip(written, key), "{written}");
        }
        assert_eq!(slips("kitten", "sitting"), 3);
    }
}
