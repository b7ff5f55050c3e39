//! Oars tried in rowlocks: figures worked by hand and published ones, what lint says of the same
//! oar in the same seat, what is unknown, the words and the command.

#[path = "matching/command.rs"]
mod command;
#[path = "matching/figures.rs"]
mod figures;
#[path = "matching/linted.rs"]
mod linted;
mod sound_book;
#[path = "matching/tries.rs"]
mod tries;
#[path = "matching/unknown.rs"]
mod unknown;
#[path = "matching/words.rs"]
mod words;
