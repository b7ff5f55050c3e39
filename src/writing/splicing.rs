//! Two changed texts of one record made one, field by field.
//!
//! What one side changed comes in, what both changed differently is left in conflict around that
//! field only. Layout and comments are ours. Knows records by their lists, and no rule.

mod comments;
mod days;
mod differing;
mod marking;
mod parts;
mod signing;

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
    /// Why it can't be decided here; nothing where it can.
    pub dispute: Option<Dispute>,
}

/// Why a change can't be decided without a person.
#[derive(Clone, Copy, Debug, Eq, PartialEq)]
pub enum Dispute {
    /// Both sides changed the value, or the entry of a log, each otherwise.
    Both,
    /// Both sides changed who signed, or for which day: a signature is one thing.
    Signature,
    /// One side measured the whole anew on another day, the other changed a part of it.
    Remeasured,
    /// Each side is sound by itself, and both together are not.
    Together,
}

/// All that theirs changes, and what the record says with all of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Changes {
    /// Each change, disputed or not.
    pub each: Vec<Change>,
    meant: Meaning,
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
pub fn changes(sides: &Sides<'_>) -> Result<Changes, Refused> {
    let base = match sides.base.trim() {
        "" => Meaning::Empty,
        _ => Meaning::of(&editing::root(sides.base)?),
    };
    let ours = Meaning::of(&editing::root(sides.ours)?);
    let theirs: Node = editing::root(sides.theirs)?;
    let mut found = Vec::new();
    let theirs_read = differing::Theirs { text: sides.theirs, root: &theirs };
    let states = [&base, &ours, &Meaning::of(&theirs)];
    let meant = differing::changes(&theirs_read, states, &mut found);
    days::dispute(states, &mut found);
    Ok(Changes { each: found, meant })
}

/// Returns the text in which every change is made that is not disputed; around those that are,
/// both forms stand between the marks of a conflict, each `reason` before ours.
///
/// # Errors
///
/// A change can't be made without touching what stands around it, or all together would not say
/// what is meant.
pub fn joined(
    sides: &Sides<'_>,
    changes: &Changes,
    labels: &Labels<'_>,
    reasons: &[String],
) -> Result<String, Refused> {
    let decided = changes.each.iter().filter(|change| change.dispute.is_none());
    let without = made(sides.ours, decided)?;
    let with = made(sides.ours, changes.each.iter())?;
    let says = Meaning::of(&editing::root(&with)?);
    if says.pruned().settled() != changes.meant.clone().pruned().settled() {
        return Err(Refused::Unproven { at: Address::root() });
    }
    let lost = comments::lost(sides, &with);
    let (without, with) = (comments::added(without, &lost), comments::added(with, &lost));
    Ok(marking::marked(&without, &with, labels, reasons))
}

/// Returns ours with some changes made: first what is set, then what is added, then what is taken
/// away, the last part of each list first, so that no number moves before its turn.
fn made<'c>(ours: &str, changes: impl Iterator<Item = &'c Change>) -> Result<String, Refused> {
    let changes: Vec<&Change> = changes.collect();
    let set = changes.iter().filter(|change| matches!(change.does, Does::Set(_)));
    let added = changes.iter().filter(|change| matches!(change.does, Does::Append(_)));
    let mut taken: Vec<&&Change> =
        changes.iter().filter(|change| change.does == Does::Remove).collect();
    taken.sort_by_key(|change| std::cmp::Reverse(change.at.last_number()));
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
