//! One line on the terminal that tells how far a long look back has come. Knows no book.

use std::cell::Cell;
use std::io;
use std::io::IsTerminal as _;
use std::io::Write as _;
use std::time::Duration;
use std::time::Instant;

/// What takes no longer is not told.
const SHORT: Duration = Duration::from_millis(500);

/// How long a line stands before the next.
const BETWEEN: Duration = Duration::from_millis(100);

/// How far a command has come; its line is wiped when this is dropped.
pub(super) struct Progress {
    begun: Instant,
    terminal: bool,
    /// When the line was last written, and how wide it is.
    last: Cell<Option<(Instant, usize)>>,
}

impl Progress {
    /// Begins. Nothing is ever told where standard error is no terminal.
    pub(super) fn begin() -> Self {
        let terminal = io::stderr().is_terminal();
        Self { begun: Instant::now(), terminal, last: Cell::new(None) }
    }

    /// Tells that so many of all were done.
    pub(super) fn told(&self, doing: &str, done: usize, of: usize, what: &str) {
        if !self.terminal || !self.is_due(Instant::now()) {
            return;
        }
        let line = line(doing, done, of, what);
        let before = self.last.get().map_or(0, |(_, wide)| wide);
        write(&format!("\r{line:<before$}"));
        self.last.set(Some((Instant::now(), line.len())));
    }

    fn is_due(&self, now: Instant) -> bool {
        let long = now.duration_since(self.begun) > SHORT;
        long && self.last.get().is_none_or(|(then, _)| now.duration_since(then) > BETWEEN)
    }
}

impl Drop for Progress {
    fn drop(&mut self) {
        if let Some((_, wide)) = self.last.get() {
            write(&format!("\r{:wide$}\r", ""));
        }
    }
}

/// A line that can't be written is no harm: it is nothing of the result.
fn write(text: &str) {
    let mut out = io::stderr().lock();
    let _ = out.write_all(text.as_bytes()).and_then(|()| out.flush());
}

fn line(doing: &str, done: usize, of: usize, what: &str) -> String {
    format!("{doing}: {} of {} {what}", in_thousands(done), in_thousands(of))
}

fn in_thousands(number: usize) -> String {
    let digits = number.to_string();
    let mut out = String::new();
    for (at, digit) in digits.chars().enumerate() {
        if at > 0 && (digits.len() - at).is_multiple_of(3) {
            out.push(',');
        }
        out.push(digit);
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_told_in_thousands() {
        let told = line("looking back", 4000, 1_234_567, "commits");
        assert_eq!(told, "looking back: 4,000 of 1,234,567 commits");
        assert_eq!([0, 7, 999, 1000].map(in_thousands), ["0", "7", "999", "1,000"]);
    }

    #[test]
    fn a_line_comes_after_half_a_second_and_the_next_after_a_tenth() {
        let progress = Progress::begin();
        let at = |ms| progress.begun + Duration::from_millis(ms);
        assert!(!progress.is_due(at(500)) && progress.is_due(at(501)));
        progress.last.set(Some((at(501), 9)));
        assert!(!progress.is_due(at(601)) && progress.is_due(at(602)));
        progress.last.set(None);
    }
}
