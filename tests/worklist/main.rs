//! The work that brings a boat inside her limits: applied, it does; and with no bend too many.

mod boats;
mod by_chance;
mod by_hand;
mod command;
#[path = "../trials_by_chance/drawing.rs"]
#[allow(dead_code, reason = "the trials draw more than this")]
mod drawing;
#[path = "../trials_by_chance/record.rs"]
mod record;
#[path = "../trials_by_chance/rig.rs"]
#[allow(dead_code, reason = "the trials ask more of a rig than this")]
mod rig;
#[path = "../sound_book/mod.rs"]
mod sound_book;
