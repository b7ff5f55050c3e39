//! Cells of a Markdown table: a text from outside shows as it stands. Knows no report.

use super::shown;

/// Characters that mean something in Markdown.
const MEANING: &str = "\\`*_{}[]!|~";

/// Returns a text that shows as it stands, on one line and in one cell.
pub(super) fn cell(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
    let shown = shown::line(&flat);
    for c in shown.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '@' => out.push_str("&#64;"),
            '#' => out.push_str("&#35;"),
            _ if MEANING.contains(c) => out.extend(['\\', c]),
            _ => out.push(c),
        }
    }
    // What looks like an address becomes a link by itself.
    let plain = |out: String, word: &str| out.replace(word, &word.replace(':', "&#58;"));
    let out = ["://", "mailto:", "xmpp:"].into_iter().fold(out, plain);
    out.replace("www.", "www&#46;")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_in_a_cell_is_markdown() {
        assert_eq!(cell("a|b`c\n<img> @ines #4"), "a\\|b\\`c &lt;img&gt; &#64;ines &#35;4");
        assert_eq!(cell("[x](http://y) *z*"), "\\[x\\](http&#58;//y) \\*z\\*");
        assert_eq!(cell("-0.5 mm, A1-2, \u{1b}[2J"), "-0.5 mm, A1-2, \\\\u\\{1b\\}\\[2J");
    }
}
