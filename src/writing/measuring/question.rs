//! One thing that is asked of whoever measures.

use crate::model::Tool;
use crate::reading::Kind;
use crate::units::Date;
use crate::writing::editing::Address;

/// One thing that is asked.
#[derive(Clone, Debug, PartialEq)]
pub struct Question {
    /// Its name below the record's own, such as `seat-2/rowlock/gap`.
    pub name: String,
    /// Where its value stands in the record.
    pub at: Address,
    /// What it is and how it is measured.
    pub about: &'static str,
    /// What may be answered.
    pub kind: Kind,
    /// What it is read with.
    pub tool: Tool,
    /// What it is asked together with.
    pub screen: Screen,
    /// Whether it was measured on some day, as a name, a place or a note are not.
    pub is_dated: bool,
    /// Whether it says where a value belongs, or what others mean, and is written already: it is not
    /// asked again.
    pub settled: bool,
    /// What the record says so far.
    pub last: Option<Last>,
    /// How finely its tool reads, in millimetres or degrees; none where that is not known.
    pub fine: Option<f64>,
}

/// What a record says of a value so far.
#[derive(Clone, Debug, Eq, PartialEq)]
pub struct Last {
    /// The value, as it is written.
    pub text: String,
    /// When it was read.
    pub on: Option<Date>,
    /// By whom.
    pub by: Option<String>,
}

/// What is asked together.
#[derive(Clone, Debug, Eq, PartialEq)]
pub enum Screen {
    /// Who measures, and where.
    Day,
    /// The level and its mark.
    Level,
    /// A seat.
    Seat(u32),
    /// An oar.
    Oar(String),
    /// What is looked at last: foot holes and the walk round.
    Whole,
}

impl Question {
    pub(super) const fn is_settled(&self) -> bool {
        self.settled
    }

    /// Returns whether several readings may be taken of it.
    #[must_use]
    pub const fn is_reading(&self) -> bool {
        matches!(self.kind, Kind::Reading(_))
    }

    /// Returns its name below what it is asked together with: `rowlock/gap` at a seat.
    #[must_use]
    pub fn short(&self) -> &str {
        match self.screen {
            Screen::Seat(_) | Screen::Oar(_) => {
                self.name.split_once('/').map_or(&*self.name, |(_, rest)| rest)
            }
            _ => self.name.strip_prefix("rigged/").unwrap_or(&self.name),
        }
    }
}
