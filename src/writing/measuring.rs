//! Measuring a boat or an oar set: what is asked, in the order of the work, what was answered, and
//! what the record says afterwards.
//!
//! The [`Dialogue`] takes one typed line after another; it knows no terminal, no clock, no rule and no
//! disk. What a verdict makes necessary, a second reading or another chock under the boat, it is told.

mod answer;
mod answering;
mod ask;
mod dialogue;
mod going;
mod jump;
mod level;
mod lines;
mod order;
mod question;
mod questions;
mod readings_day;
mod recording;
mod second_person;
mod typed;

pub use answer::Answer;
pub use ask::{Ask, Heard, Why};
pub use dialogue::Dialogue;
pub use lines::{LineFault, Lines, Said};
pub use question::{Last, Question, Screen};
pub use questions::{About, SeatAbout, questions};
pub use readings_day::Days;
pub use recording::{Cannot, Recorded};
pub use second_person::{Disagreement, compared, joined};
