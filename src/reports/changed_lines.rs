//! How a file changes, line by line, with a few lines around: as `git diff` shows it.

use similar::TextDiff;

use super::shown;

/// Lines shown before and after a change.
const AROUND: usize = 2;

/// Returns what changes in a file; nothing where nothing does.
#[must_use]
pub fn changed_lines(path: &str, old: &str, new: &str) -> String {
    let path = shown::line(path);
    let difference = TextDiff::from_lines(old, new);
    let mut unified = difference.unified_diff();
    let text = unified.context_radius(AROUND).header(&path, &path).to_string();
    text.lines().map(|line| format!("{}\n", shown::source(line))).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_changed_line_is_shown_both_ways_and_steers_no_terminal() {
        let text =
            changed_lines("boats/k\u{1b}.yaml", "a: 1\ngap: 5,\u{1b}[2J\n", "a: 1\ngap: 5\n");
        assert!(text.starts_with("--- boats/k\\u{1b}.yaml\n+++ "), "{text}");
        assert!(text.contains("\n a: 1\n-gap: 5,?[2J\n+gap: 5\n"), "{text}");
        assert_eq!(changed_lines("a", "same\n", "same\n"), "");
    }
}
