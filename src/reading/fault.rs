//! Why something in a file could not be read.

use thiserror::Error;

use super::tree::TreeFaultKind;
use crate::model::Name;
use crate::model::Place;
use crate::units::FigureFault;
use crate::units::NumberFault;

/// One thing that could not be read, and where.
#[derive(Clone, Debug, PartialEq)]
pub struct Fault {
    /// What is wrong.
    pub what: What,
    /// The name of the value, or of the record.
    pub name: Name,
    /// The bytes to look at.
    pub place: Place,
    /// A second place that takes part: the first of two equal keys.
    pub also: Option<Place>,
}

/// What is wrong. One variant for each thing that is mended differently.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum What {
    /// The text is no sound tree of keys and values.
    #[error("{0}")]
    Tree(TreeFaultKind),
    /// The file is a link.
    #[error("this is a link to another place, not a record")]
    Link,
    /// The file is not UTF-8.
    #[error("this is not plain text (UTF-8); the first odd byte is number {at}")]
    NotUtf8 {
        /// The byte, counted from 1.
        at: usize,
    },
    /// The file is larger than a record can be.
    #[error("this file holds {bytes} bytes; a record has at most {most}")]
    FileTooLarge {
        /// What it holds.
        bytes: u64,
        /// What it may hold.
        most: u64,
    },
    /// None of the keys that name a kind of record.
    #[error("this is no record: it has none of the keys `boat`, `oar-set`, `crew`, `class`")]
    NoRecord {
        /// The key that looks most like one of them.
        nearest: Option<(String, &'static str)>,
    },
    /// A format that this program does not know.
    #[error("this book is written in format {found}; this program reads format 1")]
    OtherFormat {
        /// The number written.
        found: u32,
    },
    /// A key that has no meaning here.
    #[error("`{key}` is no key that is known here")]
    UnknownKey {
        /// The key.
        key: String,
        /// The key that looks most like it.
        nearest: Option<String>,
    },
    /// A key that must be there.
    #[error("`{key}` is missing")]
    MissingKey {
        /// The key.
        key: &'static str,
    },
    /// No figure.
    #[error("`{found}`: {fault}")]
    Figure {
        /// What was written.
        found: String,
        /// What is wrong with it.
        fault: FigureFault,
    },
    /// No whole number.
    #[error("`{found}` is no whole number")]
    NotWhole {
        /// What was written.
        found: String,
    },
    /// Several slopes in one list, written in different ways.
    #[error("these readings are written in different ways")]
    MixedReadings,
    /// A word that has no meaning here.
    #[error("`{found}` is no word that is known here")]
    WrongWord {
        /// What was written.
        found: String,
        /// What may be written.
        known: Vec<&'static str>,
        /// The word that looks most like it.
        nearest: Option<&'static str>,
    },
    /// No day.
    #[error("`{found}` is no day of the calendar")]
    NotADate {
        /// What was written.
        found: String,
    },
    /// No id.
    #[error("`{found}` can't be an id")]
    WrongId {
        /// What was written.
        found: String,
    },
    /// A figure that no boat has.
    #[error("{found} can't be: {key} lies between {least} and {most}")]
    OutOfBounds {
        /// The key.
        key: &'static str,
        /// What was written.
        found: String,
        /// The least that can be.
        least: String,
        /// The most that can be.
        most: String,
    },
    /// How finely a reading was read, in another unit than the reading.
    #[error("{found} is not how finely this was read: it is of another kind than the reading")]
    OtherFineness {
        /// What was written.
        found: String,
    },
    /// A reading said to be good to nothing.
    #[error("{found} can't be: no reading is as fine as that")]
    TooFine {
        /// What was written.
        found: String,
    },
    /// Readings that can't all be right.
    #[error("these readings contradict each other: {why}")]
    Contradiction {
        /// How.
        why: &'static str,
    },
    /// A text cut short by an unquoted ` #`.
    #[error("the text ends at the `#`: what follows is not read")]
    CutShort,
    /// A text of several lines where one is asked for.
    #[error("this text has several lines; one is read here")]
    ManyLines,
    /// A list where a value stands, or the other way round.
    #[error("this is not {expected}")]
    Shape {
        /// What is read here.
        expected: &'static str,
    },
}

