//! The text of one file into a tree of values with their places, and what is refused in it.

#[path = "../chance/mod.rs"]
mod chance;
mod damage;
mod hostile;
mod looking_over;
mod outline;
mod places;
mod refusals;
mod second_reader;
mod suite;
mod words;

/// A record of each kind, as a club writes them.
const RECORDS: &[&str] = &[
    include_str!("records/club.yaml"),
    include_str!("records/boat.yaml"),
    include_str!("records/oars.yaml"),
    include_str!("records/crew.yaml"),
    include_str!("records/class.yaml"),
    include_str!("records/waivers.yaml"),
];
