//! A record with every field of its form, each explained, and nothing in it that nobody said.
//!
//! An empty field is one that was not measured. Knows the forms, and no field by what it means but
//! for the few that are not for a new record.

mod explaining;

use super::starting::editor_line;
use crate::reading::Described;
use crate::reading::Kind;
use crate::reading::Naming;
use crate::reading::RecordKind;
use crate::reading::form;
use explaining::Explained;

/// Sections that stay shut until something is to be said in them.
const SHUT: [&str; 5] = ["limits", "worked-out", "readings", "out-of-use", "put-right"];

/// Fields that no new record has.
const NOT_NEW: [&str; 1] = ["predicted"];

/// A new record.
#[derive(Clone, Debug, Default)]
pub struct Blank {
    /// What is said already: the way to each field, as in its name, and the words there.
    pub said: Vec<(String, String)>,
    /// The parts of the list that the record is made of, by the value that names each: seats, oars,
    /// rowers.
    pub parts: Vec<String>,
    /// What may stand in lists whose keys are the club's own, by the key of the list.
    pub known: Vec<(&'static str, Vec<String>)>,
    /// The schema, as seen from the record, where there is one.
    pub schema: Option<String>,
}

impl Blank {
    /// Says what stands in a field; `words` are written as they are.
    pub fn say(&mut self, field: impl Into<String>, words: impl Into<String>) {
        self.said.push((field.into(), words.into()));
    }

    /// Returns the text of the record.
    #[must_use]
    pub fn text(&self, kind: RecordKind) -> String {
        let head = self.schema.as_deref().map(editor_line).unwrap_or_default();
        let mut lines = Lines { blank: self, text: head };
        lines.section(&form(kind), &At { way: String::new(), column: 0, explained: true });
        lines.text
    }

    fn words(&self, way: &str) -> Option<&str> {
        self.said.iter().find(|(own, _)| own == way).map(|(_, words)| words.as_str())
    }

    fn says_below(&self, way: &str) -> bool {
        self.said.iter().any(|(own, _)| own.strip_prefix(way).is_some_and(|r| r.starts_with('/')))
    }
}

/// Where a section stands.
struct At {
    way: String,
    column: usize,
    /// Whether its fields are explained; of several parts alike, only the first one's are.
    explained: bool,
}

impl At {
    fn way_to(&self, key: &str) -> String {
        if self.way.is_empty() { key.to_owned() } else { format!("{}/{key}", self.way) }
    }

    fn inside(&self, key: &str) -> Self {
        Self { way: self.way_to(key), column: self.column + 2, explained: self.explained }
    }
}

struct Lines<'b> {
    blank: &'b Blank,
    text: String,
}

impl Lines<'_> {
    fn section(&mut self, form: &[Described], at: &At) {
        for described in form.iter().filter(|own| !NOT_NEW.contains(&own.field.key)) {
            self.field(described, at);
        }
    }

    fn field(&mut self, described: &Described, at: &At) {
        let key = described.field.key;
        let way = at.way_to(key);
        self.explain(described, at);
        let indent = " ".repeat(at.column);
        match &described.kind {
            Kind::Section(form) if self.is_open(key, &way) => {
                self.text.push_str(&format!("{indent}{key}:\n"));
                self.section(form, &at.inside(key));
            }
            Kind::List(part, Naming::Seat) => self.parts(key, "seat", part, at),
            Kind::List(part, Naming::Id(by)) => self.parts(key, by, part, at),
            _ => self.line(&indent, key, &way),
        }
    }

    fn is_open(&self, key: &str, way: &str) -> bool {
        !SHUT.contains(&key) || self.blank.says_below(way)
    }

    fn line(&mut self, indent: &str, key: &str, way: &str) {
        let words = self.blank.words(way).unwrap_or_default();
        let line = format!("{indent}{key}: {words}");
        self.text.push_str(line.trim_end());
        self.text.push('\n');
    }

    /// Writes the parts that the record is made of: `seat-1`, `A1`.
    fn parts(&mut self, key: &str, by: &str, part: &Kind, at: &At) {
        let indent = " ".repeat(at.column);
        self.text.push_str(&format!("{indent}{key}:\n"));
        let Kind::Section(form) = part else { return };
        for (number, name) in self.blank.parts.iter().enumerate() {
            let way = if by == "seat" { format!("seat-{name}") } else { name.clone() };
            let first = number == 0;
            let inside = At { way, column: at.column + 4, explained: first && at.explained };
            let start = self.text.len();
            self.section(form, &inside);
            self.begin_part(start, &inside, by, name);
        }
    }

    /// Puts the dash before the first key of a part, and its name behind it.
    fn begin_part(&mut self, start: usize, at: &At, by: &str, name: &str) {
        let indent = " ".repeat(at.column);
        let bare = format!("{indent}{by}:\n");
        let dashed = format!("{}- {by}: {name}\n", " ".repeat(at.column - 2));
        let part = self.text[start..].replacen(&bare, &dashed, 1);
        self.text.truncate(start);
        self.text.push_str(&part);
    }

    fn explain(&mut self, described: &Described, at: &At) {
        if at.explained {
            let key = described.field.key;
            let known = self.blank.known.iter().find(|(own, _)| *own == key);
            let known = known.map_or(&[][..], |(_, words)| words.as_slice());
            let column = at.column;
            self.text.push_str(&Explained { described, known, column }.lines());
        }
    }
}
