//! What a book says, by record and name, and how that differs from time to time.
//!
//! Two states of a book are compared by what they say, never by how they are written. Through time
//! they make a timeline: each change of a value, and who set the values that stand. Knows commits
//! by their ids, no rules and no git; nothing is judged here, and no day is today.

mod blame;
mod change;
mod comparing;
mod doubt;
mod drift;
mod entries;
mod graph;
mod group_words;
mod grouping;
mod kept;
mod known;
mod library;
mod likeness;
mod measured;
mod moving;
mod other_boats;
mod pairing;
mod past;
mod record;
mod threads;
mod timeline;
mod value;
mod values;
mod walked;

pub use blame::{Set, blame};
pub use change::{Change, ChangeKind, State};
pub use comparing::changes;
pub use drift::{Break, breaks, readings};
pub use graph::{Cell, Graph, Node, Traced};
pub use grouping::Group;
pub use kept::{Kept, Rewritten};
pub use likeness::{Likeness, same};
pub use measured::LastMeasured;
pub use other_boats::OtherBoats;
pub use past::{Past, RecordState, Values};
pub use record::{Held, Key, Part, Record, Slot, held};
pub use threads::Thread;
pub use timeline::{Asked, Event, Row, timeline};
pub use value::{Value, tells_which};
pub use values::{RecordValues, of_book, of_file, of_record};
pub use walked::{Looked, Step, Walked};
