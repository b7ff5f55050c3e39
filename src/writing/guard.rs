//! The texts of the git hooks that guard a book; touches no disk.
//!
//! A hook is a few lines for `sh` that call the installed program, never anything out of the files
//! of the book: what a commit can change must not decide about that commit. A hook that was there
//! before is called first, with all that git gave, and its refusal stands.

use crate::store::hooks::KEPT;

/// A moment at which git asks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Moment {
    /// Before a commit.
    Commit,
    /// Before the commit that a clean merge makes.
    Merge,
    /// Before commits are sent to another repository.
    Push,
    /// On the server, before pushed commits are taken.
    Receive,
}

impl Moment {
    /// Those of a repository that people work in.
    pub const LOCAL: [Self; 3] = [Self::Commit, Self::Merge, Self::Push];

    /// Those of a repository that is only pushed to.
    pub const SERVER: [Self; 1] = [Self::Receive];

    /// Returns the name that git has for the hook.
    #[must_use]
    pub const fn hook(self) -> &'static str {
        match self {
            Self::Commit => "pre-commit",
            Self::Merge => "pre-merge-commit",
            Self::Push => "pre-push",
            Self::Receive => "pre-receive",
        }
    }

    /// Returns the words that the program is called with, the books left out.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Commit => "guard commit",
            Self::Merge => "guard merge",
            Self::Push => "guard push --remote=\"$1\"",
            Self::Receive => "guard receive",
        }
    }

    const fn is_told_by_lines(self) -> bool {
        matches!(self, Self::Push | Self::Receive)
    }
}

/// A hook as it is to be.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Script {
    /// When git calls it.
    pub moment: Moment,
    /// The installed program, its whole path.
    pub program: String,
    /// The books to check, each relative to the top of the files.
    pub books: Vec<String>,
}

const PROGRAM: &str = "# program: ";
const BOOK: &str = "# book: ";

impl Script {
    /// Returns the text of the hook.
    #[must_use]
    pub fn text(&self) -> String {
        let Self { moment, program, .. } = self;
        let books: String = self.books.iter().map(|book| format!("{BOOK}{book}\n")).collect();
        let call = self.call("\"$program\"");
        let (before, given, call) = match moment.is_told_by_lines() {
            true => (LINES, "given | ", format!("given | {call}")),
            false => ("", "", format!("exec {call}")),
        };
        format!(
            "#!/bin/sh\n{}{PROGRAM}{program}\n{books}# Put here by \"tholebook guard install\", taken \
             away by \"tholebook guard remove\".\n{}\nprogram={}\nkept=\"$0{KEPT}\"\n{before}\
             if [ -x \"$kept\" ]; then\n    {given}\"$kept\" \"$@\" || exit\nfi\n\
             if [ ! -x \"$program\" ]; then\n{}\nfi\n{call}\n",
            mark(*moment),
            remark(*moment),
            quoted(program),
            missing(*moment),
        )
    }

    /// Returns the one line that another hook needs, to do what this one does.
    #[must_use]
    pub fn line(&self) -> String {
        format!("{} || exit", self.call(&quoted(&self.program)))
    }

    fn call(&self, program: &str) -> String {
        let books = self.books.iter().map(|book| format!(" --book {}", quoted(book)));
        format!("{program} {}{}", self.moment.words(), books.collect::<String>())
    }

    /// Returns what a text of this room was made of, whatever was changed in it since; none of any
    /// other text.
    #[must_use]
    pub fn read(moment: Moment, text: &str) -> Option<Self> {
        let own = mark(moment);
        let head = text.split_once('\n').map(|(_, rest)| rest)?.strip_prefix(&own)?;
        let after = |mark| head.lines().filter_map(move |line: &str| line.strip_prefix(mark));
        let program = after(PROGRAM).next()?.to_owned();
        Some(Self { moment, program, books: after(BOOK).map(ToOwned::to_owned).collect() })
    }
}

/// Keeps what git gives on standard input, for two readers.
const LINES: &str =
    "lines=$(cat)\ngiven() {\n    if [ -n \"$lines\" ]; then printf '%s\\n' \"$lines\"; fi\n}\n";

fn mark(moment: Moment) -> String {
    format!("# tholebook guard: {}\n", moment.hook())
}

fn remark(moment: Moment) -> &'static str {
    match moment {
        Moment::Receive => "# A push that can't be checked is refused.",
        _ => {
            "# No gate: cherry-pick, revert, --no-verify and the forge's pages pass it by. CI or the\n\
             # server's \"tholebook guard receive\" is the gate."
        }
    }
}

fn missing(moment: Moment) -> &'static str {
    match moment {
        Moment::Receive => {
            "    echo \"tholebook is not at $program: nothing was checked, so nothing is taken.\" >&2\n    \
             exit 3"
        }
        _ => {
            "    echo \"tholebook is not at $program: nothing was checked. Install it, then: tholebook \
             guard install\" >&2\n    exit 0"
        }
    }
}

pub(super) fn quoted(word: &str) -> String {
    format!("'{}'", word.replace('\'', r"'\''"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn script(moment: Moment) -> Script {
        let books = vec!["clubs/o'neill".to_owned(), "$(rm -r .)".to_owned()];
        Script { moment, program: "/opt/boat's tools/tholebook".to_owned(), books }
    }

    #[test]
    fn a_hook_tells_what_it_was_made_of() {
        for moment in Moment::LOCAL.into_iter().chain(Moment::SERVER) {
            let script = script(moment);
            assert_eq!(Script::read(moment, &script.text()), Some(script));
        }
        let push = script(Moment::Push).text();
        assert_eq!(Script::read(Moment::Commit, &push), None);
        assert_eq!(Script::read(Moment::Commit, "#!/bin/sh\nexit 0\n"), None);
        assert_eq!(Script::read(Moment::Commit, ""), None);
    }

    #[test]
    fn no_name_of_a_book_or_a_folder_is_a_command() {
        let text = script(Moment::Commit).text();
        assert!(text.contains(r"program='/opt/boat'\''s tools/tholebook'"), "{text}");
        assert!(text.contains(r"--book 'clubs/o'\''neill' --book '$(rm -r .)'"), "{text}");
    }
}
