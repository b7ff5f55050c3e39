//! Answers as lines, `name: value`: what is given in a file, and what a draft holds.

use thiserror::Error;

/// Lines of names and values.
#[derive(Clone, Debug, Default, Eq, PartialEq)]
pub struct Lines {
    /// Each line that says something, in order.
    pub said: Vec<Said>,
}

/// What one line says.
#[derive(Clone, Debug, Eq, PartialEq)]
pub struct Said {
    /// The number of the line, from 1.
    pub line: usize,
    /// The name.
    pub name: String,
    /// The value; empty where it was not measured today.
    pub value: String,
}

/// What is wrong with one line of answers.
#[derive(Clone, Debug, Eq, Error, PartialEq)]
pub enum LineFault {
    /// It is no `name: value`.
    #[error("line {line}: \"{text}\" is no answer; write it as name: value")]
    NoAnswer {
        /// The line.
        line: usize,
        /// What stands there.
        text: String,
    },
    /// Nothing of that name is asked.
    #[error("line {line}: nothing is called {name} here{}", offer(nearest.as_deref()))]
    Unknown {
        /// The line.
        line: usize,
        /// The name.
        name: String,
        /// The name that looks most like it.
        nearest: Option<String>,
    },
    /// It says where a value belongs, and is set already.
    #[error(
        "line {line}: {name} is set already and is not measured; change it in the record by hand"
    )]
    Settled {
        /// The line.
        line: usize,
        /// The name.
        name: String,
    },
    /// The name was answered before.
    #[error("line {line}: {name} was answered in line {before} already")]
    Twice {
        /// The line.
        line: usize,
        /// The name.
        name: String,
        /// The line of the first answer.
        before: usize,
    },
    /// The value can't be read.
    #[error("line {line}: {name}: {why}")]
    Unreadable {
        /// The line.
        line: usize,
        /// The name.
        name: String,
        /// What is wrong with it, and what to do.
        why: String,
    },
}

fn offer(nearest: Option<&str>) -> String {
    nearest.map(|nearest| format!("; did you mean {nearest}?")).unwrap_or_default()
}

impl Lines {
    /// Reads lines. Blank lines and what follows a `#` at the beginning or after a blank say nothing.
    ///
    /// # Errors
    ///
    /// Every line that is no `name: value`.
    pub fn read(text: &str) -> Result<Self, Vec<LineFault>> {
        let (mut lines, mut faults) = (Self::default(), Vec::new());
        for (line, text) in (1..).zip(text.lines()) {
            let own = without_comment(text).trim();
            match own.split_once(':') {
                _ if own.is_empty() => {}
                Some((name, value)) if !name.trim().is_empty() => lines.said.push(Said {
                    line,
                    name: name.trim().to_owned(),
                    value: value.trim().to_owned(),
                }),
                _ => faults.push(LineFault::NoAnswer { line, text: own.to_owned() }),
            }
        }
        if faults.is_empty() { Ok(lines) } else { Err(faults) }
    }

    /// Adds a line.
    pub fn push(&mut self, name: &str, value: &str) {
        let line = self.said.len() + 1;
        let value = value.split_whitespace().collect::<Vec<_>>().join(" ");
        self.said.push(Said { line, name: name.to_owned(), value });
    }

    /// Returns what a name says.
    #[must_use]
    pub fn get(&self, name: &str) -> Option<&str> {
        self.said.iter().find(|own| own.name == name).map(|own| &*own.value)
    }
}

/// What begins a comment is kept out of a value, as in a record.
fn without_comment(text: &str) -> &str {
    let begins = |at: &usize| *at == 0 || text[..*at].ends_with([' ', '\t']);
    let at = text.match_indices('#').map(|(at, _)| at).find(begins);
    at.map_or(text, |at| &text[..at])
}

impl std::fmt::Display for Lines {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        self.said.iter().try_for_each(|own| writeln!(f, "{}: {}", own.name, own.value))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_printed_reads_back_the_same() {
        let mut lines = Lines::default();
        lines.push("rigged/by", "Ines Marlow");
        lines.push("seat-1/rowlock/gap", "[58, 58.5]");
        lines.push("seat-1/note", "");
        assert_eq!(Lines::read(&lines.to_string()), Ok(lines));
    }

    #[test]
    fn comments_say_nothing_and_a_line_without_a_name_is_told() {
        let lines =
            Lines::read("# wet leather\n\nseat-1/rowlock/gap: 58 # twice\n").expect("lines");
        assert_eq!(lines.get("seat-1/rowlock/gap"), Some("58"));
        assert_eq!(lines.said[0].line, 3);
        let faults = Lines::read("58\n: 4\n").expect_err("no names");
        assert_eq!(faults.len(), 2, "{faults:?}");
    }
}
