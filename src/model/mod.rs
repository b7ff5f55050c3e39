//! What the book says, as values, each with the place where it was written.
//!
//! No text, no YAML, no git, no judgement. A value that was not written, or could not be read,
//! is absent; what could not be read has been told by `reading`.

mod boat;
mod book;
mod class;
mod club;
mod crew;
mod lengths;
mod limit;
mod name;
mod oars;
mod place;
mod reading;
mod signed;
mod upkeep;
mod waiver;
mod words;
mod written;

pub use boat::{Boat, FootHoles, LevelMark, PitchAngles, Rigged, WalkRound};
pub use boat::{Lean, LiftsOut, Pin, Pitch, Plate, Rowlock, Seat, Stated, WorkedOut};
pub use book::{Book, SourceFile};
pub use class::{Class, OarAngle, Plausible};
pub use club::{Club, ClubLimits, HalfWidths, Person, Protect};
pub use crew::{Arc, Crew, Rower, Sweep};
pub use lengths::{LengthOf, OF_A_ROWER, OF_AN_OAR, plausible_fields};
pub use limit::{Bound, LimitKey, LimitQuantity, Limits, Part, SetLimit};
pub use name::Name;
pub use oars::{Blade, Flex, Measured, Oar, OarSet, Shaft};
pub use place::{FileId, Place, Placed, Span};
pub use reading::{Reading, Tool};
pub use signed::Signature;
pub use upkeep::{Bend, Defect, Knock, OutOfUse, PutRight, ReadAgain};
pub use waiver::Waiver;
pub use words::Word;
pub use words::{
    Bears, BentPart, Condition, DefectState, Leather, Lift, May, OarState, Turns, Where,
};
pub use written::{Quantity, Said, Written};
