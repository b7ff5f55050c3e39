//! Books and repositories that mean harm, put before every command in every format: none ends as a
//! fault of the program, steers a terminal, or gives orders to a build server. Faults from outside are
//! told as they are, and leave nothing half-written.
#![cfg(unix)]

#[path = "hostile/books.rs"]
mod books;
mod chance;
#[path = "hostile/commands.rs"]
mod commands;
#[path = "hostile/days.rs"]
mod days;
#[path = "hostile/faults.rs"]
mod faults;
#[path = "hostile/repositories.rs"]
mod repositories;
#[path = "hostile/stopped.rs"]
mod stopped;
#[path = "hostile/trying.rs"]
mod trying;
