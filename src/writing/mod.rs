//! Writes texts: what a club's files and git's hooks are to say. Touches no disk; `store` does that.

pub mod addressing;
pub mod blank;
pub mod editing;
pub mod granting;
pub mod guard;
pub mod mending;
pub mod predicting;
pub mod sample;
pub mod splicing;
pub mod starting;
pub mod wiring;
pub mod worked_out;
