//! What is to be asked, and what came of a typed line.

use super::answer::Answer;
use super::question::Question;
use crate::writing::editing::Wording;

/// Why a second reading is asked for.
#[derive(Clone, Debug, Eq, PartialEq)]
pub enum Why {
    /// The value is on the wrong side of a danger limit, or not shown to be clear of it.
    Danger,
    /// It moved by more than such a value usually does; how far, in words.
    Jump(String),
}

/// What is to be asked now.
#[derive(Clone, Debug, PartialEq)]
pub enum Ask<'d> {
    /// A value; what was answered to it today.
    Value(&'d Question, &'d Answer),
    /// The same value a second time.
    Again {
        /// The question.
        question: &'d Question,
        /// What was read first.
        first: &'d Wording,
        /// Why.
        why: &'d Why,
    },
    /// Nothing of a person: the verdict on the value just read, [`super::Dialogue::judged`].
    Verdict(&'d Question),
    /// Nothing of a person: whether the boat lies level enough, [`super::Dialogue::levelled`].
    Level,
    /// The boat levelled and the level read again, or the reason to go on; why she is refused.
    Reason(&'d str),
    /// Nothing: all is answered.
    End,
}

/// What came of a typed line.
#[derive(Clone, Debug, Eq, PartialEq)]
pub enum Heard {
    /// A value was read.
    Taken,
    /// It was not measured today and keeps what it says.
    Kept,
    /// Nobody knows it.
    NotMeasured,
    /// What was answered to it is taken back.
    Forgotten,
    /// The question before is asked again.
    Back,
    /// Another question is asked, or none any more.
    Gone,
    /// There is no question before.
    AtTheBeginning,
    /// How it is measured is to be told.
    How,
    /// It can't be read: why, and what to do.
    Unreadable(String),
    /// The boat is not level, and no reason was given.
    NeedsReason,
    /// The reason is taken.
    Accepted,
    /// Whoever measures stops here for now.
    Stopped,
}
