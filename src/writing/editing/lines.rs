//! The lines of a text: where one begins and ends, and how it is ended.

/// Returns where the line of a byte begins.
pub(super) fn start(text: &str, at: usize) -> usize {
    text[..at].rfind('\n').map_or(0, |end| end + 1)
}

/// Returns the byte after the end of the line that a value ends on, `\n` included.
pub(super) fn after(text: &str, end: usize) -> usize {
    if end > 0 && text[..end].ends_with('\n') {
        return end;
    }
    text[end..].find('\n').map_or(text.len(), |more| end + more + 1)
}

/// Returns the sign that ends the lines of this text.
pub(super) fn ending(text: &str) -> &'static str {
    let first = text.find('\n').map_or("", |end| &text[..=end]);
    if first.ends_with("\r\n") { "\r\n" } else { "\n" }
}

/// Returns how many columns stand before a byte in its line.
pub(super) fn column(text: &str, at: usize) -> usize {
    text[start(text, at)..at].chars().count()
}

/// Returns lines set deeper by some columns; the first as it is.
pub(super) fn deeper(lines: &str, by: usize, ending: &str) -> String {
    let mut set = String::new();
    for (number, line) in lines.lines().enumerate() {
        if number > 0 {
            set.push_str(ending);
            if !line.trim().is_empty() {
                set.push_str(&" ".repeat(by));
            }
        }
        set.push_str(line);
    }
    set
}
