//! What a typed line means, before it is held against a question.

use crate::reading::NOT_MEASURED;
use crate::reading::tree;
use crate::writing::editing::Meaning;
use crate::writing::editing::Wording;

/// What was typed.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Typed {
    /// Enter alone.
    Nothing,
    /// To the question before.
    Back,
    /// How is it measured?
    How,
    /// Nobody knows it.
    NotMeasured,
    /// Take back what was answered.
    Forget,
    /// Stop here for now.
    Stop,
    /// To the end: the rest is not measured today.
    End,
    /// To the first question of this name, or of what it names.
    To(String),
    /// A value.
    Value(Wording),
    /// A list or group that is not closed.
    Broken,
}

impl Typed {
    /// Returns what a line means.
    pub(super) fn of(line: &str) -> Self {
        match line.trim() {
            "" => Self::Nothing,
            "b" | "back" => Self::Back,
            "?" | "help" => Self::How,
            "n" | NOT_MEASURED => Self::NotMeasured,
            "x" => Self::Forget,
            "q" | "stop" => Self::Stop,
            "e" | "end" => Self::End,
            value if value.starts_with("g ") => Self::To(value[2..].trim().to_owned()),
            value => wording(value).map_or(Self::Broken, Self::Value),
        }
    }
}

/// Returns a value as it may be written in a record; none of a list or group that is not closed.
pub(super) fn wording(text: &str) -> Option<Wording> {
    if !text.starts_with(['[', '{']) {
        return Some(Wording::word(text));
    }
    let tree = tree::read(text);
    let root = tree.root.filter(|_| tree.complete && tree.faults.is_empty())?;
    Some(Wording::of(Meaning::of(&root)))
}
