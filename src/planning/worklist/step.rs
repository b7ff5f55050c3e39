//! What a worklist is made of.

use std::fmt;

use crate::model::Boat;
use crate::model::Book;
use crate::model::FileId;
use crate::model::Name;
use crate::rules::Finding;
use crate::units::Date;

/// The work that brings a boat inside her limits.
#[derive(Clone, Debug)]
pub struct Worklist {
    /// The boat's id.
    pub boat: String,
    /// What people call her.
    pub called: String,
    /// The day that was taken for today.
    pub as_of: Date,
    /// Values too close to call: read again before any metal is bent.
    pub measure: Vec<Finding>,
    /// The work, in its order.
    pub steps: Vec<Step>,
    /// What was not planned, because something was not measured.
    pub not_planned: Vec<NotPlanned>,
    /// What can't be cured together.
    pub conflicts: Vec<Conflict>,
    /// What a waiver lets stand, and is left as it is.
    pub waived: Vec<Finding>,
    /// What is still found after all of the work.
    pub left: Vec<Finding>,
    /// The book with the boat as she is after the work.
    pub predicted: Book,
    /// What differs in the texts of the book.
    pub changes: Vec<Change>,
}

impl Worklist {
    /// Returns a worklist of nothing to do, with the book as it will be.
    pub(super) fn none(predicted: Book, boat: &Boat, as_of: Date) -> Self {
        Self {
            boat: boat.id.value.clone(),
            called: boat.called().to_owned(),
            as_of,
            measure: Vec::new(),
            steps: Vec::new(),
            not_planned: Vec::new(),
            conflicts: Vec::new(),
            waived: Vec::new(),
            left: Vec::new(),
            predicted,
            changes: Vec::new(),
        }
    }

    /// Returns how many horns and pins are bent.
    #[must_use]
    pub fn bends(&self) -> usize {
        self.steps.iter().filter(|step| step.work.bends_metal()).count()
    }

    /// Returns whether there is nothing to do, to read or to clear up.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        let Self { measure, steps, not_planned, conflicts, left, .. } = self;
        measure.is_empty()
            && steps.is_empty()
            && not_planned.is_empty()
            && conflicts.is_empty()
            && left.is_empty()
    }
}

/// One piece of work.
#[derive(Clone, Debug)]
pub struct Step {
    /// What kind of work.
    pub work: Work,
    /// The seat it is done at.
    pub seat: Option<u32>,
    /// The oar it is done to.
    pub oar: Option<String>,
    /// What to do, with the amounts.
    pub deed: String,
    /// Why, and why so.
    pub because: String,
    /// The amounts, by name; each name ends in its unit.
    pub amounts: Vec<(&'static str, f64)>,
}

/// A kind of work, in the order in which it is done.
#[derive(Clone, Copy, Debug, Eq, Ord, PartialEq, PartialOrd)]
pub enum Work {
    /// The boat is chocked until she lies level.
    Level,
    /// A pin's plate is packed.
    PackPin,
    /// A pin is bent.
    BendPin,
    /// A pin is replaced.
    ReplacePin,
    /// The pitch is set on the forward horn.
    BendForwardHorn,
    /// The gap is set on the after horn.
    BendAfterHorn,
    /// A rowlock is replaced.
    ReplaceRowlock,
    /// Pitch and lifting out are tried again.
    ReadAgain,
    /// A collar is slid along its oar.
    SlideCollar,
    /// A back chock is moved.
    MoveChock,
    /// A rower changes holes.
    MoveFootHole,
}

impl Work {
    /// Returns the word for it in JSON.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Level => "level",
            Self::PackPin => "pack-pin",
            Self::BendPin => "bend-pin",
            Self::ReplacePin => "replace-pin",
            Self::BendForwardHorn => "bend-forward-horn",
            Self::BendAfterHorn => "bend-after-horn",
            Self::ReplaceRowlock => "replace-rowlock",
            Self::ReadAgain => "read-again",
            Self::SlideCollar => "slide-collar",
            Self::MoveChock => "move-chock",
            Self::MoveFootHole => "move-foot-hole",
        }
    }

    /// Returns whether metal is bent cold.
    #[must_use]
    pub const fn bends_metal(self) -> bool {
        matches!(self, Self::BendPin | Self::BendForwardHorn | Self::BendAfterHorn)
    }
}

/// What was not planned.
#[derive(Clone, Debug, Eq, PartialEq)]
pub struct NotPlanned {
    /// The boat or the seat.
    pub name: Name,
    /// The work, in a few words.
    pub what: &'static str,
    /// What is missing for it.
    pub missing: String,
}

/// What can't be cured together.
#[derive(Clone, Debug, Eq, PartialEq)]
pub struct Conflict {
    /// The boat or the seat.
    pub name: Name,
    /// What it is, and which limits are against each other.
    pub says: String,
}

/// One difference in a text of the book.
#[derive(Clone, Debug, Eq, PartialEq)]
pub struct Change {
    /// The file.
    pub file: FileId,
    /// The way to the value.
    pub at: Vec<At>,
    /// What becomes of it.
    pub deed: ChangeTo,
}

/// One step on the way to a value.
#[derive(Clone, Debug, Eq, PartialEq)]
pub enum At {
    /// Into the value of a key.
    Key(String),
    /// Into the part of a list whose key says this.
    Part(&'static str, String),
    /// Into a part of a list, counted from 1.
    Number(usize),
}

/// What becomes of a value.
#[derive(Clone, Debug, Eq, PartialEq)]
pub enum ChangeTo {
    /// It says this.
    Set {
        /// As it is written.
        says: String,
        /// How finely it was read, where the reading says so itself.
        to: Option<String>,
    },
    /// The list at the place has one part more: these keys and values.
    Append(Vec<(&'static str, String)>),
    /// It is no more there.
    Removed,
}

impl fmt::Display for Conflict {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.says)
    }
}
