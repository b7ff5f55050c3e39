//! What a book says, by record and name, and how that differs from time to time.
//!
//! Two states of a book are compared by what they say, never by how they are written. Knows no
//! rules and no git: a state is a [`Book`](crate::model::Book), wherever it came from.

mod change;
mod comparing;
mod doubt;
mod group_words;
mod grouping;
mod likeness;
mod measured;
mod moving;
mod pairing;
mod value;
mod values;

pub use change::{Change, ChangeKind, State};
pub use comparing::changes;
pub use grouping::Group;
pub use likeness::{Likeness, same};
pub use measured::LastMeasured;
pub use value::Value;
pub use values::{RecordValues, of_book, of_file, of_record};
