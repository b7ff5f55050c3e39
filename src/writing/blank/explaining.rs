//! What a field is and how it is measured, as lines of comment above it.

use crate::reading::Described;
use crate::reading::Kind;
use crate::reading::Naming;
use crate::reading::ValueKind;

/// The last column of a comment.
const WIDTH: usize = 96;

/// A field to be explained.
pub(super) struct Explained<'d> {
    pub(super) described: &'d Described,
    /// What may stand in it, where the class says so.
    pub(super) known: &'d [String],
    pub(super) column: usize,
}

impl Explained<'_> {
    /// Returns the comment, `\n` behind each line.
    pub(super) fn lines(&self) -> String {
        let Described { field, kind, .. } = self.described;
        let mut sentence = format!("{}: {}", field.key, field.about);
        let hint = hint(kind, self.known);
        let must = if field.must { "must be there" } else { "" };
        let hints: Vec<&str> = [must, &hint].into_iter().filter(|hint| !hint.is_empty()).collect();
        if !hints.is_empty() {
            sentence.push_str(&format!(" ({})", hints.join("; ")));
        }
        wrapped(&sentence, self.column)
    }
}

/// Returns in what it is written.
fn hint(kind: &Kind, known: &[String]) -> String {
    match kind {
        Kind::Value(kind) | Kind::Reading(kind) => of_value(kind),
        Kind::Section(_) => String::new(),
        Kind::Free(part) => format!("{}; each {}", known.join(", "), hint(part, &[])),
        // The parts of these stand below, each with its fields.
        Kind::List(_, Naming::Seat | Naming::Id(_)) => String::new(),
        Kind::List(part, _) => match &**part {
            Kind::Section(form) => {
                let keys: Vec<&str> = form.iter().map(|own| own.field.key).collect();
                format!("a list; each part has {}", keys.join(", "))
            }
            part => format!("a list in [ ]; {}", hint(part, &[])).trim_end_matches("; ").to_owned(),
        },
    }
}

fn of_value(kind: &ValueKind) -> String {
    match kind {
        ValueKind::Length => "mm".to_owned(),
        ValueKind::Angle => "deg".to_owned(),
        ValueKind::Slope => "mm of offset, or deg".to_owned(),
        ValueKind::Weight => "kg".to_owned(),
        ValueKind::Date => "such as 2026-10-17".to_owned(),
        ValueKind::Flag => "true or false".to_owned(),
        ValueKind::Count => "a whole number".to_owned(),
        ValueKind::Word(words) => words.join(", "),
        ValueKind::Ratio | ValueKind::Id | ValueKind::Text => String::new(),
    }
}

/// Returns a sentence as lines of comment at a column; what does not fit goes on below, set in.
fn wrapped(sentence: &str, column: usize) -> String {
    let begin = format!("{}#", " ".repeat(column));
    let (mut text, mut line) = (String::new(), begin.clone());
    for word in sentence.split_whitespace() {
        if line.chars().count() + 1 + word.chars().count() > WIDTH && line != begin {
            text.push_str(&line);
            text.push('\n');
            line = format!("{begin}  ");
        }
        line.push(' ');
        line.push_str(word);
    }
    format!("{text}{line}\n")
}
