//! Two changed texts of one record made one, field by field.
//!
//! What one side changed comes in, what both changed differently is left in conflict around that
//! field only. Layout and comments are ours. Knows records by their lists, and no rule.

mod comments;
mod differing;
mod marking;
mod parts;

pub use marking::Labels;

use super::editing;
use super::editing::Address;
use super::editing::Deed;
use super::editing::Meaning;
use super::editing::Refused;
use super::editing::Wording;
use crate::reading::tree::Node;

/// The two sides of a record and what they were before they parted.
#[derive(Clone, Copy, Debug)]
pub struct Sides<'t> {
    /// What both began from; nothing where both sides wrote the record anew.
    pub base: &'t str,
    /// Ours.
    pub ours: &'t str,
    /// Theirs.
    pub theirs: &'t str,
}

/// What theirs changes in ours.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    /// The place in ours.
    pub at: Address,
    /// What theirs does there.
    pub does: Does,
    /// Whether ours changed it too, and otherwise.
    pub disputed: bool,
}

/// What a side does at a place.
#[derive(Clone, Debug, PartialEq)]
pub enum Does {
    /// Writes this value there.
    Set(Wording),
    /// Adds this part to the list there.
    Append(Wording),
    /// Takes the value away.
    Remove,
}

/// Returns all that theirs changes, disputed or not.
///
/// # Errors
///
/// One of the three texts has a fault of YAML.
pub fn changes(sides: &Sides<'_>) -> Result<Vec<Change>, Refused> {
    let base = match sides.base.trim() {
        "" => Meaning::Empty,
        _ => Meaning::of(&editing::root(sides.base)?),
    };
    let ours = Meaning::of(&editing::root(sides.ours)?);
    let theirs: Node = editing::root(sides.theirs)?;
    let mut found = Vec::new();
    let theirs_read = differing::Theirs { text: sides.theirs, root: &theirs };
    differing::changes(&theirs_read, [&base, &ours, &Meaning::of(&theirs)], &mut found);
    Ok(found)
}

/// Returns the text in which every change is made that is not disputed; around those that are,
/// both forms stand between the marks of a conflict, each `reason` before ours.
///
/// # Errors
///
/// A change can't be made without touching what stands around it.
pub fn joined(
    sides: &Sides<'_>,
    changes: &[Change],
    labels: &Labels<'_>,
    reasons: &[String],
) -> Result<String, Refused> {
    let without = made(sides.ours, changes.iter().filter(|change| !change.disputed))?;
    let with = made(sides.ours, changes.iter())?;
    let lost = comments::lost(sides, &with);
    let (without, with) = (comments::added(without, &lost), comments::added(with, &lost));
    Ok(marking::marked(&without, &with, labels, reasons))
}

/// Returns ours with some changes made: first what is set, then what is added, then what is taken
/// away, the last part of a list first, so that no number moves before its turn.
fn made<'c>(ours: &str, changes: impl Iterator<Item = &'c Change>) -> Result<String, Refused> {
    let changes: Vec<&Change> = changes.collect();
    let set = changes.iter().filter(|change| matches!(change.does, Does::Set(_)));
    let added = changes.iter().filter(|change| matches!(change.does, Does::Append(_)));
    let taken = changes.iter().rev().filter(|change| change.does == Does::Remove);
    set.chain(added).chain(taken).try_fold(ours.to_owned(), |text, change| one_made(&text, change))
}

/// Makes one change, as theirs wrote it if that fits, else on one line.
fn one_made(text: &str, change: &Change) -> Result<String, Refused> {
    let deed = |wording: &Wording| match change.does {
        Does::Append(_) => editing::edited(text, &change.at, &Deed::Append(wording)),
        _ => editing::edited(text, &change.at, &Deed::Set(wording)),
    };
    match &change.does {
        Does::Remove => editing::edited(text, &change.at, &Deed::Remove),
        Does::Set(wording) | Does::Append(wording) => {
            deed(wording).or_else(|_| deed(&Wording::of(wording.meaning().clone())))
        }
    }
}
