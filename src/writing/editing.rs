//! Edits in place: one value of a text set, put in or taken out; every other byte stays.
//!
//! Each edit is proven before it is handed out: the edited text is read again, and what it says must
//! be what the old text said with nothing but the target changed. Knows YAML trees and no boats.

mod address;
mod finding;
mod lines;
mod meaning;
mod order;
mod proving;
mod putting_in;
mod taking_out;
mod wording;

pub use address::Address;
pub use address::Step;
pub use finding::below;
pub use meaning::Meaning;
pub use wording::Wording;
pub use wording::word;

use std::ops::Range;

use crate::reading::Described;
use crate::reading::tree;
use crate::reading::tree::Node;

/// What is done at a place of a text.
#[derive(Clone, Debug, PartialEq)]
pub enum Deed<'w> {
    /// The value stands there afterwards, whatever stood there before. Sections on the way to it
    /// that are not written yet are put in with it.
    Set(&'w Wording),
    /// The value stands there afterwards as the last part of the list at that place.
    Append(&'w Wording),
    /// Nothing stands there afterwards: neither the value nor its key.
    Remove,
}

/// Why a text was not edited. Nothing was changed.
#[derive(Clone, Debug, Eq, PartialEq, thiserror::Error)]
pub enum Refused {
    /// The text has faults of YAML.
    #[error("the file has a fault at byte {at} and is not changed before that is mended")]
    Faulty {
        /// The first byte of the first fault.
        at: usize,
    },
    /// What was to be taken out does not stand there, or the way to it is barred by another value.
    #[error("{at} does not stand in the file")]
    NoSuchPlace {
        /// The place that was looked for.
        at: Address,
    },
    /// The value that names a part of a list is not taken out of it.
    #[error("{at} names the part of the list that it stands in")]
    NamesItsPart {
        /// The place.
        at: Address,
    },
    /// The edited text would not say what was meant.
    #[error("{at} can't be changed without touching what stands around it")]
    Unproven {
        /// The place.
        at: Address,
    },
}

impl Refused {
    /// Returns what to do about it.
    #[must_use]
    pub const fn help(&self) -> &'static str {
        match self {
            Self::Faulty { .. } => "run `tholebook lint`, mend the file, then try again",
            Self::NoSuchPlace { .. } => "look at the names with `tholebook card` or `derive`",
            Self::NamesItsPart { .. } => "take the whole part out of the list by hand",
            Self::Unproven { .. } => "change this one by hand in an editor, then run lint",
        }
    }
}

/// Part of a text and what stands there afterwards.
#[derive(Clone, Debug, Eq, PartialEq)]
struct Patch {
    bytes: Range<usize>,
    new: String,
}

/// Returns the text with `deed` done at `at`.
///
/// # Errors
///
/// Where the text has faults, where the place can't be had, and where the edit could not be proven to
/// change its target only.
///
/// # Example
///
/// ```
/// use tholebook::writing::editing::{Address, Deed, Wording, edited};
///
/// let text = "boat: kittiwake\nrowlock: {gap: 58, long: 38} # re-bent\n";
/// let at = Address::root().key("rowlock").key("gap");
/// let text = edited(text, &at, &Deed::Set(&Wording::word("57.5"))).unwrap();
/// assert_eq!(text, "boat: kittiwake\nrowlock: {gap: 57.5, long: 38} # re-bent\n");
/// ```
pub fn edited(text: &str, at: &Address, deed: &Deed<'_>) -> Result<String, Refused> {
    edited_in_form(text, at, deed, &[])
}

/// Does as [`edited`] does, and puts a key that was not written where the form of the record has
/// it: behind those that come before it there.
///
/// # Errors
///
/// Those of [`edited`].
pub fn edited_in_form(
    text: &str,
    at: &Address,
    deed: &Deed<'_>,
    form: &[Described],
) -> Result<String, Refused> {
    let root = root(text)?;
    let patch = match deed {
        Deed::Set(value) => putting_in::set(text, &root, at, value, form),
        Deed::Append(value) => putting_in::append(text, &root, at, value, form),
        Deed::Remove => taking_out::removed(text, &root, at),
    }?;
    let edited = patched(text, &patch);
    if proving::holds(&root, &edited, at, deed) {
        Ok(edited)
    } else {
        Err(Refused::Unproven { at: at.clone() })
    }
}

/// Returns the outermost value of a text without faults.
pub(super) fn root(text: &str) -> Result<Node, Refused> {
    let tree = tree::read(text);
    match (tree.root, tree.faults.first()) {
        (Some(root), None) if tree.complete => Ok(root),
        (_, fault) => Err(Refused::Faulty { at: fault.map_or(0, |fault| fault.at.start) }),
    }
}

fn patched(text: &str, patch: &Patch) -> String {
    format!("{}{}{}", &text[..patch.bytes.start], patch.new, &text[patch.bytes.end..])
}
