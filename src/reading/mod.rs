//! Texts into the book, and every fault of every text at its place.
//!
//! YAML lives here, in `tree`. After this, every number is finite, every value knows the bytes it
//! was written at, and what could not be read has been told and is absent.

mod boat;
mod class;
mod club;
mod crew;
mod fault;
mod field;
mod form;
mod limits;
mod lists;
mod nearest;
mod oars;
mod readings;
mod record;
mod seat;
mod section;
mod sheet;
mod tools;
pub mod tree;
mod value;

pub use crate::store::{CLUB_FILE, WAIVERS_FILE};
pub use fault::{Fault, What};
pub use field::{Field, READ, TO};
pub use form::{Bounds, Described, Kind, NOT_MEASURED, Naming};
pub use nearest::nearest;
pub use readings::FINEST;
pub use record::{RecordKind, form, read, read_alone, tells_a_record};
pub use value::{LONGEST_ID, TAKEN_FOR_OTHERS, ValueKind};
