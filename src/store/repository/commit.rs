//! One commit: who, when, from what; takes the bytes as git keeps them.
//!
//! Read here rather than by libgit2, which refuses a commit for an author's line that some old
//! program wrote badly: such a commit still has a tree and parents.

use git2::Oid;

use crate::store::repository::ids::CommitId;

/// A commit, without its files.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Commit {
    /// Its id.
    pub id: CommitId,
    /// The commits it was made from, the first one first. None where the history is cut short.
    pub parents: Vec<CommitId>,
    /// Who wrote the change.
    pub author: Person,
    /// Who put it into the history.
    pub committer: Person,
    /// The first paragraph of its message, on one line. It may be empty.
    pub subject: String,
    /// Whether its parents were left behind: the history is cut short here.
    pub at_the_edge: bool,
}

/// Who did something to a repository, and when. The words are theirs: nothing is escaped.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Person {
    /// The name. A byte that is no UTF-8 is U+FFFD.
    pub name: String,
    /// The address.
    pub email: String,
    /// The time, if it can be read.
    pub when: Option<Moment>,
}

/// A time as git keeps it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Moment {
    /// Seconds since 1970-01-01 00:00 UTC.
    pub seconds: i64,
    /// Minutes that the person's clock was ahead of UTC.
    pub offset_minutes: i32,
}

/// What is needed of a commit to walk on from it.
#[derive(Clone, Debug)]
pub(super) struct Header {
    pub(super) tree: Oid,
    pub(super) parents: Vec<Oid>,
    /// The committer's time, in seconds; 0 if it can't be read.
    pub(super) seconds: i64,
}

/// Returns the header of a commit's bytes, if it has a tree.
pub(super) fn header(bytes: &[u8]) -> Option<Header> {
    let id = |value: &[u8]| Oid::from_str(std::str::from_utf8(value).ok()?).ok();
    let (mut tree, mut parents, mut seconds) = (None, Vec::new(), 0);
    for (key, value) in fields(bytes) {
        match key {
            b"tree" if tree.is_none() => tree = id(value),
            b"parent" => parents.push(id(value)?),
            b"committer" => {
                seconds = person(value, false).when.map_or(0, |when| when.seconds);
                break;
            }
            _ => {}
        }
    }
    Some(Header { tree: tree?, parents, seconds })
}

/// Returns author, committer and subject of a commit's bytes.
pub(super) fn people_and_subject(bytes: &[u8]) -> (Person, Person, String) {
    let field = |name: &[u8]| fields(bytes).find(|(key, _)| *key == name).map(|(_, value)| value);
    let latin = field(b"encoding").is_some_and(is_latin);
    let who = |name| field(name).map(|value| person(value, latin)).unwrap_or_default();
    (who(b"author"), who(b"committer"), subject(message(bytes), latin))
}

/// Returns the fields of a commit, in order: what stands before the blank line.
fn fields(bytes: &[u8]) -> impl Iterator<Item = (&[u8], &[u8])> {
    let lines = bytes.split(|byte| *byte == b'\n').take_while(|line| !line.is_empty());
    lines.filter_map(|line| {
        let blank = line.iter().position(|byte| *byte == b' ').filter(|at| *at > 0)?;
        Some((&line[..blank], &line[blank + 1..]))
    })
}

fn message(bytes: &[u8]) -> &[u8] {
    let blank = bytes.windows(2).position(|pair| pair == b"\n\n");
    blank.map_or(&[], |at| &bytes[at + 2..])
}

fn subject(message: &[u8], latin: bool) -> String {
    let text = text(message, latin);
    let lines = text.lines().map(str::trim).skip_while(|line| line.is_empty());
    lines.take_while(|line| !line.is_empty()).collect::<Vec<_>>().join(" ")
}

/// Reads `Name <address> seconds +hhmm`, whatever of it is there.
fn person(value: &[u8], latin: bool) -> Person {
    let text = text(value, latin);
    let (who, when) = text.rsplit_once('>').unwrap_or((&text, ""));
    let (name, email) = who.split_once('<').unwrap_or((who, ""));
    Person { name: name.trim().into(), email: email.trim().into(), when: moment(when) }
}

fn moment(text: &str) -> Option<Moment> {
    let mut words = text.split_ascii_whitespace();
    let seconds = words.next()?.parse().ok()?;
    Some(Moment { seconds, offset_minutes: words.next().and_then(offset).unwrap_or(0) })
}

fn offset(text: &str) -> Option<i32> {
    let (sign, digits) = match text.split_at_checked(1)? {
        ("+", digits) => (1, digits),
        ("-", digits) => (-1, digits),
        _ => return None,
    };
    let written: i32 = digits.parse().ok().filter(|written| (0..10_000).contains(written))?;
    Some(sign * (written / 100 * 60 + written % 100))
}

fn is_latin(encoding: &[u8]) -> bool {
    [&b"iso-8859-1"[..], b"iso8859-1", b"latin1", b"latin-1"]
        .iter()
        .any(|name| encoding.eq_ignore_ascii_case(name))
}

fn text(bytes: &[u8], latin: bool) -> String {
    match std::str::from_utf8(bytes) {
        Ok(text) => text.to_owned(),
        Err(_) if latin => bytes.iter().copied().map(char::from).collect(),
        Err(_) => String::from_utf8_lossy(bytes).into_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const TREE: &str = "tree 4b825dc642cb6eb9a060e54bf8d69288fbee4904\n";

    #[test]
    fn a_person_is_read_as_far_as_it_is_written() {
        let ines = person(b"Ines Marlow <ines@example.org> 1767225600 -0230", false);
        assert_eq!((ines.name.as_str(), ines.email.as_str()), ("Ines Marlow", "ines@example.org"));
        let when = Moment { seconds: 1_767_225_600, offset_minutes: -150 };
        assert_eq!(ines.when, Some(when));
        assert_eq!(person(b"Tomas", false).name, "Tomas");
        assert_eq!(
            person(b"a <b> c> 12 +0100", false).when.map(|when| when.offset_minutes),
            Some(60)
        );
        assert_eq!(person(b"", false), Person::default());
        assert_eq!(person(b"x <y> soon", false).when, None);
    }

    #[test]
    fn an_offset_that_is_none_counts_as_none() {
        for odd in ["+99999", "5", "--100", "+", "\u{e9}"] {
            assert_eq!(offset(odd), None, "{odd}");
        }
    }

    #[test]
    fn a_latin_commit_keeps_its_letters_and_a_broken_one_shows_where() {
        let latin =
            format!("{TREE}author Ren\u{e9} <r@x> 1 +0000\nencoding ISO-8859-1\n\nH\u{e9}\n");
        let latin: Vec<u8> = latin.chars().map(|c| u8::try_from(c).expect("latin")).collect();
        let (author, committer, subject) = people_and_subject(&latin);
        assert_eq!((author.name.as_str(), subject.as_str()), ("Ren\u{e9}", "H\u{e9}"));
        assert_eq!(committer, Person::default());
        let broken = b"author Ren\xe9 <r@x> 1 +0000\n\n\n\na\nb\n\nc";
        let (author, _, subject) = people_and_subject(broken);
        assert_eq!((author.name.as_str(), subject.as_str()), ("Ren\u{fffd}", "a b"));
    }

    #[test]
    fn a_header_needs_a_tree_and_whole_parents() {
        assert!(header(TREE.as_bytes()).is_some());
        assert!(header(b"author x\n\n").is_none());
        assert!(header(format!("{TREE}parent 12zz\n").as_bytes()).is_none());
        assert!(header(b"").is_none());
    }
}
