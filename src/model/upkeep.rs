//! What happens to a boat or an oar between rigging days.

use super::place::Placed;
use super::words::{BentPart, DefectState};
use crate::units::{Angle, Date};

/// Values read again after the rigging day.
#[derive(Clone, Debug)]
pub struct ReadAgain {
    /// The day.
    pub date: Option<Placed<Date>>,
    /// Who read.
    pub by: Option<Placed<String>>,
    /// Who checked.
    pub checked_by: Option<Placed<String>>,
    /// Names of the values, below the boat's own.
    pub values: Vec<Placed<String>>,
}

/// A knock the boat took.
#[derive(Clone, Debug)]
pub struct Knock {
    /// The day.
    pub date: Option<Placed<Date>>,
    /// What happened.
    pub what: Option<Placed<String>>,
    /// The seats it concerns; all, where none is named.
    pub seats: Vec<Placed<String>>,
}

/// A cold bend.
#[derive(Clone, Debug)]
pub struct Bend {
    /// The day.
    pub date: Option<Placed<Date>>,
    /// Who bent.
    pub by: Option<Placed<String>>,
    /// The seat.
    pub seat: Option<Placed<u32>>,
    /// The part.
    pub part: Option<Placed<BentPart>>,
    /// How far.
    pub angle: Option<Placed<Angle>>,
}

/// A defect of a boat or an oar.
#[derive(Clone, Debug)]
pub struct Defect {
    /// The day it was found.
    pub found: Option<Placed<Date>>,
    /// What it is.
    pub what: Option<Placed<String>>,
    /// What it means for use.
    pub state: Option<Placed<DefectState>>,
    /// How it was put right.
    pub put_right: Option<PutRight>,
}

/// How a defect was put right.
#[derive(Clone, Debug)]
pub struct PutRight {
    /// The day.
    pub date: Option<Placed<Date>>,
    /// Who did it.
    pub by: Option<Placed<String>>,
    /// How.
    pub how: Option<Placed<String>>,
    /// Who passed it.
    pub passed_by: Option<Placed<String>>,
}

impl PutRight {
    /// Returns the keys that are missing; a defect counts as put right when none is. A text of
    /// blanks says nothing, and nobody passes work of their own.
    #[must_use]
    pub fn missing(&self) -> Vec<&'static str> {
        let given = [
            ("date", self.date.is_some()),
            ("by", said(self.by.as_ref()).is_some()),
            ("how", said(self.how.as_ref()).is_some()),
            ("passed-by", said(self.passed_by.as_ref()).is_some() && !self.passed_by_the_same()),
        ];
        given.into_iter().filter(|(_, given)| !given).map(|(key, _)| key).collect()
    }

    /// Returns whether the one who did it is said to have passed it, too.
    #[must_use]
    pub fn passed_by_the_same(&self) -> bool {
        let by = said(self.by.as_ref()).map(str::to_lowercase);
        by.is_some() && by == said(self.passed_by.as_ref()).map(str::to_lowercase)
    }
}

/// Why a boat is not to be used.
#[derive(Clone, Debug)]
pub struct OutOfUse {
    /// Since when.
    pub since: Option<Placed<Date>>,
    /// Who said so.
    pub by: Option<Placed<String>>,
    /// Why.
    pub because: Option<Placed<String>>,
}

fn said(text: Option<&Placed<String>>) -> Option<&str> {
    text.map(|text| text.value.trim()).filter(|text| !text.is_empty())
}