impl What {
    /// Returns the id of the rule that this breaks.
    #[must_use]
    pub fn rule(&self) -> &'static str {
        match self {
            Self::Tree(kind) => tree_rule(kind),
            Self::FileTooLarge { .. } => "too-large",
            Self::UnknownKey { .. } => "unknown-key",
            Self::MissingKey { .. } => "missing-key",
            Self::Figure { fault: FigureFault::Number(_), .. } | Self::NotWhole { .. } => {
                "not-a-number"
            }
            Self::Figure { fault: FigureFault::Unit { .. }, .. }
            | Self::MixedReadings
            | Self::OtherFineness { .. } => "wrong-unit",
            Self::WrongWord { .. } => "wrong-word",
            Self::NotADate { .. } => "not-a-date",
            Self::WrongId { .. } => "wrong-id",
            Self::OutOfBounds { .. } | Self::TooFine { .. } | Self::Contradiction { .. } => {
                "out-of-bounds"
            }
            Self::Link
            | Self::NotUtf8 { .. }
            | Self::NoRecord { .. }
            | Self::OtherFormat { .. }
            | Self::CutShort
            | Self::ManyLines
            | Self::Shape { .. } => "unreadable",
        }
    }

    /// Returns what to do, as a sentence.
    #[must_use]
    pub fn help(&self) -> String {
        let help = self.what_to_do();
        let mut letters = help.chars();
        let first = letters.next().into_iter().flat_map(char::to_uppercase);
        let end = if help.ends_with(['.', '?']) { "" } else { "." };
        first.chain(letters).chain(end.chars()).collect()
    }

    fn what_to_do(&self) -> String {
        match self {
            Self::Tree(kind) => kind.help().unwrap_or("mend the line").to_owned(),
            Self::Link => "put the record's own file here".to_owned(),
            Self::NotUtf8 { .. } => "save the file as UTF-8".to_owned(),
            Self::FileTooLarge { .. } => "split it, or take out what is no record".to_owned(),
            Self::NoRecord { nearest: Some((found, key)) } => {
                format!("`{found}` looks like `{key}`: write `{key}: ID`")
            }
            Self::NoRecord { nearest: None } => "begin it with `boat: ID`, or its like".to_owned(),
            Self::OtherFormat { .. } => "use the program of that format".to_owned(),
            Self::UnknownKey { nearest: Some(key), .. } => format!("did you mean `{key}`?"),
            Self::UnknownKey { key, .. } => {
                format!("take it out, or write `x-{key}` if it is the club's own")
            }
            Self::MissingKey { key } => format!("write `{key}:` and its value"),
            Self::Figure { fault, .. } => fault.help(),
            Self::NotWhole { .. } => "write a whole number, such as 3".to_owned(),
            Self::MixedReadings => "write every reading of the list in the same way".to_owned(),
            Self::WrongWord { nearest: Some(word), known, .. } => {
                format!("did you mean `{word}`? One of: {}", known.join(", "))
            }
            Self::WrongWord { known, .. } => format!("write one of: {}", known.join(", ")),
            Self::NotADate { .. } => "write year, month, day: 2026-10-17".to_owned(),
            Self::WrongId { .. } => {
                "begin with a letter, then letters, digits, hyphens; not yes, no, on or their like"
                    .to_owned()
            }
            Self::OtherFineness { .. } => "write it in the unit of the reading".to_owned(),
            Self::TooFine { .. } => "write how finely it was read, such as 0.2".to_owned(),
            Self::OutOfBounds { .. } => "look at the figure and its unit again".to_owned(),
            Self::Contradiction { .. } => {
                "read them again; until then no section of this shaft counts".to_owned()
            }
            Self::CutShort => {
                "put the whole text in quotes, or two blanks before a remark".to_owned()
            }
            Self::ManyLines => "write it on one line".to_owned(),
            Self::Shape { expected } => format!("write {expected}"),
        }
    }

    /// Returns what is at the place, and what is at the second one.
    #[must_use]
    pub fn labels(&self) -> (&'static str, &'static str) {
        match self {
            Self::CutShort => ("not read", "the text ends here"),
            Self::Tree(TreeFaultKind::KeyTwice { .. }) => ("and here", "first here"),
            _ => ("here", "here too"),
        }
    }

    /// Cuts what was written short enough to stand in a message, on one line.
    pub(super) fn shown(mut self) -> Self {
        match &mut self {
            Self::Figure { found, fault: FigureFault::Unit { found: unit, .. } } => {
                shorten(found);
                shorten(unit);
            }
            Self::UnknownKey { key: found, .. }
            | Self::NoRecord { nearest: Some((found, _)) }
            | Self::Figure { found, .. }
            | Self::NotWhole { found }
            | Self::WrongWord { found, .. }
            | Self::NotADate { found }
            | Self::WrongId { found }
            | Self::OutOfBounds { found, .. }
            | Self::OtherFineness { found }
            | Self::TooFine { found } => shorten(found),
            Self::Tree(TreeFaultKind::KeyTwice { key }) => shorten(key),
            _ => {}
        }
        self
    }

    /// Wraps what is wrong with a figure.
    pub(super) fn figure(found: &str, fault: impl Into<FigureFault>) -> Self {
        Self::Figure { found: found.to_owned(), fault: fault.into() }
    }

    /// A decimal comma that split a value in two.
    pub(super) fn comma(found: &str) -> Self {
        Self::figure(found, NumberFault::DecimalComma)
    }
}

fn tree_rule(kind: &TreeFaultKind) -> &'static str {
    match kind {
        TreeFaultKind::Anchor { .. } | TreeFaultKind::Alias { .. } | TreeFaultKind::MergeKey => {
            "anchor-not-allowed"
        }
        TreeFaultKind::Tag { .. } => "tag-not-allowed",
        TreeFaultKind::KeyTwice { .. } => "key-twice",
        TreeFaultKind::TooLarge { .. } => "too-large",
        _ => "unreadable",
    }
}

fn shorten(text: &mut String) {
    const MOST: usize = 60;
    let end = text.char_indices().nth(MOST).map_or(text.len(), |(end, _)| end);
    let more = if end < text.len() { "…" } else { "" };
    let line = text[..end].replace(|c: char| c.is_control(), " ");
    *text = format!("{line}{more}");
}
