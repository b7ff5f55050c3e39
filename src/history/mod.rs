//! Values through time: each change of a value, and who set the values that stand.
//!
//! Knows commits by their ids and texts by what they hold. Nothing is judged here, and no day is
//! today.

mod blame;
mod graph;
mod library;
mod past;
mod record;
mod timeline;
mod value;

pub use blame::{Set, blame};
pub use graph::{Cell, Graph, Node, Traced};
pub use past::{Past, State, Step, Values, Walked};
pub use record::{Held, Key, Kind, MeasuredBy, Record, held};
pub use timeline::{Asked, Event, Row, timeline};
pub use value::{Rewritten, Value};
