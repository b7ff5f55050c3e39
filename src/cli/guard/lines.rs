//! The lines in which git says what a push is to change; and lines that any terminal can show.

use std::io;
use std::io::Read;

use crate::cli::exit::Exit;
use crate::cli::output::Done;
use crate::reports::shown;

/// The most bytes that are read of git: some ten thousand branches.
const MOST: u64 = 4 << 20;

/// How many digits an id has.
const ID: usize = 40;

/// How many digits an id has where they are SHA-256.
const LONG_ID: usize = 64;

/// The most characters of a line that is sent to whoever pushes.
const LONGEST: usize = 160;

/// One branch, tag or other name that a push changes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Update {
    /// The commit before; none where the name is new.
    pub(super) old: Option<String>,
    /// The commit after; none where the name is deleted.
    pub(super) new: Option<String>,
    /// The whole name, `refs/heads/main`.
    pub(super) name: String,
}

impl Update {
    /// Returns the branch's own name, if it is a branch.
    pub(super) fn branch(&self) -> Option<&str> {
        self.name.strip_prefix("refs/heads/")
    }
}

/// Reads the lines that `pre-receive` is given: before, after, name.
pub(super) fn received(from: impl Read) -> Result<Vec<Update>, Done> {
    let line = |words: &[&str]| match words {
        [old, new, name] => Some(Update { old: id(old)?, new: id(new)?, name: name_of(name)? }),
        _ => None,
    };
    read(from, line)
}

/// Reads the lines that `pre-push` is given: ours, its commit, theirs, its commit.
pub(super) fn pushed(from: impl Read) -> Result<Vec<Update>, Done> {
    let line = |words: &[&str]| match words {
        [_, new, name, old] => Some(Update { old: id(old)?, new: id(new)?, name: name_of(name)? }),
        _ => None,
    };
    read(from, line)
}

fn read(from: impl Read, line: impl Fn(&[&str]) -> Option<Update>) -> Result<Vec<Update>, Done> {
    let text = text(from)?;
    let updates = text.lines().map(|own| {
        let words: Vec<&str> = own.split(' ').collect();
        line(&words).ok_or_else(|| not_read(&why(&words)))
    });
    updates.collect()
}

fn text(from: impl Read) -> Result<String, Done> {
    let mut bytes = Vec::new();
    from.take(MOST + 1)
        .read_to_end(&mut bytes)
        .map_err(|error: io::Error| not_read(&error.to_string()))?;
    if bytes.len() as u64 > MOST {
        return Err(not_read("there is more of it than any push has"));
    }
    String::from_utf8(bytes).map_err(|_| not_read("a name in it is no UTF-8"))
}

fn why(words: &[&str]) -> String {
    if words.iter().any(|word| word.len() == LONG_ID && is_hex(word)) {
        return "the repository keeps its history in a form that can't be read here (SHA-256)"
            .into();
    }
    let line: String = words.join(" ").chars().take(LONGEST / 2).collect();
    format!("no such line was looked for: {line}")
}

fn not_read(why: &str) -> Done {
    let told = format!("What git says of this push can't be read: {why}");
    Done::refused(Exit::NotChecked, vec![shown::line(&told)])
}

/// Returns an id, none inside where it stands for nothing; none at all where it is no id.
fn id(word: &str) -> Option<Option<String>> {
    let is_id = word.len() == ID && is_hex(word);
    let is_nothing = word.bytes().all(|byte| byte == b'0');
    is_id.then(|| (!is_nothing).then(|| word.to_owned()))
}

fn is_hex(word: &str) -> bool {
    word.bytes().all(|byte| byte.is_ascii_hexdigit())
}

fn name_of(word: &str) -> Option<String> {
    let is_name = word.starts_with("refs/") && !word.contains(char::is_control);
    is_name.then(|| word.to_owned())
}

/// Returns lines of plain letters, none longer than a line may be.
pub(super) fn plain(text: &str) -> String {
    text.lines().map(|line| format!("{}\n", plain_line(line))).collect()
}

fn plain_line(line: &str) -> String {
    let mut plain = String::with_capacity(line.len());
    for c in line.chars() {
        if c.is_ascii() && !c.is_ascii_control() {
            plain.push(c);
        } else {
            plain.extend(c.escape_unicode());
        }
    }
    match plain.char_indices().nth(LONGEST) {
        Some((at, _)) => format!("{}...", &plain[..at]),
        None => plain,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const A: &str = "1111111111111111111111111111111111111111";
    const NOTHING: &str = "0000000000000000000000000000000000000000";

    fn one(line: &str) -> Result<Vec<Update>, Done> {
        received(format!("{line}\n").as_bytes())
    }

    #[test]
    fn a_new_a_changed_and_a_deleted_branch_are_told_apart() {
        let main = |old: Option<&str>, new: Option<&str>| Update {
            old: old.map(ToOwned::to_owned),
            new: new.map(ToOwned::to_owned),
            name: "refs/heads/main".to_owned(),
        };
        let read = |old, new| one(&format!("{old} {new} refs/heads/main")).expect("a line");
        assert_eq!(read(A, A), [main(Some(A), Some(A))]);
        assert_eq!(read(NOTHING, A), [main(None, Some(A))]);
        assert_eq!(read(A, NOTHING), [main(Some(A), None)]);
        let pushed = pushed(format!("HEAD~1 {A} refs/heads/main {NOTHING}").as_bytes());
        assert_eq!(pushed.expect("a line"), [main(None, Some(A))]);
    }

    #[test]
    fn a_line_that_is_none_is_refused() {
        let long = "1".repeat(64);
        for line in [
            String::new(),
            "main".to_owned(),
            format!("{A} {A}"),
            format!("{A} {A} refs/heads/a b"),
            format!("{A} {A} main"),
            format!("{A}  {A} refs/heads/main"),
            format!("{A} {}g refs/heads/main", &A[1..]),
            format!("{A} {} refs/heads/main", &A[1..]),
            format!("{A} {A} refs/heads/\u{1b}[2J"),
            format!("{long} {long} refs/heads/main"),
        ] {
            let refused = one(&line).expect_err("no line");
            assert_eq!(refused.exit, Exit::NotChecked, "{line}");
        }
        let long = one(&format!("{long} {long} refs/heads/main")).expect_err("no line");
        assert!(long.told[0].contains("SHA-256"), "{:?}", long.told);
        assert!(received(&b"\xff\n"[..]).is_err());
        assert!(received(io::repeat(b'a')).is_err());
    }

    #[test]
    fn what_is_sent_is_plain_and_short() {
        let text = plain(&format!("B\u{f6}e \u{1b}[2J\t\n{}", "a".repeat(1000)));
        assert!(text.is_ascii() && text.starts_with("B\\u{f6}e \\u{1b}[2J"), "{text}");
        assert!(text.lines().all(|line| line.len() <= LONGEST + 3), "{text}");
    }
}
