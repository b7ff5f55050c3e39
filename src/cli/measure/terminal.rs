//! The terminal as whoever measures sees it: a line is shown, a line is typed. The one place that
//! names the library for prompts.

use std::io::Write as _;

use rustyline::DefaultEditor;

/// Nobody answers any more: the terminal is closed, or Ctrl-C.
pub(super) struct BrokenOff;

/// The terminal.
pub(super) struct Terminal {
    editor: DefaultEditor,
}

impl Terminal {
    /// Opens it; none where it can't be had.
    pub(super) fn open() -> Option<Self> {
        DefaultEditor::new().ok().map(|editor| Self { editor })
    }

    /// Shows a text.
    pub(super) fn show(&mut self, text: &str) {
        let mut out = std::io::stdout().lock();
        // Whoever closed the terminal is noticed at the next question.
        let _ = out.write_all(text.as_bytes()).and_then(|()| out.flush());
    }

    /// Asks for a line.
    pub(super) fn ask(&mut self, prompt: &str) -> Result<String, BrokenOff> {
        self.editor.readline(prompt).map_err(|_| BrokenOff)
    }

    /// Asks until the answer is yes or no.
    pub(super) fn yes(&mut self, question: &str) -> Result<bool, BrokenOff> {
        loop {
            match self.ask(&format!("{question} (yes or no) "))?.trim() {
                "yes" | "y" => return Ok(true),
                "no" | "n" => return Ok(false),
                _ => self.show("  yes or no, please\n"),
            }
        }
    }
}
