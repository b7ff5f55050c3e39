//! Everything known about one rule.

use std::fmt;

use super::finding::Outcome;
use super::level::Level;
use super::sources::Source;
use crate::model::Book;
use crate::units::Date;
use crate::working::BoatSight;
use crate::working::SeatSight;

/// One rule: what it looks for and all that is known about it.
///
/// No field has a default. A rule without a reason, a remedy or a source does not compile.
pub struct Rule {
    /// The name people type. Names the fault; equal to the file's name with hyphens.
    pub id: &'static str,
    /// How much it matters at the worst.
    pub level: Level,
    /// What it checks, in one sentence.
    pub checks: &'static str,
    /// Why it matters in the boat.
    pub reason: &'static str,
    /// How to put it right.
    pub remedy: &'static str,
    /// The sum that decides, or what is compared.
    pub formula: &'static str,
    /// The limit where nobody sets another, or a dash.
    pub default: &'static str,
    /// Where the formula and the figures come from.
    pub sources: &'static [Source],
    /// A fault and its cure. The tests run both.
    pub example: Example,
    /// What it looks at.
    pub looks: Looks,
}

/// How a rule looks at a book.
pub enum Looks {
    /// At each seat of each boat.
    AtEachSeat(fn(&SeatSight) -> Vec<Outcome>),
    /// At each boat.
    AtEachBoat(fn(&BoatSight) -> Vec<Outcome>),
    /// At the book as a whole, on a day.
    AtTheBook(fn(&Book, Date) -> Vec<Outcome>),
    /// Nowhere: it is told while the texts are read.
    WhileReading,
    /// Nowhere: it is told while the waivers are held against the findings.
    WhileWaiving,
    /// Nowhere: it is told when the book is held beside an earlier state of it.
    BesideEarlier,
}

/// A sound book with one part changed: edits, each a text of one file that is replaced.
///
/// A line of the wrong one that must be pointed at ends in `# <--`.
pub struct Example {
    /// The rule must find each marked line of this, and no other.
    pub wrong: &'static [Edit],
    /// No rule may object to this.
    pub right: &'static [Edit],
}

/// One edit of the sound book: in the file `0`, after the first `1`, the first `2` becomes `3`.
///
/// Where `1` is empty the whole file is looked at; where `2` is empty the whole file becomes `3`.
pub type Edit = (&'static str, &'static str, &'static str, &'static str);

impl fmt::Debug for Rule {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_tuple("Rule").field(&self.id).finish()
    }
}

impl PartialEq for Rule {
    fn eq(&self, other: &Self) -> bool {
        self.id == other.id
    }
}
