//! Seating a crew: the choice against trying every one, published bodies, what is measured, what is
//! missing, the command.

#[path = "fitting/bodies.rs"]
mod bodies;
#[path = "fitting/cases.rs"]
mod cases;
#[path = "fitting/choice.rs"]
mod choice;
#[path = "fitting/command.rs"]
mod command;
#[path = "fitting/crew.rs"]
mod crew;
mod sound_book;
